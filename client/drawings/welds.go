package drawings

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"lugwright/client/draw"
	"lugwright/geometry/shape"
	"lugwright/part"
	"lugwright/units"
)

// Welds in pictures from outside and from behind, each with its symbol: after ISO 2553 system A in metric, after AWS A2.4 in inch drawings, both from memory.

// welds draws the picture from outside, and the one from behind where that shows welds which the first hides. A bracket without welds gives none.
func (s *Set) welds(o Options) []*draw.Drawing {
	b := s.b
	if len(b.Welds) == 0 {
		return nil
	}
	from := [2]*picture{s.picture(outside(b), true), s.picture(behind(b), true)}
	shown := [2][]*part.WeldGroup{}
	for i := range b.Welds {
		w := &b.Welds[i]
		k := 0
		if from[0].best(w) == nil && from[1].best(w) != nil {
			k = 1
		}
		shown[k] = append(shown[k], w)
	}
	var out []*draw.Drawing
	for k, p := range from {
		if len(shown[k]) > 0 {
			out = append(out, weldPicture(b, o, p, shown[k], [2]string{"welds", "welds-behind"}[k]))
		}
	}
	return out
}

func weldPicture(b *part.Bracket, o Options, p *picture, list []*part.WeldGroup, name string) *draw.Drawing {
	var tags []func() tag
	for _, w := range list {
		s := newSymbol(b, w, &o, p.scene.Eye)
		at := w.Segments[0].A.Add(w.Segments[0].B).Scale(0.5)
		best := p.best(w)
		if best != nil {
			at = *best
		}
		tags = append(tags, func() tag {
			return tag{id: w.ID, at: p.point(at), visible: best != nil, width: s.width(), up: symbolHalfMM, arrow: true, write: s.draw}
		})
	}
	words := "Symbols after ISO 2553, system A, sizes as leg z in mm"
	if o.Units == units.Inch {
		words = "Symbols after AWS A2.4, sizes in inches"
	}
	width, _ := o.room()
	lines := []string{heading(b) + ", welds"}
	var names []string
	for _, w := range list {
		names = append(names, fmt.Sprintf("%d  %s: %s on %s", WeldNumber(b, w.ID), w.ID, w.Joins[0], w.Joins[1]))
	}
	lines = append(lines, paired(names, width)...)
	lines = append(lines, wrapped(seenFrom(&p.scene.Direction)+" "+words+"; the number in the tail is the weld's. Thick lines are welds, broken where covered, as are leaders to them.", width)...)
	return isometric(p, o, tags, func(g *page) {
		for _, w := range list {
			g.group(w.ID, func(g *page) { p.runs(g, w) })
		}
	}, lines, name, heading(b)+", welds, "+strings.ToLower(seenFrom(&p.scene.Direction)))
}

// WeldNumber is a weld's number in the drawings of its bracket, from 1; 0 for a weld that it does not have.
func WeldNumber(b *part.Bracket, id string) int {
	return 1 + slices.IndexFunc(b.Welds, func(w part.WeldGroup) bool { return w.ID == id })
}

// stretches cuts a run where it goes out of sight.
func (p *picture) stretches(s part.WeldSegment, each func(a, b part.Vec, seen bool)) {
	const n = 12
	at := func(i float64) part.Vec { return s.A.AddScaled(i/n, s.B.Sub(s.A)) }
	from, seen := 0, p.scene.Sees(at(0.5))
	for i := 1; i <= n; i++ {
		if i < n {
			now := p.scene.Sees(at(float64(i) + 0.5))
			if now == seen {
				continue
			}
			each(at(float64(from)), at(float64(i)), seen)
			from, seen = i, now
			continue
		}
		each(at(float64(from)), at(n), seen)
	}
}

// best is the middle of the longest stretch of a weld in sight; nil when there is none.
func (p *picture) best(w *part.WeldGroup) *part.Vec {
	var best *part.Vec
	most := 1.0 // shorter ones are no place to point at
	for _, s := range w.Segments {
		p.stretches(s, func(a, b part.Vec, seen bool) {
			if l := p.scene.Project(a).Dist(p.scene.Project(b)); seen && l > most {
				middle := a.Add(b).Scale(0.5)
				best, most = &middle, l
			}
		})
	}
	return best
}

