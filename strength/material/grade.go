package material

// What a plate, bar, shape or tube grade is, and how it is looked up.

import "math"

// Band is a row of a strength table: it holds for thickness (or bar diameter) over OverMM up to and with ToMM.
type Band struct {
	OverMM, ToMM float64
	FyMPa, FuMPa float64 // minimum yield (or 0.2 % proof) and tensile strength
}

// Grade is a structural material.
type Grade struct {
	Name       string   // as typed in a job: "S355", "A36", "6061-T6"
	Aliases    []string // other exact names of the same table
	Form       string   // "plate, bar, shape", "round tube", "bar", ...
	Family     Family
	Source     string // the table
	FromMemory bool   // true when the values were not read from the table but written from memory
	EMPa       float64
	Density    float64  // kg/m^3
	DesignWall float64  // design wall of a tube over its nominal one; 0 where design goes by the nominal wall
	Bands      []Band   // rising thickness
	Welded     *Band    // strength beside a weld (aluminium), nil when the table has none
	WeldedFrom string   // source of Welded, with "from memory" where so
	ListedIn   []string // design standards whose material list has it
}

// Family groups grades by metal.
type Family string

// The metals.
const (
	CarbonSteel Family = "carbon steel"
	Stainless   Family = "stainless steel"
	Aluminium   Family = "aluminium"
)

// KgPerMM3 is the density in kg/mm^3.
func (g *Grade) KgPerMM3() float64 { return g.Density * 1e-9 }

// Strength gives minimum yield and tensile strength (MPa) at thickness (or bar diameter) tMM.
// A thickness the table does not reach is a *RangeError.
func (g *Grade) Strength(tMM float64) (FyMPa, FuMPa float64, err error) {
	for _, b := range g.Bands {
		if within(tMM, b.OverMM, b.ToMM) {
			return b.FyMPa, b.FuMPa, nil
		}
	}
	return 0, 0, g.outside(tMM)
}

// WeldedStrength gives the strength within the heat-affected zone of a weld (MPa). For steel it is Strength.
// An aluminium grade whose welded values are not known is an *UnknownError of kind "welded strength".
func (g *Grade) WeldedStrength(tMM float64) (FyMPa, FuMPa float64, err error) {
	if g.Family != Aluminium {
		return g.Strength(tMM)
	}
	if g.Welded == nil {
		return 0, 0, &UnknownError{Kind: "welded strength", Name: g.Name, Nearest: "EN AW-6061-T6"}
	}
	if !within(tMM, g.Welded.OverMM, g.Welded.ToMM) {
		return 0, 0, &RangeError{g.Name, "thickness", tMM, g.Welded.OverMM, g.Welded.ToMM}
	}
	return g.Welded.FyMPa, g.Welded.FuMPa, nil
}

// within allows for rounding, so that 0.75 in is 19.05 mm however it was reckoned.
func within(x, over, to float64) bool { return x > over*(1+1e-9) && x <= to*(1+1e-9) && x > 0 }

func (g *Grade) outside(tMM float64) error {
	e := &RangeError{Name: g.Name, What: "thickness", GotMM: tMM, OverMM: math.Inf(1)}
	for _, b := range g.Bands {
		e.OverMM, e.ToMM = math.Min(e.OverMM, b.OverMM), math.Max(e.ToMM, b.ToMM)
	}
	return e
}

// Listed reports whether a design standard's material list has the grade.
func (g *Grade) Listed(standard string) bool { return contains(g.ListedIn, standard) }

func contains(list []string, s string) bool {
	for _, x := range list {
		if x == s {
			return true
		}
	}
	return false
}

// LookupGrade finds a grade by its exact name or alias; otherwise the error is an *UnknownError with the nearest name.
func LookupGrade(name string) (*Grade, error) {
	for i := range grades {
		if grades[i].Name == name || contains(grades[i].Aliases, name) {
			return &grades[i], nil
		}
	}
	return nil, &UnknownError{"grade", name, nearest(name, GradeNames())}
}

// GradeNames lists the names in table order.
func GradeNames() []string {
	names := make([]string, len(grades))
	for i := range grades {
		names[i] = grades[i].Name
	}
	return names
}
