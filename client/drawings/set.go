package drawings

import (
	"sync"

	"lugwright/client/draw"
	"lugwright/geometry/view"
	"lugwright/part"
)

// Set is the drawings of one bracket. Each is made when it is first asked for in a size, what is seen of the bracket from a direction once for all of them. It may be
// used from several goroutines; nobody may change its drawings.
type Set struct {
	b     *part.Bracket // as made
	given *part.Bracket
	cases []part.Case
	fits  []string

	mu     sync.Mutex
	kept   map[ask]func() []*draw.Drawing
	seen   map[look]func() *picture
	points func() []anchor // of what the parts' list names, in the picture from outside
}

// ask is what is asked of a set, and look a direction in which a picture shows its bracket.
type (
	ask struct {
		name string
		o    Options
	}
	look struct {
		d      view.Direction
		shaded bool
	}
)

// Of is the drawings of a bracket, as the services give it, with its load cases and what there is to say of holes that welding may put out of line.
func Of(b *part.Bracket, cases []part.Case, fits ...string) *Set {
	s := &Set{b: b.AsMade(), given: b, cases: cases, fits: fits, kept: map[ask]func() []*draw.Drawing{}, seen: map[look]func() *picture{}}
	s.points = sync.OnceValue(func() []anchor { return anchors(s.picture(outside(s.b), true), listed(s.b, &Options{})) })
	return s
}

// Parts is the bracket's parts in a shaded isometric picture, named "parts".
func (s *Set) Parts(o Options) *draw.Drawing {
	return s.once(ask{"parts", o}, func() []*draw.Drawing { return []*draw.Drawing{s.parts(o)} })[0]
}

// Views is three views with dimensions, named "views".
func (s *Set) Views(o Options) *draw.Drawing {
	return s.once(ask{"views", o}, func() []*draw.Drawing { return []*draw.Drawing{s.views(o)} })[0]
}

// Welds is the welds with their symbols, named "welds" and "welds-behind", where there are such welds.
func (s *Set) Welds(o Options) []*draw.Drawing {
	return s.once(ask{"welds", o}, func() []*draw.Drawing { return s.welds(o) })
}

// Loads is the forces of the load cases on the bracket, named "loads"; none where no case has a force.
func (s *Set) Loads(o Options) []*draw.Drawing {
	return s.once(ask{"loads", o}, func() []*draw.Drawing {
		if d := s.loads(o); d != nil {
			return []*draw.Drawing{d}
		}
		return nil
	})
}

// All is all of them, in this order.
func (s *Set) All(o Options) []*draw.Drawing {
	list := append([]*draw.Drawing{s.Parts(o), s.Views(o)}, s.Welds(o)...)
	return append(list, s.Loads(o)...)
}

func (s *Set) once(a ask, make func() []*draw.Drawing) []*draw.Drawing {
	return onceIn(s, s.kept, a, make)
}

// picture is the bracket seen from a direction, the caller's own to bring to paper.
func (s *Set) picture(d view.Direction, shaded bool) *picture {
	p := *onceIn(s, s.seen, look{d, shaded}, func() *picture { return newPicture(s.b, d, shaded) })
	return &p
}

// onceIn makes what is not there yet, others waiting for it that ask for the same.
func onceIn[K comparable, V any](s *Set, kept map[K]func() V, k K, make func() V) V {
	s.mu.Lock()
	get := kept[k]
	if get == nil {
		get = sync.OnceValue(make)
		kept[k] = get
	}
	s.mu.Unlock()
	return get()
}

// Sets are those of several brackets, so that what several papers and files show is drawn once.
type Sets map[*part.Bracket]*Set

// Of is a bracket's, a new one where it is not among them.
func (s Sets) Of(b *part.Bracket, cases []part.Case, fits ...string) *Set {
	if set := s[b]; set != nil {
		return set
	}
	return Of(b, cases, fits...)
}
