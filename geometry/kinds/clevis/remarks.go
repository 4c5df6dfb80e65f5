package clevis

// Notes to the maker, and limit states that the model does not carry.

import (
	"fmt"

	"lugwright/geometry/shape"
	"lugwright/part"
)

func (d *design) addRemarks(b *part.Bracket) {
	if a := d.v.MM("finish_allowance"); a > 0 {
		b.Notes = append(b.Notes, fmt.Sprintf("pin holes are cut %.4g mm small: ream to %.4g mm after welding, both ears in one pass", a, d.hole))
	}
	b.Notes = append(b.Notes,
		"weld with a dummy pin through both ears and a spacer of lug and gaps between them; draw it cold",
		"the pin draws outboard: keep its way clear, and fit the keeper, wire or cotter before driving",
	)
	if d.between.thickness > 0 || d.outside.thickness > 0 {
		b.Notes = append(b.Notes, "weld the ears to the foot on both faces before the plates that stiffen them go on")
	}
	if note := d.cheek.Note(d.pinHole(shape.Point{})); note != "" {
		b.Notes = append(b.Notes, note)
	}
	b.Unchecked = append(b.Unchecked, d.unchecked()...)
}

func (d *design) unchecked() []string {
	out := []string{"the body's lug beyond the pin", d.ending().unchecked()}
	if d.v.MM("spacer_length") > 0 {
		out = append(out, "the spacers, which the load along the pin presses between lug and ear")
	}
	if d.v.Word("foot") != "angle" {
		if d.between.thickness > 0 {
			out = append(out, "the base plate between the ears, where plates stiffen it")
		}
		return append(out, "the cross member as a beam")
	}
	if s := readAngle(d).Stiff; len(s.Xs) > 0 && s.Xs[len(s.Xs)-1]-s.T/2 > d.earW/2 {
		out = append(out, "bending of the angle's leg along the rail, from the ears to the stiffeners beyond their ends")
	}
	return append(out, "the angle as a beam along the rail: bending, twist and warping from the ears to its bolts")
}
