package standoff

// Base plate, tube, end plate, welds.

import (
	"lugwright/geometry/shape"
	"lugwright/part"
)

// upright is a plane at a distance from the web: u up, v along the rail, so that its normal points away from the web.
func upright(y float64) part.Pose {
	return part.Pose{Origin: part.Vec{Y: y}, U: part.Vec{Z: 1}, V: part.Vec{X: 1}}
}

func (d *design) addParts(b *part.Bracket) {
	baseT, high, width := d.base.ThicknessMM, d.tube.HighMM, d.tube.WidthMM
	end := part.Plate{
		ID: "end", Name: "end plate", ThicknessMM: d.endT, Material: d.v.Word("material"), Pose: upright(d.reach - d.endT/2),
		Outer: shape.Rect(shape.Point{X: -high / 2, Y: -width / 2}, shape.Point{X: high / 2, Y: width / 2}),
	}
	b.Plates = []part.Plate{d.base.Plate("base", upright(baseT/2)), end}
	b.Members = []part.Member{{
		ID: "tube", Name: "tube", Material: d.v.Word("tube_material"), LengthMM: d.tubeLength(), Profile: d.tube.Profile(),
		// U out, V along the rail, so that W = U x V points down: the section is the same both ways up.
		Pose: part.Pose{Origin: part.Vec{Y: baseT}, U: part.Vec{Y: 1}, V: part.Vec{X: 1}},
	}}
	electrode := d.v.Word("electrode")
	b.Welds = []part.WeldGroup{
		d.tube.Weld("w-tube", "tube", "base", d.leg, electrode, upright(baseT)),
		d.tube.Weld("w-end", "tube", "end", min(d.leg, d.endT), electrode, upright(baseT+d.tubeLength())),
	}
}
