package html

// This file holds the paper as the page has it: sections, and names of places by which a row finds its part on a drawing.

import (
	"bytes"
	"fmt"
	"html/template"
	"slices"
	"strings"
	"unicode/utf8"

	"lugwright/client/draw"
	"lugwright/client/paper"
)

// page is what the template writes.
type page struct {
	*paper.Paper
	Size     string // of the sheet, as CSS has it
	Sections []*section
}

// Headline stands at the top of every printed page.
func (p *page) Headline() string {
	if p.Revision == "" {
		return p.Job
	}
	return p.Job + ", revision " + p.Revision
}

// Origin stands at the foot of every printed page.
func (p *page) Origin() string { return p.Tool + ", " + p.Hash }

// Contents are the sections that have a name, where there are several.
func (p *page) Contents() []*section {
	named := slices.DeleteFunc(slices.Clone(p.Sections), func(s *section) bool { return s.Title == "" })
	if len(named) < 3 {
		return nil
	}
	return named
}

// section is what stands from one heading of level 2 to the next. A row refers to the drawings and headings of its own section first, since two
// brackets may both have a weld w1.
type section struct {
	ID     string
	Title  string
	Blocks []*block
	places map[string]bool // names of groups and headings in it
	given  map[string]bool // those that have a place in the page already
}

// block is one of a paper's blocks; the others are nil.
type block struct {
	Heading     *heading
	Words       *paper.Words
	List        *paper.List
	Facts       *paper.Facts
	Table       *table
	Figure      *figure
	Calculation *paper.Calculation
	Sign        *paper.Sign
	NewPage     bool
}

type heading struct {
	*paper.Heading
	ID string
}

type table struct {
	*paper.Table
	Rows    []row
	Classes []string // of the cells, by column
}

type row struct {
	paper.Row
	Goes string // place in the page that the row is about, empty for none
}

type figure struct {
	*paper.Figure
	SVG template.HTML
}

func pageOf(p *paper.Paper, picture Picture) (*page, error) {
	out := &page{Paper: p, Size: "A4"}
	if p.Letter {
		out.Size = "letter"
	}
	for _, blocks := range split(p.Blocks) {
		s := &section{ID: fmt.Sprintf("s%d", len(out.Sections)), places: places(blocks), given: map[string]bool{}}
		if h, ok := blocks[0].(*paper.Heading); ok && h.Level == 2 {
			s.Title = h.Text
		}
		out.Sections = append(out.Sections, s)
		for _, b := range blocks {
			made, err := s.block(b, picture)
			if err != nil {
				return nil, err
			}
			s.Blocks = append(s.Blocks, made)
		}
	}
	return out, nil
}

// split cuts the blocks before each heading of level 2.
func split(blocks []paper.Block) [][]paper.Block {
	var out [][]paper.Block
	for i, b := range blocks {
		if h, ok := b.(*paper.Heading); i == 0 || ok && h.Level == 2 {
			out = append(out, nil)
		}
		out[len(out)-1] = append(out[len(out)-1], b)
	}
	return out
}

// places are the names to which rows among the blocks can refer.
func places(blocks []paper.Block) map[string]bool {
	out := map[string]bool{}
	for _, b := range blocks {
		switch b := b.(type) {
		case *paper.Heading:
			out[b.ID] = b.ID != ""
		case *paper.Figure:
			groups(b.Drawing.Items, out)
		}
	}
	return out
}

func groups(items []draw.Item, to map[string]bool) {
	for _, item := range items {
		if g, ok := item.(*draw.Group); ok {
			to[g.ID] = true
			groups(g.Items, to)
		}
	}
}

func (s *section) block(b paper.Block, picture Picture) (*block, error) {
	switch b := b.(type) {
	case *paper.Heading:
		return &block{Heading: &heading{b, s.place(b.ID)}}, nil
	case *paper.Words:
		return &block{Words: b}, nil
	case *paper.List:
		return &block{List: b}, nil
	case *paper.Facts:
		return &block{Facts: b}, nil
	case *paper.Table:
		return &block{Table: s.table(b)}, nil
	case *paper.Calculation:
		return &block{Calculation: b}, nil
	case *paper.Sign:
		return &block{Sign: b}, nil
	case *paper.Figure:
		var svg bytes.Buffer
		if err := picture(&svg, b.Drawing); err != nil {
			return nil, err
		}
		return &block{Figure: &figure{b, template.HTML(s.named(svg.String()))}}, nil
	}
	return &block{NewPage: true}, nil
}

// place is the name in the page of a name in the section, the first time; after that, and for no name, it is empty.
func (s *section) place(name string) string {
	if name == "" || s.given[name] {
		return ""
	}
	s.given[name] = true
	return s.ID + "-" + name
}

func (s *section) table(t *paper.Table) *table {
	out := &table{Table: t, Classes: classes(t)}
	for _, r := range t.Rows {
		goes := ""
		if s.places[r.Ref] {
			goes = s.ID + "-" + r.Ref
		}
		out.Rows = append(out.Rows, row{r, goes})
	}
	return out
}

// Columns whose longest cell has at most so many letters are not broken, as long as all of them together have room on a page.
const (
	shortCell = 22
	shortAll  = 70
)

func classes(t *paper.Table) []string {
	out := make([]string, len(t.Heads))
	all := 0
	for i, h := range t.Heads {
		longest := utf8.RuneCountInString(h.Text)
		for _, r := range t.Rows {
			if i < len(r.Cells) {
				longest = max(longest, utf8.RuneCountInString(r.Cells[i]))
			}
		}
		if h.Numbers {
			out[i] = "number"
		}
		if longest <= shortCell && all+longest <= shortAll {
			all += longest
			out[i] = strings.TrimSpace(out[i] + " short")
		}
	}
	return out
}

// named gives the groups of a picture names that are the page's own: what was written as id stands in data-part, and the first of that name in the
// section is a place to go to.
func (s *section) named(svg string) string {
	const begin = `<g id="`
	var b strings.Builder
	for {
		before, after, found := strings.Cut(svg, begin)
		b.WriteString(before)
		if !found {
			return b.String()
		}
		name, rest, _ := strings.Cut(after, `"`)
		b.WriteString("<g ")
		if id := s.place(name); id != "" {
			b.WriteString(`id="` + id + `" `)
		}
		b.WriteString(`data-part="` + name + `"`)
		svg = rest
	}
}
