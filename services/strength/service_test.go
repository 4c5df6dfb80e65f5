package strength

import (
	"math"
	"strings"
	"testing"

	"google.golang.org/genproto/googleapis/rpc/errdetails"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"

	"lugwright/part"
	"lugwright/part/parttest"
	partpb "lugwright/proto/gen/lugwright/part/v1alpha1"
	pb "lugwright/proto/gen/lugwright/strength/v1alpha1"
	"lugwright/services/wire"
	"lugwright/strength"
)

type pull struct {
	N float64 `sym:"N" unit:"N" min:"0" max:"1e6" is:"pull"`
	A float64 `sym:"A" unit:"mm2" min:"1" max:"1e4" is:"area"`
}

// fakes is a service with one basis that has one limit state.
func fakes() *Service {
	stress := strength.Define(strength.Identity{ID: "stress", Title: "Stress", Demand: "N/A", Capacity: "100", Unit: "MPa"},
		func(c *strength.Calc, g pull) { c.Compare(c.Let("sigma", "N/A", "MPa", g.N/g.A), 100) })
	return New([]*strength.Basis{{
		Card:   strength.Card{Name: "house", Methods: []strength.Method{strength.ASD}, ServiceFactor: map[strength.Method]float64{strength.ASD: 1}},
		Limits: []strength.Evaluator{stress},
	}})
}

func evaluate(givens ...*pb.GivenValue) *pb.EvaluateLimitRequest {
	return &pb.EvaluateLimitRequest{Limit: "stress", Givens: givens}
}

func TestEvaluate(t *testing.T) {
	q := evaluate(&pb.GivenValue{Symbol: "A", Values: []float64{10}}, &pb.GivenValue{Symbol: "N", Values: []float64{1500}, Unit: "N"})
	e, err := fakes().EvaluateLimit(t.Context(), q)
	if err != nil || e.Verdict != pb.Verdict_VERDICT_FAIL || e.Demand != 150 || e.Utilisation != 1.5 || len(e.Lines) != 3 {
		t.Errorf("%v, %v", e, err)
	}
}

func TestRefused(t *testing.T) {
	s := fakes()
	load := []*partpb.LoadCase{{Name: "x", Level: 1, ForceN: &partpb.Vec{X: 1}, MomentNMm: &partpb.Vec{}}}
	check := func(setup *pb.CheckSetup, spoil func(b *part.Bracket)) error {
		b := parttest.Bracket()
		b.Bolts, b.LoadPoints = nil, []part.LoadPoint{{ID: "pin"}}
		spoil(b)
		_, err := s.CheckBracket(t.Context(), &pb.CheckBracketRequest{Bracket: wire.EncodeBracket(b), Setup: setup})
		return err
	}
	as := func(*part.Bracket) {}
	given := func(q *pb.EvaluateLimitRequest) error {
		_, err := s.EvaluateLimit(t.Context(), q)
		return err
	}
	for name, c := range map[string]struct {
		err   error
		field string
	}{
		"no setup":         {check(nil, as), "setup"},
		"basis":            {check(&pb.CheckSetup{Basis: "hose", Cases: load}, as), "basis"},
		"no case":          {check(&pb.CheckSetup{}, as), "cases"},
		"level":            {check(&pb.CheckSetup{Cases: []*partpb.LoadCase{{ForceN: &partpb.Vec{}, MomentNMm: &partpb.Vec{}}}}, as), "cases[0].level"},
		"not finite":       {check(&pb.CheckSetup{Cases: load}, func(b *part.Bracket) { b.Plates[0].ThicknessMM = math.NaN() }), "plates[0].thickness_mm"},
		"absurd":           {check(&pb.CheckSetup{Cases: load}, func(b *part.Bracket) { b.Plates[0].ThicknessMM = -1 }), "plates[0].thickness_mm"},
		"method":           {check(&pb.CheckSetup{Cases: load, Method: pb.Method_METHOD_LRFD}, as), "method"},
		"unknown limit":    {given(&pb.EvaluateLimitRequest{Limit: "strain"}), "limit"},
		"method of limit":  {given(&pb.EvaluateLimitRequest{Limit: "stress", Method: pb.Method_METHOD_LRFD}), "method"},
		"missing given":    {given(evaluate(&pb.GivenValue{Symbol: "A", Values: []float64{10}})), "givens.N"},
		"given in a unit":  {given(evaluate(&pb.GivenValue{Symbol: "A", Values: []float64{10}, Unit: "m2"}, &pb.GivenValue{Symbol: "N"})), "givens.A"},
		"given not finite": {given(evaluate(&pb.GivenValue{Symbol: "A", Values: []float64{math.NaN()}})), "givens.A"},
		"given too big":    {given(evaluate(&pb.GivenValue{Symbol: "A", Values: []float64{1e5}}, &pb.GivenValue{Symbol: "N", Values: []float64{1}})), "givens.A"},
	} {
		st, _ := status.FromError(c.err)
		if st.Code() != codes.InvalidArgument || len(st.Details()) == 0 {
			t.Errorf("%s: %v", name, c.err)
			continue
		}
		bad, ok := st.Details()[0].(*errdetails.BadRequest)
		if !ok || bad.FieldViolations[0].Field != c.field {
			t.Errorf("%s: details %v, want field %s", name, bad, c.field)
		}
	}
}