// runs draws the welds' lines.
func (p *picture) runs(g *page, w *part.WeldGroup) {
	for _, s := range w.Segments {
		p.stretches(s, func(a, b part.Vec, seen bool) {
			pen := draw.Pen{WidthMM: 0.8}
			if !seen {
				pen = draw.Pen{WidthMM: 0.25, Dash: []float64{1.2, 0.8}}
			}
			g.line(pen, p.point(a), p.point(b))
		})
	}
}

// symbol is a weld symbol on its reference line.
type symbol struct {
	aws         bool
	kind        part.WeldKind
	both, round bool
	unlike      bool // both, and the sides are not the same
	size, tail  string
	length      [2]string // on the arrow's side and on the other
}

func newSymbol(b *part.Bracket, w *part.WeldGroup, o *Options, eye part.Vec) *symbol {
	s := &symbol{aws: o.Units == units.Inch, kind: w.Kind, round: closed(w.Segments) && w.Kind != part.Plug, tail: strconv.Itoa(WeldNumber(b, w.ID))}
	runs, other := faces(b, w, eye)
	s.both = len(other) > 0 && !s.round
	s.unlike = s.both && !slices.EqualFunc(slices.Sorted(slices.Values(runs)), slices.Sorted(slices.Values(other)), func(a, b float64) bool { return math.Abs(a-b) < alikeMM })
	switch w.Kind {
	case part.Fillet:
		s.size = "z" + o.length(w.LegMM)
		if s.aws {
			s.size = o.length(w.LegMM)
		}
	case part.PJP:
		s.size = "s" + o.length(w.LegMM)
		if s.aws {
			s.size = "(" + o.length(w.LegMM) + ")"
		}
	case part.CJP:
		if s.aws {
			s.tail = "CJP, " + s.tail
		}
	case part.Plug:
		s.size = "Ø" + o.length(w.WidthMM)
		if len(runs) > 0 && math.Abs(runs[0]-w.WidthMM) > 0.05 {
			s.size = o.length(w.WidthMM) + " × " + o.length(runs[0])
		}
		s.length[0] = strconv.Itoa(len(runs)) + "×"
		if s.aws {
			s.length[0] = "(" + strconv.Itoa(len(runs)) + ")"
		}
		return s
	}
	if !s.round {
		s.length = [2]string{lengths(runs, o), lengths(other, o)}
	}
	return s
}

// faces are the lengths of the runs on the face of the standing plate that is towards the viewer, and on the other; of anything but a plate all are the first, as are those
// of a weld on one face.
func faces(b *part.Bracket, w *part.WeldGroup, eye part.Vec) (runs, other []float64) {
	face := b.Face(w.Joins[0])
	for _, s := range w.Segments {
		length := s.B.Sub(s.A).Norm()
		if face != nil && w.Kind != part.Plug {
			_, _, h := face.Pose.Local(s.A.Add(s.B).Scale(0.5))
			if h*face.Pose.W().Dot(eye) < -0.1 {
				other = append(other, length)
				continue
			}
		}
		runs = append(runs, length)
	}
	if len(runs) == 0 {
		runs, other = other, nil
	}
	return runs, other
}

// closed says whether runs follow one another round and end where they began.
func closed(list []part.WeldSegment) bool {
	if len(list) < 3 {
		return false
	}
	for i, s := range list {
		if next := list[(i+1)%len(list)]; s.B.Sub(next.A).Norm() > 0.05 {
			return false
		}
	}
	return true
}

// alikeMM is by how much runs of one length may differ.
const alikeMM = 0.05

