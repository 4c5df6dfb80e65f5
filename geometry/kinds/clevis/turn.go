package clevis

// A quarter turn of the whole bracket about z, so that the pin lies along the vehicle: x goes to y, y to -x. Plane
// coordinates of plates and bolts stay; only poses turn.

import "lugwright/part"

func quarterTurn(b *part.Bracket) {
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
	for i := range b.Welds {
		for k := range b.Welds[i].Segments {
			s := &b.Welds[i].Segments[k]
			turnAll(&s.A, &s.B)
		}
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
	}
	for i := range b.Paths {
		b.Paths[i].Component = turnComponent(b.Paths[i].Component)
		for k := range b.Paths[i].Branches {
			turnAll(&b.Paths[i].Branches[k].At)
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
