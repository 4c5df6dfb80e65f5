package plots

import (
	"math"
	"testing"

	"lugwright/client/draw"
)

// Ticks are round, few, and hold all numbers.
func TestAxis(t *testing.T) {
	for _, numbers := range [][]float64{{0, 1}, {-3.2, 17}, {1250, 1251}, {0.0013, 0.0021}, {-5e6, 3e6}, {7}, {0}, nil} {
		a := Axis{}
		s := a.settled(numbers, 150, true)
		ticks := s.ticks()
		if len(ticks) < 2 || len(ticks) > 12 {
			t.Errorf("%v: %d ticks", numbers, len(ticks))
		}
		for _, v := range numbers {
			if v < s.low-1e-12 || v > s.high+1e-12 {
				t.Errorf("%v: %g is outside %g to %g", numbers, v, s.low, s.high)
			}
		}
		mantissa := s.step / math.Pow(10, math.Floor(math.Log10(s.step)+1e-9))
		if math.Abs(mantissa-1) > 1e-6 && math.Abs(mantissa-2) > 1e-6 && math.Abs(mantissa-5) > 1e-6 {
			t.Errorf("%v: a step of %g", numbers, s.step)
		}
	}
	if s := (&Axis{Zero: true, Most: 2}).settled([]float64{0.5, math.Inf(1)}, 80, true); s.low != 0 || s.high != 2 || s.part(math.Inf(1)) != 1 {
		t.Errorf("%v", s)
	}
}

// Nothing is drawn off the paper, dashes and signs tell rows apart without grey.
func TestChart(t *testing.T) {
	c := &Chart{
		Title: "a chart", X: Axis{Words: "place, mm"}, Y: Axis{Words: "used", Zero: true, Most: 2}, Bands: []Band{{0, 1, "passes"}},
		Uprights: []Upright{{0, "here"}, {1, "beside it, with many words"}, {2, "and once more"}, {100, "far"}},
	}
	for k := range 5 {
		c.Lines = append(c.Lines, Line{Name: "a line of some name or other", Points: []Point{{0, 0}, {50, float64(k)}, {100, math.Inf(1)}}, Dash: Dash(k)})
	}
	for k := range int(signs) {
		c.Marks = append(c.Marks, Marks{Name: "marks", Points: []Point{{float64(10 * k), 0.5}}, Sign: Sign(k)})
	}
	d := c.Drawing()
	inside := func(p draw.Point) {
		if !(p.X >= 0 && p.Y >= 0 && p.X <= d.WidthMM && p.Y <= d.HeightMM) {
			t.Errorf("%v is off the paper of %g x %g", p, d.WidthMM, d.HeightMM)
		}
	}
	for _, item := range d.Items {
		switch item := item.(type) {
		case *draw.Path:
			inside(item.Start)
			for _, s := range item.Segments {
				inside(s.To)
			}
		case *draw.Text:
			for _, p := range item.Corners() {
				inside(p)
			}
		}
	}
	type look struct {
		wide float64
		dash int
	}
	seen := map[look]bool{}
	for k := range dashes {
		p := k.pen()
		l := look{p.WidthMM, len(p.Dash)}
		for _, v := range p.Dash {
			l.wide += 100 * v
		}
		if seen[l] {
			t.Errorf("dash %d looks like another without its grey", k)
		}
		seen[l] = true
	}
}
