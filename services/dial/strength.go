package dial

import (
	"context"

	"lugwright/part"
	pb "lugwright/proto/gen/lugwright/strength/v1alpha1"
	"lugwright/services/wire"
	"lugwright/strength"
	"lugwright/vehicle/whole"
)

// Basis is what a user sees of a design basis: its card and its limit states.
type Basis = wire.Basis

// Materials is everything a shop builds with, each list in table order.
type Materials = wire.Materials

// Brief is a report without its words.
type Brief = wire.Brief

// EvaluateRequest asks for one limit state from numbers; an Evaluation is the answer.
type (
	EvaluateRequest = wire.EvaluateRequest
	GivenValue      = wire.GivenValue
	Evaluation      = wire.Evaluation
)

// CheckRequest asks for one bracket to be checked. Basis is the name of one, and so is PinJoint, whose rules serve pin holes; empty is
// the basis itself.
type CheckRequest struct {
	Bracket  *part.Bracket
	Cases    []part.Case
	Basis    string
	PinJoint string
	Options  strength.Options
}

// Checked is a report, or why there is none.
type Checked struct {
	Report *strength.Report
	Err    error
}

// Briefed is a brief, or why there is none.
type Briefed struct {
	Brief *Brief
	Err   error
}

// Bases lists the design bases.
func (c *Client) Bases(ctx context.Context) ([]Basis, error) {
	return c.listBases(ctx, &pb.ListBasesRequest{})
}

// Cards lists the cards of the design bases without their limit states: all that a job needs.
func (c *Client) Cards(ctx context.Context) ([]strength.Card, error) {
	bases, err := c.listBases(ctx, &pb.ListBasesRequest{CardsOnly: true})
	cards := make([]strength.Card, len(bases))
	for i := range bases {
		cards[i] = bases[i].Card
	}
	return cards, err
}

func (c *Client) listBases(ctx context.Context, q *pb.ListBasesRequest) ([]Basis, error) {
	r, err := call(ctx, c.strength, c.check.ListBases, q)
	if err != nil {
		return nil, err
	}
	bases, err := wire.DecodeBases(r.GetBases())
	if err != nil {
		return nil, c.strength.broken(err)
	}
	return bases, nil
}

// Materials lists grades, fillers and bolt sizes.
func (c *Client) Materials(ctx context.Context) (*Materials, error) {
	r, err := call(ctx, c.strength, c.check.ListMaterials, &pb.ListMaterialsRequest{})
	if err != nil {
		return nil, err
	}
	list, err := wire.DecodeMaterials(r)
	if err != nil {
		return nil, c.strength.broken(err)
	}
	return list, nil
}

// Check checks brackets, in the order of the requests. One that cannot be checked says why in Err, part.FieldErrors where
// fields are at fault; the returned error means that the service did not answer.
func (c *Client) Check(ctx context.Context, requests []CheckRequest) ([]Checked, error) {
	return checkAll(ctx, c, requests, true, func(result *pb.CheckResult, _ []string) (Checked, error) {
		switch o := result.GetOutcome().(type) {
		case *pb.CheckResult_Report:
			report, err := wire.DecodeReport(o.Report)
			return Checked{Report: report}, err
		case *pb.CheckResult_Problem:
			return Checked{Err: wire.DecodeProblem(o.Problem)}, nil
		}
		return Checked{}, errNoOutcome
	})
}

// Brief checks brackets as Check does and gives only verdicts and utilisations, for sweeps over many.
func (c *Client) Brief(ctx context.Context, requests []CheckRequest) ([]Briefed, error) {
	return checkAll(ctx, c, requests, false, func(result *pb.CheckResult, texts []string) (Briefed, error) {
		switch o := result.GetOutcome().(type) {
		case *pb.CheckResult_Brief:
			brief, err := wire.DecodeBrief(o.Brief, texts)
			return Briefed{Brief: brief}, err
		case *pb.CheckResult_Problem:
			return Briefed{Err: wire.DecodeProblem(o.Problem)}, nil
		}
		return Briefed{}, errNoOutcome
	})
}

// Evaluate evaluates one limit state from numbers. Refused givens are part.FieldErrors: "givens.F_u".
func (c *Client) Evaluate(ctx context.Context, q EvaluateRequest) (Evaluation, error) {
	r, err := call(ctx, c.strength, c.check.EvaluateLimit, wire.EncodeEvaluateRequest(&q))
	if err != nil {
		return Evaluation{}, err
	}
	e, err := wire.DecodeEvaluation(r)
	if err != nil {
		return Evaluation{}, c.strength.broken(err)
	}
	return *e, nil
}

// Vehicle reckons a whole vehicle: weights, the loads on its mounts, the frame, the checks around them. Refused fields are part.FieldErrors, by their path
// in the request.
func (c *Client) Vehicle(ctx context.Context, q *whole.Request) (*whole.Answer, error) {
	r, err := call(ctx, c.strength, c.check.ReckonVehicle, &pb.ReckonVehicleRequest{Request: wire.EncodeVehicleRequest(q)})
	if err != nil {
		return nil, err
	}
	a, err := wire.DecodeVehicleAnswer(r.GetAnswer())
	if err != nil {
		return nil, c.strength.broken(err)
	}
	return a, nil
}

// checkAll sends requests in messages and reads each result with decode.
func checkAll[R any](ctx context.Context, c *Client, requests []CheckRequest, full bool, decode func(*pb.CheckResult, []string) (R, error)) ([]R, error) {
	out := make([]R, len(requests))
	err := batches(ctx, len(requests), messageSize(requests, full), c.strength.inFlight(), func(ctx context.Context, from, to int) error {
		q := checkMessage(requests[from:to])
		q.Form = pb.AnswerForm_ANSWER_FORM_BRIEF
		if full {
			q.Form = pb.AnswerForm_ANSWER_FORM_REPORT
		}
		r, err := call(ctx, c.strength, c.check.CheckBrackets, q)
		if err != nil {
			return err
		}
		if err := sameCount(len(r.GetResults()), to-from); err != nil {
			return c.strength.broken(err)
		}
		for i, result := range r.GetResults() {
			if out[from+i], err = decode(result, r.GetTexts()); err != nil {
				return c.strength.broken(err)
			}
		}
		return nil
	})
	if err != nil {
		return nil, err
	}
	return out, nil
}

func messageSize(requests []CheckRequest, full bool) int {
	for i := range requests {
		if full && requests[i].Options.Trace {
			return perTracedMessage
		}
	}
	return perMessage
}

// checkMessage writes each setup once: the brackets of a sweep share theirs.
func checkMessage(requests []CheckRequest) *pb.CheckBracketsRequest {
	q := &pb.CheckBracketsRequest{Items: make([]*pb.CheckItem, len(requests))}
	var setups []wire.Setup
	for i := range requests {
		s := wire.Setup{Basis: requests[i].Basis, PinJoint: requests[i].PinJoint, Cases: requests[i].Cases, Options: requests[i].Options}
		at := len(setups)
		for k := range setups {
			if setups[k].Equal(&s) {
				at = k
				break
			}
		}
		if at == len(setups) {
			setups = append(setups, s)
			q.Setups = append(q.Setups, wire.EncodeSetup(&s))
		}
		q.Items[i] = &pb.CheckItem{Bracket: wire.EncodeBracket(requests[i].Bracket), Setup: int32(at)}
	}
	return q
}
