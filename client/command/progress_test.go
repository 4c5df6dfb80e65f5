package command

import (
	"runtime/pprof"
	"strings"
	"testing"
)

// The bar is drawn while nothing comes, but not over what is printed, and not after its end.
func TestBarTicks(t *testing.T) {
	for n, things := range map[int64]string{100: "variants", -1: "tries"} {
		t.Run(things, func(t *testing.T) { barTicks(t, n, things) })
	}
}

func barTicks(t *testing.T, n int64, things string) {
	var out strings.Builder
	s := &session{Streams: Streams{Err: &out, Watched: true}}
	b := s.progress(n, things)
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
	var running strings.Builder
	pprof.Lookup("goroutine").WriteTo(&running, 2) //nolint:errcheck // memory takes all
	if strings.Contains(running.String(), "schollz/progressbar") {
		t.Errorf("the bar draws on its own:\n%s", &running)
	}
}
