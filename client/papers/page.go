package papers

// This file fills a paper: numbers in the job's units, blocks, cautions.

import (
	"fmt"
	"math"
	"strings"

	"lugwright/client/caution"
	"lugwright/client/paper"
	"lugwright/client/run"
	"lugwright/units"
)

// Where a number comes from that the model does not hold.
const (
	common  = "common practice, no source"
	chosen  = "builder's choice"
	blank   = "______" // to be filled in by hand
	tickBox = "[ ]"
)

// page is a paper being filled.
type page struct {
	in     Input
	system units.System
	blocks []paper.Block
}

func (p *page) brackets() []run.Bracket { return p.in.Result.Brackets }

// noBrackets is why a paper about brackets is missing.
const noBrackets = "the job has no brackets"

// length writes a length with its unit, bare without.
func (p *page) length(mm float64) string { return units.ShopLength(mm, p.system) }

func (p *page) bare(mm float64) string { return units.Unitless(p.length(mm)) }

// unit is that of bare lengths.
func (p *page) unit() string {
	if p.system == units.Inch {
		return "in"
	}
	return "mm"
}

// choose is what a source says in the job's own units, where it says it in both.
func (p *page) choose(metric, inch string) string {
	if p.system == units.Inch {
		return inch
	}
	return metric
}

// inUnit is the same in words, for a heading.
func (p *page) inUnit() string {
	if p.system == units.Inch {
		return "in inches"
	}
	return "in mm"
}

func (p *page) force(n float64) string { return units.Format(n, units.Force, p.system) }
func (p *page) mass(kg float64) string { return units.Format(kg, units.Mass, p.system) }

// wrench is a torque in what wrenches show: N m, lbf ft.
func (p *page) wrench(nmm float64) string {
	v := nmm / 1000
	if p.system == units.Inch {
		v = nmm / (12 * 25.4 * 4.4482216152605)
	}
	decimals := 0
	if v < 20 {
		decimals = 1
	}
	return units.FormatPlain(v, decimals)
}

func (p *page) wrenchUnit() string {
	if p.system == units.Inch {
		return "lbf ft"
	}
	return "N m"
}

func degrees(rad float64) string {
	return strings.TrimSuffix(units.FormatPlain(rad*180/math.Pi, 1), ".0") + " deg"
}

// words are a note's, with its lengths in the job's units.
func (p *page) words(note string) string { return units.Words(note, p.system) }

func (p *page) add(b paper.Block) { p.blocks = append(p.blocks, b) }

func (p *page) head(text string) { p.add(&paper.Heading{Level: 2, Text: text}) }
func (p *page) sub(text string)  { p.add(&paper.Heading{Level: 3, Text: text}) }

func (p *page) say(format string, args ...any) {
	p.add(&paper.Words{Text: fmt.Sprintf(format, args...)})
}

func (p *page) list(kind paper.ListKind, items ...string) {
	if len(items) > 0 {
		p.add(&paper.List{Items: items, Kind: kind})
	}
}

func (p *page) bullets(items ...string) { p.list(paper.Bullets, items...) }
func (p *page) ticks(items ...string)   { p.list(paper.Ticks, items...) }

// table begins a table; a head that begins with # is of numbers.
func table(caption string, heads ...string) *paper.Table {
	t := &paper.Table{Caption: caption}
	for _, h := range heads {
		text, numbers := strings.CutPrefix(h, "#")
		t.Heads = append(t.Heads, paper.Head{Text: text, Numbers: numbers})
	}
	return t
}

func row(t *paper.Table, cells ...string) { t.Rows = append(t.Rows, paper.Row{Cells: cells}) }

// cautions ends a paper.
func (p *page) cautions(numbers ...int) {
	var items []string
	for _, c := range caution.Of(numbers...) {
		items = append(items, c.Text)
	}
	p.head("Mind")
	p.bullets(items...)
}

// title names a bracket: "pair-left: clevis, left hand, 2 off".
func title(b *run.Bracket) string {
	s := fmt.Sprintf("%s: %s, %s hand", b.Spec.Name, b.Spec.Kind, b.Spec.Hand)
	if b.Spec.Quantity > 1 {
		s += fmt.Sprintf(", %d off", b.Spec.Quantity)
	}
	return s
}

func counted(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return fmt.Sprintf("%d %s", n, many)
}

func (p *page) stress(mpa float64) string { return units.Format(mpa, units.Stress, p.system) }
