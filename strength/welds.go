package strength

// Welds: the groups that root plates on what they stand on, the welds that make webs and flanges one section, and the
// welds at the foot of ribs.

import (
	"fmt"
	"math"
	"slices"

	"lugwright/part"
	"lugwright/strength/material"
	"lugwright/strength/statics"
)

// rootSet is the welds at the root of plates that act together; plates that no composite ties stand alone, each with its
// own welds.
type rootSet struct {
	work   *meter
	words  string
	thing  string
	at     part.Vec
	passes []bool
	group  statics.WeldGroup
	// working is the group without what shear lag leaves idle; it takes the weak-axis bending. Nil when all works.
	working     *statics.WeldGroup
	flat, chord part.Vec
	welds       []rootWeld
	plugs       bool      // working is what stands beside plugs: it takes all that acts square to flat, the faying plane
	runs        []weldRun // the segments of group
	workingRuns []weldRun // and of working
	ways        []rootWay // fewer welds acting, load paths too
	sweeps      []int     // of the plates in it
	joint       bool      // several plates' welds
	pull        *pull     // where it holds a plate round a pin hole
	pressed     *pressed  // where only the faying face of a bolt group presses on its plate
	field       string
}

// pull is a part of a pin's force, square to the pin, on a plate round its hole.
type pull struct {
	axis, center, at part.Vec
	part             float64
}

// pressed is where bolts hold a bracket by its one end and a plate welded to it bears beyond them: what presses there, on the load's side of a place
// along a normal, is all that the plate's weld carries.
type pressed struct {
	group      int
	at, normal part.Vec
}

// load is what the set carries, about its centroid.
func (s *rootSet) load(forces []force) wrench {
	s.work.spend(1 + len(forces))
	if s.pull == nil {
		return sum(forces, s.passes, s.at)
	}
	f := sum(forces, s.passes, s.pull.center).f
	var w wrench
	w.plus(f.AddScaled(-f.Dot(s.pull.axis), s.pull.axis).Scale(s.pull.part), part.Vec{}, s.pull.at, s.at)
	return w
}

// rootWay is another way for the load of a set: each loaded plate by welds of its own.
type rootWay struct {
	words string
	sets  []rootSet
}

// rootWeld is one weld of a set, and the greatest force on it. Runs of a set weigh by their legs, so that a thinner one takes less: the
// elastic method on the throats as they are.
type rootWeld struct {
	words    string
	standing string // plate that it holds
	WeldLine
	leg float64 // over the greatest leg of the set, each as that of the fillet with its throat
}

// weldRun is a segment and the weld of its set that it belongs to.
type weldRun struct {
	a, b   statics.Vec3
	weld   int
	weight float64
	// out is the direction across the joint, zero where none is told apart; past is how far from the line its metal is looked at.
	out, past statics.Vec3
}

// flowSet is one weld between a web and its flange.
type flowSet struct {
	weld *part.WeldGroup
	f    WeldFlow
	at   part.Vec
	kept kept
}

// depthOf is the length of a plate's chord in a section.
func depthOf(id string, chords []chordPiece) float64 {
	depth := 0.0
	for _, ch := range chords {
		if ch.t.plate.ID == id {
			depth = max(depth, ch.length)
		}
	}
	return depth
}

// flowPoint is what one weld between a web and its flange must bring across at one cut: the flow there, and the whole force of the part
// beyond the weld, which the weld gathers from the web's tip to the cut.
type flowPoint struct {
	set    int
	perN   float64 // flow for a shear of 1 N
	area   float64 // of the part, over the section's
	qy, qz float64 // its first moments over the section's inertia, signed as the section's axes
	beside float64 // webs that share the force
	run    float64 // length of a weld line from the tip to the cut
	depth  float64 // of the web at the cut
	across float64 // flow square to the weld for a shear of 1 N: the web's part of it, evenly over all the weld's run
	direct []bool  // branches that enter the part itself, and need no weld; nil for none
	rib    string  // the rib that the weld is for
}

// flowDemand is a flow to be checked if the plates act together.
type flowDemand struct {
	set int
	q   float64
}

func (m *model) compileWelds() {
	for i := range m.b.Welds {
		w := &m.b.Welds[i]
		if m.inComposite(w.ID) {
			m.addFlow(i)
		}
	}
	done := map[string]bool{}
	for i := range m.b.Welds {
		w := &m.b.Welds[i]
		if m.inComposite(w.ID) || done[w.ID] {
			continue
		}
		members := m.cluster(w)
		for _, k := range members {
			done[m.b.Welds[k].ID] = true
		}
		n := len(m.rootSets)
		if m.addRoot(members, false); len(m.rootSets) == n {
			m.bare = append(m.bare, w.ID)
		}
		m.skipWelded(w)
	}
	m.layFeet()
	for i := range m.cuts {
		m.addFlows(&m.cuts[i])
	}
}

