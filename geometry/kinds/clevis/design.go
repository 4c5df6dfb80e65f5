package clevis

// Parameters read into names, and the few lengths that everything hangs on.

import (
	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/part"
)

type design struct {
	v      geometry.Values
	foot   foot
	turned bool
	middle float64 // y of the fork's middle

	pin, hole, height float64 // pin and hole diameter, pin above the foot
	inner, outer      float64 // fork's middle to the inner and to the outer face of an ear

	earT, earW, end float64
	earWeld         float64
	innerRun        float64 // of the fillets on the inner faces, from either end; 0: whole
	cheek           fab.Cheek
	gussetWeld      float64
	bolting         fab.Bolting
	snipe           float64 // at a corner that an ear's weld passes

	outside, between ribs // thickness 0 when there are none
}

// ribs are like plates that stand across the ears.
type ribs struct {
	param             string // first word of their parameters
	thickness, height float64
	spacing           float64
	at                []float64 // x of each middle plane
}

// ear is one side of the fork; side is +1 outboard, -1 inboard.
type ear struct {
	id   string
	side float64
}

var ears = [2]ear{{"ear-1", 1}, {"ear-2", -1}}

func read(v geometry.Values) *design {
	d := &design{
		v: v, foot: angleFoot{}, turned: v.Word("pin_axis") == "along", middle: v.MM("clevis_offset"),
		pin: v.MM("pin_diameter"), height: v.MM("pin_height"),
		earT: v.MM("ear_thickness"), earW: v.MM("ear_width"), end: v.MM("end_distance"), earWeld: v.MM("ear_weld"), innerRun: v.MM("inner_run"),
		cheek: fab.ReadCheek(v), gussetWeld: v.MM("gusset_weld"),
	}
	if v.Word("foot") == "base plate" {
		d.foot, d.middle = plateFoot{}, 0
	}
	d.bolting = fab.ReadBolts(v)
	d.hole = d.pin + v.MM("pin_clearance")
	d.inner = v.MM("lug_thickness")/2 + v.MM("gap")
	d.outer = d.inner + d.earT
	if 2*d.innerRun+d.earWeld > d.earW {
		d.innerRun = 0 // the runs meet
	}
	d.snipe = fab.Snipe(d.earWeld, v.MM("snipe_clearance"))
	which := v.Word("gussets")
	if which == "outer" || which == "both" {
		d.outside = readRibs(v, "outer_gusset")
	}
	if which == "between" || which == "both" {
		d.between = readRibs(v, "between")
	}
	return d
}

func readRibs(v geometry.Values, word string) ribs {
	r := ribs{param: word, thickness: v.MM(word + "_thickness"), height: v.MM(word + "_height"), spacing: v.MM(word + "_spacing")}
	r.at = fab.Spread(v.Count(word+"_count"), r.spacing)
	return r
}

// face is the y at a distance from the fork's middle on an ear's side.
func (d *design) face(e ear, off float64) float64 { return d.middle + e.side*off }

// center is the middle of the pin hole in an ear.
func (d *design) center(e ear) part.Vec {
	return part.Vec{Y: d.face(e, d.inner+d.earT/2), Z: d.height}
}

// weld is a fillet of this bracket on both faces of a plate.
func (d *design) weld(id, stands, on string, leg float64, runs ...part.WeldSegment) part.WeldGroup {
	return fab.Weld(id, stands, on, leg, d.v.Word("electrode"), runs...)
}
