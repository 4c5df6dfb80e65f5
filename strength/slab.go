package strength

// Memory that one check after another uses again: a bracket's sections are many and short-lived.

import (
	"sync"

	"lugwright/strength/statics"
)

// slab hands out zeroed slices, cut from a few large pieces, that all go back at once.
type slab[T any] struct {
	pieces   [][]T
	at, used int // the piece at hand, and how much of it is given out
}

const slabSize = 64

// take gives a slice of length n.
func (s *slab[T]) take(n int) []T {
	for ; s.at < len(s.pieces); s.at, s.used = s.at+1, 0 {
		if piece := s.pieces[s.at]; s.used+n <= len(piece) {
			s.used += n
			return piece[s.used-n : s.used : s.used]
		}
	}
	s.pieces = append(s.pieces, make([]T, max(n, slabSize<<min(len(s.pieces), 6))))
	s.used = n
	return s.pieces[s.at][:n:n]
}

// copied gives a slice with the given values.
func (s *slab[T]) copied(values []T) []T {
	out := s.take(len(values))
	copy(out, values)
	return out
}

// reset takes everything back. What was not given out is zero still, and of the last piece that is most in a first check.
func (s *slab[T]) reset() {
	for i, piece := range s.pieces {
		if i >= s.at {
			clear(piece[:s.used])
			break
		}
		clear(piece)
	}
	s.at, s.used = 0, 0
}

// room is memory used again: scratch from cut to cut, slabs from check to check. Nothing in it goes into a report.
type room struct {
	chords, some, works []chordPiece
	pieces              []statics.Piece
	loads, covered      []bool

	cuts   slab[cut]
	kept   slab[chordPiece]
	flows  slab[flowPoint]
	ribs   slab[rib]
	joined slab[statics.Section]
}

var rooms = sync.Pool{New: func() any { return new(room) }}

// free gives the room back for the next check.
func (r *room) free() {
	clear(r.chords[:cap(r.chords)])
	clear(r.some[:cap(r.some)])
	clear(r.works[:cap(r.works)])
	r.cuts.reset()
	r.kept.reset()
	r.flows.reset()
	r.ribs.reset()
	r.joined.reset()
	rooms.Put(r)
}
