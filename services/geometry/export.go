package geometry

import (
	"bytes"
	"fmt"
	"io"
	"math"
	"strings"
	"sync"

	"lugwright/geometry/dxf"
	"lugwright/geometry/scad"
	"lugwright/geometry/svg"
	"lugwright/geometry/threemf"
	"lugwright/part"
	"lugwright/services/wire"
)

const (
	typeDXF  = "image/vnd.dxf"
	typeSCAD = "application/x-openscad"
	typeSVG  = "image/svg+xml"
	type3MF  = "model/3mf"
)

// export writes the files of a bracket, as it stands in space: its axes are those of drawings and solids.
func export(b *part.Bracket, format wire.Format, style wire.CutStyle) ([]wire.File, error) {
	if o, ok := cutOptions(format, style); ok {
		return cutFiles(b, o)
	}
	switch format {
	case wire.SVGPlate:
		return plateFiles(b, ".svg", typeSVG, func(w io.Writer, p *part.Plate) error { return svg.WritePlate(w, p, svg.PlateOptions{}) })
	case wire.SVGAssembly:
		return oneFile(b, ".svg", typeSVG, func(w io.Writer) error { return svg.WriteBracket(w, b, svg.BracketOptions{}) })
	case wire.ThreeMF:
		return oneFile(b, ".3mf", type3MF, func(w io.Writer) error { return threemf.Write(w, b, threemf.Options{}) })
	}
	return oneFile(b, ".scad", typeSCAD, func(w io.Writer) error { return scad.Write(w, b, scad.Options{}) })
}

// cutOptions are those of a cut file; not ok for other formats.
func cutOptions(format wire.Format, style wire.CutStyle) (dxf.Options, bool) {
	o, ok := map[wire.Format]dxf.Options{
		wire.DXFR2000: {Version: dxf.R2000}, wire.DXFR2000Inch: {Version: dxf.R2000, Inch: true},
		wire.DXFR12: {Version: dxf.R12}, wire.DXFR12Inch: {Version: dxf.R12, Inch: true},
		wire.DXFR2010: {Version: dxf.R2010}, wire.DXFR2010Inch: {Version: dxf.R2010, Inch: true},
	}[format]
	o.Layers = dxf.Layers{Cut: style.Cut, Etch: style.Etch, Bend: style.Bend, Centre: style.Centre}
	o.OutlineMarks = style.OutlineMarks
	return o, ok
}

// sheet writes one cut file of several plates.
func sheet(s wire.Sheet) (wire.File, error) {
	o, ok := cutOptions(s.Format, s.Style)
	switch {
	case !ok:
		return wire.File{}, &part.FieldError{Field: "format", Found: string(s.Format), Accept: "a DXF format"}
	case s.Name == "":
		return wire.File{}, &part.FieldError{Field: "name", Found: "empty", Accept: "a name for the file"}
	case len(s.Plates) == 0:
		return wire.File{}, &part.FieldError{Field: "plates", Found: "none", Accept: "at least one plate"}
	}
	plates := make([]part.Plate, len(s.Plates))
	pieces := make([]dxf.Piece, len(s.Plates))
	for i := range s.Plates {
		p := &s.Plates[i]
		plates[i], pieces[i] = p.Plate, dxf.Piece{Plate: &p.Plate, At: p.At, TurnRad: p.TurnRad}
	}
	if err := part.ValidatePlates(plates); err != nil {
		return wire.File{}, ofSheet(err)
	}
	if err := onSheet(pieces); err != nil {
		return wire.File{}, err
	}
	data, err := written(func(w io.Writer) error { return dxf.WritePieces(w, pieces, o) })
	if err != nil {
		return wire.File{}, err
	}
	return wire.File{Name: fileName(s.Name) + cutTail(o), MediaType: typeDXF, Data: data}, nil
}

// reach is how far from its origin a plate may stand on a sheet, mm: no table is as long.
const reach = 1e5

