package whole

import (
	"fmt"
	"math"
	"slices"

	"lugwright/vehicle"
	"lugwright/vehicle/field"
	"lugwright/vehicle/frame"
)

// Bounds of a sweep: places, and places times states times cases.
const (
	MaxSweep     = 200
	maxSweepWork = 20000
)

func (w *work) checkSweep(bad *field.Errors) {
	s := w.q.Sweep
	if s == nil || len(w.q.Bodies) == 0 {
		return
	}
	w.mount(bad, "sweep", s.Body, s.Mount)
	if !bad.Count("sweep.x_mm", len(s.XMM), 1, MaxSweep) {
		return
	}
	for i, x := range s.XMM {
		bad.Place(fmt.Sprintf("sweep.x_mm[%d]", i), x)
	}
	if n := len(s.XMM) * len(w.q.States) * len(w.q.Cases); n > maxSweepWork {
		bad.Refuse("sweep.x_mm", fmt.Sprintf("%d places, %d states, %d cases", len(s.XMM), len(w.q.States), len(w.q.Cases)),
			fmt.Sprintf("at most %d in all: fewer places, states or cases", maxSweepWork))
	}
}

// sweep finds the reactions again with the mount in each place, and bends the frame under them.
func (w *work) sweep() {
	q := w.q
	b, m, _ := w.mount(&field.Errors{}, "sweep", q.Sweep.Body, q.Sweep.Mount)
	bodies, results := slices.Clone(q.Bodies), slices.Clone(w.a.Report.Bodies)
	bodies[b].Mounts = slices.Clone(bodies[b].Mounts)
	for i, x := range q.Sweep.XMM {
		at := fmt.Sprintf("sweep.x_mm[%d]", i)
		bodies[b].Mounts[m].At.X = x
		got, err := vehicle.React(w.ctx, q.Vehicle, &bodies[b], q.States, q.Cases)
		if err != nil {
			w.put(err, func(string) string { return at })
			return
		}
		results[b] = got
		row := SweepRow{XMM: x, Mounts: Worst(&got)}
		for k := range got.Cases {
			if c := &got.Cases[k]; !c.Held {
				row.Unheld = append(row.Unheld, c.Case+", "+c.State+": "+c.Unheld)
			}
		}
		if cases, _ := w.sweptCases(results, bodies); len(cases) > 0 {
			rows, err := frame.Sweep(*q.Frame, []frame.Position{{XMM: x, Cases: cases}})
			if err != nil {
				w.put(err, func(string) string { return at })
				return
			}
			row.Governing, row.Warnings = rows[0].Governing, rows[0].Warnings
		}
		w.a.Sweep = append(w.a.Sweep, row)
	}
}

func (w *work) sweptCases(results []vehicle.Result, bodies []vehicle.Body) ([]frame.Case, []string) {
	if w.q.Frame == nil {
		return nil, nil
	}
	return w.frameCases(results, bodies, w.a.Frame.Stands)
}

// Worst is the most that each mount of a body sees, by stiffness, over all states and cases.
func Worst(r *vehicle.Result) []MountRange {
	var out []MountRange
	for i := range r.Cases {
		c := &r.Cases[i]
		for k := range c.Reactions {
			m := &c.Reactions[k]
			if k == len(out) {
				out = append(out, MountRange{Mount: m.Mount, DownN: math.Inf(-1)})
			}
			o := &out[k]
			if z := m.Force.Z; z > o.DownN {
				o.DownN, o.DownState, o.DownCase = z, c.State, c.Case
			}
			if z := -m.Force.Z; z > o.UpN {
				o.UpN, o.UpState, o.UpCase = z, c.State, c.Case
			}
			o.SideN, o.ForeAftN = max(o.SideN, math.Abs(m.Force.Y)), max(o.ForeAftN, math.Abs(m.Force.X))
		}
	}
	return out
}
