package command

// This file lays out tables of numbers.

import "strings"

// longestLabel is the widest name that stands beside its numbers; a longer one has a line of its own above them.
const longestLabel = 26

// grid writes rows whose first columns are words, left aligned, and whose others are numbers, right aligned. What would pass column 80 goes into further
// blocks under the same words. The first row is the head.
func (p *printer) grid(words int, rows [][]string) {
	if len(rows) == 0 {
		return
	}
	wide := make([]int, len(rows[0]))
	for _, row := range rows {
		for i, cell := range row {
			if i != 0 || width(cell) <= longestLabel {
				wide[i] = max(wide[i], width(cell))
			}
		}
	}
	head := 2
	for _, w := range wide[:words] {
		head += w + 2
	}
	for from := words; from < len(wide); {
		to, used := from, head
		for to < len(wide) && (to == from || used+wide[to]+2 <= columns+2) {
			used += wide[to] + 2
			to++
		}
		if from > words {
			p.line("")
		}
		for _, row := range rows {
			line := &strings.Builder{}
			line.WriteString("  ")
			for i, cell := range row[:words] {
				if i == 0 && width(cell) > longestLabel {
					p.wrapped("", 2, cell)
					cell = ""
				}
				line.WriteString(pad(cell, wide[i]+2))
			}
			for i := from; i < to; i++ {
				if i > from {
					line.WriteString("  ")
				}
				line.WriteString(strings.Repeat(" ", wide[i]-width(row[i])) + row[i])
			}
			p.line("%s", line)
		}
		from = to
	}
}

// chapter begins a part of a long answer.
func (p *printer) chapter(title string) {
	p.line("")
	p.line("%s", title)
}

// indented is a table two columns in.
func (p *printer) indented(rows [][]string) {
	out := make([][]string, len(rows))
	for i, row := range rows {
		out[i] = append([]string{"  " + row[0]}, row[1:]...)
	}
	p.table(out)
}
