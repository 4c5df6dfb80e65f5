package pack

// This file asks for the files of every bracket.

import (
	"context"
	"slices"

	"lugwright/geometry/shop"
	"lugwright/services/dial"
)

// exports are the files of each format, by the brackets in their order.
type exports map[dial.Format][][]dial.File

// exportAll asks for all that a pack has of brackets. Solids, which take longest and have a title of their own, go first and alone: so the cores share evenly.
func (a *assembly) exportAll(ctx context.Context) error {
	return a.export(ctx, []dial.Format{dial.ThreeMF}, append(a.cutFormats(), dial.OpenSCAD))
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
		if a.warning() != "" && slices.Contains(formats, dial.ThreeMF) {
			b.Name = stampText + ": " + b.Name // its title; the file is packed and takes no stamp
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
