package pdf

// This file puts pages, fonts and bookmarks into a file (ISO 32000-1, from memory). Written: pages with one packed content each, fonts with all their letters,
// bookmarks, title and producer; no images, links, forms or encryption.

import (
	"bytes"
	"compress/zlib"
	"fmt"
	"unicode/utf16"
)

// Numbers of the objects that every file has.
const (
	catalogObject = iota + 1
	pagesObject
	infoObject
	resourcesObject
	outlinesObject
	firstPage // with its content and its foot, then the next
	perPage   = 3
)

// dated stands for the time: a file has dates, and the same paper gives the same bytes.
const dated = "(D:20000101000000)"

// bookmark is a line of the reader's table of contents.
type bookmark struct {
	text  string
	depth int // at most one deeper than the one before
	page  int
	y     float64 // from the top of the page, mm
}

// file is one being written.
type file struct {
	bytes.Buffer
	at map[int]int // where each object begins
}

func (f *file) object(n int, format string, args ...any) {
	f.at[n] = f.Len()
	fmt.Fprintf(f, "%d 0 obj\n"+format+"\nendobj\n", append([]any{n}, args...)...)
}

// stream is an object of packed bytes.
func (f *file) stream(n int, packed string) {
	f.at[n] = f.Len()
	fmt.Fprintf(f, "%d 0 obj\n<</Filter /FlateDecode /Length %d>>\nstream\n", n, len(packed))
	f.WriteString(packed)
	f.WriteString("\nendstream\nendobj\n")
}

// packer packs contents, one after the other with one memory.
type packer struct {
	w   *zlib.Writer
	out bytes.Buffer
}

func newPacker() *packer {
	p := &packer{}
	w, err := zlib.NewWriterLevel(&p.out, zlib.BestSpeed)
	if err != nil {
		panic("pdf: the fastest level is one of those that there are: " + err.Error())
	}
	p.w = w
	return p
}

func (p *packer) packed(content []byte) string {
	p.out.Reset()
	p.w.Reset(&p.out)
	p.w.Write(content) //nolint:errcheck // into memory
	p.w.Close()        //nolint:errcheck
	return p.out.String()
}

// file is the whole document.
func (d *document) file() *file {
	f := &file{at: map[int]int{}}
	f.Grow(d.size())
	f.WriteString("%PDF-1.4\n%\xe2\xe3\xcf\xd3\n")
	mode := "None"
	if len(d.bookmarks) > 0 {
		mode = "Outlines"
	}
	f.object(catalogObject, "<</Type /Catalog /Pages %d 0 R /Outlines %d 0 R /PageMode /Use%s /Lang (en)>>", pagesObject, outlinesObject, mode)
	f.object(infoObject, "<</Producer %s /Title %s /Subject %s /CreationDate %s /ModDate %s>>",
		quoted(plain(d.p.Tool)), quoted(plain(d.p.Title+", "+d.p.Job)), quoted(plain(d.p.Revision)), dated, dated)
	d.addPages(f)
	d.addFonts(f, firstPage+perPage*len(d.pages))
	d.addBookmarks(f, len(f.at)+2) // all but the root of the bookmarks are there
	f.end()
	return f
}

// size is about how many bytes the file takes.
func (d *document) size() int {
	const page, font = 600, 40_000
	n := page*(len(d.pages)+len(d.bookmarks)) + font*(1+len(d.used))
	for _, content := range d.pages {
		n += len(content)
	}
	return n
}

// quoted is a text as UTF-16.
func quoted(text string) string {
	s := "<feff"
	for _, u := range utf16.Encode([]rune(text)) {
		s += fmt.Sprintf("%04x", u)
	}
	return s + ">"
}

func (d *document) addPages(f *file) {
	var kids bytes.Buffer
	feet := d.feet()
	for i, content := range d.pages {
		n := firstPage + perPage*i
		fmt.Fprintf(&kids, " %d 0 R", n)
		f.object(n, "<</Type /Page /Parent %d 0 R /Resources %d 0 R /Contents [%d 0 R %d 0 R]>>", pagesObject, resourcesObject, n+1, n+2)
		f.stream(n+1, content)
		f.stream(n+2, feet[i])
	}
	f.object(pagesObject, "<</Type /Pages /Kids [%s] /Count %d /MediaBox [0 0 %.2f %.2f]>>", bytes.TrimSpace(kids.Bytes()), len(d.pages), d.width/pointMM, d.height/pointMM)
}

