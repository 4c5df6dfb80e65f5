package drawings

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"lugwright/client/draw"
	"lugwright/geometry/shape"
	"lugwright/geometry/stroke"
	"lugwright/part"
	"lugwright/units"
)

// PlateOptions are what a plate's drawing says beside the plate.
type PlateOptions struct {
	Options
	Hand     part.Hand // empty: for either side
	Quantity int       // to make; 0 is not printed
	// AtHoles is what is done at holes when the bracket is put together, by the holes' names.
	AtHoles map[string]string
}

// Plate draws a plate of a bracket as made (part.Bracket.AsMade): the outline as its cut file shows it, a bent one flat, with running dimensions from the left and
// lower edges of the outline, and a leader to each size of hole, opening and radius, to folds and to etched words.
func Plate(p *part.Plate, o PlateOptions) *draw.Drawing {
	s := &plateSheet{plate: p, o: o, box: p.Outer.BBox()}
	s.fit()
	var g page
	s.draw(&g)
	title := strings.TrimSpace(p.Mark + " " + p.Name)
	return g.finished("plate", title+", plate drawing", fmt.Sprintf("%s with running dimensions from its left and lower edges, scale %s. %s", title, s.scale.words, strings.Join(s.facts(), " ")))
}

// plateSheet is a plate's drawing in the making, its datum at 0 on paper.
type plateSheet struct {
	plate *part.Plate
	o     PlateOptions
	box   shape.Box
	scale scale
	over  bool // callouts stand over the plate, not beside it
	// At this scale:
	x, y     *ladder
	callouts []callout
	lines    []string // under the drawing, the first of them its title
}

// fit takes the largest scale at which the sheet has room for all; more than full size only for what is small.
func (s *plateSheet) fit() {
	const small = 70.0
	width, height := s.o.room()
	for _, s.scale = range s.o.scales() {
		if s.scale.factor > 1 && max(s.box.Width(), s.box.Height()) > small {
			continue
		}
		s.x, s.y, s.lines = s.ladder(false), s.ladder(true), s.block()
		for _, s.over = range [2]bool{false, true} {
			s.callouts = s.notes()
			w, h := s.size()
			if w <= width && h <= height {
				return
			}
		}
	}
	s.over = false
	s.callouts = s.notes()
}

// size is the paper that the drawing takes.
func (s *plateSheet) size() (width, height float64) {
	x, y, list := s.x, s.y, s.callouts
	width, height = s.box.Width()*s.scale.factor+y.outer(), s.box.Height()*s.scale.factor+x.outer()
	if s.over {
		height += stepsHeight(list)
		width = max(width, y.outer()+widest(list)+4)
	} else {
		width += columnWidth(list)
	}
	return width, height + 8 + float64(len(s.lines))*lineMM
}

// paper brings a point of the plate to paper.
func (s *plateSheet) paper(p shape.Point) shape.Point { return p.Sub(s.box.Min).Scale(s.scale.factor) }

func (s *plateSheet) draw(g *page) {
	x, y, list := s.x, s.y, s.callouts
	g.group(s.plate.Mark, s.steel)
	x.draw(g, "x")
	y.draw(g, "y")
	wide, high := s.box.Width()*s.scale.factor, s.box.Height()*s.scale.factor
	if s.over {
		width, _ := s.o.room()
		steps(g, list, high, 0, width-y.outer())
	} else {
		column(g, list, wide, 0)
	}
	under(g, shape.Point{X: -y.outer(), Y: -x.outer() - 3}, s.lines)
}

// steel is the outline with its holes, centres, folds and etched words.
func (s *plateSheet) steel(g *page) {
	body := outlinePath(s.plate.Shape(false), s.paper)
	body.Pen, body.Fill = draw.Pen{WidthMM: wideMM}, draw.Shade{On: true, Grey: 0.96}
	g.add(body)
	for _, h := range s.plate.Holes {
		s.centre(g, s.paper(h.Center), h.DiaMM*s.scale.factor)
		if h.CutMM > 0 && h.CutMM != h.DiaMM {
			g.circle(draw.Pen{WidthMM: narrowMM, Dash: []float64{1.5, 0.8}}, draw.Shade{}, s.paper(h.Center), h.CutMM*s.scale.factor)
		}
	}
	for _, b := range s.plate.Bends {
		g.line(draw.Pen{WidthMM: narrowMM, Dash: []float64{5, 1, 0.6, 1, 0.6, 1}}, s.paper(b.A), s.paper(b.B))
	}
	for _, e := range s.plate.Etch {
		for _, line := range stroke.Text(e.Text, e.At, e.HeightMM, e.AngleRad) {
			if len(line) < 2 {
				continue
			}
			for i := range line {
				line[i] = s.paper(line[i])
			}
			g.line(draw.Pen{WidthMM: 0.25, Grey: 0.35}, line...)
		}
	}
}

