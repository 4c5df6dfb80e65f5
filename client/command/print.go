package command

// This file lays text out for a terminal of 80 columns. Colour never carries a meaning alone.

import (
	"fmt"
	"io"
	"strings"
	"unicode/utf8"

	"lugwright/strength"
)

const columns = 80

// A printer writes to standard output and keeps the first error.
type printer struct {
	w      io.Writer
	colour bool
	before string // stands before every line, and takes of its columns
	err    error
}

func (p *printer) Write(b []byte) (int, error) {
	if p.err != nil {
		return 0, p.err
	}
	n, err := p.w.Write(b)
	p.err = err
	return n, err
}

func (p *printer) line(format string, args ...any) {
	text := fmt.Sprintf(format, args...)
	p.text(text)
}

// text writes one line.
func (p *printer) text(line string) {
	io.WriteString(p, strings.TrimRight(p.before+line, " ")+"\n")
}

// wrapped writes words from the indent on, broken before column 80; first stands in the indent of the first line, or on a line
// of its own when it is too wide.
func (p *printer) wrapped(first string, indent int, words string) {
	if width(first) >= indent && first != "" {
		p.line("%s", first)
		first = ""
	}
	p.flow(pad(first, indent), words)
}

// flow writes words behind a head, later lines below the first word.
func (p *printer) flow(head, words string) {
	margin := width(head)
	line, at := append(make([]byte, 0, 2*columns), head...), margin
	first := true
	for word := range strings.FieldsSeq(words) {
		wide := width(word)
		switch {
		case first:
			first = false
		case at+1+wide > columns-len(p.before):
			p.text(string(line))
			line, at = append(line[:0], strings.Repeat(" ", margin)...), margin
		default:
			line, at = append(line, ' '), at+1
		}
		line, at = append(line, word...), at+wide
	}
	p.text(string(line))
}

// width counts the columns of a text; colours, ESC [ digits m, take none.
func width(s string) int {
	n := utf8.RuneCountInString(s)
	for {
		_, rest, found := strings.Cut(s, "\x1b[")
		if !found {
			return n
		}
		digits := len(rest) - len(strings.TrimLeft(rest, "0123456789;"))
		if strings.HasPrefix(rest[digits:], "m") {
			n -= len("\x1b[m") + digits
		}
		s = rest
	}
}

func pad(s string, to int) string { return s + strings.Repeat(" ", max(0, to-width(s))) }

// table writes rows in columns as wide as their widest cell; what would pass column 80 in the last column is wrapped below itself.
func (p *printer) table(rows [][]string) {
	var wide []int
	for _, row := range rows {
		for i, cell := range row {
			if i == len(wide) {
				wide = append(wide, 0)
			}
			wide[i] = max(wide[i], width(cell))
		}
	}
	for _, row := range rows {
		var head strings.Builder
		for i, cell := range row[:len(row)-1] {
			head.WriteString(pad(cell, wide[i]+2))
		}
		p.flow(head.String(), row[len(row)-1])
	}
}

// ANSI colours of verdicts.
var colours = map[strength.Verdict]string{strength.Pass: "32", strength.Fail: "31;1", strength.Outside: "33;1"}

func (p *printer) verdict(v strength.Verdict) string { return p.paint(v, shout(v)) }

func (p *printer) paint(v strength.Verdict, text string) string {
	if code := colours[v]; p.colour && code != "" {
		return "\x1b[" + code + "m" + text + "\x1b[0m"
	}
	return text
}

// shout makes what must not be missed stand out without colour.
func shout(v strength.Verdict) string {
	if v == strength.Fail || v == strength.Outside {
		return strings.ToUpper(string(v))
	}
	return string(v)
}
