package arch

// What the two legs of a plate do to each other across the crown. Each plate is a portal frame with rigid corners: legs that bend over the opening's
// height, a crown that bends over its width, thrust along the crown's axis. Two bounds hold the stiffnesses of crown and feet between them in size:
//
//	free: the feet neither keep the legs from spreading nor from turning. A load down bends the crown as a simple beam, a push along the rail bends
//	      it by all its moment at the legs' tops, a side force bends it flat from leg to leg.
//	held: fixed feet under a crown that is limp beside the legs. A load down spreads the legs by the thrust H, for which their bending alone counts:
//	      by Castigliano, with P/2 of a load on each, u half the opening, a a leg's axis from the middle, z up to the opening's height and the crown's
//	      axis at c, the moment -P/2 (a - u/2) + H (c - z) does no work on H. A push along the rail bends the legs as posts up to the opening's
//	      height, or farther where the crown over a low, wide opening is too limp to turn them back below it. A side force twists them by half of what would keep the crown's ends from turning.
//
// At either bound and between, all is in balance, so that ductile parts are safe when they are at any one of them (lower bound theorem).

import "lugwright/part"

// hold says which bound.
type hold bool

const (
	free hold = false
	held hold = true
)

// other is what the other leg does to the one over a foot, for each newton of the half that it carries of a component: a force and a couple at the pin.
func (d *design) other(c part.Component, f foot, how hold) (thrust, couple part.Vec) {
	force, _ := c.Unit()
	a := d.reach()
	switch {
	case force.Z != 0:
		h, turn := d.spread(how)
		down := -force.Z
		return part.Vec{X: f.side * down * h}, part.Vec{Y: f.side * down * (a + turn - d.pinZ*h)}
	case force.X != 0: // one foot is pressed, the other lifted
		inflection := 0.0 // of the legs, from their feet
		if how == held {
			inflection = d.inflection()
		}
		return part.Vec{Z: -f.side * force.X * (d.pinZ - inflection) / a}, part.Vec{}
	}
	if how == held {
		a /= 2
	}
	return part.Vec{}, part.Vec{Z: f.side * force.Y * a}
}

// spread is the thrust of a leg under each newton down on it, and the moment at its foot, tension inside.
func (d *design) spread(how hold) (thrust, turn float64) {
	if how == free {
		return 0, 0
	}
	c := (d.openZ + d.top()) / 2
	e := c - d.openZ
	lever := 2.0 / 3 * (c*c*c - e*e*e) / (c*c - e*e)
	end := d.reach() - d.half/2
	thrust = end / lever
	return thrust, thrust*c - end
}

// inflection is how far fixed legs bend as posts under a push along the rail. By Castigliano the shear in the crown's middle leaves no moment at z where
// o z - o^2/2 = (p - z) r, with o the opening's height, p the pin's and r = u^3 I_leg/(3 a^2 I_crown). No crown is thinner than a leg; corners give a
// little, for which r is taken a/u times as large.
func (d *design) inflection() float64 {
	o, r := d.openZ, d.half*d.half/(3*d.reach())
	return max(o, (o*o/2+d.pinZ*r)/(o+r))
}
