package pack

// This file adds drawings of plates and brackets, plates at full size, and solids of brackets.

import (
	"bytes"
	"context"
	"fmt"

	"lugwright/client/draw"
	"lugwright/client/draw/svg"
	"lugwright/client/drawings"
	"lugwright/client/paper"
	"lugwright/client/run"
	"lugwright/services/dial"
)

// addShapes adds plates at full size and solids of brackets.
func (a *assembly) addShapes(context.Context) error {
	flat, err := a.plateFiles(dial.SVGPlate)
	if err != nil {
		return err
	}
	for i, p := range a.pieces {
		a.add("svg/"+p.fileName+".svg", flat[i])
	}
	for _, f := range []bracketFile{{dial.OpenSCAD, "scad", ".scad", a.onSource}, {dial.ThreeMF, "3mf", ".3mf", unchanged}} {
		if err := a.eachBracket(f); err != nil {
			return err
		}
	}
	return nil
}

// drawPlates adds a dimensioned drawing of each distinct plate.
func (a *assembly) drawPlates() {
	for _, p := range a.pieces {
		a.addLater("drawings/plates/"+p.fileName+".svg", func() ([]byte, error) {
			return a.drawn(drawings.Plate(p.plate, drawings.PlateOptions{Options: a.drawingOptions(), Hand: p.hand, Quantity: p.count, AtHoles: a.Result.AtHoles(p.plate.Mark)}))
		})
	}
}

// drawBrackets adds the drawings of each bracket.
func (a *assembly) drawBrackets() {
	list := make([][]*draw.Drawing, len(a.Result.Brackets))
	together(len(list), func(i int) error { //nolint:errcheck // nothing can fail
		list[i] = a.Drawings[a.Result.Brackets[i].Part].All(a.drawingOptions())
		return nil
	})
	for i := range list {
		b := a.Result.Brackets[i].Part
		for _, d := range list[i] {
			a.addLater("drawings/brackets/"+safe(b.Name)+"-"+d.Name+".svg", func() ([]byte, error) { return a.drawn(d) })
		}
	}
}

// drawFigures makes the drawings that papers show, on every core.
func (a *assembly) drawFigures() {
	together(len(a.Result.Brackets), func(i int) error { //nolint:errcheck // nothing can fail
		a.figures(&a.Result.Brackets[i])
		return nil
	})
}

// figures are the drawings of a bracket for a paper: views as large as a page, the others two on a page.
func (a *assembly) figures(b *run.Bracket) []*paper.Figure {
	set, small := a.Drawings[b.Part], a.drawingOptions()
	small.HeightMM = 108
	list := append([]*draw.Drawing{set.Parts(small), set.Views(a.drawingOptions())}, set.Welds(small)...)
	var out []*paper.Figure
	for _, d := range append(list, set.Loads(small)...) {
		out = append(out, &paper.Figure{Drawing: d})
	}
	return out
}

// DrawingsOf are the drawings of a job's brackets.
func DrawingsOf(r *run.Result) drawings.Sets {
	sets := drawings.Sets{}
	for i := range r.Brackets {
		b := &r.Brackets[i]
		sets[b.Part] = drawings.Of(b.Part, r.Job.LoadCases(b.Spec), b.Fits...)
	}
	return sets
}

func (a *assembly) drawingOptions() drawings.Options { return drawings.Options{Units: a.Job.Units} }

// drawn is a drawing as a file, stamped where the job does not pass.
func (a *assembly) drawn(d *draw.Drawing) ([]byte, error) {
	if a.warning() != "" {
		d = stamped(d)
	}
	var out bytes.Buffer
	if err := svg.Write(&out, d); err != nil {
		return nil, err
	}
	return out.Bytes(), nil
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
