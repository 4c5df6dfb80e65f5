package strength

// Sections cut along a sweep: which plates act together there, their exact chords, section properties, and the forces
// that the loads beyond the cut bring.

import (
	"fmt"
	"math"
	"slices"

	"lugwright/geometry/shape"
	"lugwright/part"
	"lugwright/strength/statics"
)

// scanSteps is how many equal steps a sweep is scanned in, beside the cuts at its ends and at gusset tips.
const scanSteps = 16

// cut is one section of a sweep, ready for loads.
type cut struct {
	slot   int // index of its sweep
	at     part.Vec
	normal part.Vec // from the load to the root
	flat   part.Vec // thickness direction of the swept plate: bending that turns about chord is weak-axis
	chord  part.Vec // direction across the swept plate, in the section
	passes []bool
	set    int      // of those that pass, whose force comes in beyond the cut: see loadSets
	bolts  int      // bolt group that acts on the swept thing beyond the cut, -1 for none
	group  part.Vec // centroid of the whole section
	shear  part.Vec // shear centre
	f      Cut
	ribs   []rib
	ribArm float64 // from the load's entry to the cut, at most to the first bolt that holds the swept thing
	less   *cut    // the swept plate with fewer plates acting, another load path: what others add must not take away; nil when it stands alone
	own    bool    // no plate acts that stands on another swept plate as well
	// works are the chords that shear lag leaves of what acts, for compiling alone.
	works  []chordPiece
	acts   *acting
	joined *statics.Section // of works, nil for none
	strips float64          // edgewise moment that shear in the plane adds where it bends the strips beside an opening, by its size
	spread float64          // working width of the plate where load enters over a part of it, else 0
	root   part.Vec         // end of the sweep
	flows  []flowPoint
	label  string
	kept   kept
}

// rib is one web with the part of the flange that works with it.
type rib struct {
	offset float64 // from the ribs' middle, along chord
	part   float64 // of the forces
	lever  float64 // its part of a couple, over a distance
	off    float64 // its centroid from the flange's plane, along flat
	f      Cut
	label  string   // the web's name
	words  string   // for the report
	root   *rootSet // the weld that roots the rib itself, nil when there is none
	slot   int
	own    ribShare
	kept   kept
}

// ribShare is the part of the rib section's stress that the web itself carries.
type ribShare struct {
	area, arm, inertia float64 // web's area, its centroid's distance from the section's, own inertia
	total              float64 // the section's inertia
	whole              float64 // the section's area
	center             part.Vec
}

// chordPiece is one chord of one plate in a section.
type chordPiece struct {
	t      *thing
	mid    part.Vec
	dir    part.Vec
	length float64
}

// compileCuts makes room for all cuts at once, for they are large to move.
func (m *model) compileCuts() {
	m.bridging = make([]bool, len(m.b.Composites))
	for i := range m.b.Composites {
		m.bridging[i] = m.bridges(&m.b.Composites[i])
	}
	stations, n := make([][]float64, len(m.b.Sweeps)), 0
	for i := range m.b.Sweeps {
		s := &m.b.Sweeps[i]
		if main := m.thing(s.Things[0]); main != nil {
			stations[i] = m.stations(s, main)
			n += len(stations[i])
		}
	}
	m.spend(perCut * n)
	m.cuts = m.room.cuts.take(n)[:0]
	for i := range m.b.Sweeps {
		m.compileSweep(i, stations[i])
	}
}

func (m *model) compileSweep(i int, stations []float64) {
	s := &m.b.Sweeps[i]
	if mem := m.b.Member(s.Things[0]); mem != nil && mem.Profile.Kind != part.Angle {
		m.compileMember(i, mem)
		return
	}
	main := m.thing(s.Things[0])
	if main == nil {
		m.skip("section of "+s.Name, s.ID, s.Things[0]+" is not a plate or an angle leg")
		return
	}
	normal := s.To.Sub(s.From).Unit()
	flat := main.plate.Pose.W()
	if math.Abs(flat.Dot(normal)) > 1e-6 {
		m.skip("section of "+s.Name, s.ID, "the plate is not square to the cut")
		return
	}
	n := len(m.cuts)
	bolts := slices.IndexFunc(m.b.Bolts, func(g part.BoltGroup) bool { return g.ID == s.Bolts })
	for _, t := range stations {
		m.cuts = append(m.cuts, cut{slot: i, normal: normal, flat: flat, chord: normal.Cross(flat), at: s.From.AddScaled(t, s.To.Sub(s.From)), bolts: bolts, root: s.To})
		c := &m.cuts[len(m.cuts)-1]
		c.ribArm = m.armTo(s, c)
		if m.fillCut(s, c); !(c.f.Area > 0) {
			if s.Alone && len(main.chords(nil, c.at, c.normal)) > 0 {
				m.skip("section", sweepName(s), "its line runs through a hole or beside the plate there, and which piece carries is not told")
			}
			m.cuts = m.cuts[:len(m.cuts)-1]
		}
	}
	if len(m.cuts) == n {
		m.skip("section of "+s.Name, s.ID, "no cut along the sweep meets material")
	}
}

