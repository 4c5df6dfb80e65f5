package svg

import (
	"fmt"
	"io"
	"strings"

	"lugwright/geometry/shape"
	"lugwright/geometry/stroke"
	"lugwright/part"
)

// PlateOptions of WritePlate. The zero value is the finished plate.
type PlateOptions struct {
	Cut      bool    // holes as they leave the table, else finished
	MarginMM float64 // paper left around the plate, 0 for 6
}

const (
	usualMarginMM = 6.0
	// plateDecimals: an arc near half a circle is only as exact as the root of its radius' last digit.
	plateDecimals = 9
	captionMM     = 3.5
	ink           = "#22282e"
	steel         = "#dfe4e8"
	etchInk       = "#2f5f9e"
	markInk       = "#a33a2b"
)

// WritePlate draws a plate at full size: its outline with true arcs, holes with their centres, etch strokes, bend lines, and
// a caption with mark, name, thickness and material. It fails when a contour has fewer than two edges or a number is not
// finite or beyond 1e6.
func WritePlate(out io.Writer, p *part.Plate, o PlateOptions) error {
	margin := o.MarginMM
	if margin == 0 {
		margin = usualMarginMM
	}
	if !(margin > 0 && margin <= 1000) {
		return fmt.Errorf("margin_mm: %g; more than 0 and at most 1000 is accepted", margin)
	}
	cut := p.Shape(o.Cut).Normalize()
	for i, l := range append([]shape.Loop{cut.Outer}, cut.Holes...) {
		if len(l) < 2 {
			return fmt.Errorf("plate %s: contour %d: %d edges; a contour needs at least 2", p.ID, i, len(l))
		}
	}
	box := cut.BBox()
	s := sheet{writer: newWriter(plateDecimals), left: box.Min.X - margin, top: box.Max.Y + margin}
	defer s.free()
	caption := fmt.Sprintf("%s  %s  %s mm  %s", p.Mark, p.Name, s.number(p.ThicknessMM), p.Material)
	// A narrow plate gets a sheet as wide as its caption.
	wide := max(box.Width(), float64(len([]rune(strings.TrimSpace(caption))))*0.6*captionMM)
	s.open(wide+2*margin, box.Height()+2*margin+2*captionMM, strings.TrimSpace(caption))
	s.tag(false, "path", "d", s.loops(cut), "fill", steel, "fill-rule", "evenodd", "stroke", ink, "stroke-width", 0.25)
	for _, h := range p.Holes {
		s.hole(h, o.Cut)
	}
	for _, b := range p.Bends {
		s.stroke([]shape.Point{b.A, b.B}, ink, 0.18, "4 1.5 1 1.5")
	}
	for _, e := range p.Etch {
		for _, line := range stroke.Text(e.Text, e.At, e.HeightMM, e.AngleRad) {
			s.stroke(line, etchInk, 0.25, "")
		}
	}
	s.leaf("text", strings.TrimSpace(caption), "x", margin, "y", box.Height()+2*margin+captionMM, "font-family", "sans-serif", "font-size", captionMM, "fill", ink)
	s.end("svg")
	if s.err != nil {
		return fmt.Errorf("plate %s: %w", p.ID, s.err)
	}
	_, err := out.Write(s.buf.Bytes())
	return err
}

// sheet is a writer whose paper starts at a left and top in plate coordinates.
type sheet struct {
	writer
	left, top float64
}

func (s *sheet) at(p shape.Point) shape.Point { return shape.Point{X: p.X - s.left, Y: s.top - p.Y} }

// loops is path data of all contours.
func (s *sheet) loops(o shape.Outline) path {
	var d path
	for _, l := range append([]shape.Loop{o.Outer}, o.Holes...) {
		d = s.appendPoint(d, 'M', s.at(l[0].Point))
		for i := range l {
			if e := l.Edge(i); e.IsArc() {
				d = s.arc(d, e)
			} else {
				d = s.appendPoint(d, 'L', s.at(e.B))
			}
		}
		d = append(d, 'Z')
	}
	return d
}

// arc: no arc is over half a circle, so the large flag is always 0; y runs down, so counter-clockwise is sweep 0.
func (s *sheet) arc(to path, e shape.Edge) path {
	flags := " 0 0 0"
	if e.Bulge < 0 {
		flags = " 0 0 1"
	}
	to = s.appendPoint(to, 'A', shape.Point{X: e.Radius(), Y: e.Radius()})
	return s.appendPoint(append(to, flags...), ' ', s.at(e.B))
}

// hole marks a centre, with arms past the finished edge. Where the hole leaves the table smaller or not at all, its finished
// circle is dashed.
func (s *sheet) hole(h part.Hole, cut bool) {
	arm := h.DiaMM/2 + min(2.5, h.DiaMM/4)
	c := h.Center
	s.stroke([]shape.Point{{X: c.X - arm, Y: c.Y}, {X: c.X + arm, Y: c.Y}}, markInk, 0.12, "")
	s.stroke([]shape.Point{{X: c.X, Y: c.Y - arm}, {X: c.X, Y: c.Y + arm}}, markInk, 0.12, "")
	if cut && h.CutMM != h.DiaMM {
		at := s.at(c)
		s.tag(false, "circle", "cx", at.X, "cy", at.Y, "r", h.DiaMM/2, "fill", "none", "stroke", markInk, "stroke-width", 0.12, "stroke-dasharray", "1.5 1")
	}
}

func (s *sheet) stroke(points []shape.Point, colour string, width float64, dash string) {
	moved := make([]shape.Point, len(points))
	for i, p := range points {
		moved[i] = s.at(p)
	}
	attrs := []any{"d", s.line(nil, moved, false), "fill", "none", "stroke", colour, "stroke-width", width, "stroke-linecap", "round", "stroke-linejoin", "round"}
	if dash != "" {
		attrs = append(attrs, "stroke-dasharray", dash)
	}
	s.tag(false, "path", attrs...)
}
