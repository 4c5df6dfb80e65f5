package pack

// This file adds the cut files. Each is re-read before release: it must keep every rule of cut files and equal the model.

import (
	"context"
	"fmt"
	"math"
	"slices"
	"strings"

	"lugwright/geometry/dxf"
	"lugwright/geometry/shape"
	"lugwright/geometry/shop"
	"lugwright/part"
	"lugwright/services/dial"
	"lugwright/units"
)

// A form is one way in which the shop wants cut files.
type form struct {
	folder string
	words  string
	format dial.Format
	dxf    dxf.Options
}

func formsOf(s *shop.Profile) []form {
	out := make([]form, len(s.Files.Versions))
	for i, v := range s.Files.Versions {
		f := map[shop.Version]form{
			shop.R2000: {"dxf/r2000", "cut files, closed polylines", dial.DXFR2000, dxf.Options{Version: dxf.R2000}},
			shop.R2010: {"dxf/r2010", "cut files, closed polylines", dial.DXFR2010, dxf.Options{Version: dxf.R2010}},
			shop.R12:   {"dxf/r12", "cut files of lines, arcs and circles", dial.DXFR12, dxf.Options{Version: dxf.R12}},
		}[v]
		if s.Files.Inch {
			f.format, f.dxf.Inch = f.format+"-inch", true
		}
		f.dxf.Layers, f.dxf.OutlineMarks = dxf.Layers(s.Files.Layers), s.Marks.Style == shop.OutLines
		out[i] = f
	}
	return out
}

func (f *form) style() dial.CutStyle {
	l := f.dxf.Layers
	return dial.CutStyle{Cut: l.Cut, Etch: l.Etch, Bend: l.Bend, Centre: l.Centre, OutlineMarks: f.dxf.OutlineMarks}
}

func (a *assembly) addDXF(ctx context.Context) error {
	for _, f := range a.forms {
		add := a.addParts
		if a.Job.Shop.Files.Grouping == shop.OneThickness {
			add = a.addSheets
		}
		if err := add(ctx, f); err != nil {
			return err
		}
	}
	return nil
}

// addParts adds one file for each piece.
func (a *assembly) addParts(_ context.Context, f form) error {
	made, err := a.plateFiles(f.format)
	if err != nil {
		return err
	}
	for i, p := range a.pieces {
		a.addLater(f.cutFile(p.fileName), func() ([]byte, error) {
			return made[i], f.release(p.fileName, []dxf.Piece{{Plate: p.plate}}, made[i])
		})
	}
	return nil
}

// addSheets adds one file for each thickness of each material, with every piece as often as it is needed.
func (a *assembly) addSheets(ctx context.Context, f form) error {
	for _, g := range a.stocks {
		if err := a.addPieces(ctx, f, g.fileName, a.laidOut(g)); err != nil {
			return err
		}
	}
	return nil
}

// addPieces adds one file of several pieces in their places.
func (a *assembly) addPieces(ctx context.Context, f form, name string, pieces []dxf.Piece) error {
	order := dial.Sheet{Name: name, Format: f.format, Style: f.style()}
	for _, p := range pieces {
		order.Plates = append(order.Plates, dial.Placed{Plate: *p.Plate, At: p.At, TurnRad: p.TurnRad})
	}
	file, err := a.Client.ExportSheet(ctx, order)
	if err != nil {
		return err
	}
	if err := f.release(name, pieces, file.Data); err != nil {
		return err
	}
	a.add(f.cutFile(name), file.Data)
	return nil
}

// laidOut puts the pieces of one stock in rows.
func (a *assembly) laidOut(g stock) []dxf.Piece {
	var pieces []dxf.Piece
	var boxes []shape.Box
	for _, p := range g.pieces {
		for range p.count {
			pieces, boxes = append(pieces, dxf.Piece{Plate: p.plate}), append(boxes, p.plate.Outer.BBox())
		}
	}
	for i, at := range shop.Rows(boxes, a.Job.Shop.Files.GapMM) {
		pieces[i].At = at
	}
	return pieces
}

func (f *form) cutFile(name string) string { return f.folder + "/" + name + ".dxf" }

// release refuses a cut file that breaks a rule or does not equal the model.
func (f *form) release(name string, pieces []dxf.Piece, data []byte) error {
	if err := sound(pieces, f.dxf, data); err != nil {
		return &UnsoundError{f.cutFile(name), err.Error()}
	}
	return nil
}

