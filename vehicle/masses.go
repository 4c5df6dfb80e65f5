package vehicle

import "lugwright/part"

// G is the standard acceleration of gravity, m/s2.
const G = 9.80665

// Confidence says where a mass comes from.
type Confidence string

const (
	Weighed Confidence = "weighed"
	Data    Confidence = "data"
	Guess   Confidence = "guess"
)

// Confidences lists all of them, the surest first.
func Confidences() []Confidence { return []Confidence{Weighed, Data, Guess} }

// Percent is the plus-minus of a mass that states none: common practice, no source.
func (c Confidence) Percent() float64 {
	switch c {
	case Weighed:
		return 1
	case Data:
		return 5
	}
	return 20
}

// Doubt is how sure a mass is. The zero value is a guess.
type Doubt struct {
	Confidence       Confidence
	PlusMinusPercent float64 // of the mass; at most one of the two is stated, none: by the confidence
	PlusMinusKG      float64
}

// half is the half width of a mass's range.
func (d Doubt) half(kg float64) float64 {
	switch {
	case d.PlusMinusKG > 0:
		return min(d.PlusMinusKG, kg)
	case d.PlusMinusPercent > 0:
		return kg * d.PlusMinusPercent / 100
	}
	return kg * d.Confidence.Percent() / 100
}

func (d Doubt) confidence() Confidence {
	if d.Confidence == "" {
		return Guess
	}
	return d.Confidence
}

// What carries an item or a tank.
const (
	MainBody = "body"    // what no RidesOn means
	Chassis  = "chassis" // loads the axles and no mount
)

// Item is one mass: equipment, structure, people, cargo.
type Item struct {
	Name     string
	MassKG   float64
	At       part.Vec
	Doubt    Doubt
	Optional bool   // rides in the states that name it alone: people, cargo
	RidesOn  string // a body's name; empty: MainBody
}

// Box is a tank's inside, level and square to the axes. The zero value is no shape.
type Box struct{ LengthMM, WidthMM, HeightMM float64 } // along x, y, z

// Fluid is what a tank holds.
type Fluid struct {
	Name          string
	DensityKGPerL float64
}

// Tank is a container with its contents. Its empty mass and its contents lie at At, the centre of its box; with a shape, part-full contents lie lower and
// shift with the acceleration. Its doubt is that of empty mass and contents together.
type Tank struct {
	Name      string
	CapacityL float64
	Fluid     Fluid
	EmptyKG   float64 // 0 where it is in another item
	At        part.Vec
	Box       Box
	Doubt     Doubt
	RidesOn   string
}

// ChassisCab is the vehicle without body, as its axles were weighed.
type ChassisCab struct {
	FrontKG, RearKG float64
	CGYMM           float64
	CGZMM           float64 // 0: not known
	Doubt           Doubt
}

// Ratings are the maker's; 0 is not stated.
type Ratings struct{ GrossKG, FrontKG, RearKG float64 }

// Vehicle is a chassis-cab and all that rides on it.
type Vehicle struct {
	Name                      string
	WheelbaseMM               float64
	FrontTrackMM, RearTrackMM float64 // 0: not known; stability and side bias take the narrower of those known
	Cab                       ChassisCab
	Ratings                   Ratings
	Items                     []Item
	Tanks                     []Tank
}

// mass is one thing in one state.
type mass struct {
	name    string
	kg, pm  float64
	at      part.Vec
	doubt   Doubt
	ridesOn string
	tank    *Tank // of contents: what holds them
}

func carrier(name string) string {
	if name == "" {
		return MainBody
	}
	return name
}

// cab is the chassis-cab as a mass: its x follows from its axles.
func (v *Vehicle) cab() mass {
	kg := v.Cab.FrontKG + v.Cab.RearKG
	return mass{"chassis-cab", kg, v.Cab.Doubt.half(kg), part.Vec{X: v.Cab.RearKG / kg * v.WheelbaseMM, Y: v.Cab.CGYMM, Z: v.Cab.CGZMM}, v.Cab.Doubt, Chassis, nil}
}

// masses are all things in a state besides the chassis-cab, contents of tanks on their own, at rest.
func (v *Vehicle) masses(s *State) []mass {
	var out []mass
	for i := range v.Items {
		m := &v.Items[i]
		if !m.Optional || s.has(m.Name) {
			out = append(out, mass{m.Name, m.MassKG, m.Doubt.half(m.MassKG), m.At, m.Doubt, carrier(m.RidesOn), nil})
		}
	}
	for i := range v.Tanks {
		t := &v.Tanks[i]
		contents := s.level(t.Name) * t.CapacityL * t.Fluid.DensityKGPerL
		half := t.Doubt.half(t.EmptyKG + contents)
		of := func(kg float64) float64 {
			if kg == 0 {
				return 0
			}
			return half * kg / (t.EmptyKG + contents)
		}
		if t.EmptyKG > 0 {
			out = append(out, mass{t.Name + ", empty", t.EmptyKG, of(t.EmptyKG), t.At, t.Doubt, carrier(t.RidesOn), nil})
		}
		if contents > 0 {
			at, _ := t.contentsAt(s.level(t.Name), part.Vec{Z: -1})
			out = append(out, mass{t.Name + ", contents", contents, of(contents), at, t.Doubt, carrier(t.RidesOn), t})
		}
	}
	return out
}