// armTo is the distance from the load's entry to a cut, at most to the first bolt of the sweep.
func (m *model) armTo(s *part.Sweep, c *cut) float64 {
	arm := c.at.Sub(s.From).Norm()
	if c.bolts < 0 {
		return arm
	}
	g := &m.b.Bolts[c.bolts]
	for _, p := range g.Points {
		arm = min(arm, max(g.Pose.At(p.X, p.Y, 0).Sub(s.From).Dot(c.normal), 0))
	}
	return arm
}

// besideMM keeps cuts inside an edge: one along it is not defined.
const besideMM = 1e-3

// stations are the fractions of a sweep at which it is cut: ends, both sides of every composite's end and of every place where an outline turns in, the middle and far edge of
// every hole on its way and short of a row of bolts, corners and middles of openings, also in webs that stand on the plate, and a scan in between.
func (m *model) stations(s *part.Sweep, main *thing) []float64 {
	along := s.To.Sub(s.From)
	length := along.Norm()
	var ts []float64
	add := func(t float64) {
		if t >= 0 && t <= 1 {
			ts = append(ts, t)
		}
	}
	add(besideMM / length)
	for k := 1; k < scanSteps; k++ {
		add(float64(k) / scanSteps)
	}
	add(1 - besideMM/length)
	m.spend(len(m.b.Composites))
	for _, c := range m.b.Composites {
		if math.Abs(c.To.Sub(c.From).Unit().Dot(along)) < 0.99*length {
			continue // it runs another way and never covers a cut of this sweep
		}
		from, to := c.From.Sub(s.From).Dot(along)/(length*length), c.To.Sub(s.From).Dot(along)/(length*length)
		for _, end := range [2]float64{from, to} {
			add(end - besideMM/length)
			add(end + besideMM/length)
		}
		// Where a web begins, the plate alone hands over to the plate with it: what is worst lies a little past the web's end.
		if begins := min(from, to); begins > 0 {
			for step := 0.3; step <= 3; step += max(0.3, step/5) {
				add(begins + step*main.plate.ThicknessMM/length)
			}
		}
	}
	ids := slices.Clone(s.Things)
	m.spend(len(m.b.Composites) * len(s.Things))
	for _, c := range m.b.Composites {
		if slices.Contains(s.Things, c.Things[0]) {
			ids = append(ids, c.Things[1:]...)
		}
	}
	for _, id := range ids {
		if th := m.thing(id); th != nil {
			th.stations(s, add)
		}
	}
	slices.Sort(ts)
	return slices.CompactFunc(ts, func(a, b float64) bool { return math.Abs(b-a)*length < besideMM/2 })
}

// stations adds those that a plate's holes, narrowings and openings ask for.
func (th *thing) stations(s *part.Sweep, add func(t float64)) {
	along := s.To.Sub(s.From)
	length := along.Norm()
	for _, h := range th.plate.Holes {
		t := th.plate.HoleAt(h).Sub(s.From).Dot(along) / (length * length)
		add(t)
		add(t + h.DiaMM/2/length)
		if s.Bolts != "" && h.Purpose == part.ForBolt {
			add(t - besideMM/length) // the row has not taken its part yet
		}
	}
	for _, q := range narrowings(th.plate.Outer.CCW()) {
		t := th.plate.Pose.At(q.X, q.Y, 0).Sub(s.From).Dot(along) / (length * length)
		add(t - besideMM/length)
		add(t + besideMM/length)
	}
	for _, o := range th.plate.Cutouts {
		for _, e := range o.Edges() {
			for _, q := range [2]shape.Point{e.A, e.Mid()} {
				add(th.plate.Pose.At(q.X, q.Y, 0).Sub(s.From).Dot(along) / (length * length))
			}
		}
	}
}

// narrowings are the places of a counter-clockwise outline where a plate may be at its narrowest: corners that turn in, and arcs that bulge in.
func narrowings(outer shape.Loop) []shape.Point {
	var out []shape.Point
	for i := range outer {
		e, before := outer.Edge(i), outer.Edge(i-1)
		if before.TangentAt(1).Cross(e.TangentAt(0)) < -1e-9 {
			out = append(out, e.A)
		}
		if e.Bulge < 0 {
			for k := range 5 {
				out = append(out, e.At(float64(k)/4))
			}
		}
	}
	return out
}

// acting is what acts as one section over a stretch of a sweep.
type acting struct {
	sweep   *part.Sweep
	covered []bool   // which composites reach over the stretch
	ids     []string // the swept things and whatever the composites join to them
	active  []*part.Composite
	shared  []string // webs that stand on more than one flange of the active composites
	on      *through // branches through any of the things; nil until wanted
}

