package statics

// Powers with a fixed exponent by table and series, and powers of an angle by table: what the innermost loop of the
// instantaneous centres spends its time on.

import "math"

const powerParts = 64

// fixedPower raises positive normal numbers to one exponent, to within 1e-13 of the value.
type fixedPower struct {
	whole   [2048]float64       // 2^(exponent*e) by the biased binary exponent e
	part    [powerParts]float64 // c^exponent, c the middle of each part of [1, 2)
	inverse [powerParts]float64 // 1/c
	series  [5]float64          // binomial series of (1 + r)^exponent after its 1
}

func newFixedPower(exponent float64) *fixedPower {
	p := &fixedPower{}
	for e := range p.whole {
		p.whole[e] = math.Pow(2, exponent*float64(e-1023))
	}
	for i := range powerParts {
		c := 1 + (float64(i)+0.5)/powerParts
		p.part[i], p.inverse[i] = math.Pow(c, exponent), 1/c
	}
	term := 1.0
	for k := range p.series {
		term *= (exponent - float64(k)) / float64(k+1)
		p.series[k] = term
	}
	return p
}

// of raises each of x, all positive, where it stands. A loop over short independent chains keeps the machine's pipeline full.
func (p *fixedPower) of(x []float64) {
	s := &p.series
	for k, v := range x {
		bits := math.Float64bits(v)
		i := bits >> 46 & (powerParts - 1)
		r := math.Float64frombits(bits&(1<<52-1)|1023<<52)*p.inverse[i] - 1
		r2 := r * r
		x[k] = p.whole[bits>>52&2047] * p.part[i] * (1 + r*s[0] + r2*(s[1]+r*s[2]+r2*(s[3]+r*s[4])))
	}
}

const degrees = 180 / math.Pi

const angleParts = 512

// anglePower is (th + offset)^exponent, th in degrees from 0 to 90, by cubics over v = sin/(sin + cos), to within 1e-6 of the
// value.
type anglePower [angleParts + 1]struct {
	c     [4]float64 // cubic in the part of the interval
	slope float64    // logarithmic derivative by th in rad, at the interval's start
}

func newAnglePower(offset, exponent float64) *anglePower {
	p := &anglePower{}
	at := func(k int) (value, byV, byTh float64) {
		v := float64(k) / angleParts
		t := math.Atan2(v, 1-v)*degrees + offset
		value = math.Pow(t, exponent)
		byTh = exponent * degrees / t
		return value, value * byTh / (v*v + (1-v)*(1-v)) / angleParts, byTh
	}
	for k := range p {
		y0, s0, slope := at(k)
		y1, s1, _ := at(k + 1)
		p[k].c = [4]float64{y0, s0, 3*(y1-y0) - 2*s0 - s1, 2*(y0-y1) + s0 + s1}
		p[k].slope = slope
	}
	return p
}

// of gives the value and its logarithmic derivative, the latter to a twentieth, for sides of the angle that are not negative: the
// sine and the cosine up to a factor.
func (p *anglePower) of(opposite, adjacent float64) (value, slope float64) {
	x := opposite / (opposite + adjacent) * angleParts
	k := int(x)
	e := &p[min(uint(k), angleParts)]
	x -= float64(k)
	return e.c[0] + x*(e.c[1]+x*(e.c[2]+x*e.c[3])), e.slope
}
