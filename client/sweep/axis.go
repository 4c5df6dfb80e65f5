package sweep

// This file reads what is typed for one parameter: a list, a range, or the rack.

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"

	"lugwright/geometry"
	"lugwright/part"
	"lugwright/units"
)

// Axis is a parameter and the values that it takes.
type Axis struct {
	Param  geometry.Param
	Values []part.Param // at least one; numbers and thread sizes ascend
	Range  bool         // typed as one range: a value between two of them could be made too
}

// Words for the values of a shop's rack, and for all words that a parameter takes.
const (
	Rack  = "rack"
	Every = "all"
)

// MostValues is how many values one axis may have.
const MostValues = 10000

// dims are the units of numbers.
var dims = map[geometry.Unit]units.Dim{geometry.MM: units.Length, geometry.Rad: units.Angle, geometry.Ratio: units.Ratio, geometry.Count: units.Count}

// Number says whether a parameter is a number.
func Number(p geometry.Param) bool { return p.Unit != geometry.Word && p.Unit != geometry.Size }

// Ordered says whether a parameter's values go from small to large.
func Ordered(p geometry.Param) bool { return p.Unit != geometry.Word }

// Say writes a value of a parameter.
func Say(v part.Param, system units.System) string {
	if v.Text != "" {
		return v.Text
	}
	return units.Format(v.Number, dims[geometry.Unit(v.Unit)], system)
}

// ReadAxis reads the values of a parameter: "6 mm, 8 mm", "6 mm..16 mm step 2 mm", "1/4 in to 3/4 in by 1/8 in", "M12, M16", "all" words of a choice.
func ReadAxis(p geometry.Param, text string) (Axis, error) {
	a := Axis{Param: p}
	if strings.TrimSpace(text) == Every && len(p.Choices) > 0 && !slices.Contains(p.Choices, Every) {
		text = strings.Join(p.Choices, ",")
	}
	if strings.Contains(text, ";") {
		return a, fmt.Errorf("%q; values are separated by commas", strings.TrimSpace(text))
	}
	items := strings.Split(text, ",")
	for _, item := range items {
		item = strings.TrimSpace(item)
		if err := alone(p, item, len(items)); err != nil {
			return a, err
		}
		if from, rest, ok := cutRange(item); ok && Number(p) {
			values, err := span(p, from, rest)
			if err != nil {
				return a, err
			}
			a.Values, a.Range = append(a.Values, values...), len(items) == 1 && p.Unit != geometry.Count
			continue
		}
		v, err := value(p, item)
		if err != nil {
			return a, err
		}
		if slices.Contains(a.Values, v) {
			return a, fmt.Errorf("%s stands there twice; each value once", item)
		}
		a.Values = append(a.Values, v)
	}
	if len(a.Values) > MostValues {
		return a, fmt.Errorf("%d values; at most %d", len(a.Values), MostValues)
	}
	a.sort()
	return a, nil
}

// alone refuses the words for a whole list where they are none.
func alone(p geometry.Param, item string, of int) error {
	switch {
	case slices.Contains(p.Choices, item) || item != Rack && item != Every:
		return nil
	case of > 1:
		return fmt.Errorf("%q beside other values; it stands alone", item)
	case item == Every:
		return fmt.Errorf("%q is for words that are known; write the values", item)
	}
	return fmt.Errorf("%q is taken without saying; leave the parameter out, or write its values", item)
}

// Of is an axis of known values.
func Of(p geometry.Param, values ...part.Param) Axis {
	a := Axis{Param: p, Values: values}
	a.sort()
	return a
}

// sort puts numbers and sizes in order and drops what is there twice.
func (a *Axis) sort() {
	if Ordered(a.Param) {
		slices.SortStableFunc(a.Values, func(x, y part.Param) int {
			switch s, t := magnitude(x), magnitude(y); {
			case s < t:
				return -1
			case s > t:
				return 1
			}
			return 0
		})
	}
	var out []part.Param
	for _, v := range a.Values {
		if !slices.Contains(out, v) {
			out = append(out, v)
		}
	}
	a.Values = out
}

