package wire

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"lugwright/part"
	pb "lugwright/proto/gen/lugwright/strength/v1alpha1"
	"lugwright/strength"
)

// EvaluateRequest asks for one limit state from numbers. Method may be empty: the basis's first.
type EvaluateRequest struct {
	Basis  string
	Method strength.Method
	Limit  string
	Givens []GivenValue
	// FactorSet and Factors set the basis's factors; see strength.Card.FactorValues.
	FactorSet string
	Factors   map[string]float64
}

// GivenValue is one given, with several values for a list. Unit is the declared one, or empty.
type GivenValue struct {
	Symbol string
	Values []float64
	Unit   string
}

// Evaluation is the answer: Demand and Capacity in Limit.Unit, Utilisation +Inf when there is no capacity.
type Evaluation struct {
	Limit                         strength.Info
	Verdict                       strength.Verdict
	Why                           string
	Demand, Capacity, Utilisation float64
	Lines                         []strength.Line
}

// EncodeEvaluateRequest writes a request.
func EncodeEvaluateRequest(q *EvaluateRequest) *pb.EvaluateLimitRequest {
	return &pb.EvaluateLimitRequest{
		Basis: q.Basis, Method: methods.encode(q.Method), Limit: q.Limit,
		Givens: all(q.Givens, func(g *GivenValue) *pb.GivenValue {
			return &pb.GivenValue{Symbol: g.Symbol, Values: g.Values, Unit: g.Unit}
		}),
		FactorSet: q.FactorSet, Factors: ownFactors(q.Factors),
	}
}

// DecodeEvaluateRequest reads a request. A given is named by its symbol in field errors: "givens.F_u".
func DecodeEvaluateRequest(m *pb.EvaluateLimitRequest) (*EvaluateRequest, error) {
	var r reader
	q := &EvaluateRequest{
		Basis: r.text("basis", m.GetBasis()), Method: methods.decodeOptional(&r, "method", m.GetMethod()),
		Limit:     r.text("limit", m.GetLimit()),
		Givens:    byName(&r, "givens", "symbol", maxThings, m.GetGivens(), (*pb.GivenValue).GetSymbol, readGivenValue),
		FactorSet: r.text("factor_set", m.GetFactorSet()), Factors: readOwnFactors(&r, m.GetFactors()),
	}
	return q, r.err()
}

func readGivenValue(r *reader, m *pb.GivenValue) GivenValue {
	for _, v := range m.Values {
		r.number("", v)
	}
	return GivenValue{Symbol: m.Symbol, Values: m.Values, Unit: r.text("", m.Unit)}
}

// Ordered gives the values in the order of a limit state's givens, the default for optional ones left out. It refuses a symbol that
// is unknown or given twice, a unit that is not the declared one, and a given that is missing.
func Ordered(limit strength.Info, givens []GivenValue) ([][]float64, error) {
	values, seen := make([][]float64, len(limit.Givens)), make([]bool, len(limit.Givens))
	var bad part.FieldErrors
	refuse := func(symbol, found, accept string) {
		bad = append(bad, &part.FieldError{Field: "givens." + symbol, Found: found, Accept: accept})
	}
	for _, g := range givens {
		i := slices.IndexFunc(limit.Givens, func(d strength.Given) bool { return d.Symbol == g.Symbol })
		switch {
		case i < 0:
			refuse(g.Symbol, "limit state "+limit.ID+" has no such given", "one of "+symbols(limit.Givens))
			continue
		case seen[i]:
			refuse(g.Symbol, "given twice", "give it once")
		case g.Unit != "" && g.Unit != limit.Givens[i].Unit:
			refuse(g.Symbol, "unit "+g.Unit, "a value in "+limit.Givens[i].Unit)
		}
		seen[i], values[i] = true, g.Values
	}
	for i, d := range limit.Givens {
		switch {
		case seen[i]:
		case d.Optional:
			values[i] = []float64{d.Default}
		default:
			refuse(d.Symbol, "missing", accepts(d))
		}
	}
	if bad != nil {
		return nil, bad
	}
	return values, nil
}

func symbols(givens []strength.Given) string {
	list := make([]string, len(givens))
	for i, g := range givens {
		list[i] = g.Symbol
	}
	return strings.Join(list, ", ")
}

func accepts(g strength.Given) string {
	if g.Choices != nil {
		return fmt.Sprintf("one of: %s (%s)", strings.Join(g.Choices, ", "), g.Words)
	}
	switch low, high := math.IsInf(g.Min, -1), math.IsInf(g.Max, 1); {
	case low && high:
		return fmt.Sprintf("any %s (%s)", g.Unit, g.Words)
	case low:
		return fmt.Sprintf("at most %g %s (%s)", g.Max, g.Unit, g.Words)
	case high:
		return fmt.Sprintf("at least %g %s (%s)", g.Min, g.Unit, g.Words)
	}
	return fmt.Sprintf("%g to %g %s (%s)", g.Min, g.Max, g.Unit, g.Words)
}

// EncodeEvaluation writes an evaluation.
func EncodeEvaluation(limitState strength.Info, c *strength.Calc) *pb.EvaluateLimitResponse {
	c.Show()
	return &pb.EvaluateLimitResponse{
		Limit: limit(&limitState), Verdict: verdicts.encode(c.Verdict), Why: c.Why, Demand: c.Demand, Capacity: c.Capacity,
		Utilisation: c.Utilisation(), Lines: all(c.Lines, line),
	}
}

// DecodeEvaluation reads an evaluation.
func DecodeEvaluation(m *pb.EvaluateLimitResponse) (*Evaluation, error) {
	var r reader
	e := one(&r, "evaluation", m, func(r *reader, m *pb.EvaluateLimitResponse) *Evaluation {
		return &Evaluation{
			Limit: one(r, "limit", m.Limit, readLimit), Verdict: verdicts.decode(r, "verdict", m.Verdict),
			Why: r.words("why", m.Why), Demand: m.Demand, Capacity: m.Capacity, Utilisation: m.Utilisation,
			Lines: many(r, "lines", maxListed, m.Lines, readLine),
		}
	})
	if err := r.err(); err != nil {
		return nil, err
	}
	return e, nil
}
