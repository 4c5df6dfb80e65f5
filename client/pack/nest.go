package pack

// This file lays the plates out on the job's stock sheets.

import (
	"context"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"lugwright/client/job"
	"lugwright/geometry/dxf"
	"lugwright/geometry/nest"
)

// nestTries is how many layouts are compared: the shop nests too.
const nestTries = 40

// addNest adds one cut file a sheet in the shop's first form, and a list; nothing when the job names no sheets.
func (a *assembly) addNest(ctx context.Context) error {
	if len(a.Job.Sheets) == 0 {
		return nil
	}
	rows := [][]string{{"file", "thickness_mm", "material", "width_mm", "height_mm", "pieces", "marks", "plates_over_used_percent", "left_of_it_width_mm"}}
	var noRoom []string
	for _, g := range a.stocks {
		sheets := a.sheetsFor(g)
		if len(sheets) == 0 {
			p := g.pieces[0].plate
			for _, words := range all(g) {
				noRoom = append(noRoom, fmt.Sprintf("%s (no sheet of %s mm %s is named)", words, mm(p.ThicknessMM), p.Material))
			}
			continue
		}
		r, err := nest.Lay(nestParts(g, sheets), nestSheets(sheets), a.Job.Shop.Files.GapMM, nestTries)
		if err != nil {
			return fmt.Errorf("laying out %s: %w", g.fileName, err)
		}
		for i, left := range r.Left {
			if left > 0 {
				noRoom = append(noRoom, fmt.Sprintf("%d x %s", left, g.pieces[i].plate.Mark))
			}
		}
		for k := range r.UsedMM {
			row, err := a.addSheet(ctx, g, counted(sheets)[k], r, k, len(rows))
			if err != nil {
				return err
			}
			rows = append(rows, row)
		}
	}
	a.noRoom = strings.Join(noRoom, ", ")
	if a.noRoom != "" && a.Say != nil {
		a.Say("no room on the stock sheets for " + a.noRoom)
	}
	for _, words := range noRoom {
		rows = append(rows, []string{"NO ROOM", "", "", "", "", "", words, "", ""})
	}
	a.list("nest.csv", rows)
	return nil
}

func all(g stock) []string {
	var out []string
	for _, p := range g.pieces {
		out = append(out, fmt.Sprintf("%d x %s", p.count, p.plate.Mark))
	}
	return out
}

// addSheet adds the file of sheet k of a layout, the job's number-th, and gives its row of the list.
func (a *assembly) addSheet(ctx context.Context, g stock, s job.Sheet, r nest.Result, k, number int) ([]string, error) {
	f := a.forms[0]
	f.folder = "nest"
	var pieces []dxf.Piece
	area := 0.0
	var marks []string
	for _, p := range r.Placements {
		if p.Sheet != k {
			continue
		}
		plate := g.pieces[p.Part].plate
		pieces = append(pieces, dxf.Piece{Plate: plate, At: p.At, TurnRad: p.TurnRad})
		area += math.Abs(plate.Outer.Area())
		if !slices.Contains(marks, plate.Mark) {
			marks = append(marks, plate.Mark)
		}
	}
	name := a.fileName(fmt.Sprintf("SHEET%d", number), g.pieces[0].plate, len(pieces))
	if err := a.addPieces(ctx, f, name, pieces); err != nil {
		return nil, err
	}
	return []string{
		a.marked("nest/" + name + ".dxf"), mm(s.ThicknessMM), s.Material, hundredths(s.WidthMM), hundredths(s.HeightMM),
		strconv.Itoa(len(pieces)), strings.Join(marks, " "), hundredths(100 * area / (r.UsedMM[k] * s.HeightMM)), hundredths(s.WidthMM - r.UsedMM[k]),
	}, nil
}

// sheetsFor are the job's sheets of a stock.
func (a *assembly) sheetsFor(g stock) []job.Sheet {
	p := g.pieces[0].plate
	return slices.DeleteFunc(slices.Clone(a.Job.Sheets), func(s job.Sheet) bool {
		return math.Abs(s.ThicknessMM-p.ThicknessMM) > 1e-6 || s.Material != p.Material
	})
}

// counted lists every single sheet.
func counted(sheets []job.Sheet) []job.Sheet {
	var out []job.Sheet
	for _, s := range sheets {
		for range s.Quantity {
			out = append(out, s)
		}
	}
	return out
}

func nestSheets(sheets []job.Sheet) []nest.Sheet {
	out := make([]nest.Sheet, len(sheets))
	for i, s := range sheets {
		out[i] = nest.Sheet{WidthMM: s.WidthMM, HeightMM: s.HeightMM, Count: s.Quantity}
	}
	return out
}

// nestParts are the pieces, in the turns that all the sheets of the stock allow.
func nestParts(g stock, sheets []job.Sheet) []nest.Part {
	turns := []float64{0, math.Pi / 2, math.Pi, 3 * math.Pi / 2}
	for _, s := range sheets {
		switch s.Turns {
		case job.NoTurn:
			turns = turns[:1]
		case job.HalfTurns:
			if len(turns) == 4 {
				turns = []float64{0, math.Pi}
			}
		}
	}
	out := make([]nest.Part, len(g.pieces))
	for i, p := range g.pieces {
		out[i] = nest.Part{Outer: p.plate.Outer, Count: p.count, TurnsRad: turns}
	}
	return out
}
