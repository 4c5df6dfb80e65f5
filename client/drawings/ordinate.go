package drawings

import (
	"cmp"
	"math"
	"slices"
	"strings"

	"lugwright/client/draw"
	"lugwright/geometry/shape"
)

// Running dimensions: each value stands on the extension line of what it measures, which is bent aside where values would run into one another. The
// first is the datum, marked by a ring, the last the whole size, which has a dimension line of its own outside.

const (
	startMM   = 2.0 // from the outline to the bend of an extension line
	bendMM    = 5.0 // length of the bend
	overallMM = 6.0 // from the values to the dimension line of the whole size
)

// Ranks of what is measured.
const (
	hiddenCorner = iota // behind the steel, seen from its value
	corner
	needed
)

// ordinate is a place to be measured.
type ordinate struct {
	value  float64 // from the datum, mm of the model
	inward float64 // from the side to what is measured, mm of the model
	gap    float64 // from there to where its extension line begins, mm on paper
	rank   int     // what has less gives way where there is little room
	row    float64 // where its value stands
	what   string  // words after the value, may be empty
}

// ladder is the running dimensions along one side. Place turns a distance along the side, from the datum, and one outwards from it, both on paper, into a point.
type ladder struct {
	list   []ordinate
	size   float64    // of the side, mm of the model
	ends   [2]float64 // how far in from the side its two ends are, mm of the model
	scale  float64
	short  bool    // too short for a dimension line of its whole size, which its last value gives
	turn   float64 // of the words
	above  float64 // +1 or -1: on which side of its line along the ladder a value stands
	place  func(along, out float64) shape.Point
	length func(float64) string
}

// settle drops what is there twice or has no room, and finds a row for the rest.
func (l *ladder) settle() {
	whole := l.size * l.scale
	slices.SortStableFunc(l.list, func(a, b ordinate) int {
		if c := cmp.Compare(a.value, b.value); math.Abs(a.value-b.value) > 0.005 {
			return c
		}
		return b.rank - a.rank
	})
	l.list = slices.CompactFunc(l.list, func(a, b ordinate) bool { return math.Abs(a.value-b.value) <= 0.005 })
	l.list = slices.DeleteFunc(l.list, func(o ordinate) bool { return o.value <= 0.005 || o.value >= l.size-0.005 })
	room := max(int(math.Floor(whole/lineMM+1e-6))-1, 0)
	for rank := hiddenCorner; rank < needed; rank++ {
		for k := len(l.list) - 1; k >= 0 && len(l.list) > room; k-- {
			if l.list[k].rank == rank {
				l.list = slices.Delete(l.list, k, k+1)
			}
		}
	}
	inside := min(room, len(l.list))
	want := make([]float64, inside)
	for i := range want {
		want[i] = l.list[i].value * l.scale
	}
	for i, row := range spread(want, lineMM, lineMM, whole-lineMM) {
		l.list[i].row = row
	}
	last := max(whole, lineMM)
	if inside < len(l.list) { // all beyond one another, the whole size last
		for i := range l.list {
			l.list[i].row = float64(i+1) * lineMM
		}
		last = max(whole, float64(len(l.list)+1)*lineMM)
	}
	l.short = last > whole || whole < textWidth(l.length(l.size))+2*arrowMM+1
	l.list = slices.Insert(l.list, 0, ordinate{inward: l.ends[0], gap: 1, rank: needed})
	l.list = append(l.list, ordinate{value: l.size, inward: l.ends[1], gap: 1, row: last, rank: needed})
}

// zone is how far out the values reach, and outer how far the dimension of the whole size does.
func (l *ladder) zone() float64 {
	widest := 0.0
	for _, o := range l.list {
		widest = max(widest, textWidth(l.words(&o)))
	}
	return startMM + bendMM + 1 + widest
}

func (l *ladder) words(o *ordinate) string {
	return strings.TrimSpace(l.length(o.value) + " " + o.what)
}

func (l *ladder) outer() float64 {
	if l.short {
		return l.zone()
	}
	return l.zone() + overallMM + clearMM + textMM
}

// draw adds the dimensions, each in a group named by its axis and number.
func (l *ladder) draw(g *page, axis string) {
	zone := l.zone()
	for i, o := range l.list {
		words := l.words(&o)
		g.group(axis+number(i), func(g *page) {
			along, end := o.value*l.scale, zone
			if (i == 0 || o.value == l.size) && !l.short {
				end += overallMM + 1.5
			}
			g.line(thin(), l.place(along, o.gap-o.inward*l.scale), l.place(along, startMM), l.place(o.row, startMM+bendMM), l.place(o.row, end))
			g.words(l.place(o.row+l.above*clearMM, zone), draw.Left, l.turn, words)
			if i == 0 {
				g.circle(thin(), draw.Shade{}, l.place(0, startMM+bendMM/2), 1.6)
			}
		})
	}
	if l.short {
		return
	}
	g.group(axis+"-overall", func(g *page) {
		whole, out := l.size*l.scale, zone+overallMM
		dimensionLine(g, l.place(0, out), l.place(whole, out), l.place(whole/2, out+l.above*clearMM), math.Pi/2-l.turn, l.length(l.size))
	})
}

// dimensionLine is a line with arrows at both ends, and words.
func dimensionLine(g *page, a, b, words shape.Point, turn float64, text string) {
	g.line(thin(), a, b)
	g.arrow(a, b)
	g.arrow(b, a)
	g.words(words, draw.Middle, turn, text)
}
