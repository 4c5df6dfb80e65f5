package strength

// How a demand came about: the forces beyond a cut, on a weld group, on a bolt group, in the governing case. Lines for the calc sheet,
// made only when the calculation is asked for.

import (
	"lugwright/part"
	"lugwright/strength/statics"
)

// explanation is the lines before a limit state's own, and the place they speak of.
type explanation struct {
	lines []Line
	at    part.Vec
}

func (e *explanation) add(symbol, unit string, v float64, words string) {
	e.lines = append(e.lines, Line{Kind: GivenLine, Symbol: symbol, Unit: unit, Value: v, Words: words})
}

// resultant lists a force and its moment about a point.
func (e *explanation) resultant(w wrench, about string) {
	for i, v := range [3]float64{w.f.X, w.f.Y, w.f.Z} {
		e.add("R_"+"xyz"[i:i+1], "N", v, "force along "+"xyz"[i:i+1]+" "+about)
	}
	for i, v := range [3]float64{w.m.X, w.m.Y, w.m.Z} {
		e.add("MR_"+"xyz"[i:i+1], "N*mm", v, "moment about "+"xyz"[i:i+1]+" "+about)
	}
}

// replay puts the forces of a case and corner back, and solves the bolts for them.
func (r *run) replay(inCase, corner int) bool {
	forces, err := r.load(r.forces, &r.cases[inCase], inCase, r.factorOf(r.cases[inCase].Level), corner)
	if err != nil {
		return false
	}
	r.take(forces)
	r.inCase, r.inCorner = inCase, corner
	for i := range r.groups {
		r.spend(len(forces) + perSolved*len(r.groups[i].pos))
		if r.groups[i].solve(forces) != nil {
			return false
		}
	}
	return true
}

func (r *run) explainCut(i int, label string) explanation {
	c := &r.cuts[i]
	for way := c; way != nil; way = way.less {
		if way.label == label {
			c = way
		}
	}
	e := explanation{at: c.at}
	e.add("s_cut", "mm", c.root.Sub(c.at).Norm(), "the cut's distance from the root")
	e.resultant(r.beyond(c, c.group), "of all beyond the cut, about the centroid")
	return e
}

func (r *run) explainRoot(i int, label string) explanation {
	s := &r.rootSets[i]
	e := explanation{at: s.at}
	for _, way := range s.ways {
		if way.words != label {
			continue
		}
		for k := range way.sets {
			a := &way.sets[k]
			e.add("L_w", "mm", a.group.LengthMM, "effective length of "+a.thing)
			e.resultant(a.load(r.forces), "on "+a.thing+", about its centroid")
		}
		return e
	}
	e.add("L_w", "mm", s.group.LengthMM, "effective length of all runs, each by its leg over the greatest")
	jx, jy, jz := s.group.Inertia()
	for k, v := range [3]float64{jx, jy, jz} {
		e.add("J_w"+"xyz"[k:k+1], "mm^3", v, "inertia of the runs about "+"xyz"[k:k+1]+", unit throat")
	}
	if s.working != nil {
		e.add("L_ww", "mm", s.working.LengthMM, "length that shear lag leaves working for weak-axis bending")
	}
	e.resultant(r.carries(s), "on the runs, about their centroid")
	return e
}

func (r *run) explainBolts(i int, _ string) explanation {
	g := &r.groups[i]
	center := g.Pose.At(g.centroid.X, g.centroid.Y, 0)
	e := explanation{at: center}
	e.add("n_b", "", float64(len(g.pos)), "bolts")
	e.add("I_p", "mm^2", statics.PolarInertia(g.pos), "polar inertia of the bolts")
	e.resultant(sum(r.forces, g.passes, center), "on the bolts, about their centroid")
	e.add("C", "N", g.contact.ContactN, "push of the contact")
	return e
}
