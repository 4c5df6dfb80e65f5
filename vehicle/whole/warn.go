package whole

import (
	"fmt"
	"slices"
	"strings"

	"lugwright/vehicle"
	"lugwright/vehicle/finding"
)

// warnings are all there is to look at: by severity, and within one in the order of the work, weights first.
func (w *work) warnings() []Warning {
	l := &warnings{}
	l.weights(w.a.Report.Weights, "")
	for i := range w.a.Report.Bodies {
		l.body(&w.a.Report.Bodies[i], w.q.Cases)
	}
	if w.a.Moved != nil {
		l.weights(w.a.Moved.Weights, "what if, ")
	}
	l.weighed(w.a.AsWeighed)
	l.frame(w.a.Frame)
	l.clearance(w)
	if d := w.a.Drilling; d != nil {
		l.findings("drilling", d.Findings)
	}
	l.findings("subframe", w.a.Subframe)
	l.lift(w.a.Lift)
	l.trays(w.a.Trays)
	l.findings("washer", w.a.Washers)
	l.findings("tank", w.a.PlasticTanks)
	slices.SortStableFunc(l.list, func(a, b Warning) int {
		return slices.Index(Severities(), a.Severity) - slices.Index(Severities(), b.Severity)
	})
	return l.list
}

type warnings struct{ list []Warning }

func (l *warnings) say(s Severity, kind, at, format string, a ...any) {
	l.list = append(l.list, Warning{s, kind, at, fmt.Sprintf(format, a...)})
}

// weights: one line for each rating that a state breaks, and what is not stated once.
func (l *warnings) weights(all []vehicle.Weights, prefix string) {
	unrated := map[string]bool{}
	for i := range all {
		s := &all[i]
		for _, r := range []struct {
			name string
			vehicle.Rated
		}{{"gross weight", s.Gross}, {"front axle", s.Front}, {"rear axle", s.Rear}} {
			switch r.Standing {
			case vehicle.Over:
				l.say(Fails, r.name+" over rating", prefix+"state "+s.State, "%s: %.0f kg is over its rating of %.0f kg, by %.0f kg", r.name, r.KG.Value, r.RatingKG, r.KG.Value-r.RatingKG)
			case vehicle.MayExceed:
				l.say(Mind, r.name+" may be over rating", prefix+"state "+s.State, "%s: %.0f kg is within its rating of %.0f kg, but may be %.0f kg, as sure as the masses are: weigh it", r.name, r.KG.Value, r.RatingKG, r.KG.High)
			case vehicle.NotRated:
				unrated[r.name] = true
			}
			if r.KG.Value < 0 {
				l.say(Fails, r.name+" lifts", prefix+"state "+s.State, "%s: lifts off the ground, %.0f kg", r.name, r.KG.Value)
			}
		}
		if s.Stability.Known && s.Stability.Factor.Value <= 0 {
			l.say(Fails, "tips", prefix+"state "+s.State, "the centre of gravity lies outside the wheels: the vehicle tips over where it stands")
		}
	}
	if prefix != "" || len(all) == 0 {
		return
	}
	for _, name := range []string{"gross weight", "front axle", "rear axle"} {
		if unrated[name] {
			l.say(Unknown, "no rating", "", "%s: no rating is stated, nothing holds its load against one", name)
		}
	}
	if !all[0].Stability.Known {
		l.say(Unknown, "stability", "", "stability and side bias: a track and the height of the chassis-cab's centre of gravity are needed")
	}
}

// body: what its mounts do not hold, then each mount's uplift once, at its worst.
func (l *warnings) body(r *vehicle.Result, cases []vehicle.Case) {
	body := r.Scheme.Body
	l.unheld(r)
	for _, f := range r.Scheme.Free {
		l.say(Mind, "free motion", "body "+body, "%s", f.Words)
	}
	for m, p := range Pulls(r, cases) {
		l.uplift("mount "+r.Loads[m].Mount+" of "+body, &p, len(r.Cases))
	}
	if r.Scheme.Surplus > 0 && !r.Scheme.SlackTried {
		l.say(Mind, "no bound", "body "+body, "there are more mounts than equilibrium can bound: some reactions have no least or no most")
	}
	for _, words := range r.Scheme.HeldTwice {
		l.say(Mind, "held twice", "body "+body, "%s", words)
	}
}

