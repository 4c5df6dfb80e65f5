// Package geometry is the geometry service: it decodes, calls the geometry library, and encodes. It never knows a
// particular kind; the kinds it offers are given to it.
//
//	service.go  the calls
//	export.go   which files a format gives and what they are called
//	selftest.go brackets that it must build before it serves
package geometry

import (
	"context"
	"fmt"

	"google.golang.org/grpc"

	"lugwright/geometry"
	"lugwright/geometry/shop"
	"lugwright/part"
	pb "lugwright/proto/gen/lugwright/geometry/v1alpha1"
	"lugwright/services/server"
	"lugwright/services/wire"
)

// Service answers lugwright.geometry.v1alpha1.GeometryService.
type Service struct {
	pb.UnimplementedGeometryServiceServer
	kinds []geometry.Kind
}

// New makes a service that offers the kinds.
func New(kinds []geometry.Kind) *Service { return &Service{kinds: kinds} }

// Register adds the service to a server.
func (s *Service) Register(r grpc.ServiceRegistrar) string {
	pb.RegisterGeometryServiceServer(r, s)
	return pb.GeometryService_ServiceDesc.ServiceName
}

// GetServiceInfo gives the versions and the build.
func (s *Service) GetServiceInfo(context.Context, *pb.GetServiceInfoRequest) (*pb.GetServiceInfoResponse, error) {
	build := wire.ThisBuild()
	return &pb.GetServiceInfoResponse{
		ApiVersion: wire.APIVersion, ToolVersion: wire.ToolVersion(), GoVersion: build.Go, Revision: build.Revision, Modified: build.Modified,
	}, nil
}

// ListKinds lists the kinds.
func (s *Service) ListKinds(context.Context, *pb.ListKindsRequest) (*pb.ListKindsResponse, error) {
	return &pb.ListKindsResponse{Kinds: wire.EncodeKinds(s.kinds)}, nil
}

// BuildBracket builds one bracket.
func (s *Service) BuildBracket(_ context.Context, q *pb.BuildBracketRequest) (*pb.BuildBracketResponse, error) {
	b, err := s.build(q.GetOrder())
	if err != nil {
		return nil, wire.ToStatus(err)
	}
	return &pb.BuildBracketResponse{Bracket: wire.EncodeBracket(b)}, nil
}

// BuildBrackets builds several.
func (s *Service) BuildBrackets(ctx context.Context, q *pb.BuildBracketsRequest) (*pb.BuildBracketsResponse, error) {
	if err := wire.BatchFits("orders", len(q.GetOrders())); err != nil {
		return nil, wire.ToStatus(err)
	}
	cutter, err := wire.DecodeShop(q.GetShop())
	if err != nil {
		return nil, wire.ToStatus(err)
	}
	b := batch{service: s, shop: cutter, handover: wire.HandoverOf(ctx)}
	results, err := server.Batch(ctx, q.GetOrders(), b.result, problem)
	if err != nil {
		return nil, wire.ToStatus(err)
	}
	return &pb.BuildBracketsResponse{Results: results, Materials: b.amounts.Texts}, nil
}

// ExportBracket writes a bracket's files.
func (s *Service) ExportBracket(_ context.Context, q *pb.ExportBracketRequest) (*pb.ExportBracketResponse, error) {
	exports, err := exported(q)
	if err != nil {
		return nil, wire.ToStatus(err)
	}
	return &pb.ExportBracketResponse{Exports: wire.EncodeExports(exports)}, nil
}

// ExportSheet writes one cut file of several plates.
func (s *Service) ExportSheet(_ context.Context, q *pb.ExportSheetRequest) (*pb.ExportSheetResponse, error) {
	order, err := wire.DecodeSheet(q)
	if err != nil {
		return nil, wire.ToStatus(err)
	}
	file, err := sheet(order)
	if err != nil {
		return nil, wire.ToStatus(err)
	}
	return &pb.ExportSheetResponse{File: wire.EncodeFile(&file)}, nil
}

func (s *Service) build(order *pb.BracketOrder) (*part.Bracket, error) {
	q, err := wire.DecodeOrder(order)
	if err != nil {
		return nil, err
	}
	return geometry.Build(s.kinds, q)
}

// batch is one BuildBrackets call; its results share the names of materials.
type batch struct {
	service *Service
	shop    *shop.Profile // who cuts them; nil: nobody is named
	amounts wire.Amounts

	handover *wire.Handover
}

func (b *batch) result(_ context.Context, order *pb.BracketOrder) (*pb.BuildResult, error) {
	built, err := b.service.build(order)
	if err != nil {
		return nil, err
	}
	if b.shop != nil {
		built = b.shop.Finished(built)
		if bad := b.shop.Broken(built); bad != nil {
			return nil, bad
		}
	}
	out := &pb.BuildResult{Outcome: &pb.BuildResult_Bracket{Bracket: b.handover.Encode(built)}}
	out.Materials, out.VolumesMm3 = b.amounts.Encode(built.Volumes())
	return out, nil
}

func problem(err error) *pb.BuildResult {
	return &pb.BuildResult{Outcome: &pb.BuildResult_Problem{Problem: wire.EncodeProblem(err)}}
}

func exported(q *pb.ExportBracketRequest) ([][]wire.File, error) {
	formats, err := wire.DecodeFormats(q.GetFormats())
	if err != nil {
		return nil, err
	}
	style, err := wire.DecodeStyle(q.GetStyle())
	if err != nil {
		return nil, err
	}
	b, err := wire.DecodeBracket(q.GetBracket())
	if err != nil {
		return nil, err
	}
	if err := b.Validate(); err != nil {
		return nil, fmt.Errorf("bracket cannot be exported: %w", err)
	}
	b = b.AsMade()
	exports := make([][]wire.File, len(formats))
	for i, f := range formats {
		if exports[i], err = export(b, f, style); err != nil {
			return nil, err
		}
	}
	return exports, nil
}
