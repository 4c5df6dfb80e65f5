package strength_test

// Block shear on flat plies written as plain data, each against a hand calculation by AISC 360-22 J4.3 (ASD). A572-50 throughout:
// F_y = 344.738 MPa, F_u = 448.159 MPa; holes of 18 mm take d_n = 18 + 1.5875 = 19.5875 mm; plies of 10 mm.

import (
	"math"
	"slices"
	"strings"
	"testing"

	"lugwright/geometry/shape"
	"lugwright/part"
	"lugwright/strength"
)

// square is two by two bolts, 80 apart along x and 60 along y.
var square = []shape.Point{{X: -40, Y: -30}, {X: 40, Y: -30}, {X: -40, Y: 30}, {X: 40, Y: 30}}

// plain is a plate of w by h about a pose's origin.
func plain(id string, w, h float64, pose part.Pose) part.Plate {
	p := flat(id, w, h, 10, pose)
	p.Outer = shape.Rect(shape.Point{X: -w / 2, Y: -h / 2}, shape.Point{X: w / 2, Y: h / 2})
	return p
}

func m16(id string, points []shape.Point, pose part.Pose, plies ...string) part.BoltGroup {
	g := part.BoltGroup{
		ID: id, Pose: pose, Points: points, Size: "M16", DiaMM: 16, Grade: "10.9", HoleMM: 18, GripMM: 20, Patch: box(-100, -60, 100, 60),
	}
	for k, p := range plies {
		g.Plies[k] = part.Ply{Thing: p, ThicknessMM: 10, Material: "A572-50"}
	}
	return g
}

var everyWay = []part.Component{part.FxPlus, part.FxMinus, part.FyPlus, part.FyMinus, part.MzPlus, part.MzMinus}

// tongue is a plate bolted on a rail and loaded in its plane at the bolts' centre. A load towards -x pulls it, and the bolts push it
// towards +x.
func tongue(w, h float64, points []shape.Point) *part.Bracket {
	b := &part.Bracket{
		Name: "tongue", Plates: []part.Plate{plain("tongue", w, h, level)},
		Bolts:      []part.BoltGroup{m16("bolts", points, level, "tongue", "rail")},
		Supports:   []part.Support{{ID: "rail", Kind: part.RailWeb, ThicknessMM: 10, ClearMM: 188, Material: "S355"}},
		LoadPoints: []part.LoadPoint{{ID: "p"}},
	}
	for _, k := range everyWay {
		b.Paths = append(b.Paths, part.Path{LoadPoint: "p", Component: k, Branches: []part.Branch{{Through: []string{"tongue", "bolts", "rail"}}}})
	}
	return b
}

func blocksOf(t *testing.T, b *part.Bracket, f, m part.Vec) *strength.Report {
	t.Helper()
	c := service("c", f)
	c.Moment = m
	return run(t, b, strength.Options{Method: strength.ASD, Trace: true}, c)
}

// blockOf finds a block by the words after "block ", with or without the part of the group that governs.
func blockOf(t *testing.T, r *strength.Report, words string) strength.Check {
	t.Helper()
	for _, k := range r.Checks {
		if _, at, _ := strings.Cut(k.Place, ", block "); k.Limit == "block-shear" && at == words {
			return k
		}
	}
	t.Fatalf("no block %q of %v", words, placesOf(r))
	return strength.Check{}
}

func placesOf(r *strength.Report) (out []string) {
	for _, k := range r.Checks {
		if k.Limit == "block-shear" {
			out = append(out, k.Place)
		}
	}
	return out
}

// byHand compares lines of a check with numbers worked by hand to five figures.
func byHand(t *testing.T, k strength.Check, want map[string]float64) {
	t.Helper()
	for symbol, v := range want {
		i := slices.IndexFunc(k.Lines, func(l strength.Line) bool { return l.Symbol == symbol })
		if i < 0 || math.Abs(k.Lines[i].Value-v) > 2e-4*math.Max(1e-3, math.Abs(v)) {
			t.Errorf("%s: %s, want %v of %+v", k.Place, symbol, v, k.Lines)
		}
	}
}

