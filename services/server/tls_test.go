package server

// Who is let in over TLS and by token, each over a real connection.

import (
	"context"
	"crypto/tls"
	"crypto/x509"
	"os"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	healthpb "google.golang.org/grpc/health/grpc_health_v1"
	"google.golang.org/grpc/metadata"
	"google.golang.org/grpc/status"

	pb "lugwright/proto/gen/lugwright/geometry/v1alpha1"
	"lugwright/services/transport"
	"lugwright/services/transport/transporttest"
)

// plain answers GetServiceInfo with the name of the client's certificate.
type plain struct {
	pb.UnimplementedGeometryServiceServer
}

func (*plain) Register(r grpc.ServiceRegistrar) string {
	pb.RegisterGeometryServiceServer(r, &plain{})
	return name
}

func (*plain) GetServiceInfo(ctx context.Context, _ *pb.GetServiceInfoRequest) (*pb.GetServiceInfoResponse, error) {
	return &pb.GetServiceInfoResponse{ToolVersion: clientOf(ctx)}, nil
}

// ask makes one call.
func ask(t *testing.T, conn grpc.ClientConnInterface) (string, error) {
	t.Helper()
	ctx, cancel := context.WithTimeout(t.Context(), 20*time.Second)
	defer cancel()
	a, err := pb.NewGeometryServiceClient(conn).GetServiceInfo(ctx, &pb.GetServiceInfoRequest{})
	return a.GetToolVersion(), err
}

func secured(t *testing.T, files transport.ServerFiles, now func() time.Time) *running {
	t.Helper()
	noLeaks(t)
	log := &syncBuffer{}
	creds, err := transport.Server(files, now, textLog(log))
	if err != nil {
		t.Fatal(err)
	}
	r := startWith(t, Options{Credentials: creds}, &plain{})
	r.tlsLog = log
	return r
}

const valid = 48 * time.Hour

// Each client beside what it is told.
func TestMutualTLS(t *testing.T) {
	ours, other := transporttest.New(t, "ours"), transporttest.New(t, "other")
	server := ours.Issue(t, "server", valid)
	r := secured(t, transport.ServerFiles{Cert: server.Cert, Key: server.Key, ClientCA: ours.File}, nil)
	me, old, stranger := ours.Issue(t, "me", valid), ours.Issue(t, "old", time.Minute), other.Issue(t, "stranger", valid)
	for name, c := range map[string]struct {
		client transport.Client
		told   string // part of the client's error
		logged string // part of what the server logs
	}{
		"mutual":              {transport.Client{CA: ours.File, Cert: me.Cert, Key: me.Key}, "", ""},
		"by another name":     {transport.Client{CA: ours.File, Cert: me.Cert, Key: me.Key, ServerName: "server"}, "", ""},
		"wrong name":          {transport.Client{CA: ours.File, Cert: me.Cert, Key: me.Key, ServerName: "elsewhere"}, "not elsewhere", ""},
		"no certificate":      {transport.Client{CA: ours.File}, "", "didn't provide a certificate"},
		"stranger":            {transport.Client{CA: ours.File, Cert: stranger.Cert, Key: stranger.Key}, "", "didn't provide a certificate"},
		"expired certificate": {transport.Client{CA: ours.File, Cert: old.Cert, Key: old.Key}, "", "certificate has expired"},
		"wrong CA":            {transport.Client{CA: other.File, Cert: me.Cert, Key: me.Key}, "signed by unknown authority", "bad certificate"},
		"system's CAs":        {transport.Client{Cert: me.Cert, Key: me.Key}, "signed by unknown authority", "bad certificate"},
		"plaintext":           {transport.Client{}, "", "first record does not look like a TLS handshake"},
	} {
		before := len(r.tlsLog.String())
		conn := connect(t, r.addr, c.client)
		got, err := ask(t, conn)
		conn.Close()
		log := r.tlsLog.String()[before:]
		switch {
		case c.told == "" && c.logged == "":
			if err != nil || got != "CN=me" {
				t.Errorf("%s: %q, %v", name, got, err)
			}
		case status.Code(err) != codes.Unavailable || !strings.Contains(err.Error(), c.told) || !eventually(func() bool {
			log = r.tlsLog.String()[before:]
			return strings.Contains(log, c.logged)
		}):
			t.Errorf("%s: %v, want %q; log %q, want %q", name, err, c.told, log, c.logged)
		}
	}
}

