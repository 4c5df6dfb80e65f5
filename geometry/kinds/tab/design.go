package tab

// Sizes, and what does not fit.

import (
	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

const (
	byEdge     = "edge welded"
	bentWelded = "bent, welded"
	bentBolted = "bent, bolted"
)

type design struct {
	v                        geometry.Values
	width, height, t, radius float64
	at                       float64 // bolts over the face
	bolts, footBolts         fab.Bolting
	points                   []shape.Point
	leg                      float64
	foot                     string
	fold                     fab.Fold
	reach                    float64 // of a bent foot, from the upright's outer face
	back                     float64 // of the foot's bolts, from the same
	footXs                   []float64
}

func read(v geometry.Values) *design {
	d := &design{
		v: v, width: v.MM("width"), height: v.MM("height"), t: v.MM("thickness"), radius: v.MM("corner_radius"), at: v.MM("bolt_height"), leg: v.MM("weld"),
		foot: v.Word("foot"), fold: fab.ReadFold(v, v.MM("thickness")), reach: v.MM("foot_length"), back: v.MM("foot_bolt_back"),
		footXs: fab.Spread(v.Count("foot_bolts"), v.MM("foot_bolt_pitch")),
	}
	d.bolts = fab.ReadBolts(v)
	d.footBolts = d.bolts
	d.footBolts.Size = v.Word("foot_bolt_size")
	d.footBolts.DiaMM, d.footBolts.HoleMM = fab.Clearance(d.footBolts.Size, part.Fit(v.Word("bolt_fit")))
	d.points = fab.Grid(fab.Spread(v.Count("bolts"), v.MM("bolt_pitch")), []float64{d.at})
	return d
}

func (d *design) bent() bool { return d.foot != byEdge }

// root is where the flat upright begins over the face.
func (d *design) root() float64 {
	if d.bent() {
		return d.fold.Setback()
	}
	return 0
}

// heel is where the flat of a bent foot begins, tip where it ends, both from the upright's middle plane towards the foot.
func (d *design) heel() float64 { return d.fold.Setback() - d.t/2 }
func (d *design) tip() float64  { return d.reach - d.t/2 }

// row is the foot's bolts from the same.
func (d *design) row() float64 { return d.back - d.t/2 }

// line is where the fold's line lies on the flat pattern, over the upright's foot as it would be sharp; flat is the height on the pattern of a place so far
// from the upright's middle plane along the foot.
func (d *design) line() float64 { return d.root() - d.fold.Allowance()/2 }
func (d *design) flat(off float64) float64 {
	return d.root() - d.fold.Allowance() - (off - d.heel())
}

func (d *design) check() error {
	var n fab.Needs
	if !n.ThatHole(d.bolts.HoleMM, "bolt_size", d.bolts.Size) {
		return n.Err()
	}
	if d.bent() {
		d.fold.CheckRadius(&n)
		d.fold.CheckFlange(&n, "height", d.height)
		d.fold.CheckFlange(&n, "foot_length", d.reach)
	}
	n.That(d.width >= 4*d.leg, "width", fab.MM(d.width), "at least 4 weld legs, %.4g mm", 4*d.leg)
	high := d.height - d.leg
	if d.bent() {
		high = d.height - d.root()
	}
	n.That(d.radius <= min(d.width/2, high), "corner_radius", fab.MM(d.radius), "at most %.4g mm", min(d.width/2, max(0, high)))
	d.checkUpright(&n)
	if n.Err() != nil {
		return n.Err()
	}
	outer, err := d.outline()
	if !n.That(err == nil, "corner_radius", fab.MM(d.radius), "a radius that both corners have room for") {
		return n.Err()
	}
	n.ThatEdge(outer, d.points, d.bolts.DiaMM, "height", d.height)
	switch d.foot {
	case bentWelded:
		d.checkWeld(&n)
	case bentBolted:
		d.checkFootBolts(&n)
	}
	return n.Err()
}

// checkUpright keeps the bolts off the weld or the fold, and apart.
func (d *design) checkUpright(n *fab.Needs) {
	room, words := fab.SocketRoom(d.bolts.DiaMM, d.leg), "so that a socket passes the weld"
	if d.bent() {
		room, words = d.root()+max(d.fold.HoleRoom(d.bolts.HoleMM), d.bolts.DiaMM), "so that hole and washer lie clear of the fold"
	}
	n.That(d.at >= room, "bolt_height", fab.MM(d.at), "at least %.4g mm, "+words, room)
	n.ThatPitch(len(d.points), d.v.MM("bolt_pitch"), d.bolts.DiaMM, "bolt_pitch")
}

func (d *design) checkWeld(n *fab.Needs) {
	least := d.fold.Setback() + 4*d.leg
	n.That(d.reach >= least, "foot_length", fab.MM(d.reach), "at least %.4g mm: the fold and a weld of 4 legs", least)
}

func (d *design) checkFootBolts(n *fab.Needs) {
	if !n.ThatHole(d.footBolts.HoleMM, "foot_bolt_size", d.footBolts.Size) {
		return
	}
	edge, pitch := fab.BoltEdge(d.footBolts.DiaMM), d.v.MM("foot_bolt_pitch")
	n.ThatPitch(len(d.footXs), pitch, d.footBolts.DiaMM, "foot_bolt_pitch")
	side := d.width/2 - d.footXs[len(d.footXs)-1]
	n.That(side >= edge, "foot_bolt_pitch", fab.MM(pitch)+", which leaves "+fab.MM(side)+" to the foot's side", "at least %.4g mm there, 1 1/4 diameters", edge)
	// A washer is taken as 2 d across.
	least := d.fold.Setback() + max(d.fold.HoleRoom(d.footBolts.HoleMM), d.footBolts.DiaMM)
	n.That(d.back >= least, "foot_bolt_back", fab.MM(d.back), "at least %.4g mm, so that hole and washer lie clear of the fold", least)
	n.That(d.back <= d.reach-edge, "foot_bolt_back", fab.MM(d.back), "at most %.4g mm, so that 1 1/4 diameters are left to the tip", d.reach-edge)
	if clear := d.v.MM("support_clear"); clear > 0 {
		n.That(d.width <= clear, "support_clear", fab.MM(clear), "at least the tab's width, %.4g mm; 0 where it is not known", d.width)
	}
}
