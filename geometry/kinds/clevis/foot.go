package clevis

// What a foot is, and the bolts that both feet share.

import (
	"fmt"

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
	return n.ThatHole(d.boltHole, "bolt_size", d.v.Word("bolt_size"))
}

// checkPitch holds bolts of one direction apart.
func (d *design) checkPitch(n *fab.Needs, count int, param string) {
	if count > 1 {
		least := fab.BoltPitch(d.bolt)
		n.That(d.v.MM(param) >= least-shape.TouchMM, param, fab.MM(d.v.MM(param)), "at least 2 2/3 d = %.4g mm", least)
	}
}

func (d *design) bolts(pose part.Pose, points []shape.Point, plies [2]part.Ply) part.BoltGroup {
	return part.BoltGroup{
		ID: "bolts", Pose: pose, Points: points, Size: d.v.Word("bolt_size"), DiaMM: d.bolt, Grade: d.v.Word("bolt_grade"),
		HoleMM: d.boltHole, GripMM: plies[0].ThicknessMM + plies[1].ThicknessMM, ThreadsIn: d.v.Word("threads") == "in",
		Plies: plies,
	}
}

// plies gives the bracket's side and the support's; the support's edges are taken as far off.
func (d *design) plies(thing string, thickness, edge float64, points []shape.Point) [2]part.Ply {
	pitch := fab.LeastPitch(points)
	return [2]part.Ply{
		{Thing: thing, ThicknessMM: thickness, Material: d.v.Word("foot_material"), EdgeMM: edge, PitchMM: pitch},
		{Thing: "support", ThicknessMM: d.v.MM("support_thickness"), Material: d.v.Word("support_material"), PitchMM: pitch},
	}
}

func (d *design) support(kind part.SupportKind) part.Support {
	return part.Support{
		ID: "support", Kind: kind, ThicknessMM: d.v.MM("support_thickness"), Material: d.v.Word("support_material"),
		ClearMM: d.v.MM("web_clear_height"), Couple: part.CouplePath(d.v.Word("couple")),
	}
}

func boltID(i int) string { return fmt.Sprintf("bolt-%d", i+1) }
