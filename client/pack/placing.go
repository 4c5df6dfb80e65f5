package pack

// This file adds the placing list: for the welder, where each part stands on what it is welded to, and by which weld.

import (
	"context"
	"strconv"

	"lugwright/geometry/setout"
	"lugwright/part"
)

// addPlacingList lists the welds of each bracket in the order in which its parts go on. A job without welds gets no list.
func (a *assembly) addPlacingList(context.Context) error {
	rows := [][]string{{
		"bracket", "hand", "qty", "order", "part", "mark", "what", "on", "on_mark", "side", "from_1", "at_1_mm", "from_2", "at_2_mm", "foot_1_mm", "foot_2_mm", "turned_deg",
		"weld", "kind", "leg_mm", "faces", "runs", "length_mm", "filler",
	}}
	for _, b := range a.Result.Brackets {
		for _, p := range setout.Of(b.Part.AsMade()) {
			mark, what := pieceOf(b.Part, p.Part)
			onMark, _ := pieceOf(b.Part, p.On)
			row := []string{
				b.Spec.Name, string(b.Spec.Hand), strconv.Itoa(b.Spec.Quantity), strconv.Itoa(p.Step), p.Part, mark, what, p.On, onMark, string(p.Side),
				"", "", "", "", "", "", "",
				p.Weld.ID, string(p.Weld.Kind), hundredths(p.Weld.LegMM), setout.Faces(p.Weld), strconv.Itoa(len(p.Weld.Segments)), hundredths(p.LengthMM), p.Weld.Electrode,
			}
			for k, edge := range p.From {
				if edge != "" {
					row[10+2*k], row[11+2*k], row[14+k] = string(edge), hundredths(p.AtMM[k]), hundredths(p.FootMM[k])
				}
			}
			if p.TurnedRad > 0 {
				row[16] = degrees(p.TurnedRad)
			}
			rows = append(rows, row)
		}
	}
	if len(rows) > 1 {
		a.list("placing-list.csv", rows)
	}
	return nil
}

// welded says whether any bracket has a weld.
func (a *assembly) welded() bool {
	for _, b := range a.Result.Brackets {
		if len(b.Part.Welds) > 0 {
			return true
		}
	}
	return false
}

// pieceOf is the mark and the name of a plate or member, or of what a face belongs to.
func pieceOf(b *part.Bracket, id string) (mark, name string) {
	id = b.Owner(id)
	if p := b.Plate(id); p != nil {
		return p.Mark, p.Name
	}
	if m := b.Member(id); m != nil {
		return m.Mark, m.Name
	}
	return "", ""
}
