package pack

// This file puts the words on every paper of a job that does not pass but is released.

import (
	"bytes"
	"fmt"
	"html"
	"regexp"
	"strconv"
)

const (
	notPassed   = "NOT-PASSED-"
	warningText = "NOT PASSED: a check fails, is outside the rule or is missing; see the calc sheet. Do not use this bracket."
)

// warning is the first line of every paper, empty for a job that passes or is not released.
func (a *assembly) warning() string {
	if a.prefix() == "" {
		return ""
	}
	return warningText
}

// onSolid puts the warning on the first line of an OpenSCAD source.
func (a *assembly) onSolid(data []byte) []byte {
	if a.warning() == "" {
		return data
	}
	return append([]byte("// "+warningText+"\n"), data...)
}

var viewBox = regexp.MustCompile(`<svg\b[^>]*\bviewBox="([-0-9.]+)[ ,]+([-0-9.]+)[ ,]+([0-9.]+)[ ,]+([0-9.]+)"`)

// onDrawing prints the warning across the top of an SVG, where no printer leaves it out.
func (a *assembly) onDrawing(data []byte) []byte {
	end := bytes.LastIndex(data, []byte("</svg>"))
	if a.warning() == "" || end < 0 {
		return data
	}
	x, y, width := 0.0, 0.0, 100.0
	if m := viewBox.FindSubmatch(data); m != nil {
		x, y, width = number(m[1]), number(m[2]), number(m[3])
	}
	text := fmt.Sprintf("<text x=\"%.2f\" y=\"%.2f\" font-family=\"sans-serif\" font-weight=\"bold\" font-size=\"%.2f\" fill=\"#c00000\" textLength=\"%.2f\" lengthAdjust=\"spacingAndGlyphs\">%s</text>\n",
		x+0.02*width, y+0.03*width, 0.02*width, 0.96*width, html.EscapeString(warningText))
	out := append([]byte(nil), data[:end]...)
	return append(append(out, text...), data[end:]...)
}

func number(text []byte) float64 {
	v, _ := strconv.ParseFloat(string(text), 64)
	return v
}
