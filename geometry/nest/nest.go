package nest

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"lugwright/geometry/shape"
)

// Part is a piece to lay out, so many times, in the turns that its grain allows.
type Part struct {
	Outer    shape.Loop
	Count    int
	TurnsRad []float64
}

// Sheet is a stock size, so many of it. Sheets are filled along their width, in their order.
type Sheet struct {
	WidthMM, HeightMM float64
	Count             int
}

// Placement is where one piece lies: turned about its own origin, then moved. The sheet's lower left corner is the origin.
type Placement struct {
	Part, Sheet int // indices; sheets of all sizes are counted through
	At          shape.Point
	TurnRad     float64
}

// Result is a layout.
type Result struct {
	Placements []Placement
	Left       []int     // pieces of each part that found no room
	UsedMM     []float64 // of each sheet that is begun, how far its width is used
}

// Bounds of what is laid out.
const (
	MaxPieces = 2000
	MaxSheets = 200
)

// Lay lays the parts out with a gap between any two and half of it along the edges. Tries is how many layouts are compared, at least one: time goes with it.
// Errors say what cannot be laid out at all.
func Lay(parts []Part, sheets []Sheet, gapMM float64, tries int) (Result, error) {
	j, order, err := newJob(parts, sheets, gapMM)
	if err != nil {
		return Result{}, err
	}
	places := j.search(order, tries)
	r := j.result(places, parts)
	if err := r.check(parts, list(sheets), gapMM); err != nil {
		return Result{}, err
	}
	return r, nil
}

// job is the rasters of all parts, and the sheets in cells.
type job struct {
	cell    float64
	shapes  []shapeRasters
	rasters int // of all shapes together
	sheets  []cells
	seed    uint64
}

type shapeRasters struct {
	rasters []raster
	index   int // of the first among all
	area    float64
	width   float64
	height  float64
}

type cells struct{ columns, rows int }

// score says how good a layout is; less is better.
type score struct{ left, sheets, columns, spread int }

func (s score) less(t score) bool {
	return cmp.Or(cmp.Compare(s.left, t.left), cmp.Compare(s.sheets, t.sheets), cmp.Compare(s.columns, t.columns), cmp.Compare(s.spread, t.spread)) < 0
}

func newJob(parts []Part, sheets []Sheet, gapMM float64) (*job, []int, error) {
	if !(gapMM >= 0 && gapMM <= 1000) {
		return nil, nil, fmt.Errorf("gap %g mm; need 0 to 1000 mm", gapMM)
	}
	j := &job{seed: 1}
	height := 0.0
	for i, s := range sheets {
		if !(s.WidthMM > 0 && s.HeightMM > 0 && s.WidthMM <= 1e5 && s.HeightMM <= 1e5) || s.Count < 1 {
			return nil, nil, fmt.Errorf("sheet %d is %g x %g mm, %d of it; need sizes to 100 m and at least one", i, s.WidthMM, s.HeightMM, s.Count)
		}
		height = max(height, s.HeightMM)
	}
	j.cell = niceCell(height)
	for _, s := range list(sheets) {
		j.sheets = append(j.sheets, cells{int(s.WidthMM/j.cell + sliver), int(s.HeightMM/j.cell + sliver)})
	}
	if len(j.sheets) == 0 || len(j.sheets) > MaxSheets {
		return nil, nil, fmt.Errorf("%d sheets; need 1 to %d", len(j.sheets), MaxSheets)
	}
	var order []int
	for i, p := range parts {
		if len(p.Outer) < 2 || p.Count < 1 || len(p.TurnsRad) == 0 {
			return nil, nil, fmt.Errorf("part %d has %d edges, %d pieces and %d turns; need an outline and at least one of each", i, len(p.Outer), p.Count, len(p.TurnsRad))
		}
		box := p.Outer.BBox()
		s := shapeRasters{index: j.rasters, area: math.Abs(p.Outer.Area()), width: box.Width(), height: box.Height()}
		for _, turn := range p.TurnsRad {
			s.rasters = append(s.rasters, newRaster(p.Outer, turn, j.cell, gapMM/2))
		}
		j.rasters += len(s.rasters)
		j.shapes = append(j.shapes, s)
		if len(order)+p.Count > MaxPieces {
			return nil, nil, fmt.Errorf("more than %d pieces", MaxPieces)
		}
		for range p.Count {
			order = append(order, i)
		}
	}
	return j, order, nil
}

