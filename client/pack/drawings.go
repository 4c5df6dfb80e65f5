package pack

// This file adds pictures of plates and brackets, and solids of brackets.

import (
	"context"
	"fmt"

	"lugwright/services/dial"
)

func (a *assembly) addDrawings(context.Context) error {
	made, err := a.plateFiles(dial.SVGPlate)
	if err != nil {
		return err
	}
	for i, p := range a.pieces {
		a.add("svg/"+p.fileName+".svg", a.onDrawing(made[i]))
	}
	for _, f := range []bracketFile{
		{dial.SVGAssembly, "assembly", ".svg", a.onDrawing}, {dial.OpenSCAD, "scad", ".scad", a.onSource}, {dial.ThreeMF, "3mf", ".3mf", unchanged},
	} {
		if err := a.eachBracket(f); err != nil {
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
func (a *assembly) eachBracket(f bracketFile) error {
	for i, files := range a.made[f.format] {
		name := f.folder + "/" + safe(a.Result.Brackets[i].Part.Name) + f.tail
		if len(files) != 1 {
			return &UnsoundError{name, fmt.Sprintf("the geometry service gave %d files for one bracket", len(files))}
		}
		a.add(name, f.warned(files[0].Data))
	}
	return nil
}