func TestBatch(t *testing.T) {
	q := &pb.CheckBracketsRequest{
		Setups: []*pb.CheckSetup{{Basis: "none"}},
		Items:  []*pb.CheckItem{{Setup: 0}, {Setup: 1}, {Setup: -1}, nil},
	}
	answer, err := fakes().CheckBrackets(t.Context(), q)
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []string{"bracket", "setup", "setup", "bracket"} {
		if got := answer.Results[i].GetProblem().GetFields(); len(got) != 1 || got[0].Field != want {
			t.Errorf("item %d: %v, want field %s", i, got, want)
		}
	}
	q.Items = make([]*pb.CheckItem, wire.MaxBatch+1)
	if _, err := fakes().CheckBrackets(t.Context(), q); status.Code(err) != codes.InvalidArgument {
		t.Errorf("got %v", err)
	}
}

type listGivens struct {
	X    []float64 `sym:"x" unit:"mm" min:"-10" max:"10" is:"positions"`
	Hole float64   `sym:"hole" choices:"standard|oversize" default:"1" is:"hole"`
}

// settable is a service with a basis that has a factor, one for reference, and one that serves pin holes with a factor of its own.
func settable() *Service {
	card := func(name, symbol string, level float64) strength.Card {
		return strength.Card{
			Name: name, Methods: []strength.Method{strength.PartialFactors}, ServiceFactor: map[strength.Method]float64{strength.PartialFactors: level},
			Factors: []strength.Factor{{Symbol: symbol, Words: "factor", Default: 2, Min: 1, Max: 9, Sets: []strength.FactorSet{{Name: "set " + symbol, Value: 4}}}},
		}
	}
	n := strength.Define(strength.Identity{ID: "n", Title: "n", Demand: "n", Capacity: "9", Unit: ""}, func(c *strength.Calc, g listGivens) {
		c.Compare(c.Solved("n", "counted", "", float64(len(g.X))*c.Factor("gamma")*(1+g.Hole)), 9)
	})
	house := &strength.Basis{Card: card("house", "gamma", 1), Limits: []strength.Evaluator{n}}
	pins := &strength.Basis{Card: card("pins", "N_d", 1)}
	pins.Rules.Bore = []strength.Rule[strength.Bore]{{Of: n, Check: func(c *strength.Calc, _ *strength.Bore) {
		c.Compare(c.Factor("N_d"), 9)
	}}}
	old := &strength.Basis{Card: card("old", "k", 1)}
	old.Card.ReferenceOnly = true
	return New([]*strength.Basis{house, pins, old, {Card: card("factored", "k", 1.5)}})
}

