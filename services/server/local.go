package server

import (
	"context"
	"fmt"
	"log/slog"
	"reflect"

	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"
)

// Local is services called in this process, without a connection: the same handlers behind the same recovery, and the
// same messages, which are handed over rather than written and read. It serves unary calls only.
type Local struct {
	methods  map[string]localMethod // by full name, "/package.Service/Method"
	recovery grpc.UnaryServerInterceptor
}

type localMethod struct {
	service any
	call    grpc.MethodHandler
}

// NewLocal offers services to this process.
func NewLocal(o Options, services ...Service) *Local {
	if o.Log == nil {
		o.Log = slog.Default()
	}
	l := &Local{methods: map[string]localMethod{}, recovery: recovery(o.Log)}
	for _, s := range services {
		s.Register(l)
	}
	return l
}

// RegisterService takes a service's handlers; the generated code calls it.
func (l *Local) RegisterService(d *grpc.ServiceDesc, service any) {
	for _, m := range d.Methods {
		l.methods["/"+d.ServiceName+"/"+m.MethodName] = localMethod{service, m.Handler}
	}
}

// Invoke calls one method. It returns as soon as the context ends, as a connection would; the handler then finishes for
// nobody.
func (l *Local) Invoke(ctx context.Context, method string, args, reply any, _ ...grpc.CallOption) error {
	m, ok := l.methods[method]
	if !ok {
		return status.Error(codes.Unimplemented, fmt.Sprintf("unknown method %s", method))
	}
	if err := ctx.Err(); err != nil {
		return status.FromContextError(err).Err()
	}
	type answer struct {
		message any
		err     error
	}
	answers := make(chan answer, 1)
	go func() {
		message, err := m.call(m.service, ctx, func(q any) error { hand(q, args); return nil }, l.recovery)
		answers <- answer{message, err}
	}()
	select {
	case <-ctx.Done():
		return status.FromContextError(ctx.Err()).Err()
	case a := <-answers:
		if a.err != nil {
			return status.Convert(a.err).Err()
		}
		hand(reply, a.message)
		return nil
	}
}

// NewStream refuses: no service here streams.
func (l *Local) NewStream(context.Context, *grpc.StreamDesc, string, ...grpc.CallOption) (grpc.ClientStream, error) {
	return nil, status.Error(codes.Unimplemented, "streams are not served within one process")
}

// hand gives to the fields of from, a message of the same type; what they hold is shared, for nobody changes a message once it is
// sent. Plain fields are copied: asking the messages by their descriptors would have all descriptors read first.
func hand(to, from any) {
	dst, src := reflect.ValueOf(to).Elem(), reflect.ValueOf(from).Elem()
	for i := range dst.NumField() {
		if f := dst.Field(i); f.CanSet() {
			f.Set(src.Field(i))
		}
	}
}
