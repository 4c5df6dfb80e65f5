// Package text writes a paper as plain text of 80 columns, for a terminal and for a printer at the bench. It never decides what a paper says, and what it
// shows is the same without colour.
//
//	text.go   the blocks
//	table.go  tables that fit
package text

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"lugwright/client/paper"
)

// Columns is how wide a line may be.
const Columns = 80

// Write writes one paper.
func Write(w io.Writer, p *paper.Paper) error {
	t := &writer{}
	t.head(p)
	for _, b := range p.Blocks {
		t.block(b)
	}
	_, err := io.WriteString(w, t.String())
	return err
}

type writer struct{ strings.Builder }

func (t *writer) line(s string) { t.WriteString(strings.TrimRight(s, " ") + "\n") }

// gap ends a block.
func (t *writer) gap() { t.line("") }

func (t *writer) head(p *paper.Paper) {
	if p.Warning != "" {
		t.flow("", p.Warning)
		t.gap()
	}
	t.flow("", strings.ToUpper(p.Title))
	job := p.Job
	if p.Revision != "" {
		job += ", revision " + p.Revision
	}
	t.flow("", job)
	t.flow("", p.Tool+", job "+p.Hash[:min(len(p.Hash), 16)])
	t.gap()
}

func (t *writer) block(b paper.Block) {
	switch b := b.(type) {
	case *paper.Heading:
		t.heading(b)
		return
	case *paper.Words:
		t.flow("", b.Text)
	case *paper.List:
		t.list(b)
	case *paper.Facts:
		t.facts(b)
	case *paper.Table:
		t.table(b)
	case *paper.Figure:
		t.flow("", "[picture: "+captionOf(b)+"]")
	case *paper.Calculation:
		for _, l := range b.Lines {
			t.flow("  ", l)
		}
	case *paper.Sign:
		t.sign(b)
	case *paper.NewPage:
	}
	t.gap()
}

func captionOf(f *paper.Figure) string {
	if f.Caption == "" && f.Drawing != nil {
		return f.Drawing.Title
	}
	return f.Caption
}

func (t *writer) heading(h *paper.Heading) {
	t.flow("", h.Text)
	if h.Level <= 2 {
		t.line(strings.Repeat("-", min(width(h.Text), Columns)))
	}
}

func (t *writer) list(l *paper.List) {
	for i, item := range l.Items {
		switch l.Kind {
		case paper.Steps:
			t.flow(fmt.Sprintf("%2d. ", i+1), item)
		case paper.Ticks:
			t.flow("[ ] ", item)
		default:
			t.flow("- ", item)
		}
	}
}

func (t *writer) facts(f *paper.Facts) {
	wide := 0
	for _, x := range f.Items {
		wide = max(wide, width(x.Name))
	}
	wide = min(wide, Columns/2)
	for _, x := range f.Items {
		name := x.Name
		if width(name) > wide {
			t.flow("", name)
			name = ""
		}
		t.flow(pad(name, wide)+"  ", x.Value)
	}
}

func (t *writer) sign(s *paper.Sign) {
	wide := 0
	for _, r := range s.Roles {
		wide = max(wide, width(r))
	}
	for i, r := range s.Roles {
		if i > 0 {
			t.gap()
		}
		t.line(pad(r, wide) + "  " + strings.Repeat("_", max(10, Columns-wide-24)) + "  date " + strings.Repeat("_", 14))
	}
}

// flow writes words behind a head, later lines below the first word.
func (t *writer) flow(head, words string) {
	for i, l := range wrap(words, Columns-width(head)) {
		if i > 0 {
			head = strings.Repeat(" ", width(head))
		}
		t.line(head + l)
	}
}

// wrap breaks words into lines of a width. A word that is wider stands broken; no words are one empty line.
func wrap(words string, wide int) []string {
	wide = max(wide, 1)
	var out []string
	line := ""
	for word := range strings.FieldsSeq(words) {
		if line != "" && width(line)+1+width(word) <= wide {
			line += " " + word
			continue
		}
		if line != "" {
			out = append(out, line)
		}
		r := []rune(word)
		for len(r) > wide {
			out, r = append(out, string(r[:wide])), r[wide:]
		}
		line = string(r)
	}
	return append(out, line)
}

func width(s string) int { return utf8.RuneCountInString(s) }

func pad(s string, to int) string { return s + strings.Repeat(" ", max(0, to-width(s))) }
