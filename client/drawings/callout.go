package drawings

import (
	"cmp"
	"slices"

	"lugwright/client/draw"
	"lugwright/geometry/shape"
)

// Words with a leader to what they are about: beside the drawing in a column, or over it in steps.

const calloutMM = 8.0 // from the drawing to the nearest words

// callout is words about a place. Dia is that of a ring round the place, whose edge the leader ends at; 0: at the place itself.
type callout struct {
	id    string
	words string
	at    shape.Point // on paper
	dia   float64
}

// leader draws the words' line: an arrow at what they are about, then points on to the words.
func (c *callout) leader(g *page, on ...shape.Point) {
	tip := c.at.Add(on[0].Sub(c.at).Unit().Scale(c.dia / 2))
	g.line(thin(), append([]shape.Point{tip}, on...)...)
	g.arrow(tip, on[0])
}

// column sets callouts to the right of x, none lower than bottom.
func column(g *page, list []callout, x, bottom float64) {
	slices.SortStableFunc(list, func(a, b callout) int { return cmp.Compare(a.at.Y, b.at.Y) })
	want := make([]float64, len(list))
	for i, c := range list {
		want[i] = c.at.Y
	}
	for i, y := range spread(want, lineMM, bottom+textMM, 1e6) {
		c := &list[i]
		g.group(c.id, func(g *page) {
			elbow := shape.Point{X: x + calloutMM, Y: y}
			c.leader(g, elbow, elbow.Add(shape.Point{X: 2}))
			g.words(elbow.Add(shape.Point{X: 2.8, Y: -textMM / 2}), draw.Left, 0, c.words)
		})
	}
}

// columnWidth is how much paper a column takes.
func columnWidth(list []callout) float64 {
	if len(list) == 0 {
		return 0
	}
	return calloutMM + 2.8 + widest(list)
}

// steps sets callouts over y, those of what is further left higher, so that the way up to each passes no other. None reaches beyond right, where there is room for it.
func steps(g *page, list []callout, y, left, right float64) {
	slices.SortStableFunc(list, func(a, b callout) int { return cmp.Compare(a.at.X, b.at.X) })
	want := make([]float64, len(list))
	for i, c := range list {
		want[i] = min(c.at.X+3, right-textWidth(c.words)-2)
	}
	for i := len(want) - 2; i >= 0; i-- {
		want[i] = min(want[i], want[i+1]-2)
	}
	for i, x := range spread(want, 2, left, 1e6) {
		c := &list[i]
		row := y + calloutMM + float64(len(list)-1-i)*lineMM
		g.group(c.id, func(g *page) {
			elbow := shape.Point{X: x, Y: row + textMM/2}
			c.leader(g, shape.Point{X: x, Y: y + calloutMM/2}, elbow, elbow.Add(shape.Point{X: 1.2}))
			g.words(shape.Point{X: x + 2, Y: row}, draw.Left, 0, c.words)
		})
	}
}

func stepsHeight(list []callout) float64 {
	if len(list) == 0 {
		return 0
	}
	return calloutMM + float64(len(list))*lineMM
}

func widest(list []callout) float64 {
	most := 0.0
	for _, c := range list {
		most = max(most, textWidth(c.words))
	}
	return most
}
