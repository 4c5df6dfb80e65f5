package pdf

// This file writes the blocks one by one, and keeps a heading with what it heads.

import (
	"fmt"
	"strings"
	"unicode/utf8"

	"lugwright/client/paper"
)

// gap is between blocks, mm.
const gap = 2.2

func (d *document) title() {
	d.use(title)
	for _, l := range d.lines(d.p.Title, d.room()) {
		d.put(d.left, d.y+title.base(), l)
		d.y += title.leading()
	}
	d.y += gap
	d.fresh = false
}

func (d *document) block(b paper.Block) error {
	switch b := b.(type) {
	case *paper.NewPage:
		d.ended()
		d.turn()
		return nil
	case *paper.Heading:
		d.heading(b)
	case *paper.Words:
		d.words(b)
	case *paper.List:
		d.list(b)
	case *paper.Facts:
		d.facts(b)
	case *paper.Table:
		d.table(b)
	case *paper.Figure:
		if err := d.figure(b); err != nil {
			return err
		}
	case *paper.Calculation:
		d.calculation(b)
	case *paper.Sign:
		d.sign(b)
	}
	if _, ok := b.(*paper.Heading); !ok {
		d.above = 0
	}
	d.y += gap
	return nil
}

// keepTogether turns the page where headings would be left without the first of what they head.
func (d *document) keepTogether(blocks []paper.Block) {
	h, ok := blocks[0].(*paper.Heading)
	if !ok || d.above > 0 { // below another heading it has been seen to
		return
	}
	d.above = d.headingTall(h)
	for _, b := range blocks[1:] {
		next, ok := b.(*paper.Heading)
		if !ok {
			d.need(d.above + d.least(b))
			return
		}
		d.above += d.headingTall(next)
	}
}

// least is how much room a block needs to begin, mm.
func (d *document) least(b paper.Block) float64 {
	switch b := b.(type) {
	case *paper.Figure:
		_, tall := d.figureSize(b)
		return tall
	case *paper.Table:
		return 22
	case *paper.Sign:
		return d.signTall(b)
	case *paper.NewPage:
		return 0
	}
	return 12
}

func headingStyle(level int) style { return headings[min(max(level-2, 0), len(headings)-1)] }

// before is the room above a heading.
func before(level int) float64 { return []float64{4, 3, 1.5}[min(max(level-2, 0), 2)] }

func (d *document) headingTall(h *paper.Heading) float64 {
	s := headingStyle(h.Level)
	d.use(s)
	return before(h.Level) + float64(len(d.lines(h.Text, d.room())))*s.leading() + gap
}

func (d *document) heading(h *paper.Heading) {
	s := headingStyle(h.Level)
	if !d.fresh {
		d.y += before(h.Level)
	}
	d.use(s)
	depth := min(max(h.Level-2, 0), d.depth)
	d.f.Bookmark(plain(h.Text), depth, d.y)
	d.depth = depth + 1
	d.paragraph(s, h.Text, d.left, d.room())
	if h.Level <= 2 {
		d.rule(d.y+0.4, 0.35)
		d.y += 0.8
	}
	d.y -= gap / 2
}

// paragraph writes words in a column, over pages where it must.
func (d *document) paragraph(s style, text string, left, width float64) {
	d.use(s)
	for _, l := range d.lines(text, width) {
		d.need(s.leading())
		d.use(s)
		d.put(left, d.y+s.base(), l)
		d.y += s.leading()
		d.fresh = false
	}
}

func (d *document) words(w *paper.Words) {
	s := body
	if w.Strong {
		s = strong
	}
	d.paragraph(s, w.Text, d.left, d.room())
}

func (d *document) list(l *paper.List) {
	const indent = 6
	for i, item := range l.Items {
		d.need(body.leading())
		y := d.y + body.base()
		switch l.Kind {
		case paper.Ticks:
			d.f.SetLineWidth(0.25)
			d.grey(0)
			d.f.Rect(d.left+0.5, y-2.7, 3, 3, "D")
		case paper.Steps:
			d.use(body)
			d.put(d.left, y, number(i+1)+".")
		default:
			d.use(body)
			d.put(d.left+1.5, y, "•")
		}
		d.paragraph(body, item, d.left+indent, d.room()-indent)
		d.y += 0.6
	}
}

func (d *document) facts(f *paper.Facts) {
	d.use(strong)
	names := 0.0
	for _, i := range f.Items {
		names = max(names, d.wide(plain(i.Name)))
	}
	names = min(names+0.01, d.room()*0.38) // a little over, since sums of widths are rounded
	for _, i := range f.Items {
		d.use(strong)
		name := d.lines(i.Name, names)
		d.use(body)
		value := d.lines(i.Value, d.room()-names-4)
		for k := range max(len(name), len(value)) {
			d.need(body.leading())
			if k < len(name) {
				d.use(strong)
				d.put(d.left, d.y+body.base(), name[k])
			}
			if k < len(value) {
				d.use(body)
				d.put(d.left+names+4, d.y+body.base(), value[k])
			}
			d.y += body.leading()
			d.fresh = false
		}
		d.y += 0.4
	}
}

