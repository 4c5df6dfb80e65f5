package clevis

import (
	"math"
	"slices"
	"testing"

	"lugwright/geometry"
	"lugwright/geometry/access"
	"lugwright/geometry/fab/fabtest"
	"lugwright/geometry/shape"
	"lugwright/part"
)

type set = fabtest.Given

// sized has the sizes by which these tests are reckoned.
func sized() geometry.Kind {
	return fabtest.Sized(Kind(), set{"lug_thickness": 20, "angle_out": 80, "clevis_offset": 43})
}

func made(t *testing.T, s set) *part.Bracket { return fabtest.Made(t, sized(), s) }

// What a builder may want of a clevis: each must build and be sound.
func TestVariants(t *testing.T) {
	for name, s := range map[string]set{
		"defaults":            {},
		"bare ears":           {"gussets": "none", "stiffener_count": 0},
		"outer only":          {"gussets": "outer"},
		"between only":        {"gussets": "between"},
		"tapered head":        {"head": "tapered"},
		"tapered, full width": {"head": "tapered", "head_radius": 50},
		"base plate":          {"foot": "base plate"},
		"base plate, along":   {"foot": "base plate", "pin_axis": "along"},
		"base plate, bare":    {"foot": "base plate", "gussets": "none", "plate_corner_radius": 0},
		"base plate, long":    {"foot": "base plate", "outer_gusset_length": 40, "plate_width": 240, "bolt_gauge": 180, "web_clear_height": 250},
		"one row at the ends": {"foot": "base plate", "bolt_rows": 1, "bolts_per_row": 2, "bolt_pitch": 160},
		"cheeks":              {"cheek_thickness": 5, "outer_gusset_height": 50, "outer_gusset_count": 1, "cheek_diameter": 50},
		"retaining bolt":      {"pin_ends": "head and retaining bolt"},
		"keeper":              {"pin_ends": "keeper"},
		"bush":                {"bush_length": 20},
		"inner runs":          {"gap": 15, "inner_run": 40, "gussets": "between", "angle_out": 100},
		"as cut":              {"finish_allowance": 0},
		"one row":             {"bolt_rows": 1, "bolt_first": 50},
		"wide leg":            {"angle_out": 120, "clevis_offset": 60, "outer_gusset_length": 36, "angle_down": 120},
		"two between":         {"between_count": 2, "between_spacing": 70, "between_height": 60, "outer_gusset_count": 3, "outer_gusset_spacing": 38, "outer_gusset_height": 60},
	} {
		t.Run(name, func(t *testing.T) { made(t, s) })
	}
}

// The field-lab demo: 8 x 100 ears 90 mm high on 120 x 80 x 10 with the 80 leg out, pin 43 mm off the web. The room outboard is
// 80 - 43 - 10 - 2 - 8 = 17 mm.
func TestFieldLab(t *testing.T) {
	b := made(t, set{
		"ear_thickness": 8, "ear_width": 100, "pin_height": 90, "angle_out": 80, "angle_down": 120, "angle_thickness": 10,
		"clevis_offset": 43, "gussets": "both", "outer_gusset_length": 17, "stiffener_count": 2,
	})
	for id, y := range map[string]float64{"ear-1": 59, "ear-2": 27} {
		p := b.Plate(id)
		h, _ := p.Hole("pin")
		if at := p.HoleAt(h); at.Sub(part.Vec{Y: y, Z: 90}).Norm() > 1e-9 {
			t.Errorf("%s: hole at %v, want y %g, z 90", id, at, y)
		}
	}
	tip := 0.0
	for i := range b.Plates {
		if p := &b.Plates[i]; p.Name == "gusset" {
			tip = max(tip, p.Pose.At(p.Outer.BBox().Max.X, 0, 0).Y)
		}
	}
	if tip != 80 {
		t.Errorf("outboard gussets reach y = %g, want the leg's tip at 80", tip)
	}
	if _, err := geometry.Build([]geometry.Kind{sized()}, set{"outer_gusset_length": 17.5}.Request(sized())); err == nil {
		t.Error("17.5 mm of gusset on 17 mm of leg was taken")
	}
}

