package vehicle

import (
	"fmt"
	"math"
	"slices"

	"lugwright/part"
)

// Standing is a load against its rating.
type Standing string

const (
	Within    Standing = "within"
	MayExceed Standing = "may be over" // the load is within, the end of its range is not
	Over      Standing = "over"
	NotRated  Standing = "not checked: no rating stated"
)

// Rated is a load on the ground beside its rating (0: none).
type Rated struct {
	KG       Range
	RatingKG float64
	Standing Standing
}

func rated(kg Range, rating float64) Rated {
	r := Rated{kg, rating, Within}
	switch {
	case rating == 0:
		r.Standing = NotRated
	case kg.Value > rating:
		r.Standing = Over
	case kg.High > rating:
		r.Standing = MayExceed
	}
	return r
}

// Line is one mass of the weight list.
type Line struct {
	Name        string
	MassKG      float64
	PlusMinusKG float64
	At          part.Vec
	Confidence  Confidence
	RidesOn     string
}

// BodyMass is what one body weighs.
type BodyMass struct {
	Name string
	Mass Mass
}

// Stability is how far the vehicle is from tipping sideways as a rigid body on rigid wheels: a real one on springs and tyres tips earlier.
type Stability struct {
	Known       bool
	TrackMM     float64 // the narrower of those stated
	LeftPercent Range   // of the weight, on the left wheels
	// Factor is (track/2 - |y|) / z of the whole vehicle's centre of gravity, to the side that tips first: the sideways acceleration in g at which the
	// wheels of the other side lift. With the centre on the centreline it is the usual track / (2 z).
	Factor      Range
	TipAngleRad Range  // the side slope at which it tips, standing still: atan of the factor
	TipsFirstTo string // "left" or "right"
}

// Weights is the roll-up of one state.
type Weights struct {
	State              string
	Lines              []Line // chassis-cab first
	Bodies             []BodyMass
	Vehicle            Mass
	Gross, Front, Rear Rated
	Stability          Stability
	Notes              []string
}

// RollUp gives total, centre of gravity, axle loads and stability for each state.
func RollUp(v *Vehicle, states []State) ([]Weights, error) {
	c := &checker{}
	c.vehicle(v)
	c.states(v, states)
	if err := c.Err(); err != nil {
		return nil, err
	}
	var out []Weights
	for i := range states {
		out = append(out, v.weights(&states[i]))
	}
	return out, nil
}

func (v *Vehicle) weights(s *State) Weights {
	riding := v.masses(s)
	all := append([]mass{v.cab()}, riding...)
	w := Weights{State: s.Name, Vehicle: total(all)}
	for _, m := range all {
		w.Lines = append(w.Lines, Line{m.name, m.kg, m.pm, m.at, m.doubt.confidence(), m.ridesOn})
	}
	for _, name := range v.bodies() {
		w.Bodies = append(w.Bodies, BodyMass{name, total(on(riding, name))})
	}
	w.Gross = rated(w.Vehicle.KG, v.Ratings.GrossKG)
	w.Front, w.Rear = v.axles(all)
	w.Stability = v.stability(all, &w.Vehicle)
	w.Notes = v.notes(&w)
	return w
}

// bodies lists what items and tanks ride on besides the chassis, the main body first.
func (v *Vehicle) bodies() []string {
	var out []string
	add := func(name string) {
		if name = carrier(name); name != Chassis && !slices.Contains(out, name) {
			out = append(out, name)
		}
	}
	for i := range v.Items {
		add(v.Items[i].RidesOn)
	}
	for i := range v.Tanks {
		add(v.Tanks[i].RidesOn)
	}
	if i := slices.Index(out, MainBody); i > 0 {
		out = append([]string{MainBody}, slices.Delete(out, i, i+1)...)
	}
	return out
}

// Carried is what the named items and tanks weigh in a state, contents at rest. A name that is neither weighs nothing.
func (v *Vehicle) Carried(s *State, names []string) Mass {
	some := Vehicle{}
	for i := range v.Items {
		if slices.Contains(names, v.Items[i].Name) {
			some.Items = append(some.Items, v.Items[i])
		}
	}
	for i := range v.Tanks {
		if slices.Contains(names, v.Tanks[i].Name) {
			some.Tanks = append(some.Tanks, v.Tanks[i])
		}
	}
	return total(some.masses(s))
}

