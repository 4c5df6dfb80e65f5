package statics

// The errors of this package: bad input, and a force that has no path.

import (
	"fmt"
	"math"
)

// InputError says that a number cannot be used: what it was, its value, and what would be accepted.
type InputError struct {
	What string  // the field, such as "seats[1].T"
	Got  float64 // the value found
	Want string  // what would be accepted
}

// Error gives field, value and accepted range.
func (e *InputError) Error() string {
	return fmt.Sprintf("%s: got %g, want %s", e.What, e.Got, e.Want)
}

// NoPathError says that a force or moment component meets nothing that could carry it.
type NoPathError struct {
	Component string // the component without a path, such as "moment about the weld line"
	Why       string // what is missing
}

// Error names the component and what is missing.
func (e *NoPathError) Error() string {
	return fmt.Sprintf("no path for %s: %s", e.Component, e.Why)
}

func finite(x float64) bool { return !math.IsNaN(x) && !math.IsInf(x, 0) }

// Limits of size beyond which a number is taken as a slip: they also keep products of five such numbers finite.
const (
	maxLength = 1e6  // mm
	maxForce  = 1e12 // N
	maxMoment = 1e18 // N*mm
)

func checkPositive(what string, x, limit float64) error {
	if !(x > 0) || x > limit {
		return &InputError{What: what, Got: x, Want: fmt.Sprintf("more than 0 and at most %g", limit)}
	}
	return nil
}

func checkWithin(what string, x, limit float64) error {
	if !finite(x) || math.Abs(x) > limit {
		return &InputError{What: what, Got: x, Want: fmt.Sprintf("a number within +/- %g", limit)}
	}
	return nil
}
