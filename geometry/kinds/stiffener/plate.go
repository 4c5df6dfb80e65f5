package stiffener

// Outline, and what does not fit.

import (
	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

type design struct {
	v               geometry.Values
	t, width, high  float64
	cut, weld, arm  float64 // opening at a corner, load from the web
	three, rootHole bool
	webFrom, webTo  float64 // the web's weld, down from the loaded flange
}

func read(v geometry.Values) *design {
	d := &design{
		v: v, t: v.MM("thickness"), width: v.MM("width"), high: v.MM("height"), weld: v.MM("weld"), arm: v.MM("load_distance"),
		cut: fab.Snipe(v.MM("root"), v.MM("snipe_clearance")), three: v.Word("sides") == "three", rootHole: v.Word("corner") == "root hole",
	}
	d.webFrom, d.webTo = d.cut, d.high
	if d.three {
		d.webTo -= d.cut
	}
	return d
}

func (d *design) check() error {
	var n fab.Needs
	// Fillet length at least 4 legs: AISC 360-16 J2.2b.
	least := d.cut + 4*d.weld
	n.That(d.width >= least, "width", fab.MM(d.width), "at least %.4g mm: the opening at the corner and a weld of 4 legs", least)
	least = d.high - (d.webTo - d.webFrom) + 4*d.weld
	n.That(d.high >= least, "height", fab.MM(d.high), "at least %.4g mm: the openings at the corners and a weld of 4 legs", least)
	n.That(d.arm >= d.cut && d.arm <= d.width, "load_distance", fab.MM(d.arm), "%.4g to %.4g mm, over the plate's weld to the flange", d.cut, d.width)
	return n.Err()
}

// pose: u away from the web, v down it.
func (d *design) pose() part.Pose { return part.Pose{U: part.Vec{Y: 1}, V: part.Vec{Z: -1}} }

func (d *design) plate() part.Plate {
	path := shape.NewPath(shape.Point{X: d.cut}).Line(shape.Point{X: d.width}).Line(shape.Point{X: d.width, Y: d.high})
	if d.three {
		d.open(path.Line(shape.Point{X: d.cut, Y: d.high}), shape.Point{Y: d.high}, shape.Point{Y: d.webTo})
	} else {
		path.Line(shape.Point{Y: d.high})
	}
	d.open(path.Line(shape.Point{Y: d.cut}), shape.Point{}, shape.Point{X: d.cut})
	outer, _ := path.Close() // check has found room for every edge
	return part.Plate{ID: "stiffener", Name: "stiffener", ThicknessMM: d.t, Material: d.v.Word("material"), Outer: outer, Pose: d.pose()}
}

// open goes past a corner, straight or round about it, to a point.
func (d *design) open(path *shape.Path, corner, to shape.Point) {
	if d.rootHole {
		path.ArcCenter(to, corner, false)
		return
	}
	path.Line(to)
}
