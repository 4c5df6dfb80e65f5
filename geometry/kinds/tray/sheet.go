package tray

// Flat pattern, folds, holes.

import (
	"fmt"
	"math"

	"lugwright/geometry/shape"
	"lugwright/part"
)

// sheet is the flat pattern: the bottom with its four sides, the corners notched.
func (d *design) sheet() part.Plate {
	x, y := d.flat()
	reach := d.fold.Allowance() + d.flange()
	nx, ny := x-d.relief, y-d.relief
	fx, fy := x+reach, y+reach
	outer := shape.Polyline(
		shape.Point{X: -nx, Y: -fy}, shape.Point{X: nx, Y: -fy}, shape.Point{X: nx, Y: -ny}, shape.Point{X: fx, Y: -ny},
		shape.Point{X: fx, Y: ny}, shape.Point{X: nx, Y: ny}, shape.Point{X: nx, Y: fy}, shape.Point{X: -nx, Y: fy},
		shape.Point{X: -nx, Y: ny}, shape.Point{X: -fx, Y: ny}, shape.Point{X: -fx, Y: -ny}, shape.Point{X: -nx, Y: -ny},
	).Normalize()
	p := part.Plate{ID: "tray", Name: "tray", ThicknessMM: d.t, Material: d.v.Word("material"), Outer: outer, Pose: level(0)}
	for _, f := range d.folds() {
		p.Bends = append(p.Bends, part.Bend{A: f.a, B: f.b, AngleRad: math.Pi / 2, RadiusMM: d.fold.RadiusMM, AllowanceMM: d.fold.Allowance()})
	}
	for i, at := range d.rods {
		p.Holes = append(p.Holes, d.rodHoleAt(fmt.Sprintf("rod-%d", i+1), at))
	}
	if drain := d.v.MM("drain"); drain > 0 {
		p.Holes = append(p.Holes, part.Hole{ID: "drain", DiaMM: drain, CutMM: drain, Purpose: part.ForDrain, Finish: part.AsCut})
	}
	return p
}

func (d *design) rodHoleAt(id string, at shape.Point) part.Hole {
	return part.Hole{ID: id, Center: at, DiaMM: d.rodHole, CutMM: d.rodHole, Purpose: part.ForRod, Finish: part.AsCut}
}

// fold is a line along which a side turns up: what lies to the left of it, going from a to b.
type fold struct {
	name string
	a, b shape.Point
}

// folds are in the order of work: the short sides first, then the long ones, whose ends the brake reaches past them.
func (d *design) folds() []fold {
	x, y := d.flat()
	lx, ly := x+d.fold.Allowance()/2, y+d.fold.Allowance()/2
	nx, ny := x-d.relief, y-d.relief
	return []fold{
		{"short side, front", shape.Point{X: -lx, Y: -ny}, shape.Point{X: -lx, Y: ny}},
		{"short side, back", shape.Point{X: lx, Y: ny}, shape.Point{X: lx, Y: -ny}},
		{"long side, right", shape.Point{X: nx, Y: -ly}, shape.Point{X: -nx, Y: -ly}},
		{"long side, left", shape.Point{X: -nx, Y: ly}, shape.Point{X: nx, Y: ly}},
	}
}

// washer is a spreader washer under the sheet at a rod.
func (d *design) washer(i int) part.Plate {
	half, t := d.washerSide/2, d.v.MM("washer_thickness")
	at := d.rods[i]
	p := level(-(d.t + t) / 2)
	p.Origin = p.At(at.X, at.Y, 0)
	return part.Plate{
		ID: fmt.Sprintf("washer-%d", i+1), Name: "spreader washer", ThicknessMM: t, Material: d.v.Word("washer_material"),
		Outer: shape.Rect(shape.Point{X: -half, Y: -half}, shape.Point{X: half, Y: half}), Holes: []part.Hole{d.rodHoleAt("rod", shape.Point{})}, Pose: p,
	}
}

func level(z float64) part.Pose {
	return part.Pose{Origin: part.Vec{Z: z}, U: part.Vec{X: 1}, V: part.Vec{Y: 1}}
}
