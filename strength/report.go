package strength

import (
	"strings"

	"lugwright/part"
)

// Check is one limit state at one place of the bracket, with the case that governs it.
type Check struct {
	Limit    string // Identity.ID
	Title    string
	Clause   string
	Place    string // where, in words: "ear-1, at the root"
	Thing    string // plate, member, pin, bolt or weld group it belongs to
	At       part.Vec
	Case     string // governing load case
	Sharing  string // how the load divides in it, in words; empty when there is nothing to divide
	Demand   float64
	Capacity float64
	// DemandSymbol, CapacitySymbol and Unit belong to Demand and Capacity.
	DemandSymbol, CapacitySymbol, Unit string
	// Utilisation is demand / capacity; +Inf when there is no capacity. 0 when the verdict is "does not apply".
	Utilisation float64
	Verdict     Verdict
	Detail      bool   // a rule about dimensions, not about load
	Fatigue     bool   // a rule about repeated load
	Why         string // for outside the rule and does not apply
	Notes       []string
	Lines       []Line // the calculation of the governing case; empty unless asked for
}

// Compares says whether there is a demand and a capacity: not where a check does not apply, nor where no rule speaks of the weld or the metal.
func (k *Check) Compares() bool {
	return k.Verdict != NotApplied && !(k.Verdict == Outside && k.Demand == 0 && k.Capacity == 0)
}

// WeldOf is the weld at a check's place: of welds acting together the one at which they are used most, which need not be the one under whose name they
// stand. Empty where the check is of no weld.
func (k *Check) WeldOf(b *part.Bracket) string {
	if b.Weld(k.Thing) == nil {
		return ""
	}
	if i := strings.LastIndex(k.Place, ", "+atWeld); i >= 0 {
		if id := k.Place[i+len(", "+atWeld):]; b.Weld(id) != nil {
			return id
		}
	}
	return k.Thing
}

// atWeld begins the label of one of several welds acting together.
const atWeld = "at "

// NotChecked is a limit state that matters here and that nothing covers.
type NotChecked struct{ What, Place, Why string }

// Report is the result for one bracket.
type Report struct {
	Bracket    string
	Basis      string // Card.Name
	Edition    string
	Method     Method
	LoadFactor float64 // applied to service cases
	Checks     []Check // worst first, rules about dimensions after strengths; ties by place, then limit
	NotChecked []NotChecked
	Factors    []FactorValue // settable factors, as used
	PinJoint   string        // name of the basis whose rules serve pin holes, empty for Basis
	Notes      []string      // e.g. materials outside the basis's list
}

// Verdict is the verdict on the whole bracket: fail before outside before pass. Where nothing was checked no rule has spoken.
func (r *Report) Verdict() Verdict {
	v := Pass
	if r.Governing() == nil {
		v = Outside
	}
	for i := range r.Checks {
		switch r.Checks[i].Verdict {
		case Fail:
			return Fail
		case Outside:
			v = Outside
		}
	}
	return v
}

// Governing is the worst check, nil when nothing was checked: dimensions that hold say nothing of the load.
func (r *Report) Governing() *Check {
	if len(r.Checks) == 0 || r.Checks[0].Verdict == NotApplied || r.Checks[0].Verdict == Pass && r.Checks[0].Detail {
		return nil
	}
	return &r.Checks[0]
}
