package pack

// This file asks for the files of every bracket.

import (
	"context"
	"slices"

	"lugwright/geometry/shop"
	"lugwright/part"
	"lugwright/services/dial"
)

// exports are the files of each format, by the brackets in their order.
type exports map[dial.Format][][]dial.File

// exportAll asks for all that a pack has of brackets. Solids take longest and go first: so the cores share evenly.
func (a *assembly) exportAll(ctx context.Context) error {
	return a.export(ctx, titled, append(a.cutFormats(), dial.OpenSCAD))
}

// titled are formats whose files show names of things, and are stamped by them.
var titled = []dial.Format{dial.ThreeMF, dial.SVGPlate}

// stampedNames is a bracket whose name and whose plates' names say that it does not pass.
func stampedNames(b part.Bracket) part.Bracket {
	b.Name, b.Plates = stampText+": "+b.Name, slices.Clone(b.Plates)
	for i := range b.Plates {
		b.Plates[i].Name = stampText + ": " + b.Plates[i].Name
	}
	return b
}

// cutFormats are those of cut files by bracket.
func (a *assembly) cutFormats() []dial.Format {
	if a.Job.Shop.Files.Grouping == shop.OneThickness {
		return nil
	}
	var out []dial.Format
	for _, f := range a.forms {
		out = append(out, f.format)
	}
	return out
}

// export makes a few calls for each bracket, each for several formats: every call reads, validates and mirrors the bracket again.
func (a *assembly) export(ctx context.Context, calls ...[]dial.Format) error {
	n := len(a.Result.Brackets)
	a.made = exports{}
	for _, f := range slices.Concat(calls...) {
		a.made[f] = make([][]dial.File, n)
	}
	return together(n*len(calls), func(k int) error {
		formats, i := calls[k/n], k%n
		b := *a.Result.Brackets[i].Part
		if a.warning() != "" && slices.Equal(formats, titled) {
			b = stampedNames(b)
		}
		all, err := a.Client.Export(ctx, &b, formats, a.forms[0].style())
		if err != nil {
			return err
		}
		for k, f := range formats {
			a.made[f][i] = all[k]
		}
		return nil
	})
}
