package run

// This file refuses loads that a bracket does not carry, all of them at once, and says which it carries.

import (
	"fmt"
	"slices"
	"strings"

	"lugwright/part"
)

// carried refuses every component of the cases that has no load path, each case's forces and moments on their own.
func carried(b *part.Bracket, cases []part.Case) error {
	var bad part.FieldErrors
	for i := range cases {
		c := &cases[i]
		lp := loadPoint(b, c.LoadPoint)
		if lp == nil {
			continue // the strength service names the points there are
		}
		has := componentsAt(b, lp)
		bad = append(bad, notCarried(c, lp, has, fmt.Sprintf("cases[%d].force", i), part.FxPlus, part.FzMinus)...)
		bad = append(bad, notCarried(c, lp, has, fmt.Sprintf("cases[%d].moment", i), part.MxPlus, part.MzMinus)...)
	}
	if bad == nil {
		return nil
	}
	return bad
}

func notCarried(c *part.Case, lp *part.LoadPoint, has []part.Component, field string, first, last part.Component) part.FieldErrors {
	var loose, lost []part.Component
	for k := first; k <= last; k++ {
		switch {
		case k.Size(c.Force, c.Moment) == 0 || slices.Contains(has, k):
		case slices.Contains(lp.Released, k):
			loose = append(loose, k)
		default:
			lost = append(lost, k)
		}
	}
	accept := "this bracket carries " + named(has)
	var bad part.FieldErrors
	if lost != nil {
		bad = append(bad, &part.FieldError{Field: field, Found: fmt.Sprintf("no load path for %s of case %q", named(lost), c.Name), Accept: accept})
	}
	if loose != nil {
		bad = append(bad, &part.FieldError{Field: field, Found: fmt.Sprintf("the joint lets %s of case %q go", named(loose), c.Name), Accept: accept})
	}
	return bad
}

func named(list []part.Component) string {
	words := make([]string, len(list))
	for i, k := range list {
		words[i] = k.String()
	}
	return strings.Join(words, ", ")
}

func loadPoint(b *part.Bracket, id string) *part.LoadPoint {
	for i := range b.LoadPoints {
		if lp := &b.LoadPoints[i]; lp.ID == id || id == "" && len(b.LoadPoints) == 1 {
			return lp
		}
	}
	return nil
}

// componentsAt are those with a path from a load point; a path that names none is the only point's.
func componentsAt(b *part.Bracket, lp *part.LoadPoint) []part.Component {
	var out []part.Component
	for i := range b.Paths {
		if p := &b.Paths[i]; p.LoadPoint == lp.ID || p.LoadPoint == "" && len(b.LoadPoints) == 1 {
			out = append(out, p.Component)
		}
	}
	slices.Sort(out)
	return slices.Compact(out)
}
