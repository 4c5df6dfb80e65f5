package strength

// Gussets and ribs: how much of a flange works with the webs on it, and how several ribs under one leg share a load.

import (
	"math"
	"slices"

	"lugwright/part"
	"lugwright/strength/statics"
)

// covers says whether a cut at a point lies within the stretch over which the plates act together, and runs across it.
func covers(c *part.Composite, at, normal part.Vec) bool {
	along := c.To.Sub(c.From)
	length := along.Norm()
	dir := along.Unit()
	if length == 0 || math.Abs(dir.Dot(normal)) < 0.99 {
		return false
	}
	t := at.Sub(c.From).Dot(dir)
	return t >= -1e-6 && t <= length+1e-6
}

// ShearLag is the part of a flange's width on one side of its web that works at the root of a cantilever:
// beta of EN 1993-1-5:2006, 3.2 and Table 3.1 (hogging, cantilever; formulas from memory), with kappa = b_0/L_e and L_e = 2 L_2
// for a cantilever of length L_2. b0 is the width from the web to the edge or to the middle between webs, mm.
func ShearLag(b0MM, cantileverMM float64) float64 {
	kappa := b0MM / (2 * cantileverMM)
	switch {
	case kappa <= 0.02:
		return 1
	case kappa <= 0.70:
		return 1 / (1 + 6.0*(kappa-1/(2500*kappa)) + 1.6*kappa*kappa)
	}
	return 1 / (8.6 * kappa)
}

// web is a plate that stands on a flange in a section.
type web struct {
	chord *chordPiece
	along float64 // position along the flange's chord, mm from its middle
}

// trimmed cuts each flange down to what works with its webs, and appends what is left to dst.
func trimmed(dst, whole []chordPiece, active []*part.Composite) []chordPiece {
	var room [8]web
	for _, ch := range whole {
		webs, span := websOn(room[:0], ch, whole, active)
		if len(webs) == 0 {
			dst = append(dst, ch)
			continue
		}
		dst = working(dst, ch, webs, span)
	}
	return dst
}

// websOn lists the webs of all active composites whose flange is the chord's plate, in order along it, from webs[:0] on.
func websOn(webs []web, flange chordPiece, whole []chordPiece, active []*part.Composite) (_ []web, span float64) {
	for _, c := range active {
		if c.Things[0] != flange.t.plate.ID {
			continue
		}
		span = max(span, c.SpanMM)
		for i := range whole {
			ch := &whole[i]
			if slices.Contains(c.Things[1:], ch.t.plate.ID) && math.Abs(ch.dir.Dot(flange.dir)) < 0.7 {
				webs = append(webs, web{ch, ch.mid.Sub(flange.mid).Dot(flange.dir)})
			}
		}
	}
	slices.SortFunc(webs, func(a, b web) int {
		switch {
		case a.along < b.along:
			return -1
		case a.along > b.along:
			return 1
		}
		return 0
	})
	return webs, span
}

// working appends the stretches of a flange that work with its webs, merged where they meet.
func working(dst []chordPiece, flange chordPiece, webs []web, span float64) []chordPiece {
	half := flange.length / 2
	lo, hi := math.Inf(1), math.Inf(-1)
	flush := func() {
		if from, to := max(lo, -half), min(hi, half); to > from {
			dst = append(dst, flange.part(from, to))
		}
	}
	for i, w := range webs {
		left, right := w.along+half, half-w.along
		if i > 0 {
			left = (w.along - webs[i-1].along) / 2
		}
		if i < len(webs)-1 {
			right = (webs[i+1].along - w.along) / 2
		}
		t := w.chord.t.plate.ThicknessMM / 2
		l, r := w.along-reachOf(left, t, span), w.along+reachOf(right, t, span)
		if l > hi+1e-9 {
			flush()
			lo, hi = l, r
			continue
		}
		hi = max(hi, r)
	}
	flush()
	return dst
}

