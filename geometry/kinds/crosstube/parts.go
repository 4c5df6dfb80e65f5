package crosstube

// End plates, tube, welds.

import "lugwright/part"

// side is one end of the tube: its name, and the sense of y towards its rail.
type side struct {
	name  string
	sense float64
}

var sides = [2]side{{"near", 1}, {"far", -1}}

// upright is a plane at a distance inwards from a side's web: u up, v along the rail, so that its normal points to the other rail.
func (d *design) upright(s side, inwards float64) part.Pose {
	return part.Pose{Origin: part.Vec{Y: s.sense * (d.span/2 - inwards)}, U: part.Vec{Z: 1}, V: part.Vec{X: -s.sense}}
}

func (d *design) addParts(b *part.Bracket) {
	t := d.end.ThicknessMM
	for _, s := range sides {
		plate := "end-" + s.name
		b.Plates = append(b.Plates, d.end.Plate(plate, d.upright(s, t/2)))
		b.Welds = append(b.Welds, d.tube.Weld("w-"+s.name, "tube", plate, d.end.LegMM, d.v.Word("electrode"), d.upright(s, t)))
	}
	b.Members = []part.Member{{
		ID: "tube", Name: "cross tube", Material: d.v.Word("tube_material"), LengthMM: d.tubeLength(), Profile: d.tube.Profile(),
		Pose: part.Pose{Origin: part.Vec{Y: d.span/2 - t}, U: part.Vec{Y: -1}, V: part.Vec{X: 1}},
	}}
}
