package draw

// This file measures words. Every form sets them in Go Regular and Go Bold, or makes the line as long where it has another face.

import "math"

// Of Go Regular and Go Bold (Bigelow & Holmes, 2016), in sizes of the font.
const (
	capHeight = 1480.0 / unitsPerEm
	descent   = 420.0 / unitsPerEm // of the deepest letter under the base line
	// unknownWidth is that of a letter outside the table: the widest there is.
	unknownWidth = unitsPerEm
)

// SizeMM is the size of the font whose capitals have the text's height.
func (t *Text) SizeMM() float64 { return t.HeightMM / capHeight }

// WidthMM is the length of the line, without kerning.
func (t *Text) WidthMM() float64 {
	face := &regular
	if t.Bold {
		face = &bold
	}
	sum := 0
	for _, r := range t.Words {
		sum += face.advance(r)
	}
	return float64(sum) / unitsPerEm * t.SizeMM()
}

// Corners are those of the box that the line fills from its deepest letter to the height of its capitals, from the lower left of the words
// counter-clockwise.
func (t *Text) Corners() [4]Point {
	width := t.WidthMM()
	left := 0.0
	switch t.Align {
	case Middle:
		left = -width / 2
	case Right:
		left = -width
	}
	down := -descent * t.SizeMM()
	sin, cos := math.Sincos(t.TurnRad)
	at := func(x, y float64) Point { return Point{t.At.X + x*cos - y*sin, t.At.Y + x*sin + y*cos} }
	return [4]Point{at(left, down), at(left+width, down), at(left+width, t.HeightMM), at(left, t.HeightMM)}
}

// face is the widths of a font's letters by their code points, from the first to the last of the table.
type face [last - first + 1]uint16

func (f *face) advance(r rune) int {
	if r < first || r > last || f[r-first] == 0 {
		return unknownWidth
	}
	return int(f[r-first])
}
