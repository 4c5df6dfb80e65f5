package clearance

import (
	"fmt"
	"math"

	"lugwright/vehicle/field"
)

// Twist is how far one end of the frame is to turn against the other: an angle, or a wheel's lift over the track.
type Twist struct {
	AngleRad    float64 // 0 where the lift is given
	WheelLiftMM float64
	TrackMM     float64 // may be given with an angle, for comparison with the published tests
	BothAxles   bool    // diagonally opposite wheels are lifted so: the axles roll against each other
}

// Allowance is the angle that everything below is reckoned with.
type Allowance struct {
	AngleRad float64
	Words    []string
}

// MaxTwistRad bounds what is still a frame: 45 degrees.
const MaxTwistRad = math.Pi / 4

// Published tests of free movement, for comparison: wheels lifted diagonally.
const (
	guideLiftMM = 300 // guide B 4.2 (11.81 in)
	fireLiftMM  = 305 // fire-trade article on wildland specification (12 in)
)

// Allowance gives the angle. A lift h over a track b rolls an axle by atan(h/b), both axles against each other by twice that; the springs' part of it is
// not taken off, which asks for more room.
func (t Twist) Allowance() (Allowance, error) {
	var bad field.Errors
	t.check(&bad)
	if err := bad.Err(); err != nil {
		return Allowance{}, err
	}
	a := Allowance{AngleRad: t.AngleRad}
	if t.AngleRad == 0 {
		a.AngleRad = math.Atan2(t.WheelLiftMM, t.TrackMM)
		axles := "one axle"
		if t.BothAxles {
			a.AngleRad *= 2
			axles = "both axles, against each other"
		}
		a.Words = append(a.Words, fmt.Sprintf("a wheel lifted %.4g mm over a track of %.4g mm rolls %s by %.1f degrees", t.WheelLiftMM, t.TrackMM, axles, degrees(a.AngleRad)))
	}
	if t.TrackMM > 0 {
		lift := t.TrackMM * math.Tan(a.AngleRad)
		a.Words = append(a.Words, fmt.Sprintf("%.1f degrees are %.0f mm over the track of %.0f mm; published tests lift diagonal wheels at least %d mm (guide B 4.2) and %d mm (wildland fire vehicles)",
			degrees(a.AngleRad), lift, t.TrackMM, guideLiftMM, fireLiftMM))
	}
	a.Words = append(a.Words, "the whole angle counts at every point, nothing is taken off for springs or for a place between the mounts; prove it by lifting two opposite wheels, with chains on where they are used")
	return a, nil
}

func degrees(rad float64) float64 { return rad * 180 / math.Pi }

func (t Twist) check(bad *field.Errors) {
	if t.TrackMM != 0 || t.AngleRad == 0 {
		bad.Between("twist.track_mm", t.TrackMM, 200, 5000)
	}
	if t.AngleRad != 0 {
		if t.WheelLiftMM != 0 {
			bad.Refuse("twist.wheel_lift_mm", fmt.Sprintf("%g beside an angle", t.WheelLiftMM), "an angle, or a lift and a track")
		}
		bad.Positive("twist.angle_rad", t.AngleRad, MaxTwistRad)
		return
	}
	most := t.TrackMM * math.Tan(MaxTwistRad)
	if t.BothAxles {
		most = t.TrackMM * math.Tan(MaxTwistRad/2)
	}
	if t.TrackMM > 0 {
		bad.Positive("twist.wheel_lift_mm", t.WheelLiftMM, most)
	}
}
