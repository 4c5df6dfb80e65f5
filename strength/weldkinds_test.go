package strength_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"lugwright/geometry"
	"lugwright/geometry/fab/fabtest"
	"lugwright/geometry/kinds/doubler"
	"lugwright/geometry/kinds/lug"
	"lugwright/part"
	"lugwright/strength"
	"lugwright/strength/basis"
	"lugwright/strength/basis/aisc360"
	"lugwright/strength/basis/allowable"
	"lugwright/strength/basis/en1993"
)

const ksi = 6.894757293168361 // MPa

// through makes all welds of a bare pair of ears go through their plates.
func through(t *testing.T) *part.Bracket {
	b := clevisOf(t, part.LeftHand, bare)
	b.Pins[0].TravelMM = 0
	for i := range b.Welds {
		w := &b.Welds[i]
		w.Kind, w.LegMM = part.CJP, b.Face(w.Joins[0]).ThicknessMM
	}
	return b
}

// noSections leaves out the sweeps of the ears, so that their welds stand for themselves.
func noSections(b *part.Bracket) *part.Bracket {
	b.Sweeps = slices.DeleteFunc(b.Sweeps, func(s part.Sweep) bool { return strings.HasPrefix(s.Things[0], "ear") })
	return b
}

func on(t *testing.T, b *strength.Basis, k *part.Bracket, c part.Case, o strength.Options) *strength.Report {
	t.Helper()
	r, err := strength.Run(b, k, []part.Case{c}, o)
	if err != nil {
		t.Fatal(err)
	}
	return r
}

var bases = []*strength.Basis{aisc360.Basis(), en1993.Basis(), allowable.Basis()}

// A weld through the plate is as strong as the plate: where the section at the weld is checked the weld says which, and that section is there, with the weld's own
// load: M = 4000 N x 90 mm (x 1.5 on EN 1993).
func TestCompletePenetrationIsItsSection(t *testing.T) {
	for _, basis := range bases {
		r := on(t, basis, through(t), service("side", part.Vec{Y: 4000}), strength.Options{})
		k := find(t, r, "cjp-line", "w-ear-1")
		if k.Verdict != strength.NotApplied || !strings.Contains(k.Why, "ear-1 (ear)") {
			t.Errorf("%s: %s, %q", basis.Card.Name, k.Verdict, k.Why)
		}
		bent := slices.ContainsFunc(r.Checks, func(k strength.Check) bool {
			return k.Thing == "ear-1" && strings.HasPrefix(k.Place, "ear-1 (ear)") && (k.Verdict == strength.Pass || k.Verdict == strength.Fail) && k.Demand > 0
		})
		if !bent {
			t.Errorf("%s: no section of ear-1 is checked", basis.Card.Name)
		}
		if root := findAt(t, r, "weak-axis-bending", "ear-1 (ear)"); basis == bases[0] && !slices.ContainsFunc(root.Notes, func(n string) bool { return strings.HasPrefix(n, "stands for weld w-ear-1 too") }) {
			t.Errorf("the section does not say that it stands for the weld: %q", root.Notes)
		}
	}
	m := find(t, on(t, aisc360.Basis(), through(t), service("side", part.Vec{Y: 4000}), strength.Options{}), "weak-axis-bending", "ear-1")
	within(t, "moment at the weld", m.Demand, 360000, 1e-3)
}

// Grooves in a T pull a plate through its thickness: named, and of one face alone its backing too. Fillets are not.
func TestThroughThicknessIsNamed(t *testing.T) {
	up := service("up", part.Vec{Z: 4000})
	oneSided := through(t)
	for i := range oneSided.Welds {
		oneSided.Welds[i].BothSides = false
	}
	for name, k := range map[string]struct {
		b             *part.Bracket
		tears, backed bool
	}{"fillets": {clevisOf(t, part.LeftHand, bare), false, false}, "grooves": {through(t), true, false}, "from one face": {oneSided, true, true}} {
		r := on(t, aisc360.Basis(), k.b, up, strength.Options{})
		named := func(what string) bool {
			return slices.ContainsFunc(r.NotChecked, func(n strength.NotChecked) bool { return n.What == what })
		}
		if named("lamellar tearing") != k.tears || named("backing left in place") != k.backed {
			t.Errorf("%s: %v", name, r.NotChecked)
		}
	}
}

