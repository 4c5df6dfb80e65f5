package dxf

import (
	"bytes"
	"errors"
	"flag"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"lugwright/geometry/shape"
	"lugwright/part"
	"lugwright/part/parttest"
)

var update = flag.Bool("update", false, "rewrite the golden files")

var forms = []Options{
	{}, {Inch: true}, {Version: R12}, {Version: R12, Inch: true}, {Version: R2010},
	{Layers: Layers{Cut: "0-CUT", Etch: "1-MARK"}, OutlineMarks: true},
}

func (o Options) name() string {
	if o.OutlineMarks {
		return "shop"
	}
	if o.Inch {
		return strings.ToLower(o.Version.String()) + "-inch"
	}
	return strings.ToLower(o.Version.String())
}

func written(t testing.TB, p part.Plate, o Options) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, &p, o); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func eachFile(t *testing.T, run func(t *testing.T, p part.Plate, o Options, data []byte)) {
	for _, p := range parttest.Plates() {
		for _, o := range forms {
			t.Run(p.ID+"/"+o.name(), func(t *testing.T) { run(t, p, o, written(t, p, o)) })
		}
	}
}

func TestReadBackEqualsPlate(t *testing.T) {
	eachFile(t, func(t *testing.T, p part.Plate, o Options, data []byte) {
		f, err := Read(data, o.Layers)
		if err != nil {
			t.Fatal(err)
		}
		if f.Version != o.Version || f.Inch != o.Inch {
			t.Errorf("read as %v inch %v", f.Version, f.Inch)
		}
		want, got := p.Shape(true), f.Outline()
		near(t, "area", got.Area(), want.Area(), 1e-6)
		near(t, "length", got.Length(), want.Length(), 1e-6)
		a, b := got.BBox(), want.BBox()
		if a.Min.Dist(b.Min) > 1e-6 || a.Max.Dist(b.Max) > 1e-6 {
			t.Errorf("box %v, want %v", a, b)
		}
		if len(got.Holes) != len(want.Holes) {
			t.Fatalf("%d holes, want %d", len(got.Holes), len(want.Holes))
		}
		for i, h := range want.Holes {
			wc, wd, wround := h.IsCircle()
			gc, gd, ground := got.Holes[i].IsCircle()
			if wround != ground || wc.Dist(gc) > 1e-6 || math.Abs(wd-gd) > 1e-6 {
				t.Errorf("hole %d: round %v %v d %g, want %v %v d %g", i, ground, gc, gd, wround, wc, wd)
			}
		}
	})
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s %.9f, want %.9f", what, got, want)
	}
}

func TestCheckAcceptsWhatWriteWrites(t *testing.T) {
	eachFile(t, func(t *testing.T, _ part.Plate, o Options, data []byte) {
		for _, v := range Check(data, o.Layers, 1) {
			t.Error(v)
		}
	})
}

