package strength

// Fatigue: stress ranges in welds' throats, at their toes and roots, along them and where they end, at holes and in bolt threads, under a spectrum of load
// changes.

import (
	"fmt"
	"math"
	"slices"

	"lugwright/part"
)

// StressCycle is a change of load that repeats: from one load case to another, so many times. Ranges are taken of the loads as given,
// without load factors.
type StressCycle struct {
	From, To string
	Cycles   float64
}

// MaxSpectrum bounds the entries of a spectrum.
const MaxSpectrum = 100

// fatigue reckons the spectrum at every detail and corner. Ranges come of the difference of two loads, the lug moving along its pin between them as it is worst;
// where bolts have part in it, whose joint opens and closes, of the difference of what each load makes of them.
func (r *run) fatigue(spectrum []StressCycle) error {
	if len(spectrum) == 0 {
		r.skip("fatigue", r.b.Name, "no load spectrum is given")
		return nil
	}
	pairs, err := r.spectrumCases(spectrum)
	if err != nil {
		return err
	}
	if len(r.basis.Rules.Fatigue) == 0 && len(r.basis.Rules.RootFatigue) == 0 {
		r.skip("fatigue", r.b.Name, noRule)
		return nil
	}
	r.layFatigue()
	cycles := make([]float64, len(spectrum))
	for k, s := range spectrum {
		cycles[k] = s.Cycles
	}
	for c := range r.corners {
		r.inCorner = c
		ranges := make([][]float64, len(r.fatigues))
		for i := range ranges {
			ranges[i] = make([]float64, len(spectrum))
		}
		for k, p := range pairs {
			for d := range r.corners {
				if !r.mayWander(c, d) {
					continue
				}
				r.spend(perRule * (len(r.cuts) + len(r.details)))
				change, err := r.changed(p, [2]int{c, d})
				if err != nil {
					return err
				}
				for i := range r.details {
					ranges[i][k] = max(ranges[i][k], r.details[i].stress(change))
				}
			}
		}
		for i := range r.fatigues {
			f := r.details[i].Fatigue
			f.Ranges, f.Cycles = ranges[i], cycles
			r.fatigues[i].consider(r, f, "")
		}
	}
	for _, s := range r.b.Shares {
		if s.Rule == part.Between && s.Lo != s.Hi {
			r.skip("fatigue of a share that changes between two loads", s.ID, "ranges are taken with one share of it for both")
		}
	}
	if len(r.pins) > 0 {
		r.skip("fatigue of the pin", r.b.Name, "no detail category speaks of a round bar that its seats rub")
	}
	r.skip("fatigue at thermally cut holes, and where an edge is rough or nicked", r.b.Name, "holes are taken as drilled or reamed, edges as cut to a roughness of 25 um or better")
	return nil
}

func (r *run) spectrumCases(spectrum []StressCycle) ([][2]int, error) {
	if len(spectrum) > MaxSpectrum {
		return nil, &part.FieldError{Field: "spectrum", Found: fmt.Sprintf("%d entries", len(spectrum)), Accept: fmt.Sprintf("at most %d", MaxSpectrum)}
	}
	out := make([][2]int, len(spectrum))
	for k, s := range spectrum {
		for i, name := range [2]string{s.From, s.To} {
			out[k][i] = slices.IndexFunc(r.cases, func(c part.Case) bool { return c.Name == name })
			if out[k][i] < 0 {
				return nil, &part.FieldError{Field: fmt.Sprintf("spectrum[%d]", k), Found: fmt.Sprintf("%q is not among the load cases", name), Accept: "the name of a load case of this bracket"}
			}
		}
		if !(s.Cycles >= 1 && s.Cycles <= 1e10) {
			return nil, &part.FieldError{Field: fmt.Sprintf("spectrum[%d].cycles", k), Found: fmt.Sprint(s.Cycles), Accept: "1 to 1e10"}
		}
	}
	return out, nil
}

// detail is a place for fatigue without its spectrum, and its range of stress under a change of load.
type detail struct {
	Fatigue
	stress func(c *change) float64
}

