package sweep

// This file measures what a bracket takes to make.

import (
	"fmt"
	"math"
	"slices"

	"lugwright/part"
	"lugwright/services/dial"
)

// Takes is what one bracket takes to make.
type Takes struct {
	KG      float64 // all told: plates as cut, members, pins, weld metal and bolts; no rods
	BareKG  float64 // plates as cut, members and pins: what the pack's lists weigh
	CutMM   float64 // length of all cuts of its plates
	WeldMM3 float64 // weld metal without reinforcement
	Stock   []Stock // what its plates are cut from, thinnest first, each once
}

// Stock is a thickness of plate of one material.
type Stock struct {
	ThicknessMM float64
	Material    string
}

// Densities is kg/mm3 by grade.
type Densities map[string]float64

// DensitiesOf reads the list of materials.
func DensitiesOf(m *dial.Materials) Densities {
	d := Densities{}
	for i := range m.Grades {
		g := &m.Grades[i]
		for _, name := range append(slices.Clone(g.Aliases), g.Name) {
			d[name] = g.KgPerMM3()
		}
	}
	return d
}

// steel is the density of bolts, in kg/mm3.
const steel = 7.85e-6

// Measure measures a bracket as the pack's lists do, without their rounding, and beside that its weld metal and its bolts. Without these a larger bolt, through a
// larger hole, would seem lighter. A grade without a density is refused.
func (d Densities) Measure(b *part.Bracket) (Takes, error) {
	var t Takes
	weigh := func(id, grade string, mm3 float64) error {
		if d[grade] <= 0 {
			return &part.FieldError{Field: id, Found: fmt.Sprintf("%q, of which no density is listed", grade), Accept: "a grade that `lugwright materials` lists"}
		}
		t.BareKG += mm3 * d[grade]
		return nil
	}
	for i := range b.Plates {
		p := &b.Plates[i]
		cut := p.Shape(true)
		t.CutMM += cut.Length()
		if err := weigh(p.ID, p.Material, cut.Area()*p.ThicknessMM); err != nil {
			return Takes{}, err
		}
		t.add(Stock{p.ThicknessMM, p.Material})
	}
	for i := range b.Members {
		m := &b.Members[i]
		if err := weigh(m.ID, m.Material, m.VolumeMM3()); err != nil {
			return Takes{}, err
		}
	}
	for i := range b.Pins {
		p := &b.Pins[i]
		if err := weigh(p.ID, p.Material, math.Pi/4*p.DiaMM*p.DiaMM*p.LengthMM); err != nil {
			return Takes{}, err
		}
	}
	t.KG = t.BareKG
	for i := range b.Welds {
		w := &b.Welds[i]
		mm3 := weldVolume(w)
		t.WeldMM3, t.KG = t.WeldMM3+mm3, t.KG+mm3*d.filler(b, w)
	}
	for i := range b.Bolts {
		t.KG += boltVolume(&b.Bolts[i]) * steel
	}
	return t, nil
}

// filler is as dense as the plate that it joins.
func (d Densities) filler(b *part.Bracket, w *part.WeldGroup) float64 {
	owner := b.Owner(w.Joins[0])
	if p := b.Plate(owner); p != nil && d[p.Material] > 0 {
		return d[p.Material]
	}
	if m := b.Member(owner); m != nil && d[m.Material] > 0 {
		return d[m.Material]
	}
	return steel
}

// boltVolume reckons head, nut and washers as four diameters of shank (common practice, no source). Bolts that are listed again count once.
func boltVolume(g *part.BoltGroup) float64 {
	if g.SameAs != "" {
		return 0
	}
	return math.Pi / 4 * g.DiaMM * g.DiaMM * (g.GripMM + 4*g.DiaMM) * float64(len(g.Points))
}

func (t *Takes) add(s Stock) {
	if i, found := slices.BinarySearchFunc(t.Stock, s, compareStock); !found {
		t.Stock = slices.Insert(t.Stock, i, s)
	}
}

func compareStock(a, b Stock) int {
	switch {
	case a.ThicknessMM < b.ThicknessMM:
		return -1
	case a.ThicknessMM > b.ThicknessMM:
		return 1
	case a.Material < b.Material:
		return -1
	case a.Material > b.Material:
		return 1
	}
	return 0
}

// weldVolume is that of equal-legged fillets, of grooves opened to 60 degrees (common practice, no source) and of filled slots. A groove through the plate
// from both faces is two of half its depth.
func weldVolume(w *part.WeldGroup) float64 {
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
	case part.Fillet:
		return sides * leg * leg / 2 * length
	case part.PJP:
		return sides * leg * leg * groove * length
	case part.CJP:
		return leg * leg / sides * groove * length
	}
	area := 0.0
	for _, s := range w.Segments {
		area += s.B.Sub(s.A).Norm()*w.WidthMM - (1-math.Pi/4)*w.WidthMM*w.WidthMM
	}
	return area * leg
}
