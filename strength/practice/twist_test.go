package practice

import (
	"math"
	"testing"

	"lugwright/strength"
)

type twistGivens struct {
	Shape float64 `sym:"shape" choices:"channel|angle" default:"0" is:"shape"`
	Ends  float64 `sym:"ends" choices:"cantilever|span" default:"0" is:"ends"`
	V     float64 `sym:"V" unit:"N" min:"0" max:"1e9" is:"force"`
	X     float64 `sym:"x" unit:"mm" min:"-5000" max:"5000" is:"its place"`
	L     float64 `sym:"L" unit:"mm" min:"0" max:"1e5" is:"length"`
	B     float64 `sym:"b" unit:"mm" min:"2" max:"2000" is:"flange"`
	H     float64 `sym:"h" unit:"mm" min:"2" max:"2000" is:"depth"`
	Tf    float64 `sym:"t_f" unit:"mm" min:"0.2" max:"100" is:"flange thickness"`
	Tw    float64 `sym:"t_w" unit:"mm" min:"0.2" max:"100" is:"web thickness"`
	E     float64 `sym:"E" unit:"MPa" min:"1000" max:"300000" is:"modulus"`
	G     float64 `sym:"G" unit:"MPa" min:"400" max:"120000" is:"shear modulus"`
}

// twisted lets the suite meet the lines that the bases' limit states share.
var twisted = strength.Define(strength.Identity{
	ID: "twist", Title: "twist for the suite", Clause: strength.Clause{Words: "test"}, Demand: "s", Capacity: "E", Unit: "MPa",
}, func(c *strength.Calc, g twistGivens) {
	t := Twist(g)
	sigma, tau := t.Of(c)
	c.Compare(c.Let("s", "max(sigma_w, tau_T)", "MPa", max(sigma, tau)), g.E)
})

// A force through the shear centre of a channel or down the heel of an angle twists nothing. A short channel warps as T L on its flanges'
// couple, a long one as T a; the angle is St Venant's alone. Warping constant and function are summed again along the middle line.
func TestTwist(t *testing.T) {
	c := &strength.Calc{Method: strength.ASD}
	g := Twist{V: 1000, L: 50, B: 66, H: 206, Tf: 6, Tw: 6, E: 2e5, G: 77000}
	b, h, tk := 63.0, 200.0, 6.0
	es := 3 * b * b * tk / (6*b*tk + h*tk)
	g.X = -es
	if s, tau := g.Of(c); math.Abs(s)+math.Abs(tau) > 1e-9 {
		t.Errorf("through the shear centre: %g, %g", s, tau)
	}
	g.X = 0
	var Cw, Sw float64
	const n = 20000
	for i := range n { // a flange from its tip, then half of the web
		u := b * (float64(i) + 0.5) / n
		w := h / 2 * (b - es - u)
		Cw += 2 * w * w * tk * b / n
		if w > 0 {
			Sw += w * tk * b / n
		}
		y := h / 2 * (float64(i) + 0.5) / n
		Cw += 2 * es * y * es * y * tk * h / 2 / n
	}
	T, J := 1000*es, (2*b+h)*tk*tk*tk/3
	s, tau := g.Of(c)
	if want := T * 50 * h / 2 * (b - es) / Cw; math.Abs(s/want-1) > 0.01 {
		t.Errorf("short channel: %g MPa, want %g", s, want)
	}
	if want := T*tk/J + T*Sw/(Cw*tk); math.Abs(tau/want-1) > 1e-4 {
		t.Errorf("shear: %g MPa, want %g", tau, want)
	}
	g.L = 1e5
	if long, _ := g.Of(c); math.Abs(long/(T*math.Sqrt(2e5*Cw/(77000*J))*h/2*(b-es)/Cw)-1) > 1e-4 {
		t.Errorf("long channel: %g MPa", long)
	}
	half := g
	half.Ends, half.L = 1, 100
	g.L = 50
	a, _ := half.Of(c)
	if whole, _ := g.Of(c); math.Abs(a/whole-0.5) > 1e-9 {
		t.Errorf("span of 100: %g, cantilever of 50: %g", a, whole)
	}
	angle := Twist{Shape: 1, V: 1000, X: 40, L: 500, B: 103, H: 103, Tf: 6, Tw: 6, E: 2e5, G: 77000}
	if s, tau := angle.Of(c); s != 0 || math.Abs(tau-40000*6/(200*216/3.0)) > 1e-9 {
		t.Errorf("angle: %g, %g", s, tau)
	}
}
