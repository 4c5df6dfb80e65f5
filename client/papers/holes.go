package papers

// This file is the hole schedule: pilot, drill, ream and tap, in the parts and in the frame.

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"lugwright/client/paper"
	"lugwright/client/run"
	"lugwright/geometry/shape"
	"lugwright/part"
	"lugwright/units"
	"lugwright/vehicle/drill"
)

func holeSchedule(p *page) string {
	if len(p.brackets()) == 0 {
		return noBrackets
	}
	plates, members := p.pieces()
	t := table("", "mark", "#off", "hole", "#from left", "#from bottom", "cut", "pilot, drill", "ream", "tap", "#finished")
	for _, q := range plates {
		corner := q.plate.Outer.BBox().Min
		holes := q.plate.RoundHoles()
		for i := range holes {
			h := &holes[i]
			p.holeRow(t, q.plate.Mark, q.count, h.ID, h.Center.Sub(corner), h)
		}
	}
	legs := false
	for _, m := range members {
		for i := range m.member.Holes {
			h := &m.member.Holes[i]
			legs = true
			byHand := h.Hole
			byHand.CutMM = 0
			p.holeRow(t, m.member.Mark, m.count, h.ID+", leg "+string(h.Face), seen(m.member, h), &byHand)
		}
	}
	frame := p.frameHoles()
	if len(t.Rows) == 0 && !frame {
		return "no part has a round hole and nothing is bolted to the frame"
	}
	parts := &page{in: p.in, system: p.system}
	if len(t.Rows) > 0 {
		parts.head("In the parts, sizes " + p.inUnit())
		parts.add(t)
		remarks := []string{
			"places are from the left and the bottom of the part as its cut file shows it, flat",
			"deburr both faces; drills and reamers start inside a thermally cut edge, which is hard (common practice, no source)",
		}
		if legs {
			remarks = append(remarks, "on an angle: outer face of the leg towards you, heel down; from the left end and from the heel")
		}
		if slices.ContainsFunc(plates, func(q *piece) bool { return slices.ContainsFunc(q.plate.Holes, reamed) }) {
			remarks = append(remarks, fmt.Sprintf("a hand reamer takes %s to %s: where more is left, drill first or use a taper (bridge) reamer (common practice, no source)", p.length(0.2), p.length(0.5)),
				"ears of one pin: ream after welding, all in one pass")
		}
		parts.bullets(append(remarks, p.inPlace(plates, members)...)...)
	}
	p.blocks = append(parts.blocks, p.blocks...)
	p.cautions(2, 13, 14)
	return ""
}

// inPlace says what is done at holes that welding may put out of line, each once with the holes of each piece.
func (p *page) inPlace(plates []*piece, members []*section) []string {
	var words []string
	at := map[string][]string{}
	add := func(mark, hole, done string) {
		if done == "" {
			return
		}
		if at[done] == nil {
			words = append(words, done)
		}
		at[done] = append(at[done], mark+" "+hole)
	}
	for _, q := range plates {
		done := p.in.Result.AtHoles(q.plate.Mark)
		for i := range q.plate.Holes {
			add(q.plate.Mark, q.plate.Holes[i].ID, done[q.plate.Holes[i].ID])
		}
	}
	for _, m := range members {
		done := p.in.Result.AtHoles(m.member.Mark)
		for i := range m.member.Holes {
			add(m.member.Mark, m.member.Holes[i].ID, done[m.member.Holes[i].ID])
		}
	}
	for i, w := range words {
		words[i] = w + ": " + strings.Join(at[w], ", ")
	}
	return words
}

func reamed(h part.Hole) bool { return h.Finish == part.Reamed }

func (p *page) holeRow(t *paper.Table, mark string, off int, id string, at shape.Point, h *part.Hole) {
	cut, drill, ream, tap := p.steps(h)
	row(t, mark, strconv.Itoa(off), id, p.bare(at.X), p.bare(at.Y), cut, drill, ream, tap, p.bare(h.DiaMM))
}

