package part

import (
	"math"

	"lugwright/geometry/shape"
)

// Member is bought section cut to length: it is drilled, not profile-cut.
type Member struct {
	ID       string
	Name     string // trade word, e.g. "angle"
	Mark     string
	Material string
	Profile  Profile
	LengthMM float64
	Holes    []FaceHole
	Pose     Pose // U runs along the length; see Profile for V and W
}

// ProfileKind names a section.
type ProfileKind string

const (
	// Angle: heel edge along U at the origin. The A leg reaches A along V with its outer face in the plane w = 0 and its
	// steel towards +W; the B leg reaches B along W with its outer face in the plane v = 0.
	Angle ProfileKind = "angle"
	// RoundTube: axis along U through the origin; A is the outside diameter.
	RoundTube ProfileKind = "round tube"
	// RectTube: axis along U through the origin; A is the size along V, B along W.
	RectTube ProfileKind = "rectangular tube"
	// RoundBar: axis along U through the origin; A is the diameter.
	RoundBar ProfileKind = "round bar"
	// FlatBar: axis along U through the origin; A is the width along V, T the thickness along W.
	FlatBar ProfileKind = "flat bar"
)

// ProfileKinds lists every profile, in the order of the wire format.
func ProfileKinds() []ProfileKind {
	return []ProfileKind{Angle, RoundTube, RectTube, RoundBar, FlatBar}
}

// Profile is a section with its sizes in mm.
type Profile struct {
	Kind   ProfileKind
	AMM    float64
	BMM    float64
	TMM    float64 // wall or leg thickness
	RootMM float64 // root radius (angle) or outside corner radius (tube)
}

// FaceHole is a hole in one flat face of a member: Center.X runs along the length, Center.Y across the face.
type FaceHole struct {
	Face Face
	Hole
}

// Face names a flat face of a member.
type Face string

const (
	LegA Face = "a" // the leg along V: Center.Y from the heel
	LegB Face = "b" // the leg along W: Center.Y from the heel
)

// Legs gives an angle's two legs as plates, so that sections and edge distances are found in them as in any plate. The
// heel square belongs to leg B. Their names are the member's with ".a" and ".b" behind.
func (m *Member) Legs() (a, b Plate) {
	t, p := m.Profile.TMM, m.Pose
	a = m.leg(LegA, t, m.Profile.AMM, Pose{p.At(0, 0, t/2), p.U, p.V})
	// U x W = -V: the leg's own normal points out of its back face.
	b = m.leg(LegB, 0, m.Profile.BMM, Pose{p.At(0, t/2, 0), p.U, p.W()})
	return a, b
}

// Ring gives a round tube as a plate with a bore, seen along its axis from its far end: as thick as the tube is long.
func (m *Member) Ring() Plate {
	p := m.Pose
	return Plate{
		ID: m.ID, Name: m.Name, Mark: m.Mark, ThicknessMM: m.LengthMM, Material: m.Material, Outer: shape.Circle(shape.Point{}, m.Profile.AMM),
		Holes: []Hole{{ID: "bore", DiaMM: m.Profile.AMM - 2*m.Profile.TMM, Purpose: ForPin}},
		Pose:  Pose{p.At(m.LengthMM/2, 0, 0), p.V, p.W()},
	}
}

// VolumeMM3 is the sawn and drilled member's. Rolled toes and mill tolerances are left out.
func (m *Member) VolumeMM3() float64 {
	v := m.Profile.Section().Area() * m.LengthMM
	for _, h := range m.Holes {
		v -= math.Pi / 4 * h.DiaMM * h.DiaMM * m.Profile.TMM
	}
	return v
}

// OnPin says whether a member is a ring round a pin, such as a boss or a spacer.
func (m *Member) OnPin(p *Pin) bool {
	off := p.Center.Sub(m.Pose.Origin)
	off = off.AddScaled(-off.Dot(m.Pose.U), m.Pose.U)
	return m.Profile.Kind == RoundTube && off.Norm() < 0.01 && math.Abs(m.Pose.U.Dot(p.Axis)) > 1-1e-9
}

func (m *Member) leg(face Face, from, to float64, pose Pose) Plate {
	leg := Plate{
		ID: m.ID + "." + string(face), Name: m.Name + " leg", Mark: m.Mark, ThicknessMM: m.Profile.TMM, Material: m.Material,
		Outer: shape.Rect(shape.Point{X: 0, Y: from}, shape.Point{X: m.LengthMM, Y: to}),
		Pose:  pose,
	}
	for _, h := range m.Holes {
		if h.Face == face {
			leg.Holes = append(leg.Holes, h.Hole)
		}
	}
	return leg
}
