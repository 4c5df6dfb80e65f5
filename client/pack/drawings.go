package pack

// This file adds pictures of plates and brackets, and solids of brackets.

import (
	"context"
	"fmt"

	"lugwright/services/dial"
)

func (a *assembly) addDrawings(ctx context.Context) error {
	made, err := a.plateFiles(ctx, dial.SVGPlate, dial.CutStyle{})
	if err != nil {
		return err
	}
	for i, p := range a.pieces {
		a.add("svg/"+p.fileName+".svg", a.onDrawing(made[i]))
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
	all, err := a.exports(ctx, f.format, dial.CutStyle{})
	if err != nil {
		return err
	}
	for i, files := range all {
		name := f.folder + "/" + safe(a.Result.Brackets[i].Part.Name) + f.tail
		if len(files) != 1 {
			return &UnsoundError{name, fmt.Sprintf("the geometry service gave %d files for one bracket", len(files))}
		}
		a.add(name, f.warned(files[0].Data))
	}
	return nil
}

// exports asks for the files of every bracket, several at a time, and gives them in the order of the brackets.
func (a *assembly) exports(ctx context.Context, format dial.Format, style dial.CutStyle) ([][]dial.File, error) {
	all := make([][]dial.File, len(a.Result.Brackets))
	err := together(len(all), func(i int) (err error) {
		b := *a.Result.Brackets[i].Part
		if format == dial.ThreeMF && a.warning() != "" {
			b.Name = stampText + ": " + b.Name // its title; the file is packed and takes no stamp
		}
		all[i], err = a.Client.Export(ctx, &b, format, style)
		return err
	})
	return all, err
}
