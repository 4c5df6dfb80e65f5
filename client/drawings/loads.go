package drawings

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"lugwright/client/draw"
	"lugwright/geometry/shape"
	"lugwright/part"
	"lugwright/units"
)

// mostArrows is how many forces one picture shows.
const mostArrows = 10

// loads draws the bracket with the forces of load cases on it as numbered arrows from their load points, as long as they are large. Of more than ten cases it shows those
// with the largest part in each direction. Cases without a force are left out; it is nil when none is left.
func (s *Set) loads(o Options) *draw.Drawing {
	b, cases := s.given, s.cases
	shown := largest(b, cases)
	if len(shown) == 0 {
		return nil
	}
	p := s.picture(outside(s.b), true)
	// The vehicle's x is rearward; the bracket as made has it forward.
	made := func(v part.Vec) part.Vec { v.X = 0 - v.X; return v }
	most := 0.0
	for _, c := range shown {
		most = max(most, c.Force.Norm())
	}
	span := 0.55 * max(p.box.Width(), p.box.Height())
	lines := []string{heading(b) + ", loads"}
	width, _ := o.room()
	var tags []func() tag
	var arrows [][2]part.Vec
	for i, c := range shown {
		from := made(b.LoadPoint(c.LoadPoint).At)
		tip := from.AddScaled(span*max(c.Force.Norm()/most, 0.2), made(c.Force).Unit())
		arrows = append(arrows, [2]part.Vec{from, tip})
		p.box = p.box.Extend(p.scene.Project(tip))
		value := units.Format(c.Force.Norm(), units.Force, o.Units)
		words := fmt.Sprintf("%d: %s", i+1, value)
		tags = append(tags, func() tag {
			return tag{id: caseID(i), at: p.point(tip), visible: true, width: textWidth(words) + 1, up: 2.4, write: func(g *page, elbow shape.Point, way float64) {
				g.words(elbow.Add(shape.Point{X: way * (textWidth(words)/2 + 0.8), Y: -textMM / 2}), draw.Middle, 0, words)
			}}
		})
		lines = append(lines, wrapped(fmt.Sprintf("%d  %s, %s: %s%s", i+1, c.Name, c.Level, directions(c.Force, &o), moment(c.Moment, &o)), width)...)
	}
	note := "Arrows point the way that the force acts on the bracket."
	if n := len(withForce(cases)); n > len(shown) {
		note += fmt.Sprintf(" Of %d load cases those with the largest part in each direction.", n)
	}
	lines = append(lines, wrapped(seenFrom(&p.scene.Direction)+" "+note, width)...)
	return isometric(p, o, tags, func(g *page) {
		for i, a := range arrows {
			g.group(caseID(i), func(g *page) {
				from, tip := p.point(a[0]), p.point(a[1])
				g.line(draw.Pen{WidthMM: 0.7}, from, tip.Add(from.Sub(tip).Unit().Scale(min(2, from.Dist(tip)))))
				g.head(tip, from, 4)
			})
		}
	}, lines, "loads", heading(b)+", loads")
}

func caseID(i int) string { return "case-" + number(i+1) }

func withForce(cases []part.Case) []part.Case {
	return slices.DeleteFunc(slices.Clone(cases), func(c part.Case) bool { return c.Force.Norm() == 0 })
}

// largest are the cases to show, in their order.
func largest(b *part.Bracket, cases []part.Case) []part.Case {
	cases = slices.DeleteFunc(withForce(cases), func(c part.Case) bool { return b.LoadPoint(c.LoadPoint) == nil })
	if len(cases) <= mostArrows {
		return cases
	}
	keep := map[int]bool{}
	for _, q := range part.Components()[:6] {
		best, most := -1, 0.0
		for i, c := range cases {
			if size := q.Size(c.Force, c.Moment); size > most {
				best, most = i, size
			}
		}
		if best >= 0 {
			keep[best] = true
		}
	}
	var out []part.Case
	for i, c := range cases {
		if keep[i] {
			out = append(out, c)
		}
	}
	return out
}

// directions says a force by its parts: the vehicle's x is rearward, y to the left, z up.
func directions(f part.Vec, o *Options) string {
	var out []string
	for _, d := range []struct {
		size       float64
		plus, less string
	}{{f.X, "rearward", "forward"}, {f.Y, "left", "right"}, {f.Z, "up", "down"}} {
		if math.Abs(d.size) < 0.5 {
			continue
		}
		way := d.plus
		if d.size < 0 {
			way = d.less
		}
		out = append(out, units.Format(math.Abs(d.size), units.Force, o.Units)+" "+way)
	}
	return strings.Join(out, ", ")
}

func moment(m part.Vec, o *Options) string {
	if m.Norm() == 0 {
		return ""
	}
	return ", and a moment of " + units.Format(m.Norm(), units.Moment, o.Units)
}
