package draw

import (
	"bytes"
	"flag"
	"fmt"
	"go/format"
	"math"
	"os"
	"testing"

	"golang.org/x/image/font"
	"golang.org/x/image/font/gofont/gobold"
	"golang.org/x/image/font/gofont/goregular"
	"golang.org/x/image/font/opentype"
	"golang.org/x/image/font/sfnt"
	"golang.org/x/image/math/fixed"
)

var update = flag.Bool("update", false, "rewrite the table of widths")

// The table is what golang.org/x/image reads in the fonts themselves.
func TestWidthsAreTheFonts(t *testing.T) {
	var src bytes.Buffer
	fmt.Fprintf(&src, "package draw\n\n// Written by go test ./client/draw -update from golang.org/x/image/font/gofont.\n\n"+
		"const (\n\tunitsPerEm = %d\n\tfirst = ' '\n\tlast = 'ÿ'\n)\n", 2048)
	for _, f := range []struct {
		name string
		ttf  []byte
		own  *face
	}{{"regular", goregular.TTF, &regular}, {"bold", gobold.TTF, &bold}} {
		font := parsed(t, f.ttf)
		fmt.Fprintf(&src, "\nvar %s = face{", f.name)
		for r := rune(first); r <= last; r++ {
			want := advance(t, font, r)
			if (r-first)%16 == 0 {
				src.WriteString("\n\t")
			}
			fmt.Fprintf(&src, "%d, ", want)
			if !*update && int(f.own[r-first]) != want {
				t.Errorf("%s %q: %d, want %d", f.name, r, f.own[r-first], want)
			}
		}
		src.WriteString("\n}\n")
	}
	if *update {
		text, err := format.Source(src.Bytes())
		if err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile("widths.go", text, 0o644); err != nil {
			t.Fatal(err)
		}
	}
}

func parsed(t *testing.T, ttf []byte) *sfnt.Font {
	t.Helper()
	f, err := opentype.Parse(ttf)
	if err != nil {
		t.Fatal(err)
	}
	if f.UnitsPerEm() != unitsPerEm {
		t.Fatalf("%d units to the em", f.UnitsPerEm())
	}
	return f
}

// advance is 0 for a letter that the font lacks.
func advance(t *testing.T, f *sfnt.Font, r rune) int {
	t.Helper()
	var buf sfnt.Buffer
	i, err := f.GlyphIndex(&buf, r)
	if err != nil {
		t.Fatal(err)
	}
	if i == 0 {
		return 0
	}
	w, err := f.GlyphAdvance(&buf, i, fixed.I(unitsPerEm), font.HintingNone)
	if err != nil {
		t.Fatal(err)
	}
	return w.Round()
}

// The box of a text holds every glyph's outline.
func TestHeights(t *testing.T) {
	for _, ttf := range [][]byte{goregular.TTF, gobold.TTF} {
		f := parsed(t, ttf)
		var buf sfnt.Buffer
		top, deepest := 0, 0
		for r := rune('!'); r <= '~'; r++ {
			i, err := f.GlyphIndex(&buf, r)
			if err != nil {
				t.Fatal(err)
			}
			b, _, err := f.GlyphBounds(&buf, i, fixed.I(unitsPerEm), font.HintingNone)
			if err != nil {
				t.Fatal(err)
			}
			if r == 'H' {
				top = -b.Min.Y.Floor()
			}
			deepest = max(deepest, b.Max.Y.Ceil())
		}
		t.Logf("capital %d, deepest %d", top, deepest)
		if math.Abs(float64(top)-capHeight*unitsPerEm) > 1 || float64(deepest) > descent*unitsPerEm {
			t.Errorf("capitals %d high and letters %d deep; the table says %g and %g", top, deepest, capHeight*unitsPerEm, descent*unitsPerEm)
		}
	}
}