// together gives what acts as one section at a cut; own leaves out webs that stand on another flange too. Between the ends of composites it
// is the same from cut to cut, and nobody changes it.
func (m *model) together(s *part.Sweep, at, normal part.Vec, own bool) *acting {
	m.spend(len(m.b.Composites))
	covered := m.room.covered[:0]
	for i := range m.b.Composites {
		c := &m.b.Composites[i]
		covered = append(covered, covers(c, at, normal) && !(own && m.bridging[i]))
	}
	m.room.covered = covered
	for i := len(m.stretches) - 1; i >= 0; i-- {
		m.spend(1 + len(covered)/8)
		if a := m.stretches[i]; a.sweep == s && slices.Equal(a.covered, covered) {
			return a
		}
	}
	a := &acting{sweep: s, covered: slices.Clone(covered), ids: slices.Clone(s.Things)}
	for changed := true; changed; {
		changed = false
		for i := range m.b.Composites {
			c := &m.b.Composites[i]
			m.spend(1 + len(a.active))
			if !covered[i] || slices.Contains(a.active, c) {
				continue
			}
			m.spend(len(c.Things) * len(a.ids))
			if slices.ContainsFunc(c.Things, func(id string) bool { return slices.Contains(a.ids, id) }) {
				a.active, changed = append(a.active, c), true
				for _, id := range c.Things {
					if !slices.Contains(a.ids, id) {
						a.ids = append(a.ids, id)
					}
				}
			}
		}
	}
	n := named(a.active)
	m.spend(n * n)
	a.shared = websShared(a.active)
	m.stretches = append(m.stretches, a)
	return a
}

// named is how many things composites name in all.
func named(active []*part.Composite) int {
	n := 0
	for _, c := range active {
		n += len(c.Things)
	}
	return n
}

// throughAll finds the branches through any of the things that act together.
func (m *model) throughAll(a *acting) *through {
	if a.on == nil {
		a.on = m.through(a.ids)
	}
	return a.on
}

// bridges says whether a composite's webs stand on a flange beside its own that runs the same way.
func (m *model) bridges(c *part.Composite) bool {
	along := c.To.Sub(c.From).Unit()
	for i := range m.b.Composites {
		d := &m.b.Composites[i]
		m.spend(1 + len(c.Things)*len(d.Things))
		if d.Things[0] != c.Things[0] && math.Abs(d.To.Sub(d.From).Unit().Dot(along)) > 0.99 &&
			slices.ContainsFunc(d.Things[1:], func(id string) bool { return slices.Contains(c.Things[1:], id) }) {
			return true
		}
	}
	return false
}

// chords cuts one plate by the plane through at square to normal and appends its chords. A plate that is not square to the plane gives none.
func (t *thing) chords(dst []chordPiece, at, normal part.Vec) []chordPiece {
	p := &t.plate.Pose
	t.work.spend(t.plate.Corners())
	n := shape.Point{X: normal.Dot(p.U), Y: normal.Dot(p.V)}
	if math.Abs(normal.Dot(p.W())) > 1e-6 {
		return dst
	}
	d := at.Sub(p.Origin).Dot(normal)
	base, dir := n.Scale(d), n.Perp()
	var buffer [8]shape.Interval
	for _, iv := range t.outline.ChordsInto(buffer[:0], base, dir) {
		if iv.Length() < 1e-6 {
			continue
		}
		a, b := base.Add(dir.Scale(iv.Lo)), base.Add(dir.Scale(iv.Hi))
		end1, end2 := p.At(a.X, a.Y, 0), p.At(b.X, b.Y, 0)
		dst = append(dst, chordPiece{t: t, mid: end1.Add(end2).Scale(0.5), dir: end2.Sub(end1).Unit(), length: iv.Length()})
	}
	return dst
}

// plane turns chords into statics pieces: Y along flat, Z along chord, from the cut's point.
func (c *cut) plane(ch *chordPiece) statics.Piece {
	d := ch.mid.Sub(c.at)
	return statics.Piece{
		Y: d.Dot(c.flat), Z: d.Dot(c.chord), L: ch.length, T: ch.t.plate.ThicknessMM,
		Ang: math.Atan2(ch.dir.Dot(c.chord), ch.dir.Dot(c.flat)),
	}
}

func (c *cut) space(y, z float64) part.Vec { return c.at.AddScaled(y, c.flat).AddScaled(z, c.chord) }

// fillCut works out the section: the whole of it for axial force and edgewise bending, the part that shear lag leaves
// for weak-axis bending, the ribs where the sweep has them; then the swept plate with its own gussets, and alone.
func (m *model) fillCut(s *part.Sweep, c *cut) {
	acts := m.together(s, c.at, c.normal, false)
	all := m.chordsOf(m.room.chords[:0], s, acts.ids, c)
	m.room.chords = all
	if len(acts.ids) == len(s.Things) {
		m.fillSection(c, m.working(c, s, all), nil, m.throughAll(acts))
		return
	}
	whole := m.reached(s, c, all)
	if !slices.ContainsFunc(whole, func(ch chordPiece) bool { return !slices.Contains(s.Things, ch.t.plate.ID) }) {
		m.fillSection(c, m.working(c, s, whole), nil, m.throughAll(acts))
		return
	}
	m.fillSection(c, whole, acts, m.throughAll(acts))
	c.label = "gussets acting"
	if s.Ribs {
		m.fillRibs(c, whole, acts.active)
	}
	last := c
	few := m.together(s, c.at, c.normal, true)
	if c.own = len(few.ids) == len(acts.ids); !c.own && len(few.ids) > len(s.Things) {
		own := m.again(c, "its own gussets acting")
		own.own = true
		if m.fillSection(own, m.some(all, few.ids), few, m.throughAll(few)); own.f.Area > 0 {
			last.less, last = own, own
		}
	}
	if main := m.some(all, s.Things[:1]); len(main) > 0 {
		bare := m.again(c, "without its gussets")
		if m.fillSection(bare, m.working(bare, s, main), nil, m.through(s.Things)); bare.f.Area > 0 {
			last.less = bare
		}
	}
}

