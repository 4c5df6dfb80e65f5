package whole

import "lugwright/vehicle"

// weights are the roll-up of every state, the reactions, what if, and as weighed.
func (w *work) weights() {
	q := w.q
	if q.Vehicle == nil {
		return
	}
	var ok bool
	if w.a.Report, ok = w.report(q.Vehicle, false); !ok {
		return
	}
	if len(q.Moves) > 0 {
		moved, err := q.Vehicle.With(q.Moves...)
		w.put(err, nil)
		if err == nil {
			if r, ok := w.report(moved, true); ok {
				w.a.Moved = &r
			}
		}
	}
	if r := q.Reading; r != nil && w.state(r.State) >= 0 {
		got, err := vehicle.Reconcile(q.Vehicle, q.States[w.state(r.State)], r.Reading)
		w.put(err, nil)
		w.a.AsWeighed = &got
	}
}

func (w *work) report(v *vehicle.Vehicle, noLoads bool) (vehicle.Report, bool) {
	var r vehicle.Report
	var err error
	if len(w.q.Bodies) > 0 {
		job := &vehicle.Job{Vehicle: *v, Bodies: w.q.Bodies, States: w.q.States, Cases: w.q.Cases, NoLoads: noLoads}
		if w.q.Frame != nil && !noLoads {
			w.shares = map[shareKey][]vehicle.Shared{}
			job.Shared = func(body int, s vehicle.Shared) {
				key := shareKey{body, s.State, s.Case}
				w.shares[key] = append(w.shares[key], s)
			}
		}
		r, err = vehicle.AnalyseContext(w.ctx, job)
	} else {
		r.Weights, err = vehicle.RollUp(v, w.q.States)
	}
	w.put(err, nil)
	return r, err == nil
}