// In a fork of 50 mm a torch of 25 x 150 mm does not reach the middle of a fillet 116 mm long on an ear's inner face; it reaches 45 mm from either end, and the
// plate between the ears. Ears are welded before plates go between them: those are in nobody's way.
func TestReachIntoTheFork(t *testing.T) {
	fork := set{
		"foot": "base plate", "gussets": "between", "pin_diameter": 30, "lug_thickness": 20, "gap": 15, "ear_thickness": 12, "ear_width": 116,
		"end_distance": 74, "between_height": 58, "between_thickness": 10,
	}
	got := access.Findings(made(t, fork), access.Usual())
	if len(got) != 2 || got[0].What != "weld w-ear-1" || got[1].What != "weld w-ear-2" {
		t.Errorf("whole: %v", got)
	}
	fork["inner_run"] = 45
	b := made(t, fork)
	if got := access.Findings(b, access.Usual()); got != nil {
		t.Errorf("from the ends: %v", got)
	}
	// Outer face 116 mm, inner face twice 45 mm, 25 mm off the fork's middle.
	total := 0.0
	for _, s := range b.Weld("w-ear-2").Segments {
		total += s.B.Sub(s.A).Norm()
		if y := s.A.Y; math.Abs(y+25) > 1e-9 && math.Abs(y+37) > 1e-9 {
			t.Errorf("a run at y = %g", y)
		}
	}
	if math.Abs(total-206) > 1e-9 {
		t.Errorf("%g mm of fillet, want 206", total)
	}
}

// Ear of straight sides and a half-round top: area of rectangle and half circle less the hole (elementary).
func TestEarArea(t *testing.T) {
	p := made(t, set{}).Plate("ear-1")
	want := 100*96 + math.Pi*50*50/2
	if got := (shape.Outline{Outer: p.Outer}).Area(); math.Abs(got-want) > 1e-6 {
		t.Errorf("area %g, want %g", got, want)
	}
	if top := p.Outer.BBox().Max.Y; math.Abs(top-146) > 1e-9 {
		t.Errorf("top at %g, want 90 + 56", top)
	}
}

// The sides of a tapered ear leave the head arc without a corner.
func TestTaperedHeadIsTangent(t *testing.T) {
	outer := made(t, set{"head": "tapered", "head_radius": 40, "gussets": "none"}).Plate("ear-1").Outer
	arcs := 0
	for i := range outer {
		if e := outer.Edge(i); e.IsArc() {
			arcs++
			if math.Abs(e.Radius()-40) > 1e-9 {
				t.Errorf("head radius %g", e.Radius())
			}
			before, after := outer.Edge(i-1).TangentAt(1), outer.Edge(i+1).TangentAt(0)
			if math.Abs(before.Cross(e.TangentAt(0))) > 1e-9 || math.Abs(after.Cross(e.TangentAt(1))) > 1e-9 {
				t.Error("the head meets its sides at a corner")
			}
		}
	}
	if arcs != 1 {
		t.Errorf("%d arcs, want 1", arcs)
	}
}

func TestPin(t *testing.T) {
	p := made(t, set{"bush_length": 18}).Pins[0]
	// ear 8, gap 2, lug 20, gap 2, ear 8 from the inboard ear outward.
	for i, want := range []struct{ at, t float64 }{{-16, 8}, {0, 20}, {16, 8}} {
		if s := p.Seats[i]; s.AtMM != want.at || s.ThicknessMM != want.t {
			t.Errorf("seat %d at %g, %g thick; want %+v", i, s.AtMM, s.ThicknessMM, want)
		}
	}
	if p.Seats[1].BushMM != 18 || p.TravelMM != 2 || p.LengthMM != math.Ceil(40+0.5+1.15*25) {
		t.Errorf("bush %g, travel %g, length %g", p.Seats[1].BushMM, p.TravelMM, p.LengthMM)
	}
	cheeks := made(t, set{"cheek_thickness": 5, "cheek_diameter": 50, "gussets": "none"}).Pins[0]
	if s := cheeks.Seats[0]; s.ThicknessMM != 13 || s.AtMM != -18.5 {
		t.Errorf("seat with cheek %+v", s)
	}
}