// addFonts adds the fonts in use, as objects from a number on.
func (d *document) addFonts(f *file, n int) {
	unicodes, names := n, ""
	f.stream(unicodes, unicodesZ)
	for _, face := range faces {
		if !d.used[face] {
			continue
		}
		o := face.outlines()
		font, letters, about, ttf := n+1, n+2, n+3, n+4
		n += 4
		names += fmt.Sprintf("/%s %d 0 R ", face, font)
		f.object(font, "<</Type /Font /Subtype /Type0 /BaseFont /%s /Encoding /Identity-H /DescendantFonts [%d 0 R] /ToUnicode %d 0 R>>", o.name, letters, unicodes)
		f.object(letters, "<</Type /Font /Subtype /CIDFontType2 /BaseFont /%s /CIDSystemInfo <</Registry (Adobe) /Ordering (Identity) /Supplement 0>> /FontDescriptor %d 0 R /CIDToGIDMap /Identity /DW 600 /W [1 %d]>>",
			o.name, about, *face.widths())
		flags := 4 // letters of more than one alphabet
		if o.fixed {
			flags |= 1
		}
		box := o.box
		for i := range box {
			box[i] = thousandths(box[i])
		}
		f.object(about, "<</Type /FontDescriptor /FontName /%s /Flags %d /FontBBox %d /ItalicAngle 0 /Ascent %d /Descent %d /CapHeight %d /StemV %d /FontFile2 %d 0 R>>",
			o.name, flags, box, thousandths(ascent), thousandths(descent), thousandths(capitals), o.stem, ttf)
		f.stream(ttf, *o.ttf)
	}
	f.object(resourcesObject, "<</Font <<%s>>>>", names)
}

func thousandths(v int) int { return v * 1000 / 2048 }

// links are a bookmark's neighbours in the tree, 0 where it has none. Number 0 is the root, 1 the first bookmark.
type links struct{ parent, first, last, before, after int }

// addBookmarks adds them as a tree, as objects from a number on.
func (d *document) addBookmarks(f *file, n int) {
	tree := make([]links, len(d.bookmarks)+1)
	way := []int{0} // from the root to the bookmark before
	for k, b := range d.bookmarks {
		i := k + 1
		parent := way[b.depth]
		up, own := &tree[parent], &tree[i]
		own.parent, own.before = parent, up.last
		if own.before > 0 {
			tree[own.before].after = i
		} else {
			up.first = i
		}
		up.last = i
		way = append(way[:b.depth+1], i)
	}
	about := func(l links) string {
		words := ""
		for _, x := range []struct {
			name string
			to   int
		}{{"First", l.first}, {"Last", l.last}, {"Prev", l.before}, {"Next", l.after}} {
			if x.to > 0 {
				words += fmt.Sprintf(" /%s %d 0 R", x.name, n+x.to-1)
			}
		}
		return words
	}
	f.object(outlinesObject, "<</Type /Outlines%s>>", about(tree[0]))
	for k, b := range d.bookmarks {
		l := tree[k+1]
		parent := outlinesObject
		if l.parent > 0 {
			parent = n + l.parent - 1
		}
		f.object(n+k, "<</Title %s /Parent %d 0 R%s /Dest [%d 0 R /XYZ 0 %.2f null]>>", quoted(b.text), parent, about(l), firstPage+perPage*b.page, (d.height-b.y)/pointMM)
	}
}

// end writes where each object is.
func (f *file) end() {
	at, n := f.Len(), len(f.at)+1
	fmt.Fprintf(f, "xref\n0 %d\n0000000000 65535 f \n", n)
	for i := 1; i < n; i++ {
		fmt.Fprintf(f, "%010d 00000 n \n", f.at[i])
	}
	fmt.Fprintf(f, "trailer\n<</Size %d /Root %d 0 R /Info %d 0 R>>\nstartxref\n%d\n%%%%EOF\n", n, catalogObject, infoObject, at)
}
