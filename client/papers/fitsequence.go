package papers

// This file is the jig, tack and fit sequence.

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"lugwright/client/run"
	"lugwright/geometry/setout"
	"lugwright/part"
)

func fitSequence(p *page) string {
	if len(p.brackets()) == 0 {
		return noBrackets
	}
	welded, onFrame := false, false
	for i := range p.brackets() {
		b := p.brackets()[i].Part
		welded = welded || len(b.Welds) > 0
		onFrame = onFrame || slices.ContainsFunc(b.Supports, func(s part.Support) bool { return s.Kind != part.BodyFrame && s.Kind != "" })
	}
	p.wholeJob(welded, onFrame)
	p.mountChecks()
	for i := range p.brackets() {
		p.sequence(&p.brackets()[i])
	}
	p.cautions(8, 9, 12, 14)
	return ""
}

// wholeJob is the order of work over all brackets.
func (p *page) wholeJob(welded, onFrame bool) {
	p.head("The whole job, in this order")
	pins := false
	for i := range p.brackets() {
		pins = pins || slices.ContainsFunc(p.brackets()[i].Part.Pins, func(q part.Pin) bool { return ownPin(p.brackets()[i].Part, &q) })
	}
	var steps []string
	add := func(when bool, words string) {
		if when {
			steps = append(steps, words)
		}
	}
	if words := p.unmarked(); words != "" {
		add(true, words)
	}
	add(true, "parts to hand by their marks, L with L and R with R; holes finished but those that are reamed after welding")
	add(onFrame && pins, "brackets loose on the frame by their own bolts, washers in, nuts by hand: they find their place from the pins, not the other way round")
	add(onFrame && !pins, "brackets loose on the frame by their own bolts, washers in, nuts by hand, until all of them have found their place")
	add(pins, "dummy pins of the finished size through all mounts at once, spacers in")
	add(welded, "batteries and modules off; earth clamp beside the weld, at most 300 mm (12 in) away (truck makers' guides), never through a pin or bearing")
	add(welded, "tack on alternate sides, each tack a third of the joint's leg deep and ground where it is welded over (common practice, no source)")
	add(welded && pins, "measure: square, level, diagonals, pins turn by hand. Nothing is welded out before that")
	add(welded && !pins, "measure: square, level, diagonals. Nothing is welded out before that")
	add(welded, "take off the frame what can be welded at the bench; weld in the order of the weld map, from one side to the other, never one joint out at once")
	add(welded && pins, "let it cool in still air to where a hand can stay on it; then draw the dummy pins. A pin that sticks: the ears have drawn, ream in place")
	add(welded && !pins, "let it cool in still air to where a hand can stay on it, then measure again")
	closes := slices.ContainsFunc(p.brackets(), func(b run.Bracket) bool { return closed(b.Part) != nil })
	add(closes, "corners that are closed by welding: folded first, welded off the truck, cold before any paint")
	add(onFrame && pins, "back on the frame, pins in first, then tighten by the torque card")
	add(onFrame && !pins, "back on the frame, all bolts in by hand, then tighten by the torque card")
	p.ticks(steps...)
}

// mountChecks are distances between mounts on the vehicle, for the tape.
func (p *page) mountChecks() {
	v := p.in.Vehicle
	if v == nil {
		return
	}
	t := table("", "from", "to", "#along", "#across", "#straight", "read")
	for _, body := range v.Request.Bodies {
		for i := range body.Mounts {
			for k := range body.Mounts[:i] {
				a, b := &body.Mounts[k], &body.Mounts[i]
				dx, dy := math.Abs(b.At.X-a.At.X), math.Abs(b.At.Y-a.At.Y)
				row(t, a.Name, b.Name, p.bare(dx), p.bare(dy), p.bare(round(math.Hypot(dx, dy))), blank)
			}
		}
	}
	if len(t.Rows) > 0 {
		p.head("Between the mounts, in plan, " + p.inUnit())
		p.add(t)
		p.bullets("straight is the tape from mount to mount seen from above: equal numbers here are equal diagonals there")
	}
}

