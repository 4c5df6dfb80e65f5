package template

import (
	"fmt"
	"math"

	"lugwright/geometry/shape"
)

// OverlapMM is how far neighbouring tiles show the same.
const OverlapMM = 15.0

// Tile is a window of a template that goes on one sheet.
type Tile struct {
	Name   string // row and column: "A1", "A2"; rows from above, the first as the template says
	Window shape.Box
	// Left, Right, Above, Below name the neighbours; empty for none.
	Left, Right, Above, Below string
}

// Room that a sheet's drawing gives to words above and below the window, and at its sides, mm.
const (
	headMM  = 25.0
	footMM  = 25.0
	sideMM  = 1.0
	edgeMM  = 8.0   // round what is drawn
	leastMM = 130.0 // width that the words and the bars need
)

// Tiles are the windows of a template on sheets whose drawings have so much room, row by row from above, neighbours overlapping. They cover every hole and
// the datum, and of the edges what takes no further sheet.
func (t *Template) Tiles(widthMM, heightMM float64) []Tile {
	wide, high := widthMM-2*sideMM, heightMM-headMM-footMM
	box := t.shown(wide, high)
	columns, rows := count(box.Width(), wide), count(box.Height(), high)
	if columns == 1 {
		wide = max(box.Width(), min(wide, leastMM))
	}
	if rows == 1 {
		high = box.Height()
	}
	var xs, ys []float64
	for _, h := range t.Holes {
		xs, ys = append(xs, h.At.X), append(ys, h.At.Y)
	}
	// The seams lie where they cut few holes.
	left := clear(box.Min.X, box.Max.X, wide, columns, append(xs, 0))
	low := clear(box.Min.Y, box.Max.Y, high, rows, append(ys, 0))
	corner := shape.Point{X: left, Y: low + float64(rows)*(high-OverlapMM) + OverlapMM} // upper left
	name := func(r, c int) string {
		if r < 0 || c < 0 || r >= rows || c >= columns {
			return ""
		}
		return fmt.Sprintf("%s%d", letters(t.FirstRow+r), c+1)
	}
	var out []Tile
	for r := range rows {
		for c := range columns {
			x, y := corner.X+float64(c)*(wide-OverlapMM), corner.Y-float64(r)*(high-OverlapMM)
			out = append(out, Tile{
				Name: name(r, c), Window: shape.Box{Min: shape.Point{X: x, Y: y - high}, Max: shape.Point{X: x + wide, Y: y}},
				Left: name(r, c-1), Right: name(r, c+1), Above: name(r-1, c), Below: name(r+1, c),
			})
		}
	}
	return out
}

// shown is what is printed: holes and datum, and the edges about them as far as they take no further sheet.
func (t *Template) shown(wide, high float64) shape.Box {
	const about = 12.0 // round holes and datum
	all, core := t.extent().Extend(shape.Point{}).Grow(edgeMM), shape.EmptyBox().Extend(shape.Point{})
	for _, h := range t.Holes {
		r := shape.Point{X: h.DiaMM / 2, Y: h.DiaMM / 2}
		core = core.Extend(h.At.Sub(r)).Extend(h.At.Add(r))
	}
	core = core.Grow(about)
	core.Min, core.Max = shape.Point{X: max(core.Min.X, all.Min.X), Y: max(core.Min.Y, all.Min.Y)}, shape.Point{X: min(core.Max.X, all.Max.X), Y: min(core.Max.Y, all.Max.Y)}
	all.Min.X, all.Max.X = covering(all.Min.X, all.Max.X, core.Min.X, core.Max.X, wide)
	all.Min.Y, all.Max.Y = covering(all.Min.Y, all.Max.Y, core.Min.Y, core.Max.Y, high)
	return all
}

// covering is all of a length where the windows that its core takes cover it; else as much as they do, the core in the middle.
func covering(from, to, low, high, window float64) (float64, float64) {
	n := count(high-low, window)
	covered := float64(n)*(window-OverlapMM) + OverlapMM
	if to-from <= covered {
		return from, to
	}
	start := min(max((low+high-covered)/2, from), to-covered)
	return start, start + covered
}

// letters number rows: A to Z, AA, AB and on.
func letters(n int) string {
	if n < 26 {
		return string(rune('A' + n))
	}
	return letters(n/26-1) + string(rune('A'+n%26))
}

// count is how many windows of a size cover a length.
func count(length, window float64) int {
	return max(1, int(math.Ceil((length-OverlapMM)/(window-OverlapMM)-1e-9)))
}

// clear is where the first of n windows begins so that the seams between them keep away from places as far as can be; of equal ones the most central.
func clear(from, to, window float64, n int, places []float64) float64 {
	step := window - OverlapMM
	slack := float64(n)*step + OverlapMM - (to - from)
	best, most := from-slack/2, -1.0
	for k := range 41 {
		// From the middle outwards: 0, 1, -1, 2, -2 and on, in fortieths of the slack.
		off := float64((k+1)/2) / 40
		if k%2 == 0 {
			off = -off
		}
		start := from - slack*(0.5+off)
		least := math.Inf(1)
		for i := 1; i < n; i++ {
			middle := start + float64(i)*step + OverlapMM/2
			for _, p := range places {
				least = min(least, math.Abs(p-middle))
			}
		}
		if least > most+1e-9 {
			best, most = start, least
		}
	}
	return best
}