// plateFiles are the files of the distinct pieces, in their order.
func (a *assembly) plateFiles(format dial.Format) ([][]byte, error) {
	made := make([][]byte, len(a.pieces))
	for i, files := range a.made[format] {
		b := a.Result.Brackets[i].Part
		pieces := a.piecesOf(b)
		if len(files) != len(pieces) {
			return nil, &UnsoundError{b.Name, fmt.Sprintf("the geometry service gave %d files for %d distinct plates", len(files), len(pieces))}
		}
		for k, p := range pieces {
			if made[p] == nil {
				made[p] = files[k].Data
			}
		}
	}
	return made, nil
}

// piecesOf numbers a bracket's distinct pieces in the order of its plates: the order of exported files.
func (a *assembly) piecesOf(b *part.Bracket) []int {
	var out []int
	for i := range b.Plates {
		at := slices.IndexFunc(a.pieces, func(q *piece) bool { return q.plate.Mark == b.Plates[i].Mark })
		if !slices.Contains(out, at) {
			out = append(out, at)
		}
	}
	return out
}

// safe keeps letters, digits, dots, dashes and underscores; every other character becomes a dash.
func safe(s string) string {
	return strings.Map(func(r rune) rune {
		if r < 0x80 && (r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || strings.ContainsRune("._-", r)) {
			return r
		}
		return '-'
	}, s)
}

// mm writes a length with up to three decimals.
func mm(v float64) string {
	text := strings.TrimRight(units.FormatPlain(v, 3), "0")
	return strings.TrimSuffix(text, ".")
}

// closeMM is how far a cut file may be off the model: arcs that rise less than this are written as lines.
const closeMM = 0.001

// sound says why a cut file may not leave the house, nil when it may.
func sound(pieces []dxf.Piece, o dxf.Options, data []byte) error {
	f, bad := dxf.ReadChecked(data, o.Layers, len(pieces))
	if len(bad) > 0 {
		return fmt.Errorf("%s", bad[0])
	}
	if f.Version != o.Version || f.Inch != o.Inch {
		return fmt.Errorf("it is %s, inch %t; need %s, inch %t", f.Version, f.Inch, o.Version, o.Inch)
	}
	got := f.Outlines()
	if len(got) != len(pieces) {
		return fmt.Errorf("it has %d pieces; need %d", len(got), len(pieces))
	}
	for i := range pieces {
		if err := equal(got[i], pieces[i].Outline()); err != nil {
			return err
		}
	}
	return nil
}

// equal compares an outline as read with the model's: place and size of the whole, area and centroid (a mirror image has
// another), and each hole.
func equal(got, want shape.Outline) error {
	slack := closeMM * want.Length()
	if d := math.Abs(got.Area() - want.Area()); !(d <= slack) {
		return fmt.Errorf("its area is %.3f mm2; the model's is %.3f mm2", got.Area(), want.Area())
	}
	a, b := got.BBox(), want.BBox()
	if !near(a.Min, b.Min) || !near(a.Max, b.Max) {
		return fmt.Errorf("it reaches from %v to %v; the model from %v to %v", a.Min, a.Max, b.Min, b.Max)
	}
	if c, m := got.Properties().Centroid, want.Properties().Centroid; !near(c, m) {
		return fmt.Errorf("its centroid is %v; the model's is %v", c, m)
	}
	if len(got.Holes) != len(want.Holes) {
		return fmt.Errorf("it has %d openings; the model has %d", len(got.Holes), len(want.Holes))
	}
	for i := range want.Holes {
		h := want.Holes[i]
		if !slices.ContainsFunc(got.Holes, func(g shape.Loop) bool { return sameLoop(g, h) }) {
			return fmt.Errorf("the model's opening %d has no equal in it", i)
		}
	}
	return nil
}

func sameLoop(g, h shape.Loop) bool {
	a, b := g.BBox(), h.BBox()
	return near(a.Min, b.Min) && near(a.Max, b.Max) && math.Abs(math.Abs(g.Area())-math.Abs(h.Area())) <= closeMM*h.Length()
}

func near(a, b shape.Point) bool { return a.Dist(b) <= closeMM }
