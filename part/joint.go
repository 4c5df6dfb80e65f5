package part

import "lugwright/geometry/shape"

// Pin is a round pin through a row of seats.
type Pin struct {
	ID       string
	Mark     string
	DiaMM    float64
	Material string
	LengthMM float64
	Axis     Vec    // unit direction; seats are measured along it
	Center   Vec    // the point of the axis from which seats are measured
	Seats    []Seat // in order along the axis
	Ends     [2]PinEnd
	TravelMM float64 // the loaded seat may shift this far either way within the gaps
	Turns    bool    // the pin or lug turns under full load
}

// Seat is one plate, lug or bush on a pin.
type Seat struct {
	Thing       string // plate of the bracket; empty for the body's own lug
	Loads       bool   // true for the seat that brings the load, false for one that supports the pin
	AtMM        float64
	ThicknessMM float64
	HoleMM      float64
	BushMM      float64 // bush bore length where a bush is fitted, else 0
	Material    string
}

// PinEnd is what keeps a pin in: it ties the ears together only when the far end does too.
type PinEnd struct {
	Kind    EndKind
	BearsOn string // the plate whose outer face it bears on
	PlayMM  float64
	Size    string // thread of a retaining bolt, else empty
}

// EndKind names what is at the end of a pin.
type EndKind string

const (
	EndHead     EndKind = "head"
	EndNut      EndKind = "nut"
	EndKeeper   EndKind = "keeper"
	EndRetainer EndKind = "retaining bolt"
)

// EndKinds lists every end, in the order of the wire format.
func EndKinds() []EndKind { return []EndKind{EndHead, EndNut, EndKeeper, EndRetainer} }

// BoltGroup is a pattern of like bolts through a faying plane. Pose lies in that plane; W points from the support into
// the bracket, so a force along +W pulls the joint apart.
type BoltGroup struct {
	ID        string
	Pose      Pose
	Points    []shape.Point
	Size      string // "M12", "1/2-13"
	DiaMM     float64
	Grade     string
	HoleMM    float64
	GripMM    float64
	SameAs    string // the group whose bolts these are, listed once more for a further shear plane; empty: its own
	ThreadsIn bool   // threads in the shear plane
	// Preload is what tightening puts into each bolt, as a part of the tensile strength of its thread; 0 where none is stated.
	Preload float64
	// SlipC is the slip coefficient of the faying faces where the joint must not slip; 0 where it may.
	SlipC  float64
	Plies  [2]Ply    // bracket side first, support side second
	Patch  shape.Box // contact patch of the faying faces in the pose's plane; bolts pry about its edges
	Across [2]Pry    // how far the bracket-side ply bends at the bolts, along U and along V
}

// MaxPreload and MaxSlipC are over what codes know: 0.70 of the bolt's tensile strength, and a slip coefficient of 0.50.
const (
	MaxPreload = 0.75
	MaxSlipC   = 0.6
)

// Pry holds what a prying check needs for one direction: distances in mm from the bolt line to the face of the part that
// stands on the ply (B) and to the ply's free edge (A), and the length of ply that serves one bolt (P). All zero: none.
type Pry struct{ BMM, AMM, PMM float64 }

// Ply is one of the two things that bolts clamp.
type Ply struct {
	Thing       string // plate, member face ("base.b") or support
	ThicknessMM float64
	Material    string
	EdgeMM      float64 // least distance from a hole centre to an edge of the ply; 0 when no edge is near
	PitchMM     float64 // least distance between hole centres
}

// WeldKind names a weld.
type WeldKind string

const (
	Fillet WeldKind = "fillet"
	PJP    WeldKind = "partial penetration"
	CJP    WeldKind = "complete penetration"
	Plug   WeldKind = "plug"
)

// WeldKinds lists every weld kind, in the order of the wire format.
func WeldKinds() []WeldKind { return []WeldKind{Fillet, PJP, CJP, Plug} }

