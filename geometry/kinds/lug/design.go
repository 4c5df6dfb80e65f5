package lug

// Sizes of lug and gussets, and what does not fit.

import (
	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
)

type design struct {
	v                               geometry.Values
	fork                            fab.Fork
	allowance                       float64
	height, t, weld                 float64
	ear                             fab.Ear // its foot below the origin by the stand's depth
	cheek                           fab.Cheek
	gussetH, gussetL, gussetT, nose float64
	snipe                           float64
	through                         bool // complete penetration at the lug's foot
	stand                           stand
}

func read(v geometry.Values) *design {
	d := &design{
		v: v, fork: fab.ReadFork(v), allowance: v.MM("finish_allowance"), height: v.MM("pin_height"),
		t: v.MM("thickness"), weld: v.MM("weld"), cheek: fab.ReadCheek(v), gussetH: v.MM("gusset_height"),
		gussetL: v.MM("gusset_length"), gussetT: v.MM("gusset_thickness"), nose: v.MM("gusset_nose"),
	}
	d.ear = fab.Ear{Width: v.MM("width"), End: v.MM("end_distance"), HeadRadius: v.MM("width") / 2}
	if v.Word("head") == "tapered" {
		d.ear.HeadRadius = v.MM("head_radius")
	}
	d.through = v.Word("weld_kind") == through
	d.stand = d.readStand()
	d.ear.Pin = d.height + d.stand.depth()
	d.snipe = fab.Snipe(d.weld, v.MM("snipe_clearance"))
	return d
}

// eye is what the pin passes: the lug with its cheeks.
func (d *design) eye() float64 { return d.t + 2*d.cheek.ThicknessMM }

// reach is how far from the lug's middle its gussets stand on what it stands on, without their welds.
func (d *design) reach() float64 {
	if d.gussetH == 0 {
		return d.t / 2
	}
	return d.t/2 + d.gussetL
}

// besideFork is where the fork's ears lie, from the lug's middle along the pin.
func (d *design) besideFork() (from, to float64) {
	from = d.eye()/2 + d.fork.GapMM
	return from, from + d.fork.EarMM
}

// footWeld is how far the fillets at the foot reach above the origin.
func (d *design) footWeld() float64 {
	if d.stand.depth() > 0 {
		return 0
	}
	return d.weld
}

func (d *design) check() error {
	var n fab.Needs
	d.checkHead(&n)
	if n.Err() != nil {
		return n.Err()
	}
	d.cheek.Check(&n, d.ear, d.fork.HoleMM, d.fork.PinMM, d.stand.depth()+max(d.footWeld(), fab.PaintGapMM), "lug")
	d.checkGussets(&n)
	d.checkFork(&n)
	n.That(d.v.MM("bush_length") <= d.eye(), "bush_length", fab.MM(d.v.MM("bush_length")), "at most the lug with its cheeks, %.4g mm", d.eye())
	if n.Err() == nil {
		d.stand.check(d, &n)
	}
	return n.Err()
}

func (d *design) checkHead(n *fab.Needs) {
	r, least := d.ear.HeadRadius, max(d.weld+1, d.stand.depth())
	n.That(d.allowance < d.fork.HoleMM, "finish_allowance", fab.MM(d.allowance), "less than the finished hole, %.4g mm", d.fork.HoleMM)
	n.That(d.ear.Width >= 4*d.weld, "width", fab.MM(d.ear.Width), "at least 4 weld legs, %.4g mm", 4*d.weld)
	if !n.That(r <= d.ear.Width/2, "head_radius", fab.MM(r), "at most half the width, %.4g mm", d.ear.Width/2) {
		return
	}
	param, value := "width", d.ear.Width
	if d.v.Word("head") == "tapered" {
		param, value = "head_radius", r
	}
	if !n.That(d.ear.HeadCenter() >= least, param, fab.MM(value)+", whose arc would reach the foot", "smaller, or a higher pin: the head's middle at least %.4g mm from the lug's end", least) {
		return
	}
	outer, err := d.ear.Outline()
	if !n.That(err == nil, param, fab.MM(value), "a radius to which the sides can run tangent") {
		return
	}
	room, need := 0.0, d.fork.HoleMM/2+fab.Ligament(d.fork.PinMM)
	if center := (shape.Point{Y: d.ear.Pin}); outer.Contains(center) {
		room = outer.DistTo(center)
	}
	n.That(room >= need, "end_distance", fab.MM(d.ear.End)+" and this head leave "+fab.MM(max(0, room-d.fork.HoleMM/2))+" beside the pin hole", "more, so that %.4g mm is left", fab.Ligament(d.fork.PinMM))
	n.That(d.height >= need+d.footWeld(), "pin_height", fab.MM(d.height), "at least %.4g mm, so that steel is left between hole and weld", need+d.footWeld())
}

func (d *design) corner() fab.Corner {
	return fab.Corner{AlongU: d.gussetL, AlongV: d.gussetH, Snipe: d.snipe, NoseU: d.nose, NoseV: d.nose}
}

func (d *design) checkGussets(n *fab.Needs) {
	if d.gussetH == 0 {
		return
	}
	low := d.height - d.fork.HoleMM/2 - d.v.MM("gusset_weld")
	if d.cheek.ThicknessMM > 0 {
		low = min(low, d.height-d.cheek.DiaMM/2-d.cheek.WeldMM)
	}
	n.That(d.gussetH <= low, "gusset_height", fab.MM(d.gussetH), "at most %.4g mm, clear of the hole and cheeks; 0 for none", low)
	least := d.snipe + 4*d.v.MM("gusset_weld")
	n.That(d.gussetH >= least, "gusset_height", fab.MM(d.gussetH), "at least %.4g mm: snipe and a weld of 4 legs; 0 for none", least)
	n.That(d.gussetL >= least, "gusset_length", fab.MM(d.gussetL), "at least %.4g mm: snipe and a weld of 4 legs", least)
	n.That(d.nose <= min(d.gussetH, d.gussetL), "gusset_nose", fab.MM(d.nose), "at most %.4g mm", min(d.gussetH, d.gussetL))
	n.That(d.gussetT+4*d.v.MM("gusset_weld") <= d.ear.Width, "gusset_thickness", fab.MM(d.gussetT), "less than the lug's width with its welds")
}

// checkFork finds what is nearest below the fork's ears: the face, the foot's fillet, a gusset.
func (d *design) checkFork(n *fab.Needs) {
	from, _ := d.besideFork()
	beside := from - d.t/2
	room, words := d.height, "face"
	if fillet := d.footWeld() - beside; fillet > 0 {
		room, words = d.height-fillet, "foot's weld"
	}
	if d.gussetH > 0 && n.Err() == nil {
		if high := d.corner().HeightAt(beside); d.height-high < room {
			room, words = d.height-high, "gussets"
		}
	}
	d.fork.Check(n, room, words)
}

// halfWidth is half the lug's width at a height over the origin; 0 above its top.
func (d *design) halfWidth(height float64) float64 {
	outer, _ := d.ear.Outline() // checkHead has drawn it
	cut := shape.Outline{Outer: outer}.Chords(shape.Point{Y: height + d.stand.depth()}, shape.Point{X: 1})
	if len(cut) == 0 {
		return 0
	}
	return cut[len(cut)-1].Hi
}
