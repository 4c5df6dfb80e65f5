package command

// Plots are held against what loads --json says, by reading the drawings: points against the numbers along the axes.

import (
	"cmp"
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"lugwright/client/draw"
	"lugwright/client/job"
	"lugwright/client/paper"
	"lugwright/client/papers"
	"lugwright/client/run"
	"lugwright/services/dial"
)

type plottedDoc struct {
	Answer struct {
		Report struct {
			Bodies []struct {
				Cases []struct {
					State, Case string
					Reactions   []struct {
						Mount      string
						Force      struct{ X, Y, Z float64 }
						Components []struct {
							Direction string
							Low       float64 `json:"low"`
							High      float64 `json:"high"`
						}
					}
				}
			}
		}
		Frame struct {
			Governing []struct{ Rail, State, Case string }
			Cases     []struct {
				State, Case               string
				Left, Right, Mean, Spread struct {
					Stations []struct {
						X      float64 `json:"x_mm"`
						Moment float64 `json:"moment_n_mm"`
						Shear  float64 `json:"shear_n"`
					}
				}
			}
		}
	}
}

// read is a drawing's numbers: along the axes, and where its long lines and its marks are.
type read struct {
	x, y   [2][2]float64 // two ticks: place on paper, number
	lines  [][]draw.Point
	marks  []draw.Point
	ranges [][2]float64 // lower and upper end on paper
}

// readPlot reads each area of a chart, from above: rules are lines of the rules' grey, numbers of ticks stand under and beside them.
func readPlot(t *testing.T, d *draw.Drawing) []read {
	t.Helper()
	var areas [][2]float64 // lower and upper edge
	for _, item := range d.Items {
		if p, ok := item.(*draw.Path); ok && p.Pen.WidthMM == 0.1 && len(p.Segments) == 1 && p.Start.X == p.Segments[0].To.X {
			if area := [2]float64{p.Start.Y, p.Segments[0].To.Y}; !slices.Contains(areas, area) {
				areas = append(areas, area)
			}
		}
	}
	slices.SortFunc(areas, func(a, b [2]float64) int { return cmp.Compare(b[0], a[0]) })
	var out []read
	lowest := areas[len(areas)-1][0]
	for _, area := range areas {
		out = append(out, readArea(t, d, area[0], area[1], lowest))
	}
	return out
}

func readArea(t *testing.T, d *draw.Drawing, low, high, lowest float64) read {
	t.Helper()
	const edge = 0.001
	within := func(y float64) bool { return y > low-edge && y < high+edge }
	var r read
	var across, up [][2]float64
	for _, item := range d.Items {
		switch p := item.(type) {
		case *draw.Text:
			v, err := strconv.ParseFloat(p.Words, 64)
			switch {
			case err != nil:
			case p.Align == draw.Middle && p.At.Y < lowest:
				across = append(across, [2]float64{p.At.X, v})
			case p.Align == draw.Right && p.TurnRad == 0 && within(p.At.Y+p.HeightMM/2):
				up = append(up, [2]float64{p.At.Y + p.HeightMM/2, v})
			}
		case *draw.Path:
			switch {
			case !within(p.Start.Y):
			case len(p.Segments) > 4 && !p.Closed:
				line := []draw.Point{p.Start}
				for _, s := range p.Segments {
					line = append(line, s.To)
				}
				r.lines = append(r.lines, line)
			case p.Closed && len(p.Segments) <= 3 && p.Pen.WidthMM == 0.3:
				lo, hi := p.Start, p.Start
				for _, s := range p.Segments {
					lo, hi = draw.Point{X: min(lo.X, s.To.X), Y: min(lo.Y, s.To.Y)}, draw.Point{X: max(hi.X, s.To.X), Y: max(hi.Y, s.To.Y)}
				}
				r.marks = append(r.marks, draw.Point{X: (lo.X + hi.X) / 2, Y: (lo.Y + hi.Y) / 2})
			case p.Pen.WidthMM == 0.35 && p.Pen.Grey == 0.5:
				r.ranges = append(r.ranges, [2]float64{p.Start.Y, p.Segments[0].To.Y})
			}
		}
	}
	if len(up) < 2 {
		t.Fatalf("%s: %d numbers up", d.Title, len(up))
	}
	r.y = [2][2]float64{up[0], up[len(up)-1]}
	if len(across) > 1 {
		r.x = [2][2]float64{across[0], across[len(across)-1]}
	}
	return r
}

