package template

import (
	"fmt"
	"math"
	"testing"

	"lugwright/client/draw"
	"lugwright/geometry/shape"
)

// grid has holes over a stretch, with an edge round them.
func grid(width, height float64) *Template {
	t := &Template{Title: "grid", Hand: "LEFT HAND", Seen: "square to the face", Right: "right", Up: "up"}
	t.Outlines = []Outline{{Name: "edge", Shape: shape.Rect(shape.Point{X: -width / 2, Y: -height / 2}, shape.Point{X: width / 2, Y: height / 2})}}
	for x := -width/2 + 20; x < width/2; x += 70 {
		for y := -height/2 + 20; y < height/2; y += 90 {
			t.Holes = append(t.Holes, Hole{fmt.Sprintf("%.0f %.0f", x, y), shape.Point{X: x, Y: y}, 14, "drill", "", 0, ""})
		}
	}
	return t
}

// Tiles cover every hole and the datum, and an edge where it takes no further sheet; neighbours overlap as the sheets state, and go in their room.
func TestTilesCover(t *testing.T) {
	for _, room := range [][2]float64{{180, 239}, {185.9, 221.4}} {
		for _, size := range [][2]float64{{60, 40}, {150, 150}, {170, 200}, {400, 150}, {150, 600}, {900, 700}} {
			template := grid(size[0], size[1])
			tiles := template.Tiles(room[0], room[1])
			whole := shape.EmptyBox().Extend(shape.Point{})
			for _, h := range template.Holes {
				r := shape.Point{X: h.DiaMM/2 + 3, Y: h.DiaMM/2 + 3}
				whole = whole.Extend(h.At.Sub(r)).Extend(h.At.Add(r))
			}
			if all := template.extent(); all.Width() < room[0]-2*sideMM-2*edgeMM && all.Height() < room[1]-headMM-footMM-2*edgeMM {
				if whole = all; len(tiles) != 1 {
					t.Errorf("%v in %v: %d tiles", size, room, len(tiles))
				}
			}
			for x := whole.Min.X; x <= whole.Max.X; x += 7 {
				for y := whole.Min.Y; y <= whole.Max.Y; y += 7 {
					if !covered(tiles, shape.Point{X: x, Y: y}) {
						t.Fatalf("%v in %v: %g, %g is on no tile", size, room, x, y)
					}
				}
			}
			byName := map[string]*Tile{}
			for i := range tiles {
				byName[tiles[i].Name] = &tiles[i]
			}
			for i := range tiles {
				a := &tiles[i]
				if w, h := a.Window.Width()+2*sideMM, a.Window.Height()+headMM+footMM; w > room[0]+1e-9 || h > room[1]+1e-9 {
					t.Errorf("%v: tile %s is %g x %g in a room of %v", size, a.Name, w, h, room)
				}
				if b := byName[a.Right]; b != nil && math.Abs(a.Window.Max.X-b.Window.Min.X-OverlapMM) > 1e-9 {
					t.Errorf("%v: %s and %s overlap by %g", size, a.Name, b.Name, a.Window.Max.X-b.Window.Min.X)
				}
				if b := byName[a.Below]; b != nil && math.Abs(b.Window.Max.Y-a.Window.Min.Y-OverlapMM) > 1e-9 {
					t.Errorf("%v: %s and %s overlap by %g", size, a.Name, b.Name, b.Window.Max.Y-a.Window.Min.Y)
				}
			}
			if len(tiles) != len(byName) {
				t.Errorf("%v: two tiles of one name", size)
			}
		}
	}
}

func covered(tiles []Tile, p shape.Point) bool {
	for i := range tiles {
		if tiles[i].Window.Contains(p) {
			return true
		}
	}
	return false
}

// The crosses of two neighbours are at the same places of the face.
func TestCrossesMeet(t *testing.T) {
	template := grid(900, 700)
	at := map[shape.Point]map[string]bool{}
	tiles := template.Tiles(180, 239)
	for i := range tiles {
		for _, item := range template.Drawing(&tiles[i], "", func(mm float64) string { return fmt.Sprint(mm) }).Items {
			p, ok := item.(*draw.Path)
			if !ok || len(p.Segments) != 1 || p.Pen.WidthMM != thin.WidthMM {
				continue
			}
			to := p.Segments[0].To
			if math.Abs(math.Hypot(to.X-p.Start.X, to.Y-p.Start.Y)-8) > 1e-9 { // arms of a cross are 8 mm over all
				continue
			}
			back := tiles[i].Window.Min.Sub(shape.Point{X: sideMM, Y: footMM})
			m := shape.Point{X: math.Round(((p.Start.X+to.X)/2+back.X)*1e6) / 1e6, Y: math.Round(((p.Start.Y+to.Y)/2+back.Y)*1e6) / 1e6}
			if at[m] == nil {
				at[m] = map[string]bool{}
			}
			at[m][tiles[i].Name] = true
		}
	}
	seams := 0
	for i := range tiles {
		if tiles[i].Right != "" {
			seams++
		}
		if tiles[i].Below != "" {
			seams++
		}
	}
	met := 0
	for p, names := range at {
		if len(names) < 2 {
			t.Errorf("a cross at %v is on %v alone", p, names)
		}
		met++
	}
	if met < 2*seams {
		t.Errorf("%d crosses for %d seams", met, seams)
	}
}

