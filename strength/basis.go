package strength

import (
	"fmt"
	"slices"
	"strings"

	"lugwright/part"
	"lugwright/strength/material"
)

// Card says which document a basis is, in which edition, and how it takes loads.
type Card struct {
	Name     string // "AISC 360-22"
	Document string
	Edition  string
	Methods  []Method
	// ServiceFactor multiplies service cases under a method that wants factored loads; 1 for allowable methods.
	ServiceFactor map[Method]float64
	FactorSource  string
	// Factors are what a user may set: partial factors, design factors.
	Factors []Factor
	// ReferenceOnly bases serve evaluate and verify: older editions and textbook methods that no bracket is checked on.
	ReferenceOnly bool
	PinHolesOnly  bool   // serves as the pin joint of another basis: the rest of a bracket it does not judge
	Listing       string // how the material lists of this document begin, e.g. "AISC 360-22"
}

// Factor is a settable number of a basis, with the values that named sets (national choices) give it.
type Factor struct {
	Symbol, Unit, Words string
	Default, Min, Max   float64
	Sets                []FactorSet
}

// FactorSet is the value that one named set gives to a factor.
type FactorSet struct {
	Name  string
	Value float64
}

// FactorValue is a factor as set.
type FactorValue struct {
	Symbol, Unit, Words string
	Value               float64
}

// FactorValues gives each factor its value: the default, that of the named set (empty: none), or the user's own. Errors are
// part.FieldErrors that name "factors.SYMBOL" or "factor_set".
func (c *Card) FactorValues(set string, own map[string]float64) ([]FactorValue, error) {
	out := make([]FactorValue, len(c.Factors))
	var bad part.FieldErrors
	used := 0
	var sets []string
	for i, f := range c.Factors {
		out[i] = FactorValue{f.Symbol, f.Unit, f.Words, f.Default}
		for _, s := range f.Sets {
			if !slices.Contains(sets, s.Name) {
				sets = append(sets, s.Name)
			}
			if s.Name == set {
				out[i].Value = s.Value
			}
		}
		v, ok := own[f.Symbol]
		if !ok {
			continue
		}
		used++
		if !(v >= f.Min && v <= f.Max) {
			bad = append(bad, &part.FieldError{Field: "factors." + f.Symbol, Found: fmt.Sprint(v), Accept: fmt.Sprintf("%g to %g (%s)", f.Min, f.Max, f.Words)})
		}
		out[i].Value = v
	}
	if set != "" && !slices.Contains(sets, set) {
		bad = append(bad, &part.FieldError{Field: "factor_set", Found: fmt.Sprintf("%s has no set %q", c.Name, set), Accept: oneOf(sets, set)})
	}
	if used < len(own) {
		bad = append(bad, c.strangers(own)...)
	}
	if bad != nil {
		return nil, bad
	}
	return out, nil
}

// FactorsOf gives the factors of a card and of the one whose rules serve its pin holes, nil for none. A set or a symbol that only the
// second has is meant for it.
func FactorsOf(c, pin *Card, set string, own map[string]float64) ([]FactorValue, error) {
	if pin == nil {
		return c.FactorValues(set, own)
	}
	pinSet, pinOwn, rest := "", map[string]float64{}, map[string]float64{}
	if set != "" && !c.hasSet(set) && pin.hasSet(set) {
		set, pinSet = "", set
	}
	for symbol, v := range own {
		if !c.hasFactor(symbol) && pin.hasFactor(symbol) {
			pinOwn[symbol] = v
		} else {
			rest[symbol] = v
		}
	}
	values, err := c.FactorValues(set, rest)
	more, errPin := pin.FactorValues(pinSet, pinOwn)
	if bad := append(part.Fields(err), part.Fields(errPin)...); bad != nil {
		return nil, bad
	}
	return append(values, more...), nil
}

func (c *Card) hasFactor(symbol string) bool {
	return slices.ContainsFunc(c.Factors, func(f Factor) bool { return f.Symbol == symbol })
}

