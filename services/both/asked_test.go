package both_test

// This file gathers what the demo jobs ask of both services, as the client asks it: valid requests for tests that spoil them.

import (
	"context"
	"io"
	"log/slog"
	"math"
	"os"
	"path/filepath"
	"sync"
	"testing"
	"time"

	"google.golang.org/grpc"
	"google.golang.org/protobuf/proto"

	"lugwright/client/job"
	"lugwright/client/run"
	"lugwright/geometry"
	"lugwright/geometry/kinds"
	"lugwright/part"
	geometrypb "lugwright/proto/gen/lugwright/geometry/v1alpha1"
	strengthpb "lugwright/proto/gen/lugwright/strength/v1alpha1"
	"lugwright/services/both"
	"lugwright/services/dial"
	"lugwright/services/server"
	"lugwright/services/wire"
	"lugwright/strength"
	"lugwright/strength/basis"
)

// asked are requests by the full name of their method.
type asked map[string][]proto.Message

// listening hears every request that a server gets.
type listening struct {
	server.Service
	hear func(method string, q proto.Message)
}

type hearing struct {
	grpc.ServiceRegistrar
	hear func(method string, q proto.Message)
}

func (l listening) Register(r grpc.ServiceRegistrar) string {
	return l.Service.Register(hearing{r, l.hear})
}

func (h hearing) RegisterService(d *grpc.ServiceDesc, impl any) {
	own := *d
	own.Methods = nil
	for _, m := range d.Methods {
		name, handle := "/"+d.ServiceName+"/"+m.MethodName, m.Handler
		m.Handler = func(srv any, ctx context.Context, dec func(any) error, i grpc.UnaryServerInterceptor) (any, error) {
			return handle(srv, ctx, func(q any) error {
				err := dec(q)
				if err == nil {
					h.hear(name, proto.Clone(q.(proto.Message)))
				}
				return err
			}, i)
		}
		own.Methods = append(own.Methods, m)
	}
	h.ServiceRegistrar.RegisterService(&own, impl)
}

// demo gives what the demo jobs ask, and every kind at its defaults exported and checked.
var demo = sync.OnceValues(func() (asked, error) {
	out := asked{}
	var mu sync.Mutex
	hear := func(method string, q proto.Message) {
		mu.Lock()
		defer mu.Unlock()
		out[method] = append(out[method], q)
	}
	var services []server.Service
	for _, s := range both.Services() {
		services = append(services, listening{s, hear})
	}
	l, err := server.Listen("127.0.0.1:0")
	if err != nil {
		return nil, err
	}
	s := server.New(server.Options{Log: slog.New(slog.NewTextHandler(io.Discard, nil))}, services...)
	go s.Serve(l)
	defer s.Stop(time.Second)
	c, err := dial.Remote(l.Addr().String(), l.Addr().String(), dial.Options{})
	if err != nil {
		return nil, err
	}
	defer c.Close()
	ctx := context.Background()
	if err := jobs(ctx, c); err != nil {
		return nil, err
	}
	if err := everyKind(ctx, c); err != nil {
		return nil, err
	}
	return out, evaluations(ctx, c)
})

// jobs runs the demo jobs: brackets, vehicles.
func jobs(ctx context.Context, c *dial.Client) error {
	known, err := run.Known(ctx, c)
	if err != nil {
		return err
	}
	files, err := filepath.Glob("../../testdata/jobs/*.yaml")
	if err != nil {
		return err
	}
	for _, file := range files {
		src, err := os.ReadFile(file)
		if err != nil {
			return err
		}
		j, err := job.Read(file, src, known)
		if err != nil {
			return err
		}
		if len(j.Brackets) > 0 {
			if _, err := run.Job(ctx, c, j, run.Options{}); err != nil {
				return err
			}
		}
		if j.Vehicle != nil {
			if _, err := run.OfVehicle(ctx, c, j, run.VehicleOptions{}); err != nil {
				return err
			}
		}
	}
	return nil
}

// everyKind builds each kind at its defaults, exports it in all formats and on a sheet, and checks it.
func everyKind(ctx context.Context, c *dial.Client) error {
	for _, k := range kinds.All() {
		built, err := c.Build(ctx, []geometry.Request{{Kind: k.Name, Name: "b-" + k.Name, Hand: part.LeftHand}})
		if err != nil {
			return err
		}
		b := built[0].Bracket
		if _, err := c.Export(ctx, b, wire.Formats(), wire.CutStyle{}); err != nil {
			return err
		}
		if len(b.Plates) > 0 {
			s := wire.Sheet{Name: "sheet", Format: wire.DXFR2000, Plates: []wire.Placed{{Plate: b.Plates[0], TurnRad: math.Pi / 2}}}
			if _, err := c.ExportSheet(ctx, s); err != nil {
				return err
			}
		}
		if len(b.Paths) == 0 {
			continue
		}
		load := part.Case{Name: "own", LoadPoint: b.Paths[0].LoadPoint, Level: part.Service, Source: "own"}
		for _, pull := range []struct {
			of part.Component
			by part.Vec
		}{{part.FxPlus, part.Vec{X: 1000}}, {part.FyPlus, part.Vec{Y: 1000}}, {part.FzPlus, part.Vec{Z: 1000}}, {part.FzMinus, part.Vec{Z: -1000}}} {
			if pull.of == b.Paths[0].Component {
				load.Force = pull.by
			}
		}
		q := dial.CheckRequest{Bracket: b, Cases: []part.Case{load}, Options: strength.Options{Trace: true}}
		if _, err := c.Check(ctx, []dial.CheckRequest{q}); err != nil {
			return err
		}
	}
	return nil
}

// evaluations asks for each limit state of each basis once, every given in the middle of its range.
func evaluations(ctx context.Context, c *dial.Client) error {
	for _, b := range basis.All() {
		for _, l := range b.Limits {
			q := dial.EvaluateRequest{Basis: b.Card.Name, Limit: l.Info().ID}
			for _, g := range l.Info().Givens {
				v := g.Default
				if !g.Optional {
					v = middle(g)
				}
				q.Givens = append(q.Givens, dial.GivenValue{Symbol: g.Symbol, Values: []float64{v}, Unit: g.Unit})
			}
			if _, err := c.Evaluate(ctx, q); err != nil && len(part.Fields(err)) == 0 {
				return err
			}
		}
	}
	return nil
}

func middle(g strength.Given) float64 {
	low, high := max(g.Min, -100), min(g.Max, 400)
	if g.Choices != nil {
		return 0
	}
	return math.Round((low + high) / 2)
}

// requests gives what the demo jobs ask of one method; a batch of many as batches of one.
func requests(t testing.TB, method string) []proto.Message {
	t.Helper()
	all, err := demo()
	if err != nil {
		t.Fatal(err)
	}
	var out []proto.Message
	for _, q := range all[method] {
		out = append(out, single(q)...)
	}
	return out
}

func single(q proto.Message) []proto.Message {
	var out []proto.Message
	switch q := q.(type) {
	case *geometrypb.BuildBracketsRequest:
		for _, o := range q.Orders {
			out = append(out, &geometrypb.BuildBracketsRequest{Orders: []*geometrypb.BracketOrder{o}, Shop: q.Shop})
		}
	case *strengthpb.CheckBracketsRequest:
		for _, i := range q.Items {
			out = append(out, &strengthpb.CheckBracketsRequest{
				Setups: []*strengthpb.CheckSetup{q.Setups[i.Setup]}, Items: []*strengthpb.CheckItem{{Bracket: i.Bracket}}, Form: q.Form,
			})
		}
	default:
		out = append(out, q)
	}
	return out
}
