package wire

import (
	"fmt"
	"slices"
	"strings"

	"lugwright/geometry/shop"
	pb "lugwright/proto/gen/lugwright/geometry/v1alpha1"
)

// EncodeShop writes what a shop's rules mean for brackets; how it wants its files stays behind.
func EncodeShop(s *shop.Profile) *pb.Shop {
	return &pb.Shop{
		Name: s.Name, Process: string(s.Process), SmallestHole: leastLength(&s.SmallestHole), SmallestWeb: leastLength(&s.SmallestWeb),
		MarkStyle: string(s.Marks.Style), MarkHeightMm: s.Marks.HeightMM, Holes: all(s.Holes, holeRule),
	}
}

// DecodeShop reads a shop; none is nil.
func DecodeShop(m *pb.Shop) (*shop.Profile, error) {
	if m == nil {
		return nil, nil
	}
	var r reader
	r.enter("shop", -1)
	s := &shop.Profile{
		Name: r.text("name", m.Name), Process: oneOf(&r, "process", m.Process, shop.Processes()),
		SmallestHole: one(&r, "smallest_hole", m.SmallestHole, readLeast), SmallestWeb: one(&r, "smallest_web", m.SmallestWeb, readLeast),
		Marks: shop.Marks{Style: oneOf(&r, "mark_style", m.MarkStyle, shop.MarkStyles()), HeightMM: r.number("mark_height_mm", m.MarkHeightMm)},
		Holes: many(&r, "holes", maxThings, m.Holes, readHoleRule),
	}
	if n := len(s.Holes); n == 0 || !s.Holes[n-1].FitsAll() {
		r.refuse("holes", fmt.Sprintf("%d rules", n), "rules of which the last fits every hole")
	}
	return s, r.err()
}

func leastLength(l *shop.Least) *pb.LeastLength {
	return &pb.LeastLength{PerThickness: l.PerThickness, LeastMm: l.MM}
}

func readLeast(r *reader, m *pb.LeastLength) shop.Least {
	return shop.Least{PerThickness: r.number("per_thickness", m.PerThickness), MM: r.number("least_mm", m.LeastMm)}
}

func holeRule(h *shop.HoleRule) *pb.HoleRule {
	return &pb.HoleRule{
		Purposes: encodeEach(purposes, h.For), UnderPerThickness: h.UnderPerThick, UnderMm: h.UnderMM, OverThicknessMm: h.OverThickMM,
		Make: string(h.Make), LessMm: h.LessMM, PilotMm: h.PilotMM, Then: finishes.encode(h.Then),
	}
}

func readHoleRule(r *reader, m *pb.HoleRule) shop.HoleRule {
	return shop.HoleRule{
		For: decodeEach(r, "purposes", len(purposes), purposes, m.Purposes), UnderPerThick: r.number("under_per_thickness", m.UnderPerThickness),
		UnderMM: r.number("under_mm", m.UnderMm), OverThickMM: r.number("over_thickness_mm", m.OverThicknessMm),
		Make: oneOf(r, "make", m.Make, shop.Makes()), LessMM: r.number("less_mm", m.LessMm), PilotMM: r.number("pilot_mm", m.PilotMm),
		Then: finishes.decodeOptional(r, "then", m.Then),
	}
}

// oneOf reads a word of the domain's own list.
func oneOf[W ~string](r *reader, name, word string, list []W) W {
	if !slices.Contains(list, W(word)) {
		words := make([]string, len(list))
		for i, w := range list {
			words[i] = string(w)
		}
		r.refuse(name, fmt.Sprintf("%.40q", word), "one of "+strings.Join(words, ", "))
	}
	return W(word)
}
