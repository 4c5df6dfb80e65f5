package fab

// A lug between the ears of the other side's fork.

import (
	"math"

	"lugwright/geometry"
	"lugwright/part"
)

// Fork is the other side of a lug's pin.
type Fork struct {
	PinMM, HoleMM, EarMM, GapMM float64
	EndMM                       float64 // pin's centre to the farthest of an ear's end
	PinMaterial, Material       string
	Turns                       bool
}

// ReadFork reads what ForkParams declares.
func ReadFork(v geometry.Values) Fork {
	return Fork{
		PinMM: v.MM("pin_diameter"), HoleMM: v.MM("pin_diameter") + v.MM("pin_clearance"), EarMM: v.MM("fork_thickness"), GapMM: v.MM("gap"), EndMM: v.MM("fork_end"),
		PinMaterial: v.Word("pin_material"), Material: v.Word("fork_material"), Turns: v.Word("turns") == "yes",
	}
}

// ForkParams are the parameters of a pin and the fork on it.
func ForkParams() []geometry.Param {
	return []geometry.Param{
		Length("pin_diameter", 6, 120, 25, "diameter of the pin"),
		Length("pin_clearance", 0.05, 5, 0.5, "finished hole less pin"),
		Length("finish_allowance", 0, 5, 1, "pin hole cut this much smaller, then reamed; 0 leaves it as cut"),
		Named("pin_material", "C45+N", "grade of the pin"),
		Choice("turns", "whether the lug turns on the pin under full load", "yes", "no"),
		Length("bush_length", 0, 200, 0, "bearing length of a bush in the lug, 0 for none"),
		Length("fork_thickness", 3, 100, 10, "thickness of each ear of the fork"),
		Length("fork_end", 8, 400, 38, "pin centre to the end of the fork's ears, their corners included: it swings about the pin"),
		Named("fork_material", "S355", "grade of the fork"),
		Length("gap", 0.2, 20, 2, "gap between lug and fork on each side"),
	}
}

// Check refuses a fork that leaves too little round its pin, or whose ears swing into what lies beside the lug: room is from the pin's centre to the
// nearest of that.
func (f Fork) Check(n *Needs, roomMM float64, words string) {
	least := f.HoleMM/2 + Ligament(f.PinMM)
	n.That(f.EndMM >= least, "fork_end", MM(f.EndMM), "at least %.4g mm round this pin", least)
	most := max(0, roomMM-PaintGapMM)
	n.That(f.EndMM <= most, "fork_end", MM(f.EndMM), "at most %.4g mm, so that the fork swings clear of the "+words, most)
}

// Hold adds the pin through a lug of a thickness, along y through a point, and the fork that holds it. For the pin it is one which of the two moves: the fork's
// ears carry it and the lug loads it.
func (f Fork) Hold(b *part.Bracket, lug, material string, thicknessMM, bushMM float64, at part.Vec) {
	off := thicknessMM/2 + f.GapMM + f.EarMM/2
	ear := func(y float64) part.Seat {
		return part.Seat{Thing: "fork", AtMM: y, ThicknessMM: f.EarMM, HoleMM: f.HoleMM, Material: f.Material}
	}
	b.Supports = append(b.Supports, part.Support{ID: "fork", Kind: part.BodyFrame, ThicknessMM: f.EarMM, Material: f.Material})
	b.Pins = append(b.Pins, part.Pin{
		ID: "pin", DiaMM: f.PinMM, Material: f.PinMaterial, LengthMM: math.Ceil(2*off + f.EarMM + f.PinMM), Axis: part.Vec{Y: 1}, Center: at,
		Seats: []part.Seat{ear(-off), {Thing: lug, Loads: true, ThicknessMM: thicknessMM, HoleMM: f.HoleMM, BushMM: bushMM, Material: material}, ear(off)},
		Ends:  [2]part.PinEnd{{Kind: part.EndKeeper}, {Kind: part.EndHead}}, TravelMM: f.GapMM, Turns: f.Turns,
	})
}

// LugPaths brings a force at a pin through a lug; square to the pin it passes the pin, along it the fork's face presses the lug. No couple is held.
func LugPaths(b *part.Bracket, at part.Vec, through ...string) {
	b.LoadPoints = append(b.LoadPoints, part.LoadPoint{
		ID: "pin", At: at, Axis: part.Vec{Y: 1},
		Released: []part.Component{part.MxPlus, part.MxMinus, part.MyPlus, part.MyMinus, part.MzPlus, part.MzMinus},
	})
	for _, c := range Forces() {
		way := append([]string{"pin"}, through...)
		if c == part.FyPlus || c == part.FyMinus {
			way = through
		}
		Through(b, "pin", at, []part.Component{c}, way...)
	}
}
