package clevis

// Base plate foot: a flat plate under the fork, bolted down through its own plane. Its length runs along the ears, its width
// along the pin.

import (
	"lugwright/geometry/fab"
	"lugwright/part"
)

type plateFoot struct{}

func (plateFoot) top() string     { return "base" }
func (plateFoot) chain() []string { return []string{"base", "bolts", "support"} }

func readBase(d *design) fab.FootPlate {
	v := d.v
	return fab.FootPlate{
		ThicknessMM: v.MM("plate_thickness"), LengthMM: v.MM("plate_length"), WidthMM: v.MM("plate_width"), RadiusMM: v.MM("plate_corner_radius"),
		Us: fab.Spread(v.Count("bolts_per_row"), v.MM("bolt_pitch")), Vs: fab.Spread(v.Count("bolt_rows"), v.MM("bolt_gauge")),
		BlockU: d.earW / 2, BlockV: d.outer,
	}
}

func (f plateFoot) check(d *design, n *fab.Needs) {
	p := readBase(d)
	long := d.earW + 2*d.earWeld
	n.That(p.LengthMM >= long, "plate_length", fab.MM(p.LengthMM), "at least %.4g mm, the ears with their weld ends", long)
	wide := 2 * (d.outerReach() + d.earWeld)
	n.That(p.WidthMM >= wide, "plate_width", fab.MM(p.WidthMM), "at least %.4g mm, the fork with its gussets and welds", wide)
	n.That(p.WidthMM <= d.v.MM("web_clear_height"), "plate_width", fab.MM(p.WidthMM), "at most web_clear_height, %.4g mm", d.v.MM("web_clear_height"))
	if !d.checkBoltHole(n) {
		return
	}
	p.Check(n, fab.FootNames{Size: [2]string{"plate_length", "plate_width"}, Pitch: [2]string{"bolt_pitch", "bolt_gauge"}, Radius: "plate_corner_radius"}, d.bolting.DiaMM)
	if n.Err() == nil {
		p.CheckSockets(n, "bolt_gauge", d.bolting.DiaMM, d.standing()...)
	}
}

// standing is what bolts keep clear of. The fork counts as one block: no tool reaches a bolt between the ears.
func (d *design) standing() []fab.Block {
	out := []fab.Block{{Name: "fork", HalfU: d.earW / 2, HalfV: d.outer, WeldMM: d.earWeld}}
	for _, x := range d.outside.at {
		out = append(out, fab.Block{Name: "gusset", U: x, HalfU: d.outside.thickness / 2, HalfV: d.outerReach(), WeldMM: d.gussetWeld})
	}
	return out
}

func (f plateFoot) add(d *design, b *part.Bracket) {
	p := readBase(d)
	plate := p.Plate("base", d.v.Word("foot_material"), d.bolting.HoleMM, part.Pose{Origin: part.Vec{Z: -p.ThicknessMM / 2}, U: part.Vec{X: 1}, V: part.Vec{Y: 1}})
	b.Plates = append(b.Plates, plate)
	points := p.Points()
	g := d.bolts(part.Pose{Origin: part.Vec{Z: -p.ThicknessMM}, U: part.Vec{X: 1}, V: part.Vec{Y: 1}}, points,
		d.plies("base", p.ThicknessMM, fab.LeastEdge(plate.Outer, points)))
	g.Patch = p.Bearing()
	g.Across = p.Pry()
	b.Bolts = append(b.Bolts, g)
	b.Supports = append(b.Supports, d.support(part.CrossMember))
	b.Sweeps = append(b.Sweeps, p.Sweeps("base", "bolts", plate.Pose, "base plate past the fork", [4]string{"front", "rear", "outboard", "inboard"})...)
	d.addBetweenSweep(p, b)
}

// addBetweenSweep cuts the plate between bare ears, as wide as they are.
func (d *design) addBetweenSweep(p fab.FootPlate, b *part.Bracket) {
	if d.between.thickness > 0 {
		return
	}
	z := -p.ThicknessMM / 2
	b.Sweeps = append(b.Sweeps, part.Sweep{
		ID: "base, between", Things: []string{"base"}, Bolts: "bolts", Name: "base plate between the ears", EntryMM: d.rootWidth(), EntryToMM: 2 * d.inner,
		From: part.Vec{Y: d.inner, Z: z}, To: part.Vec{Y: -d.inner, Z: z},
	})
}
