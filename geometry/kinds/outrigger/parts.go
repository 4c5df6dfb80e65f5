package outrigger

// Base plate, the two plates, head plate, end tie, pin, welds.

import (
	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

// arm is one of the two plates; side is the sign of its y.
type arm struct {
	id   string
	side float64
}

var arms = [2]arm{{"plate-front", 1}, {"plate-rear", -1}}

func (a arm) weld() string     { return "w-" + a.id }
func (a arm) headWeld() string { return "w-head-" + a.id }
func (a arm) endWeld() string  { return "w-end-" + a.id }

// y is where a plate's middle plane is.
func (d *design) y(a arm) float64 { return a.side * d.spacing() / 2 }

// upright is a plane at a distance from the web: u up, v to the rear, so that its normal points away from the web.
func upright(x float64) part.Pose {
	return part.Pose{Origin: part.Vec{X: x}, U: part.Vec{Z: 1}, V: part.Vec{Y: -1}}
}

func (d *design) addParts(b *part.Bracket) {
	b.Plates = append(b.Plates, d.base.Plate("base", upright(d.foot()/2)))
	for _, a := range arms {
		p := part.Plate{ID: a.id, Name: "outrigger plate", ThicknessMM: d.t, Material: d.v.Word("material")}
		if d.pinned {
			p.Outer, _ = d.ear.Outline() // check has drawn it
			p.Holes = []part.Hole{fab.PinHole(shape.Point{Y: d.ear.Pin}, d.lug.HoleMM, d.lug.AllowanceMM)}
			p.Pose = part.Pose{Origin: part.Vec{X: d.foot(), Y: d.y(a)}, U: part.Vec{Z: 1}, V: part.Vec{X: 1}}
		} else {
			p.Outer = shape.Polyline(shape.Point{X: d.foot(), Y: -d.root / 2}, shape.Point{X: d.end(), Y: d.top() - d.tip}, shape.Point{X: d.end(), Y: d.top()}, shape.Point{X: d.foot(), Y: d.top()})
			p.Pose = fab.Standing(part.Vec{Y: d.y(a)}, part.Vec{X: 1})
		}
		b.Plates = append(b.Plates, p)
		d.addWeld(b, a.weld(), a, "base", d.weld, part.Vec{X: d.foot(), Z: -d.root / 2}, part.Vec{X: d.foot(), Z: d.root / 2})
	}
}

// addWeld runs fillets along a root of a plate, on both its faces; from and to lie in the middle between the plates.
func (d *design) addWeld(b *part.Bracket, id string, a arm, on string, leg float64, from, to part.Vec) {
	by := part.Vec{Y: d.y(a)}
	b.Welds = append(b.Welds, fab.Weld(id, a.id, on, leg, d.v.Word("electrode"), fab.AtFaces(from.Add(by), to.Add(by), part.Vec{Y: 1}, d.t)...))
}

func (d *design) addHead(b *part.Bracket) {
	b.Plates = append(b.Plates, part.Plate{
		ID: "head", Name: "head plate", ThicknessMM: d.headT, Material: d.v.Word("material"),
		Outer: shape.Rect(shape.Point{X: -d.headL / 2, Y: -d.headW / 2}, shape.Point{X: d.headL / 2, Y: d.headW / 2}),
		Pose:  part.Pose{Origin: part.Vec{X: d.reach - d.headL/2, Z: d.top() + d.headT/2}, U: part.Vec{X: 1}, V: part.Vec{Y: 1}},
	})
	for _, a := range arms {
		d.addWeld(b, a.headWeld(), a, "head", d.topLeg, part.Vec{X: d.headIn(), Z: d.top()}, part.Vec{X: d.end(), Z: d.top()})
	}
}

// addEnd closes the outer ends with a plate across both, under the head plate.
func (d *design) addEnd(b *part.Bracket) {
	if d.endT == 0 {
		return
	}
	b.Plates = append(b.Plates, part.Plate{
		ID: "end", Name: "end tie", ThicknessMM: d.endT, Material: d.v.Word("material"), Pose: upright(d.reach - d.endT/2),
		Outer: shape.Rect(shape.Point{X: d.top() - d.tip, Y: -d.headW / 2}, shape.Point{X: d.top(), Y: d.headW / 2}),
	})
	for _, a := range arms {
		d.addWeld(b, a.endWeld(), a, "end", d.topLeg, part.Vec{X: d.end(), Z: d.top() - d.tip}, part.Vec{X: d.end(), Z: d.top()})
	}
}