func (m *model) inComposite(weld string) bool {
	for i := range m.b.Composites {
		m.spend(1 + len(m.b.Composites[i].Welds))
	}
	return slices.ContainsFunc(m.b.Composites, func(c part.Composite) bool { return slices.Contains(c.Welds, weld) })
}

// cluster gathers the root welds that act with w: of plates tied to its plate by composites, on the same foot.
func (m *model) cluster(w *part.WeldGroup) []int {
	plates := []string{w.Joins[0]}
	for k := 0; k < len(plates); k++ {
		for _, c := range m.b.Composites {
			m.spend(1 + 2*len(c.Things))
			if slices.Contains(c.Things, plates[k]) && !slices.Contains(c.Things, w.Joins[1]) {
				for _, id := range c.Things {
					m.spend(len(plates))
					if !slices.Contains(plates, id) {
						plates = append(plates, id)
					}
				}
			}
		}
	}
	var out []int
	for i := range m.b.Welds {
		v := &m.b.Welds[i]
		m.spend(len(plates))
		if v.Joins[1] == w.Joins[1] && slices.Contains(plates, v.Joins[0]) && !m.inComposite(v.ID) {
			out = append(out, i)
		}
	}
	return out
}

// addRoot compiles one root set, none where no run of it counts; own is for a plate with its own gussets alone.
func (m *model) addRoot(members []int, own bool) {
	first := &m.b.Welds[members[0]]
	set := rootSet{work: m.meter, thing: first.ID, words: "weld " + first.ID, field: fmt.Sprintf("welds[%d]", members[0])}
	var ids []string
	var segs []statics.WeldSegment
	var owners []string
	greatest := 0.0
	for _, k := range members {
		greatest = max(greatest, asFillet(&m.b.Welds[k]))
	}
	for n, k := range members {
		w := &m.b.Welds[k]
		ids = append(ids, w.ID)
		leg := asFillet(w) / greatest
		set.welds = append(set.welds, rootWeld{atWeld + w.ID, w.Joins[0], m.weldLine(w, k), leg})
		lengths := m.runLengths(w)
		for i, s := range w.Segments {
			counts := m.weight(w, lengths[i])
			if counts == 0 {
				continue
			}
			segs = append(segs, statics.WeldSegment{A: vec3(s.A), B: vec3(s.B), Weight: counts * leg})
			owners = append(owners, w.Joins[0])
			run := weldRun{a: vec3(s.A), b: vec3(s.B), weld: n, weight: counts * leg}
			m.aims(w, &run)
			set.runs = append(set.runs, run)
		}
	}
	if len(members) > 1 {
		set.words = fmt.Sprintf("weld %s and %d more acting with it", first.ID, len(members)-1)
	}
	if len(segs) == 0 {
		return
	}
	m.spend(10 * len(segs))
	g, err := statics.NewWeldGroup(segs)
	if err != nil {
		m.refuse(set.field, err, "segments of some length")
		return
	}
	set.group, set.at, set.passes = g, vec(g.Centroid), m.passes(ids...)
	if idle(set.passes) {
		set.pressed = m.pressedBy(first.Joins[0])
	}
	for i := range m.b.Sweeps {
		if slices.Contains(owners, m.b.Sweeps[i].Things[0]) {
			set.sweeps = append(set.sweeps, i)
		}
	}
	set.joint = slices.ContainsFunc(members, func(k int) bool { return m.b.Welds[k].Joins[0] != first.Joins[0] })
	if !set.joint {
		m.addSpread(&set, segs, first.Joins[0])
	} else {
		m.addWorking(&set, segs, owners, own)
		if !own {
			m.addWays(&set, members)
		}
	}
	m.plugged(&set)
	for k := range set.welds {
		set.welds[k].Section = m.sectioned(&set, &m.b.Welds[members[k]], own)
	}
	m.rootSets = append(m.rootSets, set)
}

// pressedBy finds the faying face that presses on a plate, by the sweep that cuts it; nil for none.
func (m *model) pressedBy(plate string) *pressed {
	for i := range m.b.Sweeps {
		s := &m.b.Sweeps[i]
		if k := slices.IndexFunc(m.b.Bolts, func(g part.BoltGroup) bool { return g.ID == s.Bolts }); k >= 0 && s.Things[0] == plate {
			return &pressed{k, s.To, s.To.Sub(s.From).Unit()}
		}
	}
	return nil
}

// carries is what a set carries in the case at hand, about its centroid.
func (r *run) carries(s *rootSet) wrench {
	if s.pressed == nil {
		return s.load(r.forces)
	}
	var w wrench
	r.groups[s.pressed.group].react(&w, &cut{at: s.pressed.at, normal: s.pressed.normal}, s.at)
	return w.settled()
}

