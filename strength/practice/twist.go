package practice

// Twist of open sections about their shear centre, for the limit states of any basis: it writes the lines of the elementary theory of thin
// walls and never compares.

import (
	"math"

	"lugwright/strength"
)

// Twist is a channel or an angle under a force off its shear centre. The limit state that embeds it has the givens under the same symbols.
type Twist struct {
	Shape, Ends                 float64 // 0 channel, 1 angle; 0 cantilever, 1 span with the force in its middle
	V, X, L, B, H, Tf, Tw, E, G float64
}

// Of gives the greatest stress along the flange tips from restrained warping, and the greatest shear stress: St Venant's with all of the
// torque, and that of warping. Channel: shear centre e_s outside the web, warping constant, warping function and its first moment of thin-walled
// theory (textbook, e.g. Timoshenko, Theory of Elastic Stability, chapter 5; from memory); one end, or by symmetry the middle of a span,
// is held against warping, so that the bimoment is T a tanh(L/a). Angle: shear centre at the corner of the legs' middle lines, no warping
// counted (t^2 small beside the legs' squares).
func (g *Twist) Of(c *strength.Calc) (sigma, tau float64) {
	part := 1.0
	if g.Ends > 0 {
		part = 0.5
	}
	b, h := c.Let("b_m", "b - when(shape > 0, t_f, t_w)/2", "mm", g.B-g.web()/2), c.Let("h_m", "h - when(shape > 0, t_f/2, t_f)", "mm", g.H-g.off())
	c.Need(b > 2*g.Tw, "b_m > 2*t_w", "a flange much wider than the web is thick")
	c.Need(h > 2*g.Tf, "h_m > 2*t_f", "a web much deeper than the flange is thick")
	if g.Shape > 0 {
		T := c.Let("T_1", "V*abs(x)*when(ends > 0, 1/2, 1)", "N*mm", g.V*math.Abs(g.X)*part)
		J := c.Let("J", "(b_m + h_m)*pow(t_f, 3)/3", "mm^4", (b+h)*g.Tf*g.Tf*g.Tf/3)
		tau = c.Let("tau_T", "T_1*t_f/J", "MPa", T*g.Tf/J)
		return c.Let("sigma_w", "0*MPa", "MPa", 0), tau
	}
	es := c.Let("e_s", "3*pow(b_m, 2)*t_f/(6*b_m*t_f + h_m*t_w)", "mm", 3*b*b*g.Tf/(6*b*g.Tf+h*g.Tw))
	T := c.Let("T_1", "V*abs(x + e_s)*when(ends > 0, 1/2, 1)", "N*mm", g.V*math.Abs(g.X+es)*part)
	J := c.Let("J", "(2*b_m*pow(t_f, 3) + h_m*pow(t_w, 3))/3", "mm^4", (2*b*g.Tf*g.Tf*g.Tf+h*g.Tw*g.Tw*g.Tw)/3)
	Cw := c.Let("C_w", "pow(h_m, 2)*pow(b_m, 3)*t_f/12*(3*b_m*t_f + 2*h_m*t_w)/(6*b_m*t_f + h_m*t_w)", "mm^6",
		h*h*b*b*b*g.Tf/12*(3*b*g.Tf+2*h*g.Tw)/(6*b*g.Tf+h*g.Tw))
	a := c.Let("a", "sqrt(E*C_w/(G*J))", "mm", math.Sqrt(g.E*Cw/(g.G*J)))
	x := c.Let("x_a", "min(L*when(ends > 0, 1/2, 1)/a, 300)", "", min(g.L*part/a, 300))
	B := c.Let("B_w", "T_1*a*(exp(x_a) - exp(-x_a))/(exp(x_a) + exp(-x_a))", "N*mm^2", T*a*(math.Exp(x)-math.Exp(-x))/(math.Exp(x)+math.Exp(-x)))
	sigma = c.Let("sigma_w", "B_w*h_m/2*max(b_m - e_s, e_s)/C_w", "MPa", B*h/2*max(b-es, es)/Cw)
	Sw := c.Let("S_w", "h_m*t_f*pow(b_m - e_s, 2)/4", "mm^4", h*g.Tf*(b-es)*(b-es)/4)
	tau = c.Let("tau_T", "T_1*max(t_f, t_w)/J + T_1*S_w/(C_w*t_f)", "MPa", T*max(g.Tf, g.Tw)/J+T*Sw/(Cw*g.Tf))
	return sigma, tau
}

func (g *Twist) web() float64 {
	if g.Shape > 0 {
		return g.Tf
	}
	return g.Tw
}

func (g *Twist) off() float64 {
	if g.Shape > 0 {
		return g.Tf / 2
	}
	return g.Tf
}
