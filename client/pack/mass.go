package pack

// This file measures pieces. Masses are rounded to the gram and cut lengths to a tenth of a mm once, here, so that the totals of a
// list are the sums of its rows.

import (
	"math"

	"lugwright/client/run"
	"lugwright/part"
)

// measured is a plate as it leaves the table: holes at the diameter that is cut.
func measured(p *part.Plate, b *run.Bracket, kgPerMM3 float64) *piece {
	cut := p.Shape(true)
	return &piece{
		plate: p, hand: b.Part.Hand, count: b.Spec.Quantity,
		grams:   grams(cut.Area() * p.ThicknessMM * kgPerMM3),
		tenths:  int64(math.Round(cut.Length() * 10)),
		pierces: 1 + len(cut.Holes),
	}
}

func grams(kg float64) int64 { return int64(math.Round(kg * 1000)) }

// memberVolume is the sawn and drilled member's, in mm3. Rolled toes and mill tolerances are left out.
func memberVolume(m *part.Member) float64 {
	v := profileArea(m.Profile) * m.LengthMM
	for _, h := range m.Holes {
		v -= math.Pi / 4 * h.DiaMM * h.DiaMM * m.Profile.TMM
	}
	return v
}

// profileArea is a section's area in mm2, its root or corner radius included.
func profileArea(p part.Profile) float64 {
	a, b, t, r := p.AMM, p.BMM, p.TMM, p.RootMM
	switch p.Kind {
	case part.Angle:
		return t*(a+b-t) + (1-math.Pi/4)*r*r
	case part.RoundTube:
		return math.Pi * t * (a - t)
	case part.RectTube:
		return rounded(a, b, r) - rounded(a-2*t, b-2*t, max(r-t, 0))
	case part.RoundBar:
		return math.Pi / 4 * a * a
	}
	return a * t
}

// rounded is the area of a rectangle with rounded corners.
func rounded(a, b, r float64) float64 { return a*b - (4-math.Pi)*r*r }
