package lug

// What a lug stands on.

import (
	"lugwright/geometry/fab"
	"lugwright/part"
)

const (
	onFace  = "face"
	onPlate = "base plate"
	onCap   = "capped tube"
	inSlot  = "slotted tube"

	fillet  = "fillet"
	through = "complete penetration"
)

// stand carries the lug's foot on to the support.
type stand interface {
	top() string                     // the thing that lug and gussets are welded to
	depth() float64                  // how far the lug reaches below the origin
	runs(*design) []part.WeldSegment // of the lug's weld
	chain() []string                 // what a load passes from the lug's weld, in order, down to the support
	check(*design, *fab.Needs)
	add(*design, *part.Bracket)
	unchecked() []string
}

func (d *design) readStand() stand {
	switch d.v.Word("foot") {
	case onPlate:
		return readPlate(d)
	case onCap:
		return capped{readTube(d)}
	case inSlot:
		return slotted{readTube(d)}
	}
	return face{}
}

// across is both fillets at the lug's foot, full width.
func (d *design) across() []part.WeldSegment {
	half := d.ear.Width / 2
	return fab.AtFaces(part.Vec{X: -half}, part.Vec{X: half}, part.Vec{Y: 1}, d.t)
}

// face is what is there already: a plate, a flange.
type face struct{}

func (face) top() string                       { return "support" }
func (face) depth() float64                    { return 0 }
func (face) runs(d *design) []part.WeldSegment { return d.across() }
func (face) chain() []string                   { return []string{"support"} }
func (face) check(*design, *fab.Needs)         {}
func (face) add(d *design, b *part.Bracket)    { b.Supports = append(b.Supports, d.support()) }

func (face) unchecked() []string {
	return []string{"the face that the lug stands on, beyond its metal beside the weld: bending, and what carries it"}
}

func (d *design) support() part.Support {
	return part.Support{
		ID: "support", Kind: part.SupportKind(d.v.Word("support_kind")), ThicknessMM: d.v.MM("support_thickness"), Material: d.v.Word("support_material"),
		ClearMM: d.v.MM("support_clear"), Couple: part.CoupleByWall,
	}
}
