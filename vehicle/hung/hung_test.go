package hung

import (
	"math"
	"math/rand"
	"testing"

	"lugwright/part"
	"lugwright/vehicle/finding"
)

// trayA of the nursery truck: 210 kg on four rods 600 x 540, 140 mm free, mass centre 300 under the beam.
func trayA() Tray {
	return Tray{Name: "tray A", MassKG: 210, At: part.Vec{X: 1700, Z: 500}, BeamZMM: 800, FreeMM: 140, Ends: BothHeld,
		Rods: []Rod{{"fl", 1400, 270}, {"fr", 1400, -270}, {"rl", 2000, 270}, {"rr", 2000, -270}}}
}

func one(t *testing.T, tray Tray, g part.Vec) CaseLoads {
	t.Helper()
	r, err := Loads(tray, []Case{{Name: "c", Level: part.Service, G: g}})
	if err != nil {
		t.Fatal(err)
	}
	return r[0]
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.8g, want %.8g", what, got, want)
	}
}

// The printed numbers: 1545 N even share at 3 g, 3090 on two diagonal rods; guided bending F L/2 at 1 g side gives 1360, 676, 384 and 148 MPa at the
// thread root of M8, M10, M12 and M16 (root diameter d - 1.22687 p, ISO 724 with the root of ISO 68-1, from memory).
func TestNurseryTray(t *testing.T) {
	r := one(t, trayA(), part.Vec{Z: -3})
	near(t, "even", r.EvenN, 1545, 0.6)
	near(t, "diagonal", r.DiagonalN, 3090, 2)
	for _, q := range r.Rods {
		near(t, "worst", q.TensionN, r.DiagonalN, 1e-9)
		near(t, "bending", q.BendingNMM, 0, 0)
	}
	r = one(t, trayA(), part.Vec{Y: 1, Z: -1})
	for i, thread := range []struct{ d, p float64 }{{8, 1.25}, {10, 1.5}, {12, 1.75}, {16, 2}} {
		root := thread.d - 1.22687*thread.p
		near(t, "bending", r.Rods[0].BendingNMM/(math.Pi*root*root*root/32), []float64{1360, 676, 384, 148}[i], []float64{5, 0.5, 0.5, 0.5}[i])
	}
	// F h/(2 s): 2059.4 N 300/(2 540).
	near(t, "couple", r.CoupleN, 2059.4*300/1080, 0.1)
	// To the left with the mass below: right rods pull, left rods push: 514.85 -/+ 572.1.
	near(t, "left pushes", r.Rods[0].PushN, 2*(572.06-514.85), 0.1)
	near(t, "right pulls", r.Rods[1].TensionN, 2*(572.06+514.85), 0.1)
}

// Stops at the mass centre leave the rods the weight alone; the stop has all the side force.
func TestStops(t *testing.T) {
	tray := trayA()
	z := 500.0
	tray.StopZMM = &z
	r := one(t, tray, part.Vec{X: 3, Y: 4, Z: -1})
	near(t, "stop", r.StopN, 5*210*gravity, 1e-6)
	for _, q := range r.Rods {
		near(t, "rod", q.TensionN, 210*gravity/2, 1e-6)
		near(t, "side", q.SideN, 0, 0)
	}
}

// A cantilever has twice the moment of a guided rod; a lift pushes.
func TestOneHeldAndUp(t *testing.T) {
	tray := trayA()
	a := one(t, tray, part.Vec{X: 1})
	tray.Ends = OneHeld
	near(t, "F L", one(t, tray, part.Vec{X: 1}).Rods[0].BendingNMM, 2*a.Rods[0].BendingNMM, 1e-9)
	up := one(t, trayA(), part.Vec{Z: 1})
	near(t, "push", up.Rods[0].PushN, 210*gravity/2, 1e-9)
	near(t, "no pull", up.Rods[0].TensionN, 0, 0)
}

