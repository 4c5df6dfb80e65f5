package geometry

import (
	"context"
	"fmt"
	"math"

	"lugwright/geometry/dxf"
	"lugwright/geometry/shape"
	pb "lugwright/proto/gen/lugwright/geometry/v1alpha1"
	partpb "lugwright/proto/gen/lugwright/part/v1alpha1"
	"lugwright/services/wire"
)

// sameMM2 is how far the area in a cut file may be off the model's, for each mm of contour.
const sameMM2 = 0.001

// SelfTest builds every kind at its defaults, writes its cut files, reads them back, and holds the plates in them against the
// model's by area.
func (s *Service) SelfTest(ctx context.Context) error {
	for _, k := range s.kinds {
		if err := s.selfTest(ctx, k.Name); err != nil {
			return fmt.Errorf("kind %s at its defaults: %w", k.Name, err)
		}
	}
	return nil
}

func (s *Service) selfTest(ctx context.Context, kind string) error {
	built, err := s.BuildBracket(ctx, &pb.BuildBracketRequest{Order: &pb.BracketOrder{Kind: kind, Name: "self-test", Hand: partpb.Hand_HAND_LEFT}})
	if err != nil {
		return err
	}
	written, err := s.ExportBracket(ctx, &pb.ExportBracketRequest{Bracket: built.Bracket, Formats: wire.EncodeFormats([]wire.Format{wire.DXFR2000})})
	if err != nil {
		return err
	}
	b, err := wire.DecodeBracket(built.Bracket)
	if err != nil {
		return err
	}
	pieces, err := distinct(b.AsMade())
	if err != nil {
		return err
	}
	files := written.GetExports()[0].GetFiles()
	if len(files) != len(pieces) {
		return fmt.Errorf("%d cut files for %d distinct plates", len(files), len(pieces))
	}
	for i, f := range files {
		if err := readsBack(f.GetData(), pieces[i].plate.Shape(true)); err != nil {
			return fmt.Errorf("%s: %w", f.GetName(), err)
		}
	}
	return nil
}

func readsBack(data []byte, plate shape.Outline) error {
	f, bad := dxf.ReadChecked(data, dxf.Layers{}, 1)
	if len(bad) > 0 {
		return fmt.Errorf("%s", bad[0])
	}
	got := f.Outlines()
	if len(got) != 1 {
		return fmt.Errorf("%d pieces in it", len(got))
	}
	if off := math.Abs(got[0].Area() - plate.Area()); !(off <= sameMM2*plate.Length()) {
		return fmt.Errorf("its area is %.3f mm2, the plate's %.3f mm2", got[0].Area(), plate.Area())
	}
	return nil
}
