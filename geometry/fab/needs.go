package fab

// Refusals gathered while a kind checks its parameters.

import (
	"strconv"

	"lugwright/geometry"
	"lugwright/part"
)

// Needs gathers refusals so that one answer names every parameter at fault.
type Needs struct{ bad part.FieldErrors }

// That refuses the parameter when holds is false. Found says what was seen, accept (a format) what would be taken.
func (n *Needs) That(holds bool, param, found, accept string, args ...any) bool {
	if !holds {
		n.bad = append(n.bad, geometry.Refuse(param, found, accept, args...))
	}
	return holds
}

// Err is the refusals so far, nil when there are none.
func (n *Needs) Err() error {
	if len(n.bad) == 0 {
		return nil
	}
	return n.bad
}

// MM writes a length for a message.
func MM(v float64) string {
	var buf [32]byte
	return string(append(strconv.AppendFloat(buf[:0], v, 'g', 4, 64), " mm"...))
}