// Where no section is cut at the weld its own metal is checked, elastic: an ear of 8 x 100 under 4000 N at 90 mm has M/S = 360000/(100 x 64/6) = 337.5 MPa and a shear of
// 4000/800 = 5 MPa. AISC 360-22 ASD, on half the thickness, A572-50 (50 and 65 ksi): tension min(F_y 4/1.67, F_u 4/2), shear min(0.6 F_y 4/1.5, 0.6 F_u 4/2). EN 1993:
// sqrt(sigma^2 + 3 tau^2) with 1.5, against f_y. Allowable stress: the same without the 1.5, against min(F_y/1.5, F_u/4).
func TestCompletePenetrationAlone(t *testing.T) {
	side := service("side", part.Vec{Y: 4000})
	n, v := 337.5*4, 5.*4
	nc, vc := min(50*ksi*4/1.67, 65*ksi*4/2), min(0.6*50*ksi*4/1.5, 0.6*65*ksi*4/2)
	k := find(t, on(t, aisc360.Basis(), noSections(through(t)), side, strength.Options{}), "cjp-line", "w-ear-1")
	within(t, "AISC", k.Demand, math.Hypot(n/nc, v/vc), 1e-3)
	k = find(t, on(t, en1993.Basis(), noSections(through(t)), side, strength.Options{}), "cjp-line", "w-ear-1")
	within(t, "EN", k.Demand, 1.5*math.Sqrt(337.5*337.5+3*25), 1e-3)
	within(t, "EN capacity", k.Capacity, 50*ksi, 1e-9)
	k = find(t, on(t, allowable.Basis(), noSections(through(t)), side, strength.Options{}), "cjp-line", "w-ear-1")
	within(t, "allowable", k.Demand, math.Sqrt(337.5*337.5+3*25), 1e-3)
	within(t, "allowable capacity", k.Capacity, 65*ksi/4, 1e-9)
}

// A groove weld is whatever face it is drawn at: one run, from one side, is the same metal as two.
func TestCompletePenetrationFromOneSide(t *testing.T) {
	side := service("side", part.Vec{Y: 4000})
	two := find(t, on(t, aisc360.Basis(), noSections(through(t)), side, strength.Options{}), "cjp-line", "w-ear-1")
	b := noSections(through(t))
	for i := range b.Welds {
		if w := &b.Welds[i]; strings.HasPrefix(w.ID, "w-ear") {
			w.Segments, w.BothSides = w.Segments[:1], false
		}
	}
	within(t, "utilisation", find(t, on(t, aisc360.Basis(), b, side, strength.Options{}), "cjp-line", "w-ear-1").Demand, two.Demand, 1e-9)
}

// What the ear stands on is checked beside each face of it: M/(t L) = 360000/(8 x 100) = 450 and 4000/200 = 20 N/mm, under min(0.6 F_y t/1.5, 0.6 F_u t/2) of the
// angle's leg.
func TestPlateUnderCompletePenetration(t *testing.T) {
	b := through(t)
	leg, _ := b.Member("base").Legs()
	k := find(t, on(t, aisc360.Basis(), b, service("side", part.Vec{Y: 4000}), strength.Options{}), "cjp-base-metal", "w-ear-1")
	within(t, "force", k.Demand, math.Hypot(450, 20), 1e-3)
	if leg.Material != "A572-50" {
		t.Fatalf("the angle is of %s", leg.Material)
	}
	within(t, "capacity", k.Capacity, min(0.6*50*ksi*leg.ThicknessMM/1.5, 0.6*65*ksi*leg.ThicknessMM/2), 1e-6)
}

