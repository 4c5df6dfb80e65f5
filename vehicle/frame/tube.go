package frame

import (
	"math"

	"lugwright/part"
	"lugwright/vehicle/field"
)

// CrossTube is a round tube across the frame, held at both rails.
type CrossTube struct {
	Name     string
	XMM, ZMM float64 // its axis
	YMM      float64 // where it is held, to both sides of the centreline
	DiaMM    float64
	WallMM   float64
}

func (f *Frame) tube(name string) *CrossTube {
	for i := range f.Tubes {
		if f.Tubes[i].Name == name {
			return &f.Tubes[i]
		}
	}
	return nil
}

func (t CrossTube) check(bad *field.Errors, at string) {
	bad.Place(at+".x_mm", t.XMM)
	bad.Place(at+".z_mm", t.ZMM)
	bad.Positive(at+".y_mm", t.YMM, 5000)
	if bad.Positive(at+".dia_mm", t.DiaMM, maxSection) && !(t.WallMM > 0 && t.WallMM <= t.DiaMM/2) {
		bad.Refuse(at+".wall_mm", number(t.WallMM), "more than 0 and at most half the diameter, "+number(t.DiaMM/2))
	}
}

// TubeBending is a cross tube as a beam between the rails whose ends are free to turn, which is the unfavourable way for its middle. Where the mounts may
// share in several ways it is under the one with the worst stress; torque, held end and force along it are the greatest of any.
type TubeBending struct {
	Tube, Mount   string
	SpanMM        float64
	LeftN, RightN part.Vec // force of the tube on each rail; what acts along the tube is with whichever rail stops it, and not here
	VerticalNMM   float64  // moment in the vertical plane beside the mount, the greater of its two sides
	ForeAftNMM    float64  // and in the horizontal plane
	MomentNMM     float64  // both together
	TorqueNMM     float64  // about the tube's axis, of the fore-aft force at its height; nothing here holds it
	StressMPa     float64  // MomentNMM over the tube's elastic modulus
	HeldEndNMM    float64  // moment at the worse end if both ends are held against turning, vertical force alone
	AlongN        float64  // force along the tube, which collars or the weld must hold
	Share         string   // that way; empty: the loads as stated
}

// bend is statics of a beam on two supports: a force at distance a from the left one, with a couple from the side force's height.
func (t *CrossTube) bend(l *Load) TubeBending {
	span := 2 * t.YMM
	a := t.YMM - l.At.Y // from the left end
	b := span - a
	height := l.At.Z - t.ZMM
	couple := -height * l.Force.Y // about x, as y Fz - z Fy
	// Rails at +y and -y: the sum is Fz, the moment about x is y Fz - height Fy.
	left := l.Force.Z*b/span + couple/span
	right := l.Force.Z*a/span - couple/span
	r := TubeBending{
		Tube: t.Name, Mount: l.Mount, SpanMM: span,
		LeftN:       part.Vec{X: l.Force.X * b / span, Z: left},
		RightN:      part.Vec{X: l.Force.X * a / span, Z: right},
		VerticalNMM: max(math.Abs(left*a), math.Abs(right*b)),
		ForeAftNMM:  math.Abs(l.Force.X) * a * b / span,
		TorqueNMM:   math.Abs(l.Force.X * height),
		AlongN:      l.Force.Y,
		HeldEndNMM:  math.Abs(l.Force.Z) * a * b / (span * span) * max(a, b),
	}
	r.MomentNMM = math.Hypot(r.VerticalNMM, r.ForeAftNMM)
	bore := t.DiaMM - 2*t.WallMM
	modulus := math.Pi * (math.Pow(t.DiaMM, 4) - math.Pow(bore, 4)) / (32 * t.DiaMM)
	r.StressMPa = r.MomentNMM / modulus
	return r
}
