package lapplate

// Parameters read into names, and what does not fit.

import (
	"fmt"

	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
)

type design struct {
	v                   geometry.Values
	t, lapT, width, gap float64 // flat and lap thickness, lap width, joint gap
	taper, nose         float64 // of an end; no taper when rectangular
	weld, stop          float64 // stop: first weld from the joint's middle
	bolted              bool
	bolting             fab.Bolting
	rows, across        []float64
	laps                []lap
}

// lap is one plate; side is +1 on the upper face, -1 on the lower.
type lap struct {
	id    string
	side  float64
	reach float64 // joint's middle to its end
}

func read(v geometry.Values) *design {
	d := &design{
		v: v, t: v.MM("member_thickness"), lapT: v.MM("lap_thickness"), width: v.MM("lap_width"), gap: v.MM("joint_gap"),
		weld: v.MM("weld"), bolted: v.Word("fixing") == "bolted",
	}
	d.stop = d.gap/2 + v.MM("weld_stop")
	d.bolting = fab.ReadBolts(v)
	for i := range v.Count("bolt_rows") {
		d.rows = append(d.rows, d.gap/2+v.MM("bolt_first")+float64(i)*v.MM("bolt_row_pitch"))
	}
	d.across = fab.Spread(v.Count("bolts_per_row"), v.MM("bolt_gauge"))
	d.laps = []lap{{"lap-1", 1, d.gap/2 + v.MM("overlap")}}
	if v.Word("faces") == "two" {
		d.laps = append(d.laps, lap{"lap-2", -1, d.laps[0].reach + v.MM("stagger")})
	}
	if ends := v.Word("ends"); ends != "rectangular" {
		d.nose, d.taper = v.MM("nose"), v.MM("taper")
		if ends == "diamond" {
			d.taper = 0 // each lap tapers from the joint's middle
		}
	}
	return d
}

func (d *design) check() error {
	var n fab.Needs
	v := d.v
	n.That(len(d.laps) == 2 || v.MM("stagger") == 0, "stagger", fab.MM(v.MM("stagger")), "0 with one lap, or faces: two")
	if d.nose > 0 {
		n.That(d.nose < d.width, "nose", fab.MM(d.nose), "less than lap_width, %.4g mm, or rectangular ends", d.width)
	}
	n.That(d.taper <= v.MM("overlap"), "taper", fab.MM(d.taper), "at most overlap, %.4g mm", v.MM("overlap"))
	if d.bolted {
		d.checkBolts(&n)
	} else {
		d.checkWelds(&n)
	}
	return n.Err()
}

// checkWelds: the lap at least 5 t of the thinner part and 25 mm, fillets at least 4 legs long: AISC 360-16 J2.2b, from memory.
func (d *design) checkWelds(n *fab.Needs) {
	most := d.v.MM("member_width") - 2*d.weld
	n.That(d.width <= most, "lap_width", fab.MM(d.width), "at most %.4g mm, so that its fillets lie on the flat", max(0, most))
	over := d.v.MM("overlap")
	least := max(5*min(d.t, d.lapT), 25)
	n.That(over >= least, "overlap", fab.MM(over), "at least %.4g mm: 5 times the thinner part and 25 mm", least)
	least = d.v.MM("weld_stop") + 4*d.weld
	n.That(over >= least, "overlap", fab.MM(over), "at least %.4g mm: weld_stop and a weld of 4 legs", least)
}

func (d *design) checkBolts(n *fab.Needs) {
	v, edge, pitch := d.v, fab.BoltEdge(d.bolting.DiaMM), fab.BoltPitch(d.bolting.DiaMM)
	n.ThatHole(d.bolting.HoleMM, "bolt_size", d.bolting.Size)
	n.That(d.width <= v.MM("member_width"), "lap_width", fab.MM(d.width), "at most the flat's width, %.4g mm", v.MM("member_width"))
	n.That(v.MM("bolt_first") >= edge, "bolt_first", fab.MM(v.MM("bolt_first")), "at least 1.25 d = %.4g mm from the flat's end", edge)
	if len(d.rows) > 1 {
		n.That(v.MM("bolt_row_pitch") >= pitch-shape.TouchMM, "bolt_row_pitch", fab.MM(v.MM("bolt_row_pitch")), "at least 2 2/3 d = %.4g mm", pitch)
	}
	if len(d.across) > 1 {
		n.That(v.MM("bolt_gauge") >= pitch-shape.TouchMM, "bolt_gauge", fab.MM(v.MM("bolt_gauge")), "at least 2 2/3 d = %.4g mm", pitch)
	}
	end := d.laps[0].reach - d.rows[len(d.rows)-1]
	n.That(end >= edge, "overlap", fab.MM(v.MM("overlap"))+", which leaves "+fab.MM(end)+" behind the last row", "at least 1.25 d = %.4g mm there", edge)
	side := d.width/2 - d.across[len(d.across)-1]
	n.That(side >= edge, "bolt_gauge", fab.MM(v.MM("bolt_gauge"))+fmt.Sprintf(" with %d in a row leaves %s to the lap's side", len(d.across), fab.MM(side)),
		"at least 1.25 d = %.4g mm there", edge)
	if n.Err() == nil && d.nose > 0 {
		have := fab.LeastEdge(d.outline(d.laps[0]), d.bolts(1))
		n.That(have >= edge-shape.TouchMM, "nose", fab.MM(d.nose)+", whose slanted edge comes "+fab.MM(have)+" from a bolt", "at least 1.25 d = %.4g mm: a wider nose, a longer overlap or rectangular ends", edge)
	}
}
