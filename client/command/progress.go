package command

// This file draws how far a long run is, on a terminal alone.

import (
	"io"
	"time"

	"github.com/schollz/progressbar/v3"
)

// barEvery is how often the bar is drawn.
const barEvery = 200 * time.Millisecond

// bar is the bar of a run; its zero value draws nothing.
type bar struct {
	b *progressbar.ProgressBar
	w *noting
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
	return &bar{progressbar.NewOptions64(n,
		progressbar.OptionSetWriter(w), progressbar.OptionSetWidth(24), progressbar.OptionThrottle(barEvery), progressbar.OptionShowCount(),
		progressbar.OptionShowIts(), progressbar.OptionSetItsString(things), progressbar.OptionSetPredictTime(n >= 0), progressbar.OptionClearOnFinish(),
		progressbar.OptionSetRenderBlankState(true),
	), w}
}

// begin says that a run goes on after so many things: they count neither for the rate nor for the time left.
func (b *bar) begin(done int64) {
	if b.b != nil && done > 0 {
		b.b.ChangeMax64(b.b.GetMax64() - done)
	}
}

func (b *bar) add(n int) {
	if b.b != nil {
		b.b.Add(n)
	}
}

// clear makes room for what is printed on the same terminal; the bar comes again below.
func (b *bar) clear() {
	if b.b != nil && b.w.drawn {
		b.b.Clear()
		b.w.drawn = false
	}
}

// end takes the bar off the terminal.
func (b *bar) end() {
	b.clear()
	b.b = nil
}
