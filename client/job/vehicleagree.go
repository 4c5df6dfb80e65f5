package job

// This file checks what single fields of the vehicle cannot tell: names that must be known, and fields that go together.

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"lugwright/client/table"
	"lugwright/part"
	"lugwright/vehicle"
)

// vehicle checks the section, and the mounts that brackets name.
func (a *agreement) vehicle(v *table.Value) {
	s := v.Field("vehicle")
	if s == nil {
		return
	}
	if len(s.Keys()) == 0 {
		a.refuse(s, "vehicle", "nothing in it", "masses, tanks and mounts, or trays, or what else is to be looked at")
	}
	if riding(s) {
		a.needed(s, "vehicle", "wheelbase", "from the front axle to the rear axle, such as 3800 mm")
		a.needed(s, "vehicle", "chassis_cab", "front and rear as the axles were weighed without the body")
		a.massNames(s)
		a.stateNames(s)
	}
	a.loadSets(v, s)
	a.mountEntries(s.Field("mounts"))
	a.bodies(s)
	a.shares(s.Field("shares"))
	a.onFrame(s)
	a.twist(s)
	a.trays(s)
	a.afterwards(s)
}

// needed refuses a section without a field.
func (a *agreement) needed(v *table.Value, path, name, accept string) {
	if v != nil && v.Field(name) == nil && !slices.Contains(v.Keys(), name) {
		a.refuse(v, path+"."+name, "missing", accept)
	}
}

// notIn refuses a name that is none of those known.
func (a *agreement) notIn(v *table.Value, path, what string, known []string) {
	name := v.Words()
	if v == nil || slices.Contains(known, name) {
		return
	}
	accept := "one of " + strings.Join(known, ", ")
	if len(known) == 0 {
		accept = "there are none"
	}
	a.refuse(v, path, fmt.Sprintf("no %s %s", what, quoted(name)), accept+table.Nearest(name, known))
}

// masses and tanks have one set of names, since states, trays and moves name either.
func (a *agreement) massNames(v *table.Value) {
	tanks := v.Field("tanks")
	for _, name := range v.Field("masses").Keys() {
		if t := tanks.Field(name); t != nil {
			a.refuse(t, "vehicle.tanks."+name, quoted(name)+" is the name of a mass", "give each mass and each tank its own name")
		}
	}
}

func (a *agreement) things() []string {
	var out []string
	if v := a.j.Vehicle.Request.Vehicle; v != nil {
		for _, m := range v.Items {
			out = append(out, m.Name)
		}
		for _, t := range v.Tanks {
			out = append(out, t.Name)
		}
	}
	return out
}

func (a *agreement) stateNames(v *table.Value) {
	states, all := v.Field("states"), v.Field("all_combinations")
	if states != nil && yes(all) {
		a.refuse(all, "vehicle.all_combinations", "all combinations beside named states", "either of the two")
	}
	if yes(all) && states == nil {
		if _, err := a.j.Vehicle.Request.Vehicle.Combinations(); err != nil {
			for _, f := range part.Fields(err) {
				a.refuse(all, "vehicle.all_combinations", f.Found, f.Accept)
			}
		}
	}
	tanks := v.Field("tanks").Keys()
	masses := v.Field("masses")
	var optional []string
	for _, name := range masses.Keys() {
		if yes(masses.Field(name).Field("optional")) {
			optional = append(optional, name)
		}
	}
	for _, name := range states.Keys() {
		s, path := states.Field(name), "vehicle.states."+name
		fills := s.Field("fills")
		for _, tank := range fills.Keys() {
			if !slices.Contains(tanks, tank) && fills.Field(tank) != nil {
				a.refuse(fills.Field(tank), path+".fills."+tank, "no tank "+quoted(tank), "the name of a tank"+table.Nearest(tank, tanks))
			}
		}
		for i, item := range s.Field("aboard").List() {
			at := fmt.Sprintf("%s.aboard[%d]", path, i)
			if item != nil && masses.Field(item.Words()) != nil && !slices.Contains(optional, item.Words()) {
				a.refuse(item, at, quoted(item.Words())+" is always aboard", "name what is optional: yes")
				continue
			}
			a.notIn(item, at, "optional mass", optional)
		}
	}
}

