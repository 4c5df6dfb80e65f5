package html

// This file holds the paper as the page has it: sections, and names of places by which a row finds its part on a drawing.

import (
	"cmp"
	"fmt"
	"html/template"
	"slices"
	"strings"
	"unicode/utf8"

	"lugwright/client/draw"
	"lugwright/client/draw/svg"
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
	places map[string]string // where in the page the groups and headings are, by their names
	given  map[string]bool   // names that a heading has had
	drawn  int               // figures so far
	// anywhere are the places of the whole page, for names that the section has none of.
	anywhere map[string]string
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
	Rows []row
}

type row struct {
	paper.Row
	Goes  string // place in the page that the row is about, empty for none
	Cells []cell
}

type cell struct {
	Text  string
	Class string
	Goes  string // of the first, where its row is about a place
}

type figure struct {
	*paper.Figure
	SVG template.HTML
}

func pageOf(p *paper.Paper) (*page, error) {
	out := &page{Paper: p, Size: "A4"}
	if p.Letter {
		out.Size = "letter"
	}
	all := split(p.Blocks)
	anywhere := map[string]string{}
	for i, blocks := range all {
		s := &section{ID: fmt.Sprintf("s%d", i), places: map[string]string{}, given: map[string]bool{}, anywhere: anywhere}
		s.find(blocks)
		out.Sections = append(out.Sections, s)
	}
	for i, blocks := range all {
		s := out.Sections[i]
		if h, ok := blocks[0].(*paper.Heading); ok && h.Level == 2 {
			s.Title = h.Text
		}
		for _, b := range blocks {
			made, err := s.block(b)
			if err != nil {
				return nil, err
			}
			s.Blocks = append(s.Blocks, made)
		}
	}
	return out, nil
}

// size is about how many bytes the page takes.
func (p *page) size() int {
	const least = 100_000
	n := least
	for _, s := range p.Sections {
		for _, b := range s.Blocks {
			if b.Figure != nil {
				n += len(b.Figure.SVG)
			}
		}
	}
	return n
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

// find notes the place of each name to which rows of the section can refer: the first drawing that has it, or the heading.
func (s *section) find(blocks []paper.Block) {
	n := 0
	for _, b := range blocks {
		switch b := b.(type) {
		case *paper.Heading:
			s.note(b.ID, s.ID+"-"+b.ID)
		case *paper.Figure:
			n++
			s.groups(b.Drawing.Items, s.prefix(n))
		}
	}
}

// prefix stands before the names in the nth drawing of the section.
func (s *section) prefix(n int) string { return fmt.Sprintf("%s-%d-", s.ID, n) }

func (s *section) groups(items []draw.Item, prefix string) {
	for _, item := range items {
		if g, ok := item.(*draw.Group); ok {
			s.note(g.ID, prefix+g.ID)
			s.groups(g.Items, prefix)
		}
	}
}

func (s *section) note(name, place string) {
	if name == "" {
		return
	}
	for _, to := range []map[string]string{s.places, s.anywhere} {
		if to[name] == "" {
			to[name] = place
		}
	}
}

func (s *section) block(b paper.Block) (*block, error) {
	switch b := b.(type) {
	case *paper.Heading:
		return &block{Heading: &heading{b, s.first(b.ID)}}, nil
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
		var text strings.Builder
		s.drawn++
		if err := svg.WriteInto(&text, b.Drawing, s.prefix(s.drawn)); err != nil {
			return nil, err
		}
		return &block{Figure: &figure{b, template.HTML(text.String())}}, nil
	}
	return &block{NewPage: true}, nil
}

// first is the place of a heading's name, where this is the first that has it.
func (s *section) first(name string) string {
	place := s.ID + "-" + name
	if name == "" || s.places[name] != place || s.given[name] {
		return ""
	}
	s.given[name] = true
	return place
}

func (s *section) table(t *paper.Table) *table {
	out, classes := &table{Table: t}, classes(t)
	for _, r := range t.Rows {
		one := row{Row: r, Goes: cmp.Or(s.places[r.Ref], s.anywhere[r.Ref]), Cells: make([]cell, len(r.Cells))}
		for i, text := range r.Cells {
			one.Cells[i] = cell{Text: text, Class: classes[i]}
		}
		if len(one.Cells) > 0 {
			one.Cells[0].Goes = one.Goes
		}
		out.Rows = append(out.Rows, one)
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
