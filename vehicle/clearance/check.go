package clearance

import (
	"fmt"
	"math"

	"lugwright/vehicle/field"
	"lugwright/vehicle/finding"
)

// Way is how twist takes room at a point.
type Way string

const (
	UpDown   Way = "up and down" // half-width times tan of the angle: rail under subframe, tyre under tray
	Sideways Way = "sideways"    // height above the roll axis times sin of the angle: box beside cab
	Free     Way = "free length" // nothing to do with twist: pin withdrawal, grease gun, spanner
)

// Ways lists every way.
func Ways() []Way { return []Way{UpDown, Sideways, Free} }

// Point is one place where two things must not touch.
type Point struct {
	Name    string
	Way     Way
	ArmMM   float64  // half-width from the roll axis, or height above it; 0 for a free length
	ExtraMM float64  // what is needed beside twist: spring travel of a tyre, chains, a pin's whole length with the hand that pulls it
	HadMM   *float64 // measured; nil where it is not
}

// Report is the need and the room at each point.
type Report struct {
	Allowance Allowance
	Findings  []finding.Finding // in the order given
}

// Check gives every point's need. Rules are elementary geometry; the error is part.FieldErrors.
func Check(t Twist, points []Point) (*Report, error) {
	var bad field.Errors
	t.check(&bad)
	if bad.Count("points", len(points), 0, field.MaxCount) {
		bad.Unique("points", len(points), func(i int) string { return points[i].Name }, ".name")
		for i := range points {
			points[i].check(&bad, fmt.Sprintf("points[%d]", i))
		}
	}
	if err := bad.Err(); err != nil {
		return nil, err
	}
	a, err := t.Allowance()
	if err != nil {
		return nil, err
	}
	r := &Report{Allowance: a}
	for i := range points {
		r.Findings = append(r.Findings, points[i].finding(a.AngleRad))
	}
	return r, nil
}

// NeedMM is the room that a point asks for.
func (p *Point) NeedMM(angleRad float64) float64 {
	switch p.Way {
	case UpDown:
		return math.Abs(p.ArmMM)*math.Tan(angleRad) + p.ExtraMM
	case Sideways:
		return math.Abs(p.ArmMM)*math.Sin(angleRad) + p.ExtraMM
	}
	return p.ExtraMM
}

func (p *Point) finding(angleRad float64) finding.Finding {
	rule := map[Way]string{UpDown: "gap up and down under twist", Sideways: "gap sideways under twist", Free: "free length"}[p.Way]
	const source = "geometry"
	need := p.NeedMM(angleRad)
	var words string
	switch p.Way {
	case UpDown:
		words = fmt.Sprintf("%.4g mm from the roll axis x tan %.1f degrees", math.Abs(p.ArmMM), degrees(angleRad))
	case Sideways:
		words = fmt.Sprintf("%.4g mm above the roll axis x sin %.1f degrees", math.Abs(p.ArmMM), degrees(angleRad))
	}
	if p.ExtraMM > 0 && words != "" {
		words += fmt.Sprintf(" + %.4g mm", p.ExtraMM)
	}
	if p.HadMM == nil {
		f := finding.Silent(p.Name, rule, source, "the room is not stated: measure it")
		f.Need, f.Unit, f.Sense = need, "mm", finding.AtLeast
		if words != "" {
			f.Words = words + "; " + f.Words
		}
		return f
	}
	f := finding.Measured(p.Name, rule, source, *p.HadMM, finding.AtLeast, need, "mm")
	f.Words = words
	return f
}

func (p *Point) check(bad *field.Errors, at string) {
	bad.Between(at+".extra_mm", p.ExtraMM, 0, field.MaxMM)
	if p.HadMM != nil {
		bad.Place(at+".had_mm", *p.HadMM)
	}
	switch p.Way {
	case UpDown, Sideways:
		if bad.Place(at+".arm_mm", p.ArmMM) && p.ArmMM == 0 {
			bad.Refuse(at+".arm_mm", "0", "half-width from the roll axis, or height above it")
		}
	case Free:
		if p.ArmMM != 0 {
			bad.Refuse(at+".arm_mm", fmt.Sprintf("%g", p.ArmMM), "0: a free length has no part in twist")
		}
		if p.ExtraMM == 0 {
			bad.Refuse(at+".extra_mm", "0", "the free length that is needed")
		}
	default:
		bad.Refuse(at+".way", fmt.Sprintf("%q", p.Way), fmt.Sprintf("one of %q", Ways()))
	}
}
