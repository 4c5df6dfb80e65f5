package pack

// This file adds pictures of plates and brackets, and solids of brackets.

import (
	"context"
	"fmt"

	"lugwright/services/dial"
)

func (a *assembly) addDrawings(ctx context.Context) error {
	err := a.eachPlate(ctx, dial.SVGPlate, dial.CutStyle{}, func(p *piece, data []byte) error {
		a.add("svg/"+p.fileName+".svg", a.onDrawing(data))
		return nil
	})
	if err != nil {
		return err
	}
	for _, f := range []bracketFile{
		{dial.SVGAssembly, "assembly", ".svg", a.onDrawing}, {dial.OpenSCAD, "scad", ".scad", a.onSource}, {dial.ThreeMF, "3mf", ".3mf", unchanged},
	} {
		if err := a.eachBracket(ctx, f); err != nil {
			return err
		}
	}
	return nil
}

// bracketFile is a format that gives one file for each bracket.
type bracketFile struct {
	format       dial.Format
	folder, tail string
	warned       func([]byte) []byte
}

func unchanged(data []byte) []byte { return data }

// eachBracket adds the one file that a format gives for each bracket.
func (a *assembly) eachBracket(ctx context.Context, f bracketFile) error {
	for i := range a.Result.Brackets {
		b := *a.Result.Brackets[i].Part
		name := f.folder + "/" + safe(b.Name) + f.tail
		if f.format == dial.ThreeMF && a.warning() != "" {
			b.Name = stampText + ": " + b.Name // its title; the file is packed and takes no stamp
		}
		files, err := a.Client.Export(ctx, &b, f.format, dial.CutStyle{})
		if err != nil {
			return err
		}
		if len(files) != 1 {
			return &UnsoundError{name, fmt.Sprintf("the geometry service gave %d files for one bracket", len(files))}
		}
		a.add(name, f.warned(files[0].Data))
	}
	return nil
}
