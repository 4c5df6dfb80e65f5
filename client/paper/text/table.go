package text

// This file lays a table out in 80 columns: cells are wrapped in their column, and a table that still does not fit is written row by row.

import (
	"strings"

	"lugwright/client/paper"
)

const between = 2 // blanks between two columns

// widestWord is how much of a word a column is kept wide for; a longer one may be broken.
const widestWord = 24

func (t *writer) table(tab *paper.Table) {
	if tab.Caption != "" {
		t.flow("", tab.Caption)
	}
	if len(tab.Heads) == 0 {
		return
	}
	wide, fits := columns(tab)
	if !fits {
		t.records(tab)
		return
	}
	heads := make([]string, len(tab.Heads))
	for i, h := range tab.Heads {
		heads[i] = h.Text
	}
	t.row(tab.Heads, wide, heads)
	t.line(rule(wide))
	for _, r := range tab.Rows {
		t.row(tab.Heads, wide, r.Cells)
	}
}

func rule(wide []int) string {
	parts := make([]string, len(wide))
	for i, n := range wide {
		parts[i] = strings.Repeat("-", n)
	}
	return strings.Join(parts, strings.Repeat(" ", between))
}

// columns gives each column its width: as wide as it likes, then the widest narrowed, never under its longest word.
func columns(tab *paper.Table) (wide []int, fits bool) {
	wide = make([]int, len(tab.Heads))
	least := make([]int, len(tab.Heads))
	take := func(i int, cell string) {
		wide[i] = max(wide[i], width(cell))
		for word := range strings.FieldsSeq(cell) {
			least[i] = max(least[i], min(width(word), widestWord))
		}
	}
	for i, h := range tab.Heads {
		take(i, h.Text)
		for _, r := range tab.Rows {
			if i < len(r.Cells) {
				take(i, r.Cells[i])
			}
		}
	}
	total := between * (len(wide) - 1)
	for _, n := range wide {
		total += n
	}
	for ; total > Columns; total-- {
		widest := -1
		for i, n := range wide {
			if n > least[i] && (widest < 0 || n > wide[widest]) {
				widest = i
			}
		}
		if widest < 0 {
			return nil, false
		}
		wide[widest]--
	}
	return wide, true
}

// row writes cells beside each other, each wrapped in its column.
func (t *writer) row(heads []paper.Head, wide []int, cells []string) {
	lines := make([][]string, len(wide))
	high := 1
	for i := range wide {
		cell := ""
		if i < len(cells) {
			cell = cells[i]
		}
		lines[i] = wrap(cell, wide[i])
		high = max(high, len(lines[i]))
	}
	for k := range high {
		parts := make([]string, len(wide))
		for i, n := range wide {
			text := ""
			if k < len(lines[i]) {
				text = lines[i][k]
			}
			if heads[i].Numbers {
				text = strings.Repeat(" ", n-width(text)) + text
			}
			parts[i] = pad(text, n)
		}
		t.line(strings.Join(parts, strings.Repeat(" ", between)))
	}
}

// records writes each row as its cells behind their heads.
func (t *writer) records(tab *paper.Table) {
	for _, r := range tab.Rows {
		var parts []string
		for i, cell := range r.Cells {
			if cell != "" && i < len(tab.Heads) {
				parts = append(parts, strings.TrimSpace(tab.Heads[i].Text+" "+cell))
			}
		}
		if len(parts) > 0 {
			t.flow("- ", strings.Join(parts, "; "))
		}
	}
}