// addWays compiles, for each plate of a set that loads pass by name, its welds with those of its own gussets, and its welds by themselves.
func (m *model) addWays(set *rootSet, members []int) {
	own, alone := rootWay{words: ownWelds}, rootWay{words: ownWeldAlone}
	gusseted := false
	var plates []string
	for _, k := range members {
		plate := m.b.Welds[k].Joins[0]
		m.spend(len(plates) + len(members))
		if slices.Contains(plates, plate) || !slices.Contains(m.passes(m.b.Welds[k].ID), true) {
			continue
		}
		plates = append(plates, plate)
		var mine, gussets []int
		for _, n := range members {
			switch stands := m.b.Welds[n].Joins[0]; {
			case stands == plate:
				mine = append(mine, n)
			case m.isOwn(stands, plate):
				gussets = append(gussets, n)
			}
		}
		if len(mine) == len(members) {
			return // one plate's welds act together
		}
		gusseted = gusseted || len(gussets) > 0 && len(mine)+len(gussets) < len(members)
		if !m.takeRoot(&own, append(slices.Clone(mine), gussets...)) || !m.takeRoot(&alone, mine) {
			return // its own weld carries nothing, so that together is the only way
		}
	}
	if gusseted {
		set.ways = append(set.ways, own)
	}
	if len(alone.sets) > 0 {
		set.ways = append(set.ways, alone)
	}
}

// isOwn says whether a web stands on one flange and on no other that runs the same way.
func (m *model) isOwn(web, flange string) bool {
	return slices.ContainsFunc(m.b.Composites, func(c part.Composite) bool {
		m.spend(1 + len(c.Things))
		return c.Things[0] == flange && slices.Contains(c.Things[1:], web) && !m.bridges(&c)
	})
}

// takeRoot compiles a set into a way; false when no run of it counts.
func (m *model) takeRoot(way *rootWay, members []int) bool {
	n := len(m.rootSets)
	m.addRoot(members, true)
	if len(m.rootSets) == n {
		return false
	}
	way.sets = append(way.sets, m.rootSets[n])
	m.rootSets = m.rootSets[:n]
	return true
}

// weight is the part of a run that counts: a run shorter than four legs counts with a leg of a quarter of its length (AISC 360-22
// J2.2b(c), and like rules elsewhere), spread evenly over it. A basis may have a rule of its own. Plugs and welds through the plate are no such runs.
func (m *model) weight(w *part.WeldGroup, length float64) float64 {
	if w.Kind == part.CJP || w.Kind == part.Plug {
		return 1
	}
	if m.run != nil {
		counts := m.run(w.LegMM, length)
		if counts == 0 {
			m.note("weld %s: a run of %.3g mm is too short to carry load and is left out", w.ID, length)
		}
		return counts
	}
	if length >= 4*w.LegMM {
		return 1
	}
	m.note("weld %s: a run of %.3g mm is shorter than 4 legs and counts with a leg of a quarter of its length", w.ID, length)
	return length / (4 * w.LegMM)
}

// runLengths gives, for every segment, the length of the run that it is part of: segments that meet are one run, round a corner or a
// circle.
func (m *model) runLengths(w *part.WeldGroup) []float64 {
	n := len(w.Segments)
	m.spend(4 * n * n)
	run := make([]int, n) // by its first segment
	for i := range run {
		run[i] = i
		for k := range i {
			if from := run[k]; meet(w.Segments[i], w.Segments[k]) && from != run[i] {
				m.spend(i)
				for j := range i + 1 {
					if run[j] == from {
						run[j] = run[i]
					}
				}
			}
		}
	}
	out := make([]float64, n)
	for i, s := range w.Segments {
		for k := range run {
			if run[k] == run[i] {
				out[k] += s.B.Sub(s.A).Norm()
			}
		}
	}
	return out
}

func meet(s, u part.WeldSegment) bool {
	const near = 0.01 // mm
	for _, a := range [2]part.Vec{s.A, s.B} {
		if a.Sub(u.A).Norm() < near || a.Sub(u.B).Norm() < near {
			return true
		}
	}
	return false
}

// addWorking clips the segments of flanges to what shear lag leaves working at the root.
func (m *model) addWorking(set *rootSet, segs []statics.WeldSegment, owners []string, own bool) {
	c := m.cutThrough(func(s *part.Sweep) bool { return s.Things[0] == owners[0] })
	if c == nil {
		return
	}
	s := &m.b.Sweeps[c.slot]
	normal := s.To.Sub(s.From).Unit()
	acts := m.together(s, s.To, normal, own)
	var whole []chordPiece
	for _, id := range acts.ids {
		if t := m.thing(id); t != nil {
			whole = t.chords(whole, s.To.AddScaled(-1e-3, normal), normal)
		}
	}
	m.spend(len(whole) * (len(acts.active) + len(whole)*named(acts.active)))
	left := trimmed(nil, whole, acts.active)
	m.spend(perRule * len(segs) * (1 + len(left)))
	set.keep(segs, c, func(k int) []statics.WeldSegment { return clip(segs[k], owners[k], left) })
}

