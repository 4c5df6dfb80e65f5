package foot

// Load path, notes, what is not checked.

import (
	"lugwright/geometry/fab"
	"lugwright/part"
)

// addPath brings a force at the subframe through the leg that carries it and the bolted one to the web. A line of bolts along the rail is no hold for a
// couple, so none is taken.
func (d *design) addPath(b *part.Bracket) {
	pose := d.face()
	at := pose.At(0, d.seat.Mid, -d.v.MM("load_height"))
	b.LoadPoints = []part.LoadPoint{{
		ID: "subframe load", At: at,
		Released: []part.Component{part.MxPlus, part.MxMinus, part.MyPlus, part.MyMinus, part.MzPlus, part.MzMinus},
	}}
	way := []string{d.angle.Carries(), d.angle.Bolted(), "bolts", "support"}
	if len(d.seatXs) > 0 {
		way = append([]string{"seat"}, way...)
	}
	fab.Through(b, "subframe load", at, fab.Forces(), way...)
}

func (d *design) addRemarks(b *part.Bracket) {
	a := &d.angle
	if a.Bent {
		b.Notes = append(b.Notes, a.FoldNote())
		b.Unchecked = append(b.Unchecked, "the fold: stress that its curve adds at the inside, steel that is cold formed, and its fit: springback and the shop's own bend deduction overrule the flat pattern")
	}
	if d.lapped {
		b.Notes = append(b.Notes, "lap plate: fitted to the rail's flange side without a gap, shimmed where there is one")
		b.Unchecked = append(b.Unchecked,
			"a lap that does not bear: with a gap the bolted leg alone presses on the web; check once more without the lap",
			"the packer, and the flange's side under its push; the gap between leg and packer is counted as bearing on the web, which brings the push a little nearer than a low packer has it",
		)
	}
	b.Notes = append(b.Notes,
		"use holes that the frame has where they fit; drill and ream new ones, deburr, paint bare steel; none in a flange, none by torch",
		"the chassis maker's guide overrules the rules for holes that this foot was drawn by",
	)
	if a.Over {
		b.Unchecked = append(b.Unchecked, "pressure of the subframe's side on the inner face of the bolted leg, which is counted on for nothing")
	}
	seat := "prying of the subframe's own wall at its bolts on the leg, and the subframe beyond them"
	if len(d.seatXs) == 0 {
		seat = "the weld that holds the subframe on its leg, and the subframe there"
	}
	if s := a.Stiff; len(s.Xs) > 0 && s.Xs[len(s.Xs)-1]-s.T/2 > d.seat.Wide/2 {
		b.Unchecked = append(b.Unchecked, "bending of the leg along the rail, from the subframe's hold to the stiffeners beyond its ends")
	}
	b.Unchecked = append(b.Unchecked, seat,
		"the foot as a beam along the rail: bending, twist and warping from the subframe's hold to its bolts",
		"the rail where the foot stands: holes that are there already, cross members, spring supports, ends of reinforcements, and the hidden face of the web",
	)
}
