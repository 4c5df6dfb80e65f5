package statics

// The extremes of reactions for many loads: what is best for one load is mostly best for the next.

import (
	"math"
)

// Programme gives the extremes of a body's reactions under set ways for one load after another. Whether a basis is best depends on the ways alone, so that
// it serves every load for which its reactions are allowed. It is not for use by several at once.
type Programme struct {
	b        *RigidBody
	ways     []Way
	ends     [][2]end // by hold: least, most
	balances end      // bases that balance a load in any way
	fails    []vec6   // prices that show a load to be unheld
	room     *int     // how many bases and prices may still be kept
}

// end is one end of one reaction.
type end struct {
	known, open bool // whether it is open does not depend on the load
	bases       []base
}

// base gives the reactions of a basis from a load.
type base struct {
	inverse [6]vec6
	price   [6]float64
	none    [6]bool // rows of no hold: nothing may be left there
	rows    int
}

// What a body's programmes may keep, and what they keep: bytes.
const (
	keptBytes = 16 << 20
	baseBytes = 400
	failBytes = 48
)

// Programmes makes programmes of one body, one for each set of ways.
func (b *RigidBody) Programmes(sets [][]Way) []*Programme {
	room := keptBytes
	var out []*Programme
	for _, ways := range sets {
		out = append(out, &Programme{b: b, ways: ways, ends: make([][2]end, len(b.holds)), room: &room})
	}
	return out
}

// Extremes does so for the holds that are wanted, nil for all; the others stay empty. See RigidBody.Extremes.
func (g *Programme) Extremes(load Wrench, wanted []bool) ([]Extreme, error) {
	rhs, size, err := g.b.unit(load)
	if err != nil {
		return nil, err
	}
	for i, y := range g.fails {
		if y.dot(rhs) > lpTol {
			g.fails[0], g.fails[i] = y, g.fails[0] // likely to serve again
			return nil, g.b.unpriced(y)
		}
	}
	var p *lp
	if _, ok := g.balances.value(rhs); !ok {
		if p, err = g.start(rhs); err != nil {
			return nil, err
		}
		g.keep(&g.balances, p, rhs, func(int) float64 { return 0 })
	}
	out := make([]Extreme, len(g.ends))
	for i := range g.ends {
		if wanted != nil && !wanted[i] {
			continue
		}
		var value [2]float64
		for k, sign := range [2]float64{1, -1} {
			e := &g.ends[i][k]
			v, ok := e.value(rhs)
			if !ok {
				if p == nil {
					if p, err = g.start(rhs); err != nil {
						return nil, err
					}
				}
				if v, e.open, err = p.least(i, sign); err != nil {
					return nil, err
				}
				if e.known = true; !e.open {
					g.keep(e, p.work, rhs, p.pricing(i, sign))
				}
			}
			value[k] = v
		}
		s := size / g.b.size[i]
		out[i] = Extreme{Lo: value[0] * s, Hi: -value[1] * s, LoOpen: g.ends[i][0].open, HiOpen: g.ends[i][1].open}
	}
	return out, nil
}

// start finds a first solution, or notes why there is none.
func (g *Programme) start(rhs vec6) (*lp, error) {
	p, y, err := g.b.first(rhs, g.ways)
	if err != nil {
		return nil, err
	}
	if y == (vec6{}) {
		return p, nil
	}
	if *g.room >= failBytes {
		*g.room -= failBytes
		most := 1.0 // as prices of a size that counts whatever the load's signs
		for _, v := range y {
			most = math.Max(most, math.Abs(v))
		}
		g.fails = append(g.fails, y.scale(1/most))
	}
	return nil, g.b.unpriced(y)
}

// keep notes the basis that a programme ended with.
func (g *Programme) keep(e *end, p *lp, rhs vec6, price func(column int) float64) {
	if *g.room < baseBytes {
		return
	}
	*g.room -= baseBytes
	n := len(p.tableau[0]) - 1 - p.rows
	now := base{rows: p.rows}
	for r, row := range p.tableau {
		for k := range p.rows {
			if now.inverse[r][k] = row[n+k]; rhs[k] < 0 { // as start turned that row
				now.inverse[r][k] = -row[n+k]
			}
		}
		if now.none[r] = p.in[r] >= n; !now.none[r] {
			now.price[r] = price(p.in[r])
		}
	}
	e.bases = append(e.bases, now)
}

// value is the end's for a load, where a basis that is known serves it.
func (e *end) value(rhs vec6) (float64, bool) {
	if e.known && e.open {
		return 0, true
	}
	for i := range e.bases {
		if v, ok := e.bases[i].value(rhs); ok {
			e.bases[0], e.bases[i] = e.bases[i], e.bases[0] // likely to serve again
			return v, true
		}
	}
	return 0, false
}

func (o *base) value(rhs vec6) (sum float64, ok bool) {
	const speck = 1e-13
	for r := range o.rows {
		x := o.inverse[r].dot(rhs)
		if x < -speck || o.none[r] && x > speck {
			return 0, false
		}
		sum += float64(o.price[r] * math.Max(x, 0))
	}
	return sum, true
}
