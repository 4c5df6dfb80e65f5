package template

import (
	"math"

	"lugwright/client/draw"
	"lugwright/geometry/shape"
)

// label is words with the places where they may stand, the best first. What is spare is left out where no place is free.
type label struct {
	places [][]*draw.Text
	spare  bool
}

// clearMM is kept between words and lines.
const clearMM = 0.45

// put notes words that stand in the first of their places where nothing runs into them.
func (s *sheet) put(places ...[]*draw.Text) { s.labels = append(s.labels, label{places: places}) }

// settle sets the words once every line is drawn. Where no place is free, the one that fewest lines run into is taken.
func (s *sheet) settle() {
	var lines []shape.Edge
	for _, item := range s.d.Items {
		if p, ok := item.(*draw.Path); ok && p.Pen.Grey != diagonal.Grey {
			from := p.Start
			for _, g := range p.Segments {
				lines = append(lines, shape.Edge{A: shape.Point(from), B: shape.Point(g.To), Bulge: g.Bulge})
				from = g.To
			}
			if p.Closed {
				lines = append(lines, shape.Edge{A: shape.Point(from), B: shape.Point(p.Start)})
			}
		}
	}
	window := s.tile.Window
	window.Min, window.Max = shape.Point(s.paper(window.Min)), shape.Point(s.paper(window.Max))
	var taken []shape.Box
	for _, l := range s.labels {
		best, fewest := l.places[0], math.MaxInt
		for _, place := range l.places {
			if n := struck(place, lines, taken, window); n < fewest {
				best, fewest = place, n
			}
			if fewest == 0 {
				break
			}
		}
		if l.spare && fewest > 0 {
			continue
		}
		for _, t := range best {
			s.add(t)
			taken = append(taken, boxOf(t))
		}
	}
}

// struck counts what runs into words: lines, other words, the window's edge.
func struck(words []*draw.Text, lines []shape.Edge, taken []shape.Box, window shape.Box) int {
	n := 0
	for _, t := range words {
		box := boxOf(t)
		if !inside(box, window.Grow(-clearMM)) {
			n += 100
		}
		box = box.Grow(clearMM)
		for _, e := range lines {
			if e.BBox().Overlaps(box) && len(clipped(e, box)) > 0 {
				n++
			}
		}
		for _, b := range taken {
			if b.Overlaps(box) {
				n += 2
			}
		}
	}
	return n
}

// boxOf is the least box round words, which lie level or stand upright.
func boxOf(t *draw.Text) shape.Box {
	box := shape.EmptyBox()
	for _, c := range t.Corners() {
		box = box.Extend(shape.Point(c))
	}
	return box
}

// level is words in one line, its left end at a point.
func level(x, y float64, words string) []*draw.Text {
	return []*draw.Text{{At: draw.Point{X: x, Y: y}, HeightMM: smallMM, Words: words}}
}

// upright is the same turned to be read from the right.
func upright(x, y float64, words string) []*draw.Text {
	return []*draw.Text{{At: draw.Point{X: x, Y: y}, HeightMM: smallMM, TurnRad: math.Pi / 2, Words: words}}
}

func wide(words string) float64 { return (&draw.Text{HeightMM: smallMM, Words: words}).WidthMM() }
