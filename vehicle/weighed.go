package vehicle

import (
	"fmt"
	"math"
)

// Reading is what the scale showed with the vehicle in a state.
type Reading struct {
	FrontKG, RearKG float64
	PlusMinusKG     float64 // of each reading: the scale's own
}

// Compared is a reading beside the roll-up.
type Compared struct {
	RolledUpKG   Range
	ReadKG       float64
	DifferenceKG float64 // reading less roll-up
	Within       bool    // the ranges of the two meet
}

// AsWeighed is the roll-up of a state held against the scale.
type AsWeighed struct {
	State              string
	Front, Rear, Total Compared
	CGXMM              float64 // of the whole vehicle, as the readings imply it
	RolledUpCGXMM      Range
	// RidingKG and RidingXMM are what the readings leave for all that rides on the chassis-cab, taking that as stated.
	RidingKG, RidingXMM float64
	RidingKnown         bool // false when the readings leave nothing
	RolledUpRiding      Mass
	Words               []string
}

// Reconcile holds axle readings against the roll-up of the state they were taken in.
func Reconcile(v *Vehicle, s State, r Reading) (AsWeighed, error) {
	c := &checker{}
	c.vehicle(v)
	c.states(v, []State{s})
	c.Between("reading.front_kg", r.FrontKG, 0, maxMassKG)
	c.Between("reading.rear_kg", r.RearKG, 0, maxMassKG)
	c.Between("reading.plus_minus_kg", r.PlusMinusKG, 0, maxMassKG)
	if c.Err() == nil && r.FrontKG+r.RearKG == 0 {
		c.Refuse("reading", "both axles read 0 kg", "what the scale showed under each axle")
	}
	if err := c.Err(); err != nil {
		return AsWeighed{}, err
	}
	w := v.weights(&s)
	out := AsWeighed{
		State: s.Name, Front: compare(w.Front.KG, r.FrontKG, r.PlusMinusKG), Rear: compare(w.Rear.KG, r.RearKG, r.PlusMinusKG),
		Total:         compare(w.Vehicle.KG, r.FrontKG+r.RearKG, 2*r.PlusMinusKG),
		CGXMM:         r.RearKG / (r.FrontKG + r.RearKG) * v.WheelbaseMM,
		RolledUpCGXMM: w.Vehicle.XMM, RolledUpRiding: total(v.masses(&s)),
		RidingKG: r.FrontKG + r.RearKG - v.Cab.FrontKG - v.Cab.RearKG,
	}
	if out.RidingKG > 0 {
		out.RidingKnown, out.RidingXMM = true, (r.RearKG-v.Cab.RearKG)/out.RidingKG*v.WheelbaseMM
	}
	for _, a := range []struct {
		name string
		c    Compared
	}{{"front axle", out.Front}, {"rear axle", out.Rear}, {"total", out.Total}} {
		out.Words = append(out.Words, a.c.words(a.name))
	}
	return out, nil
}

func compare(rolled Range, read, pm float64) Compared {
	const speck = 1e-9
	return Compared{rolled, read, read - rolled.Value, read+pm >= rolled.Low*(1-speck) && read-pm <= rolled.High*(1+speck)}
}

func (c *Compared) words(name string) string {
	way := "as rolled up"
	switch d := math.Round(c.DifferenceKG); {
	case d > 0:
		way = fmt.Sprintf("%.0f kg more than the %.0f kg rolled up", d, c.RolledUpKG.Value)
	case d < 0:
		way = fmt.Sprintf("%.0f kg less than the %.0f kg rolled up", -d, c.RolledUpKG.Value)
	}
	if c.Within {
		return fmt.Sprintf("%s: %.0f kg, %s, within the stated confidence", name, c.ReadKG, way)
	}
	return fmt.Sprintf("%s: %.0f kg, %s, outside %.0f to %.0f kg: a mass is missing, wrong or in another place", name, c.ReadKG, way, c.RolledUpKG.Low, c.RolledUpKG.High)
}
