package svg

import (
	"bytes"
	"encoding/xml"
	"errors"
	"flag"
	"fmt"
	"image/png"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"lugwright/geometry/shape"
	"lugwright/internal/peer"
	"lugwright/part"
	"lugwright/part/parttest"
)

var update = flag.Bool("update", false, "rewrite the golden files")

func plate(t testing.TB, p part.Plate, o PlateOptions) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := WritePlate(&b, &p, o); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func bracket(t testing.TB, b *part.Bracket, o BracketOptions) []byte {
	t.Helper()
	var buf bytes.Buffer
	if err := WriteBracket(&buf, b, o); err != nil {
		t.Fatal(err)
	}
	return buf.Bytes()
}

// pictures are everything that the golden files hold.
func pictures(t testing.TB) map[string][]byte {
	all := map[string][]byte{"bracket.svg": bracket(t, parttest.Bracket(), BracketOptions{})}
	for _, p := range parttest.Plates() {
		all[p.ID+".svg"] = plate(t, p, PlateOptions{})
	}
	all["ear-1-cut.svg"] = plate(t, parttest.Ear(), PlateOptions{Cut: true, MarginMM: 10})
	return all
}

func TestGolden(t *testing.T) {
	for name, got := range pictures(t) {
		path := filepath.Join("testdata", name)
		if *update {
			if err := os.WriteFile(path, got, 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(got, want) {
			t.Errorf("differs from %s; run with -update and read the diff", path)
		}
	}
}

func TestWellFormed(t *testing.T) {
	b := parttest.Bracket()
	b.Name, b.Plates[0].Mark = `<"&'`+"\x01", `a<b`
	all := pictures(t)
	all["odd names"] = bracket(t, b, BracketOptions{})
	all["odd mark"] = plate(t, b.Plates[0], PlateOptions{})
	for name, data := range all {
		d := xml.NewDecoder(bytes.NewReader(data))
		for {
			if _, err := d.Token(); err == io.EOF {
				break
			} else if err != nil {
				t.Fatalf("%s: %v", name, err)
			}
		}
	}
}

func TestSameBytes(t *testing.T) {
	a, b := pictures(t), pictures(t)
	for name := range a {
		if !bytes.Equal(a[name], b[name]) {
			t.Errorf("%s differs from one run to the next", name)
		}
	}
}

// drawing is what the tests read of a picture.
type drawing struct {
	Width   string `xml:"width,attr"`
	Height  string `xml:"height,attr"`
	ViewBox string `xml:"viewBox,attr"`
	Paths   []struct {
		D        string `xml:"d,attr"`
		FillRule string `xml:"fill-rule,attr"`
	} `xml:"path"`
	Text []string `xml:"text"`
}

// The path read back, with y turned up again, is the plate: same box, same area, at full size.
func TestPlatePathIsThePlate(t *testing.T) {
	for _, p := range parttest.Plates() {
		for _, cut := range []bool{false, true} {
			var d drawing
			if err := xml.Unmarshal(plate(t, p, PlateOptions{Cut: cut, MarginMM: 7}), &d); err != nil {
				t.Fatal(err)
			}
			want := p.Shape(cut)
			box := want.BBox()
			// The sheet may be wider than the plate, for the caption.
			if wide, err := strconv.ParseFloat(strings.TrimSuffix(d.Width, "mm"), 64); err != nil || wide < box.Width()+14 || d.Height != mm(box.Height()+21) || d.ViewBox != strings.ReplaceAll("0 0 "+d.Width+" "+d.Height, "mm", "") {
				t.Errorf("%s: %s x %s, view %s", p.ID, d.Width, d.Height, d.ViewBox)
			}
			got := readPath(t, d.Paths[0].D, shape.Point{X: box.Min.X - 7, Y: box.Max.Y + 7})
			if d.Paths[0].FillRule != "evenodd" || len(got.Holes) != len(want.Holes) {
				t.Errorf("%s: %d holes, want %d", p.ID, len(got.Holes), len(want.Holes))
			}
			if b := got.BBox(); b.Min.Dist(box.Min) > 2e-6 || b.Max.Dist(box.Max) > 2e-6 {
				t.Errorf("%s: box %v, want %v", p.ID, b, box)
			}
			if off := math.Abs(got.Area() - want.Area()); off > 1e-6*want.Area() {
				t.Errorf("%s: area %g, want %g", p.ID, got.Area(), want.Area())
			}
		}
	}
}

func mm(v float64) string {
	w := writer{decimals: plateDecimals}
	return w.number(v) + "mm"
}

// readPath reads M, L, A and Z with absolute coordinates on a paper that starts at a corner.
func readPath(t *testing.T, d string, corner shape.Point) shape.Outline {
	t.Helper()
	var loops []shape.Loop
	for _, sub := range strings.Split(strings.TrimSuffix(d, "Z"), "Z") {
		var l shape.Loop
		for _, word := range strings.Fields(strings.NewReplacer("M", "\nM,", "L", "\nL,", "A", "\nA,", " ", ",").Replace(sub)) {
			var p shape.Point
			var r, r2 float64
			var sweep int
			n, err := 0, error(nil)
			if word[0] == 'A' {
				n, err = fmt.Sscanf(word, "A,%g,%g,0,0,%d,%g,%g", &r, &r2, &sweep, &p.X, &p.Y)
			} else {
				n, err = fmt.Sscanf(word[1:], ",%g,%g", &p.X, &p.Y)
			}
			if err != nil || n < 2 || r != r2 {
				t.Fatalf("%q: %v", word, err)
			}
			p = shape.Point{X: corner.X + p.X, Y: corner.Y - p.Y}
			if r > 0 {
				last := &l[len(l)-1]
				half := math.Asin(math.Min(1, last.Dist(p)/(2*r)))
				last.Bulge = math.Tan(half/2) * float64(1-2*sweep)
			}
			l = append(l, shape.Vertex{Point: p})
		}
		if last := len(l) - 1; l[last].Dist(l[0].Point) < 1e-9 {
			l = l[:last]
		}
		loops = append(loops, l)
	}
	return shape.Outline{Outer: loops[0], Holes: loops[1:]}
}

func TestBracketNamesItsParts(t *testing.T) {
	var d drawing
	if err := xml.Unmarshal(bracket(t, parttest.Bracket(), BracketOptions{}), &d); err != nil {
		t.Fatal(err)
	}
	for _, want := range []string{"TB-L1 ear", "TB-L2 gusset", "TB-L3 backing plate", "TB-L5 angle", "TB-P1 pin"} {
		n := 0
		for _, s := range d.Text {
			if s == want {
				n++
			}
		}
		if n != 1 {
			t.Errorf("%q is there %d times in %q", want, n, d.Text)
		}
	}
	if d.Width != "170mm" {
		t.Errorf("width %s", d.Width)
	}
	if err := xml.Unmarshal(bracket(t, parttest.Bracket(), BracketOptions{NoMarks: true, WidthMM: 100}), &d); err != nil || d.Width != "100mm" {
		t.Errorf("%v, width %s", err, d.Width)
	}
}

func TestRefuses(t *testing.T) {
	p := parttest.Ear()
	for _, m := range []float64{-1, math.NaN(), 2000} {
		if err := WritePlate(io.Discard, &p, PlateOptions{MarginMM: m}); err == nil {
			t.Errorf("margin %g is accepted", m)
		}
	}
	p.Outer = nil
	if err := WritePlate(io.Discard, &p, PlateOptions{}); err == nil {
		t.Error("a plate of nothing is drawn")
	}
	p = parttest.Ear()
	p.Outer[0].X = math.NaN()
	if err := WritePlate(io.Discard, &p, PlateOptions{}); err == nil {
		t.Error("a plate of no number is drawn")
	}
	for _, width := range []float64{1, math.Inf(1), math.NaN()} {
		if err := WriteBracket(io.Discard, parttest.Bracket(), BracketOptions{WidthMM: width}); err == nil {
			t.Errorf("width %g is accepted", width)
		}
	}
	if err := WriteBracket(io.Discard, &part.Bracket{}, BracketOptions{}); err == nil {
		t.Error("an empty bracket is drawn")
	}
	b := parttest.Bracket()
	b.Plates[0].Pose.Origin.X = math.Inf(1)
	if err := WriteBracket(io.Discard, b, BracketOptions{}); err == nil {
		t.Error("a bracket of no number is drawn")
	}
	if err := WriteBracket(full{}, parttest.Bracket(), BracketOptions{}); !errors.Is(err, errFull) {
		t.Errorf("full disk: %v", err)
	}
}

var errFull = errors.New("disk is full")

type full struct{}

func (full) Write([]byte) (int, error) { return 0, errFull }

// librsvg draws the pictures: as large as they say, and with ink on them.
func TestRsvg(t *testing.T) {
	convert := peer.NeedCommand(t, "rsvg-convert")
	for name, data := range pictures(t) {
		cmd := exec.Command(convert, "--zoom", "2", "--background-color", "white")
		cmd.Stdin = bytes.NewReader(data)
		out, err := cmd.Output()
		if err != nil {
			t.Fatalf("%s: %v", name, err)
		}
		img, err := png.Decode(bytes.NewReader(out))
		if err != nil {
			t.Fatal(err)
		}
		dark := 0
		for y := range img.Bounds().Dy() {
			for x := range img.Bounds().Dx() {
				if r, _, _, _ := img.At(x, y).RGBA(); r < 0xf000 {
					dark++
				}
			}
		}
		if share := float64(dark) / float64(img.Bounds().Dx()*img.Bounds().Dy()); share < 0.05 || share > 0.95 {
			t.Errorf("%s: %.3f of the picture is inked", name, share)
		}
	}
}

func BenchmarkWriteBracket(b *testing.B) {
	x := parttest.Bracket()
	for b.Loop() {
		if err := WriteBracket(io.Discard, x, BracketOptions{}); err != nil {
			b.Fatal(err)
		}
	}
}
