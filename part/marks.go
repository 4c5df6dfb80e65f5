package part

import (
	"fmt"
	"slices"

	"lugwright/geometry/shape"
)

// AddMarks gives every plate and member its part mark: root, hand letter and a running number, one number for pieces
// that are the same. A right-hand piece differs from its left-hand twin by the letter alone.
func (b *Bracket) AddMarks(root string) {
	prefix := root + "-L"
	if b.Hand == RightHand {
		prefix = root + "-R"
	}
	n := 0
	for i := range b.Plates {
		p := &b.Plates[i]
		j := 0
		for j < i && !b.Plates[j].SamePiece(p) {
			j++
		}
		if j < i {
			p.Mark = b.Plates[j].Mark
		} else {
			n++
			p.Mark = fmt.Sprintf("%s%d", prefix, n)
		}
		for k := range p.Etch {
			if p.Etch[k].Text == MarkHere {
				p.Etch[k].Text = p.Mark
			}
		}
	}
	for i := range b.Members {
		m := &b.Members[i]
		j := 0
		for j < i && !b.Members[j].SamePiece(m) {
			j++
		}
		if j < i {
			m.Mark = b.Members[j].Mark
			continue
		}
		n++
		m.Mark = fmt.Sprintf("%s%d", prefix, n)
	}
}

// MarkHere is the etch text that a kind writes where the part mark belongs.
const MarkHere = "{mark}"

// SamePiece says whether two members are sawn and drilled alike.
func (m *Member) SamePiece(q *Member) bool {
	return m.Material == q.Material && m.Profile == q.Profile && m.LengthMM == q.LengthMM &&
		slices.EqualFunc(m.Holes, q.Holes, func(a, b FaceHole) bool { return a.Face == b.Face && sameHole(a.Hole, b.Hole) })
}

// sameHole says whether two holes are made alike, whatever their names.
func sameHole(a, b Hole) bool {
	return a.Center == b.Center && a.DiaMM == b.DiaMM && a.CutMM == b.CutMM && a.Finish == b.Finish && a.Thread == b.Thread
}

// SamePiece says whether two plates come off the table alike: stock, outline, holes and bends.
func (p *Plate) SamePiece(q *Plate) bool {
	return p.ThicknessMM == q.ThicknessMM && p.Material == q.Material && p.RolledMM == q.RolledMM &&
		slices.Equal(p.Outer, q.Outer) && slices.EqualFunc(p.Holes, q.Holes, sameHole) &&
		slices.EqualFunc(p.Cutouts, q.Cutouts, func(a, b shape.Loop) bool { return slices.Equal(a, b) }) &&
		slices.Equal(p.Bends, q.Bends)
}
