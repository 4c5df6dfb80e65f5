package papers

// This file is the weld map: each joint with its number, size, runs, sides, order and access.

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"lugwright/client/run"
	"lugwright/geometry/setout"
	"lugwright/part"
	"lugwright/units"
)

func weldMap(p *page) string {
	welded := false
	for i := range p.brackets() {
		welded = welded || len(p.brackets()[i].Part.Welds) > 0
	}
	switch {
	case len(p.brackets()) == 0:
		return noBrackets
	case !welded:
		return p.noWelds()
	}
	p.say("Joints are numbered W1, W2 and on within each bracket; the calc sheet and the drawings have the same numbers. Do them in the order of the column order. Lengths are %s, of every run alone%s; runs end where they end, they are not carried round a corner unless the table says all round.", p.inUnit(), p.choose("", ", up to the next sixteenth"))
	for i := range p.brackets() {
		if b := &p.brackets()[i]; len(b.Part.Welds) > 0 {
			p.weldsOf(b)
		}
	}
	p.cautions(8, 9, 10, 14)
	return ""
}

// noWelds is why papers on welding are missing; welds that only close a corner are in a bracket's notes.
func (p *page) noWelds() string {
	for i := range p.brackets() {
		if n := closingNote(p.brackets()[i].Part); n != "" {
			return "no bracket of the job has a weld that carries load; " + p.brackets()[i].Spec.Name + " has one that does not: " + p.words(n)
		}
	}
	return "no bracket of the job has a weld"
}

func (p *page) weldsOf(b *run.Bracket) {
	p.head(title(b))
	t := table("", "#order", "joint", "joins", "size", "runs", "access")
	var remarks, fillers, notes []string
	of := map[string]string{} // the joints that a note is about
	for i, s := range setout.Of(b.Part.AsMade()) {
		w := b.Part.Weld(s.Weld.ID)
		row(t, strconv.Itoa(i+1), joint(b.Part, w.ID)+" "+w.ID, thing(b.Part, w.Joins[0])+" on "+thing(b.Part, w.Joins[1]), p.weldSize(w), p.runs(b.Part, w), reached(b, w.ID))
		if note := p.weldNote(b.Part, w); of[note] != "" {
			of[note] += ", " + joint(b.Part, w.ID)
		} else if note != "" {
			notes, of[note] = append(notes, note), joint(b.Part, w.ID)
		}
		if !slices.Contains(fillers, w.Electrode) {
			fillers = append(fillers, w.Electrode)
		}
	}
	remarks = append(remarks, "filler "+strings.Join(fillers, ", ")+"; process and procedure are the welder's")
	for _, note := range notes {
		remarks = append(remarks, of[note]+": "+note)
	}
	p.add(t)
	p.figures(p.drawings(b).Welds(p.half())...)
	for _, n := range b.Part.Notes {
		if strings.Contains(n, "weld") {
			remarks = append(remarks, "over the order of the table: "+p.words(n))
		}
	}
	for _, f := range b.Access {
		if id, ok := strings.CutPrefix(f.What, "weld "); ok {
			remarks = append(remarks, "NO ACCESS at "+joint(b.Part, id)+" "+id+": "+p.words(f.Words))
		}
	}
	p.bullets(append(remarks, "access: whether a torch as the job's room has it reaches the joint")...)
}

// reached says in a word or three whether the torch reaches a weld.
func reached(b *run.Bracket, id string) string {
	if !b.Looked {
		return "not looked at"
	}
	for _, f := range b.Access {
		if f.What == "weld "+id {
			return "NO"
		}
	}
	return "yes"
}

// weldSize is what is measured on the weld: leg, throat, or the hole that is filled.
func (p *page) weldSize(w *part.WeldGroup) string {
	switch w.Kind {
	case part.PJP:
		return "partial penetration, throat " + p.length(w.LegMM)
	case part.CJP:
		return "full penetration, " + p.length(w.LegMM) + " plate"
	case part.Plug:
		return fmt.Sprintf("plug %s wide, filled %s deep", p.length(w.WidthMM), p.length(w.LegMM))
	}
	return "fillet " + p.length(w.LegMM)
}

// runs are those of one length together, on which faces: "2 x 100, both faces"; a ring of short ones is one weld all round.
func (p *page) runs(b *part.Bracket, w *part.WeldGroup) string {
	if w.Kind == part.Plug {
		return alike(lengths(w.Segments), p.bare)
	}
	if shown, other := byFace(b, w); shown != nil {
		if one, two := alike(lengths(shown), p.weldLength), alike(lengths(other), p.weldLength); one != two {
			return "face that the cut file shows " + one + "; other face " + two
		}
	}
	var out []string
	single, joined, rings := chains(w.Segments)
	for _, r := range rings {
		out = append(out, "all round, about "+p.weldLength(round(r)))
	}
	for _, r := range joined {
		out = append(out, "one run round its corners, about "+p.weldLength(round(r))+", "+setout.Faces(w))
	}
	if len(single) > 0 {
		out = append(out, alike(single, p.weldLength)+", "+setout.Faces(w))
	}
	return strings.Join(out, " and ")
}

