// Package casefile reads case files: published worked examples as YAML, documented in docs/case-files.md. It never evaluates
// anything.
package casefile

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"github.com/goccy/go-yaml/ast"

	"lugwright/client/yamlfile"
	"lugwright/part"
	"lugwright/strength"
	"lugwright/strength/handbook"
	"lugwright/units"
)

// File is a case file as read.
type File struct {
	Name    string
	Example handbook.Example
	places  map[string]yamlfile.Place // of fields, by path such as runs[0].givens.d
}

const instead = "write a case file as docs/case-files.md shows"

// Read reads a case file; name is for messages. The error is a yamlfile.Errors. Numbers stay as printed, digit for digit.
func Read(name string, src []byte) (*File, error) {
	root, err := yamlfile.Tree(name, src, instead)
	if err != nil {
		return nil, err
	}
	f := &File{Name: name, places: map[string]yamlfile.Place{}}
	r := reader{f: f}
	r.mapping("", root, f.top(&r))
	if r.errs != nil {
		return nil, r.errs.Sorted()
	}
	return f, nil
}

// Located gives the field errors inside err their places in the file; another error is passed through.
func (f *File) Located(err error) error {
	fields := part.Fields(err)
	if fields == nil {
		return err
	}
	out := make(yamlfile.Errors, len(fields))
	for i, e := range fields {
		out[i] = &yamlfile.Error{File: f.Name, At: f.place(e.Field), Field: e.Field, Found: e.Found, Accept: e.Accept}
	}
	return out
}

// Strangers are the shared givens that no run's limit state knows, as refused fields with their places; nil where there are none. Each run names its own.
func (f *File) Strangers(limits []strength.Info) error {
	var known []string
	for _, r := range f.Example.Runs {
		at := slices.IndexFunc(limits, func(l strength.Info) bool { return l.ID == r.Limit })
		if at < 0 {
			return nil // the limit state is what has to be mended first
		}
		for _, g := range limits[at].Givens {
			known = append(known, g.Symbol)
		}
	}
	slices.Sort(known)
	known = slices.Compact(known)
	var bad part.FieldErrors
	for _, name := range slices.Sorted(maps.Keys(f.Example.Givens)) {
		if !slices.Contains(known, name) {
			bad = append(bad, &part.FieldError{Field: "givens." + name, Found: "no run has such a given", Accept: "one of " + strings.Join(known, ", ") + part.Nearest(name, known)})
		}
	}
	if bad == nil {
		return nil
	}
	return f.Located(bad)
}

// Place is where a run begins.
func (f *File) Place(run int) yamlfile.Place { return f.place(fmt.Sprintf("runs[%d]", run)) }

// place is that of the field or of the nearest one around it.
func (f *File) place(path string) yamlfile.Place {
	for path != "" {
		if at, ok := f.places[path]; ok {
			return at
		}
		path = path[:max(strings.LastIndexAny(path, ".[:"), 0)]
	}
	return yamlfile.Place{}
}

// A taker takes over the value of one field.
type taker func(path string, n ast.Node)

// fields are the known fields of a mapping, in the order in which a message lists them.
type fields struct {
	names []string
	take  map[string]taker
}

func (f *fields) add(name string, t taker) *fields {
	if f.take == nil {
		f.take = map[string]taker{}
	}
	f.names = append(f.names, name)
	f.take[name] = t
	return f
}

func (f *File) top(r *reader) *fields {
	e := &f.Example
	return new(fields).
		add("source", r.text(&e.Source)).add("provenance", r.text(&e.Provenance)).add("basis", r.text(&e.Basis)).add("note", r.text(&e.Note)).
		add("tolerance", r.tolerance(&e.Tolerance)).add("why", r.text(&e.Why)).
		add("factor_set", r.text(&e.FactorSet)).add("factors", r.texts(&e.Factors)).
		add("givens", r.values(&e.Givens)).
		add("runs", func(path string, n ast.Node) {
			r.list(path, n, func(path string, n ast.Node) {
				var run handbook.Run
				r.mapping(path, n, runFields(r, &run))
				e.Runs = append(e.Runs, run)
			})
		})
}

func runFields(r *reader, run *handbook.Run) *fields {
	return new(fields).
		add("limit", r.text(&run.Limit)).
		add("method", r.text((*string)(&run.Method))).
		add("factor_set", r.text(&run.FactorSet)).add("factors", r.texts(&run.Factors)).
		add("givens", r.values(&run.Givens)).add("expect", r.expected(&run.Expect)).
		add("widened", func(path string, n ast.Node) {
			run.Widened = map[string]handbook.Widening{}
			r.named(path, n, func(name, path string, n ast.Node) {
				var w handbook.Widening
				r.mapping(path, n, new(fields).add("tolerance", r.tolerance(&w.Tolerance)).add("why", r.text(&w.Why)))
				run.Widened[name] = w
			})
		})
}

