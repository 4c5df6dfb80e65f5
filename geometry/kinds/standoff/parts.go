package standoff

// Base plate, tube, end plate, welds.

import (
	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

// upright is a plane at a distance from the web: u up, v along the rail, so that its normal points away from the web.
func upright(y float64) part.Pose {
	return part.Pose{Origin: part.Vec{Y: y}, U: part.Vec{Z: 1}, V: part.Vec{X: 1}}
}

func (d *design) addParts(b *part.Bracket) {
	base := d.foot().Plate("base", d.v.Word("material"), d.hole, upright(d.baseT/2))
	end := part.Plate{
		ID: "end", Name: "end plate", ThicknessMM: d.endT, Material: d.v.Word("material"), Pose: upright(d.reach - d.endT/2),
		Outer: shape.Rect(shape.Point{X: -d.high / 2, Y: -d.width / 2}, shape.Point{X: d.high / 2, Y: d.width / 2}),
	}
	b.Plates = []part.Plate{base, end}
	b.Members = []part.Member{{
		ID: "tube", Name: "tube", Material: d.v.Word("tube_material"), LengthMM: d.tubeLength(),
		Profile: d.profile(),
		// U out, V along the rail, so that W = U x V points down: the section is the same both ways up.
		Pose: part.Pose{Origin: part.Vec{Y: d.baseT}, U: part.Vec{Y: 1}, V: part.Vec{X: 1}},
	}}
	b.Welds = []part.WeldGroup{d.round("w-tube", "base", d.leg, d.baseT), d.round("w-end", "end", min(d.leg, d.endT), d.baseT+d.tubeLength())}
}

func (d *design) profile() part.Profile {
	return part.Profile{Kind: part.RectTube, AMM: d.width, BMM: d.high, TMM: d.wall, RootMM: d.corner}
}

// round welds an end of the tube, at a distance from the web, to a plate.
func (d *design) round(id, on string, leg, y float64) part.WeldGroup {
	pose := part.Pose{Origin: part.Vec{Y: y}, U: part.Vec{X: 1}, V: part.Vec{Z: 1}}
	w := fab.EdgeWeld(id, "tube", on, leg, d.v.Word("electrode"), fab.TubeEnd(d.profile(), pose)...)
	w.AlongEdge = false
	return w
}
