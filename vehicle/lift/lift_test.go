package lift

import (
	"math"
	"math/rand"
	"slices"
	"testing"

	"lugwright/part"
)

func four() []Jack {
	return []Jack{{"front left", 1100, 1000, 0}, {"front right", 1100, -1000, 900}, {"rear left", 4800, 1000, 0}, {"rear right", 4800, -1000, 0}}
}

// The field lab: 1900 kg dry with its centre at (2811.3, 55.1) on four jacks: even share 539, 482, 464, 415 kg; each is planned for a diagonal pair,
// about half the body, 950 kg or more. By hand, the other diagonal unloaded as far as it goes: 464 kg to the front left one, 538.7 + 463.6 = 1002.
func TestFieldLab(t *testing.T) {
	p, err := New(Body{1900, 2811.3, 55.1}, four())
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []struct{ even, worst, plan float64 }{{539, 1002, 1002}, {482, 898, 950}, {464, 879, 950}, {415, 879, 950}} {
		s := p.Shares[i]
		if math.Abs(s.EvenKG-want.even) > 0.5 || math.Abs(s.WorstKG-want.worst) > 0.6 || math.Abs(s.PlanKG-want.plan) > 0.6 {
			t.Errorf("%+v, want %+v", s, want)
		}
	}
	if !p.Shares[1].OverRate || p.Shares[0].OverRate || p.Tips != "" || len(p.Cautions) == 0 {
		t.Errorf("%+v", p)
	}
	if math.Abs(p.MarginMM-(1000-55.1)) > 1e-9 {
		t.Errorf("margin %g", p.MarginMM)
	}
}

// A textbook's plate on three supports with one of them in uplift has 790, -217 and 707 N (statics, example 5.13); its loads and couple put
// together are 1281 N at (1.3439, 0.7658) m.
func TestThreeSupportsWithUplift(t *testing.T) {
	const w = 300 + 981
	// Moments as printed there: 2 (C + B) = 981, 3 (A + B) = 1.5 300 + 1.5 981 - 200.
	x, y := (1.5*300+1.5*981-200)/w, 981.0/w
	p, err := New(Body{w, 1000 * x, 1000 * y}, []Jack{{"A", 3000, 0, 0}, {"B", 3000, 2000, 0}, {"C", 0, 2000, 0}})
	if err != nil {
		t.Fatal(err)
	}
	for i, want := range []float64{790, -217, 707} {
		if got := p.Shares[i].EvenKG; math.Abs(got-want) > 0.005*math.Abs(want) {
			t.Errorf("%s: %g, want %g", p.Shares[i].Name, got, want)
		}
	}
	if p.MarginMM >= 0 || p.Tips == "" {
		t.Errorf("a body that tips: %+v", p)
	}
}

// Equilibrium of the even share; no jack beyond its worst; worst of four by sliding along the one free direction; mirror.
func TestProperties(t *testing.T) {
	r := rand.New(rand.NewSource(1))
	for range 2000 {
		n := 3 + r.Intn(5)
		jacks := make([]Jack, n)
		b := Body{MassKG: 100 + 5000*r.Float64()}
		for i := range jacks {
			jacks[i] = Jack{string(rune('a' + i)), 4000 * r.Float64(), 2000*r.Float64() - 1000, 0}
			b.XMM += jacks[i].XMM / float64(n)
			b.YMM += jacks[i].YMM / float64(n)
		}
		b.XMM += 300 * r.NormFloat64()
		p, err := New(b, jacks)
		if err != nil {
			continue
		}
		var sum, mx, my float64
		allPush := true
		for i, s := range p.Shares {
			sum, mx, my = sum+s.EvenKG, mx+s.EvenKG*jacks[i].XMM, my+s.EvenKG*jacks[i].YMM
			allPush = allPush && s.EvenKG >= 0
		}
		if math.Abs(sum-b.MassKG) > 1e-6 || math.Abs(mx-b.MassKG*b.XMM) > 1e-2 || math.Abs(my-b.MassKG*b.YMM) > 1e-2 {
			t.Fatalf("%+v on %+v: %g, %g, %g", b, jacks, sum, mx, my)
		}
		if allPush && p.MarginMM < -1e-6 {
			t.Fatalf("all push, yet the centre lies outside: %+v", p)
		}
		if allPush {
			for _, s := range p.Shares {
				if s.EvenKG > s.WorstKG+1e-6 {
					t.Fatalf("%+v beyond its worst", s)
				}
			}
		}
		flip := slices.Clone(jacks)
		for i := range flip {
			flip[i].YMM = -flip[i].YMM
		}
		q, err := New(Body{b.MassKG, b.XMM, -b.YMM}, flip)
		if err != nil {
			t.Fatal(err)
		}
		for i := range q.Shares {
			if math.Abs(q.Shares[i].EvenKG-p.Shares[i].EvenKG) > 1e-6 || math.Abs(q.Shares[i].WorstKG-p.Shares[i].WorstKG) > 1e-6 {
				t.Fatalf("mirror: %+v and %+v", p.Shares[i], q.Shares[i])
			}
		}
	}
}

func TestRefused(t *testing.T) {
	nan := math.NaN()
	for field, spoil := range map[string]func(b *Body, j []Jack) []Jack{
		"lift.mass_kg":           func(b *Body, j []Jack) []Jack { b.MassKG = 0; return j },
		"lift.x_mm":              func(b *Body, j []Jack) []Jack { b.XMM = nan; return j },
		"lift.jacks":             func(b *Body, j []Jack) []Jack { return j[:2] },
		"lift.jacks[1].name":     func(b *Body, j []Jack) []Jack { j[1].Name = j[0].Name; return j },
		"lift.jacks[2].y_mm":     func(b *Body, j []Jack) []Jack { j[2].YMM = math.Inf(-1); return j },
		"lift.jacks[3].rated_kg": func(b *Body, j []Jack) []Jack { j[3].RatedKG = -1; return j },
	} {
		b := Body{1900, 2800, 0}
		jacks := spoil(&b, four())
		_, err := New(b, jacks)
		if f := part.Fields(err); len(f) != 1 || f[0].Field != field {
			t.Errorf("want %s, got %v", field, err)
		}
	}
	line := four()
	for i := range line {
		line[i].YMM = 0
	}
	if _, err := New(Body{1900, 2800, 0}, line); len(part.Fields(err)) != 1 {
		t.Errorf("jacks in one line: %v", err)
	}
}
