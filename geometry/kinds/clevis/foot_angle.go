package clevis

// Angle foot: its horizontal leg (A) reaches out from the web and carries the ears, its other leg (B) hangs down and is bolted
// to the web; stiffeners stand in the corner under leg A.

import (
	"lugwright/geometry/fab"
	"lugwright/part"
)

type angleFoot struct{}

func (angleFoot) top() string     { return "base.a" }
func (angleFoot) chain() []string { return []string{"base.a", "base.b", "bolts", "support"} }

func readAngle(d *design) fab.WebAngle {
	a := fab.ReadWebAngle(d.v, d.bolting, d.v.Word("foot_material"))
	a.Stiff.Material = d.v.Word("gusset_material")
	return a
}

// fork is what the ears are to the leg.
func (d *design) fork() fab.OnLeg {
	return fab.OnLeg{Word: "fork", Mid: d.middle, Wide: d.rootWidth(), Far: d.inner + d.earT/2}
}

func (f angleFoot) check(d *design, n *fab.Needs) {
	a := readAngle(d)
	a.CheckLegs(n)
	d.checkFork(a, n)
	if d.checkBoltHole(n) {
		a.CheckBolts(n, d.fork())
	}
	a.CheckStiffeners(n)
}

// checkFork keeps ears and gussets on the leg, out of the root and off the web.
func (d *design) checkFork(a fab.WebAngle, n *fab.Needs) {
	offset := fab.MM(d.middle)
	n.That(d.middle > a.T+a.Root, "clevis_offset", offset, "more than %.4g mm, beyond the root radius", a.T+a.Root)
	n.That(d.middle+d.outer+d.earWeld <= a.Out, "clevis_offset", offset, "at most %.4g mm, so that the outboard ear's weld stays on the leg", a.Out-d.outer-d.earWeld)
	n.That(d.middle-d.outer-d.earWeld >= 0, "clevis_offset", offset, "at least %.4g mm, so that the inboard ear's weld stays off the web", d.outer+d.earWeld)
	if d.outside.thickness > 0 {
		long, room := d.v.MM("outer_gusset_length"), min(a.Out-d.middle, d.middle-fab.PaintGapMM)-d.outer
		n.That(long <= room, "outer_gusset_length", fab.MM(long), "at most %.4g mm, within the leg's tip and %d mm off the web", max(0, room), fab.PaintGapMM)
	}
	n.That(d.earW+2*d.earWeld <= a.Length, "angle_length", fab.MM(a.Length), "at least %.4g mm, the ears with their weld ends", d.earW+2*d.earWeld)
}

func (f angleFoot) add(d *design, b *part.Bracket) {
	a := readAngle(d)
	a.Add(b, d.fork())
}