func (a *agreement) loadSets(root, v *table.Value) {
	own := v.Field("own_loads")
	for _, name := range own.Keys() {
		if _, err := vehicle.ShippedSet(name); err == nil {
			a.refuse(own.Field(name), "vehicle.own_loads."+name, quoted(name)+" is a shipped load set", "a name of its own")
		}
	}
	if len(a.errs) > 0 {
		return
	}
	_, err := vehicle.Cases(a.j.Vehicle.Sets...)
	a.errs = append(a.errs, a.j.locateVehicle(part.Fields(err))...)
	for _, c := range a.j.Vehicle.Request.Cases {
		if own := a.j.Case(c.ID); own != nil {
			a.refuse(root.Field("cases").Field(c.ID), "cases."+c.ID, quoted(c.ID)+" is a load case of the vehicle's load sets", "another name for the job's own case")
		}
	}
}

// fieldsOf says which fields each kind of mount needs, and which it may have besides those that all may have.
var fieldsOf = map[string]struct{ must, may []string }{
	"":          {must: []string{"x", "holds"}, may: []string{"y"}},
	singlePivot: {must: []string{"x"}, may: []string{"y", "holds"}},
	rigid:       {must: []string{"x"}, may: []string{"y", "holds"}},
	clevisPair:  {must: []string{"x", "half_width"}, may: []string{"y", "holds"}},
	diamond:     {must: []string{"x", "half_width", "front", "rear"}},
	longRail:    {must: []string{"stations", "half_width", "spring"}},
}

func (a *agreement) mountEntries(v *table.Value) {
	seen := map[string]string{}
	for _, entry := range v.Keys() {
		m, path := v.Field(entry), "vehicle.mounts."+entry
		if m == nil {
			continue
		}
		kind := m.Field("kind")
		if kind == nil && slices.Contains(m.Keys(), "kind") {
			continue // refused already
		}
		if kind == nil && m.Field("holds") == nil && !slices.Contains(m.Keys(), "holds") {
			a.refuse(m, path, "nothing says what it holds", "kind: "+strings.Join([]string{singlePivot, clevisPair, diamond, longRail, rigid}, ", ")+"; or holds, with a way for x, y and z")
			continue
		}
		want := fieldsOf[kind.Words()]
		what := kind.Words()
		if what == "" {
			what = "mount without a kind"
		}
		for _, name := range want.must {
			if !slices.Contains(m.Keys(), name) {
				a.refuse(m, path+"."+name, "missing", "a "+what+" needs "+strings.Join(want.must, ", "))
			}
		}
		for _, name := range []string{"x", "y", "half_width", "front", "rear", "stations", "spring", "holds"} {
			if f := m.Field(name); f != nil && !slices.Contains(want.must, name) && !slices.Contains(want.may, name) {
				a.refuse(f, path+"."+name, "not a field of a "+what, "a "+what+" has "+strings.Join(append(slices.Clone(want.must), want.may...), ", ")+", z")
			}
		}
		for _, at := range a.j.Vehicle.mounts {
			if at.entry != entry {
				continue
			}
			if other, taken := seen[at.name]; taken {
				a.refuse(m, path, fmt.Sprintf("it gives a mount %s, as %s does", quoted(at.name), quoted(other)), "names that tell the mounts apart")
			}
			seen[at.name] = entry
		}
	}
}

// bodies: what masses ride on must have mounts, once there are any.
func (a *agreement) bodies(v *table.Value) {
	if v.Field("mounts") == nil {
		return
	}
	known := []string{vehicle.Chassis}
	for _, b := range a.j.Vehicle.Request.Bodies {
		known = append(known, b.Name)
	}
	for _, section := range []string{"masses", "tanks"} {
		all := v.Field(section)
		for _, name := range all.Keys() {
			on := all.Field(name).Field("rides_on")
			if on != nil {
				a.notIn(on, "vehicle."+section+"."+name+".rides_on", "body with mounts", known)
			} else if m := all.Field(name); m != nil && !slices.Contains(known, vehicle.MainBody) {
				a.refuse(m, "vehicle."+section+"."+name+".rides_on", "missing, and no mount carries the main body", "one of "+strings.Join(known, ", "))
			}
		}
	}
}

func (a *agreement) shares(v *table.Value) {
	names := a.j.Vehicle.MountNames()
	for i, s := range v.List() {
		path := fmt.Sprintf("vehicle.shares[%d]", i)
		for k, m := range s.Field("mounts").List() {
			a.notIn(m, fmt.Sprintf("%s.mounts[%d]", path, k), "mount", names)
		}
	}
}

