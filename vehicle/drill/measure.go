package drill

import "math"

// box is a rectangle on the web; far heights stand for the whole depth.
type box struct{ from, to, bottom, top float64 }

const far = 1e7

func (z *Zone) box() box {
	if z.BottomMM == 0 && z.TopMM == 0 {
		return box{z.FromMM, z.ToMM, -far, far}
	}
	return box{z.FromMM, z.ToMM, z.BottomMM, z.TopMM}
}

func (b *Bracket) box() box { return box{b.FromMM, b.ToMM, b.BottomMM, b.TopMM} }

// gap is the distance of two boxes, less than nought by how far one reaches into the other.
func (a box) gap(b box) float64 {
	dx, dz := max(b.from-a.to, a.from-b.to), max(b.bottom-a.top, a.bottom-b.top)
	if dx < 0 && dz < 0 {
		return max(dx, dz)
	}
	return math.Hypot(max(dx, 0), max(dz, 0))
}

// toEdge is the distance of a point from the box's edges, inside or out.
func (a box) toEdge(x, z float64) float64 {
	g := a.gap(box{x, x, z, z})
	return math.Abs(g)
}

// boxEdge is the distance of a box from another's edges: nought where it lies across one.
func (a box) boxEdge(b box) float64 {
	if g := a.gap(b); g >= 0 {
		return g
	}
	within := min(a.from-b.from, b.to-a.to, a.bottom-b.bottom, b.top-a.top)
	around := min(b.from-a.from, a.to-b.to, b.bottom-a.bottom, a.top-b.top)
	return max(within, around, 0)
}

// circle is a hole.
type circle struct {
	name    string
	x, z, d float64
}

func (c circle) edges(o circle) float64   { return math.Hypot(c.x-o.x, c.z-o.z) - (c.d+o.d)/2 }
func (c circle) centres(o circle) float64 { return math.Hypot(c.x-o.x, c.z-o.z) }
func (c circle) inLine(o circle) bool     { return math.Abs(c.x-o.x) < (c.d+o.d)/2 }

// toBox is from the hole's edge to a box, less than nought inside.
func (c circle) toBox(b box) float64 { return b.gap(box{c.x, c.x, c.z, c.z}) - c.d/2 }
