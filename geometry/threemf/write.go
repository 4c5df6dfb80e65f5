package threemf

import (
	"archive/zip"
	"bytes"
	"encoding/xml"
	"fmt"
	"hash/crc32"
	"io"
	"math"
	"strconv"
	"strings"
	"sync"

	"lugwright/geometry/mesh"
	"lugwright/part"
)

// Write writes the bracket's solids as one file. The same bracket gives the same bytes. It fails when an option is out of range or a part cannot be made a solid.
func Write(out io.Writer, b *part.Bracket, o Options) error {
	if o.FacetMM == 0 {
		o.FacetMM = usualFacetMM
	}
	solids, err := mesh.Of(b, o.FacetMM)
	if err == nil && len(solids) == 0 {
		err = fmt.Errorf("no plates, members or pins")
	}
	if err != nil {
		return fmt.Errorf("bracket %s: %w", b.Name, err)
	}
	model := models.Get().(*writer)
	defer models.Put(model)
	model.Reset()
	model.write(b, solids, o.FacetMM)
	z := zip.NewWriter(out)
	for _, f := range []struct {
		name string
		data []byte
	}{
		{"[Content_Types].xml", []byte(contentTypes)}, {"_rels/.rels", []byte(relations)}, {"3D/3dmodel.model", model.Bytes()},
	} {
		// Stored, not packed: packing takes as long as all the rest. No time in the head: the same bracket, the same bytes.
		size := uint64(len(f.data))
		w, err := z.CreateRaw(&zip.FileHeader{
			Name: f.name, Method: zip.Store, CRC32: crc32.ChecksumIEEE(f.data), CompressedSize64: size, UncompressedSize64: size,
		})
		if err != nil {
			return err
		}
		if _, err := w.Write(f.data); err != nil {
			return err
		}
	}
	return z.Close()
}

// models are the memory of calls, used again by others: a model is large.
var models = sync.Pool{New: func() any { return new(writer) }}

const (
	contentTypes = xml.Header + `<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">` +
		`<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>` +
		`<Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/></Types>` + "\n"
	relations = xml.Header + `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">` +
		`<Relationship Target="/3D/3dmodel.model" Id="rel0" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/></Relationships>` + "\n"
)

func (w *writer) write(b *part.Bracket, solids []mesh.Solid, facetMM float64) {
	w.WriteString(xml.Header)
	w.WriteString(`<model unit="millimeter" xml:lang="en" xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02">` + "\n")
	w.metadata("Title", fmt.Sprintf("%s: %s, %s hand", b.Name, b.Kind, b.Hand))
	w.metadata("Description", describe(solids, facetMM))
	w.WriteString("<resources>\n")
	for i := range solids {
		w.object(i+1, &solids[i])
	}
	w.WriteString("</resources>\n<build>\n")
	for i := range solids {
		fmt.Fprintf(w, "<item objectid=\"%d\" partnumber=\"%s\"/>\n", i+1, text(solids[i].Mark))
	}
	w.WriteString("</build>\n</model>\n")
}

// describe says what the solids are, and how each that differs from its part does.
func describe(solids []mesh.Solid, facetMM float64) string {
	words := []string{"x forward, y left, z up, from the bracket's datum. Holes are finished size; no facet is further than " + string(appendNumber(nil, facetMM)) +
		" mm from its arc. Bolts, nuts, washers, rods, welds and threads are not shown. Cut from the cut files, not from this."}
	for i := range solids {
		if r := solids[i].Remark; r != "" {
			words = append(words, solids[i].ID+" "+r+".")
		}
	}
	return strings.Join(words, " ")
}

// writer collects the model.
type writer struct{ bytes.Buffer }

func (w *writer) metadata(name, value string) {
	fmt.Fprintf(w, "<metadata name=\"%s\">%s</metadata>\n", name, text(value))
}

func (w *writer) object(id int, s *mesh.Solid) {
	name := strings.Join(strings.Fields(strings.Join([]string{s.Mark, s.Name, s.Material, s.ID}, " ")), " ")
	fmt.Fprintf(w, "<object id=\"%d\" type=\"model\" name=\"%s\" partnumber=\"%s\">\n<mesh>\n<vertices>\n", id, text(name), text(s.Mark))
	for _, p := range s.Mesh.Points {
		buf := append(w.AvailableBuffer(), `<vertex x="`...)
		buf = append(appendNumber(buf, p.X), `" y="`...)
		buf = append(appendNumber(buf, p.Y), `" z="`...)
		w.Write(append(appendNumber(buf, p.Z), "\"/>\n"...))
	}
	w.WriteString("</vertices>\n<triangles>\n")
	for _, t := range s.Mesh.Triangles {
		buf := strconv.AppendInt(append(w.AvailableBuffer(), `<triangle v1="`...), int64(t[0]), 10)
		buf = strconv.AppendInt(append(buf, `" v2="`...), int64(t[1]), 10)
		buf = strconv.AppendInt(append(buf, `" v3="`...), int64(t[2]), 10)
		w.Write(append(buf, "\"/>\n"...))
	}
	w.WriteString("</triangles>\n</mesh>\n</object>\n")
}

// appendNumber appends a number with at most six decimals: a nanometre. Numbers are within 1e9.
func appendNumber(buf []byte, v float64) []byte {
	n := int64(math.Round(v * 1e6))
	if n < 0 {
		buf, n = append(buf, '-'), -n
	}
	buf = strconv.AppendInt(buf, n/1e6, 10)
	rest := uint32(n % 1e6)
	if rest == 0 {
		return buf
	}
	var digits [6]byte
	for i := range digits {
		digits[5-i] = byte('0' + rest%10)
		rest /= 10
	}
	return append(append(buf, '.'), bytes.TrimRight(digits[:], "0")...)
}

// text escapes a text for an attribute or an element.
func text(s string) string {
	var buf bytes.Buffer
	xml.EscapeText(&buf, []byte(s)) //nolint:errcheck // a buffer takes everything
	return buf.String()
}
