package dial

import (
	"context"
	"fmt"
	"io"
	"log/slog"
	"net"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"golang.org/x/net/dns/dnsmessage"
	"google.golang.org/grpc"
	"google.golang.org/grpc/credentials/insecure"
	grpcpeer "google.golang.org/grpc/peer"
	"google.golang.org/grpc/resolver"
	"google.golang.org/grpc/resolver/dns"

	"lugwright/geometry/kinds"
	outside "lugwright/internal/peer"
	geometrypb "lugwright/proto/gen/lugwright/geometry/v1alpha1"
	"lugwright/services/dial/dialtest"
	geometryservice "lugwright/services/geometry"
	"lugwright/services/server"
)

// gRPC looks a name up twice no sooner than after half a minute; here sooner.
func init() { dns.SetMinResolutionInterval(10 * time.Millisecond) }

// served serves on some loopback addresses, all of one port.
func served(t *testing.T, hosts ...string) (port string) {
	t.Helper()
	port = "0"
	for _, host := range hosts {
		l, err := net.Listen("tcp", net.JoinHostPort(host, port))
		if err != nil {
			outside.Unable(t, host+" as an address of this machine", err)
		}
		_, port, _ = net.SplitHostPort(l.Addr().String())
		s := server.New(server.Options{Log: slog.New(slog.NewTextHandler(io.Discard, nil))}, geometryservice.New(kinds.All()))
		done := make(chan error, 1)
		go func() { done <- s.Serve(l) }()
		t.Cleanup(func() { s.Stop(time.Second); <-done })
	}
	return port
}

// A replica joins while the others live and no connection is lost; one that leaves the name gets no more calls. Of a name server nothing is asked but addresses.
func TestReplicasJoinByName(t *testing.T) {
	names := dialtest.NewNames(t, "lugwright.test.")
	port := served(t, "127.0.0.1", "127.0.0.2")
	names.Set("127.0.0.1")
	var count atomic.Int32
	conn, err := grpc.NewClient(fmt.Sprintf("dns://%s/lugwright.test.:%s", names.Addr, port),
		options(grpc.WithTransportCredentials(insecure.NewCredentials()), grpc.WithResolvers(renewing{resolver.Get("dns"), 20 * time.Millisecond, &count}))...)
	if err != nil {
		t.Fatal(err)
	}
	defer conn.Close()
	answerers := func() string {
		seen := map[string]bool{}
		for range 8 {
			ctx, cancel := context.WithTimeout(t.Context(), 20*time.Second)
			var from grpcpeer.Peer
			_, err := geometrypb.NewGeometryServiceClient(conn).GetServiceInfo(ctx, &geometrypb.GetServiceInfoRequest{}, grpc.Peer(&from), grpc.WaitForReady(true))
			cancel()
			if err != nil {
				t.Fatal(err)
			}
			seen[from.Addr.String()] = true
		}
		out := ""
		for _, host := range []string{"127.0.0.1", "127.0.0.2"} {
			if seen[host+":"+port] {
				out += host + " "
			}
		}
		return strings.TrimSpace(out)
	}
	for _, hosts := range []string{"127.0.0.1", "127.0.0.1 127.0.0.2", "127.0.0.2"} {
		names.Set(strings.Fields(hosts)...)
		got := ""
		for range 500 {
			if got = answerers(); got == hosts {
				break
			}
			time.Sleep(10 * time.Millisecond)
		}
		if got != hosts {
			t.Errorf("the name stands for %s, and %s answers", hosts, got)
		}
		if n := len(strings.Fields(hosts)); int(count.Load()) != n {
			t.Errorf("%d replicas are counted, want %d", count.Load(), n)
		}
	}
	if n := names.Asked(dnsmessage.TypeTXT) + names.Asked(dnsmessage.TypeSRV); n > 0 || names.Asked(dnsmessage.TypeA) < 3 {
		t.Errorf("%d other records than addresses are asked for, and addresses %d times", n, names.Asked(dnsmessage.TypeA))
	}
}
