package units

// This file holds the units: their spellings, what they measure, and what one of them is inside.

import (
	"math"
	"strings"

	"lugwright/internal/spelling"
)

// Exact definitions: the inch and the pound by the international yard and pound agreement of 1959, standard gravity by
// the 3rd CGPM (1901), the pound-force as their product; all repeated in NIST SP 811 (2008), appendix B.
const (
	inch     = 25.4            // mm
	foot     = 12 * inch       // mm
	pound    = 0.45359237      // kg
	gravity  = 9.80665         // m/s2
	poundF   = pound * gravity // N, 4.4482216152605
	kip      = 1000 * poundF   // N
	poundIn2 = poundF / (inch * inch)
	usGallon = 231 * inch * inch * inch / 1e6 // L, the gallon of 231 cubic inches
)

// A unit is one spelling group; the factor turns a number of these units into a number inside.
type unit struct {
	names  string // spellings parted by a space; "*" stands for a blank, dot or dash between two units
	dim    Dim
	factor float64
}

var table = []unit{
	{"mm", Length, 1},
	{"cm", Length, 10},
	{"m", Length, 1000},
	{`in " inch inches`, Length, inch},
	{"ft ' foot feet", Length, foot},

	{"N", Force, 1},
	{"kN", Force, 1000},
	{"lbf", Force, poundF},
	{"kip kips", Force, kip},

	{"N*mm mm*N Nmm", Moment, 1},
	{"N*m m*N Nm", Moment, 1000},
	{"kN*mm mm*kN", Moment, 1000},
	{"kN*m m*kN kNm", Moment, 1e6},
	{"kN*cm cm*kN", Moment, 1e4},
	{"lbf*in in*lbf", Moment, poundF * inch},
	{"lbf*ft ft*lbf", Moment, poundF * foot},
	{"kip*in in*kip kips*in in*kips", Moment, kip * inch},
	{"kip*ft ft*kip kips*ft ft*kips", Moment, kip * foot},

	{"Pa", Stress, 1e-6},
	{"kPa", Stress, 1e-3},
	{"MPa N/mm2", Stress, 1},
	{"GPa kN/mm2", Stress, 1000},
	{"N/cm2", Stress, 0.01},
	{"kN/cm2", Stress, 10},
	{"psi lbf/in2", Stress, poundIn2},
	{"ksi kip/in2 kips/in2", Stress, 1000 * poundIn2},

	{"kg", Mass, 1},
	{"t", Mass, 1000},
	{"lb lbs", Mass, pound},

	{"rad", Angle, 1},
	{"deg ° degree degrees", Angle, math.Pi / 180},

	{"mm2", Area, 1},
	{"cm2", Area, 100},
	{"m2", Area, 1e6},
	{"in2", Area, inch * inch},
	{"ft2", Area, foot * foot},

	{"mm3", SectionModulus, 1},
	{"cm3", SectionModulus, 1000},
	{"in3", SectionModulus, inch * inch * inch},

	{"mm4", SecondMoment, 1},
	{"cm4", SecondMoment, 10000},
	{"in4", SecondMoment, inch * inch * inch * inch},

	{"g", Acceleration, 1},
	{"m/s2", Acceleration, 1 / gravity},

	{"N/mm kN/m", ForcePerLength, 1},
	{"N/m", ForcePerLength, 1e-3},
	{"kN/mm", ForcePerLength, 1000},
	{"lbf/in", ForcePerLength, poundF / inch},
	{"lbf/ft", ForcePerLength, poundF / foot},
	{"kip/in kips/in", ForcePerLength, kip / inch},
	{"kip/ft kips/ft", ForcePerLength, kip / foot},

	{"L l litre litres liter liters", Volume, 1},
	{"m3", Volume, 1000},
	{"US*gal US*gallon US*gallons", Volume, usGallon},

	{"kg/L kg/l", Density, 1},
	{"kg/m3", Density, 1e-3},
	{"lb/US*gal", Density, pound / usGallon},
	{"lb/ft3", Density, pound / (foot * foot * foot / 1e6)},

	{"%", Ratio, 0.01},
}

var byName = indexUnits()

func indexUnits() map[string]unit {
	m := map[string]unit{}
	for _, u := range table {
		for _, name := range strings.Fields(u.names) {
			m[name] = u
		}
	}
	return m
}

var tableSpelling = strings.NewReplacer("in.", "in", " / ", "/", " /", "/", "/ ", "/", " * ", "*", " *", "*", "* ", "*", " ", "*", "-", "*", "^", "")

// canonical brings a unit as written ("kN m", "mm^2", "kip-in", "in.2") to the table's spelling.
func canonical(written string) string {
	return tableSpelling.Replace(strings.Join(strings.Fields(tidy(written)), " "))
}

// Factor gives what one of the named unit is inside, and what it measures. An empty name is a bare ratio. An unknown
// name is an *Error that tells the nearest known one.
func Factor(unitName string) (factor float64, dim Dim, err error) {
	name := canonical(unitName)
	if name == "" {
		return 1, Ratio, nil
	}
	u, ok := byName[name]
	if !ok {
		return 0, 0, &Error{Text: unitName, Reason: "is not a known unit", Accept: suggest(name, 0)}
	}
	return u.factor, u.dim, nil
}

// suggest names the known unit that differs least, of the wanted kind where one is wanted, or the common ones when none is near.
func suggest(name string, want Dim) string {
	if strings.HasPrefix(name, "gal") {
		return "write US gal, or L: there are several gallons"
	}
	best, least := "", 3
	for _, u := range table {
		if want != 0 && u.dim != want {
			continue
		}
		for _, known := range strings.Fields(u.names) {
			if n := spelling.Distance(strings.ToLower(name), strings.ToLower(known)); n < least && n < len(known) {
				best, least = known, n
			}
		}
	}
	if best == "" {
		return "known units are mm, m, in, ft, N, kN, lbf, kip, MPa, ksi, kg, lb, deg, rad and their products"
	}
	return "the nearest known unit is " + strings.ReplaceAll(best, "*", " ")
}
