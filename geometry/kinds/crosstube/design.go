package crosstube

// Sizes, and what does not fit.

import (
	"lugwright/geometry"
	"lugwright/geometry/fab"
)

// leastTubeMM is the shortest tube between the end plates: a torch reaches in between them. Common practice, no source.
const leastTubeMM = 100

type design struct {
	v          geometry.Values
	span       float64
	tube       fab.Tube
	end        fab.TubePlate
	across, up float64 // of the load: from the middle towards the near rail, and over the tube's middle
}

func read(v geometry.Values) *design {
	d := &design{
		v: v, span: v.MM("span"), across: v.MM("span")/2 - v.MM("load_at"), up: v.MM("load_height"),
		tube: fab.Tube{WidthMM: v.MM("tube_width"), HighMM: v.MM("tube_height"), WallMM: v.MM("tube_wall"), CornerMM: v.MM("tube_corner")},
	}
	if v.Word("section") == "round" {
		dia := v.MM("tube_diameter")
		d.tube = fab.Tube{Round: true, WidthMM: dia, HighMM: dia, WallMM: v.MM("tube_wall")}
	}
	d.end = fab.ReadTubePlate(v, "end", "end plate", d.tube, v.MM("tube_weld"))
	return d
}

// tubeLength is what is sawn: between the end plates.
func (d *design) tubeLength() float64 { return d.span - 2*d.end.ThicknessMM }

func (d *design) check() error {
	var n fab.Needs
	t, at := d.end.ThicknessMM, d.v.MM("load_at")
	d.tube.Check(&n)
	d.tube.CheckWeld(&n, d.end.LegMM)
	n.That(d.tubeLength() >= leastTubeMM, "span", fab.MM(d.span), "at least %.4g mm: two end plates and %d mm of tube", 2*t+leastTubeMM, leastTubeMM)
	n.That(at > t && at < d.span-t, "load_at", fab.MM(at), "over %.4g and under %.4g mm, on the tube", t, d.span-t)
	d.end.Check(&n, d.v.MM("web_clear_height"))
	return n.Err()
}
