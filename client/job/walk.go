package job

// This file holds a YAML tree against the field table. It gives values with their places, and all errors in one go.

import (
	"errors"
	"fmt"
	"regexp"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/goccy/go-yaml/ast"

	"lugwright/part"
	"lugwright/units"
)

// A value is a checked piece of the tree. A field that was left out or refused is nil, and the methods of a nil value give zero.
type value struct {
	at     Place
	text   string
	number float64
	fields map[string]*value
	order  []string // keys as written
	items  []*value
}

func (v *value) field(name string) *value {
	if v == nil {
		return nil
	}
	return v.fields[name]
}

func (v *value) words() string {
	if v == nil {
		return ""
	}
	return v.text
}

func (v *value) num() float64 {
	if v == nil {
		return 0
	}
	return v.number
}

func (v *value) list() []*value {
	if v == nil {
		return nil
	}
	return v.items
}

func (v *value) keys() []string {
	if v == nil {
		return nil
	}
	return v.order
}

type walker struct {
	file   string
	errs   Errors
	places map[string]Place // of values, by path
	keys   map[string]Place // of their keys
}

func (w *walker) refuse(at Place, path, found, accept string) {
	w.errs = append(w.errs, &Error{File: w.file, At: at, Field: path, Found: found, Accept: accept})
}

// walk checks one value; nil means that it was refused.
func (w *walker) walk(path string, n ast.Node, r *rule) *value {
	w.places[path] = start(n)
	switch r.form {
	case mappingForm, namedForm:
		return w.mapping(path, n, r)
	case listForm:
		return w.list(path, n, r)
	}
	return w.scalar(path, n, r)
}

func (w *walker) list(path string, n ast.Node, r *rule) *value {
	seq, ok := n.(*ast.SequenceNode)
	if !ok || len(seq.Values) == 0 {
		w.refuse(start(n), path, describe(n), r.accepts(""))
		return nil
	}
	v := &value{at: start(n)}
	for i, item := range seq.Values {
		v.items = append(v.items, w.walk(fmt.Sprintf("%s[%s]", path, label(item, i)), item, r.item))
	}
	return v
}

// label names a list item in a path: by its name where it has one, else by its number from 0.
func label(item ast.Node, i int) string {
	if name := peek(item, "name"); name != "" && len(name) <= 40 {
		return name
	}
	return strconv.Itoa(i)
}

// peek reads a scalar field of a mapping before the mapping is checked.
func peek(n ast.Node, name string) string {
	m, ok := n.(ast.MapNode)
	if !ok {
		return ""
	}
	for it := m.MapRange(); it.Next(); {
		if key, _ := scalar(it.Key()); key == name {
			text, _ := scalar(it.Value())
			return text
		}
	}
	return ""
}

func (w *walker) mapping(path string, n ast.Node, r *rule) *value {
	m, ok := n.(ast.MapNode)
	if !ok {
		w.refuse(start(n), path, describe(n), r.accepts(""))
		return nil
	}
	fields := r.fields
	open := false // the word that picks further fields is not known: what it would pick is passed over
	if r.by != "" {
		if more := r.more[peek(n, r.by)]; more != nil {
			fields = append(fields[:len(fields):len(fields)], *more)
		} else {
			open = true
		}
	}
	v := &value{at: start(n), fields: map[string]*value{}}
	for it := m.MapRange(); it.Next(); {
		w.entry(path, it, r, fields, open, v)
	}
	w.missing(path, v, fields)
	if r.form == namedForm && len(v.order) == 0 {
		w.refuse(v.at, path, "nothing in it", r.accepts(""))
	}
	return v
}