// armMM is how far the cross of a hole's centre goes out.
func armMM(dia float64) float64 { return dia/2 + 1.5 }

func (s *plateSheet) centre(g *page, c shape.Point, dia float64) {
	pen := draw.Pen{WidthMM: narrowMM, Dash: []float64{3, 0.7, 0.7, 0.7}}
	if dia < 8 {
		pen.Dash = nil
	}
	a := armMM(dia)
	g.line(pen, c.Add(shape.Point{X: -a}), c.Add(shape.Point{X: a}))
	g.line(pen, c.Add(shape.Point{Y: -a}), c.Add(shape.Point{Y: a}))
}

// ladder is the running dimensions along the lower side, or up the left one.
func (s *plateSheet) ladder(up bool) *ladder {
	l := &ladder{
		size: s.box.Width(), scale: s.scale.factor, turn: math.Pi / 2, above: -1, length: s.o.length,
		place: func(along, out float64) shape.Point { return shape.Point{X: along, Y: -out} },
	}
	if up {
		l.size, l.turn, l.above = s.box.Height(), 0, 1
		l.place = func(along, out float64) shape.Point { return shape.Point{X: -out, Y: along} }
	}
	add := func(p shape.Point, arm float64, rank int) {
		p = p.Sub(s.box.Min)
		value, inward := p.X, p.Y
		if up {
			value, inward = p.Y, p.X
		}
		l.list = append(l.list, ordinate{value: value, inward: inward, gap: arm, rank: rank})
	}
	for _, h := range s.plate.Holes {
		add(h.Center, armMM(h.DiaMM*s.scale.factor), needed)
	}
	for _, c := range s.plate.Cutouts {
		add(c.BBox().Center(), 0, needed)
	}
	for _, b := range s.plate.Bends {
		if along := b.B.Sub(b.A); math.Abs(along.X) < 1e-6 && !up || math.Abs(along.Y) < 1e-6 && up {
			end := b.A
			if up && b.B.X < b.A.X || !up && b.B.Y < b.A.Y {
				end = b.B
			}
			add(end, -1, needed)
		}
	}
	s.corners(up, func(c shape.Point, rank int) { add(c, 1, rank) })
	l.ends = s.ends(up)
	l.settle()
	return l
}

// ends are how far in from the side the outline reaches its least and its greatest extent along it.
func (s *plateSheet) ends(up bool) [2]float64 {
	ends := [2]float64{math.Inf(1), math.Inf(1)}
	for i := range s.plate.Outer {
		e := s.plate.Outer.Edge(i)
		b := e.BBox()
		for k, q := range [2]shape.Point{b.Min, b.Max} {
			// The edge reaches its box's side at one of its ends or at the quarter point of its circle.
			c, r := e.Center(), e.Radius()
			quarter := [2]shape.Point{{X: c.X - r, Y: c.Y}, {X: c.X + r, Y: c.Y}}[k]
			if up {
				quarter = [2]shape.Point{{X: c.X, Y: c.Y - r}, {X: c.X, Y: c.Y + r}}[k]
			}
			for _, p := range [3]shape.Point{e.A, e.B, quarter} {
				side, most, inward := p.X-q.X, [2]float64{s.box.Min.X, s.box.Max.X}[k]-p.X, p.Y-s.box.Min.Y
				if up {
					side, most, inward = p.Y-q.Y, [2]float64{s.box.Min.Y, s.box.Max.Y}[k]-p.Y, p.X-s.box.Min.X
				}
				if math.Abs(side) < 1e-6 && math.Abs(most) < 1e-6 {
					ends[k] = min(ends[k], inward)
				}
			}
		}
	}
	for k := range ends {
		if math.IsInf(ends[k], 0) {
			ends[k] = 0
		}
	}
	return ends
}

// corners gives those of the outline, and whether they are in sight from the side on which they are measured.
func (s *plateSheet) corners(up bool, each func(shape.Point, int)) {
	const sharp = 0.02
	away := shape.Point{Y: -1}
	if up {
		away = shape.Point{X: -1}
	}
	whole := shape.Outline{Outer: s.plate.Outer}
	for i, v := range s.plate.Outer {
		before, after := s.plate.Outer.Edge(i-1).TangentAt(1), s.plate.Outer.Edge(i).TangentAt(0)
		if math.Abs(before.Cross(after)) < sharp && before.Dot(after) > 0 {
			continue
		}
		rank := corner
		if slices.ContainsFunc(whole.Chords(v.Point, away), func(c shape.Interval) bool { return c.Hi > 0.05 }) {
			rank = hiddenCorner
		}
		each(v.Point, rank)
	}
}

