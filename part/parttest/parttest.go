// Package parttest holds a small bracket written by hand, for tests of what reads brackets. It never stands for a kind:
// its sizes were chosen to reach every feature of the model, not to carry a load.
package parttest

import (
	"math"

	"lugwright/geometry/shape"
	"lugwright/part"
)

// Ear is a tapered plate with a round head about a reamed pin hole, a lightening slot and an etched mark.
func Ear() part.Plate {
	head, r := shape.Point{X: 0, Y: 70}, 28.0
	left, right := shape.Point{X: -35, Y: 0}, shape.Point{X: 35, Y: 0}
	_, upRight, err := shape.TangentPoints(right, head, r)
	if err != nil {
		panic(err)
	}
	upLeft := shape.Point{X: -upRight.X, Y: upRight.Y}
	outer, err := shape.NewPath(left).Line(right).Line(upRight).ArcCenter(upLeft, head, true).Close()
	if err != nil {
		panic(err)
	}
	return part.Plate{
		ID: "ear-1", Name: "ear", Mark: "TB-L1", ThicknessMM: 12, Material: "S355", Outer: outer,
		Holes: []part.Hole{
			{ID: "pin", Center: head, DiaMM: 25.3, CutMM: 23, Purpose: part.ForPin, Finish: part.Reamed},
		},
		Cutouts: []shape.Loop{shape.Slot(shape.Point{X: -8, Y: 32}, shape.Point{X: 8, Y: 32}, 10)},
		Etch:    []part.Etch{{Text: "TB-L1", At: shape.Point{X: 0, Y: 11}, HeightMM: 6}},
		Pose:    part.Pose{Origin: part.Vec{X: -17, Y: 58, Z: 10}, U: part.Vec{Y: 1}, V: part.Vec{Z: 1}},
	}
}

// Gusset is a triangle with snipes at its corners and a concave edge.
func Gusset() part.Plate {
	outer := shape.Loop{
		{Point: shape.Point{X: 8, Y: 0}}, {Point: shape.Point{X: 45, Y: 0}}, {Point: shape.Point{X: 45, Y: 8}, Bulge: -0.2},
		{Point: shape.Point{X: 8, Y: 50}}, {Point: shape.Point{X: 0, Y: 50}}, {Point: shape.Point{X: 0, Y: 8}},
	}
	return part.Plate{
		ID: "gusset-1", Name: "gusset", Mark: "TB-L2", ThicknessMM: 8, Material: "S355", Outer: outer,
		Holes: []part.Hole{{ID: "drain", Center: shape.Point{X: 12, Y: 16}, DiaMM: 9, CutMM: 9, Purpose: part.ForDrain, Finish: part.AsCut}},
		Pose:  part.Pose{Origin: part.Vec{X: 23, Y: 58, Z: 10}, U: part.Vec{X: 1}, V: part.Vec{Z: 1}},
	}
}

// Backing is a rectangle with round corners, two holes that are only marked for the drill, and a bend line.
func Backing() part.Plate {
	outer, err := shape.RoundedRect(shape.Point{X: -75, Y: -30}, shape.Point{X: 75, Y: 30}, 10)
	if err != nil {
		panic(err)
	}
	drilled := func(id string, x float64) part.Hole {
		return part.Hole{ID: id, Center: shape.Point{X: x}, DiaMM: 13.5, Purpose: part.ForBolt, Finish: part.Drilled}
	}
	return part.Plate{
		ID: "backing", Name: "backing plate", Mark: "TB-L3", ThicknessMM: 10, Material: "S355", Outer: outer,
		Holes: []part.Hole{drilled("bolt-1", -50), drilled("bolt-2", 50)},
		Bends: []part.Bend{{A: shape.Point{X: -75, Y: 20}, B: shape.Point{X: 75, Y: 20}, AngleRad: math.Pi / 6, RadiusMM: 12}},
		Etch:  []part.Etch{{Text: "TB-L3", At: shape.Point{X: 2, Y: -10}, HeightMM: 5, AngleRad: 0.2}},
		Pose:  part.Pose{Origin: part.Vec{Y: -11, Z: 60}, U: part.Vec{X: 1}, V: part.Vec{Z: 1}},
	}
}

