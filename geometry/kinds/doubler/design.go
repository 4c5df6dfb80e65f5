package doubler

// Sizes, and what does not fit.

import (
	"math"

	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
)

type design struct {
	v                        geometry.Values
	length, width, t, radius float64
	wall, hole, share        float64
	bolted, bends            bool // bends: the couple of its force off its middle plane bends the plate
	weld                     float64
	plug                     float64
	plugs                    []float64 // from the middle, on one side
	bolts                    fab.Bolting
	rows, across             []float64 // bolts of one side
}

func read(v geometry.Values) *design {
	d := &design{
		v: v, length: v.MM("length"), width: v.MM("width"), t: v.MM("thickness"), radius: v.MM("corner_radius"), wall: v.MM("wall_thickness"),
		hole: v.MM("hole_diameter"), share: v.Ratio("share"), bolted: v.Word("fixing") == "bolted", weld: v.MM("weld"), plug: v.MM("plug_diameter"),
		bolts: fab.ReadBolts(v), bends: v.Word("couple") == "doubler",
	}
	if d.bolted {
		d.rows = row(v.Count("bolt_rows"), v.MM("bolt_first"), v.MM("bolt_row_pitch"))
		d.across = fab.Spread(v.Count("bolts_per_row"), v.MM("bolt_gauge"))
	} else {
		d.plugs = row(v.Count("plugs"), v.MM("plug_first"), v.MM("plug_pitch"))
	}
	return d
}

// row is places one behind the other, from the first away from the middle.
func row(count int, first, pitch float64) []float64 {
	out := make([]float64, count)
	for i := range out {
		out[i] = first + float64(i)*pitch
	}
	return out
}

func (d *design) outline() (shape.Loop, error) {
	return shape.RoundedRect(shape.Point{X: -d.length / 2, Y: -d.width / 2}, shape.Point{X: d.length / 2, Y: d.width / 2}, d.radius)
}

func (d *design) check() error {
	var n fab.Needs
	short := min(d.length, d.width)
	outer, err := d.outline()
	n.That(err == nil, "corner_radius", fab.MM(d.radius), "at most half the shorter side, %.4g mm", short/2)
	if d.hole > 0 {
		// Steel beside the hole: 1.5 t and no less than 10 mm, common practice, no source.
		most := short - 2*max(1.5*d.t, 10)
		n.That(d.hole >= max(d.t, 6), "hole_diameter", fab.MM(d.hole), "at least %.4g mm, the plate's thickness and no less than 6 mm; 0 for none", max(d.t, 6))
		n.That(d.hole <= most, "hole_diameter", fab.MM(d.hole), "at most %.4g mm; 0 for none", max(0, most))
	}
	switch {
	case n.Err() != nil:
	case d.bolted:
		d.checkBolts(&n, outer)
	default:
		d.checkWelds(&n)
	}
	return n.Err()
}

func (d *design) checkWelds(n *fab.Needs) {
	n.That(d.weld <= d.t, "weld", fab.MM(d.weld), "at most the plate's thickness, %.4g mm", d.t)
	most := d.v.MM("wall_width") - 2*d.weld
	n.That(d.width <= most, "width", fab.MM(d.width), "at most %.4g mm, so that its fillets lie on the flat", max(0, most))
	if len(d.plugs) == 0 {
		return
	}
	// A plug at least t + 8 mm wide and 4 of its diameters from the next: AISC 360-22 J2.3, from memory. Steel beside it: t.
	pitch, last := d.v.MM("plug_pitch"), d.plugs[len(d.plugs)-1]
	n.That(d.plug >= d.t+8, "plug_diameter", fab.MM(d.plug), "at least the plate's thickness and 8 mm, %.4g mm", d.t+8)
	n.That(len(d.plugs) == 1 || pitch >= 4*d.plug, "plug_pitch", fab.MM(pitch), "at least 4 diameters, %.4g mm", 4*d.plug)
	least := max(2*d.plug, (d.hole+d.plug)/2+d.t)
	n.That(d.plugs[0] >= least, "plug_first", fab.MM(d.plugs[0]), "at least %.4g mm, clear of the hole and 4 diameters from the other side's", least)
	most = d.length/2 - d.plug/2 - d.t
	n.That(last <= most, "plug_first", fab.MM(d.plugs[0])+", which puts the last at "+fab.MM(last), "the last at most at %.4g mm", max(0, most))
	n.That(d.plug <= d.width-2*d.t, "plug_diameter", fab.MM(d.plug), "at most %.4g mm in this width", max(0, d.width-2*d.t))
}

func (d *design) checkBolts(n *fab.Needs, outer shape.Loop) {
	v := d.v
	n.ThatHole(d.bolts.HoleMM, "bolt_size", d.bolts.Size)
	n.That(d.width <= v.MM("wall_width"), "width", fab.MM(d.width), "at most the wall's flat width, %.4g mm", v.MM("wall_width"))
	n.ThatPitch(len(d.rows), v.MM("bolt_row_pitch"), d.bolts.DiaMM, "bolt_row_pitch")
	n.ThatPitch(len(d.across), v.MM("bolt_gauge"), d.bolts.DiaMM, "bolt_gauge")
	least := fab.BoltPitch(d.bolts.DiaMM) / 2
	n.That(d.rows[0] >= least, "bolt_first", fab.MM(d.rows[0]), "at least half a pitch of 2 2/3 d, %.4g mm", least)
	edge := d.holeEdge()
	n.That(edge >= fab.BoltEdge(d.bolts.DiaMM), "bolt_first", fab.MM(d.rows[0])+", which leaves "+fab.MM(max(0, edge))+" from a bolt to the hole", "1.25 d = %.4g mm there", fab.BoltEdge(d.bolts.DiaMM))
	n.ThatEdge(outer, d.points(1), d.bolts.DiaMM, "length", d.length)
}

// points are the bolts of one half, +1 or -1 along x.
func (d *design) points(sign float64) []shape.Point {
	out := fab.Grid(d.rows, d.across)
	for i := range out {
		out[i].X *= sign
	}
	return out
}

// holeEdge is the least distance from a bolt's centre to the hole in the middle; infinite without one.
func (d *design) holeEdge() float64 {
	if d.hole == 0 {
		return math.Inf(1)
	}
	least := math.Inf(1)
	for _, p := range d.points(1) {
		least = min(least, p.Norm()-d.hole/2)
	}
	return least
}