func (p *page) sequence(b *run.Bracket) {
	p.head(title(b))
	var remarks []string
	for _, n := range append(slices.Clone(b.Part.Notes), b.Fits...) {
		if !strings.HasPrefix(n, "fold ") && !strings.HasPrefix(n, "pin: ") {
			remarks = append(remarks, p.words(n))
		}
	}
	if len(remarks) > 0 {
		p.say("First read; where the order below says another, this holds:")
		p.bullets(remarks...)
	}
	at := 0
	item := func(format string, args ...any) string {
		at++
		return fmt.Sprintf("%d. ", at) + fmt.Sprintf(format, args...)
	}
	var steps []string
	if ground := base(b.Part); ground != nil {
		steps = append(steps, item("begin with %s; bright metal where it is welded", strings.Join(ground, "; ")))
	}
	for i := range b.Part.Pins {
		if q := &b.Part.Pins[i]; ownPin(b.Part, q) && len(b.Part.Welds) > 0 {
			steps = append(steps, item("dummy pin, %s round, through %s, with a spacer of %s between", p.length(q.DiaMM), seats(b.Part, q), p.length(room(q))))
		}
	}
	places := setout.Of(b.Part.AsMade())
	var set []string // what stands
	for i := 0; i < len(places); {
		k := i
		for k < len(places) && places[k].Step == places[i].Step {
			k++
		}
		for at := i; at < k; at++ {
			if id := places[at].Part; !slices.Contains(set, id) {
				set = append(set, id)
				steps = append(steps, item("set and tack %s", p.placed(b.Part, places[at:])))
			}
		}
		more := slices.ContainsFunc(places[k:], func(s setout.Placing) bool { return !slices.Contains(set, s.Part) })
		steps = append(steps, item("weld %s, alternate sides%s", joints(b.Part, places[i:k]), stay(more)))
		i = k
	}
	switch q := closed(b.Part); {
	case q != nil:
		steps = append(steps, item("fold what is folded, finish the holes, deburr"),
			item("weld the corners of %s, at the bench, drain open; any coating off the seam first, for zinc gives off toxic fume; filler and preheat by the filler notes", thing(b.Part, q.ID)),
			item("let it cool, dress the seams, look for cracks and pores; then paint, bolt on"))
	case len(places) == 0:
		steps = append(steps, item("no joint to set: fold what is folded, finish the holes, deburr, paint, bolt on"))
	}
	p.ticks(steps...)
}

func stay(more bool) string {
	if more {
		return ", before anything stands on it"
	}
	return ""
}

// base is what stands on nothing of the bracket's own, each thing after others of its form with what its form is looked at for.
func base(b *part.Bracket) []string {
	var out, forms []string
	names := map[string][]string{}
	for i := range b.Welds {
		on := b.Owner(b.Welds[i].Joins[1])
		if b.Plate(on) == nil && b.Member(on) == nil || slices.ContainsFunc(b.Welds, func(w part.WeldGroup) bool { return b.Owner(w.Joins[0]) == on }) {
			continue
		}
		form, name := trueness(b, on), thing(b, on)
		if names[form] == nil {
			forms = append(forms, form)
		}
		if !slices.Contains(names[form], name) {
			names[form] = append(names[form], name)
		}
	}
	for _, form := range forms {
		out = append(out, strings.Join(names[form], ", ")+": "+form)
	}
	return out
}

// trueness is how a part must lie before others are set on it, by its form.
func trueness(b *part.Bracket, id string) string {
	m := b.Member(id)
	if m == nil {
		return "flat"
	}
	switch m.Profile.Kind {
	case part.Angle:
		return "straight, its legs square"
	case part.FlatBar:
		return "straight and flat"
	}
	return "straight" // a bar or tube has no face that could be flat
}

// placed says where the part of the first place goes: measured on the first thing that it stands on, and what else it stands on.
func (p *page) placed(b *part.Bracket, places []setout.Placing) string {
	s := &places[0]
	words := thing(b, s.Part) + " on " + thing(b, s.On)
	for k, edge := range s.From {
		if edge != "" {
			words += fmt.Sprintf(", %s from the %s", p.length(s.AtMM[k]), edge)
		}
	}
	if s.Side != "" {
		words += ", " + string(s.Side)
	}
	for k := range places[1:] {
		if o := &places[1+k]; o.Part == s.Part {
			words += ", and on " + thing(b, o.On)
		}
	}
	return words
}

func joints(b *part.Bracket, places []setout.Placing) string {
	var out []string
	for i := range places {
		out = append(out, joint(b, places[i].Weld.ID))
	}
	return strings.Join(out, ", ")
}

// seats names what holds the pin.
func seats(b *part.Bracket, q *part.Pin) string {
	var out []string
	for _, s := range q.Seats {
		if !s.Loads {
			out = append(out, thing(b, s.Thing))
		}
	}
	if len(out) == 2 && out[0] == out[1] {
		return "both " + out[0] + " plates"
	}
	return strings.Join(out, " and ")
}

// room is what is free between the two seats that hold a pin.
func room(q *part.Pin) float64 {
	lo, hi := math.Inf(-1), math.Inf(1)
	for _, s := range q.Seats {
		switch {
		case s.Loads:
		case s.AtMM < middleOf(q):
			lo = max(lo, s.AtMM+s.ThicknessMM/2)
		default:
			hi = min(hi, s.AtMM-s.ThicknessMM/2)
		}
	}
	return hi - lo
}

func middleOf(q *part.Pin) float64 {
	for _, s := range q.Seats {
		if s.Loads {
			return s.AtMM
		}
	}
	return 0
}
