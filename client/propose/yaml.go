package propose

// This file writes a bracket as it stands in a job: every number as it is, so that the job gives the same bracket.

import (
	"fmt"
	"math"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"

	"lugwright/client/job"
	"lugwright/client/sweep"
	"lugwright/geometry"
	"lugwright/part"
	"lugwright/units"
)

// YAML is an item of the field brackets. Parameters come in the order of their declaration; those that are neither stated nor chosen stay at their defaults.
func YAML(b *job.Bracket, kind *geometry.Kind, system units.System) string {
	w := &writer{system: system}
	w.line("  - name: %s", text(b.Name))
	w.line("    kind: %s", text(b.Kind))
	w.line("    hand: %s", b.Hand)
	w.word("mount", b.Mount)
	w.word("tray", b.Tray)
	w.word("load_point", b.LoadPoint)
	if b.BodySide {
		w.word("side", "body")
	}
	w.word("mark", b.Mark)
	if b.Quantity > 1 {
		w.line("    quantity: %d", b.Quantity)
	}
	w.parameters(b, kind)
	w.loads(b)
	w.spectrum(b)
	return w.String()
}

type writer struct {
	strings.Builder
	system units.System
}

func (w *writer) line(format string, args ...any) {
	fmt.Fprintf(w, format, args...)
	w.WriteByte('\n')
}

func (w *writer) word(field, words string) {
	if words != "" {
		w.line("    %s: %s", field, text(words))
	}
}

func (w *writer) parameters(b *job.Bracket, kind *geometry.Kind) {
	head := "    parameters:"
	for _, d := range kind.Params {
		i := slices.IndexFunc(b.Params, func(p part.Param) bool { return p.Name == d.Name })
		if i < 0 {
			continue
		}
		if head != "" {
			w.line("%s", head)
			head = ""
		}
		w.line("      %s: %s", d.Name, w.value(b.Params[i]))
	}
}

// value is a parameter's value, exactly.
func (w *writer) value(p part.Param) string {
	if p.Text != "" {
		return text(p.Text)
	}
	unit, dim := map[geometry.Unit]string{geometry.MM: " mm", geometry.Rad: " rad"}[geometry.Unit(p.Unit)], units.Length
	if geometry.Unit(p.Unit) == geometry.Rad {
		dim = units.Angle
	}
	if unit != "" {
		if written := sweep.Say(p, w.system); near(written, dim, p.Number) {
			return written
		}
	}
	return exact(p.Number) + unit
}

// near says whether a text reads as the number, but for its last bits.
func near(written string, dim units.Dim, v float64) bool {
	read, err := units.Parse(written, dim)
	return err == nil && math.Abs(read-v) <= 1e-9*math.Max(1, math.Abs(v))
}

func (w *writer) loads(b *job.Bracket) {
	head := "    loads:"
	for _, l := range b.Loads {
		if l.OfMount {
			continue
		}
		if head != "" {
			w.line("%s", head)
			head = ""
		}
		more := ""
		if l.State != "" {
			more += ", state: " + text(l.State)
		}
		if l.LoadPoint != "" {
			more += ", load_point: " + text(l.LoadPoint)
		}
		more += ", force: " + vector(l.Force, "N")
		if l.Moment != (part.Vec{}) {
			more += ", moment: " + vector(l.Moment, "N mm")
		}
		w.line("      - {case: %s%s}", text(l.Case), more)
	}
}

func (w *writer) spectrum(b *job.Bracket) {
	if len(b.Spectrum) == 0 {
		return
	}
	w.line("    spectrum:")
	for _, c := range b.Spectrum {
		w.line("      - {from: %s, to: %s, cycles: %s}", text(c.From), text(c.To), exact(c.Cycles))
	}
}

func vector(v part.Vec, unit string) string {
	return fmt.Sprintf("{x: %s %s, y: %s %s, z: %s %s}", exact(v.X), unit, exact(v.Y), unit, exact(v.Z), unit)
}

func exact(v float64) string { return strconv.FormatFloat(v, 'f', -1, 64) }

// plain are words that YAML reads as words without quotes.
var plain = sync.OnceValue(func() *regexp.Regexp { return regexp.MustCompile(`^[A-Za-z][A-Za-z0-9+-]*( [A-Za-z0-9+-]+)*$`) })

func text(s string) string {
	if plain().MatchString(s) && !slices.Contains([]string{"null", "true", "false", "yes", "no", "on", "off", "y", "n"}, strings.ToLower(s)) {
		return s
	}
	return strconv.Quote(s)
}
