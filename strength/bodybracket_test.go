package strength_test

// The body-side bracket between two tubes, by statics.

import (
	"math"
	"strings"
	"testing"

	"lugwright/part"
	"lugwright/strength"
)

// worstAt is the greatest demand of a limit at places that begin so.
func worstAt(r *strength.Report, limit, place string) float64 {
	most := 0.0
	for _, c := range r.Checks {
		if c.Limit == limit && strings.HasPrefix(c.Place, place) {
			most = max(most, c.Demand)
		}
	}
	return most
}

// Plates' ends 70 before and behind the pin, each with two runs 75 long from 10 to 85 over the tubes' lower faces: their middle is 47.5 up, 107.5 over the
// pin. 12 kN rearward and 8 kN down at the pin give each tube 6 kN and 4 kN.
//
// Tubes free to turn: the couple 12 kN x 107.5 becomes 12 x 107.5/140 = 9.214 kN up behind and down before, where the 4 kN add: the front weld's 150 mm
// carry (6, 13.214) kN. Tubes that hold fixed: 6 kN x 107.5 and half of 4 kN x 70 turn each weld, whose runs have 2 x 75^3/12 about their middle.
func TestBodyBracketByHand(t *testing.T) {
	load := service("load", part.Vec{X: 12000, Z: -8000})
	free := run(t, kindOf(t, "bodybracket", mm("hold_high", 0)), strength.Options{}, load)
	within(t, "free tubes", worstAt(free, "fillet-strength", "weld w-plate-front"), math.Hypot(6000, 4000+12000*107.5/140)/150, 1e-6)
	fixed := run(t, kindOf(t, "bodybracket", mm("hold_low", 1)), strength.Options{}, load)
	turn := (6000*107.5 + 4000*70/2) * 37.5 / (2 * 75 * 75 * 75 / 12.)
	within(t, "fixed tubes", worstAt(fixed, "fillet-strength", "weld w-plate-rear"), math.Hypot(6000./150+turn, 4000./150), 1e-6)
	both := run(t, kindOf(t, "bodybracket"), strength.Options{}, load)
	within(t, "either", worstAt(both, "fillet-strength", "weld w-plate-rear"), worstAt(fixed, "fillet-strength", "weld w-plate-rear"), 1e-9)
}

// What reaches each tube is in equilibrium with the load, whatever the tubes hold: forces add up to it, and about the pin their moments to nothing.
func TestBodyBracketBalances(t *testing.T) {
	for _, form := range []string{"lug", "fork"} {
		b := kindOf(t, "bodybracket", word("form", form), mm("thickness", 14))
		f := part.Vec{X: 3000, Y: -2000, Z: 5000}
		for _, high := range []bool{false, true} {
			got, err := strength.Carry(b, service("load", f), high, "tube-front", "tube-rear")
			if err != nil {
				t.Fatal(err)
			}
			force := got[0].Force.Add(got[1].Force)
			moment := got[0].Moment.Add(got[1].Moment)
			if force.Sub(f).Norm() > 1e-6 {
				t.Errorf("%s: %v, want %v", form, force, f)
			}
			if form == "lug" && moment.Norm() > 1e-6 {
				t.Errorf("moments %v about the pin", moment)
			}
		}
	}
}

// 5 kN along the pin, 70 under where the welds begin: over the pin the plate of 20 is bent by 350 N m on a width of two pins spread at 30 degrees. Towards
// a tube that turns freely half of it bends the plate about z by 2.5 kN x 70 in the middle, and about x twists it by 2.5 kN x its depth under the section.
func TestBodyBracketSideways(t *testing.T) {
	r := run(t, kindOf(t, "bodybracket", mm("hold_high", 0)), strength.Options{}, service("side", part.Vec{Y: 5000}))
	head := weakAt(t, r, "plate head")
	within(t, "over the pin", head.Demand, 5000*70, 1e-4)
	within(t, "over the pin, capacity", head.Capacity, 345*(50+2*70/math.Sqrt(3))*20*20/4/1.67, 1e-4)
	within(t, "towards the tube", weakAt(t, r, "plate to front").Demand, 2500*70, 1e-3)
}
