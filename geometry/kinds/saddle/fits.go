package saddle

// What does not fit of the base plate and its bolts.

import (
	"fmt"
	"math"

	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
)

// base is the base plate's outline in x and y.
func (d *design) base() (shape.Loop, error) {
	return shape.RoundedRect(shape.Point{X: -d.baseL / 2, Y: -d.baseW / 2}, shape.Point{X: d.baseL / 2, Y: d.baseW / 2}, d.baseR)
}

func (d *design) checkBase(n *fab.Needs) {
	n.ThatHole(d.bolts.HoleMM, "bolt_size", d.bolts.Size)
	n.That(d.baseL >= d.foot+2*d.leg, "base_length", fab.MM(d.baseL), "at least the side plates and their weld ends, %.4g mm", d.foot+2*d.leg)
	wide := 2 * (d.outer() + d.leg)
	n.That(d.baseW >= wide, "base_width", fab.MM(d.baseW), "at least the side plates and their welds, %.4g mm", wide)
	clear := d.v.MM("wall_clear_width")
	n.That(d.baseW <= clear, "base_width", fab.MM(d.baseW), "at most wall_clear_width, %.4g mm", clear)
	n.That(d.baseR <= min(d.baseL, d.baseW)/2, "base_corner_radius", fab.MM(d.baseR), "at most half the smaller side, %.4g mm", min(d.baseL, d.baseW)/2)
	if n.Err() == nil {
		d.checkBolts(n)
	}
}

func (d *design) checkBolts(n *fab.Needs) {
	edge := fab.BoltEdge(d.bolts.DiaMM)
	n.ThatPitch(len(d.xs), d.v.MM("bolt_pitch"), d.bolts.DiaMM, "bolt_pitch")
	n.ThatPitch(len(d.rows), d.v.MM("bolt_gauge"), d.bolts.DiaMM, "bolt_gauge")
	outer, err := d.base()
	if !n.That(err == nil, "base_corner_radius", fab.MM(d.baseR), "a radius that the corners have room for") {
		return
	}
	points := fab.Grid(d.xs, d.rows)
	for _, p := range points {
		have := 0.0
		if outer.Contains(p) {
			have = outer.DistTo(p)
		}
		param := "bolt_pitch"
		if d.baseW/2-math.Abs(p.Y) < d.baseL/2-math.Abs(p.X) {
			param = "bolt_gauge"
		}
		if !n.That(have >= edge-shape.TouchMM, param, fmt.Sprintf("%s, which leaves %s from a bolt to the edge", fab.MM(d.v.MM(param)), fab.MM(have)), "1.25 d = %.4g mm to the edge", edge) {
			return
		}
		if what, off, room := d.nearest(p); off < room {
			n.That(false, "bolt_pitch", fmt.Sprintf("a bolt %s from the %s", fab.MM(off), what), "at least %.4g mm, so that a socket passes: another bolt_pitch or bolt_gauge", room)
			return
		}
	}
	n.ThatPresses(outer, points, d.baseR, "base_corner_radius")
}

// nearest is what stands on or hangs over the base plate with the least room for a socket at a point, how far it is and what it should be. The side plates
// count as one block: no tool reaches a bolt between them.
func (d *design) nearest(p shape.Point) (what string, off, room float64) {
	x, y := math.Abs(p.X), math.Abs(p.Y)
	past := func(xLo, xHi, yLo, yHi float64) float64 {
		return math.Hypot(max(xLo-x, 0, x-xHi), max(yLo-y, 0, y-yHi))
	}
	what, off, room = "side plates", past(0, d.foot/2, 0, d.outer()), fab.SocketRoom(d.bolts.DiaMM, d.leg)
	if ear := past(d.earIn(), d.earOut(), 0, d.earEnd()); off >= room && ear < fab.SocketRoom(d.bolts.DiaMM, 0) {
		what, off, room = "ears over it", ear, fab.SocketRoom(d.bolts.DiaMM, 0)
	}
	if d.collarT > 0 {
		if collar := past(0, d.collarD/2, 0, d.collarY()+d.collarT/2); off >= room && collar < fab.SocketRoom(d.bolts.DiaMM, 0) {
			what, off, room = "collars over it", collar, fab.SocketRoom(d.bolts.DiaMM, 0)
		}
	}
	return what, off, room
}
