package scad

import (
	"math"

	"lugwright/geometry/shape"
	"lugwright/part"
)

// profile is the section of a member in its (v, w) plane.
func profile(p part.Profile) (outer shape.Loop, bore []shape.Loop) {
	switch p.Kind {
	case part.Angle:
		return angleSection(p), nil
	case part.RoundTube:
		return shape.Circle(shape.Point{}, p.AMM), []shape.Loop{shape.Circle(shape.Point{}, p.AMM-2*p.TMM)}
	case part.RoundBar:
		return shape.Circle(shape.Point{}, p.AMM), nil
	case part.FlatBar:
		return rounded(p.AMM, p.TMM, 0), nil
	}
	return rounded(p.AMM, p.BMM, p.RootMM), []shape.Loop{rounded(p.AMM-2*p.TMM, p.BMM-2*p.TMM, p.RootMM-p.TMM)}
}

// angleSection has its heel at the origin and a fillet of the root radius inside; toes are square.
func angleSection(p part.Profile) shape.Loop {
	a, b, t, r := p.AMM, p.BMM, p.TMM, p.RootMM
	quarter := math.Tan(math.Pi / 8)
	l := shape.Polyline(shape.Point{}, shape.Point{X: a}, shape.Point{X: a, Y: t}, shape.Point{X: t + r, Y: t}, shape.Point{X: t, Y: t + r},
		shape.Point{X: t, Y: b}, shape.Point{Y: b})
	if r > 0 {
		l[3].Bulge = -quarter
	}
	return l.Normalize()
}

// rounded is a rectangle about the origin; a radius that does not fit is left out.
func rounded(width, height, radius float64) shape.Loop {
	a, b := shape.Point{X: -width / 2, Y: -height / 2}, shape.Point{X: width / 2, Y: height / 2}
	if radius > 0 {
		if l, err := shape.RoundedRect(a, b, radius); err == nil {
			return l
		}
	}
	return shape.Rect(a, b)
}

// drill is how far a hole reaches, along the normal of its face from the member's axis or heel.
func drill(p part.Profile, f part.Face) (from, to float64) {
	if p.Kind == part.Angle {
		return -1, p.TMM + p.RootMM + 1
	}
	half := math.Max(p.AMM, math.Max(p.BMM, p.TMM))
	return -half, half
}

func (w *writer) member(m *model, p piece) {
	outer, bore := profile(p.member.Profile)
	w.outline(p.module+"_outer", outer.CCW())
	for i, l := range bore {
		w.outline(p.module+"_bore_"+w.number(float64(i+1)), l.CCW())
	}
	w.line("module %s_2d() {", p.module)
	w.line("  difference() {")
	w.line("    outline(%s_outer);", p.module)
	for i := range bore {
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
