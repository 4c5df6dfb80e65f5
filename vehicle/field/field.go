// Package field gathers refused numbers of a request, each with its path, what was found and what would be accepted. It never
// knows what the numbers mean.
package field

import (
	"fmt"

	"lugwright/part"
)

// Bounds beyond which a number is a slip of units.
const (
	MaxMM    = 1e5
	MaxKG    = 1e6
	MaxN     = 1e9
	MaxG     = 100
	MaxCount = 1000
	maxBad   = 50
)

// Errors collects refusals.
type Errors struct{ bad part.FieldErrors }

// Refuse notes one field.
func (e *Errors) Refuse(path, found, accept string) {
	if len(e.bad) < maxBad {
		e.bad = append(e.bad, &part.FieldError{Field: path, Found: found, Accept: accept})
	}
}

// Err is part.FieldErrors, or nil.
func (e *Errors) Err() error {
	if len(e.bad) == 0 {
		return nil
	}
	return e.bad
}

// Positive wants 0 < x <= most.
func (e *Errors) Positive(path string, x, most float64) bool {
	if x > 0 && x <= most {
		return true
	}
	e.Refuse(path, fmt.Sprintf("%g", x), fmt.Sprintf("more than 0 and at most %g", most))
	return false
}

// Between wants lo <= x <= hi.
func (e *Errors) Between(path string, x, lo, hi float64) bool {
	if x >= lo && x <= hi {
		return true
	}
	e.Refuse(path, fmt.Sprintf("%g", x), fmt.Sprintf("%g to %g", lo, hi))
	return false
}

// Place wants a coordinate on a vehicle.
func (e *Errors) Place(path string, x float64) bool { return e.Between(path, x, -MaxMM, MaxMM) }

// Range wants a stretch with some length.
func (e *Errors) Range(path string, from, to float64) bool {
	ok := e.Place(path+".from_mm", from)
	if !e.Place(path+".to_mm", to) || !ok {
		return false
	}
	if !(to > from) {
		e.Refuse(path+".to_mm", fmt.Sprintf("%g", to), fmt.Sprintf("more than from_mm, which is %g", from))
		return false
	}
	return true
}

// Vec wants three components within a bound.
func (e *Errors) Vec(path string, v part.Vec, most float64) bool {
	x := e.Between(path+".x", v.X, -most, most)
	y := e.Between(path+".y", v.Y, -most, most)
	return e.Between(path+".z", v.Z, -most, most) && x && y
}

// Name wants a short name.
func (e *Errors) Name(path, name string) bool {
	if name != "" && len(name) <= 100 {
		return true
	}
	e.Refuse(path, fmt.Sprintf("%.20q", name), "a name of 1 to 100 letters")
	return false
}

// Unique wants names that are short and used once.
func (e *Errors) Unique(path string, n int, name func(i int) string, suffix string) {
	seen := map[string]bool{}
	for i := range n {
		at := fmt.Sprintf("%s[%d]%s", path, i, suffix)
		if e.Name(at, name(i)) && seen[name(i)] {
			e.Refuse(at, fmt.Sprintf("%q is used twice", name(i)), "names used once")
		}
		seen[name(i)] = true
	}
}

// Count wants lo to hi entries of a list.
func (e *Errors) Count(path string, n, lo, hi int) bool {
	if n >= lo && n <= hi {
		return true
	}
	e.Refuse(path, fmt.Sprintf("%d entries", n), fmt.Sprintf("%d to %d", lo, hi))
	return false
}