// unheld gathers the cases by the motion that they drive.
func (l *warnings) unheld(r *vehicle.Result) {
	var motions []string
	count, first := map[string]int{}, map[string]*vehicle.CaseResult{}
	for i := range r.Cases {
		if c := &r.Cases[i]; !c.Held {
			if count[c.Unheld]++; count[c.Unheld] == 1 {
				motions, first[c.Unheld] = append(motions, c.Unheld), c
			}
		}
	}
	for _, words := range motions {
		c := first[words]
		parts := ""
		if len(c.Parts) > 0 {
			parts = "; it lifts off " + strings.Join(c.Parts, ", ")
		}
		l.say(Fails, "not held", "body "+r.Scheme.Body, "the mounts do not hold it: %s%s; %d of %d states and cases, first %s in state %s", words, parts, count[words], len(r.Cases), c.Case, c.State)
	}
}

// Pull is how a body pulls a mount up, over all states and cases.
type Pull struct {
	StiffN            float64 // the most by stiffness, 0 where it never pulls
	Case, State       string
	Times             int     // states and cases in which it pulls by stiffness
	MostN             float64 // the most that sharing and slack allow: the bracket is designed for it
	MostCase, MostAt  string  // and its state
	MayTimes          int     // states and cases in which it may pull, those of Times counted
	lifts             int
	standing, firstly string
}

// More says whether sharing and slack bring more uplift than stiffness does.
func (p *Pull) More() bool { return p.MostN > 1.01*p.StiffN }

// Pulls are a body's, mount by mount.
func Pulls(r *vehicle.Result, cases []vehicle.Case) []Pull {
	out := make([]Pull, len(r.Loads))
	for i := range r.Cases {
		c := &r.Cases[i]
		a := cases[i%len(cases)].AccelG
		for m := range c.Reactions {
			out[m].add(&c.Reactions[m], c.Case, c.State, a.X == 0 && a.Y == 0 && a.Z < 0)
		}
	}
	return out
}

func (p *Pull) add(x *vehicle.Reaction, name, state string, straightDown bool) {
	if (x.HoldsDown || x.LiftedOff) && straightDown && p.standing == "" {
		p.standing = name + ", " + state
	}
	if x.HoldsDown {
		if p.Times++; -x.Force.Z > p.StiffN {
			p.StiffN, p.Case, p.State = -x.Force.Z, name, state
		}
	} else if x.LiftedOff {
		if p.lifts++; p.lifts == 1 {
			p.firstly = name + ", " + state
		}
	}
	if x.HoldsDown || x.MayHoldDown && !x.LiftedOff {
		p.MayTimes++
		for _, k := range x.Components {
			if k.Direction == "z" && -k.Low > p.MostN {
				p.MostN, p.MostCase, p.MostAt = -k.Low, name, state
			}
		}
	}
}

// uplift is one mount's. Where a load straight down lifts the body off it, the centre of gravity lies outside the mounts.
func (l *warnings) uplift(at string, p *Pull, of int) {
	if p.standing != "" {
		l.say(Fails, "outside the mounts", at, "the body lifts off it under its own weight (%s): the centre of gravity lies outside the mounts that bear it", p.standing)
	}
	switch {
	case p.Times > 0 && p.More():
		l.say(Mind, "uplift", at, "the body pulls it up, to %.2f kN (%s, %s), depending on which mounts share or rest, in %d of %d states and cases; %.2f kN by stiffness: it must hold down, not only bear",
			p.MostN/1000, p.MostCase, p.MostAt, p.MayTimes, of, p.StiffN/1000)
	case p.Times > 0:
		l.say(Mind, "uplift", at, "the body pulls it up, %.2f kN at worst (%s, %s), in %d of %d states and cases: it must hold down, not only bear", p.StiffN/1000, p.Case, p.State, p.Times, of)
	case p.MostN > 0:
		l.say(Mind, "may pull up", at, "the body may pull it up, to %.2f kN (%s, %s), depending on which mounts share or rest, in %d of %d states and cases", p.MostN/1000, p.MostCase, p.MostAt, p.MayTimes, of)
	}
	if p.lifts > 0 {
		l.say(Mind, "lifts off", at, "the body lifts off it in %d of %d states and cases, first %s", p.lifts, of, p.firstly)
	}
}

func (l *warnings) weighed(a *vehicle.AsWeighed) {
	if a == nil {
		return
	}
	for i, c := range []vehicle.Compared{a.Front, a.Rear, a.Total} {
		if !c.Within {
			l.say(Fails, "as weighed", "state "+a.State, "%s", a.Words[i])
		}
	}
}

