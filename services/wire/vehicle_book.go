package wire

import (
	"fmt"
	"slices"
	"strconv"
)

// Bounds of an answer about a vehicle: its texts, and each of them.
const (
	maxTexts   = 1 << 20
	maxTextLen = 1 << 16
)

// book writes the texts of one answer, each once. Number 0 is no text.
type book struct{ Briefing }

func (b *book) text(s string) int32 {
	if s == "" {
		return 0
	}
	return b.Briefing.text(s) + 1
}

func (b *book) all(in []string) []int32 {
	if len(in) == 0 {
		return nil
	}
	out := make([]int32, len(in))
	for i, s := range in {
		out[i] = b.text(s)
	}
	return out
}

// openBook reads them.
type openBook struct{ texts []string }

func (b openBook) text(r *reader, name string, i int32) string {
	switch {
	case i == 0:
		return ""
	case i < 0 || int(i) > len(b.texts):
		r.refuse(name, strconv.Itoa(int(i)), fmt.Sprintf("0, or the number of one of %d texts", len(b.texts)))
		return ""
	}
	return b.texts[i-1]
}

func (b openBook) all(r *reader, name string, in []int32) []string {
	if len(in) == 0 || !r.fits(name, len(in), maxTexts) {
		return nil
	}
	out := make([]string, len(in))
	for i, n := range in {
		out[i] = b.text(r, name, n)
	}
	return out
}

// sentences reads words of an answer, which may be long where they list names.
func (r *reader) sentences(name string, in []string) []string {
	if len(in) == 0 || !r.fits(name, len(in), maxTexts) {
		return nil
	}
	for _, s := range in {
		r.bounded(name, s, maxTextLen)
	}
	return slices.Clone(in)
}

func (r *reader) sentence(name, s string) string { return r.bounded(name, s, maxTextLen) }

// numbers lets a list of finite numbers in.
func (r *reader) numbers(name string, most int, in []float64) []float64 {
	if len(in) == 0 || !r.fits(name, len(in), most) {
		return nil
	}
	for i, x := range in {
		r.enter(name, i)
		r.number("", x)
		r.leave()
	}
	return slices.Clone(in)
}

// optional lets a finite number in that may be absent.
func (r *reader) optional(name string, v *float64) *float64 {
	if v == nil {
		return nil
	}
	x := r.number(name, *v)
	return &x
}

// even says whether columns have one length, and refuses them where they do not.
func (r *reader) even(n int, columns ...int) bool {
	for _, c := range columns {
		if c != n {
			r.refuse("", fmt.Sprintf("columns of %d and %d entries", n, c), "columns of one length")
			return false
		}
	}
	return r.fits("", n, maxListed)
}

// maybe reads a message that may be absent.
func maybe[P, D any](r *reader, name string, in *P, read func(*reader, *P) D) *D {
	if in == nil {
		return nil
	}
	out := one(r, name, in, read)
	return &out
}

// present writes what may be absent.
func present[D, P any](in *D, write func(*D) *P) *P {
	if in == nil {
		return nil
	}
	return write(in)
}
