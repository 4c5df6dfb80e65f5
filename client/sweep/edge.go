package sweep

// This file finds where passing begins along one parameter. That a thicker plate passes where a thinner one does is nowhere assumed.

import (
	"context"
	"errors"
	"math"

	"lugwright/geometry"
	"lugwright/part"
	"lugwright/units"
)

// Edge is two neighbouring values, one that passes and one that does not.
type Edge struct {
	Below, Above *Row // a tick apart; Below has the smaller value
}

// Edges is what is known of passing along one parameter.
type Edges struct {
	Axis   *Axis
	Tick   float64 // how near the two values of an edge are
	Tried  int     // values that were looked at
	Finely bool    // the first scan turned more than once, so that a finer one was made
	List   []Edge  // from small values to large ones
}

// finer is into how many parts a step is cut where passing turns more than once.
const finer = 10

// Tick is how near the two values of an edge come: a hundredth of a millimetre, a thousandth of an inch, a hundredth of a degree, a thousandth.
func Tick(u geometry.Unit, system units.System) float64 {
	switch {
	case u == geometry.MM && system == units.Inch:
		return 0.0254
	case u == geometry.MM:
		return 0.01
	case u == geometry.Rad:
		return math.Pi / 18000
	}
	return 0.001
}

// ErrNotContinuous refuses to refine what has no values between two others.
var ErrNotContinuous = errors.New("one parameter is refined, given as one range of lengths, angles or ratios; give the others one value each")

// Refined says whether a grid can be refined, and along which axis.
func Refined(g *Grid) (int, error) {
	at := -1
	for k := range g.Axes {
		switch {
		case len(g.Axes[k].Values) == 1:
		case at >= 0 || !g.Axes[k].Range:
			return -1, ErrNotContinuous
		default:
			at = k
		}
	}
	if at < 0 {
		return -1, ErrNotContinuous
	}
	return at, nil
}

// Refine finds the edges of passing between the rows of a whole grid with one axis. Where the rows turn once it halves the step that holds the turn; where they
// turn more often it first looks finer everywhere. Between values that were looked at nothing is known, whatever they are.
func (b *Bench) Refine(ctx context.Context, g *Grid, rows []Row) (*Edges, error) {
	at, err := Refined(g)
	if err != nil {
		return nil, err
	}
	e := &Edges{Axis: &g.Axes[at], Tick: Tick(g.Axes[at].Param.Unit, b.Job.Units), Tried: len(rows)}
	line := &line{b, g, at}
	if turns(rows) > 1 {
		if rows, err = line.finely(ctx, rows); err != nil {
			return nil, err
		}
		e.Finely, e.Tried = true, len(rows)
	}
	for i := 1; i < len(rows); i++ {
		if passes(&rows[i]) == passes(&rows[i-1]) {
			continue
		}
		edge, tried, err := line.halve(ctx, &rows[i-1], &rows[i], e.Tick)
		if err != nil {
			return nil, err
		}
		e.List, e.Tried = append(e.List, edge), e.Tried+tried
	}
	return e, nil
}

func passes(r *Row) bool { return r.Outcome == Passes }

func turns(rows []Row) int {
	n := 0
	for i := 1; i < len(rows); i++ {
		if passes(&rows[i]) != passes(&rows[i-1]) {
			n++
		}
	}
	return n
}

// line is one axis of a grid whose others stand still.
type line struct {
	b  *Bench
	g  *Grid
	at int
}

func (l *line) try(ctx context.Context, numbers []float64) ([]Row, error) {
	variants := make([][]part.Param, len(numbers))
	for i, n := range numbers {
		variants[i] = l.g.Values(0)
		variants[i][l.at].Number = n
	}
	return l.b.Try(ctx, l.g.Spec, variants)
}

func (l *line) number(r *Row) float64 { return r.Values[l.at].Number }

// finely cuts every step into parts.
func (l *line) finely(ctx context.Context, rows []Row) ([]Row, error) {
	var numbers []float64
	for i := 1; i < len(rows); i++ {
		from, to := l.number(&rows[i-1]), l.number(&rows[i])
		for k := 1; k < finer; k++ {
			numbers = append(numbers, from+(to-from)*float64(k)/finer)
		}
	}
	between, err := l.try(ctx, numbers)
	if err != nil {
		return nil, err
	}
	out := rows[:1:1]
	for i := 1; i < len(rows); i++ {
		out = append(append(out, between[(i-1)*(finer-1):i*(finer-1)]...), rows[i])
	}
	return out, nil
}

// halve brings two rows of which one passes to within a tick. It tries whole ticks, so that what is printed is what was tried.
func (l *line) halve(ctx context.Context, low, high *Row, tick float64) (Edge, int, error) {
	first, last := int(math.Floor(l.number(low)/tick+1e-6)), int(math.Ceil(l.number(high)/tick-1e-6))
	tried := 0
	for last-first > 1 {
		middle := first + (last-first)/2
		rows, err := l.try(ctx, []float64{math.Round(float64(middle)*tick*1e9) / 1e9})
		if err != nil {
			return Edge{}, 0, err
		}
		tried++
		if passes(&rows[0]) == passes(low) {
			low, first = &rows[0], middle
		} else {
			high, last = &rows[0], middle
		}
	}
	return Edge{low, high}, tried, nil
}
