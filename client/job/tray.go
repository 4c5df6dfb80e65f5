package job

// This file ties a bracket of the kind tray to a tray of the vehicle: its loads, and the measures that both state.

import (
	"fmt"
	"math"
	"slices"

	"lugwright/client/table"
	"lugwright/geometry"
	"lugwright/part"
	"lugwright/vehicle/hung"
	"lugwright/vehicle/whole"
)

// trayKind is the one kind that hangs on a tray's rods.
const trayKind = "tray"

// gravity is standard gravity, m/s2.
const gravity = 9.80665

// TrayNames lists the trays that brackets may be tied to.
func (v *Vehicle) TrayNames() []string {
	var out []string
	for i := range v.Request.Trays {
		out = append(out, v.Request.Trays[i].Name)
	}
	return out
}

// trayNumber is a tray's place in the request; -1 when there is none of that name.
func (v *Vehicle) trayNumber(name string) int { return slices.Index(v.TrayNames(), name) }

// measures are what the vehicle says of a tray in the parameters of the kind: the rods' stretch and free length, the mass's height over the bottom.
func measures(t *whole.Tray) []part.Param {
	lo, hi := part.Vec{X: math.Inf(1), Y: math.Inf(1)}, part.Vec{X: math.Inf(-1), Y: math.Inf(-1)}
	for _, r := range t.Rods {
		lo, hi = part.Vec{X: min(lo.X, r.XMM), Y: min(lo.Y, r.YMM)}, part.Vec{X: max(hi.X, r.XMM), Y: max(hi.Y, r.YMM)}
	}
	bottom := t.BeamZMM - t.FreeMM
	out := []part.Param{{Name: "rod_spacing", Number: hi.X - lo.X}, {Name: "rod_gauge", Number: hi.Y - lo.Y}, {Name: "rod_free", Number: t.FreeMM}, {Name: "load_height", Number: t.At.Z - bottom}}
	if t.StopZMM != nil {
		out = append(out, part.Param{Name: "stop_height", Number: *t.StopZMM - bottom})
	}
	return out
}

// perSide is the parameter that counts the rods of one side.
const perSide = "rods_per_side"

// twoRows says whether a tray's rods are two rows, left and right, each evenly spaced over the same stretch: what the kind hangs on.
func twoRows(t *whole.Tray) bool {
	const near = 1.0 // mm
	n := len(t.Rods) / 2
	if len(t.Rods)%2 != 0 || n < 2 {
		return false
	}
	long, wide := measures(t)[0].Number, measures(t)[1].Number
	at := middle(t, 0)
	for i := range n {
		for _, side := range [2]float64{-1, 1} {
			x, y := at.X+long*(float64(i)/float64(n-1)-0.5), at.Y+side*wide/2
			if !slices.ContainsFunc(t.Rods, func(r hung.Rod) bool { return math.Hypot(r.XMM-x, r.YMM-y) <= near }) {
				return false
			}
		}
	}
	return wide > near
}

// middle is where the bracket's load point lies on the vehicle: over the middle of the rods, at the height that the bracket is given.
func middle(t *whole.Tray, heightMM float64) part.Vec {
	lo, hi := t.Rods[0], t.Rods[0]
	for _, r := range t.Rods {
		lo.XMM, lo.YMM, hi.XMM, hi.YMM = min(lo.XMM, r.XMM), min(lo.YMM, r.YMM), max(hi.XMM, r.XMM), max(hi.YMM, r.YMM)
	}
	return part.Vec{X: (lo.XMM + hi.XMM) / 2, Y: (lo.YMM + hi.YMM) / 2, Z: t.BeamZMM - t.FreeMM + heightMM}
}

