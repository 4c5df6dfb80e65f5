package job

// This file brings errors about a vehicle back to places of the file.

import (
	"regexp"
	"strconv"
	"strings"
	"sync"

	"lugwright/client/table"
	"lugwright/part"
	"lugwright/units"
)

// LocateVehicle gives the refused fields inside the service's error about the vehicle, with their places in the file. Any other error
// comes back as it is.
func (j *Job) LocateVehicle(err error) error {
	fields := part.Fields(err)
	if fields == nil {
		return err
	}
	return j.locateVehicle(fields).Sorted()
}

func (j *Job) locateVehicle(fields part.FieldErrors) Errors {
	var out Errors
	for _, f := range fields {
		path := j.vehiclePath(f.Field)
		e := &Error{File: j.File, At: j.placeOf(path), Field: path, Found: withUnit(f.Found, f.Field), Accept: withUnit(f.Accept, f.Field)}
		e.Found, e.Accept = units.Words(e.Found, j.Units), units.Words(e.Accept, j.Units)
		out = append(out, e)
	}
	return out
}

// bare is a number that no unit and no word of its own goes with.
var bare = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`(^|[ (])(-?[0-9]+(?:\.[0-9]+)?(?:e[-+][0-9]+)?)($|[,;:)]| to | and )`)
})

// withUnit gives the bare numbers of a length or a mass, which the request has in the unit of its field's name, that unit and no more digits than
// anyone measures.
func withUnit(text, field string) string {
	unit := ""
	for suffix, u := range map[string]string{"_mm": "mm", "_kg": "kg"} {
		if strings.HasSuffix(field, suffix) && !strings.HasSuffix(field, "_per"+suffix) {
			unit = u
		}
	}
	if unit == "" {
		return text
	}
	text = strings.NewReplacer("from_mm", "from", "bottom_mm", "lower").Replace(text)
	for range 2 { // neighbours share what stands between them
		text = bare().ReplaceAllStringFunc(text, func(s string) string {
			m := bare().FindStringSubmatch(s)
			x, err := strconv.ParseFloat(m[2], 64)
			if err != nil {
				return s
			}
			return m[1] + strconv.FormatFloat(x, 'g', 6, 64) + " " + unit + m[3]
		})
	}
	return text
}

// placeOf is where a path, or what it is part of, stands in the file.
func (j *Job) placeOf(path string) Place {
	for ; path != ""; path = table.Parent(path) {
		if at, ok := j.reading.Places[path]; ok {
			return at
		}
	}
	return j.reading.Places[""]
}

// vehiclePath turns a field of the request into one of the file: the longest part of it that is known, and then the file's own word for the
// rest where there is one.
func (j *Job) vehiclePath(field string) string {
	head, rest := field, ""
	for head != "" {
		if _, ok := j.Vehicle.paths[head]; ok {
			break
		}
		cut := strings.LastIndexAny(head, ".[")
		head, rest = head[:max(0, cut)], head[max(0, cut):]+rest
	}
	path := j.Vehicle.paths[head]
	for _, word := range strings.FieldsFunc(rest, func(r rune) bool { return r == '.' }) {
		for _, name := range []string{fileWords[word], word, withoutUnit(word)} {
			if _, ok := j.reading.Places[path+"."+name]; name != "" && ok {
				path += "." + name
				break
			}
		}
	}
	return path
}

// fileWords are the file's words for fields that the request calls otherwise. What is no field of its own (at_mm) is passed over.
var fileWords = map[string]string{
	"plus_minus_kg": "give_or_take", "cg_y_mm": "left", "cg_z_mm": "height", "dia_mm": "diameter", "z_mm": "below_top", "density_kg_per_l": "density", "capacity_l": "capacity",
	"yield_mpa": "rail", "web_y_mm": "web", "top_z_mm": "top", "y_mm": "held_at", "cg_mm": "centre", "had_mm": "room", "mass_kg": "mass", "beam_z_mm": "beam", "free_mm": "free_length",
	"stop_z_mm": "stops", "rod_mm": "rod", "unsupported_mm2": "unsupported", "fractions": "parts", "accel_g": "lines", "hangers_mm": "ahead", "on": "on", "confidence": "known",
}

func withoutUnit(word string) string {
	for _, unit := range []string{"_mm", "_kg", "_mpa", "_rad", "_n_per_mm", "_l"} {
		if name, ok := strings.CutSuffix(word, unit); ok {
			return name
		}
	}
	return ""
}