// again is a cut at the same place with nothing in it yet.
func (m *model) again(c *cut, label string) *cut {
	m.spend(perCut)
	out := &m.room.cuts.take(1)[0]
	*out = cut{slot: c.slot, at: c.at, normal: c.normal, flat: c.flat, chord: c.chord, bolts: c.bolts, ribArm: c.ribArm, root: c.root, label: label}
	return out
}

// chordsOf cuts plates at a cut of a sweep and appends their chords.
func (m *model) chordsOf(dst []chordPiece, s *part.Sweep, ids []string, c *cut) []chordPiece {
	for _, id := range ids {
		t := m.thing(id)
		if t == nil {
			continue
		}
		n := len(dst)
		dst = t.chords(dst, c.at, c.normal)
		if s.Alone && slices.Contains(s.Things, id) {
			dst = append(dst[:n], slices.DeleteFunc(dst[n:], func(ch chordPiece) bool { return math.Abs(c.at.Sub(ch.mid).Dot(ch.dir)) > ch.length/2 })...)
		}
	}
	return dst
}

// some picks the chords of some plates, in the plates' order.
func (m *model) some(chords []chordPiece, ids []string) []chordPiece {
	out := m.room.some[:0]
	m.spend(len(ids) * len(chords))
	for _, id := range ids {
		for i := range chords {
			if chords[i].t.plate.ID == id {
				out = append(out, chords[i])
			}
		}
	}
	m.room.some = out
	return out
}

// sweptBy says which branches act on what a sweep cuts.
func (m *model) sweptBy(s *part.Sweep, on *through) []bool {
	if s.Via == "" {
		return on.passes
	}
	return both(on.passes, m.passes(s.Via))
}

// tan30 is the spread of a load in a plate: 30 degrees, AISC Manual Part 9 (Whitmore section) for axial force; used for bending
// here, our extension.
const tan30 = 0.5773502691896258

// halfSpread is half the width that a load entering over part of the swept thing has spread to at a cut.
func (c *cut) halfSpread(s *part.Sweep) float64 {
	return s.EntryMM/2 + tan30*max(0, c.at.Sub(s.From).Norm()-s.EntryToMM)
}

// reached leaves out ribs that the load has not spread to: what stands farther off works only nearer the root.
func (m *model) reached(s *part.Sweep, c *cut, chords []chordPiece) []chordPiece {
	if s.EntryMM == 0 || !s.Ribs {
		return chords
	}
	return slices.DeleteFunc(m.room.kept.copied(chords), func(ch chordPiece) bool {
		return !slices.Contains(s.Things, ch.t.plate.ID) && m.reachedPart(c, ch.mid.Sub(c.at).Dot(c.chord), ch.t.plate.ThicknessMM) == 0
	})
}

// reachedPart is how much of a rib's thickness the spread has reached, so that a rib does not come in all at once.
func (m *model) reachedPart(c *cut, at, t float64) float64 {
	s := &m.b.Sweeps[c.slot]
	if s.EntryMM == 0 {
		return 1
	}
	return min(max((c.halfSpread(s)+t/2-math.Abs(at))/t, 0), 1)
}

// working clips the chords to the width that a load entering over part of it spreads to, where that holds for all it does there.
func (m *model) working(c *cut, s *part.Sweep, chords []chordPiece) []chordPiece {
	if s.EntryMM == 0 || s.EntryFlat {
		return chords
	}
	out := m.clipped(c, s, chords)
	for _, ch := range out {
		c.spread += ch.length
	}
	return out
}

// clipped is the part of the chords within the spread of the load.
func (m *model) clipped(c *cut, s *part.Sweep, chords []chordPiece) []chordPiece {
	half := c.halfSpread(s)
	out := m.room.kept.take(len(chords))[:0]
	for _, ch := range chords {
		middle := c.at.Sub(ch.mid).Dot(ch.dir)
		if lo, hi := max(middle-half, -ch.length/2), min(middle+half, ch.length/2); hi > lo {
			out = append(out, ch.part(lo, hi))
		}
	}
	if len(out) == 0 && len(chords) > 0 {
		m.noSpread(c.slot, s)
	}
	return out
}

// noSpread refuses a width of entry that meets no steel at a cut, once for its sweep: the load would hang in a hole.
func (m *model) noSpread(i int, s *part.Sweep) {
	field := fmt.Sprintf("sweeps[%d].entry_mm", i)
	if !slices.ContainsFunc(m.bad, func(e *part.FieldError) bool { return e.Field == field }) {
		m.refuse(field, fmt.Errorf("%g mm: no steel within the load's spread at a cut of %s", s.EntryMM, sweepName(s)), "a width that reaches steel at every cut, or 0 where all of the thing works")
	}
}

