package job

// This file ties a bracket of the kind tray to a tray of the vehicle: its loads, and the measures that both state.

import (
	"fmt"
	"math"
	"slices"

	"lugwright/client/table"
	"lugwright/geometry"
	"lugwright/geometry/shape"
	"lugwright/part"
	"lugwright/vehicle"
	"lugwright/vehicle/hung"
	"lugwright/vehicle/whole"
)

// trayKind is the one kind that hangs on a tray's rods.
const trayKind = "tray"

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

// stretch is the box in plan round a tray's rods.
func stretch(t *whole.Tray) shape.Box {
	box := shape.EmptyBox()
	for _, r := range t.Rods {
		box = box.Extend(shape.Point{X: r.XMM, Y: r.YMM})
	}
	return box
}

// measures are what the vehicle says of a tray in the parameters of the kind: the rods' stretch and free length, the mass's height over the bottom.
func measures(t *whole.Tray) []part.Param {
	box, bottom := stretch(t), t.BeamZMM-t.FreeMM
	mm := func(name string, n float64) part.Param {
		return part.Param{Name: name, Unit: string(geometry.MM), Number: n}
	}
	out := []part.Param{mm("rod_spacing", box.Width()), mm("rod_gauge", box.Height()), mm("rod_free", t.FreeMM), mm("load_height", t.At.Z-bottom)}
	if t.StopZMM != nil {
		out = append(out, mm("stop_height", *t.StopZMM-bottom))
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
	box := stretch(t)
	for i := range n {
		x := box.Min.X + box.Width()*float64(i)/float64(n-1)
		for _, y := range [2]float64{box.Min.Y, box.Max.Y} {
			if !slices.ContainsFunc(t.Rods, func(r hung.Rod) bool { return math.Hypot(r.XMM-x, r.YMM-y) <= near }) {
				return false
			}
		}
	}
	return box.Height() > near
}

// middle is where the bracket's load point lies on the vehicle: over the middle of the rods, at the height that the bracket is given.
func middle(t *whole.Tray, heightMM float64) part.Vec {
	at := stretch(t).Center()
	return part.Vec{X: at.X, Y: at.Y, Z: t.BeamZMM - t.FreeMM + heightMM}
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
				f := c.AccelG.Scale(s.KG * vehicle.G)
				b.Loads = append(b.Loads, Load{Case: c.ID, State: s.State, LoadPoint: b.LoadPoint, Force: f, Moment: s.At.Sub(at).Cross(f), OfMount: true})
			}
		}
	}
	b.Loads = append(b.Loads, own...)
}

// OfTray names the parameters of a bracket that its tray of the vehicle settles: they are changed there.
func (j *Job) OfTray(b *Bracket) []string {
	if b.Tray == "" {
		return nil
	}
	k := j.Vehicle.trayNumber(b.Tray)
	out := []string{perSide, "stops"}
	for _, m := range measures(&j.Vehicle.Request.Trays[k]) {
		out = append(out, m.Name)
	}
	if j.Vehicle.RodSizes[k] != "" {
		out = append(out, "rod_size")
	}
	return out
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