func TestGolden(t *testing.T) {
	eachFile(t, func(t *testing.T, p part.Plate, o Options, data []byte) {
		if (o.Inch || o.Version == R2010 || o.OutlineMarks) && p.ID != "ear-1" {
			return
		}
		path := filepath.Join("testdata", p.ID+"-"+o.name()+".dxf")
		if *update {
			if err := os.WriteFile(path, data, 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(data, want) {
			t.Errorf("differs from %s; run with -update and read the diff", path)
		}
	})
}

// Two ears and a gusset in one file, one ear turned a quarter: three pieces, each as it is alone.
func TestWritePieces(t *testing.T) {
	ear, gusset := parttest.Ear(), parttest.Gusset()
	pieces := []Piece{{Plate: &ear}, {Plate: &ear, At: shape.Point{X: 400}, TurnRad: math.Pi / 2}, {Plate: &gusset, At: shape.Point{Y: 300}}}
	for _, o := range forms {
		t.Run(o.name(), func(t *testing.T) {
			var b bytes.Buffer
			if err := WritePieces(&b, pieces, o); err != nil {
				t.Fatal(err)
			}
			for _, v := range Check(b.Bytes(), o.Layers, 3) {
				t.Error(v)
			}
			f, err := Read(b.Bytes(), o.Layers)
			if err != nil {
				t.Fatal(err)
			}
			got := f.Outlines()
			if len(got) != len(pieces) {
				t.Fatalf("%d pieces, want %d", len(got), len(pieces))
			}
			for i := range pieces {
				want := pieces[i].Outline()
				near(t, "area", got[i].Area(), want.Area(), 1e-6)
				if a, b := got[i].BBox(), want.BBox(); a.Min.Dist(b.Min) > 1e-6 || a.Max.Dist(b.Max) > 1e-6 {
					t.Errorf("piece %d: box %v, want %v", i, a, b)
				}
			}
		})
	}
}

// Pieces that meet, and a file with another number of pieces than it should have.
func TestCheckPieces(t *testing.T) {
	plate := part.Plate{ID: "p", ThicknessMM: 10, Outer: shape.Rect(shape.Point{}, shape.Point{X: 50, Y: 30})}
	for name, at := range map[string]shape.Point{"overlap": {X: -10, Y: 5}, "crossed": {X: 20, Y: -20}, "touch": {Y: 30}} {
		var b bytes.Buffer
		if err := WritePieces(&b, []Piece{{Plate: &plate}, {Plate: &plate, At: at}}, Options{}); err != nil {
			t.Fatal(err)
		}
		if found := Check(b.Bytes(), Layers{}, 2); len(found) == 0 {
			t.Errorf("%s: not found", name)
		}
	}
	if found := Check(written(t, plate, Options{}), Layers{}, 2); len(found) != 1 || found[0].Rule != RuleStructure {
		t.Errorf("one piece for two: %v", found)
	}
}

func TestMarks(t *testing.T) {
	ear, _ := Read(written(t, parttest.Ear(), Options{}), Layers{})
	backing, _ := Read(written(t, parttest.Backing(), Options{}), Layers{})
	count := func(f File) map[string]int {
		n := map[string]int{}
		for _, s := range f.Strokes {
			n[s.Layer]++
		}
		return n
	}
	// T, B, -, L, 1 in the stroke font: 2 + 1 + 1 + 1 + 2 strokes; a cross is two. A 3 takes two.
	if got, want := fmt.Sprint(count(ear)), "map[CENTRE:2 ETCH:7]"; got != want {
		t.Errorf("ear has %s, want %s", got, want)
	}
	if got, want := fmt.Sprint(count(backing)), "map[BEND:1 CENTRE:4 ETCH:7]"; got != want {
		t.Errorf("backing plate has %s, want %s", got, want)
	}
}

func TestFlatArcsBecomeLines(t *testing.T) {
	p := parttest.Washer()
	p.Outer = shape.Rect(shape.Point{}, shape.Point{X: 40, Y: 40})
	p.Outer[0].Bulge = 1e-5 // rises 0.0002 mm
	data := string(written(t, p, Options{}))
	if strings.Contains(data, "\n 42\n0.0000") {
		t.Error("a bulge of no rise is written")
	}
}

func TestArcsOverHalfACircleAreSplit(t *testing.T) {
	p := parttest.Washer()
	p.Holes = nil
	p.Outer = shape.Loop{{Point: shape.Point{}, Bulge: 1.8}, {Point: shape.Point{X: 30}}}
	for _, o := range forms {
		data := written(t, p, o)
		f, err := Read(data, o.Layers)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "area", f.Outline().Area(), p.Outer.Area(), 1e-6)
		for _, v := range Check(data, o.Layers, 1) {
			t.Error(v)
		}
	}
}

func TestWriteRefuses(t *testing.T) {
	bad := func(change func(*part.Plate)) part.Plate { p := parttest.Ear(); change(&p); return p }
	for name, p := range map[string]part.Plate{
		"no outline": bad(func(p *part.Plate) { p.Outer = nil }),
		"nan":        bad(func(p *part.Plate) { p.Outer[0].X = math.NaN() }),
		"infinite":   bad(func(p *part.Plate) { p.Outer[1].Y = math.Inf(1) }),
		"absurd":     bad(func(p *part.Plate) { p.Outer[1].Y = 1e9 }),
		"nan text":   bad(func(p *part.Plate) { p.Etch[0].AngleRad = math.NaN() }),
		"point":      bad(func(p *part.Plate) { p.Cutouts = []shape.Loop{{{}, {}}} }),
	} {
		for _, o := range forms {
			err := Write(&bytes.Buffer{}, &p, o)
			if err == nil || !strings.HasPrefix(err.Error(), "plate ear-1: ") {
				t.Errorf("%s, %s: error %v", name, o.name(), err)
			}
		}
	}
	p := parttest.Ear()
	if err := Write(&bytes.Buffer{}, &p, Options{Version: 7}); err == nil {
		t.Error("version 7 is written")
	}
	if err := WritePieces(&bytes.Buffer{}, nil, Options{}); err == nil {
		t.Error("no plate is written")
	}
	if err := Write(full{}, &p, Options{}); !errors.Is(err, errFull) {
		t.Errorf("full disk: %v", err)
	}
}

var errFull = errors.New("disk is full")

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errFull }

