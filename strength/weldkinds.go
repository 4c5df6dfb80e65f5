package strength

// Welds beside fillets: grooves at their depth, grooves through the plate that are as strong as its section, plugs that hold in their own plane alone.

import (
	"math"
	"slices"
	"strings"

	"lugwright/part"
	"lugwright/strength/statics"
)

// Fillet says whether the weld is one.
func (l *WeldLine) Fillet() bool { return l.Kind == string(part.Fillet) }

// PJP says whether the weld is a groove weld of partial penetration, whose Leg is its effective throat.
func (l *WeldLine) PJP() bool { return l.Kind == string(part.PJP) }

// CJP says whether the weld is a groove weld of complete penetration.
func (l *WeldLine) CJP() bool { return l.Kind == string(part.CJP) }

// Plug says whether the weld fills holes.
func (l *WeldLine) Plug() bool { return l.Kind == string(part.Plug) }

// Throated says whether the weld has a throat of its own: a fillet, or a groove of partial penetration.
func (l *WeldLine) Throated() bool { return l.Fillet() || l.PJP() }

// AsFillet is the leg of the fillet with the weld's throat.
func (l *WeldLine) AsFillet() float64 {
	if l.PJP() {
		return l.Leg * math.Sqrt2
	}
	return l.Leg
}

// Throat is what a weld's own stress in fatigue is reckoned on, for each line of it; 0 for a weld that goes through the plate, whose detail is the plate.
func (l *WeldLine) Throat() float64 {
	switch {
	case l.CJP():
		return 0
	case l.PJP():
		return l.Leg
	case l.Plug():
		return plugArea(l.Width, l.Run) / l.Run
	}
	return 0.707 * l.Leg
}

// Metal is what a line of a weld through the plate stands for: half of the plate's thickness, and strengths; of two plates that meet in one plane the weaker's.
func (l *WeldLine) Metal() (t, fy, fu float64) {
	if l.Butt {
		return LeastKnown(l.Leg, l.T2/2), LeastKnown(l.Fy, l.Fy2), LeastKnown(l.Fu, l.Fu2)
	}
	return l.Leg, l.Fy, l.Fu
}

// GuardCJP ends a rule about the metal of a weld through the plate. Where the plate's own section at the weld is checked there is nothing more to it but the
// filler; a need that does not hold stands.
func (l *WeldLine) GuardCJP(c *Calc) {
	switch {
	case !l.CJP():
		c.Skip("the weld is not of complete penetration")
	case l.Section != "" && c.Verdict != Outside:
		c.Skip("the weld is as strong as the plate, whose section there is checked: " + l.Section)
	case !l.InPlate:
		c.RuleOut("complete penetration is covered for plates, and the weld holds none")
	}
}

// GuardStood ends a rule about the plate that a weld through the plate stands on.
func (l *WeldLine) GuardStood(c *Calc) {
	switch {
	case !l.CJP():
		c.Skip("the weld is not of complete penetration")
	case l.Butt:
		c.Skip("the plates meet in one plane")
	case l.T2 == 0:
		c.Skip("the thickness of what it stands on is not known")
	}
}

// Slot is the length of a slot over its round ends, 0 for a plug.
func (l *WeldLine) Slot() float64 {
	if l.Run <= l.Width+1e-6 {
		return 0
	}
	return l.Run
}

// GuardPlug ends a rule about plugs.
func (l *WeldLine) GuardPlug(c *Calc) { c.SkipUnless(l.Plug(), "the weld is no plug") }

// StoodOn is the plate that a weld stands on: its thickness, the weld lines that share it, its strengths.
func (l *WeldLine) StoodOn() (t, lines, fy, fu float64) {
	return l.T2, 1 + Flag(l.Backed), l.Fy2, l.Fu2
}

// plugArea is the area of a plug or slot in the faying plane, of a length over its round ends.
func plugArea(width, length float64) float64 {
	return width*(length-width) + math.Pi*(width*width)/4
}

// asFillet is the leg of the fillet whose throat each line of a weld has: of a groove through the plate half the thickness, of a plug its area over its length.
func asFillet(w *part.WeldGroup) float64 {
	switch w.Kind {
	case part.PJP:
		return w.LegMM * math.Sqrt2
	case part.CJP:
		return w.LegMM / 2 * math.Sqrt2
	case part.Plug:
		l := w.Segments[0].B.Sub(w.Segments[0].A).Norm()
		return plugArea(w.WidthMM, l) / l * math.Sqrt2
	}
	return w.LegMM
}

