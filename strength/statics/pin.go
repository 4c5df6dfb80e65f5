package statics

// A round pin through seats (ears and lugs): reactions, shears, greatest bending moment.

import (
	"fmt"
	"math"
)

// SeatRole says whether a seat holds the pin or loads it.
type SeatRole int

// The roles of a seat.
const (
	Support SeatRole = iota // an ear that holds the pin
	Load                    // a lug that pushes on it with Seat.ForceN
)

// Seat is one plate on the pin: its middle X along the pin and thickness T (mm), and the force (N) of a load seat.
type Seat struct {
	X, T   float64
	Role   SeatRole
	ForceN float64
}

// PinForces is what the pin carries in the plane of the load.
type PinForces struct {
	Left, Right float64 // support reactions against the load, N
	MaxShear    float64 // greatest |shear| between neighbouring seats, N
	MaxMoment   float64 // greatest |moment|, N*mm
	AtX         float64 // where it stands, mm
}

// SpanError says that the pin is not a beam between two supports, so statics of the span does not speak.
type SpanError struct {
	Supports int    // number of support seats
	Seat     int    // the offending seat, -1 for none in particular
	Why      string // what is wrong and what would be accepted
}

// Error gives the reason and the number of supports.
func (e *SpanError) Error() string {
	if e.Seat < 0 {
		return fmt.Sprintf("pin with %d supports: %s", e.Supports, e.Why)
	}
	return fmt.Sprintf("seats[%d]: %s", e.Seat, e.Why)
}

// SolvePin treats the pin as a beam on two supports with every force spread evenly over its seat's thickness. Seats come in order along
// the pin and do not overlap; load seats lie between the supports. shears gets the shear in each gap between
// neighbours (N), len(seats)-1 of them.
//
// Reactions by moments about the ears' middles. With one lug midway this is M = (P/2)(t_outer/2 + t_inner/4 + g), the engineers'
// convention for a three-ear clevis; the general form is elementary statics, no clause.
// One ear alone (a cantilever), more than two, or a lug outside the span is a *SpanError.
func SolvePin(shears []float64, seats []Seat) (PinForces, error) {
	left, right, err := span(seats)
	if err != nil {
		return PinForces{}, err
	}
	if len(shears) != len(seats)-1 {
		return PinForces{}, &InputError{"len(shears)", float64(len(shears)), "one less than the number of seats"}
	}
	var p PinForces
	xl, xr := seats[left].X, seats[right].X
	for _, s := range seats[left+1 : right] {
		p.Left += s.ForceN * (xr - s.X) / (xr - xl)
		p.Right += s.ForceN * (s.X - xl) / (xr - xl)
	}
	p.walk(shears, seats)
	return p, nil
}

// span checks the seats and finds the two supports, which are the first and the last seat.
func span(seats []Seat) (left, right int, err error) {
	supports := 0
	for i, s := range seats {
		if err := checkSeat(seats, i); err != nil {
			return 0, 0, err
		}
		if s.Role == Support {
			supports++
		}
	}
	right = len(seats) - 1
	switch {
	case supports == 1:
		return 0, 0, &SpanError{1, -1, "a single ear holds the pin as a cantilever, want two ears"}
	case supports != 2:
		return 0, 0, &SpanError{supports, -1, "statics of the span wants exactly two ears"}
	case seats[0].Role != Support:
		return 0, 0, &SpanError{2, 0, "the lug overhangs the ears, want it between them"}
	case seats[right].Role != Support:
		return 0, 0, &SpanError{2, right, "the lug overhangs the ears, want it between them"}
	}
	return 0, right, nil
}

func checkSeat(seats []Seat, i int) error {
	s := seats[i]
	if !(s.T > 0 && s.T <= maxLength) {
		return checkPositive(fmt.Sprintf("seats[%d].T", i), s.T, maxLength)
	}
	if !(math.Abs(s.X) <= maxLength) {
		return checkWithin(fmt.Sprintf("seats[%d].X", i), s.X, maxLength)
	}
	if !(math.Abs(s.ForceN) <= maxForce) {
		return checkWithin(fmt.Sprintf("seats[%d].ForceN", i), s.ForceN, maxForce)
	}
	if i == 0 {
		return nil
	}
	if gap := s.X - s.T/2 - seats[i-1].X - seats[i-1].T/2; gap < -tiny {
		return &InputError{fmt.Sprintf("gap before seats[%d]", i), gap, "0 mm or more"}
	}
	return nil
}

// walk goes along the pin with shear v and moment m; within a seat the moment is a parabola whose top is where v is nil.
func (p *PinForces) walk(shears []float64, seats []Seat) {
	v, m, x := 0.0, 0.0, seats[0].X-seats[0].T/2
	for i, s := range seats {
		start := s.X - s.T/2
		m += v * (start - x)
		p.note(m, start)
		push := p.push(i, s, len(seats))
		if top := -v / push * s.T; top > 0 && top < s.T {
			p.note(m+v*top/2, start+top)
		}
		m += (v + push/2) * s.T
		v, x = v+push, start+s.T
		p.note(m, x)
		if i < len(shears) {
			shears[i] = v
			p.MaxShear = math.Max(p.MaxShear, math.Abs(v))
		}
	}
}

// push is the whole transverse force of a seat, reactions positive.
func (p *PinForces) push(i int, s Seat, n int) float64 {
	switch i {
	case 0:
		return p.Left
	case n - 1:
		return p.Right
	}
	return -s.ForceN
}

// note keeps the greatest moment; the first of equals.
func (p *PinForces) note(m, x float64) {
	if math.Abs(m) > p.MaxMoment*(1+1e-12) {
		p.MaxMoment, p.AtX = math.Abs(m), x
	}
}
