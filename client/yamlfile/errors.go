package yamlfile

// This file holds the errors of a file.

import (
	"cmp"
	"fmt"
	"slices"
	"strings"
)

// Place is a position in the file; lines and columns count from 1.
type Place struct{ Line, Column int }

// Error is one refused field.
type Error struct {
	File   string
	At     Place  // zero for the file as a whole
	Field  string // path such as brackets[pair-left].parameters.ear_width; empty for the file as a whole
	Found  string
	Accept string
	See    string // command that lists what would be accepted, where the message does not say all; empty: none
}

// Error gives one line: file:line:column: field: found; accept.
func (e *Error) Error() string {
	var b strings.Builder
	b.WriteString(e.File)
	if e.At.Line > 0 {
		fmt.Fprintf(&b, ":%d:%d", e.At.Line, e.At.Column)
	}
	if e.Field != "" {
		b.WriteString(": " + e.Field)
	}
	b.WriteString(": " + e.Found)
	if e.Accept != "" {
		b.WriteString("; " + e.Accept)
	}
	return b.String()
}

// most errors shown of one file: past these one mistake tends to be counted many times.
const most = 40

// Errors are all refused fields of one file, in the order of the file.
type Errors []*Error

// Error gives a line for each, up to a cap.
func (e Errors) Error() string {
	lines := make([]string, 0, len(e))
	for i, one := range e {
		if i == most {
			lines = append(lines, fmt.Sprintf("%s: and %d more", one.File, len(e)-most))
			break
		}
		lines = append(lines, one.Error())
	}
	return strings.Join(lines, "\n")
}

// Sorted puts errors in the order of the file and drops repeats: one parameter may have spoilt several plates.
func (e Errors) Sorted() Errors {
	slices.SortStableFunc(e, func(a, b *Error) int {
		return cmp.Or(cmp.Compare(a.At.Line, b.At.Line), cmp.Compare(a.At.Column, b.At.Column))
	})
	return slices.CompactFunc(e, func(a, b *Error) bool { return *a == *b })
}
