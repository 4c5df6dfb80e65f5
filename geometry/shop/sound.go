package shop

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"lugwright/part"
)

// Validate names what is wrong with a profile, as errors whose fields are those of a shop file; nil when it is sound.
func (s *Profile) Validate() error {
	var bad part.FieldErrors
	refuse := func(field, found, accept string) {
		bad = append(bad, &part.FieldError{Field: field, Found: found, Accept: accept})
	}
	s.Files.validate(refuse)
	if s.Marks.Style != NoMarks && s.Files.Layers.Etch == "" {
		refuse("marks.style", fmt.Sprintf("%s, and files.layers has no etch layer for them", s.Marks.Style), "name the layer, or style: none")
	}
	for i, r := range s.Holes {
		r.validate(fmt.Sprintf("holes[%d]", i), refuse)
	}
	if n := len(s.Holes); n == 0 || !s.Holes[n-1].FitsAll() {
		refuse("holes", "no last rule that fits every hole", "end the list with a rule that has no condition, such as: - make: as drawn")
	}
	if bad != nil {
		return bad
	}
	return nil
}

func (f *Files) validate(refuse func(field, found, accept string)) {
	if len(f.Versions) == 0 {
		refuse("files.versions", "none", fmt.Sprintf("one or more of %v", Versions()))
	}
	for i, v := range f.Versions {
		if slices.Contains(f.Versions[:i], v) {
			refuse(fmt.Sprintf("files.versions[%d]", i), string(v)+" once more", "each once")
		}
	}
	fields, err := nameFields(f.Naming)
	switch {
	case err != "":
		refuse("files.naming", err, "fields in braces: {"+strings.Join(NameFields(), "}, {")+"}")
	case f.Grouping != OneThickness && !slices.Contains(fields, "mark"):
		refuse("files.naming", "no {mark}: pieces would share a file", "a pattern with {mark}")
	case !slices.Contains(fields, "units"):
		refuse("files.naming", "no {units}: nothing in a cut file is as sure to be read as its name", "a pattern with {units}")
	}
	names := map[string]string{}
	for _, l := range []struct{ field, name string }{{"cut", f.Layers.Cut}, {"etch", f.Layers.Etch}, {"bend", f.Layers.Bend}, {"centre", f.Layers.Centre}} {
		switch other, taken := names[l.name]; {
		case l.name == "" && l.field == "cut":
			refuse("files.layers.cut", "no name", "the layer that is cut")
		case l.name == "":
		case !LayerName(l.name):
			refuse("files.layers."+l.field, fmt.Sprintf("%q", l.name), "1 to 31 of A-Z 0-9 $ _ -")
		case taken:
			refuse("files.layers."+l.field, fmt.Sprintf("%q is the %s layer too", l.name, other), "a name of its own, or leave it out")
		default:
			names[l.name] = l.field
		}
	}
}

// LayerName says whether the oldest version of a cut file takes the name of a layer, or it is empty.
func LayerName(s string) bool {
	return len(s) <= 31 && strings.Trim(s, "ABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789$_-") == ""
}

// nameFields lists the fields of a pattern; wrong says what is wrong with it.
func nameFields(pattern string) (fields []string, wrong string) {
	for rest := pattern; ; {
		before, after, open := strings.Cut(rest, "{")
		if strings.Trim(before, "abcdefghijklmnopqrstuvwxyzABCDEFGHIJKLMNOPQRSTUVWXYZ0123456789._-") != "" {
			return nil, fmt.Sprintf("%q has other signs than letters, digits, dots, dashes and underscores", before)
		}
		if !open {
			return fields, ""
		}
		name, tail, closed := strings.Cut(after, "}")
		if !closed || !slices.Contains(NameFields(), name) {
			return nil, fmt.Sprintf("the field {%s}", name)
		}
		fields, rest = append(fields, name), tail
	}
}

// FileName fills the pattern in; values are those of NameFields, already safe for a file name.
func (f *Files) FileName(values map[string]string) string {
	name := f.Naming
	for _, field := range NameFields() {
		name = strings.ReplaceAll(name, "{"+field+"}", values[field])
	}
	return name
}

func (r *HoleRule) FitsAll() bool {
	return len(r.For) == 0 && r.UnderPerThick == 0 && r.UnderMM == 0 && r.OverThickMM == 0
}

func (r *HoleRule) validate(path string, refuse func(field, found, accept string)) {
	later := r.Make == Undersize || r.Make == PilotOnly || r.Make == PunchOnly
	switch {
	case later && r.Then != part.Drilled && r.Then != part.Reamed:
		refuse(path+".then", fmt.Sprintf("%q", r.Then), "drill or ream: how the hole reaches its size")
	case !later && r.Then != "":
		refuse(path+".then", string(r.Then)+" after "+string(r.Make), "leave it out")
	}
	given(refuse, path+".less", r.LessMM, r.Make == Undersize)
	given(refuse, path+".pilot", r.PilotMM, r.Make == PilotOnly)
}

// given wants a length where it has a meaning, and none elsewhere.
func given(refuse func(field, found, accept string), path string, mm float64, wanted bool) {
	switch {
	case wanted && !(mm > 0 && !math.IsInf(mm, 1)):
		refuse(path, "missing", "a length over 0 mm")
	case !wanted && mm != 0:
		refuse(path, fmt.Sprintf("%.4g mm", mm), "leave it out with this way of making")
	}
}
