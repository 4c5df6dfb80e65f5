package vehicle

import (
	"cmp"
	"slices"

	"lugwright/part"
)

// Range is a result and how far the masses' doubt may take it.
type Range struct{ Value, Low, High float64 }

// term is a mass with its range and where it stands.
type term struct{ kg, pm, x float64 }

// sum is the range of the sum of k(x) times mass: each mass at the end that k's sign asks for.
func sum(terms []term, k func(x float64) float64) Range {
	var r Range
	for _, t := range terms {
		f := k(t.x)
		r.Value += f * t.kg
		r.Low += min(f*(t.kg-t.pm), f*(t.kg+t.pm))
		r.High += max(f*(t.kg-t.pm), f*(t.kg+t.pm))
	}
	return r
}

// mean is the range of the masses' centre. The extreme of such a quotient has every mass on one side of it heavy and every mass on the other light, so
// each way of cutting the row of masses is tried.
func mean(terms []term) Range {
	terms = slices.Clone(terms)
	slices.SortStableFunc(terms, func(a, b term) int { return cmp.Compare(a.x, b.x) })
	at := func(cut int, low, high float64) float64 {
		m, mx := 0.0, 0.0
		for i, t := range terms {
			kg := t.kg + low*t.pm
			if i >= cut {
				kg = t.kg + high*t.pm
			}
			m += kg
			mx += kg * t.x
		}
		if m <= 0 {
			return terms[min(cut, len(terms)-1)].x
		}
		return mx / m
	}
	v := at(0, 0, 0)
	r := Range{v, v, v}
	for cut := range len(terms) + 1 {
		r.High = max(r.High, at(cut, -1, 1))
		r.Low = min(r.Low, at(cut, 1, -1))
	}
	return r
}

// Mass is a total with its centre of gravity.
type Mass struct{ KG, XMM, YMM, ZMM Range }

// CG is the centre of gravity without its ranges.
func (m *Mass) CG() part.Vec { return part.Vec{X: m.XMM.Value, Y: m.YMM.Value, Z: m.ZMM.Value} }

func terms(all []mass, of func(m mass) float64) []term {
	out := make([]term, len(all))
	for i, m := range all {
		out[i] = term{m.kg, m.pm, of(m)}
	}
	return out
}

func byX(m mass) float64 { return m.at.X }
func byY(m mass) float64 { return m.at.Y }
func byZ(m mass) float64 { return m.at.Z }

func one(float64) float64 { return 1 }

func total(all []mass) Mass {
	if len(all) == 0 {
		return Mass{}
	}
	return Mass{sum(terms(all, byX), one), mean(terms(all, byX)), mean(terms(all, byY)), mean(terms(all, byZ))}
}
