package svg

import (
	"slices"
	"unicode/utf8"

	"lugwright/geometry/shape"
	"lugwright/geometry/view"
)

const (
	labelMM     = 3.2  // height of the letters
	labelStepMM = 5.0  // from one label to the next
	letterMM    = 0.64 // width of a broad letter to the font's size: no font is known
	gapMM       = 7.0  // from a column of labels to the drawing
)

// note is a label and the place on the picture that it points at.
type note struct {
	text    string
	at      shape.Point // projected
	visible bool
}

// notes gives every different label one visible place; a thing that is covered everywhere gets its middle.
func notes(painted []view.Thing) []note {
	var list []note
	for i, p := range painted {
		if p.Label == "" {
			continue
		}
		n := note{text: p.Label}
		n.at, _, n.visible = view.Anchor(painted, i)
		at := slices.IndexFunc(list, func(m note) bool { return m.text == n.text })
		switch {
		case at < 0:
			list = append(list, n)
		case n.visible: // what is painted later is nearer
			list[at] = n
		}
	}
	return list
}

// columnMM is the paper that the longest label needs beside the drawing.
func columnMM(labels []note) float64 {
	most := 0
	for _, n := range labels {
		most = max(most, utf8.RuneCountInString(n.text))
	}
	if most == 0 {
		return 0
	}
	return float64(most)*letterMM*labelMM + gapMM
}

// tallest is the number of labels in the fuller column.
func tallest(labels []note, c *canvas) int {
	l, r := columns(labels, c)
	return max(len(l), len(r))
}

// columns sorts labels to the nearer side, each column from the top of the picture down.
func columns(labels []note, c *canvas) (left, right []note) {
	for _, n := range labels {
		if n.at.X < c.box.Center().X {
			left = append(left, n)
		} else {
			right = append(right, n)
		}
	}
	for _, list := range [][]note{left, right} {
		slices.SortStableFunc(list, func(a, b note) int {
			if a.at.Y > b.at.Y {
				return -1
			}
			return 1
		})
	}
	return left, right
}

// notes writes the labels in two columns with a leader to each thing.
func (c *canvas) notes(labels []note) {
	left, right := columns(labels, c)
	inset := edgeMM + columnMM(labels) - gapMM
	c.column(left, inset, "end", 1)
	c.column(right, c.width-inset, "start", -1)
}

// column writes labels whose inner ends stand at x, so that leaders start beside them in any font; inward is +1 on the left
// side of the paper.
func (c *canvas) column(list []note, x float64, anchor string, inward float64) {
	heights := c.spread(list)
	for i, n := range list {
		y := heights[i]
		to := c.at(n.at)
		attrs := []any{"d", c.line(nil, []shape.Point{{X: x + inward, Y: y}, {X: x + inward*4, Y: y}, to}, false), "fill", "none", "stroke", ink, "stroke-width", 0.15}
		if !n.visible {
			attrs = append(attrs, "stroke-dasharray", "1 0.8")
		}
		c.tag(false, "path", attrs...)
		c.tag(false, "circle", "cx", to.X, "cy", to.Y, "r", 0.5, "fill", ink)
		c.leaf("text", n.text, "x", x, "y", y+labelMM*0.35, "text-anchor", anchor, "font-family", "sans-serif", "font-size", labelMM, "fill", ink)
	}
}

// spread sets labels level with their places, pushed apart to labelStepMM and kept on the paper.
func (c *canvas) spread(list []note) []float64 {
	y := make([]float64, len(list))
	for i, n := range list {
		y[i] = c.at(n.at).Y
		if i > 0 {
			y[i] = max(y[i], y[i-1]+labelStepMM)
		}
	}
	floor := c.height - edgeMM
	for i := len(list) - 1; i >= 0; i-- {
		y[i] = min(y[i], floor)
		floor = y[i] - labelStepMM
	}
	return y
}
