package fab

// Rules of room. Where no source is named they are common practice, no source.

// Bolt spacing and edges as multiples of the bolt's nominal diameter.
const (
	// PitchPerDia is the least distance between bolt centres: 2 2/3 d, AISC 360-16 J3.3.
	PitchPerDia = 8.0 / 3
	// EdgePerDia is the least distance from a bolt centre to a cut edge: about 1 1/4 d, as AISC 360-16 Table J3.4.
	EdgePerDia = 1.25
	// SocketPerDia is the room from a bolt centre to a part that stands beside it, less that part's weld, so that a washer lies
	// flat and a socket passes. Common practice, no source.
	SocketPerDia = 1.2
)

const (
	// PaintGapMM keeps a brush's room between steel and a wall it does not touch. Common practice, no source.
	PaintGapMM = 2
	// TorchGapMM is the least clear gap, beyond the two fillets in it, that a torch works in. Common practice, no source.
	TorchGapMM = 12
	// TorchDepth is how deep a torch reaches into a pocket open at one end only, as a multiple of the pocket's width. Common
	// practice, no source.
	TorchDepth = 2.5
	// LigamentPerDia is the least steel beside a pin hole as a multiple of the pin; strength asks for more. Common practice,
	// no source.
	LigamentPerDia = 0.25
	// LigamentMM is the least steel beside any hole whatever its size. Common practice, no source.
	LigamentMM = 3
)

// Snipe is the leg of the 45 degree cut at a gusset's inner corner: it clears the fillet that passes there, or the root
// radius of a rolled angle, by the clearance. Common practice, no source: clearance 3 to 6 mm.
func Snipe(legMM, clearanceMM float64) float64 { return legMM + clearanceMM }

// BoltEdge is the least distance from a bolt's centre to an edge.
func BoltEdge(diaMM float64) float64 { return EdgePerDia * diaMM }

// BoltPitch is the least distance between bolt centres.
func BoltPitch(diaMM float64) float64 { return PitchPerDia * diaMM }

// SocketRoom is the least distance from a bolt's centre to the face of a part welded beside it.
func SocketRoom(diaMM, weldLegMM float64) float64 { return SocketPerDia*diaMM + weldLegMM }

// Ligament is the least steel beside a hole for a pin.
func Ligament(pinMM float64) float64 { return max(LigamentMM, LigamentPerDia*pinMM) }
