package command

// This file writes the bare numbers of tables, whose heads name the unit.

import (
	"math"

	"lugwright/part"
	"lugwright/units"
)

// A scale is the units of a table: kg, mm, kN and MPa, or lb, in, lbf and ksi.
type scale struct{ system units.System }

func (s scale) inch() bool { return s.system == units.Inch }

// in writes a number inside in one unit or the other, with so many decimals.
func (s scale) in(v float64, metric string, decimals int, inch string, inchDecimals int) string {
	unit := metric
	if s.inch() {
		unit, decimals = inch, inchDecimals
	}
	factor, _, err := units.Factor(unit)
	if err != nil {
		return "?"
	}
	return units.FormatPlain(v/factor, decimals)
}

func (s scale) name(metric, inch string) string {
	if s.inch() {
		return inch
	}
	return metric
}

func (s scale) massUnit() string   { return s.name("kg", "lb") }
func (s scale) forceUnit() string  { return s.name("kN", "lbf") }
func (s scale) lengthUnit() string { return s.name("mm", "in") }
func (s scale) stressUnit() string { return s.name("MPa", "ksi") }

func (s scale) mass(kg float64) string     { return s.in(kg, "kg", 0, "lb", 0) }
func (s scale) force(n float64) string     { return s.in(n, "kN", 2, "lbf", 0) }
func (s scale) length(mm float64) string   { return s.in(mm, "mm", 0, "in", 1) }
func (s scale) stress(mpa float64) string  { return s.in(mpa, "MPa", 0, "ksi", 1) }
func (s scale) small(n float64) string     { return s.in(n, "N", 0, "lbf", 0) }
func (s scale) degrees(rad float64) string { return s.in(rad, "deg", 1, "deg", 1) }

// words is a service's text in the job's units.
func (s scale) words(text string) string {
	return units.Words(text, s.system)
}

// sideways says which way a sideways force or offset goes.
func sideways(y float64) string {
	switch {
	case y > 0:
		return "left"
	case y < 0:
		return "right"
	}
	return ""
}

// offset is a distance from the centreline, with its side.
func (s scale) offset(mm float64) string {
	text := s.length(math.Abs(mm))
	if text == s.length(0) || mm == 0 {
		return s.length(0)
	}
	return text + " " + sideways(mm)
}

func (s scale) at(v part.Vec) string {
	one := func(mm float64) string { return units.Format(mm, units.Length, s.system) }
	return "x " + one(v.X) + ", y " + one(v.Y) + ", z " + one(v.Z)
}

// measure is a finding's number with its unit; large areas are in m2.
func (s scale) measure(v float64, unit string) string {
	if unit == "mm2" && v >= 1e4 && !s.inch() {
		return units.FormatPlain(v/1e6, 3) + " m2"
	}
	return show(v, unit, s.system)
}
