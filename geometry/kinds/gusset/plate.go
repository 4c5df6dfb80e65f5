package gusset

// Outline, lightening hole, and what does not fit.

import (
	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

type design struct {
	v         geometry.Values
	t, weld   float64
	hole, arm float64 // lightening hole diameter, load from the standing face
	corner    fab.Corner
}

func read(v geometry.Values) *design {
	d := &design{v: v, t: v.MM("thickness"), weld: v.MM("weld"), hole: v.MM("hole_diameter"), arm: v.MM("load_distance")}
	d.corner = fab.Corner{AlongU: v.MM("along"), AlongV: v.MM("down"), Snipe: fab.Snipe(v.MM("corner_weld"), v.MM("snipe_clearance"))}
	if v.Word("shape") == "trapezoid" {
		d.corner.NoseU, d.corner.NoseV = v.MM("nose"), v.MM("nose")
	}
	return d
}

func (d *design) check() error {
	var n fab.Needs
	c := d.corner
	// Fillet length at least 4 legs: AISC 360-16 J2.2b.
	least := c.Snipe + 4*d.weld
	n.That(c.AlongU >= least, "along", fab.MM(c.AlongU), "at least %.4g mm: snipe and a weld of 4 legs", least)
	n.That(c.AlongV >= least, "down", fab.MM(c.AlongV), "at least %.4g mm: snipe and a weld of 4 legs", least)
	shorter := min(c.AlongU, c.AlongV)
	n.That(c.NoseU <= shorter, "nose", fab.MM(c.NoseU), "at most the shorter leg, %.4g mm", shorter)
	n.That(d.arm >= c.Snipe && d.arm <= c.AlongU, "load_distance", fab.MM(d.arm), "%.4g to %.4g mm, over the gusset's weld to the shelf", c.Snipe, c.AlongU)
	n.That(c.AlongV <= d.v.MM("clear_height"), "down", fab.MM(c.AlongV), "at most the standing face's clear height, %.4g mm", d.v.MM("clear_height"))
	if n.Err() == nil && d.hole > 0 {
		d.checkHole(&n)
	}
	return n.Err()
}

// checkHole keeps 1.5 t and no less than 10 mm beside a lightening hole. Common practice, no source.
func (d *design) checkHole(n *fab.Needs) {
	outer, least := d.corner.Outline(), max(1.5*d.t, 10)
	room := 2 * (outer.DistTo(d.holeAt()) - least)
	n.That(d.hole >= max(d.t, 6), "hole_diameter", fab.MM(d.hole), "at least %.4g mm, the plate's thickness and no less than 6 mm; 0 for none", max(d.t, 6))
	n.That(d.hole <= room, "hole_diameter", fab.MM(d.hole), "at most %.4g mm here, so that %.4g mm is left beside it; 0 for none", max(0, room), least)
}

func (d *design) holeAt() shape.Point {
	return shape.Outline{Outer: d.corner.Outline()}.Properties().Centroid
}

// pose: u away from the standing face, v down it.
func (d *design) pose() part.Pose { return part.Pose{U: part.Vec{Y: 1}, V: part.Vec{Z: -1}} }

func (d *design) plate() part.Plate {
	p := part.Plate{
		ID: "gusset", Name: "gusset", ThicknessMM: d.t, Material: d.v.Word("material"), Outer: d.corner.Outline(), Pose: d.pose(),
	}
	if d.hole > 0 {
		p.Holes = []part.Hole{{ID: "lightening", Center: d.holeAt(), DiaMM: d.hole, CutMM: d.hole, Purpose: part.ForLightness, Finish: part.AsCut}}
	}
	return p
}
