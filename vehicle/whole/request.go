package whole

import (
	"lugwright/vehicle"
	"lugwright/vehicle/clearance"
	"lugwright/vehicle/drill"
	"lugwright/vehicle/frame"
	"lugwright/vehicle/hung"
	"lugwright/vehicle/lift"
)

// Request is all that may be asked of one vehicle. What is nil or empty is not asked, and is listed as not checked where it matters.
//
// A refused field is named by its path here in small letters, words parted by "_", units at the end: vehicle.items[2].mass_kg, bodies[0].mounts[1].at_mm.x,
// frame.axles[0].hangers_mm, stands[1].tube, sweep.x_mm[3], drilling.rails[0].holes[2].dia_mm, points[0].arm_mm, trays[0].rods[1].x_mm.
type Request struct {
	Vehicle *vehicle.Vehicle // nil: trays, drilling and the like alone
	Bodies  []vehicle.Body   // none: weights alone
	States  []vehicle.State  // one or more with a vehicle, none without
	Cases   []vehicle.Case   // one or more with a body, tray or frame

	Moves   []vehicle.Move // what if these moved: weights and reactions again
	Reading *Reading       // as weighed

	Frame       *frame.Frame
	Stands      []Stand // a mount not named stands by its place: on the rail of its side, or between the rails
	AllStations bool    // diagrams of every case, not of the governing ones alone
	Sweep       *Sweep

	Drilling *Drilling
	Twist    *clearance.Twist
	Points   []clearance.Point
	Lift     *Lift

	Trays        []Tray
	Washers      []hung.Washer
	PlasticTanks []hung.Tank
}

// Reading is what the scale showed in a state of the request.
type Reading struct {
	State string
	vehicle.Reading
}

// Stand is what of the frame a mount stands on.
type Stand struct {
	Body, Mount string // Body empty: vehicle.MainBody
	Rail        frame.Rail
	Tube        string // cross tube that it sits on, with Both; may be empty
}

// Sweep moves one mount along the vehicle.
type Sweep struct {
	Body, Mount string // Body empty: vehicle.MainBody
	XMM         []float64
}

// Drilling is the survey of the rails with what shall be drilled, and the guides to hold it against.
type Drilling struct {
	Rails            []drill.Rail
	Guides           []string      // ids of shipped guides
	OwnGuides        []drill.Guide // the maker's own, say
	SubframeFlangeMM float64       // 0: not stated
	RailFlangeMM     float64       // 0: the frame's
}

// Lift asks for the jacks' shares of a body with tanks dry and nothing optional aboard.
type Lift struct {
	Body  string // empty: vehicle.MainBody
	Jacks []lift.Jack
}

// Tray hangs on rods. What it weighs is its own mass, at its own place, with the named items and tanks of the vehicle, as each state has them.
type Tray struct {
	hung.Tray
	Carries []string
}