type reader struct {
	f    *File
	errs yamlfile.Errors
}

func (r *reader) refuse(n ast.Node, path, found, accept string) {
	r.refuseAt(yamlfile.Start(n), path, found, accept)
}

func (r *reader) refuseAt(at yamlfile.Place, path, found, accept string) {
	r.errs = append(r.errs, &yamlfile.Error{File: r.f.Name, At: at, Field: path, Found: found, Accept: accept})
}

// named walks a mapping whose keys are the author's own.
func (r *reader) named(path string, n ast.Node, take func(name, path string, n ast.Node)) {
	m, ok := n.(ast.MapNode)
	if !ok {
		r.refuse(n, path, yamlfile.Describe(n), "names with values, such as d: 20 mm")
		return
	}
	var seen []string
	for it := m.MapRange(); it.Next(); {
		name, ok := yamlfile.Scalar(it.Key())
		inside := strings.TrimPrefix(path+"."+name, ".")
		switch {
		case !ok || name == "" || len(name) > 80:
			r.refuse(it.Key(), path, "a key that is not a short word", "write a word, a colon and a value")
		case slices.Contains(seen, name):
			r.refuse(it.Key(), inside, "given twice", "give it once")
		default:
			r.f.places[inside] = yamlfile.Start(it.Key())
			take(name, inside, it.Value())
		}
		seen = append(seen, name)
	}
}

func (r *reader) mapping(path string, n ast.Node, known *fields) {
	r.named(path, n, func(name, path string, n ast.Node) {
		if take := known.take[name]; take != nil {
			take(path, n)
			return
		}
		r.refuseAt(r.f.places[path], path, "unknown field", "known are "+strings.Join(known.names, ", ")+part.Nearest(name, known.names))
	})
}

func (r *reader) list(path string, n ast.Node, take taker) {
	seq, ok := n.(*ast.SequenceNode)
	if !ok {
		r.refuse(n, path, yamlfile.Describe(n), "a list, each entry behind a dash")
		return
	}
	for i, item := range seq.Values {
		inside := fmt.Sprintf("%s[%d]", path, i)
		r.f.places[inside] = yamlfile.Start(item)
		take(inside, item)
	}
}

func (r *reader) text(to *string) taker {
	return func(path string, n ast.Node) {
		text, ok := yamlfile.Scalar(n)
		if text = strings.TrimSpace(text); !ok || text == "" {
			r.refuse(n, path, yamlfile.Describe(n), "a text or a quantity")
		}
		*to = text
	}
}

func (r *reader) texts(to *map[string]string) taker {
	return func(path string, n ast.Node) {
		*to = map[string]string{}
		r.named(path, n, func(name, path string, n ast.Node) {
			var text string
			r.text(&text)(path, n)
			(*to)[name] = text
		})
	}
}

// widest is the largest tolerance that still compares anything.
const widest = 0.1

// tolerance takes a share in per cent: a bare 0.5 might be meant as either.
func (r *reader) tolerance(to *string) taker {
	return func(path string, n ast.Node) {
		before := len(r.errs)
		r.text(to)(path, n)
		if len(r.errs) > before {
			return
		}
		if v, err := units.Parse(*to, units.Ratio); err != nil || !strings.HasSuffix(*to, "%") || !(v > 0 && v <= widest) {
			r.refuse(n, path, yamlfile.Quoted(*to), fmt.Sprintf("a tolerance in per cent up to %g %%, such as 0.5 %%", 100*widest))
		}
	}
}

// expected takes printed results; the verdict among them is one of three words.
func (r *reader) expected(to *map[string]string) taker {
	return func(path string, n ast.Node) {
		r.texts(to)(path, n)
		verdict, ok := (*to)[handbook.Verdict]
		words := []string{string(strength.Pass), string(strength.Fail), string(strength.Outside)}
		if ok && verdict != "" && !slices.Contains(words, verdict) {
			at := path + "." + handbook.Verdict
			r.refuseAt(r.f.places[at], at, yamlfile.Quoted(verdict), "one of "+strings.Join(words, ", "))
		}
	}
}

// values takes one text for each given, or a list of them.
func (r *reader) values(to *map[string]handbook.Values) taker {
	return func(path string, n ast.Node) {
		*to = map[string]handbook.Values{}
		r.named(path, n, func(name, path string, n ast.Node) {
			var v handbook.Values
			one := func(path string, n ast.Node) {
				var text string
				r.text(&text)(path, n)
				v = append(v, text)
			}
			if _, ok := n.(*ast.SequenceNode); ok {
				r.list(path, n, one)
			} else {
				one(path, n)
			}
			(*to)[name] = v
		})
	}
}
