package drawings

import (
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"lugwright/client/draw"
	"lugwright/geometry/shape"
	"lugwright/part"
	"lugwright/units"
)

// said is a text of a drawing with the names of the groups that it is in.
type said struct {
	*draw.Text
	groups string
}

// read lists the texts of a drawing, and all lines with their half width.
func read(d *draw.Drawing) (texts []said, lines []line) {
	var walk func(list []draw.Item, groups string)
	walk = func(list []draw.Item, groups string) {
		for _, item := range list {
			switch item := item.(type) {
			case *draw.Group:
				walk(item.Items, groups+"/"+item.ID)
			case *draw.Text:
				texts = append(texts, said{item, groups})
			case *draw.Path:
				half := item.Pen.WidthMM / 2
				if half > 0 || item.Fill.On {
					for _, e := range edgesOf(item) {
						lines = append(lines, line{e, half, groups})
					}
				}
			}
		}
	}
	walk(d.Items, "")
	return texts, lines
}

type line struct {
	shape.Edge
	half   float64
	groups string
}

// corners of a text's box as a loop.
func corners(t *draw.Text) shape.Loop {
	var l shape.Loop
	for _, c := range t.Corners() {
		l = append(l, shape.Vertex{Point: shape.Point{X: c.X, Y: c.Y}})
	}
	return l
}

// clashes lists every text that another text or any line runs into, its own leader too, and what leaves the paper. Boxes are by the font's own widths.
func clashes(d *draw.Drawing) []string {
	var out []string
	texts, lines := read(d)
	boxes := make([]shape.Loop, len(texts))
	for i := range texts {
		boxes[i] = corners(texts[i].Text)
	}
	for i, t := range texts {
		box := boxes[i].BBox()
		if box.Min.X < 0 || box.Min.Y < 0 || box.Max.X > d.WidthMM || box.Max.Y > d.HeightMM {
			out = append(out, fmt.Sprintf("%q is off the paper", t.Words))
		}
		for k := range i {
			if box.Overlaps(boxes[k].BBox()) && (shape.LoopDistance(boxes[i], boxes[k]) == 0 || boxes[i].Contains(boxes[k][0].Point) || boxes[k].Contains(boxes[i][0].Point)) {
				out = append(out, fmt.Sprintf("%q and %q overlap", t.Words, texts[k].Words))
			}
		}
		for _, l := range lines {
			if !box.Grow(l.half).Overlaps(l.BBox()) {
				continue
			}
			if shape.LoopDistance(boxes[i], shape.Loop{{Point: l.A, Bulge: l.Bulge}, {Point: l.B, Bulge: -l.Bulge}}) < l.half || boxes[i].Contains(l.A) {
				out = append(out, fmt.Sprintf("a line of %s from %.1f,%.1f to %.1f,%.1f runs into %q of %s", l.groups, l.A.X, l.A.Y, l.B.X, l.B.Y, t.Words, t.groups))
				break
			}
		}
	}
	if math.IsNaN(d.WidthMM + d.HeightMM) {
		out = append(out, "no size")
	}
	return out
}

// value reads the length that a text begins with, in the unit of the drawing.
func value(t *testing.T, words string, o Options) float64 {
	t.Helper()
	unit := " mm"
	if o.Units == units.Inch {
		unit = " in"
	}
	v, err := units.Parse(strings.Fields(words)[0]+unit, units.Length)
	if err != nil {
		t.Fatalf("%q: %v", words, err)
	}
	return v
}

// readMM is how far a value may be off by being written in two decimals of mm or three of an inch.
func readMM(o Options) float64 {
	if o.Units == units.Inch {
		return 0.0005*25.4 + 1e-6
	}
	return 0.005 + 1e-6
}

