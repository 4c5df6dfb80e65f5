package papers

// This file is the bend card: folds in order, where their lines lie, which way they turn, what to measure afterwards.

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"lugwright/geometry/shape"
	"lugwright/part"
)

func bendCard(p *page) string {
	if len(p.brackets()) == 0 {
		return noBrackets
	}
	plates, _ := p.pieces()
	var folded, rolled []*piece
	for _, q := range plates {
		if len(q.plate.Bends) > 0 {
			folded = append(folded, q)
		}
		if q.plate.RolledMM > 0 {
			rolled = append(rolled, q)
		}
	}
	if folded == nil && rolled == nil {
		return "no part is folded or rolled"
	}
	for _, q := range folded {
		p.folds(q)
	}
	if rolled != nil {
		t := table("", "mark", "#off", "#thickness", "material", "#inside radius", "read")
		for _, q := range rolled {
			row(t, q.plate.Mark, strconv.Itoa(q.count), p.bare(q.plate.ThicknessMM), q.plate.Material, p.bare(q.plate.RolledMM), blank)
		}
		p.head("Rolled, " + p.inUnit())
		p.add(t)
	}
	p.head("At the brake")
	lines := "the lines of the folds are in the cut file, on its layer " + p.in.Result.Job.Shop.Files.Layers.Bend
	if p.in.Result.Job.Shop.Files.Layers.Bend == "" {
		lines = "the cut file of this shop has no lines of folds: mark them out by this card"
	}
	p.bullets("the flat is drawn for the inside radius and the allowance beside it: another tool makes another part. The shop's own bend deduction overrules; tell it the outside leg to hold",
		"across the rolling direction where the sheet allows; deburr the edge that is stretched (common practice, no source)",
		"inside radius at least the thickness, flange at least three thicknesses and the radius (sheet-metal guides); "+lines,
		"bend one off first and measure it, then the rest")
	p.cautions(13, 14)
	return ""
}

func (p *page) folds(q *piece) {
	pl := q.plate
	p.head(fmt.Sprintf("%s %s: %s of %s %s", pl.Mark, pl.Name, counted(q.count, "piece", "pieces"), p.length(pl.ThicknessMM), pl.Material))
	t := table("Lengths in "+p.unit()+".", "#order", "fold line", "angle", "which way", "#inside radius", "#allowance", "#outside leg", "read")
	corner := pl.Outer.BBox().Min
	remarks := []string{up(pl)}
	for i, b := range pl.Bends {
		leg := ""
		if b.AllowanceMM > 0 {
			leg = p.bare(outsideLeg(pl, &b))
		}
		line := p.foldLine(&b, corner)
		if name := p.foldName(q, i+1); name != "" {
			line = name + ": " + line
		}
		row(t, strconv.Itoa(i+1), line, degrees(math.Abs(b.AngleRad)), way(&b), p.bare(b.RadiusMM), p.allowance(&b), leg, blank)
		if b.RadiusMM < pl.ThicknessMM-1e-6 {
			remarks = append(remarks, fmt.Sprintf("fold %d: the inside radius is less than the thickness: expect cracks, ask the mill's paper", i+1))
		}
	}
	p.add(t)
	p.add(p.plateDrawing(q, largeMM))
	if how := p.flatPattern(q); how != "" {
		remarks = append(remarks, how)
	}
	remarks = append(remarks, "the outside leg is from the outside of the sheet that stays flat to the flange's edge, over the fold, square to the flat")
	p.bullets(remarks...)
}

// foldNotes are what the piece's bracket says of its folds, in the form of the kinds: "fold 1: short side, front, up 90 deg, inside radius 6 mm; flat pattern by
// k = 0.44, ...".
func (p *page) foldNotes(q *piece) []string {
	var out []string
	for k := range p.brackets() {
		if b := &p.brackets()[k]; b.Spec.Name == q.in[0] {
			for _, n := range b.Part.Notes {
				if strings.HasPrefix(n, "fold ") {
					out = append(out, n)
				}
			}
		}
	}
	return out
}

// foldName is what a fold turns up: "short side, front"; empty where it is not said.
func (p *page) foldName(q *piece, number int) string {
	for _, n := range p.foldNotes(q) {
		rest, ok := strings.CutPrefix(n, fmt.Sprintf("fold %d: ", number))
		for _, way := range []string{", up ", ", down "} {
			if name, _, cut := strings.Cut(rest, way); ok && cut {
				return name
			}
		}
	}
	return ""
}

// flatPattern says how the flat came about.
func (p *page) flatPattern(q *piece) string {
	for _, n := range p.foldNotes(q) {
		if _, how, ok := strings.Cut(n, "; "); ok {
			return p.words(how)
		}
	}
	return ""
}

// allowance is how much of the flat the fold takes, half on either side of its line.
func (p *page) allowance(b *part.Bend) string {
	if b.AllowanceMM == 0 {
		return "not stated"
	}
	return p.bare(b.AllowanceMM)
}

// foldLine says where the line lies on the flat: along an axis at a distance from the left or the bottom edge, else by its ends.
func (p *page) foldLine(b *part.Bend, corner shape.Point) string {
	a, e := b.A.Sub(corner), b.B.Sub(corner)
	switch {
	case math.Abs(a.X-e.X) < nearMM:
		return "upright, " + p.bare(a.X) + " from left"
	case math.Abs(a.Y-e.Y) < nearMM:
		return "level, " + p.bare(a.Y) + " from bottom"
	}
	return fmt.Sprintf("from %s, %s to %s, %s", p.bare(a.X), p.bare(a.Y), p.bare(e.X), p.bare(e.Y))
}

// up says to which face folds turn up. The face that the cut file shows carries the mark, where the shop etches one.
func up(pl *part.Plate) string {
	words := "up is to the face that the cut file shows"
	if len(pl.Etch) > 0 {
		words += ", which is etched with the mark"
	}
	return words + "; down is away from it"
}

// way says which side of a fold's line moves, and whether up or down.
func way(b *part.Bend) string {
	up := "up"
	if b.AngleRad < 0 {
		up = "down"
	}
	d := b.B.Sub(b.A)
	side := "the side beyond the line"
	switch { // what lies to the left of A to B moves
	case math.Abs(d.X) < nearMM && d.Y > 0:
		side = "left side"
	case math.Abs(d.X) < nearMM:
		side = "right side"
	case math.Abs(d.Y) < nearMM && d.X > 0:
		side = "upper side"
	case math.Abs(d.Y) < nearMM:
		side = "lower side"
	}
	return side + " " + up
}

// outsideLeg is what the operator measures square to the flat: from the outside of the base over the fold to the flange's edge.
func outsideLeg(pl *part.Plate, b *part.Bend) float64 {
	n := b.B.Sub(b.A).Unit().Perp()
	far := 0.0
	for _, q := range pl.Outer.Polygon(0.05) {
		far = max(far, q.Sub(b.A).Dot(n))
	}
	angle := math.Abs(b.AngleRad)
	straight := far - b.AllowanceMM/2
	return (b.RadiusMM+pl.ThicknessMM)*(1-math.Cos(angle)) + straight*math.Sin(angle)
}
