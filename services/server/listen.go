package server

import (
	"fmt"
	"net"

	"lugwright/services/transport"
)

// Listen opens a TCP listener on a loopback address such as "127.0.0.1:7401" or "localhost:0". Other addresses are refused:
// the services speak plaintext, which must not leave the machine.
func Listen(addr string) (net.Listener, error) {
	host, _, err := net.SplitHostPort(addr)
	if err != nil {
		return nil, fmt.Errorf("listen address %q: %v; write host:port such as 127.0.0.1:7401", addr, err)
	}
	if !transport.Loopback(host) {
		return nil, fmt.Errorf("listen address %q is not on this machine alone; the service speaks plaintext and listens on 127.0.0.1, ::1 or localhost only, put a proxy with TLS before it to serve a network", addr)
	}
	l, err := net.Listen("tcp", addr)
	if err != nil {
		return nil, fmt.Errorf("listen address %q: %w", addr, err)
	}
	return l, nil
}
