package whole

import (
	"lugwright/part"
	"lugwright/vehicle"
	"lugwright/vehicle/clearance"
	"lugwright/vehicle/drill"
	"lugwright/vehicle/finding"
	"lugwright/vehicle/frame"
	"lugwright/vehicle/hung"
	"lugwright/vehicle/lift"
)

// Answer is all that comes of a request. What was not asked is nil or empty.
type Answer struct {
	Report    vehicle.Report
	Moved     *vehicle.Report // what if; without the loads on brackets
	AsWeighed *vehicle.AsWeighed

	Frame *Frame
	Sweep []SweepRow

	Drilling  *drill.Report
	Subframe  []finding.Finding
	Clearance *clearance.Report
	Lift      *LiftPlan

	Trays        []TrayLoads
	Washers      []finding.Finding
	PlasticTanks []finding.Finding

	Warnings  []Warning // worst first
	Unchecked []string
}

// Frame is the frame under the mounts' reactions, for every state and case that has them.
type Frame struct {
	frame.Result
	Stands   []Stand  // every mount's, as taken
	ByPlace  []string // mounts whose stand was taken by their place, in words
	NoForces []string // states and cases left out, since a body is not held in them
	// WithoutStations is how many cases carry no stations: those that govern no rail, unless all were asked for.
	WithoutStations int
}

// SweepRow is one place of the moved mount.
type SweepRow struct {
	XMM       float64
	Mounts    []MountRange      // of the mount's body
	Unheld    []string          // states and cases that no reactions balance
	Governing []frame.Governing // none without a frame
	Warnings  []frame.Warning
}

// MountRange is the most that a mount sees over all states and cases, N, by stiffness.
type MountRange struct {
	Mount               string
	DownN               float64 // greatest force down on the frame; less than nought where it always pulls up
	DownState, DownCase string
	UpN                 float64 // greatest pull up on the frame; 0: none
	UpState, UpCase     string
	SideN, ForeAftN     float64 // greatest, without sign
}

// LiftPlan is the lift plan card with the body that it is for.
type LiftPlan struct {
	Body string
	Mass vehicle.Mass
	lift.Plan
}

// TrayLoads are the loads of a tray's rods in each state and case.
type TrayLoads struct {
	Tray   string
	States []TrayMass
	Cases  []hung.CaseLoads
}

// TrayMass is what a tray weighs in a state.
type TrayMass struct {
	State string // empty without a vehicle
	KG    float64
	At    part.Vec
}

// Severity says how bad a warning is.
type Severity string

const (
	Fails   Severity = "fails"   // over a rating, not held, a rule broken
	Mind    Severity = "mind"    // a result that someone must have seen: uplift, overhang, a range that reaches over a rating
	Unknown Severity = "unknown" // a number is missing without which something that matters is not known
)

// Severities lists all of them, worst first.
func Severities() []Severity { return []Severity{Fails, Mind, Unknown} }

// Warning is one thing to look at.
type Warning struct {
	Severity Severity
	Kind     string // "axle over rating", "uplift", "twist gap", "overhang", ...
	At       string // the place: a mount, a state, a rail; may be empty
	Words    string
}