// A client that shows the certificate of another authority all the same is refused for it.
func TestForeignCertificate(t *testing.T) {
	ours, other := transporttest.New(t, "ours"), transporttest.New(t, "other")
	server, stranger := ours.Issue(t, "server", valid), other.Issue(t, "stranger", valid)
	r := secured(t, transport.ServerFiles{Cert: server.Cert, Key: server.Key, ClientCA: ours.File}, nil)
	pair, err := tls.LoadX509KeyPair(stranger.Cert, stranger.Key)
	if err != nil {
		t.Fatal(err)
	}
	c, err := tls.Dial("tcp", r.addr, &tls.Config{
		RootCAs: roots(t, ours), NextProtos: []string{"h2"},
		GetClientCertificate: func(*tls.CertificateRequestInfo) (*tls.Certificate, error) { return &pair, nil },
	})
	if err == nil { // in TLS 1.3 the client is done before the server has judged it
		_, err = c.Read(make([]byte, 1))
		c.Close()
	}
	if err == nil || !eventually(func() bool { return strings.Contains(r.tlsLog.String(), "signed by unknown authority") }) {
		t.Errorf("%v, log %s", err, r.tlsLog.String())
	}
}

func roots(t *testing.T, a *transporttest.Authority) *x509.CertPool {
	t.Helper()
	pem, err := os.ReadFile(a.File)
	if err != nil {
		t.Fatal(err)
	}
	pool := x509.NewCertPool()
	pool.AppendCertsFromPEM(pem)
	return pool
}

// eventually waits for what comes about elsewhere.
func eventually(holds func() bool) bool {
	for range 500 {
		if holds() {
			return true
		}
		time.Sleep(10 * time.Millisecond)
	}
	return false
}

// A client that offers no TLS 1.3 is refused, whatever it trusts; and TLS is not spoken where it is not served.
func TestDowngrade(t *testing.T) {
	ours := transporttest.New(t, "ours")
	server := ours.Issue(t, "server", valid)
	r := secured(t, transport.ServerFiles{Cert: server.Cert, Key: server.Key}, nil)
	for version, want := range map[uint16]string{tls.VersionTLS10: "protocol version", tls.VersionTLS11: "protocol version", tls.VersionTLS12: "protocol version", tls.VersionTLS13: ""} {
		c, err := tls.Dial("tcp", r.addr, &tls.Config{RootCAs: roots(t, ours), MinVersion: tls.VersionTLS10, MaxVersion: version, NextProtos: []string{"h2"}})
		if (err == nil) != (want == "") || err != nil && !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v", tls.VersionName(version), err)
		}
		if err == nil {
			c.Close()
		}
	}
	open := start(t, &plain{})
	if _, err := ask(t, connect(t, open.addr, transport.Client{CA: ours.File})); status.Code(err) != codes.Unavailable || !strings.Contains(err.Error(), "first record does not look like a TLS handshake") {
		t.Errorf("TLS to plaintext: %v", err)
	}
}

// A renewed certificate is shown at the next handshake, without a restart and without an end to what is connected; half a renewal
// changes nothing and is logged.
func TestRenewal(t *testing.T) {
	ours, next := transporttest.New(t, "ours"), transporttest.New(t, "next")
	files := ours.Issue(t, "server", valid)
	r := secured(t, transport.ServerFiles{Cert: files.Cert, Key: files.Key}, nil)
	before := connect(t, r.addr, transport.Client{CA: ours.File})
	if _, err := ask(t, before); err != nil {
		t.Fatal(err)
	}
	transporttest.Replace(t, files.Key, []byte("half a renewal"))
	if _, err := ask(t, connect(t, r.addr, transport.Client{CA: ours.File})); err != nil {
		t.Errorf("after half a renewal: %v", err)
	}
	if log := r.tlsLog.String(); strings.Count(log, "not taken") != 1 {
		t.Errorf("log: %s", log)
	}
	next.Issue(t, "server", valid).Copy(t, files)
	if _, err := ask(t, connect(t, r.addr, transport.Client{CA: next.File})); err != nil {
		t.Errorf("after the renewal: %v", err)
	}
	if _, err := ask(t, connect(t, r.addr, transport.Client{CA: ours.File})); err == nil {
		t.Error("the old certificate is still shown")
	}
	if _, err := ask(t, before); err != nil {
		t.Errorf("the old connection: %v", err)
	}
}

