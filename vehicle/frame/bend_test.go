package frame

import (
	"encoding/json"
	"math"
	"math/rand"
	"reflect"
	"testing"

	"lugwright/part"
)

// Closed forms of a beam on two supports, as printed in any book of beam formulas: P a b/L, w L^2/8, a couple's M b/L, w L^2/(9 sqrt 3) under a
// triangle, and an overhang's P c.
func TestBeamFormulas(t *testing.T) {
	const span = 4000.0
	one := func(x float64, _ bool) float64 { return 1 }
	worst := func(b beam) (moment float64, upA, upB float64) {
		upA, upB = b.stand(0, span)
		b.points = append(b.points, point{0, upA, 0}, point{span, upB, 0})
		for _, s := range b.stations(nil, one) {
			if math.Abs(s.MomentNMM) > math.Abs(moment) {
				moment = s.MomentNMM
			}
		}
		return moment, upA, upB
	}
	m, a, b := worst(beam{points: []point{{1000, -500, 0}}})
	near(t, "P a b/L", m, 500*1000*3000/span, 1e-6)
	near(t, "front", a, 375, 1e-9)
	near(t, "rear", b, 125, 1e-9)
	m, _, _ = worst(beam{lines: []line{{0, span, -2, -2}}})
	near(t, "w L2/8", m, 2*span*span/8, 1e-6)
	m, _, b = worst(beam{lines: []line{{0, span, 0, -3}}})
	near(t, "w L2/(9 sqrt 3)", m, 3*span*span/(9*math.Sqrt(3)), 1e-5)
	near(t, "w L/3", b, 3*span/3, 1e-9)
	m, a, _ = worst(beam{points: []point{{1000, 0, 8e5}}})
	near(t, "couple", m, 8e5*3000/span, 1e-6)
	near(t, "couple's support", a, -8e5/span, 1e-9)
	m, a, _ = worst(beam{points: []point{{5000, -100, 0}}})
	near(t, "overhang", m, -100*1000, 1e-6)
	near(t, "uplift in front", a, -25, 1e-9)
}

// The moment at any station is also that of everything behind it, summed afresh with lines cut into thin slices.
func TestMomentFromBehind(t *testing.T) {
	r := rand.New(rand.NewSource(2))
	for range 200 {
		var b beam
		for range 1 + r.Intn(4) {
			b.points = append(b.points, point{r.Float64()*6000 - 500, r.NormFloat64() * 1e4, r.NormFloat64() * 1e6})
		}
		for range r.Intn(3) {
			from := r.Float64()*5000 - 500
			b.lines = append(b.lines, line{from, from + 10 + r.Float64()*2000, r.NormFloat64() * 5, r.NormFloat64() * 5})
		}
		upA, upB := b.stand(0, 3800)
		b.points = append(b.points, point{0, upA, 0}, point{3800, upB, 0})
		x := r.Float64()*5000 - 400
		_, got := b.at(x, true)
		want := 0.0
		for _, p := range b.points {
			if p.x > x {
				want += p.up*(p.x-x) - p.turn
			}
		}
		for _, l := range b.lines {
			const n = 20000
			h := (l.to - l.from) / n
			for i := range n {
				if at := l.from + (float64(i)+0.5)*h; at > x {
					want += (l.first + (l.last-l.first)*(at-l.from)/(l.to-l.from)) * h * (at - x)
				}
			}
		}
		near(t, "moment", got, want, 1e-5*math.Max(1e6, math.Abs(want)))
	}
}

func fieldLab() Frame {
	return Frame{
		Rail: Channel{DepthMM: 200, FlangeMM: 70, ThicknessMM: 6}, YieldMPa: 355, WebYMM: 422, TopZMM: 960,
		Axles:      []Axle{{Name: "front axle"}, {Name: "rear axle", XMM: 3800}},
		BodyFromMM: 900, BodyToMM: 5000,
	}
}

