package papers

// This file gathers distinct plates and members by their marks, counted over brackets and quantities, and numbers the welds.

import (
	"fmt"
	"slices"
	"strings"

	"lugwright/client/run"
	"lugwright/part"
)

// piece is a distinct plate as its cut file shows it.
type piece struct {
	plate *part.Plate
	hand  part.Hand
	count int
	in    []string // brackets
}

// section is a distinct member.
type section struct {
	member *part.Member
	hand   part.Hand
	count  int
}

// pieces are those of the whole job, in its order. A mark is one piece.
func (p *page) pieces() (plates []*piece, members []*section) {
	byMark, sawn := map[string]*piece{}, map[string]*section{}
	for i := range p.brackets() {
		b := &p.brackets()[i]
		made := b.Part.AsMade()
		for k := range made.Plates {
			q := &made.Plates[k]
			one := byMark[q.Mark]
			if one == nil {
				one = &piece{plate: q, hand: b.Part.Hand}
				byMark[q.Mark], plates = one, append(plates, one)
			}
			one.count += b.Spec.Quantity
			if n := len(one.in); n == 0 || one.in[n-1] != b.Spec.Name {
				one.in = append(one.in, b.Spec.Name)
			}
		}
		for k := range made.Members {
			m := &made.Members[k]
			one := sawn[m.Mark]
			if one == nil {
				one = &section{member: m, hand: b.Part.Hand}
				sawn[m.Mark], members = one, append(members, one)
			}
			one.count += b.Spec.Quantity
		}
	}
	return plates, members
}

// thing names a plate, a member or what a face belongs to by its own name and its mark: "ear-1 (PAIR-L1)", "leg a of base (PAIR-L4)"; anything else by its
// name.
func thing(b *part.Bracket, id string) string {
	owner := b.Owner(id)
	mark, face := "", ""
	if q := b.Plate(owner); q != nil {
		mark, face = q.Mark, "flange "
	} else if m := b.Member(owner); m != nil {
		mark, face = m.Mark, "leg "
	} else {
		return id
	}
	name := owner + " (" + mark + ")"
	if owner != id {
		name = face + id[len(owner)+1:] + " of " + name
	}
	return name
}

// pinned says whether any bracket has a pin.
func (p *page) pinned() bool {
	return slices.ContainsFunc(p.brackets(), func(b run.Bracket) bool { return len(b.Part.Pins) > 0 })
}

// closed is the folded plate whose corners are closed by welding, which is in the bracket's notes and carries no load that is reckoned; nil for none.
func closed(b *part.Bracket) *part.Plate {
	if closingNote(b) == "" {
		return nil
	}
	for i := range b.Plates {
		if len(b.Plates[i].Bends) > 0 {
			return &b.Plates[i]
		}
	}
	return nil
}

func closingNote(b *part.Bracket) string {
	for _, n := range b.Notes {
		if strings.Contains(n, "by welding") {
			return n
		}
	}
	return ""
}

// joint numbers a weld within its bracket: W1, W2, in the order of the model.
func joint(b *part.Bracket, id string) string {
	for i := range b.Welds {
		if b.Welds[i].ID == id {
			return fmt.Sprintf("W%d", i+1)
		}
	}
	return ""
}

// grade is the material of a plate, member or support; empty where it is not known.
func grade(b *part.Bracket, id string) (grade string, thicknessMM float64) {
	owner := b.Owner(id)
	if q := b.Plate(owner); q != nil {
		return q.Material, q.ThicknessMM
	}
	if m := b.Member(owner); m != nil {
		t := m.Profile.TMM
		if m.Profile.Kind == part.RoundBar {
			t = m.Profile.AMM
		}
		return m.Material, t
	}
	if s := b.Support(id); s != nil {
		return s.Material, s.ThicknessMM
	}
	return "", 0
}

// notes are the brackets' notes that begin so, the same words once, behind the names of the brackets that have them.
func (p *page) notes(begin string) []string {
	var words, out []string
	var names [][]string
	for i := range p.brackets() {
		b := &p.brackets()[i]
		for _, n := range b.Part.Notes {
			if !strings.HasPrefix(n, begin) {
				continue
			}
			k := slices.Index(words, n)
			if k < 0 {
				words, names, k = append(words, n), append(names, nil), len(words)
			}
			names[k] = append(names[k], b.Spec.Name)
		}
	}
	for k, n := range words {
		out = append(out, strings.Join(names[k], ", ")+": "+p.words(n))
	}
	return out
}
