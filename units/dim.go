// Package units turns quantities as a shop writes them ("12 mm", "1-3/8 in", "8 kN") into plain numbers and back.
// It never decides whether a value is sensible: ranges belong to the caller.
//
// The numbers are in the module's own units: N, mm, MPa, kg, rad, mm2, mm3, mm4, N*mm, N/mm, g of gravity, or none.
package units

// This file holds the kinds of quantity, and the sentence parts that describe each in a message.

// Dim is a kind of quantity. The comment beside each gives the unit of its number inside.
type Dim int

// The kinds of quantity that can be read and written.
const (
	Length         Dim = iota + 1 // mm
	Force                         // N
	Moment                        // N*mm
	Stress                        // MPa
	Mass                          // kg
	Angle                         // rad
	Area                          // mm2
	SectionModulus                // mm3
	SecondMoment                  // mm4
	Acceleration                  // g of gravity (9.80665 m/s2)
	ForcePerLength                // N/mm
	Volume                        // L
	Density                       // kg/L
	Ratio                         // none
	Count                         // none, whole
)

// System says in which units a quantity is written for a reader.
type System int

// The two systems of a shop's paper.
const (
	Metric System = iota
	Inch
)

type dimWords struct {
	name    string // with its article, as in "is a length"
	example string // what would be accepted
}

var words = map[Dim]dimWords{
	Length:         {"a length", "12 mm or 1/2 in"},
	Force:          {"a force", "12 kN or 800 lbf"},
	Moment:         {"a moment", "1.5 kN m or 300 lbf in"},
	Stress:         {"a stress", "355 MPa or 50 ksi"},
	Mass:           {"a mass", "210 kg or 460 lb"},
	Angle:          {"an angle", "10 deg or 0.2 rad"},
	Area:           {"an area", "200 mm2 or 0.31 in2"},
	SectionModulus: {"a section modulus", "5000 mm3 or 0.3 in3"},
	SecondMoment:   {"a second moment of area", "80000 mm4 or 0.2 in4"},
	Acceleration:   {"an acceleration", "0.5 g"},
	ForcePerLength: {"a force per length", "250 N/mm or 1.4 kip/in"},
	Volume:         {"a volume", "180 L or 48 US gal"},
	Density:        {"a density", "1 kg/L or 8.34 lb/US gal"},
	Ratio:          {"a ratio", "0.85 or 85 %"},
	Count:          {"a count", "4"},
}

// String gives the kind's name without its article: "length", "force per length".
func (d Dim) String() string {
	w, ok := words[d]
	if !ok {
		return "unknown kind of quantity"
	}
	if d == Angle || d == Area || d == Acceleration {
		return w.name[len("an "):]
	}
	return w.name[len("a "):]
}

// bare says whether a number without a unit is a complete quantity of this kind.
func (d Dim) bare() bool { return d == Ratio || d == Count }

func (d Dim) needed() string { return words[d].name + " such as " + words[d].example + " is needed" }

func (d Dim) invited() string { return "write " + words[d].name + " such as " + words[d].example }
