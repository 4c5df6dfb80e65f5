package job

// This file brings errors of the services back to places of the file.

import (
	"fmt"
	"strconv"
	"strings"

	"lugwright/client/table"
	"lugwright/part"
	"lugwright/units"
)

// Locate gives the refused fields inside a service's error, about one bracket, with their places in the file. Any other error
// comes back as it is.
func (j *Job) Locate(b *Bracket, err error) error {
	fields := part.Fields(err)
	if fields == nil {
		return err
	}
	var out Errors
	var ofMount []*Error // loads of a mount are many, and have one place
	for _, f := range fields {
		path, at := j.place(b, f)
		e := &Error{File: j.File, At: at, Field: path, Found: f.Found, Accept: f.Accept, See: see(path, b.Kind)}
		e.Found, e.Accept = units.Words(f.Found, j.Units), units.Words(f.Accept, j.Units)
		if b.Tied() && strings.HasSuffix(path, "]."+tie(b)) {
			if ofMount = append(ofMount, e); len(ofMount) > 1 {
				continue
			}
		}
		out = append(out, e)
	}
	if n := len(ofMount) - 1; n > 0 {
		ofMount[0].Found += fmt.Sprintf(", and %d more of its loads", n)
	}
	return out.Sorted()
}

// see is what lists the parameters of a kind, for a refused one.
func see(path, kind string) string {
	if kind == "" || !strings.Contains(path, "].parameters") {
		return ""
	}
	return "lugwright kinds " + kind
}

// loadPath is the file's path of one of a bracket's loads: those of its mount come first and stand nowhere in it.
func loadPath(b *Bracket, rest string) string {
	rest = strings.NewReplacer(".force_n", ".force", ".moment_n_mm", ".moment").Replace(rest)
	number, after, _ := strings.Cut(rest, "]")
	i, err := strconv.Atoi(number)
	if err != nil || !b.Tied() {
		return "loads[" + rest
	}
	own := 0
	for k := range b.Loads {
		switch {
		case k == i && b.Loads[k].OfMount:
			return tie(b)
		case k == i:
			return fmt.Sprintf("loads[%d]%s", own, after)
		case !b.Loads[k].OfMount:
			own++
		}
	}
	return tie(b)
}

// tie is the field that ties a bracket to the vehicle.
func tie(b *Bracket) string {
	if b.Tray != "" {
		return "tray"
	}
	return "mount"
}

// place finds the deepest field of the file that a path leads to. A path that is about the built bracket and not about the file
// ("plates[2].material") leads to the parameter whose word was refused, or to the bracket.
func (j *Job) place(b *Bracket, f *part.FieldError) (string, Place) {
	root := "brackets[" + b.Name + "]"
	field := f.Field
	if rest, ok := strings.CutPrefix(field, "cases["); ok { // the strength service's cases are the bracket's loads
		field = loadPath(b, rest)
	}
	whole := root + "." + field
	for path := whole; path != root && path != ""; path = table.Parent(path) {
		if at, ok := j.reading.Places[path]; ok {
			if path != whole && path == root+".parameters" { // a parameter left at its default
				at = j.reading.Keys[path]
			}
			return whole, at
		}
	}
	for _, p := range b.Params {
		if p.Text != "" && strings.Contains(f.Found, `"`+p.Text+`"`) {
			path := root + ".parameters." + p.Name
			return path, j.reading.Places[path]
		}
	}
	if at, ok := j.reading.Places[f.Field]; ok { // a field of the job, such as basis
		return f.Field, at
	}
	return whole, j.reading.Places[root]
}
