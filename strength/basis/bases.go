// Package basis is the index of the design bases. It never holds a rule itself.
package basis

import (
	"slices"
	"strings"

	"lugwright/part"
	"lugwright/strength"
	"lugwright/strength/basis/aisc360"
	"lugwright/strength/basis/aisc360y2016"
	"lugwright/strength/basis/allowable"
	"lugwright/strength/basis/bth1"
	"lugwright/strength/basis/en1993"
	"lugwright/strength/basis/reference"
)

// All lists the bases in the order in which they are shown; the first is the default.
func All() []*strength.Basis {
	return slices.Concat([]*strength.Basis{
		aisc360.Basis(),
		aisc360y2016.Basis(),
		en1993.Basis(),
		bth1.Basis(),
		allowable.Basis(),
	}, reference.All())
}

// Find looks a basis up by its card's name; the error is a part.FieldError that names the nearest. An empty name is the
// default.
func Find(name string) (*strength.Basis, error) {
	all := All()
	if name == "" {
		return all[0], nil
	}
	names := make([]string, len(all))
	for i, b := range all {
		if b.Card.Name == name {
			return b, nil
		}
		names[i] = b.Card.Name
	}
	return nil, &part.FieldError{Field: "basis", Found: `"` + name + `" is not a design basis`, Accept: "one of " + strings.Join(names, ", ") + part.Nearest(name, names)}
}
