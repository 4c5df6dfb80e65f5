package template

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"lugwright/client/draw"
	"lugwright/geometry/shape"
	"lugwright/units"
)

// BarMM and BarIn are what the two bars measure once printed.
const (
	BarMM = 100.0
	BarIn = 4.0
)

// cornerMM is how far the marks of the check diagonal lie within the window's corners.
const cornerMM = 4.0

// Diagonal is the length of a tile's check diagonal, between its corner marks, mm.
func (t *Tile) Diagonal() float64 {
	return math.Hypot(t.Window.Width()-2*cornerMM, t.Window.Height()-2*cornerMM)
}

// Drawing is a tile for a sheet, 1 mm of the face 1 mm on paper. all names the tiles, "A1 to B2"; length writes a length with its unit.
func (t *Template) Drawing(tile *Tile, all string, length func(float64) string) *draw.Drawing {
	s := &sheet{
		t: t, tile: tile, length: length,
		d: &draw.Drawing{
			WidthMM: tile.Window.Width() + 2*sideMM, HeightMM: tile.Window.Height() + headMM + footMM, Name: "tile-" + tile.Name,
			Title: fmt.Sprintf("Drill template %s, tile %s", t.Title, tile.Name),
			Desc:  fmt.Sprintf("At full scale: %d holes and the edge of the part about the datum lines, with scale bars and a check diagonal.", len(t.Holes)),
		},
	}
	for i := range t.Holes { // whose words have the first choice of a place
		s.hole(&t.Holes[i])
	}
	s.datum()
	for _, o := range t.Outlines {
		s.outline(&o)
	}
	s.frame()
	s.settle()
	s.head(all)
	s.foot()
	return s.d
}

// sheet is a tile being drawn.
type sheet struct {
	t      *Template
	tile   *Tile
	length func(float64) string
	d      *draw.Drawing
	labels []label
}

// paper brings a point of the face to the sheet.
func (s *sheet) paper(p shape.Point) draw.Point {
	return draw.Point{X: sideMM + p.X - s.tile.Window.Min.X, Y: footMM + p.Y - s.tile.Window.Min.Y}
}

func (s *sheet) add(items ...draw.Item) { s.d.Items = append(s.d.Items, items...) }

func (s *sheet) line(pen draw.Pen, from draw.Point, to ...draw.Point) {
	p := &draw.Path{Start: from, Pen: pen}
	for _, q := range to {
		p.Segments = append(p.Segments, draw.Segment{To: q})
	}
	s.add(p)
}

func (s *sheet) text(x, y, high float64, align draw.Align, bold bool, words string) {
	s.add(&draw.Text{At: draw.Point{X: x, Y: y}, HeightMM: high, Align: align, Bold: bold, Words: words})
}

// fitted is text made smaller where it would be wider than there is room.
func (s *sheet) fitted(x, y, high, room float64, bold bool, words string) {
	t := &draw.Text{At: draw.Point{X: x, Y: y}, HeightMM: high, Bold: bold, Words: words}
	if w := t.WidthMM(); w > room {
		t.HeightMM *= room / w
	}
	s.add(t)
}

var (
	thin   = draw.Pen{WidthMM: 0.15}
	centre = draw.Pen{WidthMM: 0.18, Dash: []float64{8, 1.5, 1, 1.5}}
	// diagonal is faint, and may run through words.
	diagonal = draw.Pen{WidthMM: 0.1, Grey: 0.7}
	covers   = draw.Pen{WidthMM: 0.25, Dash: []float64{2, 1.5}, Grey: 0.35}
)

const (
	smallMM = 2.2
	wordMM  = 2.6
)

