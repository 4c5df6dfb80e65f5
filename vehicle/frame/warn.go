package frame

import (
	"fmt"
	"math"
	"slices"
)

// Warning is a place or a result to look at, in words.
type Warning struct {
	Kind  string // "mid-span", "behind cab", "overhang", "spring hanger", "over a spread body", "over yield", "axle lifts", "twist"
	Mount string // where it is about one
	XMM   float64
	Words string
}

// What counts as near, in rail depths, and as mid-span, as parts of the wheelbase: our choice; the zones themselves are common practice, no source.
const (
	cabReach    = 2.0
	hangerReach = 1.0
	midFrom     = 1.0 / 3
	midTo       = 2.0 / 3
)

func (f *rails) warn(cases []Case, r *Result) []Warning {
	var out []Warning
	put := func(kind, mount string, x float64, format string, args ...any) {
		w := Warning{kind, mount, x, fmt.Sprintf(format, args...)}
		if !slices.ContainsFunc(out, func(o Warning) bool { return o.Kind == kind && o.Mount == mount && o.XMM == x }) {
			out = append(out, w)
		}
	}
	for i := range cases {
		for k := range cases[i].Loads {
			f.warnPlace(&cases[i].Loads[k], put)
		}
	}
	f.warnResults(r, put)
	return out
}

func (f *rails) warnPlace(l *Load, put func(kind, mount string, x float64, format string, args ...any)) {
	x, front, rear := l.At.X, f.Axles[0].XMM, f.Axles[1].XMM
	if at := (x - front) / (rear - front); at > midFrom && at < midTo {
		put("mid-span", l.Mount, x, "mount %s stands at %.0f %% of the wheelbase, in its middle third, where a point load bends the rails most (common practice, no source)", l.Mount, 100*at)
	}
	if x > rear || x < front {
		put("overhang", l.Mount, x, "mount %s hangs on the overhang, %.0f mm beyond the axle (common practice, no source)", l.Mount, max(x-rear, front-x))
	}
	if c := f.CabBackMM; c != nil && x >= *c && x-*c < cabReach*f.Rail.DepthMM {
		put("behind cab", l.Mount, x, "mount %s stands %.0f mm behind the cab, within %.0f rail depths, where frames are known to crack (common practice, no source; the distance is our choice)", l.Mount, x-*c, cabReach)
	}
	for _, a := range f.Axles {
		for _, h := range a.HangersMM {
			if d := math.Abs(x - h); d < hangerReach*f.Rail.DepthMM {
				put("spring hanger", l.Mount, x, "mount %s stands %.0f mm from a spring hanger of the %s (common practice, no source; the distance is our choice)", l.Mount, d, a.Name)
			}
		}
	}
}

func (f *rails) warnResults(r *Result, put func(kind, mount string, x float64, format string, args ...any)) {
	worst := 0
	for i := range r.Cases {
		c := &r.Cases[i]
		if c.OverSpread > r.Cases[worst].OverSpread {
			worst = i
		}
		for _, t := range c.Twists {
			if math.Abs(t.MomentNMM) > 1 && t.CrossMember == "" {
				put("twist", t.Mount, t.XMM, "mount %s twists the %s rail, %.0f mm beside its shear centre and %.0f mm above its middle: %s", t.Mount, t.Rail, t.SideMM, t.HeightMM, t.Words)
			}
		}
	}
	if c := &r.Cases[worst]; c.OverSpread > 1 {
		p := c.Mean.Worst
		put("over a spread body", "", p.XMM, "point mounts bend the rails %.2f times as much as the same body spread along them: %.0f against %.0f MPa (%s, %s)",
			c.OverSpread, math.Abs(p.StressMPa), math.Abs(c.Spread.Worst.StressMPa), c.State, c.Case)
	}
	f.warnSteel(r, put)
}

func (f *rails) warnSteel(r *Result, put func(kind, mount string, x float64, format string, args ...any)) {
	for _, g := range r.Governing[:2] {
		if f.YieldMPa > 0 && math.Abs(g.StressMPa) > f.YieldMPa {
			put("over yield", "", g.XMM, "the %s rail is bent to %.0f MPa, over its yield of %.0f (%s, %s)", g.Rail, math.Abs(g.StressMPa), f.YieldMPa, g.State, g.Case)
		}
	}
	for i := range r.Cases {
		c := &r.Cases[i]
		lift := f.lifting(c.Mean.Supports)
		if lift >= 0 {
			put("axle lifts", "", f.Axles[lift].XMM, "the %s would have to pull the frame down while the other carries it (%s, %s)", f.Axles[lift].Name, c.State, c.Case)
		}
	}
}

// lifting is the axle whose force is against the other's and down, or -1.
func (f *Frame) lifting(s []Reaction) int {
	up := [2]float64{}
	k := 0
	for i, a := range f.Axles {
		for range max(1, len(a.HangersMM)) {
			up[i] += s[k].UpN
			k++
		}
	}
	switch {
	case up[0] < 0 && up[1] > 0:
		return 0
	case up[1] < 0 && up[0] > 0:
		return 1
	}
	return -1
}
