package svg

import (
	"fmt"
	"io"

	"lugwright/geometry/shape"
	"lugwright/part"
)

// BracketOptions of WriteBracket. The zero value is a labelled picture for a page.
type BracketOptions struct {
	WidthMM float64 // of the whole picture, 40 to 2000; 0 for 170
	NoMarks bool    // leave the part marks out
}

const (
	usualWidthMM = 170.0
	edgeMM       = 4.0
)

// WriteBracket draws the assembled bracket, as it stands in space (part.Bracket.AsMade), from ahead, left and above, with its part marks. It fails when there is nothing to
// draw or a number is not finite or beyond 1e6.
func WriteBracket(out io.Writer, b *part.Bracket, o BracketOptions) error {
	width := o.WidthMM
	if width == 0 {
		width = usualWidthMM
	}
	if !(width >= 40 && width <= 2000) {
		return fmt.Errorf("width_mm: %g; 40 to 2000 is accepted", width)
	}
	view := newScene(solids(b)).unringed()
	if len(view.list) == 0 {
		return fmt.Errorf("bracket %s: no plates, members or pins to draw", b.Name)
	}
	painted := make([]painting, 0, len(view.list))
	for _, i := range view.backToFront() {
		painted = append(painted, view.list[i].painting())
	}
	var labels []note
	if !o.NoMarks {
		labels = notes(painted)
	}
	c := newCanvas(painted, labels, width)
	defer c.free()
	c.open(width, c.height, fmt.Sprintf("%s: %s, %s hand", b.Name, b.Kind, b.Hand))
	for _, p := range painted {
		c.paint(p.solid, p.faces)
	}
	c.notes(labels)
	c.end("svg")
	if c.err != nil {
		return fmt.Errorf("bracket %s: %w", b.Name, c.err)
	}
	_, err := out.Write(c.buf.Bytes())
	return err
}

// painting is a solid and what is seen of it.
type painting struct {
	solid *solid
	faces []face
	box   shape.Box // of the faces
}

func (s *solid) painting() painting {
	p := painting{s, s.faces(), shape.EmptyBox()}
	for i := range p.faces {
		p.box = p.box.Union(ringBox(p.faces[i].loops[0]))
	}
	return p
}

// canvas is a writer that brings projected points to paper.
type canvas struct {
	writer
	scale         float64
	box           shape.Box // of the drawing, projected
	left          float64   // paper beside the drawing
	width, height float64
}

// newCanvas fits the drawing between the columns of labels; it is never higher than wide.
func newCanvas(painted []painting, labels []note, width float64) *canvas {
	c := &canvas{writer: newWriter(3), box: shape.EmptyBox(), width: width}
	for _, p := range painted {
		for _, f := range p.faces {
			for _, r := range f.loops {
				for _, q := range r.points {
					c.box = c.box.Extend(q)
				}
			}
		}
	}
	column := columnMM(labels)
	room := max(width-2*edgeMM-2*column, width/4)
	c.scale = min(room/c.box.Width(), (width-2*edgeMM)/c.box.Height())
	c.height = max(c.box.Height()*c.scale, float64(tallest(labels, c))*labelStepMM) + 2*edgeMM
	c.left = (width - c.box.Width()*c.scale) / 2
	return c
}

func (c *canvas) at(p shape.Point) shape.Point {
	middle := c.box.Center()
	return shape.Point{X: c.left + (p.X-c.box.Min.X)*c.scale, Y: c.height/2 - (p.Y-middle.Y)*c.scale}
}
