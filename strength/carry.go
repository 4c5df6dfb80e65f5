package strength

// Loads to joints: a case is split into signed components, each follows its path, and whatever a joint or a section
// passes is summed there as one force and one moment.

import (
	"context"
	"fmt"
	"math"
	"slices"
	"strings"

	"lugwright/part"
)

// force is one active branch: a force and a free moment at the point where they enter.
type force struct {
	branch int
	f, m   part.Vec
	at     part.Vec
}

// wrench is a force and a moment about a stated point.
type wrench struct {
	f, m         part.Vec
	mostF, mostM float64 // greatest component ever added, as far as it is needed to settle the wrench; of no use afterwards
}

// plus adds a force and moment that act at a point, about the point about.
func (w *wrench) plus(f, m, at, about part.Vec) {
	arm := at.Sub(about).Cross(f)
	w.f = w.f.Add(f)
	w.m = w.m.Add(m).Add(arm)
	w.mostF = max(w.mostF, greatest(f))
	w.mostM = max(w.mostM, greatest(m), greatest(arm))
}

func greatest(v part.Vec) float64 { return max(math.Abs(v.X), math.Abs(v.Y), math.Abs(v.Z)) }

// rounding is the part of the greatest component ever added below which a sum is taken for what rounding left of it.
const rounding = 1e-12

// settled has zero where parts that cancel leave nothing but rounding.
func (w wrench) settled() wrench {
	w.f, w.m = settle(w.f, rounding*w.mostF), settle(w.m, rounding*w.mostM)
	return w
}

func settle(v part.Vec, below float64) part.Vec {
	return part.Vec{X: settled(v.X, below), Y: settled(v.Y, below), Z: settled(v.Z, below)}
}

func settled(x, below float64) float64 {
	if math.Abs(x) < below {
		return 0
	}
	return x
}

// through is, for every branch, whether it goes through one of some things, and where its force comes into the first of them.
type through struct {
	ids     []string // the things
	passes  []bool
	entries []part.Vec // filled when first asked for
}

// through finds which branches go through some things. Many cuts ask for the same things, so answers are kept; nobody changes them.
func (m *model) through(ids []string) *through {
	var room [128]byte
	key := room[:0]
	m.spend(len(ids))
	for _, id := range ids {
		key = append(append(key, id...), 0)
	}
	if known, ok := m.ways[string(key)]; ok {
		return known
	}
	on := &through{ids: slices.Clone(ids), passes: make([]bool, len(m.branches))}
	for i, br := range m.branches {
		m.spend(len(br.Through) * (1 + len(ids)))
		on.passes[i] = slices.ContainsFunc(br.Through, func(name string) bool { return m.isAmong(name, ids) })
	}
	if m.ways == nil {
		m.ways = map[string]*through{}
	}
	m.ways[string(key)] = on
	return on
}

func (m *model) passes(ids ...string) []bool { return m.through(ids).passes }

// isAmong says whether a name on a load's way is one of some things: an angle's name stands for each of its legs, a bent plate's for its main face alone.
func (m *model) isAmong(on string, ids []string) bool {
	for _, id := range ids {
		if rest, ok := strings.CutPrefix(id, on); ok && (rest == "" || rest[0] == '.' && m.b.Plate(on) == nil) {
			return true
		}
	}
	return false
}

// beyond says, of the branches that pass and go through some things, whose force comes into them on the side of a point that a direction
// points away from; in memory that the next call uses again.
func (m *model) beyond(passes []bool, on *through, at, normal part.Vec) []bool {
	if on.entries == nil {
		on.entries = make([]part.Vec, len(m.branches))
		for i, br := range m.branches {
			m.spend(len(br.Through) * (1 + len(on.ids) + len(m.b.Welds) + len(m.b.Bolts) + len(m.b.Contacts)))
			on.entries[i] = m.entry(&m.branches[i], on.ids)
		}
	}
	m.spend(len(passes))
	out := append(m.room.loads[:0], passes...)
	for i := range passes {
		out[i] = passes[i] && on.entries[i].Sub(at).Dot(normal) <= 1e-6
	}
	m.room.loads = out
	return out
}

// entry is where a branch's force comes into the first of the named things on its way: through the middle of the weld, bolts or contact before it, or where the
// branch itself begins.
func (m *model) entry(br *branch, ids []string) part.Vec {
	first := slices.IndexFunc(br.Through, func(on string) bool { return m.isAmong(on, ids) })
	if first > 0 {
		if heel, ok := m.heel(br.Through[first-1], br.Through[first]); ok {
			return heel
		}
	}
	for k := first - 1; k >= 0; k-- {
		id := br.Through[k]
		if w := m.b.Weld(id); w != nil {
			return middleOf(w.Segments)
		}
		if g := m.b.BoltGroup(id); g != nil {
			var sum part.Vec
			for _, p := range g.Points {
				sum = sum.Add(g.Pose.At(p.X, p.Y, 0))
			}
			return sum.Scale(1 / float64(len(g.Points)))
		}
		for i := range m.b.Contacts {
			if c := &m.b.Contacts[i]; c.ID == id {
				mid := c.Patch.Center()
				return c.Pose.At(mid.X, mid.Y, 0)
			}
		}
	}
	return br.At
}

