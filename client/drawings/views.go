package drawings

import (
	"fmt"
	"math"
	"slices"

	"lugwright/client/draw"
	"lugwright/geometry/shape"
	"lugwright/geometry/view"
	"lugwright/part"
	"lugwright/units"
)

// Three views. Metric drawings lay them out in first-angle, inch drawings in third-angle projection, and say so by the symbol and in words (ISO 5456-2, from memory).

const viewGapMM = 14.0

// three are the views of one bracket: Front is from outside the frame, plan from above, end along the vehicle.
type three struct {
	front, plan, end *picture
	x, y, z          *ladder
	first            bool
	columns          [4][]weldTag // weld symbols beside front, plan and end, and under the end view
}

// views draws the three views with running dimensions: extents of the steel, pins, bolts and the faces that bolts clamp.
func (s *Set) views(o Options) *draw.Drawing {
	b, v := s.b, s.three(&o)
	words := "third-angle"
	if v.first {
		words = "first-angle"
	}
	width, height := o.room()
	var at scale
	var lines []string
	spare := 0.0 // height that is left
	fits := func() bool {
		lines = []string{heading(b) + ", views"}
		for _, fact := range []string{
			fmt.Sprintf("Scale %s. Dimensions in %s, from the outermost steel at the left and below; pins and bolts by their middles, faces that bolts clamp as face.", at.words, o.unit()),
			"Covered edges are left out: each plate has its own drawing. Bolts are drawn simplified.", v.weldWords(b, &o),
		} {
			if fact != "" {
				lines = append(lines, wrapped(fact, width)...)
			}
		}
		for _, words := range s.fits {
			lines = append(lines, wrapped(units.Words(words, o.Units)+".", width)...)
		}
		v.place(at.factor)
		w, h := v.size()
		spare = height - h - float64(len(lines))*lineMM - 14
		return w <= width && spare >= 0
	}
	for _, at = range o.scales() {
		if at.factor <= 1 && fits() {
			break
		}
	}
	// Symbols of welds make no drawing smaller.
	all, best, most, room := v.shownWelds(b, &o), len(layouts)-1, 0, max(0, spare-lineMM)
	for i, layout := range layouts {
		if n := v.withWelds(all, layout, room); n > most && fits() {
			best, most = i, n
		}
	}
	v.withWelds(all, layouts[best], room)
	fits()
	var g page
	box := v.draw(&g, true)
	low := shape.Point{X: box.Min.X, Y: box.Min.Y - 3}
	under(&g, low, lines)
	symbol := shape.Point{X: low.X, Y: low.Y - float64(len(lines))*lineMM - 7}
	projection(&g, symbol, v.first)
	g.words(symbol.Add(shape.Point{X: 19, Y: -textMM / 2}), draw.Left, 0, words+" projection")
	return g.finished("views", heading(b)+", three views", fmt.Sprintf("Views %s, from above and %s in %s projection, scale %s, with running dimensions.", fromWords(v.front), fromWords(v.end), words, at.words))
}

func (s *Set) three(o *Options) *three {
	b := s.b
	up := part.Vec{Z: 1}
	front := view.From(part.Vec{Y: 1}, up)
	if b.Hand == part.RightHand {
		front = view.From(part.Vec{Y: -1}, up)
	}
	v := &three{first: o.Units != units.Inch}
	plan := view.Direction{Eye: up, Right: front.Right, Up: up.Cross(front.Right)}
	end := view.From(front.Right, up)
	if v.first {
		end = view.From(front.Right.Scale(-1), up)
	}
	v.front, v.plan, v.end = s.picture(front, false), s.picture(plan, false), s.picture(end, false)
	lower := v.front
	if v.first {
		lower = v.plan
	}
	v.x, v.y, v.z = newAxis(b, o, lower, false), newAxis(b, o, v.plan, true), newAxis(b, o, v.front, true)
	return v
}

