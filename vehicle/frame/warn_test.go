package frame

import (
	"testing"

	"lugwright/part"
)

// Each planted fault is named, and none where there is none.
func TestWarnings(t *testing.T) {
	cab := 900.0
	down := func(name string, x, n float64) Load {
		return Load{Mount: name, On: Both, At: part.Vec{X: x, Z: 1010}, Force: part.Vec{Z: -n}}
	}
	for kind, c := range map[string]struct {
		spoil func(f *Frame)
		loads []Load
		mount string
	}{
		"behind cab":         {func(f *Frame) { f.CabBackMM = &cab }, []Load{down("a", 1250, 1e4)}, "a"},
		"mid-span":           {func(f *Frame) {}, []Load{down("a", 1900, 1e4)}, "a"},
		"overhang":           {func(f *Frame) {}, []Load{down("a", 3900, 1e4)}, "a"},
		"spring hanger":      {func(f *Frame) { f.Axles[1].HangersMM = []float64{3200, 4400} }, []Load{down("a", 3350, 1e4)}, "a"},
		"over yield":         {func(f *Frame) {}, []Load{down("a", 1900, 1e5)}, ""},
		"over a spread body": {func(f *Frame) {}, []Load{down("a", 2500, 1e4)}, ""},
		"axle lifts":         {func(f *Frame) {}, []Load{down("a", 4500, 1e4)}, ""},
		"twist":              {func(f *Frame) {}, []Load{{Mount: "a", On: Left, At: part.Vec{X: 1000, Y: 468, Z: 1010}, Force: part.Vec{Z: -1e4}}}, "a"},
	} {
		f := fieldLab()
		quiet, err := Bend(f, []Case{{Name: "c", Level: part.Service, Loads: []Load{down("b", 1260, 1000), down("b", 3600, 1000)}}})
		if err != nil {
			t.Fatal(err)
		}
		if len(quiet.Warnings) != 0 {
			t.Fatalf("warned without cause: %+v", quiet.Warnings)
		}
		c.spoil(&f)
		r, err := Bend(f, []Case{{Name: "c", Level: part.Service, Loads: c.loads}})
		if err != nil {
			t.Fatal(err)
		}
		if !hasWarning(r.Warnings, kind, c.mount) {
			t.Errorf("%s is not warned of: %+v", kind, r.Warnings)
		}
	}
}
