package clevis

// Ears and their heads.

import (
	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

func (d *design) ear() fab.Ear {
	e := fab.Ear{Width: d.earW, Pin: d.height, End: d.end, HeadRadius: d.earW / 2}
	if d.v.Word("head") == "tapered" {
		e.HeadRadius = d.v.MM("head_radius")
	}
	return e
}

func (d *design) earOutline() (shape.Loop, error) { return d.ear().Outline() }

func (d *design) earShape() (shape.Outline, error) {
	outer, err := d.earOutline()
	return shape.Outline{Outer: outer, Holes: []shape.Loop{shape.Circle(shape.Point{Y: d.height}, d.hole)}}, err
}

func (d *design) checkEars(n *fab.Needs) {
	v, r := d.ear().HeadCenter(), d.ear().HeadRadius
	least := d.earWeld + 1
	if d.v.Word("head") == "tapered" {
		if !n.That(r <= d.earW/2, "head_radius", fab.MM(r), "at most half the ear's width, %.4g mm", d.earW/2) {
			return
		}
		if !n.That(v >= least, "head_radius", fab.MM(r)+", whose arc would start below the foot's weld",
			"at most %.4g mm, so that the sides have a tangent to it", d.height+d.end-least) {
			return
		}
	} else if !n.That(v >= least, "ear_width", fab.MM(d.earW)+", whose round head would reach the foot's weld",
		"at most %.4g mm under this pin_height and end_distance", 2*(d.height+d.end-least)) {
		return
	}
	o, err := d.earShape()
	if !n.That(err == nil, "head_radius", fab.MM(r), "a radius to which the ear's sides can run tangent") {
		return
	}
	d.checkLigament(n, o)
	d.checkInnerRun(n)
	low := d.height - d.hole/2 - d.earWeld
	n.That(low >= fab.Ligament(d.pin), "pin_height", fab.MM(d.height), "at least %.4g mm, so that steel is left between hole and weld",
		d.hole/2+d.earWeld+fab.Ligament(d.pin))
	n.That(2*d.inner >= fab.TorchGapMM+2*d.earWeld, "gap", fab.MM(2*d.inner)+" between the ears",
		"at least %.4g mm between them (lug_thickness + 2 gap), so that a torch reaches the inner fillets", fab.TorchGapMM+2*d.earWeld)
}

// checkInnerRun keeps the runs of the inner faces long enough to count, 6 throats and 30 mm (EN 1993-1-8, 4.5.1(2)), and within the width on which the
// side load bends the ear: on one face alone nothing holds that.
func (d *design) checkInnerRun(n *fab.Needs) {
	least := max(30, 5*d.earWeld)
	least = max(least, (d.earW-d.rootWidth())/2+least)
	n.That(d.innerRun == 0 || d.innerRun >= least, "inner_run", fab.MM(d.innerRun),
		"at least %.4g mm, so that the runs count and lie where the side load bends the ear; 0, or half of ear_width, for the whole width", least)
}

// checkLigament names the parameter that leaves too little steel round the pin hole.
func (d *design) checkLigament(n *fab.Needs, o shape.Outline) {
	least, above := fab.Ligament(d.pin), d.end-d.hole/2
	have := o.Ligament(0)
	if !o.Outer.Contains(shape.Point{Y: d.height}) {
		have = 0
	}
	if have >= least {
		return
	}
	param, value := "ear_width", d.earW
	switch {
	case above < least:
		param, value = "end_distance", d.end
	case d.v.Word("head") == "tapered":
		param, value = "head_radius", d.v.MM("head_radius")
	}
	n.That(false, param, fab.MM(value)+" leaves "+fab.MM(have)+" beside the pin hole", "more, so that %.4g mm is left beside the hole", least)
}

// halfWidth is half the ear's width at a height; 0 above its top.
func (d *design) halfWidth(height float64) float64 {
	outer, err := d.earOutline()
	if err != nil {
		return 0
	}
	cut := shape.Outline{Outer: outer}.Chords(shape.Point{Y: height}, shape.Point{X: 1})
	if len(cut) == 0 {
		return 0
	}
	return cut[len(cut)-1].Hi
}

// entry is the width over which the lug's face, or the spacer before it, presses an ear sideways.
func (d *design) entry() float64 {
	if d.v.MM("spacer_length") > 0 {
		return min(d.spacerDia(), d.earW)
	}
	return min(2*d.v.MM("lug_radius"), d.earW)
}

// rootWidth is what that has spread to at the ear's root, at 30 degrees.
func (d *design) rootWidth() float64 { return fab.Spread30(d.entry(), d.height, d.earW) }

func (d *design) addEars(b *part.Bracket) {
	for _, e := range ears {
		outer, _ := d.earOutline() // checkEars has drawn it
		mid := d.face(e, d.inner+d.earT/2)
		b.Plates = append(b.Plates, part.Plate{
			ID: e.id, Name: "ear", ThicknessMM: d.earT, Material: d.v.Word("ear_material"), Outer: outer,
			Holes: []part.Hole{d.pinHole(shape.Point{Y: d.height})},
			Pose:  fab.Standing(part.Vec{Y: mid}, part.Vec{X: 1}),
		})
		b.Welds = append(b.Welds, d.weld("w-"+e.id, e.id, d.foot.top(), d.earWeld, d.rootRuns(e)...))
		b.Sweeps = append(b.Sweeps, part.Sweep{
			ID: e.id, Things: []string{e.id}, From: d.center(e), To: part.Vec{Y: mid}, Name: "ear", EntryMM: d.entry(), EntryFlat: true,
		})
	}
}

// rootRuns are an ear's fillets on the foot: the outer face's whole, the inner face's whole or from either end.
func (d *design) rootRuns(e ear) []part.WeldSegment {
	half := d.earW / 2
	run := func(from, to, off float64) part.WeldSegment {
		y := d.face(e, off)
		return part.WeldSegment{A: part.Vec{X: from, Y: y}, B: part.Vec{X: to, Y: y}}
	}
	outer := run(-half, half, d.outer)
	if d.innerRun == 0 {
		return []part.WeldSegment{outer, run(-half, half, d.inner)}
	}
	return []part.WeldSegment{outer, run(-half, d.innerRun-half, d.inner), run(half-d.innerRun, half, d.inner)}
}
