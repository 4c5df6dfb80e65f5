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
	words  string
	thing  string
	at     part.Vec
	passes []bool
	group  statics.WeldGroup
	// working is the group without what shear lag leaves idle; it takes the weak-axis bending. Nil when all works.
	working     *statics.WeldGroup
	flat, chord part.Vec
	welds       []rootWeld
	runs        []weldRun // the segments of group
	workingRuns []weldRun // and of working
	// alone is the welds of each loaded plate by itself, full width, without what composites join to it: a load path too.
	alone []rootSet
	field string
}

// rootWeld is one weld of a set, and the greatest force on it. Runs of a set weigh by their legs, so that a thinner one takes less: the
// elastic method on the throats as they are.
type rootWeld struct {
	id string
	WeldLine
	leg float64 // over the greatest leg of the set
}

// weldRun is a segment and the weld of its set that it belongs to.
type weldRun struct {
	a, b statics.Vec3
	weld int
}

// flowSet is one weld between a web and its flange.
type flowSet struct {
	weld *part.WeldGroup
	f    WeldFlow
	at   part.Vec
}

// flowPoint is shear flow at one cut: the weld and its flow for a shear of 1 N.
type flowPoint struct {
	set  int
	perN float64
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
		if m.addRoot(members); len(m.rootSets) == n {
			m.bare = append(m.bare, w.ID)
		}
	}
	for i := range m.cuts {
		m.addFlows(&m.cuts[i])
	}
}

func (m *model) inComposite(weld string) bool {
	return slices.ContainsFunc(m.b.Composites, func(c part.Composite) bool { return slices.Contains(c.Welds, weld) })
}