// A tie needs both ends to bear on the ears.
func TestTie(t *testing.T) {
	for ends, legs := range map[string]int{"head and nut": 2, "head and retaining bolt": 1, "keeper": 1} {
		b := made(t, set{"pin_ends": ends})
		if got := len(pathOf(b, part.FyPlus).Branches); got != legs {
			t.Errorf("%s: %d branches along the pin, want %d", ends, got, legs)
		}
		if (b.Share("tie") != nil) != (legs == 2) {
			t.Errorf("%s: tie share wrong", ends)
		}
	}
}

func pathOf(b *part.Bracket, c part.Component) *part.Path {
	i := slices.IndexFunc(b.Paths, func(p part.Path) bool { return p.Component == c })
	if i < 0 {
		return &part.Path{}
	}
	return &b.Paths[i]
}

// Every signed component has a path or is let go, never both.
func TestComponentsAreCarriedOrReleased(t *testing.T) {
	for _, s := range []set{{}, {"foot": "base plate"}, {"foot": "base plate", "pin_axis": "along"}} {
		b := made(t, s)
		for _, c := range part.Components() {
			carried, released := len(pathOf(b, c).Branches) > 0, slices.Contains(b.LoadPoints[0].Released, c)
			if carried == released {
				t.Errorf("%v: %s carried %t, released %t", s, c, carried, released)
			}
		}
	}
}

// The lug bears on the outboard ear when it is pushed outboard, and after a quarter turn (y to -x) when it is pushed forward.
func TestNearEar(t *testing.T) {
	for _, c := range []struct {
		set    set
		push   part.Component
		bears  string
		toward part.Vec
	}{
		{set{}, part.FyPlus, "ear-1", part.Vec{Y: 1}},
		{set{}, part.FyMinus, "ear-2", part.Vec{Y: -1}},
		{set{"foot": "base plate", "pin_axis": "along"}, part.FxMinus, "ear-1", part.Vec{X: -1}},
		{set{"foot": "base plate", "pin_axis": "along"}, part.FxPlus, "ear-2", part.Vec{X: 1}},
	} {
		b := made(t, c.set)
		branches := pathOf(b, c.push).Branches
		bears := branches[len(branches)-1]
		if bears.Through[0] != c.bears {
			t.Errorf("%v %s enters at %s, want %s", c.set, c.push, bears.Through[0], c.bears)
		}
		if off := bears.At.Sub(b.LoadPoints[0].At).Dot(c.toward); off <= 0 {
			t.Errorf("%v %s: the ear it bears on is behind the lug", c.set, c.push)
		}
	}
}

// Prying distances of the field-lab angle by hand: first row 45 below the top of a 10 mm leg, 120 deep; bolts at 0 and +-80,
// stiffeners 10 thick at +-40 and +-120, angle 300 long. Down the leg it counts from the middle of the other leg.
func TestPryOfAngle(t *testing.T) {
	g := made(t, set{}).Bolts[0]
	if want := (part.Pry{BMM: 35, AMM: 70, PMM: 57.5}); g.Across[0] != want {
		t.Errorf("along the rail %+v, want %+v", g.Across[0], want)
	}
	if want := (part.Pry{BMM: 40, AMM: 75, PMM: 80}); g.Across[1] != want {
		t.Errorf("down the leg %+v, want %+v", g.Across[1], want)
	}
	if p := g.Plies[0]; p.EdgeMM != 30 || p.PitchMM != 45 || g.GripMM != 16 {
		t.Errorf("ply %+v, grip %g", p, g.GripMM)
	}
}

// ISO 273 for M12: fine 13, medium 13.5, coarse 14.5.
func TestBoltHolesByFit(t *testing.T) {
	for fit, want := range map[string]float64{"close": 13, "normal": 13.5, "loose": 14.5} {
		b := made(t, set{"bolt_fit": fit})
		if g := b.Bolts[0]; g.HoleMM != want || b.Members[0].Holes[0].DiaMM != want {
			t.Errorf("%s: bolts in %g, angle drilled %g; want %g", fit, g.HoleMM, b.Members[0].Holes[0].DiaMM, want)
		}
	}
}

