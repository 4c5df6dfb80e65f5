// Package papertest holds a paper with every kind of block, and papers as plain text, for tests. Nothing but tests imports it.
package papertest

import (
	"fmt"
	"strings"

	"lugwright/client/draw"
	"lugwright/client/paper"
)

// Paper has every block. Its drawing has a bar of 100 mm, and stands at full scale.
func Paper() *paper.Paper {
	p := &paper.Paper{
		Name: "every-block", Title: "Every block of a paper", Job: "Box mounts <b>front</b> & rear", Revision: "B",
		Hash: strings.Repeat("0123456789abcdef", 4), Tool: "lugwright test",
	}
	p.Blocks = []paper.Block{
		&paper.Facts{Items: []paper.Fact{{Name: "Verdict", Value: "pass"}, {Name: "Axes", Value: "x rearward, y left, z up; " + strings.Repeat("forces act on the bracket ", 6)}}},
		&paper.Heading{Level: 2, Text: "Words and lists", ID: "words"},
		&paper.Words{Text: "σ ≤ 0.9·F_y, π/4·d², √2, 5 °, − 3 mm, ½ in, ⌀ 12 and 箱 are written. " + strings.Repeat("Words go on over the line. ", 8)},
		&paper.Words{Text: "Strong words.", Strong: true},
		&paper.List{Items: []string{"one", "two, " + strings.Repeat("which goes on over the line ", 6)}},
		&paper.List{Kind: paper.Steps, Items: []string{"first", "then"}},
		&paper.List{Kind: paper.Ticks, Items: []string{"seen", "measured"}},
		&paper.Heading{Level: 2, Text: "A drawing"},
		&paper.Heading{Level: 3, Text: "At full scale"},
		&paper.Figure{Drawing: Drawing(), Caption: "A bar of 100 mm, a plate with a hole, and words", FullScale: true},
		&paper.Heading{Level: 2, Text: "A calculation"},
		&paper.Heading{Level: 3, Text: "Shear of the pin"},
		&paper.Calculation{Lines: []string{
			"given  V = 60000 N  shear force", "       A_pin = π·d^2/4 = π·25^2/4 = 490.874 mm^2",
			"       M = " + strings.Repeat("F_u·A_pin + ", 14) + "1 = 2 N*mm",
		}},
		&paper.Heading{Level: 2, Text: "A table"},
		table(70),
		&paper.NewPage{},
		&paper.Heading{Level: 2, Text: "Signatures"},
		&paper.Sign{Roles: []string{"calculated by", "checked by"}},
	}
	return p
}

func table(n int) *paper.Table {
	t := &paper.Table{
		Caption: "Checks", Sortable: true,
		Heads: []paper.Head{{Text: "place"}, {Text: "check"}, {Text: "used", Numbers: true}, {Text: "remark"}},
	}
	for i := range n {
		r := paper.Row{Cells: []string{fmt.Sprintf("ear-%d", i%3), "net section", fmt.Sprintf("%.2f", float64(i*37%100)/100), ""}}
		if i%10 == 0 {
			r.Cells[3] = "a longer remark that goes over more than one line of its cell, since there are many words in it: " + strings.Repeat("word ", 12)
		}
		if i%3 == 0 {
			r.Ref = "ear"
		}
		r.Strong = i == 5
		t.Rows = append(t.Rows, r)
	}
	return t
}

// Drawing is 120 mm x 60 mm, with a bar of 100 mm from 10 mm to 110 mm at 10 mm above its lower edge.
func Drawing() *draw.Drawing {
	thin, thick := draw.Pen{WidthMM: 0.18}, draw.Pen{WidthMM: 0.5}
	circle := func(x, y, r float64) draw.Loop {
		return draw.Loop{Start: draw.Point{X: x + r, Y: y}, Segments: []draw.Segment{{To: draw.Point{X: x - r, Y: y}, Bulge: 1}, {To: draw.Point{X: x + r, Y: y}, Bulge: 1}}}
	}
	return &draw.Drawing{WidthMM: 120, HeightMM: 60, Title: "a bar and a plate", Items: []draw.Item{
		&draw.Path{Start: draw.Point{X: 10, Y: 10}, Segments: []draw.Segment{{To: draw.Point{X: 110, Y: 10}}}, Pen: thick},
		&draw.Group{ID: "ear", Items: []draw.Item{
			&draw.Path{
				Start: draw.Point{X: 20, Y: 20}, Pen: thick, Fill: draw.Shade{On: true, Grey: 0.85}, Closed: true, More: []draw.Loop{circle(29, 34, 6)},
				Segments: []draw.Segment{{To: draw.Point{X: 60, Y: 20}}, {To: draw.Point{X: 60, Y: 40}}, {To: draw.Point{X: 20, Y: 40}, Bulge: 0.5}},
			},
			&draw.Path{Start: draw.Point{X: 10, Y: 40}, Segments: []draw.Segment{{To: draw.Point{X: 110, Y: 40}}}, Pen: draw.Pen{WidthMM: 0.18, Dash: []float64{6, 1.5, 1, 1.5}}},
		}},
		&draw.Text{At: draw.Point{X: 60, Y: 12}, HeightMM: 3.5, Align: draw.Middle, Words: "100"},
		&draw.Text{At: draw.Point{X: 100, Y: 20}, HeightMM: 2.5, TurnRad: 1.5707963267948966, Words: "turned Ø12", Bold: true},
		&draw.Path{Start: draw.Point{}, Segments: []draw.Segment{{To: draw.Point{X: 120}}, {To: draw.Point{X: 120, Y: 60}}, {To: draw.Point{Y: 60}}}, Closed: true, Pen: thin},
	}}
}
