package strength_test

// What is kept at a place from load to load, against everything worked out anew.

import (
	"fmt"
	"reflect"
	"testing"

	"lugwright/geometry"
	"lugwright/geometry/fab/fabtest"
	"lugwright/geometry/kinds"
	"lugwright/part"
	"lugwright/strength"
	"lugwright/strength/basis"
)

// Random brackets of every kind under several loads at once, on every basis and method: reports are the same, to the last bit.
func TestKeptCapacitiesChangeNothing(t *testing.T) {
	defer strength.KeepNothing(false)
	for _, kind := range kinds.All() {
		for seed := range uint64(3) {
			bracket, err := geometry.Build([]geometry.Kind{kind}, fabtest.Draw(kind, seed))
			if err != nil {
				continue
			}
			for _, b := range basis.All() {
				if b.Card.ReferenceOnly || b.Card.PinHolesOnly {
					continue
				}
				for _, method := range b.Card.Methods {
					kept, errKept := strength.Run(b, bracket, severalCases(bracket, seed), strength.Options{Method: method})
					strength.KeepNothing(true)
					anew, errAnew := strength.Run(b, bracket, severalCases(bracket, seed), strength.Options{Method: method})
					strength.KeepNothing(false)
					if !reflect.DeepEqual(errKept, errAnew) || fmt.Sprintf("%+v", kept) != fmt.Sprintf("%+v", anew) {
						t.Errorf("%s seed %d on %s, %s: not the same report", kind.Name, seed, b.Card.Name, method)
					}
				}
			}
		}
	}
}

// severalCases are loads of different directions, one of them at several sizes.
func severalCases(b *part.Bracket, seed uint64) []part.Case {
	var out []part.Case
	for k := range uint64(4) {
		out = append(out, service(fmt.Sprint("way ", k), randomLoad(b, seed+40*k)))
	}
	for _, size := range []float64{0.3, 1, 4} {
		out = append(out, service(fmt.Sprint("size ", size), out[0].Force.Scale(size)))
	}
	return out
}