// fillSection sets the properties of a cut from its chords.
func (m *model) fillSection(c *cut, whole []chordPiece, acts *acting, on *through) {
	if len(whole) == 0 {
		return
	}
	m.spend(10 * len(whole))
	pieces := c.pieces(m.room.pieces[:0], whole)
	m.room.pieces = pieces
	full, err := statics.NewSection(pieces)
	if err != nil {
		return
	}
	s := &m.b.Sweeps[c.slot]
	c.passes = m.sweptBy(s, on)
	c.set = m.loadSet(m.beyond(c.passes, on, c.at, c.normal))
	c.group = c.space(full.CY, full.CZ)
	c.shear = c.group
	if y, z, err := statics.ShearCentre(pieces); err == nil {
		if out, ok := statics.WebsOut(pieces, full); ok {
			y += out
		}
		c.shear = c.space(y, z)
	}
	twist, effective := statics.Torsion(pieces), &full
	if acts != nil && len(acts.active) > 0 {
		m.spend(len(whole) * (len(acts.active) + len(whole)*named(acts.active)))
		m.room.works = trimmed(m.room.works[:0], whole, acts.active)
		c.works, c.acts = m.room.kept.copied(m.room.works), acts
		m.room.pieces = c.pieces(pieces[:0], c.works)
		if e, err := statics.NewSection(m.room.pieces); err == nil {
			c.joined = &m.room.joined.take(1)[0]
			*c.joined = e
			effective = c.joined
		}
	}
	c.f = section(whole, &full, effective, twist)
	c.strips = m.stripsAt(c, whole)
	if s.EntryFlat && s.EntryMM > 0 && c.acts == nil {
		c.flatten(m.clipped(c, s, whole))
	}
	c.f.FreeLength = max(c.ribArm, s.FreeMM)
}

// stripsAt bends the strips of a plate beside an opening by their shear, over half the opening's length each way (elementary statics of a frame); strips take the shear by
// their stiffness. What comes out is the moment that as much bends the whole section. Round holes count with 0.45 of their diameter (AISC Design Guide 31,
// from memory), those for bolts, pins and rods not at all: common practice, no source.
func (m *model) stripsAt(c *cut, chords []chordPiece) float64 {
	worst := 0.0
	for i := 0; i < len(chords); {
		t, first := chords[i].t, i
		cubes := 0.0
		for ; i < len(chords) && chords[i].t == t; i++ {
			cubes += math.Pow(chords[i].length, 3)
		}
		length := t.openingAt(c)
		if length == 0 {
			continue
		}
		if math.Abs(chords[first].dir.Dot(c.chord)) < 0.9 {
			m.skip("bending of the strips beside an opening", t.plate.ID, "it is in a plate that stands on the one that is cut")
			continue
		}
		for _, ch := range chords[first:i] {
			share, modulus := math.Pow(ch.length, 3)/cubes, t.plate.ThicknessMM*ch.length*ch.length/6
			worst = max(worst, share*length/2/modulus*c.f.Sb)
		}
	}
	return worst
}

// openingAt is how far the longest opening at a cut reaches along it, 0 for none.
func (t *thing) openingAt(c *cut) float64 {
	n := shape.Point{X: c.normal.Dot(t.plate.Pose.U), Y: c.normal.Dot(t.plate.Pose.V)}
	at := c.at.Sub(t.plate.Pose.Origin).Dot(c.normal)
	longest := 0.0
	t.work.spend(t.plate.Corners())
	for _, o := range t.plate.Cutouts {
		lo, hi := math.Inf(1), math.Inf(-1)
		for _, e := range o.Edges() {
			for _, q := range [2]shape.Point{e.A, e.Mid()} {
				lo, hi = min(lo, q.Dot(n)), max(hi, q.Dot(n))
			}
		}
		if at >= lo && at <= hi {
			longest = max(longest, hi-lo)
		}
	}
	for _, h := range t.plate.Holes {
		held := h.Purpose == part.ForBolt || h.Purpose == part.ForPin || h.Purpose == part.ForRod
		if !held && math.Abs(at-h.Center.Dot(n)) < 0.225*h.DiaMM {
			longest = max(longest, 0.45*h.DiaMM)
		}
	}
	return longest
}

// flatten leaves the given chords alone to bending out of the plane, with its shear.
func (c *cut) flatten(chords []chordPiece) {
	f, width := &c.f, 0.0
	for _, ch := range chords {
		width += ch.length
	}
	f.AreaVa, f.Sa = width*f.TMax, width*f.TMax*f.TMax/6
	if f.Za > 0 {
		f.Za = width * f.TMax * f.TMax / 4
	}
}

func (c *cut) pieces(dst []statics.Piece, chords []chordPiece) []statics.Piece {
	for i := range chords {
		dst = append(dst, c.plane(&chords[i]))
	}
	return dst
}

// section fills the properties of a cut. A single rectangle may go plastic; a section of several plates, or one with a
// hole in it, is held to first yield at its worst corner.
func section(chords []chordPiece, full, effective *statics.Section, twist float64) Cut {
	f := Cut{
		Area: full.Area, J: twist, Fy: math.Inf(1), Fu: math.Inf(1), E: math.Inf(1),
		Sa: effective.WzLeast, Sb: full.WyLeast,
	}
	var last *thing // a plate met twice running has a hole there
	for _, ch := range chords {
		t := ch.t.plate.ThicknessMM
		f.TMax = max(f.TMax, t)
		f.Fy, f.Fu, f.E = min(f.Fy, ch.t.fy), min(f.Fu, ch.t.fu), min(f.E, ch.t.e)
		if ch.t == last {
			f.Net, f.HoleT = true, f.HoleT+t
		}
		last = ch.t
	}
	f.AreaVa, f.AreaVb = full.Area, full.Area
	if len(chords) == 1 {
		f.Rect, f.Depth = true, chords[0].length
		t := chords[0].t.plate.ThicknessMM
		f.Za, f.Zb = f.Depth*t*t/4, t*f.Depth*f.Depth/4
		f.R = t / math.Sqrt(12)
	} else {
		f.AreaVa, f.AreaVb = shearAreas(chords)
		f.Depth = full.ZMax - full.ZMin
		f.R = math.Sqrt(min(effective.LeastInertia(), full.LeastInertia()) / full.Area)
	}
	return f
}

