package fab

// A quarter turn of a whole bracket about z, so that a pin across the vehicle lies along it: x goes to y, y to -x. Plane
// coordinates of plates and bolts stay; only poses turn.

import "lugwright/part"

// QuarterTurn turns a bracket in place.
func QuarterTurn(b *part.Bracket) {
	for i := range b.Plates {
		turnPose(&b.Plates[i].Pose)
	}
	for i := range b.Members {
		turnPose(&b.Members[i].Pose)
	}
	for i := range b.Pins {
		turnAll(&b.Pins[i].Axis, &b.Pins[i].Center)
	}
	for i := range b.Bolts {
		turnPose(&b.Bolts[i].Pose)
	}
	for i := range b.Rods {
		turnPose(&b.Rods[i].Pose)
	}
	for i := range b.Welds {
		for k := range b.Welds[i].Segments {
			s := &b.Welds[i].Segments[k]
			turnAll(&s.A, &s.B)
		}
	}
	for i := range b.Contacts {
		turnPose(&b.Contacts[i].Pose)
	}
	for i := range b.Composites {
		turnAll(&b.Composites[i].From, &b.Composites[i].To)
	}
	for i := range b.Sweeps {
		turnAll(&b.Sweeps[i].From, &b.Sweeps[i].To)
	}
	for i := range b.LoadPoints {
		l := &b.LoadPoints[i]
		turnAll(&l.At, &l.Axis)
		for k := range l.Released {
			l.Released[k] = turnComponent(l.Released[k])
		}
		if l.Patch != nil {
			turnPose(&l.Patch.Pose)
		}
	}
	for i := range b.Shares {
		turnAll(&b.Shares[i].Ends[0], &b.Shares[i].Ends[1])
	}
	for i := range b.Paths {
		b.Paths[i].Component = turnComponent(b.Paths[i].Component)
		for k := range b.Paths[i].Branches {
			br := &b.Paths[i].Branches[k]
			turnAll(&br.At, &br.Thrust, &br.Couple)
		}
	}
}

func turnAll(vs ...*part.Vec) {
	for _, v := range vs {
		*v = part.Vec{X: 0 - v.Y, Y: v.X, Z: v.Z}
	}
}

func turnPose(p *part.Pose) { turnAll(&p.Origin, &p.U, &p.V) }

// turnComponent: a pull along x becomes one along y, a pull along y one against x; moments likewise.
func turnComponent(c part.Component) part.Component {
	switch c {
	case part.FxPlus, part.FxMinus, part.MxPlus, part.MxMinus:
		return c + 2
	case part.FyPlus, part.MyPlus:
		return c - 1
	case part.FyMinus, part.MyMinus:
		return c - 3
	}
	return c
}
