package table

// This file holds a YAML tree against the field table. It gives values with their places, and all errors in one go.

import (
	"errors"
	"fmt"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"github.com/goccy/go-yaml/ast"

	"lugwright/client/yamlfile"
	"lugwright/part"
	"lugwright/units"
)

// A Value is a checked piece of the tree. A field that was left out or refused is nil, and the methods of a nil value give zero.
type Value struct {
	at     yamlfile.Place
	text   string
	number float64
	fields map[string]*Value
	order  []string // keys as written
	items  []*Value
}

// Field is a field of a mapping.
func (v *Value) Field(name string) *Value {
	if v == nil {
		return nil
	}
	return v.fields[name]
}

// Words is what was written.
func (v *Value) Words() string {
	if v == nil {
		return ""
	}
	return v.text
}

// Number is a quantity in the units used inside, or a whole number.
func (v *Value) Number() float64 {
	if v == nil {
		return 0
	}
	return v.number
}

// List is the items of a list, nil for each that was refused.
func (v *Value) List() []*Value {
	if v == nil {
		return nil
	}
	return v.items
}

// Keys are the fields of a mapping in the order of the file.
func (v *Value) Keys() []string {
	if v == nil {
		return nil
	}
	return v.order
}

// At is where it stands in the file.
func (v *Value) At() yamlfile.Place { return v.at }

// Reading is a file held against its rule. Fields that were refused are nil in it.
type Reading struct {
	Root   *Value
	Places map[string]yamlfile.Place // of values, by path
	Keys   map[string]yamlfile.Place // of their keys
}

// Read reads a file; its name is for messages, and instead says what to write in place of something that is no such file. The error is a
// yamlfile.Errors that lists everything that is wrong; the reading is nil only when the file is no YAML that can be walked.
func Read(file string, src []byte, instead string, r *Rule) (*Reading, error) {
	root, err := yamlfile.Tree(file, src, instead)
	if err != nil {
		return nil, err
	}
	w := &walker{file: file, Reading: Reading{Places: map[string]yamlfile.Place{}, Keys: map[string]yamlfile.Place{}}}
	w.Root = w.walk("", root, r)
	if w.errs != nil {
		return &w.Reading, w.errs.Sorted()
	}
	return &w.Reading, nil
}

// Parent drops the last part of a path.
func Parent(path string) string {
	return path[:max(0, strings.LastIndexAny(path, ".["))]
}

type walker struct {
	Reading
	file string
	errs yamlfile.Errors
}

func (w *walker) refuse(at yamlfile.Place, path, found, accept string) {
	w.errs = append(w.errs, &yamlfile.Error{File: w.file, At: at, Field: path, Found: found, Accept: accept})
}

// walk checks one value; nil means that it was refused.
func (w *walker) walk(path string, n ast.Node, r *Rule) *Value {
	w.Places[path] = yamlfile.Start(n)
	if _, ok := n.(ast.MapNode); ok && r.or != nil {
		r = r.or
	}
	switch r.form {
	case mappingForm, namedForm:
		return w.mapping(path, n, r)
	case listForm:
		return w.list(path, n, r)
	}
	return w.scalar(path, n, r)
}

func (w *walker) list(path string, n ast.Node, r *Rule) *Value {
	seq, ok := n.(*ast.SequenceNode)
	if !ok || len(seq.Values) == 0 {
		w.refuse(yamlfile.Start(n), path, yamlfile.Describe(n), r.accepts(""))
		return nil
	}
	v := &Value{at: yamlfile.Start(n)}
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
		if key, _ := yamlfile.Scalar(it.Key()); key == name {
			text, _ := yamlfile.Scalar(it.Value())
			return text
		}
	}
	return ""
}

