package whole

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"lugwright/part"
	"lugwright/vehicle"
	"lugwright/vehicle/field"
	"lugwright/vehicle/frame"
)

func (w *work) checkStands(bad *field.Errors) {
	seen := map[string]bool{}
	for i, s := range w.q.Stands {
		at := fmt.Sprintf("stands[%d]", i)
		if w.q.Frame == nil {
			bad.Refuse(at, "without a frame", "the frame that the mounts stand on, or no stands")
			return
		}
		b, m, ok := w.mount(bad, at, s.Body, s.Mount)
		if key := carrier(s.Body) + "\x00" + s.Mount; ok && seen[key] {
			bad.Refuse(at+".mount", fmt.Sprintf("%q stands twice", s.Mount), "each mount once")
		} else {
			seen[key] = true
		}
		if s.Rail != frame.Left && s.Rail != frame.Right && s.Rail != frame.Both {
			bad.Refuse(at+".rail", fmt.Sprintf("%.20q", string(s.Rail)), "left, right or both")
		}
		if s.Tube == "" {
			continue
		}
		var names []string
		for _, t := range w.q.Frame.Tubes {
			names = append(names, t.Name)
		}
		switch {
		case !slices.Contains(names, s.Tube):
			bad.Refuse(at+".tube", fmt.Sprintf("%.40q", s.Tube), "a tube of the frame"+part.Nearest(s.Tube, names))
		case s.Rail != frame.Both:
			bad.Refuse(at+".tube", fmt.Sprintf("%.40q for a mount on one rail", s.Tube), "none, or both as the rail")
		case ok:
			t := &w.q.Frame.Tubes[slices.Index(names, s.Tube)]
			if x := w.q.Bodies[b].Mounts[m].At.X; math.Abs(x-t.XMM) > t.DiaMM {
				bad.Refuse(at+".tube", fmt.Sprintf("%.40q at x %.4g mm under a mount at x %.4g mm", s.Tube, t.XMM, x), fmt.Sprintf("a tube within its own diameter, %.4g mm, of the mount", t.DiaMM))
			}
		}
	}
}

// frame bends the frame under the reactions, and moves the swept mount.
func (w *work) frame() {
	f := w.q.Frame
	var err error
	if f != nil {
		err = f.Check()
		w.put(err, nil)
	}
	if len(w.bad) > 0 {
		return // without reactions there are no forces
	}
	if f != nil {
		w.bend()
	}
	if len(w.bad) == 0 && w.q.Sweep != nil {
		w.sweep()
	}
}

func (w *work) bend() {
	out := &Frame{}
	out.Stands, out.ByPlace = w.stands()
	cases, missing := w.frameCases(w.a.Report.Bodies, w.q.Bodies, out.Stands)
	for i := range cases {
		w.addShares(&cases[i])
	}
	out.NoForces = missing
	if len(cases) == 0 {
		out.Unchecked = append(out.Unchecked, "the frame's bending: no state and case has reactions")
		w.a.Frame = out
		return
	}
	got, err := frame.Bend(*w.q.Frame, cases)
	if err != nil {
		w.put(err, w.loadPath(out.Stands))
		return
	}
	out.Result = *got
	out.Unchecked = append(out.Unchecked, w.besideBending()...)
	if !w.q.AllStations {
		out.WithoutStations = dropStations(&out.Result)
	}
	w.a.Frame = out
}

// loadPath names a refused force by the mount that it comes from: a place on a tube is a mount's place.
func (w *work) loadPath(stands []Stand) func(string) string {
	return func(path string) string {
		var c, l int
		if n, _ := fmt.Sscanf(path, "cases[%d].loads[%d]", &c, &l); n == 2 && l < len(stands) {
			b, m, _ := w.mount(&field.Errors{}, "", stands[l].Body, stands[l].Mount)
			_, rest, _ := strings.Cut(path, "].loads")
			_, rest, _ = strings.Cut(rest, "]")
			return fmt.Sprintf("bodies[%d].mounts[%d]%s", b, m, rest)
		}
		return path
	}
}

// stands are every mount's, body by body, with words for those that are taken by their place.
func (w *work) stands() (out []Stand, byPlace []string) {
	for i := range w.q.Bodies {
		b := &w.q.Bodies[i]
		for k := range b.Mounts {
			m := &b.Mounts[k]
			at := slices.IndexFunc(w.q.Stands, func(s Stand) bool { return carrier(s.Body) == carrier(b.Name) && s.Mount == m.Name })
			if at >= 0 {
				s := w.q.Stands[at]
				s.Body = carrier(s.Body)
				out = append(out, s)
				continue
			}
			s := Stand{Body: carrier(b.Name), Mount: m.Name, Rail: frame.Both}
			where := "between the rails"
			if math.Abs(m.At.Y) > w.q.Frame.WebYMM/2 {
				if s.Rail = frame.Left; m.At.Y < 0 {
					s.Rail = frame.Right
				}
				where = "on the " + string(s.Rail) + " rail"
			}
			out = append(out, s)
			byPlace = append(byPlace, fmt.Sprintf("mount %s of %s is taken to stand %s, by its place", m.Name, s.Body, where))
		}
	}
	return out, byPlace
}

