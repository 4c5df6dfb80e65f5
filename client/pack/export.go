package pack

// This file asks for the files of every bracket.

import (
	"cmp"
	"context"
	"slices"

	"lugwright/geometry/shop"
	"lugwright/part"
	"lugwright/services/dial"
)

// exports are the files of each format, by the brackets in their order.
type exports map[dial.Format][][]dial.File

// export asks for all formats of a bracket at once, and for several brackets at a time.
func (a *assembly) export(ctx context.Context) error {
	formats := []dial.Format{dial.SVGPlate, dial.SVGAssembly, dial.OpenSCAD, dial.ThreeMF}
	if a.Job.Shop.Files.Grouping != shop.OneThickness {
		for _, f := range a.forms {
			formats = append(formats, f.format)
		}
	}
	n := len(a.Result.Brackets)
	a.made = exports{}
	for _, f := range formats {
		a.made[f] = make([][]dial.File, n)
	}
	return together(n, func(i int) error {
		b := a.Result.Brackets[i].Part
		if a.warning() == "" {
			return a.ask(ctx, i, b, formats...)
		}
		titled := *b
		titled.Name = stampText + ": " + b.Name // the file is packed and takes no stamp
		others := slices.DeleteFunc(slices.Clone(formats), func(f dial.Format) bool { return f == dial.ThreeMF })
		return cmp.Or(a.ask(ctx, i, b, others...), a.ask(ctx, i, &titled, dial.ThreeMF))
	})
}

// ask keeps the files of bracket i.
func (a *assembly) ask(ctx context.Context, i int, b *part.Bracket, formats ...dial.Format) error {
	all, err := a.Client.Export(ctx, b, formats, a.forms[0].style())
	if err != nil {
		return err
	}
	for k, f := range formats {
		a.made[f][i] = all[k]
	}
	return nil
}
