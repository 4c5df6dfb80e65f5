package command

// Plots are held against what loads --json says, by reading the drawings: points against the numbers along the axes.

import (
	"encoding/json"
	"math"
	"strconv"
	"strings"
	"testing"

	"lugwright/client/draw"
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
						Mount string
						Force struct{ Z float64 }
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
	x, y  [2][2]float64 // two ticks: place on paper, number
	lines [][]draw.Point
	marks []draw.Point
}

// readPlot takes rules as lines of the rules' grey, numbers of ticks under and beside them.
func readPlot(t *testing.T, d *draw.Drawing) read {
	t.Helper()
	var r read
	var across, up [][2]float64
	low := math.Inf(1)
	for _, item := range d.Items {
		if p, ok := item.(*draw.Path); ok && p.Pen.WidthMM == 0.1 && len(p.Segments) == 1 && p.Start.X == p.Segments[0].To.X {
			low = min(low, p.Start.Y)
		}
	}
	for _, item := range d.Items {
		switch p := item.(type) {
		case *draw.Text:
			v, err := strconv.ParseFloat(p.Words, 64)
			switch {
			case err != nil:
			case p.Align == draw.Middle && p.At.Y < low:
				across = append(across, [2]float64{p.At.X, v})
			case p.Align == draw.Right && p.TurnRad == 0:
				up = append(up, [2]float64{p.At.Y + p.HeightMM/2, v})
			}
		case *draw.Path:
			switch {
			case len(p.Segments) > 4 && !p.Closed:
				line := []draw.Point{p.Start}
				for _, s := range p.Segments {
					line = append(line, s.To)
				}
				r.lines = append(r.lines, line)
			case p.Closed && p.Start.Y > low && len(p.Segments) <= 3 && p.Pen.WidthMM == 0.3:
				lo, hi := p.Start, p.Start
				for _, s := range p.Segments {
					lo, hi = draw.Point{X: min(lo.X, s.To.X), Y: min(lo.Y, s.To.Y)}, draw.Point{X: max(hi.X, s.To.X), Y: max(hi.Y, s.To.Y)}
				}
				r.marks = append(r.marks, draw.Point{X: (lo.X + hi.X) / 2, Y: (lo.Y + hi.Y) / 2})
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

func TestPlotsAreTheLoads(t *testing.T) {
	const path = "../../testdata/jobs/fieldlab.yaml"
	var doc plottedDoc
	if err := json.Unmarshal([]byte(lugwright(t, "loads", "--json", path).out), &doc); err != nil {
		t.Fatal(err)
	}
	client, err := dial.InProcess()
	if err != nil {
		t.Fatal(err)
	}
	defer client.Close()
	j, err := readJob(t.Context(), client, path)
	if err != nil {
		t.Fatal(err)
	}
	in := papers.Input{Result: &run.Result{Job: j}, Version: "test"}
	if in.Vehicle, err = vehicleOf(t.Context(), client, j); err != nil {
		t.Fatal(err)
	}
	kind, _ := papers.Find("plots")
	p, why := kind.Of(in)
	if p == nil {
		t.Fatal(why)
	}
	stations, marks := 0, 0
	for _, b := range p.Blocks {
		f, ok := b.(*paper.Figure)
		if !ok {
			continue
		}
		r := readPlot(t, f.Drawing)
		switch name := f.Drawing.Name; {
		case name == "rail-moment" || name == "rail-shear":
			stations += railsAsTold(t, &doc, r, name == "rail-shear")
		case strings.HasPrefix(name, "reactions-"):
			marks += reactionsAsTold(t, &doc, r, strings.TrimPrefix(name, "reactions-"))
		}
	}
	if stations < 80 || marks < 72 {
		t.Errorf("%d stations and %d marks were held against the loads", stations, marks)
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

// reactionsAsTold: marks come state by state, in each case by case.
func reactionsAsTold(t *testing.T, doc *plottedDoc, r read, mount string) int {
	t.Helper()
	var want []float64
	cases := doc.Answer.Report.Bodies[0].Cases
	for _, state := range []string{"empty", "full"} {
		for i := range cases {
			for _, q := range cases[i].Reactions {
				if cases[i].State == state && q.Mount == mount {
					want = append(want, q.Force.Z/1000)
				}
			}
		}
	}
	if len(r.marks) != len(want) {
		t.Fatalf("%s: %d reactions are told and %d drawn", mount, len(want), len(r.marks))
	}
	for i, m := range r.marks {
		if got := by(r.y, m.Y); math.Abs(got-want[i]) > 0.02 {
			t.Errorf("%s: mark %d is at %.3f kN; told %.3f kN", mount, i, got, want[i])
		}
	}
	return len(want)
}
