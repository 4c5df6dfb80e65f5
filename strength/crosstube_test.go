package strength_test

// The cross tube kind by statics.

import (
	"math"
	"testing"

	"lugwright/geometry"
	"lugwright/part"
	"lugwright/strength"
)

// A cross tube of 800 with plates of 20, its load in the middle, 10 kN. With the near end held and the far one free to turn the tube is a cantilever of L = 760
// propped at 20 beyond its end: by the deflections of textbooks the prop takes P a^2 (3L - a + 3e)/6 over L^3/3 + e L^2 + e^2 L with a = 380 and e = 20, the
// near bolts the rest, alike, and the near weld P a less the prop's moment. A thrust of 5 kN pulls one web, pinned at its flanges, at mid-height: N h/4.
func TestCrossTubeByHand(t *testing.T) {
	const P, L, a, e = 10000.0, 760.0, 380.0, 20.0
	prop := P * a * a * (3*L - a + 3*e) / 6 / (L*L*L/3 + e*L*L + e*e*L)
	b, err := geometry.Build(reckoned(), geometry.Request{Kind: "crosstube", Name: "cross", Hand: part.LeftHand, Params: []part.Param{mm("load_height", 0)}})
	if err != nil {
		t.Fatal(err)
	}
	r := run(t, b, strength.Options{}, service("down", part.Vec{Z: -P}))
	within(t, "shear of a bolt", find(t, r, "bolt-shear", "bolts-near").Demand, (P-prop)/4, 1e-4)
	within(t, "shear of a bolt", find(t, r, "bolt-shear", "bolts-far").Demand, (P-prop)/4, 1e-4)
	within(t, "at the load", placed(t, r, "weak-axis-bending", "tube-near").Demand, P*800/4, 1e-4)
	// A ring of sixteen chords of radius R bends by N R^2/2 over its own vertices' inertia: the force per length at the top vertex, with the shear evenly.
	weld := P*a - prop*(L+e)
	length, inertia := 0.0, 0.0
	for _, s := range b.Weld("w-near").Segments {
		n := s.B.Sub(s.A).Norm()
		length += n
		inertia += n * (s.A.Z*s.A.Z + s.A.Z*s.B.Z + s.B.Z*s.B.Z) / 3
	}
	q := math.Hypot(weld*88.9/2/inertia, (P-prop)/length)
	within(t, "near weld", find(t, r, "fillet-strength", "w-near").Demand, q, 1e-4)
	along := run(t, b, strength.Options{}, service("along", part.Vec{Y: 5000}))
	within(t, "a web", find(t, along, "wall-bending", "near-rail").Demand, 5000*188/4., 1e-3)
	within(t, "the other web", find(t, along, "wall-bending", "far-rail").Demand, 5000*188/4., 1e-3)
}
