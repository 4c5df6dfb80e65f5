package fab

// Cheek plates and bosses round a pin hole.

import (
	"fmt"

	"lugwright/geometry"
	"lugwright/geometry/shape"
	"lugwright/part"
)

// Cheek is a round plate, or a boss turned from bar, that thickens an ear or a lug about its pin hole; a thickness of 0 is none.
type Cheek struct {
	ThicknessMM, DiaMM, WeldMM float64
	Boss                       bool
}

// CheekParams declares the parameters of cheeks; where says what they lie on.
func CheekParams(where string) []geometry.Param {
	return []geometry.Param{
		Length("cheek_thickness", 0, 80, 0, "thickness of a cheek plate or boss on "+where+", 0 for none"),
		Length("cheek_diameter", 15, 300, 60, "its diameter"),
		Length("cheek_weld", 3, 20, 4, "leg of the fillet round it"),
		Choice("cheek_form", "what it is: cut from plate, or a boss turned from round bar", "plate", "boss"),
	}
}

// ReadCheek reads what CheekParams declares.
func ReadCheek(v geometry.Values) Cheek {
	return Cheek{v.MM("cheek_thickness"), v.MM("cheek_diameter"), v.MM("cheek_weld"), v.Word("cheek_form") == "boss"}
}

// Check refuses a cheek that leaves too little round the hole, or whose fillet leaves the ear or meets the foot's weld. On is what it lies on,
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

// ID names the nth one.
func (c Cheek) ID(n int) string {
	if c.Boss {
		return fmt.Sprintf("boss-%d", n)
	}
	return fmt.Sprintf("cheek-%d", n)
}

// Add puts the nth one on a plate, by its middle plane's pose, with its fillet. The hole is at its middle.
func (c Cheek) Add(b *part.Bracket, n int, on, material, electrode string, hole part.Hole, pose part.Pose) {
	id := c.ID(n)
	if c.Boss {
		b.Members = append(b.Members, Ring(id, "boss", material, c.DiaMM, hole.DiaMM, c.ThicknessMM, part.Pose{Origin: pose.At(0, 0, -c.ThicknessMM/2), U: pose.W(), V: pose.U}))
	} else {
		b.Plates = append(b.Plates, part.Plate{
			ID: id, Name: "cheek plate", ThicknessMM: c.ThicknessMM, Material: material, Outer: shape.Circle(shape.Point{}, c.DiaMM),
			Holes: []part.Hole{hole}, Pose: pose,
		})
	}
	b.Welds = append(b.Welds, EdgeWeld("w-"+id, id, on, c.WeldMM, electrode, Round(pose, -c.ThicknessMM/2, c.DiaMM, roundWeldSides)...))
}

// Note tells how bosses are made; empty for cheek plates and for none.
func (c Cheek) Note(hole part.Hole) string {
	if !c.Boss || c.ThicknessMM == 0 {
		return ""
	}
	return fmt.Sprintf("turn the bosses from round bar: %s over all, %s long, bore %s; weld them on over a dummy pin", MM(c.DiaMM), MM(c.ThicknessMM), MM(hole.CutMM))
}

// Ring is a ring or short tube round a pin, by its outside and inside diameter; the pose's u runs along it.
func Ring(id, name, material string, outsideMM, insideMM, lengthMM float64, pose part.Pose) part.Member {
	return part.Member{
		ID: id, Name: name, Material: material, LengthMM: lengthMM, Pose: pose,
		Profile: part.Profile{Kind: part.RoundTube, AMM: outsideMM, TMM: (outsideMM - insideMM) / 2},
	}
}
