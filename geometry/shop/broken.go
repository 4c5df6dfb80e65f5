package shop

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"lugwright/geometry/shape"
	"lugwright/part"
)

// Broken names what of a bracket the shop cannot cut, as errors whose fields are plates[i]; none when it can cut all. The bracket's holes are as
// Finished leaves them.
func (s *Profile) Broken(b *part.Bracket) part.FieldErrors {
	var bad part.FieldErrors
	for i := range b.Plates {
		p := &b.Plates[i]
		if slices.ContainsFunc(b.Plates[:i], func(q part.Plate) bool { return q.Mark == p.Mark && p.Mark != "" }) {
			continue // the same piece
		}
		for _, fault := range s.faults(p) {
			bad = append(bad, &part.FieldError{
				Field: fmt.Sprintf("plates[%d]", i), Found: strings.TrimSpace(p.Mark+" ") + ": " + fault.found, Accept: fault.accept + " for the shop " + s.Name,
			})
		}
	}
	return bad
}

type fault struct{ found, accept string }

func (s *Profile) faults(p *part.Plate) []fault {
	var out []fault
	least := s.SmallestHole.At(p.ThicknessMM)
	for _, h := range p.Holes {
		if h.CutMM > 0 && h.CutMM < least-shape.TouchMM {
			out = append(out, fault{fmt.Sprintf("the %s hole %s is cut to %.4g mm in %.4g mm plate", h.Purpose, h.ID, h.CutMM, p.ThicknessMM),
				fmt.Sprintf("at least %.4g mm, or a rule of holes that drills it", least)})
		}
	}
	for i, l := range p.Cutouts {
		if w := l.BBox(); min(w.Width(), w.Height()) < least-shape.TouchMM {
			out = append(out, fault{fmt.Sprintf("opening %d is %.4g mm wide", i, min(w.Width(), w.Height())), fmt.Sprintf("at least %.4g mm", least)})
		}
	}
	return append(out, s.webs(p)...)
}

// webs finds steel between two cuts that is narrower than the shop leaves.
func (s *Profile) webs(p *part.Plate) []fault {
	var out []fault
	least := s.SmallestWeb.At(p.ThicknessMM)
	if least <= 0 {
		return nil
	}
	narrow := func(words string, mm float64) {
		if mm < least-shape.TouchMM {
			out = append(out, fault{fmt.Sprintf("%.4g mm of steel are left %s", mm, words), fmt.Sprintf("at least %.4g mm", least)})
		}
	}
	cut := p.Shape(true)
	for i, a := range cut.Holes {
		narrow(fmt.Sprintf("between %s and the edge", opening(p, i)), shape.LoopDistance(a, cut.Outer))
		for k, b := range cut.Holes[:i] {
			narrow(fmt.Sprintf("between %s and %s", opening(p, k), opening(p, i)), shape.LoopDistance(a, b))
		}
	}
	narrow("across a neck of the outline", neck(cut))
	return out
}

// opening names an opening of Plate.Shape.
func opening(p *part.Plate, i int) string {
	for _, h := range p.Holes {
		if h.CutMM > 0 {
			if i == 0 {
				return "the hole " + h.ID
			}
			i--
		}
	}
	return fmt.Sprintf("opening %d", i)
}

// neck is the least steel between two edges of the outer loop that are no neighbours, +Inf where there is none. A place where the outline
// merely tapers into a corner is no neck: there the nearest points lie at a corner that stands out.
func neck(o shape.Outline) float64 {
	o = o.Normalize()
	least := math.Inf(1)
	n := len(o.Outer)
	for i := range n {
		for k := i + 2; k < n && i+n-k >= 2; k++ {
			a, b := o.Outer.Edge(i), o.Outer.Edge(k)
			if shape.EdgeDistance(a, b) >= least {
				continue
			}
			for _, start := range [3]shape.Point{a.A, a.Mid(), a.B} {
				if p, q := nearest(a, b, start); o.Contains(p.Add(q).Scale(0.5)) && !juts(o.Outer, i, p) && !juts(o.Outer, k, q) {
					least = min(least, p.Dist(q))
				}
			}
		}
	}
	return least
}

// nearest walks from a point of one edge to the nearest on the other and back until it stays.
func nearest(a, b shape.Edge, p shape.Point) (onA, onB shape.Point) {
	q := b.Closest(p)
	for range 20 {
		p = a.Closest(q)
		next := b.Closest(p)
		if next.Dist(q) < shape.TouchMM {
			break
		}
		q = next
	}
	return p, q
}

// juts says whether a point of an edge is an end of it where the outline turns outward, or goes straight on into the next.
func juts(outer shape.Loop, i int, p shape.Point) bool {
	n := len(outer)
	e := outer.Edge(i)
	if p.Dist(e.A) < shape.TouchMM {
		return outer.Edge((i+n-1)%n).TangentAt(1).Cross(e.TangentAt(0)) > -1e-9
	}
	return p.Dist(e.B) < shape.TouchMM && e.TangentAt(1).Cross(outer.Edge((i+1)%n).TangentAt(0)) > -1e-9
}
