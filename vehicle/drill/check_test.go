package drill

import (
	"math"
	"reflect"
	"slices"
	"strings"
	"testing"

	"lugwright/part"
	"lugwright/vehicle/finding"
)

// rail is 200 x 70 x 6 with its top at 960: the web's middle is at 860, its flat from 766 to 954 where the bends are square.
func rail(side Side, list ...NewHole) Rail {
	return Rail{
		Side: side, TopZMM: 960, DepthMM: 200, ThicknessMM: 6, FromMM: 0, ToMM: 5000, New: list,
		Holes: []Hole{{"h1", 3600, 860, 13.5}, {"h2", 3000, 900, 20}},
		Zones: []Zone{
			{Name: "cm3", Kind: CrossMember, FromMM: 3300, ToMM: 3400},
			{Name: "harness", Kind: KeepOut, FromMM: 3700, ToMM: 3900, BottomMM: 900, TopMM: 950},
			{Name: "hanger", Kind: LoadPoint, FromMM: 3150, ToMM: 3250, BottomMM: 760, TopMM: 860},
			{Name: "plate", Kind: Reinforcement, FromMM: 4000, ToMM: 4400},
		},
	}
}

func hole(name string, x, z, d float64) NewHole {
	return NewHole{Name: name, Face: Web, XMM: x, ZMM: z, DiaMM: d, BoltMM: d - 1}
}

func run(t *testing.T, r Rail, ids ...string) *Report {
	t.Helper()
	var list []Guide
	for _, id := range ids {
		g, ok := GuideByID(id)
		if !ok {
			t.Fatalf("no guide %q", id)
		}
		list = append(list, g)
	}
	rep, err := Check([]Rail{r}, list)
	if err != nil {
		t.Fatal(err)
	}
	return rep
}

func find(t *testing.T, r *Report, at, rule string) finding.Finding {
	t.Helper()
	for _, f := range r.Findings {
		if strings.HasSuffix(f.At, at) && f.Rule == rule {
			return f
		}
	}
	t.Fatalf("no finding on %s at %s: %+v", rule, at, r.Findings)
	return finding.Finding{}
}

func want(t *testing.T, f finding.Finding, v finding.Verdict, had, need float64) {
	t.Helper()
	if f.Verdict != v || math.Abs(f.Had-had) > 1e-9 || math.Abs(f.Need-need) > 1e-9 {
		t.Errorf("%s, %s: %s, had %g need %g; want %s, %g, %g", f.At, f.Rule, f.Verdict, f.Had, f.Need, v, had, need)
	}
}

// Guide A as printed: 1.5 in from the flange's inside, 1.0 in between edges up to 0.625 in, else 1.5 times the larger hole, at most 0.75 in,
// three in a vertical line, 0.5 in off reinforcement edges.
func TestGuideA(t *testing.T) {
	r := run(t, rail(Left, hole("b1", 3560, 860, 13.5), hole("b2", 3560, 816, 13.5), hole("b3", 3560, 910, 22), hole("b4", 3562, 780, 13.5), hole("b5", 4010, 860, 13.5)), "a")
	// b1: middle of the web, 94 to the flange's inside, less 6.75.
	want(t, find(t, r, "b1", "distance from the flange"), finding.Pass, 87.25, 38.1)
	// b2 at 816: 816 - 766 - 6.75 = 43.25; b4 at 780: 7.25.
	want(t, find(t, r, "b2", "distance from the flange"), finding.Pass, 43.25, 38.1)
	want(t, find(t, r, "b4", "distance from the flange"), finding.Fail, 7.25, 38.1)
	// b1: existing h1 is 40 off, 26.5 between edges, b2 44, 30.5; b3 50 off, 50 - 17.75 = 32.25 against 1.5 22 = 33: the least margin.
	want(t, find(t, r, "b1", "distance from edge to edge"), finding.Fail, 32.25, 33)
	want(t, find(t, r, "b3", "largest hole"), finding.Fail, 22, 19.05)
	want(t, find(t, r, "b1", "largest hole"), finding.Pass, 13.5, 19.05)
	want(t, find(t, r, "b1", "holes in a vertical line"), finding.Fail, 4, 3)
	// b5 is 10 mm inside the reinforcement's end at 4000: 10 - 6.75.
	want(t, find(t, r, "b5", reinforcementRule), finding.Fail, 3.25, 12.7)
	want(t, find(t, r, "b1", reinforcementRule), finding.Pass, 4000-3560-6.75, 12.7)
	if !slices.ContainsFunc(r.Remarks, func(s string) bool { return strings.Contains(s, "2nd hand") }) || r.Overrule != Overrules {
		t.Errorf("remarks: %q", r.Remarks)
	}
	if !slices.ContainsFunc(r.Silent, func(f finding.Finding) bool { return f.Rule == crossMemberRule && f.Verdict == finding.NotCovered }) {
		t.Errorf("silence is not listed: %+v", r.Silent)
	}
}

