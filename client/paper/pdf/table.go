package pdf

// This file writes tables: columns as wide as what stands in them, the head again on every page.

import (
	"lugwright/client/paper"
)

// pad is between a cell's words and its column's edges, mm.
const pad = 1.2

// grid is a table being written.
type grid struct {
	*document
	t     *paper.Table
	cols  []float64 // widths of the columns
	plain style
	bold  style
}

func (d *document) table(t *paper.Table) {
	g := d.gridOf(t)
	if t.Caption != "" {
		d.need(strong.leading() + 14)
		d.paragraph(strong, t.Caption, d.left, d.room())
		d.y += 0.8
	}
	if len(t.Heads) == 0 {
		return
	}
	g.head()
	for _, r := range t.Rows {
		g.row(&r)
	}
}

// gridOf gives the widest letters with which every word has room in its column; where none have, words are broken.
func (d *document) gridOf(t *paper.Table) *grid {
	g := &grid{document: d, t: t}
	for _, size := range []float64{8, 7.5, 7, 6.5, 6} {
		g.plain, g.bold = style{regular, size}, style{bold, size}
		least, natural := g.widths()
		if sum(least) <= d.room() {
			g.cols = shared(least, natural, d.room())
			return g
		}
	}
	least, _ := g.widths()
	k := d.room() / sum(least)
	for i := range least {
		least[i] *= k
	}
	g.cols = least
	return g
}

// widths are the least of each column, by its longest word, and that in which nothing is broken.
func (g *grid) widths() (least, natural []float64) {
	least, natural = make([]float64, len(g.t.Heads)), make([]float64, len(g.t.Heads))
	measure := func(i int, text string) {
		w := 0.0
		for _, word := range words(text) {
			w = max(w, g.wide(word))
		}
		least[i] = max(least[i], min(w, g.room()/3)+2*pad)
		natural[i] = max(natural[i], least[i], g.wide(plain(text))+2*pad)
	}
	g.use(g.bold)
	for i, h := range g.t.Heads {
		measure(i, h.Text)
	}
	for _, strong := range []bool{true, false} {
		g.use(g.style(strong))
		for _, r := range g.t.Rows {
			for i, c := range r.Cells {
				if r.Strong == strong && i < len(least) {
					measure(i, c)
				}
			}
		}
	}
	return least, natural
}

func (g *grid) style(strong bool) style {
	if strong {
		return g.bold
	}
	return g.plain
}

// shared gives columns what they would like; where there is no room for that, the widest give way, as far as each can. A table whose columns
// all have what they like is no wider than they are.
func shared(least, natural []float64, room float64) []float64 {
	out := append([]float64(nil), natural...)
	low, high := 0.0, room
	for range 60 { // halving finds the width that no column goes over
		limit := (low + high) / 2
		for i := range out {
			out[i] = min(natural[i], max(least[i], limit))
		}
		if sum(out) > room {
			high = limit
		} else {
			low = limit
		}
	}
	return out
}

func sum(list []float64) float64 {
	s := 0.0
	for _, v := range list {
		s += v
	}
	return s
}

func (g *grid) total() float64 { return sum(g.cols) }

// headLines is how many lines of a column's head are repeated on a page, which must have room for rows too.
const headLines = 12

func (g *grid) head() {
	cells := make([]string, len(g.t.Heads))
	for i, h := range g.t.Heads {
		cells[i] = h.Text
	}
	lines, _ := g.cells(cells, g.bold)
	for i := range lines {
		lines[i] = lines[i][:min(len(lines[i]), headLines)]
	}
	tall := float64(tallest(lines))*g.bold.leading() + pad
	g.need(tall + 2*g.plain.leading())
	g.f.SetFillColor(232, 232, 232)
	g.f.Rect(g.left, g.y, g.total(), tall, "F")
	g.write(lines, g.bold, 0, tallest(lines))
	g.y += tall
	g.line(0.3, 0)
}

// row writes a row whole on this page or the next; one that no page has room for is broken.
func (g *grid) row(r *paper.Row) {
	s := g.style(r.Strong)
	lines, tall := g.cells(r.Cells, s)
	if g.y+tall > g.bottom {
		g.page()
		g.head()
	}
	for first := 0; first < tallest(lines) || first == 0; {
		n := max(1, min(tallest(lines)-first, int((g.bottom-g.y-2*pad/2)/s.leading())))
		g.write(lines, s, first, first+n)
		g.y += float64(n)*s.leading() + pad
		if first += n; first < tallest(lines) {
			g.page()
			g.head()
		}
	}
	g.line(0.12, 0.6)
	g.fresh = false
}

// cells breaks each cell's words to its column.
func (g *grid) cells(cells []string, s style) (lines [][]string, tall float64) {
	g.use(s)
	for i, w := range g.cols {
		text := ""
		if i < len(cells) {
			text = cells[i]
		}
		lines = append(lines, g.document.lines(text, w-2*pad+1e-6))
	}
	return lines, float64(tallest(lines))*s.leading() + pad
}

func tallest(lines [][]string) int {
	n := 0
	for _, l := range lines {
		n = max(n, len(l))
	}
	return n
}

// write puts some lines of a row's cells.
func (g *grid) write(lines [][]string, s style, first, end int) {
	g.use(s)
	x := g.left
	for i, cell := range lines {
		for k := first; k < min(end, len(cell)); k++ {
			at := x + pad
			if g.t.Heads[i].Numbers {
				at = x + g.cols[i] - pad - g.wide(cell[k])
			}
			g.put(at, g.y+pad/2+float64(k-first)*s.leading()+s.base(), cell[k])
		}
		x += g.cols[i]
	}
}

func (g *grid) line(pen, grey float64) {
	g.f.SetLineWidth(pen)
	g.grey(grey)
	g.f.Line(g.left, g.y, g.left+g.total(), g.y)
}
