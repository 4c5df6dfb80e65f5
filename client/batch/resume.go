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
	"lugwright/part"
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
	if err := r.rejoin(math.MaxInt64); err != nil {
		r.Close()
		if other := (*changedError)(nil); errors.As(err, &other) {
			return nil, &OtherError{dir, fmt.Sprintf("this family, but line %d of %s is not what was written for it: another program saved it", other.line, TableFile)}
		}
		return nil, &WriteError{err}
	}
	r.old = r.Done
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

// rejoin cuts both files behind the last row that both have whole, and behind the n-th.
func (r *Results) rejoin(n int64) error {
	ends, err := r.readBack(r.lines, r.table, n)
	if err != nil {
		return err
	}
	for i, file := range []*os.File{r.lines, r.table} {
		if err := file.Truncate(ends[i]); err != nil {
			return err
		}
		if _, err := file.Seek(ends[i], io.SeekStart); err != nil {
			return err
		}
	}
	r.Kept = r.Done
	return nil
}

// changedError is a table that was not cut off but written anew: what stands behind that line must not be dropped in silence.
type changedError struct{ line int64 }

func (e *changedError) Error() string { return fmt.Sprintf("line %d was changed", e.line) }

// readBack takes the rows that both files have whole, n at most, and says where each file's last one ends.
func (r *Results) readBack(linesFile, tableFile io.Reader, n int64) (ends [2]int64, err error) {
	lines, table, tableRow := newScan(linesFile), newScan(tableFile), tableRows()
	if !table.next() {
		return ends, table.err
	}
	ours := r.form.rejoinHeader(table.line)
	r.held = nil
	for ends[1] = table.at; r.Done < n && lines.next(); ends = [2]int64{lines.at, table.at} {
		row, want, ok := r.form.rowOf(r.Done+1, lines.line)
		if !ok {
			break
		}
		if !ours { // what is cut off leaves no other first line
			return ends, &changedError{1}
		}
		if !table.next() {
			break
		}
		if !bytes.Equal(table.line, tableRow(want)) {
			if cells := cellsOf(table.line); len(cells) == len(want) && cells[0] == want[0] {
				return ends, &changedError{r.Done + 2}
			}
			break
		}
		r.Summary.Add(&row)
		r.Done++
	}
	if r.Done == 0 { // nothing bears the header out
		ends, r.form.limits, r.held = [2]int64{}, nil, []Row{}
	}
	return ends, errors.Join(lines.err, table.err)
}

// rejoinHeader reads from a table's first line which limit states have columns; false where it is not as we write it.
func (f *form) rejoinHeader(line []byte) bool {
	header := cellsOf(line)
	own := len(f.header()) - 1
	if len(header) <= own || !slices.Equal(header[:own], f.header()[:own]) || header[len(header)-1] != others {
		return false
	}
	if !bytes.Equal(line, tableRows()(header)) {
		return false
	}
	limits := header[own : len(header)-1]
	for i := 1; i < len(limits); i++ {
		if limits[i-1] >= limits[i] { // not as choose leaves them
			return false
		}
	}
	f.limits = limits
	return true
}

// cellsOf reads a line of a table; nil where it is none.
func cellsOf(line []byte) []string {
	cells, err := csv.NewReader(bytes.NewReader(line)).Read()
	if err != nil {
		return nil
	}
	return cells
}

// scan goes through the whole lines of a file.
type scan struct {
	r    *bufio.Reader
	line []byte
	at   int64 // where it ends
	err  error
}

func newScan(f io.Reader) *scan { return &scan{r: bufio.NewReaderSize(f, 1<<16)} }

// next reads one more line with its end; false where there is none.
func (s *scan) next() bool {
	s.line = s.line[:0]
	for {
		piece, err := s.r.ReadSlice('\n')
		s.line = append(s.line, piece...)
		if err == nil {
			s.at += int64(len(s.line))
			return true
		}
		if err != bufio.ErrBufferFull {
			if err != io.EOF {
				s.err = err
			}
			return false
		}
	}
}

