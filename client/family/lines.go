package family

import (
	"bufio"
	"bytes"
	"crypto/sha256"
	"hash"
	"io"
)

// longestLine is far more than a row of any kind's parameters needs, in bytes.
const longestLine = 64 << 10

// lines gives the lines of a file that are not blank.
type lines struct {
	r    *bufio.Reader
	at   int // number of the last one, from 1
	long bool
	hash hash.Hash // of every byte up to the end of the last one
}

func newLines(r io.Reader) *lines {
	return &lines{r: bufio.NewReaderSize(r, longestLine), hash: sha256.New()}
}

// next gives the next line, with its end; long says whether it was cut at the bound. It is good until the next call.
func (l *lines) next() ([]byte, error) {
	for {
		line, err := l.r.ReadSlice('\n')
		l.hash.Write(line)
		l.at++
		l.long = err == bufio.ErrBufferFull
		if l.at == 1 {
			line = bytes.TrimPrefix(line, []byte("\ufeff"))
		}
		if l.long {
			line = append([]byte(nil), line[:200]...)
			for err == bufio.ErrBufferFull {
				var rest []byte
				rest, err = l.r.ReadSlice('\n')
				l.hash.Write(rest)
			}
		}
		if err != nil && err != io.EOF {
			return nil, err
		}
		if len(bytes.TrimSpace(line)) > 0 {
			return line, nil
		}
		if err == io.EOF {
			return nil, io.EOF
		}
	}
}

// one gives an io.Reader one line, and then its end, so that an open quote ends with its line.
type one struct{ line []byte }

func (o *one) Read(p []byte) (int, error) {
	if len(o.line) == 0 {
		return 0, io.EOF
	}
	n := copy(p, o.line)
	o.line = o.line[n:]
	return n, nil
}
