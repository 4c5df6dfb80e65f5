package command

// This file writes numbers with their units.

import (
	"fmt"

	"lugwright/units"
)

// show writes a value given in a unit, in the job's system of units. A unit that the tables do not know is left as it is.
func show(v float64, unit string, system units.System) string {
	factor, dim, err := units.Factor(unit)
	if err != nil {
		return fmt.Sprintf("%.4g %s", v, unit)
	}
	return units.Format(v*factor, dim, system)
}

// compared writes demand and capacity: "V_r = 12 kN of V_c = 78.54 kN". A capacity that is a bare number stands alone.
func compared(demandSymbol string, demand float64, capacitySymbol string, capacity float64, unit string, system units.System) string {
	of := show(capacity, unit, system)
	if of != capacitySymbol {
		of = capacitySymbol + " = " + of
	}
	return fmt.Sprintf("%s = %s of %s", demandSymbol, show(demand, unit, system), of)
}
