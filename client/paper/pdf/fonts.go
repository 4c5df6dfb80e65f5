package pdf

// This file holds the fonts: Go Regular, Go Bold and Go Mono (Bigelow & Holmes, 2016) with every letter that they have, cut once and packed (cut_test.go), since
// to cut out a paper's own letters takes longer than to write the rest of it.

import (
	_ "embed"
	"slices"
	"unicode"
)

// face is one of the fonts.
type face string

const (
	regular face = "regular"
	bold    face = "bold"
	mono    face = "mono"
)

// faces are all of them, in their order in a file.
var faces = [...]face{regular, bold, mono}

//go:embed fonts/regular.ttf.z
var regularTTF string

//go:embed fonts/bold.ttf.z
var boldTTF string

//go:embed fonts/mono.ttf.z
var monoTTF string

// unicodes say which letter a glyph is. It is one table for all fonts.
//
//go:embed fonts/unicode.z
var unicodesZ string

// outlines is what a file says of a font beside its letters: name, box round all of them, weight of stems (by eye), and the font itself, packed.
type outlines struct {
	name  string
	box   [4]int // of 2048
	stem  int
	fixed bool
	ttf   *string
}

func (f face) outlines() outlines {
	switch f {
	case bold:
		return outlines{"Go-Bold", [4]int{-452, -492, 2190, 2291}, 140, false, &boldTTF}
	case mono:
		return outlines{"GoMono", [4]int{0, -432, 1229, 2291}, 80, true, &monoTTF}
	}
	return outlines{"GoRegular", [4]int{-440, -543, 2160, 2291}, 90, false, &regularTTF}
}

func (f face) widths() *[len(letters)]uint16 {
	switch f {
	case bold:
		return &boldWidths
	case mono:
		return &monoWidths
	}
	return &regularWidths
}

// Of all three fonts, of a size of 2048.
const (
	ascent    = 1935
	descent   = -432
	capitals  = 1480
	capHeight = capitals / 2048.0 // as a part of the size
)

// letter is the place of a letter in the table, -1 where the fonts lack it.
func letter(r rune) int {
	if r >= ' ' && r <= '~' {
		return int(r - ' ')
	}
	if r > 0xffff {
		return -1
	}
	if i, ok := slices.BinarySearch(letters[:], uint16(r)); ok && r > 0 {
		return i
	}
	return -1
}

// foreign says that the fonts lack a letter. Every space is written as the plain one.
func foreign(r rune) bool { return letter(r) < 0 && !unicode.IsSpace(r) }
