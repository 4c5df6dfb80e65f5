package shape

// Moving, turning and mirroring loops and outlines.

// Translate returns the loop moved by d.
func (l Loop) Translate(d Point) Loop {
	return l.mapped(func(p Point) Point { return p.Add(d) })
}

// Rotate returns the loop turned about a point, counter-clockwise positive.
func (l Loop) Rotate(rad float64, about Point) Loop {
	turn := Point{1, 0}.Rotate(rad)
	return l.mapped(func(p Point) Point { return p.Sub(about).turn(turn.X, turn.Y).Add(about) })
}

// MirrorX returns the loop with x negated (reflected in the y axis). The order is reversed so that the winding is kept.
func (l Loop) MirrorX() Loop { return l.mirrored(func(p Point) Point { return Point{-p.X, p.Y} }) }

// MirrorY returns the loop with y negated (reflected in the x axis). The order is reversed so that the winding is kept.
func (l Loop) MirrorY() Loop { return l.mirrored(func(p Point) Point { return Point{p.X, -p.Y} }) }

func (l Loop) mapped(f func(Point) Point) Loop {
	out := make(Loop, len(l))
	for i, v := range l {
		out[i] = Vertex{f(v.Point), v.Bulge}
	}
	return out
}

// mirrored reverses the reflected loop. Reflection and reversal each flip the bulge, so each edge keeps its own.
func (l Loop) mirrored(f func(Point) Point) Loop {
	out := l.mapped(f).Reverse()
	for i := range out {
		out[i].Bulge = -out[i].Bulge
	}
	return out
}

// Translate returns the outline moved by d.
func (o Outline) Translate(d Point) Outline {
	return o.mapped(func(l Loop) Loop { return l.Translate(d) })
}

// Rotate returns the outline turned about a point, counter-clockwise positive.
func (o Outline) Rotate(rad float64, about Point) Outline {
	return o.mapped(func(l Loop) Loop { return l.Rotate(rad, about) })
}

// MirrorX returns the outline with x negated, windings kept.
func (o Outline) MirrorX() Outline { return o.mapped(Loop.MirrorX) }

// MirrorY returns the outline with y negated, windings kept.
func (o Outline) MirrorY() Outline { return o.mapped(Loop.MirrorY) }

// Normalize returns the outline with every loop normalised, the outer wound counter-clockwise and the holes clockwise.
func (o Outline) Normalize() Outline {
	out := o.mapped(func(l Loop) Loop { return l.Normalize().CW() })
	out.Outer = out.Outer.CCW()
	return out
}

func (o Outline) mapped(f func(Loop) Loop) Outline {
	out := Outline{Outer: f(o.Outer)}
	for _, h := range o.Holes {
		out.Holes = append(out.Holes, f(h))
	}
	return out
}
