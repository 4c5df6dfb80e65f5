package sheet

// This file writes headings, items, tables and numbers. Everything that a person typed is escaped here.

import (
	"fmt"
	"math"
	"strings"
	"unicode/utf8"

	"lugwright/part"
	"lugwright/units"
)

// A paper is Markdown being written.
type paper struct{ strings.Builder }

func (p *paper) line(format string, args ...any) { fmt.Fprintf(p, format+"\n", args...) }

func (p *paper) heading(level int, words string) {
	if p.Len() > 0 && level > 1 {
		p.line("")
	}
	p.line("%s %s", strings.Repeat("#", level), prose(words))
	p.line("")
}

func (p *paper) item(name, words string) { p.line("- %s: %s", name, prose(words)) }

// table writes rows, the first being the head, with columns as wide as their widest cell so that the raw text reads well.
func (p *paper) table(rows [][]string) {
	wide := make([]int, len(rows[0]))
	cells := make([][]string, len(rows))
	for i, row := range rows {
		for k, c := range row {
			c = prose(c)
			cells[i] = append(cells[i], c)
			wide[k] = max(wide[k], 3, utf8.RuneCountInString(c))
		}
	}
	for i, row := range cells {
		for k, c := range row {
			p.WriteString("| " + c + strings.Repeat(" ", wide[k]-utf8.RuneCountInString(c)+1))
		}
		p.line("|")
		if i == 0 {
			for _, w := range wide {
				p.WriteString("|" + strings.Repeat("-", w+2))
			}
			p.line("|")
		}
	}
}

var escapes = strings.NewReplacer(`\`, `\\`, "|", `\|`, "*", `\*`, "`", "\\`", "<", `\<`, "[", `\[`)

// prose is text on one line without a meaning for Markdown.
func prose(s string) string { return escapes.Replace(oneLine(s)) }

func oneLine(s string) string { return strings.Join(strings.Fields(s), " ") }

// significant is how many figures a line of a calculation keeps: enough to follow it with a pocket calculator.
const significant = 6

// figures writes a number of a calculation in plain decimals without trailing zeros.
func figures(v float64) string {
	if v == 0 || math.IsNaN(v) || math.IsInf(v, 0) {
		return units.FormatPlain(v, 0)
	}
	decimals := significant - 1 - int(math.Floor(math.Log10(math.Abs(v))))
	text := units.FormatPlain(v, decimals)
	if strings.Contains(text, ".") {
		text = strings.TrimRight(strings.TrimRight(text, "0"), ".")
	}
	return text
}

// show writes a value given in a unit, in the job's units. A unit that the tables do not know stays as it is.
func (s *sheet) show(v float64, unit string) string {
	factor, dim, err := units.Factor(unit)
	if err != nil {
		return withUnit(figures(v), unit)
	}
	return units.Format(v*factor, dim, s.job.Units)
}

func withUnit(number, unit string) string {
	if unit == "" || unit == "1" {
		return number
	}
	return number + " " + strings.ReplaceAll(oneLine(unit), "*", "·")
}

func (s *sheet) length(mm float64) string { return units.Format(mm, units.Length, s.job.Units) }

// components writes the three parts of a force or a moment.
func (s *sheet) components(v part.Vec, d units.Dim) []string {
	return []string{
		units.Format(v.X, d, s.job.Units), units.Format(v.Y, d, s.job.Units), units.Format(v.Z, d, s.job.Units),
	}
}
