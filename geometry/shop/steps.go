package shop

import (
	"fmt"
	"slices"
	"strings"

	"lugwright/part"
)

// Steps says in words how a hole comes about, of a plate whose holes are as Finished leaves them.
func (s *Profile) Steps(h *part.Hole, thicknessMM float64) string {
	if h.Finish == part.AsCut {
		return "cut to size"
	}
	i := slices.IndexFunc(s.Holes, func(r HoleRule) bool { return r.fits(h, thicknessMM) })
	first := fmt.Sprintf("cut to %.2f", h.CutMM)
	switch {
	case h.CutMM == 0:
		first = "punch mark"
	case h.Finish != part.Tapped && i >= 0 && s.Holes[i].Make == PilotOnly:
		first = fmt.Sprintf("cut a pilot of %.2f", h.CutMM)
	}
	return first + ", " + ByHand(h)
}

// ByHand says in words what is done to a hole once it is marked or begun.
func ByHand(h *part.Hole) string {
	var steps []string
	switch h.Finish {
	case part.Tapped:
		if drill, err := part.TapDrillMM(h.Thread); err == nil && h.CutMM < drill {
			steps = append(steps, fmt.Sprintf("drill %.2f", drill))
		}
		steps = append(steps, "tap "+h.Thread)
	case part.Reamed:
		if h.CutMM == 0 {
			steps = append(steps, "drill")
		}
		steps = append(steps, fmt.Sprintf("ream to %.2f", h.DiaMM))
	default:
		steps = append(steps, fmt.Sprintf("drill to %.2f", h.DiaMM))
	}
	return strings.Join(steps, ", ")
}