func reasonAt(r *strength.Report, place string) string {
	for _, n := range r.NotChecked {
		if n.What == "block shear" && n.Place == place {
			return n.Why
		}
	}
	return ""
}

// A moment alone: no resultant, and yet each bolt pushes. I_p = 4 (40^2 + 30^2) = 10000 mm^2; 6 kN m gives 600 N for each mm of arm,
// 18 kN along x and 24 kN along y. Against a moment that turns x to y the bolts turn the ply back: the one at (40, 30) pushes it by
// (18, -24) kN, the one at (40, -30) by (-18, -24).
//
// Towards -y, the line at x = 40 pushes 2 x 24 = 48 kN; open to +x it is pushed there by 18 kN too.
// L_gv = 60 + 30, A_nv = (90 - 1.5*19.5875) 10 = 606.19, A_gv = 900; L_gt = 60, A_nt = (60 - 0.5*19.5875) 10 = 502.06 mm^2.
// R_nv = min(0.6*448.159*606.19 = 163001, 0.6*344.738*900 = 186159), R_nt = 0.5*448.159*502.06 = 112502, V_c = 275503/2 = 137751 N.
// Across: min(0.6*448.159*502.06 = 135002, 0.6*344.738*600 = 124106) + 0.5*448.159*606.19 = 259940, V_cx = 129970 N.
// V_e = sqrt(48000^2 + (18000*137751/129970)^2) = 51652 N.
//
// Towards +x between the lines: the line at y = 30 pushes 36 kN, the other away. L_gv = 80 + 60, A_nv = 2 (140 - 29.381) 10 = 2212.4,
// A_gv = 2800, A_nt = (60 - 19.5875) 10 = 404.13: R_nv = min(594901, 579160), R_nt = 0.5*448.159*404.13 = 90557, V_c = 334858 N, used to
// 0.1075. The foremost row alone: 18 kN, A_nv = 2 (60 - 9.794) 10 = 1004.1: R_nv = min(270004, 248211), V_c = 169384 N, 0.1063: less.
func TestBlocksOfTorsionAlone(t *testing.T) {
	r := blocksOf(t, tongue(200, 120, square), part.Vec{}, part.Vec{Z: 6e6})
	k := blockOf(t, r, "towards -v, open to +u, line 2 of 2 from -u")
	byHand(t, k, map[string]float64{"V_r": 48e3, "V_x": 18e3, "A_nv": 606.19, "A_nt": 502.06, "U_bs": 0.5, "V_c": 137751, "V_cx": 129970, "V_e": 51652})
	byHand(t, blockOf(t, r, "towards +u"), map[string]float64{"V_r": 36e3, "V_x": 0, "A_nv": 2212.4, "A_nt": 404.13, "V_c": 334858, "V_e": 36e3})
	if !strings.Contains(strings.Join(k.Notes, "; "), "those the other way left out") {
		t.Errorf("the sheet does not say what was added: %q", k.Notes)
	}
}

