package clevis

// What a foot is, and the bolts that both feet share.

import (
	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

// foot carries the ears down to the support.
type foot interface {
	top() string     // the thing on which the ears stand
	chain() []string // what a load passes from there, in order, down to the support
	check(*design, *fab.Needs)
	add(*design, *part.Bracket)
}

func (d *design) checkBoltHole(n *fab.Needs) bool {
	return n.ThatHole(d.bolting.HoleMM, "bolt_size", d.bolting.Size)
}

func (d *design) bolts(pose part.Pose, points []shape.Point, plies [2]part.Ply) part.BoltGroup {
	return d.bolting.Group("bolts", pose, points, plies[0].ThicknessMM+plies[1].ThicknessMM, shape.Box{}, plies)
}

// plies gives the bracket's side and the support's; the support's edges are taken as far off.
func (d *design) plies(thing string, thickness, edge float64) [2]part.Ply {
	return [2]part.Ply{
		{Thing: thing, ThicknessMM: thickness, Material: d.v.Word("foot_material"), EdgeMM: edge},
		{Thing: "support", ThicknessMM: d.v.MM("support_thickness"), Material: d.v.Word("support_material")},
	}
}

func (d *design) support(kind part.SupportKind) part.Support {
	return part.Support{
		ID: "support", Kind: kind, ThicknessMM: d.v.MM("support_thickness"), Material: d.v.Word("support_material"),
		ClearMM: d.v.MM("web_clear_height"), Couple: part.CouplePath(d.v.Word("couple")),
	}
}