// threePoint finds the mounts' forces on the frame for a single mount in front (or behind) and a pair, under gravity and apparent
// acceleration: the levers of a rigid body on three supports, side force at the pair's left mount, written out here.
func threePoint(massKG float64, cg part.Vec, singleX, pairX, pairY, z float64, g part.Vec) []Load {
	w := massKG * gravity
	f := g.Scale(w) // of the body
	arm := cg.Z - z
	// About the pair's line: the single's vertical force; a force rearward at the height of the mass centre loads what stands further back.
	single := (f.Z*(pairX-cg.X) + f.X*arm) / (pairX - singleX)
	sideSingle := f.Y * (pairX - cg.X) / (pairX - singleX)
	pair := f.Z - single
	roll := cg.Y*f.Z - arm*f.Y // all mounts at one height
	left := (pair + roll/pairY) / 2
	return []Load{
		{Mount: "single", On: Both, At: part.Vec{X: singleX, Z: z}, Force: part.Vec{Y: sideSingle, Z: single}},
		{Mount: "left", On: Left, At: part.Vec{X: pairX, Y: pairY, Z: z}, Force: part.Vec{X: f.X / 2, Y: f.Y - sideSingle, Z: left}},
		{Mount: "right", On: Right, At: part.Vec{X: pairX, Y: -pairY, Z: z}, Force: part.Vec{X: f.X / 2, Z: pair - left}},
	}
}

var fullLab = part.Vec{X: 2800.6, Y: -91.8, Z: 1542.3}

func labCase(name string, singleX float64, g part.Vec) Case {
	return Case{State: "full", Name: name, Level: part.Service, VerticalG: g.Z, Loads: threePoint(2400, fullLab, singleX, 3650, 468, 1010, g)}
}

// The field lab's printed numbers: 34 MPa at 1 g and 103 at 3 g; single mount at 1800: 50 and 149; at 2250: 62 and 186; the body spread
// along 900 to 5000: 37 and 112. They are the mean of both rails; the load spread is the straight line with the body's own centre.
func TestFieldLab(t *testing.T) {
	for _, c := range []struct{ x, one, three float64 }{{1250, 34, 103}, {1800, 50, 149}, {2250, 62, 186}} {
		r, err := Bend(fieldLab(), []Case{labCase("A1", c.x, part.Vec{Z: -1}), labCase("A2", c.x, part.Vec{Z: -3})})
		if err != nil {
			t.Fatal(err)
		}
		near(t, "1 g", r.Cases[0].Mean.Worst.StressMPa, c.one, 0.5)
		near(t, "3 g", r.Cases[1].Mean.Worst.StressMPa, c.three, 0.5)
		near(t, "where", r.Cases[1].Mean.Worst.XMM, c.x, 1e-9)
		near(t, "spread, 1 g", r.Cases[0].Spread.Worst.StressMPa, 37, 0.5)
		near(t, "spread, 3 g", r.Cases[1].Spread.Worst.StressMPa, 112, 0.5)
		if mid := hasWarning(r.Warnings, "mid-span", "single"); mid != (c.x > 1300) {
			t.Errorf("single at %g: mid-span warned %v", c.x, mid)
		}
		if over := hasWarning(r.Warnings, "over a spread body", ""); over != (c.x > 1300) {
			t.Errorf("single at %g: more than a spread body warned %v", c.x, over)
		}
		near(t, "front axle, both rails", 2*r.Cases[0].Mean.Supports[0].UpN, 2400*gravity*(3800-2800.6)/3800, 1)
	}
}

func hasWarning(list []Warning, kind, mount string) bool {
	for _, w := range list {
		if w.Kind == kind && w.Mount == mount {
			return true
		}
	}
	return false
}

// The right rail of the lab carries more than the left. By hand, from the printed reactions 8.33 and 9.91 kN at 1 g: the front support has
// (4165 2550 + 9911 150)/3800 = 3186 N, the moment at 1250 is 3.98e6 and the stress 35.5 MPa; the left rail with 5.30: 3004 N, 3.755e6, 33.4 MPa.
func TestLeftAndRight(t *testing.T) {
	r, err := Bend(fieldLab(), []Case{labCase("A1", 1250, part.Vec{Z: -1})})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "right", r.Cases[0].Right.Worst.StressMPa, 35.5, 0.06)
	near(t, "left", r.Cases[0].Left.Worst.StressMPa, 33.4, 0.06)
}