// takeTray gives the bracket the measures of its tray that it leaves out, and what the mass brings in every state and case, with its couple where it stands
// beside the middle of the rods.
func (j *Job) takeTray(b *Bracket, q *whole.Request, a *whole.Answer) {
	k := j.Vehicle.trayNumber(b.Tray)
	t := &q.Trays[k]
	b.Params = slices.Clone(b.Params)
	height := 0.0
	for _, m := range append(measures(t), part.Param{Name: perSide, Unit: string(geometry.Count), Number: float64(len(t.Rods) / 2)}) {
		i := slices.IndexFunc(b.Params, func(p part.Param) bool { return p.Name == m.Name })
		if i < 0 {
			if m.Unit == "" {
				m.Unit = string(geometry.MM)
			}
			b.Params, i = append(b.Params, m), len(b.Params)
		}
		if m.Name == "load_height" {
			height = b.Params[i].Number
		}
	}
	own := b.Loads
	b.Loads = nil
	at := middle(t, height)
	for _, s := range a.Trays[k].States {
		for _, c := range q.Cases {
			if s.KG > 0 {
				f := c.AccelG.Scale(s.KG * gravity)
				b.Loads = append(b.Loads, Load{Case: c.ID, State: s.State, LoadPoint: b.LoadPoint, Force: f, Moment: s.At.Sub(at).Cross(f), OfMount: true})
			}
		}
	}
	b.Loads = append(b.Loads, own...)
}

// tray checks a bracket's tray, and that both say the same of it.
func (a *agreement) tray(path string, b *Bracket, v *table.Value) {
	t := v.Field("tray")
	switch {
	case t == nil:
		return
	case b.Kind != "" && b.Kind != trayKind:
		a.refuse(t, path+".tray", "a bracket of the kind "+b.Kind, "it goes with the kind tray")
		return
	case v.Field("mount") != nil:
		a.refuse(t, path+".tray", "the bracket is tied to a mount as well", "mount or tray")
		return
	case a.j.Vehicle == nil:
		a.refuse(t, path+".tray", "the job has no vehicle", "the section vehicle, with trays")
		return
	}
	a.notIn(t, path+".tray", "tray", a.j.Vehicle.TrayNames())
	k := a.j.Vehicle.trayNumber(b.Tray)
	if k < 0 || len(a.j.Vehicle.Request.Trays[k].Rods) == 0 {
		return
	}
	one := &a.j.Vehicle.Request.Trays[k]
	params := v.Field("parameters")
	if stops := params.Field("stops"); (stops.Words() == "yes") != (one.StopZMM != nil) {
		at := stops
		if at == nil {
			at = t
		}
		a.refuse(at, path+".parameters.stops", fmt.Sprintf("%s, and the vehicle's tray %s has it otherwise", quoted(stops.Words()), b.Tray), "the same of both")
	}
	if !twoRows(one) {
		a.refuse(t, path+".tray", fmt.Sprintf("%s hangs on %d rods that are not two like rows", b.Tray, len(one.Rods)), "a tray whose rods stand in two rows, left and right, evenly spaced, as the kind has them")
	}
	if p := params.Field(perSide); p != nil && int(p.Number()) != len(one.Rods)/2 {
		a.refuse(p, path+".parameters."+perSide, p.Words(), fmt.Sprintf("%d, as the vehicle's tray %s has it; left out, it comes from there", len(one.Rods)/2, b.Tray))
	}
	if p, size := params.Field("rod_size"), a.j.Vehicle.RodSizes[k]; p != nil && size != "" && p.Words() != size {
		a.refuse(p, path+".parameters.rod_size", p.Words(), fmt.Sprintf("%s, as the vehicle's tray %s has it", size, b.Tray))
	}
	for _, m := range measures(one) {
		if p := params.Field(m.Name); p != nil && m.Name != "load_height" && math.Abs(p.Number()-m.Number) > 1 {
			a.refuse(p, path+".parameters."+m.Name, p.Words(), fmt.Sprintf("%.4g mm, as the vehicle's tray %s has it; left out, it comes from there", m.Number, b.Tray))
		}
	}
}
