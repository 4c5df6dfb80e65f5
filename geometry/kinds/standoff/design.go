package standoff

// Sizes, and what does not fit.

import (
	"fmt"
	"math"

	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
)

type design struct {
	v                          geometry.Values
	reach                      float64
	width, high, wall, corner  float64 // of the tube
	leg                        float64
	baseT, baseL, baseH, baseR float64
	endT                       float64
	bolt, hole                 float64
	xs, zs                     []float64
	out, up                    float64 // of the load
}

func read(v geometry.Values) *design {
	d := &design{
		v: v, reach: v.MM("reach"), width: v.MM("tube_width"), high: v.MM("tube_height"), wall: v.MM("tube_wall"), corner: v.MM("tube_corner"),
		leg: v.MM("tube_weld"), baseT: v.MM("base_thickness"), baseL: v.MM("base_length"), baseH: v.MM("base_height"), baseR: v.MM("base_corner_radius"),
		endT: v.MM("end_thickness"), out: v.MM("load_out"), up: v.MM("load_height"),
		xs: fab.Spread(v.Count("bolt_columns"), v.MM("bolt_pitch")), zs: fab.Spread(v.Count("bolt_rows"), v.MM("bolt_gauge")),
	}
	d.bolt, d.hole = fab.ReadBolt(v)
	return d
}

// tubeLength is what is sawn: from the base plate to the end plate.
func (d *design) tubeLength() float64 { return d.reach - d.baseT - d.endT }

// base is the base plate's outline, u up and v along the rail.
func (d *design) base() (shape.Loop, error) {
	return shape.RoundedRect(shape.Point{X: -d.baseH / 2, Y: -d.baseL / 2}, shape.Point{X: d.baseH / 2, Y: d.baseL / 2}, d.baseR)
}

// points are the bolts in the base plate's plane.
func (d *design) points() []shape.Point { return fab.Grid(d.zs, d.xs) }

func (d *design) check() error {
	var n fab.Needs
	short := min(d.width, d.high)
	n.That(d.wall <= short/4, "tube_wall", fab.MM(d.wall), "at most a quarter of the smaller side, %.4g mm", short/4)
	n.That(d.corner >= d.wall, "tube_corner", fab.MM(d.corner), "at least the wall, %.4g mm", d.wall)
	n.That(d.corner <= short/3, "tube_corner", fab.MM(d.corner), "at most a third of the smaller side, %.4g mm", short/3)
	n.That(d.tubeLength() >= 20, "reach", fab.MM(d.reach), "at least %.4g mm: base plate, 20 mm of tube and end plate", d.baseT+d.endT+20)
	n.That(short-2*d.corner >= 4*d.leg, "tube_weld", fab.MM(d.leg), "at most a quarter of the tube's flat, %.4g mm", (short-2*d.corner)/4)
	n.That(d.out > d.baseT && d.out <= d.reach, "load_out", fab.MM(d.out), "over %.4g up to %.4g mm, on the tube", d.baseT, d.reach)
	n.ThatHole(d.hole, "bolt_size", d.v.Word("bolt_size"))
	n.That(d.baseH <= d.v.MM("web_clear_height"), "base_height", fab.MM(d.baseH), "at most the web's clear height, %.4g mm", d.v.MM("web_clear_height"))
	n.That(d.baseH >= d.high+2*d.leg, "base_height", fab.MM(d.baseH), "at least the tube and its welds, %.4g mm", d.high+2*d.leg)
	n.That(d.baseL >= d.width+2*d.leg, "base_length", fab.MM(d.baseL), "at least the tube and its welds, %.4g mm", d.width+2*d.leg)
	n.That(d.baseR <= min(d.baseL, d.baseH)/2, "base_corner_radius", fab.MM(d.baseR), "at most half the smaller side, %.4g mm", min(d.baseL, d.baseH)/2)
	if n.Err() == nil {
		d.checkBolts(&n)
	}
	return n.Err()
}

func (d *design) checkBolts(n *fab.Needs) {
	pitch, gauge, edge := d.v.MM("bolt_pitch"), d.v.MM("bolt_gauge"), fab.BoltEdge(d.bolt)
	least := fab.BoltPitch(d.bolt)
	n.That(pitch >= least, "bolt_pitch", fab.MM(pitch), "at least 2 2/3 d = %.4g mm", least)
	n.That(len(d.zs) == 1 || gauge >= least, "bolt_gauge", fab.MM(gauge), "at least 2 2/3 d = %.4g mm", least)
	outer, err := d.base()
	if !n.That(err == nil, "base_corner_radius", fab.MM(d.baseR), "a radius that the corners have room for") {
		return
	}
	room := fab.SocketRoom(d.bolt, d.leg)
	for _, p := range d.points() {
		have := 0.0
		if outer.Contains(p) {
			have = outer.DistTo(p)
		}
		param := "bolt_pitch"
		if d.baseH/2-math.Abs(p.X) < d.baseL/2-math.Abs(p.Y) {
			param = "bolt_gauge"
		}
		if !n.That(have >= edge-shape.TouchMM, param, fmt.Sprintf("%s, which leaves %s from a bolt to the edge", fab.MM(d.v.MM(param)), fab.MM(have)), "1.25 d = %.4g mm to the edge", edge) {
			return
		}
		off := math.Hypot(max(0, math.Abs(p.X)-d.high/2), max(0, math.Abs(p.Y)-d.width/2))
		if !n.That(off >= room, "bolt_pitch", fmt.Sprintf("a bolt %s from the tube", fab.MM(off)), "at least %.4g mm, so that a socket passes the weld", room) {
			return
		}
	}
}
