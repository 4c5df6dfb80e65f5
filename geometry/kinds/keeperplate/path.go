package keeperplate

// Plate, bolts, faces, load path, sections.

import (
	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

// face is a plane at a height over the ear, its normal out of it: u runs to negative x, v up. All that lies in it is alike to both sides.
func face(y float64) part.Pose { return fab.Standing(part.Vec{Y: y}, part.Vec{X: -1}) }

// inward is the same plane with its normal into the ear.
func inward(y float64) part.Pose { return fab.Standing(part.Vec{Y: y}, part.Vec{X: 1}) }

func (d *design) addPlate(b *part.Bracket) {
	v := d.v
	outer, _ := d.outline() // check has drawn it
	ear := v.MM("ear_thickness")
	b.Plates = []part.Plate{{
		ID: "plate", Name: "keeper plate", ThicknessMM: d.t, Material: v.Word("material"), Outer: outer, Holes: fab.BoltHoles(d.points, d.bolts.HoleMM), Pose: face(d.t / 2),
	}}
	// Over the pin's hole and its slot there is no ear to press on.
	patch := fab.Bearing(outer, d.radius)
	if d.slot > 0 {
		patch.Max.Y = -d.pin
	}
	b.Bolts = []part.BoltGroup{d.bolts.Group("bolts", face(0), d.points, d.t+ear, patch, [2]part.Ply{
		{Thing: "plate", ThicknessMM: d.t, Material: v.Word("material"), EdgeMM: fab.LeastEdge(outer, d.points)},
		{Thing: "ear", ThicknessMM: ear, Material: v.Word("ear_material"), EdgeMM: d.pinEdge()},
	})}
	b.Supports = []part.Support{
		{ID: "ear", Kind: part.BodyFrame, ThicknessMM: ear, Material: v.Word("ear_material")},
		// The pin brings the load; it is a support only in that it is not part of this bracket.
		{ID: "pin", Kind: part.BodyFrame, ThicknessMM: 2 * d.pin, Material: v.Word("pin_material")},
	}
}

// pressed is where pin and plate press on each other: the square in the pin's end, no higher than the plate, or in the slot as wide as its chord a rectangle with the area and the
// middle of the segment, taken as a parabola's: two thirds of the depth, and four tenths of it under the chord.
func (d *design) pressed() shape.Box {
	if d.slot == 0 {
		half := shape.Point{X: d.pin, Y: d.pin}.Scale(0.7071)
		half.Y = min(half.Y, d.height/2)
		return shape.Box{Min: half.Scale(-1), Max: half}
	}
	middle, half := d.top-0.4*d.slot, d.slot/3
	return shape.Box{Min: shape.Point{X: -d.chord() / 2, Y: middle - half}, Max: shape.Point{X: d.chord() / 2, Y: middle + half}}
}

// addPaths: a pin that moves outwards presses the plate off the ear, one that moves inwards presses a plate in its slot on the ear and tilts it.
func (d *design) addPaths(b *part.Bracket) {
	box := d.pressed()
	at := part.Vec{Z: box.Center().Y}
	b.LoadPoints = []part.LoadPoint{{ID: "pin", At: at, Axis: part.Vec{Y: 1}}}
	press := func(id string, pose part.Pose, c part.Component) {
		b.Contacts = append(b.Contacts, part.Contact{ID: id, Things: [2]string{"pin", "plate"}, Pose: pose, Patch: box})
		fab.Through(b, "pin", at, []part.Component{c}, id, "plate", "bolts", "ear")
	}
	press("inner face", inward(0), part.FyPlus)
	if d.slot > 0 {
		press("outer face", face(d.t), part.FyMinus)
	}
}

// addSweeps cuts the plate from either side to its middle, as a beam from bolt to bolt, and in a slot from the pin down past the bolts, as wide as the
// load has spread to.
func (d *design) addSweeps(b *part.Bracket) {
	pose := b.Plates[0].Pose
	middle := d.box().Center().Y
	for _, s := range []struct {
		id   string
		side float64
	}{{"plate, +x", -1}, {"plate, -x", 1}} {
		b.Sweeps = append(b.Sweeps, part.Sweep{
			ID: s.id, Things: []string{"plate"}, Bolts: "bolts", Name: "past a bolt to its middle", From: pose.At(s.side*d.width/2, middle, 0), To: pose.At(0, middle, 0),
		})
	}
	if d.slot > 0 {
		b.Sweeps = append(b.Sweeps, part.Sweep{
			ID: "plate, down", Things: []string{"plate"}, Bolts: "bolts", Name: "under the slot", EntryMM: d.chord(), EntryFlat: true,
			From: pose.At(0, d.pressed().Center().Y, 0), To: pose.At(0, d.box().Min.Y, 0),
		})
	}
}
