package view

import (
	"bytes"
	"context"
	_ "embed"
	"errors"
	"fmt"
	"net"
	"net/http"
	"strings"
	"time"
)

// AddressError is an address that is not of this machine alone.
type AddressError struct{ Address, Why string }

func (e *AddressError) Error() string { return fmt.Sprintf("%q: %s", e.Address, e.Why) }

// Listen opens a port on this machine's own address, and on no other.
func Listen(address string) (net.Listener, error) {
	host, _, err := net.SplitHostPort(address)
	if err != nil {
		return nil, &AddressError{address, "not HOST:PORT"}
	}
	if !loopback(host) {
		return nil, &AddressError{address, "not an address of this machine alone"}
	}
	l, err := net.Listen("tcp", address)
	if err != nil {
		return nil, err
	}
	if at, ok := l.Addr().(*net.TCPAddr); !ok || !at.IP.IsLoopback() {
		l.Close() //nolint:errcheck // nothing came in yet
		return nil, &AddressError{address, "not an address of this machine alone"}
	}
	return l, nil
}

func loopback(host string) bool {
	ip := net.ParseIP(strings.Trim(host, "[]"))
	return host == "localhost" || ip != nil && ip.IsLoopback()
}

const (
	patience   = 5 * time.Second // for the head of a request
	goodbye    = time.Second     // for requests that run when the server stops
	mostHeader = 16 << 10
	mostEvents = 64 // pages that wait for changes
)

// Serve answers until the context ends.
func (v *Viewer) Serve(ctx context.Context, l net.Listener) error {
	s := &http.Server{
		Handler: v.Handler(), ReadHeaderTimeout: patience, ReadTimeout: patience, IdleTimeout: time.Minute, MaxHeaderBytes: mostHeader,
		BaseContext: func(net.Listener) context.Context { return ctx },
	}
	ended := make(chan error, 1)
	go func() { ended <- s.Serve(l) }()
	select {
	case err := <-ended:
		return err
	case <-ctx.Done():
	}
	stop, cancel := context.WithTimeout(context.WithoutCancel(ctx), goodbye)
	defer cancel()
	if s.Shutdown(stop) != nil {
		s.Close() //nolint:errcheck // what did not end in time is cut off
	}
	if err := <-ended; !errors.Is(err, http.ErrServerClosed) {
		return err
	}
	return nil
}

//go:embed view.js
var script []byte

// Handler answers who asks for a page by GET under a name of this machine: a name of another that leads here is of a page that has no business with it.
func (v *Viewer) Handler() http.Handler {
	events := make(chan struct{}, mostEvents)
	return http.HandlerFunc(func(w http.ResponseWriter, r *http.Request) {
		head := w.Header()
		head.Set("X-Content-Type-Options", "nosniff")
		head.Set("Referrer-Policy", "no-referrer")
		head.Set("Cross-Origin-Resource-Policy", "same-origin")
		head.Set("Cache-Control", "no-store")
		head.Set("Content-Security-Policy", policy())
		switch {
		case !ownName(r.Host):
			http.Error(w, "this is served to this machine alone: ask for localhost or 127.0.0.1", http.StatusForbidden)
		case r.Method != http.MethodGet:
			head.Set("Allow", http.MethodGet)
			http.Error(w, "pages are only read here", http.StatusMethodNotAllowed)
		case r.URL.Path == "/view.js":
			head.Set("Content-Type", "text/javascript; charset=utf-8")
			w.Write(script) //nolint:errcheck // the reader has gone
		case r.URL.Path == "/events":
			v.events(w, r, events)
		default:
			v.page(w, strings.TrimPrefix(r.URL.Path, "/"))
		}
	})
}

func ownName(host string) bool {
	if name, _, err := net.SplitHostPort(host); err == nil {
		host = name
	}
	return loopback(strings.ToLower(host))
}

// policy allows a page its own styles, pictures and changes, the reader's side from here, and scripts by their hashes.
func policy(hashes ...string) string {
	scripts := "'self'"
	for _, h := range hashes {
		scripts += " 'sha256-" + h + "'"
	}
	return "default-src 'none'; style-src 'unsafe-inline'; script-src " + scripts + "; img-src 'self' data:; connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
}

// events tells the version now, and each new one.
func (v *Viewer) events(w http.ResponseWriter, r *http.Request, free chan struct{}) {
	select {
	case free <- struct{}{}:
		defer func() { <-free }()
	default:
		http.Error(w, "too many pages wait for changes: close some", http.StatusServiceUnavailable)
		return
	}
	w.Header().Set("Content-Type", "text/event-stream")
	send := http.NewResponseController(w)
	for {
		_, version, changed, _ := v.now()
		if version != "" {
			if _, err := fmt.Fprintf(w, "data: %s\n\n", version); err != nil {
				return
			}
		}
		if send.Flush() != nil {
			return
		}
		select {
		case <-changed:
		case <-r.Context().Done():
			return
		}
	}
}

// page answers with a page of the site, or the first one.
func (v *Viewer) page(w http.ResponseWriter, path string) {
	site, version, _, failed := v.now()
	if path == "" {
		v.give(w, "text/html; charset=utf-8", firstPage(site, failed), top(site, failed, version, true))
		return
	}
	if site != nil {
		for i := range site.Pages {
			p := &site.Pages[i]
			if p.Path != path {
				continue
			}
			if failed != nil && !strings.HasPrefix(p.Type, "text/html") { // it has no room to say that it is old
				http.Error(w, "not given, for it would be of an older job file; the one of now has an error:\n"+failed.Error(), http.StatusConflict)
				return
			}
			var out bytes.Buffer
			if err := p.Write(&out); err != nil {
				http.Error(w, err.Error(), http.StatusInternalServerError)
				return
			}
			v.give(w, p.Type, out.Bytes(), top(site, failed, version, false))
			return
		}
	}
	w.WriteHeader(http.StatusNotFound)
	v.give(w, "text/html; charset=utf-8", lostPage(), top(site, failed, version, false))
}

func (v *Viewer) give(w http.ResponseWriter, kind string, data, top []byte) {
	w.Header().Set("Content-Type", kind)
	if strings.HasPrefix(kind, "text/html") {
		var hashes []string
		data, hashes = set(data, top)
		w.Header().Set("Content-Security-Policy", policy(hashes...))
	}
	w.Write(data) //nolint:errcheck // the reader has gone
}