// notes are the words with leaders, one for all that is alike.
func (s *plateSheet) notes() []callout {
	var list []callout
	like := map[string]int{}
	add := func(words string, at shape.Point, dia float64) {
		c := callout{words: words, at: s.paper(at), dia: dia * s.scale.factor}
		k, known := like[words]
		if !known {
			k, list = len(list), append(list, c)
			list[k].id = "note-" + number(k)
			like[words] = k
			return
		}
		// The nearest to where the words stand bears the leader.
		if old := &list[k]; s.over && c.at.Y > old.at.Y || !s.over && c.at.X > old.at.X {
			old.at, old.dia = c.at, c.dia
		}
	}
	count := map[string]int{}
	each := func(words string, at shape.Point, dia float64) {
		count[words]++
		add(words, at, dia)
	}
	for i := range s.plate.Holes {
		h := &s.plate.Holes[i]
		each(s.hole(h)+s.reference(h), h.Center, h.DiaMM)
	}
	for _, c := range s.plate.Cutouts {
		words, at := s.opening(c)
		each(words, at, 0)
	}
	if _, _, round := s.plate.Outer.IsCircle(); !round {
		for i := range s.plate.Outer {
			if e := s.plate.Outer.Edge(i); e.IsArc() && e.Sagitta() > 0.05 {
				each("R"+s.o.length(e.Radius())+s.about(i), rightOf(e), 0)
			}
		}
	}
	for _, b := range s.plate.Bends {
		each(s.fold(b), b.A.Lerp(b.B, 0.75), 0)
	}
	for _, e := range s.plate.Etch {
		each("etch "+e.Text+", "+s.o.length(e.HeightMM)+" high", s.edgeOf(&e), 0)
	}
	for i := range list {
		if n := count[list[i].words]; n > 1 {
			list[i].words = strconv.Itoa(n) + "× " + list[i].words
		}
	}
	return list
}

// about places the centre of an arc with a corner at both its ends; others run out of what their edges' own dimensions place.
func (s *plateSheet) about(i int) string {
	const sharp = 0.02
	o := s.plate.Outer
	n := len(o)
	e := o.Edge(i)
	smooth := func(a, b shape.Edge) bool {
		t, u := a.TangentAt(1), b.TangentAt(0)
		return math.Abs(t.Cross(u)) < sharp && t.Dot(u) > 0
	}
	before, after := o.Edge((i+n-1)%n), o.Edge((i+1)%n)
	if smooth(before, e) || smooth(e, after) {
		return ""
	}
	c := e.Center().Sub(s.box.Min)
	return fmt.Sprintf(", centre %s from left, %s from bottom", s.o.length(c.X), s.o.length(c.Y))
}

// rightOf is a place on an arc away from its middle, above which a hole may lie whose leader goes the same way.
func rightOf(e shape.Edge) shape.Point {
	const aside = 0.3
	if a, b := e.At(aside), e.At(1-aside); b.X > a.X {
		return b
	} else if a.X > b.X {
		return a
	}
	return e.Mid()
}

// edgeOf is where a leader meets etched words: at the side from which it comes, so that no letter is crossed.
func (s *plateSheet) edgeOf(e *part.Etch) shape.Point {
	box := shape.EmptyBox()
	for _, line := range stroke.Text(e.Text, e.At, e.HeightMM, e.AngleRad) {
		for _, q := range line {
			box = box.Extend(q)
		}
	}
	gap := 0.6 / s.scale.factor
	if s.over {
		return shape.Point{X: box.Min.X + 0.9*box.Width(), Y: box.Max.Y + gap} // not over the middle, where a hole's leader may go
	}
	return shape.Point{X: box.Max.X + gap, Y: box.Center().Y}
}

// hole says its diameter and how it comes about.
func (s *plateSheet) hole(h *part.Hole) string {
	dia := "Ø" + s.o.length(h.DiaMM)
	first := "punched centre"
	if h.CutMM > 0 {
		first = "cut Ø" + s.o.length(h.CutMM)
	}
	switch {
	case h.Finish == part.Tapped:
		return fmt.Sprintf("tap %s, %s", h.Thread, first)
	case h.Finish == part.AsCut || h.CutMM == h.DiaMM:
		return dia + " cut"
	case h.CutMM > 0 && h.CutMM < h.DiaMM/2:
		return fmt.Sprintf("%s %s, pilot Ø%s", dia, h.Finish, s.o.length(h.CutMM))
	}
	return fmt.Sprintf("%s %s, %s", dia, h.Finish, first)
}

// done lists what is done at the holes when the bracket is put together, in the order of the holes, each once.
func (s *plateSheet) done() []string {
	var out []string
	for i := range s.plate.Holes {
		if words := s.o.AtHoles[s.plate.Holes[i].ID]; words != "" && !slices.Contains(out, words) {
			out = append(out, words)
		}
	}
	return out
}