// reachOf is how far the flange works to one side of a web: its own half thickness and the shear-lag part of the rest.
func reachOf(b0, halfWeb, span float64) float64 {
	if b0 <= halfWeb || span <= 0 {
		return max(b0, 0)
	}
	return halfWeb + ShearLag(b0-halfWeb, span)*(b0-halfWeb)
}

// part is the stretch of a chord from lo to hi, measured from its middle.
func (ch chordPiece) part(lo, hi float64) chordPiece {
	ch.mid, ch.length = ch.mid.AddScaled((lo+hi)/2, ch.dir), hi-lo
	return ch
}

// fillRibs divides a wide flange into its ribs, each with the stretch of flange that works with it.
func (m *model) fillRibs(c *cut, whole []chordPiece, active []*part.Composite) {
	swept := m.b.Sweeps[c.slot].Things[0]
	var middle part.Vec // of the flange, in its own plane
	var room [8]web
	for _, flange := range whole {
		if flange.t.plate.ID != swept {
			continue
		}
		m.spend(len(active) + len(whole)*named(active))
		webs, span := websOn(room[:0], flange, whole, active)
		m.spend(perCut * len(webs))
		webs = slices.DeleteFunc(webs, func(w web) bool { return math.Abs(w.along) > flange.length/2 })
		c.ribs = append(m.room.ribs.take(len(c.ribs) + len(webs))[:0], c.ribs...)
		for i, w := range webs {
			chords := m.room.kept.copied([]chordPiece{clipped(flange, webs, i, span), *w.chord})
			m.room.pieces = c.pieces(m.room.pieces[:0], chords)
			s, err := statics.NewSection(m.room.pieces)
			if err != nil {
				continue
			}
			at := w.chord.mid.Sub(c.at).Dot(c.chord)
			rb := rib{offset: at, part: m.reachedPart(c, at, w.chord.t.plate.ThicknessMM), off: s.CY - c.plane(&flange).Y, f: section(chords, &s, &s, statics.Torsion(m.room.pieces)), label: w.chord.t.plate.ID}
			rb.words = rb.label + " acting"
			rb.f.FreeLength = max(c.ribArm, m.b.Sweeps[c.slot].FreeMM)
			rb.own = c.shareOf(*w.chord, s)
			c.ribs = append(c.ribs, rb)
			middle = flange.mid
		}
	}
	all, mid, squares := 0.0, 0.0, 0.0
	for i := range c.ribs {
		all += c.ribs[i].part
	}
	for i := range c.ribs {
		rb := &c.ribs[i]
		rb.part /= all
		mid += rb.part * rb.offset
	}
	for i := range c.ribs {
		rb := &c.ribs[i]
		rb.offset -= mid
		squares += rb.part * rb.offset * rb.offset
	}
	for i := range c.ribs {
		if len(c.ribs) > 1 {
			c.ribs[i].lever = c.ribs[i].part * c.ribs[i].offset / squares
		}
	}
	if len(c.ribs) > 0 {
		c.group = c.space(middle.Sub(c.at).Dot(c.flat), mid)
	}
}

// clipped is the stretch of flange of one web, cut off half way to its neighbours.
func clipped(flange chordPiece, webs []web, i int, span float64) chordPiece {
	half := flange.length / 2
	w := webs[i]
	left, right := w.along+half, half-w.along
	if i > 0 {
		left = (w.along - webs[i-1].along) / 2
	}
	if i < len(webs)-1 {
		right = (webs[i+1].along - w.along) / 2
	}
	t := w.chord.t.plate.ThicknessMM / 2
	return flange.part(w.along-reachOf(left, t, span), w.along+reachOf(right, t, span))
}

func (c *cut) shareOf(web chordPiece, s statics.Section) ribShare {
	p := c.plane(&web)
	t := web.t.plate.ThicknessMM
	return ribShare{
		area: web.length * t, arm: p.Y - s.CY, inertia: t * web.length * web.length * web.length / 12,
		total: s.Izz, whole: s.Area, center: web.mid,
	}
}

// ribForce is what a rib carries at a cut, with its signs: along the cut's normal, along flat, and about chord at its own centroid.
type ribForce struct{ along, flat, bend float64 }

