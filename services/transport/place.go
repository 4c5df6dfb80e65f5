package transport

import (
	"net"
	"strings"
)

// Loopback says whether a host is this machine alone: 127.0.0.1 and its kin, ::1, localhost.
func Loopback(host string) bool {
	ip := net.ParseIP(host)
	return host == "localhost" || ip != nil && ip.IsLoopback()
}

// LoopbackAddress says whether "host:port" is on this machine alone.
func LoopbackAddress(addr string) bool {
	host, _, err := net.SplitHostPort(addr)
	return err == nil && Loopback(host)
}

// stays says whether all of an address lies on this machine: "host:port", several with commas between, "scheme:///host:port", or a socket
// of the file system. What cannot be read does not stay.
func stays(addr string) bool {
	if strings.HasPrefix(addr, "unix:") || strings.HasPrefix(addr, "unix-abstract:") {
		return true
	}
	if at := strings.Index(addr, "://"); at >= 0 {
		addr = addr[strings.LastIndex(addr, "/")+1:]
	}
	for one := range strings.SplitSeq(addr, ",") {
		host, _, err := net.SplitHostPort(strings.TrimSpace(one))
		if err != nil || !Loopback(host) {
			return false
		}
	}
	return true
}
