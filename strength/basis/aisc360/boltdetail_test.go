package aisc360

// Properties of the limit states of boltdetail.go, for which no published example was found.

import (
	"math"
	"testing"

	"lugwright/strength"
)

// TestJointReductions: each reduction on either side of where it begins and ends.
func TestJointReductions(t *testing.T) {
	v := values{"V_r": 1e4, "d": 20, "F_u": 830, "threads": 1}
	plain := check(t, "bolt-shear", strength.LRFD, v).Capacity
	for _, c := range []struct {
		name string
		v    values
		want float64
	}{
		{"plain", v, 1},
		{"two planes", v.with("n_s", 2), 2},
		{"38 in", v.with("L_j", 38*inch), 1},
		{"over 38 in", v.with("L_j", 38.1*inch), 0.833},
		{"filler of 1/4 in", v.with("t_f", inch/4), 1},
		{"filler of 1/2 in", v.with("t_f", inch/2), 0.9},
		{"filler of 5/8 in", v.with("t_f", 5*inch/8), 0.85},
		{"filler of 2 in", v.with("t_f", 2*inch), 0.85},
		{"filler held", v.with("t_f", 2*inch).with("fillers", 1), 1},
		{"long grip, high strength", v.with("grip", 500), 1},
		{"A307, grip of 5 d", v.with("bolt", 1).with("grip", 100), 1},
		{"A307, 1 in over 5 d", v.with("bolt", 1).with("grip", 100+inch), 0.84},
		{"long, with filler", v.with("L_j", 1000).with("t_f", inch), 0.833 * 0.85},
	} {
		if got := check(t, "bolt-shear-joint", strength.LRFD, c.v); !same(got.Capacity, c.want*plain) {
			t.Errorf("%s: %v of the plain bolt, want %v", c.name, got.Capacity/plain, c.want)
		}
	}
	for name, bad := range map[string]values{"A307, threads out": v.with("bolt", 1).with("threads", 0), "A307, grip of 3 m": v.with("bolt", 1).with("grip", 3000)} {
		if got := check(t, "bolt-shear-joint", strength.LRFD, bad); got.Verdict != strength.Outside {
			t.Errorf("%s: %q", name, got.Verdict)
		}
	}
}

// TestPullThrough: twice the thickness bears twice as much; a washer spreads the head's force at 45 degrees and no further than its edge; a hole as
// wide as head and washer, and thin sheet, are outside the rule.
func TestPullThrough(t *testing.T) {
	v := values{"T_r": 1e4, "w_f": 24, "d_h": 18, "t": 6, "F_y": 250, "F_u": 400}
	for _, m := range methods {
		at := func(v values) float64 { return check(t, "bolt-pull-through", m, v).Capacity }
		bare := at(v)
		if !same(at(v.with("t", 12)), 2*bare) {
			t.Errorf("%s: twice the ply is %v as strong", m, at(v.with("t", 12))/bare)
		}
		for _, c := range []struct{ dw, tw, of float64 }{{0, 5, 1}, {20, 5, 1}, {60, 0, 1}, {60, 3, 30.0 / 24}, {60, 18, 60.0 / 24}, {60, 30, 60.0 / 24}} {
			if got := at(v.with("d_w", c.dw).with("t_w", c.tw)); !same(got, c.of*bare) {
				t.Errorf("%s: washer %v x %v is %v as strong, want %v", m, c.dw, c.tw, got/bare, c.of)
			}
		}
		// 0.60 F_y and 0.60 F_u with their factors, whichever is less: 250 and 300 MPa in LRFD, 250/1.5 and 200 in ASD.
		want := 0.60 * 250 * math.Pi * 24 * 6
		if m == strength.ASD {
			want /= 1.5
		}
		if !same(bare, want) || !(at(v.with("F_u", 300)) < bare) {
			t.Errorf("%s: %v, want %v", m, bare, want)
		}
	}
	for _, bad := range []values{v.with("d_h", 24), v.with("t", 4.7)} {
		if got := check(t, "bolt-pull-through", strength.ASD, bad); got.Verdict != strength.Outside {
			t.Errorf("%v: %q", bad, got.Verdict)
		}
	}
}

// TestBoltEdges: the tables never ask less than 1 1/4 d, a bolt between two rows takes the larger, and beyond them 1 1/4 d goes on; a wider hole
// needs no less.
func TestBoltEdges(t *testing.T) {
	at := func(d, series, hole float64) float64 {
		return check(t, "bolt-edge-distance", strength.ASD, values{"d": d, "l_e": 50, "series": series, "hole": hole}).Demand
	}
	for series := range 2 {
		s := float64(series)
		for d := 12.0; d < 60; d += 0.5 {
			least := at(d, s, 0)
			if least < 1.249*d || least > 2*d {
				t.Errorf("series %d, d = %v: %v", series, d, least)
			}
			if over, short, long := at(d, s, 1), at(d, s, 2), at(d, s, 3); over <= least || short < over || long < short {
				t.Errorf("series %d, d = %v: %v, %v, %v, %v by hole", series, d, least, over, short, long)
			}
		}
	}
	if !same(at(50, 0, 0), 62.5) || !same(at(50, 1, 0), 62.5) || !same(at(24, 1, 2), 33) || !same(at(25, 1, 2), 39) {
		t.Error("beyond the rows, or between them")
	}
}

// TestBoltHoles: every row grows from standard hole to long slot, and from bolt to bolt.
func TestBoltHoles(t *testing.T) {
	for i, row := range boltHoles {
		for k, d := range row {
			if k > 0 && d <= row[k-1] || i > 0 && i != inchBolts && d <= boltHoles[i-1][k] {
				t.Errorf("row %d, hole %d: %v", i, k, d)
			}
		}
	}
	if got := check(t, "bolt-hole-size", strength.ASD, values{"d_h": 24.1, "size": 11, "hole": 1}); got.Verdict != strength.Fail {
		t.Errorf("24.1 mm for M20: %q", got.Verdict)
	}
}