// The hive carrier: 7.7 and 23.2 ksi, S 7.36 in3; its single mount hangs behind the rear axle.
func TestHiveCarrier(t *testing.T) {
	const lb, ksi = 0.45359237, 6.894757293168
	f := Frame{
		Rail: Channel{DepthMM: 8 * inch, FlangeMM: 2.75 * inch, ThicknessMM: 0.25 * inch}, WebYMM: 16.875 * inch, TopZMM: 33 * inch,
		Axles:      []Axle{{Name: "front axle"}, {Name: "rear axle", XMM: 165 * inch}},
		BodyFromMM: 56 * inch, BodyToMM: 212 * inch,
	}
	cg := part.Vec{X: 118.1 * inch, Y: 1.5 * inch, Z: 56 * inch}
	var cases []Case
	for _, g := range []float64{-1, -3} {
		cases = append(cases, Case{State: "full", Name: "down", Level: part.Service, Loads: threePoint(6452*lb, cg, 172*inch, 62*inch, 18.75*inch, 35*inch, part.Vec{Z: g})})
	}
	r, err := Bend(f, cases)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "S, in3", r.Rail.SMM3/math.Pow(inch, 3), 7.36, 0.005)
	near(t, "1 g, ksi", r.Cases[0].Mean.Worst.StressMPa/ksi, 7.7, 0.05)
	near(t, "3 g, ksi", r.Cases[1].Mean.Worst.StressMPa/ksi, 23.2, 0.05)
	if !hasWarning(r.Warnings, "overhang", "single") {
		t.Errorf("no warning of the overhang: %+v", r.Warnings)
	}
}

// The 1 g side case of the lab by hand, both ways: the two rails together carry the mean's load, and what a cross member passes across shifts load
// between them without changing that.
func TestSideForce(t *testing.T) {
	f := fieldLab()
	f.CrossMembers = []CrossMember{{"cm3", 3500}}
	r, err := Bend(f, []Case{labCase("A6", 1250, part.Vec{Y: -1, Z: -1})})
	if err != nil {
		t.Fatal(err)
	}
	c := r.Cases[0]
	l := threePoint(2400, fullLab, 1250, 3650, 468, 1010, part.Vec{Y: -1, Z: -1})
	near(t, "left mount as printed", -l[1].Force.Z, -8089, 2) // the centre of mass is printed to 0.1 mm
	near(t, "right mount as printed", -l[2].Force.Z, 23295, 2)
	// Left: 468 - (422 + 22.60) = 23.4 mm outside, 1010 - 860 = 150 mm up, force on the frame (0, -15206, +8089):
	// M = 150 (-15206) - 23.4 8089 = -2.470e6, tipping inward; the couple is 2.470e6/(2 444.6) = 2778 N, up on the left.
	near(t, "side", c.Twists[0].SideMM, 23.4, 0.01)
	near(t, "moment", c.Twists[0].MomentNMM, -2.470e6, 2e3)
	near(t, "couple", c.Twists[0].CoupleN, 2778, 3)
	if c.Twists[0].CrossMember != "cm3" || c.Twists[0].FarMM != 150 {
		t.Errorf("cross member: %+v", c.Twists[0])
	}
	// The whole frame: the rails' forces at the mounts have the moment of the mounts' forces about the rails' middle.
	y := f.WebYMM + r.Rail.ShearCentreMM
	roll := 0.0
	for _, q := range l {
		roll += q.At.Y*q.Force.Z - (q.At.Z-860)*q.Force.Y
	}
	got := 0.0
	for i, s := range c.Left.Supports {
		got -= y * (s.UpN - c.Right.Supports[i].UpN)
	}
	near(t, "roll to the axles", got, roll, 1)
}

func TestNoCrossMemberIsSaid(t *testing.T) {
	f := fieldLab()
	f.CrossMembers = []CrossMember{{"far", 3200}}
	r, err := Bend(f, []Case{labCase("A1", 1250, part.Vec{Z: -1})})
	if err != nil {
		t.Fatal(err)
	}
	tw := r.Cases[0].Twists[0]
	if tw.CrossMember != "" || tw.CoupleN != 0 || tw.Words != "not checked: no cross member stated near station 3650 mm (within 400 mm)" {
		t.Errorf("%+v", tw)
	}
	if !hasWarning(r.Warnings, "twist", "left") {
		t.Errorf("no warning: %+v", r.Warnings)
	}
	// St Venant: 5296 N 23.4 mm over J/t = 23616/6.
	near(t, "rail alone", tw.RailMPa, 5296*23.4*6/23616, 0.1)
}

