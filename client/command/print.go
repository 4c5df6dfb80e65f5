package command

// This file lays text out for a terminal of 80 columns. Colour never carries a meaning alone.

import (
	"fmt"
	"io"
	"regexp"
	"strings"
	"unicode/utf8"

	"lugwright/strength"
)

const columns = 80

// A printer writes to standard output and keeps the first error.
type printer struct {
	w      io.Writer
	colour bool
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
	fmt.Fprintln(p, strings.TrimRight(text, " "))
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
func (p *printer) flow(line, words string) {
	margin := strings.Repeat(" ", width(line))
	for i, word := range strings.Fields(words) {
		switch {
		case i == 0:
			line += word
		case width(line)+1+width(word) > columns:
			p.line("%s", line)
			line = margin + word
		default:
			line += " " + word
		}
	}
	p.line("%s", line)
}

// width counts the columns of a text; colours take none.
func width(s string) int { return utf8.RuneCountInString(escapes.ReplaceAllString(s, "")) }

var escapes = regexp.MustCompile("\x1b\\[[0-9;]*m")

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
