package dial

import (
	"cmp"
	"context"
	"runtime"
	"time"

	"google.golang.org/grpc"
	"google.golang.org/protobuf/proto"

	"lugwright/geometry"
	"lugwright/geometry/shop"
	"lugwright/part"
	geometrypb "lugwright/proto/gen/lugwright/geometry/v1alpha1"
	partpb "lugwright/proto/gen/lugwright/part/v1alpha1"
	strengthpb "lugwright/proto/gen/lugwright/strength/v1alpha1"
	"lugwright/services/wire"
)

// perLocalMessage is how many variants one message takes in this process, where a message costs little: so the first answers come soon.
const perLocalMessage = 16

// PerMessage is how many variants one message takes at most.
func (c *Client) PerMessage() int {
	if c.local() {
		return perLocalMessage
	}
	return perMessage
}

// InFlight is how many messages go on their way at once: so many that every replica of either service that is known now has some, or in this process every core one.
func (c *Client) InFlight() int {
	if c.local() {
		return runtime.GOMAXPROCS(0)
	}
	return max(c.geometry.inFlight(), c.strength.inFlight())
}

func (c *Client) local() bool { return c.geometry.local && c.strength.local }

// Summary is what a family of many brackets asks of each; LimitUse is one limit state of it.
type (
	Summary  = wire.Summary
	LimitUse = wire.LimitUse
)

// Variant is one bracket, built as the shop makes it and checked, or why there is none.
type Variant struct {
	Volumes []part.Volume // what it takes, known as soon as it is built
	Summary Summary
	Err     error // part.FieldErrors where fields are at fault
}

// Variants builds and checks brackets that differ in their parameters alone. The brackets pass from one service to the other without being read here.
type Variants struct {
	client   *Client
	patience time.Duration
	shop     *geometrypb.Shop
	setup    *strengthpb.CheckSetup
}

// Variants takes who cuts the brackets and how they are checked, but for the bracket. Patience is how long a service may give no answer; 0 takes DefaultPatience.
func (c *Client) Variants(cutter *shop.Profile, check CheckRequest, patience time.Duration) *Variants {
	setup := wire.Setup{Basis: check.Basis, PinJoint: check.PinJoint, Cases: check.Cases, Options: check.Options}
	return &Variants{client: c, patience: cmp.Or(patience, DefaultPatience), shop: wire.EncodeShop(cutter), setup: wire.EncodeSetup(&setup)}
}

// Some answers for as many requests as one message takes, in their order. The error means that a service did not answer.
func (v *Variants) Some(ctx context.Context, requests []geometry.Request) ([]Variant, error) {
	if v.client.local() {
		ctx = wire.WithHandover(ctx)
	}
	m := &message{Variants: v, requests: requests, out: make([]Variant, len(requests)), brackets: make([]bracket, len(requests))}
	lost := func(i int, why error) { m.out[i].Err = why }
	build := persistent{peer: v.client.geometry, patience: v.patience, ask: m.build, lost: lost}
	if err := build.items(ctx, 0, len(requests)); err != nil {
		return nil, err
	}
	var built []int
	for i := range m.out {
		if m.out[i].Err == nil {
			built = append(built, i)
		}
	}
	check := persistent{
		peer: v.client.strength, patience: v.patience,
		ask:  func(ctx context.Context, from, to int) error { return m.check(ctx, built[from:to]) },
		lost: func(i int, why error) { lost(built[i], why) },
	}
	if len(built) == 0 {
		return m.out, nil
	}
	return m.out, check.items(ctx, 0, len(built))
}

// message is what one call of Some holds.
type message struct {
	*Variants
	requests []geometry.Request
	out      []Variant
	brackets []bracket
}

// bracket is one on its way, as the geometry service gave it: in this process the message itself, else its bytes.
type bracket struct {
	message *partpb.Bracket
	bytes   []byte
}

func (b *bracket) asMessage() (*partpb.Bracket, error) {
	if b.message != nil {
		return b.message, nil
	}
	m := &partpb.Bracket{}
	return m, proto.Unmarshal(b.bytes, m)
}

func (b *bracket) asBytes() ([]byte, error) {
	if b.message == nil {
		return b.bytes, nil
	}
	return proto.Marshal(b.message)
}

