package hung

import (
	"fmt"

	"lugwright/vehicle/field"
	"lugwright/vehicle/finding"
)

const practice = "common practice, no source"

// Washer is a spreader washer under sheet or on a thin wall.
type Washer struct {
	Name                           string
	RodMM, SideMM, ThicknessMM     float64
	ThinWall, CrushSleeve, BothWay bool // on a tube's thin wall; a sleeve inside it; one on each side
}

// What a spreader washer is asked for, in rod diameters: the range said is 4 to 5 for the side.
const (
	washerSide      = 5
	washerSideLeast = 4
	washerThick     = 0.5
)

// Washers holds each against the trade's rule.
func Washers(list []Washer) ([]finding.Finding, error) {
	var bad field.Errors
	if bad.Count("washers", len(list), 0, field.MaxCount) {
		bad.Unique("washers", len(list), func(i int) string { return list[i].Name }, ".name")
		for i, w := range list {
			at := fmt.Sprintf("washers[%d]", i)
			bad.Positive(at+".rod_mm", w.RodMM, 100)
			bad.Positive(at+".side_mm", w.SideMM, 1000)
			bad.Positive(at+".thickness_mm", w.ThicknessMM, 100)
		}
	}
	if err := bad.Err(); err != nil {
		return nil, err
	}
	var out []finding.Finding
	for _, w := range list {
		side := finding.Measured(w.Name, "side of the spreader washer", practice, w.SideMM, finding.AtLeast, washerSide*w.RodMM, "mm")
		side.Words = fmt.Sprintf("%d rod diameters; %d are the least that is said", washerSide, washerSideLeast)
		if side.Verdict == finding.Fail && w.SideMM >= washerSideLeast*w.RodMM {
			side.Words += ", which it has"
		}
		out = append(out, side, finding.Measured(w.Name, "thickness of the spreader washer", practice, w.ThicknessMM, finding.AtLeast, washerThick*w.RodMM, "mm"))
		if w.ThinWall {
			f := finding.Finding{At: w.Name, Rule: "thin-walled tube", Source: practice, Verdict: finding.Pass, Words: "a crush sleeve inside, and a washer on each side"}
			if !w.CrushSleeve || !w.BothWay {
				f.Verdict = finding.Fail
				f.Words = "needs a crush sleeve inside, and a washer on each side"
			}
			out = append(out, f)
		}
	}
	return out, nil
}

// Tank is a plastic tank on a floor.
type Tank struct {
	Name           string
	HeightMM       float64
	UnsupportedMM2 float64 // the largest area of its floor that nothing carries
	HeldDown       bool    // stops or straps on top
}

// Areas as printed, in square inches; a tank over 1.0 m tall has the lesser.
const (
	floorIn2     = 530
	tallFloorIn2 = 400
	tallMM       = 1000
	in2          = 25.4 * 25.4
	floorSource  = "municipal fire-body specification"
)

// Tanks holds each against the rules for poly tanks.
func Tanks(list []Tank) ([]finding.Finding, error) {
	var bad field.Errors
	if bad.Count("tanks", len(list), 0, field.MaxCount) {
		bad.Unique("tanks", len(list), func(i int) string { return list[i].Name }, ".name")
		for i, t := range list {
			at := fmt.Sprintf("tanks[%d]", i)
			bad.Positive(at+".height_mm", t.HeightMM, 5000)
			bad.Between(at+".unsupported_mm2", t.UnsupportedMM2, 0, 1e8)
		}
	}
	if err := bad.Err(); err != nil {
		return nil, err
	}
	var out []finding.Finding
	for _, t := range list {
		most := floorIn2 * in2
		if t.HeightMM > tallMM {
			most = tallFloorIn2 * in2
		}
		out = append(out, finding.Measured(t.Name, "unsupported area of the floor", floorSource, t.UnsupportedMM2, finding.AtMost, most, "mm2"))
		f := finding.Finding{At: t.Name, Rule: "hold-down", Source: floorSource, Verdict: finding.Pass}
		if !t.HeldDown {
			f.Verdict, f.Words = finding.Fail, "nothing holds it down: an empty tank bounces too"
		}
		out = append(out, f)
	}
	return out, nil
}