func (l *warnings) frame(f *Frame) {
	if f == nil {
		return
	}
	for _, x := range f.Warnings {
		s, at := Mind, "frame"
		if x.Kind == "over yield" {
			s = Fails
		}
		if x.Mount != "" {
			at = "mount " + x.Mount
		}
		l.say(s, x.Kind, at, "%s", x.Words)
	}
}

// clearance: a gap that is too small, one that is not measured, and no twist at all where a frame can twist.
func (l *warnings) clearance(w *work) {
	if c := w.a.Clearance; c != nil {
		for _, f := range c.Findings {
			switch f.Verdict {
			case finding.Fail:
				l.say(Fails, "gap", f.At, "%s: needs %.0f %s, had %.0f (%s)", f.Rule, f.Need, f.Unit, f.Had, f.Words)
			case finding.NotCovered:
				l.say(Unknown, "gap", f.At, "%s: needs %.0f %s (%s)", f.Rule, f.Need, f.Unit, f.Words)
			}
		}
	}
	if len(w.q.Points) == 0 && (len(w.q.Bodies) > 0 || w.q.Frame != nil) {
		l.say(Unknown, "twist gap", "", "no twist allowance with measured gaps is stated: a frame that twists under a body needs room, rail to subframe and box to cab at least")
	}
}

// findings: what fails at one place makes one line.
func (l *warnings) findings(kind string, list []finding.Finding) {
	var places []string
	failed, silent := map[string][]string{}, 0
	for _, f := range list {
		switch f.Verdict {
		case finding.NotCovered:
			silent++
		case finding.Fail:
			if failed[f.At] == nil {
				places = append(places, f.At)
			}
			failed[f.At] = append(failed[f.At], failure(f))
		}
	}
	for _, at := range places {
		shown, more := failed[at], ""
		if n := len(shown) - 5; n > 0 {
			shown, more = shown[:5], fmt.Sprintf("; and %d more", n)
		}
		l.say(Fails, kind, at, "%s%s", strings.Join(shown, "; "), more)
	}
	if silent > 0 {
		l.say(Unknown, kind, "", "%d rules of %d have no verdict: their source does not speak, or a number is missing", silent, len(list))
	}
}

func failure(f finding.Finding) string {
	out := f.Rule
	if f.Unit != "" {
		out += fmt.Sprintf(": %s %.4g %s, had %.4g", f.Sense, f.Need, f.Unit, f.Had)
	}
	if f.Words != "" {
		out += ", " + f.Words
	}
	return out + " (" + f.Source + ")"
}

func (l *warnings) lift(p *LiftPlan) {
	if p == nil {
		return
	}
	if p.Tips != "" {
		l.say(Fails, "lift", "body "+p.Body, "%s", p.Tips)
	}
	for _, s := range p.Shares {
		switch {
		case s.OverRate:
			l.say(Fails, "lift", "jack "+s.Name, "plan it for %.0f kg: over its rating of %.0f kg", s.PlanKG, s.RatedKG)
		case s.RatedKG == 0:
			l.say(Unknown, "lift", "jack "+s.Name, "plan it for %.0f kg: no rating is stated", s.PlanKG)
		}
	}
}

// trays: rods that are pushed or bent, which threaded rod is not for.
func (l *warnings) trays(all []TrayLoads) {
	for i := range all {
		t := &all[i]
		push, bend := 0.0, 0.0
		var pushed, bent string
		for k := range t.Cases {
			c := &t.Cases[k]
			for _, r := range c.Rods {
				if r.PushN > push {
					push, pushed = r.PushN, "rod "+r.Rod+", "+where(c.Case, c.State)
				}
				if r.BendingNMM > bend {
					bend, bent = r.BendingNMM, "rod "+r.Rod+", "+where(c.Case, c.State)
				}
			}
		}
		if push > 0 {
			l.say(Mind, "rod pushed", "tray "+t.Tray, "its rods are pushed, %.2f kN at worst (%s): a rod with a nut below alone lifts off, one with nuts on both sides can buckle", push/1000, pushed)
		}
		if bend > 0 {
			l.say(Mind, "rod bent", "tray "+t.Tray, "side force bends its rods, %.3g N m at worst (%s): threaded rod holds little sideways, give the tray stops", bend/1000, bent)
		}
	}
}

func where(of, state string) string {
	if state == "" {
		return of
	}
	return of + ", " + state
}
