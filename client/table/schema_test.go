package table

import (
	"testing"

	"lugwright/units"
)

// Every unit that the schema offers is one that the reader takes.
func TestSchemaUnits(t *testing.T) {
	for dim, list := range unitNames {
		for _, name := range list {
			if _, got, err := units.Factor(name); err != nil || got != dim {
				t.Errorf("%q is %v, not %v: %v", name, got, dim, err)
			}
		}
	}
}