// A tube under the single mount at 3 g by hand: 24989 N in the middle of 844 mm: M = P L/4 = 5.273e6; W of 88.9 x 8 = pi (88.9^4 - 72.9^4)/(32 88.9) = 37784.
func TestCrossTube(t *testing.T) {
	f := fieldLab()
	f.Tubes = []CrossTube{{Name: "t1", XMM: 1250, ZMM: 860, YMM: 422, DiaMM: 88.9, WallMM: 8}}
	c := labCase("A2", 1250, part.Vec{Z: -3})
	c.Loads[0].Tube = "t1"
	r, err := Bend(f, []Case{c})
	if err != nil {
		t.Fatal(err)
	}
	q := r.Cases[0].Tubes[0]
	w := math.Pi * (math.Pow(88.9, 4) - math.Pow(72.9, 4)) / (32 * 88.9)
	near(t, "moment", q.MomentNMM, 24989.0*844/4, 300)
	near(t, "stress", q.StressMPa, 24989.0*844/4/w, 0.02)
	near(t, "held ends, P L/8", q.HeldEndNMM, 24989.0*844/8, 200)
	// A side force of 8330 at 150 mm above the tube: couple 1.2495e6 over 844 mm = 1480 N more on the side it goes to.
	c = Case{Name: "side", Level: part.Service, Loads: []Load{{Mount: "single", On: Both, At: part.Vec{X: 1250, Z: 1010}, Force: part.Vec{Y: 8330, Z: -8330}, Tube: "t1"}}}
	if r, err = Bend(f, []Case{c}); err != nil {
		t.Fatal(err)
	}
	q = r.Cases[0].Tubes[0]
	near(t, "left", q.LeftN.Z, -4165-1480, 1)
	near(t, "right", q.RightN.Z, -4165+1480, 1)
	near(t, "moment", q.VerticalNMM, 5645*422, 500)
}

// Hangers at equal distance halve the axle's force, and the rail between them is bent less than over a point.
func TestHangers(t *testing.T) {
	f := fieldLab()
	f.Axles[1].HangersMM = []float64{3200, 4500}
	r, err := Bend(f, []Case{labCase("A1", 1250, part.Vec{Z: -1})})
	if err != nil {
		t.Fatal(err)
	}
	s := r.Cases[0].Mean.Supports
	if len(s) != 3 {
		t.Fatalf("%+v", s)
	}
	near(t, "lever of the spring", s[1].UpN*600, s[2].UpN*700, 1e-6)
	near(t, "sum", s[1].UpN+s[2].UpN, 1200*gravity*2800.6/3800, 1)
}

// The frame's own weight: as a straight line with its own centre it has the axle loads of the scale.
func TestOwnWeight(t *testing.T) {
	f := fieldLab()
	f.Own = []Spread{{Name: "chassis-cab", MassKG: 3050, FromMM: -700, ToMM: 4500, CGMM: 3800 * (3050 - 1900) / 3050.0}}
	c := labCase("A1", 1250, part.Vec{Z: -1})
	r, err := Bend(f, []Case{c})
	if err != nil {
		t.Fatal(err)
	}
	near(t, "front axle, kg", 2*r.Cases[0].Mean.Supports[0].UpN/gravity, 2531, 0.5)
	near(t, "rear axle, kg", 2*r.Cases[0].Mean.Supports[1].UpN/gravity, 2919, 0.5)
}

// A liner lowers the stress where it lies and nowhere else.
func TestLinerStretch(t *testing.T) {
	f := fieldLab()
	bare, err := Bend(f, []Case{labCase("A1", 1250, part.Vec{Z: -1})})
	if err != nil {
		t.Fatal(err)
	}
	f.Liners = []Liner{{Name: "liner", Shape: LinerChannel, DepthMM: 188, FlangeMM: 60, ThicknessMM: 5, FromMM: 1000, ToMM: 1500}}
	lined, err := Bend(f, []Case{labCase("A1", 1250, part.Vec{Z: -1})})
	if err != nil {
		t.Fatal(err)
	}
	s := lined.Lined[0].Section.SMM3
	r0 := bare.Cases[0].Mean.Worst.MomentNMM / 1250
	near(t, "worst is now at the liner's rear end", lined.Cases[0].Mean.Worst.XMM, 1500, 1e-9)
	for _, st := range lined.Cases[0].Mean.Stations {
		if st.XMM == 1250 {
			near(t, "in the liner", st.StressMPa, r0*1250/s, 1e-6)
		}
	}
}

