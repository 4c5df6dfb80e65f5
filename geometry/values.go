package geometry

// The values that a kind builds from, and where each stands.

import (
	"hash/maphash"
	"math/bits"
)

// Values are complete, range-checked parameter values with the bracket's name, mark and hand.
type Values struct {
	Name, Mark string
	*values
}

// values stand in the order of the kind's parameters. Places finds a name among them: a kind asks for some a hundred times while it builds. It is a table
// of indices, from 1, at a slot of their name's hash or the next free one behind.
type values struct {
	kind   *Kind
	number []float64
	text   []string
	places []uint16
}

var seed = maphash.MakeSeed()

func (k *Kind) defaults() Values {
	n := len(k.Params)
	v := &values{kind: k, number: make([]float64, n), text: make([]string, n), places: make([]uint16, 2<<bits.Len(uint(n)))}
	for i := range k.Params {
		p := &k.Params[i]
		v.number[i], v.text[i] = p.Default, p.Text
		at := v.slot(p.Name)
		for v.places[at] != 0 {
			at = v.next(at)
		}
		v.places[at] = uint16(i + 1)
	}
	return Values{values: v}
}

func (v *values) slot(name string) int { return int(maphash.String(seed, name)) & (len(v.places) - 1) }

func (v *values) next(slot int) int { return (slot + 1) & (len(v.places) - 1) }

// find gives the place of a name; of one that is declared twice the first.
func (v *values) find(name string) (int, bool) {
	for at := v.slot(name); v.places[at] != 0; at = v.next(at) {
		if i := int(v.places[at]) - 1; v.kind.Params[i].Name == name {
			return i, true
		}
	}
	return 0, false
}

func (v *values) index(name string) int {
	i, ok := v.find(name)
	if !ok {
		panic("kind " + v.kind.Name + " has no parameter " + name)
	}
	return i
}

// MM is a length parameter, in mm. Asking for an undeclared one panics: it is the kind's own mistake.
func (v Values) MM(name string) float64 { return v.number[v.index(name)] }

// Rad is an angle parameter, in rad.
func (v Values) Rad(name string) float64 { return v.MM(name) }

// Ratio is a plain number.
func (v Values) Ratio(name string) float64 { return v.MM(name) }

// Count is a whole-number parameter.
func (v Values) Count(name string) int { return int(v.MM(name)) }

// Word is a word or size parameter.
func (v Values) Word(name string) string { return v.text[v.index(name)] }
