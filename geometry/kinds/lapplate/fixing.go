package lapplate

// Welds or bolts of each half.

import (
	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

// half is one side of the joint: what is added to names on it, the flat there, the sign of x.
type half struct {
	mark, flat string
	sign       float64
}

// halves: the load goes from the second flat to the first, which stands for the support. Two names keep the two halves'
// welds two groups.
var halves = [2]half{{"", "butted plate", 1}, {"-b", "butted plate b", -1}}

// addWelds runs fillets round each half of a lap, up to the stop beside the joint.
func (d *design) addWelds(b *part.Bracket, l lap) {
	p := pose(l, d.t/2)
	for _, h := range halves {
		var runs []part.WeldSegment
		line := d.edge(l)
		for i := 1; i < len(line); i++ {
			if from, to, ok := fab.Beyond(line[i-1], line[i], d.stop); ok {
				runs = append(runs, part.WeldSegment{A: p.At(h.sign*from.X, from.Y, 0), B: p.At(h.sign*to.X, to.Y, 0)})
			}
		}
		b.Welds = append(b.Welds, fab.EdgeWeld("w-"+l.id+h.mark, l.id, h.flat, d.weld, d.v.Word("electrode"), runs...))
	}
}

// sameBolts names the first lap's group for the second lap, which the same bolts hold.
func (d *design) sameBolts(l lap, h half) string {
	if l.id == d.laps[0].id {
		return ""
	}
	return "bolts-" + d.laps[0].id + h.mark
}

// addBolts gives each half of a lap its own group in the plane where lap and flat meet.
func (d *design) addBolts(b *part.Bracket, l lap) {
	v := d.v
	stack := d.t + float64(len(d.laps))*d.lapT
	first, side := v.MM("bolt_first"), v.MM("member_width")/2-d.across[len(d.across)-1]
	for _, h := range halves {
		points := d.bolts(h.sign)
		near, far := h.sign*d.gap/2, h.sign*l.reach
		patch := shape.Box{Min: shape.Point{X: min(near, far), Y: -d.width / 2}, Max: shape.Point{X: max(near, far), Y: d.width / 2}}
		g := d.bolting.Group("bolts-"+l.id+h.mark, pose(l, d.t/2), points, stack, patch, [2]part.Ply{
			{Thing: l.id, ThicknessMM: d.lapT, Material: v.Word("lap_material"), EdgeMM: fab.LeastEdge(d.outline(l), points)},
			{Thing: h.flat, ThicknessMM: d.t, Material: v.Word("member_material"), EdgeMM: min(first, side)},
		})
		g.SameAs = d.sameBolts(l, h)
		b.Bolts = append(b.Bolts, g)
	}
}
