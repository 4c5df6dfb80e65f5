package shop

import (
	"fmt"
	"slices"

	"lugwright/part"
)

// taperedMM is the thickness up to which the taper of a waterjet cut seldom matters, as a waterjet job shop's article has it.
const taperedMM = 3

// Warnings say what the process does to the edges of a plate's holes, each once. Sources: public articles and file guides of cutting shops, and
// common practice.
func (s *Profile) Warnings(p *part.Plate) []string {
	var out []string
	say := func(format string, args ...any) {
		if text := fmt.Sprintf(format, args...); !slices.Contains(out, text) {
			out = append(out, text)
		}
	}
	for _, h := range p.Holes {
		switch {
		case h.CutMM == 0:
		case s.Process.thermal() && h.Finish != part.AsCut:
			say("the %s-cut edge of the %s hole is hard: start the drill or reamer well inside it and expect wear", s.Process, h.Purpose)
		case s.Process.thermal() && h.Purpose == part.ForPin:
			say("the pin hole stays as the %s leaves it: its edge is hard and its size scatters; drill or ream it where the pin turns or the load repeats", s.Process)
		case s.Process.thermal() && h.Purpose == part.ForBolt:
			say("thermally cut bolt holes are questioned where the load repeats: drill those that see it")
		case s.Process == Waterjet && p.ThicknessMM > taperedMM && h.Purpose == part.ForPin && h.Finish == part.AsCut:
			say("the pin hole tapers: it is smaller at the bottom face; gauge it there, or cut it undersize and ream it")
		}
	}
	return out
}

// Unmarked says why a plate, as Finished leaves it, comes without its part mark; empty for one that carries it.
func (s *Profile) Unmarked(p *part.Plate) string {
	switch {
	case p.Mark == "" || len(p.Etch) > 0:
		return ""
	case s.Marks.Style == NoMarks:
		return "the shop marks no plate"
	}
	return "too small for an etched mark"
}
