// Package view serves pages on this machine alone and makes them anew when a file changes. It never knows what the pages say.
//
//	view.go   what is served, and when it is made again
//	serve.go  requests, and who may ask
//	page.go   what is set into a page; page.tmpl the first page, view.js the reader's side
package view

import (
	"context"
	"crypto/sha256"
	"encoding/hex"
	"fmt"
	"io"
	"os"
	"sync"
	"time"
)

// Page is one page or file. Write may be called by several requests at once.
type Page struct {
	Path  string // "calc-sheet.html", without a slash at its beginning
	Type  string // of its content
	Words string // for the first page; empty: not listed
	Use   string
	Print string // path of the same to print
	Write func(io.Writer) error
}

// Site is what was made.
type Site struct {
	Title string
	Lines []Line // for the first page, worst first
	Pages []Page
}

// Line is a sentence, strong where it must be seen.
type Line struct {
	Words  string
	Strong bool
}

// Maker makes the site, and names the files that it was made from whether that went well or not.
type Maker func(context.Context) (site *Site, files []string, err error)

// Interval is how often files are looked at.
const Interval = 300 * time.Millisecond

// Viewer holds the last site that was made and what has come since.
type Viewer struct {
	make Maker
	said func(*Site, error)

	lock    sync.Mutex
	site    *Site // the last that was made without an error; nil: none was
	failed  error // why the newest was not made
	version string
	changed chan struct{} // closed at the next version
}

// New is a viewer; said is told of each making.
func New(m Maker, said func(*Site, error)) *Viewer {
	return &Viewer{make: m, said: said, changed: make(chan struct{})}
}

// Watch makes the site, and again whenever a file of it has other content, until the context ends.
func (v *Viewer) Watch(ctx context.Context) {
	tick := time.NewTicker(Interval)
	defer tick.Stop()
	var seen string
	var files []string
	for first := true; ; first = false {
		if now := fingerprint(files); first || now != seen {
			var site *Site
			var err error
			site, files, err = v.make(ctx)
			if ctx.Err() != nil {
				return
			}
			if first {
				now = fingerprint(files)
			} else if len(files) > 0 && now != fingerprint(files) {
				now = "" // it changed while it was read, or is made from other files: once more
			}
			seen = now
			v.take(site, seen, err)
		}
		select {
		case <-ctx.Done():
			return
		case <-tick.C:
		}
	}
}

// take puts a making in place of the one before. An error leaves the last site that there was.
func (v *Viewer) take(site *Site, print string, err error) {
	v.lock.Lock()
	if err == nil {
		v.site = site
	}
	v.failed = err
	sum := sha256.Sum256([]byte(fmt.Sprintln(print, err)))
	v.version = hex.EncodeToString(sum[:8])
	close(v.changed)
	v.changed = make(chan struct{})
	v.lock.Unlock()
	v.said(site, err)
}

// now is what is served at this moment.
func (v *Viewer) now() (site *Site, version string, changed <-chan struct{}, failed error) {
	v.lock.Lock()
	defer v.lock.Unlock()
	return v.site, v.version, v.changed, v.failed
}

// fingerprint tells contents apart; a file that cannot be read is one more content.
func fingerprint(files []string) string {
	h := sha256.New()
	for _, name := range files {
		fmt.Fprintf(h, "%q ", name)
		if err := into(h, name); err != nil {
			fmt.Fprintf(h, "%v ", err)
		}
	}
	return hex.EncodeToString(h.Sum(nil))
}

// largest is how much of a file is looked at.
const largest = 16 << 20

func into(w io.Writer, name string) error {
	f, err := os.Open(name)
	if err != nil {
		return err
	}
	defer f.Close()
	_, err = io.Copy(w, io.LimitReader(f, largest))
	return err
}