// 40 kN towards -x, shared evenly. A hole of 20 mm stands in the way of one shear plane, a slot of 10 by 8 mm across the tension plane:
// L_ov = 20, L_ot = 8. A_nv = (2 (140 - 29.381) - 20) 10 = 2012.4, A_gv = (280 - 20) 10 = 2600, A_nt = (60 - 19.5875 - 8) 10 = 324.13;
// R_nv = min(541122, 537791), R_nt = 448.159*324.13 = 145260, V_c = 683051/2 = 341526 N.
//
// An opening 10 mm wide that lies ahead of both lines 30 mm from the bolts ends the block there. The foremost row alone is used most: 20 kN,
// L_gv = 30, A_nv = 2 (30 - 9.794) 10 = 404.13, A_gv = 600, R_nv = min(108669, 124106), R_nt = 448.159*404.13 = 181112, V_c = 144890 N;
// 0.138. Both rows: A_nv = 2 (110 - 29.381) 10 = 1612.4, R_nv = min(433560, 455054), V_c = 307336 N; 0.130.
func TestBlocksAcrossOpenings(t *testing.T) {
	pull := part.Vec{X: -40e3}
	b := tongue(200, 120, square)
	b.Plates[0].Holes = []part.Hole{{ID: "drain", Center: shape.Point{X: 70, Y: 30}, DiaMM: 20, CutMM: 20, Purpose: part.ForBolt}}
	b.Plates[0].Cutouts = []shape.Loop{shape.Rect(shape.Point{X: -45, Y: -4}, shape.Point{X: -35, Y: 4}).CW()}
	k := blockOf(t, blocksOf(t, b, pull, part.Vec{}), "towards +u")
	byHand(t, k, map[string]float64{"V_r": 40e3, "L_gv": 140, "L_ov": 20, "L_ot": 8, "U_bs": 1, "A_gv": 2600, "A_nv": 2012.4, "A_nt": 324.13, "V_c": 341526})

	// Without load towards the openings nothing is judged there, and that is said.
	if r := blocksOf(t, b, part.Vec{X: 40e3}, part.Vec{}); !slices.ContainsFunc(r.NotChecked, func(n strength.NotChecked) bool {
		return n.Place == "tongue at bolts, block towards +u" && n.Why == "no load case brings load here"
	}) {
		t.Errorf("the block towards +u is silent: %v", r.NotChecked)
	}

	b.Plates[0].Holes, b.Plates[0].Cutouts = nil, []shape.Loop{shape.Rect(shape.Point{X: 70, Y: -50}, shape.Point{X: 80, Y: 50}).CW()}
	k = blockOf(t, blocksOf(t, b, pull, part.Vec{}), "towards +u, foremost row of 2")
	byHand(t, k, map[string]float64{"V_r": 20e3, "L_gv": 30, "L_ov": 0, "A_nv": 404.13, "A_nt": 404.13, "V_c": 144890})

	// A hole beside the plane, but nearer to it than the edge of the bolts' holes: the tear runs by its middle.
	b.Plates[0].Cutouts, b.Plates[0].Holes = nil, []part.Hole{{ID: "drain", Center: shape.Point{X: 70, Y: 39}, DiaMM: 20, CutMM: 20, Purpose: part.ForBolt}}
	byHand(t, blockOf(t, blocksOf(t, b, pull, part.Vec{}), "towards +u"), map[string]float64{"L_ov": 20})

	// A notch from the side, 6 mm wide, between the rows and deeper than the line at y = 30.
	b.Plates[0].Holes, b.Plates[0].Outer = nil, shape.Loop{
		{Point: shape.Point{X: -100, Y: -60}}, {Point: shape.Point{X: 100, Y: -60}}, {Point: shape.Point{X: 100, Y: 60}}, {Point: shape.Point{X: 3, Y: 60}},
		{Point: shape.Point{X: 3, Y: 20}}, {Point: shape.Point{X: -3, Y: 20}}, {Point: shape.Point{X: -3, Y: 60}}, {Point: shape.Point{X: -100, Y: 60}},
	}
	byHand(t, blockOf(t, blocksOf(t, b, pull, part.Vec{}), "towards +u"), map[string]float64{"L_gv": 140, "L_ov": 6})
}

