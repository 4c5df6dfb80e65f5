package whole

import (
	"fmt"
	"slices"

	"lugwright/part"
	"lugwright/vehicle"
	"lugwright/vehicle/clearance"
	"lugwright/vehicle/drill"
	"lugwright/vehicle/field"
	"lugwright/vehicle/hung"
	"lugwright/vehicle/lift"
)

func (w *work) drilling() {
	d := w.q.Drilling
	if d == nil {
		return
	}
	if len(d.Rails) > 0 || d.SubframeFlangeMM == 0 {
		if list, ok := w.guides(); ok {
			var err error
			w.a.Drilling, err = drill.Check(d.Rails, list)
			w.put(err, d.path)
		}
	}
	if d.SubframeFlangeMM != 0 {
		flange := d.RailFlangeMM
		if flange == 0 && w.q.Frame != nil {
			flange = w.q.Frame.Rail.FlangeMM
		}
		var err error
		w.a.Subframe, err = drill.Subframe(d.SubframeFlangeMM, flange)
		w.put(err, d.path)
	}
}

func (w *work) guides() ([]drill.Guide, bool) {
	d := w.q.Drilling
	var out []drill.Guide
	var bad field.Errors
	if !bad.Count("drilling.guides", len(d.Guides), 0, 20) {
		w.put(bad.Err(), nil)
		return nil, false
	}
	var ids []string
	for _, g := range drill.Guides() {
		ids = append(ids, g.ID)
	}
	for i, id := range d.Guides {
		g, ok := drill.GuideByID(id)
		if !ok {
			bad.Refuse(fmt.Sprintf("drilling.guides[%d]", i), fmt.Sprintf("no guide %.40q", id), fmt.Sprintf("one of %q", ids)+part.Nearest(id, ids))
		}
		out = append(out, g)
	}
	w.put(bad.Err(), nil)
	return append(out, d.OwnGuides...), bad.Err() == nil
}

func (w *work) clearance() {
	if w.q.Twist == nil {
		if len(w.q.Points) > 0 {
			w.put(&part.FieldError{Field: "twist", Found: "none, with points", Accept: "the twist allowance that the points are held against"}, nil)
		}
		return
	}
	var err error
	w.a.Clearance, err = clearance.Check(*w.q.Twist, w.q.Points)
	w.put(err, nil)
}

// lift takes the body's mass with tanks empty and nothing optional aboard.
func (w *work) lift() {
	l, v := w.q.Lift, w.q.Vehicle
	if l == nil || v == nil {
		return
	}
	dry, err := vehicle.RollUp(v, []vehicle.State{v.Empty()})
	if err != nil {
		return // refused already
	}
	bodies := dry[0].Bodies
	at := slices.IndexFunc(bodies, func(b vehicle.BodyMass) bool { return b.Name == carrier(l.Body) })
	if at < 0 || bodies[at].Mass.KG.Value <= 0 {
		w.put(&part.FieldError{Field: "lift.body", Found: fmt.Sprintf("nothing rides dry on %.40q", carrier(l.Body)), Accept: "a body that carries an item"}, nil)
		return
	}
	mass := bodies[at].Mass
	plan, err := lift.New(lift.Body{MassKG: mass.KG.Value, XMM: mass.XMM.Value, YMM: mass.YMM.Value}, l.Jacks)
	w.put(err, nil)
	if err == nil {
		w.a.Lift = &LiftPlan{bodies[at].Name, mass, *plan}
	}
}

func (w *work) checkTrays(bad *field.Errors) {
	if !bad.Count("trays", len(w.q.Trays), 0, 100) {
		return
	}
	bad.Unique("trays", len(w.q.Trays), func(i int) string { return w.q.Trays[i].Name }, ".name")
	var names []string
	if v := w.q.Vehicle; v != nil {
		for i := range v.Items {
			names = append(names, v.Items[i].Name)
		}
		for i := range v.Tanks {
			names = append(names, v.Tanks[i].Name)
		}
	}
	for i := range w.q.Trays {
		t := &w.q.Trays[i]
		for k, name := range t.Carries {
			at := fmt.Sprintf("trays[%d].carries[%d]", i, k)
			switch {
			case !slices.Contains(names, name):
				bad.Refuse(at, fmt.Sprintf("no item or tank %.40q", name), "the name of an item or a tank of the vehicle"+part.Nearest(name, names))
			case slices.Contains(t.Carries[:k], name):
				bad.Refuse(at, fmt.Sprintf("%q is named twice", name), "each once")
			}
		}
	}
}

// trays finds every tray's rods' loads in each state.
func (w *work) trays() {
	if len(w.bad) > 0 {
		return
	}
	for i := range w.q.Trays {
		out := TrayLoads{Tray: w.q.Trays[i].Name}
		states := w.q.States
		if w.q.Vehicle == nil {
			states = []vehicle.State{{}}
		}
		for k := range states {
			if !w.tray(i, &states[k], &out) {
				break
			}
		}
		if len(out.Cases) == 0 && len(w.bad) == 0 {
			w.put(&part.FieldError{Field: fmt.Sprintf("trays[%d].mass_kg", i), Found: "0 in every state", Accept: "its own mass, or what it carries"}, nil)
		}
		w.a.Trays = append(w.a.Trays, out)
	}
}

// tray does one in one state; one that weighs nothing has no loads.
func (w *work) tray(i int, s *vehicle.State, out *TrayLoads) bool {
	t := w.q.Trays[i].Tray
	if !(t.MassKG >= 0) {
		w.put(&part.FieldError{Field: fmt.Sprintf("trays[%d].mass_kg", i), Found: fmt.Sprintf("%g", t.MassKG), Accept: "0 or more"}, nil)
		return false
	}
	if len(w.q.Trays[i].Carries) > 0 {
		on := w.q.Vehicle.Carried(s, w.q.Trays[i].Carries)
		if kg := t.MassKG + on.KG.Value; kg > 0 {
			t.At = t.At.Scale(t.MassKG/kg).AddScaled(on.KG.Value/kg, on.CG())
			t.MassKG = kg
		}
	}
	out.States = append(out.States, TrayMass{s.Name, t.MassKG, t.At})
	if t.MassKG == 0 {
		return true
	}
	var cases []hung.Case
	for k := range w.q.Cases {
		c := &w.q.Cases[k]
		cases = append(cases, hung.Case{State: s.Name, Name: c.ID, Level: c.Level, G: c.AccelG})
	}
	got, err := hung.Loads(t, cases)
	w.put(err, trayPath(i))
	out.Cases = append(out.Cases, got...)
	return err == nil
}

// rules are those of washers and plastic tanks.
func (w *work) rules() {
	var err error
	w.a.Washers, err = hung.Washers(w.q.Washers)
	w.put(err, nil)
	w.a.PlasticTanks, err = hung.Tanks(w.q.PlasticTanks)
	w.put(err, renamed("tanks", "plastic_tanks"))
}
