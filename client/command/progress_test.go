package command

import (
	"strings"
	"testing"
)

// The bar is drawn while nothing comes, but not over what is printed, and not after its end.
func TestBarTicks(t *testing.T) {
	var out strings.Builder
	s := &session{Streams: Streams{Err: &out, Watched: true}}
	b := s.progress(100, "variants")
	drawn := func(do func()) bool {
		b.mu.Lock()
		before := out.Len()
		b.mu.Unlock()
		do()
		b.mu.Lock()
		defer b.mu.Unlock()
		return out.Len() > before
	}
	if !drawn(b.tick) {
		t.Error("the clock stands still before the first variant")
	}
	b.clear()
	if drawn(b.tick) {
		t.Error("it is drawn over what is printed")
	}
	b.end()
	b.end()
	if drawn(func() { b.tick(); b.add(1) }) {
		t.Error("it is drawn after its end")
	}
}
