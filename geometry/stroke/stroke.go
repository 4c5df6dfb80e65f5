// Package stroke turns short texts into single-stroke lines that a machine can engrave. It never fills a letter and knows
// no format; what it cannot spell it draws as an empty box.
package stroke

import (
	"strings"

	"lugwright/geometry/shape"
)

// Cells of the grid that the letters of font.go are drawn on.
const (
	rows    = 6 // grid steps from foot to head
	columns = 4 // grid steps across a letter
	advance = 6 // grid steps from one letter to the next
)

// Text gives the open lines of a text, in mm: capitals of the given height, middled on a point both ways, running in direction
// angleRad. Small letters become capitals.
func Text(text string, middle shape.Point, heightMM, angleRad float64) [][]shape.Point {
	step := heightMM / rows
	back := shape.Point{X: -WidthMM(text, heightMM) / 2, Y: -heightMM / 2}
	var lines [][]shape.Point
	for i, r := range []rune(strings.ToUpper(text)) {
		for _, line := range strings.Split(letter(r), ",") {
			if pts := points(line, i*advance); len(pts) > 1 {
				lines = append(lines, pts)
			}
		}
	}
	for _, line := range lines {
		for i, p := range line {
			line[i] = p.Scale(step).Add(back).Rotate(angleRad).Add(middle)
		}
	}
	return lines
}

// WidthMM is the length of a text of the given height, from the left of its first letter to the right of its last.
func WidthMM(text string, heightMM float64) float64 {
	n := len([]rune(text))
	if n == 0 {
		return 0
	}
	return float64((n-1)*advance+columns) * heightMM / rows
}

func letter(r rune) string {
	if s, ok := font[r]; ok {
		return s
	}
	return box
}

// points reads one stroke, shifted by dx grid steps.
func points(line string, dx int) []shape.Point {
	var out []shape.Point
	for _, xy := range strings.Fields(line) {
		out = append(out, shape.Point{X: float64(int(xy[0]-'0') + dx), Y: float64(xy[1] - '0')})
	}
	return out
}
