package strength

// A feature is something a limit state can be applied to, with the demand of one load case on it: N, mm, MPa, N*mm.

import "math"

// PinPlane is one shear plane of a pin.
type PinPlane struct {
	V      float64 // shear force on the plane
	D      float64 // pin diameter
	Fy, Fu float64
}

// PinSpan is a pin between its supporting seats.
type PinSpan struct {
	M, V    float64 // largest bending moment and shear
	D       float64
	Fy, Fu  float64
	Service float64 // load factor in M, V and P: serviceability is judged on service loads
	P       float64 // force of the loaded seat
	Span    float64 // between the middles of its supporting seats
	Play    float64 // least of hole over pin among its seats; 0 where no hole is stated
	E       float64
}

// Bore is a pin hole in a plate.
type Bore struct {
	P      float64 // resultant force on the hole, in the plate's plane
	Pull   float64 // component of P towards the free end: positive when it pulls the plate apart
	D, Dh  float64 // pin and finished hole
	T      float64 // thickness of this plate at the hole
	A      float64 // clear distance hole edge to plate end along Pull
	B      float64 // clear distance hole edge to side edge, the smaller
	W      float64 // plate width through the hole centre
	OffMM  float64 // hole centre off the middle of the width
	Least  float64 // least clear distance from the hole to any edge
	Fy, Fu float64 // of the plate
	FyPin  float64
	E      float64 // modulus of elasticity of the plate
	EPin   float64
	Turns  bool // the pin turns under full load
	// Doubler: a plate round the hole, welded to the one that carries on to the root. It takes its part by thickness.
	Doubler bool
	// Service is the load factor in P: serviceability is judged on service loads.
	Service float64
}

// Tears gives the force that can tear the plate at its hole, and the clear distances to the end and to the side that hold it; not ok when
// the force presses the plate towards its root, where it bears on the plate behind the hole. A force askew to the plate's axis is taken
// whole against the least clear distance round the hole, and of one askew towards the root the part across: codes speak of axial force
// only, and this is our cautious reading.
func (f *Bore) Tears() (p, a, b float64, ok bool) {
	across, _ := f.Across()
	square := across <= 1e-6*f.P
	switch {
	case f.Pull < 0 && square:
		return 0, 0, 0, false
	case f.Pull < 0:
		return across, f.Least, f.Least, true
	case !square:
		return f.P, f.Least, f.Least, true
	}
	return f.P, f.A, f.B, true
}

// Across is the part of the force that is square to the plate's axis, and the clear distance from the hole to the farther side.
func (f *Bore) Across() (p, side float64) {
	return math.Sqrt(max(f.P*f.P-f.Pull*f.Pull, 0)), f.W/2 + f.OffMM - f.Dh/2
}

// Pressed is why a force towards the root tears nothing.
const Pressed = "the force presses the plate towards its root"

// Cut is a section through one plate or through several that act together. Axis a bends the section about its weak or
// flatwise axis, b about the strong or edgewise one.
type Cut struct {
	N          float64 // axial force, tension positive
	Va, Vb     float64 // shear forces that go with Ma and Mb
	Ma, Mb     float64 // bending moments, absolute
	T          float64 // torsion about the shear centre, absolute
	Area       float64 // whole area
	AreaVa     float64 // area that resists Va, the parts that run along it
	AreaVb     float64
	Za, Sa     float64 // plastic and elastic modulus; Za is 0 for a section of several plates
	Zb, Sb     float64
	J          float64
	TMax       float64 // thickest part
	FreeLength float64 // from the cut to the load, for lateral buckling
	Depth      float64 // chord of a single rectangle
	R          float64 // least radius of gyration
	Rect       bool    // a single rectangle
	Net        bool    // through a hole
	HoleT      float64 // thickness that the holes go through, all together
	Fy, Fu     float64
	E          float64 // least modulus of elasticity
}

// Axial is the size of the axial force, and its sense.
func (f *Cut) Axial() (float64, Sense) {
	if f.N < 0 {
		return -f.N, Pressing
	}
	return f.N, EitherWay
}

// WeldLine is the most stressed point of a weld group.
type WeldLine struct {
	Q       float64 // force per unit length of one weld line, resultant
	Leg     float64 // of a fillet; throat of a groove weld, through the plate half the thickness for each line; depth of a plug
	FEXX    float64
	T1, T2  float64 // the plates joined
	Fy, Fu  float64 // of the first plate
	Fy2     float64 // of the second; 0 when not known
	Fu2     float64
	Length  float64 // shortest segment
	Longest float64 // longest segment
	Bare    bool    // no run of it counts, and nothing beside it carries its load
	Kind    string
	// BothSides: the plate has a weld on either face, which share its thickness.
	BothSides bool
	AlongEdge bool // the weld runs along the plate's own edge
	// Backed: another plate's weld stands behind this one on the far face of the second plate, and shares its thickness.
	Backed bool
	// N and V are the force per length across and along the joint: of a groove weld through the plate at the plate's faces, of a plug square to and in the faying
	// plane. Each at its greatest; 0 for other welds.
	N, V float64
	// InPlate: the weld holds a plate, Butt: edge to edge with another. Section is what a weld through the plate is as strong as, and is checked; empty for none.
	InPlate, Butt bool
	Section       string
	// Of a plug or slot: width, length over its round ends, least distance of its middle to the next's, of slots across their length and, OnLine, along it; 0 for
	// none.
	Width, Run, Pitch, OnLine float64
	// FEY is the filler's yield strength, 0 where its class states none.
	FEY float64
}

