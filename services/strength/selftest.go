package strength

import (
	"context"
	"errors"
	"fmt"

	"lugwright/services/wire"
	"lugwright/strength"
	"lugwright/strength/handbook"
)

// knownAnswers are a handful of the published examples in testdata/handbook, which every build is tested with: a pin in a plate, bolts
// and welds by two standards. The test beside this file holds them against those files.
var knownAnswers = []handbook.Example{
	{
		Source:     "AISC Companion to the Steel Construction Manual, Vol. 1: Design Examples v16.0 (2023), Example D.7",
		Provenance: handbook.Read, Basis: "AISC 360-22", Tolerance: "0.5 %", Why: "the author rounds each step to three figures and carries the rounded one on",
		Givens: map[string]handbook.Values{
			"t": {"0.5 in"}, "a": {"2.25 in"}, "b": {"1.61 in"}, "w": {"4.25 in"}, "d": {"1.00 in"}, "d_h": {"1.03 in"}, "F_y": {"50 ksi"}, "F_u": {"65 ksi"},
		},
		Runs: []handbook.Run{
			{Limit: "pin-plate-tension", Method: strength.LRFD, Givens: kip("P_r", "24.0"), Expect: map[string]string{"b_e": "1.61 in", "P_n": "105 kip", "P_c": "78.8 kip"}},
			{Limit: "pin-plate-tear-out", Method: strength.ASD, Givens: kip("P_r", "16.0"), Expect: map[string]string{"P_n": "107 kip", "P_c": "53.5 kip"}},
			{Limit: "pin-bearing", Method: strength.LRFD, Givens: kip("P_r", "24.0"), Expect: map[string]string{"R_n": "45.0 kip", "R_c": "33.8 kip"}},
		},
	},
	{
		Source:     "AISC Companion to the Steel Construction Manual, Vol. 1: Design Examples v16.0 (2023), Example II.A-27 (Manual Eq. 8-2a and 8-2b)",
		Provenance: handbook.Read, Basis: "AISC 360-22",
		Givens: map[string]handbook.Values{"w": {"1/16 in"}, "F_EXX": {"70 ksi"}, "l": {"1 in"}},
		Runs: []handbook.Run{
			{Limit: "fillet-lines", Method: strength.LRFD, Expect: map[string]string{"q_c": "1.392 kip/in", "P_c": "1.392 kip"}},
		},
	},
	{
		Source:     "Published EN 1993 (UK NA) bolt resistance tables: non-preloaded class 8.8 hexagon head, S355, M20 row",
		Provenance: handbook.Read, Basis: "EN 1993-1-8:2005",
		Givens: map[string]handbook.Values{"d": {"20 mm"}, "A": {"245 mm2"}, "A_s": {"245 mm2"}, "f_ub": {"800 MPa"}, "class": {"8.8"}, "threads": {"in the plane"}},
		Runs: []handbook.Run{
			{Limit: "bolt-tension", Method: "partial factors", Expect: map[string]string{"k_2": "0.9", "F_t_Rd": "141 kN"}},
			{Limit: "bolt-shear", Method: "partial factors", Expect: map[string]string{"alpha_v": "0.6", "F_v_Rd": "94.1 kN"}},
		},
	},
}

func kip(symbol, n string) map[string]handbook.Values {
	return map[string]handbook.Values{symbol: {n + " kip"}}
}

// SelfTest holds the answers of this service against published ones, as far as it offers their bases.
func (s *Service) SelfTest(ctx context.Context) error {
	held := 0
	for i := range knownAnswers {
		e := &knownAnswers[i]
		basis, err := s.basis(e.Basis)
		if err != nil {
			continue // not offered
		}
		rows, err := e.Check(asked{ctx, s, basis})
		if err != nil {
			return fmt.Errorf("%s: %w", e.Source, err)
		}
		for _, r := range rows {
			if !r.Agrees() {
				return fmt.Errorf("%s: %s by %s is %.6g %s here, %s printed", e.Source, r.Symbol, r.Limit, r.Ours, r.Unit, r.Text)
			}
		}
		held += len(rows)
	}
	if held == 0 && len(s.bases) > 0 {
		return errors.New("no published example is about a basis that this service offers")
	}
	return nil
}

// asked answers questions as a client would get them answered: by messages.
type asked struct {
	ctx     context.Context
	service *Service
	basis   *strength.Basis
}

func (a asked) Card() *strength.Card { return &a.basis.Card }

func (a asked) Limits() []strength.Info { return handbook.BenchOf(a.basis).Limits() }

func (a asked) Evaluate(q handbook.Question) (handbook.Answer, error) {
	ask := wire.EvaluateRequest{Basis: a.basis.Card.Name, Method: q.Method, Limit: q.Limit, FactorSet: q.FactorSet, Factors: q.Factors}
	for i, g := range a.basis.Limit(q.Limit).Info().Givens {
		ask.Givens = append(ask.Givens, wire.GivenValue{Symbol: g.Symbol, Values: q.Values[i], Unit: g.Unit})
	}
	m, err := a.service.EvaluateLimit(a.ctx, wire.EncodeEvaluateRequest(&ask))
	if err != nil {
		return handbook.Answer{}, wire.FromStatus(err)
	}
	e, err := wire.DecodeEvaluation(m)
	if err != nil {
		return handbook.Answer{}, err
	}
	return handbook.Answer{Demand: e.Demand, Capacity: e.Capacity, Utilisation: e.Utilisation, Verdict: e.Verdict, Lines: e.Lines}, nil
}
