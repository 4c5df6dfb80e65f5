package papers

// This file is the revision sheet: what changed since an earlier pack, and what that means for parts that are cut already.

import (
	"slices"
	"strings"

	"lugwright/client/paper"
)

func revisionSheet(p *page) string {
	now, before := p.in.Now, p.in.Before
	switch {
	case before == nil:
		return "no earlier pack was given to compare with (--since OLDPACK)"
	case now == nil:
		return "this job writes no cut files while a check fails"
	case !before.CutFiles:
		return "the earlier pack has no cut files to compare with"
	}
	p.packs(before, now)
	p.cutParts(before, now)
	p.lines("Sawn sections", "a section cut already is wrong where it changed", before.Sawn, now.Sawn)
	p.lines("Welds", "a joint welded already: ask before it is used", before.Welds, now.Welds)
	p.lines("Bought", "send back, or order more", before.Bought, now.Bought)
	p.head("Before anything else is cut")
	p.ticks("old papers and cut files put away or crossed out", "parts that are wrong marked so that nobody uses them",
		"the shop told which files replace which")
	p.cautions(13, 14)
	return ""
}

func (p *page) packs(before, now *Made) {
	t := table("", "", "earlier pack", "this one")
	row(t, "job", before.Job, now.Job)
	row(t, "revision", orNone(before.Revision), orNone(now.Revision))
	row(t, "job hash", before.Hash[:min(16, len(before.Hash))], now.Hash[:min(16, len(now.Hash))])
	row(t, "tool", before.Version, now.Version)
	row(t, "passes", yes(before.Passed), yes(now.Passed))
	p.head("The two packs")
	p.add(t)
	switch {
	case before.Job != now.Job:
		p.say("THE JOBS HAVE DIFFERENT TITLES: is this the pack to compare with?")
	case before.Hash == now.Hash:
		p.say("The job is the same to the letter: nothing should have changed.")
	case before.Revision == now.Revision:
		p.say("THE REVISION IS THE SAME ON BOTH, though the job changed: give this one a new letter, or old and new papers cannot be told apart.")
	}
}

func orNone(s string) string {
	if s == "" {
		return "none"
	}
	return s
}

func yes(b bool) string {
	if b {
		return "yes"
	}
	return "NO"
}

// What becomes of a plate that is cut already.
const (
	right   = "stays right"
	wrong   = "WRONG, cut anew"
	gone    = "not used any more"
	fresh   = "new"
	compare = "COMPARE before use: its size, mass, cut length and holes are the same, its cut file is not"
	unknown = "not known: its file's hash is missing"
)

func (p *page) cutParts(before, now *Made) {
	t := table("", "mark", "stock", "before", "now", "a part cut already")
	counts := map[string]int{}
	add := func(mark, stock, was, is, what string) {
		row(t, mark, stock, was, is, what)
		counts[what]++
	}
	for _, c := range now.Plates {
		i := slices.IndexFunc(before.Plates, func(b Cut) bool { return b.Mark == c.Mark })
		if i < 0 {
			add(c.Mark, c.What, "-", c.Count+" off", fresh)
			continue
		}
		old := before.Plates[i]
		stock, what := c.What, right
		switch {
		case old.SHA256 == "" || c.SHA256 == "":
			what = unknown
		case old.What != c.What:
			stock, what = old.What+" is now "+c.What, wrong
		case old.SHA256 == c.SHA256:
		case old.Measures != c.Measures || !old.Shared && !c.Shared && before.Version == now.Version:
			what = wrong
		default: // another piece in the same file may have changed, or the tool writes files in another way
			what = compare
		}
		add(c.Mark, stock, old.Count+" off", c.Count+" off", what)
	}
	for _, old := range before.Plates {
		if !slices.ContainsFunc(now.Plates, func(c Cut) bool { return c.Mark == old.Mark }) {
			add(old.Mark, old.What, old.Count+" off", "-", gone)
		}
	}
	p.head("Plates, by the hash of their cut files")
	if len(t.Rows) == 0 {
		p.say("Neither pack has plates.")
		return
	}
	// What is wrong stands first.
	order := []string{wrong, compare, unknown, fresh, gone, right}
	slices.SortStableFunc(t.Rows, func(a, b paper.Row) int { return slices.Index(order, a.Cells[4]) - slices.Index(order, b.Cells[4]) })
	p.say("%s wrong, %d to compare, %d new, %d not used any more, %d that stay right.", counted(counts[wrong], "plate is", "plates are"), counts[compare], counts[fresh], counts[gone], counts[right])
	p.add(t)
}

// lines compares two lists by what names a row.
func (p *page) lines(head, means string, before, now []Line) {
	t := table("", "what", "which", "before", "now")
	find := func(list []Line, key string) *Line {
		if i := slices.IndexFunc(list, func(l Line) bool { return l.Key == key }); i >= 0 {
			return &list[i]
		}
		return nil
	}
	for i := range now {
		l := &now[i]
		switch old := find(before, l.Key); {
		case old == nil:
			row(t, fresh, l.Key, "-", entire(l))
		default:
			if was, is := differs(old, l); was != "" || is != "" {
				row(t, "changed", l.Key, was, is)
			}
		}
	}
	for i := range before {
		if l := &before[i]; find(now, l.Key) == nil {
			row(t, gone, l.Key, entire(l), "-")
		}
	}
	p.head(head)
	if len(t.Rows) == 0 {
		p.say("No change.")
		return
	}
	p.add(t)
	p.bullets(means, "lengths in mm, as the lists have them")
}

// entire is everything that a row says.
func entire(l *Line) string {
	out := []string{}
	if l.Count != "" {
		out = append(out, l.Count+" off")
	}
	for _, s := range l.Said {
		out = append(out, s.Value)
	}
	return strings.Join(out, ", ")
}

// differs is what two rows of one name do not say alike.
func differs(old, now *Line) (was, is string) {
	var a, b []string
	if old.Count != now.Count {
		a, b = append(a, old.Count+" off"), append(b, now.Count+" off")
	}
	told := func(out []string, l, other *Line) []string {
		for _, s := range l.Said {
			if !slices.Contains(other.Said, s) {
				out = append(out, s.Name+" "+s.Value)
			}
		}
		return out
	}
	return strings.Join(told(a, old, now), ", "), strings.Join(told(b, now, old), ", ")
}