// byFace parts a plate's runs by the face that they lie on, the one that the cut file shows first; nil where they are on one face alone.
func byFace(b *part.Bracket, w *part.WeldGroup) (shown, other []part.WeldSegment) {
	q := b.Plate(w.Joins[0])
	if q == nil || !w.BothSides {
		return nil, nil
	}
	for _, s := range w.Segments {
		if s.A.Add(s.B).Scale(0.5).Sub(q.Pose.Origin).Dot(q.Pose.W()) > 0 {
			shown = append(shown, s)
		} else {
			other = append(other, s)
		}
	}
	if other == nil {
		return nil, nil
	}
	return shown, other
}

func lengths(segments []part.WeldSegment) []float64 {
	out := make([]float64, len(segments))
	for i, s := range segments {
		out[i] = s.B.Sub(s.A).Norm()
	}
	return out
}

// weldLength is that of a run, without its unit.
func (p *page) weldLength(mm float64) string { return units.Unitless(units.WeldLength(mm, p.system)) }

// alike counts lengths that print the same.
func alike(mm []float64, write func(mm float64) string) string {
	var names []string
	var count []int
	for _, l := range mm {
		name := write(l)
		i := slices.Index(names, name)
		if i < 0 {
			names, count, i = append(names, name), append(count, 0), len(names)
		}
		count[i]++
	}
	for i := range names {
		names[i] = fmt.Sprintf("%d x %s", count[i], names[i])
	}
	return strings.Join(names, ", ")
}

// nearMM is how close the end of a run lies to the start of the next on a ring.
const nearMM = 0.01

// chain is runs that go on from one into the next.
type chain struct {
	from, to part.Vec
	runs     int
	mm       float64
}

// chains parts runs into single ones, chains round corners, and rings, which come back to where they began. A list may begin in the middle of a chain.
func chains(segments []part.WeldSegment) (single, joined, rings []float64) {
	var all []chain
	for _, s := range segments {
		if n := len(all); n > 0 && s.A.Sub(all[n-1].to).Norm() < nearMM {
			last := &all[n-1]
			last.to, last.runs, last.mm = s.B, last.runs+1, last.mm+s.B.Sub(s.A).Norm()
			continue
		}
		all = append(all, chain{s.A, s.B, 1, s.B.Sub(s.A).Norm()})
	}
	if n := len(all); n > 1 && all[n-1].to.Sub(all[0].from).Norm() < nearMM {
		last := all[n-1]
		all[0].from, all[0].runs, all[0].mm = last.from, all[0].runs+last.runs, all[0].mm+last.mm
		all = all[:n-1]
	}
	for _, c := range all {
		switch {
		case c.runs == 1:
			single = append(single, c.mm)
		case c.to.Sub(c.from).Norm() < nearMM:
			rings = append(rings, c.mm)
		default:
			joined = append(joined, c.mm)
		}
	}
	return single, joined, rings
}

// onePass is the largest fillet that is laid in one pass lying flat, AWS D1.1 prequalified single pass in the horizontal position (from memory).
const onePass = 8.0

// weldNote is what the welder minds at a joint.
func (p *page) weldNote(b *part.Bracket, w *part.WeldGroup) string {
	var out []string
	switch {
	case w.Kind == part.Fillet && w.LegMM > onePass:
		out = append(out, fmt.Sprintf("more than one pass: over %s of leg (AWS D1.1, from memory)", p.choose("8 mm", "5/16 in")))
	case w.Kind == part.CJP:
		out = append(out, "bevel, weld the first side, gouge the root clean, weld the second; or back it")
	case w.Kind == part.PJP:
		out = append(out, "bevel deep enough for the throat; the root is not seen afterwards")
	case w.Kind == part.Plug:
		out = append(out, "wash the wall of the hole first, then fill it; no slag left under the fill")
	}
	if w.AlongEdge && w.Kind == part.Fillet {
		out = append(out, "along the plate's edge: leave the edge standing, so that the leg can be seen")
	}
	if s := b.Support(w.Joins[1]); s != nil && (s.Kind == part.RailWeb || s.Kind == part.RailFlange) {
		out = append(out, "onto the frame's rail: only where the chassis maker lets it be welded; not across a flange")
	}
	return strings.Join(out, "; ")
}
