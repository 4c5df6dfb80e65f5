package command

// This file says what of a vehicle to look at first. What the tables below it print too is told with their digits and in the job's units.

import (
	"fmt"
	"slices"
	"strings"

	"lugwright/client/run"
	"lugwright/vehicle"
	"lugwright/vehicle/finding"
	"lugwright/vehicle/whole"
)

// mostHoles is how many rules that holes break are told first; the rest stands under the holes.
const mostHoles = 5

// first are a vehicle's warnings, worst first.
func (l *loadsPage) first() []whole.Warning {
	a := l.v.Answer
	out := l.overRatings(a.Report.Weights, "")
	for i := range a.Report.Bodies {
		out = append(out, l.unheld(&a.Report.Bodies[i])...)
		out = append(out, l.uplifts(&a.Report.Bodies[i])...)
	}
	if a.Moved != nil {
		out = append(out, l.overRatings(a.Moved.Weights, "what if, ")...)
	}
	if a.Clearance != nil {
		out = append(out, l.told("gap", a.Clearance.Findings)...)
	}
	if a.Drilling != nil {
		out = append(out, l.broken(a.Drilling.Findings)...)
	}
	out = append(out, l.told("subframe", a.Subframe)...)
	out = append(out, l.told("washer", a.Washers)...)
	out = append(out, l.told("tank", a.PlasticTanks)...)
	for _, w := range l.v.Warnings {
		if !toldAbove(w) {
			if w.Words = l.words(w.Words); w.Kind == "free motion" {
				w.Words = "nothing holds the body against " + w.Words
			}
			out = append(out, w)
		}
	}
	return run.WorstFirst(out)
}

// toldAbove says whether a warning is one of those that are told from the tables' numbers.
func toldAbove(w whole.Warning) bool {
	switch {
	case strings.HasSuffix(w.Kind, "over rating"), strings.HasSuffix(w.Kind, " lifts"), w.Kind == "not held", w.Kind == "uplift", w.Kind == "gap" && w.At != "":
		return true
	case w.Kind == "drilling", w.Kind == "subframe", w.Kind == "washer", w.Kind == "tank":
		return w.Severity == whole.Fails && !strings.HasPrefix(w.At, "bracket ")
	}
	return false
}

func (l *loadsPage) overRatings(all []vehicle.Weights, prefix string) []whole.Warning {
	var out []whole.Warning
	unit := l.massUnit()
	for i := range all {
		w := &all[i]
		for _, r := range []struct {
			name string
			vehicle.Rated
		}{{"front axle", w.Front}, {"rear axle", w.Rear}, {"gross weight", w.Gross}} {
			one := whole.Warning{Severity: whole.Fails, Kind: r.name + " over rating", At: prefix + "state " + w.State}
			load := fmt.Sprintf("%s %s %s", r.name, l.mass(r.KG.Value), unit)
			switch {
			case r.KG.Value < 0:
				one.Words = load + ": it lifts off the ground"
			case r.Standing == vehicle.Over:
				one.Words = fmt.Sprintf("%s is over its rating of %s %s, by %s %s", load, l.mass(r.RatingKG), unit, l.mass(r.KG.Value-r.RatingKG), unit)
			case r.Standing == vehicle.MayExceed:
				one.Severity = whole.Mind
				one.Words = fmt.Sprintf("%s is within its rating of %s %s, but may be %s, as sure as the masses are: weigh it", load, l.mass(r.RatingKG), unit, l.mass(r.KG.High))
			default:
				continue
			}
			out = append(out, one)
		}
	}
	return out
}

// unheld is one line for all states and cases that a body is not held in: the tables name the motion of each.
func (l *loadsPage) unheld(r *vehicle.Result) []whole.Warning {
	n := 0
	var first *vehicle.CaseResult
	for i := range r.Cases {
		if c := &r.Cases[i]; !c.Held {
			if n++; first == nil {
				first = c
			}
		}
	}
	if n == 0 {
		return nil
	}
	return []whole.Warning{{Severity: whole.Fails, Kind: "not held", At: "body " + r.Scheme.Body, Words: fmt.Sprintf("the body is not held in %d of %d states and cases; %s, %s: %s", n, len(r.Cases), first.Case, first.State, l.words(first.Unheld))}}
}

func (l *loadsPage) uplifts(r *vehicle.Result) []whole.Warning {
	var out []whole.Warning
	for m, p := range whole.Pulls(r, l.v.Job.Vehicle.Request.Cases) {
		words := fmt.Sprintf("the body pulls it up, %s %s at worst (%s, %s), in %d of %d states and cases", l.force(p.StiffN), l.forceUnit(), p.Case, p.State, p.Times, len(r.Cases))
		switch {
		case p.Times == 0:
			continue
		case p.More():
			words = fmt.Sprintf("the body pulls it up, to %s %s (%s, %s), depending on which mounts share or rest, in %d of %d states and cases; %s %s by stiffness",
				l.force(p.MostN), l.forceUnit(), p.MostCase, p.MostAt, p.MayTimes, len(r.Cases), l.force(p.StiffN), l.forceUnit())
		}
		out = append(out, whole.Warning{Severity: whole.Mind, Kind: "uplift", At: "mount " + r.Loads[m].Mount + " of " + r.Scheme.Body, Words: words + ": it must hold down, not only bear"})
	}
	return out
}

// told are the findings that do not pass, in words.
func (l *loadsPage) told(kind string, list []finding.Finding) []whole.Warning {
	var out []whole.Warning
	for _, f := range list {
		switch f.Verdict {
		case finding.Fail:
			out = append(out, whole.Warning{Severity: whole.Fails, Kind: kind, Words: l.finding(f)})
		case finding.NotCovered:
			if kind == "gap" {
				out = append(out, whole.Warning{Severity: whole.Unknown, Kind: kind, Words: l.finding(f)})
			}
		}
	}
	return out
}

// broken are the rules that holes break, each once.
func (l *loadsPage) broken(list []finding.Finding) []whole.Warning {
	all := l.told("drilling", slices.DeleteFunc(gathered(list), func(f finding.Finding) bool { return f.Verdict != finding.Fail }))
	if n := len(all) - mostHoles; n > 0 {
		all = append(all[:mostHoles], whole.Warning{Severity: whole.Fails, Kind: "drilling", Words: counting(n, "more rule of holes is broken", "more rules of holes are broken") + ", told under Holes in the frame"})
	}
	return all
}

// place is where a warning is about; a vehicle's only body needs no name.
func place(v *run.Vehicle, w whole.Warning) string {
	at := w.At
	if bodies := v.Answer.Report.Bodies; len(bodies) == 1 {
		name := bodies[0].Scheme.Body
		at = strings.TrimSuffix(at, " of "+name)
		if at == "body "+name {
			at = "mounts"
		}
	}
	if at == "" || strings.HasPrefix(w.Words, at+" ") {
		return ""
	}
	return at + ": "
}

// vehicleVerdict is the reason why a vehicle does not do, in one line; nil when nothing fails. What would be if things moved is no failure of it.
func vehicleVerdict(v *run.Vehicle) error {
	if len(v.Fails()) == 0 {
		return nil
	}
	l := &loadsPage{scale: scale{v.Job.Units}, v: v}
	bad := slices.DeleteFunc(l.first(), func(w whole.Warning) bool { return w.Severity != whole.Fails || run.OfMove(w) })
	text := place(v, bad[0]) + bad[0].Words
	if n := len(bad) - 1; n > 0 {
		text += fmt.Sprintf("; and %d more", n)
	}
	return &verdictError{text}
}
