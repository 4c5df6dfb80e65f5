package wire

import (
	"fmt"

	"lugwright/geometry/shape"
	"lugwright/geometry/shop"
	"lugwright/part"
	pb "lugwright/proto/gen/lugwright/geometry/v1alpha1"
)

// Format names an export format and the unit of its numbers.
type Format string

// The formats. DXF and plate SVG give one file for each distinct plate, the others one for the bracket.
const (
	DXFR2000     Format = "dxf-r2000"
	DXFR2000Inch Format = "dxf-r2000-inch"
	DXFR12       Format = "dxf-r12"
	DXFR12Inch   Format = "dxf-r12-inch"
	OpenSCAD     Format = "openscad"
	SVGPlate     Format = "svg-plate"
	SVGAssembly  Format = "svg-assembly"
	DXFR2010     Format = "dxf-r2010"
	DXFR2010Inch Format = "dxf-r2010-inch"
	ThreeMF      Format = "3mf"
)

// Formats lists every format, in the order of the wire format.
func Formats() []Format {
	out := make([]Format, len(formats))
	for i, w := range formats {
		out[i] = w.domain
	}
	return out
}

// File is one exported file. Its name has no folder.
type File struct {
	Name      string
	MediaType string
	Data      []byte
}

// CutStyle says how cut files are drawn: layers, those without a name left out (all four: ours), and whether part marks are outlines.
type CutStyle struct {
	Cut, Etch, Bend, Centre string
	OutlineMarks            bool
}

// Placed is a plate in its place on a sheet: turned about its own origin, then moved.
type Placed struct {
	Plate   part.Plate
	At      shape.Point
	TurnRad float64
}

// Sheet asks for one cut file of several plates.
type Sheet struct {
	Name   string
	Plates []Placed
	Format Format
	Style  CutStyle
}

// maxPlaced is the most plates of one sheet.
const maxPlaced = 1000

// EncodeStyle writes a style.
func EncodeStyle(s CutStyle) *pb.CutStyle {
	if s == (CutStyle{}) {
		return nil
	}
	return &pb.CutStyle{CutLayer: s.Cut, EtchLayer: s.Etch, BendLayer: s.Bend, CentreLayer: s.Centre, OutlineMarks: s.OutlineMarks}
}

// DecodeStyle reads a style; none is ours.
func DecodeStyle(m *pb.CutStyle) (CutStyle, error) {
	var r reader
	if m == nil {
		return CutStyle{}, nil
	}
	s := one(&r, "style", m, readStyle)
	return s, r.err()
}

func readStyle(r *reader, m *pb.CutStyle) CutStyle {
	return CutStyle{
		Cut: r.layer("cut_layer", m.CutLayer), Etch: r.layer("etch_layer", m.EtchLayer), Bend: r.layer("bend_layer", m.BendLayer),
		Centre: r.layer("centre_layer", m.CentreLayer), OutlineMarks: m.OutlineMarks,
	}
}

// layer holds a layer's name to what the oldest version of a cut file takes.
func (r *reader) layer(name, s string) string {
	if !shop.LayerName(s) {
		r.refuse(name, fmt.Sprintf("%.40q", s), "at most 31 of A-Z 0-9 $ _ -")
	}
	return s
}

// EncodeSheet writes the order for a sheet.
func EncodeSheet(s Sheet) *pb.ExportSheetRequest {
	return &pb.ExportSheetRequest{Name: s.Name, Plates: all(s.Plates, placed), Format: formats.encode(s.Format), Style: EncodeStyle(s.Style)}
}

// DecodeSheet reads the order for a sheet.
func DecodeSheet(m *pb.ExportSheetRequest) (Sheet, error) {
	var r reader
	s := Sheet{Name: r.text("name", m.Name), Plates: many(&r, "plates", maxPlaced, m.Plates, readPlaced), Format: formats.decode(&r, "format", m.Format)}
	if m.Style != nil {
		s.Style = one(&r, "style", m.Style, readStyle)
	}
	return s, r.err()
}

func placed(p *Placed) *pb.PlacedPlate {
	return &pb.PlacedPlate{Plate: plate(&p.Plate), AtMm: point(&p.At), TurnRad: p.TurnRad}
}

func readPlaced(r *reader, m *pb.PlacedPlate) Placed {
	return Placed{Plate: one(r, "plate", m.Plate, readPlate), At: one(r, "at_mm", m.AtMm, readPoint), TurnRad: r.number("turn_rad", m.TurnRad)}
}

// EncodeFormats writes formats.
func EncodeFormats(in []Format) []pb.FileFormat {
	out := make([]pb.FileFormat, len(in))
	for i, f := range in {
		out[i] = formats.encode(f)
	}
	return out
}

// DecodeFormats reads formats, at least one.
func DecodeFormats(in []pb.FileFormat) ([]Format, error) {
	var r reader
	if len(in) == 0 {
		r.refuse("formats", "none", "one of "+formats.words())
	}
	if !r.fits("formats", len(in), len(formats)) {
		return nil, r.err()
	}
	out := make([]Format, len(in))
	for i, p := range in {
		out[i] = formats.decode(&r, fmt.Sprintf("formats[%d]", i), p)
	}
	return out, r.err()
}

// EncodeExports writes the files of several formats.
func EncodeExports(exports [][]File) []*pb.FormatFiles {
	return all(exports, func(files *[]File) *pb.FormatFiles { return &pb.FormatFiles{Files: all(*files, EncodeFile)} })
}

// DecodeExports reads the files of several formats.
func DecodeExports(in []*pb.FormatFiles) ([][]File, error) {
	var r reader
	exports := many(&r, "exports", len(formats), in, func(r *reader, m *pb.FormatFiles) []File {
		return many(r, "files", maxThings, m.Files, readFile)
	})
	return exports, r.err()
}

// EncodeFile writes one file.
func EncodeFile(f *File) *pb.File {
	return &pb.File{Name: f.Name, MediaType: f.MediaType, Data: f.Data}
}

// DecodeFile reads one file.
func DecodeFile(m *pb.File) (File, error) {
	var r reader
	f := one(&r, "file", m, readFile)
	return f, r.err()
}

func readFile(r *reader, m *pb.File) File {
	r.fits("data", len(m.Data), maxFileLen)
	return File{Name: r.text("name", m.Name), MediaType: r.text("media_type", m.MediaType), Data: m.Data}
}