func TestEvaluateSettable(t *testing.T) {
	x := &pb.GivenValue{Symbol: "x", Values: []float64{1, 2, 3}, Unit: "mm"}
	own := []*pb.FactorValue{{Symbol: "gamma", Value: 3}}
	for name, c := range map[string]struct {
		q    *pb.EvaluateLimitRequest
		want float64
	}{
		"defaults":         {&pb.EvaluateLimitRequest{Limit: "n", Givens: []*pb.GivenValue{x}}, 12},
		"a set":            {&pb.EvaluateLimitRequest{Limit: "n", Givens: []*pb.GivenValue{x}, FactorSet: "set gamma"}, 24},
		"own over the set": {&pb.EvaluateLimitRequest{Limit: "n", Givens: []*pb.GivenValue{x}, FactorSet: "set gamma", Factors: own}, 18},
		"a choice":         {&pb.EvaluateLimitRequest{Limit: "n", Givens: []*pb.GivenValue{x, {Symbol: "hole", Values: []float64{0}}}}, 6},
	} {
		e, err := settable().EvaluateLimit(t.Context(), c.q)
		if err != nil || e.Demand != c.want || len(e.Lines[0].Values) != 3 {
			t.Errorf("%s: %v, %v", name, e, err)
		}
	}
	for field, q := range map[string]*pb.EvaluateLimitRequest{
		"givens.x":      {Limit: "n", Givens: []*pb.GivenValue{{Symbol: "x"}}},
		"givens.hole":   {Limit: "n", Givens: []*pb.GivenValue{x, {Symbol: "hole", Values: []float64{0.5}}}},
		"factors.q":     {Limit: "n", Givens: []*pb.GivenValue{x}, Factors: []*pb.FactorValue{{Symbol: "q", Value: 3}}},
		"factors.gamma": {Limit: "n", Givens: []*pb.GivenValue{x}, Factors: append(own, own...)},
		"factor_set":    {Limit: "n", Givens: []*pb.GivenValue{x}, FactorSet: "moon"},
	} {
		_, err := settable().EvaluateLimit(t.Context(), q)
		if fields := part.Fields(wire.FromStatus(err)); len(fields) != 1 || fields[0].Field != field {
			t.Errorf("%s: %v", field, err)
		}
	}
}

func TestPinJoint(t *testing.T) {
	check := func(setup *pb.CheckSetup) (*pb.CheckBracketResponse, error) {
		b := parttest.Bracket()
		b.Bolts, b.LoadPoints = nil, []part.LoadPoint{{ID: "pin"}}
		setup.Cases = []*partpb.LoadCase{{Name: "x", Level: 1, ForceN: &partpb.Vec{}, MomentNMm: &partpb.Vec{}}}
		return settable().CheckBracket(t.Context(), &pb.CheckBracketRequest{Bracket: wire.EncodeBracket(b), Setup: setup})
	}
	for field, setup := range map[string]*pb.CheckSetup{
		"basis":       {Basis: "old"},
		"pin_joint":   {PinJoint: "nothing"},
		"pin_joint ":  {PinJoint: "factored"},                                                     // takes loads at another level
		"pin_joint  ": {PinJoint: "old"},                                                          // has no rules for a pin hole
		"factors.N_d": {PinJoint: "pins", Factors: []*pb.FactorValue{{Symbol: "N_d", Value: 99}}}, // out of the pin joint's range
		"factor_set":  {FactorSet: "set N_d"},                                                     // a set of the pin joint without one
	} {
		_, err := check(setup)
		if fields := part.Fields(wire.FromStatus(err)); len(fields) != 1 || fields[0].Field != strings.TrimSpace(field) {
			t.Errorf("%s: %v", field, err)
		}
	}
	r, err := check(&pb.CheckSetup{PinJoint: "pins", FactorSet: "set N_d", Factors: []*pb.FactorValue{{Symbol: "gamma", Value: 3}}})
	if err != nil {
		t.Fatal(err)
	}
	if f := r.Report.Factors; r.Report.PinJoint != "pins" || len(f) != 2 || f[0].Value != 3 || f[1].Value != 4 {
		t.Errorf("pin joint %q, factors %v", r.Report.PinJoint, f)
	}
}
