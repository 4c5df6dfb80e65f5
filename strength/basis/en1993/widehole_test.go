package en1993

import (
	"testing"

	"lugwright/strength"
)

// EN 1993-1-8, 3.6.1(5), from memory: M12 of 10.9, threads in its plane, in a 14 mm hole has 0.85 * 0.5 * 1000 * 84.3/1.25 = 28662 N of shear. In 12 mm of
// S355 with 40 mm to the edge alpha_b = 40/42 and bearing is 2.5*0.9524*470*12*12/1.25 = 128914 N: it may be used. In 2 mm with 17 mm to the end, alpha_b =
// 17/42 and k_1 = 2.8*17/14 - 1.7 = 1.7: 1.7*0.40476*470*12*2/1.25 = 6209 N is less, and the rule does not speak.
func TestM12In2MMClearance(t *testing.T) {
	factors, err := Basis().Card.FactorValues("", nil)
	if err != nil {
		t.Fatal(err)
	}
	bolt := strength.Bolt{D: 12, Dh: 14, Fub: 1000, FuNominal: 1000, ThreadsIn: true, Grade: "10.9", As: 84.3}
	for _, c := range []struct {
		ply  strength.BoltBearing
		want strength.Verdict
	}{
		{strength.BoltBearing{V: 5e3, D: 12, Dh: 14, T: 12, Edge: 40, Fu: 470, Bolt: bolt}, strength.Pass},
		{strength.BoltBearing{V: 5e3, D: 12, Dh: 14, T: 2, Edge: 17, Fu: 470, Bolt: bolt}, strength.Outside},
		{strength.BoltBearing{V: 5e3, D: 12, Dh: 13, T: 2, Edge: 17, Fu: 470, Bolt: strength.Bolt{D: 12, Dh: 13, Fub: 1000, FuNominal: 1000, ThreadsIn: true, Grade: "10.9", As: 84.3}}, strength.Pass},
	} {
		k := strength.Calc{Method: strength.PartialFactors, Trace: true, Factors: factors}
		bearingRules[0].Check(&k, &c.ply)
		if k.Verdict != c.want {
			t.Errorf("%+v: %s (%s), want %s", c.ply, k.Verdict, k.Why, c.want)
		}
	}
}
