package hung

import (
	"fmt"
	"math"

	"lugwright/part"
	"lugwright/strength/statics"
	"lugwright/vehicle/field"
)

// gravity is standard gravity, m/s2.
const gravity = 9.80665

// Ends says how a rod is held against turning.
type Ends string

const (
	BothHeld Ends = "both held" // nuts on both faces of what is stiff, above and below
	OneHeld  Ends = "one held"
)

// Tray is a mass on rods under a beam.
type Tray struct {
	Name    string
	MassKG  float64
	At      part.Vec // mass centre
	Rods    []Rod
	BeamZMM float64 // underside of the beam that they hang on
	FreeMM  float64 // length of rod from there to the tray
	Ends    Ends
	StopZMM *float64 // level of stops that take the side force, where there are any
}

// Rod is one rod in plan.
type Rod struct {
	Name     string
	XMM, YMM float64
}

// Case is an apparent acceleration, gravity included: static is 0, 0, -1.
type Case struct {
	State, Name string
	Level       part.Level
	G           part.Vec
}

// RodLoad is one rod's worst.
type RodLoad struct {
	Rod        string
	TensionN   float64
	PushN      float64 // compression, not less than nought
	SideN      float64
	BendingNMM float64 // at the held end
}

// CaseLoads is one case.
type CaseLoads struct {
	State, Case string
	Level       part.Level
	DownN       float64 // all of it, less than nought where it lifts
	EvenN       float64 // a rod's even share of that
	DiagonalN   float64 // two diagonal rods carrying all, four rods or more
	CoupleN     float64 // greatest push or pull in a rod from the side force's overturning couple, by even share
	Rods        []RodLoad
	StopN       float64 // side force on the stops; count it whole on the one stop that touches first
	Words       []string
}

// Loads reckons every case. A rod's worst is the even share and, with four rods or more, the same times half their number: two diagonal rods carry all
// (common practice, no source). The overturning couple counts with the longer of its possible arms. The error is part.FieldErrors.
func Loads(t Tray, cases []Case) ([]CaseLoads, error) {
	if err := check(t, cases); err != nil {
		return nil, err
	}
	var out []CaseLoads
	for i := range cases {
		c, err := t.loads(&cases[i])
		if err != nil {
			return nil, &part.FieldError{Field: "tray.rods", Found: err.Error(), Accept: "rods that stand apart both ways, or stops and a mass centre over them"}
		}
		out = append(out, c)
	}
	return out, nil
}

func (t *Tray) loads(c *Case) (CaseLoads, error) {
	f := c.G.Scale(t.MassKG * gravity)
	n := float64(len(t.Rods))
	r := CaseLoads{State: c.State, Case: c.Name, Level: c.Level, DownN: -f.Z, EvenN: -f.Z / n, Rods: make([]RodLoad, len(t.Rods))}
	share := 1.0
	if len(t.Rods) >= 4 {
		share = n / 2
		r.DiagonalN = -f.Z / 2
	}
	for i := range r.Rods {
		r.Rods[i].Rod = t.Rods[i].Name
	}
	at, middle := t.plan()
	arm := t.At.Sub(part.Vec{X: middle.X, Y: middle.Y})
	pulls := make([]float64, len(at))
	for _, level := range t.levels() {
		h := t.At.Z - level
		// A pull T at (x, y) has moments y T and -x T; together with the mass's own they are nought.
		if err := pull(pulls, at, 0, h*f.Y, -h*f.X); err != nil {
			return r, err
		}
		for _, p := range pulls {
			r.CoupleN = max(r.CoupleN, math.Abs(p))
		}
		if err := pull(pulls, at, -f.Z, h*f.Y-arm.Y*f.Z, -h*f.X+arm.X*f.Z); err != nil {
			return r, err
		}
		for i, p := range pulls {
			r.Rods[i].TensionN = max(r.Rods[i].TensionN, share*p)
			r.Rods[i].PushN = max(r.Rods[i].PushN, -share*p)
		}
	}
	return r, t.sideways(&r, at, f, arm)
}