// Guide B: holes to 15, pitch 50, 62 from the flange in the reading that asks most, none at load points, cross members and reinforcements.
func TestGuideB(t *testing.T) {
	r := run(t, rail(Right, hole("b1", 3550, 860, 13.5), hole("b2", 3500, 830, 13.5), hole("b3", 3350, 860, 16), hole("b4", 3200, 850, 13.5), hole("b5", 2000, 810, 13.5)), "b")
	want(t, find(t, r, "b1", "pitch"), finding.Pass, 50, 50)
	want(t, find(t, r, "b3", "largest hole"), finding.Fail, 16, 15)
	want(t, find(t, r, "b3", "off profile changes"), finding.Fail, -58, 0)
	want(t, find(t, r, "b4", "off load points"), finding.Fail, -16.75, 0)
	want(t, find(t, r, "b1", "distance from the flange"), finding.Pass, 87.25, 62)
	// 830: 70 above the lower face; 830 - 766 - 6.75 = 57.25 from the inside, 70 from the outer face to the centre.
	f := find(t, r, "b2", "distance from the flange")
	want(t, f, finding.Fail, 57.25, 62)
	if !strings.Contains(f.Words, "would be 70 mm and pass") {
		t.Errorf("the other reading is not told: %q", f.Words)
	}
	// 810: 50 above the lower face: fails in every reading.
	if f := find(t, r, "b5", "distance from the flange"); f.Verdict != finding.Fail || strings.Contains(f.Words, "would") {
		t.Errorf("%+v", f)
	}
}

// Guide C binds the bracket: 200 from a cross member, 50 from the rail's corner, 200 from a reinforcement's edge.
func TestGuideC(t *testing.T) {
	r := rail(Left, NewHole{Name: "b1", Face: Web, XMM: 3640, ZMM: 860, DiaMM: 13.5, Bracket: "clevis"}, hole("loose", 3500, 860, 13.5))
	r.Brackets = []Bracket{{"clevis", 3590, 3710, 830, 920}}
	rep := run(t, r, "c")
	want(t, find(t, rep, "bracket clevis", crossMemberRule), finding.Fail, 190, 200)
	want(t, find(t, rep, "bracket clevis", reinforcementRule), finding.Pass, 290, 200)
	f := find(t, rep, "bracket clevis", cornerRule)
	want(t, f, finding.Fail, 40, 50)
	if !strings.Contains(f.Words, "it passes if") {
		t.Errorf("the other reading is not told: %q", f.Words)
	}
	f = find(t, rep, "hole loose", crossMemberRule)
	want(t, f, finding.Fail, 93.25, 200)
	if !strings.Contains(f.Words, "no bracket is stated") {
		t.Errorf("%q", f.Words)
	}
	for _, f := range rep.Findings {
		if strings.HasSuffix(f.At, "hole b1") && f.Rule == crossMemberRule {
			t.Errorf("the bracket's own hole is held against a rule on brackets: %+v", f)
		}
	}
	r.Zones = append(r.Zones, Zone{Name: "kick-up", Kind: ProfileChange, FromMM: 3720, ToMM: 3800})
	want(t, find(t, run(t, r, "c"), "bracket clevis", cornerRule), finding.Fail, 10, 50)
}

// The US rule and the others on flanges; the Australian summary on fit.
func TestFlangesAndFit(t *testing.T) {
	r := run(t, rail(Left, NewHole{Name: "f", Face: TopFlange, XMM: 2000, DiaMM: 13}, hole("b", 2000, 860, 13), NewHole{Name: "wide", Face: Web, XMM: 2200, ZMM: 860, DiaMM: 14, BoltMM: 12},
		NewHole{Name: "unknown", Face: Web, XMM: 2400, ZMM: 860, DiaMM: 14}), "us", "au")
	if f := find(t, r, "hole f", webRule); f.Verdict != finding.Fail || f.Source != "49 CFR 393.201(e)" {
		t.Errorf("%+v", f)
	}
	if f := find(t, r, "hole b", webRule); f.Verdict != finding.Pass {
		t.Errorf("%+v", f)
	}
	want(t, find(t, r, "hole b", overBoltRule), finding.Pass, 1, 1)
	want(t, find(t, r, "hole wide", overBoltRule), finding.Fail, 2, 1)
	if f := find(t, r, "hole unknown", overBoltRule); f.Verdict != finding.NotCovered {
		t.Errorf("%+v", f)
	}
}