func (w *walker) entry(path string, it *ast.MapNodeIter, r *rule, fields []field, open bool, v *value) {
	key, ok := scalar(it.Key())
	at := start(it.Key())
	inside := join(path, key)
	is := r.item
	switch f := find(fields, key); {
	case !ok || key == "" || len(key) > 80:
		w.refuse(at, path, "a key that is not a short word", "write a word, a colon and a value")
		return
	case r.form == namedForm:
	case f != nil:
		is = f.is
	case open && r.picks(key):
		return
	default:
		w.refuse(at, inside, "unknown field", knownFields(fields)+nearest(key, names(fields)))
		return
	}
	if has(v.order, func(s string) bool { return s == key }) {
		w.refuse(at, inside, "given twice", "give it once")
		return
	}
	v.order = append(v.order, key)
	w.keys[inside] = at
	v.fields[key] = w.walk(inside, it.Value(), is)
}

// knownFields lists what is known, unless the list would hide the message.
func knownFields(fields []field) string {
	if len(fields) > 12 {
		return fmt.Sprintf("%d fields are known, see `lugwright schema`", len(fields))
	}
	return "known are " + strings.Join(names(fields), ", ")
}

// picks says whether any further field has the name.
func (r *rule) picks(name string) bool {
	for _, f := range r.more {
		if f.name == name {
			return true
		}
	}
	return false
}

func (w *walker) missing(path string, v *value, fields []field) {
	for _, f := range fields {
		if f.must && !has(v.order, func(s string) bool { return s == f.name }) {
			w.refuse(v.at, join(path, f.name), "missing", accepted(f.is))
		}
	}
}

// accepted says what to write for a field that is not there.
func accepted(r *rule) string {
	if r.form == quantityForm {
		return "write " + units.Format(0, r.dim, units.Metric) + " for none"
	}
	return r.accepts("")
}

func find(fields []field, name string) *field {
	for i := range fields {
		if fields[i].name == name {
			return &fields[i]
		}
	}
	return nil
}

func names(fields []field) []string { return (&rule{fields: fields}).names() }

func join(path, name string) string {
	if path == "" {
		return name
	}
	return path + "." + name
}

func (w *walker) scalar(path string, n ast.Node, r *rule) *value {
	at := start(n)
	raw, ok := scalar(n)
	if !ok || raw == "" {
		w.refuse(at, path, describe(n), r.accepts(""))
		return nil
	}
	v := &value{at: at, text: raw}
	var found, accept string
	switch r.form {
	case quantityForm:
		v.number, found, accept = r.quantity(raw)
	case wholeForm:
		v.number, found, accept = r.whole(raw)
	default:
		found, accept = r.text(raw)
	}
	if found != "" {
		w.refuse(at, path, found, accept)
		return nil
	}
	return v
}

func (r *rule) quantity(raw string) (number float64, found, accept string) {
	v, err := units.Parse(raw, r.dim)
	var wrong *units.Error
	switch {
	case errors.As(err, &wrong):
		return 0, strings.TrimSuffix(wrong.Error(), "; "+wrong.Accept), wrong.Accept
	case v < r.least || v > r.most:
		return 0, quoted(raw), r.span(raw)
	}
	return v, "", ""
}

func (r *rule) whole(raw string) (number float64, found, accept string) {
	v, err := units.Parse(raw, units.Count)
	if err != nil || v < r.least || v > r.most {
		return 0, quoted(raw), r.accepts(raw)
	}
	return v, "", ""
}

func (r *rule) text(raw string) (found, accept string) {
	wrong := strings.ContainsAny(raw, "\n\r\t")
	switch r.form {
	case choiceForm:
		wrong = !has(r.choices, func(s string) bool { return s == raw })
	case sizeForm:
		_, err := part.NominalDiaMM(raw)
		wrong = err != nil
	default:
		wrong = wrong || utf8.RuneCountInString(raw) > r.longest
	}
	if !wrong && r.letters != "" {
		wrong = !regexp.MustCompile("^(?:" + r.letters + ")$").MatchString(raw)
	}
	if !wrong {
		return "", ""
	}
	return quoted(raw), r.accepts(raw)
}
