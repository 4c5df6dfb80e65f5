package job

// This file says what a line of the field table can say, and what a rule accepts in words.

import (
	"fmt"
	"strings"

	"lugwright/part"
	"lugwright/units"
)

// A form is the shape of a value.
type form int

const (
	textForm     form = iota // one line of words
	sizeForm                 // a thread size
	choiceForm               // one of a few words
	wholeForm                // a whole number
	quantityForm             // a number with its unit
	mappingForm              // known fields
	namedForm                // any names, each with a value of one rule
	listForm                 // values of one rule
)

// A rule says what a value may be.
type rule struct {
	says        string // one sentence, for editor help
	form        form
	dim         units.Dim
	least, most float64 // of a number
	longest     int     // letters of a text
	letters     string  // pattern that the whole text must match, with its words; empty for any
	inWords     string
	choices     []string
	fields      []field
	by          string            // the field whose word picks further fields of this mapping
	more        map[string]*field // by that word
	item        *rule
}

// A field is one line of the table.
type field struct {
	name string
	must bool
	is   *rule
}

func text(longest int, says string) *rule {
	return &rule{says: says, form: textForm, longest: longest}
}

func word(longest int, letters, inWords, says string) *rule {
	return &rule{says: says, form: textForm, longest: longest, letters: letters, inWords: inWords}
}

func choice(says string, choices ...string) *rule {
	return &rule{says: says, form: choiceForm, choices: choices}
}

func whole(least, most float64, says string) *rule {
	return &rule{says: says, form: wholeForm, least: least, most: most}
}

func quantity(dim units.Dim, least, most float64, says string) *rule {
	return &rule{says: says, form: quantityForm, dim: dim, least: least, most: most}
}

func mapping(says string, fields ...field) *rule {
	return &rule{says: says, form: mappingForm, fields: fields}
}

func named(says string, item *rule) *rule { return &rule{says: says, form: namedForm, item: item} }

func list(says string, item *rule) *rule { return &rule{says: says, form: listForm, item: item} }

// accepts says in words what would be accepted; like is the text found, whose system of units the answer follows.
func (r *rule) accepts(like string) string {
	switch r.form {
	case choiceForm:
		return "one of " + strings.Join(r.choices, ", ") + nearest(like, r.choices)
	case sizeForm:
		return "a thread size such as M12 or 1/2-13"
	case wholeForm:
		return fmt.Sprintf("a whole number from %g to %g", r.least, r.most)
	case quantityForm:
		return r.span(like)
	case mappingForm:
		return "fields are needed: " + strings.Join(r.names(), ", ")
	case namedForm:
		return "names are needed, each with its own fields: " + strings.Join(r.item.names(), ", ")
	case listForm:
		return "a list is needed, each item behind a dash"
	}
	if r.inWords != "" {
		return r.inWords
	}
	return fmt.Sprintf("words on one line, at most %d letters", r.longest)
}

func (r *rule) span(like string) string {
	system := units.Metric
	if strings.ContainsAny(like, `"'`) || strings.Contains(like, "in") || strings.Contains(like, "ft") || strings.Contains(like, "lbf") {
		system = units.Inch
	}
	return units.Format(r.least, r.dim, system) + " to " + units.Format(r.most, r.dim, system) + " is accepted"
}

func (r *rule) names() []string {
	out := make([]string, len(r.fields))
	for i, f := range r.fields {
		out[i] = f.name
	}
	return out
}

// nearest is the hint at the known name that looks most like a mistyped one.
func nearest(name string, known []string) string {
	if name == "" || len(name) > 60 {
		return ""
	}
	return part.Nearest(name, known)
}
