package dxf

import (
	"fmt"
	"math"

	"lugwright/geometry/shape"
)

// File is a cut file as read back. Coordinates are mm whatever the file's unit.
type File struct {
	Version  Version
	Inch     bool
	Layers   []string     // layers that the file declares
	Cut      string       // the layer that is cut
	Contours []shape.Loop // closed contours of the cut layer, in order of the file
	Strokes  []Stroke     // open lines on the other layers
	Open     []Stroke     // what is on the cut layer and closes no contour
}

// Stroke is a line of two or more points, in mm; a closed one is not cut.
type Stroke struct {
	Layer  string
	Points []shape.Point
	Closed bool
}

// Outline takes the contour of the greatest area as the outer one and the others as its holes.
func (f File) Outline() shape.Outline {
	var o shape.Outline
	at := f.outer()
	for i, l := range f.Contours {
		if i == at {
			o.Outer = l
		} else {
			o.Holes = append(o.Holes, l)
		}
	}
	return o
}

// outer is the index of the contour of the greatest area, -1 when there is none.
func (f File) outer() int {
	at, most := -1, -1.0
	for i, l := range f.Contours {
		if a := math.Abs(l.Area()); a > most {
			at, most = i, a
		}
	}
	return at
}

// Outlines takes apart a file of several pieces: a contour inside no other is the outer one of a piece, the others are openings of the piece
// around them.
func (f File) Outlines() []shape.Outline {
	var out []shape.Outline
	for _, g := range f.pieces() {
		o := shape.Outline{Outer: f.Contours[g.outer]}
		for _, i := range g.holes {
			o.Holes = append(o.Holes, f.Contours[i])
		}
		out = append(out, o)
	}
	return out
}

// pieceContours are the indices of a piece's contours.
type pieceContours struct {
	outer int
	holes []int
}

func (f File) pieces() []pieceContours {
	var out []pieceContours
	for i, l := range f.Contours {
		if !f.inAnother(i) {
			g := pieceContours{outer: i}
			for k := range f.Contours {
				if k != i && f.within(k, l) {
					g.holes = append(g.holes, k)
				}
			}
			out = append(out, g)
		}
	}
	return out
}

// inAnother says whether contour i lies in any other.
func (f File) inAnother(i int) bool {
	for k, l := range f.Contours {
		if k != i && f.within(i, l) {
			return true
		}
	}
	return false
}

func (f File) within(i int, l shape.Loop) bool {
	return len(f.Contours[i]) > 0 && l.Contains(f.Contours[i][0].Point)
}

// Read reads a file such as Write writes. It fails on what is no DXF, an unknown version, an entity without its numbers;
// what is merely wrong to cut it reads, for Check to say so.
func Read(data []byte, l Layers) (File, error) {
	r, err := read(data, l)
	return r.File, err
}

// reading is a file with what Check looks at besides.
type reading struct {
	File
	comments []string
	sections []section
	header   []group
	entities []group
	unwound  []bool // contours of CIRCLE or ARC entities alone: nothing tells which way they run
	repeated []int  // lines of polylines that repeat their first vertex
}

func read(data []byte, l Layers) (*reading, error) {
	r := &reading{File: File{Cut: l.orOurs().Cut}}
	tags, err := scan(data)
	if err != nil {
		return r, err
	}
	if r.comments, r.sections, err = split(tags); err != nil {
		return r, err
	}
	r.header = groups(r.section("HEADER"), 9)
	r.entities = groups(r.section("ENTITIES"), 0)
	if err := r.readVersion(); err != nil {
		return r, err
	}
	for _, g := range groups(r.section("TABLES"), 0) {
		if g.kind == "LAYER" {
			r.Layers = append(r.Layers, g.text(2))
		}
	}
	return r, r.readEntities()
}

func (r *reading) section(name string) []tag {
	for _, s := range r.sections {
		if s.name == name {
			return s.tags
		}
	}
	return nil
}

// variable gives the header variable's value, "" when it is missing.
func (r *reading) variable(name string, code int) string {
	for _, g := range r.header {
		if g.kind == name {
			return g.text(code)
		}
	}
	return ""
}

func (r *reading) readVersion() error {
	switch v := r.variable("$ACADVER", 1); v {
	case "AC1009":
		r.Version = R12
		for _, c := range r.comments {
			r.Inch = r.Inch || c == unitComment(true)
		}
	case "AC1015", "AC1024":
		r.Version = R2000
		if v == "AC1024" {
			r.Version = R2010
		}
		r.Inch = r.variable("$INSUNITS", 70) == "1"
	default:
		return fmt.Errorf("%w: version %q; need AC1009, AC1015 or AC1024", ErrNotDXF, v)
	}
	return nil
}

func (r *reading) unit() float64 {
	if r.Inch {
		return mmPerInch
	}
	return 1
}

