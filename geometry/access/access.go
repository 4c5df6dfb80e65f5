package access

import (
	"fmt"
	"math"

	"lugwright/part"
)

// Room is what the tools need. Usual is common practice, no source.
type Room struct {
	TorchAngleRad float64 // least angle between the torch and each of the two faces it welds
	TorchLengthMM float64 // free length of the torch, from the root
	TorchWidthMM  float64 // width of its nozzle and of the hand behind it
	SocketMM      float64 // free length over a bolt's head or nut
	GreaseMM      float64 // free length before a grease point
}

// Usual is the room taken when a job says nothing.
func Usual() Room {
	return Room{TorchAngleRad: 30 * math.Pi / 180, TorchLengthMM: 150, TorchWidthMM: 25, SocketMM: 60, GreaseMM: 100}
}

// Validate refuses what no tool is like, with the fields of Room as a job names them.
func (r Room) Validate() error {
	var bad part.FieldErrors
	within := func(field string, v, least, most float64, unit string) {
		if !(v >= least && v <= most) {
			bad = append(bad, &part.FieldError{Field: field, Found: fmt.Sprintf("%g %s", v, unit), Accept: fmt.Sprintf("%g to %g %s", least, most, unit)})
		}
	}
	within("torch_angle", r.TorchAngleRad, 0, math.Pi/4, "rad")
	within("torch_length", r.TorchLengthMM, 20, 1000, "mm")
	within("torch_width", r.TorchWidthMM, 5, 200, "mm")
	within("socket", r.SocketMM, 10, 500, "mm")
	within("grease", r.GreaseMM, 10, 1000, "mm")
	if bad != nil {
		return bad
	}
	return nil
}

// Finding is something that cannot be reached: what, and in words why.
type Finding struct{ What, Words string }

func (f Finding) String() string { return f.What + ": " + f.Words }

// Findings are all of a bracket's, welds first.
func Findings(b *part.Bracket, r Room) []Finding {
	s := newScene(b)
	var out []Finding
	for i := range b.Welds {
		out = append(out, s.weld(&b.Welds[i], r)...)
	}
	for i := range b.Bolts {
		out = append(out, s.bolts(&b.Bolts[i], r)...)
	}
	for i := range b.Pins {
		out = append(out, s.pin(&b.Pins[i], r)...)
	}
	return out
}
