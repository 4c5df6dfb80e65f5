package family

// This file reads the rows of a CSV file.

import (
	"bytes"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
	"math"
	"os"
	"path/filepath"
	"strings"
	"unicode/utf8"

	"lugwright/client/job"
	"lugwright/client/yamlfile"
	"lugwright/geometry"
	"lugwright/part"
	"lugwright/units"
)

// rows is a CSV file whose header was read. It stays open, so that another file that takes its name is never read instead.
type rows struct {
	path    string
	file    *os.File
	columns []column
	marks   marks
}

// readRows reads the header and counts the rows, which passes over the whole file once.
func (f *Family) readRows(path string) (err error) {
	if info, err := os.Stat(path); err != nil {
		return err
	} else if !info.Mode().IsRegular() { // a pipe would be waited for here, and has its rows only once
		return job.Errors{{File: path, Found: kindOfFile(info.Mode()), Accept: "a CSV file, which is read more than once"}}
	}
	file, err := os.Open(path)
	if err != nil {
		return err
	}
	defer func() {
		if err != nil {
			file.Close()
		}
	}()
	f.rows = &rows{path: path, file: file, marks: marks{every: 1}}
	l := f.rows.lines()
	first, err := l.next()
	if err == io.EOF {
		return job.Errors{{File: path, Found: "the file is empty", Accept: "a line of names such as " + f.example() + ", and a row for every variant"}}
	}
	if err != nil {
		return err
	}
	if err := f.readHeader(path, l, bytes.Clone(first)); err != nil {
		return err
	}
	for f.Count = 0; ; {
		if _, err := l.next(); err == io.EOF {
			break
		} else if err != nil {
			return err
		}
		f.Count++
		f.rows.marks.count(f.Count, l)
	}
	if f.Count == 0 {
		return job.Errors{{File: path, Found: "no rows", Accept: "a row for every variant under the line of names"}}
	}
	f.input = l.mark()
	return nil
}

// lines gives the lines of the open file from the first on.
func (r *rows) lines() *lines { return newLines(io.NewSectionReader(r.file, 0, math.MaxInt64)) }

// kindOfFile says what stands where a file is needed.
func kindOfFile(mode os.FileMode) string {
	switch {
	case mode.IsDir():
		return "a folder"
	case mode&os.ModeNamedPipe != 0:
		return "a pipe"
	}
	return "a device or socket"
}

func (f *Family) readHeader(path string, l *lines, line []byte) error {
	refuse := func(found, accept string) error {
		return job.Errors{{File: path, At: job.Place{Line: l.at, Column: 1}, Found: found, Accept: accept}}
	}
	switch {
	case bytes.HasPrefix(line, []byte("\xff\xfe")) || bytes.HasPrefix(line, []byte("\xfe\xff")):
		return refuse("text in UTF-16", "a text file in UTF-8, which spreadsheets save as CSV UTF-8")
	case bytes.HasPrefix(line, []byte("PK\x03\x04")):
		return refuse("a spreadsheet's own file", "a CSV file, as which spreadsheets save one")
	case l.long:
		return refuse(fmt.Sprintf("a first line of more than %d bytes", longestLine), "names of parameters, separated by commas")
	case bytes.IndexByte(bytes.TrimRight(line, "\r\n"), '\r') >= 0:
		return refuse("lines that end in a carriage return alone", "lines that end in a line feed, with or without a carriage return before it")
	}
	r := csv.NewReader(&one{line})
	cells, err := r.Read()
	if err != nil {
		at, found, accept := csvWords(err)
		return job.Errors{{File: path, At: job.Place{Line: l.at, Column: at}, Found: found, Accept: accept}}
	}
	at := func(i int) job.Place { _, column := r.FieldPos(i); return job.Place{Line: l.at, Column: column} }
	columns, err := f.header(path, cells, at)
	if err != nil {
		return err
	}
	for _, c := range columns {
		f.Names = append(f.Names, c.param)
	}
	f.rows.columns = columns
	return nil
}

// csvWords says what is wrong with the form of a line, and in which column.
func csvWords(err error) (at int, found, accept string) {
	var parse *csv.ParseError
	if !errors.As(err, &parse) {
		return 1, err.Error(), ""
	}
	at = max(1, parse.Column)
	if errors.Is(err, csv.ErrBareQuote) {
		return at, "a quotation mark inside a cell", `a cell without them, or one in quotation marks with those inside doubled: "1 1/2"""`
	}
	return at, "a cell in quotation marks that does not end with them, on this line", "both marks, with those inside doubled"
}

// reading goes through the rows.
type reading struct {
	f     *Family
	lines *lines
	row   int64 // the last one that was read
	same  int64 // the last one that is known to be as it was
	line  one
	csv   *csv.Reader
	v     Variant
}