// addDetail makes a place for a detail of a thing.
func (r *run) addDetail(f Fatigue, place, thing string, at part.Vec, stress func(c *change) float64) *slots[Fatigue] {
	rules := r.basis.Rules.Fatigue
	if f.Detail == WeldRoot {
		rules = r.basis.Rules.RootFatigue
	}
	slot := newSlots(rules, place+", "+string(f.Detail), thing, "fatigue", at, nil)
	slot.outside = r.strangeWeld(r.basis, r.weldedTo(thing)...)
	r.fatigues, r.details = append(r.fatigues, slot), append(r.details, detail{f, stress})
	return &r.fatigues[len(r.fatigues)-1]
}

// addStretch makes a place for a detail of a sweep's plate, at some of its cuts.
func (r *run) addStretch(f Fatigue, sweep int, cuts []int, flatwise float64) *slots[Fatigue] {
	s := &r.b.Sweeps[sweep]
	return r.addDetail(f, sweepName(s), s.Things[0], s.To, func(c *change) float64 {
		worst := 0.0
		r.spend(len(cuts))
		for _, i := range cuts {
			worst = max(worst, r.stressAt(i, c.sections[i], flatwise))
		}
		return worst
	})
}

// cutsWhere lists the cuts of a sweep at which something holds.
func (r *run) cutsWhere(sweep int, holds func(i int) bool) []int {
	var out []int
	r.spend(len(r.cuts))
	for i := range r.cuts {
		if r.cuts[i].slot == sweep && holds(i) {
			out = append(out, i)
		}
	}
	return out
}

// layFatigue makes a place for each detail.
func (r *run) layFatigue() {
	r.layThroats()
	r.layRoots()
	r.layWebsAndHoles()
	for i := range r.pins {
		p := &r.pins[i]
		for k := range p.seats {
			seat := &p.seats[k]
			id := seat.plate.plate.ID
			r.addDetail(Fatigue{Detail: PinHole}, id, id, p.Center, func(c *change) float64 { return seat.netRange(c.forces, p) })
		}
	}
	for i := range r.groups {
		g := &r.groups[i]
		r.addDetail(Fatigue{Detail: BoltThread}, g.ID, g.ID, g.Pose.Origin, func(c *change) float64 { return c.threads[i] })
	}
	r.layEdges()
	for i := range r.fatigues {
		if len(r.fatigues[i].rules) == 0 {
			r.skip("fatigue: "+string(r.details[i].Detail), r.b.Name, noRule)
			continue
		}
		r.places = append(r.places, &r.fatigues[i])
	}
}

// layThroats makes places for the throats of root welds, of those between webs and plates and of ribs' roots.
func (r *run) layThroats() {
	throat := Fatigue{Detail: WeldThroat}
	for i := range r.rootSets {
		set := &r.rootSets[i]
		if !set.throated() {
			r.skipThroat(set.words)
			if len(set.sweeps) == 0 {
				r.skip("fatigue at the toe of the weld", set.words, "no section is cut there")
			}
			continue
		}
		slot := r.addDetail(throat, set.words, set.thing, set.at, func(c *change) float64 { return c.throats[i] })
		if set.pressed != nil {
			slot.outside = "a face presses on the plate and lifts off it: no range is reckoned here"
		}
	}
	for i := range r.flowSets {
		w := r.flowSets[i].weld
		place := "weld " + w.ID + ", shear flow"
		if w.Kind == part.CJP {
			r.skipThroat(place)
			continue
		}
		r.addDetail(throat, place, w.ID, r.flowSets[i].at, func(c *change) float64 { return c.flows[i] })
	}
	for i := range r.ribRoots {
		s := &r.ribRoots[i]
		if w := r.b.Weld(s.thing); w != nil && w.Kind == part.CJP {
			r.skipThroat(s.place)
			continue
		}
		r.addDetail(throat, s.place, s.thing, s.at, func(c *change) float64 { return c.ribs[i] })
	}
}

