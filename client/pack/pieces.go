package pack

// This file gathers the distinct plates and members of the whole job: what bears one mark is one piece, counted over
// brackets and their quantities.

import (
	"context"
	"fmt"
	"reflect"
	"slices"
	"strings"

	"lugwright/client/run"
	"lugwright/part"
)

// piece is a distinct plate.
type piece struct {
	plate   *part.Plate
	hand    part.Hand
	count   int
	grams   int64 // of one, as cut
	tenths  int64 // cut length of one, in tenths of a mm
	pierces int
}

// section is a distinct member.
type section struct {
	member *part.Member
	hand   part.Hand
	count  int
	grams  int64
}

// gather fills in pieces and members, in the order of the job.
func (a *assembly) gather(ctx context.Context) error {
	density, err := a.densities(ctx)
	if err != nil {
		return err
	}
	for i := range a.Result.Brackets {
		b := &a.Result.Brackets[i]
		for k := range b.Part.Plates {
			if err := a.addPlate(b, &b.Part.Plates[k], density); err != nil {
				return err
			}
		}
		for k := range b.Part.Members {
			if err := a.addMember(b, &b.Part.Members[k], density); err != nil {
				return err
			}
		}
	}
	return nil
}

func (a *assembly) addPlate(b *run.Bracket, p *part.Plate, density densities) error {
	at := slices.IndexFunc(a.pieces, func(q *piece) bool { return strings.EqualFold(q.plate.Mark, p.Mark) })
	if at >= 0 {
		first := a.pieces[at]
		if first.plate.Mark != p.Mark || first.hand != b.Part.Hand || !first.plate.SamePiece(p) {
			return twoPieces(b, p.ID, p.Mark)
		}
		first.count += b.Spec.Quantity
		return nil
	}
	kgPerMM3, err := density.of(b, p.ID, p.Material)
	if err != nil {
		return err
	}
	a.pieces = append(a.pieces, measured(p, b, kgPerMM3))
	return nil
}

func (a *assembly) addMember(b *run.Bracket, m *part.Member, density densities) error {
	at := slices.IndexFunc(a.members, func(q *section) bool { return strings.EqualFold(q.member.Mark, m.Mark) })
	if at >= 0 {
		first := a.members[at]
		if !sameMember(first.member, m) || first.hand != b.Part.Hand {
			return twoPieces(b, m.ID, m.Mark)
		}
		first.count += b.Spec.Quantity
		return nil
	}
	kgPerMM3, err := density.of(b, m.ID, m.Material)
	if err != nil {
		return err
	}
	a.members = append(a.members, &section{m, b.Part.Hand, b.Spec.Quantity, grams(memberVolume(m) * kgPerMM3)})
	return nil
}

func sameMember(m, n *part.Member) bool {
	return m.Mark == n.Mark && m.Profile == n.Profile && m.Material == n.Material && m.LengthMM == n.LengthMM &&
		reflect.DeepEqual(m.Holes, n.Holes)
}

func twoPieces(b *run.Bracket, id, mark string) error {
	return &part.FieldError{
		Field:  fmt.Sprintf("brackets[%s].mark", b.Spec.Name),
		Found:  fmt.Sprintf("%s would be marked %s like a different piece", id, mark),
		Accept: "one mark for each distinct piece",
	}
}

// densities is kg/mm3 by grade.
type densities map[string]float64

func (a *assembly) densities(ctx context.Context) (densities, error) {
	all, err := a.Client.Materials(ctx)
	if err != nil {
		return nil, err
	}
	d := densities{}
	for i := range all.Grades {
		g := &all.Grades[i]
		for _, name := range append(slices.Clone(g.Aliases), g.Name) {
			d[name] = g.KgPerMM3()
		}
	}
	return d, nil
}

func (d densities) of(b *run.Bracket, id, grade string) (float64, error) {
	if v := d[grade]; v > 0 {
		return v, nil
	}
	return 0, &part.FieldError{
		Field:  fmt.Sprintf("brackets[%s]", b.Spec.Name),
		Found:  fmt.Sprintf("%s is of %q, and no density is listed for it", id, grade),
		Accept: "a grade that `lugwright materials` lists",
	}
}