func by(axis [2][2]float64, at float64) float64 {
	return axis[0][1] + (at-axis[0][0])*(axis[1][1]-axis[0][1])/(axis[1][0]-axis[0][0])
}

// opened is a job that is read, and the services that it is read for.
func opened(t *testing.T, path string) (*dial.Client, *job.Job) {
	t.Helper()
	client, err := dial.InProcess()
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { client.Close() })
	j, err := readJob(t.Context(), client, path)
	if err != nil {
		t.Fatal(err)
	}
	return client, j
}

func TestPlotsAreTheLoads(t *testing.T) {
	const path = "../../testdata/jobs/fieldlab.yaml"
	var doc plottedDoc
	if err := json.Unmarshal([]byte(lugwright(t, "loads", "--json", path).out), &doc); err != nil {
		t.Fatal(err)
	}
	client, j := opened(t, path)
	in := papers.Input{Result: &run.Result{Job: j}, Version: "test"}
	var err error
	if in.Vehicle, err = vehicleOf(t.Context(), client, j); err != nil {
		t.Fatal(err)
	}
	kind, _ := papers.Find("plots")
	p, why := kind.Of(in)
	if p == nil {
		t.Fatal(why)
	}
	stations, marks, ranges := 0, 0, 0
	for _, b := range p.Blocks {
		f, ok := b.(*paper.Figure)
		if !ok {
			continue
		}
		switch name := f.Drawing.Name; {
		case name == "rails":
			r := readPlot(t, f.Drawing)
			stations += railsAsTold(t, &doc, r[0], false) + railsAsTold(t, &doc, r[1], true)
		case strings.HasPrefix(name, "reactions-"):
			m, n := reactionsAsTold(t, &doc, readPlot(t, f.Drawing), strings.TrimPrefix(name, "reactions-"))
			marks, ranges = marks+m, ranges+n
		}
	}
	// Three mounts, two states, twelve cases; the front one bears nothing fore and aft, so 8 areas of 24 marks.
	if stations < 80 || marks != 192 || ranges < 40 {
		t.Errorf("%d stations, %d marks and %d ranges were held against the loads", stations, marks, ranges)
	}
}

func railsAsTold(t *testing.T, doc *plottedDoc, r read, shear bool) int {
	t.Helper()
	n := 0
	for k, g := range doc.Answer.Frame.Governing {
		for i := range doc.Answer.Frame.Cases {
			c := &doc.Answer.Frame.Cases[i]
			if c.Case != g.Case || c.State != g.State {
				continue
			}
			d := c.Left
			switch g.Rail {
			case "right":
				d = c.Right
			case "mean":
				d = c.Mean
			case "spread":
				d = c.Spread
			}
			if len(d.Stations) != len(r.lines[k]) {
				t.Fatalf("%s rail: %d stations are told and %d drawn", g.Rail, len(d.Stations), len(r.lines[k]))
			}
			for s, told := range d.Stations {
				at := r.lines[k][s]
				want := told.Moment / 1e6
				if shear {
					want = told.Shear / 1000
				}
				if x, y := by(r.x, at.X), by(r.y, at.Y); math.Abs(x-told.X) > 0.5 || math.Abs(y-want) > 0.01 {
					t.Errorf("%s rail: drawn at %.2f is %.4f; told at %.2f is %.4f", g.Rail, x, y, told.X, want)
				}
				n++
			}
		}
	}
	return n
}