// laid gives a bracket with its groove welds as lines of their metal. Those of partial penetration, drawn at the faces of what they hold, run at the middle of
// their throats. Those through a plate run at both its faces, however they are drawn. The bracket itself is left as it is.
func laid(b *part.Bracket) *part.Bracket {
	out := *b
	for i := range b.Welds {
		w := &b.Welds[i]
		if w.Kind != part.PJP && w.Kind != part.CJP {
			continue
		}
		if &out.Welds[0] == &b.Welds[0] {
			out.Welds = slices.Clone(b.Welds)
		}
		p := flatOf(b, w.Joins[0])
		if w.Kind == part.PJP {
			out.Welds[i].Segments = sunk(w, p, b.Member(w.Joins[0]))
			continue
		}
		if p == nil {
			continue
		}
		half := w.LegMM / 2
		if w.BothSides {
			out.Welds[i].Segments = moved(w.Segments, p, func(off float64) float64 { return math.Copysign(half, off) })
			continue
		}
		out.Welds[i].Segments = slices.Concat(
			moved(w.Segments, p, func(float64) float64 { return half }),
			moved(w.Segments, p, func(float64) float64 { return -half }),
		)
	}
	return &out
}

// sunk gives the runs of a partial-penetration weld half a throat nearer to the middle of the plate, or all round nearer to the axis of the tube or bar, that
// they hold; a weld round a whole angle stays, and is outside the rule.
func sunk(w *part.WeldGroup, p *part.Plate, m *part.Member) []part.WeldSegment {
	by := w.LegMM / 2
	switch {
	case p != nil:
		return moved(w.Segments, p, func(off float64) float64 { return off - math.Copysign(min(by, math.Abs(off)), off) })
	case !hasThroat(p, m):
		return w.Segments
	}
	deep, wide := m.Profile.AMM, m.Profile.AMM
	switch m.Profile.Kind {
	case part.RectTube:
		wide = m.Profile.BMM
	case part.FlatBar:
		wide = m.Profile.TMM
	}
	in := func(at part.Vec) part.Vec {
		_, v, w := m.Pose.Local(at)
		return at.AddScaled(-v*min(2*by/deep, 1), m.Pose.V).AddScaled(-w*min(2*by/wide, 1), m.Pose.W())
	}
	out := make([]part.WeldSegment, len(w.Segments))
	for k, s := range w.Segments {
		out[k] = part.WeldSegment{A: in(s.A), B: in(s.B)}
	}
	return out
}

// flatOf is a plate, a side of a bent plate or a leg of an angle; nil for none of them.
func flatOf(b *part.Bracket, id string) *part.Plate {
	if p := b.Face(id); p != nil {
		return p
	}
	whole, _, _ := strings.Cut(id, ".")
	if m := b.Member(whole); m != nil && m.Profile.Kind == part.Angle {
		one, two := m.Legs()
		for _, leg := range []*part.Plate{&one, &two} {
			if leg.ID == id {
				return leg
			}
		}
	}
	return nil
}

// hasThroat says whether a partial-penetration weld on a plate or member can be moved to its throat: an angle as a whole has no middle to go to.
func hasThroat(p *part.Plate, m *part.Member) bool {
	return p != nil || m != nil && m.Profile.Kind != part.Angle
}

// moved puts runs at other distances from a plate's middle plane.
func moved(segs []part.WeldSegment, p *part.Plate, to func(off float64) float64) []part.WeldSegment {
	at := func(q part.Vec) part.Vec {
		_, _, off := p.Pose.Local(q)
		return q.AddScaled(to(off)-off, p.Pose.W())
	}
	out := make([]part.WeldSegment, len(segs))
	for k, s := range segs {
		out[k] = part.WeldSegment{A: at(s.A), B: at(s.B)}
	}
	return out
}

// aims sets the direction that a run's force is split along: across the joint for a groove through the plate, and how far past the line its metal is at its
// worst; square to the faying plane for a plug.
//
// Lines at the faces of a plate of thickness t, each half of it, see m/t of a moment m per length that bends the plate out of its plane, on t/2: a third of the
// elastic 6 m/t^2. So the metal is looked at three times as far from the middle plane (elementary statics).
func (m *model) aims(w *part.WeldGroup, run *weldRun) {
	p := m.b.Face(w.Joins[0])
	if p == nil {
		return
	}
	normal := p.Pose.W()
	switch w.Kind {
	case part.Plug:
		run.out = vec3(normal)
	case part.CJP:
		_, _, off := p.Pose.Local(vec(run.a))
		run.out, run.past = vec3(normal.Cross(vec(run.b).Sub(vec(run.a)).Unit())), vec3(normal.Scale(2*off))
	}
}

