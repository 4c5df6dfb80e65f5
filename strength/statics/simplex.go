package statics

// The extremes of reactions that equilibrium and one-way supports allow, by linear programming: the simplex method with Bland's rule, on at
// most six rows.

import (
	"errors"
	"math"
)

// Way restricts a reaction beyond what its hold says.
type Way int

const (
	AnyWay   Way = iota
	PushOnly     // never negative
	PullOnly     // never positive
	Idle         // nothing
)

// Extreme is the least and the most that a reaction can be; an open end has no bound.
type Extreme struct {
	Lo, Hi         float64
	LoOpen, HiOpen bool
}

// ErrRounding says that a linear programme was lost to rounding: the numbers are too far apart in size.
var ErrRounding = errors.New("the supports are too far apart in size to be told from each other")

const (
	lpTol    = 1e-9
	maxPivot = 5000
)

// lp holds a programme: find x >= 0 with rows x = right-hand side.
type lp struct {
	cols    []vec6 // in the basis of wrenches; only the first rows numbers count
	hold    []int  // which hold a column belongs to
	sign    []float64
	rows    int
	tableau [][]float64 // rows x (columns, artificial columns, right-hand side)
	in      []int       // basic column of each row
	work    *lp         // room for least
	cost    []float64
}

// Extremes gives for each hold the least and the most that its reaction can be while all of them balance the load; ways may be nil. Stiffness
// and gaps do not enter. A load that no such reactions balance is an *UnheldError.
func (b *RigidBody) Extremes(load Wrench, ways []Way) ([]Extreme, error) {
	p, size, err := b.feasible(load, ways)
	if err != nil {
		return nil, err
	}
	out := make([]Extreme, len(b.holds))
	for i := range b.holds {
		lo, loOpen, err1 := p.least(i, 1)
		hi, hiOpen, err2 := p.least(i, -1)
		if err1 != nil || err2 != nil {
			return nil, errors.Join(err1, err2)
		}
		k := size / b.size[i]
		out[i] = Extreme{Lo: lo * k, Hi: -hi * k, LoOpen: loOpen, HiOpen: hiOpen}
	}
	return out, nil
}

// Holds says whether reactions exist that balance the load.
func (b *RigidBody) Holds(load Wrench, ways []Way) error {
	_, _, err := b.feasible(load, ways)
	return err
}

// feasible finds a first solution for a load scaled to size 1.
func (b *RigidBody) feasible(load Wrench, ways []Way) (*lp, float64, error) {
	if ways != nil && len(ways) != len(b.holds) {
		return nil, 0, &InputError{What: "ways", Got: float64(len(ways)), Want: "one for each hold"}
	}
	rhs, size, err := b.unit(load)
	if err != nil {
		return nil, 0, err
	}
	p, y, err := b.first(rhs, ways)
	if err == nil && y != (vec6{}) {
		err = b.unpriced(y)
	}
	return p, size, err
}

// unit is what the holds must do against a load, in the basis of wrenches and at size 1, with that size.
func (b *RigidBody) unit(load Wrench) (vec6, float64, error) {
	l, err := b.load(load)
	if err != nil {
		return vec6{}, 0, err
	}
	if l, err = b.within(l); err != nil {
		return vec6{}, 0, err
	}
	size := l.norm()
	if size == 0 {
		size = 1
	}
	return b.inBasis(l.scale(-1 / size)), size, nil
}

// first sets the programme up and finds a first solution, or the prices of the rows that show there is none.
func (b *RigidBody) first(rhs vec6, ways []Way) (*lp, vec6, error) {
	p := &lp{rows: len(b.basis), cols: make([]vec6, 0, 2*len(b.holds)), hold: make([]int, 0, 2*len(b.holds)), sign: make([]float64, 0, 2*len(b.holds))}
	for i := range b.holds {
		w := AnyWay
		if ways != nil {
			w = ways[i]
		}
		if w != Idle && w != PullOnly {
			p.add(b.inBasis(b.cols[i]), i, 1)
		}
		if w != Idle && w != PushOnly && !b.holds[i].OneWay {
			p.add(b.inBasis(b.cols[i].scale(-1)), i, -1)
		}
	}
	y, err := p.start(rhs)
	return p, y, err
}

// unpriced is the error for prices that show that nothing holds a load.
func (b *RigidBody) unpriced(y vec6) error {
	var d vec6
	for i, v := range b.basis {
		d = d.plus(-y[i], v)
	}
	return b.unheld(d)
}

func (b *RigidBody) inBasis(c vec6) (out vec6) {
	for i, v := range b.basis {
		out[i] = v.dot(c)
	}
	return out
}

