package dxf

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"strconv"
	"strings"
)

// ErrNotDXF is wrapped by every error of Read.
var ErrNotDXF = errors.New("not a DXF file of ours")

// tag is one group code with its value, and the line it stands on.
type tag struct {
	code  int
	value string
	line  int
}

// group is a run of tags that begins with a code 0 (an entity, a table record) or a code 9 (a header variable).
type group struct {
	kind string
	line int
	tags []tag
}

type section struct {
	name string
	tags []tag
}

// scan splits the file into tags, whose values share one copy of it.
func scan(data []byte) ([]tag, error) {
	rest := string(bytes.TrimRight(data, "\r\n"))
	lines := strings.Count(rest, "\n") + 1
	if lines%2 != 0 {
		return nil, fmt.Errorf("%w: %d lines; need pairs of group code and value", ErrNotDXF, lines)
	}
	tags := make([]tag, lines/2)
	for i := range tags {
		var first, value string
		first, rest, _ = strings.Cut(rest, "\n")
		value, rest, _ = strings.Cut(rest, "\n")
		code, err := strconv.Atoi(strings.TrimSpace(first))
		if err != nil {
			return nil, fmt.Errorf("%w: line %d: %q is no group code", ErrNotDXF, 2*i+1, first)
		}
		tags[i] = tag{code, strings.TrimRight(value, "\r"), 2*i + 2}
	}
	return tags, nil
}

// split gives the comments before the first section, and the sections.
func split(tags []tag) (comments []string, sections []section, err error) {
	i := 0
	for ; i < len(tags) && tags[i].code == 999; i++ {
		comments = append(comments, tags[i].value)
	}
	for i+1 < len(tags) && tags[i].is(0, "SECTION") && tags[i+1].code == 2 {
		first := i + 2
		for i = first; i < len(tags) && !tags[i].is(0, "ENDSEC"); i++ {
		}
		if i == len(tags) {
			return nil, nil, fmt.Errorf("%w: section %s has no end", ErrNotDXF, tags[first-1].value)
		}
		sections = append(sections, section{tags[first-1].value, tags[first:i]})
		i++
	}
	if i != len(tags)-1 || !tags[i].is(0, "EOF") {
		return nil, nil, fmt.Errorf("%w: need sections, then one EOF", ErrNotDXF)
	}
	return comments, sections, nil
}

func (t tag) is(code int, value string) bool { return t.code == code && t.value == value }

// groups cuts tags before each tag of the code; what comes before the first is dropped.
func groups(tags []tag, code int) []group {
	n := 0
	for i := range tags {
		if tags[i].code == code {
			n++
		}
	}
	out := make([]group, 0, n)
	for i, t := range tags {
		if t.code == code {
			out = append(out, group{t.value, t.line, tags[i+1 : i+1]})
		} else if n := len(out); n > 0 {
			out[n-1].tags = out[n-1].tags[:len(out[n-1].tags)+1]
		}
	}
	return out
}

// text gives the first value of a code, "" when there is none.
func (g group) text(code int) string {
	for _, t := range g.tags {
		if t.code == code {
			return t.value
		}
	}
	return ""
}

// number gives the first number of a code.
func (g group) number(code int) (float64, error) {
	for _, t := range g.tags {
		if t.code == code {
			return t.number()
		}
	}
	return 0, fmt.Errorf("%w: line %d: %s has no group %d", ErrNotDXF, g.line, g.kind, code)
}

func (t tag) number() (float64, error) {
	v, err := strconv.ParseFloat(strings.TrimSpace(t.value), 64)
	if err != nil || !(math.Abs(v) <= 1e6) {
		return 0, fmt.Errorf("%w: line %d: %q is no number of at most 1e6", ErrNotDXF, t.line, t.value)
	}
	return v, nil
}