// steps are how a hole comes about: what the shop cuts, what is drilled, reamed, tapped. Holes of members are marked out and made by hand.
func (p *page) steps(h *part.Hole) (cut, drill, ream, tap string) {
	cut = "mark"
	if h.CutMM > 0 {
		cut = p.bare(h.CutMM)
	}
	switch h.Finish {
	case part.Tapped:
		if d, err := part.TapDrillMM(h.Thread); err == nil && h.CutMM < d {
			drill = p.bare(d)
		}
		tap = h.Thread
	case part.Reamed:
		if h.CutMM == 0 {
			drill = p.bare(h.DiaMM - reamMM)
		}
		ream = p.bare(h.DiaMM)
	case part.Drilled:
		drill = p.bare(h.DiaMM)
	}
	return cut, drill, ream, tap
}

// reamMM is what a drill leaves a reamer where nothing is cut before; common practice, no source.
const reamMM = 0.5

// seen is where a member's hole is from the left end and the heel, on the leg's outer face with the heel down.
func seen(m *part.Member, h *part.FaceHole) shape.Point {
	if h.Face == part.LegB {
		return h.Center
	}
	return shape.Point{X: m.LengthMM - h.Center.X, Y: h.Center.Y}
}

// frameHoles lists what is drilled into supports; false where nothing is.
func (p *page) frameHoles() bool {
	t := table("", "bracket, bolts", "into", "#holes", "bolt", "#pilot", "#drill", "behind it, and how")
	for i := range p.brackets() {
		b := &p.brackets()[i]
		for k := range b.Part.Bolts {
			g := &b.Part.Bolts[k]
			s := b.Part.Support(g.Plies[1].Thing)
			if s == nil || g.SameAs != "" {
				continue
			}
			row(t, b.Spec.Name+", "+g.ID, fmt.Sprintf("%s, %s %s", s.Kind, p.length(s.ThicknessMM), s.Material), strconv.Itoa(len(g.Points)*b.Spec.Quantity), g.Size,
				p.bare(p.pilot()), p.bare(g.HoleMM), behind(s.Kind))
		}
	}
	for i := range p.brackets() {
		p.rodHolesOf(t, &p.brackets()[i])
	}
	if len(t.Rows) == 0 {
		return false
	}
	p.head("In the frame and what else the brackets are bolted to, sizes " + p.inUnit())
	p.add(t)
	p.bullets("the bracket is the template: clamp it in its place, mark or pilot through it, take it off, drill, deburr both faces, paint the bare steel",
		"holes that are there already come first; none in a flange, none by torch (guides A and C, the Australian code and 49 CFR 393.201)",
		"no hole more than 1.0 mm (0.04 in) over its bolt where the Australian code holds (second hand)",
	)
	p.bullets(p.unheld()...)
	p.patterns()
	return true
}

// rodHolesOf are those that rods go through in what carries them, as wide as the bracket's own on the rods' lines.
func (p *page) rodHolesOf(t *paper.Table, b *run.Bracket) {
	for i := range b.Part.Rods {
		r := &b.Part.Rods[i]
		into, how := "NOT KNOWN which support", "find out what these rods go through, then look behind it"
		if s := carrier(b.Part, r); s != nil {
			into, how = fmt.Sprintf("%s, %s %s", s.Kind, p.length(s.ThicknessMM), s.Material), behind(s.Kind)
		}
		drill := "?"
		if mm := rodHoleMM(b.Part, r); mm > 0 {
			drill = p.bare(mm)
		} else {
			how += "; no hole of the bracket lies on these rods: size it by the rod"
		}
		row(t, b.Spec.Name+", "+r.ID, into, strconv.Itoa(len(r.Points)*b.Spec.Quantity), r.Size, p.bare(p.pilot()), drill, how)
	}
}

// carrier is the support that a set of rods hangs from: the only one, or that which follows the rods in every load path; nil where neither says.
func carrier(b *part.Bracket, r *part.Rods) *part.Support {
	if len(b.Supports) == 1 {
		return &b.Supports[0]
	}
	var one *part.Support
	for i := range b.Paths {
		for k := range b.Paths[i].Branches {
			through := b.Paths[i].Branches[k].Through
			at := slices.Index(through, r.ID)
			if at < 0 {
				continue
			}
			for _, id := range through[at:] {
				if s := b.Support(id); s != nil {
					if one != nil && one != s {
						return nil
					}
					one = s
				}
			}
		}
	}
	return one
}

