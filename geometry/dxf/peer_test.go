package dxf

import (
	"bytes"
	"encoding/json"
	"encoding/xml"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"
	"time"

	"lugwright/internal/peer"
	"lugwright/part"
	"lugwright/part/parttest"
)

// audit is what testdata/peers/dxf_audit.py prints of one file.
type audit struct {
	Version       string
	Units         int
	Errors, Fixes int
	Layers        map[string]map[string]int
	Area          float64
	Circles       [][3]float64
}

// ezdxf (https://ezdxf.mozman.at) reads every file, finds nothing to complain of or to mend, and measures what the plate has.
func TestEzdxf(t *testing.T) {
	python := peer.Need(t, "python3", "ezdxf")
	var plates []part.Plate
	var used []Options
	args := []string{filepath.Join("..", "..", "testdata", "peers", "dxf_audit.py")}
	for _, p := range parttest.Plates() {
		for _, o := range forms {
			plates, used = append(plates, p), append(used, o)
			args = append(args, saved(t, written(t, p, o)))
		}
	}
	out := run(t, python, args...)
	var audits []audit
	if err := json.Unmarshal(out, &audits); err != nil {
		t.Fatalf("%v in %s", err, out)
	}
	for i, a := range audits {
		t.Run(plates[i].ID+"/"+used[i].name(), func(t *testing.T) { a.compare(t, plates[i], used[i]) })
	}
}

func (a audit) compare(t *testing.T, p part.Plate, o Options) {
	if a.Errors != 0 || a.Fixes != 0 {
		t.Errorf("%d errors, %d fixes", a.Errors, a.Fixes)
	}
	unit := 1.0
	if o.Inch {
		unit = 25.4
	}
	cut := p.Shape(true)
	if want := cut.Area(); math.Abs(a.Area*unit*unit-want) > 1e-8*want {
		t.Errorf("area %.9f, want %.9f", a.Area*unit*unit, want)
	}
	var round [][3]float64
	for _, h := range append(cut.Holes, cut.Outer) {
		if c, d, ok := h.IsCircle(); ok {
			round = append(round, [3]float64{c.X, c.Y, d})
		}
	}
	if len(round) != len(a.Circles) {
		t.Fatalf("circles %v, want %v", a.Circles, round)
	}
	for i, want := range round {
		for k, got := range a.Circles[i] {
			if math.Abs(got*unit-want[k]) > 1e-9 {
				t.Errorf("circle %d: %v, want %v", i, a.Circles[i], want)
			}
		}
	}
	if want := map[bool]int{false: 4, true: 1}[o.Inch]; o.Version != R12 && a.Units != want {
		t.Errorf("$INSUNITS %d, want %d", a.Units, want)
	}
	for kind := range a.Layers[o.Layers.orOurs().Cut] {
		if !strings.Contains("LINE ARC CIRCLE LWPOLYLINE", kind) {
			t.Errorf("%s on the cut layer", kind)
		}
	}
}

// OpenSCAD imports the R12 file; its polygon of a circle in 720 sides is short by (2 pi/720)^2/6, 1.3e-5.
func TestOpenSCADImportsR12(t *testing.T) {
	openscad := peer.NeedCommand(t, "openscad")
	for _, p := range parttest.Plates()[:2] {
		t.Run(p.ID, func(t *testing.T) {
			file := saved(t, written(t, p, Options{Version: R12}))
			source := fmt.Sprintf("import(%q, layer=%q, $fn=720);\n", file, OurLayers.Cut)
			if err := os.WriteFile(file+".scad", []byte(source), 0o644); err != nil {
				t.Fatal(err)
			}
			run(t, openscad, "-o", file+".svg", file+".scad")
			drawn, err := os.ReadFile(file + ".svg")
			if err != nil {
				t.Fatal(err)
			}
			want := p.Shape(true).Area()
			if got := svgArea(t, drawn); math.Abs(got-want) > 1e-4*want {
				t.Errorf("area %.3f, want %.3f", got, want)
			}
		})
	}
}

