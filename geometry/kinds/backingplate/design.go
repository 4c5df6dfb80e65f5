package backingplate

// Sizes, and what does not fit.

import (
	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
)

type design struct {
	v                        geometry.Values
	length, width, t, radius float64
	wall                     float64
	bolts                    fab.Bolting
	xs, ys                   []float64
}

func read(v geometry.Values) *design {
	return &design{
		v: v, length: v.MM("length"), width: v.MM("width"), t: v.MM("thickness"), radius: v.MM("corner_radius"), wall: v.MM("wall_thickness"),
		bolts: fab.ReadBolts(v), xs: fab.Spread(v.Count("bolt_columns"), v.MM("bolt_pitch")), ys: fab.Spread(v.Count("bolt_rows"), v.MM("bolt_gauge")),
	}
}

// middled is a rectangle about the middle of the bolts.
func middled(length, width float64) shape.Box {
	half := shape.Point{X: length / 2, Y: width / 2}
	return shape.Box{Min: half.Scale(-1), Max: half}
}

func (d *design) outline() (shape.Loop, error) {
	box := middled(d.length, d.width)
	return shape.RoundedRect(box.Min, box.Max, d.radius)
}

func (d *design) points() []shape.Point { return fab.Grid(d.xs, d.ys) }

func (d *design) check() error {
	var n fab.Needs
	outer, err := d.outline()
	n.That(err == nil, "corner_radius", fab.MM(d.radius), "at most half the shorter side, %.4g mm", min(d.length, d.width)/2)
	n.ThatHole(d.bolts.HoleMM, "bolt_size", d.bolts.Size)
	if n.Err() != nil {
		return n.Err()
	}
	dia := d.bolts.DiaMM
	n.ThatPitch(len(d.xs), d.v.MM("bolt_pitch"), dia, "bolt_pitch")
	n.ThatPitch(len(d.ys), d.v.MM("bolt_gauge"), dia, "bolt_gauge")
	d.reach(&n, d.xs, "length", d.length, "foot_length")
	d.reach(&n, d.ys, "width", d.width, "foot_width")
	if n.Err() == nil { // what is short now is short of a corner's arc
		if n.ThatEdge(outer, d.points(), dia, "corner_radius", d.radius) {
			n.ThatPresses(outer, d.points(), d.radius, "corner_radius")
		}
	}
	return n.Err()
}

// reach keeps bolts on the plate and on the foot one way.
func (d *design) reach(n *fab.Needs, at []float64, param string, value float64, foot string) {
	least := 2 * (at[len(at)-1] + fab.BoltEdge(d.bolts.DiaMM))
	n.That(value >= least-shape.TouchMM, param, fab.MM(value), "at least %.4g mm, with 1.25 d to the edge", least)
	least = 2*at[len(at)-1] + d.bolts.HoleMM
	n.That(d.v.MM(foot) >= least, foot, fab.MM(d.v.MM(foot)), "at least %.4g mm, over all holes", least)
}
