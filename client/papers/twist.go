package papers

// This file is the twist-test card: wheels lifted, gaps expected and read.

import (
	"fmt"
	"math"

	"lugwright/vehicle/clearance"
	"lugwright/vehicle/finding"
)

func twistTest(p *page) string {
	v := p.in.Vehicle
	switch {
	case v == nil:
		return p.noVehicle()
	case v.Answer.Clearance == nil:
		return "the vehicle states no twist allowance (vehicle.twist)"
	}
	c, twist := v.Answer.Clearance, v.Request.Twist
	p.head("The test")
	p.say("Twist allowed for: %s.", degrees(c.Allowance.AngleRad))
	var words []string
	for _, w := range c.Allowance.Words {
		words = append(words, p.words(w))
	}
	p.bullets(words...)
	p.ticks(p.liftStep(twist, c.Allowance.AngleRad),
		"on firm level ground, wheels that stay down chocked, nobody under it; lift with blocks under the tyres, not on jacks alone",
		"read every gap at rest, then with the left front and right rear wheels up, then with the other two",
		"doors and lockers open and shut freely at each; look for marks, paint cracks, a pin that binds, a pipe that pulls",
		"with tanks empty and again with tanks full; with chains on where they are used")
	p.gaps(v.Request.Points, c)
	p.head("After a slow, rough loop")
	p.ticks("no bright spots where anything touched", "no line broken at any bolt", "no crack in paint at a weld", "pins and keepers as they were")
	p.cautions(1, 2, 11, 12)
	return ""
}

// liftStep says how high the wheels go for the allowance: by the stated lift, or the one that turns one axle by the whole angle.
func (p *page) liftStep(t *clearance.Twist, angle float64) string {
	const published = "published tests lift at least 300 mm (11.8 in; guide B) and 305 mm (12 in; wildland fire vehicles)"
	switch {
	case t == nil:
		return "lift two opposite wheels until the others only just touch; " + published
	case t.WheelLiftMM > 0 && !t.BothAxles:
		return fmt.Sprintf("lift one wheel by %s, over a track of %s: the allowance is of one axle. Then two opposite wheels until the others only just touch; %s", p.length(t.WheelLiftMM), p.length(t.TrackMM), published)
	case t.WheelLiftMM > 0:
		return fmt.Sprintf("lift one front wheel and the opposite rear wheel by %s each, over a track of %s; %s", p.length(t.WheelLiftMM), p.length(t.TrackMM), published)
	case t.TrackMM > 0:
		return fmt.Sprintf("lift one front wheel and the opposite rear wheel, together until the frame has turned by the allowance: %s at one wheel over the track of %s, were the other axle to stay level; %s",
			p.length(math.Round(t.TrackMM*math.Tan(angle))), p.length(t.TrackMM), published)
	}
	return "lift one front wheel and the opposite rear wheel until the others only just touch; " + published
}

// gaps are the points: what they have at rest, and what must be left of it when the frame is turned by the whole allowance.
func (p *page) gaps(points []clearance.Point, c *clearance.Report) {
	t := table("Lengths in "+p.unit()+".", "place", "#moves", "#needs", "#at rest", "#left at full twist", "read: rest", "LF+RR up", "RF+LR up", "verdict")
	for i := range points {
		if i >= len(c.Findings) {
			break
		}
		pt, f := &points[i], &c.Findings[i]
		moves := pt.NeedMM(c.Allowance.AngleRad) - pt.ExtraMM
		had, left := "not stated", "?"
		if pt.HadMM != nil {
			had, left = p.bare(*pt.HadMM), p.bare(round(*pt.HadMM-moves))
		}
		if pt.Way == clearance.Free {
			row(t, pt.Name, "-", p.bare(f.Need), had, "-", blank, "-", "-", loud(f.Verdict))
			continue
		}
		row(t, pt.Name, p.bare(round(moves)), p.bare(round(f.Need)), had, left, blank, blank, blank, loud(f.Verdict))
	}
	if len(t.Rows) == 0 {
		p.say("The job lists no places to watch (vehicle.clearances): look at rail and subframe, box and cab, tyres and trays, exhaust, brake and fuel pipes, and write down the least gap of each.")
		return
	}
	p.head("Gaps")
	p.add(t)
	touches := []string{}
	for i := range c.Findings {
		if f := &c.Findings[i]; f.Verdict == finding.Fail {
			touches = append(touches, f.At+": ON PAPER IT TOUCHES: more room, or less twist, before the test")
		}
	}
	p.bullets(append(touches, "moves: by geometry, half-width x tan or height x sin of the whole allowance; springs take part of it, so that a true gap should be larger than the column left at full twist",
		"a gap that is smaller than that column: stop, something moves that was not reckoned with")...)
}

// loud makes a failure stand out without colour.
func loud(v finding.Verdict) string {
	if v == finding.Fail {
		return "FAIL"
	}
	return string(v)
}
