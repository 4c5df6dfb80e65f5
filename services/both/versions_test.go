package both_test

// Client and server of neighbouring minor versions: the released interface of proto/released beside the present one, and a next one made up from it, with a field
// more in every message.

import (
	"context"
	"fmt"
	"io"
	"log/slog"
	"net"
	"os"
	"reflect"
	"strings"
	"testing"
	"time"

	"google.golang.org/grpc"
	"google.golang.org/grpc/credentials/insecure"
	"google.golang.org/grpc/health"
	healthpb "google.golang.org/grpc/health/grpc_health_v1"
	"google.golang.org/grpc/metadata"
	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/reflect/protodesc"
	"google.golang.org/protobuf/reflect/protoreflect"
	"google.golang.org/protobuf/reflect/protoregistry"
	"google.golang.org/protobuf/types/descriptorpb"
	"google.golang.org/protobuf/types/dynamicpb"

	"lugwright/client/job"
	"lugwright/client/run"
	"lugwright/part"
	strengthpb "lugwright/proto/gen/lugwright/strength/v1alpha1"
	"lugwright/services/both"
	"lugwright/services/dial"
	"lugwright/services/server"
	"lugwright/services/wire"
)

// released is the interface of the last minor version.
const released = "1.0"

// version is an interface of another time than the present one.
type version struct {
	name  string
	files *protoregistry.Files
}

const added = "added_later" // the field that the next version has more

func versions(t *testing.T) []version {
	t.Helper()
	src, err := os.ReadFile("../../proto/released/" + released + ".binpb")
	if err != nil {
		t.Fatal(err)
	}
	var set descriptorpb.FileDescriptorSet
	if err := proto.Unmarshal(src, &set); err != nil {
		t.Fatal(err)
	}
	out := []version{{released, filesOf(t, &set)}}
	for _, f := range set.File {
		for _, m := range f.MessageType {
			m.Field = append(m.Field, &descriptorpb.FieldDescriptorProto{
				Name: proto.String(added), Number: proto.Int32(15000), Label: descriptorpb.FieldDescriptorProto_LABEL_OPTIONAL.Enum(),
				Type: descriptorpb.FieldDescriptorProto_TYPE_STRING.Enum(), JsonName: proto.String("addedLater"),
			})
		}
	}
	return append(out, version{"1.1", filesOf(t, &set)})
}

func filesOf(t *testing.T, set *descriptorpb.FileDescriptorSet) *protoregistry.Files {
	t.Helper()
	files, err := protodesc.NewFiles(set)
	if err != nil {
		t.Fatal(err)
	}
	return files
}

// method is one of the present interface as this version has it.
func (v version) method(t *testing.T, m protoreflect.MethodDescriptor) protoreflect.MethodDescriptor {
	t.Helper()
	d, err := v.files.FindDescriptorByName(m.FullName())
	if err != nil {
		t.Fatalf("interface %s: %v", v.name, err)
	}
	return d.(protoreflect.MethodDescriptor)
}

// as is a message seen by another version: what that does not know is dropped.
func as(m proto.Message, to proto.Message) proto.Message {
	data, err := proto.Marshal(m)
	if err == nil {
		err = proto.UnmarshalOptions{DiscardUnknown: true}.Unmarshal(data, to)
	}
	if err != nil {
		panic(err)
	}
	return to
}

// grown sets the field that the next version has more, in every message there is.
func grown(m protoreflect.Message) {
	if f := m.Descriptor().Fields().ByName(added); f != nil {
		m.Set(f, protoreflect.ValueOfString("new"))
	}
	m.Range(func(f protoreflect.FieldDescriptor, v protoreflect.Value) bool {
		switch {
		case f.Message() == nil:
		case f.IsList():
			for i := range v.List().Len() {
				grown(v.List().Get(i).Message())
			}
		default:
			grown(v.Message())
		}
		return true
	})
}

// serving serves on a loopback port until the test ends.
func serving(t *testing.T, s interface{ Serve(net.Listener) error }, stop func()) string {
	t.Helper()
	l, err := server.Listen("127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	done := make(chan error, 1)
	go func() { done <- s.Serve(l) }()
	t.Cleanup(func() {
		stop()
		if err := <-done; err != nil {
			t.Error(err)
		}
	})
	return l.Addr().String()
}

func present(t *testing.T) string {
	t.Helper()
	s := server.New(server.Options{Log: slog.New(slog.NewTextHandler(io.Discard, nil))}, both.Services()...)
	return serving(t, s, func() { s.Stop(time.Second) })
}

func connected(t *testing.T, addr string) *grpc.ClientConn {
	t.Helper()
	conn, err := grpc.NewClient("passthrough:///"+addr, grpc.WithTransportCredentials(insecure.NewCredentials()))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { conn.Close() })
	return conn
}

// A client of another minor version gets from the present server what a client of the present one gets.
func TestClientOfAnotherVersion(t *testing.T) {
	const each = 3
	conn, local := connected(t, present(t)), services()
	for _, v := range versions(t) {
		ctx := metadata.AppendToOutgoingContext(t.Context(), wire.APIVersionKey, v.name)
		for _, m := range methods() {
			theirs := v.method(t, m)
			for i, q := range valid(t, m) {
				if i == each {
					break
				}
				ours, want, got := newMessage(m.Output()), dynamicpb.NewMessage(theirs.Output()), dynamicpb.NewMessage(theirs.Output())
				if err := local.Invoke(t.Context(), fullMethod(m), q, ours); err != nil {
					continue // refused as itself: see other tests
				}
				err := conn.Invoke(ctx, fullMethod(m), as(q, dynamicpb.NewMessage(theirs.Input())), got)
				if err != nil || !proto.Equal(got, as(ours, want)) {
					t.Errorf("interface %s, %s, request %d: %v, not the same answer", v.name, m.Name(), i, err)
				}
			}
		}
	}
}

