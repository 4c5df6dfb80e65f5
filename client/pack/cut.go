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
	"lugwright/part"
	"lugwright/services/dial"
	"lugwright/units"
)

// styles are the versions in which every plate is written.
var styles = []struct {
	folder  string
	format  dial.Format
	version dxf.Version
}{
	{"dxf/r2000", dial.DXFR2000, dxf.R2000},
	{"dxf/r12", dial.DXFR12, dxf.R12},
}

func (a *assembly) addDXF(ctx context.Context) error {
	for _, style := range styles {
		err := a.eachPlate(ctx, style.format, func(p *piece, data []byte) error {
			name := style.folder + "/" + p.fileName() + "_units-mm.dxf"
			if err := sound(p.plate, style.version, data); err != nil {
				return &UnsoundError{name, err.Error()}
			}
			a.add(name, data)
			return nil
		})
		if err != nil {
			return err
		}
	}
	return nil
}

// eachPlate asks for every bracket's plate files and hands each distinct piece's on, once.
func (a *assembly) eachPlate(ctx context.Context, format dial.Format, use func(*piece, []byte) error) error {
	done := map[*piece]bool{}
	for i := range a.Result.Brackets {
		b := a.Result.Brackets[i].Part
		files, err := a.Client.Export(ctx, b, format)
		if err != nil {
			return err
		}
		pieces := a.piecesOf(b)
		if len(files) != len(pieces) {
			return &UnsoundError{b.Name, fmt.Sprintf("the geometry service gave %d files for %d distinct plates", len(files), len(pieces))}
		}
		for k, p := range pieces {
			if done[p] {
				continue
			}
			done[p] = true
			if err := use(p, files[k].Data); err != nil {
				return err
			}
		}
	}
	return nil
}

// piecesOf gives a bracket's distinct pieces in the order of its plates: the order of exported files.
func (a *assembly) piecesOf(b *part.Bracket) []*piece {
	var out []*piece
	for i := range b.Plates {
		at := slices.IndexFunc(a.pieces, func(q *piece) bool { return q.plate.Mark == b.Plates[i].Mark })
		if !slices.Contains(out, a.pieces[at]) {
			out = append(out, a.pieces[at])
		}
	}
	return out
}

// fileName says what the shop must not lose: mark, thickness, material, quantity.
func (p *piece) fileName() string {
	return fmt.Sprintf("%s_%smm_%s_x%d", safe(p.plate.Mark), mm(p.plate.ThicknessMM), safe(p.plate.Material), p.count)
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
func sound(p *part.Plate, version dxf.Version, data []byte) error {
	if bad := dxf.Check(data); len(bad) > 0 {
		return fmt.Errorf("%s", bad[0])
	}
	f, err := dxf.Read(data)
	if err != nil {
		return err
	}
	if f.Version != version || f.Inch {
		return fmt.Errorf("it is %s, inch %t; need %s in mm", f.Version, f.Inch, version)
	}
	return equal(f.Outline(), p.Shape(true))
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
