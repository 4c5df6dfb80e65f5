package pack

// This file puts the words on every paper of a job that does not pass but is released.

import (
	"slices"

	"lugwright/client/draw"
)

// NotPassedText is the first line of every paper of a job that does not pass.
const NotPassedText = "NOT PASSED: a check fails, is outside the rule or is missing; see the calc sheet. Do not use this bracket."

// NotPassedName begins the name of each of its files.
const NotPassedName = "NOT-PASSED-"

const stampText = "NOT PASSED: DO NOT USE, SEE THE CALC SHEET"

// warning is the first line of every paper, empty for a job that passes or is not released.
func (a *assembly) warning() string {
	if a.prefix() == "" {
		return ""
	}
	return NotPassedText
}

// onSource puts the warning on the first line of an OpenSCAD source.
func (a *assembly) onSource(data []byte) []byte {
	if a.warning() == "" {
		return data
	}
	return append([]byte("// "+NotPassedText+"\n"), data...)
}

// stamped is a drawing with a strip on top and a stamp across that, clear of what is drawn.
func stamped(d *draw.Drawing) *draw.Drawing {
	const edge = 1.5
	t := &draw.Text{At: draw.Point{X: edge}, HeightMM: 1, Words: stampText, Bold: true}
	t.HeightMM = min((d.WidthMM-2*edge)/t.WidthMM(), 6)
	t.At.Y = d.HeightMM + edge
	out := *d
	out.HeightMM += t.HeightMM + 2*edge
	out.Items = append(slices.Clip(d.Items), t)
	return &out
}
