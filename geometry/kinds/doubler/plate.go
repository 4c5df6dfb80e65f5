package doubler

// Plate, welds or bolts.

import (
	"fmt"

	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

// cornerFineMM is how far a weld's runs may be off a rounded corner; they are the shorter way.
const cornerFineMM = 0.5

// halves are the two sides of the plate's middle: what is added to names, the wall there, the sign of x. Force goes from the second to the first;
// two names keep their fixings two groups.
var halves = [2]struct {
	mark, wall string
	sign       float64
}{{"", "wall", 1}, {"-b", "wall-b", -1}}

// level is a plane at a height over the wall's middle.
func level(z float64) part.Pose {
	return part.Pose{Origin: part.Vec{Z: z}, U: part.Vec{X: 1}, V: part.Vec{Y: 1}}
}

func (d *design) plate() part.Plate {
	outer, _ := d.outline() // check has drawn it
	p := part.Plate{ID: "doubler", Name: "doubler", ThicknessMM: d.t, Material: d.v.Word("material"), Outer: outer, Pose: level((d.wall + d.t) / 2)}
	if d.hole > 0 {
		p.Holes = append(p.Holes, part.Hole{ID: "hole", DiaMM: d.hole, CutMM: d.hole, Purpose: part.ForLightness, Finish: part.AsCut})
	}
	for i, x := range d.plugs {
		for _, h := range halves {
			p.Holes = append(p.Holes, part.Hole{
				ID: fmt.Sprintf("plug-%d%s", i+1, h.mark), Center: shape.Point{X: h.sign * x}, DiaMM: d.plug, CutMM: d.plug, Purpose: part.ForWeld, Finish: part.AsCut,
			})
		}
	}
	if d.bolted {
		p.Holes = append(p.Holes, fab.BoltHoles(append(d.points(1), d.points(-1)...), d.bolts.HoleMM)...)
	}
	return p
}

func (d *design) fix(b *part.Bracket) {
	outer, pose := b.Plates[0].Outer, level(d.wall/2)
	ring := outer.Polygon(cornerFineMM)
	for _, h := range halves {
		b.Supports = append(b.Supports, part.Support{
			ID: h.wall, Kind: part.SupportKind(d.v.Word("wall_kind")), ThicknessMM: d.wall, Material: d.v.Word("wall_material"), ClearMM: d.v.MM("wall_width"),
		})
		if d.bolted {
			d.bolt(b, h.mark, h.wall, h.sign)
			continue
		}
		var runs []part.WeldSegment
		for i, from := range ring {
			to := ring[(i+1)%len(ring)]
			from.X, to.X = h.sign*from.X, h.sign*to.X
			if p, q, ok := fab.Beyond(from, to, 0); ok {
				runs = append(runs, part.WeldSegment{A: pose.At(h.sign*p.X, p.Y, 0), B: pose.At(h.sign*q.X, q.Y, 0)})
			}
		}
		b.Welds = append(b.Welds, fab.EdgeWeld("w-doubler"+h.mark, "doubler", h.wall, d.weld, d.v.Word("electrode"), runs...))
		if len(d.plugs) == 0 {
			continue
		}
		var at []part.Vec
		for _, x := range d.plugs {
			at = append(at, pose.At(h.sign*x, 0, 0))
		}
		b.Welds = append(b.Welds, fab.PlugWeld("w-plugs"+h.mark, "doubler", h.wall, d.t, d.plug, d.v.Word("electrode"), pose.U, at...))
	}
}

// bolt puts the group of one half in the plane where plate and wall meet. An edge is what is nearest: the plate's or the wall's, or the hole.
func (d *design) bolt(b *part.Bracket, mark, wall string, sign float64) {
	points, half := d.points(sign), shape.Box{Min: shape.Point{Y: -d.width / 2}, Max: shape.Point{X: d.length / 2, Y: d.width / 2}}
	if sign < 0 {
		half.Min.X, half.Max.X = -half.Max.X, 0
	}
	side := d.v.MM("wall_width")/2 - d.across[len(d.across)-1]
	b.Bolts = append(b.Bolts, d.bolts.Group("bolts"+mark, level(d.wall/2), points, d.t+d.wall, half, [2]part.Ply{
		{Thing: "doubler", ThicknessMM: d.t, Material: d.v.Word("material"), EdgeMM: min(fab.LeastEdge(b.Plates[0].Outer, points), d.holeEdge())},
		{Thing: wall, ThicknessMM: d.wall, Material: d.v.Word("wall_material"), EdgeMM: min(side, d.holeEdge())},
	}))
}