// magnitude is a number, or the nominal diameter of a thread size.
func magnitude(v part.Param) float64 {
	if v.Text == "" {
		return v.Number
	}
	dia, err := part.NominalDiaMM(v.Text)
	if err != nil {
		return math.Inf(1)
	}
	return dia
}

func cutRange(item string) (from, rest string, ok bool) {
	if from, rest, ok = strings.Cut(item, ".."); ok {
		return from, rest, true
	}
	return strings.Cut(item, " to ")
}

func cutStep(rest string) (to, step string, ok bool) {
	if to, step, ok = strings.Cut(rest, " step "); ok {
		return to, step, true
	}
	return strings.Cut(rest, " by ")
}

// span reads "A..B step C"; a count may leave the step out.
func span(p geometry.Param, from, rest string) ([]part.Param, error) {
	to, by, ok := cutStep(rest)
	if strings.TrimSpace(from) == "" || strings.TrimSpace(to) == "" {
		return nil, fmt.Errorf("a range without its first or last value; write both, such as 6 mm..16 mm step 2 mm")
	}
	if !ok {
		if p.Unit != geometry.Count {
			return nil, fmt.Errorf("a range without a step; write %s..%s step and the step, such as 2 mm or 1/8 in", strings.TrimSpace(from), strings.TrimSpace(rest))
		}
		by = "1"
	}
	first, err := value(p, from)
	if err != nil {
		return nil, err
	}
	last, err := value(p, to)
	if err != nil {
		return nil, err
	}
	step, err := units.Parse(strings.TrimSpace(by), dims[p.Unit])
	if err != nil {
		return nil, fmt.Errorf("the step: %w", err)
	}
	n := (last.Number - first.Number) / step
	switch {
	case !(step > 0):
		return nil, fmt.Errorf("the step %s; a step above 0 is needed", strings.TrimSpace(by))
	case n < 0:
		return nil, fmt.Errorf("a range from %s down to %s; write the smaller one first", strings.TrimSpace(from), strings.TrimSpace(to))
	case !(n < MostValues):
		return nil, fmt.Errorf("more than %d values; a larger step", MostValues)
	}
	out := make([]part.Param, 0, int(n)+1)
	for i := range int(n+1e-9) + 1 {
		v := first
		// To the nanometre: a sum of steps is not to miss the end of the range by its last bit.
		v.Number = math.Round((first.Number+float64(i)*step)*1e9) / 1e9
		out = append(out, v)
	}
	return out, nil
}

// value reads one value and holds it against the declaration.
func value(p geometry.Param, text string) (part.Param, error) {
	text = strings.TrimSpace(text)
	v := part.Param{Name: p.Name, Unit: string(p.Unit)}
	switch p.Unit {
	case geometry.Word:
		if text == "" && len(p.Choices) == 0 {
			return v, errors.New("a word is missing; write one, or several with commas between")
		}
		if v.Text = text; len(p.Choices) > 0 && !slices.Contains(p.Choices, text) {
			return v, fmt.Errorf("%q; one of %s%s", text, strings.Join(p.Choices, ", "), part.Nearest(text, p.Choices))
		}
		return v, nil
	case geometry.Size:
		v.Text = text
		if strings.ContainsAny(text, ".") && !strings.HasPrefix(text, "M") || strings.Contains(text, "..") {
			return v, fmt.Errorf("%q; sizes have no range: write them with commas, such as M12, M16", text)
		}
		_, err := part.NominalDiaMM(text)
		return v, err
	}
	n, err := units.Parse(text, dims[p.Unit])
	if err != nil {
		return v, err
	}
	v.Number = n
	if n < p.Min || n > p.Max || p.Unit == geometry.Count && n != math.Trunc(n) {
		return v, fmt.Errorf("%s; %s takes %s to %s", text, p.Name, Say(part.Param{Unit: v.Unit, Number: p.Min}, system(text)), Say(part.Param{Unit: v.Unit, Number: p.Max}, system(text)))
	}
	return v, nil
}

// system is the one in which a text is written.
func system(text string) units.System {
	if strings.ContainsAny(text, `"'`) || strings.Contains(text, "in") || strings.Contains(text, "ft") {
		return units.Inch
	}
	return units.Metric
}
