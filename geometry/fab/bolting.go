package fab

// Bolts of a pattern: what they are, how they pass their holes, what room they want.

import (
	"lugwright/geometry"
	"lugwright/geometry/shape"
	"lugwright/part"
)

// Bolting is the bolts of one pattern.
type Bolting struct {
	Size, Grade   string
	DiaMM, HoleMM float64 // no hole for a size that the tables lack
	ThreadsIn     bool
	tightening
}

// tightening is what is stated of how bolts are tightened, 0 for what is not.
type tightening struct{ preload, slipC float64 }

// TighteningParams declares how bolts are tightened. The defaults state nothing.
func TighteningParams() []geometry.Param {
	return []geometry.Param{
		Ratio("bolt_preload", 0, part.MaxPreload, 0, "preload over the bolt's tensile strength, F_u A_s: 0.70 by AISC 360 and EN 1993-1-8; 0 states none"),
		Ratio("slip_coefficient", 0, part.MaxSlipC, 0, "of the faces between the plies where the joint must not slip, such as 0.30 of AISC 360, class A; 0 lets it slip"),
	}
}

func readTightening(v geometry.Values) tightening {
	return tightening{v.Ratio("bolt_preload"), v.Ratio("slip_coefficient")}
}

// tighten states it of a group.
func (t tightening) tighten(g part.BoltGroup) part.BoltGroup {
	g.Preload, g.SlipC = t.preload, t.slipC
	return g
}

// BoltParams are the parameters of a pattern's bolts, with the usual size and grade.
func BoltParams(size, grade string) []geometry.Param {
	return append([]geometry.Param{
		Thread("bolt_size", size, "bolt size"),
		Named("bolt_grade", grade, "bolt grade"),
		Choice("bolt_fit", "clearance of the holes", "normal", "close", "loose"),
		Choice("threads", "threads in or out of the shear plane", "in", "out"),
	}, TighteningParams()...)
}

// ReadBolts reads what BoltParams declares.
func ReadBolts(v geometry.Values) Bolting {
	o := Bolting{Size: v.Word("bolt_size"), Grade: v.Word("bolt_grade"), ThreadsIn: v.Word("threads") == "in", tightening: readTightening(v)}
	o.DiaMM, o.HoleMM = Clearance(o.Size, part.Fit(v.Word("bolt_fit")))
	return o
}

// Group is the bolts at points of a plane, through two plies whose pitch is that of the points.
func (o Bolting) Group(id string, pose part.Pose, points []shape.Point, gripMM float64, patch shape.Box, plies [2]part.Ply) part.BoltGroup {
	plies[0].PitchMM = LeastPitch(points)
	plies[1].PitchMM = plies[0].PitchMM
	return o.tighten(part.BoltGroup{
		ID: id, Pose: pose, Points: points, Size: o.Size, DiaMM: o.DiaMM, Grade: o.Grade, HoleMM: o.HoleMM, GripMM: gripMM,
		ThreadsIn: o.ThreadsIn, Plies: plies, Patch: patch,
	})
}

// ThatPitch refuses bolts that stand nearer to each other than 2 2/3 diameters; a count of one has no pitch.
func (n *Needs) ThatPitch(count int, pitchMM, boltMM float64, param string) bool {
	return n.That(count < 2 || pitchMM >= BoltPitch(boltMM)-shape.TouchMM, param, MM(pitchMM), "at least 2 2/3 d = %.4g mm", BoltPitch(boltMM))
}

// ThatEdge refuses bolts nearer to the outline's edge than 1.25 diameters, by the parameter that would change it.
func (n *Needs) ThatEdge(outer shape.Loop, points []shape.Point, boltMM float64, param string, valueMM float64) bool {
	have := LeastEdge(outer, points)
	return n.That(have >= BoltEdge(boltMM)-shape.TouchMM, param, MM(valueMM)+", which leaves "+MM(have)+" from a bolt to the edge",
		"1.25 d = %.4g mm to the edge", BoltEdge(boltMM))
}