// A filler weaker than the plate does not match it (AISC 360-22 Table J2.5; EN 1993-1-8, 4.7.1): E60, 60 ksi, under 65 of A572-50. The section that the weld rests on does
// not hide that.
func TestMatchingFiller(t *testing.T) {
	for _, basis := range bases {
		for _, cut := range []bool{true, false} {
			b := through(t)
			if !cut {
				noSections(b)
			}
			for i := range b.Welds {
				b.Welds[i].Electrode = "E60"
			}
			if k := find(t, on(t, basis, b, service("side", part.Vec{Y: 400}), strength.Options{}), "cjp-line", "w-ear-1"); k.Verdict != strength.Outside {
				t.Errorf("%s, section %t: %s, %s", basis.Card.Name, cut, k.Verdict, k.Why)
			}
		}
	}
}

// A weld narrower than its plate, off the end of the sweep or with a load that the section does not see stands for itself.
func TestSectionMustBeTheWelds(t *testing.T) {
	for name, spoil := range map[string]func(b *part.Bracket){
		"narrower": func(b *part.Bracket) {
			for i := range b.Welds[0].Segments {
				s := &b.Welds[0].Segments[i]
				s.B = s.A.Add(s.B.Sub(s.A).Scale(0.9))
			}
		},
		"elsewhere": func(b *part.Bracket) {
			for i := range b.Sweeps {
				if b.Sweeps[i].Things[0] == "ear-1" {
					b.Sweeps[i].To = b.Sweeps[i].To.AddScaled(-0.1, b.Sweeps[i].To.Sub(b.Sweeps[i].From))
				}
			}
		},
	} {
		b := through(t)
		spoil(b)
		if b.Welds[0].ID != "w-ear-1" {
			t.Fatal(b.Welds[0].ID)
		}
		if k := find(t, on(t, aisc360.Basis(), b, service("side", part.Vec{Y: 400}), strength.Options{}), "cjp-line", "w-ear-1"); k.Verdict == strength.NotApplied {
			t.Errorf("%s: %s", name, k.Why)
		}
	}
}

// plugged is a doubler with a plug on each side of its hole, no couple of its force on it.
func plugged(t *testing.T) *part.Bracket {
	return fabtest.Made(t, doubler.Kind(), fabtest.Given{"plugs": 1, "couple": "wall"})
}

// Half of the wall's 40 kN goes through the plate. A half's fillet of 5 mm is 2 (80 - 20) + 20 pi + 60 mm long; beside it a plug of 16 mm has 64 pi mm2. The force runs through
// the middle of both and is shared by area; what its 3 mm off the faying plane do is left to the fillet. AISC 360-22 Table J2.5 with E70, ASD: 0.60 x 70 ksi A/2.00; and 0.60 F_u
// A/2.00 of S355 (470 MPa). EN 1993-1-8, 4.8: A f_u/(sqrt3 beta_w 1.25), beta_w 0.9, the force times 1.5.
func TestPlugsBesideAFillet(t *testing.T) {
	area, fillet := 64*math.Pi, (120+20*math.Pi+60)*5/math.Sqrt2
	force := 20000 * area / (area + fillet)
	pull := service("pull", part.Vec{X: 40000})
	r := on(t, aisc360.Basis(), plugged(t), pull, strength.Options{Method: strength.ASD})
	k := find(t, r, "plug-weld", "w-doubler")
	within(t, "force", k.Demand, force, 2e-3) // the fillet's corners are chords
	within(t, "capacity", k.Capacity, 0.6*70*ksi*area/2, 1e-6)
	within(t, "parts", find(t, r, "plug-base-metal", "w-doubler").Capacity, 0.6*470*area/2, 1e-6)
	k = find(t, on(t, en1993.Basis(), plugged(t), pull, strength.Options{}), "plug-weld", "w-doubler")
	within(t, "force, EN", k.Demand, 1.5*force, 2e-3)
	within(t, "capacity, EN", k.Capacity, area*470/(math.Sqrt(3)*0.9*1.25), 1e-6)
	k = find(t, on(t, allowable.Basis(), plugged(t), pull, strength.Options{}), "plug-weld", "w-doubler")
	within(t, "stress", k.Demand, force/area, 2e-3)
	within(t, "allowed", k.Capacity, 470/(math.Sqrt(3)*4), 1e-6)
}

