package strength_test

// Stiffeners under an angle's leg: what counts, and about what it bends. By statics on the clevis kind.

import (
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
