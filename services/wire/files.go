package wire

import pb "lugwright/proto/gen/lugwright/geometry/v1alpha1"

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

// EncodeFormat writes a format.
func EncodeFormat(f Format) pb.FileFormat { return formats.encode(f) }

// DecodeFormat reads a format.
func DecodeFormat(p pb.FileFormat) (Format, error) {
	var r reader
	f := formats.decode(&r, "format", p)
	return f, r.err()
}

// EncodeFiles writes files.
func EncodeFiles(files []File) []*pb.File {
	return all(files, func(f *File) *pb.File { return &pb.File{Name: f.Name, MediaType: f.MediaType, Data: f.Data} })
}

// DecodeFiles reads files.
func DecodeFiles(in []*pb.File) ([]File, error) {
	var r reader
	files := many(&r, "files", maxThings, in, readFile)
	return files, r.err()
}

func readFile(r *reader, m *pb.File) File {
	r.fits("data", len(m.Data), maxFileLen)
	return File{Name: r.text("name", m.Name), MediaType: r.text("media_type", m.MediaType), Data: m.Data}
}