func (r *reading) readEntities() error {
	var c chain
	for _, g := range r.entities {
		piece, err := r.readEntity(g)
		if err != nil {
			return err
		}
		switch {
		case piece.loop != nil && g.text(8) == r.Cut:
			r.flush(&c)
			r.addContour(piece.loop, g.kind == "CIRCLE")
		case piece.loop != nil:
			r.Strokes = append(r.Strokes, Stroke{g.text(8), corners(piece.loop), true})
		case len(piece.points) < 2:
		case g.text(8) != r.Cut:
			r.Strokes = append(r.Strokes, Stroke{g.text(8), piece.points, false})
		case g.kind == "LWPOLYLINE":
			r.Open = append(r.Open, Stroke{r.Cut, piece.points, false})
		default:
			if !c.add(piece.edge) {
				r.flush(&c)
				c.add(piece.edge)
			}
			if c.closed() {
				r.flush(&c)
			}
		}
	}
	r.flush(&c)
	return nil
}

func (r *reading) addContour(l shape.Loop, unwound bool) {
	r.Contours = append(r.Contours, l)
	r.unwound = append(r.unwound, unwound)
}

// flush ends the contour that is being chained.
func (r *reading) flush(c *chain) {
	switch {
	case len(c.edges) == 0:
	case c.closed():
		r.addContour(c.loop(), !c.hasLine())
	default:
		r.Open = append(r.Open, Stroke{r.Cut, c.points(), false})
	}
	*c = chain{}
}

// piece is what one entity draws: a closed loop, or an open line; edge is the line or arc as such.
type piece struct {
	loop   shape.Loop
	points []shape.Point
	edge   shape.Edge
}

func (r *reading) readEntity(g group) (piece, error) {
	switch g.kind {
	case "LINE":
		return r.readLine(g)
	case "ARC":
		return r.readArc(g)
	case "CIRCLE":
		c, rad, err := r.readRound(g)
		return piece{loop: shape.Circle(c, 2*rad)}, err
	case "LWPOLYLINE":
		return r.readPolyline(g)
	}
	return piece{}, nil
}

func (r *reading) readPoint(g group, code int) (shape.Point, error) {
	x, err := g.number(code)
	if err != nil {
		return shape.Point{}, err
	}
	y, err := g.number(code + 10)
	return shape.Point{X: x, Y: y}.Scale(r.unit()), err
}

func (r *reading) readLine(g group) (piece, error) {
	a, err := r.readPoint(g, 10)
	if err != nil {
		return piece{}, err
	}
	b, err := r.readPoint(g, 11)
	return piece{points: []shape.Point{a, b}, edge: shape.Edge{A: a, B: b}}, err
}

func (r *reading) readRound(g group) (center shape.Point, radius float64, err error) {
	if center, err = r.readPoint(g, 10); err != nil {
		return center, 0, err
	}
	radius, err = g.number(40)
	return center, radius * r.unit(), err
}

func (r *reading) readArc(g group) (piece, error) {
	c, rad, err := r.readRound(g)
	if err != nil {
		return piece{}, err
	}
	start, err := g.number(50)
	if err != nil {
		return piece{}, err
	}
	end, err := g.number(51)
	sweep := math.Mod(end-start, 360)
	if sweep <= 0 {
		sweep += 360
	}
	const rads = math.Pi / 180
	e := shape.Edge{A: c.Add(shape.Polar(rad, start*rads)), B: c.Add(shape.Polar(rad, end*rads)), Bulge: math.Tan(sweep * rads / 4)}
	return piece{points: []shape.Point{e.A, e.B}, edge: e}, err
}

func corners(l shape.Loop) []shape.Point {
	points := make([]shape.Point, len(l))
	for i, v := range l {
		points[i] = v.Point
	}
	return points
}

func (r *reading) readPolyline(g group) (piece, error) {
	var l shape.Loop
	for _, t := range g.tags {
		if t.code != 10 && t.code != 20 && t.code != 42 {
			continue
		}
		v, err := t.number()
		if err != nil {
			return piece{}, err
		}
		if t.code == 10 {
			l = append(l, shape.Vertex{Point: shape.Point{X: v * r.unit()}})
			continue
		}
		if len(l) == 0 {
			return piece{}, fmt.Errorf("%w: line %d: group %d before the first vertex", ErrNotDXF, t.line, t.code)
		}
		if t.code == 20 {
			l[len(l)-1].Y = v * r.unit()
		} else {
			l[len(l)-1].Bulge = v
		}
	}
	if g.text(70) != "1" {
		return piece{points: corners(l)}, nil
	}
	if n := len(l); n > 1 && l[0].Dist(l[n-1].Point) < joinMM {
		r.repeated = append(r.repeated, g.line)
	}
	return piece{loop: l}, nil
}
