package family

// This file reads the first line of a CSV file.

import (
	"fmt"
	"slices"
	"strings"

	"lugwright/client/job"
	"lugwright/geometry"
	"lugwright/part"
	"lugwright/units"
)

// column is a parameter, and the unit of its cells where the header gives one.
type column struct {
	param geometry.Param
	unit  string
}

// wanted is what a number of each unit may be written in.
var dims = map[geometry.Unit]units.Dim{geometry.MM: units.Length, geometry.Rad: units.Angle, geometry.Ratio: units.Ratio, geometry.Count: units.Count}

// header makes columns of the first line's cells; at gives the place of one.
func (f *Family) header(file string, cells []string, at func(i int) job.Place) ([]column, error) {
	var bad job.Errors
	if sign := separator(cells); sign != "" {
		return nil, job.Errors{{File: file, At: at(0), Field: "header", Found: "columns separated by " + sign, Accept: "commas between them, and between the cells of a row"}}
	}
	out := make([]column, len(cells))
	for i, cell := range cells {
		refuse := func(found, accept string) {
			bad = append(bad, &job.Error{File: file, At: at(i), Field: "header", Found: found, Accept: accept, See: "lugwright kinds " + f.Kind.Name})
		}
		name, unit := nameAndUnit(cell)
		k := slices.IndexFunc(f.Kind.Params, func(p geometry.Param) bool { return p.Name == name })
		switch {
		case name == "":
			refuse("an empty column name", "the name of a parameter")
			continue
		case k < 0:
			refuse(fmt.Sprintf("%.60q is no parameter of %s", name, f.Kind.Name), "a parameter with its unit, such as "+f.example()+part.Nearest(name, f.parameters()))
			continue
		case slices.ContainsFunc(out[:i], func(c column) bool { return c.param.Name == name }):
			refuse(name+" stands there twice", "each parameter once")
			continue
		}
		out[i] = column{f.Kind.Params[k], unit}
		if found, accept := out[i].wrongUnit(); found != "" {
			refuse(found, accept)
		}
	}
	if bad != nil {
		return nil, bad
	}
	return out, nil
}

// nameAndUnit takes a unit in brackets off a column's name.
func nameAndUnit(cell string) (name, unit string) {
	cell = strings.TrimSpace(cell)
	for _, pair := range []string{"[]", "()"} {
		if open := strings.IndexByte(cell, pair[0]); open >= 0 && cell[len(cell)-1] == pair[1] {
			return strings.TrimSpace(cell[:open]), strings.TrimSpace(cell[open+1 : len(cell)-1])
		}
	}
	return cell, ""
}

func (c *column) wrongUnit() (found, accept string) {
	dim := dims[c.param.Unit]
	if c.unit == "" {
		return "", ""
	}
	if dim == 0 || dim == units.Count {
		return fmt.Sprintf("the unit %.20q for %s, which has none", c.unit, c.param.Name), c.param.Name
	}
	if _, got, err := units.Factor(c.unit); err != nil || got != dim {
		return fmt.Sprintf("the unit %.20q for %s", c.unit, c.param.Name), "a unit of " + dim.String() + ", such as " + c.param.Name + " [" + usual(dim) + "]"
	}
	return "", ""
}

// usual is a unit for examples.
func usual(d units.Dim) string {
	return map[units.Dim]string{units.Length: "mm", units.Angle: "deg", units.Ratio: "%"}[d]
}

// separator is the sign by which columns are separated where it is not a comma, in words.
func separator(cells []string) string {
	if len(cells) == 1 {
		for _, sign := range []struct{ sign, words string }{{";", "semicolons"}, {"\t", "tabs"}, {"|", "bars"}} {
			if strings.Contains(strings.TrimSpace(cells[0]), sign.sign) {
				return sign.words
			}
		}
	}
	return ""
}

func (f *Family) example() string {
	for _, p := range f.Kind.Params {
		if p.Unit == geometry.MM {
			return p.Name + " [mm]"
		}
	}
	return f.Kind.Params[0].Name
}

func (f *Family) parameters() []string {
	out := make([]string, len(f.Kind.Params))
	for i, p := range f.Kind.Params {
		out[i] = p.Name
	}
	return out
}
