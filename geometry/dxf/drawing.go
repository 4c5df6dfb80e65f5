package dxf

import (
	"fmt"

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

// drawing is what goes into the file, in order of the file.
type drawing struct {
	points   []shape.Point // of all strokes, one after the other
	strokes  []polyline
	contours []cut
	vertices shape.Loop // of all contours
	counts   []int      // of points in the lines of a text
	box      shape.Box  // of the contours
	before   int        // contours of the pieces before
}

// polyline is a stroke of two or more points: those that follow the points of the one before.
type polyline struct {
	layer  string
	points int
	closed bool
}

// cut is a closed loop, and the circle where it is one.
type cut struct {
	loop   shape.Loop
	round  bool
	center shape.Point
	dia    float64
}

func (d *drawing) reset() {
	*d = drawing{points: d.points[:0], strokes: d.strokes[:0], contours: d.contours[:0], vertices: d.vertices[:0], counts: d.counts[:0], box: shape.EmptyBox()}
}

// add draws a piece: marks, bends, centres, then cuts.
func (d *drawing) add(p *Piece, o Options) error {
	d.before = len(d.contours)
	if o.Layers.Etch != "" {
		for _, e := range p.Plate.Etch {
			d.etch(p, o, e)
		}
	}
	if o.Layers.Bend != "" {
		for _, b := range p.Plate.Bends {
			d.stroke(p, o.Layers.Bend, false, b.A, b.B)
		}
	}
	if o.Layers.Centre != "" {
		for i := range p.Plate.Holes {
			if h := &p.Plate.Holes[i]; h.Finish != part.AsCut || h.CutMM == 0 {
				d.cross(p, o.Layers.Centre, h)
			}
		}
	}
	if !p.unmoved() {
		return d.cuts(p.Outline())
	}
	for i := range p.Plate.Holes {
		if h := &p.Plate.Holes[i]; h.CutMM > 0 {
			circle := shape.Circle(h.Center, h.CutMM)
			if err := d.cut(circle, false); err != nil {
				return err
			}
		}
	}
	return d.cuts(shape.Outline{Outer: p.Plate.Outer, Holes: p.Plate.Cutouts})
}

func (d *drawing) stroke(p *Piece, layer string, closed bool, points ...shape.Point) {
	from := len(d.points)
	d.points = append(d.points, points...)
	p.place(d.points[from:])
	d.strokes = append(d.strokes, polyline{layer, len(points), closed})
}

func (d *drawing) etch(p *Piece, o Options, e part.Etch) {
	if o.OutlineMarks {
		for _, l := range stroke.Outlines(stroke.Text(e.Text, e.At, e.HeightMM, e.AngleRad), e.HeightMM) {
			d.stroke(p, o.Layers.Etch, true, l...)
		}
		return
	}
	from := len(d.points)
	d.points, d.counts = stroke.AppendText(d.points, d.counts[:0], e.Text, e.At, e.HeightMM, e.AngleRad)
	p.place(d.points[from:])
	for _, n := range d.counts {
		d.strokes = append(d.strokes, polyline{o.Layers.Etch, n, false})
	}
}

// cross marks the centre of a hole that is drilled or reamed later.
func (d *drawing) cross(p *Piece, layer string, h *part.Hole) {
	arm := markMM
	if h.CutMM > 0 {
		arm += h.DiaMM / 2
	}
	c := h.Center
	d.stroke(p, layer, false, shape.Point{X: c.X - arm, Y: c.Y}, shape.Point{X: c.X + arm, Y: c.Y})
	d.stroke(p, layer, false, shape.Point{X: c.X, Y: c.Y - arm}, shape.Point{X: c.X, Y: c.Y + arm})
}

func (d *drawing) cuts(o shape.Outline) error {
	for _, l := range o.Holes {
		if err := d.cut(l, false); err != nil {
			return err
		}
	}
	return d.cut(o.Outer, true)
}

// cut adds a loop, and keeps nothing of it.
func (d *drawing) cut(l shape.Loop, outer bool) error {
	var c cut
	if c.center, c.dia, c.round = l.IsCircle(); !c.round || len(l) > 2 || c.dia < 2*flatMM {
		c.loop = d.tidied(l, outer)
		if len(c.loop) < 2 {
			return fmt.Errorf("contour %d: %d edges; a contour needs at least 2", len(d.contours)-d.before, len(c.loop))
		}
		c.center, c.dia, c.round = c.loop.IsCircle()
	}
	d.contours = append(d.contours, c)
	if outer {
		d.box = d.box.Union(l.BBox())
	}
	return nil
}

// tidied is the loop as it is written.
func (d *drawing) tidied(l shape.Loop, outer bool) shape.Loop {
	from := len(d.vertices)
	d.vertices = l.AppendNormalized(d.vertices, flatMM)
	out := d.vertices[from:]
	if a := out.Area(); a < 0 && outer || a > 0 && !outer {
		turnRound(out)
	}
	return out
}

// turnRound makes the loop run the other way from the same vertex.
func turnRound(l shape.Loop) {
	for i, k := 1, len(l)-1; i < k; i, k = i+1, k-1 {
		l[i].Point, l[k].Point = l[k].Point, l[i].Point
	}
	for i, k := 0, len(l)-1; i <= k; i, k = i+1, k-1 {
		l[i].Bulge, l[k].Bulge = -l[k].Bulge, -l[i].Bulge
	}
}