// Doubling every force doubles every result; the mirrored job gives the mirrored rails; every diagram closes.
func TestProperties(t *testing.T) {
	r := rand.New(rand.NewSource(3))
	for range 200 {
		f := fieldLab()
		f.CrossMembers = []CrossMember{{"a", 1300}, {"b", 3500}}
		if r.Intn(2) == 0 {
			f.Axles[1].HangersMM = []float64{3100, 4400}
			f.Liners = []Liner{{Name: "l", Shape: LinerAngleBottom, DepthMM: 100, FlangeMM: 50, ThicknessMM: 5, FromMM: 700, ToMM: 2000}}
		}
		g := part.Vec{X: r.NormFloat64(), Y: r.NormFloat64(), Z: -1 - r.Float64()}
		cg := part.Vec{X: 1500 + 2000*r.Float64(), Y: 200 * r.NormFloat64(), Z: 1500}
		loads := threePoint(2000, cg, 1250, 3650, 468, 1010, g)
		twice, flipped := make([]Load, len(loads)), make([]Load, len(loads))
		for i, l := range loads {
			twice[i], flipped[i] = l, l
			twice[i].Force = l.Force.Scale(2)
			flipped[i].At.Y, flipped[i].Force.Y = -l.At.Y, -l.Force.Y
			flipped[i].On = map[Rail]Rail{Left: Right, Right: Left, Both: Both}[l.On]
		}
		var cases []Case
		for _, l := range [][]Load{loads, twice, flipped} {
			cases = append(cases, Case{Name: "c", Level: part.Service, Loads: l})
		}
		res, err := Bend(f, cases)
		if err != nil {
			t.Fatal(err)
		}
		a, b, c := res.Cases[0], res.Cases[1], res.Cases[2]
		for i := range a.Left.Stations {
			near(t, "linear", b.Left.Stations[i].StressMPa, 2*a.Left.Stations[i].StressMPa, 1e-9*math.Abs(b.Left.Stations[i].StressMPa)+1e-7)
			near(t, "mirror", c.Right.Stations[i].StressMPa, a.Left.Stations[i].StressMPa, 1e-9*math.Abs(a.Left.Stations[i].StressMPa)+1e-7)
		}
		for _, q := range res.Cases {
			for _, d := range []*Diagram{&q.Left, &q.Right, &q.Mean, q.Spread} {
				if d != nil && !(math.Abs(d.ResidualN) < 1e-6 && math.Abs(d.ResidualNMM) < 1e-2) {
					t.Fatalf("left over: %g N, %g Nmm", d.ResidualN, d.ResidualNMM)
				}
			}
			if q.Spread != nil {
				near(t, "same axle loads", q.Spread.Supports[0].UpN, q.Mean.Supports[0].UpN, 1e-6)
			} else if q.SpreadWhy == "" {
				t.Fatal("no spread body and no word why")
			}
		}
	}
}

// The straight line keeps total and centre, and never changes its sign.
func TestStraight(t *testing.T) {
	r := rand.New(rand.NewSource(4))
	for range 1000 {
		from := 1000 * r.NormFloat64()
		to := from + 10 + 4000*r.Float64()
		centre, total := from+(to-from)*(0.001+0.998*r.Float64()), 1e4*r.NormFloat64()
		l, err := straight(total, centre, from, to)
		if err != nil {
			t.Fatal(err)
		}
		force, moment := l.upTo(l.to)
		near(t, "total", force, total, 1e-7)
		near(t, "centre", l.to-moment/force, centre, 1e-6)
		if l.first*l.last < -1e-12 || l.from < from-1e-9 || l.to > to+1e-9 {
			t.Fatalf("%+v", l)
		}
	}
	if _, err := straight(1, 5, 10, 20); err == nil {
		t.Error("a centre outside was taken")
	}
}

