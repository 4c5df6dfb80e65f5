// Package strength is the strength service: it decodes, calls the strength library, and encodes. It never knows a
// bracket kind, nor a particular basis; the bases it offers are given to it.
//
//	service.go  the calls
//	check.go    one bracket, and batches with shared setups
//	lists.go    bases and materials
//	vehicle.go  a whole vehicle
//	selftest.go published answers that it must give before it serves
package strength

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"google.golang.org/grpc"

	"lugwright/part"
	pb "lugwright/proto/gen/lugwright/strength/v1alpha1"
	"lugwright/services/server"
	"lugwright/services/wire"
	"lugwright/strength"
)

// Service answers lugwright.strength.v1alpha1.StrengthService.
type Service struct {
	pb.UnimplementedStrengthServiceServer
	bases []*strength.Basis
}

// New makes a service that offers the bases.
func New(bases []*strength.Basis) *Service { return &Service{bases: bases} }

// Register adds the service to a server.
func (s *Service) Register(r grpc.ServiceRegistrar) string {
	pb.RegisterStrengthServiceServer(r, s)
	return pb.StrengthService_ServiceDesc.ServiceName
}

// GetServiceInfo gives the versions and the build.
func (s *Service) GetServiceInfo(context.Context, *pb.GetServiceInfoRequest) (*pb.GetServiceInfoResponse, error) {
	build := wire.ThisBuild()
	return &pb.GetServiceInfoResponse{
		ApiVersion: wire.APIVersion, ToolVersion: wire.ToolVersion(), GoVersion: build.Go, Revision: build.Revision, Modified: build.Modified,
	}, nil
}

// ListBases lists the bases.
func (s *Service) ListBases(_ context.Context, q *pb.ListBasesRequest) (*pb.ListBasesResponse, error) {
	return &pb.ListBasesResponse{Bases: wire.EncodeBases(s.describe(q.GetCardsOnly()))}, nil
}

// ListMaterials lists the materials.
func (s *Service) ListMaterials(context.Context, *pb.ListMaterialsRequest) (*pb.ListMaterialsResponse, error) {
	list, err := materials()
	if err != nil {
		return nil, wire.ToStatus(err)
	}
	return wire.EncodeMaterials(list), nil
}

// CheckBracket checks one bracket.
func (s *Service) CheckBracket(ctx context.Context, q *pb.CheckBracketRequest) (*pb.CheckBracketResponse, error) {
	report, err := s.check(ctx, nil, q.GetBracket(), s.setup(q.GetSetup()))
	if err != nil {
		return nil, wire.ToStatus(err)
	}
	return &pb.CheckBracketResponse{Report: wire.EncodeReport(report)}, nil
}

// CheckBrackets checks several.
func (s *Service) CheckBrackets(ctx context.Context, q *pb.CheckBracketsRequest) (*pb.CheckBracketsResponse, error) {
	if err := wire.BatchFits("items", len(q.GetItems())); err != nil {
		return nil, wire.ToStatus(err)
	}
	if err := wire.BatchFits("setups", len(q.GetSetups())); err != nil {
		return nil, wire.ToStatus(err)
	}
	b := s.batch(wire.HandoverOf(ctx), q)
	results, err := server.Batch(ctx, q.GetItems(), b.result, b.failed)
	if err != nil {
		return nil, wire.ToStatus(err)
	}
	return b.answer(results), nil
}

// EvaluateLimit evaluates one limit state from numbers.
func (s *Service) EvaluateLimit(_ context.Context, m *pb.EvaluateLimitRequest) (*pb.EvaluateLimitResponse, error) {
	answer, err := s.evaluate(m)
	if err != nil {
		return nil, wire.ToStatus(err)
	}
	return answer, nil
}

func (s *Service) evaluate(m *pb.EvaluateLimitRequest) (*pb.EvaluateLimitResponse, error) {
	q, err := wire.DecodeEvaluateRequest(m)
	if err != nil {
		return nil, err
	}
	basis, err := s.basis(q.Basis)
	if err != nil {
		return nil, err
	}
	limit := basis.Limit(q.Limit)
	if limit == nil {
		return nil, &part.FieldError{
			Field: "limit", Found: fmt.Sprintf("%q is not a limit state of %s", q.Limit, basis.Card.Name),
			Accept: "one of those that ListBases and `lugwright limits` list" + part.Nearest(q.Limit, limitNames(basis)),
		}
	}
	method, err := methodOf(basis, q.Method)
	if err != nil {
		return nil, err
	}
	values, err := wire.Ordered(limit.Info(), q.Givens)
	if err != nil {
		return nil, err
	}
	if err := impossible(limit.Info().Givens, values); err != nil {
		return nil, err
	}
	factors, err := basis.Card.FactorValues(q.FactorSet, q.Factors)
	if err != nil {
		return nil, err
	}
	c := &strength.Calc{Trace: true, Method: method, Factors: factors}
	if err := limit.FromNumbers(c, values); err != nil {
		return nil, err
	}
	return wire.EncodeEvaluation(limit.Info(), c), nil
}

// impossible refuses a metal whose tensile strength lies under its yield strength: F_u beside F_y, f_up beside f_yp. A tensile strength of 0 is left out.
func impossible(givens []strength.Given, values [][]float64) error {
	for i, g := range givens {
		rest, ok := strings.CutPrefix(strings.ToUpper(g.Symbol), "F_U")
		if !ok || g.List || len(values[i]) == 0 || values[i][0] == 0 {
			continue
		}
		k := slices.IndexFunc(givens, func(y strength.Given) bool { return strings.ToUpper(y.Symbol) == "F_Y"+rest && !y.List })
		if k >= 0 && len(values[k]) > 0 && values[i][0] < values[k][0] {
			return &part.FieldError{Field: "givens." + g.Symbol, Found: fmt.Sprintf("%.4g %s, less than %s", values[i][0], g.Unit, givens[k].Symbol),
				Accept: fmt.Sprintf("at least the yield strength, %.4g %s", values[k][0], givens[k].Unit)}
		}
	}
	return nil
}

// basis finds a basis by name, the first where there is none; the error names the nearest.
func (s *Service) basis(name string) (*strength.Basis, error) { return s.named("basis", name) }

// named finds the basis that a field names.
func (s *Service) named(field, name string) (*strength.Basis, error) {
	if name == "" && len(s.bases) > 0 {
		return s.bases[0], nil
	}
	names := make([]string, len(s.bases))
	for i, b := range s.bases {
		if b.Card.Name == name {
			return b, nil
		}
		names[i] = b.Card.Name
	}
	return nil, unknown(field, "basis", name, names)
}

func unknown(field, what, name string, names []string) error {
	return &part.FieldError{
		Field: field, Found: fmt.Sprintf("%q is not a %s", name, what),
		Accept: "one of " + strings.Join(names, ", ") + part.Nearest(name, names),
	}
}

func limitNames(b *strength.Basis) []string {
	names := make([]string, len(b.Limits))
	for i, l := range b.Limits {
		names[i] = l.Ident().ID
	}
	return names
}

// methodOf takes the basis's first method where none is asked for.
func methodOf(b *strength.Basis, asked strength.Method) (strength.Method, error) {
	names := make([]string, len(b.Card.Methods))
	for i, m := range b.Card.Methods {
		if m == asked || asked == "" {
			return m, nil
		}
		names[i] = string(m)
	}
	return "", unknown("method", "method of "+b.Card.Name, string(asked), names)
}
