package fab

// Cheek plates round a pin hole.

import (
	"lugwright/geometry"
	"lugwright/geometry/shape"
	"lugwright/part"
)

// Cheek is a round plate that thickens an ear or a lug about its pin hole; a thickness of 0 is none.
type Cheek struct{ ThicknessMM, DiaMM, WeldMM float64 }

// ReadCheek reads the parameters cheek_thickness, cheek_diameter and cheek_weld.
func ReadCheek(v geometry.Values) Cheek {
	return Cheek{v.MM("cheek_thickness"), v.MM("cheek_diameter"), v.MM("cheek_weld")}
}

// Check refuses a cheek plate that leaves too little round the hole, or whose fillet leaves the ear or meets the foot's weld. On is what it lies on,
// in words.
func (c Cheek) Check(n *Needs, e Ear, holeMM, pinMM, footWeldMM float64, on string) {
	if c.ThicknessMM == 0 {
		return
	}
	n.That(c.ThicknessMM >= 3, "cheek_thickness", MM(c.ThicknessMM), "at least 3 mm; 0 for none")
	least := holeMM + 2*Ligament(pinMM)
	n.That(c.DiaMM >= least, "cheek_diameter", MM(c.DiaMM), "at least %.4g mm round this hole", least)
	outer, _ := e.Outline() // the kind has drawn it
	most := 2 * (min(outer.DistTo(shape.Point{Y: e.Pin}), e.Pin-footWeldMM) - c.WeldMM)
	n.That(c.DiaMM <= most, "cheek_diameter", MM(c.DiaMM), "at most %.4g mm, so that its fillet stays on the "+on+" and off the foot's weld", most)
}

// Add puts one on a plate, by its middle plane's pose, with its fillet. The hole is at its middle.
func (c Cheek) Add(b *part.Bracket, id, on, material, electrode string, hole part.Hole, pose part.Pose) {
	b.Plates = append(b.Plates, part.Plate{
		ID: id, Name: "cheek plate", ThicknessMM: c.ThicknessMM, Material: material, Outer: shape.Circle(shape.Point{}, c.DiaMM),
		Holes: []part.Hole{hole}, Pose: pose,
	})
	b.Welds = append(b.Welds, EdgeWeld("w-"+id, id, on, c.WeldMM, electrode, Round(pose, -c.ThicknessMM/2, c.DiaMM, roundWeldSides)...))
}