// Each spoiled file breaks the rule it is named for.
func TestCheckFinds(t *testing.T) {
	r12, r2000 := string(written(t, parttest.Gusset(), Options{Version: R12})), string(written(t, parttest.Gusset(), Options{}))
	circle := r12[strings.Index(r12, "  0\nCIRCLE"):strings.Index(r12, "  0\nLINE")]
	firstLine := "LINE\n  5\n" + after(r12, "LINE\n  5\n")
	entities := "  2\nENTITIES\n"
	cases := []struct{ name, rule, data string }{
		{"text on the cut layer", RuleForeign, strings.Replace(r12, entities, entities+"  0\nTEXT\n  5\nFF\n  8\nCUT\n  1\nX\n", 1)},
		{"polyline under R12", RuleForeign, strings.Replace(r12, entities, entities+"  0\nLWPOLYLINE\n  5\nFF\n  8\nETCH\n", 1)},
		{"missing edge", RuleOpen, strings.Replace(r12, r12[strings.Index(r12, "  0\n"+firstLine):][:len(entity(r12, firstLine))], "", 1)},
		{"moved end", RuleOpen, strings.Replace(r12, " 11\n45.0\n", " 11\n45.1\n", 1)},
		{"open polyline", RuleOpen, strings.Replace(r2000, " 70\n1\n 10\n8.0", " 70\n0\n 10\n8.0", 1)},
		{"hole twice", RuleTwice, strings.Replace(r12, circle, circle+circle, 1)},
		{"handle twice", RuleHandle, strings.Replace(r12, circle, circle+circle, 1)},
		{"no handle", RuleHandle, strings.Replace(r2000, "CIRCLE\n  5\n", "CIRCLE\n  6\n", 1)},
		{"seed too low", RuleHandle, strings.Replace(r2000, "$HANDSEED\n  5\n", "$HANDSEED\n  5\n1\n  9\nX\n999\n", 1)},
		{"no unit", RuleUnits, strings.Replace(r2000, "$INSUNITS", "$INSUNITZ", 1)},
		{"mixed units", RuleUnits, strings.Replace(r2000, "$MEASUREMENT\n 70\n1", "$MEASUREMENT\n 70\n0", 1)},
		{"no unit, R12", RuleUnits, strings.Replace(r12, "999\nUNIT MM\n", "", 1)},
		{"strange layer", RuleLayer, strings.Replace(r12, "LINE\n  5\n"+after(r12, "LINE\n  5\n")+"\n  8\nCUT", "LINE\n  5\n"+after(r12, "LINE\n  5\n")+"\n  8\nOTHER", 1)},
		{"exponent", RuleNumber, strings.Replace(r12, " 11\n45.0\n", " 11\n4.5E1\n", 1)},
		{"minus zero", RuleNumber, strings.Replace(r2000, " 10\n0.0\n 20\n50.0", " 10\n-0.0\n 20\n50.0", 1)},
		{"zero bulge", RuleBulge, strings.Replace(r2000, " 10\n0.0\n 20\n50.0\n", " 10\n0.0\n 20\n50.0\n 42\n0.0\n", 1)},
		{"zero radius", RuleZero, strings.Replace(r12, " 40\n4.5\n", " 40\n0.0\n", 1)},
		{"first vertex repeated", RuleZero, strings.Replace(r2000, " 10\n0.0\n 20\n8.0\n", " 10\n0.0\n 20\n8.0\n 10\n8.0\n 20\n0.0\n", 1)},
		{"outer first", RuleOrder, strings.Replace(strings.Replace(r12, circle, "", 1), "  0\nENDSEC\n  0\nEOF", circle+"  0\nENDSEC\n  0\nEOF", 1)},
		{"outer clockwise", RuleWinding, mirrored(r2000)},
		{"hole outside", shape.RuleHoleOutside, strings.Replace(r12, circle, strings.Replace(circle, " 10\n12.0", " 10\n90.0", 1), 1)},
		{"bow tie", shape.RuleSelfIntersect, strings.Replace(r2000, " 10\n0.0\n 20\n8.0\n", " 10\n40.0\n 20\n40.0\n", 1)},
		{"etched in the hole", RuleEtch, strings.Replace(r12, entities, entities+"  0\nLINE\n  5\n1\n  8\nETCH\n 10\n10.0\n 20\n16.0\n 11\n13.0\n 21\n16.0\n", 1)},
		{"nothing to cut", RuleStructure, strings.ReplaceAll(r12, "  8\nCUT", "  8\nETCH")},
		{"no classes", RuleStructure, strings.Replace(r2000, "  0\nSECTION\n  2\nCLASSES\n  0\nENDSEC\n", "", 1)},
		{"no version", RuleStructure, strings.Replace(r2000, "AC1015", "AC1018", 1)},
		{"cut short", RuleStructure, r2000[:len(r2000)/2]},
		{"empty", RuleStructure, ""},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			if c.data == r12 || c.data == r2000 {
				t.Fatal("the file was not spoiled")
			}
			found := Check([]byte(c.data), Layers{}, 1)
			for _, v := range found {
				if v.Rule == c.rule {
					return
				}
			}
			t.Errorf("not found; found %v", found)
		})
	}
}

