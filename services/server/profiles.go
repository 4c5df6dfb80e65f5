package server

import (
	"fmt"
	"log/slog"
	"net"
	"net/http"
	"runtime"
	"runtime/pprof"
	"strconv"
	"time"

	"lugwright/services/transport"
)

const profilesPath = "/debug/pprof/"

// longestProfile is the longest that processor time may be sampled for, in seconds.
const longestProfile = 300

// allocationRate is Go's own default: one sample for so many bytes.
const allocationRate = 512 * 1024

// profiles serves Go's profiles of this process, for `go tool pprof`, on an address of its own, until end is called. Go's own handlers of them
// bring a template engine along, which every start of a program that links it pays for.
func profiles(addr string, log *slog.Logger) (end func(), err error) {
	l, err := net.Listen("tcp", addr)
	if err != nil {
		return nil, fmt.Errorf("address for profiles %q: %w", addr, err)
	}
	mux := http.NewServeMux()
	mux.HandleFunc("GET "+profilesPath+"{$}", listProfiles)
	mux.HandleFunc("GET "+profilesPath+"profile", sampleTime)
	mux.HandleFunc("GET "+profilesPath+"{name}", writeProfile)
	s := &http.Server{Handler: onlyHere(mux), ReadHeaderTimeout: 10 * time.Second}
	if runtime.MemProfileRate == 0 { // a program that starts often may have turned it off
		runtime.MemProfileRate = allocationRate
	}
	done := make(chan struct{})
	go func() { defer close(done); _ = s.Serve(l) }() // ends with Close, and has nothing else to say
	log.Info("profiles", "address", "http://"+l.Addr().String()+profilesPath)
	return func() { s.Close(); <-done }, nil
}

// onlyHere answers who asks for this machine by its own name: a page of elsewhere, whose name was made to lead here, asks for its own.
func onlyHere(pages http.Handler) http.Handler {
	return http.HandlerFunc(func(w http.ResponseWriter, q *http.Request) {
		if !transport.LoopbackAddress(q.Host) {
			http.Error(w, fmt.Sprintf("host %q: profiles are told to this machine alone, under its own name", q.Host), http.StatusForbidden)
			return
		}
		pages.ServeHTTP(w, q)
	})
}

func listProfiles(w http.ResponseWriter, _ *http.Request) {
	fmt.Fprintln(w, "profile?seconds=30")
	for _, p := range pprof.Profiles() {
		fmt.Fprintln(w, p.Name())
	}
}

// sampleTime samples processor time for ?seconds, 30 when it does not say.
func sampleTime(w http.ResponseWriter, q *http.Request) {
	seconds := 30
	if text := q.FormValue("seconds"); text != "" {
		var err error
		if seconds, err = strconv.Atoi(text); err != nil || seconds < 1 || seconds > longestProfile {
			http.Error(w, fmt.Sprintf("seconds %q: write a whole number from 1 to %d", text, longestProfile), http.StatusBadRequest)
			return
		}
	}
	if err := pprof.StartCPUProfile(w); err != nil {
		http.Error(w, err.Error(), http.StatusConflict)
		return
	}
	defer pprof.StopCPUProfile()
	select {
	case <-time.After(time.Duration(seconds) * time.Second):
	case <-q.Context().Done():
	}
}

// writeProfile writes one profile; the heap's after a collection where ?gc=1 asks for it, as Go's own handler does.
func writeProfile(w http.ResponseWriter, q *http.Request) {
	p := pprof.Lookup(q.PathValue("name"))
	if p == nil {
		http.Error(w, fmt.Sprintf("no profile %q; %s lists them", q.PathValue("name"), profilesPath), http.StatusNotFound)
		return
	}
	if q.FormValue("gc") != "" && p.Name() == "heap" {
		runtime.GC()
	}
	debug, _ := strconv.Atoi(q.FormValue("debug")) // 0 where it is no number: packed
	_ = p.WriteTo(w, debug)                        // whoever asked has gone
}
