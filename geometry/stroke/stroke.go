// Package stroke turns short texts into single-stroke lines that a machine can engrave. It never fills a letter and knows
// no format; what it cannot spell it draws as an empty box.
package stroke

import (
	"slices"
	"strings"
	"unicode/utf8"

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
	points, counts := AppendText(nil, nil, text, middle, heightMM, angleRad)
	lines := make([][]shape.Point, len(counts))
	for i, n := range counts {
		lines[i], points = points[:n:n], points[n:]
	}
	return lines
}

// AppendText adds the points of the lines of Text, one line after the other, and how many each has.
func AppendText(points []shape.Point, counts []int, text string, middle shape.Point, heightMM, angleRad float64) ([]shape.Point, []int) {
	step := heightMM / rows
	back := shape.Point{X: -WidthMM(text, heightMM) / 2, Y: -heightMM / 2}
	turn := shape.Point{X: 1}.Rotate(angleRad)
	column := 0
	for _, r := range strings.ToUpper(text) {
		n := 0
		for line := letter(r); line != ""; line = line[min(3, len(line)):] {
			p := shape.Point{X: float64(int(line[0]-'0') + column), Y: float64(line[1] - '0')}.Scale(step).Add(back)
			points = append(points, shape.Point{X: float64(p.X*turn.X) - float64(p.Y*turn.Y), Y: float64(p.X*turn.Y) + float64(p.Y*turn.X)}.Add(middle))
			if n++; len(line) == 2 || line[2] == ',' {
				counts, n = append(counts, n), 0
			}
		}
		column += advance
	}
	return points, counts
}

// WidthMM is the length of a text of the given height, from the left of its first letter to the right of its last.
func WidthMM(text string, heightMM float64) float64 {
	return LettersMM(utf8.RuneCountInString(text), heightMM)
}

// LettersMM is the length of a text of n letters.
func LettersMM(n int, heightMM float64) float64 {
	if n == 0 {
		return 0
	}
	return float64((n-1)*advance+columns) * heightMM / rows
}

// letter gives the strokes of a letter: two digits a point, a blank between points, a comma between strokes.
func letter(r rune) string {
	if r < rune(len(ascii)) {
		return ascii[r]
	}
	return box
}

// ascii is the font with a box for every letter that it lacks.
var ascii = func() (all [128]string) {
	for r := range all {
		all[r] = box
	}
	for r, strokes := range font {
		all[r] = strokes
	}
	return all
}()

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
