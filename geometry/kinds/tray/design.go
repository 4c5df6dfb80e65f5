package tray

// Sizes, and what does not fit.

import (
	"math"

	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

type design struct {
	v                   geometry.Values
	length, width, side float64
	t, relief           float64
	fold                fab.Fold
	rodDia, rodHole     float64
	rods                []shape.Point
	washerSide          float64
}

func read(v geometry.Values) *design {
	d := &design{
		v: v, length: v.MM("length"), width: v.MM("width"), side: v.MM("side_height"), t: v.MM("thickness"),
		fold: fab.ReadFold(v, v.MM("thickness")), relief: v.MM("corner_relief"), washerSide: v.MM("washer_side"),
	}
	d.rodDia, d.rodHole = fab.Clearance(v.Word("rod_size"), part.NormalFit)
	n := v.Count("rods_per_side")
	d.rods = fab.Grid(fab.Spread(n, v.MM("rod_spacing")/float64(n-1)), fab.Spread(2, v.MM("rod_gauge")))
	return d
}

// flat is half of the bottom that stays flat, along and across.
func (d *design) flat() (x, y float64) {
	return d.length/2 - d.fold.Setback(), d.width/2 - d.fold.Setback()
}

// flange is the flat part of a side.
func (d *design) flange() float64 { return d.side - d.fold.Setback() }

func (d *design) check() error {
	var n fab.Needs
	x, y := d.flat()
	t := d.t
	d.fold.CheckRadius(&n)
	d.fold.CheckFlange(&n, "side_height", d.side)
	// Relief at least t: sheet-metal guides.
	n.That(d.relief == 0 || d.relief >= t, "corner_relief", fab.MM(d.relief), "0, or at least the thickness, %.4g mm", t)
	n.ThatHole(d.rodHole, "rod_size", d.v.Word("rod_size"))
	if !n.That(min(x, y) > d.relief+2*t, "width", fab.MM(min(d.length, d.width)), "more than %.4g mm between the folds", 2*(d.fold.Setback()+d.relief+2*t)) || n.Err() != nil {
		return n.Err()
	}
	d.checkRods(&n, x, y)
	d.checkDrain(&n)
	if stop := d.v.MM("stop_height"); d.v.Word("stops") == "yes" {
		n.That(stop <= d.v.MM("rod_free")+d.side+d.v.MM("load_height"), "stop_height", fab.MM(stop), "no higher than what it stops")
	}
	return n.Err()
}

// checkRods keeps hole edges 2 thicknesses from where the folds begin (common practice, no source), washers flat on the bottom and clear of each other.
func (d *design) checkRods(n *fab.Needs, x, y float64) {
	spacing, gauge := d.v.MM("rod_spacing"), d.v.MM("rod_gauge")
	room := max(d.fold.HoleRoom(d.rodHole), d.washerSide/2)
	n.That(spacing/2+room <= x, "rod_spacing", fab.MM(spacing), "at most %.4g mm, so that hole and washer lie clear of the folds", 2*max(0, x-room))
	n.That(gauge/2+room <= y, "rod_gauge", fab.MM(gauge), "at most %.4g mm, so that hole and washer lie clear of the folds", 2*max(0, y-room))
	pitch := spacing / float64(d.v.Count("rods_per_side")-1)
	n.That(pitch >= d.washerSide, "rod_spacing", fab.MM(spacing), "at least %.4g mm, so that washers lie side by side", d.washerSide*float64(d.v.Count("rods_per_side")-1))
	n.That(gauge >= d.washerSide, "rod_gauge", fab.MM(gauge), "at least the washer's side, %.4g mm", d.washerSide)
	n.That(d.relief+d.rodHole/2 < min(x-spacing/2, y-gauge/2)+d.t || d.relief < max(x-spacing/2, y-gauge/2)-d.rodHole/2-d.t, "corner_relief", fab.MM(d.relief), "less, so that it leaves sheet beside the rods' holes")
	n.ThatWasher("washer_side", d.washerSide, "washer_thickness", d.v.MM("washer_thickness"), d.rodDia)
	n.ThatEngaged("engagement", d.v.MM("engagement"), d.rodDia)
}

func (d *design) checkDrain(n *fab.Needs) {
	drain := d.v.MM("drain")
	if drain == 0 {
		return
	}
	x, y := d.flat()
	room := 2 * min(x, y)
	for _, p := range d.rods {
		room = min(room, 2*(p.Norm()-d.washerSide*math.Sqrt2/2))
	}
	room -= 4 * d.t
	n.That(drain >= max(d.t, 4), "drain", fab.MM(drain), "at least %.4g mm; 0 for none", max(d.t, 4))
	n.That(drain <= room, "drain", fab.MM(drain), "at most %.4g mm, clear of folds and washers; 0 for none", max(0, room))
}
