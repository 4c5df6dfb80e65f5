package papers

// This file is the drill template: each face to drill at full scale, tiled over sheets.

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"lugwright/client/paper"
	"lugwright/client/run"
	"lugwright/client/template"
	"lugwright/part"
	"lugwright/units"
)

func drillTemplate(p *page) string {
	if len(p.brackets()) == 0 {
		return noBrackets
	}
	all, without := p.templates(), p.withoutTemplate()
	switch {
	case len(all) == 0 && without != nil:
		return strings.Join(without, "; ")
	case len(all) == 0:
		return "nothing is drilled: no bracket is bolted to the frame, and the shop cuts every hole"
	}
	p.say("Full scale. Print at 100 %%, without fitting to the page, on %s. Then, before anything is marked, on every sheet:", p.sheetName())
	p.ticks("both bars and the check diagonal measure what stands beside them: a printer may be true one way and not the other; a sheet that is off is thrown away",
		"tiles of one template laid crosses on crosses, glued, and the distances of the tables measured once more across the joints",
		"the right hand: L and R have a template each; none is turned over")
	for _, t := range all {
		p.template(t, all)
	}
	if without != nil {
		p.head("Without a template")
		p.bullets(without...)
	}
	p.cautions(2, 13, 14)
	p.add(&paper.NewPage{})
	for _, t := range all {
		p.tiles(t)
	}
	return ""
}

// withoutTemplate says what is drilled or held without a paper laid on it, and how else.
func (p *page) withoutTemplate() []string {
	var out []string
	for i := range p.brackets() {
		b := &p.brackets()[i]
		for k := range b.Part.Rods {
			r := &b.Part.Rods[k]
			words := fmt.Sprintf("%s, %s: mark the rods' holes through the bracket's own, held up in its place; what they go through lies apart, and paper does not lie flat across it", b.Spec.Name, r.ID)
			if a, c := farthest(rodHoles(r)); a != c {
				words += fmt.Sprintf(" (check across: %s between the centres furthest apart)", p.length(r.Points[a].Dist(r.Points[c])))
			}
			out = append(out, words)
		}
		if slices.ContainsFunc(b.Part.Contacts, func(c part.Contact) bool { return c.WrapRad > 0 }) {
			out = append(out, b.Spec.Name+": the tube in the saddle has no hole; cap, seat and collars hold it")
		}
	}
	return out
}

func rodHoles(r *part.Rods) []template.Hole {
	out := make([]template.Hole, len(r.Points))
	for i, q := range r.Points {
		out[i].At = q
	}
	return out
}

func (p *page) sheetName() string {
	if p.system == units.Inch {
		return "letter"
	}
	return "A4"
}

// sheet is a paper of the size that this one is printed on.
func (p *page) sheet() *paper.Paper { return &paper.Paper{Letter: p.system == units.Inch} }

// templates are those of what the brackets are bolted to, then those of parts with holes that nobody cuts.
func (p *page) templates() []*template.Template {
	var out []*template.Template
	for i := range p.brackets() {
		b := &p.brackets()[i]
		for _, t := range template.OfSupports(b.Part.AsMade(), p.keyOf(b)) {
			p.onVehicle(t, b)
			p.judge(t, b)
			out = append(out, t)
		}
	}
	plates, members := p.pieces()
	for _, q := range plates {
		if t := template.OfPlate(q.plate, q.hand, p.making); t != nil {
			out = append(out, t)
		}
	}
	for _, m := range members {
		for _, face := range []part.Face{part.LegA, part.LegB} {
			if m.member.Profile.Kind != part.Angle {
				continue
			}
			if t := template.OfLeg(m.member, face, m.hand, p.making); t != nil {
				out = append(out, t)
			}
		}
	}
	rows := 0
	for _, t := range out { // tiles of one name would be laid together
		t.FirstRow = rows
		tiles, _ := p.tilesOf(t)
		for i := range tiles {
			if tiles[i].Left == "" {
				rows++
			}
		}
	}
	return out
}

// keyOf is the load point that a bracket's template is keyed to, as made; nil where there are several and the job names none.
func (p *page) keyOf(b *run.Bracket) *part.Vec {
	made := b.Part.AsMade()
	lp := made.LoadPoint(b.Spec.LoadPoint)
	if lp == nil && len(made.LoadPoints) == 1 {
		lp = &made.LoadPoints[0]
	}
	if lp == nil {
		return nil
	}
	return &lp.At
}

// making is how a hole that is not cut is made.
func (p *page) making(h *part.Hole) string {
	byHand := *h
	byHand.CutMM = 0
	_, drill, ream, tap := p.steps(&byHand)
	var out []string
	for _, s := range []struct{ verb, size string }{{"drill", drill}, {"ream", ream}, {"tap", tap}} {
		if s.size != "" {
			out = append(out, s.verb+" "+s.size)
		}
	}
	return cmp.Or(strings.Join(out, ", "), "drill")
}