// cutThrough finds the first cut of the first sweep that is wanted and has cuts, nil for none.
func (m *model) cutThrough(want func(s *part.Sweep) bool) *cut {
	m.spend(len(m.cuts))
	for i := range m.cuts {
		if want(&m.b.Sweeps[m.cuts[i].slot]) {
			return &m.cuts[i]
		}
	}
	return nil
}

// addSpread clips the weld of a plate alone to the width that the load has spread to at its root, for bending out of its plane.
func (m *model) addSpread(set *rootSet, segs []statics.WeldSegment, plate string) {
	t := m.thing(plate)
	c := m.cutThrough(func(s *part.Sweep) bool { return s.EntryFlat && s.EntryMM > 0 && s.Things[0] == plate })
	if c == nil || t == nil {
		return
	}
	s := &m.b.Sweeps[c.slot]
	root := cut{at: s.To, normal: c.normal}
	left := m.clipped(&root, s, t.chords(nil, s.To.AddScaled(-1e-3, root.normal), root.normal))
	set.keep(segs, c, func(k int) []statics.WeldSegment { return clip(segs[k], plate, left) })
}

// keep makes the working group of what is left of each segment.
func (set *rootSet) keep(segs []statics.WeldSegment, c *cut, left func(k int) []statics.WeldSegment) {
	var kept []statics.WeldSegment
	var runs []weldRun
	for k := range segs {
		for _, w := range left(k) {
			run := set.runs[k]
			run.a, run.b = w.A, w.B
			kept, runs = append(kept, w), append(runs, run)
		}
	}
	if len(kept) == 0 {
		return
	}
	if g, err := statics.NewWeldGroup(kept); err == nil {
		set.working, set.workingRuns, set.flat, set.chord = &g, runs, c.flat, c.chord
	}
}

// clip gives the parts of a segment that lie beside working chords of its plate; a plate with no chord there keeps all.
func clip(seg statics.WeldSegment, owner string, chords []chordPiece) []statics.WeldSegment {
	var out []statics.WeldSegment
	known := false
	a, b := vec(seg.A), vec(seg.B)
	for _, ch := range chords {
		if ch.t.plate.ID != owner {
			continue
		}
		known = true
		along := b.Sub(a)
		k := along.Dot(ch.dir)
		if math.Abs(k) < 1e-6 {
			return []statics.WeldSegment{seg}
		}
		middle, half := ch.mid.Sub(a).Dot(ch.dir)/k, ch.length/2/k
		t0, t1 := middle-half, middle+half
		t0, t1 = max(min(t0, t1), 0), min(max(t0, t1), 1)
		if (t1-t0)*along.Norm() > 1e-3 {
			out = append(out, statics.WeldSegment{A: vec3(a.AddScaled(t0, along)), B: vec3(a.AddScaled(t1, along)), Weight: seg.Weight})
		}
	}
	if !known {
		return []statics.WeldSegment{seg}
	}
	return out
}

// weldLine is what a weld's checks need beside the load.
func (m *model) weldLine(w *part.WeldGroup, index int) WeldLine {
	l := WeldLine{Leg: w.LegMM, Kind: string(w.Kind), Length: math.Inf(1), BothSides: w.BothSides, AlongEdge: w.AlongEdge}
	l.FEXX, l.FEY = m.electrode(w.Electrode, index)
	l.T1, l.Fy, l.Fu = m.ply(w.Joins[0])
	l.T2, l.Fy2, l.Fu2 = m.ply(w.Joins[1])
	l.Backed = m.backed(w, l.T2)
	for i, length := range m.runLengths(w) {
		l.Length, l.Longest = min(l.Length, length), max(l.Longest, w.Segments[i].B.Sub(w.Segments[i].A).Norm())
	}
	m.describe(&l, w)
	return l
}

// backed says whether another plate's weld runs behind w on the far face of the plate that w stands on, whose thickness is t.
func (m *model) backed(w *part.WeldGroup, t float64) bool {
	for i := range m.b.Welds {
		v := &m.b.Welds[i]
		if v.Joins[1] != w.Joins[1] || v.Joins[0] == w.Joins[0] {
			continue
		}
		m.spend(4 * len(w.Segments) * len(v.Segments))
		for _, s := range w.Segments {
			if slices.ContainsFunc(v.Segments, func(u part.WeldSegment) bool { return behind(s, u, t) }) {
				return true
			}
		}
	}
	return false
}

// behind says whether two segments run side by side, about t apart, over some of their length.
func behind(s, u part.WeldSegment, t float64) bool {
	along, other := s.B.Sub(s.A), u.B.Sub(u.A)
	length := along.Norm()
	dir := along.Unit()
	if math.Abs(dir.Dot(other.Unit())) < 0.99 {
		return false
	}
	off := u.A.Sub(s.A)
	apart := off.AddScaled(-off.Dot(dir), dir).Norm()
	a, b := off.Dot(dir), u.B.Sub(s.A).Dot(dir)
	return apart > t/2 && apart < 1.5*t && min(max(a, b), length)-max(min(a, b), 0) > 1e-3
}

