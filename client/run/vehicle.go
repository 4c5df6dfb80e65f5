package run

// This file asks for a job's vehicle: what its mounts bring to the brackets, and all the rest that is asked of it.

import (
	"context"
	"fmt"
	"slices"
	"strings"

	"lugwright/client/job"
	"lugwright/part"
	"lugwright/services/dial"
	"lugwright/units"
	"lugwright/vehicle"
	"lugwright/vehicle/whole"
)

// VehicleOptions ask for more than the job does.
type VehicleOptions struct {
	Moves []vehicle.Move // what if these moved, beside the job's own
	Sweep *whole.Sweep   // one mount moved along the frame
	All   bool           // the rails' diagrams of every case
}

// Vehicle is what comes of a job's vehicle.
type Vehicle struct {
	Job      *job.Job // with the loads of its mounts on the brackets
	Request  *whole.Request
	Answer   *whole.Answer
	Warnings []whole.Warning // the answer's, with what the brackets add; worst first
	Holes    []string        // whose holes were held against the survey
	Open     []string        // what of the brackets was not covered, and why
	Unheld   error           // why brackets have no loads; nil when all that are tied to a mount have
}

// OfVehicle reckons the job's vehicle, with the holes of its brackets. Refused fields come as job.Errors.
func OfVehicle(ctx context.Context, c *dial.Client, j *job.Job, o VehicleOptions) (*Vehicle, error) {
	if j.Vehicle == nil {
		return nil, j.AtRoot("vehicle", "missing", "the section vehicle, with what rides where")
	}
	q := j.Vehicle.Request
	q.Moves, q.Sweep, q.AllStations = append(slices.Clone(q.Moves), o.Moves...), o.Sweep, o.All
	out := &Vehicle{Job: j, Request: &q}
	h, err := holesOf(ctx, c, j, &q)
	if err != nil {
		return nil, err
	}
	out.Holes, out.Open = h.covered, h.open
	if out.Answer, err = reckon(ctx, c, j, &q); err != nil {
		return nil, err
	}
	out.Warnings = WorstFirst(append(h.warnings, out.Answer.Warnings...))
	if j.Tied() {
		loads, err := j.WithLoads(out.Answer)
		if err != nil {
			out.Unheld = err
			return out, nil
		}
		out.Job = loads
	}
	return out, nil
}

// reckon asks the strength service; refused fields come as job.Errors with their places in the file.
func reckon(ctx context.Context, c *dial.Client, j *job.Job, q *whole.Request) (*whole.Answer, error) {
	a, err := c.Vehicle(ctx, q)
	return a, j.LocateVehicle(err)
}

// Loaded is the job with the loads of its mounts and trays on the brackets tied to them, which one check must take, and the answer that they are
// from; nil where no bracket is tied.
func Loaded(ctx context.Context, c *dial.Client, j *job.Job) (*job.Job, *whole.Answer, error) {
	if !j.Tied() {
		return j, nil, nil
	}
	a, err := reckon(ctx, c, j, j.Vehicle.LoadsOnly())
	if err != nil {
		return nil, nil, err
	}
	with, err := j.WithLoads(a)
	if err != nil {
		return nil, nil, err
	}
	return with, a, with.Overloaded()
}

// WorstFirst orders warnings by severity.
func WorstFirst(list []whole.Warning) []whole.Warning {
	slices.SortStableFunc(list, func(a, b whole.Warning) int {
		return slices.Index(whole.Severities(), a.Severity) - slices.Index(whole.Severities(), b.Severity)
	})
	return list
}

// Fails says whether anything fails: an axle over its rating, a gap that is missing, a hole against a rule, a case that nothing holds. What would be
// if things moved is no failure of the vehicle as it is.
func (v *Vehicle) Fails() []whole.Warning {
	var out []whole.Warning
	for _, w := range v.Warnings {
		if w.Severity == whole.Fails && !OfMove(w) {
			out = append(out, w)
		}
	}
	return out
}

// Told are the vehicle's warnings in the units of a system, worst first. What would be if things moved is left out.
func (v *Vehicle) Told(system units.System) []whole.Warning {
	out := slices.DeleteFunc(slices.Clone(v.Warnings), OfMove)
	for i := range out {
		out[i].Words = units.Words(out[i].Words, system)
	}
	return out
}

// Verdict says in a line what of the vehicle fails, or that nothing does. The brackets have verdicts of their own.
func (v *Vehicle) Verdict(system units.System) string {
	n := len(v.Fails())
	if n == 0 {
		return "no rule of weights, frame or room under twist fails"
	}
	first := v.Told(system)[0]
	at := first.At
	if at != "" {
		at += ": "
	}
	return fmt.Sprintf("FAILS in %d of its rules: %s%s", n, at, first.Words)
}

// Extreme is the greatest force in one direction over a list of loads, and the load that it belongs to.
type Extreme struct {
	N    float64 // 0: none that way
	Load *job.Load
}

// Extremes are the greatest forces of a bracket's loads: down, up, to the left, to the right, forward and rearward.
func Extremes(loads []job.Load) [6]Extreme {
	var out [6]Extreme
	for i := range loads {
		l := &loads[i]
		for k, c := range []part.Component{part.FzMinus, part.FzPlus, part.FyPlus, part.FyMinus, part.FxMinus, part.FxPlus} {
			if n := c.Size(l.Force, l.Moment); n > out[k].N {
				out[k] = Extreme{n, l}
			}
		}
	}
	return out
}

// OfMove says whether a warning is about what would be if things moved.
func OfMove(w whole.Warning) bool { return strings.HasPrefix(w.At, "what if, ") }