func (w *walker) mapping(path string, n ast.Node, r *Rule) *Value {
	m, ok := n.(ast.MapNode)
	if !ok {
		w.refuse(yamlfile.Start(n), path, yamlfile.Describe(n), r.accepts(""))
		return nil
	}
	fields := r.fields
	open := false // the word that picks further fields is not known: what it would pick is passed over
	if r.by != "" {
		more, ok := r.more[peek(n, r.by)]
		open = !ok
		for _, m := range more {
			fields = append(fields[:len(fields):len(fields)], May(m.name, m.is()))
		}
	}
	v := &Value{at: yamlfile.Start(n), fields: map[string]*Value{}}
	for it := m.MapRange(); it.Next(); {
		w.entry(path, it, r, fields, open, v)
	}
	w.missing(path, v, fields, r.with)
	if r.either != nil && !slices.ContainsFunc(r.either, func(name string) bool { return slices.Contains(v.order, name) }) {
		w.refuse(v.at, join(path, r.either[0]), "missing", strings.Join(r.either, " or ")+" is needed")
	}
	if r.form == namedForm && len(v.order) == 0 {
		w.refuse(v.at, path, "nothing in it", r.accepts(""))
	}
	return v
}

func (w *walker) entry(path string, it *ast.MapNodeIter, r *Rule, fields []Field, open bool, v *Value) {
	key, ok := yamlfile.Scalar(it.Key())
	at := yamlfile.Start(it.Key())
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
		w.refuse(at, inside, "unknown field", "known are "+(&Rule{fields: fields, listedBy: r.listedBy}).known()+Nearest(key, names(fields)))
		return
	}
	if slices.Contains(v.order, key) {
		w.refuse(at, inside, "given twice", "give it once")
		return
	}
	v.order = append(v.order, key)
	w.Keys[inside] = at
	v.fields[key] = w.walk(inside, it.Value(), is)
}

// picks says whether any further field has the name.
func (r *Rule) picks(name string) bool {
	for _, more := range r.more {
		return slices.ContainsFunc(more, func(p pick) bool { return p.name == name })
	}
	return false
}

func (w *walker) missing(path string, v *Value, fields []Field, with []string) {
	for _, f := range fields {
		wanted := f.must || len(with) > 0 && slices.Contains(v.order, with[0]) && slices.Contains(with[1:], f.name)
		if wanted && !slices.Contains(v.order, f.name) {
			w.refuse(v.at, join(path, f.name), "missing", accepted(f.is))
		}
	}
}

// accepted says what to write for a field that is not there.
func accepted(r *Rule) string {
	switch {
	case r.form == quantityForm && r.least <= 0 && r.most >= 0:
		return "write " + units.Format(0, r.dim, units.Metric) + " for none"
	case r.form == textForm && r.inWords == "":
		return strings.ToLower(r.says[:1]) + strings.TrimSuffix(r.says[1:], ".")
	}
	return r.accepts("")
}

func find(fields []Field, name string) *Field {
	for i := range fields {
		if fields[i].name == name {
			return &fields[i]
		}
	}
	return nil
}

func names(fields []Field) []string { return (&Rule{fields: fields}).names() }

func join(path, name string) string {
	if path == "" {
		return name
	}
	return path + "." + name
}

func (w *walker) scalar(path string, n ast.Node, r *Rule) *Value {
	at := yamlfile.Start(n)
	raw, ok := yamlfile.Scalar(n)
	if !ok || raw == "" {
		w.refuse(at, path, yamlfile.Describe(n), r.accepts(""))
		return nil
	}
	v := &Value{at: at, text: raw}
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

func (r *Rule) quantity(raw string) (number float64, found, accept string) {
	v, err := units.Parse(raw, r.dim)
	var wrong *units.Error
	switch {
	case errors.As(err, &wrong):
		return 0, strings.TrimSuffix(wrong.Error(), "; "+wrong.Accept), wrong.Accept
	case v < r.least || v > r.most:
		return 0, yamlfile.Quoted(raw), r.span(raw)
	}
	return v, "", ""
}

func (r *Rule) whole(raw string) (number float64, found, accept string) {
	v, err := units.Parse(raw, units.Count)
	if err != nil || v < r.least || v > r.most {
		return 0, yamlfile.Quoted(raw), r.accepts(raw)
	}
	return v, "", ""
}

func (r *Rule) text(raw string) (found, accept string) {
	wrong := strings.ContainsAny(raw, "\n\r\t")
	switch r.form {
	case choiceForm:
		wrong = !slices.Contains(r.choices, raw)
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
	return yamlfile.Quoted(raw), r.accepts(raw)
}
