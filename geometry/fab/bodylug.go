package fab

// The body's lug on a pin between two ears of the bracket.

import (
	"fmt"
	"math"

	"lugwright/geometry"
	"lugwright/part"
)

// BodyLug is the body's lug, and the pin that two ears hold it by.
type BodyLug struct {
	PinMM, HoleMM, AllowanceMM   float64
	ThicknessMM, GapMM, RadiusMM float64
	BushMM, PlayMM               float64
	PinMaterial, Material, Ends  string
	Turns                        bool
}

// ReadBodyLug reads what BodyLugParams declares.
func ReadBodyLug(v geometry.Values) BodyLug {
	return BodyLug{
		PinMM: v.MM("pin_diameter"), HoleMM: v.MM("pin_diameter") + v.MM("pin_clearance"), AllowanceMM: v.MM("finish_allowance"),
		ThicknessMM: v.MM("lug_thickness"), GapMM: v.MM("gap"), RadiusMM: v.MM("lug_radius"), BushMM: v.MM("bush_length"), PlayMM: v.MM("end_play"),
		PinMaterial: v.Word("pin_material"), Material: v.Word("lug_material"), Ends: v.Word("pin_ends"), Turns: v.Word("turns") == "yes",
	}
}

// BodyLugParams are the parameters of a pin and the body's lug on it.
func BodyLugParams() []geometry.Param {
	return []geometry.Param{
		Length("pin_diameter", 6, 120, 25, "diameter of the pin"),
		Length("pin_clearance", 0.05, 5, 0.5, "finished pin hole less pin"),
		Length("finish_allowance", 0, 5, 1, "pin hole cut this much smaller, then reamed; 0 leaves it as cut"),
		Named("pin_material", "C45+N", "grade of the pin"),
		Choice("turns", "whether the lug turns on the pin under full load, as in a mount that lets the frame twist", "yes", "no"),
		Choice("pin_ends", "what keeps the pin in; only head and nut tie the plates together", "head and nut", "head and retaining bolt", "keeper"),
		Length("end_play", 0, 5, 0.5, "play of the pin along its axis"),
		Length("lug_thickness", 4, 200, 40, "thickness of the body's lug"),
		Named("lug_material", "S355", "grade of the body's lug"),
		Length("gap", 0.2, 20, 2, "gap between lug and plate on each side"),
		Length("lug_radius", 8, 300, 30, "clear radius below the pin that the lug needs to swing"),
		Length("bush_length", 0, 200, 0, "bearing length of a bush in the lug, 0 for none"),
	}
}

// Inner is the distance from the lug's middle to an ear's inner face.
func (l BodyLug) Inner() float64 { return l.ThicknessMM/2 + l.GapMM }

// Tied says whether both ends of the pin bear on the ears, so that the far ear is pulled along.
func (l BodyLug) Tied() bool { return l.Ends == "head and nut" }

// Check refuses what does not fit in itself.
func (l BodyLug) Check(n *Needs) {
	least := l.HoleMM/2 + Ligament(l.PinMM)
	n.That(l.AllowanceMM < l.HoleMM, "finish_allowance", MM(l.AllowanceMM), "less than the finished hole, %.4g mm", l.HoleMM)
	n.That(l.BushMM <= l.ThicknessMM, "bush_length", MM(l.BushMM), "at most lug_thickness, %.4g mm", l.ThicknessMM)
	n.That(l.RadiusMM >= least, "lug_radius", MM(l.RadiusMM), "at least %.4g mm round this pin", least)
}

// Hold adds the pin along y through a point, and its load point. The ears are named inboard first; the head is outboard, so that the pin draws that
// way.
func (l BodyLug) Hold(b *part.Bracket, ears [2]string, earMM float64, material string, at part.Vec) {
	off := l.Inner() + earMM/2
	seat := func(k int, y float64) part.Seat {
		return part.Seat{Thing: ears[k], AtMM: y, ThicknessMM: earMM, HoleMM: l.HoleMM, Material: material}
	}
	ends, past := l.ends(ears)
	stack := 2 * (off + earMM/2)
	long := math.Ceil(stack + l.PlayMM + past*l.PinMM)
	b.Pins = append(b.Pins, part.Pin{
		ID: "pin", DiaMM: l.PinMM, Material: l.PinMaterial, LengthMM: long, Axis: part.Vec{Y: 1}, Center: at,
		Seats: []part.Seat{
			seat(0, -off), {Loads: true, ThicknessMM: l.ThicknessMM, HoleMM: l.HoleMM, BushMM: l.BushMM, Material: l.Material}, seat(1, off),
		},
		Ends: ends, TravelMM: l.GapMM, Turns: l.Turns,
	})
	b.Notes = append(b.Notes, PinNote(l.PinMM, l.PinMaterial, l.endNote(long, stack)))
	b.LoadPoints = append(b.LoadPoints, part.LoadPoint{
		ID: "pin", At: at, Axis: part.Vec{Y: 1},
		// A loose pin between gaps holds no couple; about its own axis it turns.
		Released: []part.Component{part.MxPlus, part.MxMinus, part.MyPlus, part.MyMinus, part.MzPlus, part.MzMinus},
	})
}

// ends are what keeps the pin in, inboard first, and the length that they need past the ears as a multiple of its diameter: washer, nut and some
// thread; a retaining bolt with its edges; the land beyond a keeper's slot. Common practice, no source.
func (l BodyLug) ends(ears [2]string) (ends [2]part.PinEnd, past float64) {
	head := part.PinEnd{Kind: part.EndHead, BearsOn: ears[1]}
	switch l.Ends {
	case "head and nut":
		return [2]part.PinEnd{{Kind: part.EndNut, BearsOn: ears[0], PlayMM: l.PlayMM}, head}, 1.15
	case "head and retaining bolt":
		return [2]part.PinEnd{{Kind: part.EndRetainer, BearsOn: ears[0], PlayMM: l.PlayMM}, head}, 1
	}
	keeper := part.PinEnd{Kind: part.EndKeeper, BearsOn: ears[1], PlayMM: l.PlayMM}
	return [2]part.PinEnd{keeper, keeper}, 0.5
}

// endNote says how long the pin is, and where what keeps it may be cut into it: past the ears' outer faces, so that no shear plane is in hole or slot. Sizes of retaining
// bolt and keeper are not among the parameters.
func (l BodyLug) endNote(longMM, stackMM float64) string {
	switch l.Ends {
	case "head and nut":
		return NutEnd(longMM, stackMM)
	case "head and retaining bolt":
		return fmt.Sprintf("%s under the head; no edge of its cross hole within %s of it; retaining bolt, the maker's choice, with washer and nut", MM(longMM), MM(stackMM+l.PlayMM))
	}
	return fmt.Sprintf("%s over all; its slot for the keeper beyond one ear's outer face, none in the %s between the two; keeper plate, the maker's choice", MM(longMM), MM(stackMM))
}

// PinNote says to the maker what a pin is.
func PinNote(diaMM float64, material, ends string) string {
	return fmt.Sprintf("pin: %s round of %s, %s", MM(diaMM), material, ends)
}

// NutEnd says of a pin with head and nut how long it is and where its thread may begin: past the ears' outer faces, so that no shear plane is in thread.
func NutEnd(longMM, stackMM float64) string {
	return fmt.Sprintf("%s under the head; no thread within %s of it; washer, castle nut and cotter", MM(longMM), MM(stackMM))
}
