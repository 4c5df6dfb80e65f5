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

// Measure is one measure of a Room: its name in a job, what it is, its unit ("mm" or "rad") and range, and where it stands.
type Measure struct {
	Name, Sentence, Unit string
	Least, Most          float64
	Of                   func(*Room) *float64
}

// Measures lists all of them.
func Measures() []Measure {
	return []Measure{
		{"torch_angle", "Least angle between the torch and each face it welds.", "rad", 0, math.Pi / 4, func(r *Room) *float64 { return &r.TorchAngleRad }},
		{"torch_length", "Free length of the torch, from the root.", "mm", 20, 1000, func(r *Room) *float64 { return &r.TorchLengthMM }},
		{"torch_width", "Width of its nozzle and of the hand behind it.", "mm", 5, 200, func(r *Room) *float64 { return &r.TorchWidthMM }},
		{"socket", "Free length over a bolt's head or nut.", "mm", 10, 500, func(r *Room) *float64 { return &r.SocketMM }},
		{"grease", "Free length before a grease point.", "mm", 10, 1000, func(r *Room) *float64 { return &r.GreaseMM }},
	}
}

// Validate refuses what no tool is like, by the names of Measures.
func (r Room) Validate() error {
	var bad part.FieldErrors
	for _, m := range Measures() {
		if v := *m.Of(&r); !(v >= m.Least && v <= m.Most) {
			bad = append(bad, &part.FieldError{Field: m.Name, Found: fmt.Sprintf("%g %s", v, m.Unit), Accept: fmt.Sprintf("%g to %g %s", m.Least, m.Most, m.Unit)})
		}
	}
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