// 36 kN towards -x and 48 kN towards -y, shared evenly: each bolt pushes (9, 12) kN. The corner towards +x and +y, all bolts:
// along x, A_nv = (140 - 29.381) 10 = 1106.2, A_gv = 1400, A_nt = (60 + 30 - 29.381) 10 = 606.19, U_bs = 0.5 for two lines to the side:
// R_n = min(297450, 289580) + 135834 = 425414, V_c = 212707 N; across, min(0.6*448.159*606.19 = 163001, 0.6*344.738*900 = 186159)
// + 0.5*448.159*1106.2 = 247875, V_cx = 205438 N. V_e/V_c = sqrt((36/212.707)^2 + (48/205.438)^2) = 0.28851.
//
// Towards +y, open to +x, it is the same piece: V_c = 205438 N along y.
//
// Between its lines a block comes out one way only: towards +x 36 kN with U_bs = 1.
func TestBlocksUnderObliqueLoad(t *testing.T) {
	b := tongue(200, 120, square)
	r := blocksOf(t, b, part.Vec{X: -36e3, Y: -48e3}, part.Vec{})
	k := blockOf(t, r, "towards +u, open to +v")
	byHand(t, k, map[string]float64{"V_r": 36e3, "V_x": 48e3, "U_bs": 0.5, "V_c": 212707, "V_cx": 205438})
	within(t, "both ways", k.Utilisation, 0.28851, 1e-4)
	k = blockOf(t, r, "towards +v, open to +u")
	byHand(t, k, map[string]float64{"V_r": 48e3, "V_x": 36e3, "V_c": 205438, "V_cx": 212707})
	within(t, "the same piece", k.Utilisation, 0.28851, 1e-4)
	byHand(t, blockOf(t, r, "towards +u"), map[string]float64{"V_r": 36e3, "V_x": 0, "U_bs": 1})
	// Away from the open side nothing is added.
	byHand(t, blockOf(t, r, "towards +u, open to -v"), map[string]float64{"V_r": 36e3, "V_x": 0})
}

// U_bs by the Commentary to J4.3, Fig. C-J4.2, from memory: an end with one line of bolts is pulled evenly, one with two is not; a block
// between its lines is, as long as the bolts share alike.
func TestBlocksWithSeveralLines(t *testing.T) {
	pull := part.Vec{X: -10e3}
	one := blocksOf(t, tongue(200, 120, []shape.Point{{X: -40}, {X: 40}}), pull, part.Vec{})
	byHand(t, blockOf(t, one, "towards +u, open to +v"), map[string]float64{"U_bs": 1, "n_ht": 0.5, "L_gt": 60})
	if slices.Contains(placesOf(one), "tongue at bolts, block towards +u") {
		t.Error("one line of bolts has nothing between its lines")
	}
	two := blocksOf(t, tongue(200, 120, square), pull, part.Vec{})
	byHand(t, blockOf(t, two, "towards +u"), map[string]float64{"U_bs": 1, "n_ht": 1})
	byHand(t, blockOf(t, two, "towards +u, open to +v"), map[string]float64{"U_bs": 0.5, "n_ht": 1.5})
	turned := blocksOf(t, tongue(200, 120, square), pull, part.Vec{Z: 1e5})
	byHand(t, blockOf(t, turned, "towards +u"), map[string]float64{"U_bs": 0.5})
}

// doubleLap is a plate between two laps: the load comes in by the laps, half by each, and the bolts bring it to the plate by two planes.
func doubleLap() *part.Bracket {
	top, under := at(level, 0, 0, 10), at(part.Pose{U: part.Vec{X: 1}, V: part.Vec{Y: -1}}, 0, 0, -10)
	b := &part.Bracket{
		Name:   "double lap",
		Plates: []part.Plate{plain("tongue", 200, 120, level), plain("top", 200, 120, top), plain("under", 200, 120, under)},
		Bolts: []part.BoltGroup{
			m16("bolts", square, at(level, 0, 0, 5), "top", "tongue"),
			m16("bolts-b", slices.Clone(square), at(part.Pose{U: part.Vec{X: 1}, V: part.Vec{Y: -1}}, 0, 0, -5), "under", "tongue"),
		},
		Supports:   []part.Support{{ID: "rail", Kind: part.RailWeb, ThicknessMM: 10, ClearMM: 188, Material: "S355"}},
		LoadPoints: []part.LoadPoint{{ID: "p"}},
		Shares:     []part.Share{{ID: "laps", Rule: part.Equal, Legs: 2, Source: "laps of one thickness"}},
		Welds: []part.WeldGroup{{
			ID: "w", Joins: [2]string{"tongue", "rail"}, Kind: part.Fillet, LegMM: 6, Electrode: "E70", BothSides: true,
			Segments: []part.WeldSegment{{A: part.Vec{X: -100, Y: -60, Z: 5}, B: part.Vec{X: -100, Y: 60, Z: 5}}, {A: part.Vec{X: -100, Y: -60, Z: -5}, B: part.Vec{X: -100, Y: 60, Z: -5}}},
		}},
	}
	b.Bolts[1].SameAs = "bolts"
	for _, k := range everyWay {
		b.Paths = append(b.Paths, part.Path{LoadPoint: "p", Component: k, Branches: []part.Branch{
			{Share: "laps", Leg: 0, Through: []string{"top", "bolts", "tongue", "w", "rail"}},
			{Share: "laps", Leg: 1, Through: []string{"under", "bolts-b", "tongue", "w", "rail"}},
		}})
	}
	return b
}

