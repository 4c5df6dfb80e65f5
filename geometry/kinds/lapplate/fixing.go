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
			if from, to, ok := beyond(line[i-1], line[i], d.stop); ok {
				runs = append(runs, part.WeldSegment{A: p.At(h.sign*from.X, from.Y, 0), B: p.At(h.sign*to.X, to.Y, 0)})
			}
		}
		b.Welds = append(b.Welds, fab.EdgeWeld("w-"+l.id+h.mark, l.id, h.flat, d.weld, d.v.Word("electrode"), runs...))
	}
}

// beyond cuts a run to the part at x or more; false when nothing weldable is left.
func beyond(a, b shape.Point, x float64) (shape.Point, shape.Point, bool) {
	if a.X < x && b.X < x {
		return a, b, false
	}
	if a.X < x {
		a = a.Lerp(b, (x-a.X)/(b.X-a.X))
	}
	if b.X < x {
		b = b.Lerp(a, (x-b.X)/(a.X-b.X))
	}
	return a, b, a.Dist(b) >= 1
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
		pitch := fab.LeastPitch(points)
		near, far := h.sign*d.gap/2, h.sign*l.reach
		b.Bolts = append(b.Bolts, part.BoltGroup{
			ID: "bolts-" + l.id + h.mark, Pose: pose(l, d.t/2), Points: points,
			Size: v.Word("bolt_size"), DiaMM: d.bolt, Grade: v.Word("bolt_grade"), HoleMM: d.hole,
			GripMM: stack, SameAs: d.sameBolts(l, h), ThreadsIn: v.Word("threads") == "in",
			Plies: [2]part.Ply{
				{Thing: l.id, ThicknessMM: d.lapT, Material: v.Word("lap_material"), EdgeMM: d.lapEdge(l), PitchMM: pitch},
				{Thing: h.flat, ThicknessMM: d.t, Material: v.Word("member_material"), EdgeMM: min(first, side), PitchMM: pitch},
			},
			Patch: shape.Box{Min: shape.Point{X: min(near, far), Y: -d.width / 2}, Max: shape.Point{X: max(near, far), Y: d.width / 2}},
		})
	}
}
