package wire

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode/utf8"

	"lugwright/part"
)

// Bounds of what is let in. They are far above any real bracket, and keep one message from filling the memory.
const (
	MaxPlates   = 500
	MaxBatch    = 256
	maxThings   = 1000 // members, pins, welds, paths, ... of a bracket; points, segments, steps of one of them
	maxVertices = 5000 // of a loop
	maxHoles    = 2000 // of a plate
	maxParams   = 200
	maxNameLen  = 200
	maxWordsLen = 2000
	maxListed   = 20000 // rows of an answer
	maxFileLen  = 16 << 20
	maxRefused  = 50 // field errors of one request
)

// reader walks a message, remembers where it is, and collects what it refuses.
type reader struct {
	steps []step
	bad   part.FieldErrors
}

// step is one field on the way down; index is -1 for a field that is no list.
type step struct {
	name  string
	index int
}

func (r *reader) enter(name string, index int) { r.steps = append(r.steps, step{name, index}) }
func (r *reader) leave()                       { r.steps = r.steps[:len(r.steps)-1] }

// err is all that was refused, nil when nothing was.
func (r *reader) err() error {
	if r.bad == nil {
		return nil
	}
	return r.bad
}

func (r *reader) refuse(name, found, accept string) {
	if len(r.bad) < maxRefused {
		r.bad = append(r.bad, &part.FieldError{Field: r.path(name), Found: found, Accept: accept})
	}
}

func (r *reader) path(name string) string {
	var b strings.Builder
	for _, s := range r.steps {
		if b.Len() > 0 {
			b.WriteByte('.')
		}
		b.WriteString(s.name)
		if s.index >= 0 {
			b.WriteString("[" + strconv.Itoa(s.index) + "]")
		}
	}
	if b.Len() > 0 && name != "" {
		b.WriteByte('.')
	}
	return b.String() + name
}

// number lets finite numbers in.
func (r *reader) number(name string, v float64) float64 {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		r.refuse(name, fmt.Sprintf("%g", v), "a finite number")
	}
	return v
}

// count lets whole numbers from 0 up to and with most in.
func (r *reader) count(name string, v int32, most int) int {
	if v < 0 || int(v) > most {
		r.refuse(name, strconv.Itoa(int(v)), fmt.Sprintf("0 to %d", most))
		return 0
	}
	return int(v)
}

// text lets short strings in: names, grades, units.
func (r *reader) text(name, s string) string { return r.bounded(name, s, maxNameLen) }

// words lets sentences in.
func (r *reader) words(name, s string) string { return r.bounded(name, s, maxWordsLen) }

func (r *reader) bounded(name, s string, most int) string {
	switch {
	case len(s) > most:
		r.refuse(name, fmt.Sprintf("%d bytes of text", len(s)), fmt.Sprintf("at most %d bytes", most))
		return ""
	case !utf8.ValidString(s):
		r.refuse(name, fmt.Sprintf("%.40q", s), "text in UTF-8")
		return ""
	}
	return s
}

// fits says whether a list is no longer than allowed.
func (r *reader) fits(name string, n, most int) bool {
	if n > most {
		r.refuse(name, fmt.Sprintf("%d entries", n), fmt.Sprintf("at most %d", most))
	}
	return n <= most
}

func (r *reader) texts(name string, most int, in []string) []string {
	if len(in) == 0 || !r.fits(name, len(in), most) {
		return nil
	}
	out := make([]string, len(in))
	for i, s := range in {
		r.enter(name, i)
		out[i] = r.words("", s)
		r.leave()
	}
	return out
}

// two reads a list that has exactly two entries.
func (r *reader) two(name string, n int) bool {
	if n != 2 {
		r.refuse(name, fmt.Sprintf("%d entries", n), "exactly 2")
	}
	return n == 2
}

func (r *reader) twoTexts(name string, in []string) (out [2]string) {
	if r.two(name, len(in)) {
		out = [2]string{r.text(name, in[0]), r.text(name, in[1])}
	}
	return out
}

// one reads a message that must be there.
func one[P, D any](r *reader, name string, in *P, read func(*reader, *P) D) (out D) {
	if in == nil {
		r.refuse(name, "missing", "a value")
		return out
	}
	r.enter(name, -1)
	out = read(r, in)
	r.leave()
	return out
}

// many reads a list of messages; an empty one is nil.
func many[P, D any](r *reader, name string, most int, in []*P, read func(*reader, *P) D) []D {
	if len(in) == 0 || !r.fits(name, len(in), most) {
		return nil
	}
	out := make([]D, len(in))
	for i, p := range in {
		r.enter(name, i)
		if p == nil {
			r.refuse("", "missing", "a value")
		} else {
			out[i] = read(r, p)
		}
		r.leave()
	}
	return out
}

// byName reads a list whose entries have names, which stand in the paths of what is refused: "parameters.bore". An entry without a name that can stand
// there has its number: "parameters[3].name".
func byName[P, D any](r *reader, list, key string, most int, in []*P, name func(*P) string, read func(*reader, *P) D) []D {
	if len(in) == 0 || !r.fits(list, len(in), most) {
		return nil
	}
	out := make([]D, len(in))
	for i, p := range in {
		n := name(p)
		if n == "" || len(n) > maxNameLen || !utf8.ValidString(n) {
			r.enter(list, i)
			r.refuse(key, fmt.Sprintf("%.40q", n), fmt.Sprintf("a name of 1 to %d bytes in UTF-8", maxNameLen))
			r.leave()
			continue
		}
		r.enter(list, -1)
		r.enter(n, -1)
		out[i] = read(r, p)
		r.leave()
		r.leave()
	}
	return out
}

// pair reads a list of exactly two messages.
func pair[P, D any](r *reader, name string, in []*P, read func(*reader, *P) D) (out [2]D) {
	if r.two(name, len(in)) {
		copy(out[:], many(r, name, 2, in, read))
	}
	return out
}

// all writes a list of messages; an empty one is nil.
func all[D, P any](in []D, write func(*D) *P) []*P {
	if len(in) == 0 {
		return nil
	}
	out := make([]*P, len(in))
	for i := range in {
		out[i] = write(&in[i])
	}
	return out
}

// BatchFits refuses a batch of more than MaxBatch entries.
func BatchFits(name string, n int) error {
	var r reader
	r.fits(name, n, MaxBatch)
	return r.err()
}