// frame is the window's edge, with what neighbours show too, and the check diagonal.
func (s *sheet) frame() {
	w := s.tile.Window
	corner := func(x, y float64) draw.Point { return s.paper(shape.Point{X: x, Y: y}) }
	s.add(&draw.Path{
		Start: corner(w.Min.X, w.Min.Y), Closed: true, Pen: draw.Pen{WidthMM: 0.25},
		Segments: []draw.Segment{{To: corner(w.Max.X, w.Min.Y)}, {To: corner(w.Max.X, w.Max.Y)}, {To: corner(w.Min.X, w.Max.Y)}},
	})
	a, b := corner(w.Min.X+cornerMM, w.Min.Y+cornerMM), corner(w.Max.X-cornerMM, w.Max.Y-cornerMM)
	s.line(diagonal, a, b)
	const arm = 3
	s.line(thin, draw.Point{X: a.X, Y: a.Y + arm}, a, draw.Point{X: a.X + arm, Y: a.Y})
	s.line(thin, draw.Point{X: b.X, Y: b.Y - arm}, b, draw.Point{X: b.X - arm, Y: b.Y})
	for _, n := range []struct {
		name  string
		way   float64 // of the neighbour
		along bool    // the seam is upright
	}{{s.tile.Left, -1, true}, {s.tile.Right, 1, true}, {s.tile.Below, -1, false}, {s.tile.Above, 1, false}} {
		if n.name != "" {
			s.seam(n.name, n.way, n.along)
		}
	}
}

// seam marks how far a neighbour reaches into the window, with crosses that lie on one another once the sheets do.
func (s *sheet) seam(name string, way float64, upright bool) {
	w := s.tile.Window
	place := func(u, v float64) draw.Point { // u across the seam, v along it
		if upright {
			return s.paper(shape.Point{X: u, Y: v})
		}
		return s.paper(shape.Point{X: v, Y: u})
	}
	edge, from, to := w.Min.X, w.Min.Y, w.Max.Y
	if upright && way > 0 {
		edge = w.Max.X
	}
	if !upright {
		edge, from, to = w.Min.Y, w.Min.X, w.Max.X
		if way > 0 {
			edge = w.Max.Y
		}
	}
	reach, middle := edge-way*OverlapMM, edge-way*OverlapMM/2
	s.line(covers, place(reach, from), place(reach, to))
	const arm = 4
	for _, k := range []float64{0.2, 0.8} {
		v := from + k*(to-from)
		s.line(thin, place(middle-arm, v), place(middle+arm, v))
		s.line(thin, place(middle, v-arm), place(middle, v+arm))
	}
	var places [][]*draw.Text
	for _, words := range []string{
		fmt.Sprintf("to here tile %s shows the same: lay the crosses on one another", name), fmt.Sprintf("to here as tile %s: crosses on crosses", name), "to here as " + name, name,
	} {
		half := wide(words) / 2
		for _, k := range []float64{0.5, 0.4, 0.6, 0.3, 0.7, 0.1, 0.9, 0.04, 0.96} {
			v := from + k*(to-from)
			for _, u := range []float64{0, arm + 1.2, -arm - 1.2} {
				t := &draw.Text{At: place(middle+u-smallMM/2, v-half), HeightMM: smallMM, Words: words}
				if upright {
					t.At, t.TurnRad = place(middle+u+smallMM/2, v-half), math.Pi/2
				}
				places = append(places, []*draw.Text{t})
			}
		}
	}
	s.put(places...)
}

// datum is the two lines, with what they stand for.
func (s *sheet) datum() {
	w := s.tile.Window
	const step = 4.0
	if w.Min.X < 0 && w.Max.X > 0 {
		top := s.paper(shape.Point{Y: w.Max.Y})
		s.line(centre, s.paper(shape.Point{Y: w.Min.Y}), top)
		var places [][]*draw.Text
		for _, words := range []string{"upright datum", "datum"} {
			for y := s.paper(w.Min).Y + step; y < top.Y; y += step {
				places = append(places, upright(top.X-1, y, words), upright(top.X+1+smallMM, y, words))
			}
		}
		s.put(places...)
	}
	if w.Min.Y < 0 && w.Max.Y > 0 {
		from := s.paper(shape.Point{X: w.Min.X})
		s.line(centre, from, s.paper(shape.Point{X: w.Max.X}))
		var places [][]*draw.Text
		for _, words := range []string{"level datum", "datum"} {
			for x := from.X + step; x < from.X+w.Width(); x += step {
				places = append(places, level(x, from.Y+1, words), level(x, from.Y-1-smallMM, words))
			}
		}
		s.put(places...)
	}
}

