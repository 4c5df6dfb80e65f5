package strength

// Sections through tubes and bars: the whole profile, alike all along. A hole drilled in them is not taken off; the place says so.

import (
	"fmt"
	"math"

	"lugwright/part"
	"lugwright/strength/material"
	"lugwright/strength/statics"
)

// compileMember cuts a sweep through a tube or bar along its axis.
func (m *model) compileMember(i int, mem *part.Member) {
	s := &m.b.Sweeps[i]
	along := s.To.Sub(s.From)
	normal := along.Unit()
	if math.Abs(math.Abs(normal.Dot(mem.Pose.U))-1) > 1e-9 {
		m.skip("section of "+s.Name, s.ID, "the sweep does not run along "+mem.ID)
		return
	}
	field := "members[" + mem.ID + "].material"
	g, fy, fu := m.grade(mem.Material, wallOf(mem.Profile), field)
	if g == nil {
		return
	}
	profile := mem.Profile
	if g.DesignWall > 0 {
		profile.TMM *= g.DesignWall
		m.note("%s of %s: checked with %.4g of its nominal wall (AISC 360-22 B4.2)", mem.ID, g.Name, g.DesignWall)
	}
	f, why := sectionOf(profile, fy, g.EMPa)
	f.Fy, f.Fu, f.E = fy, fu, g.EMPa
	if g.Family != material.CarbonSteel {
		why = "tubes and bars other than of carbon steel are not covered"
	}
	if len(mem.Holes) > 0 {
		m.skip("net section at the holes", mem.ID, "only the whole section of a tube or bar is cut")
	}
	if m.slender == nil {
		m.slender = map[int]string{}
	}
	m.slender[i] = why
	on := m.through(s.Things)
	passes, span := m.onward(mem.ID, m.sweptBy(s, on), normal)
	for k := 0; k <= scanSteps; k++ {
		t := min(max(float64(k)/scanSteps, besideMM/along.Norm()), 1-besideMM/along.Norm())
		at := s.From.AddScaled(t, along)
		axis := mem.Pose.Origin.AddScaled(at.Sub(mem.Pose.Origin).Dot(mem.Pose.U), mem.Pose.U)
		c := cut{slot: i, at: axis, normal: normal, flat: mem.Pose.W(), chord: normal.Cross(mem.Pose.W()), bolts: -1, passes: passes,
			set: m.loadSet(both(on.passes, m.beyond(passes, on, at, normal))), group: axis, shear: axis, root: s.To, f: f}
		c.f.FreeLength = max(at.Sub(s.From).Norm(), s.FreeMM)
		if span > 0 {
			c.f.FreeLength = max(span/2, s.FreeMM) // held against moving sideways at both ends it buckles no sooner than as a cantilever of half its span
			if f.Rect {
				c.f.FreeLength = max(span, s.FreeMM) // a flat bar bent on edge turns sideways over all of it
			}
		}
		m.cuts = append(m.cuts, c)
	}
}

// wallOf is what a grade's table goes by: the wall of a tube, the thickness of a flat, the diameter of a round.
func wallOf(p part.Profile) float64 {
	if p.TMM > 0 {
		return p.TMM
	}
	return p.AMM
}

// sectionOf gives a profile's section. Flat is its W axis: Ma bends it about V, Mb about W. J is such that T TMax/J is the greatest shear stress.
// Why says that its walls buckle before they yield: compact walls of AISC 360-22 Table B4.1b, which EN's class 3 contains.
func sectionOf(p part.Profile, fy, e float64) (f Cut, why string) {
	a, b, t := p.AMM, p.BMM, p.TMM
	switch p.Kind {
	case part.RoundBar, part.RoundTube:
		inner := 0.0
		if p.Kind == part.RoundTube {
			inner = a - 2*t
			if limit := 0.07 * e / fy; a/t > limit {
				why = fmt.Sprintf("D/t = %.3g of the tube is over 0.07 E/F_y = %.3g: its wall buckles before it yields", a/t, limit)
			}
		}
		i := math.Pi / 64 * (math.Pow(a, 4) - math.Pow(inner, 4))
		f = Cut{Area: math.Pi / 4 * (a*a - inner*inner), Sa: i / (a / 2), Sb: i / (a / 2), Za: (a*a*a - inner*inner*inner) / 6, Depth: a, TMax: (a - inner) / 2}
		f.R = math.Sqrt(i / f.Area) // no Zb: a closed or round section does not buckle sideways, and edgewise its elastic modulus counts
		f.J = f.TMax * 2 * i / (a / 2)
		f.AreaVa, f.AreaVb = f.Area/2, f.Area/2
		if inner == 0 {
			f.AreaVa, f.AreaVb = 0.75*f.Area, 0.75*f.Area
		}
		return f, why
	case part.FlatBar:
		return Cut{
			Area: a * t, AreaVa: a * t, AreaVb: a * t, Sa: a * t * t / 6, Za: a * t * t / 4, Sb: t * a * a / 6, Zb: t * a * a / 4, Depth: a, TMax: t,
			R: t / math.Sqrt(12), Rect: true, J: statics.TorsionByStress(a, t),
		}, ""
	}
	corner := p.RootMM // outside; where it is not told, flats are taken for slenderness as three walls short of the side (AISC 360-22 B4.1b(d))
	if corner == 0 {
		corner = 1.5 * t
	}
	if limit, flat := 1.12*math.Sqrt(e/fy), max(a, b)-2*corner; flat/t > limit {
		why = fmt.Sprintf("the flat of the tube over its wall, %.3g, is over 1.12 sqrt(E/F_y) = %.3g: it buckles before it yields", flat/t, limit)
	}
	if p.RootMM == 0 {
		corner = min(roundest(t), a/2, b/2)
	}
	iv := (a*b*b*b - (a-2*t)*math.Pow(b-2*t, 3)) / 12 // about V: b is along W
	iw := (b*a*a*a - (b-2*t)*math.Pow(a-2*t, 3)) / 12
	round := roundedOff(corner, t)
	f = Cut{Area: a*b - (a-2*t)*(b-2*t) - round, Depth: max(a, b), TMax: t}
	f.Sa, f.Sb = lessCorners(iv, round, b), lessCorners(iw, round, a)
	f.R = math.Sqrt(min(f.Sa*b/2, f.Sb*a/2) / f.Area)
	f.AreaVa, f.AreaVb = 2*t*max(b-2*corner, 0), 2*t*max(a-2*corner, 0)
	mid := max(corner-t/2, 0) // radius of the wall's middle line
	f.J = t * 2 * ((a-t)*(b-t) - (4-math.Pi)*mid*mid) * t
	return f, why
}

// roundest is the outside corner radius of a rectangular tube of wall t where none is told: EN 10219-2, from memory.
func roundest(t float64) float64 {
	switch {
	case t <= 6:
		return 2 * t
	case t <= 10:
		return 2.5 * t
	}
	return 3 * t
}

// roundedOff is what the rounded corners take from a rectangular tube's area: outside radius R, inside R - t.
func roundedOff(corner, t float64) float64 {
	inside := max(corner-t, 0)
	return (4 - math.Pi) * (corner*corner - inside*inside)
}

// lessCorners is the section modulus of a rectangular tube whose rounded corners lack some area, as if all of it lay at the outer fibre.
func lessCorners(inertia, area, depth float64) float64 {
	return (inertia - area*depth*depth/4) / (depth / 2)
}
