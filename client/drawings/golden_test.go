package drawings

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"testing"

	"lugwright/client/draw"
	"lugwright/client/draw/svg"
	"lugwright/part"
	"lugwright/part/parttest"
	"lugwright/units"
)

var update = flag.Bool("update", false, "rewrite the golden files")

// A plate in mm and in inches and a welded bracket, in golden files to be looked at; testdata/contact-sheet.png shows the demo jobs.
func TestGolden(t *testing.T) {
	ear, backing, b := parttest.Ear(), parttest.Backing(), parttest.Bracket()
	b.Welds = []part.WeldGroup{{
		ID: "w1", Joins: [2]string{"ear-1", "base.a"}, Kind: part.Fillet, LegMM: 6, BothSides: true, Electrode: "E70",
		Segments: []part.WeldSegment{{A: part.Vec{X: -11, Y: 25, Z: 10}, B: part.Vec{X: -11, Y: 91, Z: 10}}, {A: part.Vec{X: -23, Y: 25, Z: 10}, B: part.Vec{X: -23, Y: 91, Z: 10}}},
	}}
	all := map[string]*draw.Drawing{
		"ear.svg":          Plate(&ear, PlateOptions{Hand: part.LeftHand, Quantity: 2}),
		"backing-inch.svg": Plate(&backing, PlateOptions{Options: Options{Units: units.Inch}}),
	}
	for _, d := range Of(b, nil).All(Options{}) {
		all[d.Name+".svg"] = d
	}
	for name, d := range all {
		var got bytes.Buffer
		if err := svg.Write(&got, d); err != nil {
			t.Fatal(err)
		}
		path := filepath.Join("testdata", name)
		if *update {
			if err := os.WriteFile(path, got.Bytes(), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(got.Bytes(), want) {
			t.Errorf("differs from %s; run with -update and look at it", path)
		}
	}
}
