package command

import (
	"bufio"
	"context"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"lugwright/internal/browser"
)

// viewing is a view that runs, by its lines.
type viewing struct {
	lines *bufio.Scanner
	stop  context.CancelFunc
	ended chan int
}

func viewed(t *testing.T, args ...string) *viewing {
	t.Helper()
	ctx, stop := context.WithCancel(t.Context())
	out, in := io.Pipe()
	v := &viewing{bufio.NewScanner(out), stop, make(chan int, 1)}
	go func() {
		code := Main(ctx, append([]string{"lugwright", "view"}, args...), Streams{Out: in, Err: io.Discard})
		in.Close()
		v.ended <- code
	}()
	t.Cleanup(stop)
	return v
}

func (v *viewing) line(t *testing.T) string {
	t.Helper()
	if !v.lines.Scan() {
		t.Fatal("nothing more is told")
	}
	return v.lines.Text()
}

func (v *viewing) end(t *testing.T) {
	t.Helper()
	v.stop()
	if code := <-v.ended; code != Done {
		t.Errorf("ended by the user with status %d", code)
	}
}

// A page that is open shows what was saved: another revision, then an error with its line above the old result, then the mended job.
func TestView(t *testing.T) {
	path := starterJob(t)
	src, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	save := func(from, to string) {
		text := strings.Replace(string(src), from, to, 1)
		if text == string(src) && from != to {
			t.Fatalf("the starter job has no %q", from)
		}
		next := filepath.Join(t.TempDir(), "next.yaml")
		if err := os.WriteFile(next, []byte(text), 0o666); err != nil {
			t.Fatal(err)
		}
		if err := os.Rename(next, path); err != nil {
			t.Fatal(err)
		}
	}
	v := viewed(t, path)
	address := v.line(t)
	if !strings.HasPrefix(address, "http://127.0.0.1:") {
		t.Fatal(address)
	}
	if got := v.line(t); !strings.Contains(got, "passes") {
		t.Fatal(got)
	}
	go func() {
		for v.lines.Scan() { // what is told from now on
		}
	}()
	page := browser.Open(t, address+"calc-sheet.html", true)
	page.Await("Calc sheet", "Verdict")
	save("ear_width: 100 mm", "ear_width: 104 mm")
	page.Await("104 mm")
	save("ear_width: 100 mm", "ear_width: 104 kg")
	page.Await("OLD", filepath.Base(path)+":", "104 kg is a mass", "104 mm")
	save("", "")
	if seen := page.Await("100 mm"); strings.Contains(seen, "OLD") {
		t.Error("the mended job is still called old")
	}
	for _, f := range page.Faults() {
		t.Errorf("on the console: %s", f)
	}
	for _, a := range page.Asked() {
		if !strings.HasPrefix(a, address) && !strings.HasPrefix(a, "data:") {
			t.Errorf("the page asked for %s", a)
		}
	}
	v.end(t)
}

func TestViewRefuses(t *testing.T) {
	path := starterJob(t)
	for _, address := range []string{"0.0.0.0:0", ":8080", "192.0.2.1:80", "70000"} {
		lugwright(t, "view", path, "--listen", address).want(t, Misused, fmt.Sprintf("%q", address))
	}
	lugwright(t, "view", filepath.Join(t.TempDir(), "none.yaml")).want(t, Misused, "no such file")
	lugwright(t, "view").want(t, Misused, "takes one argument")
}
