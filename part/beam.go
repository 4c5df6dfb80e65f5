package part

// A member that spans between two supports, and what makes it whole.

import "fmt"

// nearMM is how close a member's axis is to the line between its supports, and how far a load on it stays from them.
const nearMM = 0.01

// AlongSpan is how far along the line between the two ends of a beam's share a place is, from the first, and how far off it.
func (s *Share) AlongSpan(at Vec) (alongMM, offMM float64) {
	dir, from := s.Ends[1].Sub(s.Ends[0]).Unit(), at.Sub(s.Ends[0])
	alongMM = from.Dot(dir)
	return alongMM, from.AddScaled(-alongMM, dir).Norm()
}

// SpanMM is the distance of the two ends of a beam's share.
func (s *Share) SpanMM() float64 { return s.Ends[1].Sub(s.Ends[0]).Norm() }

// beam checks that a member lies between the two places where it is supported.
func (v *validator) beam(at place, s *Share) {
	m := v.b.Member(s.Beam)
	if m == nil || m.Profile.Kind == Angle || s.Legs != 2 {
		v.refuse(at.dot(".beam"), fmt.Sprintf("%q on %d legs", s.Beam, s.Legs), "a tube or bar of the bracket on two legs")
		return
	}
	from, off := s.AlongSpan(m.Pose.Origin)
	to, off2 := s.AlongSpan(m.Pose.At(m.LengthMM, 0, 0))
	if !(min(from, to) >= -nearMM && max(from, to) <= s.SpanMM()+nearMM && max(off, off2) <= nearMM) {
		v.refuse(at.dot(".ends_mm"), "the member does not lie between them", "two places on the member's axis, at its ends or beyond")
	}
}

// spanned checks that a load on a member between two supports lies between them, and that no end may turn that has no other to lean on.
func (v *validator) spanned(at place, br *Branch) {
	s := v.b.Share(br.Share)
	if s == nil || s.Rule != ByBeamSpan {
		if end := v.b.Support(br.Through[len(br.Through)-1]); end.Couple == CoupleByTurning {
			v.refuse(at.dot(".through"), end.ID+", where the end is free to turn", "a leg of a member between two supports")
		}
		return
	}
	if along, _ := s.AlongSpan(br.At); !(along > nearMM && along < s.SpanMM()-nearMM) {
		v.refuse(at.dot(".at_mm"), fmt.Sprintf("%.4g mm along a span of %.4g mm", along, s.SpanMM()), "a place between its ends")
	}
}
