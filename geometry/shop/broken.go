package shop

import (
	"fmt"
	"math"
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

// neck is the least steel between two edges of the outer loop, +Inf where there is none. Neighbours meet; the two beside a short edge, as the
// blunt end of a gusset is, leave no web between them.
func neck(o shape.Outline) float64 {
	least := math.Inf(1)
	n := len(o.Outer)
	for i := range n {
		for k := i + 3; k < n && i+n-k >= 3; k++ {
			a, b := o.Outer.Edge(i), o.Outer.Edge(k)
			if shape.EdgeDistance(a, b) >= least {
				continue
			}
			for _, p := range [3]shape.Point{a.A, a.Mid(), a.B} {
				if d, ok := across(o, a, b, p); ok {
					least = min(least, d)
				}
			}
		}
	}
	return least
}

// across walks from a point of one edge to the nearest on the other and back until it stays, and says whether steel lies between.
func across(o shape.Outline, a, b shape.Edge, p shape.Point) (mm float64, ok bool) {
	q := b.Closest(p)
	for range 20 {
		p = a.Closest(q)
		next := b.Closest(p)
		if next.Dist(q) < shape.TouchMM {
			break
		}
		q = next
	}
	return p.Dist(q), o.Contains(p.Add(q).Scale(0.5))
}
