package strength_test

// A tube that spans between two rails, by statics of beams.

import (
	"math"
	"strings"
	"testing"

	"lugwright/part"
	"lugwright/strength"
)

const (
	tubeSpan = 800.0
	tubeAt   = 200.0 // the load, from the first end
	tubeUp   = 100.0 // and over the axis
)

// spanning is a round tube of 88.9 x 8 along -y from 400 to -400. Sections are cut from the load to either end, and in the last millimetre alone.
func spanning() *part.Bracket {
	foot := part.Vec{Y: tubeSpan/2 - tubeAt}
	load := foot.Add(part.Vec{Z: tubeUp})
	ends := [2]part.Vec{{Y: tubeSpan / 2}, {Y: -tubeSpan / 2}}
	b := &part.Bracket{
		Name: "spanning", Kind: "test", Hand: part.LeftHand,
		Members: []part.Member{{ID: "tube", Name: "tube", Material: "S355", LengthMM: tubeSpan, Profile: part.Profile{Kind: part.RoundTube, AMM: 88.9, TMM: 8},
			Pose: part.Pose{Origin: ends[0], U: part.Vec{Y: -1}, V: part.Vec{X: 1}}}},
		LoadPoints: []part.LoadPoint{{ID: "p", At: load}},
		Shares:     []part.Share{{ID: "ends", Rule: part.ByBeamSpan, Legs: 2, Beam: "tube", Ends: ends}},
	}
	for i, name := range []string{"first", "second"} {
		b.Supports = append(b.Supports, part.Support{ID: name, Kind: part.RailWeb, ThicknessMM: 6, Material: "S355", ClearMM: 188, Couple: part.CoupleByTurning})
		last := ends[i].AddScaled(1, foot.Sub(ends[i]).Unit())
		b.Sweeps = append(b.Sweeps,
			part.Sweep{ID: name + " part", Things: []string{"tube"}, From: foot, To: ends[i]},
			part.Sweep{ID: name + " end", Things: []string{"tube"}, From: last, To: ends[i]})
	}
	for _, c := range part.Components() {
		p := part.Path{LoadPoint: "p", Component: c}
		for i, name := range []string{"first", "second"} {
			p.Branches = append(p.Branches, part.Branch{Share: "ends", Leg: i, At: load, Through: []string{"tube", name}})
		}
		b.Paths = append(b.Paths, p)
	}
	return b
}

// Down at a = 200 of l = 800: with ends that turn P a b/l at the load, in both parts; with one end held P a b (l + b)/(2 l^2) there, the worst that either
// end can see (AISC Manual Table 3-23, cases 8 and 14, from memory). Rearward the same the other way of the section. The first end takes at most
// P b/l + that moment/l of the shear.
func TestBeamBetweenRails(t *testing.T) {
	const P, a, b, l = 10000.0, tubeAt, tubeSpan - tubeAt, tubeSpan
	held1, held2 := P*a*b*(l+b)/(2*l*l), P*a*b*(l+a)/(2*l*l)
	down := run(t, spanning(), strength.Options{}, service("down", part.Vec{Z: -P}))
	for place, want := range map[string]float64{"first part": P * a * b / l, "second part": P * a * b / l, "first end": held1, "second end": held2} {
		within(t, "down, "+place, placed(t, down, "weak-axis-bending", place).Demand, want, 2e-3)
	}
	back := run(t, spanning(), strength.Options{}, service("back", part.Vec{X: P}))
	within(t, "rearward, at the load", placed(t, back, "edgewise-bending", "second part").Demand, P*a*b/l, 1e-4)
	within(t, "rearward, first end", placed(t, back, "edgewise-bending", "first end").Demand, held1, 2e-3)
	in := 88.9 - 16
	area, torsion := math.Pi/4*(88.9*88.9-in*in), math.Pi/16*(math.Pow(88.9, 4)-math.Pow(in, 4))/88.9
	within(t, "rearward, shear and all the twist at the first end", placed(t, back, "section-shear", "first end").Demand,
		(P*b/l+held1/l)/(area/2)+P*tubeUp/torsion, 1e-4)
	within(t, "rearward, shear and all the twist at the second end", placed(t, back, "section-shear", "second end").Demand,
		(P*a/l+held2/l)/(area/2)+P*tubeUp/torsion, 1e-4)
	governs := placed(t, back, "section-shear", "first end").Sharing
	if governs != "tube: x first held, z both ends turn, twist to first, thrust to first" {
		t.Errorf("governed by %q", governs)
	}
}

// Along the tube: all the thrust at either end, pushing the first part or pulling the second; 100 mm over the axis a couple too, which with ends that turn
// bends the longer part by C b/l. Between ends held sideways the pushed part buckles by AISC 360-22 E3 with half the span as a cantilever, K = 2.1.
func TestThrustBetweenRails(t *testing.T) {
	const P, b, l = 5000.0, tubeSpan - tubeAt, tubeSpan
	r := run(t, spanning(), strength.Options{Method: strength.ASD}, service("along", part.Vec{Y: P}))
	d, in := 88.9, 72.9
	area, radius := math.Pi/4*(d*d-in*in), math.Sqrt(d*d+in*in)/4
	euler := math.Pi * math.Pi * 29000 * 6.894757 / math.Pow(2.1*l/2/radius, 2)
	for place, stress := range map[string]float64{"first part": math.Pow(0.658, 355/euler) * 355, "second part": 355} {
		k := placed(t, r, "axial-force", place)
		within(t, place, k.Demand, P, 1e-9)
		within(t, place+", capacity", k.Capacity, stress*area/1.67, 1e-4)
	}
	within(t, "couple", placed(t, r, "weak-axis-bending", "second part").Demand, P*tubeUp*b/l, 1e-4)
}

// What the two ends take of any load is that load, in the first state and in the last.
func TestBeamCarriesAll(t *testing.T) {
	for _, high := range []bool{false, true} {
		c := part.Case{Name: "any", Level: part.Service, Force: part.Vec{X: 1000, Y: -2000, Z: 3000}, Moment: part.Vec{X: 4e5, Y: 5e5, Z: -6e5}}
		got, err := strength.Carry(spanning(), c, high, "first", "second", "tube")
		if err != nil {
			t.Fatal(err)
		}
		f, m := got[0].Force.Add(got[1].Force), got[0].Moment.Add(got[1].Moment)
		if f.Sub(c.Force).Norm() > 1e-9 || m.Sub(c.Moment).Norm() > 1e-6 || got[2].Force.Sub(f).Norm() > 1e-9 {
			t.Errorf("high %t: %v and %v of %v and %v", high, f, m, c.Force, c.Moment)
		}
	}
}

func TestBeamsRefused(t *testing.T) {
	for field, spoil := range map[string]func(b *part.Bracket){
		"shares[0].beam":          func(b *part.Bracket) { b.Shares[0].Beam = "rail" },
		"shares[0].ends_mm":       func(b *part.Bracket) { b.Shares[0].Ends[1].X = 30 },
		"paths[0].branches[0].at": func(b *part.Bracket) { b.Paths[0].Branches[0].At.Y = 401 },
		"paths[2].branches[0].thr": func(b *part.Bracket) {
			b.Paths[2].Branches = b.Paths[2].Branches[:1]
			b.Paths[2].Branches[0].Share = ""
		},
	} {
		b := spanning()
		spoil(b)
		found := false
		for _, f := range part.Fields(b.Validate()) {
			found = found || strings.HasPrefix(f.Field, field)
		}
		if !found {
			t.Errorf("%s is accepted: %v", field, b.Validate())
		}
	}
}
