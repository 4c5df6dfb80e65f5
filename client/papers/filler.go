package papers

// This file is the notes on filler, preheat and distortion.

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"lugwright/geometry/access"
	"lugwright/part"
	"lugwright/strength/material"
	"lugwright/units"
)

// preheat is AWS D1.1:2015 Table 3.3, as quoted second hand and in UFC TI 809-26: up to a thickness, with low-hydrogen processes (category B) and with other
// stick electrodes (category A). The table has both systems of units, each rounded by itself.
var preheat = []struct {
	toMM, toIn     float64
	lowC, lowF     int
	otherC, otherF int
}{{20, 0.75, 0, 32, 0, 32}, {38, 1.5, 10, 50, 65, 150}, {65, 2.5, 65, 150, 110, 225}, {thickest, thickest, 110, 225, 150, 300}}

// thickest ends the table.
const thickest = 1e9

// metalPair is what two materials and the thicker of two parts ask for.
type metalPair struct {
	grades, filler string
	thickMM        float64
	joints         []string
	closing        bool // the welds only close corners, and are in no check
}

func fillerNotes(p *page) string {
	if len(p.brackets()) == 0 {
		return noBrackets
	}
	var pairs []*metalPair
	add := func(one *metalPair, joint string) {
		at := slices.IndexFunc(pairs, func(q *metalPair) bool {
			return q.grades == one.grades && q.filler == one.filler && q.thickMM == one.thickMM && q.closing == one.closing
		})
		if at < 0 {
			at, pairs = len(pairs), append(pairs, one)
		}
		pairs[at].joints = append(pairs[at].joints, joint)
	}
	var corners []string
	for i := range p.brackets() {
		b := &p.brackets()[i]
		for k := range b.Part.Welds {
			w := &b.Part.Welds[k]
			add(pairOf(b.Part, w), b.Spec.Name+" "+joint(b.Part, w.ID))
		}
		if q := closed(b.Part); q != nil {
			corners = append(corners, b.Spec.Name)
			add(&metalPair{grades: q.Material, filler: "matching, the welder's choice", thickMM: q.ThicknessMM, closing: true}, b.Spec.Name+" corners")
		}
	}
	if pairs == nil {
		return p.noWelds()
	}
	p.head("Filler and preheat")
	t := table("", "metals", "#thickest, "+p.unit(), "filler", "preheat at least", "#joints", "on")
	var strange []string
	for _, q := range pairs {
		warm, note := p.preheat(q)
		if note != "" && !slices.Contains(strange, note) {
			strange = append(strange, note)
		}
		row(t, q.grades, p.bare(q.thickMM), q.filler, warm, strconv.Itoa(len(q.joints)), on(q.joints))
	}
	p.add(t)
	if corners != nil {
		strange = append(strange, strings.Join(corners, ", ")+": the welds that close the corners are in no check, nor is what aluminium or hardened steel loses beside them")
	}
	p.bullets(append(strange,
		"preheat: AWS D1.1:2015 Table 3.3 as quoted second hand (UFC TI 809-26), low-hydrogen processes: solid or cored wire, basic rods. Rods that are not low-hydrogen ask for more: "+p.otherRods(),
		"where 0 C or 32 F stands and the steel is colder, warm it to 20 C (70 F) and keep it so; drive the damp off with a flame in any case",
		"the table names American grades; S235 to S355 are taken by their strength among its category B ("+common+")",
		"warm as far round the joint as the thicker part is thick, 75 mm (3 in) at least (AWS D1.1, from memory)",
		"wire and rods dry, from a box that was closed; bright metal 25 mm (1 in) on either side ("+common+")")...)
	for _, f := range fillersOf(p) {
		if e, err := material.LookupElectrode(f); err == nil {
			p.bullets(fmt.Sprintf("%s: weld metal of at least %s tensile strength (%s); a stronger one is no gain where the plate is weaker", f, p.stress(e.FexxMPa), source(e)))
		}
	}
	p.distortion()
	p.cautions(7, 8, 9, 10)
	return ""
}

func source(e *material.Electrode) string {
	if e.FromMemory {
		return e.Source + ", from memory"
	}
	return e.Source
}

func fillersOf(p *page) []string {
	var out []string
	for i := range p.brackets() {
		for k := range p.brackets()[i].Part.Welds {
			if f := p.brackets()[i].Part.Welds[k].Electrode; !slices.Contains(out, f) {
				out = append(out, f)
			}
		}
	}
	return out
}

