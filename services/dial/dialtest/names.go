// Package dialtest is a small name server for tests of clients that look their services up. It is never linked into a program.
package dialtest

import (
	"net"
	"net/netip"
	"sync"
	"testing"

	"golang.org/x/net/dns/dnsmessage"
)

// Names answers for one name, over UDP. Other names are not known to it.
type Names struct {
	Addr string // "host:port" of the server

	name  dnsmessage.Name
	conn  net.PacketConn
	mu    sync.Mutex
	addrs []netip.Addr
	asked map[dnsmessage.Type]int
}

// NewNames serves until the test ends; the name ends with a dot.
func NewNames(t testing.TB, name string) *Names {
	t.Helper()
	conn, err := net.ListenPacket("udp", "127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	n := &Names{Addr: conn.LocalAddr().String(), name: dnsmessage.MustNewName(name), conn: conn, asked: map[dnsmessage.Type]int{}}
	ended := make(chan struct{})
	go func() { defer close(ended); n.serve() }()
	t.Cleanup(func() { conn.Close(); <-ended })
	return n
}

// Set says which addresses the name stands for from now on.
func (n *Names) Set(addrs ...string) {
	n.mu.Lock()
	defer n.mu.Unlock()
	n.addrs = nil
	for _, a := range addrs {
		n.addrs = append(n.addrs, netip.MustParseAddr(a))
	}
}

// Asked is how often records of a type were asked for, of whatever name.
func (n *Names) Asked(of dnsmessage.Type) int {
	n.mu.Lock()
	defer n.mu.Unlock()
	return n.asked[of]
}

func (n *Names) serve() {
	buffer := make([]byte, 512)
	for {
		size, from, err := n.conn.ReadFrom(buffer)
		if err != nil {
			return
		}
		var q dnsmessage.Message
		if q.Unpack(buffer[:size]) != nil || len(q.Questions) != 1 {
			continue
		}
		if a, err := n.answer(&q); err == nil {
			_, _ = n.conn.WriteTo(a, from) // who does not get it asks again
		}
	}
}

func (n *Names) answer(q *dnsmessage.Message) ([]byte, error) {
	n.mu.Lock()
	defer n.mu.Unlock()
	asked := q.Questions[0]
	n.asked[asked.Type]++
	a := dnsmessage.Message{Header: dnsmessage.Header{ID: q.ID, Response: true, Authoritative: true}, Questions: q.Questions}
	switch {
	case asked.Name != n.name:
		a.RCode = dnsmessage.RCodeNameError
	case asked.Type == dnsmessage.TypeA:
		for _, addr := range n.addrs {
			a.Answers = append(a.Answers, dnsmessage.Resource{
				Header: dnsmessage.ResourceHeader{Name: n.name, Type: dnsmessage.TypeA, Class: dnsmessage.ClassINET},
				Body:   &dnsmessage.AResource{A: addr.As4()},
			})
		}
	}
	return a.Pack()
}
