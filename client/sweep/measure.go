package sweep

// This file measures what a bracket takes to make.

import (
	"fmt"
	"math"
	"slices"

	"lugwright/client/run"
	"lugwright/part"
)

// Takes is what one bracket takes to make.
type Takes struct {
	KG      float64 // all told: plates as cut, members, pins, weld metal and bolts; no rods
	BareKG  float64 // plates as cut, members and pins: what the pack's lists weigh
	CutMM   float64 // length of all cuts of its plates
	WeldMM3 float64 // weld metal without reinforcement
	Stock   []Stock // what its plates are cut from, thinnest first, each once
	// Fasteners are the sizes of its pins and bolts, each with its name in the bracket, in the order of their names.
	Fasteners []string
}

// Stock is a thickness of plate of one material.
type Stock struct {
	ThicknessMM float64
	Material    string
}

// steel is the density of bolts, in kg/mm3.
const steel = 7.85e-6

// Measure measures a bracket as the pack's lists do, without their rounding, and beside that its weld metal and its bolts. Without these a larger bolt, through a
// larger hole, would seem lighter. A grade without a density is refused.
func Measure(b *part.Bracket, d run.Densities) (Takes, error) {
	var t Takes
	for i := range b.Plates {
		p := &b.Plates[i]
		t.CutMM += p.Shape(true).Length()
		t.add(Stock{p.ThicknessMM, p.Material})
	}
	var err error
	if t.BareKG, err = d.KG(b.Volumes()); err != nil {
		return Takes{}, err
	}
	t.KG = t.BareKG
	for i := range b.Welds {
		w := &b.Welds[i]
		mm3 := w.VolumeMM3()
		t.WeldMM3, t.KG = t.WeldMM3+mm3, t.KG+mm3*filler(d, b, w)
	}
	for i := range b.Bolts {
		g := &b.Bolts[i]
		t.KG += boltVolume(g) * steel
		t.Fasteners = append(t.Fasteners, fmt.Sprintf("%s %s %s", g.ID, g.Size, g.Grade))
	}
	for i := range b.Pins {
		t.Fasteners = append(t.Fasteners, fmt.Sprintf("%s %g", b.Pins[i].ID, b.Pins[i].DiaMM))
	}
	slices.Sort(t.Fasteners)
	return t, nil
}

// filler is as dense as the plate that it joins.
func filler(d run.Densities, b *part.Bracket, w *part.WeldGroup) float64 {
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
