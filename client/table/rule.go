package table

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

// A Rule says what a value may be.
type Rule struct {
	says        string // one sentence, for editor help
	form        form
	dim         units.Dim
	least, most float64 // of a number
	longest     int     // letters of a text
	letters     string  // pattern that the whole text must match, with its words; empty for any
	inWords     string
	choices     []string
	fields      []Field
	by          string            // the field whose word picks further fields of this mapping
	more        map[string][]pick // by that word
	listedBy    string            // the command that lists the fields of a mapping
	either      []string          // fields of which one at least has to be there
	with        []string          // a field, and those that have to be there when it is
	item        *Rule
	or          *Rule // of a list: a mapping that may stand in its place
}

// A Field is one line of the table.
type Field struct {
	name string
	must bool
	is   *Rule
}

// pick is a field that may be there when another holds some word; its rule is made when it is wanted.
type pick struct {
	name string
	is   func() *Rule
}

// Text is one line of words.
func Text(longest int, says string) *Rule {
	return &Rule{says: says, form: textForm, longest: longest}
}

// Word is a text whose letters follow a pattern, with what that means in words.
func Word(longest int, letters, inWords, says string) *Rule {
	return &Rule{says: says, form: textForm, longest: longest, letters: letters, inWords: inWords}
}

// Choice is one of a few words.
func Choice(says string, choices ...string) *Rule {
	return &Rule{says: says, form: choiceForm, choices: choices}
}

// Whole is a whole number.
func Whole(least, most float64, says string) *Rule {
	return &Rule{says: says, form: wholeForm, least: least, most: most}
}

// Quantity is a number with its unit.
func Quantity(dim units.Dim, least, most float64, says string) *Rule {
	return &Rule{says: says, form: quantityForm, dim: dim, least: least, most: most}
}

// Mapping has known fields.
func Mapping(says string, fields ...Field) *Rule {
	return &Rule{says: says, form: mappingForm, fields: fields, listedBy: "lugwright schema"}
}

// Named has any names, each with a value of one rule.
func Named(says string, item *Rule) *Rule { return &Rule{says: says, form: namedForm, item: item} }

// List has values of one rule.
func List(says string, item *Rule) *Rule { return &Rule{says: says, form: listForm, item: item} }

// Or lets a mapping stand in the place of a list.
func (r *Rule) Or(mapping *Rule) *Rule {
	r.or = mapping
	return r
}

// Thread is a thread size.
func Thread(says string) *Rule { return &Rule{says: says, form: sizeForm} }

// Must is a field that has to be there.
func Must(name string, is *Rule) Field { return Field{name, true, is} }

// May is a field that can be left out.
func May(name string, is *Rule) Field { return Field{name, false, is} }

// Add adds fields to a mapping.
func (r *Rule) Add(fields ...Field) { r.fields = append(r.fields, fields...) }

// ListedBy names the command that lists a mapping's fields.
func (r *Rule) ListedBy(command string) *Rule {
	r.listedBy = command
	return r
}

// Empty says whether a mapping has no fields.
func (r *Rule) Empty() bool { return r.fields == nil }

// Widen lets the number of a known field of a mapping span a further range as well; false when it has no such field.
func (r *Rule) Widen(name string, least, most float64) bool {
	known := find(r.fields, name)
	if known == nil {
		return false
	}
	known.is.least, known.is.most = min(known.is.least, least), max(known.is.most, most)
	return true
}

// Pick gives a mapping one more field that may be there when another field holds the word. All such fields of a mapping hang on the same one, and every word
// that picks at all picks fields of the same names.
// A file picks few of them: is is called for those alone.
func (r *Rule) Pick(by, word, name string, is func() *Rule) {
	if r.more == nil {
		r.by, r.more = by, map[string][]pick{}
	}
	r.more[word] = append(r.more[word], pick{name, is})
}

// Either wants one of several fields of a mapping, or more of them.
func (r *Rule) Either(names ...string) { r.either = names }

// With wants further fields of a mapping where the first one is there.
func (r *Rule) With(name string, also ...string) { r.with = append([]string{name}, also...) }

// accepts says in words what would be accepted; like is the text found, whose system of units the answer follows.
func (r *Rule) accepts(like string) string {
	switch r.form {
	case choiceForm:
		return "one of " + strings.Join(r.choices, ", ") + Nearest(like, r.choices)
	case sizeForm:
		return "a thread size such as M12 or 1/2-13"
	case wholeForm:
		return fmt.Sprintf("a whole number from %g to %g", r.least, r.most)
	case quantityForm:
		return r.span(like)
	case mappingForm:
		return r.wanted()
	case namedForm:
		return "names are needed, each with its own fields: " + strings.Join(r.item.names(), ", ")
	case listForm:
		if r.or != nil {
			return "a list is needed, [first, second], or fields: " + strings.Join(r.or.names(), ", ")
		}
		return "a list is needed, each item behind a dash"
	}
	if r.inWords != "" {
		return r.inWords
	}
	return fmt.Sprintf("words on one line, at most %d letters", r.longest)
}

// wanted says which fields a mapping has to have, or may have where it needs none.
func (r *Rule) wanted() string {
	var must []string
	for _, f := range r.fields {
		if f.must {
			must = append(must, f.name)
		}
	}
	if r.either != nil {
		must = append(must, strings.Join(r.either, " or "))
	}
	if must == nil {
		return "fields are accepted, each a name, a colon and a value: " + r.known()
	}
	return "fields are needed: " + strings.Join(must, ", ")
}

// known lists the fields of a mapping, or says what lists them where the list would hide the message.
func (r *Rule) known() string {
	if len(r.fields) > 20 {
		return fmt.Sprintf("%d, which `%s` lists", len(r.fields), r.listedBy)
	}
	return strings.Join(r.names(), ", ")
}

func (r *Rule) span(like string) string {
	system := units.Metric
	if strings.ContainsAny(like, `"'`) || strings.Contains(like, "in") || strings.Contains(like, "ft") || strings.Contains(like, "lb") || strings.Contains(like, "gal") {
		system = units.Inch
	}
	return units.Format(r.least, r.dim, system) + " to " + units.Format(r.most, r.dim, system) + " is accepted"
}

func (r *Rule) names() []string {
	out := make([]string, len(r.fields))
	for i, f := range r.fields {
		out[i] = f.name
	}
	return out
}

// Nearest is the hint at the known name that looks most like a mistyped one.
func Nearest(name string, known []string) string {
	if name == "" || len(name) > 60 {
		return ""
	}
	return part.Nearest(name, known)
}