func (p *lp) add(c vec6, hold int, sign float64) {
	p.cols, p.hold, p.sign = append(p.cols, c), append(p.hold, hold), append(p.sign, sign)
}

func rows(n, length int) [][]float64 {
	all, out := make([]float64, n*length), make([][]float64, n)
	for i := range out {
		out[i] = all[i*length : (i+1)*length]
	}
	return out
}

// start finds a first basic solution, or the motion that shows there is none: no column resists it and the right-hand side drives it.
func (p *lp) start(rhs vec6) (vec6, error) {
	n := len(p.cols)
	p.tableau, p.in = rows(p.rows, n+p.rows+1), make([]int, p.rows)
	flip := [6]float64{}
	cost := make([]float64, n+p.rows+1)
	for r := range p.rows {
		flip[r] = 1
		if rhs[r] < 0 {
			flip[r] = -1
		}
		row := p.tableau[r]
		for j, c := range p.cols {
			row[j] = flip[r] * c[r]
			cost[j] -= row[j]
		}
		row[n+r], row[n+p.rows] = 1, flip[r]*rhs[r]
		cost[n+p.rows] -= row[n+p.rows]
		p.in[r] = n + r
	}
	if _, err := p.run(cost, n); err != nil {
		return vec6{}, err
	}
	if -cost[n+p.rows] > lpTol {
		var y vec6 // the price of each row
		for r := range p.rows {
			y[r] = flip[r] * (1 - cost[n+r])
		}
		return y, nil
	}
	for r := range p.rows { // a row still on its artificial column is at nothing: put any column there
		if p.in[r] < n {
			continue
		}
		best := 0
		for j := range n {
			if math.Abs(p.tableau[r][j]) > math.Abs(p.tableau[r][best]) {
				best = j
			}
		}
		p.tableau[r][n+p.rows] = 0
		if n > 0 && math.Abs(p.tableau[r][best]) > lpTol {
			p.pivot(r, best, nil)
		}
	}
	return vec6{}, nil
}

// least gives the smallest value of sign times a hold's reaction.
func (p *lp) least(hold int, sign float64) (value float64, open bool, err error) {
	n := len(p.cols)
	if p.work == nil {
		p.work = &lp{rows: p.rows, tableau: rows(p.rows, n+p.rows+1), in: make([]int, p.rows), cost: make([]float64, n+p.rows+1)}
	}
	q, cost := p.work, p.work.cost
	copy(q.in, p.in)
	for r := range q.tableau {
		copy(q.tableau[r], p.tableau[r])
	}
	clear(cost)
	price := p.pricing(hold, sign)
	for j := range n {
		cost[j] = price(j)
	}
	for r, j := range q.in {
		if k := price(j); k != 0 {
			for m, v := range q.tableau[r] {
				cost[m] -= k * v
			}
		}
	}
	open, err = q.run(cost, n)
	return -cost[n+p.rows], open, err
}

// pricing is what each column counts in sign times a hold's reaction.
func (p *lp) pricing(hold int, sign float64) func(column int) float64 {
	return func(j int) float64 {
		if j < len(p.cols) && p.hold[j] == hold {
			return sign * p.sign[j]
		}
		return 0
	}
}

// run brings the costs of the first n columns to none below zero; open when the value has no bound.
func (p *lp) run(cost []float64, n int) (open bool, err error) {
	last := n + p.rows
	for range maxPivot {
		enter := -1
		for j := range n {
			if cost[j] < -lpTol {
				enter = j
				break
			}
		}
		if enter < 0 {
			return false, nil
		}
		leave, ratio := -1, math.Inf(1)
		for r := range p.rows {
			a := p.tableau[r][enter]
			if a <= lpTol {
				continue
			}
			t := math.Max(p.tableau[r][last], 0) / a
			if leave < 0 || t < ratio-1e-13 || t <= ratio+1e-13 && p.in[r] < p.in[leave] {
				leave, ratio = r, math.Min(t, ratio)
			}
		}
		if leave < 0 {
			return true, nil
		}
		p.pivot(leave, enter, cost)
	}
	return false, ErrRounding
}

func (p *lp) pivot(r, j int, cost []float64) {
	row := p.tableau[r]
	k := 1 / row[j]
	for m := range row {
		row[m] *= k
	}
	row[j] = 1
	take := func(other []float64) {
		f := other[j]
		if f == 0 {
			return
		}
		for m := range other {
			other[m] -= float64(f * row[m])
		}
		other[j] = 0
	}
	for i := range p.tableau {
		if i != r {
			take(p.tableau[i])
		}
	}
	if cost != nil {
		take(cost)
	}
	p.in[r] = j
}