func (s *sheet) outline(o *Outline) {
	pen := draw.Pen{WidthMM: 0.4, Dash: []float64{5, 2}}
	if o.Given {
		pen = draw.Pen{WidthMM: 0.5}
	}
	var runs []shape.Edge
	for _, run := range s.loop(o.Shape, pen) {
		runs = append(runs, run...)
	}
	// Under the lowest edge first, then over it, then beside the others.
	slices.SortStableFunc(runs, func(a, b shape.Edge) int { return cmp.Compare(a.Mid().Y, b.Mid().Y) })
	half := wide(o.Name) / 2
	var places [][]*draw.Text
	for _, e := range runs {
		if e.IsArc() {
			continue
		}
		for _, k := range []float64{0.5, 0.3, 0.7, 0.15, 0.85} {
			at := s.paper(e.A.Lerp(e.B, k))
			switch d := e.B.Sub(e.A); {
			case math.Abs(d.Y) < 0.01:
				places = append(places, level(at.X-half, at.Y-smallMM-1.4, o.Name), level(at.X-half, at.Y+1.4, o.Name))
			case math.Abs(d.X) < 0.01:
				places = append(places, upright(at.X+1.4+smallMM, at.Y-half, o.Name), upright(at.X-1.4, at.Y-half, o.Name))
			}
		}
	}
	if places != nil {
		s.labels = append(s.labels, label{places, true})
	}
}

// loop draws what of a loop lies in the window, in runs of edges, and gives them.
func (s *sheet) loop(l shape.Loop, pen draw.Pen) [][]shape.Edge {
	var runs [][]shape.Edge
	for i := range l {
		for _, e := range clipped(l.Edge(i), s.tile.Window) {
			if n := len(runs); n > 0 && runs[n-1][len(runs[n-1])-1].B == e.A {
				runs[n-1] = append(runs[n-1], e)
			} else {
				runs = append(runs, []shape.Edge{e})
			}
		}
	}
	for _, run := range runs {
		p := &draw.Path{Start: s.paper(run[0].A), Pen: pen}
		for _, e := range run {
			p.Segments = append(p.Segments, draw.Segment{To: s.paper(e.B), Bulge: e.Bulge})
		}
		s.add(p)
	}
	return runs
}

// hole is a circle with a cross that reaches past it, and its words where they lie in the window.
func (s *sheet) hole(h *Hole) {
	w := s.tile.Window
	r := h.DiaMM / 2
	reach := r + max(3, r/2)
	if !w.Grow(reach).Contains(h.At) {
		return
	}
	s.loop(shape.Circle(h.At, h.DiaMM), draw.Pen{WidthMM: 0.3})
	for _, arm := range []shape.Point{{X: reach}, {Y: reach}} {
		if a, b, ok := within(h.At.Sub(arm), h.At.Add(arm), w); ok {
			s.line(thin, s.paper(a), s.paper(b))
		}
	}
	if !w.Contains(h.At) {
		return
	}
	at := s.paper(h.At)
	words := []string{h.Name, "Ø" + s.length(h.DiaMM), h.How}
	if h.Verdict == "FAIL" {
		words = append(words, "FAILS: see list")
	}
	const leading = smallMM + 0.9
	// Beside the hole's cross, the lower right first; then further off.
	var places [][]*draw.Text
	for _, off := range []float64{r*0.75 + 1.2, reach + 1.2, reach + 4, reach + 8, reach + 12, reach + 18} {
		for _, side := range []shape.Point{{X: 1, Y: -1}, {X: -1, Y: -1}, {X: 1, Y: 1}, {X: -1, Y: 1}, {X: 1}, {X: -1}, {Y: -1}, {Y: 1}} {
			align, high := map[float64]draw.Align{1: draw.Left, 0: draw.Middle, -1: draw.Right}[side.X], float64(len(words))*leading-0.9
			top := at.Y + high/2 + side.Y*(off+high/2)
			var block []*draw.Text
			for i, l := range words {
				block = append(block, &draw.Text{At: draw.Point{X: at.X + side.X*off, Y: top - float64(i+1)*leading + 0.9}, HeightMM: smallMM, Align: align, Bold: i == 0, Words: l})
			}
			places = append(places, block)
		}
	}
	s.put(places...)
}

