package drawings

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"lugwright/client/draw"
	"lugwright/geometry/shape"
	"lugwright/geometry/view"
	"lugwright/part"
	"lugwright/units"
)

// heading is a bracket in words.
func heading(b *part.Bracket) string { return fmt.Sprintf("%s: %s, %s hand", b.Name, b.Kind, b.Hand) }

// outside is the isometric direction from outside the frame: of a right-hand bracket from the right.
func outside(b *part.Bracket) view.Direction {
	if b.Hand == part.RightHand {
		return view.From(part.Vec{X: 1, Y: -1, Z: 1}, part.Vec{Z: 1})
	}
	return view.Isometric
}

func behind(b *part.Bracket) view.Direction {
	d := outside(b)
	return view.From(part.Vec{X: -d.Eye.X, Y: -d.Eye.Y, Z: d.Eye.Z}, part.Vec{Z: 1})
}

// seenFrom is the isometric direction in words.
func seenFrom(d *view.Direction) string {
	words := "Seen from ahead"
	if d.Eye.X < 0 {
		words = "Seen from behind"
	}
	if d.Eye.Y < 0 {
		return words + ", right and above."
	}
	return words + ", left and above."
}

// parts is the shaded picture with part marks, pins and bolts, and a list of them.
func (s *Set) parts(o Options) *draw.Drawing {
	b := s.b
	p := s.picture(outside(b), true)
	list := listed(b, &o)
	words := pointed(p, list, s.points())
	lines := []string{heading(b)}
	width, _ := o.room()
	var names []string
	for _, x := range list {
		names = append(names, x.tag+": "+x.words)
	}
	lines = append(lines, paired(names, width)...)
	lines = append(lines, wrapped(seenFrom(&p.scene.Direction)+" Not to scale. Covered edges are left out; broken leaders point at covered parts.", width)...)
	return isometric(p, o, words, nil, lines, "parts", heading(b)+", parts")
}

// entry is a thing of the bracket in the list under the picture.
type entry struct {
	tag, words string
	of         func(*view.Thing) bool
	round      bool // its tag stands in a balloon
}

// listed is every plate, member, pin, bolt group and rod, what has one mark once.
func listed(b *part.Bracket, o *Options) []entry {
	var list []entry
	size := func(mm float64) string { return units.Format(mm, units.Length, o.Units) }
	marked := func(mark, words string) {
		e := entry{tag: mark, words: words, round: true, of: func(t *view.Thing) bool { return t.Mark == mark }}
		list = append(list, e)
	}
	times := func(n int, words string) string {
		if n > 1 {
			words += ", " + strconv.Itoa(n) + " off"
		}
		return words
	}
	for i := range b.Plates {
		p := &b.Plates[i]
		if slices.IndexFunc(b.Plates, func(q part.Plate) bool { return q.Mark == p.Mark }) < i {
			continue
		}
		n := 0
		for k := range b.Plates {
			if b.Plates[k].Mark == p.Mark {
				n++
			}
		}
		marked(p.Mark, times(n, p.Name+", "+size(p.ThicknessMM)+" "+p.Material))
	}
	for i := range b.Members {
		m := &b.Members[i]
		if slices.IndexFunc(b.Members, func(q part.Member) bool { return q.Mark == m.Mark }) < i {
			continue
		}
		n := 0
		for k := range b.Members {
			if b.Members[k].Mark == m.Mark {
				n++
			}
		}
		words := profile(m.Profile, o)
		if !strings.HasPrefix(words, m.Name) {
			words = m.Name + ", " + words
		}
		marked(m.Mark, times(n, words+", "+size(m.LengthMM)+" long, "+m.Material))
	}
	for i := range b.Pins {
		p := &b.Pins[i]
		tag := p.Mark
		if tag == "" {
			tag = p.ID
		}
		words := fmt.Sprintf("Ø%s × %s, %s, %s", o.length(p.DiaMM), size(p.LengthMM), p.Material, ends(p))
		if p.Mark != "" {
			words = "pin " + words
		}
		list = append(list, entry{tag: tag, words: words, round: p.Mark != "", of: func(t *view.Thing) bool { return t.Of == p.ID }})
	}
	for i := range b.Bolts {
		g := &b.Bolts[i]
		if g.SameAs != "" {
			continue
		}
		words := fmt.Sprintf("%s, grade %s, grip %s, holes Ø%s", g.ID, g.Grade, size(g.GripMM), o.length(g.HoleMM))
		list = append(list, entry{tag: fmt.Sprintf("%d× %s", len(g.Points), g.Size), words: words, of: func(t *view.Thing) bool { return t.Of == g.ID }})
	}
	for i := range b.Rods {
		r := &b.Rods[i]
		words := fmt.Sprintf("rod, grade %s, %s free", r.Grade, size(r.FreeMM))
		list = append(list, entry{tag: fmt.Sprintf("%d× %s", len(r.Points), r.Size), words: words, of: func(t *view.Thing) bool { return t.Of == r.ID }})
	}
	return list
}

// ends says what keeps a pin in.
func ends(p *part.Pin) string {
	words := make([]string, 0, 2)
	for _, e := range p.Ends {
		w := string(e.Kind)
		if e.Size != "" {
			w += " " + e.Size
		}
		words = append(words, w)
	}
	if words[0] == words[1] {
		return words[0] + " at both ends"
	}
	return strings.Join(words, " and ")
}

