package saddle

// Side plates, cap, ears, collars and their welds.

import (
	"fmt"

	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

// ends name what is in front of the tube and behind it, with the sense of x.
var ends = [2]struct {
	id    string
	sense float64
}{{"front", -1}, {"rear", 1}}

// side is the outline of a side plate over x and z.
func (d *design) side() (shape.Loop, error) {
	top, lip := d.top(), d.lip()
	return shape.NewPath(shape.Point{X: -d.foot / 2, Y: d.baseT}).Line(shape.Point{X: d.foot / 2, Y: d.baseT}).
		Line(shape.Point{X: d.earOut(), Y: top}).Line(shape.Point{X: lip, Y: top}).
		ArcCenter(shape.Point{X: -lip, Y: top}, shape.Point{Y: d.height}, false).
		Line(shape.Point{X: -d.earOut(), Y: top}).Close()
}

// capPlate is the outline of a cap plate over x and z.
func (d *design) capPlate() (shape.Loop, error) {
	low, high, lip, out, c := d.low(), d.height+d.bore+d.depth, d.lip(), d.earOut(), d.corner
	return shape.NewPath(shape.Point{X: -out, Y: low}).Line(shape.Point{X: -lip, Y: low}).
		ArcCenter(shape.Point{X: lip, Y: low}, shape.Point{Y: d.height}, false).
		Line(shape.Point{X: out, Y: low}).Line(shape.Point{X: out, Y: high - c}).Line(shape.Point{X: out - c, Y: high}).
		Line(shape.Point{X: c - out, Y: high}).Line(shape.Point{X: -out, Y: high - c}).Close()
}

func (d *design) addPlates(b *part.Bracket) {
	material := d.v.Word("material")
	side, _ := d.side()         // check has seen to it that both
	capPlate, _ := d.capPlate() // can be drawn
	for k, y := range d.ys {
		pose := fab.Standing(part.Vec{Y: y}, part.Vec{X: 1})
		b.Plates = append(b.Plates,
			part.Plate{ID: fmt.Sprintf("side-%d", k+1), Name: "side plate", ThicknessMM: d.t, Material: material, Outer: side, Pose: pose},
			part.Plate{ID: fmt.Sprintf("cap-%d", k+1), Name: "cap plate", ThicknessMM: d.t, Material: material, Outer: capPlate, Pose: pose})
		d.addWelds(b, k+1, y)
	}
	for _, e := range ends {
		b.Plates = append(b.Plates, d.ear("ear-"+e.id, e.sense, d.height-d.gap/2-d.earT/2), d.ear("cap-ear-"+e.id, e.sense, d.height+d.gap/2+d.earT/2))
	}
}

// addWelds roots a side plate on the base plate and both arced plates on their ears.
func (d *design) addWelds(b *part.Bracket, k int, y float64) {
	weld := func(id, stands, on string, leg, x0, x1, z float64) {
		runs := fab.AtFaces(part.Vec{X: x0, Y: y, Z: z}, part.Vec{X: x1, Y: y, Z: z}, part.Vec{Y: 1}, d.t)
		b.Welds = append(b.Welds, fab.Weld(id, stands, on, leg, d.v.Word("electrode"), runs...))
	}
	side, cover := fmt.Sprintf("side-%d", k), fmt.Sprintf("cap-%d", k)
	weld("w-"+side, side, "base", d.leg, -d.foot/2, d.foot/2, d.baseT)
	for _, e := range ends {
		in, out := e.sense*d.earIn(), e.sense*d.earOut()
		weld("w-"+side+"-"+e.id, side, "ear-"+e.id, d.earLeg, in, out, d.top())
		weld("w-"+cover+"-"+e.id, cover, "cap-ear-"+e.id, d.earLeg, in, out, d.low())
	}
}

// ear is a level plate over both side plates, drawn about its own middle.
func (d *design) ear(id string, sense, z float64) part.Plate {
	p := part.Plate{
		ID: id, Name: "ear", ThicknessMM: d.earT, Material: d.v.Word("material"),
		Outer: shape.Rect(shape.Point{X: -d.earW / 2, Y: -d.earEnd()}, shape.Point{X: d.earW / 2, Y: d.earEnd()}),
		Pose:  part.Pose{Origin: part.Vec{X: sense * d.earMid(), Z: z}, U: part.Vec{X: 1}, V: part.Vec{Y: 1}},
	}
	p.Holes = fab.BoltHoles(d.capPoints(), d.capBolts.HoleMM)
	return p
}

// capPoints are the bolts of one ear from its middle.
func (d *design) capPoints() []shape.Point {
	return fab.Grid(d.capXs, []float64{-d.boltY(), d.boltY()})
}

// addCollars puts a ring on the tube beyond the outer face of the first side plate and of the last.
func (d *design) addCollars(b *part.Bracket) {
	if d.collarT == 0 {
		return
	}
	const sides = 16 // runs of the polygon that stands for the round fillet
	inside := d.tube + collarPlayMM
	for k, sense := range []float64{-1, 1} {
		id := fmt.Sprintf("collar-%d", k+1)
		pose := fab.Standing(part.Vec{Y: sense * d.collarY(), Z: d.height}, part.Vec{X: 1})
		b.Plates = append(b.Plates, part.Plate{
			ID: id, Name: "collar", ThicknessMM: d.collarT, Material: d.v.Word("material"),
			Outer: shape.Circle(shape.Point{}, d.collarD), Cutouts: []shape.Loop{shape.Circle(shape.Point{}, inside)}, Pose: pose,
		})
		// The plate's normal points to -y.
		w := fab.EdgeWeld("w-"+id, id, "tube", d.collarLeg, d.v.Word("electrode"), fab.Round(pose, -sense*d.collarT/2, inside, sides)...)
		w.AlongEdge = false
		b.Welds = append(b.Welds, w)
	}
}