// shearAreas takes for each direction the plates that run along it; where none does, the whole.
func shearAreas(chords []chordPiece) (a, b float64) {
	var along, across, all float64
	main := chords[0].dir
	for _, ch := range chords {
		area := ch.length * ch.t.plate.ThicknessMM
		all += area
		if math.Abs(ch.dir.Dot(main)) > math.Sqrt2/2 {
			along += area
		} else {
			across += area
		}
	}
	if across == 0 {
		across = all
	}
	// Square to the main plate either the webs or the main plate itself may take the shear, whichever is more.
	return max(across, along), along
}

// atCuts puts the case's forces on every cut. Where gussets act, the swept plate with fewer of them or without them is a load path too,
// and the best is what counts: a gusset never makes a plate weaker.
func (r *run) atCuts() {
	before := aloneWay
	for i := range r.cuts {
		c := &r.cuts[i]
		r.inPlace = i
		if r.b.Sweeps[c.slot].HeightMM > 0 {
			r.atCornerPlate(c)
		}
		if c.less == nil {
			r.calc.kept = &c.kept
			plain(&c.f, c, r.beyond(c, c.group))
			r.cutSlots[c.slot].consider(r, c.f, c.label)
			r.calc.kept = nil
			before = aloneWay
			continue
		}
		root, least := r.isRoot(i), math.Inf(1)
		best, trial := &r.effects[0], &r.effects[1]
		guess := c
		if !keepNothing {
			guess = c.way(before) // the load seldom changes its way from cut to cut, and what is known to be good rules others out soonest
		}
		for way := guess; way != nil; way = c.after(way, guess) {
			enough := least
			if root {
				enough = math.Inf(1) // the weld there compares every way
			}
			if way != guess && r.surelyWorse(way, best, enough) {
				continue
			}
			r.actAt(trial, way)
			s := r.weigh(trial, enough)
			if way == guess || s < least || s == least && way.leadsTo(best.way) { // of ways that are alike the one with most acting
				best, trial, least = trial, best, s
			}
			for k := range wayCount {
				if root && c.way(k) == way {
					r.across[c.slot][k] = s
				}
			}
		}
		kind := c.kind(best.way)
		if i > 0 && r.cuts[i-1].slot == c.slot && kind != before {
			r.keepBetween(trial, i, before, kind)
		}
		before, r.inPlace = kind, i
		if r.rooted[c.slot] && root {
			continue // the weld there decides, so that plate and weld go one way
		}
		r.keepCut(best)
	}
}

// surelyWorse says whether a way at a cut suffers more than enough, by what the best way so far carries, taken about the way's own centroid, and by
// the capacities that are known there. Sums about another point round otherwise, so that a way which is near to enough is left to be worked out.
func (r *run) surelyWorse(way *cut, best *effect, enough float64) bool {
	const near = 1e-6
	if way.set != best.way.set || len(way.ribs) > 0 || math.IsInf(enough, 1) {
		return false
	}
	w := best.w
	w.m = w.m.Add(best.way.group.Sub(way.group).Cross(w.f))
	plain(&way.f, way, w)
	r.calc.kept = &way.kept
	defer func() { r.calc.kept = nil }()
	s := &r.cutSlots[way.slot]
	known := s.known(r)
	for i := len(s.rules) - 1; i >= 0; i-- { // the interaction stands last, and is the worst as a rule
		if sc, ok := s.rules[i].atCapacity(&r.calc, known, i, &way.f); ok && sc.utilisation > enough*(1+near)+near {
			return true
		}
	}
	return false
}

// keepBetween keeps the worst between a cut and the one before it, where the load goes another way at each: the first way grows towards this
// cut, the second towards the one before, so that neither is worse in between than the better of these two ends.
func (r *run) keepBetween(e *effect, i, before, after int) {
	ways := [2]*cut{r.cuts[i].way(before), r.cuts[i-1].way(after)}
	r.actAt(e, ways[0])
	first := r.weigh(e, math.Inf(1))
	r.actAt(e, ways[1])
	r.inPlace = i - 1
	if second := r.weigh(e, first); !(second < first) {
		r.inPlace = i
		r.actAt(e, ways[0])
		r.weigh(e, math.Inf(1))
	}
	r.keepCut(e)
}

// kind is which way a cut of the chain is.
func (c *cut) kind(way *cut) int {
	for k := range wayCount {
		if c.way(k) == way {
			return k
		}
	}
	return aloneWay
}

