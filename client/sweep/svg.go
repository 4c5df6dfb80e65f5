package sweep

// This file writes a plot as SVG. It writes what a plot has and no more: straight lines and words.

import (
	"encoding/xml"
	"fmt"
	"io"
	"strings"

	"lugwright/client/draw"
	"lugwright/units"
)

// WriteSVG writes the plot. Coordinates are mm, y down as the format has it.
func (p *Plot) WriteSVG(w io.Writer) error {
	d := p.Drawing()
	var b strings.Builder
	fmt.Fprintf(&b, `<svg xmlns="http://www.w3.org/2000/svg" width="%smm" height="%smm" viewBox="0 0 %s %s" font-family="sans-serif">`+"\n", mm(d.WidthMM), mm(d.HeightMM), mm(d.WidthMM), mm(d.HeightMM))
	fmt.Fprintf(&b, "<title>%s</title>\n<rect width=\"100%%\" height=\"100%%\" fill=\"#ffffff\"/>\n", escaped(d.Title))
	for _, item := range d.Items {
		switch x := item.(type) {
		case *draw.Path:
			b.WriteString(path(d, x))
		case *draw.Text:
			b.WriteString(words(d, x))
		}
	}
	b.WriteString("</svg>\n")
	_, err := io.WriteString(w, b.String())
	return err
}

func mm(v float64) string { return units.FormatPlain(v, 2) }

func grey(v float64) string {
	n := int(v*255 + 0.5)
	return fmt.Sprintf("#%02x%02x%02x", n, n, n)
}

func path(d *draw.Drawing, p *draw.Path) string {
	var b strings.Builder
	fmt.Fprintf(&b, `<path d="M%s %s`, mm(p.Start.X), mm(d.HeightMM-p.Start.Y))
	for _, s := range p.Segments {
		fmt.Fprintf(&b, "L%s %s", mm(s.To.X), mm(d.HeightMM-s.To.Y))
	}
	if p.Closed {
		b.WriteString("Z")
	}
	fill := "none"
	if p.Fill.On {
		fill = grey(p.Fill.Grey)
	}
	fmt.Fprintf(&b, `" fill="%s"`, fill)
	if p.Pen.WidthMM > 0 {
		fmt.Fprintf(&b, ` stroke="%s" stroke-width="%s"`, grey(p.Pen.Grey), mm(p.Pen.WidthMM))
	}
	if len(p.Pen.Dash) > 0 {
		fmt.Fprintf(&b, ` stroke-dasharray="%s %s"`, mm(p.Pen.Dash[0]), mm(p.Pen.Dash[1]))
	}
	return b.String() + "/>\n"
}

func words(d *draw.Drawing, t *draw.Text) string {
	const capital = 0.72 // of a face without serifs, of its size
	anchor := [...]string{draw.Left: "start", draw.Middle: "middle", draw.Right: "end"}[t.Align]
	weight := ""
	if t.Bold {
		weight = ` font-weight="bold"`
	}
	return fmt.Sprintf(`<text x="%s" y="%s" font-size="%s" text-anchor="%s"%s>%s</text>`+"\n", mm(t.At.X), mm(d.HeightMM-t.At.Y), mm(t.HeightMM/capital), anchor, weight, escaped(t.Words))
}

func escaped(s string) string {
	var b strings.Builder
	xml.EscapeText(&b, []byte(s)) //nolint:errcheck // a builder takes everything
	return b.String()
}