// calculation has a line at its left. What is too long goes on further in on the next line.
func (d *document) calculation(c *paper.Calculation) {
	const indent, further = 3, 6
	d.use(figures)
	letters := int((d.room() - indent) / d.wide("0"))
	for _, l := range c.Lines {
		for _, piece := range broken(strings.TrimRight(plain(l), " "), letters, further) {
			d.need(figures.leading())
			d.use(figures)
			d.put(d.left+indent, d.y+figures.base(), piece)
			d.f.SetLineWidth(0.6)
			d.grey(0.7)
			d.f.Line(d.left+0.6, d.y, d.left+0.6, d.y+figures.leading())
			d.y += figures.leading()
			d.fresh = false
		}
	}
}

// broken is a line in pieces of so many letters, broken before a space where there is one in the second half; a piece after the first stands
// further in than the line.
func broken(line string, letters, further int) []string {
	margin := strings.Repeat(" ", min(len(line)-len(strings.TrimLeft(line, " "))+further, letters/2))
	var out []string
	for utf8.RuneCountInString(line) > letters {
		runes := []rune(line)
		at := letters
		for k := letters; k > letters/2; k-- {
			if runes[k] == ' ' && strings.TrimSpace(string(runes[:k])) != "" {
				at = k
				break
			}
		}
		out = append(out, string(runes[:at]))
		line = margin + strings.TrimLeft(string(runes[at:]), " ")
	}
	return append(out, line)
}

const signRow = 12.0

func (d *document) signTall(s *paper.Sign) float64 { return 6 + signRow*float64(len(s.Roles)) }

func (d *document) sign(s *paper.Sign) {
	d.need(d.signTall(s))
	columns := []struct {
		head string
		part float64
	}{{"", 0.24}, {"name", 0.28}, {"date", 0.16}, {"signature", 0.32}}
	x := d.left
	d.use(fine)
	for _, c := range columns {
		d.put(x+1, d.y+fine.base(), c.head)
		x += c.part * d.room()
	}
	d.y += 5
	for _, role := range s.Roles {
		d.use(body)
		for i, l := range d.lines(role, columns[0].part*d.room()-2) {
			d.put(d.left, d.y+5+float64(i)*body.leading(), l)
		}
		x := d.left
		d.f.SetLineWidth(0.25)
		d.grey(0)
		for i, c := range columns {
			if i > 0 {
				d.f.Line(x+1, d.y+signRow-3, x+c.part*d.room()-2, d.y+signRow-3)
			}
			x += c.part * d.room()
		}
		d.y += signRow
	}
	d.fresh = false
}

// figure draws a drawing with its caption below.
func (d *document) figure(f *paper.Figure) error {
	if err := sound(f.Drawing); err != nil {
		return fmt.Errorf("paper %s: the drawing %q: %w", d.p.Name, f.Drawing.Title, err)
	}
	scale, tall := d.figureSize(f)
	w, h := f.Drawing.WidthMM*scale, f.Drawing.HeightMM*scale
	if f.FullScale {
		if wide, high := d.p.Room(); w > wide+1e-9 || h > high+1e-9 {
			return fmt.Errorf("paper %s: the drawing %q is %.1f mm x %.1f mm at full scale; a page has room for %.1f mm x %.1f mm",
				d.p.Name, f.Drawing.Title, w, h, wide, high)
		}
	}
	d.need(tall)
	d.drawing(f.Drawing, d.left+(d.room()-w)/2, d.y, scale)
	d.y += h + 1
	d.fresh = false
	if words := caption(f, scale); words != "" {
		d.paragraph(small, words, d.left, d.room())
	}
	return nil
}

// caption says too that a drawing is smaller than it was made, since its words may name a scale.
func caption(f *paper.Figure, scale float64) string {
	if scale > 0.9995 {
		return f.Caption
	}
	return strings.TrimSpace(fmt.Sprintf("%s (Shown at %.0f %% of the drawing's size.)", f.Caption, 100*scale))
}

// figureSize is the scale at which a drawing goes on a page, under the headings above it, and how tall it is with its caption.
func (d *document) figureSize(f *paper.Figure) (scale, tall float64) {
	scale = 1
	wide, high := d.p.Room()
	if !f.FullScale {
		if d.above < high/2 {
			high -= d.above
		}
		scale = min(1, wide/f.Drawing.WidthMM, high/f.Drawing.HeightMM)
	}
	d.use(small)
	words := 1.0
	if text := caption(f, scale); text != "" {
		words += float64(len(d.lines(text, d.room()))) * small.leading()
	}
	return scale, f.Drawing.HeightMM*scale + words
}
