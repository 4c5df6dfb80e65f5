package dial

import (
	"context"
	"errors"

	"lugwright/geometry"
	"lugwright/part"
	pb "lugwright/proto/gen/lugwright/geometry/v1alpha1"
	"lugwright/services/wire"
)

// Format names an export format and the unit of its numbers.
type Format = wire.Format

// The formats. DXF and plate SVG give one file for each distinct plate, the others one for the bracket.
const (
	DXFR2000     = wire.DXFR2000
	DXFR2000Inch = wire.DXFR2000Inch
	DXFR12       = wire.DXFR12
	DXFR12Inch   = wire.DXFR12Inch
	OpenSCAD     = wire.OpenSCAD
	SVGPlate     = wire.SVGPlate
	SVGAssembly  = wire.SVGAssembly
	DXFR2010     = wire.DXFR2010
	DXFR2010Inch = wire.DXFR2010Inch
	ThreeMF      = wire.ThreeMF
)

// File is one exported file. Its name has no folder.
type File = wire.File

// CutStyle says how cut files are drawn; the zero value is ours.
type CutStyle = wire.CutStyle

// Placed is a plate in its place on a sheet; Sheet asks for one cut file of several.
type (
	Placed = wire.Placed
	Sheet  = wire.Sheet
)

// Built is a bracket, or why there is none.
type Built struct {
	Bracket *part.Bracket
	Err     error
}

// Kinds lists the bracket kinds; their Build is nil.
func (c *Client) Kinds(ctx context.Context) ([]geometry.Kind, error) {
	r, err := call(ctx, c.geometry, c.build.ListKinds, &pb.ListKindsRequest{})
	if err != nil {
		return nil, err
	}
	kinds, err := wire.DecodeKinds(r.GetKinds())
	if err != nil {
		return nil, c.geometry.broken(err)
	}
	return kinds, nil
}

// Build builds brackets, in the order of the requests. A refused one has its part.FieldErrors in Err; the returned error
// means that the service did not answer.
func (c *Client) Build(ctx context.Context, requests []geometry.Request) ([]Built, error) {
	out := make([]Built, len(requests))
	err := batches(ctx, len(requests), perMessage, c.geometry.inFlight(), func(ctx context.Context, from, to int) error {
		return c.buildSome(ctx, requests[from:to], out[from:to])
	})
	if err != nil {
		return nil, err
	}
	return out, nil
}

func (c *Client) buildSome(ctx context.Context, requests []geometry.Request, out []Built) error {
	q := &pb.BuildBracketsRequest{Orders: make([]*pb.BracketOrder, len(requests))}
	for i := range requests {
		q.Orders[i] = wire.EncodeOrder(requests[i])
	}
	r, err := call(ctx, c.geometry, c.build.BuildBrackets, q)
	if err != nil {
		return err
	}
	if err := sameCount(len(r.GetResults()), len(out)); err != nil {
		return c.geometry.broken(err)
	}
	for i, result := range r.GetResults() {
		if out[i], err = built(result); err != nil {
			return c.geometry.broken(err)
		}
	}
	return nil
}

func built(result *pb.BuildResult) (Built, error) {
	switch o := result.GetOutcome().(type) {
	case *pb.BuildResult_Bracket:
		b, err := wire.DecodeBracket(o.Bracket)
		return Built{Bracket: b}, err
	case *pb.BuildResult_Problem:
		return Built{Err: wire.DecodeProblem(o.Problem)}, nil
	}
	return Built{}, errNoOutcome
}

var errNoOutcome = errors.New("a result without an outcome")

// Export writes a bracket's files in several formats, in the order of the formats.
func (c *Client) Export(ctx context.Context, b *part.Bracket, formats []Format, style CutStyle) ([][]File, error) {
	q := &pb.ExportBracketRequest{Bracket: wire.EncodeBracket(b), Formats: wire.EncodeFormats(formats), Style: wire.EncodeStyle(style)}
	r, err := call(ctx, c.geometry, c.build.ExportBracket, q)
	if err != nil {
		return nil, err
	}
	exports, err := wire.DecodeExports(r.GetExports())
	if err == nil {
		err = sameCount(len(exports), len(formats))
	}
	if err != nil {
		return nil, c.geometry.broken(err)
	}
	return exports, nil
}

// ExportSheet writes one cut file of several plates. A refused plate comes as part.FieldErrors.
func (c *Client) ExportSheet(ctx context.Context, s Sheet) (File, error) {
	r, err := call(ctx, c.geometry, c.build.ExportSheet, wire.EncodeSheet(s))
	if err != nil {
		return File{}, err
	}
	file, err := wire.DecodeFile(r.GetFile())
	if err != nil {
		return File{}, c.geometry.broken(err)
	}
	return file, nil
}
