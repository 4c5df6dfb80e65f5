package pack

// This file puts the words on every paper of a job that does not pass but is released.

import (
	"bytes"
	"fmt"
	"regexp"
	"slices"
	"strconv"
)

const (
	notPassed   = "NOT-PASSED-"
	warningText = "NOT PASSED: a check fails, is outside the rule or is missing; see the calc sheet. Do not use this bracket."
	stampText   = "NOT PASSED: DO NOT USE, SEE THE CALC SHEET"
)

// warning is the first line of every paper, empty for a job that passes or is not released.
func (a *assembly) warning() string {
	if a.prefix() == "" {
		return ""
	}
	return warningText
}

// onSource puts the warning on the first line of an OpenSCAD source.
func (a *assembly) onSource(data []byte) []byte {
	if a.warning() == "" {
		return data
	}
	return append([]byte("// "+warningText+"\n"), data...)
}

var viewBox = regexp.MustCompile(`<svg\b[^>]*\bviewBox="([-0-9.]+)[ ,]+([-0-9.]+)[ ,]+([0-9.]+)[ ,]+([0-9.]+)"`)

// letterWidth is that of a bold capital as a part of its height, a little more than common sans-serif letters have.
const letterWidth = 0.75

// onDrawing prints a stamp across the top of an SVG, where no printer leaves it out.
func (a *assembly) onDrawing(data []byte) []byte {
	end := bytes.LastIndex(data, []byte("</svg>"))
	if a.warning() == "" || end < 0 {
		return data
	}
	x, y, width := 0.0, 0.0, 100.0
	if m := viewBox.FindSubmatch(data); m != nil {
		x, y, width = number(m[1]), number(m[2]), number(m[3])
	}
	size := 0.96 * width / (letterWidth * float64(len(stampText)))
	stamp := fmt.Sprintf("<text x=\"%.2f\" y=\"%.2f\" font-family=\"sans-serif\" font-weight=\"bold\" font-size=\"%.2f\" fill=\"#c00000\">%s</text>\n",
		x+0.02*width, y+1.2*size, size, stampText)
	return slices.Concat(data[:end], []byte(stamp), data[end:])
}

func number(text []byte) float64 {
	v, _ := strconv.ParseFloat(string(text), 64)
	return v
}
