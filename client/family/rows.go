package family

// This file reads the rows of a CSV file.

import (
	"bytes"
	"crypto/sha256"
	"encoding/csv"
	"errors"
	"fmt"
	"io"
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

// rows is a CSV file whose header was read.
type rows struct {
	file    string
	columns []column
}

// readRows reads the header and counts the rows, which passes over the whole file once.
func (f *Family) readRows(path string) error {
	file, err := os.Open(path)
	if err != nil {
		return err
	}
	defer file.Close()
	h := sha256.New()
	l := newLines(io.TeeReader(file, h))
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
	for f.Count = 0; ; f.Count++ {
		if _, err := l.next(); err == io.EOF {
			break
		} else if err != nil {
			return err
		}
	}
	if f.Count == 0 {
		return job.Errors{{File: path, Found: "no rows", Accept: "a row for every variant under the line of names"}}
	}
	h.Sum(f.input[:0])
	return nil
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
	f.rows = &rows{path, columns}
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
	file  *os.File
	lines *lines
	line  one
	csv   *csv.Reader
	v     Variant
}

func (f *Family) openRows(skip int64) (Variants, error) {
	file, err := os.Open(f.rows.file)
	if err != nil {
		return nil, err
	}
	r := &reading{f: f, file: file, lines: newLines(file)}
	r.csv = csv.NewReader(&r.line)
	r.csv.ReuseRecord, r.csv.FieldsPerRecord = true, -1
	for range skip + 1 {
		if _, err := r.lines.next(); err != nil {
			file.Close()
			return nil, fmt.Errorf("%s: %w", f.rows.file, err)
		}
	}
	r.v.ID = skip
	r.v.Own = make([]part.Param, len(f.rows.columns))
	return r, nil
}

func (r *reading) Close() error { return r.file.Close() }

func (r *reading) Next() (*Variant, error) {
	line, err := r.lines.next()
	if err != nil {
		return nil, err
	}
	r.v.ID++
	clear(r.v.Own)
	if r.v.Err = r.row(line); r.v.Err == nil {
		r.f.given(&r.v)
	}
	return &r.v, nil
}

// row reads the cells of a line into the variant.
func (r *reading) row(line []byte) error {
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
	return &job.Error{File: filepath.Base(r.f.rows.file), At: job.Place{Line: r.lines.at, Column: column}, Field: field, Found: found, Accept: accept}
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