// effect is what a cut's plates, and the welds that make them act together, have to carry going one way, and how every rule comes out for it.
type effect struct {
	way      *cut
	w        wrench // about the cut's centroid
	sections []*Cut // of the cut or its ribs, with the demand in them
	flows    []flowDemand
	ribs     []ribDemand
	scores   []score // of sections, flows and ribs in turn
}

// actAt finds what the plates of a cut have to carry; what the welds between them have is found when it is weighed.
func (r *run) actAt(e *effect, c *cut) {
	e.way, e.w, e.sections = c, r.beyond(c, c.group), e.sections[:0]
	if len(c.ribs) > 0 {
		e.sections = ribbed(e.sections, c, e.w)
		return
	}
	plain(&c.f, c, e.w)
	e.sections = append(e.sections, &c.f)
}

// jointsAt finds what the welds that make plates act together have to carry under a wrench about the cut's centroid.
func (r *run) jointsAt(e *effect, c *cut, w wrench) {
	e.flows, e.ribs = e.flows[:0], e.ribs[:0]
	r.spend(len(c.ribs) * (1 + len(c.flows)))
	if len(c.ribs) == 0 {
		r.flowsAt(e, c, w)
		return
	}
	for k := range c.ribs {
		rb := &c.ribs[k]
		f := rb.take(c, w)
		e.atRibFlow(c, rb, f)
		e.atRibRoot(c, rb, f)
	}
}

// Ways for the load at a cut: all plates that act there, the swept plate with its own gussets, and it alone.
const (
	allWay = iota
	ownWay
	aloneWay
	wayCount
)

// way is the swept plate with as much acting as a way has.
func (c *cut) way(k int) *cut {
	switch {
	case k == allWay || c.less == nil:
		return c
	case k == ownWay && c.less.own:
		return c.less
	case k == ownWay:
		return c
	}
	last := c
	for last.less != nil {
		last = last.less
	}
	return last
}

// after is the way to try at a cut after another one, where guess was tried first.
func (c *cut) after(way, guess *cut) *cut {
	next := way.less
	if way == guess {
		next = c
	}
	if next == guess {
		next = guess.less
	}
	return next
}

// leadsTo says whether a way with less acting is another one.
func (c *cut) leadsTo(other *cut) bool {
	for way := c.less; way != nil; way = way.less {
		if way == other {
			return true
		}
	}
	return false
}

// isRoot says whether a cut is the last of its sweep.
func (r *run) isRoot(i int) bool { return i+1 == len(r.cuts) || r.cuts[i+1].slot != r.cuts[i].slot }

// keepRootCut keeps what the plate at the root of a sweep suffers, going the way that its weld goes.
func (r *run) keepRootCut(slot, k int) {
	r.spend(len(r.cuts))
	for i := range r.cuts {
		if c := &r.cuts[i]; c.slot == slot && r.isRoot(i) && c.less != nil {
			way := c.way(k)
			r.inPlace = i
			e := &r.effects[0]
			r.actAt(e, way)
			r.weigh(e, math.Inf(1))
			r.keepCut(e)
		}
	}
}

// weigh is the worst that the plates of a cut and the welds between them suffer. Once it is past enough, the rest is left out.
func (r *run) weigh(e *effect, enough float64) float64 {
	e.scores = e.scores[:0]
	worst := 0.0
	for k := 0; k < len(e.sections) && !(worst > enough); k++ {
		worst = max(worst, scored(r, e, &r.cutSlots[e.way.slot], e.sections[k], e.way.keeps(k), enough))
	}
	if worst > enough {
		return worst
	}
	r.jointsAt(e, e.way, e.w)
	for k := 0; k < len(e.flows) && !(worst > enough); k++ {
		set := e.flows[k].set
		worst = max(worst, scored(r, e, &r.flows[set], r.flowOf(&e.flows[k]), &r.flowSets[set].kept, enough))
	}
	for k := 0; k < len(e.ribs) && !(worst > enough); k++ {
		worst = max(worst, scored(r, e, &r.ribRoots[e.ribs[k].slot], &e.ribs[k].line, nil, enough))
	}
	return worst
}

// scored scores one part of an effect, until it is past enough.
func scored[F any](r *run, e *effect, s *slots[F], f *F, known *kept, enough float64) (worst float64) {
	r.calc.kept = known
	e.scores, worst = s.weigh(r, f, e.scores, enough)
	r.calc.kept = nil
	return worst
}

// flowOf is a demand as its weld's rules want it, in the weld's own memory.
func (r *run) flowOf(d *flowDemand) *WeldFlow {
	f := &r.flowSets[d.set].f
	f.Q = d.q
	return f
}

// keeps is where limit states keep what no load changes of a cut, or of one of its ribs.
func (c *cut) keeps(k int) *kept {
	if len(c.ribs) > 0 {
		return &c.ribs[k].kept
	}
	return &c.kept
}

// keepCut keeps an effect that is scored to the end.
func (r *run) keepCut(e *effect) {
	rest := e.scores
	for k := range e.sections {
		rest = r.cutSlots[e.way.slot].keep(r, e.sections[k], rest, e.way.ribLabel(k))
	}
	for k := range e.flows {
		rest = r.flows[e.flows[k].set].keep(r, r.flowOf(&e.flows[k]), rest, "")
	}
	for k := range e.ribs {
		rest = r.ribRoots[e.ribs[k].slot].keep(r, &e.ribs[k].line, rest, "")
	}
}

