// Package pdf writes a paper as PDF, with its fonts in it. It never decides what a paper says, and knows no bracket.
//
//	pdf.go      Write, pages, their heads and feet
//	text.go     fonts, widths, lines broken to a width
//	blocks.go   the blocks one by one, and what stays together on a page
//	table.go    tables
//	drawing.go  drawings, to scale
package pdf

import (
	"io"
	"time"

	"github.com/go-pdf/fpdf"

	"lugwright/client/paper"
)

// Write writes a paper. The same paper gives the same bytes. A full-scale figure that has no room on a page is an error.
func Write(w io.Writer, p *paper.Paper) error {
	d, err := laidOut(p, nil)
	if err != nil {
		return err
	}
	if len(d.sparse) > 0 {
		if again, err := laidOut(p, d.sparse); err == nil && again.f.PageNo() == d.f.PageNo() {
			d = again
		}
	}
	return d.f.Output(w)
}

// laidOut is a paper on its pages, some of which keep room free at their foot.
func laidOut(p *paper.Paper, free map[int]float64) (*document, error) {
	d := begin(p)
	d.free = free
	d.page()
	d.title()
	for i := range p.Blocks {
		d.keepTogether(p.Blocks[i:])
		if err := d.block(p.Blocks[i]); err != nil {
			return nil, err
		}
	}
	d.ended()
	return d, nil
}

// enoughMM is how much stands at least on the last page of a paper: less is easily lost, as a list of cautions alone would be.
const enoughMM = 60

// ended looks at the last page of a paper, or of what comes before a page that begins by force: where little stands on it the page before is to leave it more.
func (d *document) ended() {
	n := d.f.PageNo()
	if has := d.y - d.top; n > d.first && has < enoughMM {
		d.sparse[n-1] = d.over + enoughMM - has
	}
	d.first = n + 1
}

// document is a paper being written. Lengths are mm, y downwards from the top of the page.
type document struct {
	f                   *fpdf.Fpdf
	p                   *paper.Paper
	width, height       float64         // of a page
	left, right, bottom float64         // edges of the room for blocks
	y                   float64         // where the next block begins
	top                 float64         // where the page's first block began
	fresh               bool            // nothing stands on the page yet
	free                map[int]float64 // room that pages keep free at their foot
	over                float64         // room that was left on the page before
	sparse              map[int]float64 // what pages were to keep free, so that more stands on the last one after them
	first               int             // page with which what is being written began
	depth               int             // of the last bookmark
	above               float64         // how tall the headings are that stand directly above the next block
	now                 style
	widths              map[rune]float64 // of letters of the font in use, as a part of its size
	all                 map[face]map[rune]float64
}

func begin(p *paper.Paper) *document {
	width, height := p.Sheet()
	f := fpdf.NewCustom(&fpdf.InitType{OrientationStr: "P", UnitStr: "mm", Size: fpdf.SizeType{Wd: width, Ht: height}})
	f.SetCatalogSort(true)
	// A file has dates; these stay the same so that the same paper gives the same bytes.
	f.SetCreationDate(time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC))
	f.SetModificationDate(time.Date(2000, 1, 1, 0, 0, 0, 0, time.UTC))
	f.SetTitle(plain(p.Title+", "+p.Job), true)
	f.SetSubject(plain(p.Revision), true)
	f.SetProducer(plain(p.Tool), true)
	f.SetLang("en")
	f.SetAutoPageBreak(false, 0)
	f.SetMargins(paper.MarginMM, paper.TopMM, paper.MarginMM)
	f.SetCellMargin(0)
	f.AliasNbPages(pages)
	f.SetLineJoinStyle("round")
	return &document{
		f: f, p: p, width: width, height: height, all: map[face]map[rune]float64{}, sparse: map[int]float64{}, first: 1,
		left: paper.MarginMM, right: width - paper.MarginMM,
	}
}

// pages stands for the number of pages until that is known.
const pages = "{pages}"

// room is the width for blocks.
func (d *document) room() float64 { return d.right - d.left }

// page begins a page.
func (d *document) page() {
	d.f.AddPage()
	d.head()
	d.foot()
	d.over = d.bottom - d.y
	d.y, d.fresh = paper.TopMM, true
	if d.p.Warning != "" {
		d.warning()
	}
	d.top, d.bottom = d.y, d.height-paper.BottomMM-d.free[d.f.PageNo()]
}

// turn begins a page where something stands on this one.
func (d *document) turn() {
	if !d.fresh {
		d.page()
	}
}

// need begins a page where less than so much of this one is left. Headings that stand alone on a page are not left there for the sake of room at its foot.
func (d *document) need(mm float64) {
	if d.y+mm > d.bottom && d.above > 0 && d.y < d.top+d.above+1 {
		d.bottom = d.height - paper.BottomMM
	}
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

func (d *document) foot() {
	d.rule(d.height-paper.BottomMM+4, 0.2)
	d.use(head)
	d.put(d.right-d.wide("page 000 of 000"), d.height-paper.BottomMM+8, "page "+number(d.f.PageNo())+" of "+pages)
	d.put(d.left, d.height-paper.BottomMM+8, d.clipped(d.p.Name, d.room()/2))
}

// warning stands in a frame on top of every page.
func (d *document) warning() {
	d.use(warning)
	lines := d.lines(d.p.Warning, d.room()-6)
	lines = lines[:min(len(lines), 3)] // a page has room for more than its warning
	tall := float64(len(lines))*warning.leading() + 2.5
	d.f.SetLineWidth(0.5)
	d.grey(0)
	d.f.Rect(d.left, d.y, d.room(), tall, "D")
	y := d.y + 1.2
	for _, l := range lines {
		d.put(d.left+3, y+warning.base(), l)
		y += warning.leading()
	}
	d.y += tall + 2.5
}

func (d *document) rule(y, pen float64) {
	d.f.SetLineWidth(pen)
	d.grey(0)
	d.f.Line(d.left, y, d.right, y)
}

// grey is that of lines drawn from now on.
func (d *document) grey(g float64) {
	v := shade(g)
	d.f.SetDrawColor(v, v, v)
}

func shade(g float64) int { return int(min(max(g, 0), 1)*255 + 0.5) }