// list counts the sheets of all sizes through.
func list(sheets []Sheet) []Sheet {
	var out []Sheet
	for _, s := range sheets {
		for range min(s.Count, MaxSheets+1) {
			out = append(out, s)
		}
	}
	return out
}

// niceCell is the smallest round size with which a sheet has no more rows than a column of bits: parts of round sizes then fill whole cells.
func niceCell(heightMM float64) float64 {
	least := heightMM / maxRows
	power := math.Pow(10, math.Floor(math.Log10(least)))
	for _, n := range []float64{1, 2, 2.5, 5} {
		if n*power >= least*(1-1e-9) {
			return n * power
		}
	}
	return 10 * power
}

// search compares layouts: five orders by size, then changes of the best so far.
func (j *job) search(order []int, tries int) []place {
	b := j.newBench()
	var best []place
	var bestScore score
	var bestOrder []int
	for k := range max(tries, 1) {
		next := slices.Clone(order)
		if by := sizes(); k < len(by) {
			slices.SortStableFunc(next, func(x, y int) int { return cmp.Compare(by[k](&j.shapes[y]), by[k](&j.shapes[x])) })
		} else {
			next = slices.Clone(bestOrder)
			j.change(next)
			if slices.Equal(next, bestOrder) {
				continue
			}
		}
		places, s := b.lay(next)
		if best == nil || !bestScore.less(s) {
			best, bestScore, bestOrder = places, s, next
		}
	}
	return best
}

// sizes are what the first orders go by, the largest first.
func sizes() []func(*shapeRasters) float64 {
	return []func(*shapeRasters) float64{
		func(s *shapeRasters) float64 { return s.area },
		func(s *shapeRasters) float64 { return s.width },
		func(s *shapeRasters) float64 { return s.height },
		func(s *shapeRasters) float64 { return s.width + s.height },
		func(s *shapeRasters) float64 { return max(s.width, s.height) },
	}
}

// change swaps two parts of an order, or takes one out and puts it in elsewhere.
func (j *job) change(order []int) {
	n := uint64(len(order))
	a, b := int(j.random()%n), int(j.random()%n)
	if j.random()%2 == 0 {
		order[a], order[b] = order[b], order[a]
		return
	}
	part := order[a]
	copy(order[a:], order[a+1:])
	copy(order[b+1:], order[b:])
	order[b] = part
}

// random is the next of a fixed sequence (xorshift64*): the same job always gives the same layout.
func (j *job) random() uint64 {
	j.seed ^= j.seed >> 12
	j.seed ^= j.seed << 25
	j.seed ^= j.seed >> 27
	return j.seed * 2685821657736338717 >> 33
}

func (j *job) result(places []place, parts []Part) Result {
	r := Result{Left: make([]int, len(parts))}
	for i, p := range parts {
		r.Left[i] = p.Count
	}
	used := make([]float64, len(j.sheets))
	for _, p := range places {
		raster := &j.shapes[p.shape].rasters[p.turn]
		at := shape.Point{X: float64(p.x) * j.cell, Y: float64(p.y) * j.cell}.Add(raster.origin)
		r.Placements = append(r.Placements, Placement{Part: p.shape, Sheet: p.sheet, At: at, TurnRad: raster.turn})
		r.Left[p.shape]--
		used[p.sheet] = max(used[p.sheet], parts[p.shape].Outer.Rotate(raster.turn, shape.Point{}).BBox().Max.X+at.X)
	}
	for len(used) > 0 && used[len(used)-1] == 0 {
		used = used[:len(used)-1]
	}
	r.UsedMM = used
	return r
}