// A force further off the faying plane pulls on the fillet alone: the plugs' force stays.
func TestPlugsHoldInTheirPlaneAlone(t *testing.T) {
	pull := service("pull", part.Vec{X: 40000})
	near, far := plugged(t), plugged(t)
	for i := range far.Paths {
		far.Paths[i].Branches[0].At.Z -= 20
	}
	a, b := on(t, aisc360.Basis(), near, pull, strength.Options{}), on(t, aisc360.Basis(), far, pull, strength.Options{})
	within(t, "plug", find(t, b, "plug-weld", "w-doubler").Demand, find(t, a, "plug-weld", "w-doubler").Demand, 1e-9)
	if one, two := find(t, a, "fillet-strength", "w-doubler").Demand, find(t, b, "fillet-strength", "w-doubler").Demand; two < 1.5*one {
		t.Errorf("fillet: %g N/mm, further off %g", one, two)
	}
}

// Plugs alone, 3 mm off their force, are pulled out of the faying plane: outside the rules of every basis (AISC 360-22 Table J2.5 has shear alone; EN 1993-1-8, 4.3.5(1)).
// In it they hold by themselves.
func TestPlugsAlone(t *testing.T) {
	alone := func(offMM float64) *part.Bracket {
		b := plugged(t)
		b.Welds = slices.DeleteFunc(b.Welds, func(w part.WeldGroup) bool { return w.Kind != part.Plug })
		for i := range b.Paths {
			for k := range b.Paths[i].Branches {
				br := &b.Paths[i].Branches[k]
				for n, id := range br.Through {
					br.Through[n] = strings.Replace(id, "w-doubler", "w-plugs", 1)
				}
				br.At.Z = b.Welds[0].Segments[0].A.Z + offMM
			}
		}
		return b
	}
	pull := service("pull", part.Vec{X: 40000})
	for _, basis := range bases {
		if k := find(t, on(t, basis, alone(3), pull, strength.Options{}), "plug-weld", "w-plugs"); k.Verdict != strength.Outside || !strings.Contains(k.Why, "plug") {
			t.Errorf("%s: %s, %s", basis.Card.Name, k.Verdict, k.Why)
		}
		if k := find(t, on(t, basis, alone(0), pull, strength.Options{}), "plug-weld", "w-plugs"); k.Verdict == strength.Outside {
			t.Errorf("%s: %s", basis.Card.Name, k.Why)
		}
	}
	within(t, "force", find(t, on(t, aisc360.Basis(), alone(0), pull, strength.Options{}), "plug-weld", "w-plugs").Demand, 20000, 1e-9)
}

// Rules about the legs of fillets do not apply to other welds, and say so.
func TestLegsOfOtherWelds(t *testing.T) {
	for thing, b := range map[string]*part.Bracket{"w-ear-1": through(t), "w-plugs": plugged(t)} {
		load := part.Vec{X: 400}
		for _, basis := range bases[:2] {
			if k := find(t, on(t, basis, b, service("load", load), strength.Options{}), "fillet-minimum-leg", thing); k.Verdict != strength.NotApplied || k.Why == "" {
				t.Errorf("%s: %s, %q", thing, k.Verdict, k.Why)
			}
		}
	}
}

// Aluminium has no listed filler: its groove welds and plugs are outside the rule on every basis, as its fillets are.
func TestAluminiumGroovesAndPlugs(t *testing.T) {
	for _, basis := range bases {
		for thing, b := range map[string]*part.Bracket{"w-ear-1": noSections(through(t)), "w-doubler": plugged(t)} {
			for i := range b.Plates {
				b.Plates[i].Material = "6061-T6"
			}
			for i := range b.Pins {
				for k := range b.Pins[i].Seats {
					if s := &b.Pins[i].Seats[k]; !s.Loads {
						s.Material = "6061-T6"
					}
				}
			}
			for _, k := range on(t, basis, b, service("load", part.Vec{X: 400}), strength.Options{}).Checks {
				if k.Thing == thing && (k.Verdict == strength.Pass || k.Verdict == strength.Fail) {
					t.Errorf("%s: %s of %s: %s", basis.Card.Name, k.Limit, thing, k.Verdict)
				}
			}
		}
	}
}