// svgArea adds up the signed rings of the one path that OpenSCAD draws.
func svgArea(t *testing.T, data []byte) float64 {
	var svg struct {
		Path struct {
			D string `xml:"d,attr"`
		} `xml:"path"`
	}
	if err := xml.Unmarshal(data, &svg); err != nil {
		t.Fatal(err)
	}
	sum := 0.0
	for _, ring := range strings.Split(svg.Path.D, "z") {
		var pts [][2]float64
		for _, xy := range strings.Fields(strings.NewReplacer("M", " ", "L", " ").Replace(ring)) {
			var p [2]float64
			if _, err := fmt.Sscanf(xy, "%g,%g", &p[0], &p[1]); err != nil {
				t.Fatal(err)
			}
			pts = append(pts, p)
		}
		for i, a := range pts {
			b := pts[(i+1)%len(pts)]
			sum += (a[0]*b[1] - b[0]*a[1]) / 2
		}
	}
	return math.Abs(sum)
}

func saved(t *testing.T, data []byte) string {
	t.Helper()
	f, err := os.CreateTemp(t.TempDir(), "*.dxf")
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if _, err := f.Write(data); err != nil {
		t.Fatal(err)
	}
	return f.Name()
}

func run(t *testing.T, name string, args ...string) []byte {
	t.Helper()
	var complaints bytes.Buffer
	cmd := exec.Command(name, args...)
	cmd.Stderr = &complaints
	out, err := cmd.Output()
	if err != nil || strings.Contains(complaints.String(), "WARNING") {
		t.Fatalf("%s: %v\n%s", name, err, complaints.String())
	}
	return out
}

// BenchmarkEzdxf writes one plate's file to memory in both forms, and lets ezdxf write the same entities, turn about: how many times longer its
// document API and its streaming writer take, by the medians. The streaming writer knows only R12: lines, arcs and circles, as our R12 form.
func BenchmarkEzdxf(b *testing.B) {
	python := peer.Need(b, "python3", "ezdxf")
	p := parttest.Ear()
	file := filepath.Join(b.TempDir(), "ear.dxf")
	if err := os.WriteFile(file, written(b, p, Options{}), 0o644); err != nil {
		b.Fatal(err)
	}
	var document, streaming, r2000, r12, fresh []float64
	for b.Loop() {
		out, err := exec.Command(python, filepath.Join("..", "..", "testdata", "peers", "dxf_speed.py"), file, "30").Output()
		if err != nil {
			b.Fatal(err)
		}
		var seconds struct{ Document, Streaming float64 }
		if err := json.Unmarshal(out, &seconds); err != nil {
			b.Fatal(err)
		}
		document, streaming = append(document, seconds.Document), append(streaming, seconds.Streaming)
		for range 300 {
			r2000, r12 = append(r2000, timed(b, &p, Options{}, true)), append(r12, timed(b, &p, Options{Version: R12}, true))
			fresh = append(fresh, timed(b, &p, Options{Version: R12}, false))
		}
	}
	b.ReportMetric(0, "ns/op") // says nothing: most of it is ezdxf
	b.ReportMetric(median(document)/median(r2000), "document/R2000")
	b.ReportMetric(median(streaming)/median(r2000), "streaming/R2000")
	b.ReportMetric(median(streaming)/median(r12), "streaming/R12")
	b.ReportMetric(median(streaming)/median(fresh), "streaming/R12-fresh")
	b.ReportMetric(1e6*median(r2000), "us/R2000")
	b.ReportMetric(1e6*median(r12), "us/R12")
}

var kept []byte

// timed is the mean time of ten writes in seconds, into memory that is used again, as the service has it, or into fresh memory each time.
func timed(b *testing.B, p *part.Plate, o Options, again bool) float64 {
	const times = 10
	var buf bytes.Buffer
	buf.Grow(1 << 14)
	began := time.Now()
	for range times {
		var err error
		if buf.Reset(); again {
			err = Write(&buf, p, o)
		} else {
			kept, err = Bytes([]Piece{{Plate: p}}, o)
		}
		if err != nil {
			b.Fatal(err)
		}
	}
	return time.Since(began).Seconds() / times
}

func median(x []float64) float64 {
	slices.Sort(x)
	return x[len(x)/2]
}