// split raises what a weld has across and along its joint by a force per length.
func (l *rootWeld) split(q, out statics.Vec3) {
	n := math.Abs(q.Dot(out)) * l.leg
	if l.Plug() && n < 1e-6*(1+q.Norm()*l.leg) {
		n = 0 // rounding: any pull on a plug is outside the rules
	}
	l.N = max(l.N, n)
	l.V = max(l.V, math.Sqrt(max(q.Dot(q)*l.leg*l.leg-n*n, 0)))
}

// describe adds to a weld's line what only grooves through the plate and plugs have.
func (m *model) describe(l *WeldLine, w *part.WeldGroup) {
	p, on := m.b.Face(w.Joins[0]), m.b.Face(w.Joins[1])
	l.InPlate = p != nil
	m.skipThickness(w, p, on)
	switch w.Kind {
	case part.CJP:
		l.Leg = w.LegMM / 2
		l.Butt = p != nil && on != nil && inOnePlane(p, on)
	case part.Plug:
		l.Width, l.Run = w.WidthMM, w.Segments[0].B.Sub(w.Segments[0].A).Norm()
		l.Pitch, l.OnLine = plugPitch(w.Segments, l.Slot() > 0, w.WidthMM)
	}
}

// skipThickness names what no rule here says of a groove weld that pulls on a plate through its thickness.
func (m *model) skipThickness(w *part.WeldGroup, p, on *part.Plate) {
	if w.Kind != part.PJP && w.Kind != part.CJP || p != nil && on != nil && inOnePlane(p, on) {
		return
	}
	m.skip("lamellar tearing", w.Joins[1], "weld "+w.ID+" pulls on it through its thickness: no rule here; EN 1993-1-10 and AWS D1.1 speak of it")
	if w.Kind == part.CJP && !w.BothSides {
		m.skip("backing left in place", "weld "+w.ID, "a groove weld from one face; AISC 360-22 J2.6 (from memory) asks for a tough filler where steel backing stays in a joint that is pulled")
	}
}

// inOnePlane says whether two plates lie edge to edge: parallel, each reaching into the other's thickness.
func inOnePlane(p, q *part.Plate) bool {
	_, _, off := p.Pose.Local(q.Pose.Origin)
	return math.Abs(p.Pose.W().Dot(q.Pose.W())) > 0.99 && math.Abs(off) < (p.ThicknessMM+q.ThicknessMM)/2-1e-6
}

// plugPitch is the least distance between middles of plugs; of slots the least across their length, and the least along it of those on one line. 0 for none.
func plugPitch(segs []part.WeldSegment, slots bool, width float64) (across, along float64) {
	across, along = math.Inf(1), math.Inf(1)
	for i, s := range segs {
		dir := s.B.Sub(s.A).Unit()
		for _, u := range segs[:i] {
			d := s.A.Add(s.B).Sub(u.A.Add(u.B)).Scale(0.5)
			ahead := math.Abs(d.Dot(dir))
			aside := math.Sqrt(max(d.Dot(d)-ahead*ahead, 0))
			switch {
			case !slots:
				across = min(across, d.Norm())
			case aside < width:
				along = min(along, ahead)
			default:
				across = min(across, aside)
			}
		}
	}
	return finiteOr0(across), finiteOr0(along)
}

func finiteOr0(v float64) float64 {
	if math.IsInf(v, 1) {
		return 0
	}
	return v
}

// sectioned names the section that a weld through the plate is as strong as: that of the plate alone at the end of its sweep, cut where the weld is, over no more
// than the weld's width, under all that the weld carries. Empty where there is none, so that the weld's own metal is checked.
func (m *model) sectioned(set *rootSet, w *part.WeldGroup, own bool) string {
	t := m.thing(w.Joins[0])
	if !m.sections || w.Kind != part.CJP || t == nil || len(set.welds) > 1 || set.pressed != nil || w.LegMM < t.plate.ThicknessMM-1e-6 {
		return ""
	}
	if l := &set.welds[0]; l.Butt && (LeastKnown(l.T1, l.T2) < l.T1 || LeastKnown(l.Fy, l.Fy2) < l.Fy || LeastKnown(l.Fu, l.Fu2) < l.Fu) {
		return ""
	}
	for i := range m.b.Sweeps {
		if s := &m.b.Sweeps[i]; s.Things[0] == w.Joins[0] && m.cutAlong(i, set, w, own) {
			return sweepName(s)
		}
	}
	return ""
}

