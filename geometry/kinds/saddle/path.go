package saddle

// Seats, load paths.

import (
	"fmt"
	"math"

	"lugwright/geometry/shape"
	"lugwright/part"
)

// addSeats puts the tube in the bore of every side plate and every cap plate, and the collars on the outer faces.
func (d *design) addSeats(b *part.Bracket) {
	r := d.tube / 2
	reach := r * math.Sin(d.wrap()/2)
	patch := shape.Box{Min: shape.Point{X: -d.t / 2, Y: -reach}, Max: shape.Point{X: d.t / 2, Y: reach}}
	for k, y := range d.ys {
		seat := func(id, on string, z, across float64) {
			b.Contacts = append(b.Contacts, part.Contact{
				ID: fmt.Sprintf("%s-%d", id, k+1), Things: [2]string{"tube", fmt.Sprintf("%s-%d", on, k+1)}, WrapRad: d.wrap(), Patch: patch,
				Pose: part.Pose{Origin: part.Vec{Y: y, Z: z}, U: part.Vec{Y: 1}, V: part.Vec{X: across}},
			})
		}
		seat("seat", "side", d.height-r, -1)
		seat("cap-seat", "cap", d.height+r, 1)
	}
	if d.collarT == 0 {
		return
	}
	// The part of the ring that the side plate covers, unrolled along its inner edge, stands for it: a little less than there is.
	long, wide := d.wrap()*d.bore/2, (d.collarD/2-d.bore)/2
	for k, sense := range []float64{-1, 1} {
		b.Contacts = append(b.Contacts, part.Contact{
			ID: fmt.Sprintf("stop-%d", k+1), Things: [2]string{fmt.Sprintf("collar-%d", k+1), d.stopped(k)}, GapMM: d.collarGap,
			Pose:  part.Pose{Origin: part.Vec{Y: sense * d.outer(), Z: d.height}, U: part.Vec{X: 1}, V: part.Vec{Z: -sense}},
			Patch: shape.Box{Min: shape.Point{X: -long, Y: -wide}, Max: shape.Point{X: long, Y: wide}},
		})
	}
}

// stopped is the side plate that a collar presses: the first by the one before it, the last by the one behind.
func (d *design) stopped(collar int) string {
	return fmt.Sprintf("side-%d", min(collar+1, len(d.ys)))
}

func (d *design) addPaths(b *part.Bracket) {
	d.addSeats(b)
	b.LoadPoints = []part.LoadPoint{{
		ID: "tube", At: part.Vec{Z: d.height}, Axis: part.Vec{Y: 1}, Released: []part.Component{part.MyPlus, part.MyMinus},
	}}
	d.addShare(b)
	d.addPath(b, part.FzMinus, part.Vec{Z: d.height - d.bore})
	d.addPath(b, part.FzPlus, part.Vec{})
	// A force across presses the arc beside its lip; its line runs through the tube's axis.
	d.addPath(b, part.FxPlus, part.Vec{X: d.lip(), Z: d.height})
	d.addPath(b, part.FxMinus, part.Vec{X: -d.lip(), Z: d.height})
	if d.collarT == 0 {
		return
	}
	for k, c := range []part.Component{part.FyPlus, part.FyMinus} {
		collar, side := fmt.Sprintf("collar-%d", k+1), d.stopped(k)
		at := part.Vec{Y: d.ys[min(k, len(d.ys)-1)], Z: d.height}
		way := []string{"tube", "w-" + collar, collar, fmt.Sprintf("stop-%d", k+1), side, "w-" + side, "base", "bolts", "support"}
		b.Paths = append(b.Paths, part.Path{LoadPoint: "tube", Component: c, Branches: []part.Branch{{At: at, Through: way}}})
	}
}

// addShare divides a load between the side plates, and what each has of it between its ends: legs are side plates by ends.
func (d *design) addShare(b *part.Bracket) {
	s := part.Share{ID: "sides", Rule: part.Equal, Legs: 2 * len(d.ys), Source: "statics of the tube on its side plates"}
	if len(d.ys) == 2 {
		off := d.offset / (d.ys[1] - d.ys[0])
		s.Rule, s.Lo, s.Hi = part.Between, 0.5-off, 0.5+off
	}
	b.Shares = []part.Share{s}
}

// addPath brings a component through the seats, or up through the cap and its bolts, to the support. At is where it enters, in the plane of a side plate;
// what goes through the cap is met at the ears, from which its sections are cut. A seat stands behind its plate on the way: where on the arc a force comes
// in, the branch says.
func (d *design) addPath(b *part.Bracket, c part.Component, at part.Vec) {
	p := part.Path{LoadPoint: "tube", Component: c}
	for k, y := range d.ys {
		for j, e := range ends {
			side := fmt.Sprintf("side-%d", k+1)
			at, way := at, []string{"tube", side, fmt.Sprintf("seat-%d", k+1)}
			if c == part.FzPlus {
				cover := fmt.Sprintf("cap-%d", k+1)
				at = part.Vec{X: e.sense * d.earMid(), Z: d.height}
				way = []string{"tube", cover, fmt.Sprintf("cap-seat-%d", k+1), "w-" + cover + "-" + e.id, "cap-ear-" + e.id, "cap-bolts-" + e.id, "ear-" + e.id, "w-" + side + "-" + e.id, side}
			}
			at.Y = y
			p.Branches = append(p.Branches, part.Branch{
				Share: "sides", Leg: k*len(ends) + j, At: at, Through: append(way, "w-"+side, "base", "bolts", "support"),
			})
		}
	}
	b.Paths = append(b.Paths, p)
}
