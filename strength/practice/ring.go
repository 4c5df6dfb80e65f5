package practice

// A tube's wall as a thin ring, for the limit states of any basis: it writes the lines of elementary ring theory and never compares.

import (
	"math"

	"lugwright/strength"
)

// RingUnderSaddle gives the greatest ring moment under a saddle that presses evenly over the angle beta on either side of its middle, as
// a part of force times mean radius. Held: support or lower saddle opposite, alike; the moments of two opposed point forces (Timoshenko, Strength of
// Materials) summed over the contact, P R/pi for beta = 0. Carried: the force goes on along the tube as shear in its wall, 3 P R/(4 pi) for
// beta = 0 (Formulas for Stress and Strain, circular rings, from memory); away from the saddle no more than 0.102 of the parts of the force.
// The symbols beta and carried are the limit state's.
func RingUnderSaddle(c *strength.Calc, beta, carried float64) float64 {
	s, k := math.Sincos(beta)
	under := (beta/math.Pi - (1-k)/2) / s
	aside := 1.0/2 - beta/(math.Pi*s)
	if carried > 0 {
		under = (beta + 1.5*s + (math.Pi-beta)*k - math.Pi) / (2 * math.Pi * s)
		aside = 0.102 * beta / s
	}
	under = c.Let("k_0", "when(carried > 0, (beta + 1.5*sin(beta) + (pi - beta)*cos(beta) - pi)/(2*pi*sin(beta)), (beta/pi - (1 - cos(beta))/2)/sin(beta))", "", under)
	aside = c.Let("k_90", "when(carried > 0, 0.102*beta/sin(beta), 1/2 - beta/(pi*sin(beta)))", "", aside)
	return c.Let("k_M", "max(k_0, k_90)", "", max(under, aside))
}

// RingWidth gives the mean radius of a tube and the length of its wall that works as a ring under a contact of length b: 0.78 sqrt(R t) more on
// each side, as for vessels on saddles (Zick 1951; ASME VIII-2, 4.15; from memory). The symbols D, t and b are the limit state's.
func RingWidth(c *strength.Calc, d, t, b float64) (r, width float64) {
	c.Need(d >= 10*t, "D >= 10*t", "a wall thin enough for ring theory")
	r = c.Let("R", "(D - t)/2", "mm", (d-t)/2)
	return r, c.Let("b_e", "b + 1.56*sqrt(max(R*t, 0*mm*mm))", "mm", b+1.56*math.Sqrt(max(r*t, 0)))
}

// Clamp is a tube without a sleeve that a bolt clamps across. The limit state that has it gives P_r, shape, H, B, t and w under these symbols.
type Clamp struct {
	Round         bool
	P, H, B, T, W float64
}

// Of gives the greatest moment in the clamped wall, its thrust, and the length of wall that works: a closed frame under two opposed forces in
// the middles of its walls, on the washer's length or the wall's width, to which it grows at 45 degrees (common practice); or a ring, on
// the ring's own length. Elementary.
func (g *Clamp) Of(c *strength.Calc) (m, n, width float64) {
	if g.Round {
		c.Need(math.Abs(g.H-g.B) <= 0.01*g.H, "abs(H - B) <= 0.01*H", "one diameter")
		c.Need(g.H >= 10*g.T, "H >= 10*t", "a wall thin enough for ring theory")
		R := c.Let("R", "(H - t)/2", "mm", (g.H-g.T)/2)
		width = c.Let("b_e", "w + 1.56*sqrt(max(R*t, 0*mm*mm))", "mm", g.W+1.56*math.Sqrt(max(R*g.T, 0)))
		m = c.Let("M_w", "P_r*R/pi", "N*mm", g.P*R/math.Pi)
		return m, c.Let("N_w", "P_r/2", "N", g.P/2), width
	}
	c.Need(g.H >= 4*g.T, "H >= 4*t", "side walls that are flat between their corners")
	c.Need(g.B >= 4*g.T, "B >= 4*t", "clamped walls that are flat between their corners")
	b, h := c.Let("b_m", "B - t", "mm", g.B-g.T), c.Let("h_m", "H - t", "mm", g.H-g.T)
	width = c.Let("b_e", "max(w, b_m)", "mm", max(g.W, b))
	m = c.Let("M_w", "P_r*b_m/4 - P_r*pow(b_m, 2)/(8*(b_m + h_m))", "N*mm", g.P*b/4-g.P*b*b/(8*(b+h)))
	return m, c.Let("N_w", "0*N", "N", 0), width
}
