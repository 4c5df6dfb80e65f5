package lug

// Base plate under the lug, bolted down.

import (
	"math"

	"lugwright/geometry/fab"
	"lugwright/part"
)

type plate struct {
	fab.FootPlate
	bolts fab.Bolting
}

func readPlate(d *design) plate {
	v := d.v
	p := plate{FootPlate: fab.FootPlate{
		ThicknessMM: v.MM("plate_thickness"), LengthMM: v.MM("plate_length"), WidthMM: v.MM("plate_width"), RadiusMM: v.MM("plate_corner_radius"),
		Us: fab.Spread(v.Count("bolts_per_row"), v.MM("bolt_pitch")), Vs: fab.Spread(v.Count("bolt_rows"), v.MM("bolt_gauge")),
		BlockU: d.ear.Width / 2, BlockV: d.t / 2,
	}}
	p.bolts = fab.ReadBolts(v)
	return p
}

func (plate) top() string                       { return "base" }
func (plate) depth() float64                    { return 0 }
func (plate) runs(d *design) []part.WeldSegment { return d.across() }
func (plate) chain() []string                   { return []string{"base", "bolts", "support"} }

func (plate) unchecked() []string {
	return []string{"what the base plate is bolted to, beyond its wall: what carries that"}
}

func (p plate) check(d *design, n *fab.Needs) {
	long, wide := d.ear.Width+2*d.weld, 2*(d.reach()+d.weld)
	n.That(p.LengthMM >= long, "plate_length", fab.MM(p.LengthMM), "at least %.4g mm, the lug with its weld ends", long)
	n.That(p.WidthMM >= wide, "plate_width", fab.MM(p.WidthMM), "at least %.4g mm, the lug with its gussets and welds", wide)
	n.ThatHole(p.bolts.HoleMM, "bolt_size", p.bolts.Size)
	if clear := d.v.MM("support_clear"); clear > 0 {
		n.That(p.WidthMM <= clear, "support_clear", fab.MM(clear), "at least plate_width, %.4g mm; 0 where it is not known", p.WidthMM)
	}
	if n.Err() != nil {
		return
	}
	p.Check(n, fab.FootNames{Size: [2]string{"plate_length", "plate_width"}, Pitch: [2]string{"bolt_pitch", "bolt_gauge"}, Radius: "plate_corner_radius"}, p.bolts.DiaMM)
	if n.Err() != nil {
		return
	}
	blocks := []fab.Block{{Name: "lug", HalfU: p.BlockU, HalfV: p.BlockV, WeldMM: d.weld}}
	if d.gussetH > 0 {
		blocks = append(blocks, fab.Block{Name: "gusset", HalfU: d.gussetT / 2, HalfV: d.reach(), WeldMM: d.v.MM("gusset_weld")})
	}
	p.CheckSockets(n, "bolt_gauge", p.bolts.DiaMM, blocks...)
	p.checkHeads(d, n)
}

// checkHeads keeps the fork off the bolts under its ears; a head on its washer is taken as 1 d high and 2 d across. Common practice, no source.
func (p plate) checkHeads(d *design, n *fab.Needs) {
	from, to := d.besideFork()
	for _, at := range p.Points() {
		if v := math.Abs(at.Y); v+p.bolts.DiaMM > from && v-p.bolts.DiaMM < to {
			d.fork.Check(n, math.Hypot(max(0, math.Abs(at.X)-p.bolts.DiaMM), d.height-p.bolts.DiaMM), "bolts' heads")
			return
		}
	}
}

func (p plate) add(d *design, b *part.Bracket) {
	up := part.Pose{U: part.Vec{X: 1}, V: part.Vec{Y: 1}}
	middle, under := up, up
	middle.Origin, under.Origin = part.Vec{Z: -p.ThicknessMM / 2}, part.Vec{Z: -p.ThicknessMM}
	base := p.Plate("base", d.v.Word("plate_material"), p.bolts.HoleMM, middle)
	b.Plates = append(b.Plates, base)
	points, wall := p.Points(), d.v.MM("support_thickness")
	g := p.bolts.Group("bolts", under, points, p.ThicknessMM+wall, p.Bearing(), [2]part.Ply{
		{Thing: "base", ThicknessMM: p.ThicknessMM, Material: base.Material, EdgeMM: fab.LeastEdge(base.Outer, points)},
		{Thing: "support", ThicknessMM: wall, Material: d.v.Word("support_material")},
	})
	g.Across = p.Pry()
	b.Bolts = append(b.Bolts, g)
	b.Supports = append(b.Supports, d.support())
	b.Sweeps = append(b.Sweeps, p.Sweeps("base", "bolts", middle, "base plate past the lug", [4]string{"front", "rear", "left", "right"})...)
}
