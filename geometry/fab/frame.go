package fab

// Rules for holes in a frame rail. The chassis maker's guide overrules them, so every one is a parameter whose default names its source.

import (
	"fmt"

	"lugwright/geometry"
)

// Rail is a rail's section where a bracket is bolted to its web, and the rules for holes there.
type Rail struct {
	FlangeMM, CornerMM, ClearMM float64 // flange thickness, outside radius at the web's edges, web between the flanges
	toFlange, toHole, largest   float64
	play, corner                float64
	inLine                      int
}

// RailParams declares what ReadRail reads beside web_clear_height.
func RailParams() []geometry.Param {
	return []geometry.Param{
		Length("rail_flange", 2, 40, 6, "thickness of the rail's flanges"),
		Length("rail_corner", 0, 60, 12, "outside radius of the rail's edges, between web and flange"),
		Length("hole_to_flange", 0, 200, 38, "least steel from a hole's edge to the inside of a flange: 38 mm by a truck maker's layout book of 2022, second hand"),
		Length("hole_to_hole", 0, 200, 25, "least steel from hole edge to hole edge: 25 mm, and 1.5 times the largest hole where that is over 16 mm, by the same book; a 2005 guide for an off-road carrier has a pitch of 50 mm"),
		Length("largest_hole", 3, 60, 19, "largest hole in the web: 19 mm by the same book; 15 mm by the guide of 2005"),
		Count("holes_in_line", 1, 20, 3, "most holes in one vertical line: 3 by the same book"),
		Length("hole_over_bolt", 0.1, 5, 1, "most that a hole is larger than its bolt: 1 mm by an Australian code of practice, second hand"),
		Length("clear_of_corner", 0, 200, 0, "least distance from the bracket to the rail's round edges, 0 for none; 50 mm by a medium truck's body manual"),
	}
}

// ReadRail reads RailParams and web_clear_height.
func ReadRail(v geometry.Values) Rail {
	return Rail{
		FlangeMM: v.MM("rail_flange"), CornerMM: v.MM("rail_corner"), ClearMM: v.MM("web_clear_height"),
		toFlange: v.MM("hole_to_flange"), toHole: v.MM("hole_to_hole"), largest: v.MM("largest_hole"), inLine: v.Count("holes_in_line"),
		play: v.MM("hole_over_bolt"), corner: v.MM("clear_of_corner"),
	}
}

// HighMM is the rail's outside height.
func (r Rail) HighMM() float64 { return r.ClearMM + 2*r.FlangeMM }

// FlatMM gives the depths below the rail's upper face between which its web is flat.
func (r Rail) FlatMM() (from, to float64) { return r.CornerMM, r.HighMM() - r.CornerMM }

// CheckHoles holds holes of one pattern against the rules: the depths of its rows below the rail's upper face, the columns along it.
func (r Rail) CheckHoles(n *Needs, o Bolting, depths, columns []float64) {
	hole, size := o.HoleMM, fmt.Sprintf("%s in a hole of %s", o.Size, MM(o.HoleMM))
	n.That(hole <= r.largest, "bolt_size", size, "a hole of at most largest_hole, %.4g mm", r.largest)
	n.That(hole-o.DiaMM <= r.play+1e-9, "bolt_fit", size, "a hole at most hole_over_bolt, %.4g mm, larger than the bolt", r.play)
	n.That(len(depths) <= r.inLine, "bolt_rows", fmt.Sprint(len(depths)), "at most holes_in_line, %d", r.inLine)
	top, bottom := depths[0]-hole/2-r.FlangeMM, r.FlangeMM+r.ClearMM-depths[len(depths)-1]-hole/2
	n.That(top >= r.toFlange-1e-9, "bolt_first", "a row whose holes are "+MM(top)+" below the inside of the upper flange", "at least hole_to_flange, %.4g mm: bolts %.4g mm lower", r.toFlange, r.toFlange-top)
	blame := "bolt_first"
	if len(depths) > 1 {
		blame = "bolt_row_pitch"
	}
	n.That(bottom >= r.toFlange-1e-9, blame, "a row whose holes are "+MM(bottom)+" above the inside of the lower flange", "at least hole_to_flange, %.4g mm: bolts %.4g mm higher", r.toFlange, r.toFlange-bottom)
	least := r.toHole
	if hole > 16 {
		least = max(least, 1.5*hole)
	}
	for _, line := range []struct {
		param string
		at    []float64
	}{{"bolt_row_pitch", depths}, {"bolt_pitch", columns}} {
		if len(line.at) > 1 {
			pitch := line.at[1] - line.at[0]
			n.That(pitch-hole >= least-1e-9, line.param, MM(pitch), "at least %.4g mm: hole_to_hole, or 1.5 times a hole over 16 mm, and the hole", least+hole)
		}
	}
}

// CheckTouch keeps what lies on the web, between two depths below the rail's upper face, on its flat, and off the round edges where a rule asks for it.
// The parameter is what puts it there.
func (r Rail) CheckTouch(n *Needs, from, to float64, upper, lower string) {
	flatFrom, flatTo := r.FlatMM()
	words := "on the web's flat side"
	if r.corner > 0 {
		words += " and clear_of_corner off its round edges"
	}
	n.That(r.corner == 0 || from >= flatFrom+r.corner-1e-9, upper, "a bracket that begins "+MM(from)+" below the rail's upper face", "at least %.4g mm, "+words, flatFrom+r.corner)
	n.That(to <= flatTo-r.corner+1e-9, lower, "a bracket that ends "+MM(to)+" below the rail's upper face", "at most %.4g mm, "+words, flatTo-r.corner)
}
