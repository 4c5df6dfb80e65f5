package command

// This file draws how far a long run is, on a terminal alone.

import (
	"time"

	"github.com/schollz/progressbar/v3"
)

// barEvery is how often the bar is drawn.
const barEvery = 200 * time.Millisecond

// bar is the bar of a run; its zero value draws nothing.
type bar struct{ b *progressbar.ProgressBar }

// progress makes the bar of so many variants, on standard error where that is a terminal.
func (s *session) progress(n int64) *bar {
	if !s.Watched {
		return &bar{}
	}
	return &bar{progressbar.NewOptions64(n,
		progressbar.OptionSetWriter(s.Err), progressbar.OptionSetWidth(24), progressbar.OptionThrottle(barEvery), progressbar.OptionShowCount(),
		progressbar.OptionShowIts(), progressbar.OptionSetItsString("variants"), progressbar.OptionSetPredictTime(true), progressbar.OptionClearOnFinish(),
		progressbar.OptionSetRenderBlankState(true),
	)}
}

// begin says that a run goes on after so many variants: they count neither for the rate nor for the time left.
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

// end takes the bar off the terminal.
func (b *bar) end() {
	if b.b != nil {
		b.b.Clear()
		b.b = nil
	}
}