// Stiffeners stay out of the rolled root: the quarter circle's material near the corner.
func TestStiffenersClearTheRoot(t *testing.T) {
	b := made(t, set{"angle_root_radius": 13})
	for i := range b.Plates {
		p := &b.Plates[i]
		if p.Name != "stiffener" {
			continue
		}
		u, v, _ := p.Pose.Local(part.Vec{X: p.Pose.Origin.X, Y: 10, Z: -10}) // inner corner of the 10 mm legs
		root := shape.Loop{{}, {Point: shape.Point{X: 13}, Bulge: -math.Tan(math.Pi / 8)}, {Point: shape.Point{Y: 13}}}
		root = root.Translate(shape.Point{X: u, Y: v})
		if d := shape.LoopDistance(p.Outer, root); d < 1 {
			t.Errorf("%s is %g mm from the root fillet", p.ID, d)
		}
	}
}

// A row a rule: the parameter named, and the bound in the message.
func TestRefusals(t *testing.T) {
	plate := func(s set) set { s["foot"] = "base plate"; return s }
	type refusal struct {
		given        set
		param, bound string
	}
	for _, row := range []refusal{
		{set{"pin_axis": "along"}, "pin_axis", "base plate"},
		{set{"pin_diameter": 6, "pin_clearance": 0.05, "finish_allowance": 5}, "", ""},
		{set{"bush_length": 21}, "bush_length", "20 mm"},
		{set{"lug_radius": 14}, "lug_radius", "at least"},
		{set{"lug_radius": 95}, "pin_height", "95 mm"},
		{set{"head": "tapered", "head_radius": 51}, "head_radius", "50 mm"},
		{set{"head": "tapered", "pin_height": 30, "end_distance": 14, "head_radius": 50}, "head_radius", "tangent"},
		{set{"ear_width": 300, "angle_length": 400}, "ear_width", "at most"},
		{set{"end_distance": 15}, "end_distance", "6.25 mm is left"},
		{set{"ear_width": 36, "gussets": "none"}, "ear_width", "6.25 mm is left"},
		{set{"head": "tapered", "head_radius": 15, "end_distance": 22, "gussets": "none"}, "head_radius", "6.25 mm is left"},
		{set{"pin_height": 25, "lug_radius": 20, "gussets": "none"}, "", ""},
		{set{"pin_height": 24, "lug_radius": 20, "gussets": "none"}, "pin_height", "25 mm"},
		{set{"lug_thickness": 18}, "gap", "24 mm"},
		{set{"cheek_thickness": 5, "cheek_diameter": 30}, "cheek_diameter", "38 mm"},
		{set{"cheek_thickness": 5, "cheek_diameter": 110}, "cheek_diameter", "at most"},
		{set{"outer_gusset_length": 12}, "outer_gusset_length", "14 mm"},
		{set{"outer_gusset_nose": 18}, "outer_gusset_nose", "17 mm"},
		{set{"outer_gusset_count": 1}, "outer_gusset_height", "65 mm"},
		{set{"outer_gusset_spacing": 20}, "outer_gusset_spacing", "32 mm"},
		{set{"outer_gusset_spacing": 90}, "outer_gusset_spacing", "100 mm wide"},
		{set{"outer_gusset_height": 140}, "outer_gusset_height", "90 mm wide"},
		{set{"cheek_thickness": 5}, "outer_gusset_height", "39 mm or more"},
		{set{"gussets": "between", "ear_weld": 7, "lug_thickness": 22, "snipe_clearance": 6}, "gussets", "5 mm"},
		{set{"between_height": 61}, "between_height", "60 mm"},
		{set{"between_count": 2, "between_spacing": 72, "between_height": 61}, "between_height", "2.5 times"},
		{set{"between_height": 91, "between_count": 3, "between_spacing": 36, "lug_thickness": 60, "lug_radius": 20}, "between_height", "90 mm"},
		{set{"between_height": 10}, "between_height", "14 mm"},
		{set{"between_count": 2, "between_spacing": 25}, "between_spacing", "30 mm"},
		{set{"clevis_offset": 21, "gussets": "none"}, "clevis_offset", "more than 21 mm"},
		{set{"clevis_offset": 56, "gussets": "none"}, "clevis_offset", "at most 54 mm"},
		{set{"clevis_offset": 25, "gussets": "none"}, "clevis_offset", "at least 26 mm"},
		{set{"outer_gusset_length": 18}, "outer_gusset_length", "17 mm"},
		{set{"clevis_offset": 35, "outer_gusset_length": 14, "outer_gusset_nose": 8}, "outer_gusset_length", "13 mm"},
		{set{"inner_run": 29}, "inner_run", "30 mm"},
		{set{"inner_run": 40, "ear_weld": 9}, "inner_run", "45 mm"},
		// A side load enters over 60 mm and spreads at 30 degrees over 90 mm: 163.92 mm of 200, 18.04 mm from either end.
		{set{"inner_run": 48, "ear_width": 200}, "inner_run", "48.04 mm"},
		{set{"angle_length": 110, "bolts_per_row": 1, "stiffener_count": 0}, "angle_length", "112 mm"},
		{set{"angle_thickness": 30, "angle_root_radius": 20, "angle_out": 50}, "angle_out", "55 mm"},
		{set{"angle_thickness": 30, "angle_root_radius": 20, "angle_down": 50}, "angle_down", "55 mm"},
		{set{"bolt_size": "M7"}, "bolt_size", "clearance hole"},
		{set{"bolt_first": 35}, "bolt_first", "35.4 mm"},
		{set{"bolt_row_pitch": 31}, "bolt_row_pitch", "32 mm"},
		{set{"bolt_row_pitch": 65}, "bolt_row_pitch", "15 mm"},
		{set{"bolt_rows": 1, "bolt_first": 110}, "bolt_first", "15 mm"},
		{set{"bolt_pitch": 30}, "bolt_pitch", "32 mm"},
		{set{"bolt_pitch": 140}, "bolt_pitch", "15 mm"},
		{set{"web_clear_height": 70}, "web_clear_height", "75 mm"},
		{set{"stiffener_reach": 18}, "stiffener_reach", "20 mm"},
		{set{"stiffener_reach": 71}, "stiffener_reach", "70 mm"},
		{set{"stiffener_depth": 111}, "stiffener_depth", "110 mm"},
		{set{"stiffener_depth": 18}, "stiffener_depth", "20 mm"},
		{set{"stiffener_nose": 71}, "stiffener_nose", "70 mm"},
		{set{"stiffener_count": 6, "stiffener_spacing": 20}, "stiffener_spacing", "34 mm"},
		{set{"stiffener_count": 6}, "stiffener_spacing", "300 mm"},
		{set{"stiffener_count": 3}, "stiffener_spacing", "20.4 mm"},
		{plate(set{"plate_corner_radius": 100, "plate_width": 150}), "plate_corner_radius", "75 mm"},
		{plate(set{"plate_length": 110}), "plate_length", "112 mm"},
		{plate(set{"plate_width": 80}), "plate_width", "86 mm"},
		{plate(set{"plate_width": 189}), "plate_width", "188 mm"},
		{plate(set{"bolt_pitch": 126}), "bolt_pitch", "15 mm"},
		{plate(set{"bolt_gauge": 175}), "bolt_gauge", "15 mm"},
		{plate(set{"bolt_gauge": 31}), "bolt_gauge", "32 mm"},
		{plate(set{"plate_corner_radius": 80}), "plate_corner_radius", "15 mm"},
		{plate(set{"bolt_gauge": 60}), "bolt_gauge", "20.4 mm"},
		{plate(set{"bolt_gauge": 90, "bolts_per_row": 2, "bolt_pitch": 76}), "bolt_gauge", "gusset"},
	} {
		c := fabtest.Refusal{Given: fabtest.Given(row.given), Param: row.param, Bound: row.bound}
		if fault := c.Broken(sized()); fault != "" {
			t.Errorf("%v: %s", c.Given, fault)
		}
	}
}

// Requests drawn at random: a typed refusal or a sound bracket.
func TestRandom(t *testing.T) { fabtest.Random(t, sized(), 1500) }

func FuzzClevis(f *testing.F) { fabtest.Fuzz(f, sized()) }
