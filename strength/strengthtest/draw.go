package strengthtest

// Random givens, the same on every run: mostly of shop size, sometimes anywhere in the range, nought, or near each other.

import (
	"math"
	"math/rand/v2"

	"lugwright/strength"
)

// usual is the range of shop sizes by unit, so that both sides of most conditions are met.
var usual = map[string][2]float64{
	"mm": {1, 300}, "mm^2": {10, 1e5}, "mm^3": {100, 1e7}, "mm^4": {1e3, 1e9},
	"N": {100, 1e6}, "N*mm": {1e3, 1e9}, "N/mm": {1, 5000}, "MPa": {100, 1500},
}

type dice struct{ *rand.Rand }

func newDice() dice { return dice{rand.New(rand.NewPCG(360, 22))} }

// values draws each given; lists of one draw are of one length.
func (d dice) values(givens []strength.Given) [][]float64 {
	out := make([][]float64, len(givens))
	length := 2 + d.IntN(7)
	for i, g := range givens {
		n := 1
		if g.List {
			n = length
		}
		for range n {
			out[i] = append(out[i], stepped(g, min(max(d.value(g, givens[:i], out[:i]), g.Min), g.Max)))
		}
	}
	return out
}

// stepped makes a number of things of any value.
func stepped(g strength.Given, v float64) float64 {
	if g.Step == 0 {
		return v
	}
	return min(max(math.Round(v/g.Step)*g.Step, g.Min), g.Max)
}

func (d dice) value(g strength.Given, before []strength.Given, values [][]float64) float64 {
	switch {
	case g.Choices != nil:
		return float64(d.IntN(len(g.Choices)))
	case g.Optional && d.Float64() < 0.1:
		return g.Default
	case g.Unit == "" && g.Min == 0 && g.Max == 1 && d.Float64() < 0.6: // a flag, or a part of one
		return float64(d.IntN(2))
	}
	sign := 1.0
	if g.Min < 0 && d.IntN(2) == 0 {
		sign = -1
	}
	switch r := d.Float64(); {
	case r < 0.05 && g.Min <= 0:
		return 0
	case r < 0.15:
		return sign * d.size(g.Min, g.Max)
	case r < 0.45:
		if near, ok := d.alike(g, before, values); ok {
			return sign * near
		}
	}
	return sign * d.size(shop(g))
}

// factors are the card's defaults, or in half of the draws values within the ranges.
func (d dice) factors(c *strength.Card) []strength.FactorValue {
	out := make([]strength.FactorValue, len(c.Factors))
	usual := d.IntN(2) == 0
	for i, f := range c.Factors {
		out[i] = strength.FactorValue{Symbol: f.Symbol, Unit: f.Unit, Words: f.Words, Value: f.Default}
		if !usual {
			out[i].Value = f.Min + (f.Max-f.Min)*d.Float64()
		}
	}
	return out
}

// alike is near an earlier given of the same unit: a hole near its pin, an end distance near a side one.
func (d dice) alike(g strength.Given, before []strength.Given, values [][]float64) (float64, bool) {
	for _, i := range d.Perm(len(before)) {
		if v := values[i][0]; before[i].Unit == g.Unit && before[i].Choices == nil && v != 0 {
			u := 2*d.Float64() - 1
			return math.Abs(v) * math.Exp(0.5*u*u*u), true
		}
	}
	return 0, false
}

// size is log-uniform between the bounds; a lower bound that is not positive stands for a millionth.
func (d dice) size(low, high float64) float64 {
	if low <= 0 {
		low = 1e-6
	}
	return low * math.Pow(high/low, d.Float64())
}

func shop(g strength.Given) (low, high float64) {
	u, ok := usual[g.Unit]
	low, high = max(u[0], g.Min), min(u[1], g.Max)
	if !ok || low >= high {
		return g.Min, g.Max
	}
	return low, high
}
