package pdf

// This file holds fonts, the widths of words, and lines broken to a width.

import (
	"slices"
	"strconv"
	"strings"
	"sync"
	"unicode"
	"unicode/utf8"

	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/gomono"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
)

// face is one of the fonts.
type face string

const (
	regular face = "regular"
	bold    face = "bold"
	mono    face = "mono"
)

// data is a copy of the font's file: who cuts letters out of it for the PDF writes into what it is given.
func (f face) data() []byte {
	switch f {
	case bold:
		return slices.Clone(gobold.TTF)
	case mono:
		return slices.Clone(gomono.TTF)
	}
	return slices.Clone(goregular.TTF)
}

// capHeight is that of the fonts as a part of their size: 1480 of 2048.
const capHeight = 1480.0 / 2048

// pointMM is a point.
const pointMM = 25.4 / 72

// style is a face with its size in points.
type style struct {
	face face
	size float64
}

var (
	title    = style{bold, 17}
	body     = style{regular, 9}
	strong   = style{bold, 9}
	small    = style{regular, 8}
	fine     = style{regular, 7.5}
	figures  = style{mono, 7.5}
	head     = style{regular, 7.5}
	headBold = style{bold, 8.5}
	hash     = style{mono, 6}
	warning  = style{bold, 10}
	headings = [...]style{{bold, 13}, {bold, 11}, {bold, 9.5}} // of levels 2, 3 and 4
)

// leading is from one base line to the next, mm.
func (s style) leading() float64 { return 1.32 * s.size * pointMM }

// base is from the top of a line to its base line, mm.
func (s style) base() float64 { return 1.0 * s.size * pointMM }

// use is the style of words from now on. A font comes into the file when it is first used.
func (d *document) use(s style) {
	if d.all[s.face] == nil {
		d.all[s.face] = map[rune]float64{}
		d.f.AddUTF8FontFromBytes(string(s.face), "", s.face.data())
	}
	d.now, d.widths = s, d.all[s.face]
	d.f.SetFont(string(s.face), "", s.size)
}

// put writes words in one line from a place on their base line.
func (d *document) put(x, y float64, words string) {
	if words != "" {
		d.f.Text(x, y, words)
	}
}

// wide is the width of words in the style in use, mm.
func (d *document) wide(words string) float64 {
	sum := 0.0
	for _, r := range words {
		w, ok := d.widths[r]
		if !ok {
			w = float64(d.f.GetStringSymbolWidth(string(r))) / 1000
			d.widths[r] = w
		}
		sum += w
	}
	return sum * d.now.size * pointMM
}

// lines breaks words to a width, between words where that goes, else within them; no letter gets lost.
func (d *document) lines(text string, width float64) []string {
	var out []string
	line, at := "", 0.0
	space := d.wide(" ")
	for _, word := range words(text) {
		w := d.wide(word)
		if line != "" && at+space+w <= width {
			line, at = line+" "+word, at+space+w
			continue
		}
		if line != "" {
			out = append(out, line)
		}
		for w > width && utf8.RuneCountInString(word) > 1 {
			n := d.fitting(word, width)
			out = append(out, word[:n])
			word = word[n:]
			w = d.wide(word)
		}
		line, at = word, w
	}
	return append(out, line)
}

// fitting is how many bytes of a word fit in a width: at least one letter, and up to a hyphen, a comma or the like where one is near.
func (d *document) fitting(word string, width float64) int {
	sum, n, good := 0.0, 0, 0
	for i, r := range word {
		sum += d.wide(string(r))
		if i > 0 && sum > width {
			break
		}
		n = i + utf8.RuneLen(r)
		if strings.ContainsRune("-/,;:_.", r) {
			good = n
		}
	}
	if good > n/2 {
		return good
	}
	return n
}

// clipped is the words on one line, the end left out where they are too wide: for heads of pages, whose words stand in full elsewhere.
func (d *document) clipped(text string, width float64) string {
	text = plain(text)
	if d.wide(text) <= width {
		return text
	}
	at := d.wide("…")
	for i, r := range text {
		if at += d.wide(string(r)); at > width {
			return text[:i] + "…"
		}
	}
	return text
}

var outlines = sync.OnceValue(func() *sfnt.Font {
	f, err := sfnt.Parse(goregular.TTF)
	if err != nil {
		panic("pdf: a font that comes with its package cannot be read: " + err.Error())
	}
	return f
})

// plain is text with letters that the fonts have: another letter is written by its number, so that the reader sees that there is one.
func plain(text string) string {
	return strings.Map(func(r rune) rune {
		if unicode.IsSpace(r) {
			return ' '
		}
		return r
	}, known(strings.ToValidUTF8(text, "\uFFFD")))
}

func known(text string) string {
	if strings.IndexFunc(text, foreign) < 0 {
		return text
	}
	var b strings.Builder
	for _, r := range text {
		switch {
		case r == '⌀':
			b.WriteRune('Ø')
		case foreign(r):
			b.WriteString("[U+" + strings.ToUpper(strconv.FormatInt(int64(r), 16)) + "]")
		default:
			b.WriteRune(r)
		}
	}
	return b.String()
}

// foreign says that the fonts lack a letter. The three fonts have the same letters.
func foreign(r rune) bool {
	if r < 0x7f || unicode.IsSpace(r) {
		return r < ' ' && !unicode.IsSpace(r)
	}
	if known, ok := lacking.Load(r); ok {
		return known.(bool)
	}
	var b sfnt.Buffer
	n, err := outlines().GlyphIndex(&b, r)
	lacks := err != nil || n == 0
	lacking.Store(r, lacks)
	return lacks
}

// lacking says of letters asked for so far whether the fonts lack them.
var lacking sync.Map

func number(n int) string { return strconv.Itoa(n) }

// words are those of a text, as the fonts have them.
func words(text string) []string { return strings.Fields(plain(text)) }