// build asks for the brackets of a range of requests.
func (m *message) build(ctx context.Context, from, to int) error {
	q := &geometrypb.BuildBracketsRequest{Orders: make([]*geometrypb.BracketOrder, to-from), Shop: m.shop}
	for i := range q.Orders {
		q.Orders[i] = wire.EncodeOrder(m.requests[from+i])
	}
	p := m.client.geometry
	if p.local {
		r, err := call(ctx, p, m.client.build.BuildBrackets, q)
		if err != nil {
			return err
		}
		return taken(m, p, from, to, r.GetResults(), r.GetMaterials(), func(o *geometrypb.BuildResult) bracket { return bracket{message: o.GetBracket()} })
	}
	r, err := call(ctx, p, relay[geometrypb.RelayedBrackets, geometrypb.BuildBracketsRequest](p, geometrypb.GeometryService_BuildBrackets_FullMethodName), q)
	if err != nil {
		return err
	}
	return taken(m, p, from, to, r.GetResults(), r.GetMaterials(), func(o *geometrypb.RelayedBracket) bracket { return bracket{bytes: o.GetBracket()} })
}

// relay calls a method whose answer, or question, is read or written by another message than its own, the same on the wire.
func relay[R, Q any](p *peer, method string) func(context.Context, *Q, ...grpc.CallOption) (*R, error) {
	return func(ctx context.Context, q *Q, o ...grpc.CallOption) (*R, error) {
		r := new(R)
		return r, p.conn.Invoke(ctx, method, q, r, o...)
	}
}

// outcome is a BuildResult, read or unread.
type outcome interface {
	GetProblem() *partpb.Problem
	GetMaterials() []int32
	GetVolumesMm3() []float64
}

func taken[O outcome](m *message, p *peer, from, to int, results []O, materials []string, read func(O) bracket) error {
	if err := sameCount(len(results), to-from); err != nil {
		return p.broken(err)
	}
	for i, o := range results {
		v, b := &m.out[from+i], &m.brackets[from+i]
		*v = Variant{}
		if problem := o.GetProblem(); problem != nil {
			v.Err = wire.DecodeProblem(problem)
			continue
		}
		if *b = read(o); b.message == nil && b.bytes == nil {
			return p.broken(errNoOutcome)
		}
		var err error
		if v.Volumes, err = wire.DecodeVolumes(o.GetMaterials(), o.GetVolumesMm3(), materials); err != nil {
			return p.broken(err)
		}
	}
	return nil
}

// check asks for the summaries of brackets, which are named by their place among the requests.
func (m *message) check(ctx context.Context, items []int) error {
	p := m.client.strength
	r, err := m.checked(ctx, p, items)
	if err != nil {
		return err
	}
	answers, err := wire.DecodeColumns(r.GetColumns(), r.GetTexts())
	if err == nil {
		err = sameCount(len(answers), len(items))
	}
	if err != nil {
		return p.broken(err)
	}
	for k, a := range answers {
		m.out[items[k]].Summary, m.out[items[k]].Err = a.Summary, a.Err
	}
	return nil
}

func (m *message) checked(ctx context.Context, p *peer, items []int) (*strengthpb.CheckBracketsResponse, error) {
	setups := []*strengthpb.CheckSetup{m.setup}
	if p.local {
		q := &strengthpb.CheckBracketsRequest{Setups: setups, Items: make([]*strengthpb.CheckItem, len(items)), Form: strengthpb.AnswerForm_ANSWER_FORM_COLUMNS}
		for k, i := range items {
			b, err := m.brackets[i].asMessage()
			if err != nil {
				return nil, m.client.geometry.broken(err)
			}
			q.Items[k] = &strengthpb.CheckItem{Bracket: b}
		}
		return call(ctx, p, m.client.check.CheckBrackets, q)
	}
	q := &strengthpb.RelayedCheck{Setups: setups, Items: make([]*strengthpb.RelayedItem, len(items)), Form: strengthpb.AnswerForm_ANSWER_FORM_COLUMNS}
	for k, i := range items {
		b, err := m.brackets[i].asBytes()
		if err != nil {
			return nil, err
		}
		q.Items[k] = &strengthpb.RelayedItem{Bracket: b}
	}
	return call(ctx, p, relay[strengthpb.CheckBracketsResponse, strengthpb.RelayedCheck](p, strengthpb.StrengthService_CheckBrackets_FullMethodName), q)
}
