package mesh

// On which side of a line a point lies, without rounding.

import (
	"math"
	"math/bits"

	"lugwright/geometry/shape"
)

// gridPerMM are the whole numbers of the grid on which faces are divided: nanometres.
const gridPerMM = 1e6

// node is a point of the grid.
type node struct{ x, y int64 }

func onGrid(p shape.Point) node {
	return node{int64(math.Round(p.X * gridPerMM)), int64(math.Round(p.Y * gridPerMM))}
}

// above is the order of the sweep: from the top down, from left to right where two points are level.
func (a node) above(b node) bool { return a.y > b.y || a.y == b.y && a.x < b.x }

// side is 1 where c lies to the left of the way from a to b, -1 to the right, 0 on it. Coordinates are within 2^61.
func side(a, b, c node) int { return twice(a, b, c).sign() }

// twice is twice the area of a triangle, positive when it is wound counter-clockwise.
func twice(a, b, c node) wide {
	return multiply(b.x-a.x, c.y-a.y).sub(multiply(b.y-a.y, c.x-a.x))
}

// wide is a whole number of 128 bits, in two's complement.
type wide struct{ hi, lo uint64 }

func multiply(p, q int64) wide {
	hi, lo := bits.Mul64(uint64(p), uint64(q))
	return wide{hi - uint64(p>>63&q) - uint64(q>>63&p), lo}
}

func (a wide) add(b wide) wide {
	lo, carry := bits.Add64(a.lo, b.lo, 0)
	hi, _ := bits.Add64(a.hi, b.hi, carry)
	return wide{hi, lo}
}

func (a wide) sub(b wide) wide {
	lo, borrow := bits.Sub64(a.lo, b.lo, 0)
	hi, _ := bits.Sub64(a.hi, b.hi, borrow)
	return wide{hi, lo}
}

func (a wide) sign() int {
	switch {
	case int64(a.hi) < 0:
		return -1
	case a == wide{}:
		return 0
	}
	return 1
}