// WeldGroup is the welds of one kind at one root of one plate.
type WeldGroup struct {
	ID        string
	Joins     [2]string // the plate that stands, and what it stands on; of a plug the plate with the hole, and what it lies on
	Kind      WeldKind
	LegMM     float64 // of a fillet; effective throat of a groove weld, which of complete penetration is the thickness; how deep a plug is filled
	WidthMM   float64 // of a plug or slot; 0 for any other weld
	Electrode string  // filler grade, e.g. "E70"
	Segments  []WeldSegment
	BothSides bool // welded from both faces of the plate: no bending about the root of a one-sided weld
	AlongEdge bool // the fillet runs along the plate's own edge, as on a lap: its leg is limited by the thickness
}

// WeldSegment is one straight run, measured along the root line. Of a plug or slot it is the whole length over its round ends, in the faying plane: of a
// plug a diameter.
type WeldSegment struct{ A, B Vec }

// Rods is a pattern of like hanger rods; Pose as for bolts, W from the hung thing up to its support.
type Rods struct {
	ID           string
	Pose         Pose
	Points       []shape.Point
	Size         string // "M12", "1/2-13"
	DiaMM        float64
	Grade        string
	FreeMM       float64
	FixedTop     bool
	FixedFoot    bool
	EngagementMM float64 // thread engagement in each coupling nut
	Stopped      bool    // stops hold the side force
	StopMM       float64 // at this height over the pose's plane
}

// Contact is a pair of faces that press and do not pull. Pose lies in the face, W from the second thing to the first.
type Contact struct {
	ID        string
	Things    [2]string
	Pose      Pose
	Patch     shape.Box
	GapMM     float64
	PreloadN  float64
	WrapRad   float64 // contact angle round a tube for a curved seat, 0 for a flat one
	FrictionC float64 // coefficient of friction; zero unless stated
}

// Composite says that plates work as one section between two points along a sweep.
type Composite struct {
	ID       string
	Things   []string // the flange plate first, then the webs that stand on it
	From, To Vec      // stretch of the sweep over which they act together
	Welds    []string // weld groups that tie the webs to the flange
	Rule     LagRule  // how much of the flange works with the webs
	SpanMM   float64  // length of the cantilever the rule speaks of
}

// LagRule names an effective-width rule for a flange that is reached through its web.
type LagRule string

const (
	// LagCantilever is the shear-lag rule for a cantilever, EN 1993-1-5:2006, 3.2 and 3.3.
	LagCantilever LagRule = "shear lag, cantilever"
)

// Splice is a butt joint of a member or plate with lap plates over it.
type Splice struct {
	ID       string
	Thing    string
	Butt     string // weld group of the butt, empty when it is left open
	GapMM    float64
	Laps     []string // plates
	LapWelds []string
}

// SupportKind names what a bracket stands on.
type SupportKind string

const (
	RailWeb     SupportKind = "rail web"
	RailFlange  SupportKind = "rail flange"
	TubeWall    SupportKind = "tube wall"
	CrossMember SupportKind = "cross member"
	BodyFrame   SupportKind = "body frame"
)

// SupportKinds lists every support, in the order of the wire format.
func SupportKinds() []SupportKind {
	return []SupportKind{RailWeb, RailFlange, TubeWall, CrossMember, BodyFrame}
}

// Support is what the bracket stands on and its load path ends in.
type Support struct {
	ID          string
	Kind        SupportKind
	ThicknessMM float64
	Material    string
	ClearMM     float64    // clear height of a web between flanges, or the diameter of a tube
	Couple      CouplePath // what takes the couple that bends the wall out of its plane
}

// CouplePath names what takes the couple from a bracket beside a rail.
type CouplePath string

const (
	CoupleByCrossMember CouplePath = "cross member at this station"
	CoupleByWall        CouplePath = "wall alone"
	// CoupleByTurning: the end of a member that spans between two supports turns as far as the wall gives way, so that no couple need be held.
	CoupleByTurning CouplePath = "end free to turn"
)

// CouplePaths lists every couple path, in the order of the wire format.
func CouplePaths() []CouplePath {
	return []CouplePath{CoupleByCrossMember, CoupleByWall, CoupleByTurning}
}