// Washer is a ring: outer loop and hole are full circles.
func Washer() part.Plate {
	return part.Plate{
		ID: "washer", Name: "spreader washer", Mark: "TB-L4", ThicknessMM: 6, Material: "S235",
		Outer: shape.Circle(shape.Point{X: 20, Y: 20}, 40),
		Holes: []part.Hole{{ID: "bolt", Center: shape.Point{X: 20, Y: 20}, DiaMM: 13.5, CutMM: 13.5, Purpose: part.ForBolt, Finish: part.AsCut}},
		Pose:  part.Pose{Origin: part.Vec{X: -200}, U: part.Vec{X: 1}, V: part.Vec{Y: 1}},
	}
}

// Plates are the plates above.
func Plates() []part.Plate { return []part.Plate{Ear(), Gusset(), Backing(), Washer()} }

// Bracket is a left-hand clevis of an angle, two ears, two gussets and a backing plate, with a pin and two bolts.
func Bracket() *part.Bracket {
	ear1, ear2, gusset1, gusset2 := Ear(), Ear(), Gusset(), Gusset()
	ear2.ID, ear2.Pose.Origin.X = "ear-2", 17
	gusset2.ID = "gusset-2"
	gusset2.Pose.Origin.X, gusset2.Pose.U.X = -23, -1
	return &part.Bracket{
		Name: "test", Kind: "test bracket", Hand: part.LeftHand,
		Params: []part.Param{
			{Name: "ear_width", Number: 70, Unit: "mm"}, {Name: "bend", Number: math.Pi / 6, Unit: "rad"},
			{Name: "bolts", Number: 2}, {Name: "bolt_size", Text: "M12"},
		},
		Plates:  []part.Plate{ear1, ear2, gusset1, gusset2, Backing()},
		Members: []part.Member{base()},
		Pins:    []part.Pin{pin()},
		Bolts:   []part.BoltGroup{bolts()},
	}
}

func base() part.Member {
	hole := func(id string, x float64) part.FaceHole {
		return part.FaceHole{Face: part.LegB, Hole: part.Hole{ID: id, Center: shape.Point{X: x, Y: 60}, DiaMM: 13.5, Purpose: part.ForBolt, Finish: part.Drilled}}
	}
	return part.Member{
		ID: "base", Name: "angle", Mark: "TB-L5", Material: "S355", LengthMM: 160,
		Profile: part.Profile{Kind: part.Angle, AMM: 100, BMM: 100, TMM: 10, RootMM: 12},
		Holes:   []part.FaceHole{hole("bolt-1", 30), hole("bolt-2", 130)},
		Pose:    part.Pose{Origin: part.Vec{X: -80}, U: part.Vec{X: 1}, V: part.Vec{Y: 1}},
	}
}

func pin() part.Pin {
	return part.Pin{
		ID: "pin", Mark: "TB-P1", DiaMM: 25, Material: "42CrMo4", LengthMM: 70, Axis: part.Vec{X: 1}, Center: part.Vec{Y: 58, Z: 80},
		Seats: []part.Seat{
			{Thing: "ear-1", AtMM: -17, ThicknessMM: 12, HoleMM: 25.3, Material: "S355"},
			{Loads: true, ThicknessMM: 18, HoleMM: 25.3, Material: "S355"},
			{Thing: "ear-2", AtMM: 17, ThicknessMM: 12, HoleMM: 25.3, Material: "S355"},
		},
		Ends: [2]part.PinEnd{{Kind: part.EndHead, BearsOn: "ear-1"}, {Kind: part.EndNut, BearsOn: "ear-2"}},
	}
}

func bolts() part.BoltGroup {
	return part.BoltGroup{
		ID: "base-bolts", Pose: part.Pose{Origin: part.Vec{Z: 60}, U: part.Vec{Z: 1}, V: part.Vec{X: 1}},
		Points: []shape.Point{{Y: -50}, {Y: 50}}, Size: "M12", DiaMM: 12, Grade: "8.8", HoleMM: 13.5, GripMM: 26,
		Plies: [2]part.Ply{{Thing: "base.b", ThicknessMM: 10, Material: "S355"}, {Thing: "backing", ThicknessMM: 10, Material: "S355"}},
	}
}
