package frame

import (
	"math"
	"slices"
)

// point is a force up and a couple that sags what lies behind it, at one station.
type point struct{ x, up, turn float64 }

// line is a load per mm, up, straight between its ends.
type line struct{ from, to, first, last float64 }

// upTo gives force and moment about x of what of the line lies before x.
func (l line) upTo(x float64) (force, moment float64) {
	s := min(x, l.to) - l.from
	if s <= 0 {
		return 0, 0
	}
	k := (l.last - l.first) / (l.to - l.from)
	force = l.first*s + k*s*s/2
	return force, l.first*s*s/2 + k*s*s*s/6 + force*(x-l.from-s)
}

// beam is a beam with everything that acts on it, supports included once solved.
type beam struct {
	points []point
	lines  []line
}

// at gives shear (sum of what lies before, up) and sagging moment just before or just after x.
func (b *beam) at(x float64, after bool) (shear, moment float64) {
	for _, p := range b.points {
		if p.x < x || after && p.x == x {
			shear += p.up
			moment += p.up*(x-p.x) + p.turn
		}
	}
	for _, l := range b.lines {
		f, m := l.upTo(x)
		shear, moment = shear+f, moment+m
	}
	return shear, moment
}

// intensity is the load per mm just after x, or just before it.
func (b *beam) intensity(x float64, after bool) float64 {
	q := 0.0
	for _, l := range b.lines {
		if after && l.from <= x && x < l.to || !after && l.from < x && x <= l.to {
			q += l.first + (l.last-l.first)*(x-l.from)/(l.to-l.from)
		}
	}
	return q
}

// stand puts the beam on two supports at a and b, and gives their forces up.
func (b *beam) stand(xa, xb float64) (upA, upB float64) {
	force, moment := 0.0, 0.0 // moment about xb
	for _, p := range b.points {
		force += p.up
		moment += p.up*(xb-p.x) + p.turn
	}
	for _, l := range b.lines {
		f, m := l.upTo(l.to)
		force += f
		moment += m + f*(xb-l.to)
	}
	upA = -moment / (xb - xa)
	return upA, -force - upA
}

// Station is one row of a diagram. Where shear, moment or section jumps there are two rows with the same x, before and after.
type Station struct {
	XMM       float64
	ShearN    float64 // what acts on the rail ahead of here, up
	MomentNMM float64 // sagging positive
	StressMPa float64 // moment over the lesser modulus, with the moment's sign
}

// finer is into how many parts a piece under a line load is cut for plots.
const finer = 8

// stations walks the beam piece by piece. modulus gives S just before and just after a station; extra are stations at which it changes.
func (b *beam) stations(extra []float64, modulus func(x float64, after bool) float64) []Station {
	at := slices.Clone(extra)
	for _, p := range b.points {
		at = append(at, p.x)
	}
	for _, l := range b.lines {
		at = append(at, l.from, l.to)
	}
	slices.Sort(at)
	at = slices.Compact(at)
	var out []Station
	put := func(x float64, after bool) {
		v, m := b.at(x, after)
		s := Station{x, v, m, m / modulus(x, after)}
		if n := len(out); n == 0 || out[n-1] != s {
			out = append(out, s)
		}
	}
	for i, x := range at {
		put(x, false)
		put(x, true)
		if i+1 < len(at) {
			for _, inner := range b.inner(x, at[i+1]) {
				put(inner, true)
			}
		}
	}
	return out
}

// inner are the stations wanted inside a piece: where shear is nought, and some for the eye under a line load.
func (b *beam) inner(from, to float64) []float64 {
	q0, q1 := b.intensity(from, true), b.intensity(to, false)
	if q0 == 0 && q1 == 0 {
		return nil
	}
	length := to - from
	v0, _ := b.at(from, true)
	var out []float64
	for _, s := range roots((q1-q0)/length/2, q0, v0) {
		if s > 0 && s < length {
			out = append(out, from+s)
		}
	}
	for i := 1; i < finer; i++ {
		out = append(out, from+length*float64(i)/finer)
	}
	slices.Sort(out)
	return slices.Compact(out)
}

// roots solves a s^2 + b s + c = 0 without losing digits.
func roots(a, b, c float64) []float64 {
	if a == 0 {
		if b == 0 {
			return nil
		}
		return []float64{-c / b}
	}
	d := float64(b*b) - float64(4*a*c)
	if d < 0 {
		return nil
	}
	q := -(b + math.Copysign(math.Sqrt(d), b)) / 2
	if q == 0 {
		return []float64{0}
	}
	return []float64{q / a, c / q}
}
