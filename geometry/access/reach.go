package access

import (
	"fmt"
	"slices"
	"strings"

	"lugwright/geometry/shape"
	"lugwright/part"
)

const (
	socketPerDia = 1.1 // half width of a socket over the bolt's diameter; common practice, no source
	greaseHalfMM = 12  // half width of a grease coupler; common practice, no source
	pinSlackMM   = 10  // room behind a pin that has come out
)

// bolts finds bolts with no room for a socket on the bracket's side. The far side is not of the bracket: a survey tells.
func (s *scene) bolts(g *part.BoltGroup, r Room) []Finding {
	if g.SameAs != "" {
		return nil
	}
	blocked := map[string]int{}
	ply := s.b.Owner(g.Plies[0].Thing)
	for _, p := range g.Points {
		if id := s.socket(g, p, ply, r); id != "" {
			blocked[id]++
		}
	}
	return told("bolts "+g.ID, blocked, func(id string, n int) string {
		return fmt.Sprintf("no room for a socket over %d of %d; in the way: %s", n, len(g.Points), id)
	})
}

func (s *scene) socket(g *part.BoltGroup, p shape.Point, ply string, r Room) string {
	top := g.Plies[0].ThicknessMM
	return s.blockedBy(path{
		from: g.Pose.At(p.X, p.Y, 0), along: g.Pose.W(), lo: top + g.DiaMM/4, hi: top + r.SocketMM, half: socketPerDia * g.DiaMM,
		ignoring: func(id string) bool { return id == ply },
	})
}

// pin finds a pin that cannot be drawn to either side, and a bushed one whose ends no grease coupler reaches.
func (s *scene) pin(p *part.Pin, r Room) []Finding {
	var out []Finding
	// The pin passes its seats and the rings on it; what is screwed to a plate that keeps it in comes off first.
	seat := func(id string) bool {
		m := s.b.Member(id)
		return m != nil && m.OnPin(p) || slices.ContainsFunc(p.Seats, func(x part.Seat) bool { return x.Thing == id }) || s.keeps(p, id)
	}
	lo, hi := span(p)
	ways := func(length, half float64) (by []string) {
		for _, end := range [2]struct {
			at    float64
			sense float64
		}{{lo, -1}, {hi, 1}} {
			id := s.blockedBy(path{from: p.Center.AddScaled(end.at, p.Axis), along: p.Axis.Scale(end.sense), lo: 0, hi: length, half: half, ignoring: seat})
			if id == "" {
				return nil
			}
			if !slices.Contains(by, id) {
				by = append(by, id)
			}
		}
		return by
	}
	if by := ways(p.LengthMM+pinSlackMM, p.DiaMM/2); by != nil {
		out = append(out, Finding{"pin " + p.ID, "cannot be drawn to either side; in the way: " + strings.Join(by, ", ")})
	}
	if bushed(p) {
		if by := ways(r.GreaseMM, greaseHalfMM); by != nil {
			out = append(out, Finding{"pin " + p.ID, "no room for a grease coupler at either end; in the way: " + strings.Join(by, ", ")})
		}
	}
	return out
}

// keeps says whether a plate is a pin's keeper: bolted to what an end of the pin bears on.
func (s *scene) keeps(p *part.Pin, id string) bool {
	return slices.ContainsFunc(s.b.Bolts, func(g part.BoltGroup) bool {
		return g.Plies[0].Thing == id && slices.ContainsFunc(p.Ends[:], func(e part.PinEnd) bool { return e.Kind == part.EndKeeper && e.BearsOn == g.Plies[1].Thing })
	})
}

func bushed(p *part.Pin) bool {
	return slices.ContainsFunc(p.Seats, func(s part.Seat) bool { return s.BushMM > 0 })
}

// told gives one finding for each thing in the way, in the order of their names.
func told(what string, blocked map[string]int, words func(id string, n int) string) []Finding {
	ids := make([]string, 0, len(blocked))
	for id := range blocked {
		ids = append(ids, id)
	}
	slices.Sort(ids)
	var out []Finding
	for _, id := range ids {
		out = append(out, Finding{what, words(id, blocked[id])})
	}
	return out
}

// span is how far the pin's outermost seats reach along its axis.
func span(p *part.Pin) (lo, hi float64) {
	for i, s := range p.Seats {
		if at := s.AtMM - s.ThicknessMM/2; i == 0 || at < lo {
			lo = at
		}
		if at := s.AtMM + s.ThicknessMM/2; i == 0 || at > hi {
			hi = at
		}
	}
	return lo, hi
}