// newAxis is the running dimensions along a view's lower side, or up its left one.
func newAxis(b *part.Bracket, o *Options, p *picture, up bool) *ladder {
	along, across := p.scene.Right, p.scene.Up
	side := p.box.Min.Y
	l := &ladder{turn: math.Pi / 2, above: -1, length: o.length}
	if up {
		along, across, side = across, along, p.box.Min.X
		l.turn, l.above = 0, 1
	}
	lo, hi := view.Steel(b, along)
	l.size = hi - lo
	l.place = func(at, out float64) shape.Point {
		// On paper from the picture's own corner, which pins and bolts may set.
		if up {
			return p.at.Add(shape.Point{X: -out, Y: at + (lo-p.box.Min.Y)*p.scale})
		}
		return p.at.Add(shape.Point{X: at + (lo-p.box.Min.X)*p.scale, Y: -out})
	}
	add := func(q, axis part.Vec, what string) {
		inward := 0.0
		if math.Abs(axis.Dot(p.scene.Eye)) > 0.999 {
			inward = q.Dot(across) - side
		}
		l.list = append(l.list, ordinate{value: q.Dot(along) - lo, inward: inward, rank: needed, what: what})
	}
	square := func(axis part.Vec) bool { return math.Abs(axis.Dot(along)) < 1e-3 }
	for i := range b.Pins {
		if q := &b.Pins[i]; square(q.Axis) {
			add(q.Center, q.Axis, "pin")
		}
	}
	for i := range b.LoadPoints {
		if q := &b.LoadPoints[i]; cradled(b, q) && square(q.Axis) {
			add(q.At, q.Axis, q.ID+" axis")
		}
	}
	pattern := func(pose part.Pose, points []shape.Point, what, face string) {
		if !square(pose.W()) {
			add(pose.Origin, part.Vec{}, face)
			return
		}
		for _, q := range points {
			add(pose.At(q.X, q.Y, 0), pose.W(), what)
		}
	}
	for i := range b.Bolts {
		if q := &b.Bolts[i]; q.SameAs == "" {
			pattern(q.Pose, q.Points, "bolt", "face")
		}
	}
	for i := range b.Rods {
		pattern(b.Rods[i].Pose, b.Rods[i].Points, "rod", "face")
	}
	return l
}

// cradled says whether a load comes in by a tube that lies in an arc, whose axis no hole or pin shows.
func cradled(b *part.Bracket, q *part.LoadPoint) bool {
	return slices.ContainsFunc(b.Contacts, func(c part.Contact) bool { return c.WrapRad > 0 && c.Things[0] == q.ID })
}

// place lays the views out at a scale, the front one at 0.
func (v *three) place(scale float64) {
	for _, p := range v.pictures() {
		p.scale = scale
	}
	for _, l := range []*ladder{v.x, v.y, v.z} {
		l.scale = scale
		l.settle()
	}
	front := v.front.on()
	v.plan.at = shape.Point{Y: front.Height() + viewGapMM}
	if v.first {
		v.plan.at.Y = -viewGapMM - v.plan.on().Height()
	}
	v.plan.at.X = (v.plan.box.Min.X - v.front.box.Min.X) * scale
	v.end.at.X = max(front.Width()+v.column(0), textWidth(fromWords(v.front))+2) + v.between()
	v.end.at.Y = (v.end.box.Min.Y - v.front.box.Min.Y) * scale
}

// size is the paper that the views take, with their dimensions and captions.
func (v *three) size() (width, height float64) {
	var g page
	box := v.draw(&g, false)
	return box.Width(), box.Height()
}

// draw sets the views with all that stands about them, their faces only where they are wanted, and gives the box that it takes.
func (v *three) draw(g *page, faces bool) shape.Box {
	box := shape.EmptyBox()
	for _, p := range v.pictures() {
		if faces {
			p.draw(g)
		}
		on := p.on()
		box = box.Union(on)
		g.words(shape.Point{X: on.Min.X, Y: on.Max.Y + 3}, draw.Left, 0, fromWords(p))
	}
	v.x.draw(g, "x")
	v.y.draw(g, "y")
	v.z.draw(g, "z")
	v.drawWelds(g)
	for _, item := range g.items {
		box = box.Union(boxOf(item))
	}
	return box
}

// fromWords says where the viewer of a picture stands.
func fromWords(p *picture) string {
	switch e := p.scene.Eye; {
	case e.Z > 0.9:
		return "from above"
	case e.X > 0.9:
		return "from ahead"
	case e.X < -0.9:
		return "from behind"
	case e.Y > 0.9:
		return "from the left"
	}
	return "from the right"
}

// projection is the symbol: a cut cone from its side and from its small end, which first-angle projection sets on the far side.
func projection(g *page, at shape.Point, first bool) {
	side, end := at.Add(shape.Point{X: 9}), at.Add(shape.Point{X: 3})
	if first {
		side, end = at, at.Add(shape.Point{X: 14})
	}
	pen := draw.Pen{WidthMM: 0.35}
	g.add(&draw.Path{
		Start: at2(side, 0, 1.5), Closed: true, Pen: pen,
		Segments: []draw.Segment{{To: at2(side, 7, 3)}, {To: at2(side, 7, -3)}, {To: at2(side, 0, -1.5)}},
	})
	for _, dia := range []float64{3, 6} {
		g.circle(pen, draw.Shade{}, end, dia)
	}
}

func at2(p shape.Point, x, y float64) draw.Point { return draw.Point{X: p.X + x, Y: p.Y + y} }