// standsFor lists the welds that are as strong as a section.
func (m *model) standsFor(section string) []string {
	var out []string
	add := func(sets []rootSet) {
		for i := range sets {
			m.spend(1 + len(sets[i].welds))
			if s := &sets[i]; slices.ContainsFunc(s.welds, func(l rootWeld) bool { return l.Section == section }) && !slices.Contains(out, s.words) {
				out = append(out, s.words)
			}
		}
	}
	add(m.rootSets)
	for i := range m.rootSets {
		for _, way := range m.rootSets[i].ways {
			add(way.sets)
		}
	}
	return out
}

// cutAlong says whether the last section of a sweep speaks for a weld.
func (m *model) cutAlong(slot int, set *rootSet, w *part.WeldGroup, own bool) bool {
	s, c := &m.b.Sweeps[slot], (*cut)(nil)
	m.spend(len(m.cuts))
	for i := range m.cuts {
		if m.cuts[i].slot == slot {
			c = &m.cuts[i]
		}
	}
	if c == nil || c.bolts >= 0 || c.less != nil && !own || len(c.ribs) > 0 {
		return false
	}
	c = c.way(aloneWay)
	for b, passes := range set.passes {
		if passes && !m.loadSets[c.set].loads[b] {
			return false
		}
	}
	length := 0.0
	for _, g := range w.Segments {
		if max(math.Abs(g.A.Sub(s.To).Dot(c.normal)), math.Abs(g.B.Sub(s.To).Dot(c.normal))) > 0.01 {
			return false
		}
		length += g.B.Sub(g.A).Norm() / 2 // at each face
	}
	width := 0.0
	for _, ch := range m.thing(w.Joins[0]).chords(nil, s.To.AddScaled(-besideMM, c.normal), c.normal) {
		width += ch.length
	}
	return width > 0 && length >= width-0.1
}

// plugged leaves what acts square to the faying plane to the welds beside a set's plugs, where there are any: plugs hold in that plane alone.
func (m *model) plugged(set *rootSet) {
	at := slices.IndexFunc(set.welds, func(l rootWeld) bool { return l.Plug() })
	if at < 0 {
		return
	}
	m.skip("tear-out of a plate between its plugs and its edges, and buckling between plugs", set.welds[at].standing, "no rule here speaks of it")
	runs := set.runs
	if set.working != nil {
		runs = set.workingRuns
	}
	var segs []statics.WeldSegment
	var others []weldRun
	for _, r := range runs {
		if !set.welds[r.weld].Plug() {
			segs, others = append(segs, statics.WeldSegment{A: r.a, B: r.b, Weight: r.weight}), append(others, r)
		}
	}
	p := m.b.Face(set.welds[at].standing)
	if len(segs) == 0 || p == nil {
		return
	}
	g, err := statics.NewWeldGroup(segs)
	if err != nil {
		m.refuse(set.field, err, "segments of some length")
		return
	}
	set.working, set.workingRuns, set.flat, set.plugs = &g, others, p.Pose.W(), true
}

// lineRules are the rules for the kinds of weld in a set, in the order of the basis.
func (r *run) lineRules(set *rootSet) []Rule[WeldLine] {
	var out []Rule[WeldLine]
	for _, list := range []struct {
		rules []Rule[WeldLine]
		of    func(l rootWeld) bool
	}{
		{r.basis.Rules.WeldLine, func(l rootWeld) bool { return l.Throated() }},
		{r.basis.Rules.CJPLine, func(l rootWeld) bool { return l.CJP() }},
		{r.basis.Rules.PlugLine, func(l rootWeld) bool { return l.Plug() }},
	} {
		if !slices.ContainsFunc(set.welds, list.of) {
			continue
		}
		if out = append(out, list.rules...); len(list.rules) == 0 {
			r.skip("strength of the weld", set.words, "the basis has no rule for its kind")
		}
	}
	return out
}