// Fatigue: a weld through the plate has no throat of its own, its plate is category C at the toe (44e8, AISC 360-22 Table, row 5.4, from memory), welded from one face
// alone E (11e8). A plug is category F in shear (rows 8.3 and 8.4, from memory), the plate at it E.
func TestFatigueOfGroovesAndPlugs(t *testing.T) {
	damage := func(b *part.Bracket, load part.Vec) map[string]strength.Check {
		r, err := strength.Run(aisc360.Basis(), b, []part.Case{service("none", load.Scale(0.01)), service("load", load)},
			strength.Options{Spectrum: []strength.StressCycle{{From: "none", To: "load", Cycles: 1e5}}})
		if err != nil {
			t.Fatal(err)
		}
		out := map[string]strength.Check{}
		for _, k := range r.Checks {
			if k.Fatigue {
				out[k.Place] = k
			}
		}
		return out
	}
	both := damage(through(t), part.Vec{Y: 2000})
	if _, ok := both["weld w-ear-1, weld throat"]; ok {
		t.Error("a weld through the plate has a throat")
	}
	b := through(t)
	for i := range b.Welds {
		b.Welds[i].Segments, b.Welds[i].BothSides = b.Welds[i].Segments[:1], false
	}
	one, two := damage(b, part.Vec{Y: 2000})["ear-1 (ear), weld from one face"], both["ear-1 (ear), weld toe"]
	within(t, "E over C", one.Demand/two.Demand, 4, 1e-9)
	plugs := damage(plugged(t), part.Vec{X: 200000})
	if _, ok := plugs["doubler (over the wall), plug"]; !ok {
		t.Error("no detail for the plate at its plugs")
	}
	// All of the set's shear is F: the range is that of the fillet or the plug, whichever is more.
	if k, ok := plugs["weld w-doubler and 1 more acting with it, weld throat"]; !ok || !(k.Demand > 0) {
		t.Error("no detail for the shear of the plugs")
	}
}

// Lugs on grooves and doublers on plugs under random loads, on every basis, as every kind is.
func TestGroovesAndPlugsUnderRandomLoads(t *testing.T) {
	for _, c := range []struct {
		kind  geometry.Kind
		given fabtest.Given
		has   part.WeldKind
	}{
		{lug.Kind(), fabtest.Given{"weld_kind": "complete penetration"}, part.CJP},
		{lug.Kind(), fabtest.Given{"weld_kind": "complete penetration", "foot": "base plate", "gusset_height": 40, "pin_height": 80, "plate_width": 200, "bolt_gauge": 160}, part.CJP},
		{lug.Kind(), fabtest.Given{"weld_kind": "complete penetration", "gusset_height": 40, "pin_height": 80}, part.CJP},
		{doubler.Kind(), fabtest.Given{"plugs": 1}, part.Plug},
		{doubler.Kind(), fabtest.Given{"plugs": 3, "length": 600, "couple": "wall"}, part.Plug},
	} {
		request := c.given.Request(c.kind)
		request.Hand = part.LeftHand
		left, err := geometry.Build([]geometry.Kind{c.kind}, request)
		if err != nil {
			t.Fatal(err)
		}
		request.Hand = part.RightHand
		right, err := geometry.Build([]geometry.Kind{c.kind}, request)
		if err != nil {
			t.Fatal(err)
		}
		if !slices.ContainsFunc(left.Welds, func(w part.WeldGroup) bool { return w.Kind == c.has }) {
			t.Fatalf("%s has no %s weld", c.kind.Name, c.has)
		}
		for _, b := range basis.All() {
			if b.Card.ReferenceOnly || len(b.Rules.Cut) == 0 {
				continue
			}
			for seed := range uint64(20) {
				hold(t, c.kind.Name+" on "+b.Card.Name, b, left, right, randomLoad(left, seed))
			}
		}
	}
}
