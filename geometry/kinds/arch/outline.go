package arch

// The arch in the plane of a plate: u along the rail from the cross member's middle, v up from the feet.

import (
	"math"

	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
)

// head is what stands on the legs' outer corners: an ear whose foot is as wide as the arch.
func (d *design) head() fab.Ear {
	return fab.Ear{Width: 2 * d.outer, Pin: d.pinZ - d.shoulder, End: d.end, HeadRadius: d.headR}
}

// top is how high the plate reaches.
func (d *design) top() float64 { return d.pinZ + d.end }

// crownAt is the height of the arch's underside at a distance from its middle: flat between the corners, then their arcs.
func (d *design) crownAt(u float64) float64 {
	past := math.Abs(u) - (d.half - d.archR)
	if past <= 0 {
		return d.openZ
	}
	return d.openZ - d.archR + math.Sqrt(max(d.archR*d.archR-past*past, 0))
}

// notchHalf is half the width of the notch for the bar, and notchTop its height.
func (d *design) notchHalf() float64 { return d.barW/2 + d.notchGap }
func (d *design) notchTop() float64  { return d.crossZ + d.barH + d.notchGap }

// notchSide is how high the straight sides of the notch reach: to its top, or to where a round one turns.
func (d *design) notchSide() float64 {
	if d.round {
		return d.crossZ + d.barH/2
	}
	return d.notchTop()
}

// outline draws a plate, counter-clockwise. The error says that no side can touch the head's arc, or that the outer corners cannot be rounded.
func (d *design) outline() (shape.Loop, error) {
	ear, err := d.head().Outline()
	if err != nil {
		return nil, err
	}
	n, flat, spring := d.notchHalf(), d.half-d.archR, d.openZ-d.archR
	at := func(u, v float64) shape.Point { return shape.Point{X: u, Y: v} }
	p := shape.NewPath(at(-d.outer, 0)).Line(at(-d.half, 0)).Line(at(-d.half, spring))
	meet := max(flat, n) // where the corner's arc ends: at the flat crown, or at a notch wider than that
	p.ArcCenter(at(-meet, d.crownAt(meet)), at(-flat, spring), false).Line(at(-n, d.crownAt(n))).Line(at(-n, d.notchSide()))
	if d.round {
		p.ArcCenter(at(n, d.notchSide()), at(0, d.notchSide()), false)
	} else {
		p.Line(at(n, d.notchSide()))
	}
	p.Line(at(n, d.crownAt(n))).Line(at(meet, d.crownAt(meet))).ArcCenter(at(d.half, spring), at(flat, spring), false).Line(at(d.half, 0)).Line(at(d.outer, 0))
	for i := range ear { // the ear's own foot is left out
		e := ear.Edge(i)
		if i == 0 {
			p.Line(at(d.outer, d.shoulder))
			continue
		}
		p.Arc(e.B.Add(at(0, d.shoulder)), e.Bulge)
	}
	loop, err := p.Close()
	if err != nil || d.shoulderR == 0 {
		return loop, err
	}
	return shape.FilletAll(loop, func(i int) float64 {
		if loop[i].Y == d.shoulder && math.Abs(loop[i].X) == d.outer {
			return d.shoulderR
		}
		return 0
	})
}

// thinnest is the least steel between the opening with its notch and the plate's outer edge.
func (d *design) thinnest(outer shape.Loop) float64 {
	var in, out []shape.Edge
	opening := false // drawn from one foot's inner corner to the other's
	for i, v := range outer {
		e := outer.Edge(i)
		switch {
		case v.Point == shape.Point{X: -d.half}:
			opening = true
		case v.Point == shape.Point{X: d.half}:
			opening = false
		}
		switch {
		case opening:
			in = append(in, e)
		case e.A.Y != 0 || e.B.Y != 0: // not under a foot
			out = append(out, e)
		}
	}
	least := math.Inf(1)
	for _, e := range in {
		for _, f := range out {
			least = min(least, shape.EdgeDistance(e, f))
		}
	}
	return least
}
