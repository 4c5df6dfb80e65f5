package papers

// This file is the receiving card: what comes from the cutting shop, against one control dimension and one hole.

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"lugwright/geometry/shop"
	"lugwright/part"
)

func receivingCard(p *page) string {
	if len(p.brackets()) == 0 {
		return noBrackets
	}
	plates, members := p.pieces()
	if len(plates)+len(members) == 0 {
		return "the job has no part that is cut or sawn"
	}
	if len(plates) > 0 {
		t := table("", "mark", "#qty", "thickness", "control dimension", "read", "hole", "go", "no-go", "ok")
		for _, q := range plates {
			hole, goes, not := p.gauge(q.plate)
			row(t, q.plate.Mark+" "+hand(q.hand), strconv.Itoa(q.count), p.length(q.plate.ThicknessMM)+" "+q.plate.Material, p.control(q.plate), blank, hole, goes, not, tickBox)
		}
		p.head("Plates, lengths " + p.inUnit())
		p.add(t)
		p.bullets(p.gaugeWords()...)
	}
	if len(members) > 0 {
		t := table("", "mark", "#qty", "section", "#length", "give or take", "read", "ok")
		for _, m := range members {
			row(t, m.member.Mark+" "+hand(m.hand), strconv.Itoa(m.count), p.profile(m.member.Profile)+" "+m.member.Material, p.bare(m.member.LengthMM), "+/- "+p.bare(medium(m.member.LengthMM)), blank, tickBox)
		}
		p.head("Sawn sections, lengths " + p.inUnit())
		p.add(t)
	}
	p.head("Every lot")
	p.ticks("counted: right number, right hand, L not mistaken for R (lay one on the other: they are mirror images)",
		"thickness measured on one of each; the seller's paper names the steel",
		"contours smooth: no flats where there should be an arc; no slag in holes; no edge burnt through",
		"flat: a straightedge across the longest side")
	if len(plates) > 0 {
		p.head("Plates as they must be")
		for _, q := range plates {
			p.add(p.plateDrawing(q, halfMM))
		}
	}
	p.cautions(7, 13, 14)
	return ""
}

func hand(h part.Hand) string {
	if h == part.RightHand {
		return "(R)"
	}
	return "(L)"
}

// control is the larger overall size, which shows a wrong unit or scale at once.
func (p *page) control(q *part.Plate) string {
	box := q.Outer.BBox()
	size, axis := box.Width(), "wide"
	if box.Height() > box.Width() {
		size, axis = box.Height(), "high"
	}
	return fmt.Sprintf("%s %s +/- %s", p.bare(size), axis, p.bare(medium(size)))
}

// medium is ISO 2768-1, class m, for a length (from memory).
func medium(mm float64) float64 {
	for _, r := range []struct{ to, off float64 }{{6, 0.1}, {30, 0.2}, {120, 0.3}, {400, 0.5}, {1000, 0.8}, {2000, 1.2}} {
		if mm <= r.to {
			return r.off
		}
	}
	return 2
}

const (
	boltHoleOff = 0.5 // a bolt hole as it is cut, either way: EN 1090-2 (from memory)
	pinHoleOff  = 0.1 // a pin hole that stays as it is cut, either way; common practice, no source
	reamLeft    = 0.2 // least metal for a reamer or drill; common practice, no source
)

// gauge is the hole to look at, the gauge that must enter it and the one that must not.
func (p *page) gauge(q *part.Plate) (hole, goes, not string) {
	h, ok := hardest(q)
	if !ok {
		return "none", "", ""
	}
	lo, hi := limits(&h)
	name := h.ID
	if !strings.HasPrefix(name, string(h.Purpose)) {
		name += ", " + string(h.Purpose)
	}
	return name + ", " + p.bare(h.CutMM) + " as cut", p.bare(lo), p.bare(hi)
}

// hardest is the hole with the least room: a pin's before a bolt's, one that is finished later before one that stays.
func hardest(q *part.Plate) (part.Hole, bool) {
	best, found := part.Hole{}, false
	rank := func(h *part.Hole) int {
		r := 0
		if h.Purpose == part.ForPin {
			r += 2
		}
		if h.Finish != part.AsCut {
			r++
		}
		return r
	}
	for _, h := range q.Holes {
		if h.CutMM > 0 && (!found || rank(&h) > rank(&best)) {
			best, found = h, true
		}
	}
	return best, found
}

// limits are of a hole as it is cut.
func limits(h *part.Hole) (least, most float64) {
	switch {
	case h.Finish != part.AsCut:
		return h.CutMM - boltHoleOff, math.Max(h.CutMM, h.DiaMM-reamLeft)
	case h.Purpose == part.ForPin:
		return h.CutMM - pinHoleOff, h.CutMM + pinHoleOff
	}
	return h.CutMM - boltHoleOff, h.CutMM + boltHoleOff
}

func (p *page) gaugeWords() []string {
	out := []string{
		"control dimension: ISO 2768-1 class m, from memory; what the shop promised overrules it",
		fmt.Sprintf("a hole that is drilled or reamed later: the no-go gauge leaves %s for the tool (common practice, no source)", p.length(reamLeft)),
		fmt.Sprintf("a bolt hole: +/- %s (EN 1090-2, from memory); a pin hole left as cut: +/- %s (common practice, no source). The shank of a drill is a gauge", p.length(boltHoleOff), p.length(pinHoleOff)),
	}
	j := p.in.Result.Job
	if j.ShopName == "" {
		return append(out, "the job names no shop: its process is not known. Published for plasma: +/- 0.8 to 1.3 mm (0.03 to 0.05 in); for waterjet holes: +/- 0.25 mm (0.01 in)")
	}
	words := map[shop.Process]string{
		shop.Plasma:   "plasma: +/- 0.8 to 1.3 mm (0.03 to 0.05 in) is usual (a plasma shop's file guide), no bolt hole gauges within that: expect to drill",
		shop.Waterjet: "waterjet: holes scatter by +/- 0.25 mm (0.01 in) and are smaller at the bottom face (waterjet makers' pages): gauge them there",
		shop.Laser:    "laser: the edge is hard and slightly tapered: gauge both faces (" + common + ")",
		shop.OxyFuel:  "oxy-fuel: coarser than any of these limits: holes are piloted and drilled (" + common + ")",
	}[j.Shop.Process]
	return append(out, "cut by "+j.Shop.Name, words)
}

// profile names a section by its sizes.
func (p *page) profile(f part.Profile) string {
	switch f.Kind {
	case part.RoundBar:
		return fmt.Sprintf("%s %s", f.Kind, p.bare(f.AMM))
	case part.RoundTube, part.FlatBar:
		return fmt.Sprintf("%s %s x %s", f.Kind, p.bare(f.AMM), p.bare(f.TMM))
	}
	return fmt.Sprintf("%s %s x %s x %s", f.Kind, p.bare(f.AMM), p.bare(f.BMM), p.bare(f.TMM))
}