// electrode is a filler's tensile and yield strength.
func (m *model) electrode(name string, index int) (fexx, fey float64) {
	e, err := material.LookupElectrode(name)
	if err != nil {
		m.refuse(fmt.Sprintf("welds[%d].electrode", index), err, "a filler from the list of materials")
		return 0, 0
	}
	if !m.listed(e.ListedIn) {
		m.note("filler %s: outside the listed materials of %s", e.Name, m.listing)
	}
	return e.FexxMPa, e.YieldMPa
}

// ply gives thickness and strength of a plate, a leg, a whole angle or a support.
func (m *model) ply(id string) (t, fy, fu float64) {
	m.spend(len(m.b.Supports) + len(m.b.Members))
	for _, name := range [2]string{id, id + ".a"} {
		if th := m.thing(name); th != nil {
			return th.plate.ThicknessMM, th.fy, th.fu
		}
	}
	for i := range m.b.Supports {
		if s := &m.b.Supports[i]; s.ID == id {
			_, fy, fu = m.grade(s.Material, s.ThicknessMM, fmt.Sprintf("supports[%d].material", i))
			return s.ThicknessMM, fy, fu
		}
	}
	for i := range m.b.Members {
		if mem := &m.b.Members[i]; mem.ID == id {
			t := wallOf(mem.Profile)
			_, fy, fu = m.grade(mem.Material, t, fmt.Sprintf("members[%d].material", i))
			return t, fy, fu
		}
	}
	return 0, 0, 0
}

func (m *model) addFlow(i int) {
	w := &m.b.Welds[i]
	l := m.weldLine(w, i)
	t := l.T1
	if l.T2 > 0 {
		t = min(t, l.T2)
	}
	m.flowSets = append(m.flowSets, flowSet{weld: w, at: w.Segments[0].A, f: WeldFlow{Leg: l.Leg, FEXX: l.FEXX, T: t, Fu: l.Fu, Fu2: l.Fu2, Lines: m.lines(w), Fy: l.Fy, Fy2: l.Fy2, FEY: l.FEY}})
}

// lines counts the runs of a weld, short ones by the part that counts.
func (m *model) lines(w *part.WeldGroup) float64 {
	n := 0.0
	for _, length := range m.runLengths(w) {
		n += m.weight(w, length)
	}
	return n
}

// addFlows finds the shear flow in every web-to-flange weld at a cut, for a shear of 1 N: V Q / I. A web on one flange alone
// slides by its own first moment; a web between two flanges by that of the flange, shared with the webs beside it.
func (m *model) addFlows(c *cut) {
	if c.joined == nil {
		return
	}
	active, shared, chords, most := c.acts.active, c.acts.shared, c.works, 0
	for _, a := range active {
		most += len(a.Welds)
	}
	m.spend(perRule * most)
	c.flows = m.room.flows.take(most)[:0]
	for k := range m.flowSets {
		w := m.flowSets[k].weld
		m.spend(most)
		if !m.flowsHere(w, active) {
			continue
		}
		m.spend(most + 4*len(w.Segments) + len(m.b.Welds) + len(chords)*(1+len(shared)+named(active)))
		p := flowPoint{set: k, beside: 1, run: m.gathered(w, active, c), depth: depthOf(w.Joins[0], chords)}
		if len(c.ribs) > 0 {
			p.rib, p.perN = w.Joins[0], c.ribFlow(w.Joins[0])
		} else {
			m.partOf(&p, c, chords, active, shared, w)
			p.perN, p.across = math.Abs(p.qy)/p.beside, shearOf(w.Joins[0], c, chords)/meanBetween(w, math.Inf(-1), math.Inf(1), c.normal)
		}
		if p.area > 0 || p.perN > 0 {
			p.perN *= stretch(w, c)
			c.flows = append(c.flows, p)
		}
	}
}

// gathered is the length of a weld's lines, on average, that brings a web its force: from its free end to a cut. A web held by another
// plate before the cut has its force from there, and gives it off from the cut to its free end. A web whose own foot is not welded, or by
// runs too short to count, has to give it back before it ends.
func (m *model) gathered(w *part.WeldGroup, active []*part.Composite, c *cut) float64 {
	i := slices.IndexFunc(active, func(a *part.Composite) bool { return slices.Contains(a.Welds, w.ID) })
	from, to := active[i].From.Dot(c.normal), active[i].To.Dot(c.normal)
	from, to = min(from, to), max(from, to)
	if here := c.at.Dot(c.normal); m.heldBefore(w, from, c.normal) {
		from = here
	} else {
		from, to = max(from, m.arrival(c, w.Joins[0])), here
	}
	run := meanBetween(w, from, to, c.normal)
	if !m.b.Sweeps[c.slot].Ribs && !m.footed[w.Joins[0]] {
		run = min(run, meanBetween(w, to, math.Inf(1), c.normal))
	}
	return run
}