// layRoots makes places for toes, ends of welds and weld roots at the roots of sweeps.
func (r *run) layRoots() {
	for i := range r.b.Sweeps {
		d, root := r.rootDetail(i), r.cutsWhere(i, r.isRoot)
		r.addStretch(Fatigue{Detail: d}, i, root, 1)
		if d != WeldToe && d != OneSided {
			continue
		}
		if leg, t := r.rootFillets(i); leg > 0 {
			r.addStretch(Fatigue{Detail: WeldRoot, Leg: leg, T: t}, i, root, flatAtRoot)
		}
	}
}

// layWebsAndHoles makes places for plates along welds and where webs end, then for holes on the way of sweeps.
func (r *run) layWebsAndHoles() {
	for i := range r.b.Sweeps {
		webbed := r.cutsWhere(i, func(k int) bool { return len(r.cuts[k].flows) > 0 })
		if webbed == nil {
			continue
		}
		r.addStretch(Fatigue{Detail: LongWeld}, i, webbed, 1)
		if ends := r.cutsWhere(i, r.atWebEnd); ends != nil {
			r.addStretch(Fatigue{Detail: r.endDetail(i)}, i, ends, 1)
		} else {
			r.skip("fatigue where a web ends", sweepName(&r.b.Sweeps[i]), "no web ends between the load and the root")
		}
	}
	for i := range r.b.Sweeps {
		if holed := r.cutsWhere(i, func(k int) bool { return r.cuts[k].f.Net }); holed != nil {
			r.addStretch(Fatigue{Detail: r.holeDetail(&r.b.Sweeps[i])}, i, holed, 1)
		}
	}
}

// thickEndMM is the thickness over which the end of an attachment is the worse detail: 20 mm (0.8 in), AISC 360-22 Table, rows 3.5 and 7.1.
const thickEndMM = 20

func (r *run) endDetail(sweep int) FatigueDetail {
	for _, c := range r.b.Composites {
		if c.Things[0] != r.b.Sweeps[sweep].Things[0] {
			continue
		}
		for _, id := range c.Things {
			if t := r.thing(id); t != nil && t.plate.ThicknessMM > thickEndMM+1e-6 {
				return ThickEnd
			}
		}
	}
	return WebEnd
}

// thickHeldMM is the thickness over which a plate held by welds along it alone is the worse detail: 1/2 in, AISC 360-22 Table, row 4.1, from memory.
const thickHeldMM = 12.7

// rootDetail is the detail of the plate at the root of a sweep: the toe of a weld across it, or a groove weld from one face alone with its backing left, unless
// the welds there all run along the sweep and end at the root.
func (r *run) rootDetail(sweep int) FatigueDetail {
	s := &r.b.Sweeps[sweep]
	main := s.Things[0]
	normal, thickness := s.To.Sub(s.From).Unit(), func(id string) float64 {
		if t := r.thing(id); t != nil {
			return t.plate.ThicknessMM
		}
		return 0
	}
	across := WeldToe
	if slices.ContainsFunc(r.rootWelds(sweep), func(w *WeldLine) bool { return w.CJP() && !w.BothSides }) {
		across = OneSided
	}
	d := across
	for i := range r.b.Welds {
		w := &r.b.Welds[i]
		if !slices.Contains(w.Joins[:], main) || r.inComposite(w.ID) {
			continue
		}
		for _, run := range w.Segments {
			a, b := run.A.Sub(s.To).Dot(normal), run.B.Sub(s.To).Dot(normal)
			ends := min(math.Abs(a), math.Abs(b)) <= w.LegMM
			along := math.Abs(a-b) > run.B.Sub(run.A).Norm()*math.Sqrt2/2
			switch {
			case !along && (ends || a*b < 0):
				return across
			case !along || !ends || d == ThickWeldsEnd:
			case w.Joins[0] == main && thickness(main) > thickHeldMM, w.Joins[1] == main && max(thickness(w.Joins[0]), thickness(main)) > thickEndMM+1e-6:
				d = ThickWeldsEnd
			default:
				d = WeldsEnd
			}
		}
	}
	return d
}