// frameCases are the forces on the frame, minus the reactions, of every state and case that all bodies have reactions in. The results hold states in
// order with cases in order within each.
func (w *work) frameCases(results []vehicle.Result, bodies []vehicle.Body, stands []Stand) (out []frame.Case, missing []string) {
	for s := range w.q.States {
		for k := range w.q.Cases {
			at := s*len(w.q.Cases) + k
			c := frame.Case{State: w.q.States[s].Name, Name: w.q.Cases[k].ID, Level: w.q.Cases[k].Level, VerticalG: w.q.Cases[k].AccelG.Z}
			held, n := true, 0
			for b := range results {
				r := &results[b].Cases[at]
				held = held && r.Held
				for m := range bodies[b].Mounts {
					if len(r.Reactions) > 0 {
						c.Loads = append(c.Loads, frame.Load{Mount: stands[n].Mount, On: stands[n].Rail, Tube: stands[n].Tube,
							At: bodies[b].Mounts[m].At, Force: part.Vec{}.Sub(r.Reactions[m].Force)})
					}
					n++
				}
			}
			if !held || len(c.Loads) == 0 {
				missing = append(missing, c.Name+", "+c.State)
				continue
			}
			out = append(out, c)
		}
	}
	return out, missing
}

// addShares gives a case the other ways in which each body's mounts may share, the other bodies' by stiffness.
func (w *work) addShares(c *frame.Case) {
	first := 0
	for b := range w.q.Bodies {
		mounts := len(w.q.Bodies[b].Mounts)
		r := &w.a.Report.Bodies[b].Cases[w.place(c)]
		if len(r.Reactions) == 0 {
			continue // none of its mounts is among the loads
		}
		for _, s := range w.shares[shareKey{b, c.State, c.Name}] {
			way := frame.Share{Name: s.Share}
			if len(w.q.Bodies) > 1 {
				way.Name = carrier(w.q.Bodies[b].Name) + ": " + s.Share
			}
			for k := range c.Loads {
				way.Forces = append(way.Forces, c.Loads[k].Force)
			}
			copy(way.Forces[first:first+mounts], s.Forces)
			c.Shares = append(c.Shares, way)
		}
		first += mounts
	}
}

// place is where a case of the frame stands among a body's.
func (w *work) place(c *frame.Case) int {
	k := slices.IndexFunc(w.q.Cases, func(o vehicle.Case) bool { return o.ID == c.Name })
	return w.state(c.State)*len(w.q.Cases) + k
}

// besideBending is what the mounts and the chassis bring to the frame that no force in the cases is.
func (w *work) besideBending() []string {
	var out []string
	var chassis []string
	v := w.q.Vehicle
	for i := range v.Items {
		if v.Items[i].RidesOn == vehicle.Chassis {
			chassis = append(chassis, v.Items[i].Name)
		}
	}
	for i := range v.Tanks {
		if v.Tanks[i].RidesOn == vehicle.Chassis {
			chassis = append(chassis, v.Tanks[i].Name)
		}
	}
	if len(chassis) > 0 {
		out = append(out, "what rides on the chassis bends the rails too, and is not in these numbers unless it is among the frame's own masses: "+strings.Join(chassis, ", "))
	}
	turns, slack, sharing := false, false, 0
	for i := range w.q.Bodies {
		for k := range w.q.Bodies[i].Mounts {
			m := &w.q.Bodies[i].Mounts[k]
			turns = turns || m.RX.Held || m.RY.Held || m.RZ.Held
		}
		scheme := &w.a.Report.Bodies[i].Scheme
		if len(scheme.Sharing) > 0 {
			sharing++
		}
		beyond := scheme.Surplus
		for _, s := range scheme.Sharing {
			beyond -= len(s.Mounts) - 1
		}
		slack = slack || beyond > 0
	}
	if turns {
		out = append(out, "the couples of mounts that hold turning")
	}
	if slack {
		out = append(out, "mounts that bear more than equilibrium needs: the frame has them by stiffness, not with one of them slack")
	}
	if sharing > 1 {
		out = append(out, "two bodies' ways of sharing together: the frame has each body's in turn, with the others' by stiffness")
	}
	if sharing > 0 && w.q.Sweep != nil {
		out = append(out, "the ways of sharing with a mount moved: the frame has each mount's share by stiffness there")
	}
	return out
}

// dropStations leaves the stations of the cases that govern a rail alone, and says how many others lost theirs.
func dropStations(r *frame.Result) int {
	dropped := 0
	for i := range r.Cases {
		c := &r.Cases[i]
		if slices.ContainsFunc(r.Governing, func(g frame.Governing) bool { return g.State == c.State && g.Case == c.Case }) {
			continue
		}
		dropped++
		c.Left.Stations, c.Right.Stations, c.Mean.Stations = nil, nil, nil
		if c.Spread != nil {
			c.Spread.Stations = nil
		}
	}
	return dropped
}