// reactionsAsTold: areas come up, sideways, along; marks state by state, in each case by case, with ranges where the loads have one.
func reactionsAsTold(t *testing.T, doc *plottedDoc, areas []read, mount string) (marks, ranges int) {
	t.Helper()
	cases := doc.Answer.Report.Bodies[0].Cases
	for k, way := range []string{"z", "y", "x"}[:len(areas)] {
		var want []float64
		var open [][2]float64
		for _, state := range []string{"empty", "full"} {
			for i := range cases {
				for _, q := range cases[i].Reactions {
					if cases[i].State != state || q.Mount != mount {
						continue
					}
					want = append(want, map[string]float64{"x": q.Force.X, "y": q.Force.Y, "z": q.Force.Z}[way]/1000)
					for _, c := range q.Components {
						if c.Direction == way && c.High-c.Low > 0.001 {
							open = append(open, [2]float64{c.Low / 1000, c.High / 1000})
						}
					}
				}
			}
		}
		r := areas[k]
		if len(r.marks) != len(want) || len(r.ranges) != len(open) {
			t.Fatalf("%s, %s: %d reactions and %d ranges are told, %d and %d drawn", mount, way, len(want), len(open), len(r.marks), len(r.ranges))
		}
		for i, m := range r.marks {
			if got := by(r.y, m.Y); math.Abs(got-want[i]) > 0.02 {
				t.Errorf("%s, %s: mark %d is at %.3f kN; told %.3f kN", mount, way, i, got, want[i])
			}
		}
		for i, m := range r.ranges {
			if lo, hi := by(r.y, m[0]), by(r.y, m[1]); math.Abs(lo-open[i][0]) > 0.02 || math.Abs(hi-open[i][1]) > 0.02 {
				t.Errorf("%s, %s: range %d is from %.3f to %.3f kN; told %v", mount, way, i, lo, hi, open[i])
			}
		}
		marks, ranges = marks+len(want), ranges+len(open)
	}
	return marks, ranges
}

// The calc sheet carries the same plots as the paper of plots: the vehicle's before the brackets whose loads come from them, those of thickness after the brackets.
func TestCalcSheetHasThePlots(t *testing.T) {
	client, j := opened(t, "../../testdata/jobs/fieldlab.yaml")
	in, err := papersInput(t.Context(), client, j, nil)
	if err != nil {
		t.Fatal(err)
	}
	named := func(name string) (names []string, before bool, thickness int) {
		made, err := makePapers(t.Context(), client, name, in)
		if err != nil {
			t.Fatal(err)
		}
		before = true
		for _, b := range made.list[0].Blocks {
			switch b := b.(type) {
			case *paper.Heading:
				before = before && (len(names) == 5 || !strings.HasPrefix(b.Text, "Bracket "))
			case *paper.Figure:
				if n := b.Drawing.Name; n == "rails" || n == "twist-gaps" || strings.HasPrefix(n, "reactions-") {
					names = append(names, n)
				}
				if strings.HasPrefix(b.Drawing.Name, "thickness-") {
					thickness++
				}
			}
		}
		return names, before, thickness
	}
	plotted, _, thicknesses := named("plots")
	sheet, before, own := named("calc-sheet")
	if want := "[rails twist-gaps reactions-single reactions-pair-left reactions-pair-right]"; fmt.Sprint(plotted) != want || fmt.Sprint(sheet) != want || !before {
		t.Errorf("plots %v, calc sheet %v; before the brackets %t", plotted, sheet, before)
	}
	if want := len(in.Result.Brackets); thicknesses != want || own != want {
		t.Errorf("%d plots of thickness, %d on the calc sheet, need %d", thicknesses, own, want)
	}
}

// What several papers of a job show is drawn once: the views on the calc sheet are the very drawing that the page of drawings has.
func TestPapersShareDrawings(t *testing.T) {
	client, j := opened(t, "../../testdata/jobs/crosstube.yaml")
	in, err := papersInput(t.Context(), client, j, nil)
	if err != nil {
		t.Fatal(err)
	}
	made, err := makePapers(t.Context(), client, "calc-sheet", in)
	if err != nil {
		t.Fatal(err)
	}
	views := func(p *paper.Paper) *draw.Drawing {
		for _, b := range p.Blocks {
			if f, ok := b.(*paper.Figure); ok && f.Drawing.Name == "views" {
				return f.Drawing
			}
		}
		t.Fatal("no views on " + p.Title)
		return nil
	}
	if views(made.list[0]) != views(drawingPapers(in, made.list[0])[0]) {
		t.Error("the views are drawn twice")
	}
}
