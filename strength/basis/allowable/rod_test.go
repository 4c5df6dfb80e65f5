package allowable

import (
	"math"
	"testing"

	"lugwright/strength"
)

func at(t *testing.T, l strength.Evaluator, values ...float64) *strength.Calc {
	t.Helper()
	f, err := Basis().Card.FactorValues("", nil)
	if err != nil {
		t.Fatal(err)
	}
	c := &strength.Calc{Trace: true, Method: strength.Allowable, Factors: f}
	var in [][]float64
	for _, v := range values {
		in = append(in, []float64{v})
	}
	if err := l.FromNumbers(c, in); err != nil {
		t.Fatal(err)
	}
	return c
}

// A tray of 210 kg on four rods 140 mm long under 1 g to the side: our own arithmetic, 384 MPa on M12, 148 on M16. With one end held the
// bending is twice as great, with tension it adds, pressed it grows.
func TestRodStress(t *testing.T) {
	V := 210 * 9.80665 / 4
	for _, rod := range []struct{ d, p, stress float64 }{{12, 1.75, 384}, {16, 2, 148}} {
		c := at(t, rodCombined, 0, V, 140, 0, rod.d, rod.p, 240, 400)
		if math.Abs(c.Demand/rod.stress-1) > 0.005 || c.Verdict != strength.Fail {
			t.Errorf("M%g: %.0f MPa, %s", rod.d, c.Demand, c.Verdict)
		}
		held := at(t, rodCombined, 0, V, 140, 1, rod.d, rod.p, 240, 400)
		pulled := at(t, rodCombined, 1000, V, 140, 0, rod.d, rod.p, 240, 400)
		pressed := at(t, rodCombined, -1000, V, 140, 0, rod.d, rod.p, 240, 400)
		if math.Abs(held.Demand-2*c.Demand) > 1e-9 || pulled.Demand <= c.Demand || pressed.Demand <= pulled.Demand {
			t.Errorf("M%g: %g plain, %g one end held, %g pulled, %g pressed", rod.d, c.Demand, held.Demand, pulled.Demand, pressed.Demand)
		}
	}
	if c := at(t, rodTension, 3*210*9.80665, 4, 2, 12, 1.75, 240, 400); math.Abs(c.Demand*83.24-3089) > 2 {
		t.Errorf("two rods of four: %g MPa", c.Demand)
	}
	if c := at(t, rodCombined, -20000, 0, 1000, 0, 12, 1.75, 240, 400); c.Verdict != strength.Outside {
		t.Errorf("over Euler's force: %s", c.Verdict)
	}
}

// Elastic ring under a line of contact: 6 P R/(pi b t^2) and the thrust; a beam stress adds.
func TestSaddleRing(t *testing.T) {
	be := 60 + 1.56*math.Sqrt(50*4)
	want := 6*10000*50/math.Pi/(be*16) + 5000/(be*4)
	c := at(t, saddleRing, 10000, 104, 4, 60, 0.01, 0, 0, 300, 450)
	if math.Abs(c.Demand/want-1) > 0.01 {
		t.Errorf("%g MPa, want %g", c.Demand, want)
	}
	if more := at(t, saddleRing, 10000, 104, 4, 60, 0.01, 0, 50, 300, 450); math.Abs(more.Demand-c.Demand-50) > 1e-9 {
		t.Errorf("with 50 MPa along: %g after %g", more.Demand, c.Demand)
	}
}

// A square frame has 3 P b/16 under the bolt; a sleeve its mean stress; a slender strut Euler's force over n_u, a stocky one its yield over n_u.
func TestTubeClampAndStrut(t *testing.T) {
	if c := at(t, tubeClamp, 8000, 0, 54, 54, 4, 40, 0, 0, 300, 450); math.Abs(c.Demand-6*8000*50*3/16.0/(50*16)) > 1e-9 {
		t.Errorf("square frame: %g MPa", c.Demand)
	}
	if c := at(t, tubeClamp, 8000, 0, 54, 54, 4, 40, 20, 12, 300, 450); math.Abs(c.Demand-8000/(math.Pi/4*(400-144))) > 1e-9 {
		t.Errorf("sleeve: %g MPa", c.Demand)
	}
	if c := at(t, strut, 0, 2000, 10, 400, 200000, 250); math.Abs(c.Capacity-math.Pi*math.Pi*200000*400/40000/4) > 1e-6 {
		t.Errorf("slender strut: %g N", c.Capacity)
	}
	if c := at(t, strut, 0, 0, 10, 400, 200000, 250); math.Abs(c.Capacity-250*400/4) > 1e-9 {
		t.Errorf("no length: %g N", c.Capacity)
	}
}