// 40 kN towards +x: the middle ply is pushed by both planes, 40 kN, each lap by one, 20 kN the other way. V_c is as of the torsion test
// but with U_bs = 1: (579160 + 448.159*404.13)/2 = 380136 N.
func TestBlocksOfAMiddlePly(t *testing.T) {
	r := blocksOf(t, doubleLap(), part.Vec{X: 40e3}, part.Vec{})
	for place, v := range map[string]float64{
		"tongue at bolts, block towards +u": 40e3, "tongue at bolts, block towards -u": 0,
		"top at bolts, block towards -u": 20e3, "under at bolts-b, block towards -u": 20e3,
	} {
		i := slices.IndexFunc(r.Checks, func(k strength.Check) bool { return k.Limit == "block-shear" && k.Place == place })
		if i < 0 {
			t.Fatalf("no block %q of %v", place, placesOf(r))
		}
		byHand(t, r.Checks[i], map[string]float64{"V_r": v, "V_c": 380136})
	}
	if slices.ContainsFunc(placesOf(r), func(p string) bool { return strings.HasPrefix(p, "tongue at bolts-b") }) {
		t.Error("the middle ply is judged twice")
	}
	// A moment turns both planes alike: the bolts push twice 12 kN for 8 kN m in two laps, 400 N for each mm of arm in each.
	r = blocksOf(t, doubleLap(), part.Vec{}, part.Vec{Z: 8e6})
	byHand(t, blockOf(t, r, "towards +u"), map[string]float64{"V_r": 2 * 2 * 12e3})
}

// Where one path has the bolts bring the ply its load and another has them hold it, 40 kN along x may tear it towards either end.
func TestBlocksWhenPathsDisagree(t *testing.T) {
	b := tongue(200, 120, square)
	b.Paths[2].Branches[0].Through = []string{"bolts", "tongue", "rail"}
	r := blocksOf(t, b, part.Vec{X: -40e3}, part.Vec{})
	for _, words := range []string{"towards +u", "towards -u"} {
		byHand(t, blockOf(t, r, words), map[string]float64{"V_r": 40e3, "V_c": 380136})
	}
}

// A place that a reader looks for and that has no blocks is listed, once for each ply and reason.
func TestBlocksLeftOutAreSaid(t *testing.T) {
	pull := part.Vec{X: -10e3}
	for what, c := range map[string]struct {
		place, why string
		change     func(b *part.Bracket)
	}{
		"square to the bolts": {"tongue at bolts", "it does not lie in the plane of the bolts", func(b *part.Bracket) { b.Plates[0].Pose = upright }},
		"rolled":              {"tongue at bolts", "it is rolled or bent, and the blocks here are flat", func(b *part.Bracket) { b.Plates[0].RolledMM = 500 }},
		"outside":             {"tongue at bolts", "a bolt stands outside its outline", func(b *part.Bracket) { b.Plates[0] = plain("tongue", 70, 120, level) }},
		"staggered":           {"bolts", "the bolts do not stand on a grid", func(b *part.Bracket) { b.Bolts[0].Points[3].Y = 40 }},
		"support":             {"rail at bolts", "it is not a plate of this bracket", func(*part.Bracket) {}},
	} {
		b := tongue(200, 120, slices.Clone(square))
		c.change(b)
		r := blocksOf(t, b, pull, part.Vec{})
		if got := reasonAt(r, c.place); got != c.why {
			t.Errorf("%s: %q, want %q", what, got, c.why)
		}
	}
	idle := tongue(200, 120, square)
	idle.Plates = append(idle.Plates, plain("spare", 200, 120, at(level, 0, 0, 20)))
	idle.Bolts = append(idle.Bolts, m16("spare bolts", slices.Clone(square), at(level, 0, 0, 15), "spare", "tongue"))
	if got := reasonAt(blocksOf(t, idle, pull, part.Vec{}), "spare bolts"); got != "no load path passes it" {
		t.Errorf("bolts without load: %q", got)
	}
	// Idle bolts listed first hide nothing of those that carry.
	lap := doubleLap()
	for i := range lap.Paths {
		lap.Paths[i].Branches = lap.Paths[i].Branches[1:]
		lap.Paths[i].Branches[0].Share, lap.Paths[i].Branches[0].Leg = "", 0
	}
	lap.Shares = nil
	if r := blocksOf(t, lap, pull, part.Vec{}); !slices.Contains(placesOf(r), "tongue at bolts-b, block towards +u") && !slices.Contains(placesOf(r), "tongue at bolts-b, block towards -u") {
		t.Errorf("the middle ply is silent: %v", placesOf(r))
	}
}