// onVehicle says where on the vehicle the datum lines lie, as far as that is known.
func (p *page) onVehicle(t *template.Template, b *run.Bracket) {
	mount := func(words string, offMM float64, toward string) string {
		if math.Abs(offMM) < 0.01 {
			return words
		}
		return fmt.Sprintf("%s, %s %s of the load point", words, p.length(math.Abs(offMM)), toward)
	}
	t.Vertical = mount(t.Vertical, t.From.X, sense(t.From.X, t.Right))
	t.Horizontal = mount(t.Horizontal, t.From.Y, sense(t.From.Y, t.Up))
	v := p.in.Vehicle
	if v == nil || b.Spec.Mount == "" || v.Job.Vehicle == nil {
		return
	}
	m, _ := v.Job.Vehicle.Mount(b.Spec.Mount)
	if m == nil {
		return
	}
	switch t.Right {
	case "rearward":
		t.Vertical += p.behind(m.At.X + t.From.X)
	case "forward":
		t.Vertical += p.behind(m.At.X - t.From.X)
	case "right":
		t.Vertical += ", " + p.sideways(m.At.Y-t.From.X)
	}
	switch t.Up {
	case "forward":
		t.Horizontal += p.behind(m.At.X - t.From.Y)
	case "up":
		z := m.At.Z + t.From.Y
		t.Horizontal += fmt.Sprintf(": %s above the ground", p.length(z))
		if f := v.Request.Frame; f != nil && f.TopZMM > z {
			t.Horizontal += fmt.Sprintf(", %s under the rail's top", p.length(f.TopZMM-z))
		}
	}
}

func (p *page) behind(xMM float64) string {
	return fmt.Sprintf(": x %s behind the front axle", p.length(xMM))
}

// sense is a direction, or its opposite where the distance is below nought.
func sense(mm float64, way string) string {
	if mm >= 0 {
		return way
	}
	return map[string]string{"rearward": "forward", "forward": "rearward", "left": "right", "right": "left", "up": "down", "down": "up"}[way]
}

func (p *page) template(t *template.Template, all []*template.Template) {
	tiles, names := p.tilesOf(t)
	p.head(t.Title + ", " + t.Hand)
	p.say("%s, tile%s %s. The datum lines: upright, %s; level, %s.", seenFrom(t), plural(len(tiles)), names, t.Vertical, t.Horizontal)
	if t.Into != "" {
		p.say("Before drilling: %s.", behind(t.Into))
	}
	for _, o := range all {
		if o != t && t.MirrorOf(o) {
			p.say("The mirror image of %s, %s: printed for itself, not turned over.", o.Title, o.Hand)
			break
		}
	}
	heads := []string{"hole", "#" + t.Right, "#" + t.Up, "#dia", "how", "read"}
	judged := slices.ContainsFunc(t.Holes, func(h template.Hole) bool { return h.Verdict != "" })
	if judged {
		heads = append(heads, "verdict")
	}
	rows := table("", heads...)
	for _, h := range t.Holes {
		cells := []string{h.Name, p.bare(h.At.X), p.bare(h.At.Y), p.bare(h.DiaMM), h.How, blank}
		if judged {
			cells = append(cells, h.Verdict)
		}
		row(rows, cells...)
	}
	p.add(rows)
	p.bullets(t.Remarks...)
	if a, b := farthest(t.Holes); a != b {
		p.say("Check across: %s to %s is %s between centres.", t.Holes[a].Name, t.Holes[b].Name, p.length(t.Holes[a].At.Sub(t.Holes[b].At).Norm()))
	}
}

// tilesOf are a template's tiles on the paper's sheets, and what they are called together.
func (p *page) tilesOf(t *template.Template) (tiles []template.Tile, names string) {
	tiles = t.Tiles(p.sheet().Room())
	names = tiles[0].Name
	if n := len(tiles); n > 1 {
		names += " to " + tiles[n-1].Name
	}
	return tiles, names
}

func (p *page) tiles(t *template.Template) {
	tiles, names := p.tilesOf(t)
	for i := range tiles {
		p.add(&paper.Figure{
			Drawing: t.Drawing(&tiles[i], names, p.length), FullScale: true,
			Caption: fmt.Sprintf("Tile %s of %s, %s, full scale", tiles[i].Name, t.Title, t.Hand),
		})
	}
}

func seenFrom(t *template.Template) string { return strings.ToUpper(t.Seen[:1]) + t.Seen[1:] }

func plural(n int) string {
	if n == 1 {
		return ""
	}
	return "s"
}

// farthest are the two holes that lie furthest apart.
func farthest(holes []template.Hole) (a, b int) {
	most := 0.0
	for i := range holes {
		for k := range i {
			if d := holes[i].At.Sub(holes[k].At).Norm(); d > most+1e-9 {
				most, a, b = d, k, i
			}
		}
	}
	return a, b
}
