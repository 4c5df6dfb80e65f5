package standoff

// Sizes, and what does not fit.

import (
	"lugwright/geometry"
	"lugwright/geometry/fab"
)

type design struct {
	v       geometry.Values
	reach   float64
	leg     float64
	tube    fab.Tube
	base    fab.TubePlate
	endT    float64
	out, up float64 // of the load
}

func read(v geometry.Values) *design {
	d := &design{
		v: v, reach: v.MM("reach"), leg: v.MM("tube_weld"), endT: v.MM("end_thickness"), out: v.MM("load_out"), up: v.MM("load_height"),
		tube: fab.Tube{WidthMM: v.MM("tube_width"), HighMM: v.MM("tube_height"), WallMM: v.MM("tube_wall"), CornerMM: v.MM("tube_corner")},
	}
	d.base = fab.ReadTubePlate(v, "base", "base plate", d.tube, d.leg)
	return d
}

// tubeLength is what is sawn: from the base plate to the end plate.
func (d *design) tubeLength() float64 { return d.reach - d.base.ThicknessMM - d.endT }

func (d *design) check() error {
	var n fab.Needs
	baseT := d.base.ThicknessMM
	d.tube.Check(&n)
	n.That(d.tubeLength() >= 20, "reach", fab.MM(d.reach), "at least %.4g mm: base plate, 20 mm of tube and end plate", baseT+d.endT+20)
	d.tube.CheckWeld(&n, d.leg)
	n.That(d.out > baseT && d.out <= d.reach, "load_out", fab.MM(d.out), "over %.4g up to %.4g mm, on the tube", baseT, d.reach)
	d.base.Check(&n, d.v.MM("web_clear_height"))
	return n.Err()
}
