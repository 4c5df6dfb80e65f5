package strength_test

// Stiffeners under an angle's leg: what counts, and about what it bends. By statics on the clevis kind.

import (
	"math"
	"strings"
	"testing"

	"lugwright/part"
	"lugwright/strength"
)

// ribbed is a fork with bare ears of 8 x 100 on an angle 120 x 80 x 10 without root radius, 300 long, its middle 43 from the web, on
// square stiffeners of 60 x 60 x 10 with a snipe of 3.
var ribbed = with(bare, mm("angle_root_radius", 0), mm("angle_length", 300), mm("stiffener_reach", 60), mm("stiffener_depth", 60), mm("stiffener_nose", 60),
	mm("snipe_clearance", 3), mm("bolts_per_row", 2), mm("bolt_pitch", 150), word("pin_ends", "keeper"))

// tee is how far the centroid of a flange of 10 mm, with a web of 10 x 57 whose top is 3 mm under it, lies below the flange's plane.
func tee(flange float64) float64 { return 570 * (5 + 3 + 28.5) / (10*flange + 570) }

// A pull outboard at 90 mm over a leg with two stiffeners, 80 apart: each takes F/2 in the flange's plane, 5 mm down, and F 95/2 about
// it; about the rib's own centroid, e below, that is F (95 + e)/2, for both pull the upper side. Push and pull are alike.
func TestRibBendsAboutItsOwnCentroid(t *testing.T) {
	const F = 6000.0
	half := func(b0 float64) float64 { return 5 + strength.ShearLag(b0-5, 43)*(b0-5) }
	e := tee(half(40) + half(150-40))
	for _, force := range []float64{F, -F} {
		b := clevisOf(t, part.LeftHand, with(ribbed, mm("stiffener_count", 2), mm("stiffener_spacing", 80)))
		c := find(t, run(t, b, strength.Options{}, service("side", part.Vec{Y: force})), "weak-axis-bending", "base.a")
		if !strings.Contains(c.Place, "stiffener-") {
			t.Errorf("governed by %s", c.Place)
		}
		within(t, "moment on a rib", c.Demand, F/2*(95+e), 1e-4)
	}
}

// Stiffeners that the load has not spread to do not count: moved beyond the ears' ends and the spread of 30 degrees they leave the leg as
// it is without any.
func TestFarStiffenersDoNotCount(t *testing.T) {
	used := func(more ...part.Param) float64 {
		b := clevisOf(t, part.LeftHand, with(ribbed, more...))
		return find(t, run(t, b, strength.Options{}, service("side", part.Vec{Y: 6000})), "weak-axis-bending", "base.a").Utilisation
	}
	none, far, near := used(mm("stiffener_count", 0)), used(mm("stiffener_count", 2), mm("stiffener_spacing", 220)), used(mm("stiffener_count", 2), mm("stiffener_spacing", 80))
	within(t, "far stiffeners", far, none, 1e-9)
	if !(near < none/2) {
		t.Errorf("stiffeners under the ears: %.3f, none: %.3f", near, none)
	}
}

// One stiffener alone takes all of it: F (95 + e), and its weld to the bolted leg is checked.
func TestSingleStiffener(t *testing.T) {
	const F = 6000.0
	half := 5 + strength.ShearLag(150-5, 43)*(150-5)
	e := tee(2 * half)
	b := clevisOf(t, part.LeftHand, with(ribbed, mm("stiffener_count", 1)))
	r := run(t, b, strength.Options{}, service("side", part.Vec{Y: F}))
	within(t, "moment", find(t, r, "weak-axis-bending", "base.a").Demand, F*(95+e), 1e-4)
	within(t, "axial force", find(t, r, "axial-force", "base.a").Demand, F, 1e-9)
	found := false
	for _, c := range r.Checks {
		found = found || c.Limit == "fillet-strength" && strings.Contains(c.Place, "w-stiffener-1-b, root of the rib") && c.Demand > 0
	}
	if !found {
		t.Error("the stiffener's root weld is not checked")
	}
}

// The weld that roots a stiffener has its part of the axial force, all the shear and its part of the bending, each the way it turns: P down and
// F outboard at 43 mm from the web over a rib cut 21 mm from it, whose web of 10 x 57 has its centroid 41.5 below the leg's top. Its weld on the
// bolted leg is 46 mm long on both faces and has its own 47 below, 11 mm further in. Pressed to the rail by n, 5.5 above the weld's middle, which
// turns against its own bending m and the shear on 11 mm. Both hands alike.
func TestRootOfARib(t *testing.T) {
	const P, F = 9000.0, 6000.0
	half := 5 + strength.ShearLag(150-5, 43)*(150-5)
	e, flange := tee(2*half), 20*half
	arm := 36.5 - e
	I := 2*half*1000/12 + flange*e*e + 10*57*57*57/12.0 + 570*arm*arm
	M := 22*P + F*(95+e)
	n, m := M*arm*570/I-F*570/(flange+570), M*10*57*57*57/12/I
	want := math.Hypot(n/92+math.Abs(5.5*n-11*P-m)/(2*46*46/6.0), P/92)
	for _, hand := range []part.Hand{part.LeftHand, part.RightHand} {
		b := clevisOf(t, hand, with(ribbed, mm("angle_root_radius", 11), mm("stiffener_count", 1)))
		b.Pins[0].TravelMM = 0
		outboard := F
		if hand == part.RightHand {
			outboard = -F
		}
		found := false
		for _, c := range run(t, b, strength.Options{}, service("down", part.Vec{Y: outboard, Z: -P})).Checks {
			if c.Limit == "fillet-strength" && strings.Contains(c.Place, "w-stiffener-1-b, root of the rib") {
				within(t, "root of the rib, "+string(hand), c.Demand, want, 1e-3)
				found = true
			}
		}
		if !found {
			t.Error("no root of the rib")
		}
	}
}

// The job is told where stiffeners stand beyond the ears, since the leg between is not cut along the rail.
func TestStiffenersBeyondTheEarsAreSaid(t *testing.T) {
	said := func(spacing float64) bool {
		for _, u := range clevisOf(t, part.LeftHand, with(ribbed, mm("stiffener_count", 2), mm("stiffener_spacing", spacing))).Unchecked {
			if strings.Contains(u, "from the ears to the stiffeners") {
				return true
			}
		}
		return false
	}
	if said(96) || !said(220) {
		t.Errorf("under the ears %v, beyond them %v", said(96), said(220))
	}
}