// rootFillets gives the least leg of the pairs of fillets that hold a sweep's plate at its root, and the plate's thickness; no leg where it has none. Fillets on
// one face are no pair: the code has no detail for a crack from their root.
func (r *run) rootFillets(sweep int) (leg, t float64) {
	s := &r.b.Sweeps[sweep]
	plate := r.thing(s.Things[0])
	if plate == nil {
		return 0, 0
	}
	leg = math.Inf(1)
	why := "the detail is for a pair of fillets on both faces"
	for _, w := range r.rootWelds(sweep) {
		switch {
		case w.CJP():
			why = "complete penetration leaves no root"
		case w.BothSides && w.Kind == string(part.Fillet):
			leg = min(leg, w.Leg)
		}
	}
	if math.IsInf(leg, 1) {
		r.skip("fatigue cracks from the roots of welds", sweepName(s), why)
		return 0, 0
	}
	return leg, plate.plate.ThicknessMM
}

// rootWelds are the welds that hold a sweep's plate at its root.
func (r *run) rootWelds(sweep int) []*WeldLine {
	var out []*WeldLine
	for i := range r.rootSets {
		set := &r.rootSets[i]
		for k := range set.welds {
			if slices.Contains(set.sweeps, sweep) && set.welds[k].standing == r.b.Sweeps[sweep].Things[0] {
				out = append(out, &set.welds[k].WeldLine)
			}
		}
	}
	return out
}

// holeDetail is that of a sweep's sections through holes: plugs in any of them are the worse detail.
func (r *run) holeDetail(s *part.Sweep) FatigueDetail {
	if slices.ContainsFunc(r.b.Welds, func(w part.WeldGroup) bool { return w.Kind == part.Plug && slices.Contains(s.Things, w.Joins[0]) }) {
		r.skip("fatigue beside the plugs of what they lie on", sweepName(s), "no section of it is cut")
		return PlugHole
	}
	return NetSection
}

// throated says whether a set has a throat of its own to crack.
func (s *rootSet) throated() bool {
	return slices.ContainsFunc(s.welds, func(w rootWeld) bool { return w.Throat() > 0 })
}

func (r *run) skipThroat(place string) {
	r.skip("fatigue of the weld metal", place, "the weld goes through the plate, whose detail is its toe")
}

// atWebEnd says whether a cut is beside an end of a web on its plate.
func (r *run) atWebEnd(i int) bool {
	c := &r.cuts[i]
	s := &r.b.Sweeps[c.slot]
	off := func(a, b part.Vec) float64 { return math.Abs(a.Sub(b).Dot(c.normal)) }
	return slices.ContainsFunc(r.b.Composites, func(w part.Composite) bool {
		near := func(end part.Vec) bool {
			return off(end, c.at) < 2*besideMM && off(end, s.To) > 1 // at the root the toe of the root's weld is the detail
		}
		return w.Things[0] == s.Things[0] && (near(w.From) || near(w.To))
	})
}

// mayWander says whether between two loads a bracket may go from one corner to another: lugs move along their pins, what is shared by stiffness stays so.
func (r *run) mayWander(a, b int) bool {
	for i, s := range r.b.Shares {
		if s.Rule != part.ByPinSpan && r.corners[a].value[i] != r.corners[b].value[i] {
			return false
		}
	}
	return true
}

// change is what a change of load brings: the difference of its forces, that of what acts on every section, and ranges of stress in bolts' threads and in
// the throats of root welds, of those between webs and plates and of ribs' roots.
type change struct {
	forces                        []force
	sections                      []wrench
	threads, throats, flows, ribs []float64
}

