// Package geometry says what a bracket kind is: a name, a sentence, parameters with unit, range and default, and a
// Build that turns them into a part.Bracket. It knows no strength, no file format and no particular kind.
package geometry

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"lugwright/part"
)

// Unit says what a parameter's number means.
type Unit string

const (
	MM    Unit = "mm"
	Rad   Unit = "rad"
	Ratio Unit = "ratio" // a plain number: a part of something
	Count Unit = "count" // a whole number
	Word  Unit = "word"  // one of Choices, or any word when there are none
	Size  Unit = "size"  // a thread size such as M12 or 1/2-13
)

// Param declares one parameter of a kind.
type Param struct {
	Name     string
	Unit     Unit
	Min, Max float64 // for numbers
	Default  float64 // for numbers
	Choices  []string
	Text     string // default of a word or size
	Sentence string
}

// Given is the parameter as a request gives it: a word or size by its text, anything else by its number.
func (p Param) Given(number float64, text string) part.Param {
	if p.Unit == Word || p.Unit == Size {
		return part.Param{Name: p.Name, Unit: string(p.Unit), Text: text}
	}
	return part.Param{Name: p.Name, Unit: string(p.Unit), Number: number}
}

// Kind is one bracket kind. Build gets complete, range-checked values and returns a left-hand bracket, or part.FieldErrors
// that name the parameter and what would be accepted.
type Kind struct {
	Name     string
	Sentence string
	Params   []Param
	Build    func(v Values) (*part.Bracket, error)
}

// Request asks for one bracket. Mark is the root of every part mark; when empty the name in capitals serves.
type Request struct {
	Kind   string
	Name   string
	Mark   string
	Hand   part.Hand
	Params []part.Param
}

// Refuse builds the error for one parameter that is in range but does not fit the others.
func Refuse(param, found, accept string, args ...any) *part.FieldError {
	return &part.FieldError{Field: "parameters." + param, Found: found, Accept: fmt.Sprintf(accept, args...)}
}

// Build makes the bracket of the request: it fills in defaults, checks every parameter, calls the kind, mirrors for the right
// hand and validates the result.
func Build(kinds []Kind, r Request) (*part.Bracket, error) {
	k, err := Find(kinds, r.Kind)
	if err != nil {
		return nil, err
	}
	v, err := k.values(r)
	if err != nil {
		return nil, err
	}
	b, err := k.Build(v)
	if err != nil {
		return nil, err
	}
	b.Kind, b.Name, b.Hand = k.Name, r.Name, part.LeftHand
	b.Params = k.listed(v)
	if r.Hand == part.RightHand {
		b = b.Mirrored()
	}
	b.AddMarks(v.Mark)
	if err := b.Validate(); err != nil {
		// The kind's own mistake, not the caller's: its fields are no parameters.
		return nil, fmt.Errorf("kind %s built an unsound bracket: %v", k.Name, err)
	}
	return b, nil
}

// Find looks a kind up by name; the error names the nearest.
func Find(kinds []Kind, name string) (*Kind, error) {
	names := make([]string, len(kinds))
	for i := range kinds {
		if kinds[i].Name == name {
			return &kinds[i], nil
		}
		names[i] = kinds[i].Name
	}
	return nil, &part.FieldError{
		Field: "kind", Found: fmt.Sprintf("%q is not a kind", name), Accept: "one of " + strings.Join(names, ", ") + part.Nearest(name, names),
	}
}

func (k *Kind) values(r Request) (Values, error) {
	v := k.defaults()
	v.Name, v.Mark = r.Name, r.Mark
	if v.Mark == "" {
		v.Mark = strings.ToUpper(r.Name)
	}
	var bad part.FieldErrors
	if r.Name == "" {
		bad = append(bad, &part.FieldError{Field: "name", Found: "empty", Accept: "a short word such as pair-left"})
	}
	if r.Hand != part.LeftHand && r.Hand != part.RightHand {
		bad = append(bad, &part.FieldError{Field: "hand", Found: fmt.Sprintf("%q", r.Hand), Accept: "left or right"})
	}
	seen := make([]bool, len(k.Params))
	for _, given := range r.Params {
		i, ok := v.find(given.Name)
		if !ok {
			bad = append(bad, k.unknown(given.Name))
			continue
		}
		if seen[i] {
			bad = append(bad, Refuse(given.Name, "given twice", "give it once"))
			continue
		}
		seen[i] = true
		v.number[i], v.text[i] = given.Number, given.Text
		if e := k.Params[i].check(given); e != nil {
			bad = append(bad, e)
		}
	}
	if bad != nil {
		return Values{}, bad
	}
	return v, nil
}

func (k *Kind) unknown(name string) *part.FieldError {
	names := make([]string, len(k.Params))
	for i, p := range k.Params {
		names[i] = p.Name
	}
	return Refuse(name, "kind "+k.Name+" has no such parameter", "see its list with: kinds %s%s", k.Name, part.Nearest(name, names))
}

func (p *Param) check(given part.Param) *part.FieldError {
	switch p.Unit {
	case Word:
		if len(p.Choices) > 0 && !slices.Contains(p.Choices, given.Text) {
			return Refuse(p.Name, fmt.Sprintf("%q", given.Text), "one of %s%s", strings.Join(p.Choices, ", "), part.Nearest(given.Text, p.Choices))
		}
		if given.Text == "" || len(given.Text) > 60 {
			return Refuse(p.Name, fmt.Sprintf("%q", given.Text), "a word of 1 to 60 letters")
		}
		return nil
	case Size:
		if _, err := part.NominalDiaMM(given.Text); err != nil {
			return Refuse(p.Name, err.Error(), "a thread size from M3 to M39 or its inch kin")
		}
		return nil
	}
	n := given.Number
	switch {
	case given.Text != "":
		return Refuse(p.Name, fmt.Sprintf("the word %q", given.Text), "%s", p.accepts())
	case math.IsNaN(n) || math.IsInf(n, 0):
		return Refuse(p.Name, "not a finite number", "%s", p.accepts())
	case given.Unit != "" && given.Unit != string(p.Unit):
		return Refuse(p.Name, "unit "+given.Unit, "%s", p.accepts())
	case p.Unit == Count && n != math.Trunc(n):
		return Refuse(p.Name, fmt.Sprintf("%g", n), "%s", p.accepts())
	case n < p.Min || n > p.Max:
		return Refuse(p.Name, fmt.Sprintf("%g %s", n, p.Unit), "%s", p.accepts())
	}
	return nil
}

func (p *Param) accepts() string {
	if p.Unit == Count {
		return fmt.Sprintf("a whole number from %g to %g", p.Min, p.Max)
	}
	return fmt.Sprintf("%g to %g %s", p.Min, p.Max, p.Unit)
}

// listed is every parameter with its value, defaults included, in order of declaration.
func (k *Kind) listed(v Values) []part.Param {
	out := make([]part.Param, len(k.Params))
	for i := range k.Params {
		p := &k.Params[i]
		out[i] = part.Param{Name: p.Name, Unit: string(p.Unit)}
		if p.Unit == Word || p.Unit == Size {
			out[i].Text = v.text[i]
		} else {
			out[i].Number = v.number[i]
		}
	}
	return out
}
