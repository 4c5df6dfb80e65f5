package sheet

// This file adds blocks, and writes numbers and words.

import (
	"math"
	"strings"

	"lugwright/client/paper"
	"lugwright/part"
	"lugwright/units"
)

func (s *sheet) add(b paper.Block) { s.blocks = append(s.blocks, b) }

func (s *sheet) heading(level int, words, id string) {
	s.add(&paper.Heading{Level: level, Text: oneLine(words), ID: id})
}

func (s *sheet) words(text string) { s.add(&paper.Words{Text: oneLine(text)}) }

func (s *sheet) facts(list []paper.Fact) { s.add(&paper.Facts{Items: list}) }

// heads of columns; a '#' begins one of numbers.
func heads(words ...string) []paper.Head {
	out := make([]paper.Head, len(words))
	for i, w := range words {
		text, numbers := strings.CutPrefix(w, "#")
		out[i] = paper.Head{Text: text, Numbers: numbers}
	}
	return out
}

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