// changed works out a change of load, from one corner to another.
func (r *run) changed(pair, corners [2]int) (*change, error) {
	from, err := r.load(nil, &r.cases[pair[0]], pair[0], 1, corners[0])
	if err != nil {
		return nil, err
	}
	to, err := r.load(nil, &r.cases[pair[1]], pair[1], 1, corners[1])
	if err != nil {
		return nil, err
	}
	c := &change{forces: slices.Clone(from), throats: make([]float64, len(r.rootSets))}
	for _, f := range to {
		f.f, f.m = f.f.Scale(-1), f.m.Scale(-1)
		c.forces = append(c.forces, f)
	}
	if c.sections, c.threads, err = r.changes(from, to); err != nil {
		return nil, err
	}
	for i := range r.rootSets {
		set := &r.rootSets[i]
		if err := set.take(set.load(c.forces)); err != nil {
			return nil, &part.FieldError{Field: set.field, Found: err.Error(), Accept: "a weld on both sides, or a second run with an arm"}
		}
		for k := range set.welds {
			if t := set.welds[k].Throat(); t > 0 {
				c.throats[i] = max(c.throats[i], set.welds[k].Q/t)
			}
		}
	}
	c.flows, c.ribs = r.jointRanges(c.sections, c.forces)
	return c, nil
}

// jointRanges are the ranges in the throats of the welds between webs and plates, and of those that root a rib, each at its worst cut. A web's force enters
// over at least the web's depth, as a cover plate's over one to two widths (AISC 360-22 F13.3, from memory): nearer to its tip the plate alone
// carries the load.
func (r *run) jointRanges(sections []wrench, change []force) (flows, roots []float64) {
	flows, roots = make([]float64, len(r.flowSets)), make([]float64, len(r.ribRoots))
	r.take(change)
	for i := range r.cuts {
		c := r.cuts[i]
		r.spend(perRule * (1 + len(c.flows)))
		c.flows = slices.DeleteFunc(slices.Clone(c.flows), func(p flowPoint) bool { return p.depth == 0 }) // a web that the section does not meet
		for k := range c.flows {
			c.flows[k].run = max(c.flows[k].run, c.flows[k].depth)
		}
		e := &r.effects[0]
		r.jointsAt(e, &c, sections[i])
		for _, d := range e.flows {
			f := &r.flowSets[d.set].f
			flows[d.set] = max(flows[d.set], d.q/(f.Lines*0.707*f.Leg))
		}
		for _, d := range e.ribs {
			if t := d.line.Throat(); t > 0 {
				roots[d.slot] = max(roots[d.slot], d.line.Q/t)
			}
		}
	}
	return flows, roots
}

// changes gives the change of what acts on every section, and for every bolt group the greatest change of tension of one bolt on its stress
// area. What bolts and contact take does not grow with the load: between two loads that both bend a plate the same way it may be at rest, so that the
// least load of a group on the way from one to the other is looked at too.
func (r *run) changes(from, to []force) (sections []wrench, threads []float64, err error) {
	sections, threads = make([]wrench, len(r.cuts)), make([]float64, len(r.groups))
	ends := [2][]wrench{make([]wrench, len(r.cuts)), make([]wrench, len(r.cuts))}
	tensions := [2][][]float64{make([][]float64, len(r.groups)), make([][]float64, len(r.groups))}
	for turn, forces := range [2][]force{from, to} {
		r.take(forces)
		for i := range r.groups {
			r.spend(2 * (len(forces) + perSolved*len(r.groups[i].pos)))
			if tensions[turn][i], err = r.groups[i].tightened(forces); err != nil {
				return nil, nil, err
			}
		}
		for i := range r.cuts {
			ends[turn][i] = r.beyond(&r.cuts[i], r.cuts[i].group)
		}
	}
	for i := range r.cuts {
		sections[i] = ends[0][i].less(ends[1][i])
	}
	for i := range r.groups {
		g := &r.groups[i]
		widen := func(a, b []float64) {
			for k := range a {
				threads[i] = max(threads[i], g.pried()*math.Abs(a[k]-b[k])/g.area)
			}
		}
		widen(tensions[0][i], tensions[1][i])
		way := g.leastLoad(from, to)
		if way == 0 || way == 1 {
			continue
		}
		r.take(between(from, to, way))
		least, err := g.tightened(r.forces)
		if err != nil {
			return nil, nil, err
		}
		widen(tensions[0][i], least)
		widen(least, tensions[1][i])
		r.spend(len(r.cuts))
		for k := range r.cuts {
			if r.cuts[k].bolts != i {
				continue
			}
			w := r.beyond(&r.cuts[k], r.cuts[k].group)
			for _, end := range ends {
				if d := end[k].less(w); r.stressAt(k, d, 1) > r.stressAt(k, sections[k], 1) {
					sections[k] = d
				}
			}
		}
	}
	return sections, threads, nil
}

