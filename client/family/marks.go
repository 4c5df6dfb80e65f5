package family

// This file finds out that a file is no longer what it was when its rows were counted.

import (
	"crypto/sha256"
	"path/filepath"
)

// ChangedError is a file of rows that changed after they were counted.
type ChangedError struct {
	File string
	Same int64 // rows that are known to be as they were, the first ones
}

func (e *ChangedError) Error() string {
	return filepath.Base(e.File) + " was changed while its rows were read"
}

// A mark is the hash of a file up to the end of a row.
type mark [sha256.Size]byte

func (l *lines) mark() (m mark) {
	l.hash.Sum(m[:0])
	return m
}

// mostMarks bounds the memory that marks take.
const mostMarks = 2048

// marks are those of every so many rows.
type marks struct {
	every int64
	list  []mark
}

// count takes the mark of a row, where one is due. Rows come one after the other.
func (m *marks) count(row int64, l *lines) {
	if row%m.every != 0 {
		return
	}
	if len(m.list) == mostMarks { // every second one is dropped, the new one too
		for i := range mostMarks / 2 {
			m.list[i] = m.list[2*i+1]
		}
		m.list = m.list[:mostMarks/2]
		m.every *= 2
		return
	}
	m.list = append(m.list, l.mark())
}

// same says whether a row, and all before it, are as they were; sure where there is a mark that tells.
func (m *marks) same(row int64, l *lines) (same, sure bool) {
	if row == 0 || row%m.every != 0 || row/m.every > int64(len(m.list)) {
		return true, false
	}
	same = l.mark() == m.list[row/m.every-1]
	return same, same
}