func onSheet(pieces []dxf.Piece) error {
	var bad part.FieldErrors
	hold := func(i int, field string, x, most float64) {
		if !(math.Abs(x) <= most) {
			bad = append(bad, &part.FieldError{Field: fmt.Sprintf("plates[%d].%s", i, field), Found: fmt.Sprintf("%g", x), Accept: fmt.Sprintf("%.6g to %.6g", -most, most)})
		}
	}
	for i, p := range pieces {
		hold(i, "at_mm.x_mm", p.At.X, reach)
		hold(i, "at_mm.y_mm", p.At.Y, reach)
		hold(i, "turn_rad", p.TurnRad, 2*math.Pi)
	}
	if bad == nil {
		return nil
	}
	return bad
}

// ofSheet gives refused fields of plates their paths in the request for a sheet: "plates[2].plate.thickness_mm".
func ofSheet(err error) error {
	var out part.FieldErrors
	for _, f := range part.Fields(err) {
		e := *f
		e.Field = strings.Replace(f.Field, "].", "].plate.", 1)
		out = append(out, &e)
	}
	return out
}

// cutFiles name the unit of their numbers in the file name: a cut file has no other sure place for it.
func cutFiles(b *part.Bracket, o dxf.Options) ([]wire.File, error) {
	return plateFiles(b, cutTail(o), typeDXF, func(w io.Writer, p *part.Plate) error { return dxf.Write(w, p, o) })
}

func cutTail(o dxf.Options) string {
	if o.Inch {
		return "_units-inch.dxf"
	}
	return "_units-mm.dxf"
}

func oneFile(b *part.Bracket, tail, media string, write func(io.Writer) error) ([]wire.File, error) {
	data, err := written(write)
	if err != nil {
		return nil, err
	}
	return []wire.File{{Name: fileName(b.Name) + tail, MediaType: media, Data: data}}, nil
}

var buffers = sync.Pool{New: func() any { return new(bytes.Buffer) }}

// written is a file in memory of its own size.
func written(write func(io.Writer) error) ([]byte, error) {
	data := buffers.Get().(*bytes.Buffer)
	defer buffers.Put(data)
	data.Reset()
	if err := write(data); err != nil {
		return nil, err
	}
	return bytes.Clone(data.Bytes()), nil
}

// plateFiles writes one file for each distinct plate, named mark, thickness, material and quantity: "PAIR-L1_12mm_S355_x2".
func plateFiles(b *part.Bracket, tail, media string, write func(io.Writer, *part.Plate) error) ([]wire.File, error) {
	pieces, err := distinct(b)
	if err != nil {
		return nil, err
	}
	files := make([]wire.File, len(pieces))
	for i, p := range pieces {
		data, err := written(func(w io.Writer) error { return write(w, p.plate) })
		if err != nil {
			return nil, err
		}
		files[i] = wire.File{Name: p.fileName() + tail, MediaType: media, Data: data}
	}
	return files, nil
}

// piece is a plate with how many of it the bracket needs.
type piece struct {
	plate *part.Plate
	count int
}

func (p *piece) mark() string {
	if p.plate.Mark == "" {
		return p.plate.ID
	}
	return p.plate.Mark
}

func (p *piece) fileName() string {
	return fmt.Sprintf("%s_%gmm_%s_x%d", fileName(p.mark()), p.plate.ThicknessMM, fileName(p.plate.Material), p.count)
}

// distinct gathers plates by part mark, in the order of the bracket. It refuses a mark that two different pieces bear, and
// marks that come to one file name.
func distinct(b *part.Bracket) ([]*piece, error) {
	var pieces []*piece
	byName := map[string]*piece{}
	for i := range b.Plates {
		p := &piece{&b.Plates[i], 1}
		key := strings.ToLower(fileName(p.mark()))
		first, seen := byName[key]
		switch {
		case !seen:
			byName[key] = p
			pieces = append(pieces, p)
		case first.mark() == p.mark() && first.plate.SamePiece(p.plate):
			first.count++
		default:
			return nil, &part.FieldError{
				Field:  fmt.Sprintf("plates[%d].mark", i),
				Found:  fmt.Sprintf("%q, and a different piece is marked %q", p.mark(), first.mark()),
				Accept: "one mark for each distinct piece",
			}
		}
	}
	return pieces, nil
}

// fileName keeps letters, digits, dots and dashes of a text; every other character becomes a dash.
func fileName(s string) string {
	return strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '.' || r == '-' || r == '_' {
			return r
		}
		return '-'
	}, s)
}
