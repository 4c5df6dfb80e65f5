package strength

import (
	"context"
	"fmt"

	"lugwright/part"
	partpb "lugwright/proto/gen/lugwright/part/v1alpha1"
	pb "lugwright/proto/gen/lugwright/strength/v1alpha1"
	"lugwright/services/wire"
	"lugwright/strength"
)

// setup is a decoded setup with its basis, or why there is none.
type setup struct {
	*wire.Setup
	basis *strength.Basis
	err   error
}

func (s *Service) setup(m *pb.CheckSetup) setup {
	decoded, err := wire.DecodeSetup(m)
	if err != nil {
		return setup{err: err}
	}
	basis, err := s.basis(decoded.Basis)
	if err == nil && decoded.PinJoint != "" {
		basis, err = s.withPinJoint(basis, decoded)
	}
	return setup{decoded, basis, err}
}

// withPinJoint puts the rules of the setup's pin joint into its basis.
func (s *Service) withPinJoint(basis *strength.Basis, q *wire.Setup) (*strength.Basis, error) {
	pin, err := s.named("pin_joint", q.PinJoint)
	if err != nil {
		return nil, err
	}
	method, err := methodOf(basis, q.Options.Method)
	if err != nil {
		return nil, err
	}
	return basis.WithPinJoint(pin, method)
}

func (s *Service) check(ctx context.Context, h *wire.Handover, m *partpb.Bracket, with setup) (*strength.Report, error) {
	bracket, err := h.Decode(m)
	if err != nil {
		return nil, err
	}
	if with.err != nil {
		return nil, with.err
	}
	return strength.RunContext(ctx, with.basis, bracket, with.Cases, with.Options)
}

// batch is one CheckBrackets call: setups are decoded once, and briefs share their texts.
type batch struct {
	service *Service
	setups  []setup
	form    pb.AnswerForm
	columns wire.Columns

	handover *wire.Handover
}

func (s *Service) batch(h *wire.Handover, q *pb.CheckBracketsRequest) *batch {
	b := &batch{service: s, setups: make([]setup, len(q.GetSetups())), form: q.GetForm(), handover: h}
	for i, m := range q.GetSetups() {
		b.setups[i] = s.setup(m)
	}
	return b
}

func (b *batch) report(ctx context.Context, item *pb.CheckItem) (*strength.Report, error) {
	i := int(item.GetSetup())
	if i < 0 || i >= len(b.setups) {
		accept := fmt.Sprintf("the index of one of %d setups", len(b.setups))
		return nil, &part.FieldError{Field: "setup", Found: fmt.Sprint(i), Accept: accept}
	}
	return b.service.check(ctx, b.handover, item.GetBracket(), b.setups[i])
}

func (b *batch) result(ctx context.Context, item *pb.CheckItem) (*pb.CheckResult, error) {
	report, err := b.report(ctx, item)
	switch {
	case err != nil:
		return nil, err
	case b.form == pb.AnswerForm_ANSWER_FORM_COLUMNS:
		b.columns.Add(report)
		return nil, nil
	case b.form == pb.AnswerForm_ANSWER_FORM_REPORT:
		return &pb.CheckResult{Outcome: &pb.CheckResult_Report{Report: wire.EncodeReport(report)}}, nil
	}
	return &pb.CheckResult{Outcome: &pb.CheckResult_Brief{Brief: b.columns.Encode(report)}}, nil
}

// failed is what an item gets that was not checked.
func (b *batch) failed(err error) *pb.CheckResult {
	if b.form == pb.AnswerForm_ANSWER_FORM_COLUMNS {
		b.columns.Refuse(err)
		return nil
	}
	return problem(err)
}

// answer gives the results of all items.
func (b *batch) answer(results []*pb.CheckResult) *pb.CheckBracketsResponse {
	if b.form == pb.AnswerForm_ANSWER_FORM_COLUMNS {
		return &pb.CheckBracketsResponse{Columns: b.columns.Message(), Texts: b.columns.Texts}
	}
	return &pb.CheckBracketsResponse{Results: results, Texts: b.columns.Texts}
}

func problem(err error) *pb.CheckResult {
	return &pb.CheckResult{Outcome: &pb.CheckResult_Problem{Problem: wire.EncodeProblem(err)}}
}