// take gives a rib its part of a wrench about the ribs' middle in the flange's plane: a part of the forces, and of couples by distance. A
// couple about the sweep becomes a pair of forces at the load's entry and so bends ribs in opposite senses. Force enters in the flange's
// plane, off a rib's own centroid, and bends it by that.
func (rb *rib) take(c *cut, w wrench) ribForce {
	twist, edge := w.m.Dot(c.normal), w.m.Dot(c.flat)
	f := ribForce{along: w.f.Dot(c.normal)*rb.part + edge*rb.lever, flat: w.f.Dot(c.flat)*rb.part - twist*rb.lever}
	f.bend = w.m.Dot(c.chord)*rb.part + twist*rb.lever*c.ribArm + rb.off*f.along
	return f
}

// ribbed spreads the force and moment at a cut over its ribs, in the ribs' own memory. One rib alone takes couples as they are.
func ribbed(dst []*Cut, c *cut, w wrench) []*Cut {
	for i := range c.ribs {
		rb := &c.ribs[i]
		own, f := rb.take(c, w), &rb.f
		f.N = -own.along
		f.Va, f.Vb = math.Abs(own.flat), math.Abs(w.f.Dot(c.chord)*rb.part)
		f.Ma = math.Abs(own.bend)
		f.T, f.Mb = 0, 0
		if len(c.ribs) == 1 {
			f.T, f.Mb = math.Abs(w.m.Dot(c.normal)), math.Abs(w.m.Dot(c.flat))
		}
		dst = append(dst, f)
	}
	return dst
}

// ribDemand is the weld at the root of a rib, to be checked if the ribs act.
type ribDemand struct {
	slot int
	line WeldLine
}

// inWeb is the part of a rib's force along the normal that its web carries, by the section's linear stress.
func (o *ribShare) inWeb(f ribForce) float64 {
	return f.along*o.area/o.whole - f.bend*o.arm/o.total*o.area
}

// atRibFlow gives the weld between a rib and its flange its demand: along it the flow of the shear or the rib's force gathered from the tip
// to the cut, whichever is more, and square to it the rib's shear, which enters the rib over the same run.
func (e *effect) atRibFlow(c *cut, rb *rib, f ribForce) {
	force, shear := math.Abs(rb.own.inWeb(f)), math.Abs(f.flat)
	for i := range c.flows {
		if p := &c.flows[i]; p.rib == rb.label {
			e.demandFlow(p, math.Hypot(max(shear*p.perN, gather(force, p.run)), gather(shear, p.run)))
		}
	}
}

// ribRoot finds the weld that roots a rib, at the root of its sweep, on something that is not the flange it stiffens; as a group
// of its own.
func (m *model) ribRoot(c *cut, web, flange string) *rootSet {
	for i := range m.b.Welds {
		w := &m.b.Welds[i]
		if w.Joins[0] != web || w.Joins[1] == flange || flange == w.Joins[1]+".a" || flange == w.Joins[1]+".b" {
			continue
		}
		n := len(m.rootSets)
		m.addRoot([]int{i}, true)
		if len(m.rootSets) == n {
			m.bare = append(m.bare, w.ID)
			return nil
		}
		set := m.rootSets[n]
		m.rootSets = m.rootSets[:n]
		if set.at.Sub(c.root).Dot(c.normal) >= -1e-6 {
			return &set
		}
	}
	return nil
}

// atRibRoot gives the rib's own weld the part of the section's axial force and bending that the rib carries, and all the shear.
func (e *effect) atRibRoot(c *cut, rb *rib, f ribForce) {
	if rb.root == nil {
		return
	}
	o := &rb.own
	w := wrench{}
	w.plus(c.normal.Scale(o.inWeb(f)).AddScaled(f.flat, c.flat), c.chord.Scale(f.bend*o.inertia/o.total), o.center, rb.root.at)
	if rb.root.take(w) == nil {
		e.ribs = append(e.ribs, ribDemand{rb.slot, rb.root.welds[0].WeldLine})
	}
}