// farHeights is how many heights of a corner plate away a force acts when all that comes is a moment.
const farHeights = 1000

// atCornerPlate gives a corner plate's free edge the force along its support and the distance that makes the moment at its root.
func (r *run) atCornerPlate(c *cut) {
	s := &r.b.Sweeps[c.slot]
	if c.at.Sub(s.To).Norm() > 0.01 {
		return
	}
	w, t := r.beyond(c, c.at), r.thing(s.Things[0])
	m := math.Abs(w.m.Dot(c.flat))
	p := max(math.Abs(w.f.Dot(c.chord)), m/(farHeights*s.HeightMM)) // a moment alone is a small force far away
	if p == 0 {
		return
	}
	r.cornerPlates[c.slot].consider(r, CornerPlate{
		Holed: len(t.plate.Holes)+len(t.plate.Cutouts) > 0,
		P:     p, E: m / p, A: s.HeightMM, B: s.ReachMM, T: c.f.TMax, Fy: c.f.Fy, Modulus: c.f.E,
	}, "")
}

// ribLabel names what acts at a cut, rib by rib.
func (c *cut) ribLabel(k int) string {
	if len(c.ribs) > 0 {
		return c.ribs[k].words
	}
	return c.label
}

// plain puts into f, the section of a cut that works as one, the demand of a wrench about its centroid.
func plain(f *Cut, c *cut, w wrench) {
	f.N = -w.f.Dot(c.normal)
	f.Va, f.Vb = math.Abs(w.f.Dot(c.flat)), math.Abs(w.f.Dot(c.chord))
	f.Ma, f.Mb = math.Abs(w.m.Dot(c.chord)), math.Abs(w.m.Dot(c.flat))+c.strips*f.Vb
	arm := c.shear.Sub(c.group)
	f.T = math.Abs(w.m.Sub(arm.Cross(w.f)).Dot(c.normal))
	if c.spread > 0 {
		// A couple about the sweep enters as forces that grow from the middle of the entry to its ends; they bend the strip at the
		// end by 6 T arm/b^2 per length and shear it by 6 T/b^2, which is held against the strip's strength as if it acted over the whole width b.
		f.Ma += 6 * f.T * c.ribArm / c.spread
		f.Va += 6 * f.T / c.spread
		f.T = 0
	}
}

// beyond is everything that acts on the swept thing on the load's side of the cut, about a point.
func (r *run) beyond(c *cut, about part.Vec) wrench {
	on := r.loaded(c.set)
	r.spend(1 + len(on.forces))
	w := on.about(about)
	if c.bolts >= 0 {
		r.spend(len(r.groups[c.bolts].Points))
		r.groups[c.bolts].react(&w, c, about)
	}
	return on.settledAbout(w, about)
}

// laySweeps prepares a place for each sweep.
func (r *run) laySweeps() {
	r.across = make([][wayCount]float64, len(r.b.Sweeps))
	r.cutSlots, r.cornerPlates = make([]slots[Cut], len(r.b.Sweeps)), make([]slots[CornerPlate], len(r.b.Sweeps))
	for i := range r.b.Sweeps {
		has := func(want func(c *cut) bool) bool {
			r.spend(len(r.cuts))
			for k := range r.cuts {
				if c := &r.cuts[k]; c.slot == i && want(c) {
					return true
				}
			}
			return false
		}
		if !has(func(*cut) bool { return true }) {
			continue
		}
		s := &r.b.Sweeps[i]
		var notes []string
		if has(func(c *cut) bool { return len(c.ribs) > 0 }) {
			notes = append(notes, "ribs share force and couple as a rigid body (elementary statics, no clause)")
		}
		if has(func(c *cut) bool { return c.less != nil }) {
			notes = append(notes, "flange width working with a gusset by EN 1993-1-5 Table 3.1 (from memory)")
		}
		if has(func(c *cut) bool { return c.strips > 0 }) {
			notes = append(notes, "strips beside an opening are bent by their shear too, over half its length (elementary statics)")
		}
		for _, w := range r.standsFor(sweepName(s)) {
			notes = append(notes, "stands for "+w+" too, of complete penetration: as strong as this section with matching filler, and without it listed as outside the rule")
		}
		if s.EntryMM > 0 {
			notes = append(notes, "load spreads at 30 degrees from its entry (AISC Manual Part 9; for bending our extension)")
		}
		r.cutSlots[i] = newSlots(r.basis.Rules.Cut, sweepName(s), s.Things[0], "section", s.To, notes)
		r.cutSlots[i].explain = (*run).explainCut
		r.cutSlots[i].idle = !has(func(c *cut) bool { return !idle(c.passes) || c.bolts >= 0 && !idle(r.groups[c.bolts].passes) })
		r.places = append(r.places, &r.cutSlots[i])
		if s.HeightMM > 0 {
			r.cornerPlates[i] = newSlots(r.basis.Rules.CornerPlate, sweepName(s)+", free edge", s.Things[0], "free edge", s.To, nil)
			r.places = append(r.places, &r.cornerPlates[i])
		}
	}
}

func sweepName(s *part.Sweep) string {
	if s.Name == "" || s.Name == s.ID {
		return s.ID
	}
	return s.ID + " (" + s.Name + ")"
}
