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
	if err := a.eachBracket(ctx, dial.SVGAssembly, "assembly", ".svg", a.onDrawing); err != nil {
		return err
	}
	return a.eachBracket(ctx, dial.OpenSCAD, "scad", ".scad", a.onSolid)
}

// eachBracket adds the one file that a format gives for each bracket.
func (a *assembly) eachBracket(ctx context.Context, format dial.Format, folder, tail string, warned func([]byte) []byte) error {
	for i := range a.Result.Brackets {
		b := a.Result.Brackets[i].Part
		files, err := a.Client.Export(ctx, b, format, dial.CutStyle{})
		if err != nil {
			return err
		}
		name := folder + "/" + safe(b.Name) + tail
		if len(files) != 1 {
			return &UnsoundError{name, fmt.Sprintf("the geometry service gave %d files for one bracket", len(files))}
		}
		a.add(name, warned(files[0].Data))
	}
	return nil
}