// layFeet finds the webs that have a weld of their own on what their flange stands on, with runs that count.
func (m *model) layFeet() {
	m.footed = map[string]bool{}
	for i := range m.b.Welds {
		if v := &m.b.Welds[i]; !m.inComposite(v.ID) && m.lines(v) > 0 {
			m.footed[v.Joins[0]] = true
		}
	}
}

// arrival is how far along a cut's normal the spread of the load reaches a rib that stands beside its entry; minus infinity for any other
// web, whose weld gathers from its tip.
func (m *model) arrival(c *cut, web string) float64 {
	s := &m.b.Sweeps[c.slot]
	for _, ch := range c.works {
		if !s.Ribs || ch.t.plate.ID != web {
			continue
		}
		if beside := math.Abs(ch.mid.Sub(c.at).Dot(c.chord)) - ch.t.plate.ThicknessMM/2 - s.EntryMM/2; s.EntryMM > 0 && beside > 0 {
			return s.From.Dot(c.normal) + s.EntryToMM + beside/tan30
		}
	}
	return math.Inf(-1)
}

// heldBefore says whether the web of w is welded to another plate where its composite begins.
func (m *model) heldBefore(w *part.WeldGroup, from float64, normal part.Vec) bool {
	const near = 25 // mm, about a plate and its snipe
	for i := range m.b.Welds {
		v := &m.b.Welds[i]
		if v.Joins[0] == w.Joins[0] && v.Joins[1] != w.Joins[1] && !slices.ContainsFunc(v.Segments, func(s part.WeldSegment) bool {
			return max(s.A.Dot(normal), s.B.Dot(normal)) > from+near
		}) {
			return true
		}
	}
	return false
}

func (m *model) flowsHere(w *part.WeldGroup, active []*part.Composite) bool {
	return slices.ContainsFunc(active, func(a *part.Composite) bool { return slices.Contains(a.Welds, w.ID) })
}

// stretch makes a weld that stops short of its plate (snipes) carry the flow of the whole length.
func stretch(w *part.WeldGroup, c *cut) float64 {
	lo, hi, run := math.Inf(1), math.Inf(-1), 0.0
	for _, s := range w.Segments {
		a, b := s.A.Dot(c.normal), s.B.Dot(c.normal)
		lo, hi = min(lo, a, b), max(hi, a, b)
		run = max(run, math.Abs(b-a))
	}
	root := c.root.Dot(c.normal)
	if run == 0 || root < lo {
		return 1
	}
	return max(1, (root-lo)/run)
}

func (c *cut) ribFlow(web string) float64 {
	for i := range c.ribs {
		if c.ribs[i].label == web {
			o := c.ribs[i].own
			return o.area * math.Abs(o.arm) / o.total
		}
	}
	return 0
}

// partOf fills what a weld holds on: a web on one flange alone by itself; of webs between two flanges, the flange with the webs that
// stand on it alone, which all webs beside share.
func (m *model) partOf(p *flowPoint, c *cut, chords []chordPiece, active []*part.Composite, shared []string, w *part.WeldGroup) {
	sec := c.joined
	between := slices.Contains(shared, w.Joins[0])
	for i := range chords {
		id := chords[i].t.plate.ID
		if !between && id != w.Joins[0] || between && id != w.Joins[1] && !leafOn(active, id, w.Joins[1], shared) {
			continue
		}
		piece := c.plane(&chords[i])
		area := piece.L * piece.T
		p.area += area / sec.Area
		p.qy += area * (piece.Y - sec.CY) / sec.Izz
		p.qz += area * (piece.Z - sec.CZ) / sec.Iyy
	}
	if between {
		p.beside, p.direct = float64(len(shared)), m.passes(w.Joins[1])
	}
}

// meanBetween is how much of a weld's lines, on average, lies between two heights along a direction.
func meanBetween(w *part.WeldGroup, from, to float64, along part.Vec) float64 {
	sum := 0.0
	for _, s := range w.Segments {
		a, b := s.A.Dot(along), s.B.Dot(along)
		sum += max(0, min(max(a, b), to)-max(min(a, b), from))
	}
	return sum / float64(len(w.Segments))
}

// shearOf is a web's part of the shear square to the swept plate, by the areas of the webs.
func shearOf(web string, c *cut, chords []chordPiece) float64 {
	own, all := 0.0, 0.0
	for _, ch := range chords {
		if math.Abs(ch.dir.Dot(c.flat)) < math.Sqrt2/2 {
			continue
		}
		area := ch.length * ch.t.plate.ThicknessMM
		all += area
		if ch.t.plate.ID == web {
			own += area
		}
	}
	if all == 0 {
		return 0
	}
	return own / all
}

// websShared lists webs that stand on more than one flange.
func websShared(active []*part.Composite) []string {
	var seen, shared []string
	for _, a := range active {
		for _, id := range a.Things[1:] {
			if slices.Contains(seen, id) && !slices.Contains(shared, id) {
				shared = append(shared, id)
			}
			seen = append(seen, id)
		}
	}
	return shared
}

