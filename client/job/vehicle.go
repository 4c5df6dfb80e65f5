package job

// This file is a job's vehicle as typed values, and what it gives to the brackets.

import (
	"encoding/json"
	"fmt"
	"slices"

	"lugwright/part"
	"lugwright/strength"
	"lugwright/vehicle"
	"lugwright/vehicle/whole"
)

// Vehicle is the section vehicle: what it asks of the strength service, in that service's own terms.
type Vehicle struct {
	Request  whole.Request
	Sets     []vehicle.LoadSet // whose lines are the request's cases
	RodSizes []string          // of each tray's rods; empty where it is not stated

	mounts []mountAt
	paths  map[string]string // from fields of the request to fields of the file
}

// MarshalJSON writes the vehicle as it stands. It is there so that a job without one does not have package json study all that a vehicle may hold,
// which took longer than any other step of reading it.
func (v *Vehicle) MarshalJSON() ([]byte, error) {
	type fields Vehicle
	return json.Marshal((*fields)(v))
}

// mountAt is where a mount is in the request, and the entry of the file that it comes from.
type mountAt struct {
	name, entry string
	body, index int
}

// MountNames lists the mounts that brackets may be tied to.
func (v *Vehicle) MountNames() []string {
	var out []string
	for _, m := range v.mounts {
		out = append(out, m.name)
	}
	return out
}

// Mount finds a mount and the number of its body; nil when there is none.
func (v *Vehicle) Mount(name string) (m *vehicle.Mount, body int) {
	for _, at := range v.mounts {
		if at.name == name {
			return &v.Request.Bodies[at.body].Mounts[at.index], at.body
		}
	}
	return nil, 0
}

// BodyOf is the name of the body that a mount carries.
func (v *Vehicle) BodyOf(mount string) string {
	_, body := v.Mount(mount)
	return v.Request.Bodies[body].Name
}

// LoadsOnly asks for what mounts and trays bring to brackets and nothing else.
func (v *Vehicle) LoadsOnly() *whole.Request {
	q := &v.Request
	return &whole.Request{Vehicle: q.Vehicle, Bodies: q.Bodies, States: q.States, Cases: q.Cases, Trays: q.Trays}
}

// WithLoads is the job with the loads that its mounts and trays bring to the brackets tied to them, each under its case and state, beside the
// cases and loads that the file gives. The answer is the strength service's to the vehicle.
func (j *Job) WithLoads(a *whole.Answer) (*Job, error) {
	if j.Vehicle == nil || has(j.Cases, func(c Case) bool { return c.OfVehicle }) { // none, or it has them already
		return j, nil
	}
	out := *j
	out.Cases, out.Brackets = slices.Clone(j.Cases), slices.Clone(j.Brackets)
	for _, c := range j.Vehicle.Request.Cases {
		source := c.Source
		if c.OnUltimate > 0 {
			source += fmt.Sprintf(" (asks for a factor of %g on tensile strength, which is not in the loads)", c.OnUltimate)
		}
		out.Cases = append(out.Cases, Case{Name: c.ID, Level: c.Level, Source: source, Words: c.Name, AtRest: c.AccelG == (part.Vec{Z: -1}) && c.Level == part.Service, OfVehicle: true})
	}
	var bad Errors
	for i := range out.Brackets {
		b := &out.Brackets[i]
		if b.Tray != "" {
			j.takeTray(b, &j.Vehicle.Request, a)
		}
		if b.Mount == "" {
			continue
		}
		loads := loadsOn(a, j.Vehicle, b.Mount)
		if loads == nil || len(loads.Missing) > 0 {
			bad = append(bad, j.unheld(b, loads))
			continue
		}
		b.take(loads)
	}
	if bad != nil {
		return nil, bad.Sorted()
	}
	return &out, nil
}

// Tied says whether any bracket takes its loads from the vehicle.
func (j *Job) Tied() bool { return has(j.Brackets, func(b Bracket) bool { return b.Tied() }) }

func loadsOn(a *whole.Answer, v *Vehicle, mount string) *vehicle.MountLoads {
	_, body := v.Mount(mount)
	if body >= len(a.Report.Bodies) {
		return nil
	}
	all := a.Report.Bodies[body].Loads
	i := slices.IndexFunc(all, func(l vehicle.MountLoads) bool { return l.Mount == mount })
	if i < 0 {
		return nil
	}
	return &all[i]
}

// Overloaded refuses the brackets whose mounts bring more loads than one check takes: no two of them are alike, so none may be left out.
func (j *Job) Overloaded() error {
	var bad Errors
	for i := range j.Brackets {
		b := &j.Brackets[i]
		if b.Mount == "" || len(b.Loads) <= strength.MaxCases {
			continue
		}
		field := "brackets[" + b.Name + "].mount"
		q := &j.Vehicle.Request
		bad = append(bad, &Error{File: j.File, At: j.reading.Places[field], Field: field,
			Found:  fmt.Sprintf("%d loads for the mount %s, of %d states and %d cases", len(b.Loads), quoted(b.Mount), len(q.States), len(q.Cases)),
			Accept: fmt.Sprintf("at most %d: in vehicle, the states that matter in place of all_combinations, fewer load sets, or shares that are known", strength.MaxCases)})
	}
	if bad == nil {
		return nil
	}
	return bad.Sorted()
}

// unheld refuses a bracket whose mount has states and cases that no reactions balance: it cannot be designed for them.
func (j *Job) unheld(b *Bracket, loads *vehicle.MountLoads) *Error {
	field := "brackets[" + b.Name + "].mount"
	e := &Error{File: j.File, At: j.reading.Places[field], Field: field, Found: "no loads for the mount " + quoted(b.Mount), Accept: "`lugwright loads` shows what the mounts hold"}
	if loads != nil {
		e.Found = fmt.Sprintf("no load for %s", loads.Missing[0])
		if n := len(loads.Missing) - 1; n > 0 {
			e.Found += fmt.Sprintf(", and %d more", n)
		}
		e.Accept = "mounts that hold the body; `lugwright loads` shows what they hold"
	}
	return e
}

// take puts a mount's loads before the bracket's own. On the body's side of a joint they act the other way.
func (b *Bracket) take(loads *vehicle.MountLoads) {
	sign := 1.0
	if b.BodySide {
		sign = -1
	}
	own := b.Loads
	b.Loads = nil
	names := map[string]string{}
	for _, l := range loads.Loads {
		state := l.State
		if l.Share != "" {
			state += ", " + l.Share
		}
		one := Load{Case: l.Case, State: state, LoadPoint: b.LoadPoint, Force: l.Force.Scale(sign), Moment: l.Moment.Scale(sign), OfMount: true}
		b.Loads = append(b.Loads, one)
		for _, same := range l.Same {
			names[same] = one.Name()
		}
	}
	b.Loads = append(b.Loads, own...)
	b.Spectrum = slices.Clone(b.Spectrum)
	for i := range b.Spectrum { // a load that is equal to another is given once
		c := &b.Spectrum[i]
		if name := names[c.From]; name != "" {
			c.From = name
		}
		if name := names[c.To]; name != "" {
			c.To = name
		}
	}
}
