package keeperplate

// Sizes, and what does not fit.

import (
	"math"

	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
)

// design's points lie in the ear's face: X along the bolts, Y up.
type design struct {
	v                        geometry.Values
	pin, slot                float64 // radius of the pin; depth of its slot, 0 for a plate over its end
	width, height, t, radius float64
	top                      float64 // the plate's upper edge
	bolts                    fab.Bolting
	points                   []shape.Point
}

func read(v geometry.Values) *design {
	d := &design{
		v: v, pin: v.MM("pin_diameter") / 2, width: v.MM("width"), height: v.MM("height"), t: v.MM("thickness"), radius: v.MM("corner_radius"),
		bolts: fab.ReadBolts(v),
	}
	d.top = d.height / 2
	level := 0.0
	if v.Word("form") == "slot" {
		d.slot = v.MM("slot_depth")
		d.top = d.slot - d.pin
		level = d.top - v.MM("bolt_drop")
	}
	d.points = fab.Grid(fab.Spread(2, v.MM("bolt_pitch")), []float64{level})
	return d
}

// box is the plate.
func (d *design) box() shape.Box {
	return shape.Box{Min: shape.Point{X: -d.width / 2, Y: d.top - d.height}, Max: shape.Point{X: d.width / 2, Y: d.top}}
}

func (d *design) outline() (shape.Loop, error) {
	box := d.box()
	return shape.RoundedRect(box.Min, box.Max, d.radius)
}

// chord is how wide the plate's edge is in the slot.
func (d *design) chord() float64 { return 2 * math.Sqrt(d.slot*(2*d.pin-d.slot)) }

func (d *design) check() error {
	var n fab.Needs
	dia := d.bolts.DiaMM
	outer, err := d.outline()
	n.That(err == nil, "corner_radius", fab.MM(d.radius), "at most half the shorter side, %.4g mm", min(d.width, d.height)/2)
	if !n.ThatHole(d.bolts.HoleMM, "bolt_size", d.bolts.Size) || n.Err() != nil {
		return n.Err()
	}
	if d.slot > 0 {
		// A third of the pin: common practice, no source.
		n.That(d.slot <= 2*d.pin/3, "slot_depth", fab.MM(d.slot), "at most a third of the pin, %.4g mm", 2*d.pin/3)
		least := d.chord() + 2*d.radius
		n.That(d.width >= least, "width", fab.MM(d.width), "at least %.4g mm: the slot between the plate's corners", least)
		drop := d.v.MM("bolt_drop")
		n.That(drop >= d.slot, "bolt_drop", fab.MM(drop), "at least slot_depth, %.4g mm, so that plate lies on ear at the bolts", d.slot)
	}
	if n.Err() != nil {
		return n.Err()
	}
	room := d.pinEdge()
	n.That(room >= fab.BoltEdge(dia), "bolt_pitch", fab.MM(d.v.MM("bolt_pitch"))+", which leaves "+fab.MM(max(0, room))+" from a bolt to the pin's hole", "1.25 d = %.4g mm there", fab.BoltEdge(dia))
	n.ThatPitch(2, d.v.MM("bolt_pitch"), dia, "bolt_pitch")
	param, value := "height", d.height
	if side := d.width/2 - d.points[1].X; side < fab.BoltEdge(dia) {
		param, value = "width", d.width
	}
	if n.ThatEdge(outer, d.points, dia, param, value) {
		n.ThatPresses(outer, d.points, d.radius, "corner_radius")
	}
	return n.Err()
}

// pinEdge is from a bolt's centre to the pin's hole in the ear.
func (d *design) pinEdge() float64 { return d.points[0].Norm() - d.pin }