// Mirror and linearity.
func TestProperties(t *testing.T) {
	r := rand.New(rand.NewSource(1))
	for range 500 {
		tray := trayA()
		tray.At = part.Vec{X: 1700 + 50*r.NormFloat64(), Y: 50 * r.NormFloat64(), Z: 500}
		g := part.Vec{X: r.NormFloat64(), Y: r.NormFloat64(), Z: -1}
		a, b := one(t, tray, g), one(t, tray, g.Scale(2))
		flip := tray
		flip.At.Y = -tray.At.Y
		c := one(t, flip, part.Vec{X: g.X, Y: -g.Y, Z: g.Z})
		for i := range a.Rods {
			near(t, "twice", b.Rods[i].TensionN, 2*a.Rods[i].TensionN, 1e-6)
			near(t, "mirror", c.Rods[i^1].TensionN, a.Rods[i].TensionN, 1e-6)
			near(t, "mirror, side", c.Rods[i^1].SideN, a.Rods[i].SideN, 1e-6)
		}
	}
}

// 60 x 60 x 6 for M12 is what the trade says; 25 x 2 is not. Floors: 530 in2, 400 in2 over 1.0 m.
func TestRules(t *testing.T) {
	w, err := Washers([]Washer{{"good", 12, 60, 6, true, true, true}, {"bad", 12, 25, 2, true, false, true}, {"least", 12, 48, 6, false, false, false}})
	if err != nil {
		t.Fatal(err)
	}
	want := []finding.Verdict{finding.Pass, finding.Pass, finding.Pass, finding.Fail, finding.Fail, finding.Fail, finding.Fail, finding.Pass}
	for i, f := range w {
		if f.Verdict != want[i] || f.Source != practice {
			t.Errorf("%+v", f)
		}
	}
	q, err := Tanks([]Tank{{"low", 600, 0.34e6, true}, {"tall", 1100, 0.27e6, false}})
	if err != nil {
		t.Fatal(err)
	}
	for i, v := range []finding.Verdict{finding.Pass, finding.Pass, finding.Fail, finding.Fail} {
		if q[i].Verdict != v {
			t.Errorf("%+v", q[i])
		}
	}
	near(t, "0.34 m2", q[0].Need/1e6, 0.34, 0.005)
	near(t, "0.26 m2", q[2].Need/1e6, 0.26, 0.005)
}

func TestRefused(t *testing.T) {
	nan := math.NaN()
	for field, spoil := range map[string]func(t *Tray, c *Case){
		"tray.name":         func(t *Tray, c *Case) { t.Name = "" },
		"tray.mass_kg":      func(t *Tray, c *Case) { t.MassKG = -1 },
		"tray.at_mm.y":      func(t *Tray, c *Case) { t.At.Y = nan },
		"tray.beam_z_mm":    func(t *Tray, c *Case) { t.BeamZMM = math.Inf(1) },
		"tray.free_mm":      func(t *Tray, c *Case) { t.FreeMM = 0 },
		"tray.ends":         func(t *Tray, c *Case) { t.Ends = "" },
		"tray.stop_z_mm":    func(t *Tray, c *Case) { t.StopZMM = &nan },
		"tray.rods":         func(t *Tray, c *Case) { t.Rods = t.Rods[:1] },
		"tray.rods[1].x_mm": func(t *Tray, c *Case) { t.Rods[1].XMM = nan },
		"tray.rods[2].name": func(t *Tray, c *Case) { t.Rods[2].Name = "fl" },
		"cases[0].g.z":      func(t *Tray, c *Case) { c.G.Z = 1e9 },
		"cases[0].level":    func(t *Tray, c *Case) { c.Level = "x" },
		"cases[0].name":     func(t *Tray, c *Case) { c.Name = "" },
	} {
		tray, c := trayA(), Case{Name: "c", Level: part.Service, G: part.Vec{Z: -1}}
		spoil(&tray, &c)
		_, err := Loads(tray, []Case{c})
		if f := part.Fields(err); len(f) != 1 || f[0].Field != field {
			t.Errorf("want %s, got %v", field, err)
		}
	}
	line := trayA()
	for i := range line.Rods {
		line.Rods[i].YMM = 0
	}
	if _, err := Loads(line, []Case{{Name: "c", Level: part.Service, G: part.Vec{Y: 1, Z: -1}}}); len(part.Fields(err)) != 1 {
		t.Errorf("rods in one line under a couple: %v", err)
	}
	if _, err := Washers([]Washer{{"w", nan, 1, 1, false, false, false}}); len(part.Fields(err)) != 1 {
		t.Errorf("%v", err)
	}
	if _, err := Tanks([]Tank{{"t", 1, math.Inf(1), false}}); len(part.Fields(err)) != 1 {
		t.Errorf("%v", err)
	}
}
