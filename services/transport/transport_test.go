package transport

import (
	"log/slog"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/metadata"
	"google.golang.org/grpc/status"

	"lugwright/services/transport/transporttest"
)

func TestStays(t *testing.T) {
	for addr, want := range map[string]bool{
		"127.0.0.1:7401": true, "localhost:1": true, "[::1]:7401": true, "127.9.9.9:1, localhost:2": true,
		"unix:/run/x": true, "unix:///run/x": true, "dns:///localhost:1": true, "passthrough:///127.0.0.1:1": true,
		"shop:7401": false, "127.0.0.1:1,10.0.0.1:1": false, "dns:///shop:1": false, ":7401": false, "": false,
		"0.0.0.0:1": false, "localhost.evil:1": false, "dns://127.0.0.1:53/shop:1": false, "[::]:1": false, "127.0.0.1": false,
	} {
		if got := stays(addr); got != want {
			t.Errorf("%q stays: %t", addr, got)
		}
	}
}

const right = "0123456789abcdef"

func TestToken(t *testing.T) {
	for text, found := range map[string]string{
		right: "", "  " + right + "\r\n": "", strings.Repeat("x", mostToken): "",
		"": "no token in it", "short": "a token of 5 letters", strings.Repeat("x", mostToken+1): "a token of 4097 letters",
		right + " " + right: "more than one word", right + "\n" + right: "more than one word", right + "é": "not ASCII",
	} {
		file := transporttest.Token(t, text)
		_, err := readToken(file)
		if (err == nil) != (found == "") {
			t.Errorf("%.20q: %v", text, err)
		}
		if err == nil {
			continue
		}
		if text != "" && strings.Contains(err.Error(), text) {
			t.Errorf("the error shows the token: %v", err)
		}
		if words := err.Error(); !strings.HasPrefix(words, "--token-file "+file+": ") || !strings.Contains(words, found) || !strings.Contains(words, "one line of 16 to 4096 letters") {
			t.Errorf("%.20q: %v", text, err)
		}
	}
	if _, err := NewGate(filepath.Join(t.TempDir(), "none"), slog.Default()); err == nil || !strings.HasPrefix(err.Error(), "--token-file: ") {
		t.Errorf("a gate without a file: %v", err)
	}
}

func TestGate(t *testing.T) {
	file := transporttest.Token(t, right)
	var log strings.Builder
	g, err := NewGate(file, slog.New(slog.NewTextHandler(&log, nil)))
	if err != nil {
		t.Fatal(err)
	}
	admits := func(values ...string) bool {
		err := g.Admit(metadata.MD{authorization: values})
		if err != nil && status.Code(err) != codes.Unauthenticated {
			t.Errorf("code %s", status.Code(err))
		}
		return err == nil
	}
	if !admits("Bearer " + right) {
		t.Error("the right token is refused")
	}
	for _, wrong := range [][]string{nil, {""}, {right}, {"Bearer "}, {"bearer " + right}, {"Bearer " + right + "0"}, {"Bearer " + right[1:]}, {"Bearer " + right, "Bearer " + right}} {
		if admits(wrong...) {
			t.Errorf("%q is let in", wrong)
		}
	}
	// A changed file counts at once; a broken one leaves the last in use, and the log does not show it.
	const next = "fedcba9876543210"
	transporttest.Replace(t, file, []byte(next))
	if admits("Bearer "+right) || !admits("Bearer "+next) {
		t.Error("the new token is not taken")
	}
	transporttest.Replace(t, file, []byte("broken"))
	if !admits("Bearer " + next) {
		t.Error("the last good token is not in use")
	}
	if err := os.Remove(file); err != nil || !admits("Bearer "+next) {
		t.Error("without the file the last good token is not in use", err)
	}
	if n := strings.Count(log.String(), "not taken"); n != 2 || strings.Contains(log.String(), "broken") {
		t.Errorf("%d lines about broken files\n%s", n, &log)
	}
}

func TestServerRefuses(t *testing.T) {
	a := transporttest.New(t, "authority")
	good, old, other := a.Issue(t, "server", 48*time.Hour), a.Issue(t, "old", time.Minute), a.Issue(t, "other", 48*time.Hour)
	empty := transporttest.Token(t, "nothing")
	later := func() time.Time { return time.Now().Add(72 * time.Hour) }
	before := func() time.Time { return time.Now().Add(-72 * time.Hour) }
	for name, c := range map[string]struct {
		files ServerFiles
		now   func() time.Time
		want  string
	}{
		"no key":        {ServerFiles{Cert: good.Cert}, nil, "give both"},
		"no file":       {ServerFiles{Cert: good.Cert + "x", Key: good.Key}, nil, "no such file"},
		"wrong key":     {ServerFiles{Cert: good.Cert, Key: other.Key}, nil, "private key does not match"},
		"expired":       {ServerFiles{Cert: old.Cert, Key: old.Key}, nil, "expired on "},
		"expired later": {ServerFiles{Cert: good.Cert, Key: good.Key}, later, "expired on "},
		"not yet":       {ServerFiles{Cert: good.Cert, Key: good.Key}, before, "valid from "},
		"no authority":  {ServerFiles{Cert: good.Cert, Key: good.Key, ClientCA: empty}, nil, "no certificate of an authority"},
		"good":          {ServerFiles{Cert: good.Cert, Key: good.Key, ClientCA: a.File}, nil, ""},
	} {
		_, err := Server(c.files, c.now, slog.Default())
		if (err == nil) != (c.want == "") || err != nil && !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", name, err, c.want)
		}
	}
}

func TestClientRefuses(t *testing.T) {
	a := transporttest.New(t, "authority")
	pair, empty := a.Issue(t, "client", 48*time.Hour), transporttest.Token(t, "nothing")
	for name, c := range map[string]struct {
		client Client
		want   string
	}{
		"no key":       {Client{Cert: pair.Cert}, "give both"},
		"no authority": {Client{CA: empty}, "no certificate of an authority"},
		"no token":     {Client{TokenFile: empty}, "a token of 7 letters"},
		"no file":      {Client{CA: "none.pem"}, "no such file"},
	} {
		if _, err := c.client.Options("127.0.0.1:1"); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%s: %v, want %q", name, err, c.want)
		}
	}
}

// A token goes over TLS or stays on this machine: gRPC refuses such credentials without transport security.
func TestTokenLeavesOnlyOverTLS(t *testing.T) {
	c := Client{TokenFile: transporttest.Token(t, right)}
	for addr, secure := range map[string]bool{"127.0.0.1:1": false, "shop:1": true} {
		if got := c.tls() || !stays(addr); got != secure {
			t.Errorf("%s: TLS %t", addr, got)
		}
		if _, err := c.Options(addr); err != nil {
			t.Error(err)
		}
	}
	if !(bearer{right, true}).RequireTransportSecurity() {
		t.Error("a token for TLS is given without it")
	}
}
