package lapplate

// Lap outlines.

import (
	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

// edge is the lap's edge on the positive half, from the joint's middle on the lower side round to the middle on the upper.
func (d *design) edge(l lap) []shape.Point {
	half, r := d.width/2, l.reach
	if d.nose == 0 {
		return []shape.Point{{Y: -half}, {X: r, Y: -half}, {X: r, Y: half}, {Y: half}}
	}
	n := d.nose / 2
	if d.taper == 0 {
		return []shape.Point{{Y: -half}, {X: r, Y: -n}, {X: r, Y: n}, {Y: half}}
	}
	start := r - d.taper
	return []shape.Point{{Y: -half}, {X: start, Y: -half}, {X: r, Y: -n}, {X: r, Y: n}, {X: start, Y: half}, {Y: half}}
}

// outline joins the edge with its reflection. Middle points that lie on a straight side go.
func (d *design) outline(l lap) shape.Loop {
	right := d.edge(l)
	if d.nose == 0 || d.taper > 0 {
		right = right[1 : len(right)-1]
	}
	points := append([]shape.Point(nil), right...)
	for i := len(right) - 1; i >= 0; i-- {
		points = append(points, shape.Point{X: 0 - right[i].X, Y: right[i].Y})
	}
	return shape.Polyline(points...).Normalize()
}

// level is the z of the lap's middle plane.
func (d *design) level(l lap) float64 { return l.side * (d.t + d.lapT) / 2 }

// pose lies in a plane off the flats' middle, its normal away from them.
func pose(l lap, off float64) part.Pose {
	return part.Pose{Origin: part.Vec{Z: l.side * off}, U: part.Vec{X: 1}, V: part.Vec{Y: l.side}}
}

// bolts gives the bolt centres of one half, +1 or -1 along x.
func (d *design) bolts(sign float64) []shape.Point {
	points := fab.Grid(d.rows, d.across)
	for i := range points {
		points[i].X *= sign
	}
	return points
}

func (d *design) plate(l lap) part.Plate {
	p := part.Plate{
		ID: l.id, Name: "lap plate", ThicknessMM: d.lapT, Material: d.v.Word("lap_material"), Outer: d.outline(l), Pose: pose(l, (d.t+d.lapT)/2),
	}
	if d.bolted {
		p.Holes = fab.BoltHoles(append(d.bolts(1), d.bolts(-1)...), d.bolting.HoleMM)
	}
	return p
}
