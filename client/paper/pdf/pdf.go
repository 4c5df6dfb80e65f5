// Package pdf writes a paper as PDF, with its fonts in it. It never decides what a paper says, and knows no bracket.
//
//	pdf.go      Write, pages, their heads and feet
//	text.go     styles, widths, lines broken to a width
//	blocks.go   the blocks one by one, and what stays together on a page
//	table.go    tables
//	drawing.go  drawings, to scale
//	marks.go    lines, areas and words on a page
//	file.go     pages, fonts and bookmarks in a file
//	fonts.go    the fonts, and letters.go their letters with their widths
package pdf

import (
	"io"

	"lugwright/client/draw"
	"lugwright/client/paper"
)

// Write writes a paper. The same paper gives the same bytes. A full-scale figure that has no room on a page is an error.
func Write(w io.Writer, p *paper.Paper) error {
	d := begin(p)
	d.page()
	d.title()
	for i := range p.Blocks {
		d.keepTogether(p.Blocks[i:])
		if err := d.block(p.Blocks[i]); err != nil {
			return err
		}
	}
	d.finish()
	_, err := d.file().WriteTo(w)
	return err
}

// document is a paper being written. Lengths are mm, y downwards from the top of the page.
type document struct {
	p                   *paper.Paper
	on                  marks    // those of the page being written
	pages               []string // packed contents of the pages before
	pack                *packer
	bookmarks           []bookmark
	used                map[face]bool
	width, height       float64 // of a page
	left, right, bottom float64 // edges of the room for blocks
	y                   float64 // where the next block begins
	fresh               bool    // nothing stands on the page yet
	depth               int     // of the last bookmark
	above               float64 // how tall the headings are that stand directly above the next block
	now                 style
}

func begin(p *paper.Paper) *document {
	width, height := p.Sheet()
	return &document{
		p: p, width: width, height: height, used: map[face]bool{}, pack: newPacker(),
		left: paper.MarginMM, right: width - paper.MarginMM, bottom: height - paper.BottomMM,
	}
}

// room is the width for blocks.
func (d *document) room() float64 { return d.right - d.left }

// page begins a page.
func (d *document) page() {
	d.finish()
	d.on.begin(d.height)
	d.head()
	d.y, d.fresh = paper.TopMM, true
	if d.p.Warning != "" {
		d.warning()
	}
}

// turn begins a page where something stands on this one.
func (d *document) turn() {
	if !d.fresh {
		d.page()
	}
}

// need begins a page where less than so much of this one is left.
func (d *document) need(mm float64) {
	if d.y+mm > d.bottom {
		d.turn()
	}
}

func (d *document) head() {
	job := d.p.Job
	if d.p.Revision != "" {
		job += ", revision " + d.p.Revision
	}
	const y = 11.5
	d.use(head)
	title := d.clipped(d.p.Title, d.room()/2)
	wide := d.wide(title)
	d.put(d.right-wide, y, title)
	d.use(headBold)
	d.put(d.left, y, d.clipped(job, d.room()-wide-4))
	d.use(hash)
	hash := d.clipped("input hash "+d.p.Hash, d.room()*0.7)
	wide = d.wide(hash)
	d.put(d.right-wide, y+4, hash)
	d.use(head)
	d.put(d.left, y+4, d.clipped(d.p.Tool, d.room()-wide-4))
	d.rule(y+6, 0.2)
}

// finish puts the page being written with those before.
func (d *document) finish() {
	if len(d.on.content) > 0 {
		d.pages = append(d.pages, d.pack.packed(d.on.end()))
	}
}

// number is that of the page being written, from 1.
func (d *document) number() int { return len(d.pages) + 1 }

// feet are one for each page, since they say how many there are.
func (d *document) feet() []string {
	var out []string
	for i := range d.pages {
		d.on.begin(d.height)
		d.rule(d.height-paper.BottomMM+4, 0.2)
		d.use(head)
		d.put(d.right-d.wide("page 000 of 000"), d.height-paper.BottomMM+8, "page "+number(i+1)+" of "+number(len(d.pages)))
		d.put(d.left, d.height-paper.BottomMM+8, d.clipped(d.p.Name, d.room()/2))
		out = append(out, d.pack.packed(d.on.end()))
	}
	return out
}

// warning stands in a frame on top of every page.
func (d *document) warning() {
	d.use(warning)
	lines := d.lines(d.p.Warning, d.room()-6)
	lines = lines[:min(len(lines), 3)] // a page has room for more than its warning
	tall := float64(len(lines))*warning.leading() + 2.5
	d.frame(d.left, d.y, d.room(), tall, 0.5)
	y := d.y + 1.2
	for _, l := range lines {
		d.put(d.left+3, y+warning.base(), l)
		y += warning.leading()
	}
	d.y += tall + 2.5
}

func (d *document) rule(y, pen float64) { d.line(d.left, y, d.right, y, draw.Pen{WidthMM: pen}) }

func (d *document) line(x1, y1, x2, y2 float64, pen draw.Pen) {
	d.on.stroke(pen)
	d.on.moveTo(x1, y1)
	d.on.lineTo(x2, y2)
	d.on.op("S")
}

// frame is a rectangle by its upper left corner.
func (d *document) frame(x, y, width, height, pen float64) {
	d.on.stroke(draw.Pen{WidthMM: pen})
	d.on.rect(x, y, width, height)
	d.on.op("S")
}
