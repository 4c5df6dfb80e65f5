package whole

import (
	"context"
	"fmt"
	"slices"

	"lugwright/part"
	"lugwright/vehicle"
	"lugwright/vehicle/field"
)

// Reckon does the whole request. The error is part.FieldErrors: all that could be found without what it refuses.
func Reckon(q *Request) (*Answer, error) { return ReckonContext(context.Background(), q) }

// ReckonContext is Reckon until the context ends, whose error is then returned.
func ReckonContext(ctx context.Context, q *Request) (*Answer, error) {
	w := &work{ctx: ctx, q: q, a: &Answer{}}
	for _, do := range []func(){w.checkNames, w.weights, w.frame, w.drilling, w.clearance, w.lift, w.trays, w.rules} {
		if do(); ctx.Err() != nil {
			return nil, ctx.Err()
		}
	}
	if len(w.bad) > 0 {
		return nil, w.bad
	}
	w.a.Warnings = w.warnings()
	w.a.Unchecked = w.unchecked()
	return w.a, nil
}

// work is one request on its way.
type work struct {
	ctx context.Context
	q   *Request
	a   *Answer
	bad part.FieldErrors

	shares map[shareKey][]vehicle.Shared // for the frame: what the mounts may take in other ways
}

// shareKey is one body in one state and case.
type shareKey struct {
	body        int
	state, name string
}

const maxRefused = 50

// put notes what a package refused, with its paths turned into the request's.
func (w *work) put(err error, path func(string) string) {
	for _, f := range part.Fields(err) {
		named := *f
		if path != nil {
			named.Field = path(f.Field)
		}
		known := slices.ContainsFunc(w.bad, func(o *part.FieldError) bool { return *o == named })
		if !known && len(w.bad) < maxRefused {
			w.bad = append(w.bad, &named)
		}
	}
	if err != nil && len(part.Fields(err)) == 0 {
		w.put(&part.FieldError{Field: "request", Found: err.Error(), Accept: "numbers that can be reckoned with"}, path)
	}
}

// checkNames holds what this package itself reads: who is meant, and that a vehicle is there where one is needed.
func (w *work) checkNames() {
	var bad field.Errors
	q := w.q
	if q.Vehicle == nil {
		for _, s := range []struct {
			path  string
			asked bool
		}{{"bodies", len(q.Bodies) > 0}, {"states", len(q.States) > 0}, {"moves", len(q.Moves) > 0}, {"reading", q.Reading != nil}, {"frame", q.Frame != nil}, {"lift", q.Lift != nil}} {
			if s.asked {
				bad.Refuse("vehicle", "none, with "+s.path, "the vehicle that "+s.path+" needs")
				break
			}
		}
		bad.Unique("cases", min(len(q.Cases), field.MaxCount), func(i int) string { return q.Cases[i].ID }, ".id")
	}
	if len(q.Bodies) == 0 {
		switch {
		case q.Frame != nil:
			bad.Refuse("bodies", "none", "a body on mounts, whose forces bend the frame")
		case q.Sweep != nil:
			bad.Refuse("bodies", "none", "a body, one of whose mounts is moved")
		}
	}
	if bad.Count("stands", len(q.Stands), 0, field.MaxCount) {
		w.checkStands(&bad)
	}
	w.checkSweep(&bad)
	w.checkTrays(&bad)
	if r := q.Reading; r != nil && w.state(r.State) < 0 {
		bad.Refuse("reading.state", fmt.Sprintf("no state %.40q", r.State), "the name of a state"+part.Nearest(r.State, w.stateNames()))
	}
	w.put(bad.Err(), nil)
}

func (w *work) state(name string) int {
	return slices.IndexFunc(w.q.States, func(s vehicle.State) bool { return s.Name == name })
}

func (w *work) stateNames() []string {
	var out []string
	for i := range w.q.States {
		out = append(out, w.q.States[i].Name)
	}
	return out
}

func carrier(body string) string {
	if body == "" {
		return vehicle.MainBody
	}
	return body
}

// body finds a body by name, -1 where there is none.
func (w *work) body(name string) int {
	return slices.IndexFunc(w.q.Bodies, func(b vehicle.Body) bool { return carrier(b.Name) == carrier(name) })
}

// mount finds a mount by its body's name and its own, and refuses what is not there.
func (w *work) mount(bad *field.Errors, path, body, mount string) (b, m int, ok bool) {
	if b = w.body(body); b < 0 {
		var names []string
		for i := range w.q.Bodies {
			names = append(names, carrier(w.q.Bodies[i].Name))
		}
		bad.Refuse(path+".body", fmt.Sprintf("no body %.40q has mounts", carrier(body)), "the name of a body with mounts"+part.Nearest(body, names))
		return 0, 0, false
	}
	mounts := w.q.Bodies[b].Mounts
	if m = slices.IndexFunc(mounts, func(o vehicle.Mount) bool { return o.Name == mount }); m < 0 {
		var names []string
		for i := range mounts {
			names = append(names, mounts[i].Name)
		}
		bad.Refuse(path+".mount", fmt.Sprintf("no mount %.40q", mount), "the name of a mount of "+carrier(body)+part.Nearest(mount, names))
		return 0, 0, false
	}
	return b, m, true
}
