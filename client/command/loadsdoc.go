package command

// This file writes a vehicle's whole answer as JSON. Names are those of the answer's own fields in small letters, with the unit they end in.

import (
	"math"
	"reflect"
	"strings"
	"unicode"

	"lugwright/client/caution"
	"lugwright/client/run"
)

type vehicleDoc struct {
	Format   int           `json:"format"`
	Tool     string        `json:"tool"`
	Job      vehicleJobDoc `json:"job"`
	Passes   bool          `json:"passes"`
	Warnings any           `json:"warnings"` // worst first
	Answer   any           `json:"answer"`
	Cases    any           `json:"cases"`
	Brackets []tiedDoc     `json:"brackets"`
	Holes    []string      `json:"holes"`
	Open     []string      `json:"not_covered"`
	Cautions []string      `json:"cautions"`
}

type vehicleJobDoc struct {
	File     string `json:"file"`
	Title    string `json:"title"`
	Revision string `json:"revision"`
	Hash     string `json:"hash"`
}

// tiedDoc is a bracket with the loads it is designed for.
type tiedDoc struct {
	Name  string `json:"name"`
	Mount string `json:"mount"`
	Tray  string `json:"tray,omitempty"`
	Why   string `json:"why_no_loads,omitempty"`
	Loads any    `json:"loads"`
}

func docOfVehicle(v *run.Vehicle, version string) vehicleDoc {
	j := v.Job
	d := vehicleDoc{
		Format: format, Tool: "lugwright " + version, Job: vehicleJobDoc{j.File, j.Title, j.Revision, j.Hash(version)}, Passes: len(v.Fails()) == 0,
		Warnings: snake(v.Warnings), Answer: snake(v.Answer), Cases: snake(v.Request.Cases), Brackets: []tiedDoc{}, Holes: append([]string{}, v.Holes...), Open: append([]string{}, v.Open...),
	}
	for i := range j.Brackets {
		b := &j.Brackets[i]
		t := tiedDoc{Name: b.Name, Mount: b.Mount, Tray: b.Tray, Loads: snake(b.Loads)}
		if v.Unheld != nil && b.Tied() {
			t.Why = v.Unheld.Error()
		}
		d.Brackets = append(d.Brackets, t)
	}
	for _, c := range caution.Vehicle() {
		d.Cautions = append(d.Cautions, c.Text)
	}
	return d
}

// snake turns structs into objects whose names are in small letters. An empty list is a list, and a number that is none is null.
func snake(v any) any { return snakeValue(reflect.ValueOf(v)) }

func snakeValue(v reflect.Value) any {
	switch v.Kind() {
	case reflect.Pointer, reflect.Interface:
		if v.IsNil() {
			return nil
		}
		return snakeValue(v.Elem())
	case reflect.Slice, reflect.Array:
		out := []any{}
		for i := range v.Len() {
			out = append(out, snakeValue(v.Index(i)))
		}
		return out
	case reflect.Struct:
		out := map[string]any{}
		snakeFields(v, out)
		return out
	case reflect.Float64:
		if f := v.Float(); math.IsNaN(f) || math.IsInf(f, 0) {
			return nil
		}
	}
	return v.Interface()
}

func snakeFields(v reflect.Value, out map[string]any) {
	for i := range v.NumField() {
		f := v.Type().Field(i)
		switch {
		case !f.IsExported():
		case f.Anonymous:
			snakeFields(v.Field(i), out)
		default:
			out[snakeName(f.Name)] = snakeValue(v.Field(i))
		}
	}
}

// snakeName parts words before each capital that follows a small letter, and before the last of several capitals that a small one follows.
// Units of one word stay whole: XMM is x_mm, CGXMM cg_x_mm.
func snakeName(name string) string {
	for _, unit := range []struct{ from, to string }{
		{"ShearCentreMM", "shear_centre_mm"}, {"CGXMM", "cg_x_mm"}, {"NMM", "_n_mm"}, {"XMM", "_x_mm"}, {"YMM", "_y_mm"}, {"ZMM", "_z_mm"}, {"MM2", "_mm2"}, {"MM3", "_mm3"}, {"MM4", "_mm4"},
		{"MPa", "_mpa"}, {"MM", "_mm"}, {"KG", "_kg"}, {"Rad", "_rad"},
	} {
		if rest, ok := strings.CutSuffix(name, unit.from); ok {
			return strings.TrimPrefix(snakeWords(rest)+unit.to, "_")
		}
	}
	if rest, ok := strings.CutSuffix(name, "N"); ok && rest != "" && unicode.IsLower(rune(rest[len(rest)-1])) {
		return snakeWords(rest) + "_n"
	}
	if rest, ok := strings.CutSuffix(name, "G"); ok && rest != "" && unicode.IsLower(rune(rest[len(rest)-1])) {
		return snakeWords(rest) + "_g"
	}
	return snakeWords(name)
}

func snakeWords(name string) string {
	out := &strings.Builder{}
	letters := []rune(name)
	for i, r := range letters {
		if unicode.IsUpper(r) && i > 0 && (unicode.IsLower(letters[i-1]) || i+1 < len(letters) && unicode.IsLower(letters[i+1])) {
			out.WriteByte('_')
		}
		out.WriteRune(unicode.ToLower(r))
	}
	return out.String()
}
