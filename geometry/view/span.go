package view

import (
	"math"

	"lugwright/geometry/shape"
	"lugwright/part"
)

// Steel is how far the plates and members of a bracket reach along a direction of length 1.
func Steel(b *part.Bracket, along part.Vec) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	reach := func(s *solid) {
		if len(s.outline) == 0 {
			return
		}
		at, rise := s.pose.Origin.Dot(along), s.pose.W().Dot(along)
		lowest, highest := min(s.lo*rise, s.hi*rise), max(s.lo*rise, s.hi*rise)
		if way := (shape.Point{X: s.pose.U.Dot(along), Y: s.pose.V.Dot(along)}); way.Norm() > 1e-9 {
			box := s.outline[0].Rotate(-way.Angle(), shape.Point{}).BBox()
			lowest, highest = lowest+box.Min.X*way.Norm(), highest+box.Max.X*way.Norm()
		}
		lo, hi = min(lo, at+lowest), max(hi, at+highest)
	}
	for i := range b.Plates {
		for _, p := range b.Plates[i].Folded() {
			reach(&solid{pose: p.Pose, outline: loopsOf(p.Shape(false)), lo: -p.ThicknessMM / 2, hi: p.ThicknessMM / 2})
		}
	}
	for i := range b.Members {
		for _, s := range memberSolids(&b.Members[i]) {
			reach(&s)
		}
	}
	return lo, hi
}