func (a *agreement) onFrame(v *table.Value) {
	f := v.Field("frame")
	if f != nil {
		a.needed(v, "vehicle", "wheelbase", "from the front axle to the rear axle: the frame rests on the axles")
	}
	mounts := v.Field("mounts")
	for _, entry := range mounts.Keys() {
		if tube := mounts.Field(entry).Field("tube"); tube != nil {
			a.notIn(tube, "vehicle.mounts."+entry+".tube", "cross tube", f.Field("cross_tubes").Keys())
		}
	}
	survey, holes := v.Field("survey"), v.Field("new_holes")
	if survey != nil && f == nil {
		a.refuse(survey, "vehicle.frame", "missing", "a survey of the rails needs frame, with rail and top")
	}
	if survey != nil {
		a.needed(v, "vehicle", "guides", "the guides to hold new holes against, of "+strings.Join(guideIDs(), ", "))
	}
	if flange := v.Field("subframe_flange"); flange != nil && f == nil {
		a.refuse(flange, "vehicle.frame", "missing", "the subframe's flange is held against the rail's")
	}
	for _, name := range holes.Keys() {
		h, path := holes.Field(name), "vehicle.new_holes."+name
		rail := h.Field("rail")
		if rail != nil && survey.Field(rail.Words()) == nil {
			a.refuse(rail, path+".rail", "the "+rail.Words()+" rail is not surveyed", "survey."+rail.Words()+", with what is on it")
		}
		if face := h.Field("face").Words(); h != nil && (face == "" || face == "web") {
			a.needed(h, path, "below_top", "how far its middle is below the rail's top")
		}
	}
}

func (a *agreement) twist(v *table.Value) {
	t := v.Field("twist")
	if t != nil {
		angle, lift := slices.Contains(t.Keys(), "angle"), slices.Contains(t.Keys(), "wheel_lift")
		switch {
		case angle == lift:
			a.refuse(t, "vehicle.twist", "an angle and a wheel lift, or neither", "either angle, or wheel_lift over a track")
		case lift && t.Field("track") == nil && v.Field("rear_track") == nil:
			a.refuse(t, "vehicle.twist.track", "missing", "the track over which the wheel is lifted")
		}
		return
	}
	points := v.Field("clearances")
	if len(points.Keys()) > 0 {
		a.refuse(v.Field("clearances"), "vehicle.twist", "missing", "how far the frame twists: angle, or wheel_lift and track")
	}
}

func (a *agreement) trays(v *table.Value) {
	names := a.things()
	trays := v.Field("trays")
	for _, name := range trays.Keys() {
		for i, c := range trays.Field(name).Field("carries").List() {
			a.notIn(c, fmt.Sprintf("vehicle.trays.%s.carries[%d]", name, i), "mass or tank", names)
		}
	}
}

func (a *agreement) afterwards(v *table.Value) {
	names := a.things()
	moves := v.Field("what_if")
	for _, name := range moves.Keys() {
		m := moves.Field(name)
		if m == nil {
			continue
		}
		if !slices.Contains(names, name) {
			a.refuse(m, "vehicle.what_if."+name, "no mass or tank "+quoted(name), "the name of what moves"+table.Nearest(name, names))
		}
		if len(m.Keys()) == 0 {
			a.refuse(m, "vehicle.what_if."+name, "no shift", "x, y or z, such as x: 300 mm")
		}
	}
	var states []string
	for _, s := range a.j.Vehicle.Request.States {
		states = append(states, s.Name)
	}
	a.notIn(v.Field("as_weighed").Field("state"), "vehicle.as_weighed.state", "state", states)
}

// tied checks a bracket's mount, and that it has loads from there or of its own.
func (a *agreement) tied(path string, b *Bracket, v *table.Value) {
	m := v.Field("mount")
	switch {
	case m == nil && !slices.Contains(v.Keys(), "mount"):
		for _, name := range []string{"load_point", "side"} {
			if f := v.Field(name); f != nil {
				a.refuse(f, path+"."+name, "a bracket that is tied to no mount", "it goes with mount")
			}
		}
	case m == nil:
	case a.j.Vehicle == nil:
		a.refuse(m, path+".mount", "the job has no vehicle", "the section vehicle, with masses and mounts")
	default:
		a.notIn(m, path+".mount", "mount", a.j.Vehicle.MountNames())
		a.sideOf(path, b, v)
	}
}

// sideOf refuses a bracket for the other side of the vehicle than its mount's: its outside would be the mount's inside.
func (a *agreement) sideOf(path string, b *Bracket, v *table.Value) {
	const onMiddle = 1.0 // mm off the centreline, where either hand will do
	at, _ := a.j.Vehicle.Mount(b.Mount)
	hand := v.Field("hand")
	if at == nil || hand == nil || math.Abs(at.At.Y) < onMiddle {
		return
	}
	side := part.LeftHand
	if at.At.Y < 0 {
		side = part.RightHand
	}
	if b.Hand != side {
		a.refuse(hand, path+".hand", fmt.Sprintf("%s, on a mount that stands %s of the centreline", b.Hand, side), string(side))
	}
}
