package subframelug

// Sizes, what does not fit, plate, weld.

import (
	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

type design struct {
	v                           geometry.Values
	fork                        fab.Fork
	below, lap, t, width, end   float64
	leg, tubeHeight, tubeCorner float64
}

func read(v geometry.Values) *design {
	return &design{
		v: v, fork: fab.ReadFork(v), below: v.MM("pin_below"), lap: v.MM("lap"), t: v.MM("thickness"), width: v.MM("width"), end: v.MM("end_distance"),
		leg: v.MM("weld"), tubeHeight: v.MM("tube_height"), tubeCorner: v.MM("tube_corner"),
	}
}

// ear is the plate upside down: its foot is the top edge.
func (d *design) ear() fab.Ear {
	return fab.Ear{Width: d.width, Pin: d.lap + d.below, End: d.end, HeadRadius: d.width / 2}
}

func (d *design) pinAt() part.Vec { return part.Vec{Y: d.t / 2, Z: -d.below} }

func (d *design) check() error {
	var n fab.Needs
	f, need := d.fork, d.fork.HoleMM/2+fab.Ligament(d.fork.PinMM)
	n.That(d.v.MM("finish_allowance") < f.HoleMM, "finish_allowance", fab.MM(d.v.MM("finish_allowance")), "less than the finished hole, %.4g mm", f.HoleMM)
	n.That(d.v.MM("bush_length") <= d.t, "bush_length", fab.MM(d.v.MM("bush_length")), "at most the lug, %.4g mm", d.t)
	// The fillet stands on the flat of the tube's side, clear of its upper corner.
	most := d.tubeHeight - d.tubeCorner - d.leg
	n.That(d.lap <= most, "lap", fab.MM(d.lap), "at most %.4g mm, so that the top fillet stands on the tube's flat side", most)
	n.That(d.lap-d.tubeCorner >= 4*d.leg, "lap", fab.MM(d.lap), "at least %.4g mm: the lower corner and a weld of 4 legs", d.tubeCorner+4*d.leg)
	n.That(d.width >= 2*need, "width", fab.MM(d.width), "at least %.4g mm, so that steel is left beside the pin hole", 2*need)
	n.That(d.end >= need, "end_distance", fab.MM(d.end), "at least %.4g mm, so that steel is left below the pin hole", need)
	n.That(d.below >= need, "pin_below", fab.MM(d.below), "at least %.4g mm, so that the hole clears the tube", need)
	f.Check(&n, d.below, "tube") // the ear on the lug's back is under it
	n.That(d.ear().HeadCenter() >= d.lap, "end_distance", fab.MM(d.end), "at least %.4g mm, so that the sides are straight along the tube", d.width/2-d.below)
	if n.Err() != nil {
		return n.Err()
	}
	outer, err := d.ear().Outline()
	n.That(err == nil, "width", fab.MM(d.width), "a width whose half circle touches the sides")
	if center := (shape.Point{Y: d.lap + d.below}); err == nil {
		n.That(outer.Contains(center) && outer.DistTo(center) >= need-shape.TouchMM, "end_distance", fab.MM(d.end), "more, so that %.4g mm is left round the pin hole", fab.Ligament(f.PinMM))
	}
	return n.Err()
}

func (d *design) plate() part.Plate {
	outer, _ := d.ear().Outline() // check has drawn it
	return part.Plate{
		ID: "lug", Name: "lug", ThicknessMM: d.t, Material: d.v.Word("material"), Outer: outer,
		Holes: []part.Hole{fab.PinHole(shape.Point{Y: d.lap + d.below}, d.fork.HoleMM, d.v.MM("finish_allowance"))},
		Pose:  part.Pose{Origin: part.Vec{Y: d.t / 2, Z: d.lap}, U: part.Vec{X: 1}, V: part.Vec{Z: -1}},
	}
}

// lapWeld runs along the top edge and down both ends to where the tube's lower corner begins.
func (d *design) lapWeld() part.WeldGroup {
	half := d.width / 2
	at := func(x, z float64) part.Vec { return part.Vec{X: x, Z: z} }
	return fab.EdgeWeld("w-lug", "lug", "tube", d.leg, d.v.Word("electrode"),
		part.WeldSegment{A: at(-half, d.tubeCorner), B: at(-half, d.lap)}, part.WeldSegment{A: at(-half, d.lap), B: at(half, d.lap)},
		part.WeldSegment{A: at(half, d.lap), B: at(half, d.tubeCorner)})
}
