package view

import (
	"bufio"
	"context"
	"errors"
	"fmt"
	"io"
	"net"
	"net/http"
	"net/http/httptest"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// notes is a site made of one text file; an empty file is an error.
func notes(file string) Maker {
	return func(context.Context) (*Site, []string, error) {
		data, err := os.ReadFile(file)
		switch {
		case err != nil:
			return nil, []string{file}, err
		case len(data) == 0:
			return nil, []string{file}, fmt.Errorf("%s:1: nothing <stands> here", filepath.Base(file))
		}
		page := fmt.Sprintf("<!DOCTYPE html>\n<meta http-equiv=\"Content-Security-Policy\" content=\"default-src 'none'\">\n<body>\n<p>%s</p>\n<script>1</script>\n</body>", data)
		return &Site{Title: "notes", Lines: []Line{{Words: string(data)}}, Pages: []Page{
			{Path: "note.html", Type: "text/html; charset=utf-8", Words: "Note", Print: "note.bin", Write: func(w io.Writer) error { _, err := io.WriteString(w, page); return err }},
			{Path: "note.bin", Type: "application/pdf", Write: func(w io.Writer) error { _, err := w.Write(data); return err }},
			{Path: "bad", Type: "text/plain", Write: func(io.Writer) error { return errors.New("cannot be drawn") }},
		}}, []string{file}, nil
	}
}

// served is a viewer of a file behind a real port, with a channel of its makings.
func served(t *testing.T, text string) (file, address string, made chan error) {
	t.Helper()
	file = filepath.Join(t.TempDir(), "note.txt")
	write(t, file, text)
	made = make(chan error, 100)
	v := New(notes(file), func(_ *Site, err error) { made <- err })
	l, err := Listen("127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	ctx, stop := context.WithCancel(t.Context())
	ended := make(chan error, 2)
	go func() { v.Watch(ctx); ended <- nil }()
	go func() { ended <- v.Serve(ctx, l) }()
	t.Cleanup(func() {
		stop()
		for range 2 {
			if err := <-ended; err != nil {
				t.Error(err)
			}
		}
	})
	<-made
	return file, "http://" + l.Addr().String(), made
}

func write(t *testing.T, file, text string) {
	t.Helper()
	// Whole at once, as a careful editor saves: else the empty file between would be one more making.
	next := file + ".new"
	if err := errors.Join(os.WriteFile(next, []byte(text), 0o666), os.Rename(next, file)); err != nil {
		t.Fatal(err)
	}
}

func get(t *testing.T, url string, change func(*http.Request)) (int, string, http.Header) {
	t.Helper()
	r, err := http.NewRequestWithContext(t.Context(), http.MethodGet, url, nil)
	if err != nil {
		t.Fatal(err)
	}
	if change != nil {
		change(r)
	}
	a, err := http.DefaultClient.Do(r)
	if err != nil {
		t.Fatal(err)
	}
	defer a.Body.Close()
	data, err := io.ReadAll(a.Body)
	if err != nil {
		t.Fatal(err)
	}
	return a.StatusCode, string(data), a.Header
}

func TestWhoMayAsk(t *testing.T) {
	_, address, _ := served(t, "apple")
	port := address[strings.LastIndexByte(address, ':'):]
	for host, want := range map[string]int{
		"127.0.0.1" + port: 200, "localhost" + port: 200, "LOCALHOST": 200, "[::1]" + port: 200, "127.0.0.2": 200,
		"evil.example" + port: 403, "evil.example": 403, "localhost.evil.example" + port: 403, "127.0.0.1.evil.example": 403, "10.0.0.1" + port: 403, "0.0.0.0" + port: 403,
	} {
		for _, path := range []string{"/", "/note.html", "/note.bin", "/events", "/view.js"} {
			if path == "/events" && want == 200 {
				continue
			}
			if got, body, _ := get(t, address+path, func(r *http.Request) { r.Host = host }); got != want || want == 403 && strings.Contains(body, "apple") {
				t.Errorf("%s of host %q: %d, want %d: %s", path, host, got, want, body)
			}
		}
	}
	for _, method := range []string{"POST", "PUT", "DELETE", "OPTIONS", "HEAD", "CONNECT"} {
		if got, _, head := get(t, address+"/", func(r *http.Request) { r.Method = method }); got != http.StatusMethodNotAllowed || head.Get("Allow") != "GET" {
			t.Errorf("%s: %d", method, got)
		}
	}
	_, _, head := get(t, address+"/", nil)
	if p := head.Get("Content-Security-Policy"); !strings.Contains(p, "default-src 'none'") || strings.Contains(p, "script-src 'unsafe") || head.Get("Access-Control-Allow-Origin") != "" {
		t.Errorf("%v", head)
	}
}

func TestListen(t *testing.T) {
	for _, address := range []string{"0.0.0.0:0", "[::]:0", ":0", "192.0.2.1:0", "example.org:0", "127.0.0.1", "nonsense"} {
		l, err := Listen(address)
		var refused *AddressError
		if !errors.As(err, &refused) {
			t.Errorf("%s: %v", address, err)
		}
		if l != nil {
			l.Close()
		}
	}
	first, err := Listen("localhost:0")
	if err != nil {
		t.Fatal(err)
	}
	defer first.Close()
	var refused *AddressError
	if _, err := Listen(first.Addr().String()); err == nil || errors.As(err, &refused) {
		t.Errorf("a port that is taken: %v", err)
	}
	var _ net.Listener = first
}

// A page shows what the file says, after a save the new text, after a broken one the error above the old text, and nothing of it once it is mended.
func TestSaveAndLook(t *testing.T) {
	file, address, made := served(t, "apple")
	status, body, head := get(t, address+"/note.html", nil)
	if status != 200 || !strings.Contains(body, "<p>apple</p>") || strings.Contains(body, "http-equiv") || !strings.Contains(body, `data-version=`) || strings.Contains(body, "OLD") {
		t.Errorf("%d %s", status, body)
	}
	// The hash of the script "1", by sha256sum and base64.
	if p := head.Get("Content-Security-Policy"); !strings.Contains(p, "'sha256-a4ayc/80/OGda4BO/1o/V0etpOqiLx1JwB5S3beHW0s='") {
		t.Errorf("%s", p)
	}
	write(t, file, "two")
	if err := <-made; err != nil {
		t.Fatal(err)
	}
	if _, body, _ := get(t, address+"/note.html", nil); !strings.Contains(body, "<p>two</p>") {
		t.Error(body)
	}
	write(t, file, "")
	if err := <-made; err == nil {
		t.Fatal("no error")
	}
	for _, path := range []string{"/", "/note.html"} {
		if _, body, _ := get(t, address+path, nil); !strings.Contains(body, "OLD") || !strings.Contains(body, "note.txt:1: nothing &lt;stands&gt; here") || !strings.Contains(body, "two") {
			t.Errorf("%s: %s", path, body)
		}
	}
	if status, body, _ := get(t, address+"/note.bin", nil); status != http.StatusConflict || strings.Contains(body, "two") {
		t.Errorf("an old file to print: %d %s", status, body)
	}
	write(t, file, "three")
	if err := <-made; err != nil {
		t.Fatal(err)
	}
	if _, body, _ := get(t, address+"/", nil); strings.Contains(body, "OLD") || !strings.Contains(body, "three") {
		t.Error(body)
	}
	if status, _, _ := get(t, address+"/none.html", nil); status != http.StatusNotFound {
		t.Errorf("%d", status)
	}
	if status, body, _ := get(t, address+"/bad", nil); status != http.StatusInternalServerError || !strings.Contains(body, "cannot be drawn") {
		t.Errorf("%d %s", status, body)
	}
}

// Before there is a result the first page says why, and a job that never was whole has no old one.
func TestNothingYet(t *testing.T) {
	_, address, _ := served(t, "")
	if status, body, _ := get(t, address+"/", nil); status != 200 || !strings.Contains(body, "cannot be checked") || strings.Contains(body, "OLD") {
		t.Errorf("%d %s", status, body)
	}
}

// Who waits for changes is told the version now and each new one; as many may wait as there is room for.
func TestEvents(t *testing.T) {
	file, address, made := served(t, "apple")
	a, err := http.Get(address + "/events")
	if err != nil {
		t.Fatal(err)
	}
	defer a.Body.Close()
	lines := bufio.NewScanner(a.Body)
	next := func() string {
		for lines.Scan() {
			if v, ok := strings.CutPrefix(lines.Text(), "data: "); ok {
				return v
			}
		}
		t.Fatal("no event")
		return ""
	}
	first := next()
	if _, body, _ := get(t, address+"/", nil); !strings.Contains(body, `data-version="`+first+`"`) {
		t.Errorf("version %s: %s", first, body)
	}
	write(t, file, "two")
	<-made
	if second := next(); second == first || second == "" {
		t.Errorf("versions %s, %s", first, second)
	}
}

func TestEventsAreBounded(t *testing.T) {
	v := New(notes("none"), func(*Site, error) {})
	h := v.Handler()
	ctx, stop := context.WithCancel(t.Context())
	ended := make(chan int, mostEvents+1)
	ask := func() {
		w := httptest.NewRecorder()
		r := httptest.NewRequestWithContext(ctx, http.MethodGet, "http://localhost/events", nil)
		h.ServeHTTP(w, r)
		ended <- w.Code
	}
	for range mostEvents + 1 {
		go ask()
	}
	select {
	case code := <-ended:
		if code != http.StatusServiceUnavailable {
			t.Errorf("%d", code)
		}
	case <-time.After(30 * time.Second):
		t.Error("one too many waits too")
	}
	stop()
	for range mostEvents {
		<-ended
	}
}
