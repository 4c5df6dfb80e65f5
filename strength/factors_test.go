package strength

import (
	"testing"
)

func TestFactorValues(t *testing.T) {
	euro := &Card{Name: "Euro", Factors: []Factor{
		{Symbol: "gamma_M0", Words: "partial factor", Default: 1, Min: 1, Max: 1.5, Sets: []FactorSet{{"Norway", 1.05}}},
		{Symbol: "gamma_M2", Words: "partial factor", Default: 1.25, Min: 1, Max: 1.5, Sets: []FactorSet{{"UK", 1.1}}},
	}}
	lifting := &Card{Name: "Lifting", Factors: []Factor{{Symbol: "N_d", Words: "design factor", Default: 3, Min: 2, Max: 10, Sets: []FactorSet{{"B", 4}}}}}
	for _, c := range []struct {
		name string
		pin  *Card
		set  string
		own  map[string]float64
		want []float64
		err  string
	}{
		{name: "defaults", want: []float64{1, 1.25}},
		{name: "a set", set: "Norway", want: []float64{1.05, 1.25}},
		{name: "own over the set", set: "Norway", own: map[string]float64{"gamma_M0": 1.2}, want: []float64{1.2, 1.25}},
		{name: "the pin joint's own", pin: lifting, own: map[string]float64{"N_d": 5, "gamma_M2": 1.3}, want: []float64{1, 1.3, 5}},
		{name: "the pin joint's set", pin: lifting, set: "B", want: []float64{1, 1.25, 4}},
		{name: "unknown set", set: "Mars", err: `factor_set: Euro has no set "Mars"; one of: Norway, UK`},
		{name: "out of range", own: map[string]float64{"gamma_M2": 9}, err: "factors.gamma_M2: 9; 1 to 1.5 (partial factor)"},
		{name: "out of the pin joint's range", pin: lifting, own: map[string]float64{"N_d": 1}, err: "factors.N_d: 1; 2 to 10 (design factor)"},
		{name: "unknown", pin: lifting, own: map[string]float64{"q": 1}, err: "factors.q: Euro has no such factor; one of: gamma_M0, gamma_M2"},
	} {
		got, err := FactorsOf(euro, c.pin, c.set, c.own)
		if err == nil && c.err != "" || err != nil && err.Error() != c.err {
			t.Errorf("%s: %v, want %q", c.name, err, c.err)
			continue
		}
		if len(got) != len(c.want) {
			t.Errorf("%s: %v, want %v", c.name, got, c.want)
			continue
		}
		for i, f := range got {
			if f.Value != c.want[i] {
				t.Errorf("%s: %s = %g, want %g", c.name, f.Symbol, f.Value, c.want[i])
			}
		}
	}
}
