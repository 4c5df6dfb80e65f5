package strength_test

// What a first try gives: every kind as it comes.

import (
	"testing"

	"lugwright/geometry"
	"lugwright/geometry/kinds"
	"lugwright/part"
	"lugwright/strength"
	"lugwright/strength/basis/aisc360"
	"lugwright/strength/basis/en1993"
)

// Every kind with all its defaults carries 1 kN in each direction that it has a path for, on both code books, with nothing outside a rule.
func TestDefaultsPassUnderAModestLoad(t *testing.T) {
	for _, k := range kinds.All() {
		b, err := geometry.Build([]geometry.Kind{k}, geometry.Request{Kind: k.Name, Name: "first", Hand: part.LeftHand})
		if err != nil {
			t.Fatal(err)
		}
		var cases []part.Case
		for _, p := range b.Paths {
			if f, _ := p.Component.Unit(); f != (part.Vec{}) {
				cases = append(cases, service(p.Component.String(), f.Scale(1000)))
			}
		}
		for _, basis := range []*strength.Basis{aisc360.Basis(), en1993.Basis()} {
			r, err := strength.Run(basis, b, cases, strength.Options{})
			if err != nil {
				t.Fatal(err)
			}
			if v := r.Verdict(); v != strength.Pass {
				t.Errorf("%s on %s: %s, governed by %+v", k.Name, basis.Card.Name, v, r.Governing())
			}
		}
	}
}
