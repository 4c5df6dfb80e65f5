package frame

import (
	"fmt"

	"lugwright/vehicle/field"
)

// Position is one place of the mount that is moved, with the loads found for it.
type Position struct {
	XMM   float64
	Cases []Case
}

// SweepRow is the worst of every rail with the mount in one place.
type SweepRow struct {
	XMM       float64
	Governing []Governing // left, right, mean, spread
	Warnings  []Warning
}

// Sweep bends the frame with one mount in each place. The mounts' forces change with it, so each place brings its own cases.
func Sweep(f Frame, positions []Position) ([]SweepRow, error) {
	var bad field.Errors
	if !bad.Count("positions", len(positions), 1, field.MaxCount) {
		return nil, bad.Err()
	}
	if err := f.Check(); err != nil {
		return nil, err
	}
	ready := f.ready()
	var out []SweepRow
	for i, p := range positions {
		at := fmt.Sprintf("positions[%d]", i)
		if !bad.Place(at+".x_mm", p.XMM) {
			return nil, bad.Err()
		}
		if err := f.checkCases(at+".", p.Cases); err != nil {
			return nil, err
		}
		r := ready.bendAll(p.Cases)
		out = append(out, SweepRow{p.XMM, r.Governing, r.Warnings})
	}
	return out, nil
}