func (c *Card) hasSet(name string) bool {
	return slices.ContainsFunc(c.Factors, func(f Factor) bool {
		return slices.ContainsFunc(f.Sets, func(s FactorSet) bool { return s.Name == name })
	})
}

// strangers are the given factors that the card does not have, in order.
func (c *Card) strangers(own map[string]float64) part.FieldErrors {
	var names, known []string
	for _, f := range c.Factors {
		known = append(known, f.Symbol)
	}
	for name := range own {
		if !slices.Contains(known, name) {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	var bad part.FieldErrors
	for _, name := range names {
		bad = append(bad, &part.FieldError{Field: "factors." + name, Found: c.Name + " has no such factor", Accept: oneOf(known, name)})
	}
	return bad
}

func oneOf(known []string, name string) string {
	if known == nil {
		return "leave it out"
	}
	return "one of: " + strings.Join(known, ", ") + part.Nearest(name, known)
}

// WithPinJoint is the basis with the rules of another for the hole of a pin, so that lugs and ears may be checked on a pin-plate
// standard of their own. Both must take loads at the same level.
func (b *Basis) WithPinJoint(pin *Basis, method Method) (*Basis, error) {
	own := pin.Card.Methods[0]
	if b.Card.ServiceFactor[method] != pin.Card.ServiceFactor[own] {
		return nil, &part.FieldError{
			Field: "pin_joint", Found: fmt.Sprintf("%s takes loads at another level than %s with %s", pin.Card.Name, b.Card.Name, method),
			Accept: "a method of the basis that takes service loads as they are, or no pin_joint",
		}
	}
	if len(pin.Rules.Bore) == 0 {
		return nil, &part.FieldError{Field: "pin_joint", Found: pin.Card.Name + " has no rules for a pin hole", Accept: "a pin-plate basis"}
	}
	mixed := *b
	mixed.Rules.Bore, mixed.Rules.Eye = pin.Rules.Bore, pin.Rules.Eye
	mixed.pinJoint = pin
	return &mixed, nil
}

// without is the basis less the limit states with the given ids, which must be marked as such that no published rule states. Errors are
// part.FieldErrors that name "leave_out[i]".
func (b *Basis) without(ids []string) (*Basis, error) {
	if len(ids) == 0 {
		return b, nil
	}
	var free []string
	for _, l := range b.Limits {
		if l.Ident().Unruled {
			free = append(free, l.Ident().ID)
		}
	}
	var bad part.FieldErrors
	for i, id := range ids {
		field, accept := fmt.Sprintf("leave_out[%d]", i), oneOf(free, id)
		switch l := b.Limit(id); {
		case l == nil:
			bad = append(bad, &part.FieldError{Field: field, Found: fmt.Sprintf("%s has no limit state %q", b.Card.Name, id), Accept: accept})
		case !slices.Contains(free, id):
			bad = append(bad, &part.FieldError{Field: field, Found: id + " is always checked (" + l.Ident().Clause.String() + ")", Accept: accept})
		case slices.Contains(ids[:i], id):
			bad = append(bad, &part.FieldError{Field: field, Found: id + " once more", Accept: "each once"})
		}
	}
	if bad != nil {
		return nil, bad
	}
	less := *b
	less.Rules = b.Rules.without(ids)
	return &less, nil
}

// Basis is one design basis: its limit states, and which feature each is applied to.
type Basis struct {
	Card   Card
	Limits []Evaluator // every limit state, in the order of the document
	Rules  Rules
	Metals []material.Family // that it has rules for beside carbon steel

	pinJoint *Basis // whose rules serve pin holes, nil for its own
}

// Rules apply limit states to features. A feature with no rule is reported as not checked.
type Rules struct {
	PinPlane    []Rule[PinPlane]
	PinSpan     []Rule[PinSpan]
	Bore        []Rule[Bore]
	Eye         []Rule[Bore] // for a hole of which only diameter and thickness are known: a body's own lug
	Cut         []Rule[Cut]
	WeldLine    []Rule[WeldLine]
	CJPLine     []Rule[WeldLine] // of welds of complete penetration
	PlugLine    []Rule[WeldLine]
	WeldSize    []Rule[WeldLine] // rules about dimensions, once for each weld group
	WeldFlow    []Rule[WeldFlow]
	CJPFlow     []Rule[WeldFlow] // through welds of complete penetration
	Bolt        []Rule[Bolt]
	BoltSet     []Rule[BoltSet]
	Preloaded   []Rule[BoltSet] // where a preload is stated
	Slip        []Rule[Bolt]    // where besides the joint must not slip
	Thread      []Rule[Thread]
	BoltBearing []Rule[BoltBearing]
	Prying      []Rule[Prying]
	Block       []Rule[Block]
	Rod         []Rule[Rod]
	Seat        []Rule[Seat]
	PullThrough []Rule[PullThrough]
	Bush        []Rule[Bush]
	Fatigue     []Rule[Fatigue]
	RootFatigue []Rule[Fatigue] // cracks from the roots of fillets
	Outstand    []Rule[Outstand]
	CornerPlate []Rule[CornerPlate]
	Wall        []Rule[Wall]
	// WeldRun gives the part of a fillet run that counts, 0 for a run too short to carry load; nil: a run shorter than four legs counts
	// with a leg of a quarter of its length.
	WeldRun func(legMM, lengthMM float64) float64
}

func (r Rules) without(ids []string) Rules {
	r.PinPlane, r.PinSpan, r.Bore, r.Eye, r.Cut = less(r.PinPlane, ids), less(r.PinSpan, ids), less(r.Bore, ids), less(r.Eye, ids), less(r.Cut, ids)
	r.WeldLine, r.WeldSize, r.WeldFlow = less(r.WeldLine, ids), less(r.WeldSize, ids), less(r.WeldFlow, ids)
	r.CJPLine, r.PlugLine, r.CJPFlow = less(r.CJPLine, ids), less(r.PlugLine, ids), less(r.CJPFlow, ids)
	r.Bolt, r.BoltBearing, r.Prying, r.Block = less(r.Bolt, ids), less(r.BoltBearing, ids), less(r.Prying, ids), less(r.Block, ids)
	r.BoltSet, r.Preloaded, r.Slip, r.Thread = less(r.BoltSet, ids), less(r.Preloaded, ids), less(r.Slip, ids), less(r.Thread, ids)
	r.PullThrough, r.Seat = less(r.PullThrough, ids), less(r.Seat, ids)
	r.Rod, r.Bush, r.Fatigue, r.RootFatigue = less(r.Rod, ids), less(r.Bush, ids), less(r.Fatigue, ids), less(r.RootFatigue, ids)
	r.Outstand, r.CornerPlate, r.Wall = less(r.Outstand, ids), less(r.CornerPlate, ids), less(r.Wall, ids)
	return r
}

func less[F any](rules []Rule[F], ids []string) []Rule[F] {
	return slices.DeleteFunc(slices.Clone(rules), func(r Rule[F]) bool { return slices.Contains(ids, r.Of.Ident().ID) })
}

// Rule binds a feature to the givens of one limit state and evaluates it.
type Rule[F any] struct {
	Of    Evaluator
	Check func(c *Calc, f *F)
	// Demand is the demand that Check compares, for a rule whose capacity no load changes but by the sense of the force; nil
	// for any other rule. Where a place is judged many times the capacity is then worked out once for each sense. It may be asked
	// before anything is known: its answer is then not used. A Need in it that does not hold has the rule worked out in full.
	Demand func(c *Calc, f *F) (demand float64, sense Sense)
}

// Sense is which of two capacities counts.
type Sense int

const (
	EitherWay Sense = iota // for a demand whose sense does not matter, and tension
	Pressing
)

// Limit finds a limit state by its id, nil when the basis has none.
func (b *Basis) Limit(id string) Evaluator {
	for _, l := range b.Limits {
		if l.Ident().ID == id {
			return l
		}
	}
	return nil
}
