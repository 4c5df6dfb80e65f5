package part

import (
	"fmt"
	"slices"

	"lugwright/geometry/shape"
)

// Plate is a part cut from flat stock. Its outline lies in the middle plane of the pose; the steel reaches half the
// thickness to either side.
type Plate struct {
	ID          string // name within the bracket, e.g. "ear-1"
	Name        string // trade word, e.g. "ear", "gusset"
	Mark        string // part mark etched on it; plates with one mark are the same piece
	ThicknessMM float64
	Material    string // grade name, e.g. "S355"
	Outer       shape.Loop
	Holes       []Hole
	Cutouts     []shape.Loop // openings that are not round
	Etch        []Etch
	Bends       []Bend
	RolledMM    float64 // inside radius the plate is rolled to, 0 when flat
	Pose        Pose
}

// Hole is a round hole of a plate or of a member's face.
type Hole struct {
	ID      string // name within the plate, e.g. "pin"
	Center  shape.Point
	DiaMM   float64 // finished diameter
	CutMM   float64 // diameter as cut on the table; smaller than DiaMM where a finish allowance is left
	Purpose Purpose
	Finish  Finish
	Thread  string // size of a tapped hole, whose DiaMM is the thread's nominal diameter; else empty
}

// Purpose says what a hole is for.
type Purpose string

const (
	ForPin       Purpose = "pin"
	ForBolt      Purpose = "bolt"
	ForRod       Purpose = "rod"
	ForWeld      Purpose = "weld access"
	ForDrain     Purpose = "drain"
	ForLightness Purpose = "lightening"
)

// Purposes lists every purpose, in the order of the wire format.
func Purposes() []Purpose {
	return []Purpose{ForPin, ForBolt, ForRod, ForWeld, ForDrain, ForLightness}
}

// Finish says how a hole reaches its finished size.
type Finish string

const (
	AsCut   Finish = "as cut"
	Drilled Finish = "drill"
	Reamed  Finish = "ream"
	Tapped  Finish = "tap"
)

// Finishes lists every finish, in the order of the wire format.
func Finishes() []Finish { return []Finish{AsCut, Drilled, Reamed, Tapped} }

// Etch is a mark engraved on the +W face: single-stroke text of the given height, middled on At both ways, so that it takes the same
// place on the mirrored plate.
type Etch struct {
	Text     string
	At       shape.Point
	HeightMM float64
	AngleRad float64
}

// Bend is a fold along the line A-B of the flat outline: the side to the left of A to B turns up (towards +W) by AngleRad about
// an inside radius.
type Bend struct {
	A, B        shape.Point
	AngleRad    float64
	RadiusMM    float64
	AllowanceMM float64 // length of the flat outline that the bend takes, half on either side of its line; 0 when it is not stated
}

// Shape is everything that is cut: the outer loop, then holes at their cut diameter (finished when cut is false).
func (p *Plate) Shape(cut bool) shape.Outline {
	o := shape.Outline{Outer: p.Outer, Holes: make([]shape.Loop, 0, len(p.Holes)+len(p.Cutouts))}
	for _, h := range p.Holes {
		dia := h.DiaMM
		if cut {
			dia = h.CutMM
		}
		if dia > 0 {
			o.Holes = append(o.Holes, shape.Circle(h.Center, dia))
		}
	}
	o.Holes = append(o.Holes, p.Cutouts...)
	return o
}

// Hole finds a hole by its name.
func (p *Plate) Hole(id string) (Hole, bool) {
	for _, h := range p.Holes {
		if h.ID == id {
			return h, true
		}
	}
	return Hole{}, false
}

// Bores are the cut-outs that are whole circles, as holes of that size: they are cut, and nothing is bolted, pinned or hung in them.
func (p *Plate) Bores() []Hole {
	var out []Hole
	for _, c := range p.Cutouts {
		if at, dia, ok := c.IsCircle(); ok {
			out = append(out, Hole{ID: fmt.Sprintf("bore-%d", len(out)+1), Center: at, DiaMM: dia, CutMM: dia, Purpose: "bore", Finish: AsCut})
		}
	}
	if len(out) == 1 {
		out[0].ID = "bore"
	}
	return out
}

// RoundHoles are the holes and the bores.
func (p *Plate) RoundHoles() []Hole { return slices.Concat(p.Holes, p.Bores()) }

// HoleAt is the hole's centre in bracket axes.
func (p *Plate) HoleAt(h Hole) Vec { return p.Pose.At(h.Center.X, h.Center.Y, 0) }