// LeastKnown is the lesser of two values, of which the second is 0 where it is not known.
func LeastKnown(a, b float64) float64 {
	if b > 0 {
		return min(a, b)
	}
	return a
}

// BesideWeld is the plate beside a weld that shears first: its thickness, the weld lines that share it, its strengths. A second plate
// that is not known is left out.
func (l *WeldLine) BesideWeld() (t, lines, fy, fu float64) {
	t, lines, fy, fu = l.T1, 1+Flag(l.BothSides), l.Fy, l.Fu
	if n := 1 + Flag(l.Backed); l.T2 > 0 && l.Fu2*l.T2/n < fu*t/lines {
		return l.T2, n, l.Fy2, l.Fu2
	}
	return t, lines, fy, fu
}

// Flag is a yes or no as the given of a limit state: 1 or 0.
func Flag(yes bool) float64 {
	if yes {
		return 1
	}
	return 0
}

// WeldFlow is shear flow between a web and its flange.
type WeldFlow struct {
	Q     float64 // N/mm on the joint
	Lines float64 // weld lines that carry it
	Leg   float64
	FEXX  float64
	T     float64 // thinner plate
	Fu    float64
	Fu2   float64 // of the other plate; 0 when not known
	// Yield strengths of both plates, the second 0 when not known, and of the filler, 0 where its class states none.
	Fy, Fy2, FEY float64
}

// Bolt is the worst bolt of a group.
type Bolt struct {
	V, T      float64 // shear and tension
	D         float64 // nominal diameter
	Fub       float64
	ThreadsIn bool
	Grade     string
	As        float64 // tensile stress area
	FuNominal float64 // nominal strength of a metric property class; 0 for other grades
	Dh        float64 // hole
	Flats     float64 // head, across its flats
	Joint     float64 // length of the group along its force
	Preload   float64 // part of F_u A_s that tightening puts in; 0 where none is stated
	SlipC     float64 // slip coefficient of the faying faces
	OneRow    bool    // of a lap on one face alone, with one row of bolts across the force
}

// BoltSet is all bolts of a group, each at the tension of the worst.
type BoltSet struct {
	N          float64 // bolts
	T          float64 // tension of the worst
	Service    float64 // load factor in T
	Fp, Fy, Fu float64 // proof, yield and tensile strength of the grade; no proof where its standard has none
	Bolt       Bolt    // one of them, without its load
}

// Thread is a bolt's or rod's thread in a tapped ply.
type Thread struct {
	T        float64 // tension
	Service  float64 // load factor in T
	D, Pitch float64
	L        float64 // engaged
	Fub, Fu  float64 // tensile strength of the bolt and of the ply
	As       float64 // stress area of the bolt
	Preload  float64 // stated, as a part of Fub As; 0 for none
}

// Rod is one hanger rod.
type Rod struct {
	N        float64 // force along it, tension positive
	V        float64 // side force
	L        float64 // free length
	Held     bool    // both ends held against turning
	D, Pitch float64
	Engaged  float64 // thread in its coupling nut or tapped end, 0 where nuts on plates hold it
	Fy, Fu   float64
	Service  float64 // load factor in N and V

	Sheet, Under     float64 // tray that its foot stands in: thickness, width under the washer or nut; 0 for none
	SheetFy, SheetFu float64
}

// PullThrough is a sheet on a rod's nut, with or without a spreader washer between.
type PullThrough struct {
	T            float64 // pull of the rod
	Flats        float64 // nut, across its flats
	Side, Washer float64 // spreader washer, least side and thickness; 0 for none
	Hole         float64 // in the sheet
	Sheet        float64 // its thickness
	Fy, Fu       float64
}

// Seat is a pair of faces pressed together. U of the contact's pose runs along a tube's axis.
type Seat struct {
	F      float64
	Area   float64 // that presses; 0 when the force passes beside the faces
	Along  float64 // its length along U
	Fy, Fu float64 // of the weaker
	// Tube: the second face is a round tube's wall of outside diameter D and thickness T, borne on over Beta on either side of the middle.
	Tube           bool
	D, T, Beta     float64
	TubeFy, TubeFu float64
	Wall           float64 // F and what other seats bring to the same length of the tube's wall
	Service        float64 // load factor in F
}

