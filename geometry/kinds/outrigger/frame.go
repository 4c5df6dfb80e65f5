package outrigger

// What the head plate brings to each plate, by statics. Forces in the planes of the plates divide by the lever of the load between them, and so does a
// couple that bends both edgewise. A couple about the axis away from the web, and one about the upright, are held by push and pull of the two.
//
// A force along the rail comes to the upper edges, half to each, and there are two bounds:
//
//	free: the head plate's welds are hinges. Each plate is a cantilever bent the weak way, from the load to its root, and twisted by its upper edge's
//	      distance from its shear centre.
//	held: the plates' outer ends cannot turn, and their roots hold nothing of it. What would bend and twist the plates there comes to the welds that
//	      hold the ends, and goes on as push and pull of the two plates: in plan, and up and down.
//
// An elastic frame lies between, whatever its base plate gives. What holds the ends is the head plate or, where there is one, the end tie.

import "lugwright/part"

// load is what comes to one plate for each N or N*mm of a component, its moment about the load's place.
type load struct{ f, m part.Vec }

func (l load) plus(o load) load  { return load{l.f.Add(o.f), l.m.Add(o.m)} }
func (l load) by(k float64) load { return load{l.f.Scale(k), l.m.Scale(k)} }

// at is a force at a place, with its moment about another.
func at(f, place, about part.Vec) load { return load{f, place.Sub(about).Cross(f)} }

// place is where the load is, with as much off the middle.
func (d *design) place(off float64) part.Vec { return part.Vec{X: d.out, Y: off, Z: d.up} }

// free is a plate's part of a component, with hinges under the head plate.
func (d *design) free(c part.Component, off float64, a arm) load {
	f, m := c.Unit()
	p, s, y := d.place(off), d.spacing(), d.y(a)
	lever := 0.5 + a.side*off/s
	inPlane := at(part.Vec{X: f.X * lever, Z: f.Z * lever}, part.Vec{X: p.X, Y: y, Z: p.Z}, p)
	inPlane.m.Y += m.Y * lever
	across := part.Vec{X: -a.side * m.Z / s, Y: f.Y / 2, Z: a.side * (m.X + (d.top()-p.Z)*f.Y) / s}
	return inPlane.plus(at(across, part.Vec{X: p.X, Y: y, Z: d.top()}, p))
}

// turned is what a plate gets beside that where its outer end is held, at a place of its middle plane: zero over both.
func (d *design) turned(c part.Component, off float64, a arm, x, z float64) load {
	f, _ := c.Unit()
	length, s := d.out-d.foot(), d.spacing()
	l := at(part.Vec{X: -a.side * f.Y * length / s, Z: -a.side * f.Y * d.top() / s}, part.Vec{X: x, Y: d.y(a), Z: z}, d.place(off))
	l.m = l.m.Add(part.Vec{X: f.Y * d.top() / 2, Z: -f.Y * length / 2})
	return l
}

// leg gives a branch that is one of some equal legs its load.
func leg(br part.Branch, c part.Component, l load, legs float64) part.Branch {
	f, m := c.Unit()
	br.Thrust, br.Couple = l.f.Scale(legs).Sub(f), l.m.Scale(legs).Sub(m)
	return br
}
