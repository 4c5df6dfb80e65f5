package clevis

// Plates that stiffen the ears sideways: outer gussets on their outer faces, and plates from ear to ear under the lug.

import (
	"fmt"
	"math"

	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

func (d *design) checkGussets(n *fab.Needs) {
	if d.outside.thickness > 0 {
		d.checkOuter(n)
	}
	if d.between.thickness > 0 {
		d.checkBetween(n)
	}
}

func (d *design) checkOuter(n *fab.Needs) {
	c := d.outerCorner()
	n.That(c.AlongU-c.Snipe >= d.gussetWeld, "outer_gusset_length", fab.MM(c.AlongU),
		"at least %.4g mm: snipe %.4g mm and a run of its own weld leg", c.Snipe+d.gussetWeld, c.Snipe)
	n.That(c.NoseV <= c.AlongU, "outer_gusset_nose", fab.MM(c.NoseV), "at most its length, %.4g mm", c.AlongU)
	d.checkRibs(n, d.outside)
	// A nut, washer or keeper over the pin's end is taken as 2 d across. Common practice, no source.
	room := d.pin
	if d.cheek.ThicknessMM > 0 {
		room = max(room, d.cheek.DiaMM/2+d.cheek.WeldMM+d.gussetWeld)
	}
	have := d.pinTo(d.outside)
	n.That(have >= room, "outer_gusset_height", fab.MM(d.outside.height)+", "+fab.MM(have)+" from the pin's centre",
		"%.4g mm or more from it, for the pin's end and cheek plate: at most %.4g mm high in this place", room, max(0, d.height-room))
}

func (d *design) checkBetween(n *fab.Needs) {
	run := 2*d.inner - 2*d.snipe
	n.That(run >= d.gussetWeld, "gussets", fab.MM(run)+" left between the snipes under the plates between the ears",
		"at least one weld leg, %.4g mm: a wider fork, a smaller ear_weld or snipe_clearance, or outer gussets only", d.gussetWeld)
	d.checkRibs(n, d.between)
	reach, have := d.v.MM("lug_radius"), d.pinTo(d.between)
	n.That(have >= reach, "between_height", fab.MM(d.between.height)+", "+fab.MM(have)+" from the pin's centre",
		"clear of the lug's swing, %.4g mm: at most %.4g mm high in this place", reach, max(0, d.height-reach))
	deep := fab.TorchDepth * 2 * d.inner
	n.That(len(d.between.at) == 1 || d.between.height <= deep, "between_height", fab.MM(d.between.height)+" with "+fmt.Sprint(len(d.between.at))+" plates",
		"at most %.4g mm, 2.5 times the fork's gap, so that a torch reaches down between them; or one plate", deep)
	n.That(d.between.height <= d.height, "between_height", fab.MM(d.between.height), "at most the pin's height, %.4g mm", d.height)
}

// checkRibs holds for both: the weld along the ear, room between plates, and the ear wide enough up to their top.
func (d *design) checkRibs(n *fab.Needs, r ribs) {
	least := d.snipe + d.gussetWeld
	if !n.That(r.height >= least, r.param+"_height", fab.MM(r.height), "at least %.4g mm: snipe and a run of its own weld leg", least) {
		return
	}
	if len(r.at) > 1 {
		clear := r.thickness + 2*d.gussetWeld + fab.TorchGapMM
		n.That(r.spacing >= clear, r.param+"_spacing", fab.MM(r.spacing), "at least %.4g mm, so that a torch reaches between", clear)
	}
	half := r.at[len(r.at)-1] + r.thickness/2 + d.gussetWeld
	blame, value := r.param+"_spacing", r.spacing
	if len(r.at) == 1 {
		blame, value = r.param+"_thickness", r.thickness
	}
	if !n.That(half <= d.earW/2, blame, fab.MM(value)+", which with the weld needs an ear "+fab.MM(2*half)+" wide",
		"plates that stand on the ear, %.4g mm wide", d.earW) {
		return
	}
	have := d.halfWidth(r.height)
	n.That(half <= have, r.param+"_height", fab.MM(r.height)+", where the ear is "+fab.MM(2*have)+" wide",
		"a height at which the ear is at least %.4g mm wide", 2*half)
}

// pinTo is the least distance from the pin's centre line to the plates, seen along the pin.
func (d *design) pinTo(r ribs) float64 {
	least := math.Inf(1)
	for _, x := range r.at {
		beside := max(0, math.Abs(x)-r.thickness/2)
		least = min(least, math.Hypot(beside, max(0, d.height-r.height)))
	}
	return least
}

func (d *design) outerCorner() fab.Corner {
	return fab.Corner{
		AlongU: d.v.MM("outer_gusset_length"), AlongV: d.outside.height, Snipe: d.snipe,
		NoseU: d.gussetWeld, NoseV: d.v.MM("outer_gusset_nose"),
	}
}

// outerReach is how far from the fork's middle anything on an ear's outer side stands on the foot, without its weld.
func (d *design) outerReach() float64 {
	if d.outside.thickness == 0 {
		return d.outer
	}
	return d.outer + d.v.MM("outer_gusset_length")
}

func (d *design) addOuter(b *part.Bracket) {
	r := d.outside
	for i, e := range ears {
		var ids, welds []string
		for k, x := range r.at {
			id := fmt.Sprintf("outer-%d", i*len(r.at)+k+1)
			ids, welds = append(ids, id), append(welds, "w-"+id+"-ear")
			d.addOuterGusset(b, e, id, x)
		}
		if ids != nil {
			b.Composites = append(b.Composites, d.composite("c-"+e.id+"-outer", e, ids, welds, r.height))
		}
	}
}

func (d *design) addOuterGusset(b *part.Bracket, e ear, id string, x float64) {
	c, t, y := d.outerCorner(), d.outside.thickness, d.face(e, d.outer)
	pose := fab.Standing(part.Vec{X: x, Y: y}, part.Vec{Y: e.side})
	b.Plates = append(b.Plates, part.Plate{
		ID: id, Name: "gusset", ThicknessMM: t, Material: d.v.Word("gusset_material"), Outer: c.Outline(), Pose: pose,
	})
	b.Welds = append(b.Welds,
		d.weld("w-"+id, id, d.foot.top(), d.gussetWeld, fab.AtFaces(pose.At(c.Snipe, 0, 0), pose.At(c.AlongU, 0, 0), pose.W(), t)...),
		d.weld("w-"+id+"-ear", id, e.id, d.gussetWeld, fab.AtFaces(pose.At(0, c.Snipe, 0), pose.At(0, c.AlongV, 0), pose.W(), t)...),
	)
}

func (d *design) addBetween(b *part.Bracket) {
	r := d.between
	if r.thickness == 0 {
		return
	}
	ids, welds := make([]string, len(r.at)), [2][]string{}
	for k, x := range r.at {
		ids[k] = fmt.Sprintf("between-%d", k+1)
		d.addBetweenPlate(b, ids[k], x)
		for i, e := range ears {
			welds[i] = append(welds[i], "w-"+ids[k]+"-"+e.id)
		}
	}
	for i, e := range ears {
		b.Composites = append(b.Composites, d.composite("c-"+e.id+"-between", e, ids, welds[i], r.height))
	}
}

func (d *design) addBetweenPlate(b *part.Bracket, id string, x float64) {
	r, w := d.between, d.inner
	foot := w - d.snipe
	pose := fab.Standing(part.Vec{X: x, Y: d.middle}, part.Vec{Y: 1})
	b.Plates = append(b.Plates, part.Plate{
		ID: id, Name: "plate between ears", ThicknessMM: r.thickness, Material: d.v.Word("gusset_material"),
		Outer: shape.Polyline(
			shape.Point{X: -foot}, shape.Point{X: foot}, shape.Point{X: w, Y: d.snipe}, shape.Point{X: w, Y: r.height},
			shape.Point{X: -w, Y: r.height}, shape.Point{X: -w, Y: d.snipe},
		),
		Pose: pose,
	})
	runs := fab.AtFaces(pose.At(-foot, 0, 0), pose.At(foot, 0, 0), pose.W(), r.thickness)
	b.Welds = append(b.Welds, d.weld("w-"+id, id, d.foot.top(), d.gussetWeld, runs...))
	for _, e := range ears {
		runs := fab.AtFaces(pose.At(e.side*w, d.snipe, 0), pose.At(e.side*w, r.height, 0), pose.W(), r.thickness)
		b.Welds = append(b.Welds, d.weld("w-"+id+"-"+e.id, id, e.id, d.gussetWeld, runs...))
	}
}

// composite says that an ear and plates welded to it work as one from the foot to the plates' top.
func (d *design) composite(id string, e ear, ids, welds []string, height float64) part.Composite {
	mid := d.center(e).Y
	return part.Composite{
		ID: id, Things: append([]string{e.id}, ids...), From: part.Vec{Y: mid}, To: part.Vec{Y: mid, Z: height},
		Welds: welds, Rule: part.LagCantilever, SpanMM: d.height,
	}
}