// leafOn says whether a web stands on this flange alone.
func leafOn(active []*part.Composite, id, flange string, shared []string) bool {
	return !slices.Contains(shared, id) && slices.ContainsFunc(active, func(a *part.Composite) bool {
		return a.Things[0] == flange && slices.Contains(a.Things[1:], id)
	})
}

// atWelds puts the case's forces on root welds.
func (r *run) atWelds() error {
	for i := range r.rootSets {
		s := &r.rootSets[i]
		r.inPlace = i
		if err := s.take(r.carries(s)); err != nil {
			return &part.FieldError{Field: s.field, Found: err.Error(), Accept: "a weld on both sides, or a second run with an arm"}
		}
		r.betterRoot(i)
	}
	return nil
}

// Labels of checks of a plate's own welds without what acts beside it.
const (
	ownWelds     = "each plate and its own gussets alone"
	ownWeldAlone = "each plate's own weld alone"
)

// betterRoot keeps a set of welds acting together, or another way for its load where that is better: what stands beside a plate never
// makes it weaker. Plate and weld go the same way at the root, and welds act together only as far as those between the plates bring the
// force across.
func (r *run) betterRoot(i int) {
	s := &r.rootSets[i]
	if !s.joint {
		r.keepRoot(i, s, "")
		return
	}
	best, least := -1, max(r.severityOf(i, s), r.severityAcross(s, allWay))
	for k := range s.ways {
		way, worst := &s.ways[k], 0.0
		for n := range way.sets {
			set := &way.sets[n]
			if set.take(set.load(r.forces)) != nil {
				worst = math.Inf(1)
				break
			}
			worst = max(worst, r.severityOf(i, set), r.severityAcross(set, way.kind()))
		}
		if worst < least {
			best, least = k, worst
		}
	}
	if best < 0 {
		r.keepRoot(i, s, "")
		r.keepAcross(s, allWay)
		return
	}
	way := &s.ways[best]
	for n := range way.sets {
		r.inPlace = i
		r.keepRoot(i, &way.sets[n], way.words)
		r.keepAcross(&way.sets[n], way.kind())
	}
}

func (w *rootWay) kind() int {
	if w.words == ownWelds {
		return ownWay
	}
	return aloneWay
}

// keepRoot keeps the worst of each weld of a set.
func (r *run) keepRoot(i int, s *rootSet, words string) {
	for k := range s.welds {
		label := words
		if words == "" && len(s.welds) > 1 {
			label = s.welds[k].words
		}
		r.roots[i].consider(r, s.welds[k].WeldLine, label)
	}
}

// severityAcross is the worst that the plates of a set suffer at their roots, and the welds between them, going one way.
func (r *run) severityAcross(s *rootSet, way int) float64 {
	worst := 0.0
	for _, slot := range s.sweeps {
		worst = max(worst, r.across[slot][way])
	}
	return worst
}

func (r *run) keepAcross(s *rootSet, way int) {
	for _, slot := range s.sweeps {
		r.keepRootCut(slot, way)
	}
}

func (r *run) severityOf(i int, s *rootSet) float64 {
	worst := 0.0
	for k := range s.welds {
		var u float64
		r.scores, u = r.roots[i].weigh(r, &s.welds[k].WeldLine, r.scores[:0], math.Inf(1))
		worst = max(worst, u)
	}
	return worst
}

// take finds the greatest force per length on each weld: legs and plates differ from weld to weld, so the greatest of all need not be
// the worst. Where shear lag leaves part of the welds idle, weak-axis bending goes on the working part alone. The force varies
// linearly along a segment, so its greatest is at an end.
func (s *rootSet) take(w wrench) error {
	s.work.spend(len(s.welds) + 4*len(s.runs) + 4*len(s.workingRuns))
	for k := range s.welds {
		s.welds[k].Q, s.welds[k].N, s.welds[k].V = 0, 0, 0
	}
	if s.working == nil {
		all, err := s.group.Field(vec3(w.f), vec3(w.m))
		if err == nil {
			s.greatest(s.runs, &all, nil)
		}
		return err
	}
	weakF, weakM := s.flat.Scale(w.f.Dot(s.flat)), s.chord.Scale(w.m.Dot(s.chord))
	if s.plugs {
		weakM = w.m.AddScaled(-w.m.Dot(s.flat), s.flat)
	}
	rest, err := s.group.Field(vec3(w.f.Sub(weakF)), vec3(w.m.Sub(weakM)))
	if err != nil {
		return err
	}
	weakM = weakM.Add(s.at.Sub(vec(s.working.Centroid)).Cross(weakF))
	weak, err := s.working.Field(vec3(weakF), vec3(weakM))
	if err == nil {
		s.greatest(s.runs, &rest, nil)
		s.greatest(s.workingRuns, &rest, &weak)
	}
	return err
}

