package strength

// What one check may cost. A bracket that no kind has made may hold a thousand of everything, each to be held against every other: no count
// of one list says what comes of them all. So the work is counted where it is done.

import (
	"context"
	"fmt"

	"lugwright/part"
)

const (
	// maxSpent bounds the work of one check, in looks at one piece of one list: some seconds of one core.
	maxSpent = 500_000_000
	// lookAfter is how much work is done between two looks at whether anyone still waits for the answer: some milliseconds.
	lookAfter = 1_000_000
	// What is kept of each section and of each block; work for each bounds the memory too.
	perCut, perBlock = 4000, 2000
	// A limit state takes as long as so many looks, and a bolt in a group with contact at its edge.
	perRule, perSolved = 8, 40
)

// meter counts the work of one check.
type meter struct {
	ctx         context.Context
	most        int    // that may be spent
	left, until int    // what may still be spent, and where it is looked at the context
	on          string // the list that is worked on, for who is told that it is too much
}

func newMeter(ctx context.Context, most int) *meter {
	return &meter{ctx: ctx, most: most, left: most, until: max(most-lookAfter, 0)}
}

// spend counts n looks. When all is spent, or nobody waits any more, it leaves the check altogether, by a panic that settleMeter catches:
// the loops that ask have no error to give.
func (m *meter) spend(n int) {
	if m.left -= n; m.left < m.until {
		m.look()
	}
}

// ended is what spend panics with.
type ended struct{ err error }

func (m *meter) look() {
	if err := m.ctx.Err(); err != nil {
		panic(ended{err})
	}
	if m.left < 0 {
		panic(ended{&part.FieldError{
			Field: m.on, Found: fmt.Sprintf("together with the rest, more than the %d million steps that one check takes", m.most/1e6),
			Accept: m.fewer(),
		}})
	}
	m.until = max(m.left-lookAfter, 0)
}

// fewer is what would be taken instead.
func (m *meter) fewer() string {
	switch m.on {
	case "cases":
		return "fewer cases in one call, or a simpler bracket"
	case "spectrum":
		return "fewer entries, or a simpler bracket"
	case "bracket":
		return "a simpler bracket"
	}
	return "fewer or simpler " + m.on + ", or a simpler bracket"
}

// settleMeter turns the end of a meter into the error of the check.
func settleMeter(err *error) {
	switch p := recover().(type) {
	case nil:
	case ended:
		*err = p.err
	default:
		panic(p)
	}
}
