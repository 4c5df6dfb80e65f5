package command

// This file draws how far a long run is, on a terminal alone.

import (
	"io"
	"sync"
	"time"

	"github.com/schollz/progressbar/v3"
)

// barEvery is how often the bar is drawn.
const barEvery = 200 * time.Millisecond

// ticks are how often it is drawn while nothing comes, so that its clock runs.
const ticks = time.Second

// bar is the bar of a run; its zero value draws nothing.
type bar struct {
	mu    sync.Mutex
	b     *progressbar.ProgressBar
	w     *noting
	ended chan struct{}
}

// noting notes whether anything was drawn.
type noting struct {
	io.Writer
	drawn bool
}

func (n *noting) Write(b []byte) (int, error) {
	n.drawn = true
	return n.Writer.Write(b)
}

// progress makes the bar of so many things, on standard error where that is a terminal. Of how many there will be -1 says that it is not known.
func (s *session) progress(n int64, things string) *bar {
	if !s.Watched {
		return &bar{}
	}
	w := &noting{Writer: s.Err}
	b := &bar{w: w, ended: make(chan struct{})}
	b.b = progressbar.NewOptions64(n,
		progressbar.OptionSetWriter(w), progressbar.OptionSetWidth(24), progressbar.OptionThrottle(barEvery), progressbar.OptionShowCount(),
		progressbar.OptionShowIts(), progressbar.OptionSetItsString(things), progressbar.OptionSetPredictTime(n >= 0), progressbar.OptionClearOnFinish(),
		progressbar.OptionSetRenderBlankState(true), progressbar.OptionSetSpinnerChangeInterval(0), // else it draws on its own, and after its end
	)
	go func() {
		clock := time.NewTicker(ticks)
		defer clock.Stop()
		for {
			select {
			case <-clock.C:
				b.tick()
			case <-b.ended:
				return
			}
		}
	}()
	return b
}

// tick draws the bar again where it stands, and nowhere else: what is printed on the same terminal is not drawn over.
func (b *bar) tick() {
	b.mu.Lock()
	defer b.mu.Unlock()
	if b.b != nil && b.w.drawn {
		b.b.RenderBlank() //nolint:errcheck // it only shows how far the run is
	}
}

// begin says that a run goes on after so many things: they count neither for the rate nor for the time left.
func (b *bar) begin(done int64) {
	b.mu.Lock()
	defer b.mu.Unlock()
	if b.b != nil && done > 0 {
		b.b.ChangeMax64(b.b.GetMax64() - done)
	}
}

func (b *bar) add(n int) {
	b.mu.Lock()
	defer b.mu.Unlock()
	if b.b != nil {
		b.b.Add(n)
	}
}

// clear makes room for what is printed on the same terminal; the bar comes again below.
func (b *bar) clear() {
	b.mu.Lock()
	defer b.mu.Unlock()
	if b.b != nil && b.w.drawn {
		b.b.Clear()
		b.w.drawn = false
	}
}

// end takes the bar off the terminal.
func (b *bar) end() {
	b.clear()
	b.mu.Lock()
	defer b.mu.Unlock()
	if b.b != nil {
		close(b.ended)
	}
	b.b = nil
}
