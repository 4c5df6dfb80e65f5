package server

import (
	"fmt"
	"net"
	"sync"

	"lugwright/services/transport"
)

// Listen opens a TCP listener on a loopback address such as "127.0.0.1:7401" or "localhost:0". Other addresses are refused:
// plaintext must not leave the machine.
func Listen(addr string) (net.Listener, error) {
	host, _, err := net.SplitHostPort(addr)
	if err == nil && !transport.Loopback(host) {
		return nil, fmt.Errorf("listen address %q is not on this machine alone, and plaintext must not leave it; give --tls-cert and --tls-key, or listen on 127.0.0.1, ::1 or localhost", addr)
	}
	return ListenAnywhere(addr)
}

// ListenAnywhere opens a TCP listener on any address, for a server that speaks TLS.
func ListenAnywhere(addr string) (net.Listener, error) {
	if _, _, err := net.SplitHostPort(addr); err != nil {
		return nil, fmt.Errorf("listen address %q: %v; write host:port such as 127.0.0.1:7401", addr, err)
	}
	l, err := net.Listen("tcp", addr)
	if err != nil {
		return nil, fmt.Errorf("listen address %q: %w", addr, err)
	}
	return l, nil
}

// few is a listener that closes at once what comes beyond so many connections.
type few struct {
	net.Listener
	places chan struct{}
}

func (f *few) Accept() (net.Conn, error) {
	for {
		c, err := f.Listener.Accept()
		if err != nil {
			return nil, err
		}
		select {
		case f.places <- struct{}{}:
			return &placed{Conn: c, leave: sync.OnceFunc(func() { <-f.places })}, nil
		default:
			c.Close()
		}
	}
}

// placed is a connection that gives its place back when it is closed.
type placed struct {
	net.Conn
	leave func()
}

func (p *placed) Close() error {
	defer p.leave()
	return p.Conn.Close()
}