// sideways puts the side force on the stops, or on the rods by the elastic vector method.
func (t *Tray) sideways(r *CaseLoads, at []statics.Vec2, f, arm part.Vec) error {
	side := math.Hypot(f.X, f.Y)
	if t.StopZMM != nil {
		r.StopN = side
		if side > 0 {
			r.Words = append(r.Words, "stops hold the side force; the twist about a rod's axis that an uneven stop leaves is not reckoned")
		}
		return nil
	}
	across := make([]statics.Vec2, len(at))
	twist := arm.X*f.Y - arm.Y*f.X
	if math.Abs(twist) < noise {
		twist = 0
	}
	if err := statics.Shears(across, at, f.X, f.Y, twist); err != nil {
		return fmt.Errorf("a twist of %.4g N*mm on rods in one place", twist)
	}
	length := t.FreeMM
	if t.Ends == BothHeld {
		length /= 2 // bent like an S: F L/2 at either end
	}
	for i, v := range across {
		r.Rods[i].SideN = v.Norm()
		r.Rods[i].BendingNMM = v.Norm() * length
	}
	if side > 0 {
		r.Words = append(r.Words, "the rods are bent by the side force: threaded rod holds little sideways, give the tray stops")
	}
	return nil
}

// noise is a moment that counts as none, N*mm.
const noise = 1

// pull shares a pull and moments among rods as under a plane that stays flat.
func pull(dst []float64, at []statics.Vec2, n, mu, mv float64) error {
	if math.Abs(mu) < noise {
		mu = 0
	}
	if math.Abs(mv) < noise {
		mv = 0
	}
	if err := statics.PullsAtCentroid(dst, at, n, mu, mv); err != nil {
		return fmt.Errorf("a couple of %.4g N*mm on %d rods in one line", math.Hypot(mu, mv), len(at))
	}
	return nil
}

// levels are where side force may be thought to pass without bending the rods: the stops; else the beam, and the middle of a rod held at both ends or
// the tray.
func (t *Tray) levels() []float64 {
	if t.StopZMM != nil {
		return []float64{*t.StopZMM}
	}
	if t.Ends == BothHeld {
		return []float64{t.BeamZMM, t.BeamZMM - t.FreeMM/2}
	}
	return []float64{t.BeamZMM, t.BeamZMM - t.FreeMM}
}

// plan gives the rods from their middle.
func (t *Tray) plan() ([]statics.Vec2, statics.Vec2) {
	at := make([]statics.Vec2, len(t.Rods))
	for i, r := range t.Rods {
		at[i] = statics.Vec2{X: r.XMM, Y: r.YMM}
	}
	c := statics.Centroid(at)
	for i := range at {
		at[i] = statics.Vec2{X: at[i].X - c.X, Y: at[i].Y - c.Y}
	}
	return at, c
}

func check(t Tray, cases []Case) error {
	var bad field.Errors
	bad.Name("tray.name", t.Name)
	bad.Positive("tray.mass_kg", t.MassKG, field.MaxKG)
	bad.Vec("tray.at_mm", t.At, field.MaxMM)
	bad.Place("tray.beam_z_mm", t.BeamZMM)
	bad.Positive("tray.free_mm", t.FreeMM, 5000)
	if t.Ends != BothHeld && t.Ends != OneHeld {
		bad.Refuse("tray.ends", fmt.Sprintf("%q", t.Ends), fmt.Sprintf("%q or %q", BothHeld, OneHeld))
	}
	if t.StopZMM != nil {
		bad.Place("tray.stop_z_mm", *t.StopZMM)
	}
	if bad.Count("tray.rods", len(t.Rods), 2, 50) {
		bad.Unique("tray.rods", len(t.Rods), func(i int) string { return t.Rods[i].Name }, ".name")
		for i, r := range t.Rods {
			bad.Place(fmt.Sprintf("tray.rods[%d].x_mm", i), r.XMM)
			bad.Place(fmt.Sprintf("tray.rods[%d].y_mm", i), r.YMM)
		}
	}
	if bad.Count("cases", len(cases), 1, field.MaxCount) {
		for i, c := range cases {
			at := fmt.Sprintf("cases[%d]", i)
			bad.Name(at+".name", c.Name)
			if c.Level != part.Service && c.Level != part.Factored {
				bad.Refuse(at+".level", fmt.Sprintf("%q", c.Level), fmt.Sprintf("%q or %q", part.Service, part.Factored))
			}
			bad.Vec(at+".g", c.G, field.MaxG)
		}
	}
	return bad.Err()
}