func pairOf(b *part.Bracket, w *part.WeldGroup) *metalPair {
	one, t1 := grade(b, w.Joins[0])
	two, t2 := grade(b, w.Joins[1])
	names := one
	if two != "" && two != one {
		names += " on " + two
	}
	return &metalPair{grades: names, filler: w.Electrode, thickMM: max(t1, t2)}
}

// on shortens a list of joints.
func on(joints []string) string {
	byBracket, order := map[string][]string{}, []string(nil)
	for _, j := range joints {
		at := strings.LastIndexByte(j, ' ')
		if byBracket[j[:at]] == nil {
			order = append(order, j[:at])
		}
		byBracket[j[:at]] = append(byBracket[j[:at]], j[at+1:])
	}
	for i, name := range order {
		order[i] = name + " " + strings.Join(byBracket[name], " ")
	}
	return strings.Join(order, ", ")
}

// preheat is the least temperature for a pair, and what to mind where the table does not speak of a metal.
func (p *page) preheat(q *metalPair) (warm, note string) {
	for _, name := range strings.Split(q.grades, " on ") {
		g, err := material.LookupGrade(name)
		switch {
		case err != nil:
			return "ask its maker", name + " is in no table here: ask its maker how it is welded"
		case g.Family == material.Aluminium:
			lost := "as the checks have it"
			if q.closing {
				lost = "which no check here has, these welds being in none"
			}
			return "none", name + ": no preheat for its thickness, dry and wire-brushed with a stainless brush; strength is lost beside the weld, " + lost + " (" + common + ")"
		case g.Family == material.Stainless:
			return "none", name + ": no preheat, keep it under 150 C (300 F) between passes, matching filler (" + common + ")"
		case hardens(g):
			return "ask its maker", name + " hardens when it is welded: a procedure of its own, or no weld (" + common + ")"
		}
	}
	for _, r := range preheat {
		switch {
		case p.system == units.Inch && q.thickMM <= r.toIn*25.4+1e-6:
			return fmt.Sprintf("%d F", r.lowF), ""
		case p.system != units.Inch && q.thickMM <= r.toMM+1e-6:
			return fmt.Sprintf("%d C", r.lowC), ""
		}
	}
	return "", ""
}

// hardens names bars for pins and quenched plate, which no general table covers.
func hardens(g *material.Grade) bool {
	return strings.Contains(g.Form, "pins") || g.Name == "A514" || strings.Contains(g.Name, "QT")
}

// otherRods lists the table's other column.
func (p *page) otherRods() string {
	var out []string
	over := ""
	for _, r := range preheat {
		to, warm := p.length(r.toMM), fmt.Sprintf("%d C", r.otherC)
		if p.system == units.Inch {
			to, warm = p.length(r.toIn*25.4), fmt.Sprintf("%d F", r.otherF)
		}
		if r.toMM == thickest {
			out = append(out, "over "+over+": "+warm)
		} else {
			out = append(out, "to "+to+": "+warm)
		}
		over = to
	}
	return strings.Join(out, ", ")
}

func (p *page) distortion() {
	p.head("How it draws")
	items := []string{
		"a fillet pulls the plate towards itself: tack both faces, weld alternate faces, let each run cool before its neighbour (" + common + ")",
	}
	if p.pinned() {
		items = append(items, "ears drawn by one-sided tacks stand off square and the pin binds: dummy pin and spacer in until cold",
			"a bush that is welded in shrinks: weld with a sacrificial pin in it, or ream afterwards (tractor trade)")
	}
	long := 0.0
	for i := range p.brackets() {
		for k := range p.brackets()[i].Part.Plates {
			box := p.brackets()[i].Part.Plates[k].Outer.BBox()
			long = max(long, box.Width(), box.Height())
		}
		for _, m := range p.brackets()[i].Part.Members {
			long = max(long, m.LengthMM)
		}
	}
	t := table("", "length of the weldment", "give or take")
	for _, to := range []float64{120, 400, 1000, 2000, 4000} {
		row(t, "to "+p.length(to), p.length(access.WeldmentMM(to)))
		if to >= long {
			break
		}
	}
	p.bullets(items...)
	p.add(t)
	p.say("What a good shop holds after welding: ISO 13920 class B, as reproduced second hand. What must be closer is machined or reamed after welding.")
	p.say("What of a bracket may not line up afterwards stands on the fit sequence.")
}