// A newer client that asks for what the present server does not know is refused with the place, and not answered as if it had not asked.
func TestNewerClientAsksForMore(t *testing.T) {
	conn, v := connected(t, present(t)), versions(t)[1]
	for _, m := range methods() {
		theirs := v.method(t, m)
		q, answer := as(valid(t, m)[0], dynamicpb.NewMessage(theirs.Input())), dynamicpb.NewMessage(theirs.Output())
		grown(q.ProtoReflect())
		ctx := metadata.AppendToOutgoingContext(t.Context(), wire.APIVersionKey, v.name)
		err := wire.FromStatus(conn.Invoke(ctx, fullMethod(m), q, answer))
		fields := part.Fields(err)
		if len(fields) == 0 || !strings.HasPrefix(fields[0].Found, "field number 15000, which interface version 1.0 does not have") {
			t.Errorf("%s: %v", m.Name(), err)
		}
		for _, f := range fields {
			if f.Field != "" && !resolves(m.Input(), f.Field) {
				t.Errorf("%s: %q is no field", m.Name(), f.Field)
			}
		}
	}
}

// otherServer answers as the present services do, by another version of the interface.
func otherServer(t *testing.T, v version) string {
	t.Helper()
	s, local := grpc.NewServer(), services()
	for _, name := range []protoreflect.FullName{"lugwright.geometry.v1alpha1.GeometryService", "lugwright.strength.v1alpha1.StrengthService"} {
		d := &grpc.ServiceDesc{ServiceName: string(name), HandlerType: (*any)(nil)}
		for _, m := range methods() {
			if m.Parent().FullName() != name {
				continue
			}
			theirs := v.method(t, m)
			d.Methods = append(d.Methods, grpc.MethodDesc{MethodName: string(m.Name()), Handler: func(_ any, ctx context.Context, read func(any) error, _ grpc.UnaryServerInterceptor) (any, error) {
				q, answer, out := dynamicpb.NewMessage(theirs.Input()), newMessage(m.Output()), dynamicpb.NewMessage(theirs.Output())
				if err := read(q); err != nil {
					return nil, err
				}
				if err := grpc.SetHeader(ctx, metadata.Pairs(wire.APIVersionKey, v.name, wire.ToolVersionKey, "other")); err != nil {
					return nil, err
				}
				if err := local.Invoke(ctx, fullMethod(m), as(q, newMessage(m.Input())), answer); err != nil {
					return nil, err
				}
				if f := out.Descriptor().Fields().ByName("api_version"); f != nil {
					as(answer, out)
					out.Set(f, protoreflect.ValueOfString(v.name))
					return out, nil
				}
				as(answer, out)
				grown(out)
				return out, nil
			}})
		}
		s.RegisterService(d, nil)
	}
	healthpb.RegisterHealthServer(s, health.NewServer())
	return serving(t, s, s.Stop)
}

// The present client gets from a server of another minor version what it gets in its own process: demo jobs with brackets, a vehicle, limit states and files.
func TestServerOfAnotherVersion(t *testing.T) {
	near, err := dial.InProcess()
	if err != nil {
		t.Fatal(err)
	}
	want := everything(t, near)
	for _, v := range versions(t) {
		addr := otherServer(t, v)
		far, err := dial.Remote(addr, addr, dial.Options{})
		if err != nil {
			t.Fatal(err)
		}
		for what, got := range everything(t, far) {
			if !reflect.DeepEqual(got, want[what]) {
				t.Errorf("interface %s: %s is not the same", v.name, what)
			}
		}
		far.Close()
	}
}

// everything is what a client gets of all that it can ask.
func everything(t *testing.T, c *dial.Client) map[string]any {
	t.Helper()
	out := map[string]any{}
	put := func(what string, v any, err error) {
		t.Helper()
		if err != nil {
			t.Fatalf("%s: %v", what, err)
		}
		out[what] = v
	}
	ctx := t.Context()
	known, err := run.Known(ctx, c)
	put("what a job may say", known, err)
	bases, err := c.Bases(ctx)
	put("bases", bases, err)
	for _, name := range []string{"bodyfront", "watertrays"} {
		src, err := os.ReadFile("../../testdata/jobs/" + name + ".yaml")
		if err != nil {
			t.Fatal(err)
		}
		j, err := job.Read(name, src, known)
		if err != nil {
			t.Fatal(err)
		}
		r, err := run.Job(ctx, c, j, run.Options{Trace: true})
		if err != nil {
			t.Fatal(err)
		}
		for i := range r.Brackets {
			b := &r.Brackets[i]
			out[fmt.Sprintf("report %d of %s", i, name)], out[fmt.Sprintf("bracket %d of %s", i, name)] = b.Report, b.Part
			files, err := c.Export(ctx, b.Part, wire.Formats(), wire.CutStyle{})
			put(fmt.Sprintf("files %d of %s", i, name), files, err)
		}
		out["vehicle of "+name] = r.Vehicle
	}
	q := valid(t, strengthpb.File_lugwright_strength_v1alpha1_strength_service_proto.Services().Get(0).Methods().ByName("EvaluateLimit"))[0].(*strengthpb.EvaluateLimitRequest)
	decoded, err := wire.DecodeEvaluateRequest(q)
	if err != nil {
		t.Fatal(err)
	}
	e, err := c.Evaluate(ctx, *decoded)
	put("limit state", e, err)
	return out
}
