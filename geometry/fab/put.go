package fab

// Pieces of a bracket made apart and put where they belong.

import (
	"slices"

	"lugwright/part"
)

// Room is an empty bracket with room for so many plates, each with its welds, and so many sweeps.
func Room(plates, sweeps int) *part.Bracket {
	return &part.Bracket{Plates: make([]part.Plate, 0, plates), Welds: make([]part.WeldGroup, 0, 2*plates), Sweeps: make([]part.Sweep, 0, sweeps)}
}

// Put adds a piece to a bracket: its plates, members, bolts, welds, composites and sweeps, moved by a distance, every name of theirs with a prefix. What
// the piece stands on keeps its name and is left to the bracket.
func Put(b, piece *part.Bracket, prefix string, by part.Vec) {
	name := func(id string) string {
		if id == "" || piece.Support(id) != nil {
			return id
		}
		return prefix + id
	}
	names := func(ids []string) []string {
		out := slices.Clone(ids)
		for i := range out {
			out[i] = name(out[i])
		}
		return out
	}
	for _, p := range piece.Plates {
		p.ID, p.Pose.Origin = name(p.ID), p.Pose.Origin.Add(by)
		b.Plates = append(b.Plates, p)
	}
	for _, m := range piece.Members {
		m.ID, m.Pose.Origin = name(m.ID), m.Pose.Origin.Add(by)
		b.Members = append(b.Members, m)
	}
	for _, g := range piece.Bolts {
		g.ID, g.SameAs, g.Pose.Origin = name(g.ID), name(g.SameAs), g.Pose.Origin.Add(by)
		for k := range g.Plies {
			g.Plies[k].Thing = name(g.Plies[k].Thing)
		}
		b.Bolts = append(b.Bolts, g)
	}
	for _, w := range piece.Welds {
		w.ID, w.Joins, w.Segments = name(w.ID), [2]string{name(w.Joins[0]), name(w.Joins[1])}, slices.Clone(w.Segments)
		for k, s := range w.Segments {
			w.Segments[k] = part.WeldSegment{A: s.A.Add(by), B: s.B.Add(by)}
		}
		b.Welds = append(b.Welds, w)
	}
	for _, c := range piece.Composites {
		c.ID, c.Things, c.Welds, c.From, c.To = name(c.ID), names(c.Things), names(c.Welds), c.From.Add(by), c.To.Add(by)
		b.Composites = append(b.Composites, c)
	}
	for _, s := range piece.Sweeps {
		s.ID, s.Things, s.Bolts, s.Via = name(s.ID), names(s.Things), name(s.Bolts), name(s.Via)
		s.From, s.To = s.From.Add(by), s.To.Add(by)
		b.Sweeps = append(b.Sweeps, s)
	}
}
