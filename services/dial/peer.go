package dial

import (
	"cmp"
	"context"
	"errors"
	"fmt"
	"regexp"
	"strings"
	"sync"
	"sync/atomic"
	"time"

	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"

	"lugwright/services/wire"
)

// InThisProcess is the Addr of an UnreachableError about a service without an address.
const InThisProcess = "in this process"

// peer is one service as this client sees it.
type peer struct {
	service, addr string
	timeout       time.Duration
	local         bool // in this process
	info          func(context.Context, ...grpc.CallOption) (versioned, error)
	conn          grpc.ClientConnInterface
	replicas      *replicas     // nil where there is no list of them
	count         *atomic.Int32 // of replicas, as far as they are known
	heard         atomic.Int64  // when some replica answered last, in Unix nanoseconds

	mu    sync.Mutex
	known bool // its version was asked for and fits
}

// versioned is either service's answer to GetServiceInfo.
type versioned interface {
	GetApiVersion() string
	GetToolVersion() string
}

func newPeer(at place, timeout time.Duration, conn grpc.ClientConnInterface, info func(context.Context, ...grpc.CallOption) (versioned, error)) *peer {
	// A service of this process is of this build: there is no version to ask for.
	return &peer{service: at.name, addr: cmp.Or(at.addr, InThisProcess), timeout: timeout, local: at.addr == "", info: info, conn: conn, known: at.addr == ""}
}

// mostBusy is how often a call is made of a service that says it is busy, and answers no other call of this client in the meantime.
const mostBusy = 4

// call makes one call, after the service's version is known to fit. A busy service is asked again, for its version too: often it is busy with this client's other messages.
func call[Q, R any](ctx context.Context, p *peer, rpc func(context.Context, Q, ...grpc.CallOption) (R, error), q Q) (R, error) {
	heard := p.heard.Load()
	for tries := 1; ; tries++ {
		var r R
		err := p.ready(ctx)
		if err == nil {
			r, err = attempt(ctx, p, rpc, q)
		}
		if last := p.heard.Load(); last != heard {
			heard, tries = last, 1
		}
		if failure(err) != wire.Crowded || tries >= mostBusy {
			return r, err
		}
		select {
		case <-ctx.Done(): // which the next attempt says
		case <-time.After(pause << tries):
		}
	}
}

// attempt makes one call with its deadline.
func attempt[Q, R any](ctx context.Context, p *peer, rpc func(context.Context, Q, ...grpc.CallOption) (R, error), q Q) (R, error) {
	var none R
	limited, cancel := context.WithTimeout(ctx, p.timeout)
	defer cancel()
	var from replica
	begun := time.Now()
	r, err := rpc(limited, q, from.learn(p)...)
	if status.Code(err) == codes.Unavailable && failure(wire.FromStatus(err)) == wire.Broken {
		// The service has answered before. gRPC's own retries end once an answer has begun, so a replica that dies within one is
		// covered here: the same question again is safe, and another replica may be there.
		r, err = rpc(limited, q, from.learn(p)...)
	}
	if err != nil {
		err = p.explain(ctx, limited, err)
		if failure(err) == wire.Late {
			p.replicas.late(from.at.Addr, begun)
		}
		return none, from.named(p, err)
	}
	p.answered(&from)
	if err := from.fits(p); err != nil {
		return none, from.named(p, err)
	}
	return r, nil
}

// ready asks for the service's version once; a failure is asked again at the next call.
func (p *peer) ready(ctx context.Context) error {
	p.mu.Lock()
	defer p.mu.Unlock()
	if p.known {
		return nil
	}
	limited, cancel := context.WithTimeout(ctx, p.timeout)
	defer cancel()
	var from replica
	v, err := p.info(limited, from.learn(p)...)
	if err != nil {
		return from.named(p, p.explain(ctx, limited, err))
	}
	if !wire.SameMajor(v.GetApiVersion()) {
		return from.named(p, p.otherVersion(v.GetApiVersion(), v.GetToolVersion()))
	}
	p.known = true
	p.answered(&from)
	return nil
}

// answered notes that a replica did.
func (p *peer) answered(from *replica) {
	p.heard.Store(time.Now().UnixNano())
	p.replicas.answered(from.at.Addr)
}

func (p *peer) otherVersion(api, tool string) error {
	return p.failed(wire.Foreign, fmt.Sprintf("speaks interface version %q (tool %s), this client speaks %s (tool %s); run both from one release",
		api, tool, wire.APIVersion, wire.ToolVersion()))
}