func profile(p part.Profile, o *Options) string {
	a, b, t := o.length(p.AMM), o.length(p.BMM), o.length(p.TMM)
	switch p.Kind {
	case part.RoundBar:
		return "round bar Ø" + a
	case part.RoundTube:
		return "tube Ø" + a + " × " + t
	case part.FlatBar:
		return "flat bar " + a + " × " + t
	}
	word := "angle "
	if p.Kind == part.RectTube {
		word = "tube "
	}
	return word + a + " × " + b + " × " + t
}

// anchor is the place at which an entry's tag points.
type anchor struct {
	id      string // of the thing pointed at; empty where nothing is
	at      shape.Point
	visible bool
}

// anchors are the best places of anything that each entry is about.
func anchors(p *picture, list []entry) []anchor {
	out := make([]anchor, len(list))
	for k, e := range list {
		const enough = 4 // pieces in sight, the nearest first
		most, seen := -1.0, 0
		for i := len(p.scene.Things) - 1; i >= 0 && seen < enough; i-- {
			t := &p.scene.Things[i]
			if !e.of(t) {
				continue
			}
			at, room, visible := view.Anchor(p.scene.Things, i)
			if visible {
				seen++
			}
			if out[k].id == "" || visible && (seen == 1 || room > most) {
				out[k].at, most = at, room
			}
			out[k].id, out[k].visible = groupOf(t), seen > 0
		}
	}
	return out
}

// pointed makes a tag for each entry that is about something.
func pointed(p *picture, list []entry, at []anchor) []func() tag {
	var out []func() tag
	for k, e := range list {
		a := at[k]
		if a.id == "" {
			continue
		}
		width := textWidth(e.tag)
		if e.round {
			width += 4
		}
		out = append(out, func() tag {
			return tag{id: a.id, at: p.flat(a.at), visible: a.visible, width: width + 1, up: 3, write: func(g *page, elbow shape.Point, way float64) {
				e.write(g, elbow, way, width)
			}}
		})
	}
	return out
}

// write sets the tag's words, in a balloon where it is a part mark.
func (e *entry) write(g *page, elbow shape.Point, way, width float64) {
	middle := elbow.Add(shape.Point{X: way * (width/2 + 0.5)})
	if e.round {
		middle.X = elbow.X + way*width/2
		low := middle.Sub(shape.Point{X: width / 2, Y: 2.4})
		loop, err := shape.RoundedRect(low, low.Add(shape.Point{X: width, Y: 4.8}), 2.4-1e-6)
		if err == nil {
			path := loopPath(loop)
			path.Pen = thin()
			g.add(path)
		}
	}
	g.words(middle.Sub(shape.Point{Y: textMM / 2}), draw.Middle, 0, e.tag)
}

// isometric sets a picture with its tags and lines under it. More is drawn over the picture.
func isometric(p *picture, o Options, tags []func() tag, more func(*page), lines []string, name, title string) *draw.Drawing {
	const highest = 115.0 // more says no more
	width, height := o.room()
	height = min(height-float64(len(lines))*lineMM-4, highest)
	list := make([]tag, len(tags))
	fill := func() {
		for i := range tags {
			list[i] = tags[i]()
		}
	}
	p.scale = 2
	for range 3 { // which side a tag is on does not change with the scale, but for rounding
		fill()
		columns, _ := tagged(list, p.on())
		p.scale = min((width-columns-4)/p.box.Width(), height/p.box.Height(), 2)
	}
	fill()
	var g page
	p.draw(&g)
	if more != nil {
		more(&g)
	}
	box := p.on()
	setTags(&g, list, box)
	box = box.Union(g.box())
	under(&g, shape.Point{X: box.Min.X, Y: box.Min.Y - 2}, lines)
	return g.finished(name, title, strings.ReplaceAll(strings.Join(lines[1:], "; "), columnMark, "; "))
}

// columnMark parts the two columns of a line of words.
const columnMark = "\t"

// paired sets short lines two by two, down the first column and then the second, where they are short enough.
func paired(lines []string, width float64) []string {
	for _, l := range lines {
		if textWidth(l) > width/2-4 {
			return lines
		}
	}
	half := (len(lines) + 1) / 2
	out := slices.Clone(lines[:half])
	for i, l := range lines[half:] {
		out[i] += columnMark + l
	}
	return out
}

// under sets lines of words under each other, the first as a title.
func under(g *page, at shape.Point, lines []string) {
	second := 0.0
	for _, line := range lines {
		if first, _, two := strings.Cut(line, columnMark); two {
			second = max(second, textWidth(first)+5)
		}
	}
	for i, line := range lines {
		at.Y -= lineMM
		if i == 0 {
			g.add(&draw.Text{At: draw.Point{X: at.X, Y: at.Y}, HeightMM: 3.5, Words: line, Bold: true})
			at.Y -= 1
			continue
		}
		first, more, two := strings.Cut(line, columnMark)
		g.words(at, draw.Left, 0, first)
		if two {
			g.words(shape.Point{X: at.X + second, Y: at.Y}, draw.Left, 0, more)
		}
	}
}