// less is the change from another wrench about the same point.
func (w wrench) less(o wrench) wrench {
	w.f, w.m = w.f.Sub(o.f), w.m.Sub(o.m)
	return w
}

// tightened is the tension of every bolt under some forces.
func (g *boltGroup) tightened(forces []force) ([]float64, error) {
	if err := g.solve(forces); err != nil {
		return nil, &part.FieldError{Field: g.field, Found: err.Error(), Accept: "bolts that hold every component of the load"}
	}
	return slices.Clone(g.tensions), nil
}

// leastLoad is how far on the way from one load to another what comes to a group is least, 0 to 1: a couple counts as forces a contact patch's size apart.
func (g *boltGroup) leastLoad(from, to []force) float64 {
	a, b := sum(from, g.passes, g.Pose.Origin), sum(to, g.passes, g.Pose.Origin)
	size := g.Patch.Max.Sub(g.Patch.Min).Norm()
	dot := func(u, v wrench) float64 { return u.f.Dot(v.f)*size*size + u.m.Dot(v.m) }
	way := b.less(a)
	whole := dot(way, way)
	if whole == 0 {
		return 0
	}
	return min(max(-dot(a, way)/whole, 0), 1)
}

// between is a load a part of the way from one to another.
func between(from, to []force, way float64) []force {
	out := make([]force, 0, len(from)+len(to))
	for _, f := range from {
		f.f, f.m = f.f.Scale(1-way), f.m.Scale(1-way)
		out = append(out, f)
	}
	for _, f := range to {
		f.f, f.m = f.f.Scale(way), f.m.Scale(way)
		out = append(out, f)
	}
	return out
}

// pried is how much prying raises the tension of a group's bolts at most, over all that a ply's ends can press: 1 + delta rho/(1 + delta) of the AISC
// Manual, Part 9, with alpha 1. Fatigue counts it: AISC 360-22, from memory.
func (g *boltGroup) pried() float64 {
	most := 1.0
	for _, p := range g.pry {
		if p.B <= p.D/2 || p.P <= p.Dh {
			continue
		}
		delta := 1 - p.Dh/p.P
		rho := (p.B - p.D/2) / (min(p.A, 1.25*p.B) + p.D/2)
		most = max(most, 1+delta*rho/(1+delta))
	}
	return most
}

// flatAtRoot is what a pair of fillets sees of bending out of the plate's plane: an even stress s loads each line with s t/2, such a bending stress s with no more
// than s t/6, a third of it (elementary statics).
const flatAtRoot = 1. / 3

// stressAt is the greatest normal stress on a section, its bending out of plane counted in part.
func (r *run) stressAt(i int, w wrench, flatwise float64) float64 {
	c, worst := &r.cuts[i], 0.0
	cuts := []*Cut{&c.f}
	if plain(&c.f, c, w); len(c.ribs) > 0 {
		cuts = ribbed(nil, c, w)
	}
	for _, f := range cuts {
		worst = max(worst, math.Abs(f.N)/f.Area+flatwise*f.Ma/f.Sa+f.Mb/f.Sb)
	}
	return worst
}

// netRange is the range of the mean stress beside a pin hole.
func (b *bore) netRange(change []force, p *pin) float64 {
	f := sum(change, b.passes, p.Center).f
	return b.part * f.AddScaled(-f.Dot(p.Axis), p.Axis).Norm() / ((b.f.W - b.f.Dh) * b.f.T)
}