// BoltBearing is one ply at one bolt.
type BoltBearing struct {
	V     float64
	D, Dh float64
	T     float64
	Edge  float64 // hole centre to the nearest edge, 0 when none is near
	Pitch float64 // hole centre to the nearest other hole, 0 when none is near
	Fy    float64
	Fu    float64
	Bolt  Bolt // in the hole
}

// Block is a piece of a ply that bolts in shear would tear out towards one edge: between two lines of bolts, with two planes in shear
// along the force, or open to a side edge, with one. One plane in tension across the force closes it.
type Block struct {
	V      float64 // shears of its bolts towards that edge
	Across float64 // and towards the side that it is open to
	Planes float64 // in shear
	Lgv    float64 // length of one shear plane, from the furthest row to the edge
	HolesV float64 // on one shear plane; the one at its end counts half
	LostV  float64 // what other openings take from all shear planes together
	Lgt    float64 // length of the tension plane
	HolesT float64 // on the tension plane
	LostT  float64 // what other openings take from it
	Even   bool    // the bolts of the group share the force towards the edge alike
	Dh, T  float64
	Fy, Fu float64
}

// EvenPull says whether the tension plane is pulled evenly: its bolts share the force alike, and it does not run across several lines of
// bolts to a side edge, where the line by the shear plane pulls less.
func (b *Block) EvenPull() bool { return b.Even && (b.Planes > 1 || b.HolesT < 1) }

// Bush is the bearing of a pin in its bush.
type Bush struct {
	P       float64 // force on the bush
	D, L    float64 // pin diameter, bearing length
	Service float64 // load factor in P: pressures are judged on service loads
	AtRest  bool    // P acts while nothing moves: wear is judged on it
}

// Fatigue is one detail under a spectrum: stress ranges with their cycles.
type Fatigue struct {
	Detail         FatigueDetail
	Leg, T         float64   // of a weld root: leg of its fillets, thickness of the plate that they hold
	Ranges, Cycles []float64 // MPa; as many of each
}

// FatigueDetail says what kind of detail a stress range is for.
type FatigueDetail string

const (
	WeldThroat   FatigueDetail = "weld throat"        // shear on the throat of a fillet
	WeldToe      FatigueDetail = "weld toe"           // normal stress in the plate at the toe of a transverse fillet
	WeldRoot     FatigueDetail = "weld root"          // normal stress in the plate that a pair of transverse fillets holds, for a crack from their roots
	OneSided     FatigueDetail = "weld from one face" // normal stress in the plate at a groove weld through it from one face, with its backing left
	PlugHole     FatigueDetail = "plug"               // normal stress on a section through a plug's hole
	NetSection   FatigueDetail = "hole"               // normal stress on a section through a hole
	PinHole      FatigueDetail = "pin hole"           // mean stress beside the hole of a pin
	BoltThread   FatigueDetail = "bolt thread"        // tension on the stress area
	LongWeld     FatigueDetail = "along a weld"       // normal stress in plates that a weld along the stress ties together
	WebEnd       FatigueDetail = "end of a web"       // normal stress in a plate where a gusset or rib welded along it ends
	CutEdge      FatigueDetail = "cut edge"           // normal stress in a plate away from welds and holes
	InwardCorner FatigueDetail = "inward corner"      // the same beside an arc of at least 10 mm by which its outline turns inwards, as cut
	ThickEnd     FatigueDetail = "end of a thick web" // the same where the gusset, rib or plate is over 20 mm thick

	WeldsEnd      FatigueDetail = "end of welds along the stress"                // normal stress in a plate held by welds along it alone, where they begin, or beside such a plate
	ThickWeldsEnd FatigueDetail = "end of welds along the stress, thicker plate" // the same in a plate over 12.7 mm thick, or beside one over 20 mm
)

// Prying is the bracket-side ply at a bolt in tension.
type Prying struct {
	T         float64 // bolt tension without prying
	Tc        float64 // available tension of one bolt, filled in by the basis
	B, A, P   float64
	D, Dh     float64
	Tply      float64
	Fy, Fu    float64
	Fub       float64
	V         float64 // shear that goes with T
	ThreadsIn bool
	Bolt      Bolt
}

// Outstand is a plate edge that stands free: a gusset or an ear above its gussets.
type Outstand struct {
	B, T  float64
	Fy, E float64
	Words string
}

// CornerPlate is a plate in a corner, loaded along its support, with a free edge across it.
type CornerPlate struct {
	Holed bool    // there is an opening in it
	P, E  float64 // force along the support, and its distance from it
	A, B  float64 // height along the support, reach from it
	T     float64
	Fy    float64
	// Modulus is that of elasticity.
	Modulus float64
}

// Wall is a support's wall bent out of its plane by the couple of a bolt group.
type Wall struct {
	M     float64 // couple about the wall's length, which bends it from flange to flange
	Mv    float64 // couple about its height
	N     float64 // pull
	T     float64
	Width float64 // width of wall that works
	Clear float64 // clear height between flanges
	Arm   float64 // distance between the pull and the push of M
	Fy    float64
}