// axis lists the values of running dimensions, by the groups' name.
func axis(t *testing.T, d *draw.Drawing, name string, o Options) []float64 {
	t.Helper()
	var out []float64
	texts, _ := read(d)
	for _, s := range texts {
		if rest, ok := strings.CutPrefix(s.groups, "/"+name); ok && rest != "-overall" {
			out = append(out, value(t, s.Words, o))
		}
	}
	return out
}

func has(list []float64, want, tol float64) bool {
	return slices.ContainsFunc(list, func(v float64) bool { return math.Abs(v-want) <= tol })
}

// plateSays reads a plate's drawing back: every hole and opening is where the plate has it, each diameter is said with as many as there are, the extents are those of a
// dense walk round the outline, and each extension line is where its value says.
func plateSays(t *testing.T, p *part.Plate, o Options) {
	t.Helper()
	d := Plate(p, PlateOptions{Options: o})
	lo, hi := shape.Point{X: math.Inf(1), Y: math.Inf(1)}, shape.Point{X: math.Inf(-1), Y: math.Inf(-1)}
	for _, q := range p.Outer.Polygon(1e-5) {
		lo, hi = shape.Point{X: min(lo.X, q.X), Y: min(lo.Y, q.Y)}, shape.Point{X: max(hi.X, q.X), Y: max(hi.Y, q.Y)}
	}
	xs, ys, tol := axis(t, d, "x", o), axis(t, d, "y", o), readMM(o)+1e-4
	for _, want := range []float64{0, hi.X - lo.X} {
		if !has(xs, want, tol) {
			t.Errorf("%s: no x %g among %v", p.ID, want, xs)
		}
	}
	for _, want := range []float64{0, hi.Y - lo.Y} {
		if !has(ys, want, tol) {
			t.Errorf("%s: no y %g among %v", p.ID, want, ys)
		}
	}
	count := map[float64]int{}
	for _, h := range p.Holes {
		count[h.DiaMM]++
		if at := h.Center.Sub(lo); !has(xs, at.X, tol) || !has(ys, at.Y, tol) {
			t.Errorf("%s: hole %s at %v is not among %v and %v", p.ID, h.ID, at, xs, ys)
		}
	}
	texts, _ := read(d)
	said := map[float64]int{}
	for _, s := range texts {
		if !strings.HasPrefix(s.groups, "/note-") {
			continue
		}
		words, n := s.Words, 1
		if head, rest, ok := strings.Cut(words, "× "); ok && !strings.HasPrefix(words, "slot") && !strings.HasPrefix(words, "opening") {
			words = rest
			if _, err := fmt.Sscan(head, &n); err != nil {
				t.Fatal(s.Words)
			}
		}
		if dia, ok := strings.CutPrefix(words, "Ø"); ok {
			v := value(t, dia, o)
			for want := range count {
				if math.Abs(want-v) <= tol {
					said[want] += n
				}
			}
		}
	}
	for dia, n := range count {
		tapped := slices.ContainsFunc(p.Holes, func(h part.Hole) bool { return h.DiaMM == dia && h.Finish == part.Tapped })
		if said[dia] < n && !tapped {
			t.Errorf("%s: %d holes of %g mm, the drawing says %d", p.ID, n, dia, said[dia])
		}
	}
	linesStandWhereTheySay(t, d, p.ID, o)
}

