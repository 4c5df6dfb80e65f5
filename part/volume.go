package part

// This file measures how much material, and how much weld metal, a bracket takes.

import (
	"math"
	"slices"
)

// Volume is how much there is of one material.
type Volume struct {
	Material string
	MM3      float64
}

// Volumes are those of plates as cut, members and pins, by material in the order in which each first appears. Bolts, rods and weld metal are left out.
func (b *Bracket) Volumes() []Volume {
	var out []Volume
	add := func(material string, mm3 float64) {
		i := slices.IndexFunc(out, func(v Volume) bool { return v.Material == material })
		if i < 0 {
			i, out = len(out), append(out, Volume{Material: material})
		}
		out[i].MM3 += mm3
	}
	for i := range b.Plates {
		p := &b.Plates[i]
		add(p.Material, p.Shape(true).Area()*p.ThicknessMM)
	}
	for i := range b.Members {
		add(b.Members[i].Material, b.Members[i].VolumeMM3())
	}
	for i := range b.Pins {
		p := &b.Pins[i]
		add(p.Material, math.Pi/4*p.DiaMM*p.DiaMM*p.LengthMM)
	}
	return out
}

// VolumeMM3 is the weld metal without reinforcement: that of equal-legged fillets, of grooves opened to 60 degrees (common practice, no source) and of filled
// slots. A groove through the plate from both faces is two of half its depth.
func (w *WeldGroup) VolumeMM3() float64 {
	length := 0.0
	for _, s := range w.Segments {
		length += s.B.Sub(s.A).Norm()
	}
	sides, leg := 1.0, w.LegMM
	if w.BothSides {
		sides = 2
	}
	groove := math.Tan(math.Pi / 6)
	switch w.Kind {
	case Fillet:
		return sides * leg * leg / 2 * length
	case PJP:
		return sides * leg * leg * groove * length
	case CJP:
		return leg * leg / sides * groove * length
	}
	area := 0.0
	for _, s := range w.Segments {
		area += s.B.Sub(s.A).Norm()*w.WidthMM - (1-math.Pi/4)*w.WidthMM*w.WidthMM
	}
	return area * leg
}