// lengths writes the lengths of runs, those in a row that are alike or read the same once, and of many the sum.
func lengths(runs []float64, o *Options) string {
	var out []string
	for i := 0; i < len(runs); {
		n, most := 1, runs[i]
		for i+n < len(runs) && (math.Abs(runs[i+n]-runs[i]) < alikeMM || o.weldLength(runs[i+n]) == o.weldLength(runs[i])) {
			most = max(most, runs[i+n])
			n++
		}
		text := o.weldLength(most)
		if n > 1 {
			text = fmt.Sprintf("%d×%s", n, text)
		}
		out, i = append(out, text), i+n
	}
	if len(out) > 3 {
		sum := 0.0
		for _, r := range runs {
			sum += r
		}
		return "total " + o.weldLength(sum)
	}
	return strings.Join(out, " + ")
}

const (
	signMM = 2.8 // height of a symbol
	forkMM = 1.8 // of the tail
	// From the reference line to the dashed identification line of system A, on which what is on the other side stands.
	identityMM = 1.1
)

// line is the length of the reference line.
func (s *symbol) line() float64 {
	w := 1.6 + signMM + 1.6
	if s.round {
		w += 1.4
	}
	if s.size != "" {
		w += textWidth(s.size) + 0.8
	}
	if most := max(textWidth(s.length[0]), textWidth(s.length[1])); most > 0 {
		w += most + 0.8
	}
	return w
}

func (s *symbol) width() float64 { return s.line() + forkMM + 0.8 + textWidth(s.tail) }

// draw sets the symbol with its line from the elbow outwards.
func (s *symbol) draw(g *page, elbow shape.Point, way float64) {
	line := s.line()
	left := elbow.X + min(0, way*line)
	y := elbow.Y
	g.line(thin(), shape.Point{X: left, Y: y}, shape.Point{X: left + line, Y: y})
	if s.round {
		g.circle(thin(), draw.Shade{}, elbow, 2.2)
	}
	end := shape.Point{X: elbow.X + way*line, Y: y}
	for _, up := range []float64{1, -1} {
		g.line(thin(), end, end.Add(shape.Point{X: way * forkMM, Y: up * forkMM}))
	}
	align := draw.Left
	if way < 0 {
		align = draw.Right
	}
	g.words(end.Add(shape.Point{X: way * (forkMM + 0.8), Y: -textMM / 2}), align, 0, s.tail)
	x := left + 1.6
	if s.round && way > 0 {
		x += 1.4
	}
	// The arrow side is over the line in system A, under it in AWS.
	near, far := 1.0, -1.0
	if s.aws {
		near, far = far, near
	}
	s.side(g, x, y, near, s.length[0])
	// System A leaves the identification line out of symmetrical welds alone.
	second := y
	if !s.aws && (!s.both || s.unlike) {
		second -= identityMM
		g.line(draw.Pen{WidthMM: narrowMM, Dash: []float64{1.5, 0.8}}, shape.Point{X: left, Y: second}, shape.Point{X: left + line, Y: second})
	}
	if s.both {
		s.side(g, x, second, far, s.length[1])
	}
}

// side sets size, sign and length over the line, up being 1, or under it.
func (s *symbol) side(g *page, x, y, up float64, length string) {
	base := y + 0.9
	if up < 0 {
		base = y - 0.9 - textMM
	}
	if s.size != "" {
		g.words(shape.Point{X: x, Y: base}, draw.Left, 0, s.size)
		x += textWidth(s.size) + 0.8
	}
	corner := shape.Point{X: x, Y: y}
	high := corner.Add(shape.Point{Y: up * signMM})
	far := corner.Add(shape.Point{X: signMM, Y: up * signMM})
	pen := draw.Pen{WidthMM: 0.3}
	switch s.kind {
	case part.Fillet:
		g.line(pen, corner, high, corner.Add(shape.Point{X: signMM}))
	case part.Plug:
		g.line(pen, corner, high, far, corner.Add(shape.Point{X: signMM}))
	default:
		g.line(pen, high, corner, far)
	}
	if length != "" {
		g.words(shape.Point{X: x + signMM + 0.8, Y: base}, draw.Left, 0, length)
	}
}
