package strength

// A member that spans between two supports: what of a load each end takes in each state of the ends, and which sections a load passes on its way.

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"lugwright/part"
	"lugwright/strength/statics"
)

// A state of a beam's ends is a sum of these: which end is held against turning in the first plane of the section, and in the second; whether twist and
// thrust go to the second end, all of them, or to the first. Whatever the stiffness of the ends, what they take lies between these states (statics.Beam),
// so that every sum of it is greatest at one of them.
const (
	firstHeld  = 1
	secondHeld = 2
	planeBits  = 2 // as many again for the second plane
	twistOver  = 1 << (2 * planeBits)
	thrustOver = 2 * twistOver
	beamStates = 2 * thrustOver
)

// beam is a share of a member's two ends made ready.
type beam struct {
	*part.Share
	along   part.Vec    // from the first end to the second
	planes  [2]part.Vec // square to it, the section's own
	statics statics.Beam
}

func (m *model) beam(s *part.Share) beam {
	pose := m.b.Member(s.Beam).Pose
	from, _ := s.AlongSpan(pose.Origin)
	to, _ := s.AlongSpan(pose.At(m.b.Member(s.Beam).LengthMM, 0, 0))
	return beam{
		Share: s, along: s.Ends[1].Sub(s.Ends[0]).Unit(), planes: [2]part.Vec{pose.V, pose.W()},
		statics: statics.Beam{SpanMM: s.SpanMM(), FromMM: min(from, to), ToMM: max(from, to)},
	}
}

// take gives what one end takes of a force and a couple at a place, as a force and a couple at that same place.
func (b *beam) take(leg int, f, m, at part.Vec, state int) carried {
	x, _ := b.AlongSpan(at)
	foot := b.Ends[0].AddScaled(x, b.along)
	m = m.Add(at.Sub(foot).Cross(f)) // all on the axis
	end := carried{}
	if over := state&thrustOver != 0; over == (leg == 1) {
		end.f = b.along.Scale(f.Dot(b.along))
	}
	if over := state&twistOver != 0; over == (leg == 1) {
		end.m = b.along.Scale(m.Dot(b.along))
	}
	for k, across := range b.planes {
		axis := b.along.Cross(across) // a force across turns about it
		force, couple := f.Dot(across), m.Dot(axis)
		held := state >> (k * planeBits)
		first, second := b.statics.EndMoments(x, force, couple, held&firstHeld != 0, held&secondHeld != 0)
		far := (x*force + couple - first - second) / b.statics.SpanMM
		if leg == 1 {
			force, first = far, second
		} else {
			force -= far
		}
		end.f, end.m = end.f.AddScaled(force, across), end.m.AddScaled(first, axis)
	}
	end.m = end.m.Add(b.Ends[leg].Sub(at).Cross(end.f))
	return end
}

// words tell a state; planes go by the bracket's axis that they run along most.
func (m *model) beamWords(s *part.Share, state int) string {
	b := m.beam(s)
	names := [2]string{m.legEnd(s.ID, 0), m.legEnd(s.ID, 1)}
	held := [4]string{"both ends turn", names[0] + " held", names[1] + " held", "both ends held"}
	var out []string
	for k, across := range b.planes {
		out = append(out, letter(across)+" "+held[state>>(k*planeBits)&(firstHeld|secondHeld)])
	}
	over := func(bit int) string { return names[min(state&bit, 1)] }
	return fmt.Sprintf("%s: %s, twist to %s, thrust to %s", s.Beam, strings.Join(out, ", "), over(twistOver), over(thrustOver))
}

// legEnd names the support that a leg of a share ends at.
func (m *model) legEnd(share string, leg int) string {
	for _, p := range m.b.Paths {
		m.spend(len(p.Branches))
		for _, br := range p.Branches {
			if br.Share == share && br.Leg == leg {
				return br.Through[len(br.Through)-1]
			}
		}
	}
	return fmt.Sprint(leg)
}

func letter(v part.Vec) string {
	x, y, z := math.Abs(v.X), math.Abs(v.Y), math.Abs(v.Z)
	switch max(x, y, z) {
	case x:
		return "x"
	case y:
		return "y"
	}
	return "z"
}

// onward leaves of the branches that pass a section of a member those that go on along the normal, to the end on that side. The span is 0 where the
// member is no beam between supports.
func (m *model) onward(mem string, passes []bool, normal part.Vec) (on []bool, spanMM float64) {
	m.spend(len(m.branches) * (1 + len(m.b.Shares)))
	for i := range m.branches {
		s := m.b.Share(m.branches[i].Share)
		if s == nil || s.Rule != part.ByBeamSpan || s.Beam != mem {
			continue
		}
		if spanMM == 0 {
			passes, spanMM = slices.Clone(passes), s.SpanMM()
		}
		out := s.Ends[1].Sub(s.Ends[0]).Scale(float64(2*m.branches[i].Leg - 1))
		passes[i] = passes[i] && out.Dot(normal) > 0
	}
	return passes, spanMM
}
