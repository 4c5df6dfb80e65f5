package nest

import (
	"math"
	"slices"

	"lugwright/geometry/shape"
)

// sliver is the part of a cell by which an edge may lie in it without covering it: plates may touch where no gap is asked for.
const sliver = 1e-6

// run is cells of a column from lo to below hi.
type run struct{ lo, hi int }

// raster is a part, turned, as columns of cells that cover it and half the gap around it.
type raster struct {
	turn    float64
	columns [][]run
	rows    int
	order   []int       // columns, the fullest first: they rule places out soonest
	origin  shape.Point // from the corner of the first cell to the part's own origin
}

// newRaster covers an outline. Margin is kept free around it; arcs are replaced by chords no further off than a fiftieth of a cell.
func newRaster(outer shape.Loop, turn, cell, margin float64) raster {
	chord := cell / 50
	turned := outer.Rotate(turn, shape.Point{})
	box := turned.BBox()
	if turned.HasArc() {
		margin += chord
	}
	corner := box.Min.Sub(shape.Point{X: margin, Y: margin})
	r := raster{turn: turn, origin: corner.Scale(-1)}
	points := turned.Polygon(chord)
	n := int(math.Ceil((box.Width()+2*margin)/cell - sliver))
	r.columns = make([][]run, max(n, 1))
	for i := range r.columns {
		left := corner.X + float64(i)*cell
		for _, span := range spans(points, left-margin+sliver*cell, left+cell+margin-sliver*cell) {
			lo := int(math.Floor((span.lo-margin-corner.Y)/cell + sliver))
			hi := int(math.Ceil((span.hi+margin-corner.Y)/cell - sliver))
			if hi > lo { // else it lies along a line between cells
				r.columns[i] = append(r.columns[i], run{max(lo, 0), hi})
				r.rows = max(r.rows, hi)
			}
		}
		r.columns[i] = merged(r.columns[i])
	}
	r.order = fullestFirst(r.columns)
	return r
}

type span struct{ lo, hi float64 }

// spans covers what of a polygon lies between two uprights: where its edges pass, and between them along the middle. A point of the polygon between
// the uprights is at the height of one of these, since on the way to the middle it either meets an edge or gets there.
func spans(points []shape.Point, left, right float64) []span {
	var out []span
	var crossings []float64
	middle := (left + right) / 2
	for i, a := range points {
		b := points[(i+1)%len(points)]
		if a.X > b.X {
			a, b = b, a
		}
		if b.X <= left || a.X >= right {
			continue
		}
		from, to := a.Y, b.Y
		if a.X < left {
			from = heightAt(a, b, left)
		}
		if b.X > right {
			to = heightAt(a, b, right)
		}
		out = append(out, span{min(from, to), max(from, to)})
		if a.X <= middle && b.X > middle {
			crossings = append(crossings, heightAt(a, b, middle))
		}
	}
	slices.Sort(crossings)
	for i := 0; i+1 < len(crossings); i += 2 {
		out = append(out, span{crossings[i], crossings[i+1]})
	}
	return out
}

func heightAt(a, b shape.Point, x float64) float64 { return a.Y + (b.Y-a.Y)*(x-a.X)/(b.X-a.X) }

// merged joins runs that overlap or touch.
func merged(runs []run) []run {
	slices.SortFunc(runs, func(a, b run) int { return a.lo - b.lo })
	out := runs[:0]
	for _, r := range runs {
		if n := len(out); n > 0 && r.lo <= out[n-1].hi {
			out[n-1].hi = max(out[n-1].hi, r.hi)
		} else {
			out = append(out, r)
		}
	}
	return out
}

func fullestFirst(columns [][]run) []int {
	fill := make([]int, len(columns))
	order := make([]int, len(columns))
	for i, runs := range columns {
		order[i] = i
		for _, r := range runs {
			fill[i] += r.hi - r.lo
		}
	}
	slices.SortStableFunc(order, func(a, b int) int { return fill[b] - fill[a] })
	return order
}