// cluster gathers the root welds that act with w: of plates tied to its plate by composites, on the same foot.
func (m *model) cluster(w *part.WeldGroup) []int {
	plates := []string{w.Joins[0]}
	for k := 0; k < len(plates); k++ {
		for _, c := range m.b.Composites {
			if slices.Contains(c.Things, plates[k]) && !slices.Contains(c.Things, w.Joins[1]) {
				for _, id := range c.Things {
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
		if v.Joins[1] == w.Joins[1] && slices.Contains(plates, v.Joins[0]) && !m.inComposite(v.ID) {
			out = append(out, i)
		}
	}
	return out
}

// addRoot compiles one root set, none where no run of it counts.
func (m *model) addRoot(members []int) {
	first := &m.b.Welds[members[0]]
	set := rootSet{thing: first.ID, words: "weld " + first.ID, field: fmt.Sprintf("welds[%d]", members[0])}
	var ids []string
	var segs []statics.WeldSegment
	var owners []string
	greatest := 0.0
	for _, k := range members {
		greatest = max(greatest, m.b.Welds[k].LegMM)
	}
	for n, k := range members {
		w := &m.b.Welds[k]
		ids = append(ids, w.ID)
		leg := w.LegMM / greatest
		set.welds = append(set.welds, rootWeld{w.ID, m.weldLine(w, k), leg})
		for _, s := range w.Segments {
			counts := m.weight(w, s)
			if counts == 0 {
				continue
			}
			segs = append(segs, statics.WeldSegment{A: vec3(s.A), B: vec3(s.B), Weight: counts * leg})
			owners = append(owners, w.Joins[0])
			set.runs = append(set.runs, weldRun{vec3(s.A), vec3(s.B), n})
		}
	}
	if len(members) > 1 {
		set.words = fmt.Sprintf("weld %s and %d more acting with it", first.ID, len(members)-1)
	}
	if len(segs) == 0 {
		return
	}
	g, err := statics.NewWeldGroup(segs)
	if err != nil {
		m.refuse(set.field, err, "segments of some length")
		return
	}
	set.group, set.at, set.passes = g, vec(g.Centroid), m.passes(ids...)
	if len(members) > 1 {
		m.addWorking(&set, segs, owners)
		m.addAlone(&set, members)
	}
	m.rootSets = append(m.rootSets, set)
}

// addAlone compiles, for each weld of a set that loads pass by name, that weld by itself.
func (m *model) addAlone(set *rootSet, members []int) {
	for _, k := range members {
		if !slices.Contains(m.passes(m.b.Welds[k].ID), true) {
			continue
		}
		n := len(m.rootSets)
		m.addRoot([]int{k})
		if len(m.rootSets) == n { // its own weld carries nothing, so that together is the only way
			set.alone = nil
			return
		}
		set.alone = append(set.alone, m.rootSets[n])
		m.rootSets = m.rootSets[:n]
	}
}

// weight is the part of a run that counts: a run shorter than four legs counts with a leg of a quarter of its length (AISC 360-22
// J2.2b(c), and like rules elsewhere), spread evenly over it. A basis may have a rule of its own.
func (m *model) weight(w *part.WeldGroup, s part.WeldSegment) float64 {
	length := s.B.Sub(s.A).Norm()
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

// addWorking clips the segments of flanges to what shear lag leaves working at the root.
func (m *model) addWorking(set *rootSet, segs []statics.WeldSegment, owners []string) {
	i := slices.IndexFunc(m.cuts, func(c cut) bool { return m.b.Sweeps[c.slot].Things[0] == owners[0] })
	if i < 0 {
		return
	}
	s := &m.b.Sweeps[m.cuts[i].slot]
	normal := s.To.Sub(s.From).Unit()
	ids, active := m.together(s, s.To, normal)
	var whole []chordPiece
	for _, id := range ids {
		if t := m.thing(id); t != nil {
			whole = append(whole, t.chords(s.To.AddScaled(-1e-3, normal), normal)...)
		}
	}
	var kept []statics.WeldSegment
	var runs []weldRun
	for k, seg := range segs {
		for _, c := range clip(seg, owners[k], trimmed(whole, active)) {
			kept, runs = append(kept, c), append(runs, weldRun{c.A, c.B, set.runs[k].weld})
		}
	}
	if len(kept) == 0 {
		return
	}
	if g, err := statics.NewWeldGroup(kept); err == nil {
		set.working, set.workingRuns, set.flat, set.chord = &g, runs, m.cuts[i].flat, m.cuts[i].chord
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
	l.FEXX = m.electrode(w.Electrode, index)
	l.T1, l.Fy, l.Fu = m.ply(w.Joins[0])
	l.T2, l.Fy2, l.Fu2 = m.ply(w.Joins[1])
	l.Backed = m.backed(w, l.T2)
	for _, s := range w.Segments {
		l.Length, l.Longest = min(l.Length, s.B.Sub(s.A).Norm()), max(l.Longest, s.B.Sub(s.A).Norm())
	}
	return l
}

// backed says whether another plate's weld runs behind w on the far face of the plate that w stands on, whose thickness is t.
func (m *model) backed(w *part.WeldGroup, t float64) bool {
	for i := range m.b.Welds {
		v := &m.b.Welds[i]
		if v.Joins[1] != w.Joins[1] || v.Joins[0] == w.Joins[0] {
			continue
		}
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

func (m *model) electrode(name string, index int) float64 {
	e, err := material.LookupElectrode(name)
	if err != nil {
		m.refuse(fmt.Sprintf("welds[%d].electrode", index), err, "a filler from the list of materials")
		return 0
	}
	if !m.listed(e.ListedIn) {
		m.note("filler %s: outside the listed materials of %s", e.Name, m.listing)
	}
	return e.FexxMPa
}

// ply gives thickness and strength of a plate, a leg, a whole angle or a support.
func (m *model) ply(id string) (t, fy, fu float64) {
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
	return 0, 0, 0
}

func (m *model) addFlow(i int) {
	w := &m.b.Welds[i]
	l := m.weldLine(w, i)
	t := l.T1
	if l.T2 > 0 {
		t = min(t, l.T2)
	}
	m.flowSets = append(m.flowSets, flowSet{weld: w, at: w.Segments[0].A, f: WeldFlow{Leg: l.Leg, FEXX: l.FEXX, T: t, Fu: l.Fu, Fu2: l.Fu2, Lines: m.lines(w)}})
}

// lines counts the runs of a weld, short ones by the part that counts.
func (m *model) lines(w *part.WeldGroup) float64 {
	n := 0.0
	for _, s := range w.Segments {
		n += m.weight(w, s)
	}
	return n
}

// addFlows finds the shear flow in every web-to-flange weld at a cut, for a shear of 1 N: V Q / I. A web on one flange alone
// slides by its own first moment; a web between two flanges by that of the flange, shared with the webs beside it.
func (m *model) addFlows(c *cut) {
	active, chords := c.active, c.works
	if len(active) == 0 {
		return
	}
	sec, err := statics.NewSection(c.pieces(chords))
	if err != nil {
		return
	}
	shared := websShared(active)
	for k := range m.flowSets {
		fs := &m.flowSets[k]
		if !m.flowsHere(fs.weld, active) {
			continue
		}
		q := 0.0
		if len(c.ribs) > 0 {
			q = c.ribFlow(fs.weld.Joins[0])
		} else {
			q = firstMoment(c, chords, active, shared, fs.weld, sec) / sec.Izz
		}
		if q > 0 {
			c.flows = append(c.flows, flowPoint{k, q * stretch(fs.weld, c)})
		}
	}
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

func firstMoment(c *cut, chords []chordPiece, active []*part.Composite, shared []string, w *part.WeldGroup, sec statics.Section) float64 {
	q, beside := 0.0, 1.0
	for _, ch := range chords {
		p := c.plane(ch)
		qi := p.L * p.T * (p.Y - sec.CY)
		id := ch.t.plate.ID
		switch {
		case !slices.Contains(shared, w.Joins[0]):
			if id == w.Joins[0] {
				q += qi
			}
		case id == w.Joins[1]:
			q += qi
		case leafOn(active, id, w.Joins[1], shared):
			q += qi
		}
	}
	if slices.Contains(shared, w.Joins[0]) {
		beside = float64(len(shared))
	}
	return math.Abs(q) / beside
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
		if err := s.take(sum(r.forces, s.passes, s.at)); err != nil {
			return &part.FieldError{Field: s.field, Found: err.Error(), Accept: "a weld on both sides, or a second run with an arm"}
		}
		r.betterRoot(i)
	}
	return nil
}

// ownWeldAlone labels checks of a plate's own weld without what acts beside it.
const ownWeldAlone = "each plate's own weld alone"

// betterRoot keeps a set of welds acting together, or each loaded plate's own weld where that is the better load path: what stands
// beside a plate never makes its weld weaker.
func (r *run) betterRoot(i int) {
	s := &r.rootSets[i]
	alone := math.Inf(1)
	for k := range s.alone {
		a := &s.alone[k]
		if err := a.take(sum(r.forces, a.passes, a.at)); err != nil {
			alone = math.Inf(1)
			break
		}
		if k == 0 {
			alone = 0
		}
		alone = max(alone, a.severity())
	}
	if alone < s.severity() {
		for k := range s.alone {
			r.roots[i].consider(r, s.alone[k].welds[0].WeldLine, ownWeldAlone)
		}
		return
	}
	for k := range s.welds {
		label := ""
		if len(s.welds) > 1 {
			label = "at " + s.welds[k].id
		}
		r.roots[i].consider(r, s.welds[k].WeldLine, label)
	}
}

// severity compares ways to share a load: the greatest force over leg and filler of any weld of the set.
func (s *rootSet) severity() float64 {
	worst := 0.0
	for k := range s.welds {
		worst = max(worst, s.welds[k].Q/(s.welds[k].Leg*s.welds[k].FEXX))
	}
	return worst
}

// take finds the greatest force per length on each weld: legs and plates differ from weld to weld, so the greatest of all need not be
// the worst. Where shear lag leaves part of the welds idle, weak-axis bending goes on the working part alone. The force varies
// linearly along a segment, so its greatest is at an end.
func (s *rootSet) take(w wrench) error {
	for k := range s.welds {
		s.welds[k].Q = 0
	}
	if s.working == nil {
		all, err := s.group.Field(vec3(w.f), vec3(w.m))
		if err == nil {
			s.greatest(s.runs, &all, nil)
		}
		return err
	}
	weakF, weakM := s.flat.Scale(w.f.Dot(s.flat)), s.chord.Scale(w.m.Dot(s.chord))
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
		for _, p := range [2]statics.Vec3{run.a, run.b} {
			q := on.At(p)
			if also != nil {
				q = q.Add(also.At(p))
			}
			weld.Q = max(weld.Q, q.Norm()*weld.leg)
		}
	}
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
	r.roots = make([]slots[WeldLine], len(r.rootSets))
	for i := range r.rootSets {
		s := &r.rootSets[i]
		notes := []string{"force by the elastic line method: conservative beside the instantaneous centre"}
		if s.working != nil {
			notes = append(notes, "weak-axis bending on the part that shear lag leaves working (EN 1993-1-5 Table 3.1)")
		}
		r.roots[i] = newSlots(r.basis.Rules.WeldLine, s.words, s.thing, "weld", s.at, notes)
		r.roots[i].explain, r.roots[i].idle = (*run).explainRoot, idle(s.passes)
		r.places = append(r.places, &r.roots[i])
	}
	r.flows = make([]slots[WeldFlow], len(r.flowSets))
	for i := range r.flowSets {
		w := r.flowSets[i].weld
		r.flows[i] = newSlots(r.basis.Rules.WeldFlow, "weld "+w.ID+", shear flow", w.ID, "shear flow", r.flowSets[i].at, nil)
		r.places = append(r.places, &r.flows[i])
	}
}

// atFlows puts a cut's shear on its web-to-flange welds.
func (r *run) atFlows(c *cut, va float64) {
	for _, p := range c.flows {
		f := r.flowSets[p.set].f
		f.Q = va * p.perN
		r.flows[p.set].consider(r, f, "")
	}
}
