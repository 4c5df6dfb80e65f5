package bodybracket

// Sizes, and what does not fit.

import (
	"fmt"
	"math"

	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

type design struct {
	v                                            geometry.Values
	forked, under                                bool
	fork                                         fab.Fork    // of the mount, on one plate
	lug                                          fab.BodyLug // of the mount, between two
	pin, hole                                    float64
	spacing, width, high, corner                 float64 // of the tubes
	gap                                          float64 // half of what is between them
	below, shoulder, end, t, headR, rise, relief float64
	leg                                          float64
	gusseted                                     bool
	gussetW, gussetL, nose, gussetT, gussetLeg   float64
	plates                                       []plate
}

// plate is one of the plates; sides are those of its faces that gussets stand on.
type plate struct {
	id    string
	y     float64
	sides []float64
}

// tube is one of the two; side is the sign of its x.
type tube struct {
	id, word string
	side     float64
}

var tubes = [2]tube{{"tube-front", "front", -1}, {"tube-rear", "rear", 1}}

func (p plate) weld(t tube) string { return "w-" + p.id + "-" + t.word }

func read(v geometry.Values) *design {
	d := &design{
		v: v, forked: v.Word("form") == "fork", under: v.Word("fit") == "under", fork: fab.ReadFork(v), lug: fab.ReadBodyLug(v),
		spacing: v.MM("tube_spacing"), width: v.MM("tube_width"), high: v.MM("tube_height"), corner: v.MM("tube_corner"),
		below: v.MM("pin_below"), shoulder: v.MM("shoulder"), end: v.MM("end_distance"), t: v.MM("thickness"), headR: v.MM("head_radius"), rise: v.MM("rise"), relief: v.MM("relief"), leg: v.MM("weld"),
		gusseted: v.Word("gussets") == "outer", gussetW: v.MM("gusset_width"), gussetL: v.MM("gusset_length"), nose: v.MM("gusset_nose"),
		gussetT: v.MM("gusset_thickness"), gussetLeg: v.MM("gusset_weld"),
	}
	d.pin, d.hole, d.gap = d.fork.PinMM, d.fork.HoleMM, (d.spacing-d.width)/2
	d.plates = []plate{{"plate", 0, []float64{1, -1}}}
	if d.forked {
		y := d.lug.Inner() + d.t/2
		d.plates = []plate{{"plate-1", y, []float64{1}}, {"plate-2", -y, []float64{-1}}}
	}
	return d
}

// reach is from the middle to where a tube holds the plate: its side, or its own middle.
func (d *design) reach() float64 {
	if d.under {
		return d.spacing / 2
	}
	return d.gap
}

// seam is where the weld on a tube begins and ends: heights beside it, or distances from the middle under it.
func (d *design) seam() (from, to float64) {
	if d.under {
		return d.gap + d.corner, d.gap + d.width - d.corner
	}
	return d.corner, d.rise
}

// holdZ is the height of the welds' middle.
func (d *design) holdZ() float64 {
	if d.under {
		return 0
	}
	return (d.corner + d.rise) / 2
}

func (d *design) snipe() float64 { return fab.Snipe(d.leg, d.v.MM("snipe_clearance")) }

// check goes from the whole to the detail: a later step builds on what an earlier one has accepted.
func (d *design) check() error {
	for _, step := range []func(*fab.Needs){d.checkFit, d.checkPin, d.checkHead, d.checkGussets} {
		var n fab.Needs
		step(&n)
		if err := n.Err(); err != nil {
			return err
		}
	}
	return nil
}

func (d *design) checkFit(n *fab.Needs) {
	n.That(2*d.gap >= 30, "tube_spacing", fab.MM(d.spacing), "at least 30 mm between the tubes, %.4g mm middle to middle", d.width+30)
	n.That(2*d.corner < min(d.width, d.high), "tube_corner", fab.MM(d.corner), "less than half the tube's smaller side, %.4g mm", min(d.width, d.high)/2)
	low, high := d.v.Ratio("hold_low"), d.v.Ratio("hold_high")
	n.That(low <= high, "hold_low", fmt.Sprintf("%.4g", low), "at most hold_high, %.4g", high)
	if d.under {
		from, to := d.seam()
		n.That(to-from >= 4*d.leg, "tube_width", fab.MM(d.width), "at least %.4g mm: corners and a weld of 4 legs", 2*d.corner+4*d.leg)
		// Horns that are no taller than half their width are no columns of a frame: what bends them is what passes the weld. Common practice, no source.
		n.That(d.relief <= d.width/2, "relief", fab.MM(d.relief), "at most half the tube's width, %.4g mm", d.width/2)
		return
	}
	n.That(d.rise <= d.high-d.corner, "rise", fab.MM(d.rise), "at most %.4g mm, on the tube's flat side", d.high-d.corner)
	n.That(d.rise-d.corner >= 4*d.leg, "rise", fab.MM(d.rise), "at least %.4g mm: corner and a weld of 4 legs", d.corner+4*d.leg)
}

func (d *design) checkPin(n *fab.Needs) {
	v := d.v
	n.That(v.MM("finish_allowance") < d.hole, "finish_allowance", fab.MM(v.MM("finish_allowance")), "less than the finished hole, %.4g mm", d.hole)
	if !d.forked {
		n.That(v.MM("bush_length") <= d.t, "bush_length", fab.MM(v.MM("bush_length")), "at most the plate, %.4g mm", d.t)
		room, words := math.Hypot(d.gap, d.below), "tubes"
		if d.gusseted && d.toGusset() < room {
			room, words = d.toGusset(), "gussets"
		}
		d.fork.Check(n, room, words)
		return
	}
	d.lug.Check(n)
	room := math.Hypot(d.gap, d.below) - fab.PaintGapMM
	n.That(d.lug.RadiusMM <= room, "lug_radius", fab.MM(d.lug.RadiusMM), "at most %.4g mm, so that the mount's lug swings clear of the tubes", room)
	least := fab.TorchGapMM + 2*d.leg
	n.That(2*d.lug.Inner() >= least, "gap", fab.MM(2*d.lug.Inner())+" between the plates", "at least %.4g mm between them (lug_thickness + 2 gap), so that a torch reaches the inner fillets", least)
}

func (d *design) checkHead(n *fab.Needs) {
	need := d.hole/2 + fab.Ligament(d.pin)
	n.That(d.half() >= need, "tube_spacing", fab.MM(d.spacing), "at least %.4g mm, so that steel is left beside the pin hole", d.spacing+2*(need-d.half()))
	n.That(d.end >= need, "end_distance", fab.MM(d.end), "at least %.4g mm, so that steel is left under the pin hole", need)
	over := d.below
	if d.under {
		over -= d.relief
	}
	n.That(over >= need, "pin_below", fab.MM(d.below), "at least %.4g mm, so that steel is left over the pin hole", d.below-over+need)
	half, low := d.half(), d.below+d.end-d.headR
	n.That(d.headR < half, "head_radius", fab.MM(d.headR), "less than half the plate's width, %.4g mm", half)
	n.That(low > d.shoulder, "head_radius", fab.MM(d.headR), "less than %.4g mm, so that the sides run straight down to the shoulder", d.below+d.end-d.shoulder)
	if n.Err() != nil {
		return
	}
	outer, err := d.outline()
	if !n.That(err == nil, "head_radius", fab.MM(d.headR), "a radius to which the plate's sides can run tangent, over a notch that its corners have room for") {
		return
	}
	have := 0.0
	if outer.Contains(d.eye()) {
		have = outer.DistTo(d.eye())
	}
	n.That(have >= need-shape.TouchMM, "head_radius", fab.MM(d.headR)+", which leaves "+fab.MM(max(0, have-d.hole/2))+" beside the pin hole", "more, so that %.4g mm is left", fab.Ligament(d.pin))
	o := shape.Outline{Outer: outer}
	n.That(o.Validate() == nil, "relief", fab.MM(d.relief), "a notch that leaves the plate whole")
}

func (d *design) checkGussets(n *fab.Needs) {
	if !d.gusseted {
		return
	}
	least := d.snipe() + 4*d.gussetLeg
	n.That(d.gussetW >= least, "gusset_width", fab.MM(d.gussetW), "at least %.4g mm: snipe and a weld of 4 legs", least)
	n.That(d.gussetL >= least, "gusset_length", fab.MM(d.gussetL), "at least %.4g mm: snipe and a weld of 4 legs", least)
	n.That(d.nose <= min(d.gussetW, d.gussetL), "gusset_nose", fab.MM(d.nose), "at most %.4g mm", min(d.gussetW, d.gussetL))
	side := d.gussetT/2 + d.gussetLeg
	if d.under {
		flat := d.width/2 - d.corner
		n.That(side <= flat, "gusset_thickness", fab.MM(d.gussetT), "at most %.4g mm, so that its fillets stand on the tube's flat", 2*(flat-d.gussetLeg))
		most := d.straight(d.spacing/2 + side)
		n.That(d.gussetL <= most, "gusset_length", fab.MM(d.gussetL), "at most %.4g mm, where the plate is still as wide as that under the tube's middle", max(0, most))
	} else {
		level := d.v.MM("gusset_level")
		n.That(level-side >= d.corner && level+side <= d.rise, "gusset_level", fab.MM(level), "between %.4g and %.4g mm, within the plate's end on the tube", d.corner+side, d.rise-side)
		n.That(d.gussetL <= d.gap-fab.TorchGapMM/2, "gusset_length", fab.MM(d.gussetL), "at most %.4g mm, so that a torch passes between two of them", d.gap-fab.TorchGapMM/2)
	}
	// A nut, washer or keeper over the pin's end is taken as 2 d across; the mount's fork is the mount's. Common practice, no source.
	have := d.toGusset()
	n.That(have >= d.pin, "gusset_length", fab.MM(d.gussetL)+", "+fab.MM(have)+" from the pin's centre", "at least the pin's diameter, %.4g mm, for its end", d.pin)
}

// toGusset is the least distance from the pin's centre to a gusset, seen along the pin.
func (d *design) toGusset() float64 {
	if d.under {
		return math.Hypot(d.spacing/2-d.gussetT/2, max(0, d.below-d.gussetL))
	}
	return math.Hypot(max(0, d.gap-d.gussetL), d.below+d.v.MM("gusset_level")-d.gussetT/2)
}

func (d *design) corners() fab.Corner {
	return fab.Corner{AlongU: d.gussetW, AlongV: d.gussetL, Snipe: d.snipe(), NoseU: d.nose, NoseV: d.nose}
}

func (d *design) eyeAt(p plate) part.Vec { return part.Vec{Y: p.y, Z: -d.below} }
