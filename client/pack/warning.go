package pack

// This file puts the words on every paper of a job that does not pass but is released.

import (
	"bytes"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"sync"
)

// NotPassedText is the first line of every paper of a job that does not pass.
const NotPassedText = "NOT PASSED: a check fails, is outside the rule or is missing; see the calc sheet. Do not use this bracket."

const (
	notPassed = "NOT-PASSED-"
	stampText = "NOT PASSED: DO NOT USE, SEE THE CALC SHEET"
)

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

// sizes are those of an SVG's root: its height on paper, and its box.
var sizes = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`<svg\b[^>]*\bheight="([0-9.]+)mm" viewBox="([-0-9.]+) ([-0-9.]+) ([0-9.]+) ([0-9.]+)"`)
})

// letterWidth is that of a bold capital as a part of its height, a little more than common sans-serif letters have.
const letterWidth = 0.75

// onDrawing adds a strip on top of an SVG and prints a stamp across it, clear of the drawing. One whose sizes cannot be read gets the stamp all the same.
func (a *assembly) onDrawing(data []byte) []byte {
	end := bytes.LastIndex(data, []byte("</svg>"))
	if a.warning() == "" || end < 0 {
		return data
	}
	m := sizes().FindSubmatchIndex(data)
	if m == nil {
		return slices.Concat(data[:end], []byte(stamp(0, 0, 100)), data[end:])
	}
	at := func(k int) float64 { return number(data[m[2*k]:m[2*k+1]]) }
	paper, x, y, width, height := at(1), at(2), at(3), at(4), at(5)
	strip := 1.6 * stampSize(width)
	return slices.Concat(
		data[:m[2]], fmt.Appendf(nil, "%.3f", paper*(height+strip)/height),
		data[m[3]:m[6]], fmt.Appendf(nil, "%.3f", y-strip),
		data[m[7]:m[10]], fmt.Appendf(nil, "%.3f", height+strip),
		data[m[11]:end], []byte(stamp(x, y-strip, width)), data[end:],
	)
}

// stampSize is the height of the letters across a drawing of some width.
func stampSize(width float64) float64 { return 0.96 * width / (letterWidth * float64(len(stampText))) }

// stamp is the text across a drawing of some width, below its corner.
func stamp(x, y, width float64) string {
	size := stampSize(width)
	return fmt.Sprintf("<text x=\"%.2f\" y=\"%.2f\" font-family=\"sans-serif\" font-weight=\"bold\" font-size=\"%.2f\" fill=\"#c00000\">%s</text>\n",
		x+0.02*width, y+1.2*size, size, stampText)
}

func number(text []byte) float64 {
	v, _ := strconv.ParseFloat(string(text), 64)
	return v
}