// heel is the middle of the line where two legs of an angle meet, or two sides of a fold; false for things that are not such a pair.
func (m *model) heel(a, b string) (part.Vec, bool) {
	of, _, _ := strings.Cut(a, ".")
	with, _, _ := strings.Cut(b, ".")
	if a == b || of != with {
		return part.Vec{}, false
	}
	if mem := m.b.Member(of); mem != nil && mem.Profile.Kind == part.Angle {
		return mem.Pose.At(mem.LengthMM/2, 0, 0), true
	}
	if p := m.b.Plate(of); p != nil && len(p.Bends) == 1 {
		at := p.Bends[0].A.Lerp(p.Bends[0].B, 0.5)
		return p.Pose.At(at.X, at.Y, 0), true
	}
	return part.Vec{}, false
}

// middleOf is the centroid of weld runs.
func middleOf(runs []part.WeldSegment) part.Vec {
	var sum part.Vec
	length := 0.0
	for _, s := range runs {
		l := s.B.Sub(s.A).Norm()
		sum, length = sum.AddScaled(l/2, s.A.Add(s.B)), length+l
	}
	if length == 0 {
		return runs[0].A
	}
	return sum.Scale(1 / length)
}

// load splits a case into the forces of its branches at one corner. A component with no path is an error; so is one
// that the joint releases.
func (m *model) load(dst []force, c *part.Case, index int, factor float64, corner int) ([]force, error) {
	dst = dst[:0]
	lp := m.loadPoint(c.LoadPoint)
	if lp < 0 {
		return nil, &part.FieldError{Field: fmt.Sprintf("cases[%d].load_point", index), Found: fmt.Sprintf("%q", c.LoadPoint), Accept: "a load point of the bracket"}
	}
	n := len(part.Components())
	for k := range part.Component(n) {
		size := factor * (k.Size(c.Force, c.Moment) + m.clasped(lp, k, c.Force))
		if size == 0 {
			continue
		}
		path := m.paths[lp*n+int(k)]
		if path == nil {
			return nil, m.noPath(c, index, k, lp)
		}
		m.spend(len(path))
		for _, i := range path {
			if one := &m.branches[i].carries[corner]; *one != (carried{}) {
				dst = append(dst, force{i, one.f.Scale(size), one.m.Scale(size), m.branches[i].At})
			}
		}
	}
	return dst, nil
}

func (m *model) noPath(c *part.Case, index int, k part.Component, lp int) error {
	field, found := "force", fmt.Sprintf("no load path for %s of case %q", k, c.Name)
	if k >= part.MxPlus {
		field = "moment"
	}
	if slices.Contains(m.b.LoadPoints[lp].Released, k) {
		found = fmt.Sprintf("the joint lets %s of case %q go", k, c.Name)
	}
	var has []string
	for _, one := range part.Components() {
		if m.paths[lp*len(part.Components())+int(one)] != nil {
			has = append(has, one.String())
		}
	}
	return &part.FieldError{Field: fmt.Sprintf("cases[%d].%s", index, field), Found: found, Accept: "this bracket carries " + strings.Join(has, ", ")}
}

func (m *model) loadPoint(id string) int {
	if id == "" && len(m.b.LoadPoints) == 1 {
		return 0
	}
	return slices.IndexFunc(m.b.LoadPoints, func(l part.LoadPoint) bool { return l.ID == id })
}

// loaded is what comes in beyond some cuts of the forces at hand: they all have the same loads.
type loaded struct {
	loads        []bool
	forces       []force
	f            part.Vec
	mostF, mostM float64
	far          float64 // no force enters farther from the origin
	of           int     // which forces, see run.taken
}

// take puts forces at hand.
func (r *run) take(forces []force) {
	r.forces = forces
	r.taken++
}

// loaded sums the forces at hand that some cuts have in common, once for all of them.
func (r *run) loaded(set int) *loaded {
	on := &r.loadSets[set]
	if on.of == r.taken {
		return on
	}
	r.spend(len(r.forces))
	on.forces, on.f, on.mostF, on.mostM, on.far, on.of = on.forces[:0], part.Vec{}, 0, 0, 0, r.taken
	for i := range r.forces {
		if f := &r.forces[i]; on.loads[f.branch] {
			on.forces = append(on.forces, *f)
			on.f = on.f.Add(f.f)
			on.mostF, on.mostM = max(on.mostF, greatest(f.f)), max(on.mostM, greatest(f.m))
			on.far = max(on.far, taxi(f.at))
		}
	}
	return on
}