func (s *sheet) head(all string) {
	top := s.d.HeightMM
	name := &draw.Text{At: draw.Point{X: s.d.WidthMM - sideMM, Y: top - 7}, HeightMM: 6, Align: draw.Right, Bold: true, Words: s.tile.Name}
	s.add(name)
	s.text(s.d.WidthMM-sideMM, top-11.5, smallMM, draw.Right, false, "tiles "+all)
	room := s.d.WidthMM - 2*sideMM - max(name.WidthMM(), 22) - 4
	s.fitted(sideMM, top-4.5, 3.4, room, true, s.t.Title)
	y := top - 9.3
	if s.t.Hand != "" {
		s.fitted(sideMM, y, 3.4, room, true, s.t.Hand)
		y -= 4.6
	}
	s.fitted(sideMM, y, wordMM-0.2, s.d.WidthMM-2*sideMM-26, false, "Seen "+s.t.Seen)
	for i, words := range []string{"upright datum: " + s.t.Vertical, "level datum: " + s.t.Horizontal} {
		s.fitted(sideMM, y-3.9*float64(i+1), wordMM-0.2, s.d.WidthMM-2*sideMM, false, words)
	}
}

// foot has the bars, the length of the diagonal and the directions.
func (s *sheet) foot() {
	const x, mm, in = 2.0, 12.5, 3.5
	ticked := func(y, length, step float64, words string) {
		s.line(draw.Pen{WidthMM: 0.4}, draw.Point{X: x, Y: y}, draw.Point{X: x + length, Y: y})
		for k := range int(math.Round(length/step)) + 1 {
			tall := 1.5
			if at := float64(k) * step; k == 0 || math.Abs(at-length) < 1e-9 {
				tall = 3
			}
			s.line(thin, draw.Point{X: x + float64(k)*step, Y: y}, draw.Point{X: x + float64(k)*step, Y: y + tall})
		}
		s.text(x+length/2, y+2.8, wordMM, draw.Middle, false, words)
	}
	ticked(mm, BarMM, 10, "100 mm")
	ticked(in, BarIn*25.4, 12.7, "4 in")
	s.fitted(x, 20, wordMM, s.d.WidthMM-2*x, false, fmt.Sprintf("check diagonal, between the corner marks: %s mm = %s in", units.FormatPlain(s.tile.Diagonal(), 1), units.FormatPlain(s.tile.Diagonal()/25.4, 2)))
	from := draw.Point{X: s.d.WidthMM - 18, Y: 4.5}
	s.arrow(from, draw.Point{X: from.X + 10, Y: from.Y})
	s.arrow(from, draw.Point{X: from.X, Y: from.Y + 10})
	s.text(s.d.WidthMM-sideMM, from.Y-3.6, smallMM, draw.Right, false, s.t.Right)
	s.text(from.X-1.5, from.Y+4, smallMM, draw.Right, false, s.t.Up)
}

func (s *sheet) arrow(from, to draw.Point) {
	s.line(draw.Pen{WidthMM: 0.35}, from, to)
	l := math.Hypot(to.X-from.X, to.Y-from.Y)
	dx, dy := (to.X-from.X)/l, (to.Y-from.Y)/l
	back := draw.Point{X: to.X - 2.6*dx, Y: to.Y - 2.6*dy}
	s.add(&draw.Path{
		Start: to, Closed: true, Fill: draw.Shade{On: true},
		Segments: []draw.Segment{{To: draw.Point{X: back.X - 0.5*dy, Y: back.Y + 0.5*dx}}, {To: draw.Point{X: back.X + 0.5*dy, Y: back.Y - 0.5*dx}}},
	})
}
