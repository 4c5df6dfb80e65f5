package pdf

// This file cuts the fonts that the package holds out of the Go fonts: every letter that they have, by its place in the table of letters, without what only
// serves screens of few dots. -update writes them anew.

import (
	"bytes"
	"compress/zlib"
	"encoding/binary"
	"fmt"
	"go/format"
	"io"
	"math"
	"os"
	"slices"
	"strings"
	"testing"
	"unicode"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/gomono"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

var whole = map[face][]byte{regular: goregular.TTF, bold: gobold.TTF, mono: gomono.TTF}

// What is in the package is what is cut out of the fonts.
func TestFontsAreCutOutOfTheGoFonts(t *testing.T) {
	all := lettersOf(t, whole[regular])
	var src bytes.Buffer
	fmt.Fprintf(&src, "package pdf\n\n// Written by go test ./client/paper/pdf -update from golang.org/x/image/font/gofont.\n\n// letters are those of every font, each at the number of its glyph less one.\nvar letters = [...]uint16{")
	row(&src, all)
	for _, f := range faces {
		if !slices.Equal(lettersOf(t, whole[f]), all) {
			t.Fatalf("%s has other letters", f)
		}
		font := parsed(t, whole[f])
		var widths []uint16
		for _, r := range all {
			widths = append(widths, uint16(math.Round(advance(t, font, r)*1000/2048)))
		}
		fmt.Fprintf(&src, "}\n\n// %sWidths are those of the letters in thousandths of the font's size.\nvar %sWidths = [len(letters)]uint16{", f, f)
		row(&src, widths)
		same(t, "fonts/"+string(f)+".ttf.z", packed(t, cut(whole[f], all)))
	}
	src.WriteString("}\n")
	text, err := format.Source(src.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	same(t, "letters.go", text)
	same(t, "fonts/unicode.z", packed(t, unicodes(all)))
}

func row(to io.Writer, list []uint16) {
	for i, v := range list {
		if i%24 == 0 {
			fmt.Fprint(to, "\n\t")
		}
		fmt.Fprintf(to, "%d, ", v)
	}
}

// same compares with a file, or writes it.
func same(t *testing.T, name string, data []byte) {
	t.Helper()
	if *update {
		if err := os.WriteFile(name, data, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if kept, err := os.ReadFile(name); err != nil || !bytes.Equal(kept, data) {
		t.Errorf("%s differs (%v); -update rewrites it", name, err)
	}
}

func packed(t *testing.T, data []byte) []byte {
	var b bytes.Buffer
	w, err := zlib.NewWriterLevel(&b, zlib.BestCompression)
	if err != nil {
		t.Fatal(err)
	}
	w.Write(data) //nolint:errcheck // into memory
	w.Close()
	return b.Bytes()
}

func parsed(t *testing.T, ttf []byte) *sfnt.Font {
	t.Helper()
	f, err := sfnt.Parse(ttf)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

func glyph(t *testing.T, f *sfnt.Font, r uint16) sfnt.GlyphIndex {
	i, err := f.GlyphIndex(nil, rune(r))
	if err != nil {
		t.Fatal(err)
	}
	return i
}

func advance(t *testing.T, f *sfnt.Font, r uint16) float64 {
	w, err := f.GlyphAdvance(nil, glyph(t, f, r), fixed.I(2048), font.HintingNone)
	if err != nil {
		t.Fatal(err)
	}
	return float64(w) / 64
}

// lettersOf are those that a font has; of spaces the plain one.
func lettersOf(t *testing.T, ttf []byte) []uint16 {
	f := parsed(t, ttf)
	var out []uint16
	for r := uint16(' '); r < 0xffff; r++ {
		if (r == ' ' || !unicode.IsSpace(rune(r))) && glyph(t, f, r) != 0 {
			out = append(out, r)
		}
	}
	return out
}

// unicodes says in the words of PDF which letter each glyph is, so that text can be taken out of a file.
func unicodes(all []uint16) []byte {
	var b strings.Builder
	b.WriteString("/CIDInit /ProcSet findresource begin\n12 dict begin\nbegincmap\n/CIDSystemInfo <</Registry (Adobe) /Ordering (UCS) /Supplement 0>> def\n" +
		"/CMapName /Adobe-Identity-UCS def\n/CMapType 2 def\n1 begincodespacerange\n<0000> <ffff>\nendcodespacerange\n")
	const most = 100 // in one block
	for first := 0; first < len(all); first += most {
		n := min(most, len(all)-first)
		fmt.Fprintf(&b, "%d beginbfchar\n", n)
		for i, r := range all[first : first+n] {
			fmt.Fprintf(&b, "<%04x> <%04x>\n", first+i+1, r)
		}
		b.WriteString("endbfchar\n")
	}
	b.WriteString("endcmap\nCMapName currentdict /CMap defineresource pop\nend\nend\n")
	return []byte(b.String())
}

var u16 = binary.BigEndian.Uint16

// cut is a font of those letters alone, the first of them glyph 1, by the tables of the OpenType specification, version 1.9. Left out are the tables that a
// PDF's reader does not need and the instructions for rendering by dots.
func cut(ttf []byte, all []uint16) []byte {
	tables := map[string][]byte{}
	for i := range int(u16(ttf[4:])) {
		entry := ttf[12+16*i:]
		at, n := binary.BigEndian.Uint32(entry[8:]), binary.BigEndian.Uint32(entry[12:])
		tables[string(entry[:4])] = ttf[at : at+n]
	}
	f, err := sfnt.Parse(ttf)
	if err != nil {
		panic(err)
	}
	old := []uint16{0} // by new number
	for _, r := range all {
		i, err := f.GlyphIndex(nil, rune(r))
		if err != nil {
			panic(err)
		}
		old = append(old, uint16(i))
	}
	var glyf, loca, hmtx []byte
	metrics := int(u16(tables["hhea"][34:]))
	for i := 0; i < len(old); i++ { // parts of glyphs are added behind
		loca = binary.BigEndian.AppendUint32(loca, uint32(len(glyf)))
		shape := bare1(outline(tables, old[i]), func(part uint16) uint16 {
			k := slices.Index(old, part)
			if k < 0 {
				k, old = len(old), append(old, part)
			}
			return uint16(k)
		})
		glyf = append(glyf, shape...)
		glyf = append(glyf, make([]byte, -len(shape)&3)...)
		wide := tables["hmtx"][4*min(int(old[i]), metrics-1):]
		side := tables["hmtx"][4*int(old[i])+2-2*max(0, int(old[i])-metrics+1):]
		if int(old[i]) >= metrics {
			side = tables["hmtx"][4*metrics+2*(int(old[i])-metrics):]
		}
		hmtx = append(append(hmtx, wide[:2]...), side[:2]...)
	}
	loca = binary.BigEndian.AppendUint32(loca, uint32(len(glyf)))
	head, hhea, maxp := slices.Clone(tables["head"]), slices.Clone(tables["hhea"]), slices.Clone(tables["maxp"])
	copy(head[8:12], make([]byte, 4))        // a sum over the file, of which readers of a PDF take no note
	binary.BigEndian.PutUint16(head[50:], 1) // places of glyphs are in four bytes
	binary.BigEndian.PutUint16(hhea[34:], uint16(len(old)))
	binary.BigEndian.PutUint16(maxp[4:], uint16(len(old)))
	copy(maxp[26:28], make([]byte, 2)) // no instructions
	return font1([]string{"glyf", "head", "hhea", "hmtx", "loca", "maxp"}, glyf, head, hhea, hmtx, loca, maxp)
}

func outline(tables map[string][]byte, i uint16) []byte {
	loca, at := tables["loca"], func(k int) int { return 2 * int(u16(tables["loca"][2*k:])) }
	if u16(tables["head"][50:]) == 1 {
		at = func(k int) int { return int(binary.BigEndian.Uint32(loca[4*k:])) }
	}
	return tables["glyf"][at(int(i)):at(int(i)+1)]
}

// bare1 is a glyph without instructions, the glyphs that it is put together from by their new numbers.
func bare1(g []byte, number func(uint16) uint16) []byte {
	if len(g) == 0 {
		return nil
	}
	g = slices.Clone(g)
	at := 10
	if contours := int(int16(u16(g))); contours >= 0 {
		at += 2 * contours
		n := int(u16(g[at:]))
		return slices.Concat(g[:at], []byte{0, 0}, g[at+2+n:])
	}
	const words, scaled, more, twoScales, matrix, instructed = 1, 8, 0x20, 0x40, 0x80, 0x100
	for flags := uint16(more); flags&more != 0; {
		flags = u16(g[at:])
		binary.BigEndian.PutUint16(g[at:], flags&^instructed)
		binary.BigEndian.PutUint16(g[at+2:], number(u16(g[at+2:])))
		at += 6
		for bit, size := range map[uint16]int{words: 2, scaled: 2, twoScales: 4, matrix: 8} {
			if flags&bit != 0 {
				at += size
			}
		}
	}
	return g[:at]
}

// font1 puts tables, in the order of their names, into a file.
func font1(names []string, tables ...[]byte) []byte {
	out := []byte{0, 1, 0, 0}
	power := 1 << int(math.Log2(float64(len(names))))
	for _, v := range []int{len(names), 16 * power, int(math.Log2(float64(power))), 16 * (len(names) - power)} {
		out = binary.BigEndian.AppendUint16(out, uint16(v))
	}
	at := len(out) + 16*len(names)
	var body []byte
	for i, name := range names {
		data := append(slices.Clone(tables[i]), make([]byte, -len(tables[i])&3)...)
		sum := uint32(0)
		for k := 0; k < len(data); k += 4 {
			sum += binary.BigEndian.Uint32(data[k:])
		}
		out = append(out, name...)
		for _, v := range []uint32{sum, uint32(at + len(body)), uint32(len(tables[i]))} {
			out = binary.BigEndian.AppendUint32(out, v)
		}
		body = append(body, data...)
	}
	return append(out, body...)
}
