// Package stroke turns short texts into single-stroke lines that a machine can engrave. It never fills a letter and knows
// no format; what it cannot spell it draws as an empty box.
package stroke

import (
	"slices"
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
	turn := shape.Point{X: 1}.Rotate(angleRad)
	for i, r := range []rune(strings.ToUpper(text)) {
		for rest := letter(r); rest != ""; {
			var line string
			line, rest, _ = strings.Cut(rest, ",")
			pts := points(line, i*advance)
			for k, p := range pts {
				p = p.Scale(step).Add(back)
				pts[k] = shape.Point{X: float64(p.X*turn.X) - float64(p.Y*turn.Y), Y: float64(p.X*turn.Y) + float64(p.Y*turn.X)}.Add(middle)
			}
			lines = append(lines, pts)
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

// points reads one stroke, shifted by dx grid steps: two digits a point, a blank between.
func points(line string, dx int) []shape.Point {
	out := make([]shape.Point, 0, (len(line)+1)/3)
	for ; len(line) >= 2; line = line[min(3, len(line)):] {
		out = append(out, shape.Point{X: float64(int(line[0]-'0') + dx), Y: float64(line[1] - '0')})
	}
	return out
}

// Outlines turns strokes of a text of the given height into closed outlines, a quarter of a grid step wide, for machines that engrave only
// those. A stroke that closes gives two, one within the other; one that runs into itself, as a 6 does, is stencilled.
func Outlines(lines [][]shape.Point, heightMM float64) [][]shape.Point {
	half := heightMM / rows / 8
	var out [][]shape.Point
	for _, line := range lines {
		n := len(line)
		if line[0] == line[n-1] {
			out = append(out, beside(line[:n-1], half, true), beside(line[:n-1], -half, true))
		} else if around := ribbon(line, half); simple(around) {
			out = append(out, around)
		} else {
			out = append(out, stencil(line, half)...)
		}
	}
	return out
}

// ribbon is the outline of an open line.
func ribbon(line []shape.Point, half float64) []shape.Point {
	left, right := beside(line, half, false), beside(line, -half, false)
	slices.Reverse(right)
	return append(left, right...)
}

func simple(points []shape.Point) bool {
	return len(shape.Outline{Outer: shape.Polyline(points...)}.Validate()) == 0
}

// stencil outlines each straight run of a line by itself, clear of the next.
func stencil(line []shape.Point, half float64) [][]shape.Point {
	var out [][]shape.Point
	for i := range len(line) - 1 {
		back := line[i+1].Sub(line[i]).Unit().Scale(1.5 * half)
		out = append(out, ribbon([]shape.Point{line[i].Add(back), line[i+1].Sub(back)}, half))
	}
	return out
}

// beside shifts a line to its left, with mitred corners.
func beside(line []shape.Point, mm float64, closed bool) []shape.Point {
	n := len(line)
	out := make([]shape.Point, n)
	for i, p := range line {
		before, after := line[(i+n-1)%n], line[(i+1)%n]
		if !closed && i == 0 {
			before = p.Add(p.Sub(after))
		}
		if !closed && i == n-1 {
			after = p.Add(p.Sub(before))
		}
		a, b := p.Sub(before).Unit().Perp(), after.Sub(p).Unit().Perp()
		out[i] = p.Add(a.Add(b).Scale(mm / (1 + a.Dot(b))))
	}
	return out
}
