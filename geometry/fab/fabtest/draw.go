package fabtest

// Random requests for fuzzing a kind, and the one rule of it: a typed refusal or a sound bracket, no third outcome.

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"lugwright/geometry"
	"lugwright/part"
)

// dice is splitmix64: the same seed, the same request.
type dice uint64

func (d *dice) next() uint64 {
	*d += 0x9e3779b97f4a7c15
	z := uint64(*d)
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

func (d *dice) upTo(n int) int   { return int(d.next() % uint64(n)) }
func (d *dice) unit() float64    { return float64(d.next()>>11) / (1 << 53) }
func (d *dice) oneIn(n int) bool { return d.upTo(n) == 0 }

// Draw makes a request with some of the kind's parameters changed: mostly a little, now and then to any value in range or to
// nonsense.
func Draw(k geometry.Kind, seed uint64) geometry.Request {
	d := dice(seed)
	r := geometry.Request{Kind: k.Name, Name: "fuzz", Hand: part.LeftHand}
	if d.oneIn(2) {
		r.Hand = part.RightHand
	}
	often := 2 + d.upTo(12)
	wild := d.oneIn(4)
	for _, p := range k.Params {
		if d.oneIn(often) {
			r.Params = append(r.Params, d.param(p, wild))
		}
	}
	return r
}

func (d *dice) param(p geometry.Param, wild bool) part.Param {
	out := part.Param{Name: p.Name}
	switch p.Unit {
	case geometry.Word:
		out.Text = p.Text
		if len(p.Choices) > 0 {
			out.Text = p.Choices[d.upTo(len(p.Choices))]
		}
	case geometry.Size:
		out.Text = []string{"M8", "M10", "M12", "M16", "M20", "1/2-13"}[d.upTo(6)]
	case geometry.Count:
		out.Number = p.Min + float64(d.upTo(int(p.Max-p.Min)+1))
	default:
		out.Number = d.length(p, wild)
	}
	return out
}

func (d *dice) length(p geometry.Param, wild bool) float64 {
	switch {
	case wild && d.oneIn(20):
		return []float64{math.NaN(), math.Inf(1), -p.Default, 0, 1e300}[d.upTo(5)]
	case wild || p.Default == 0:
		return p.Min + d.unit()*(p.Max-p.Min)
	}
	return min(max(p.Default*(0.7+0.7*d.unit()), p.Min), p.Max)
}

// Outcome builds a request and says whether a bracket came of it. Fault is empty when all is well: the error names parameters
// with what was found and what is accepted, or the bracket is sound.
func Outcome(k geometry.Kind, r geometry.Request) (built bool, fault string) {
	b, err := geometry.Build([]geometry.Kind{k}, r)
	if err != nil {
		return false, untyped(err)
	}
	if bad := Faults(b); bad != nil {
		return true, strings.Join(bad, "\n")
	}
	return true, ""
}

func untyped(err error) string {
	fields := part.Fields(err)
	if fields == nil {
		return "not a typed refusal: " + err.Error()
	}
	for _, f := range fields {
		if !strings.HasPrefix(f.Field, "parameters.") || f.Found == "" || f.Accept == "" || strings.Contains(f.Error(), "%!") {
			return fmt.Sprintf("a refusal without parameter, finding or bound: %v", err)
		}
	}
	return ""
}

// Random builds requests drawn from seeds 0 to n - 1. Fewer than one in twenty built would say that the draw is too wild.
func Random(t *testing.T, k geometry.Kind, n uint64) {
	t.Helper()
	built := uint64(0)
	for seed := range n {
		ok, fault := Outcome(k, Draw(k, seed))
		if fault != "" {
			t.Fatalf("seed %d: %s", seed, fault)
		}
		if ok {
			built++
		}
	}
	if built < n/20 {
		t.Errorf("only %d of %d built", built, n)
	}
}

// Fuzz builds requests drawn from the fuzzer's seeds.
func Fuzz(f *testing.F, k geometry.Kind) {
	f.Add(uint64(1))
	f.Fuzz(func(t *testing.T, seed uint64) {
		if _, fault := Outcome(k, Draw(k, seed)); fault != "" {
			t.Error(fault)
		}
	})
}