func on(all []mass, body string) []mass {
	var out []mass
	for _, m := range all {
		if m.ridesOn == body {
			out = append(out, m)
		}
	}
	return out
}

// axles share the weight by moments about each other: the rear one's share of a mass is its distance behind the front axle over the wheelbase.
func (v *Vehicle) axles(all []mass) (front, rear Rated) {
	rearShare := func(x float64) float64 { return x / v.WheelbaseMM }
	frontShare := func(x float64) float64 { return 1 - x/v.WheelbaseMM }
	t := terms(all, byX)
	return rated(sum(t, frontShare), v.Ratings.FrontKG), rated(sum(t, rearShare), v.Ratings.RearKG)
}

func (v *Vehicle) track() float64 {
	switch {
	case v.FrontTrackMM == 0:
		return v.RearTrackMM
	case v.RearTrackMM == 0:
		return v.FrontTrackMM
	}
	return min(v.FrontTrackMM, v.RearTrackMM)
}

// stability: the factor to the left is the mean of (track/2 - y) over the mean of z, which has the range of a quotient of two sums; taking the worst y with
// the worst z bounds it, on the unfavourable side.
func (v *Vehicle) stability(all []mass, m *Mass) Stability {
	track := v.track()
	if track == 0 || v.Cab.CGZMM == 0 || m.ZMM.Low <= 0 {
		return Stability{}
	}
	s := Stability{Known: true, TrackMM: track, TipsFirstTo: "left"}
	left := func(y float64) float64 { return 50 + 100*y/track }
	s.LeftPercent = Range{left(m.YMM.Value), left(m.YMM.Low), left(m.YMM.High)}
	if m.YMM.Value < 0 {
		s.TipsFirstTo = "right"
	}
	off := func(y float64) float64 { return track/2 - math.Abs(y) }
	worst := max(math.Abs(m.YMM.Low), math.Abs(m.YMM.High))
	best := max(0, m.YMM.Low, -m.YMM.High)        // nearest to the centreline that the range comes
	over := func(arm, z, other float64) float64 { // of a centre outside the track the lower one is worse
		if arm < 0 {
			z = other
		}
		return arm / z
	}
	s.Factor = Range{
		off(m.YMM.Value) / m.ZMM.Value,
		over(off(worst), m.ZMM.High, m.ZMM.Low),
		over(off(best), m.ZMM.Low, m.ZMM.High),
	}
	s.TipAngleRad = Range{math.Atan(s.Factor.Value), math.Atan(s.Factor.Low), math.Atan(s.Factor.High)}
	return s
}

func (v *Vehicle) notes(w *Weights) []string {
	var out []string
	say := func(format string, a ...any) { out = append(out, fmt.Sprintf(format, a...)) }
	for _, r := range []struct {
		name string
		r    *Rated
	}{{"gross weight", &w.Gross}, {"front axle", &w.Front}, {"rear axle", &w.Rear}} {
		switch r.r.Standing {
		case Over:
			say("%s: %.0f kg is over its rating of %.0f kg", r.name, r.r.KG.Value, r.r.RatingKG)
		case MayExceed:
			say("%s: %.0f kg is within its rating of %.0f kg, but may be %.0f kg as sure as the masses are", r.name, r.r.KG.Value, r.r.RatingKG, r.r.KG.High)
		case NotRated:
			say("%s: not checked, no rating stated", r.name)
		}
		if r.r.KG.Value < 0 {
			say("%s: lifts off the ground, %.0f kg", r.name, r.r.KG.Value)
		}
	}
	if !w.Stability.Known {
		say("stability and side bias: not computed, a track and the height of the chassis-cab's centre of gravity are needed")
	} else if w.Stability.Factor.Value <= 0 {
		say("the centre of gravity lies outside the wheels: the vehicle tips over where it stands")
	}
	return out
}
