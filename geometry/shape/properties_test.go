package shape

// Closed forms of elementary sections, and what must not change when an outline is moved.
// The closed forms are those of any textbook of statics (from memory; each is also checked by numerical integration in
// TestSegmentByQuadrature or follows from the parallel-axis theorem).

import (
	"math"
	"testing"

	"gonum.org/v1/gonum/integrate/quad"
)

func TestClosedForms(t *testing.T) {
	const r, w, h = 37.0, 120.0, 80.0
	pi := math.Pi
	at := Point{13, -29}
	half := Loop{{at.Add(Point{r, 0}), 1}, {at.Add(Point{-r, 0}), 0}}
	quarter := Loop{{at, 0}, {at.Add(Point{r, 0}), math.Tan(pi / 8)}, {at.Add(Point{0, r}), 0}}
	// Rounded rectangle, corner radius c: rectangle less four spandrels of area (1 - pi/4) c^2. A spandrel's own inertia is
	// that of the corner square less the quarter disc, both about the corner's arc centre.
	const c = 15.0
	rounded, err := RoundedRect(at.Sub(Point{w / 2, h / 2}), at.Add(Point{w / 2, h / 2}), c)
	if err != nil {
		t.Fatal(err)
	}
	roundIxx := func(w, h float64) float64 {
		quarterAt := func(d float64) float64 { // quarter disc about an axis at d from its flat side
			a, y := pi*c*c/4, 4*c/(3*pi)
			return pi*math.Pow(c, 4)/16 - a*y*y + a*(y+d)*(y+d)
		}
		cross := (w-2*c)*h*h*h/12 + 2*c*math.Pow(h-2*c, 3)/12
		return cross + 4*quarterAt(h/2-c)
	}
	// Slot of straight length s and end radius r along x.
	const s = 90.0
	discHalf := func() (a, x, iown float64) {
		a, x = pi*r*r/2, 4*r/(3*pi)
		return a, x, pi*math.Pow(r, 4)/8 - a*x*x
	}
	ha, hx, hi := discHalf()
	tests := []struct {
		name              string
		o                 Outline
		area              float64
		centroid          Point
		ixx, iyy, product float64
	}{
		{"rectangle", Outline{Outer: Rect(at, at.Add(Point{w, h}))}, w * h, at.Add(Point{w / 2, h / 2}), w * h * h * h / 12, h * w * w * w / 12, 0},
		{"right triangle", Outline{Outer: Polyline(at, at.Add(Point{w, 0}), at.Add(Point{0, h}))}, w * h / 2, at.Add(Point{w / 3, h / 3}),
			w * h * h * h / 36, h * w * w * w / 36, -w * w * h * h / 72},
		{"disc", Outline{Outer: Circle(at, 2*r)}, pi * r * r, at, pi * math.Pow(r, 4) / 4, pi * math.Pow(r, 4) / 4, 0},
		{"half disc", Outline{Outer: half}, pi * r * r / 2, at.Add(Point{0, 4 * r / (3 * pi)}),
			(pi/8 - 8/(9*pi)) * math.Pow(r, 4), pi * math.Pow(r, 4) / 8, 0},
		{"quarter disc", Outline{Outer: quarter}, pi * r * r / 4, at.Add(Point{4 * r / (3 * pi), 4 * r / (3 * pi)}),
			(pi/16 - 4/(9*pi)) * math.Pow(r, 4), (pi/16 - 4/(9*pi)) * math.Pow(r, 4), (1./8 - 4/(9*pi)) * math.Pow(r, 4)},
		{"ring", Outline{Outer: Circle(at, 2*r), Holes: []Loop{Circle(at, r)}}, pi * r * r * 0.75, at,
			pi * math.Pow(r, 4) / 4 * (1 - 1./16), pi * math.Pow(r, 4) / 4 * (1 - 1./16), 0},
		{"slot", Outline{Outer: Slot(at.Sub(Point{s / 2, 0}), at.Add(Point{s / 2, 0}), 2*r)}, 2*r*s + 2*ha, at,
			s*math.Pow(2*r, 3)/12 + pi*math.Pow(r, 4)/4, 2*r*s*s*s/12 + 2*(hi+ha*(s/2+hx)*(s/2+hx)), 0},
		{"rounded rectangle", Outline{Outer: rounded}, w*h - (4-pi)*c*c, at, roundIxx(w, h), roundIxx(h, w), 0},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			if v := tt.o.Validate(); len(v) > 0 {
				t.Fatal(v)
			}
			p := tt.o.Properties()
			size := tt.ixx + tt.iyy
			nearRel(t, "area", p.AreaMM2, tt.area, 1e-13)
			nearRel(t, "Outline.Area", tt.o.Area(), tt.area, 1e-13)
			nearPoint(t, "centroid", p.Centroid, tt.centroid, 1e-12*w)
			near(t, "Ixx", p.IxxMM4, tt.ixx, 1e-13*size)
			near(t, "Iyy", p.IyyMM4, tt.iyy, 1e-13*size)
			near(t, "Ixy", p.IxyMM4, tt.product, 1e-13*size)
		})
	}
}

