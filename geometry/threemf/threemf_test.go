package threemf

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"fmt"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"lugwright/geometry"
	"lugwright/geometry/kinds"
	"lugwright/geometry/mesh"
	"lugwright/internal/peer"
	"lugwright/part"
	"lugwright/part/parttest"
)

func written(t testing.TB, b *part.Bracket, o Options) []byte {
	t.Helper()
	var buf bytes.Buffer
	if err := Write(&buf, b, o); err != nil {
		t.Fatal(err)
	}
	return buf.Bytes()
}

// document is what a reader sees of a file.
type document struct {
	Unit     string `xml:"unit,attr"`
	Metadata []struct {
		Name  string `xml:"name,attr"`
		Value string `xml:",chardata"`
	} `xml:"metadata"`
	Objects []object `xml:"resources>object"`
	Items   []struct {
		Object int `xml:"objectid,attr"`
	} `xml:"build>item"`
}

type object struct {
	ID       int    `xml:"id,attr"`
	Name     string `xml:"name,attr"`
	Number   string `xml:"partnumber,attr"`
	Vertices []struct {
		X float64 `xml:"x,attr"`
		Y float64 `xml:"y,attr"`
		Z float64 `xml:"z,attr"`
	} `xml:"mesh>vertices>vertex"`
	Triangles []struct {
		A int `xml:"v1,attr"`
		B int `xml:"v2,attr"`
		C int `xml:"v3,attr"`
	} `xml:"mesh>triangles>triangle"`
}

// read takes a file apart by the standard library alone.
func read(t testing.TB, data []byte) document {
	t.Helper()
	z, err := zip.NewReader(bytes.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	parts := map[string][]byte{}
	for _, f := range z.File {
		r, err := f.Open()
		if err != nil {
			t.Fatal(err)
		}
		if parts[f.Name], err = io.ReadAll(r); err != nil {
			t.Fatal(err)
		}
	}
	for _, name := range []string{"[Content_Types].xml", "_rels/.rels", "3D/3dmodel.model"} {
		if err := xml.Unmarshal(parts[name], new(struct{})); err != nil {
			t.Fatalf("%s: %v", name, err)
		}
	}
	var d document
	if err := xml.Unmarshal(parts["3D/3dmodel.model"], &d); err != nil {
		t.Fatal(err)
	}
	return d
}

func (o *object) volume() float64 {
	sum := 0.0
	at := func(i int) part.Vec {
		v, w := o.Vertices[i], o.Vertices[0]
		return part.Vec{X: v.X - w.X, Y: v.Y - w.Y, Z: v.Z - w.Z}
	}
	for _, t := range o.Triangles {
		sum += at(t.A).Dot(at(t.B).Cross(at(t.C))) / 6
	}
	return sum
}

func TestReadBack(t *testing.T) {
	b := parttest.Bracket()
	d := read(t, written(t, b, Options{}))
	solids, err := mesh.Of(b, usualFacetMM)
	if err != nil {
		t.Fatal(err)
	}
	if d.Unit != "millimeter" || len(d.Objects) != len(solids) || len(d.Items) != len(solids) || d.Metadata[0].Value != "test: test bracket, left hand" {
		t.Fatalf("unit %s, %d objects, %d items, %v", d.Unit, len(d.Objects), len(d.Items), d.Metadata)
	}
	for i := range solids {
		s, o := &solids[i], &d.Objects[i]
		if o.Number != s.Mark || !strings.HasSuffix(o.Name, " "+s.ID) || d.Items[i].Object != o.ID {
			t.Errorf("%s is object %q of mark %q, item %d", s.ID, o.Name, o.Number, d.Items[i].Object)
		}
		for k, v := range o.Vertices {
			if (part.Vec{X: v.X, Y: v.Y, Z: v.Z}).Sub(s.Mesh.Points[k]).Norm() > 1e-6 {
				t.Fatalf("%s: corner %d at %v, want %v", s.ID, k, v, s.Mesh.Points[k])
			}
		}
		for k, f := range o.Triangles {
			if (mesh.Triangle{f.A, f.B, f.C}) != s.Mesh.Triangles[k] {
				t.Fatalf("%s: triangle %d is %v, want %v", s.ID, k, f, s.Mesh.Triangles[k])
			}
		}
	}
}

func TestSameBracketSameBytes(t *testing.T) {
	if !bytes.Equal(written(t, parttest.Bracket(), Options{}), written(t, parttest.Bracket(), Options{})) {
		t.Error("two files of one bracket differ")
	}
}

func TestNamesAndRemarks(t *testing.T) {
	b := parttest.Bracket()
	b.Name, b.Plates[0].Name, b.Plates[4].RolledMM = `a<b>"&`, `"/><x`, 60
	d := read(t, written(t, b, Options{}))
	if d.Objects[0].Name != `TB-L1 "/><x S355 ear-1` || !strings.HasPrefix(d.Metadata[0].Value, `a<b>"&: `) {
		t.Errorf("%q, %q", d.Objects[0].Name, d.Metadata[0].Value)
	}
	if says := d.Metadata[1].Value; !strings.HasPrefix(says, "x forward") || !strings.Contains(says, "backing stands flat: how a rolled plate lies is not known.") {
		t.Error(says)
	}
}

func TestWriteRefuses(t *testing.T) {
	for says, c := range map[string]struct {
		b *part.Bracket
		o Options
	}{
		"facet error: 20 mm":             {parttest.Bracket(), Options{FacetMM: 20}},
		"no plates, members or pins":     {&part.Bracket{Name: "b"}, Options{}},
		"ear-1 cannot be made a solid: ": {func() *part.Bracket { b := parttest.Bracket(); b.Plates[0].Holes[0].Center.Y = 500; return b }(), Options{}},
	} {
		if err := Write(io.Discard, c.b, c.o); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%v, want %q", err, says)
		}
	}
}

