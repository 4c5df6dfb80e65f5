package strength

// Card says which document a basis is, in which edition, and how it takes loads.
type Card struct {
	Name     string // "AISC 360-22"
	Document string
	Edition  string
	Methods  []Method
	// ServiceFactor multiplies service cases under a method that wants factored loads; 1 for allowable methods.
	ServiceFactor map[Method]float64
	FactorSource  string
	Listing       string // how the material lists of this document begin, e.g. "AISC 360-22"
}

// Basis is one design basis: its limit states, and which feature each is applied to.
type Basis struct {
	Card   Card
	Limits []Evaluator // every limit state, in the order of the document
	Rules  Rules
}

// Rules apply limit states to features. A feature with no rule is reported as not checked.
type Rules struct {
	PinPlane    []Rule[PinPlane]
	PinSpan     []Rule[PinSpan]
	Bore        []Rule[Bore]
	Cut         []Rule[Cut]
	WeldLine    []Rule[WeldLine]
	WeldSize    []Rule[WeldLine] // rules about dimensions, once for each weld group
	WeldFlow    []Rule[WeldFlow]
	Bolt        []Rule[Bolt]
	BoltBearing []Rule[BoltBearing]
	Prying      []Rule[Prying]
	Outstand    []Rule[Outstand]
	Wall        []Rule[Wall]
}

// Rule binds a feature to the givens of one limit state and evaluates it.
type Rule[F any] struct {
	Of    Evaluator
	Check func(c *Calc, f *F)
}

// Limit finds a limit state by its id, nil when the basis has none.
func (b *Basis) Limit(id string) Evaluator {
	for _, l := range b.Limits {
		if l.Info().ID == id {
			return l
		}
	}
	return nil
}