// linesStandWhereTheySay holds extension lines against their values: the distances of any two are as their values are, in the scale of the drawing's own words.
func linesStandWhereTheySay(t *testing.T, d *draw.Drawing, what string, o Options) {
	t.Helper()
	texts, lines := read(d)
	scale := 0.0
	for _, s := range texts {
		if _, rest, ok := strings.Cut(s.Words, "Scale "); ok {
			var a, b float64
			if _, err := fmt.Sscanf(strings.ReplaceAll(rest, ". ", " "), "%g:%g", &a, &b); err != nil {
				t.Fatalf("%q: %v", rest, err)
			}
			scale = a / b
		}
	}
	if scale == 0 {
		t.Fatalf("%s: the drawing states no scale", what)
	}
	for _, name := range []string{"x", "y", "z"} {
		origin := math.NaN()
		for k := 0; ; k++ {
			group := fmt.Sprintf("/%s%d", name, k)
			i := slices.IndexFunc(texts, func(s said) bool { return s.groups == group })
			if i < 0 {
				break
			}
			first := lines[slices.IndexFunc(lines, func(l line) bool { return l.groups == group })].A
			at := first.X
			if name != "x" {
				at = first.Y
			}
			if k == 0 {
				origin = at
			}
			if v := value(t, texts[i].Words, o); math.Abs((at-origin)/scale-v) > readMM(o)+1e-6 {
				t.Errorf("%s: %s %q stands at %g mm", what, name, texts[i].Words, (at-origin)/scale)
			}
		}
	}
}

// viewsSay reads the views back: pins, bolts and the extents of the steel, found here by walking round each plate and member.
func viewsSay(t *testing.T, b *part.Bracket, o Options) {
	t.Helper()
	made := b.AsMade()
	d := Of(b, nil).Views(o)
	linesStandWhereTheySay(t, d, d.Title, o)
	weldsSay(t, made, d, o)
	// On paper, seen from the left, forward is to the left; from the right to the right. Above, what is further from the viewer of the front view is higher.
	side := 1.0
	if b.Hand == part.RightHand {
		side = -1
	}
	for name, along := range map[string]part.Vec{"x": {X: -side}, "y": {Y: -side}, "z": {Z: 1}} {
		lo, hi := walked(made, along)
		got := axis(t, d, name, o)
		tol := readMM(o) + 0.02 // folds are walked at their middle planes
		wants := []float64{0, hi - lo}
		for _, p := range made.Pins {
			if math.Abs(p.Axis.Dot(along)) < 1e-6 {
				wants = append(wants, p.Center.Dot(along)-lo)
			}
		}
		for _, g := range made.Bolts {
			for _, q := range g.Points {
				if math.Abs(g.Pose.W().Dot(along)) < 1e-6 && g.SameAs == "" {
					wants = append(wants, g.Pose.At(q.X, q.Y, 0).Dot(along)-lo)
				}
			}
		}
		for _, want := range wants {
			if !has(got, want, tol) {
				t.Errorf("%s: no %s %g among %v", d.Title, name, want, got)
			}
		}
	}
}

// weldsSay holds the symbols beside the views against the model: each weld has one with its number, leg and lengths, or the words say that it has none here.
func weldsSay(t *testing.T, b *part.Bracket, d *draw.Drawing, o Options) {
	t.Helper()
	texts, _ := read(d)
	alone := ""
	for i, s := range texts {
		if strings.HasPrefix(s.Words, "Weld") && s.groups == "" {
			for _, more := range texts[i:] { // over its lines
				alone += more.Words + " "
			}
			break
		}
	}
	for i, w := range b.Welds {
		length, number, leg, size := 0.0, false, w.Kind != part.Fillet, ""
		for _, s := range texts {
			if s.groups != "/"+GroupID(w.ID) {
				continue
			}
			switch {
			case s.Words == fmt.Sprint(i+1) || strings.HasSuffix(s.Words, ", "+fmt.Sprint(i+1)):
				number = true
			case !leg && math.Abs(value(t, strings.TrimPrefix(s.Words, "z"), o)-w.LegMM) < 0.02:
				leg, size = true, s.Words
			case s.Words == size: // on the other side
			default:
				for _, run := range strings.Split(strings.TrimPrefix(s.Words, "total "), " + ") {
					n, each, many := 1, run, false
					if head, rest, ok := strings.Cut(run, "×"); ok && rest != "" {
						if _, err := fmt.Sscan(head, &n); err == nil {
							each, many = rest, true
						}
					}
					if v, err := units.Parse(each+" "+map[units.System]string{units.Metric: "mm", units.Inch: "in"}[o.Units], units.Length); err == nil || many {
						length += float64(n) * v
					}
				}
			}
		}
		_, rest, _ := strings.Cut(alone, "alone: ")
		list, _, _ := strings.Cut(rest, ".")
		told := strings.Contains(alone, "Welds: on the drawing") || slices.Contains(strings.Split(strings.Join(strings.Fields(list), " "), ", "), fmt.Sprint(i+1))
		if number == told || number && !leg {
			t.Errorf("%s: weld %s, symbol %t with its leg %t, told to be elsewhere %t in %q", d.Title, w.ID, number, leg, told, alone)
		}
		sum := 0.0
		for _, s := range w.Segments {
			sum += s.B.Sub(s.A).Norm()
		}
		least, most := sum-0.06*float64(len(w.Segments))-0.02, sum+0.06*float64(len(w.Segments))+0.02
		if o.Units == units.Inch { // up to the next sixteenth
			least, most = sum-1e-3, most+float64(len(w.Segments))*25.4/16
		}
		if number && w.Kind == part.Fillet && !closed(w.Segments) && !(length >= least && length <= most) {
			t.Errorf("%s: weld %s has runs of %g, its symbol says %g", d.Title, w.ID, sum, length)
		}
	}
}

