package strength

// Fatigue: stress ranges at weld roots, weld toes and bolt threads under a spectrum of load changes.

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

// fatigue reckons the spectrum at every detail and corner. Ranges come of the difference of two loads at one load share; for bolts,
// whose joint opens, of the difference of two tensions.
func (r *run) fatigue(spectrum []StressCycle) error {
	if len(spectrum) == 0 {
		r.skip("fatigue", r.b.Name, "no load spectrum is given")
		return nil
	}
	pairs, err := r.spectrumCases(spectrum)
	if err != nil {
		return err
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
			if err := r.stressRanges(p, c, k, ranges); err != nil {
				return err
			}
		}
		for i := range r.fatigues {
			r.fatigues[i].consider(r, Fatigue{Detail: r.details[i], Ranges: ranges[i], Cycles: cycles}, "")
		}
	}
	r.skip("fatigue at holes, cut edges and in the pin", r.b.Name, "only weld throats, weld toes and bolt threads are covered")
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

// layFatigue makes a place for each detail: throats of root welds, toes at the roots of sweeps, threads of bolt groups, in that order.
func (r *run) layFatigue() {
	n := len(r.rootSets) + len(r.b.Sweeps) + len(r.groups)
	r.fatigues, r.details = make([]slots[Fatigue], 0, n), make([]FatigueDetail, 0, n)
	add := func(d FatigueDetail, place, thing string, at part.Vec) {
		r.fatigues = append(r.fatigues, newSlots(r.basis.Rules.Fatigue, place+", "+string(d), thing, "fatigue", at, nil))
		r.details = append(r.details, d)
	}
	for i := range r.rootSets {
		add(WeldThroat, r.rootSets[i].words, r.rootSets[i].thing, r.rootSets[i].at)
	}
	for i := range r.b.Sweeps {
		s := &r.b.Sweeps[i]
		add(WeldToe, sweepName(s), s.Things[0], s.To)
	}
	for i := range r.groups {
		add(BoltThread, r.groups[i].ID, r.groups[i].ID, r.groups[i].Pose.Origin)
	}
	for i := range r.fatigues {
		r.places = append(r.places, &r.fatigues[i])
	}
}

// stressRanges fills entry k of every detail's ranges for one change of load.
func (r *run) stressRanges(pair [2]int, corner, k int, ranges [][]float64) error {
	from, err := r.load(nil, &r.cases[pair[0]], pair[0], 1, corner)
	if err != nil {
		return err
	}
	to, err := r.load(nil, &r.cases[pair[1]], pair[1], 1, corner)
	if err != nil {
		return err
	}
	change := slices.Clone(from)
	for _, f := range to {
		f.f, f.m = f.f.Scale(-1), f.m.Scale(-1)
		change = append(change, f)
	}
	r.forces = change
	i := 0
	for s := range r.rootSets {
		set := &r.rootSets[s]
		if err := set.take(set.load(change)); err != nil {
			return &part.FieldError{Field: set.field, Found: err.Error(), Accept: "a weld on both sides, or a second run with an arm"}
		}
		for _, w := range set.welds {
			ranges[i][k] = max(ranges[i][k], w.Q/(0.707*w.Leg))
		}
		i++
	}
	for s := range r.b.Sweeps {
		ranges[i][k] = r.toeRange(s)
		i++
	}
	for g := range r.groups {
		v, err := r.threadRange(g, from, to)
		if err != nil {
			return err
		}
		ranges[i][k] = v
		i++
	}
	return nil
}

// toeRange is the range of normal stress at the root of a sweep, each part at its largest; bolts of the sweep are left out, which
// gives more.
func (r *run) toeRange(sweep int) float64 {
	worst := 0.0
	for i := range r.cuts {
		c := &r.cuts[i]
		if c.slot != sweep || i+1 < len(r.cuts) && r.cuts[i+1].slot == sweep {
			continue
		}
		bolts := c.bolts
		c.bolts = -1
		cuts := []Cut{r.plain(c)}
		if len(c.ribs) > 0 {
			cuts = r.ribbed(nil, c)
		}
		c.bolts = bolts
		for _, f := range cuts {
			worst = max(worst, math.Abs(f.N)/f.Area+f.Ma/f.Sa+f.Mb/f.Sb)
		}
	}
	return worst
}

// threadRange is the greatest change of tension of one bolt, on its stress area.
func (r *run) threadRange(group int, from, to []force) (float64, error) {
	g := &r.groups[group]
	if err := g.solve(from); err != nil {
		return 0, &part.FieldError{Field: g.field, Found: err.Error(), Accept: "bolts that hold every component of the load"}
	}
	before := slices.Clone(g.tensions)
	if err := g.solve(to); err != nil {
		return 0, &part.FieldError{Field: g.field, Found: err.Error(), Accept: "bolts that hold every component of the load"}
	}
	worst := 0.0
	for b := range before {
		worst = max(worst, math.Abs(before[b]-g.tensions[b]))
	}
	return worst / g.area, nil
}