// rowOf reads a line back, as far as a summary needs it, with the cells that the table has of it; false where it is not the line of that variant.
func (f *form) rowOf(id int64, line []byte) (_ Row, want []string, _ bool) {
	var d struct {
		ID          int64                      `json:"id"`
		Parameters  map[string]json.RawMessage `json:"parameters"`
		Verdict     strength.Verdict           `json:"verdict"`
		Limit       string                     `json:"limit"`
		Place       string                     `json:"place"`
		Case        string                     `json:"case"`
		Utilisation *float64                   `json:"utilisation"`
		MassKG      *float64                   `json:"mass_kg"`
		NotChecked  int                        `json:"not_checked"`
		Reason      string                     `json:"reason"`
		Limits      limitUses                  `json:"limits"`
		Outside     []string                   `json:"outside"`
	}
	if json.Unmarshal(line, &d) != nil || d.ID != id {
		return Row{}, nil, false
	}
	r := Row{
		ID: d.ID, Own: make([]part.Param, len(f.names)), Verdict: d.Verdict, Limit: d.Limit, Place: d.Place, Case: d.Case, Utilisation: math.Inf(1),
		MassKG: math.NaN(), NotChecked: d.NotChecked, Reason: d.Reason,
	}
	if d.Utilisation != nil {
		r.Utilisation = *d.Utilisation
	}
	if d.MassKG != nil {
		r.MassKG = *d.MassKG
	}
	for _, u := range d.Limits {
		if slices.Contains(d.Outside, u.Limit) {
			u.Verdict = strength.Outside
		}
		r.Limits = append(r.Limits, u)
	}
	want = f.cells(nil, &r)
	for i, name := range f.names {
		text := plain(d.Parameters[name])
		want[len(firstColumns)+i] = text
		if v, err := strconv.ParseFloat(text, 64); err == nil && d.Parameters[name][0] != '"' {
			r.Own[i] = f.params[i].Given(tenFigures(v*f.scales[i]), "")
		} else if text != "" {
			r.Own[i] = f.params[i].Given(0, text)
		}
	}
	r.Limits = nil
	return r, want, true
}

// tableRows makes lines of a table, each good until the next.
func tableRows() func(cells []string) []byte {
	var line bytes.Buffer
	w := csv.NewWriter(&line)
	return func(cells []string) []byte {
		line.Reset()
		w.Write(cells) //nolint:errcheck // memory takes all
		w.Flush()
		return line.Bytes()
	}
}

// limitUses keeps the order of limit states, which the table's last cell has too.
type limitUses []dial.LimitUse

func (l *limitUses) UnmarshalJSON(src []byte) error {
	d := json.NewDecoder(bytes.NewReader(src))
	if _, err := d.Token(); err != nil { // the opening brace
		return err
	}
	for d.More() {
		name, err := d.Token()
		if err != nil {
			return err
		}
		var used *float64
		if err := d.Decode(&used); err != nil {
			return err
		}
		u := dial.LimitUse{Limit: fmt.Sprint(name), Utilisation: math.Inf(1)}
		if used != nil {
			u.Utilisation = *used
		}
		*l = append(*l, u)
	}
	return nil
}

// tenFigures rounds away what a number in another unit lost at its twelfth.
func tenFigures(v float64) float64 {
	out, err := figures(v, 10)
	if err != nil {
		return v
	}
	return out
}

// plain is a JSON text or number as a cell has it.
func plain(v json.RawMessage) string {
	var text string
	if json.Unmarshal(v, &text) == nil {
		return text
	}
	return string(v)
}

// kept is a copy that stays.
func (r *Row) kept() Row {
	out := *r
	out.Own, out.Limits, out.params = slices.Clone(r.Own), slices.Clone([]dial.LimitUse(r.Limits)), nil
	return out
}
