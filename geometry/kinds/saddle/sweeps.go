package saddle

// Sections: side plates, cap plates, ears, base plate.

import (
	"fmt"
	"math"

	"lugwright/part"
)

func (d *design) addSweeps(b *part.Bracket) {
	add := func(id, thing, bolts, name string, from, to part.Vec) {
		b.Sweeps = append(b.Sweeps, part.Sweep{ID: id, Things: []string{thing}, Bolts: bolts, Name: name, From: from, To: to})
	}
	for k, y := range d.ys {
		side, cover := fmt.Sprintf("side-%d", k+1), fmt.Sprintf("cap-%d", k+1)
		at := func(x, z float64) part.Vec { return part.Vec{X: x, Y: y, Z: z} }
		add(side, side, "", "side plate under the bore", at(0, d.height-d.bore), at(0, d.baseT))
		under, over := (d.baseT+d.height-d.bore)/2, d.height+d.bore+d.depth/2
		for _, e := range ends {
			// Cuts square to x, from the ear to the middle of the arc, where it is thinnest.
			add(side+", "+e.id, side, "", "side plate beside the bore", at(e.sense*max(d.earOut(), d.foot/2), under), at(0, under))
			add(cover+", "+e.id, cover, "", "cap plate beside the bore", at(e.sense*d.earOut(), over), at(0, over))
			// A cut through the tube's axis at 45 degrees parts what the ear and the lip load from the rest.
			c := (d.bore + d.earW/4) / math.Sqrt2
			back := d.bore / 4 / math.Sqrt2
			add(side+", "+e.id+" shoulder", side, "", "side plate's shoulder", at(e.sense*(c+back), d.height-c+back), at(e.sense*c, d.height-c))
		}
	}
	for _, e := range ends {
		for _, way := range [2]struct {
			id    string
			sense float64
		}{{"inboard", -1}, {"outboard", 1}} {
			for _, ear := range [2]string{"ear-" + e.id, "cap-ear-" + e.id} {
				x, z := e.sense*d.earMid(), b.Plate(ear).Pose.Origin.Z
				add(ear+", "+way.id, ear, "cap-bolts-"+e.id, "ear past the side plate", part.Vec{X: x, Y: way.sense * d.earEnd(), Z: z}, part.Vec{X: x, Y: way.sense * d.outer(), Z: z})
			}
		}
	}
	d.addBaseSweeps(b)
}

// addBaseSweeps cuts the base plate where it reaches past the side plates, from each edge and each corner inwards: bolts and contact out there bend it. Between
// two side plates it is cut as wide as they are.
func (d *design) addBaseSweeps(b *part.Bracket) {
	x, y, z := d.baseL/2, d.baseW/2, d.baseT/2
	footX, footY := d.foot/2, d.outer()
	far := (x - footX + y - footY) / 2 // across a corner at 45 degrees, to the plate's sharp corner
	add := func(id string, fromX, fromY, toX, toY float64) *part.Sweep {
		b.Sweeps = append(b.Sweeps, part.Sweep{
			ID: "base, " + id, Things: []string{"base"}, Bolts: "bolts", Name: "base plate past the side plates",
			From: part.Vec{X: fromX, Y: fromY, Z: z}, To: part.Vec{X: toX, Y: toY, Z: z},
		})
		return &b.Sweeps[len(b.Sweeps)-1]
	}
	for _, e := range ends {
		add(e.id, e.sense*x, 0, e.sense*footX, 0)
		for _, way := range [2]struct {
			id    string
			sense float64
		}{{"inboard", -1}, {"outboard", 1}} {
			add(e.id+" "+way.id, e.sense*(footX+far), way.sense*(footY+far), e.sense*footX, way.sense*footY)
		}
	}
	add("inboard", 0, -y, 0, -footY)
	add("outboard", 0, y, 0, footY)
	if len(d.ys) == 2 {
		clear := d.ys[1] - d.ys[0] - d.t
		s := add("between", 0, clear/2, 0, -clear/2)
		s.Name, s.EntryMM, s.EntryToMM = "base plate between the side plates", d.foot, clear
	}
}
