package both_test

// Every call from its bytes to its answer, with the demo jobs' requests as seeds: no panic, no number in an answer that is none, no refusal that names nothing,
// and no more than a second of work.

import (
	"context"
	"errors"
	"math"
	"runtime"
	"slices"
	"testing"
	"time"

	"google.golang.org/grpc"
	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/reflect/protoreflect"

	"lugwright/services/both"
)

func FuzzBuildBracket(f *testing.F)   { fuzzCall(f, "BuildBracket") }
func FuzzBuildBrackets(f *testing.F)  { fuzzCall(f, "BuildBrackets") }
func FuzzExportBracket(f *testing.F)  { fuzzCall(f, "ExportBracket") }
func FuzzExportSheet(f *testing.F)    { fuzzCall(f, "ExportSheet") }
func FuzzCheckBracket(f *testing.F)   { fuzzCall(f, "CheckBracket") }
func FuzzCheckBrackets(f *testing.F)  { fuzzCall(f, "CheckBrackets") }
func FuzzEvaluateLimit(f *testing.F)  { fuzzCall(f, "EvaluateLimit") }
func FuzzReckonVehicle(f *testing.F)  { fuzzCall(f, "ReckonVehicle") }
func FuzzListBases(f *testing.F)      { fuzzCall(f, "ListBases") }
func FuzzListMaterials(f *testing.F)  { fuzzCall(f, "ListMaterials") }
func FuzzListKinds(f *testing.F)      { fuzzCall(f, "ListKinds") }
func FuzzGetServiceInfo(f *testing.F) { fuzzCall(f, "GetServiceInfo") }

// direct calls handlers on the caller's own thread, whose work can be counted.
type direct map[string]func(ctx context.Context, q any) (any, error)

func (d direct) RegisterService(desc *grpc.ServiceDesc, service any) {
	for _, m := range desc.Methods {
		d["/"+desc.ServiceName+"/"+m.MethodName] = func(ctx context.Context, q any) (any, error) {
			return m.Handler(service, ctx, func(to any) error {
				proto.Merge(to.(proto.Message), q.(proto.Message))
				return nil
			}, nil)
		}
	}
}

func (d direct) NewStream(context.Context, *grpc.StreamDesc, string, ...grpc.CallOption) (grpc.ClientStream, error) {
	return nil, errors.ErrUnsupported
}

func (d direct) Invoke(ctx context.Context, method string, q, answer any, _ ...grpc.CallOption) error {
	out, err := d[method](ctx, q)
	if err == nil {
		proto.Merge(answer.(proto.Message), out.(proto.Message))
	}
	return err
}

// most is how much work a call may be. The time of the thread counts, not of the clock, so that a busy machine makes no difference.
const most = time.Second

const maxSeeds = 40

func fuzzCall(f *testing.F, name protoreflect.Name) {
	var m protoreflect.MethodDescriptor
	for _, d := range methods() {
		if d.Name() == name {
			m = d
		}
	}
	for i, q := range seeds(f, m) {
		data, err := proto.Marshal(q)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data, uint16(i), uint8(0), 0.0, "")
		f.Add(data, uint16(37*i), uint8(1), math.Inf(1), "S355")
	}
	calls := direct{}
	for _, s := range both.Services() {
		s.Register(calls)
	}
	f.Fuzz(func(t *testing.T, data []byte, where uint16, deed uint8, number float64, word string) {
		q := newMessage(m.Input())
		if proto.Unmarshal(data, q) != nil {
			return
		}
		if deed != 0 {
			disturb(q.ProtoReflect(), where, deed, number, word)
		}
		runtime.LockOSThread()
		defer runtime.UnlockOSThread()
		before := threadTime()
		if bad := judged(calls, m, q, spot{}); bad != "" {
			t.Error(bad)
		}
		if took := threadTime() - before; took > most {
			t.Errorf("%v of work for %d bytes", took, proto.Size(q))
		}
	})
}

// seeds are the requests of the demo jobs, the smallest first.
func seeds(f *testing.F, m protoreflect.MethodDescriptor) []proto.Message {
	list := slices.Clone(valid(f, m))
	slices.SortStableFunc(list, func(a, b proto.Message) int { return proto.Size(a) - proto.Size(b) })
	return list[:min(len(list), maxSeeds)]
}

// disturb changes one field of a message that is well formed: bytes changed at random seldom are.
func disturb(m protoreflect.Message, where uint16, deed uint8, number float64, word string) {
	var all []way
	ways(m, nil, func(w way) { all = append(all, w) })
	if len(all) == 0 {
		return
	}
	w := all[int(where)%len(all)]
	s := w[len(w)-1]
	m = w.parent(m)
	if s.field.IsList() && s.index < 0 {
		list := m.Mutable(s.field).List()
		switch n := list.Len(); {
		case deed%3 == 0 && n > 0:
			list.Truncate(n - 1)
		case deed%3 == 1 && n > 0:
			list.Append(list.Get(int(deed) % n))
		default:
			list.Append(list.NewElement())
		}
		return
	}
	var v protoreflect.Value
	switch s.field.Kind() {
	case protoreflect.DoubleKind:
		v = protoreflect.ValueOfFloat64(number)
	case protoreflect.Int32Kind:
		v = protoreflect.ValueOfInt32(int32(deed) - 1)
	case protoreflect.BoolKind:
		v = protoreflect.ValueOfBool(deed%2 == 1)
	case protoreflect.EnumKind:
		v = protoreflect.ValueOfEnum(protoreflect.EnumNumber(deed % 16))
	case protoreflect.StringKind:
		v = protoreflect.ValueOfString(word)
	default:
		m.Clear(s.field)
		return
	}
	if s.index >= 0 {
		m.Mutable(s.field).List().Set(s.index, v)
	} else {
		m.Set(s.field, v)
	}
}
