package batch

// This file finds out what a folder holds of a run that was cut off, and goes on from there.

import (
	"bufio"
	"bytes"
	"encoding/csv"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strconv"

	"lugwright/client/family"
	"lugwright/services/dial"
	"lugwright/strength"
)

// OtherError is a folder with results of something else.
type OtherError struct{ Dir, Found string }

func (e *OtherError) Error() string { return e.Dir + " holds results of " + e.Found }

// Resume opens a folder of this family's results behind its last whole row, or makes a new one where there is none. What stands behind that row, such as half a
// line, is cut off.
func Resume(dir string, f *family.Family, version string, worst int) (*Results, error) {
	src, err := os.ReadFile(filepath.Join(dir, FamilyFile))
	if errors.Is(err, fs.ErrNotExist) {
		if entries, _ := os.ReadDir(dir); onlyOurs(entries) { // cut off before it said whose results these are
			for _, e := range entries {
				os.Remove(filepath.Join(dir, e.Name()))
			}
		}
		return Create(dir, f, version, worst)
	}
	if err != nil {
		return nil, &WriteError{err}
	}
	if err := same(dir, src, identify(f, version)); err != nil {
		return nil, err
	}
	r := &Results{dir: dir, form: formOf(f), held: []Row{}, Summary: NewSummary(worst)}
	if err := r.open(os.O_CREATE | os.O_RDWR); err != nil {
		return nil, err
	}
	if err := r.rejoin(); err != nil {
		r.Close()
		return nil, &WriteError{err}
	}
	return r, nil
}

// onlyOurs says whether a folder holds nothing but files of results without a row.
func onlyOurs(entries []fs.DirEntry) bool {
	return !slices.ContainsFunc(entries, func(e fs.DirEntry) bool {
		info, err := e.Info()
		return err != nil || info.Size() > 0 || e.Name() != LinesFile && e.Name() != TableFile
	})
}

// same refuses results of another family or tool. A half-written identity belongs to a run that had written no row.
func same(dir string, src []byte, want identity) error {
	var got identity
	if err := json.Unmarshal(src, &got); err != nil {
		return &OtherError{dir, "something that cannot be told: its " + FamilyFile + " is damaged"}
	}
	switch {
	case got.Hash == want.Hash && got.Format == want.Format:
		return nil
	case got.Tool != want.Tool || got.Format != want.Format:
		return &OtherError{dir, fmt.Sprintf("another version, %s; this is %s", got.Tool, want.Tool)}
	case got.Family != want.Family || got.Kind != want.Kind:
		return &OtherError{dir, fmt.Sprintf("another family, %q of kind %s", got.Family, got.Kind)}
	}
	return &OtherError{dir, fmt.Sprintf("the family %q as it was before its files changed, or its shop's", got.Family)}
}

// rejoin cuts both files behind the last row that both have whole.
func (r *Results) rejoin() error {
	table := newScan(r.table, func(id int64) []byte { return append(strconv.AppendInt(nil, id, 10), ',') }, '\n')
	if err := r.rejoinHeader(table); err != nil {
		return err
	}
	lines := newScan(r.lines, func(id int64) []byte { return append(strconv.AppendInt([]byte(`{"id":`), id, 10), ',') }, '}')
	for table.next() && lines.next() {
		row, err := rowOf(lines.line)
		if err != nil {
			break
		}
		table.keep()
		lines.keep()
		r.Summary.Add(&row)
		r.Done++
	}
	for _, s := range []*scan{table, lines} {
		if s.err != nil {
			return s.err
		}
		if err := s.file.Truncate(s.kept); err != nil {
			return err
		}
		if _, err := s.file.Seek(s.kept, io.SeekStart); err != nil {
			return err
		}
	}
	return nil
}

// rejoinHeader reads which limit states have columns; a table without a whole first line has no rows.
func (r *Results) rejoinHeader(table *scan) error {
	line, err := table.r.ReadBytes('\n')
	if err == io.EOF {
		table.done = true
		return nil
	}
	if err != nil {
		return err
	}
	header, err := csv.NewReader(bytes.NewReader(line)).Read()
	before := len(firstColumns) + len(r.form.names) + len(lastColumns)
	if err != nil || len(header) <= before || header[len(header)-1] != others {
		table.done = true
		return nil
	}
	r.form.limits = header[before : len(header)-1]
	r.held = nil
	table.at = int64(len(line))
	table.keep()
	return nil
}

// scan goes through the lines of a file that are rows in order.
type scan struct {
	file     *os.File
	r        *bufio.Reader
	begins   func(id int64) []byte
	ends     byte // the last one before the line's end; '\n' for any
	id       int64
	line     []byte
	at, kept int64
	done     bool
	err      error
}

func newScan(f *os.File, begins func(int64) []byte, ends byte) *scan {
	return &scan{file: f, r: bufio.NewReaderSize(f, 1<<16), begins: begins, ends: ends, id: 1}
}

// next reads one more row; false at the end or at the first line that is not the next row whole.
func (s *scan) next() bool {
	if s.done {
		return false
	}
	s.line = s.line[:0]
	for {
		piece, err := s.r.ReadSlice('\n')
		s.line = append(s.line, piece...)
		if err == nil {
			break
		}
		if err != bufio.ErrBufferFull {
			s.done = true
			if err != io.EOF {
				s.err = err
			}
			return false
		}
	}
	if n := len(s.line); n < 2 || !bytes.HasPrefix(s.line, s.begins(s.id)) || s.ends != '\n' && s.line[n-2] != s.ends || bytes.IndexByte(s.line, 0) >= 0 {
		s.done = true
		return false
	}
	s.id++
	s.at += int64(len(s.line))
	return true
}

func (s *scan) keep() { s.kept = s.at }

// rowOf reads a line back, as far as a summary needs it.
func rowOf(line []byte) (Row, error) {
	var d struct {
		ID          int64            `json:"id"`
		Verdict     strength.Verdict `json:"verdict"`
		Limit       string           `json:"limit"`
		Place       string           `json:"place"`
		Case        string           `json:"case"`
		Utilisation *float64         `json:"utilisation"`
		MassKG      *float64         `json:"mass_kg"`
		NotChecked  int              `json:"not_checked"`
		Reason      string           `json:"reason"`
	}
	if err := json.Unmarshal(line, &d); err != nil {
		return Row{}, err
	}
	r := Row{ID: d.ID, Verdict: d.Verdict, Limit: d.Limit, Place: d.Place, Case: d.Case, NotChecked: d.NotChecked, Reason: d.Reason, Utilisation: math.Inf(1), MassKG: math.NaN()}
	if d.Utilisation != nil {
		r.Utilisation = *d.Utilisation
	}
	if d.MassKG != nil {
		r.MassKG = *d.MassKG
	}
	return r, nil
}

// kept is a copy that stays.
func (r *Row) kept() Row {
	out := *r
	out.Own, out.Limits, out.params = slices.Clone(r.Own), slices.Clone([]dial.LimitUse(r.Limits)), nil
	return out
}
