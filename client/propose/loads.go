package propose

// This file chooses under which loads a search looks first. Of the loads on a bracket few decide, and a check costs much the same for each. What does not hold
// under some of them does not hold under all: so most of what fails is found to fail at a small cost, and what holds under the few is then checked under all.

import (
	"slices"

	"lugwright/client/job"
	"lugwright/client/sweep"
)

// deciding are the loads under which failures were found.
type deciding struct {
	all     *job.Bracket // under all its loads
	names   []string
	fatigue bool           // the spectrum too, with its loads
	rest    bool           // every load: what failed is not of single ones
	grown   int            // how often there were more of them
	hits    map[string]int // how often each was the worst
}

// grow adds the loads under which a row is not as wanted; where there are none new, every load.
func (d *deciding) grow(r *sweep.Row) {
	if d.rest {
		return
	}
	d.grown++
	defer d.complete()
	before := len(d.names)
	for _, name := range r.Over {
		if name != "" && !slices.Contains(d.names, name) {
			d.names = append(d.names, name)
		}
	}
	if len(d.names) > before {
		return
	}
	if slices.Contains(r.Over, "") && len(d.all.Spectrum) > 0 && !d.fatigue {
		d.fatigue = true
		return
	}
	d.rest = true
}

// begin takes the loads that decide a first row.
func (d *deciding) begin(r *sweep.Row) {
	if r.Outcome == sweep.Passes && r.Governs.Case != "" {
		d.grown, d.names = d.grown+1, append(d.names, r.Governs.Case)
		d.complete()
		return
	}
	d.grow(r)
}

// complete notices that nothing is left out.
func (d *deciding) complete() {
	d.rest = d.rest || len(d.bracket().Loads) == len(d.all.Loads) && (d.fatigue || len(d.all.Spectrum) == 0)
}

// has says whether a load is among those that decide.
func (d *deciding) has(l job.Load) bool {
	name := l.Name()
	if d.rest || slices.Contains(d.names, name) {
		return true
	}
	for _, c := range d.all.Spectrum {
		if d.fatigue && (c.From == name || c.To == name) {
			return true
		}
	}
	return false
}

// bracket is the bracket under those loads alone.
func (d *deciding) bracket() *job.Bracket {
	if d.rest {
		return d.all
	}
	few := *d.all
	if !d.fatigue {
		few.Spectrum = nil
	}
	few.Loads = slices.DeleteFunc(slices.Clone(d.all.Loads), func(l job.Load) bool { return !d.has(l) })
	return &few
}

// note counts which load is the worst of a row.
func (d *deciding) note(r *sweep.Row) {
	if len(r.Over) > 0 && r.Over[0] != "" {
		d.hits[r.Over[0]]++
	}
}

// worst is the bracket under the one of them that was the worst most often; nil where there is but one.
func (d *deciding) worst() *job.Bracket {
	all := d.bracket().Loads
	if len(all) < 2 {
		return nil
	}
	first := all[0]
	for _, l := range all {
		if d.hits[l.Name()] > d.hits[first.Name()] {
			first = l
		}
	}
	one := *d.all
	one.Spectrum, one.Loads = nil, []job.Load{first}
	return &one
}

// cases names them.
func (d *deciding) cases() []string {
	var out []string
	for _, l := range d.bracket().Loads {
		out = append(out, l.Name())
	}
	return out
}
