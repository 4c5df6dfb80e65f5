package dial

import (
	"errors"
	"io"
	"log/slog"
	"strings"
	"testing"
	"time"

	"lugwright/geometry/kinds"
	geometryservice "lugwright/services/geometry"
	"lugwright/services/server"
	"lugwright/services/transport"
	"lugwright/services/transport/transporttest"
)

// listenTLS serves over TLS, with a token where a file of one is named.
func listenTLS(t *testing.T, files transport.ServerFiles, tokenFile string) (addr string) {
	t.Helper()
	quiet := slog.New(slog.NewTextHandler(io.Discard, nil))
	o := server.Options{Log: quiet}
	var err error
	if o.Credentials, err = transport.Server(files, nil, quiet); err != nil {
		t.Fatal(err)
	}
	if tokenFile != "" {
		if o.Gate, err = transport.NewGate(tokenFile, quiet); err != nil {
			t.Fatal(err)
		}
	}
	l, err := server.ListenAnywhere("127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	s, done := server.New(o, geometryservice.New(kinds.All())), make(chan error, 1)
	go func() { done <- s.Serve(l) }()
	t.Cleanup(func() {
		s.Stop(time.Second)
		if err := <-done; err != nil {
			t.Error(err)
		}
	})
	return l.Addr().String()
}

// Replicas are each known by their own name; what is wrong with a connection is told in words, with the option that mends it.
func TestSecured(t *testing.T) {
	ours, other := transporttest.New(t, "ours"), transporttest.New(t, "other")
	pair, me := ours.Issue(t, "server", 48*time.Hour), ours.Issue(t, "me", 48*time.Hour)
	token := transporttest.Token(t, "0123456789abcdef")
	files := transport.ServerFiles{Cert: pair.Cert, Key: pair.Key}
	mutual := transport.ServerFiles{Cert: pair.Cert, Key: pair.Key, ClientCA: ours.File}
	one, two := listenTLS(t, files, ""), listenTLS(t, files, "")
	guarded, closed := listenTLS(t, files, token), listenTLS(t, mutual, "")
	open, _ := listen(t, geometryservice.New(kinds.All()))
	for name, c := range map[string]struct {
		addr     string
		security Security
		want     string
	}{
		"two replicas": {one + "," + two, Security{CA: ours.File}, ""},
		"by a target":  {"dns:///" + strings.Replace(one, "127.0.0.1", "localhost", 1), Security{CA: ours.File}, ""},
		"token":        {guarded, Security{CA: ours.File, TokenFile: token}, ""},
		"mutual":       {closed, Security{CA: ours.File, Cert: me.Cert, Key: me.Key}, ""},
		"wrong CA":     {one, Security{CA: other.File}, "--ca names the file of its authority"},
		"wrong name":   {one, Security{CA: ours.File, ServerName: "elsewhere"}, "its certificate is for localhost, server, not elsewhere; --server-name"},
		"no token":     {guarded, Security{CA: ours.File}, "--token-file names the file with it"},
		"TLS to plain": {open, Security{CA: ours.File}, "speaks no TLS"},
		"plain to TLS": {one, Security{}, "is not a lugwright service"},
	} {
		list, err := remote(t, c.addr, "", Options{Security: c.security, Timeout: 20 * time.Second}).Kinds(t.Context())
		switch {
		case c.want == "":
			if err != nil || len(list) == 0 {
				t.Errorf("%s: %v", name, err)
			}
		case !errors.Is(err, ErrUnreachable) || !strings.Contains(err.Error(), c.want):
			t.Errorf("%s: %v, want %q", name, err, c.want)
		case MayReturn(err) != (name == "plain to TLS"): // which looks as a replica that dies does
			t.Errorf("%s: asking again may help: %v", name, MayReturn(err))
		}
	}
	// In TLS 1.3 the client may see its refusal only as a closed connection.
	if _, err := remote(t, closed, "", Options{Security: Security{CA: ours.File}}).Kinds(t.Context()); !errors.Is(err, ErrUnreachable) {
		t.Errorf("without a certificate: %v", err)
	}
}
