// Package paper holds a paper as headings, words, tables and drawings, each said once for every form it is written in. It knows no bracket and
// no file format.
package paper

import "lugwright/client/draw"

// Paper is one paper of the pack.
type Paper struct {
	Name     string // of its file, without an ending: "torque-card"
	Title    string
	Job      string // title of the job
	Revision string
	Hash     string // SHA-256 of the job's canonical form and the tool's version
	Tool     string // name and version
	Warning  string // first line of every page; empty for none
	Letter   bool   // on paper of US letter size, else on A4
	Blocks   []Block
}

// Sheet is the size of a page, mm, upright.
func (p *Paper) Sheet() (width, height float64) {
	if p.Letter {
		return 215.9, 279.4
	}
	return 210, 297
}

// What a page keeps free of blocks at its edges, mm: at the top and the bottom its head and its foot stand in it.
const (
	MarginMM = 15
	TopMM    = 24
	BottomMM = 16
)

// Room is the greatest size of a figure on a page, mm, with its caption of one line and no heading above it.
func (p *Paper) Room() (width, height float64) {
	const warning, caption = 10, 8
	width, height = p.Sheet()
	return width - 2*MarginMM, height - TopMM - BottomMM - warning - caption
}

// Block is a *Heading, *Words, *List, *Facts, *Table, *Figure, *Calculation, *Sign or *NewPage.
type Block interface{ block() }

// Heading begins a section.
type Heading struct {
	Level int // 2 to 4; the title is level 1
	Text  string
	ID    string // by which a Ref finds it; empty: nobody refers to it
}

// Words are one paragraph.
type Words struct {
	Text   string
	Strong bool
}

// List is items of one line or few.
type List struct {
	Items []string
	Kind  ListKind
}

// ListKind says what stands before each item.
type ListKind int

// The kinds of lists.
const (
	Bullets ListKind = iota
	Steps            // numbered
	Ticks            // a box to tick
)

// Facts are names with what they are.
type Facts struct{ Items []Fact }

// Fact is one of them.
type Fact struct{ Name, Value string }

// Table is rows under heads.
type Table struct {
	Caption string
	Heads   []Head
	Rows    []Row
	// Sortable: where the form can, the reader may sort and filter the rows.
	Sortable bool
}

// Head is the head of a column.
type Head struct {
	Text    string
	Numbers bool // aligned to the right, and sorted as numbers
}

// Row is one row, with one cell for each head.
type Row struct {
	Cells []string
	// Ref is the ID of the drawing's group or of the heading that the row is about; empty for none.
	Ref    string
	Strong bool
}

// Figure is a drawing among the words.
type Figure struct {
	Drawing *draw.Drawing
	Caption string
	// FullScale: 1 mm of the drawing is 1 mm on paper; else it may be made smaller to fit.
	FullScale bool
}

// Calculation is lines of a formula, of its numbers and of what comes out, in a face with letters of one width.
type Calculation struct{ Lines []string }

// Sign is room for names, dates and signatures.
type Sign struct{ Roles []string }

// NewPage begins a page.
type NewPage struct{}

func (*Heading) block()     {}
func (*Words) block()       {}
func (*List) block()        {}
func (*Facts) block()       {}
func (*Table) block()       {}
func (*Figure) block()      {}
func (*Calculation) block() {}
func (*Sign) block()        {}
func (*NewPage) block()     {}
