package arch

// What a side force on one plate does to the legs of both, and to the bar between them, as its welds tie the plates: a frame across the rail. Its posts
// are the plates, pushed at the pin's height p; its beam is the bar at its own middle, h. Fillets give little, so that each part of what they carry is the
// more of feet fixed and feet free to turn:
//
//	moments: posts whose feet turn hold the couple F p by push and pull alone, so that the bar's ends bring them p F in all. The far post is bent at the
//	         bar by its shear alone, h F/2, which leaves (p - h/2) F to the near one, by a bar that does not bend. Both are less on fixed feet.
//	thrust:  by slope deflection on fixed feet F/2 + 3 k (p - h) F/(h (4 k + 2 k_b)), k = I/h of both legs and k_b of the bar; F/2 on feet that turn.

import (
	"math"

	"lugwright/part"
)

// tiedLeg is one of four: a plate's leg over a foot, and what the others do to it for each newton of its quarter.
type tiedLeg struct {
	plate          plate
	foot           foot
	thrust, couple part.Vec
}

func (d *design) tied(c part.Component, on, other plate) []tiedLeg {
	force, _ := c.Unit()
	h := d.crossZ + d.barH/2
	far := d.barThrust(h)
	lift := force.Y * d.pinZ / (d.y(on) - d.y(other)) // of the far plate
	var out []tiedLeg
	for _, f := range feet {
		for _, p := range [2]plate{on, other} {
			share, up, turn := 1-far, -lift, d.pinZ-far*h-(d.pinZ-h/2) // turn: at the foot
			if p == other {
				share, up, turn = far, lift, far*h-h/2
			}
			foot := part.Vec{X: f.side * d.reach(), Y: d.y(p)}
			own := part.Vec{Y: force.Y * share / 2, Z: up / 2}
			couple := part.Vec{X: -force.Y * turn / 2}.Sub(d.seat(on).Sub(foot).Cross(own))
			quarters := float64(2 * len(feet))
			out = append(out, tiedLeg{p, f, own.Scale(quarters).Sub(force), couple.Scale(quarters)})
		}
	}
	return out
}

// barThrust is what the bar hands on of a side force, on fixed feet.
func (d *design) barThrust(h float64) float64 {
	bar := d.barW * d.barH * d.barH * d.barH / 12
	if d.round {
		bar = math.Pi * math.Pow(d.barW, 4) / 64
	}
	k, kb := 2*d.leg*d.t*d.t*d.t/12/h, bar/(2*d.lug.Inner()+d.t)
	return 0.5 + 3*k*(d.pinZ-h)/(h*(4*k+2*kb))
}