// What is clipped lies in the box, and is as long as what of the whole lies there.
func TestClipped(t *testing.T) {
	box := shape.Box{Max: shape.Point{X: 10, Y: 10}}
	for _, c := range []struct {
		e    shape.Edge
		want float64
	}{
		{shape.Edge{A: shape.Point{X: -5, Y: 5}, B: shape.Point{X: 15, Y: 5}}, 10},
		{shape.Edge{A: shape.Point{X: -5, Y: -5}, B: shape.Point{X: 15, Y: 15}}, 10 * math.Sqrt2},
		{shape.Edge{A: shape.Point{X: -5, Y: 12}, B: shape.Point{X: 15, Y: 12}}, 0},
		{shape.Edge{A: shape.Point{X: 2, Y: 2}, B: shape.Point{X: 8, Y: 2}, Bulge: 1}, 2 * 3 * math.Asin(2.0/3)}, // half a circle that dips under the box
		{shape.Edge{A: shape.Point{X: 8, Y: 2}, B: shape.Point{X: 2, Y: 2}, Bulge: 1}, math.Pi * 3},
		{shape.Edge{A: shape.Point{X: 10, Y: 0}, B: shape.Point{X: 0, Y: 10}, Bulge: math.Tan(math.Pi / 8)}, math.Pi / 2 * 10},
		{shape.Edge{A: shape.Point{X: 5, Y: -5}, B: shape.Point{X: 5, Y: 5}, Bulge: 1}, math.Pi / 2 * 5},
	} {
		sum := 0.0
		for _, e := range clipped(c.e, box) {
			sum += e.Length()
			if b := e.BBox(); !inside(b, box.Grow(1e-9)) {
				t.Errorf("%v: %v is outside", c.e, e)
			}
		}
		if math.Abs(sum-c.want) > 0.02 {
			t.Errorf("%v: %g mm in the box, want %g", c.e, sum, c.want)
		}
	}
}

// No line runs into words within a window, but the faint check diagonal, and no words into others: of grids with edges of many sizes, on both sheets.
func TestNothingRunsIntoWords(t *testing.T) {
	for _, room := range [][2]float64{{180, 239}, {185.9, 221.4}} {
		for _, size := range [][2]float64{{60, 40}, {100, 300}, {150, 150}, {170, 200}, {250, 150}, {400, 150}, {150, 600}, {500, 400}} {
			g := grid(size[0], size[1])
			tiles := g.Tiles(room[0], room[1])
			for i := range tiles {
				for _, c := range struckWords(g.Drawing(&tiles[i], "A1 to B2", func(mm float64) string { return fmt.Sprintf("%g mm", mm) })) {
					t.Errorf("%v in %v, tile %s: %s", size, room, tiles[i].Name, c)
				}
			}
		}
	}
}

// struckWords lists words that a line or other words run into.
func struckWords(d *draw.Drawing) []string {
	var out []string
	var texts []*draw.Text
	var lines []shape.Edge
	for _, item := range d.Items {
		switch item := item.(type) {
		case *draw.Text:
			texts = append(texts, item)
		case *draw.Path:
			if item.Pen.Grey == diagonal.Grey {
				continue
			}
			from := item.Start
			for _, s := range item.Segments {
				lines = append(lines, shape.Edge{A: shape.Point(from), B: shape.Point(s.To), Bulge: s.Bulge})
				from = s.To
			}
		}
	}
	for i, t := range texts {
		box := boxOf(t)
		for _, o := range texts[:i] {
			if boxOf(o).Overlaps(box) {
				out = append(out, fmt.Sprintf("%q and %q overlap", o.Words, t.Words))
			}
		}
		loop := shape.Rect(box.Min, box.Max)
		for _, e := range lines {
			if e.BBox().Overlaps(box) && (shape.LoopDistance(loop, shape.Loop{{Point: e.A, Bulge: e.Bulge}, {Point: e.B, Bulge: -e.Bulge}}) == 0 || loop.Contains(e.A)) {
				out = append(out, fmt.Sprintf("a line from %.1f,%.1f to %.1f,%.1f runs into %q", e.A.X, e.A.Y, e.B.X, e.B.Y, t.Words))
				break
			}
		}
	}
	return out
}
