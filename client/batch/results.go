package batch

// This file holds the folder of results.

import (
	"bufio"
	"encoding/csv"
	"encoding/json"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"

	"lugwright/client/family"
)

// Files of the folder. The first says whose results they are; the others have one line a variant, in order.
const (
	FamilyFile = "family.json"
	LinesFile  = "results.jsonl"
	TableFile  = "results.csv"
)

// WriteError is results that could not be written.
type WriteError struct{ err error }

func (e *WriteError) Error() string {
	var at *fs.PathError
	if errors.As(e.err, &at) {
		return at.Path + ": " + at.Err.Error()
	}
	return e.err.Error()
}
func (e *WriteError) Unwrap() error { return e.err }

// OccupiedError is a folder that holds something already.
type OccupiedError struct {
	Dir, Found string
	Results    bool // they are results, with which a run can go on
}

func (e *OccupiedError) Error() string { return e.Dir + " " + e.Found }

// identity is what FamilyFile says.
type identity struct {
	Format   int    `json:"format"`
	Tool     string `json:"tool"`
	Family   string `json:"family"`
	Kind     string `json:"kind"`
	Basis    string `json:"basis"`
	Method   string `json:"method"`
	Variants int64  `json:"variants"`
	Hash     string `json:"hash"` // of the family and the tool
}

const format = 1

// Results is an open folder.
type Results struct {
	Done    int64 // variants that have their rows
	Kept    int64 // those whose rows are in both files, with which Resume goes on; none before the table's columns are known
	Summary *Summary

	dir   string
	old   int64 // rows that Resume found
	form  form
	held  []Row // the first ones, until the columns of limit states are known; nil afterwards
	lines *os.File
	table *os.File
	out   [2]*bufio.Writer
	csv   *csv.Writer
	buf   []byte
	cells []string
}

// first is how many variants choose the columns of limit states.
const first = 64

// Create makes the folder, which must not exist or be empty, and its files. Worst is how many of the worst variants the summary keeps.
func Create(dir string, f *family.Family, version string, worst int) (*Results, error) {
	if err := free(dir); err != nil {
		return nil, err
	}
	if err := os.MkdirAll(dir, 0o777); err != nil {
		return nil, &WriteError{err}
	}
	r := &Results{dir: dir, form: formOf(f), held: []Row{}, Summary: NewSummary(worst)}
	if err := r.open(os.O_CREATE | os.O_RDWR); err != nil {
		return nil, err
	}
	text, err := json.MarshalIndent(identify(f, version), "", "  ")
	if err == nil {
		err = os.WriteFile(filepath.Join(dir, FamilyFile), append(text, '\n'), 0o666)
	}
	if err != nil {
		r.Close()
		return nil, &WriteError{err}
	}
	return r, nil
}

func identify(f *family.Family, version string) identity {
	return identity{format, "lugwright " + version, f.Title, f.Kind.Name, f.Basis, string(f.Method), f.Count, f.Hash(version)}
}

// free refuses a folder that holds something: nothing is ever overwritten.
func free(dir string) error {
	entries, err := os.ReadDir(dir)
	switch {
	case errors.Is(err, fs.ErrNotExist) || err == nil && len(entries) == 0:
		return nil
	case err != nil:
		return &WriteError{err}
	}
	if _, err := os.Stat(filepath.Join(dir, FamilyFile)); err == nil {
		return &OccupiedError{dir, "holds results already", true}
	}
	return &OccupiedError{dir, "is not empty", false}
}

// open opens both files and keeps others from them.
func (r *Results) open(flag int) error {
	var err error
	if r.lines, err = os.OpenFile(filepath.Join(r.dir, LinesFile), flag, 0o666); err != nil {
		return &WriteError{err}
	}
	if err := lock(r.lines); err != nil {
		r.lines.Close()
		return &OccupiedError{r.dir, "is being written by another run", false}
	}
	if r.table, err = os.OpenFile(filepath.Join(r.dir, TableFile), flag, 0o666); err != nil {
		r.lines.Close()
		return &WriteError{err}
	}
	r.out = [2]*bufio.Writer{bufio.NewWriterSize(r.lines, 1<<16), bufio.NewWriterSize(r.table, 1<<16)}
	r.csv = csv.NewWriter(r.out[1])
	return nil
}

// Take writes rows and puts them into the summary. When it returns they are in the files, but for the first ones of the table.
func (r *Results) Take(rows []Row) error {
	for i := range rows {
		r.buf = r.form.line(r.buf[:0], &rows[i])
		r.out[0].Write(r.buf) // which keeps its error
		r.Summary.Add(&rows[i])
	}
	if err := r.tabulate(rows); err != nil {
		return err
	}
	r.Done += int64(len(rows))
	err := r.flush()
	if err == nil && r.held == nil {
		r.Kept = r.Done
	}
	return err
}

// tabulate writes rows of the table, once its columns are known.
func (r *Results) tabulate(rows []Row) error {
	if r.held != nil {
		for i := range rows {
			r.held = append(r.held, rows[i].kept())
		}
		if len(r.held) < first {
			return nil
		}
		return r.begin()
	}
	for i := range rows {
		r.cells = r.form.cells(r.cells[:0], &rows[i])
		r.csv.Write(r.cells) // which keeps its error
	}
	return nil
}

// begin writes the table's head and the rows that were held back.
func (r *Results) begin() error {
	rows := r.held
	r.held = nil
	r.form.choose(rows[:min(len(rows), first)])
	r.csv.Write(r.form.header())
	return r.tabulate(rows)
}

func (r *Results) flush() error {
	r.csv.Flush()
	for _, err := range []error{r.out[0].Flush(), r.csv.Error(), r.out[1].Flush()} {
		if err != nil {
			return &WriteError{fmt.Errorf("results could not be written: %w", err)}
		}
	}
	return nil
}

// Finish ends the files of a run that had an answer for every variant.
func (r *Results) Finish() error {
	var err error
	if r.held != nil { // there were too few to choose the columns before
		if err = r.begin(); err == nil {
			err = r.flush()
		}
	}
	for _, f := range []*os.File{r.lines, r.table} {
		if e := f.Sync(); e != nil && err == nil && !errors.Is(e, errors.ErrUnsupported) {
			err = &WriteError{e}
		}
	}
	if e := r.Close(); e != nil && err == nil {
		err = &WriteError{e}
	}
	return err
}

// Leave ends a run that did not finish. Rows that it read where the family's file had changed already are dropped; those that Resume found stay.
func (r *Results) Leave(why error) error {
	var err error
	if changed := (*family.ChangedError)(nil); errors.As(why, &changed) {
		if n := max(changed.Same, r.old); n < r.Done {
			err = r.keep(n)
		}
	}
	if e := r.Close(); err == nil && e != nil {
		err = e
	}
	if err != nil {
		return &WriteError{err}
	}
	return nil
}

// keep drops all but the first n rows; all where the columns were chosen by others too, in this run.
func (r *Results) keep(n int64) error {
	if n < first && r.old == 0 {
		n = 0
	}
	for _, f := range []*os.File{r.lines, r.table} {
		if _, err := f.Seek(0, io.SeekStart); err != nil {
			return err
		}
	}
	r.Done, r.Summary, r.form.limits = 0, NewSummary(r.Summary.most), nil
	return r.rejoin(n)
}

// Close leaves the files as they are, for Resume.
func (r *Results) Close() error { return errors.Join(r.table.Close(), r.lines.Close()) }