func TestLengths(t *testing.T) {
	nearRel(t, "circle", Circle(Point{3, 4}, 10).Length(), 10*math.Pi, 1e-15)
	nearRel(t, "slot", Slot(Point{0, 0}, Point{30, 40}, 10).Length(), 100+10*math.Pi, 1e-15)
	o := Outline{Outer: Rect(Point{}, Point{30, 20}), Holes: []Loop{Circle(Point{10, 10}, 5)}}
	nearRel(t, "outline", o.Length(), 100+5*math.Pi, 1e-15)
}

// The moments of a segment against Gauss-Legendre integration of its height over the chord, for half-angles on both
// sides of the change from series to closed form.
func TestSegmentByQuadrature(t *testing.T) {
	for _, half := range []float64{1e-6, 1e-3, 0.1, 0.2, 0.2499, 0.2501, 0.4, 1, math.Pi / 2, 2, 3} {
		r := 1 / (2 * math.Sin(half))
		height := func(f float64) float64 { return 2 * r * math.Sin((half+f)/2) * math.Sin((half-f)/2) }
		integral := func(f func(x, v float64) float64) float64 {
			return quad.Fixed(func(a float64) float64 {
				return f(r*math.Sin(a), height(a)) * r * math.Cos(a)
			}, -half, half, 60, nil, 0)
		}
		got := unitSegment(math.Tan(half / 2))
		// The closed form for "up" cancels to 1e-11 of itself just above the change; that is 1e-15 of chord^4.
		nearRel(t, "area", got.area, integral(func(x, v float64) float64 { return v }), 1e-13)
		nearRel(t, "rise", got.rise, integral(func(x, v float64) float64 { return v * v / 2 }), 2e-12)
		nearRel(t, "along", got.along, integral(func(x, v float64) float64 { return x * x * v }), 1e-12)
		nearRel(t, "up", got.up, integral(func(x, v float64) float64 { return v * v * v / 3 }), 5e-11)
	}
}

