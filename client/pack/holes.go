package pack

// This file adds the hole list: where each round hole and bore of each piece is, and how it comes about.

import (
	"context"
	"slices"
	"strconv"

	"lugwright/geometry/shape"
	"lugwright/geometry/shop"
	"lugwright/part"
)

// addHoleList places the holes of plates in the axes of their cut files and from the left and bottom of the outline; those of members along the length and from
// the heel, and as a leg's outer face shows them with the heel down. Bent plates lie flat. A job without holes gets no list.
func (a *assembly) addHoleList(context.Context) error {
	if !a.drilled() {
		return nil
	}
	rows := [][]string{{
		"mark", "hand", "qty", "face", "hole", "x_mm", "y_mm", "from_left_mm", "from_bottom_mm", "finished_mm", "cut_mm", "finish", "thread", "purpose", "made",
	}}
	total := 0
	var done map[string]string // at the holes of the piece at hand, when brackets are put together
	row := func(mark string, hand part.Hand, qty int, face string, h *part.Hole, from shape.Point, cut, made string) {
		if words := done[h.ID]; words != "" {
			made += "; " + words
		}
		total += qty
		rows = append(rows, []string{
			mark, string(hand), strconv.Itoa(qty), face, h.ID, hundredths(h.Center.X), hundredths(h.Center.Y), hundredths(from.X), hundredths(from.Y),
			hundredths(h.DiaMM), cut, string(h.Finish), h.Thread, string(h.Purpose), made,
		})
	}
	for _, p := range a.pieces {
		corner := p.plate.Outer.BBox().Min
		done = a.Result.AtHoles(p.plate.Mark)
		holes := p.plate.RoundHoles()
		for i := range holes {
			h := &holes[i]
			cut := "mark"
			if h.CutMM > 0 {
				cut = hundredths(h.CutMM)
			}
			row(p.plate.Mark, p.hand, p.count, "", h, h.Center.Sub(corner), cut, a.Job.Shop.Steps(h, p.plate.ThicknessMM))
		}
	}
	for _, m := range a.members {
		done = a.Result.AtHoles(m.member.Mark)
		for i := range m.member.Holes {
			h := &m.member.Holes[i]
			row(m.member.Mark, m.hand, m.count, "leg "+string(h.Face), &h.Hole, fromHeel(m.member, h), "", "mark out, "+shop.ByHand(&h.Hole))
		}
	}
	last := make([]string, len(rows[0]))
	last[0], last[2] = "TOTAL", strconv.Itoa(total)
	a.list("hole-list.csv", append(rows, last))
	return nil
}

// drilled says whether any piece has a round hole.
func (a *assembly) drilled() bool {
	return slices.ContainsFunc(a.pieces, func(p *piece) bool { return len(p.plate.RoundHoles()) > 0 }) ||
		slices.ContainsFunc(a.members, func(m *section) bool { return len(m.member.Holes) > 0 })
}

// fromHeel is where a hole is from the left end and the heel, seen on the leg's outer face with the heel down.
func fromHeel(m *part.Member, h *part.FaceHole) shape.Point {
	if h.Face == part.LegB {
		return h.Center
	}
	return shape.Point{X: m.LengthMM - h.Center.X, Y: h.Center.Y}
}
