package sweep

// This file draws what variants take against how much of their capacity is used: on paper, and in letters for a terminal.

import (
	"fmt"
	"math"
	"strings"

	"lugwright/client/plots"
	"lugwright/units"
)

// Plot is a picture of rows.
type Plot struct {
	Title  string
	Across string // what lies across, with its unit
	Margin float64
	Points []Point
}

// Point is one row that has a utilisation.
type Point struct {
	Across, Utilisation float64
	Outcome             Outcome
	Lightest            bool
	InStock             bool // its plates are of thicknesses that the job has
}

// mostShown is the utilisation above which points lie on the upper edge.
const mostShown = 2

// span is the part of the plane that is shown.
type plane struct{ left, right, top, step float64 }

func (p *Plot) plane() plane {
	low, high, top := math.Inf(1), math.Inf(-1), 1.0
	for _, q := range p.Points {
		low, high, top = min(low, q.Across), max(high, q.Across), max(top, q.Utilisation)
	}
	if len(p.Points) == 0 {
		low, high = 0, 1
	}
	if high-low < 1e-9*(1+math.Abs(high)) {
		low, high = low-max(math.Abs(low), 1)*0.05, high+max(math.Abs(high), 1)*0.05
	}
	step := plots.Nice((high - low) / 5)
	return plane{math.Floor(low/step) * step, math.Ceil(high/step) * step, min(math.Ceil(top*5+0.25)/5, mostShown), step}
}

// ticks are the numbers along the lower edge.
func (p plane) ticks() []float64 {
	var out []float64
	for i := range int(math.Round((p.right-p.left)/p.step)) + 1 {
		out = append(out, p.left+float64(i)*p.step)
	}
	return out
}

func (p plane) label(v float64) string {
	return units.FormatPlain(v, max(0, int(math.Ceil(-math.Log10(p.step)-1e-9))))
}

// at is a point's place from 0 to 1 each way.
func (p plane) at(q Point) (x, y float64) {
	return (q.Across - p.left) / (p.right - p.left), min(q.Utilisation/p.top, 1)
}

// wanted is the utilisation that is not to be passed.
func (p *Plot) wanted() float64 { return 1 / p.Margin }

// Legend says what the marks of the letters mean.
const Legend = "* lightest that passes, o passes, s short of the margin, x fails, ? outside the rule"

// marks by outcome; where several rows share a place, the later of the list is seen.
var marks = []struct {
	outcome Outcome
	letter  byte
}{{Fails, 'x'}, {Outside, '?'}, {Short, 's'}, {Passes, 'o'}}

// Letters is the plot as lines of at most so many columns.
func (p *Plot) Letters(columns, rows int) []string {
	const margin = 6
	wide := columns - margin - 1
	area := p.plane()
	grid := make([][]byte, rows)
	for y := range grid {
		grid[y] = []byte(strings.Repeat(" ", wide))
	}
	row := func(y float64) int { return rows - 1 - int(math.Round(y*float64(rows-1))) }
	limit := row(min(p.wanted()/area.top, 1))
	copy(grid[limit], strings.Repeat("-", wide))
	put := func(q Point, letter byte) {
		x, y := area.at(q)
		grid[row(y)][int(math.Round(x*float64(wide-1)))] = letter
	}
	for _, m := range marks {
		for _, q := range p.Points {
			if q.Outcome == m.outcome {
				put(q, m.letter)
			}
		}
	}
	for _, q := range p.Points {
		if q.Lightest {
			put(q, '*')
		}
	}
	lines := []string{"used"}
	for y := range grid {
		label := ""
		switch {
		case y == limit:
			label = units.FormatPlain(p.wanted(), 2)
		case y == 0:
			label = units.FormatPlain(area.top, 2)
		case y == rows-1:
			label = "0"
		}
		lines = append(lines, strings.TrimRight(fmt.Sprintf("%*s|%s", margin, label, grid[y]), " "))
	}
	lines = append(lines, strings.Repeat(" ", margin)+"+"+strings.Repeat("-", wide))
	foot := []byte(strings.Repeat(" ", columns))
	for _, v := range area.ticks() {
		text := area.label(v)
		x := margin + 1 + int(math.Round((v-area.left)/(area.right-area.left)*float64(wide-1)))
		copy(foot[min(max(0, x-len(text)/2), columns-len(text)):], text)
	}
	return append(lines, strings.TrimRight(string(foot), " "), strings.Repeat(" ", margin+1)+p.Across)
}

// signs by outcome: the form tells it.
var signs = []struct {
	outcome Outcome
	sign    plots.Sign
	words   string
}{{Passes, plots.FullDiamond, "passes"}, {Short, plots.Diamond, "short of the margin"}, {Fails, plots.Cross, "fails"}, {Outside, plots.Square, "outside the rule"}}

// Chart is the plot for paper.
func (p *Plot) Chart() *plots.Chart {
	c := &plots.Chart{
		Name: "sweep", Title: p.Title, X: plots.Axis{Words: p.Across},
		Y:     plots.Axis{Words: "used, of capacity; what is above " + units.FormatPlain(mostShown, 0) + " lies on the upper edge", Zero: true, Most: mostShown},
		Desc:  fmt.Sprintf("How much of its capacity each variant uses; at most %s is wanted.", units.FormatPlain(p.wanted(), 3)),
		Bands: []plots.Band{{From: 0, To: p.wanted(), Words: "passes, at most " + units.FormatPlain(p.wanted(), 3)}},
	}
	of := func(words string, sign plots.Sign, has func(*Point) bool) {
		m := plots.Marks{Name: words, Sign: sign}
		for i := range p.Points {
			if q := &p.Points[i]; has(q) {
				m.Points = append(m.Points, plots.Point{X: q.Across, Y: q.Utilisation})
			}
		}
		if m.Points != nil {
			c.Marks = append(c.Marks, m)
		}
	}
	for _, m := range signs {
		of(m.words, m.sign, func(q *Point) bool { return q.Outcome == m.outcome })
	}
	of("lightest that passes", plots.Ring, func(q *Point) bool { return q.Lightest })
	of("of plate that is in stock", plots.Tick, func(q *Point) bool { return q.InStock })
	return c
}