// explain turns a call's error into the domain's, with the service's name and address where it did not answer.
func (p *peer) explain(ctx, limited context.Context, err error) error {
	if ctx.Err() == context.Canceled {
		return context.Canceled
	}
	ownLimit := status.Code(err) == codes.DeadlineExceeded && sooner(limited, ctx)
	err = wire.FromStatus(err)
	var gone *UnreachableError
	switch {
	case !errors.As(err, &gone):
		return err
	case ownLimit:
		return p.failed(wire.Late, fmt.Sprintf("did not answer within %s", p.timeout))
	}
	words, refused := plain(gone.Why)
	if refused {
		return p.failed(wire.Foreign, words)
	}
	return p.failed(gone.Failure, words)
}

// sooner says whether a context ends before another by its deadline.
func sooner(a, b context.Context) bool {
	first, _ := a.Deadline()
	second, ok := b.Deadline()
	return !ok || first.Before(second)
}

func (p *peer) failed(f wire.Failure, why string) error {
	gone := &UnreachableError{Service: p.service, Addr: p.addr, Why: why, Failure: f}
	if p.local {
		return &localError{gone}
	}
	return gone
}

// localError is a service of this process that gave no answer: it has no address to name.
type localError struct{ gone *UnreachableError }

func (e *localError) Error() string {
	return "the " + e.gone.Service + " service " + e.gone.Addr + " " + e.gone.Why
}
func (e *localError) Unwrap() error { return e.gone }

// attempts is what gRPC puts before the error of the last of several attempts.
var attempts = sync.OnceValue(func() *regexp.Regexp {
	return regexp.MustCompile(`^max retries exhausted: failed after \d+ attempts: rpc error: code = \w+ desc = `)
})

// unhealthy is what gRPC says of a connection whose service says of itself that it does not serve.
const unhealthy = "health check failed. status=NOT_SERVING"

// otherProtocol are pieces of the errors that something gives which speaks another protocol than gRPC, such as HTTP/1 or SSH.
var otherProtocol = []string{"http2: frame too large", "error reading server preface", "malformed"}

// handshakes are pieces of the errors of a connection that one of its ends refused to be secured by what the other has, beside what to say of them.
var handshakes = []struct{ piece, words string }{
	{"first record does not look like a TLS handshake", "what listens there speaks no TLS, or another protocol"},
	{"certificate signed by unknown authority", "its certificate is from an authority that is not known here; --ca names the file of its authority"},
	{"certificate has expired or is not yet valid", "its certificate has expired, or a clock is wrong"},
	{"tls: certificate required", "it lets in only clients with a certificate; --cert and --key name yours"},
	{"tls: unknown certificate authority", "the certificate shown to it is from an authority that it does not know"},
	{"tls: expired certificate", "the certificate shown to it has expired, or a clock is wrong"},
	{"tls: protocol version not supported", "it speaks another version of TLS; 1.3 is wanted"},
	{"tls: bad certificate", "it refuses the certificate shown to it; its log says why"},
}

// ended is what a client often sees where its certificate is missing or refused, and where a replica stops.
const ended = "write: broken pipe"

// plain takes gRPC's layers off the reason why a call failed, and says whether it is a handshake that was refused, as it will be again.
func plain(why string) (words string, refused bool) {
	for _, h := range handshakes {
		if strings.Contains(why, h.piece) {
			return h.words, true
		}
	}
	if _, names, ok := strings.Cut(why, "x509: certificate is valid for "); ok {
		return "its certificate is for " + strings.TrimRight(names, `"`) + "; --server-name gives the name in it", true
	}
	if _, fault, ok := strings.Cut(why, "tls: failed to verify certificate: x509: "); ok {
		return "its certificate is not taken: " + strings.TrimRight(fault, `"`), true
	}
	return plainBreak(why), false
}

// plainBreak takes gRPC's layers off the reason why a connection broke, or was not made.
func plainBreak(why string) string {
	if strings.Contains(why, ended) {
		return "it ended the connection: it stopped, or lets in only clients with a certificate that it trusts (--cert and --key); its log says why"
	}
	if strings.Contains(why, unhealthy) {
		return "takes no calls now: it starts, or is about to stop"
	}
	if strings.Contains(why, "error reading server preface") && (strings.Contains(why, "use of closed network connection") || strings.Contains(why, "i/o timeout")) {
		return "what listens there takes connections and says nothing: it hangs, or is not a lugwright service, or one that speaks TLS: --ca names the file of its authority"
	}
	for _, piece := range otherProtocol {
		if strings.Contains(why, piece) {
			return "what listens there is not a lugwright service, or one that speaks TLS: --ca names the file of its authority"
		}
	}
	return attempts().ReplaceAllString(why, "")
}

// broken is an answer that this client cannot read.
func (p *peer) broken(err error) error {
	return p.failed(wire.Foreign, "gave an answer that cannot be read: "+err.Error())
}