// Certificates alone hang on the clock of the day. When it jumps, they are judged by the new time at the next handshake; what is connected, deadlines
// and keepalive go by the monotonic clock and go on.
func TestClockJumps(t *testing.T) {
	ours := transporttest.New(t, "ours")
	server, me := ours.Issue(t, "server", valid), ours.Issue(t, "me", valid)
	var jump atomic.Int64
	now := func() time.Time { return time.Now().Add(time.Duration(jump.Load())) }
	r := secured(t, transport.ServerFiles{Cert: server.Cert, Key: server.Key, ClientCA: ours.File}, now)
	client := transport.Client{CA: ours.File, Cert: me.Cert, Key: me.Key}
	before := connect(t, r.addr, client)
	if _, err := ask(t, before); err != nil {
		t.Fatal(err)
	}
	for name, c := range map[string]struct {
		by     time.Duration
		logged string
	}{"forward": {10 * 365 * 24 * time.Hour, "certificate has expired"}, "back": {-10 * 365 * 24 * time.Hour, "not yet valid"}} {
		jump.Store(int64(c.by))
		if _, err := ask(t, connect(t, r.addr, client)); err == nil || !eventually(func() bool { return strings.Contains(r.tlsLog.String(), c.logged) }) {
			t.Errorf("%s, a new connection: %v, log %s", name, err, r.tlsLog.String())
		}
		if _, err := ask(t, before); err != nil {
			t.Errorf("%s, the old connection: %v", name, err)
		}
		jump.Store(0)
		if _, err := ask(t, connect(t, r.addr, client)); err != nil {
			t.Errorf("%s and set right again: %v", name, err)
		}
	}
	// A client whose clock is wrong refuses the server.
	client.Now = func() time.Time { return time.Now().Add(10 * 365 * 24 * time.Hour) }
	if _, err := ask(t, connect(t, r.addr, client)); err == nil || !strings.Contains(err.Error(), "expired") {
		t.Errorf("a client in the future: %v", err)
	}
}

// Every call needs the token, questions about the interface too; health alone is told without it.
func TestToken(t *testing.T) {
	file := transporttest.Token(t, "0123456789abcdef")
	gate, err := transport.NewGate(file, textLog(&syncBuffer{}))
	if err != nil {
		t.Fatal(err)
	}
	r := startWith(t, Options{Gate: gate}, &plain{})
	if _, err := ask(t, connect(t, r.addr, transport.Client{TokenFile: file})); err != nil {
		t.Errorf("with the token: %v", err)
	}
	for name, client := range map[string]transport.Client{"none": {}, "wrong": {TokenFile: transporttest.Token(t, "fedcba9876543210")}} {
		conn := connect(t, r.addr, client)
		if _, err := ask(t, conn); status.Code(err) != codes.Unauthenticated || !strings.Contains(err.Error(), "token") {
			t.Errorf("%s: %v", name, err)
		}
		stream, err := conn.NewStream(t.Context(), &grpc.StreamDesc{ServerStreams: true, ClientStreams: true}, "/grpc.reflection.v1.ServerReflection/ServerReflectionInfo")
		if err == nil {
			err = stream.RecvMsg(&healthpb.HealthCheckRequest{})
		}
		if status.Code(err) != codes.Unauthenticated {
			t.Errorf("%s, reflection: %v", name, err)
		}
		if a, err := healthpb.NewHealthClient(conn).Check(t.Context(), &healthpb.HealthCheckRequest{}); err != nil || a.Status != healthpb.HealthCheckResponse_SERVING {
			t.Errorf("%s, health: %v, %v", name, a, err)
		}
	}
	if log := r.log.String(); strings.Contains(log, "0123456789abcdef") || strings.Contains(log, "fedcba") || strings.Count(log, "Unauthenticated") != 4 {
		t.Errorf("log:\n%s", log)
	}
}

// The answer names the call as the client did, or as the server named it.
func TestRequestID(t *testing.T) {
	r := start(t, &plain{})
	for given, kept := range map[string]bool{"abc-1": true, "": false, strings.Repeat("x", longestID): true, strings.Repeat("x", longestID+1): false, "two words": false} {
		var header metadata.MD
		ctx := metadata.AppendToOutgoingContext(t.Context(), requestID, given)
		if _, err := pb.NewGeometryServiceClient(r.conn).GetServiceInfo(ctx, &pb.GetServiceInfoRequest{}, grpc.Header(&header)); err != nil {
			t.Fatal(err)
		}
		got := header.Get(requestID)
		if len(got) != 1 || (got[0] == given) != kept || got[0] == "" || !strings.Contains(r.log.String(), "request="+got[0]) {
			t.Errorf("%q is answered as %q", given, got)
		}
	}
}
