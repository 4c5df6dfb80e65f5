package drill

import (
	"lugwright/vehicle/field"
	"lugwright/vehicle/finding"
)

// Guide C's bounds on a subframe's flange, as parts of the frame's.
const (
	subframeLeast = 0.7
	subframeMost  = 1.0
)

// Subframe holds the width of a subframe's flange against the frame's by guide C.
func Subframe(flangeMM, frameFlangeMM float64) ([]finding.Finding, error) {
	var bad field.Errors
	bad.Positive("subframe.flange_mm", flangeMM, 1000)
	bad.Positive("frame.flange_mm", frameFlangeMM, 1000)
	if err := bad.Err(); err != nil {
		return nil, err
	}
	g, _ := GuideByID("c")
	const at, rule = "subframe", "width of its flange"
	return []finding.Finding{
		finding.Measured(at, rule, g.Source, flangeMM, finding.AtLeast, subframeLeast*frameFlangeMM, "mm"),
		finding.Measured(at, rule, g.Source, flangeMM, finding.AtMost, subframeMost*frameFlangeMM, "mm"),
	}, nil
}
