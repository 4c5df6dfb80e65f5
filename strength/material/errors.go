package material

// The errors of this package and the nearest-name suggestion.

import (
	"fmt"

	"lugwright/internal/spelling"
)

// UnknownError says that a table has no such name and offers the nearest that it has.
type UnknownError struct {
	Kind    string // "grade", "bolt grade", "bolt size", "electrode"
	Name    string // what was asked for
	Nearest string // the nearest known name, empty when none is near
}

// Error names what was asked and the nearest known name, where one is near.
func (e *UnknownError) Error() string {
	if e.Nearest == "" {
		return fmt.Sprintf("unknown %s %q", e.Kind, e.Name)
	}
	return fmt.Sprintf("unknown %s %q, nearest is %q", e.Kind, e.Name, e.Nearest)
}

// RangeError says that a table does not reach a thickness or diameter.
type RangeError struct {
	Name         string  // the grade
	What         string  // "thickness" or "diameter"
	GotMM        float64 // asked for
	OverMM, ToMM float64 // the table speaks for over OverMM up to and with ToMM
}

// Error gives the value and the range of the table.
func (e *RangeError) Error() string {
	return fmt.Sprintf("%q: %s %g mm is outside the table, want over %g up to %g mm", e.Name, e.What, e.GotMM, e.OverMM, e.ToMM)
}

func nearest(name string, known []string) string { return spelling.Nearest(name, known) }
