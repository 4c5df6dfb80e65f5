package drawings

import (
	"strings"

	"lugwright/units"
)

// Options say what a drawing is made for. The zero value is metric, on a sheet of A4 or letter.
type Options struct {
	Units units.System
	// WidthMM and HeightMM are what the whole drawing may take on the sheet; 0: what a page of A4 and one of letter both have, so that a stated scale is true on either.
	WidthMM, HeightMM float64
}

const (
	usualWidthMM  = 180.0
	usualHeightMM = 221.0
)

// room is what is left for what is drawn, within the drawing's edge.
func (o *Options) room() (width, height float64) {
	width, height = o.WidthMM, o.HeightMM
	if width == 0 {
		width = usualWidthMM
	}
	if height == 0 {
		height = usualHeightMM
	}
	return width - 2*edgeMM, height - 2*edgeMM
}

// length writes a length without its unit, which the drawing states once.
func (o *Options) length(mm float64) string {
	return units.Unitless(units.Format(mm, units.Length, o.Units))
}

// weldLength is that of a run, as the welder reads it.
func (o *Options) weldLength(mm float64) string { return units.Unitless(units.WeldLength(mm, o.Units)) }

func (o *Options) unit() string {
	if o.Units == units.Inch {
		return "inches"
	}
	return "mm"
}

// scale is paper over model, with its words.
type scale struct {
	factor float64
	words  string
}

// scales of a system, largest first: of ISO 5455 in mm, and the usual halves in inches.
func (o *Options) scales() []scale {
	if o.Units == units.Inch {
		return []scale{{2, "2:1"}, {1, "1:1"}, {1 / 2., "1:2"}, {1 / 4., "1:4"}, {1 / 8., "1:8"}, {1 / 16., "1:16"}, {1 / 32., "1:32"}, {1 / 64., "1:64"}}
	}
	return []scale{{2, "2:1"}, {1, "1:1"}, {1 / 2., "1:2"}, {1 / 5., "1:5"}, {1 / 10., "1:10"}, {1 / 20., "1:20"}, {1 / 50., "1:50"}, {1 / 100., "1:100"}}
}

// GroupID is the name of the group that draws what has a mark.
func GroupID(mark string) string {
	return strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '-' || r == '_' {
			return r
		}
		return '-'
	}, mark)
}