func TestSurveyRules(t *testing.T) {
	r := rail(Left, hole("k", 3800, 890, 13.5), hole("over", 3610, 860, 13.5), hole("out", 4998, 860, 13.5), hole("low", 2000, 775, 13.5))
	r.InsideRadiusMM = 10
	rep := run(t, r, "a")
	// 900 - 890 - 6.75 = 3.25 under the harness.
	want(t, find(t, rep, "hole k", "clear of keep-out"), finding.Pass, 3.25, 0)
	want(t, find(t, rep, "hole over", "clear of other holes"), finding.Fail, -3.5, 0)
	want(t, find(t, rep, "hole low", "on the flat of the web, clear of the flange radius"), finding.Fail, 775-760-6.75-16, 0)
	if f := find(t, rep, "hole out", "surveyed"); f.Verdict != finding.NotCovered {
		t.Errorf("%+v", f)
	}
	bare := Rail{Side: Right, TopZMM: 960, DepthMM: 200, ThicknessMM: 6, ToMM: 5000, New: []NewHole{hole("b", 100, 860, 13)}}
	if f := find(t, run(t, bare, "a"), "right rail", "survey"); f.Verdict != finding.NotCovered {
		t.Errorf("%+v", f)
	}
}

// A bolt that passes an existing hole where it is: nothing is drilled. 12.5 mm bolt in the 13.5 mm hole, 0.5 mm off; at 0.6 mm it does not pass.
func TestExistingHole(t *testing.T) {
	r := run(t, rail(Left, hole("b", 3600.5, 860, 13.5), hole("c", 2999, 900, 13)), "a", "au")
	if f := find(t, r, "hole b", "existing hole"); f.Verdict != finding.Pass || !strings.Contains(f.Words, "h1") {
		t.Errorf("%+v", f)
	}
	want(t, find(t, r, "hole b", overBoltRule), finding.Pass, 1, 1)
	want(t, find(t, r, "hole c", overBoltRule), finding.Fail, 8, 1) // 12 mm bolt in the 20 mm hole
	r = run(t, rail(Left, hole("b", 3600.6, 860, 13.5)), "a")
	if f := find(t, r, "hole b", "existing holes first"); f.Verdict != finding.NotCovered || !strings.Contains(f.Words, "h1") {
		t.Errorf("%+v", f)
	}
	want(t, find(t, r, "hole b", "clear of other holes"), finding.Fail, 0.6-13.5, 0)
}

// Left and right are apart: a hole of one rail is no neighbour on the other. The order is the order given, and nothing depends on chance.
func TestRailsApart(t *testing.T) {
	a, b := rail(Left, hole("b", 2000, 860, 13)), rail(Right, hole("b", 2010, 860, 13))
	b.Holes = nil
	list := Guides()
	r, err := Check([]Rail{a, b}, list)
	if err != nil {
		t.Fatal(err)
	}
	if f := find(t, r, "right rail, hole b", "pitch"); f.Verdict != finding.Pass || f.Words != "no other hole on this rail" {
		t.Errorf("%+v", f)
	}
	again, _ := Check([]Rail{a, b}, list)
	if !reflect.DeepEqual(r, again) {
		t.Error("two runs differ")
	}
	for _, f := range append(r.Findings, r.Silent...) {
		if f.At == "" || f.Rule == "" || f.Source == "" || f.Verdict == "" || f.Verdict == finding.NotCovered && f.Words == "" {
			t.Errorf("incomplete: %+v", f)
		}
	}
}

// What the source key says of each guide stays with it.
func TestGuides(t *testing.T) {
	for _, g := range Guides() {
		if g.Source == "" || g.Name == "" || len(g.Remarks) == 0 || strings.Contains(g.Source, "2nd hand") != g.SecondHand {
			t.Errorf("%+v", g)
		}
	}
	Guides()[0].Remarks[0] = "spoilt"
	if g, _ := GuideByID("a"); g.Remarks[0] == "spoilt" {
		t.Error("the shipped guides can be changed from outside")
	}
}