func TestPropertiesAreInvariant(t *testing.T) {
	for _, o := range validOutlines(300, 1) {
		p := o.Properties()
		tol := 1e-11 * (p.IxxMM4 + p.IyyMM4)
		about, turn := Point{70, -20}, 1.234
		c, s := math.Cos(turn), math.Sin(turn)
		// With x' = c x - s y and y' = s x + c y under the integrals:
		turned := Properties{p.AreaMM2, p.Centroid.RotateAbout(turn, about),
			c*c*p.IxxMM4 + s*s*p.IyyMM4 + 2*s*c*p.IxyMM4,
			s*s*p.IxxMM4 + c*c*p.IyyMM4 - 2*s*c*p.IxyMM4,
			s*c*(p.IyyMM4-p.IxxMM4) + (c*c-s*s)*p.IxyMM4}
		moved := p
		moved.Centroid = p.Centroid.Add(about)
		mirrorX, mirrorY := p, p
		mirrorX.Centroid.X, mirrorX.IxyMM4 = -p.Centroid.X, -p.IxyMM4
		mirrorY.Centroid.Y, mirrorY.IxyMM4 = -p.Centroid.Y, -p.IxyMM4
		for _, tt := range []struct {
			name string
			o    Outline
			want Properties
		}{
			{"translate", o.Translate(about), moved},
			{"rotate", o.Rotate(turn, about), turned},
			{"mirror x", o.MirrorX(), mirrorX},
			{"mirror y", o.MirrorY(), mirrorY},
			{"reverse", o.mapped(Loop.Reverse), p},
			{"normalize", o.Normalize(), p},
		} {
			got := tt.o.Properties()
			nearRel(t, tt.name+" area", got.AreaMM2, tt.want.AreaMM2, 1e-12)
			nearPoint(t, tt.name+" centroid", got.Centroid, tt.want.Centroid, 1e-10)
			near(t, tt.name+" Ixx", got.IxxMM4, tt.want.IxxMM4, tol)
			near(t, tt.name+" Iyy", got.IyyMM4, tt.want.IyyMM4, tol)
			near(t, tt.name+" Ixy", got.IxyMM4, tt.want.IxyMM4, tol)
			nearRel(t, tt.name+" length", tt.o.Length(), o.Length(), 1e-13)
			if (tt.o.Outer.Area() < 0) != (tt.name == "reverse") {
				t.Errorf("%s: winding changed", tt.name)
			}
		}
	}
}

// An outline cut in two along an arc or line: areas and first moments add up, second moments by the parallel-axis theorem.
func TestPropertiesAddUp(t *testing.T) {
	for _, b := range []float64{0, 1e-9, 1e-5, 0.01, 0.2, -0.3, 0.9} {
		left := Loop{{Point{0, 0}, 0}, {Point{60, 0}, b}, {Point{40, 50}, 0}, {Point{-10, 45}, 0.2}}
		right := Loop{{Point{60, 0}, 0}, {Point{150, 10}, -0.1}, {Point{130, 70}, 0}, {Point{40, 50}, -b}}
		whole := Loop{{Point{0, 0}, 0}, {Point{60, 0}, 0}, {Point{150, 10}, -0.1}, {Point{130, 70}, 0}, {Point{40, 50}, 0}, {Point{-10, 45}, 0.2}}
		p, q, w := Outline{Outer: left}.Properties(), Outline{Outer: right}.Properties(), Outline{Outer: whole}.Properties()
		about := func(p Properties) (ixx, iyy, ixy float64) {
			d := p.Centroid.Sub(w.Centroid)
			return p.IxxMM4 + p.AreaMM2*d.Y*d.Y, p.IyyMM4 + p.AreaMM2*d.X*d.X, p.IxyMM4 + p.AreaMM2*d.X*d.Y
		}
		pxx, pyy, pxy := about(p)
		qxx, qyy, qxy := about(q)
		nearRel(t, "area", p.AreaMM2+q.AreaMM2, w.AreaMM2, 1e-14)
		nearRel(t, "Ixx", pxx+qxx, w.IxxMM4, 1e-13)
		nearRel(t, "Iyy", pyy+qyy, w.IyyMM4, 1e-13)
		near(t, "Ixy", pxy+qxy, w.IxyMM4, 1e-13*w.IyyMM4)
	}
}

func TestPropertiesOfNothing(t *testing.T) {
	for _, l := range []Loop{nil, {}, {{Point{1, 2}, 0}}, {{Point{1, 2}, 1}}, Polyline(Point{1, 2}, Point{5, 2})} {
		o := Outline{Outer: l, Holes: []Loop{l}}
		if p := o.Properties(); p.AreaMM2 != 0 || p.IxxMM4 != 0 || math.IsNaN(p.Centroid.X) {
			t.Errorf("%v: got %+v", l, p)
		}
	}
}
