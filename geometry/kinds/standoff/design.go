package standoff

// Sizes, and what does not fit.

import (
	"lugwright/geometry"
	"lugwright/geometry/fab"
)

type design struct {
	v                          geometry.Values
	reach                      float64
	width, high, wall, corner  float64 // of the tube
	leg                        float64
	baseT, baseL, baseH, baseR float64
	endT                       float64
	bolt, hole                 float64
	xs, zs                     []float64
	out, up                    float64 // of the load
}

func read(v geometry.Values) *design {
	d := &design{
		v: v, reach: v.MM("reach"), width: v.MM("tube_width"), high: v.MM("tube_height"), wall: v.MM("tube_wall"), corner: v.MM("tube_corner"),
		leg: v.MM("tube_weld"), baseT: v.MM("base_thickness"), baseL: v.MM("base_length"), baseH: v.MM("base_height"), baseR: v.MM("base_corner_radius"),
		endT: v.MM("end_thickness"), out: v.MM("load_out"), up: v.MM("load_height"),
		xs: fab.Spread(v.Count("bolt_columns"), v.MM("bolt_pitch")), zs: fab.Spread(v.Count("bolt_rows"), v.MM("bolt_gauge")),
	}
	d.bolt, d.hole = fab.ReadBolt(v)
	return d
}

// tubeLength is what is sawn: from the base plate to the end plate.
func (d *design) tubeLength() float64 { return d.reach - d.baseT - d.endT }

// foot is the base plate, u up and v along the rail.
func (d *design) foot() fab.FootPlate {
	return fab.FootPlate{
		ThicknessMM: d.baseT, LengthMM: d.baseH, WidthMM: d.baseL, RadiusMM: d.baseR, Us: d.zs, Vs: d.xs, BlockU: d.high / 2, BlockV: d.width / 2,
	}
}

func (d *design) check() error {
	var n fab.Needs
	short := min(d.width, d.high)
	fab.CheckTube(&n, d.profile())
	n.That(d.tubeLength() >= 20, "reach", fab.MM(d.reach), "at least %.4g mm: base plate, 20 mm of tube and end plate", d.baseT+d.endT+20)
	n.That(short-2*d.corner >= 4*d.leg, "tube_weld", fab.MM(d.leg), "at most a quarter of the tube's flat, %.4g mm", (short-2*d.corner)/4)
	n.That(d.out > d.baseT && d.out <= d.reach, "load_out", fab.MM(d.out), "over %.4g up to %.4g mm, on the tube", d.baseT, d.reach)
	n.ThatHole(d.hole, "bolt_size", d.v.Word("bolt_size"))
	n.That(d.baseH <= d.v.MM("web_clear_height"), "base_height", fab.MM(d.baseH), "at most the web's clear height, %.4g mm", d.v.MM("web_clear_height"))
	n.That(d.baseH >= d.high+2*d.leg, "base_height", fab.MM(d.baseH), "at least the tube and its welds, %.4g mm", d.high+2*d.leg)
	n.That(d.baseL >= d.width+2*d.leg, "base_length", fab.MM(d.baseL), "at least the tube and its welds, %.4g mm", d.width+2*d.leg)
	if n.Err() == nil {
		d.checkBolts(&n)
	}
	return n.Err()
}

func (d *design) checkBolts(n *fab.Needs) {
	foot := d.foot()
	foot.Check(n, fab.FootNames{Size: [2]string{"base_height", "base_length"}, Pitch: [2]string{"bolt_gauge", "bolt_pitch"}, Radius: "base_corner_radius"}, d.bolt)
	if n.Err() == nil {
		foot.CheckSockets(n, "bolt_pitch", d.bolt, fab.Block{Name: "tube", HalfU: d.high / 2, HalfV: d.width / 2, WeldMM: d.leg})
	}
}
