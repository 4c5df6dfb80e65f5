package material

// Bolt grades and how they are looked up.

// BoltBand is a row of a bolt table: it holds for nominal diameters over OverMM up to and with ToMM.
type BoltBand struct {
	OverMM, ToMM                   float64
	ProofMPa, YieldMPa, TensileMPa float64 // minimum values; ProofMPa is 0 where the standard gives none
}

// BoltGrade is a property class or grade of bolt.
type BoltGrade struct {
	Name         string // "8.8", "SAE 5", "A325", "A4-70"
	Aliases      []string
	Source       string
	FromMemory   bool
	Bands        []BoltBand
	NominalFyMPa float64  // nominal f_yb of EN 1993-1-8 Table 3.1; 0 where that table has no such class
	NominalFuMPa float64  // nominal f_ub of the same table
	ListedIn     []string // design standards whose bolt list has it
}

// Strength gives minimum proof, yield and tensile stress (MPa) at nominal diameter dMM; proof is 0 where the standard gives none.
// A diameter the table does not reach is a *RangeError.
func (g *BoltGrade) Strength(dMM float64) (proof, yield, tensile float64, err error) {
	for _, b := range g.Bands {
		if within(dMM, b.OverMM, b.ToMM) {
			return b.ProofMPa, b.YieldMPa, b.TensileMPa, nil
		}
	}
	return 0, 0, 0, &RangeError{g.Name, "diameter", dMM, g.Bands[0].OverMM, g.Bands[len(g.Bands)-1].ToMM}
}

// Listed reports whether a design standard's bolt list has the grade.
func (g *BoltGrade) Listed(standard string) bool { return contains(g.ListedIn, standard) }

// LookupBoltGrade finds a bolt grade by exact name or alias; otherwise the error is an *UnknownError.
func LookupBoltGrade(name string) (*BoltGrade, error) {
	for i := range boltGrades {
		if boltGrades[i].Name == name || contains(boltGrades[i].Aliases, name) {
			return &boltGrades[i], nil
		}
	}
	return nil, &UnknownError{"bolt grade", name, nearest(name, BoltGradeNames())}
}

// BoltGradeNames lists the names in table order.
func BoltGradeNames() []string {
	names := make([]string, len(boltGrades))
	for i := range boltGrades {
		names[i] = boltGrades[i].Name
	}
	return names
}
