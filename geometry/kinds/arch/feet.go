package arch

// Feet: an angle before and one behind the cross member, each under one leg of both plates.

import (
	"lugwright/geometry/fab"
	"lugwright/part"
)

// foot is one of the two; side is -1 before the cross member, +1 behind.
type foot struct {
	word string
	side float64
}

var feet = [2]foot{{"front", -1}, {"rear", 1}}

func (f foot) prefix() string      { return f.word + "-" }
func (f foot) weld(p plate) string { return "w-" + p.id + "-" + f.word }

// chain is what a load passes from the legs' welds on, in order.
func (f foot) chain() []string {
	return []string{f.prefix() + "base.a", f.prefix() + "base.b", f.prefix() + "bolts", "support"}
}

// reach is how far a leg's axis, which is its angle's middle, is from the arch's.
func (d *design) reach() float64 { return d.half + d.leg/2 }

// legs are what stands on an angle.
func (d *design) legs() fab.OnLeg {
	return fab.OnLeg{Word: "leg", Mid: d.middle, Wide: d.leg, Far: d.lug.Inner() + d.t/2}
}

func (d *design) checkFeet(n *fab.Needs) {
	a := d.angle
	least := d.leg + 2*d.footWeld
	n.That(a.Length >= least, "angle_length", fab.MM(a.Length), "at least %.4g mm, a leg with its weld's ends", least)
	most := 2 * (d.reach() - d.crossW/2 - d.clear)
	n.That(a.Length <= most, "angle_length", fab.MM(a.Length), "at most %.4g mm, so that the cross member passes with its clearance", most)
	n.That(d.middle > a.T+a.Root, "foot_offset", fab.MM(d.middle), "more than %.4g mm, beyond the root radius", a.T+a.Root)
	low := d.over() + max(d.footWeld, d.barPast+fab.PaintGapMM)
	n.That(d.middle >= low, "foot_offset", fab.MM(d.middle), "at least %.4g mm, so that weld and bar stay off the web", low)
	high := a.Out - d.over() - d.footWeld
	n.That(d.middle <= high, "foot_offset", fab.MM(d.middle), "at most %.4g mm, so that the outer plate's weld stays on the angle", high)
	a.CheckLegs(n)
	if n.ThatHole(a.Bolts.HoleMM, "bolt_size", d.v.Word("bolt_size")) {
		a.CheckBolts(n, d.legs())
	}
	a.CheckStiffeners(n)
}

// addFeet puts the angle under both ends of the arch, welds the legs to it, and says what bears all.
func (d *design) addFeet(b *part.Bracket) {
	var piece part.Bracket
	d.angle.Add(&piece, d.legs())
	b.Supports = append(piece.Supports, part.Support{
		ID: "cross member", Kind: part.CrossMember, ThicknessMM: d.v.MM("cross_wall"), Material: d.v.Word("cross_material"),
	})
	for _, f := range feet {
		fab.Put(b, &piece, f.prefix(), part.Vec{X: f.side * d.reach()})
		for _, p := range plates {
			root := func(u float64) part.Vec { return part.Vec{X: f.side * u, Y: d.y(p)} }
			runs := fab.AtFaces(root(d.half), root(d.outer), part.Vec{Y: 1}, d.t)
			b.Welds = append(b.Welds, fab.Weld(f.weld(p), p.id, f.chain()[0], d.footWeld, d.v.Word("electrode"), runs...))
		}
	}
}
