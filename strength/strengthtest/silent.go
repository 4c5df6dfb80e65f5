package strengthtest

// With the trace off a check allocates nothing: a batch runs millions of them.

import (
	"slices"
	"testing"

	"lugwright/strength"
)

// silent runs every rule on a feature of shop size that meets the usual needs.
func silent(t T, b *strength.Basis) {
	t.Helper()
	r := &b.Rules
	ruled(t, b, r.PinPlane, strength.PinPlane{V: 1e4, D: 20, Fy: 250, Fu: 400})
	ruled(t, b, r.PinSpan, strength.PinSpan{M: 1e5, V: 1e4, D: 20, Fy: 250, Fu: 400, Service: 1, P: 1e4, Span: 40, Play: 0.5, E: 2e5})
	bore := strength.Bore{
		P: 1e4, Pull: 1e4, D: 20, Dh: 20.5, T: 12, A: 40, B: 30, W: 80.5, Least: 30, Fy: 250, Fu: 400, FyPin: 250, E: 2e5, EPin: 2e5, Service: 1,
	}
	ruled(t, b, r.Bore, bore)
	ruled(t, b, r.Eye, bore)
	ruled(t, b, r.Cut, strength.Cut{
		N: -1e4, Va: 1e3, Vb: 1e3, Ma: 1e5, Mb: 1e5, T: 1e4, Area: 1200, AreaVa: 1200, AreaVb: 1200, Za: 3600, Sa: 2400, Zb: 30000,
		Sb: 20000, J: 57600, TMax: 12, FreeLength: 200, Depth: 100, R: 3.46, Rect: true, Fy: 250, Fu: 400, E: 2e5,
	})
	weld := strength.WeldLine{Q: 100, Leg: 6, FEXX: 480, T1: 12, T2: 12, Fy: 250, Fu: 400, Length: 100, Longest: 100, Kind: "fillet", BothSides: true, AlongEdge: true}
	ruled(t, b, r.WeldLine, weld)
	ruled(t, b, r.WeldSize, weld)
	flow := strength.WeldFlow{Q: 100, Lines: 2, Leg: 6, FEXX: 480, T: 12, Fy: 250, Fu: 400}
	ruled(t, b, r.WeldFlow, flow)
	ruled(t, b, r.CJPFlow, flow)
	weld.Kind, weld.N, weld.V, weld.InPlate, weld.Fy2, weld.Fu2 = "complete penetration", 100, 50, true, 250, 400
	ruled(t, b, r.CJPLine, weld)
	weld.Kind, weld.Leg, weld.N, weld.Width, weld.Run, weld.Pitch = "plug", 12, 0, 22, 22, 90
	ruled(t, b, r.PlugLine, weld)
	bolt := strength.Bolt{V: 1e3, T: 1e3, D: 16, Fub: 830, ThreadsIn: true, Grade: "8.8", As: 157, FuNominal: 800, Dh: 18, Flats: 24}
	ruled(t, b, r.Bolt, bolt)
	bolt.Preload, bolt.SlipC = 0.70, 0.30
	ruled(t, b, r.Slip, bolt)
	set := strength.BoltSet{N: 4, T: 1e3, Service: 1, Fp: 600, Fy: 660, Fu: 830, Bolt: bolt}
	ruled(t, b, r.BoltSet, set)
	ruled(t, b, r.Preloaded, set)
	ruled(t, b, r.Thread, strength.Thread{T: 1e3, Service: 1, D: 16, Pitch: 2, L: 20, Fub: 830, Fu: 400})
	ruled(t, b, r.BoltBearing, strength.BoltBearing{V: 1e4, D: 16, Dh: 18, T: 12, Edge: 40, Pitch: 60, Fy: 250, Fu: 400, Bolt: bolt})
	ruled(t, b, r.Prying, strength.Prying{T: 1e3, B: 30, A: 30, P: 60, D: 16, Dh: 18, Tply: 12, Fy: 250, Fu: 400, Fub: 830, V: 1e3, ThreadsIn: true, Bolt: bolt})
	ruled(t, b, r.Block, strength.Block{V: 1e3, Planes: 2, Lgv: 100, HolesV: 1.5, Lgt: 60, HolesT: 1, Even: true, Dh: 18, T: 12, Fy: 250, Fu: 400})
	ruled(t, b, r.Bush, strength.Bush{P: 1e4, D: 20, L: 40, Service: 1})
	ruled(t, b, r.Outstand, strength.Outstand{B: 60, T: 12, Fy: 250, E: 2e5})
	ruled(t, b, r.CornerPlate, strength.CornerPlate{P: 1e4, E: 50, A: 100, B: 80, T: 12, Fy: 250, Modulus: 2e5})
	ruled(t, b, r.Wall, strength.Wall{M: 1e5, N: 1e3, T: 8, Width: 100, Clear: 200, Arm: 60, Fy: 250})
}

func ruled[F any](t T, b *strength.Basis, rules []strength.Rule[F], f F) {
	t.Helper()
	factors, err := b.Card.FactorValues("", nil)
	if err != nil {
		t.Errorf("%v", err)
	}
	for _, r := range rules {
		id := r.Of.Info().ID
		if !slices.Contains(b.Limits, r.Of) {
			t.Errorf("%s: a rule applies it, but the basis does not list it", id)
		}
		for _, m := range b.Card.Methods {
			c := strength.Calc{Method: m, Factors: factors}
			if n := testing.AllocsPerRun(20, func() { r.Check(&c, &f) }); n != 0 {
				t.Errorf("%s, %s: %v allocations with the trace off (%s %s)", id, m, n, c.Verdict, c.Why)
			}
		}
	}
}
