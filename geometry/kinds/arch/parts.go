package arch

// Plates, bar, welds, contacts.

import (
	"math"

	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

// plate is one of the two; side is +1 for the one farther from the web.
type plate struct {
	id   string
	side float64
}

var plates = [2]plate{{"plate-1", 1}, {"plate-2", -1}}

// y is where a plate's middle plane is, and face where its outer face is.
func (d *design) y(p plate) float64    { return d.middle + p.side*(d.lug.Inner()+d.t/2) }
func (d *design) face(p plate) float64 { return d.middle + p.side*d.over() }

func (d *design) addPlates(b *part.Bracket) {
	outer, _ := d.outline() // check has drawn it
	for _, p := range plates {
		b.Plates = append(b.Plates, part.Plate{
			ID: p.id, Name: "arch", ThicknessMM: d.t, Material: d.v.Word("material"), Outer: outer,
			Holes: []part.Hole{fab.PinHole(shape.Point{Y: d.pinZ}, d.lug.HoleMM, d.lug.AllowanceMM)},
			Pose:  fab.Standing(part.Vec{Y: d.y(p)}, part.Vec{X: 1}),
		})
	}
}

// addBar puts the bar in its notches: welded to each plate's outer face, borne on by the notch's top, seated on the cross member between the plates.
func (d *design) addBar(b *part.Bracket) {
	profile, across, wrap := part.Profile{Kind: part.FlatBar, AMM: d.barW, TMM: d.barH}, part.Vec{X: 1}, 0.0
	switch {
	case d.round:
		profile, wrap = part.Profile{Kind: part.RoundBar, AMM: d.barW}, math.Pi
	case d.barH > d.barW: // a flat on edge
		profile.AMM, profile.TMM, across = d.barH, d.barW, part.Vec{Z: 1}
	}
	long := 2 * (d.over() + d.barPast)
	b.Members = append(b.Members, part.Member{
		ID: "bar", Name: "support bar", Material: d.v.Word("bar_material"), Profile: profile, LengthMM: long,
		Pose: part.Pose{Origin: part.Vec{Y: d.middle - long/2, Z: d.crossZ + d.barH/2}, U: part.Vec{Y: 1}, V: across},
	})
	level := func(y, z float64) part.Pose {
		return part.Pose{Origin: part.Vec{Y: y, Z: z}, U: part.Vec{Y: 1}, V: part.Vec{X: -1}}
	}
	patch := func(alongY float64) shape.Box {
		return shape.Box{Min: shape.Point{X: -alongY / 2, Y: -d.barW / 2}, Max: shape.Point{X: alongY / 2, Y: d.barW / 2}}
	}
	for _, p := range plates {
		w := fab.Weld(d.barWeldID(p), p.id, "bar", d.barWeld, d.v.Word("electrode"), d.roundBar(d.face(p))...)
		w.BothSides = false
		b.Welds = append(b.Welds, w)
		b.Contacts = append(b.Contacts, part.Contact{
			ID: d.notchID(p), Things: [2]string{p.id, "bar"}, Pose: level(d.y(p), d.notchTop()), Patch: patch(d.t), WrapRad: wrap,
		})
	}
	if !d.round {
		b.Contacts = append(b.Contacts, part.Contact{
			ID: "seat", Things: [2]string{"bar", "cross member"}, Pose: level(d.middle, d.crossZ), Patch: patch(2 * d.lug.Inner()),
		})
	}
}

func (d *design) barWeldID(p plate) string { return "w-bar-" + p.id[len("plate-"):] }
func (d *design) notchID(p plate) string   { return "notch-" + p.id[len("plate-"):] }

// notchChords are the runs that stand for the weld over a round bar.
const notchChords = 8

// roundBar runs along the notch at a height y along the bar: up one side, over the top, down the other.
func (d *design) roundBar(y float64) []part.WeldSegment {
	n, low, side := d.notchHalf(), d.crownAt(d.notchHalf()), d.notchSide()
	points := []shape.Point{{X: -n, Y: low}, {X: -n, Y: side}}
	if d.round {
		for i := 1; i < notchChords; i++ {
			points = append(points, shape.Point{Y: side}.Add(shape.Polar(n, math.Pi*(1-float64(i)/notchChords))))
		}
	}
	points = append(points, shape.Point{X: n, Y: side}, shape.Point{X: n, Y: low})
	out := make([]part.WeldSegment, len(points)-1)
	for i := range out {
		a, c := points[i], points[i+1]
		out[i] = part.WeldSegment{A: part.Vec{X: a.X, Y: y, Z: a.Y}, B: part.Vec{X: c.X, Y: y, Z: c.Y}}
	}
	return out
}