// OpenSCAD reads each part of the brackets as a solid of the same volume; it writes six digits. Of the tray it reads the folded sheet.
func TestOpenSCADMeasures(t *testing.T) {
	openscad := peer.NeedCommand(t, "openscad")
	tray, err := geometry.Build(kinds.All(), geometry.Request{Kind: "tray", Name: "t", Hand: part.LeftHand})
	if err != nil {
		t.Fatal(err)
	}
	b := parttest.Bracket()
	for _, one := range []part.Bracket{
		{Plates: b.Plates[:1]}, {Plates: b.Plates[2:3]}, {Plates: b.Plates[4:]}, {Members: b.Members}, {Pins: b.Pins}, {Plates: tray.Plates[:1]},
	} {
		data := written(t, &one, Options{})
		o := read(t, data).Objects[0]
		t.Run(o.Name, func(t *testing.T) {
			got := measured(t, openscad, data)
			if want := o.volume(); math.Abs(got.volume-want) > 2e-5*want {
				t.Errorf("volume %.2f, want %.2f", got.volume, want)
			}
		})
	}
}

// OpenSCAD reads all parts in their places: from the washer's edge (-200) to the angle's end (80) along x, over the angle's leg (100) along y, from the washer's
// underside (-3) to the top of the ears (10 + 70 + 28) along z. The parts keep clear of each other, so that their volumes add up.
func TestOpenSCADReadsTheAssembly(t *testing.T) {
	openscad := peer.NeedCommand(t, "openscad")
	b := parttest.Bracket()
	b.Plates, b.Members[0].Holes, b.Pins = append(b.Plates[:2:2], parttest.Washer()), nil, nil
	data := written(t, b, Options{FacetMM: 0.5}) // few facets: the union of solids is slow
	want := 0.0
	for _, o := range read(t, data).Objects {
		want += o.volume()
	}
	got := measured(t, openscad, data)
	if math.Abs(got.volume-want) > 2e-5*want {
		t.Errorf("volume %.2f, want %.2f", got.volume, want)
	}
	if got.min.Sub(part.Vec{X: -200, Z: -3}).Norm() > 1e-3 || got.max.Sub(part.Vec{X: 80, Y: 100, Z: 108}).Norm() > 1e-3 {
		t.Errorf("from %v to %v", got.min, got.max)
	}
}

// measure is what OpenSCAD makes of a file.
type measure struct {
	volume   float64
	min, max part.Vec
}

func measured(t *testing.T, openscad string, data []byte) measure {
	t.Helper()
	file := filepath.Join(t.TempDir(), "b.3mf")
	if err := os.WriteFile(file, data, 0o644); err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile(file+".scad", fmt.Appendf(nil, "import(%q);\n", file), 0o644); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command(openscad, "-o", file+".stl", file+".scad").CombinedOutput()
	if err != nil || strings.Contains(string(out), "WARNING") || strings.Contains(string(out), "ERROR") {
		t.Fatalf("%v\n%s", err, out)
	}
	stl, err := os.ReadFile(file + ".stl")
	if err != nil {
		t.Fatal(err)
	}
	m := measure{min: part.Vec{X: math.Inf(1), Y: math.Inf(1), Z: math.Inf(1)}, max: part.Vec{X: math.Inf(-1), Y: math.Inf(-1), Z: math.Inf(-1)}}
	var f [3]part.Vec
	n := 0
	for _, line := range strings.Split(string(stl), "\n") {
		p := &f[n%3]
		if _, err := fmt.Sscanf(strings.TrimSpace(line), "vertex %g %g %g", &p.X, &p.Y, &p.Z); err != nil {
			continue
		}
		m.min = part.Vec{X: min(m.min.X, p.X), Y: min(m.min.Y, p.Y), Z: min(m.min.Z, p.Z)}
		m.max = part.Vec{X: max(m.max.X, p.X), Y: max(m.max.Y, p.Y), Z: max(m.max.Z, p.Z)}
		if n++; n%3 == 0 {
			m.volume += f[0].Dot(f[1].Cross(f[2])) / 6
		}
	}
	return m
}
