package papers

// This file is the lift plan.

import (
	"fmt"
	"math"
	"strings"

	"lugwright/vehicle"
	"lugwright/vehicle/whole"
)

func liftPlan(p *page) string {
	v := p.in.Vehicle
	switch {
	case v == nil:
		return p.noVehicle()
	case v.Answer.Lift == nil:
		return "the vehicle names no jacks (vehicle.lift)"
	}
	l := v.Answer.Lift
	p.head("What is lifted")
	p.say("%s, %s dry, tanks empty and nothing optional aboard; its mass centre lies %s behind the datum and %s.",
		l.Body, p.mass(l.Mass.KG.Value), p.length(math.Round(l.Mass.XMM.Value)), p.sideways(l.Mass.YMM.Value))
	if l.Tips != "" {
		p.say("DO NOT LIFT: the mass centre lies %s outside the jacks' outline, and the body tips.", p.length(math.Round(-l.MarginMM)))
	} else {
		p.say("The mass centre is %s inside the jacks' outline.", p.length(math.Round(l.MarginMM)))
	}
	p.jacks(l)
	p.head("In this order")
	steps := append([]string{}, l.Cautions...)
	steps = append(steps, "lift to the height of the mounts, timber following; nobody between body and frame",
		p.lowering(l.Body),
		"a jack that reads more than its column plan: stop, lower, find out why",
		"jacks inspected within six months, and after any shock; rated load marked and not exceeded (29 CFR 1926.305)")
	p.ticks(steps...)
	p.cautions(1, 6, 11)
	return ""
}

// noVehicle is why papers about the vehicle are missing.
func (p *page) noVehicle() string {
	if p.in.Result.Job.Vehicle != nil {
		return "the vehicle was not reckoned"
	}
	return "the job has no vehicle"
}

// sideways says on which side of the middle a place lies.
func (p *page) sideways(yMM float64) string {
	switch y := math.Round(yMM); {
	case y > 0:
		return p.length(y) + " to the left"
	case y < 0:
		return p.length(-y) + " to the right"
	}
	return "in the middle"
}

// lowering is the order of mounts: the one that stands alone before the two beside each other; common practice, no source.
func (p *page) lowering(body string) string {
	for _, b := range p.in.Vehicle.Request.Bodies {
		if b.Name != body && !(b.Name == "" && body == vehicle.MainBody) {
			continue
		}
		for i, m := range b.Mounts {
			var others []string
			for k, o := range b.Mounts {
				if k != i && math.Abs(o.At.X-m.At.X) > beside {
					others = append(others, o.Name)
				}
			}
			if len(b.Mounts) == 3 && len(others) == 2 {
				return fmt.Sprintf("lower on to %s first, its pin in; then %s together, pins in (%s)", m.Name, strings.Join(others, " and "), common)
			}
		}
	}
	return "lower on to one end first, pins in; then the other, left and right together (" + common + ")"
}

// beside is how far apart along the vehicle two mounts still stand beside each other, mm.
const beside = 100

func (p *page) jacks(l *whole.LiftPlan) {
	t := table("", "jack", "#even share", "#worst", "#plan for", "rated", "verdict", "read")
	for _, s := range l.Shares {
		rated, verdict := "not stated", "rating not stated"
		if s.RatedKG > 0 {
			rated, verdict = p.mass(s.RatedKG), "holds"
		}
		if s.OverRate {
			verdict = "OVER ITS RATING"
		}
		row(t, s.Name, p.mass(s.EvenKG), p.mass(s.WorstKG), p.mass(s.PlanKG), rated, verdict, blank)
	}
	p.head("Jacks")
	p.add(t)
	remarks := []string{fmt.Sprintf("even share: %s", l.Rule), "worst: the most that equilibrium allows while no jack pulls"}
	if len(l.Shares) >= 4 {
		remarks = append(remarks, "plan for: the worst, and at least half the body, for a stiff body rocks on a diagonal pair ("+common+")")
	}
	p.bullets(remarks...)
}