// walked is how far plates and members reach, from points on their outlines.
func walked(b *part.Bracket, along part.Vec) (lo, hi float64) {
	lo, hi = math.Inf(1), math.Inf(-1)
	reach := func(pose part.Pose, l shape.Loop, w [2]float64) {
		for _, q := range l.Polygon(1e-4) {
			for _, w := range w {
				v := pose.At(q.X, q.Y, w).Dot(along)
				lo, hi = min(lo, v), max(hi, v)
			}
		}
	}
	for i := range b.Plates {
		for _, p := range b.Plates[i].Folded() {
			reach(p.Pose, p.Outer, [2]float64{-p.ThicknessMM / 2, p.ThicknessMM / 2})
		}
	}
	for _, m := range b.Members {
		section := part.Pose{Origin: m.Pose.Origin, U: m.Pose.V, V: m.Pose.W()}
		a, c := m.Profile.AMM/2, m.Profile.BMM/2
		l := shape.Rect(shape.Point{X: -a, Y: -c}, shape.Point{X: a, Y: c})
		switch m.Profile.Kind {
		case part.Angle:
			t := m.Profile.TMM
			l = shape.Polyline(shape.Point{}, shape.Point{X: 2 * a}, shape.Point{X: 2 * a, Y: t}, shape.Point{X: t, Y: t}, shape.Point{X: t, Y: 2 * c}, shape.Point{Y: 2 * c})
		case part.RoundBar, part.RoundTube:
			l = shape.Circle(shape.Point{}, 2*a)
		case part.FlatBar:
			l = shape.Rect(shape.Point{X: -a, Y: -m.Profile.TMM / 2}, shape.Point{X: a, Y: m.Profile.TMM / 2})
		}
		reach(section, l, [2]float64{0, m.LengthMM})
	}
	return lo, hi
}

// edgesOf are all lines and arcs of a path.
func edgesOf(p *draw.Path) []shape.Edge {
	var out []shape.Edge
	loop := func(start draw.Point, list []draw.Segment, closed bool) {
		from := shape.Point{X: start.X, Y: start.Y}
		for _, s := range list {
			to := shape.Point{X: s.To.X, Y: s.To.Y}
			out = append(out, shape.Edge{A: from, B: to, Bulge: s.Bulge})
			from = to
		}
		if first := (shape.Point{X: start.X, Y: start.Y}); closed && from != first {
			out = append(out, shape.Edge{A: from, B: first})
		}
	}
	loop(p.Start, p.Segments, p.Closed)
	for _, l := range p.More {
		loop(l.Start, l.Segments, true)
	}
	return out
}
