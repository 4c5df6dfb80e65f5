package frame

import (
	"math"
	"math/rand"
	"testing"

	"lugwright/part"
)

const inch = 25.4

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.8g, want %.8g within %g", what, got, want, tol)
	}
}

func sectionOf(t *testing.T, c Channel, l ...Liner) Section {
	t.Helper()
	s, err := c.Lined(l...)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// A crane maker's mounting manual prints 10.2 in3 for a rail 10 x 1.5 x 3/8 in and 11.9 in3 for one 11 in deep.
func TestPrintedSectionModuli(t *testing.T) {
	for depth, want := range map[float64]float64{10: 10.2, 11: 11.9} {
		s := sectionOf(t, Channel{DepthMM: depth * inch, FlangeMM: 1.5 * inch, ThicknessMM: 0.375 * inch})
		near(t, "S, in3", s.SMM3/math.Pow(inch, 3), want, 0.05)
	}
}

// By hand: 70 x 200 less 64 x 188: I = (70 200^3 - 64 188^3)/12 = 11228416 mm4, S = I/100; A = 14000 - 12032.
// Shear centre with b = 67, h = 194, t = 6: I = 6 194^3/12 + 67 6 194^2/2 = 11215528, e = 67^2 194^2 6/(4 I) = 22.60.
// J = A t^2/3 = 1968 12 = 23616.
func TestRailByHand(t *testing.T) {
	s := sectionOf(t, Channel{DepthMM: 200, FlangeMM: 70, ThicknessMM: 6})
	near(t, "A", s.AreaMM2, 1968, 1e-9)
	near(t, "I", s.IMM4, 11228416, 1e-3)
	near(t, "S", s.SMM3, 112284.16, 1e-5)
	near(t, "neutral", s.NeutralMM, 100, 1e-9)
	near(t, "shear centre", s.ShearCentreMM, 22.60, 0.005)
	near(t, "J", s.JMM4, 23616, 1e-9)
	// 180 x 65 x 6: (65 180^3 - 59 168^3)/(6 180) = 91966.4.
	near(t, "S of 180 x 65 x 6", sectionOf(t, Channel{DepthMM: 180, FlangeMM: 65, ThicknessMM: 6}).SMM3, 91966.4, 1e-6)
}

// The two bends of radius r take from a square corner, each, (1 - pi/4) ((r + t)^2 - r^2) of area.
func TestRoundCorners(t *testing.T) {
	square, round := Channel{DepthMM: 200, FlangeMM: 70, ThicknessMM: 6}, Channel{200, 70, 6, 10}
	a, b := sectionOf(t, square), sectionOf(t, round)
	near(t, "area lost", a.AreaMM2-b.AreaMM2, 2*(1-math.Pi/4)*(16*16-10*10), 1e-9)
	if !(b.SMM3 < a.SMM3 && b.SMM3 > 0.9*a.SMM3) {
		t.Errorf("S %g with round corners, %g with square ones", b.SMM3, a.SMM3)
	}
}

// Strips of rectangles, summed afresh: rail 200 x 70 x 6 and an L 100 x 50 x 5 at its bottom, heel at (6, 6).
func TestAngleLiner(t *testing.T) {
	type rect struct{ w, lo, hi float64 }
	rects := []rect{{70, 0, 6}, {6, 6, 194}, {70, 194, 200}, {50, 6, 11}, {5, 11, 106}}
	var a, az, i float64
	for _, r := range rects {
		a, az = a+r.w*(r.hi-r.lo), az+r.w*(r.hi*r.hi-r.lo*r.lo)/2
	}
	z := az / a
	for _, r := range rects {
		i += r.w * (math.Pow(r.hi-z, 3) - math.Pow(r.lo-z, 3)) / 3
	}
	rail := Channel{DepthMM: 200, FlangeMM: 70, ThicknessMM: 6}
	l := Liner{Shape: LinerAngleBottom, DepthMM: 100, FlangeMM: 50, ThicknessMM: 5, FromMM: 0, ToMM: 1}
	s := sectionOf(t, rail, l)
	near(t, "A", s.AreaMM2, a, 1e-9)
	near(t, "neutral", s.NeutralMM, z, 1e-9)
	near(t, "I", s.IMM4, i, 1e-4)
	near(t, "S top", s.TopMM3, i/(200-z), 1e-6)
	near(t, "S", s.SMM3, i/(200-z), 1e-6)
	near(t, "J", s.JMM4, 1968.0*12+725.0*25/3, 1e-9)
	l.Shape = LinerAngleTop
	up := sectionOf(t, rail, l)
	near(t, "mirrored neutral", up.NeutralMM, 200-z, 1e-9)
	near(t, "mirrored S", up.BottomMM3, s.TopMM3, 1e-6)
}

// Two nested channels, thin-wall theory by hand: the shear flow of every flange gives H = z t b^2/(2 I) for a unit shear, its moment H 2z; each web
// carries its own part of the shear at its own place.
func TestChannelLiner(t *testing.T) {
	rail := Channel{DepthMM: 200, FlangeMM: 70, ThicknessMM: 6}
	l := Liner{Shape: LinerChannel, DepthMM: 188, FlangeMM: 60, ThicknessMM: 5, FromMM: 0, ToMM: 1}
	s := sectionOf(t, rail, l)
	near(t, "I", s.IMM4, 11228416+(60*math.Pow(188, 3)-55*math.Pow(178, 3))/12, 1e-3)
	e := func(b, h, t float64) (e, i float64) {
		i = t*h*h*h/12 + b*t*h*h/2
		return b * b * h * h * t / (4 * i), i
	}
	e1, i1 := e(67, 194, 6)
	e2, i2 := e(57.5, 183, 5)
	near(t, "shear centre", s.ShearCentreMM, (i1*e1+i2*(e2-5.5))/(i1+i2), 0.02)
}

func TestRefusedSections(t *testing.T) {
	good := Channel{DepthMM: 200, FlangeMM: 70, ThicknessMM: 6}
	nan := math.NaN()
	for field, c := range map[string]Channel{
		"rail.depth_mm":         {DepthMM: nan, FlangeMM: 70, ThicknessMM: 6},
		"rail.flange_mm":        {DepthMM: 200, FlangeMM: -1, ThicknessMM: 6},
		"rail.thickness_mm":     {DepthMM: 200, FlangeMM: 70, ThicknessMM: 70},
		"rail.inside_radius_mm": {DepthMM: 200, FlangeMM: 70, ThicknessMM: 6, InsideRadiusMM: 64},
	} {
		_, err := c.Section()
		wantField(t, err, field)
	}
	for field, l := range map[string]Liner{
		"liners[0].depth_mm":         {Shape: LinerChannel, DepthMM: 190, FlangeMM: 60, ThicknessMM: 5, ToMM: 1},
		"liners[0].shape":            {Shape: "box", DepthMM: 180, FlangeMM: 60, ThicknessMM: 5, ToMM: 1},
		"liners[0].to_mm":            {Shape: LinerChannel, DepthMM: 180, FlangeMM: 60, ThicknessMM: 5},
		"liners[0].inside_radius_mm": {Shape: LinerAngleTop, DepthMM: 180, FlangeMM: 60, ThicknessMM: 5, InsideRadiusMM: nan, ToMM: 1},
	} {
		_, err := good.Lined(l)
		wantField(t, err, field)
	}
}

func wantField(t *testing.T, err error, field string) {
	t.Helper()
	for _, f := range part.Fields(err) {
		if f.Field == field && f.Found != "" && f.Accept != "" {
			return
		}
	}
	t.Errorf("want %s refused, got %v", field, err)
}

// Whatever is accepted gives finite, positive numbers.
func TestRandomSections(t *testing.T) {
	r := rand.New(rand.NewSource(1))
	for range 3000 {
		size := func() float64 { return math.Exp(r.Float64()*12 - 4) }
		c := Channel{size(), size(), size(), size() * float64(r.Intn(2))}
		s, err := c.Section()
		if err != nil {
			continue
		}
		for _, x := range []float64{s.AreaMM2, s.IMM4, s.NeutralMM, s.TopMM3, s.BottomMM3, s.SMM3, s.ShearCentreMM, s.JMM4} {
			if !(x > 0) || math.IsInf(x, 0) {
				t.Fatalf("%+v: %+v", c, s)
			}
		}
	}
}
