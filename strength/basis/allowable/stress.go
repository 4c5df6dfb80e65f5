package allowable

// Allowable stresses, and the round sections of pins.

import (
	"math"

	"lugwright/strength"
)

// allowed is the tensile stress allowed: the lesser by yield and by tensile strength.
func allowed(c *strength.Calc, fy, fu float64) float64 {
	ny, nu := c.Factor("n_y"), c.Factor("n_u")
	return c.Let("sigma_all", "min(F_y/n_y, F_u/n_u)", "MPa", min(fy/ny, fu/nu))
}

// allowedBare is the same where the yield strength may not be known, 0. Tensile strength then stands alone, and that
// is enough only where it governs: no carbon steel of our tables has more than twice its yield strength.
func allowedBare(c *strength.Calc, fy, fu float64) float64 {
	ny, nu := c.Factor("n_y"), c.Factor("n_u")
	known := 1.0
	if fy == 0 {
		known = nu / ny / 2
	}
	c.Let("k_y", "when(F_y > 0*MPa, 1, n_u/n_y/2)", "", known)
	c.Need(known >= 1, "k_y >= 1", "a yield strength that is given, or a tensile strength that governs whatever it is")
	s := fu / nu
	if fy > 0 {
		s = min(fy/ny, s)
	}
	return c.Let("sigma_all", "when(F_y > 0*MPa, min(F_y/n_y, F_u/n_u), F_u/n_u)", "MPa", s)
}

// allowedFloor is the same where the tensile strength may not be known, 0: it is no less than the yield strength.
func allowedFloor(c *strength.Calc, fy, fu float64) float64 {
	ny, nu := c.Factor("n_y"), c.Factor("n_u")
	return c.Let("sigma_all", "min(F_y/n_y, max(F_u, F_y)/n_u)", "MPa", min(fy/ny, max(fu, fy)/nu))
}

// allowedShear is the shear stress that gives as great a von Mises stress.
func allowedShear(c *strength.Calc, sigma float64) float64 {
	return c.Let("tau_all", "sigma_all/sqrt(3)", "MPa", sigma/math.Sqrt(3))
}

// allowedBearing is the stress allowed on a projected area.
func allowedBearing(c *strength.Calc, sigma float64) float64 {
	k := c.Factor("k_p")
	return c.Let("sigma_p", "k_p*sigma_all", "MPa", k*sigma)
}