// reference refers from a hole to what is done at it, which is said under the drawing.
func (s *plateSheet) reference(h *part.Hole) string {
	words := s.o.AtHoles[h.ID]
	if words == "" {
		return ""
	}
	return fmt.Sprintf(" (%d)", slices.Index(s.done(), words)+1)
}

// opening says what is cut out, and where a leader may end on its edge.
func (s *plateSheet) opening(l shape.Loop) (string, shape.Point) {
	box := l.BBox()
	right := l.Edge(0).Mid()
	for i := range l {
		if m := l.Edge(i).Mid(); m.X > right.X+1e-9 {
			right = m
		}
	}
	if _, dia, ok := l.IsCircle(); ok {
		return "Ø" + s.o.length(dia) + " cut", right
	}
	if wide, long, ok := slot(l); ok {
		return "slot " + s.o.length(wide) + " × " + s.o.length(long), right
	}
	return "opening " + s.o.length(box.Width()) + " × " + s.o.length(box.Height()), right
}

// slot gives the width and the whole length of a loop of two lines and two half circles, which may be cut in parts.
func slot(l shape.Loop) (wide, long float64, ok bool) {
	radius, sweep, straight := 0.0, 0.0, 0.0
	for i := range l {
		e := l.Edge(i)
		if !e.IsArc() {
			straight += e.Length()
			continue
		}
		if radius != 0 && math.Abs(e.Radius()-radius) > 1e-6 {
			return 0, 0, false
		}
		radius, sweep = e.Radius(), sweep+e.Sweep()
	}
	lines := 0
	for i := range l {
		if !l.Edge(i).IsArc() {
			lines++
		}
	}
	if radius == 0 || lines != 2 || math.Abs(math.Abs(sweep)-2*math.Pi) > 1e-6 {
		return 0, 0, false
	}
	return 2 * radius, straight/2 + 2*radius, true
}

// fold says which way and how far the steel beyond the line is turned.
func (s *plateSheet) fold(b part.Bend) string {
	way := "up"
	if b.AngleRad < 0 {
		way = "down"
	}
	words := fmt.Sprintf("bend %s %s°, inside R%s", way, degrees(math.Abs(b.AngleRad)), s.o.length(b.RadiusMM))
	if b.AllowanceMM > 0 {
		words += ", allowance " + s.o.length(b.AllowanceMM)
	}
	return words
}

// block is the lines under the drawing, the first of them its title.
func (s *plateSheet) block() []string {
	width, _ := s.o.room()
	lines := []string{strings.TrimSpace(s.plate.Mark + "  " + s.plate.Name)}
	for _, fact := range s.facts() {
		lines = append(lines, wrapped(fact, width)...)
	}
	return lines
}

func (s *plateSheet) facts() []string {
	p := s.plate
	first := []string{s.thickness(), p.Material}
	if s.o.Quantity > 0 {
		first = append(first, "make "+strconv.Itoa(s.o.Quantity))
	}
	if s.o.Hand != "" {
		first = append(first, string(s.o.Hand)+" hand")
	}
	face := "Seen on the face that the cut file shows"
	if len(p.Etch) > 0 {
		face += ", which is etched"
	}
	if len(p.Bends) > 0 {
		face += "; flat, folds along their lines, up is towards the reader"
	}
	size, way := s.box.Width(), "left to right"
	if s.box.Height() > s.box.Width() {
		size, way = s.box.Height(), "bottom to top"
	}
	out := []string{
		strings.Join(first, " · ") + ".",
		fmt.Sprintf("Scale %s. Dimensions in %s, holes as finished; the contour is that of the cut file.", s.scale.words, s.o.unit()),
		face + ". Datum 0: left and lower edge of the outline.",
		"Control dimension: " + s.o.length(size) + " overall, " + way + ".",
	}
	for i, words := range s.done() {
		out = append(out, fmt.Sprintf("(%d) %s.", i+1, words))
	}
	if len(p.Etch) == 0 && p.Mark != "" {
		out = append(out, "The cut file has no mark: paint "+p.Mark+" on, or tag the plate.")
	}
	if p.RolledMM > 0 {
		out = append(out, "Roll to inside radius "+s.o.length(p.RolledMM)+".")
	}
	return out
}

func (s *plateSheet) thickness() string {
	return units.Format(s.plate.ThicknessMM, units.Length, s.o.Units)
}

func number(i int) string { return strconv.Itoa(i) }

func trimmed(v float64) string {
	text := strings.TrimRight(units.FormatPlain(v, 2), "0")
	return strings.TrimSuffix(text, ".")
}
