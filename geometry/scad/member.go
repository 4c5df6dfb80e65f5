package scad

import (
	"math"

	"lugwright/part"
)

// drill is how far a hole reaches, along the normal of its face from the member's axis or heel.
func drill(p part.Profile, f part.Face) (from, to float64) {
	if p.Kind == part.Angle {
		return -1, p.TMM + p.RootMM + 1
	}
	half := math.Max(p.AMM, math.Max(p.BMM, p.TMM))
	return -half, half
}

func (w *writer) member(m *model, p piece) {
	section := p.member.Profile.Section()
	w.outline(p.module+"_outer", section.Outer.CCW())
	for i, l := range section.Holes {
		w.outline(p.module+"_bore_"+w.number(float64(i+1)), l.CCW())
	}
	w.line("module %s_2d() {", p.module)
	w.line("  difference() {")
	w.line("    outline(%s_outer);", p.module)
	for i := range section.Holes {
		w.line("    outline(%s_bore_%d);", p.module, i+1)
	}
	w.line("  }")
	w.line("}")
	w.line("// length along x, see the section in y and z")
	w.line("module %s() {", p.module)
	w.line("  difference() {")
	w.line("    multmatrix([[0, 0, 1, 0], [1, 0, 0, 0], [0, 1, 0, 0], [0, 0, 0, 1]])")
	w.line("      linear_extrude(height = %s, convexity = 10) %s_2d();", p.member.LengthMM, p.module)
	for _, h := range p.member.Holes {
		w.memberHole(m, p.member, h)
	}
	w.line("  }")
	w.line("}")
}

func (w *writer) memberHole(m *model, mb *part.Member, h part.FaceHole) {
	at := part.Pose{Origin: part.Vec{X: h.Center.X, Y: h.Center.Y}, U: part.Vec{X: 1}, V: part.Vec{Y: 1}}
	if h.Face == part.LegB {
		// W along y: a leg along z is drilled from its outer face inwards.
		at = part.Pose{Origin: part.Vec{X: h.Center.X, Z: h.Center.Y}, U: part.Vec{Z: 1}, V: part.Vec{X: 1}}
	}
	from, to := drill(mb.Profile, h.Face)
	at.Origin = at.At(0, 0, from)
	w.line("    multmatrix(%s)", at)
	w.line("      linear_extrude(height = %s) hole(%s);", to-from, find(m.holes, h.DiaMM))
}
