package transport

import (
	"fmt"
	"io"
	"log/slog"
	"os"
	"sync"
)

// largestFile bounds what is read of a certificate, key or token file.
const largestFile = 1 << 20

// kept is what was last read from some files. When one of them changes they are read again; while that fails, the last good reading
// stays, and the log says so once for each change.
type kept[T any] struct {
	what  string // for the log
	files []string
	read  func() (T, error)
	log   *slog.Logger

	mu    sync.Mutex
	seen  []os.FileInfo
	value T
}

// keep reads the files for the first time.
func keep[T any](what string, log *slog.Logger, read func() (T, error), files ...string) (*kept[T], error) {
	k := &kept[T]{what: what, files: files, read: read, log: log}
	var err error
	k.seen = states(files)
	k.value, err = read()
	return k, err
}

// get gives the last good reading.
func (k *kept[T]) get() T {
	k.mu.Lock()
	defer k.mu.Unlock()
	now := states(k.files)
	if same(now, k.seen) {
		return k.value
	}
	k.seen = now
	value, err := k.read()
	if err != nil {
		k.log.Error("changed file not taken, the last one stays in use", "what", k.what, "reason", err.Error())
		return k.value
	}
	k.log.Info("changed file taken", "what", k.what)
	k.value = value
	return value
}

// states are the files as they lie there; nil for one that does not.
func states(files []string) []os.FileInfo {
	out := make([]os.FileInfo, len(files))
	for i, f := range files {
		if info, err := os.Stat(f); err == nil {
			out[i] = info
		}
	}
	return out
}

func same(a, b []os.FileInfo) bool {
	for i := range a {
		if a[i] == nil || b[i] == nil {
			if a[i] != b[i] {
				return false
			}
			continue
		}
		if !os.SameFile(a[i], b[i]) || a[i].Size() != b[i].Size() || !a[i].ModTime().Equal(b[i].ModTime()) {
			return false
		}
	}
	return true
}

// readFile reads a small file.
func readFile(name string) ([]byte, error) {
	f, err := os.Open(name)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	b, err := io.ReadAll(io.LimitReader(f, largestFile+1))
	if err == nil && len(b) > largestFile {
		err = fmt.Errorf("%s: longer than %d bytes", name, largestFile)
	}
	return b, err
}