// Turning bracket and load together changes nothing; neither does the other way round of the group's axes, but for the names.
func TestBlocksTurnWithTheBracket(t *testing.T) {
	worst := func(turn float64, flip bool) float64 {
		c, s := math.Cos(turn), math.Sin(turn)
		rotate := func(v part.Vec) part.Vec { return part.Vec{X: c*v.X - s*v.Y, Y: s*v.X + c*v.Y, Z: v.Z} }
		b := tongue(200, 120, slices.Clone(square))
		b.Plates[0].Holes = []part.Hole{{ID: "drain", Center: shape.Point{X: 70, Y: 30}, DiaMM: 20, CutMM: 20, Purpose: part.ForBolt}}
		pose := part.Pose{U: rotate(part.Vec{X: 1}), V: rotate(part.Vec{Y: 1})}
		b.Plates[0].Pose, b.Bolts[0].Pose = pose, pose
		if flip { // the group looked at from the other face, its u along the ply's y
			b.Bolts[0].Pose = part.Pose{U: pose.V, V: pose.U}
			for i, p := range square {
				b.Bolts[0].Points[i] = shape.Point{X: p.Y, Y: p.X}
			}
			b.Bolts[0].Patch = box(-60, -100, 60, 100)
		}
		u := 0.0
		for _, k := range blocksOf(t, b, rotate(part.Vec{X: -20e3, Y: 7e3}), part.Vec{Z: 2e6}).Checks {
			if k.Limit == "block-shear" {
				u = max(u, k.Utilisation)
			}
		}
		return u
	}
	still := worst(0, false)
	for _, turn := range []float64{0.3, math.Pi / 2, 2, 4} {
		within(t, "turned", worst(turn, false), still, 1e-9)
		within(t, "turned, other face", worst(turn, true), still, 1e-9)
	}
}

// Force both ways is never less used than either way alone, and an opening never helps.
func TestBlocksNeverGainByMore(t *testing.T) {
	use := func(b *part.Bracket, f part.Vec) float64 {
		return limitAt(t, blocksOf(t, b, f, part.Vec{}), "block-shear", "tongue")
	}
	x, y := part.Vec{X: -20e3}, part.Vec{Y: -12e3}
	whole := tongue(200, 120, square)
	if both := use(whole, x.Add(y)); both < use(whole, x) || both < use(whole, y) {
		t.Errorf("both ways %.4f, along x %.4f, along y %.4f", both, use(whole, x), use(whole, y))
	}
	for k := range 40 {
		b := tongue(200, 120, square)
		centre := shape.Point{X: 70, Y: -50 + 2.5*float64(k)}
		b.Plates[0].Holes = []part.Hole{{ID: "drain", Center: centre, DiaMM: 16, CutMM: 16, Purpose: part.ForBolt}}
		if got := use(b, x.Add(y)); got < use(whole, x.Add(y))-1e-12 {
			t.Errorf("a hole at %v lowers the use to %.4f", centre, got)
		}
	}
}