// rodHoleMM is the widest of the bracket's holes for rods that lie on one of the set's lines; 0 for none.
func rodHoleMM(b *part.Bracket, r *part.Rods) float64 {
	const same = 0.5 // off the line, mm
	widest := 0.0
	along := r.Pose.W()
	for i := range b.Plates {
		q := &b.Plates[i]
		for k := range q.Holes {
			h := &q.Holes[k]
			if h.Purpose != part.ForRod {
				continue
			}
			at := q.Pose.At(h.Center.X, h.Center.Y, 0)
			for _, c := range r.Points {
				off := at.Sub(r.Pose.At(c.X, c.Y, 0))
				if off.Sub(along.Scale(off.Dot(along))).Norm() < same {
					widest = max(widest, h.DiaMM)
				}
			}
		}
	}
	return widest
}

// pilot is drilled first through the bracket: 5 mm or 3/16 in; common practice, no source.
func (p *page) pilot() float64 {
	if p.system == units.Inch {
		return 25.4 * 3 / 16
	}
	return 5
}

func behind(k part.SupportKind) string {
	switch k {
	case part.RailWeb, part.RailFlange:
		return "look behind the web: harness, brake and fuel pipe"
	case part.CrossMember:
		return "look inside and behind: pipes, harness"
	case part.TubeWall:
		return "closed section: crush sleeve or far wall"
	}
	return "look behind it"
}

// patterns are the places of frame holes: on the vehicle where they are known, else from the bracket's load point.
func (p *page) patterns() {
	if v := p.in.Vehicle; v != nil && v.Request.Drilling != nil {
		for _, r := range v.Request.Drilling.Rails {
			if len(r.New) > 0 {
				p.railHoles(r)
			}
		}
	}
	for i := range p.brackets() {
		p.pattern(&p.brackets()[i])
	}
}

func (p *page) railHoles(r drill.Rail) {
	t := table("", "hole", "#x", "#z", "#drill", "read x", "read z", "verdict")
	var broken brokenHoles
	var remarks, of []string
	for _, h := range r.New {
		verdict, fails := p.holeVerdict(r.Side, h.Name)
		broken.add(h.Name, fails)
		row(t, h.Name, p.bare(h.XMM), p.bare(h.ZMM), p.bare(h.DiaMM), blank, blank, verdict)
		if h.Bracket != "" && !slices.Contains(of, h.Bracket) {
			of, remarks = append(of, h.Bracket), append(remarks, p.bracketFails(h.Bracket)...)
		}
		if strings.HasPrefix(verdict, "open") && !slices.Contains(remarks, openMeans) {
			remarks = append(remarks, openMeans)
		}
	}
	p.sub(fmt.Sprintf("%s rail, web: x rearward from the vehicle's datum, z above the ground, %s", strings.ToUpper(string(r.Side)[:1])+string(r.Side)[1:], p.inUnit()))
	p.add(t)
	p.bullets(append(broken.lines(), remarks...)...)
}

func (p *page) pattern(b *run.Bracket) {
	if len(b.Part.LoadPoints) != 1 {
		return
	}
	from := b.Part.LoadPoints[0].At
	t := table("", "hole", "#rearward", "#left", "#up")
	for k := range b.Part.Bolts {
		g := &b.Part.Bolts[k]
		if b.Part.Support(g.Plies[1].Thing) == nil || g.SameAs != "" {
			continue
		}
		for n, q := range g.Points {
			at := g.Pose.At(q.X, q.Y, 0).Sub(from)
			row(t, fmt.Sprintf("%s %d", g.ID, n+1), p.bare(at.X), p.bare(at.Y), p.bare(at.Z))
		}
	}
	if len(t.Rows) > 0 {
		p.sub(fmt.Sprintf("%s: from the point where the body's load comes in (pin or mount), %s", b.Spec.Name, p.inUnit()))
		p.add(t)
	}
}
