package part

// This file measures how much material a bracket takes.

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
