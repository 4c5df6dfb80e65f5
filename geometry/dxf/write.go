package dxf

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"sync"

	"lugwright/geometry/shape"
	"lugwright/part"
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
	if p.unmoved() {
		return p.Plate.Shape(true)
	}
	return p.Plate.Shape(true).Rotate(p.TurnRad, shape.Point{}).Translate(p.At)
}

func (p *Piece) unmoved() bool { return p.At == (shape.Point{}) && p.TurnRad == 0 }

func (p *Piece) place(points []shape.Point) {
	if p.unmoved() {
		return
	}
	for i, q := range points {
		points[i] = q.Rotate(p.TurnRad).Add(p.At)
	}
}

// scratch is the memory of one call, used again by the next.
type scratch struct {
	drawing drawing
	writer  writer
}

var scratches = sync.Pool{New: func() any { return new(scratch) }}

// WritePieces writes several plates as one DXF file, one after the other.
func WritePieces(w io.Writer, pieces []Piece, o Options) error {
	return drawn(pieces, o, func(data []byte) error {
		_, err := w.Write(data)
		return err
	})
}

// Bytes is the file of WritePieces in memory of its own, of its size.
func Bytes(pieces []Piece, o Options) ([]byte, error) {
	var file []byte
	err := drawn(pieces, o, func(data []byte) error {
		file = bytes.Clone(data)
		return nil
	})
	return file, err
}

// drawn gives the file, whose memory is used again, to a function.
func drawn(pieces []Piece, o Options, take func([]byte) error) error {
	if o.Version != R2000 && o.Version != R12 && o.Version != R2010 {
		return fmt.Errorf("dxf version %d: unknown; use R2000, R12 or R2010", int(o.Version))
	}
	if len(pieces) == 0 {
		return errors.New("no plates; a file needs at least one")
	}
	o.Layers = o.Layers.orOurs()
	t := tablesOf(o)
	o.Layers = t.groups
	s := scratches.Get().(*scratch)
	defer scratches.Put(s)
	d := &s.drawing
	d.reset()
	for i := range pieces {
		if err := d.add(&pieces[i], o); err != nil {
			return fmt.Errorf("plate %s: %w", pieces[i].Plate.ID, err)
		}
	}
	out := &s.writer
	out.reset(o)
	if o.Version == R12 {
		out.r12File(d, o, t)
	} else {
		out.r2000File(d, o, t)
	}
	if out.err != nil {
		return fmt.Errorf("%s: %w", words(pieces), out.err)
	}
	return take(out.buf)
}

func words(pieces []Piece) string {
	if len(pieces) == 1 {
		return "plate " + pieces[0].Plate.ID
	}
	return fmt.Sprintf("%d plates", len(pieces))
}