func (f *Family) openRows(skip int64) (*reading, error) {
	r := &reading{f: f, lines: f.rows.lines()}
	r.csv = csv.NewReader(&r.line)
	r.csv.ReuseRecord, r.csv.FieldsPerRecord = true, -1
	if _, err := r.lines.next(); err == io.EOF {
		return nil, r.changed()
	} else if err != nil {
		return nil, err
	}
	for range skip {
		if _, err := r.next(); err != nil {
			return nil, err
		}
	}
	r.v.Own = make([]part.Param, len(f.rows.columns))
	return r, nil
}

// next reads one more line, or io.EOF after as many as were counted.
func (r *reading) next() ([]byte, error) {
	line, err := r.lines.next()
	end := err == io.EOF
	switch {
	case err != nil && !end:
		return nil, err
	case end != (r.row == r.f.Count), end && r.lines.mark() != r.f.input:
		return nil, r.changed()
	case end:
		return nil, err
	}
	r.row++
	same, sure := r.f.rows.marks.same(r.row, r.lines)
	if !same {
		return nil, r.changed()
	}
	if sure {
		r.same = r.row
	}
	return line, nil
}

func (r *reading) changed() error { return &ChangedError{r.f.rows.path, r.same} }

// makeSure reads on until it is known that the last variant's row is as it was.
func (r *reading) makeSure() error {
	for r.same < r.v.ID {
		if _, err := r.next(); err == io.EOF {
			return nil
		} else if err != nil {
			return err
		}
	}
	return nil
}

func (r *reading) Next() (*Variant, error) {
	line, err := r.next()
	if err != nil {
		return nil, err
	}
	r.v.ID = r.row
	clear(r.v.Own)
	if r.v.Err = r.read(line); r.v.Err == nil {
		r.f.given(&r.v)
	}
	return &r.v, nil
}

// read reads the cells of a line into the variant.
func (r *reading) read(line []byte) error {
	if r.lines.long {
		return r.refuse(1, "", fmt.Sprintf("a line of more than %d bytes", longestLine), "a row of parameters")
	}
	if !utf8.Valid(line) || bytes.IndexByte(line, 0) >= 0 {
		return r.refuse(1, "", "bytes that are no text", "text in UTF-8")
	}
	r.line.line = line
	cells, err := r.csv.Read()
	if err != nil {
		r.line.line = nil
		at, found, accept := csvWords(err)
		return r.refuse(at, "", found, accept)
	}
	columns := r.f.rows.columns
	if len(cells) != len(columns) {
		found := fmt.Sprintf("%d cells", len(cells))
		if len(cells) == 1 {
			found = "1 cell"
		}
		return r.refuse(1, "", found, fmt.Sprintf("%d, as many as the first line names", len(columns)))
	}
	blank := true
	for i, cell := range cells {
		cell = strings.TrimSpace(cell)
		if cell == "" {
			continue // as in the common parameters, or the default
		}
		blank = false
		p, found, accept := columns[i].read(cell)
		if found != "" {
			_, at := r.csv.FieldPos(i)
			return r.refuse(at, columns[i].param.Name, found, accept)
		}
		r.v.Own[i] = p
	}
	if blank {
		return r.refuse(1, "", "every cell is empty", "the parameters of a variant; a line without anything is passed over")
	}
	return nil
}

func (r *reading) refuse(column int, field, found, accept string) error {
	return &job.Error{File: filepath.Base(r.f.rows.path), At: job.Place{Line: r.lines.at, Column: column}, Field: field, Found: found, Accept: accept}
}

// read makes a parameter of a cell.
func (c *column) read(cell string) (p part.Param, found, accept string) {
	dim := dims[c.param.Unit]
	if dim == 0 {
		return c.param.Given(0, cell), "", ""
	}
	text := cell
	if c.unit != "" {
		text += " " + c.unit
	}
	n, err := units.Parse(text, dim)
	if err == nil {
		return c.param.Given(n, ""), "", ""
	}
	if strings.Contains(cell, ";") {
		return p, yamlfile.Quoted(cell), "a cell without it: cells are separated by commas"
	}
	if _, err := units.Parse(cell, dim); c.unit != "" && err == nil {
		return p, yamlfile.Quoted(cell) + ", with a unit of its own", "the number alone, for the first line says " + c.param.Name + " [" + c.unit + "]"
	}
	var wrong *units.Error
	if errors.As(err, &wrong) {
		wrong.Text = cell
		if c.param.Unit != geometry.Count && c.unit == "" {
			return p, strings.TrimSuffix(wrong.Error(), "; "+wrong.Accept), wrong.Accept + ", or name the column " + c.param.Name + " [" + usual(dim) + "]"
		}
		return p, strings.TrimSuffix(wrong.Error(), "; "+wrong.Accept), wrong.Accept
	}
	return p, yamlfile.Quoted(cell), "a number"
}