func (s *rootSet) greatest(runs []weldRun, on, also *statics.WeldField) {
	for i := range runs {
		run := &runs[i]
		weld := &s.welds[run.weld]
		told := run.out != statics.Vec3{}
		for _, p := range [2]statics.Vec3{run.a, run.b} {
			q := fieldAt(on, also, p)
			weld.Q = max(weld.Q, q.Norm()*weld.leg)
			if told {
				weld.split(fieldAt(on, also, p.Add(run.past)), run.out)
			}
		}
	}
}

// fieldAt is a field at a point, with another on top where there is one.
func fieldAt(on, also *statics.WeldField, p statics.Vec3) statics.Vec3 {
	q := on.At(p)
	if also != nil {
		q = q.Add(also.At(p))
	}
	return q
}

// laySizes checks the dimensions of every weld group once: no load changes them.
func (r *run) laySizes() {
	r.sizes = make([]slots[WeldLine], len(r.b.Welds))
	for i := range r.b.Welds {
		w := &r.b.Welds[i]
		r.sizes[i] = newSlots(r.basis.Rules.WeldSize, "weld "+w.ID, w.ID, "weld size", w.Segments[0].A, nil)
		f := r.weldLine(w, i)
		f.Bare = slices.Contains(r.bare, w.ID)
		r.sizes[i].consider(r, f, "")
		r.places = append(r.places, &r.sizes[i])
	}
}

func (r *run) layWelds() {
	r.rooted = make([]bool, len(r.b.Sweeps))
	for i := range r.rootSets {
		for _, slot := range r.rootSets[i].sweeps {
			r.rooted[slot] = r.rooted[slot] || r.rootSets[i].joint
		}
	}
	r.roots = make([]slots[WeldLine], len(r.rootSets))
	for i := range r.rootSets {
		s := &r.rootSets[i]
		notes := []string{"force by the elastic line method: conservative beside the instantaneous centre"}
		switch {
		case s.plugs:
			notes = append(notes, "plugs hold in the faying plane alone: what acts square to it is left to the welds beside them")
		case s.working != nil:
			notes = append(notes, "weak-axis bending on the part that shear lag leaves working (EN 1993-1-5 Table 3.1)")
		}
		r.roots[i] = newSlots(r.lineRules(s), s.words, s.thing, "strength", s.at, notes)
		r.roots[i].explain, r.roots[i].idle = (*run).explainRoot, idle(s.passes) && s.pressed == nil
		r.places = append(r.places, &r.roots[i])
	}
	r.flows = make([]slots[WeldFlow], len(r.flowSets))
	for i := range r.flowSets {
		w := r.flowSets[i].weld
		rules := r.basis.Rules.WeldFlow
		if w.Kind == part.CJP {
			rules = r.basis.Rules.CJPFlow
		}
		r.flows[i] = newSlots(rules, "weld "+w.ID+", shear flow", w.ID, "shear flow", r.flowSets[i].at, nil)
		r.places = append(r.places, &r.flows[i])
	}
}

// flowsAt gives the welds of a cut that works as one section their demands under a wrench about its centroid: the flow of the shear, or the part's force gathered over the
// weld from the tip to the cut, whichever is more. A part is pulled by its share of the axial force and of both bendings; what enters it
// beyond the cut by itself need not cross the weld. Square to the weld goes the web's part of the shear, which may enter it
// anywhere along its run: until it has, the swept plate carries it.
func (r *run) flowsAt(e *effect, c *cut, w wrench) {
	n, my, mz := -w.f.Dot(c.normal), w.m.Dot(c.chord), -w.m.Dot(c.flat)
	va := math.Abs(w.f.Dot(c.flat))
	r.spend(len(c.flows))
	for i := range c.flows {
		p := &c.flows[i]
		if p.direct != nil {
			r.spend(len(r.forces))
		}
		force := n*p.area + my*p.qy + mz*p.qz
		if p.direct != nil {
			force -= r.axialInto(p.direct, c)
		}
		along, across := max(va*p.perN, gather(math.Abs(force)/p.beside, p.run)), va*p.across
		if across != 0 {
			along = math.Hypot(along, across)
		}
		e.demandFlow(p, along)
	}
}

// axialInto is the pull of the loads that enter a part beyond a cut.
func (r *run) axialInto(direct []bool, c *cut) float64 {
	n := 0.0
	for i := range r.forces {
		f := &r.forces[i]
		if direct[f.branch] && f.at.Sub(c.at).Dot(c.normal) <= 1e-6 {
			n -= f.f.Dot(c.normal)
		}
	}
	return n
}

// gather is a force over the run that brings it across; with no run there is no way across.
func gather(force, run float64) float64 {
	if force <= 1e-9 {
		return 0
	}
	return min(force/max(run, 1e-6), maxFlow)
}

// maxFlow stands for a flow that no weld carries, within the range of the rules, N/mm.
const maxFlow = 1e6

func (e *effect) demandFlow(p *flowPoint, q float64) {
	e.flows = append(e.flows, flowDemand{p.set, min(q, maxFlow)})
}