// about is the wrench of those forces about a point, before it is settled, and without what their arms add to its greatest component.
func (on *loaded) about(at part.Vec) wrench {
	w := wrench{f: on.f, mostF: on.mostF, mostM: on.mostM}
	for i := range on.forces {
		f := &on.forces[i]
		w.m = w.m.Add(f.m).Add(f.at.Sub(at).Cross(f.f))
	}
	return w
}

// settledAbout settles a wrench of those forces, and what more has been added to it, about a point. Seldom is a component so near to nought that the
// greatest of all arms has to be known, so it is bounded first.
func (on *loaded) settledAbout(w wrench, at part.Vec) wrench {
	below := rounding * (w.mostM + 2*w.mostF*(on.far+taxi(at)))
	if aside(w.f, rounding*w.mostF) && aside(w.m, below) {
		return w
	}
	for i := range on.forces {
		f := &on.forces[i]
		w.mostM = max(w.mostM, greatest(f.at.Sub(at).Cross(f.f)))
	}
	return w.settled()
}

// taxi is the length of a vector along the axes, which no component exceeds.
func taxi(v part.Vec) float64 { return math.Abs(v.X) + math.Abs(v.Y) + math.Abs(v.Z) }

// aside says that no component is near to nought but nought itself.
func aside(v part.Vec, near float64) bool {
	return offNought(v.X, near) && offNought(v.Y, near) && offNought(v.Z, near)
}

func offNought(x, near float64) bool { return math.Abs(x) >= near || x == 0 }

// loadSet finds or makes the set of some loads.
func (m *model) loadSet(loads []bool) int {
	for i := len(m.loadSets) - 1; i >= 0; i-- {
		m.spend(1 + len(loads)/8)
		if slices.Equal(m.loadSets[i].loads, loads) {
			return i
		}
	}
	m.loadSets = append(m.loadSets, loaded{loads: slices.Clone(loads)})
	return len(m.loadSets) - 1
}

// sum gathers the forces of the passing branches about a point.
func sum(forces []force, passing []bool, about part.Vec) wrench {
	var w wrench
	for i := range forces {
		if f := &forces[i]; passing[f.branch] {
			w.plus(f.f, f.m, f.at, about)
		}
	}
	return w.settled()
}

// oneCase runs every corner of one case through every feature. Many a case does not ask for all the shares, and then corners have the same
// forces: all but pins, which have a place of their own at each, would come out the same again.
func (r *run) oneCase(i int, factor float64) error {
	r.inCase = i
	for c := range r.corners {
		r.inCorner = c
		forces, err := r.load(r.cornerForces[c], &r.cases[i], i, factor, c)
		if err != nil {
			return err
		}
		r.take(forces)
		r.cornerForces[c] = forces
		r.spend(1 + (c+len(r.pins)*(2+perRule))*(1+len(forces)))
		if err := r.atPins(); err != nil {
			return err
		}
		if slices.ContainsFunc(r.cornerForces[:c], func(before []force) bool { return slices.Equal(before, forces) }) {
			continue
		}
		for _, at := range [...]func() error{r.atBolts, r.atRods, r.atContacts} {
			if err := at(); err != nil {
				return err
			}
		}
		r.atTrays() // by what the rods bear
		r.atSpreads()
		r.atCuts()
		if err := r.atWelds(); err != nil {
			return err
		}
	}
	return nil
}

// Carried is what reaches one joint, thing or support of a bracket: a force and its moment about At.
type Carried struct {
	Thing         string
	Force, Moment part.Vec
	At            part.Vec
}

// Carry gives what passes through each named thing under one case, loads unfactored, with every share at its low
// extreme (high when high is set). It shows a load path without checking anything.
func Carry(b *part.Bracket, c part.Case, high bool, things ...string) (_ []Carried, err error) {
	defer settleMeter(&err)
	if err := b.Validate(); err != nil {
		return nil, err
	}
	m := &model{meter: newMeter(context.Background(), maxSpent), b: b, room: new(room)}
	m.on = "branches"
	m.layCorners()
	m.compilePins()
	m.layBranches()
	m.layClasps()
	if len(m.bad) > 0 {
		return nil, m.bad
	}
	corner := 0
	if high {
		corner = len(m.corners) - 1
	}
	forces, err := m.load(nil, &c, 0, 1, corner)
	if err != nil {
		return nil, err
	}
	out := make([]Carried, len(things))
	at := m.b.LoadPoints[m.loadPoint(c.LoadPoint)].At
	for i, id := range things {
		w := sum(forces, m.passes(id), at)
		out[i] = Carried{Thing: id, Force: w.f, Moment: w.m, At: at}
	}
	return out, nil
}
