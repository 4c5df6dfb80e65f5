package plots

import (
	"math"

	"lugwright/units"
)

// Axis is one direction of a chart.
type Axis struct {
	Words string   // what is along it, with its unit
	Names []string // of the places 0, 1 and on, instead of numbers
	// Zero: nought is shown, however far the numbers are from it. Most, where it is not 0, is the greatest number shown; what is above lies on the edge.
	Zero bool
	Most float64
}

// scale is an axis whose ends are round numbers.
type scale struct {
	low, high, step float64
	names           bool
}

// settled holds all numbers, over a length on paper; signs stand clear of its ends.
func (a *Axis) settled(numbers []float64, lengthMM float64, signs bool) scale {
	if a.Names != nil {
		return scale{-0.5, float64(len(a.Names)) - 0.5, 1, true}
	}
	low, high := math.Inf(1), math.Inf(-1)
	if a.Zero {
		low, high = 0, 0
	}
	for _, v := range numbers {
		if a.Most != 0 {
			v = min(v, a.Most)
		}
		low, high = min(low, v), max(high, v)
	}
	if low > high {
		low, high = 0, 1
	}
	if high-low < 1e-9*(1+math.Abs(high)) {
		off := max(math.Abs(high)*0.05, 0.5)
		if high != 0 || !a.Zero {
			low -= off
		}
		high += off
	}
	apartMM := 20.0
	if lengthMM < 100 { // upwards numbers stand closer than side by side
		apartMM = 12
	}
	step := Nice((high - low) / max(2, math.Floor(lengthMM/apartMM)))
	edge := 0.0
	if signs { // one on the very edge is not well seen
		edge = step / 8
	}
	if low != 0 {
		low -= edge
	}
	if high != 0 && high != a.Most {
		high += edge
	}
	return scale{math.Floor(low/step+1e-9) * step, math.Ceil(high/step-1e-9) * step, step, false}
}

// Nice is the smallest of 1, 2, 5 times a power of ten that is not below v.
func Nice(v float64) float64 {
	power := math.Pow(10, math.Floor(math.Log10(v)))
	for _, k := range []float64{1, 2, 5} {
		if k*power >= v*(1-1e-9) {
			return k * power
		}
	}
	return 10 * power
}

// ticks are the round numbers along the axis.
func (s scale) ticks() []float64 {
	var out []float64
	if s.names { // a rule at each
		for v := 0.0; v < s.high; v++ {
			out = append(out, v)
		}
		return out
	}
	for i := range int(math.Round((s.high-s.low)/s.step)) + 1 {
		out = append(out, s.low+float64(i)*s.step)
	}
	return out
}

// label writes a tick with as many decimals as its step has.
func (s scale) label(v float64) string {
	if math.Abs(v) < s.step*1e-6 {
		v = 0
	}
	return units.FormatPlain(v, max(0, int(math.Ceil(-math.Log10(s.step)-1e-9))))
}

// part is where a number lies from 0 to 1.
func (s scale) part(v float64) float64 { return min(max((v-s.low)/(s.high-s.low), 0), 1) }
