package dxf

import (
	"fmt"
	"io"

	"lugwright/geometry/shape"
	"lugwright/geometry/stroke"
	"lugwright/part"
)

const (
	// flatMM: an arc that rises less over its chord is written as a line; importers make nonsense of flatter ones.
	flatMM = 0.001
	// markMM is half the size of the cross at a hole that is only marked, and how far a cross reaches past a hole that is
	// cut, so that the centre can be found again when the slug has dropped.
	markMM = 3.0
)

// Write writes the plate as one DXF file. Marks come before cuts, inner contours before the outer; the outer runs
// counter-clockwise, the others clockwise. Holes have their diameter as cut; one that is not cut gets a centre mark only.
// It fails when a contour has fewer than two edges or a number is not finite or beyond 1e6.
func Write(w io.Writer, p *part.Plate, o Options) error {
	if o.Version != R2000 && o.Version != R12 {
		return fmt.Errorf("dxf version %d: unknown; use R2000 or R12", int(o.Version))
	}
	d, err := draw(p)
	if err != nil {
		return fmt.Errorf("plate %s: %w", p.ID, err)
	}
	unit := 1.0
	if o.Inch {
		unit = mmPerInch
	}
	head, body := writer{unit: unit}, writer{unit: unit}
	if o.Version == R12 {
		body.r12Body(d)
		head.r12Head(d, o.Inch, body.handles)
	} else {
		body.r2000Body(d)
		head.r2000Head(d, o.Inch, body.handles)
	}
	for _, half := range []*writer{&head, &body} {
		if half.err != nil {
			return fmt.Errorf("plate %s: %w", p.ID, half.err)
		}
	}
	_, err = w.Write(append(head.buf, body.buf...))
	return err
}

// drawing is what goes into the file, in order of the file.
type drawing struct {
	strokes  []Stroke
	contours []shape.Loop
	box      shape.Box
}

// Stroke is an open line of two or more points, in mm.
type Stroke struct {
	Layer  string
	Points []shape.Point
}

func draw(p *part.Plate) (drawing, error) {
	var d drawing
	for _, e := range p.Etch {
		for _, line := range stroke.Text(e.Text, e.At, e.HeightMM, e.AngleRad) {
			d.strokes = append(d.strokes, Stroke{LayerEtch, line})
		}
	}
	for _, b := range p.Bends {
		d.strokes = append(d.strokes, Stroke{LayerBend, []shape.Point{b.A, b.B}})
	}
	for _, h := range p.Holes {
		if h.Finish != part.AsCut || h.CutMM == 0 {
			d.strokes = append(d.strokes, cross(h)...)
		}
	}
	cut := p.Shape(true)
	for i, l := range append(cut.Holes, cut.Outer) {
		l = flat(l).Normalize()
		if len(l) < 2 {
			return d, fmt.Errorf("contour %d: %d edges; a contour needs at least 2", i, len(l))
		}
		if i < len(cut.Holes) {
			l = l.CW()
		} else {
			l = l.CCW()
		}
		d.contours = append(d.contours, l)
	}
	d.box = d.contours[len(cut.Holes)].BBox()
	return d, nil
}

// cross marks the centre of a hole that is drilled or reamed later.
func cross(h part.Hole) []Stroke {
	arm := markMM
	if h.CutMM > 0 {
		arm += h.DiaMM / 2
	}
	c := h.Center
	return []Stroke{
		{LayerCentre, []shape.Point{{X: c.X - arm, Y: c.Y}, {X: c.X + arm, Y: c.Y}}},
		{LayerCentre, []shape.Point{{X: c.X, Y: c.Y - arm}, {X: c.X, Y: c.Y + arm}}},
	}
}

// flat makes lines of the arcs that are too flat to write.
func flat(l shape.Loop) shape.Loop {
	out := l.Clone()
	for i := range out {
		if out.Edge(i).Sagitta() < flatMM {
			out[i].Bulge = 0
		}
	}
	return out
}
