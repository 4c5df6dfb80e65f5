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
	return WritePieces(w, []Piece{{Plate: p}}, o)
}

// Piece is a plate in its place in a file of several: turned about its own origin, then moved.
type Piece struct {
	Plate   *part.Plate
	At      shape.Point
	TurnRad float64
}

// Outline is what is cut of it, in its place.
func (p *Piece) Outline() shape.Outline {
	if p.At == (shape.Point{}) && p.TurnRad == 0 {
		return p.Plate.Shape(true)
	}
	return p.Plate.Shape(true).Rotate(p.TurnRad, shape.Point{}).Translate(p.At)
}

func (p *Piece) place(q shape.Point) shape.Point { return q.Rotate(p.TurnRad).Add(p.At) }

// WritePieces writes several plates as one DXF file, one after the other.
func WritePieces(w io.Writer, pieces []Piece, o Options) error {
	if o.Version != R2000 && o.Version != R12 && o.Version != R2010 {
		return fmt.Errorf("dxf version %d: unknown; use R2000, R12 or R2010", int(o.Version))
	}
	o.Layers = o.Layers.orOurs()
	var d drawing
	for i := range pieces {
		if err := d.add(&pieces[i], o); err != nil {
			return fmt.Errorf("plate %s: %w", pieces[i].Plate.ID, err)
		}
	}
	unit := 1.0
	if o.Inch {
		unit = mmPerInch
	}
	head, body := newWriter(unit, o.Layers, headSize), newWriter(unit, o.Layers, headSize+d.size())
	if o.Version == R12 {
		body.r12Body(d)
		head.r12Head(d, o.Inch, body.handles)
	} else {
		body.r2000Body(d)
		head.r2000Head(d, o, body.handles)
	}
	for _, half := range []*writer{&head, &body} {
		if half.err != nil {
			return fmt.Errorf("%s: %w", words(pieces), half.err)
		}
	}
	if _, err := w.Write(head.buf); err != nil {
		return err
	}
	_, err := w.Write(body.buf)
	return err
}

// headSize and entitySize are bytes to begin with: header or tables, and an edge or point of an entity.
const (
	headSize   = 4096
	entitySize = 120
)

func newWriter(unit float64, l Layers, size int) writer {
	return writer{unit: unit, layers: l, buf: make([]byte, 0, size)}
}

// size is about how many bytes the entities take.
func (d *drawing) size() int {
	n := 0
	for _, s := range d.strokes {
		n += len(s.Points)
	}
	for _, l := range d.contours {
		n += len(l)
	}
	return n * entitySize
}

func words(pieces []Piece) string {
	if len(pieces) == 1 {
		return "plate " + pieces[0].Plate.ID
	}
	return fmt.Sprintf("%d plates", len(pieces))
}

// drawing is what goes into the file, in order of the file.
type drawing struct {
	strokes  []Stroke
	contours []shape.Loop
	box      shape.Box
}

// Stroke is a line of two or more points, in mm; a closed one is not cut.
type Stroke struct {
	Layer  string
	Points []shape.Point
	Closed bool
}

// add draws a piece: marks, bends, centres, then cuts.
func (d *drawing) add(p *Piece, o Options) error {
	draw := func(layer string, closed bool, points ...shape.Point) {
		if layer == "" {
			return
		}
		for i := range points {
			points[i] = p.place(points[i])
		}
		d.strokes = append(d.strokes, Stroke{layer, points, closed})
	}
	for _, e := range p.Plate.Etch {
		lines := stroke.Text(e.Text, e.At, e.HeightMM, e.AngleRad)
		if o.OutlineMarks {
			lines = stroke.Outlines(lines, e.HeightMM)
		}
		for _, line := range lines {
			draw(o.Layers.Etch, o.OutlineMarks, line...)
		}
	}
	for _, b := range p.Plate.Bends {
		draw(o.Layers.Bend, false, b.A, b.B)
	}
	for _, h := range p.Plate.Holes {
		if h.Finish != part.AsCut || h.CutMM == 0 {
			for _, line := range cross(h) {
				draw(o.Layers.Centre, false, line[0], line[1])
			}
		}
	}
	return d.cuts(p.Outline())
}

func (d *drawing) cuts(cut shape.Outline) error {
	for i, l := range append(cut.Holes, cut.Outer) {
		l = flat(l).Normalize()
		if len(l) < 2 {
			return fmt.Errorf("contour %d: %d edges; a contour needs at least 2", i, len(l))
		}
		if i < len(cut.Holes) {
			l = l.CW()
		} else {
			l = l.CCW()
		}
		d.contours = append(d.contours, l)
	}
	outer := d.contours[len(d.contours)-1].BBox()
	if len(d.contours) == len(cut.Holes)+1 {
		d.box = outer
	} else {
		d.box = d.box.Union(outer)
	}
	return nil
}

// cross marks the centre of a hole that is drilled or reamed later.
func cross(h part.Hole) [2][2]shape.Point {
	arm := markMM
	if h.CutMM > 0 {
		arm += h.DiaMM / 2
	}
	c := h.Center
	return [2][2]shape.Point{{{X: c.X - arm, Y: c.Y}, {X: c.X + arm, Y: c.Y}}, {{X: c.X, Y: c.Y - arm}, {X: c.X, Y: c.Y + arm}}}
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
