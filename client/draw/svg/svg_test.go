package svg

import (
	"bytes"
	"encoding/xml"
	"image/png"
	"io"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"lugwright/client/draw"
	"lugwright/internal/peer"
)

// some reaches every feature of a drawing.
func some() *draw.Drawing {
	half := func(x, y, bulge float64) draw.Segment { return draw.Segment{To: draw.Point{X: x, Y: y}, Bulge: bulge} }
	return &draw.Drawing{WidthMM: 80, HeightMM: 60, Title: `A "ring" & <more>`, Desc: "A ring, a dashed line and words.", Items: []draw.Item{
		&draw.Group{ID: "TB-L4", Items: []draw.Item{
			&draw.Path{
				Start: draw.Point{X: 10, Y: 30}, Segments: []draw.Segment{half(50, 30, 1), half(10, 30, 1)}, Closed: true, Fill: draw.Shade{On: true, Grey: 0.8}, Pen: draw.Pen{WidthMM: 0.5},
				More: []draw.Loop{{Start: draw.Point{X: 20, Y: 30}, Segments: []draw.Segment{half(40, 30, -1), half(20, 30, -1)}}},
			},
			&draw.Group{ID: "inner", Items: []draw.Item{&draw.Text{At: draw.Point{X: 30, Y: 29}, HeightMM: 3, Align: draw.Middle, Words: "Ø20", Bold: true}}},
		}},
		&draw.Path{Start: draw.Point{X: 60, Y: 5}, Segments: []draw.Segment{half(60, 55, 0)}, Pen: draw.Pen{WidthMM: 0.35, Dash: []float64{3, 1.5}, Grey: 0.4}},
		&draw.Text{At: draw.Point{X: 70, Y: 30}, HeightMM: 2.5, Align: draw.Right, TurnRad: math.Pi / 2, Words: "turned"},
	}}
}

func written(t *testing.T, d *draw.Drawing) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, d); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestWellFormedAndTheSame(t *testing.T) {
	a, b := written(t, some()), written(t, some())
	if !bytes.Equal(a, b) {
		t.Error("differs from one run to the next")
	}
	d := xml.NewDecoder(bytes.NewReader(a))
	for {
		if _, err := d.Token(); err == io.EOF {
			break
		} else if err != nil {
			t.Fatal(err)
		}
	}
	for _, want := range []string{"A20 20 0 0 0 50 30", "A10 10 0 0 1 40 30", `id="TB-L4"`, `<desc>A ring`, `stroke-dasharray="3 1.5"`, `stroke-linecap="butt"`, `rotate(-90 70 30)`} {
		if !strings.Contains(string(a), want) {
			t.Errorf("no %s in\n%s", want, a)
		}
	}
}

// Of groups of one name the first alone has the id, and among other drawings a prefix makes it the drawing's own.
func TestNamesOfGroups(t *testing.T) {
	d := some()
	d.Items[0].(*draw.Group).ID = "inner"
	var b bytes.Buffer
	if err := WriteInto(&b, d, "f2-"); err != nil {
		t.Fatal(err)
	}
	if text := b.String(); strings.Count(text, `data-id="inner"`) != 2 || strings.Count(text, ` id="`) != 1 || !strings.Contains(text, ` id="f2-inner"`) {
		t.Error(text)
	}
}

func TestRefused(t *testing.T) {
	for want, spoil := range map[string]func(*draw.Drawing){
		"both must be above 0": func(d *draw.Drawing) { d.WidthMM = 0 },
		"must be finite":       func(d *draw.Drawing) { d.Items[2].(*draw.Text).At.X = math.NaN() },
		"bulge 2":              func(d *draw.Drawing) { d.Items[0].(*draw.Group).Items[0].(*draw.Path).Segments[0].Bulge = 2 },
		`group "a b"`:          func(d *draw.Drawing) { d.Items[0].(*draw.Group).ID = "a b" },
		`group ""`:             func(d *draw.Drawing) { d.Items[0].(*draw.Group).ID = "" },
	} {
		d := some()
		spoil(d)
		if err := Write(io.Discard, d); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("error %v, want one about %s", err, want)
		}
	}
}

// rsvg-convert draws the ring where it is: ink on the ring, none in its hole.
func TestDrawnByRsvg(t *testing.T) {
	program := peer.NeedCommand(t, "rsvg-convert")
	dir := t.TempDir()
	in, out := filepath.Join(dir, "in.svg"), filepath.Join(dir, "out.png")
	d := some()
	d.Items[0].(*draw.Group).Items = d.Items[0].(*draw.Group).Items[:1]
	if err := os.WriteFile(in, written(t, d), 0o644); err != nil {
		t.Fatal(err)
	}
	if text, err := exec.Command(program, "-w", "800", "-b", "white", "-o", out, in).CombinedOutput(); err != nil {
		t.Fatalf("%v\n%s", err, text)
	}
	f, err := os.Open(out)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	img, err := png.Decode(f)
	if err != nil {
		t.Fatal(err)
	}
	scale := float64(img.Bounds().Dx()) / d.WidthMM
	for at, want := range map[draw.Point]uint32{{X: 15, Y: 30}: 204, {X: 30, Y: 45}: 204, {X: 30, Y: 30}: 255, {X: 5, Y: 5}: 255} {
		r, _, _, _ := img.At(int(at.X*scale), int((d.HeightMM-at.Y)*scale)).RGBA()
		if got := r >> 8; got != want {
			t.Errorf("grey %d at %v, want %d", got, at, want)
		}
	}
}
