package job

import (
	"lugwright/client/table"
	"lugwright/geometry"
	"lugwright/geometry/access"
	"lugwright/geometry/shop"
	"lugwright/part"
	"lugwright/strength"
	"lugwright/units"
)

// Known is what the services list: a job is read against it.
type Known struct {
	Kinds []geometry.Kind // Build is not used
	Bases []strength.Card
	// Grades are the names of materials, by which stock sheets are named; none: any name is taken.
	Grades []string
}

// Job is one job file as typed values: N, mm, N*mm, rad.
type Job struct {
	File       string             // as given on the command line
	Title      string             // the field "job"
	Revision   string             // may be empty
	Units      units.System       // how results are printed
	Basis      string             // Card.Name
	Method     strength.Method    // how the basis compares
	LoadFactor float64            // on service cases; 0 takes the basis's own
	PinJoint   string             // Card.Name whose rules serve pin holes; empty: the basis's own
	ShopName   string             // shipped shop, or shop file beside the job; empty: none named
	Shop       shop.Profile       // what that says; Plain until it is read
	LeaveOut   []string           // ids of limit states without a published rule that are not checked
	FactorSet  string             // named values of the basis's settable factors; empty: its defaults
	Factors    map[string]float64 // settable factors over the set
	Vehicle    *Vehicle           `json:",omitempty"` // what the brackets carry; nil: the file gives their loads
	Cases      []Case             // in the order of the file
	Brackets   []Bracket          // in the order of the file
	Room       access.Room        // what tools need around the brackets
	Sheets     []Sheet            // stock on which plates are laid out; empty: they are not
	Rack       *Rack              `json:",omitempty"` // sizes that the shop has; nil: the job does not say

	reading   *table.Reading // the file, for the places of its fields
	canonical []byte         // the job as it was read, whatever is added to it since
}

// Case is a load case, named once: level and source.
type Case struct {
	Name      string
	Level     part.Level
	Source    string // published rule, or "builder's choice"
	Words     string // what it is, may be empty
	AtRest    bool   // nothing moves: the wear of a bush is judged on it
	OfVehicle bool   `json:",omitempty"` // of the vehicle's load sets: brackets have it through their mounts
}

// Words for whether a load case acts while nothing moves.
const (
	Moving = "moving"
	AtRest = "at rest"
)

// Sheet is a stock size of plate, so many of it.
type Sheet struct {
	ThicknessMM, WidthMM, HeightMM float64
	Material                       string
	Quantity                       int
	Turns                          Turns
}

// Rack is the sizes that a shop has, which sweep and propose try. An empty list: the job does not say.
type Rack struct {
	PlatesMM, PinsMM, WeldsMM []float64 // thicknesses; diameters of round bar; legs of fillets
	Bolts                     []string  // thread sizes
}

// Turns says how plates may be turned on a sheet.
type Turns string

const (
	AnyTurn   Turns = "any quarter"
	HalfTurns Turns = "along the grain" // as drawn or turned by half
	NoTurn    Turns = "none"
)

// Bracket is one bracket asked for.
type Bracket struct {
	Name      string
	Kind      string
	Hand      part.Hand
	Mark      string // root of the part marks; empty: the name in capitals
	Quantity  int    // pieces to make, at least 1
	Params    []part.Param
	Mount     string `json:",omitempty"` // mount of the vehicle whose loads it takes; empty: none
	Tray      string `json:",omitempty"` // tray of the vehicle whose mass it carries; empty: none
	LoadPoint string `json:",omitempty"` // where they act on it; empty: at its only load point
	BodySide  bool   `json:",omitempty"` // it is on the body, so that the frame's part of the joint loads it
	Loads     []Load
	Spectrum  []strength.StressCycle // what fatigue is reckoned on; empty: it is not checked
}

// Load is one case's force (N) and moment (N*mm) on the bracket, in vehicle axes.
type Load struct {
	Case      string
	State     string // which set of tank fills and gaps, may be empty
	LoadPoint string // may be empty when the bracket has one
	Force     part.Vec
	Moment    part.Vec
	OfMount   bool `json:",omitempty"` // from the bracket's mount or tray, not from the file
}

// Name tells one load of a bracket from the others: the case, and the state where one is given.
func (l Load) Name() string {
	if l.State == "" {
		return l.Case
	}
	return l.Case + ", " + l.State
}

// Request asks the geometry service for the bracket.
func (b *Bracket) Request() geometry.Request {
	return geometry.Request{Kind: b.Kind, Name: b.Name, Mark: b.Mark, Hand: b.Hand, Params: b.Params}
}

// AtShop is an error about the field "shop".
func (j *Job) AtShop(found, accept string) error {
	return Errors{{File: j.File, At: j.reading.Places["shop"], Field: "shop", Found: found, Accept: accept}}
}

// AtRoot is an error about a field that the whole file lacks.
func (j *Job) AtRoot(field, found, accept string) error {
	return Errors{{File: j.File, At: j.reading.Places[""], Field: field, Found: found, Accept: accept}}
}

// Case finds a load case by name, nil when there is none.
func (j *Job) Case(name string) *Case {
	for i := range j.Cases {
		if j.Cases[i].Name == name {
			return &j.Cases[i]
		}
	}
	return nil
}

// LoadCases gives the bracket's loads with the level and source of their cases.
func (j *Job) LoadCases(b *Bracket) []part.Case {
	out := make([]part.Case, len(b.Loads))
	for i, l := range b.Loads {
		c := j.Case(l.Case)
		out[i] = part.Case{Name: l.Name(), LoadPoint: l.LoadPoint, Level: c.Level, Source: c.Source, Force: l.Force, Moment: l.Moment, AtRest: c.AtRest}
	}
	return out
}

// Tied says whether the bracket takes its loads from the vehicle.
func (b *Bracket) Tied() bool { return b.Mount != "" || b.Tray != "" }

// NotLoaded lists the job's cases for which a bracket has no load. Those of the vehicle come through a mount or tray, and a bracket that has one needs no others.
func (j *Job) NotLoaded(b *Bracket) []string {
	var out []string
	for _, c := range j.Cases {
		if c.OfVehicle == b.Tied() && !has(b.Loads, func(l Load) bool { return l.Case == c.Name }) {
			out = append(out, c.Name)
		}
	}
	return out
}

func has[T any](list []T, is func(T) bool) bool {
	for _, x := range list {
		if is(x) {
			return true
		}
	}
	return false
}