// A sweep is Bend at each place.
func TestSweep(t *testing.T) {
	var p []Position
	for x := 1250.0; x <= 2250; x += 250 {
		p = append(p, Position{x, []Case{labCase("A1", x, part.Vec{Z: -1})}})
	}
	rows, err := Sweep(fieldLab(), p)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "first", rows[0].Governing[2].StressMPa, 34, 0.5)
	near(t, "last", rows[4].Governing[2].StressMPa, 62, 0.5)
	near(t, "the spread body does not care", rows[4].Governing[3].StressMPa, rows[0].Governing[3].StressMPa, 1e-6)
	p[3].Cases[0].Loads[0].Force.Z = math.Inf(1)
	_, err = Sweep(fieldLab(), p)
	wantField(t, err, "positions[3].cases[0].loads[0].force_n.z")
	_, err = Sweep(fieldLab(), nil)
	wantField(t, err, "positions")
}

func TestRefused(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	for field, spoil := range map[string]func(f *Frame, c *Case){
		"frame.rail.depth_mm":         func(f *Frame, c *Case) { f.Rail.DepthMM = inf },
		"frame.yield_mpa":             func(f *Frame, c *Case) { f.YieldMPa = -1 },
		"frame.web_y_mm":              func(f *Frame, c *Case) { f.WebYMM = 10; f.FlangesOut = true },
		"frame.top_z_mm":              func(f *Frame, c *Case) { f.TopZMM = nan },
		"frame.axles":                 func(f *Frame, c *Case) { f.Axles = f.Axles[:1] },
		"frame.axles[1].x_mm":         func(f *Frame, c *Case) { f.Axles[1].XMM = 0 },
		"frame.axles[1].hangers_mm":   func(f *Frame, c *Case) { f.Axles[1].HangersMM = []float64{3900, 4000} },
		"frame.body.to_mm":            func(f *Frame, c *Case) { f.BodyToMM = 800 },
		"frame.own[0].cg_mm":          func(f *Frame, c *Case) { f.Own = []Spread{{"x", 1, 0, 10, 11}} },
		"frame.own[0].mass_kg":        func(f *Frame, c *Case) { f.Own = []Spread{{"x", nan, 0, 10, 5}} },
		"frame.cab_back_mm":           func(f *Frame, c *Case) { f.CabBackMM = &nan },
		"frame.cross_members[1].name": func(f *Frame, c *Case) { f.CrossMembers = []CrossMember{{"a", 0}, {"a", 1}} },
		"frame.cross_members[0].x_mm": func(f *Frame, c *Case) { f.CrossMembers = []CrossMember{{"a", inf}} },
		"frame.tubes[0].wall_mm":      func(f *Frame, c *Case) { f.Tubes = []CrossTube{{"t", 0, 0, 400, 50, 26}} },
		"frame.tubes[0].y_mm":         func(f *Frame, c *Case) { f.Tubes = []CrossTube{{"t", 0, 0, 0, 50, 5}} },
		"cases[0].name":               func(f *Frame, c *Case) { c.Name = "" },
		"cases[0].level":              func(f *Frame, c *Case) { c.Level = "" },
		"cases[0].vertical_g":         func(f *Frame, c *Case) { c.VerticalG = 1e9 },
		"cases[0].loads":              func(f *Frame, c *Case) { c.Loads = nil },
		"cases[0].loads[0].mount":     func(f *Frame, c *Case) { c.Loads[0].Mount = "" },
		"cases[0].loads[0].at_mm.x":   func(f *Frame, c *Case) { c.Loads[0].At.X = 1e9 },
		"cases[0].loads[1].force_n.y": func(f *Frame, c *Case) { c.Loads[1].Force.Y = nan },
		"cases[0].loads[2].on":        func(f *Frame, c *Case) { c.Loads[2].On = "middle" },
		"cases[0].loads[0].tube":      func(f *Frame, c *Case) { c.Loads[0].Tube = "none" },
	} {
		f, c := fieldLab(), labCase("A1", 1250, part.Vec{Z: -1})
		spoil(&f, &c)
		_, err := Bend(f, []Case{c})
		wantField(t, err, field)
	}
	_, err := Bend(fieldLab(), nil)
	wantField(t, err, "cases")
}

func TestSameInputSameResult(t *testing.T) {
	cases := []Case{labCase("A1", 1250, part.Vec{Z: -1}), labCase("A6", 1250, part.Vec{Y: 1, Z: -1})}
	a, _ := Bend(fieldLab(), cases)
	b, _ := Bend(fieldLab(), cases)
	if !reflect.DeepEqual(a, b) {
		t.Error("two runs differ")
	}
	if _, err := json.Marshal(a); err != nil { // every number is finite
		t.Error(err)
	}
}
