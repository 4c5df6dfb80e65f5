package table

// This file writes the field table as JSON Schema (draft 2020-12), for editors. What the schema cannot say (ranges of quantities
// in any unit, names that agree) only reading the job says.

import (
	"encoding/json"
	"regexp"
	"strconv"
	"strings"

	"lugwright/units"
)

// Schema is the JSON Schema of a file that follows the rule.
func (r *Rule) Schema(title string) []byte {
	root := r.schema()
	root["$schema"] = "https://json-schema.org/draft/2020-12/schema"
	root["title"] = title
	out, err := json.MarshalIndent(root, "", "  ")
	if err != nil {
		panic("table: the schema is plain data: " + err.Error())
	}
	return append(out, '\n')
}

type object = map[string]any

func (r *Rule) schema() object {
	s := r.bare()
	s["description"] = r.says
	return s
}

func (r *Rule) bare() object {
	switch r.form {
	case choiceForm:
		return object{"enum": r.enum()}
	case sizeForm:
		return object{"type": "string", "pattern": `^ *(M[0-9]|[0-9])`}
	case wholeForm:
		return object{"type": "integer", "minimum": r.least, "maximum": r.most}
	case quantityForm:
		return r.quantitySchema()
	case mappingForm:
		return r.mappingSchema()
	case namedForm:
		return object{"type": "object", "minProperties": 1, "additionalProperties": r.item.schema()}
	case listForm:
		list := object{"type": "array", "minItems": 1, "items": r.item.schema()}
		if r.or != nil {
			return object{"anyOf": []any{list, r.or.schema()}}
		}
		return list
	}
	return r.textSchema()
}

// textSchema also takes numbers: a revision 2 or a bolt grade 8.8 needs no quotes.
func (r *Rule) textSchema() object {
	s := object{"type": []string{"string", "number", "boolean"}, "minLength": 1, "maxLength": r.longest, "pattern": `^[^\n\r\t]*$`}
	if r.letters != "" {
		s["pattern"] = "^(?:" + r.letters + ")$"
	}
	return s
}

// enum holds a choice that looks like a number in both forms.
func (r *Rule) enum() []any {
	out := []any{}
	for _, c := range r.choices {
		out = append(out, c)
		if n, err := strconv.ParseFloat(c, 64); err == nil {
			out = append(out, n)
		}
	}
	return out
}

func (r *Rule) mappingSchema() object {
	properties, required := object{}, []string{}
	for _, f := range r.fields {
		properties[f.name] = f.is.schema()
		if f.must {
			required = append(required, f.name)
		}
	}
	s := object{"type": "object", "properties": properties, "required": required, "additionalProperties": false}
	if r.with != nil {
		s["dependentRequired"] = object{r.with[0]: r.with[1:]}
	}
	if r.either != nil {
		var one []any
		for _, name := range r.either {
			one = append(one, object{"required": []string{name}})
		}
		s["anyOf"] = one
	}
	if r.by == "" {
		return s
	}
	var picks []any
	for _, word := range find(r.fields, r.by).is.choices {
		then := object{}
		for _, more := range r.more[word] {
			properties[more.name] = object{"type": "object"}
			then[more.name] = more.is().schema()
		}
		picks = append(picks, object{
			"if":   object{"properties": object{r.by: object{"const": word}}, "required": []string{r.by}},
			"then": object{"properties": then},
		})
	}
	s["allOf"] = picks
	return s
}

// unitNames lists, for the editor, the units that a quantity of a kind may be written in.
var unitNames = map[units.Dim][]string{
	units.Length: {"mm", "cm", "m", "in", "inch", "inches", `"`, "ft", "'"},
	units.Force:  {"N", "kN", "lbf", "kip", "kips"},
	units.Moment: {"N mm", "N m", "kN mm", "kN m", "lbf in", "lbf ft", "kip in", "kip ft"},
	units.Angle:  {"rad", "deg", "°"},
	units.Stress: {"MPa", "N/mm2", "GPa", "psi", "ksi"},
	units.Mass:   {"kg", "t", "lb", "lbs"},
	units.Area:   {"mm2", "cm2", "m2", "in2", "ft2"},
	units.Volume: {"L", "l", "litres", "m3", "US gal"},

	units.Density:        {"kg/L", "kg/l", "kg/m3", "lb/US gal", "lb/ft3"},
	units.Acceleration:   {"g", "m/s2"},
	units.ForcePerLength: {"N/mm", "kN/mm", "kN/m", "lbf/in", "kip/in"},
}

// number as units.Parse takes it: sign, decimal, fraction or mixed number.
const number = `[-+−]? *[0-9.][0-9.eE+/ -]*`

func (r *Rule) quantitySchema() object {
	if r.dim == units.Ratio {
		return object{"anyOf": []any{
			object{"type": "number", "minimum": r.least, "maximum": r.most},
			object{"type": "string", "pattern": "^" + number + "%?$"},
		}}
	}
	alternatives := make([]string, len(unitNames[r.dim]))
	for i, name := range unitNames[r.dim] {
		alternatives[i] = strings.ReplaceAll(regexp.QuoteMeta(name), " ", "[ *·-]?")
	}
	pattern := "^ *" + number + "(" + strings.Join(alternatives, "|") + ") *$"
	if r.dim == units.Length {
		pattern = "^ *" + number + "(" + strings.Join(alternatives, "|") + `)([ -]*[0-9.][0-9./ -]*(in|"))? *$`
	}
	return object{"type": "string", "pattern": pattern}
}