func TestRefused(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for field, spoil := range map[string]func(r *Rail, g *Guide){
		"rails[0].side":                func(r *Rail, g *Guide) { r.Side = "middle" },
		"rails[0].depth_mm":            func(r *Rail, g *Guide) { r.DepthMM = nan },
		"rails[0].thickness_mm":        func(r *Rail, g *Guide) { r.ThicknessMM = 101 },
		"rails[0].inside_radius_mm":    func(r *Rail, g *Guide) { r.InsideRadiusMM = -1 },
		"rails[0].to_mm":               func(r *Rail, g *Guide) { r.ToMM = r.FromMM },
		"rails[0].holes[0].z_mm":       func(r *Rail, g *Guide) { r.Holes[0].ZMM = 1000 },
		"rails[0].holes[1].name":       func(r *Rail, g *Guide) { r.Holes[1].Name = "h1" },
		"rails[0].zones[0].kind":       func(r *Rail, g *Guide) { r.Zones[0].Kind = "pipe" },
		"rails[0].zones[1].top_mm":     func(r *Rail, g *Guide) { r.Zones[1].TopMM = 1 },
		"rails[0].zones[2].from_mm":    func(r *Rail, g *Guide) { r.Zones[2].FromMM = inf },
		"rails[0].new[0].dia_mm":       func(r *Rail, g *Guide) { r.New[0].DiaMM = 0 },
		"rails[0].new[0].bolt_mm":      func(r *Rail, g *Guide) { r.New[0].BoltMM = 14 },
		"rails[0].new[0].face":         func(r *Rail, g *Guide) { r.New[0].Face = "inside" },
		"rails[0].new[0].bracket":      func(r *Rail, g *Guide) { r.New[0].Bracket = "none" },
		"rails[0].brackets[0].from_mm": func(r *Rail, g *Guide) { r.Brackets = []Bracket{{"b", nan, 1, 0, 1}} },
		"rails[0]":                     func(r *Rail, g *Guide) { r.Holes = make([]Hole, 2000) },
		"guides[0].flange_mm":          func(r *Rail, g *Guide) { g.FlangeMM = nan },
		"guides[0].source":             func(r *Rail, g *Guide) { g.Source = "" },
	} {
		r := rail(Left, hole("b", 2000, 860, 13))
		g, _ := GuideByID("a")
		spoil(&r, &g)
		_, err := Check([]Rail{r}, []Guide{g})
		found := false
		for _, f := range part.Fields(err) {
			found = found || f.Field == field
		}
		if !found {
			t.Errorf("want %s refused, got %v", field, err)
		}
	}
	for field, f := range map[string]func() error{
		"rails":         func() error { _, err := Check(nil, Guides()); return err },
		"guides":        func() error { _, err := Check([]Rail{rail(Left)}, nil); return err },
		"rails[1].side": func() error { _, err := Check([]Rail{rail(Left), rail(Left)}, Guides()); return err },
	} {
		if got := part.Fields(f()); len(got) != 1 || got[0].Field != field {
			t.Errorf("want %s, got %v", field, got)
		}
	}
}

// Guide C: 70 to 100 % of the frame's flange: 49 to 70 mm of 70.
func TestSubframe(t *testing.T) {
	for flange, want := range map[float64][2]finding.Verdict{
		48: {finding.Fail, finding.Pass}, 49: {finding.Pass, finding.Pass}, 70: {finding.Pass, finding.Pass}, 71: {finding.Pass, finding.Fail},
	} {
		f, err := Subframe(flange, 70)
		if err != nil || f[0].Verdict != want[0] || f[1].Verdict != want[1] {
			t.Errorf("%g: %+v, %v", flange, f, err)
		}
	}
	if _, err := Subframe(math.NaN(), 70); len(part.Fields(err)) != 1 {
		t.Errorf("%v", err)
	}
}

// A hole in what the survey has on the rail is never all well: where no guide speaks of such a zone, that is said. Guide B speaks of the hanger, guide A
// does not; the edge of a hole of 14 at x 3145 reaches 2 mm into it, and 3142 touches nothing.
func TestHoleInAZone(t *testing.T) {
	r := run(t, rail(Left, hole("in", 3145, 830, 14), hole("beside", 3142, 790, 14)), "a")
	if f := find(t, r, "in", "clear of what is on the rail"); f.Verdict != finding.NotCovered || !strings.Contains(f.Words, "hanger, a load point") {
		t.Errorf("%+v", f)
	}
	for _, f := range r.Findings {
		if strings.HasSuffix(f.At, "beside") && f.Rule == "clear of what is on the rail" {
			t.Errorf("%+v", f)
		}
	}
	r = run(t, rail(Left, hole("in", 3145, 830, 14)), "a", "b")
	want(t, find(t, r, "in", "off load points"), finding.Fail, -2, 0)
	for _, f := range r.Findings {
		if f.Rule == "clear of what is on the rail" {
			t.Errorf("guide B speaks of it: %+v", f)
		}
	}
}
