package pack

// This file gathers the distinct plates and members of the whole job: what bears one mark is one piece, counted over
// brackets and their quantities.

import (
	"context"
	"fmt"
	"slices"
	"strconv"
	"strings"

	"lugwright/client/run"
	"lugwright/geometry/shop"
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
	// fileName says what the shop must not lose, in its own pattern.
	fileName string
}

// stock is the pieces of one thickness of one material.
type stock struct {
	pieces   []*piece
	fileName string
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
		made := b.Part.AsMade()
		for k := range made.Plates {
			if err := a.addPlate(b, &made.Plates[k], density); err != nil {
				return err
			}
		}
		for k := range made.Members {
			if err := a.addMember(b, &made.Members[k], density); err != nil {
				return err
			}
		}
	}
	if err := a.nameFiles(); err != nil {
		return err
	}
	a.stocks, err = a.stocked()
	return err
}

// nameFiles names the pieces' files once their counts are known. It refuses a pattern under which two would share one.
func (a *assembly) nameFiles() error {
	taken := map[string]string{}
	for _, p := range a.pieces {
		p.fileName = a.fileName(safe(p.plate.Mark), p.plate, p.count)
		if other, ok := taken[strings.ToLower(p.fileName)]; ok {
			return a.Job.AtShop(fmt.Sprintf("%s and %s would share the file %s", other, p.plate.Mark, p.fileName), "a pattern in files.naming that tells pieces apart")
		}
		taken[strings.ToLower(p.fileName)] = p.plate.Mark
	}
	return nil
}

// allPlates stands for the mark in the name of a file of all plates of a thickness.
const allPlates = "PLATES"

// fileName fills the shop's pattern in. What is of one piece or sheet has its mark in front where a pattern for whole thicknesses has none.
func (a *assembly) fileName(mark string, p *part.Plate, count int) string {
	unit, thickness := "mm", mm(p.ThicknessMM)+"mm"
	if a.Job.Shop.Files.Inch {
		unit, thickness = "inch", inches(p.ThicknessMM)+"in"
	}
	name := a.Job.Shop.Files.FileName(map[string]string{
		"mark": mark, "thickness": thickness, "material": safe(p.Material), "quantity": strconv.Itoa(count), "units": unit,
		"job": safe(a.Job.Title), "revision": safe(a.Job.Revision),
	})
	if mark != allPlates && !strings.Contains(a.Job.Shop.Files.Naming, "{mark}") {
		name = mark + "_" + name
	}
	return name
}

// stocked gathers the pieces by thickness and material, in the order in which they first appear. It refuses a pattern under which two would share a file.
func (a *assembly) stocked() ([]stock, error) {
	var out []stock
	for _, p := range a.pieces {
		i := slices.IndexFunc(out, func(g stock) bool {
			return g.pieces[0].plate.ThicknessMM == p.plate.ThicknessMM && g.pieces[0].plate.Material == p.plate.Material
		})
		if i < 0 {
			i, out = len(out), append(out, stock{})
		}
		out[i].pieces = append(out[i].pieces, p)
	}
	for i := range out {
		count := 0
		for _, p := range out[i].pieces {
			count += p.count
		}
		out[i].fileName = a.fileName(allPlates, out[i].pieces[0].plate, count)
		if a.Job.Shop.Files.Grouping != shop.OneThickness {
			continue
		}
		for k := range out[:i] {
			if p, q := out[k].pieces[0].plate, out[i].pieces[0].plate; strings.EqualFold(out[k].fileName, out[i].fileName) {
				return nil, a.Job.AtShop(fmt.Sprintf("%s mm of %s and %s mm of %s would share the file %s", mm(p.ThicknessMM), p.Material, mm(q.ThicknessMM), q.Material, out[i].fileName),
					"a pattern in files.naming that tells thicknesses and materials apart: {thickness}, {material}")
			}
		}
	}
	return out, nil
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
		if first.member.Mark != m.Mark || !first.member.SamePiece(m) || first.hand != b.Part.Hand {
			return twoPieces(b, m.ID, m.Mark)
		}
		first.count += b.Spec.Quantity
		return nil
	}
	kgPerMM3, err := density.of(b, m.ID, m.Material)
	if err != nil {
		return err
	}
	a.members = append(a.members, &section{m, b.Part.Hand, b.Spec.Quantity, grams(m.VolumeMM3() * kgPerMM3)})
	return nil
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