// after is the line that follows the first occurrence of s.
func after(data, s string) string {
	_, rest, _ := strings.Cut(data, s)
	first, _, _ := strings.Cut(rest, "\n")
	return first
}

// entity is the text of the entity that starts with its kind and handle.
func entity(data, start string) string {
	from := strings.Index(data, "  0\n"+start)
	return data[from : from+4+strings.Index(data[from+4:], "  0\n")]
}

// mirrored negates every x of a file, which turns every contour round.
func mirrored(data string) string {
	lines := strings.Split(data, "\n")
	for i := 0; i+1 < len(lines); i += 2 {
		if lines[i] == " 10" && lines[i+1] != "0.0" {
			lines[i+1] = "-" + lines[i+1]
		}
	}
	return strings.Join(lines, "\n")
}

func TestNumbers(t *testing.T) {
	for v, want := range map[float64]string{
		0: "0.0", math.Copysign(0, -1): "0.0", -1e-13: "0.0", 1e-12: "0.000000000001", -12.5: "-12.5", 127.3: "127.3",
		1e6: "1000000.0", 0.1 + 0.2: "0.3", -0.041421356237: "-0.041421356237",
	} {
		if got := numberText(v); got != want+"\n" {
			t.Errorf("%g: %q", v, got)
		}
	}
}

func numberText(v float64) string {
	var w writer
	return string(w.real(nil, v))
}

// FuzzNumbers: the digits are those of the standard library. Among the seeds are numbers half-way between two of twelve decimals, the largest,
// subnormal ones and ones that end in noughts.
func FuzzNumbers(f *testing.F) {
	for _, v := range []float64{
		0, 1.0 / 8192, 3.0 / 8192, 5.0 / 8192, 123456 + 1.0/8192, 1e6, math.Nextafter(1e6, 0), 999999.9999999999, 0.9999999999995, 0.9999999999994999,
		5e-13, math.Nextafter(5e-13, 1), 1.5e-12, 2.5e-12, 5e-324, math.SmallestNonzeroFloat64 * (1 << 52), 1e-300, 12.34, 1000, 999.999, 1.001, 100.000001,
	} {
		f.Add(v)
	}
	f.Fuzz(func(t *testing.T, v float64) {
		if !(math.Abs(v) <= 1e6) {
			v = math.Mod(v, 1e6)
		}
		if math.IsNaN(v) {
			return
		}
		for _, v := range []float64{v, -v, math.Round(v*1e3) / 1e3, math.Round(v*8192) / 8192, math.Round(v)} {
			want := strings.TrimRight(strconv.FormatFloat(v, 'f', 12, 64), "0")
			if want = strings.TrimSuffix(want, "."); !strings.Contains(want, ".") {
				want += ".0"
			}
			if want == "-0.0" {
				want = "0.0"
			}
			if got := numberText(v); got != want+"\n" {
				t.Errorf("%g: %q, want %q", v, got, want)
			}
		}
	})
}

func FuzzRead(f *testing.F) {
	for _, p := range parttest.Plates() {
		for _, o := range forms {
			f.Add(written(f, p, o))
		}
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		file, err := Read(data, Layers{})
		if err != nil && !errors.Is(err, ErrNotDXF) {
			t.Errorf("error %v is not ErrNotDXF", err)
		}
		if err == nil && len(file.Contours) < 100 {
			Check(data, Layers{}, 1)
		}
	})
}

func BenchmarkWrite(b *testing.B) {
	p := parttest.Ear()
	for _, o := range forms[:3] {
		b.Run(o.name(), func(b *testing.B) {
			b.SetBytes(int64(len(written(b, p, o))))
			b.ReportAllocs()
			var buf bytes.Buffer
			for b.Loop() {
				buf.Reset()
				if err := Write(&buf, &p, o); err != nil {
					b.Fatal(err)
				}
			}
		})
	}
}

func BenchmarkCheck(b *testing.B) {
	data := written(b, parttest.Ear(), Options{})
	b.SetBytes(int64(len(data)))
	for b.Loop() {
		Check(data, Layers{}, 1)
	}
}
