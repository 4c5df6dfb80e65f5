package both_test

// Every field of every request is set to absurd values in turn. What comes back is an answer without NaN, or a refusal that names the field.

import (
	"context"
	"fmt"
	"io"
	"log/slog"
	"math"
	"os"
	"reflect"
	"slices"
	"strconv"
	"strings"
	"testing"
	"time"

	"google.golang.org/genproto/googleapis/rpc/errdetails"
	"google.golang.org/grpc"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"
	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/reflect/protoreflect"
	"google.golang.org/protobuf/reflect/protoregistry"

	geometrypb "lugwright/proto/gen/lugwright/geometry/v1alpha1"
	partpb "lugwright/proto/gen/lugwright/part/v1alpha1"
	strengthpb "lugwright/proto/gen/lugwright/strength/v1alpha1"
	"lugwright/services/both"
	"lugwright/services/server"
)

// methods lists every method of both services.
func methods() []protoreflect.MethodDescriptor {
	var out []protoreflect.MethodDescriptor
	for _, name := range []protoreflect.FullName{"lugwright.geometry.v1alpha1.GeometryService", "lugwright.strength.v1alpha1.StrengthService"} {
		d, err := protoregistry.GlobalFiles.FindDescriptorByName(name)
		if err != nil {
			panic(err)
		}
		list := d.(protoreflect.ServiceDescriptor).Methods()
		for i := range list.Len() {
			out = append(out, list.Get(i))
		}
	}
	return out
}

func fullMethod(m protoreflect.MethodDescriptor) string {
	return fmt.Sprintf("/%s/%s", m.Parent().FullName(), m.Name())
}

func newMessage(d protoreflect.MessageDescriptor) proto.Message {
	t, err := protoregistry.GlobalTypes.FindMessageByName(d.FullName())
	if err != nil {
		panic(err)
	}
	return t.New().Interface()
}

// services are both in this process, behind the same recovery as a server's.
func services() *server.Local {
	return server.NewLocal(server.Options{Log: slog.New(slog.NewTextHandler(io.Discard, nil))}, both.Services()...)
}

// step is one field on the way down a message; index is -1 for a field as a whole.
type step struct {
	field protoreflect.FieldDescriptor
	index int
}

type way []step

// path is the way as refusals write it, schema the same for every entry of a list.
func (w way) path(schema bool) string {
	var b strings.Builder
	for _, s := range w {
		if b.Len() > 0 {
			b.WriteByte('.')
		}
		b.WriteString(string(s.field.Name()))
		switch {
		case s.index >= 0 && schema:
			b.WriteString("[]")
		case s.index >= 0:
			fmt.Fprintf(&b, "[%d]", s.index)
		}
	}
	return b.String()
}

// parent is the message that holds the last field of the way.
func (w way) parent(m protoreflect.Message) protoreflect.Message {
	for _, s := range w[:len(w)-1] {
		if s.index >= 0 {
			m = m.Mutable(s.field).List().Get(s.index).Message()
		} else {
			m = m.Mutable(s.field).Message()
		}
	}
	return m
}

// ways lists every field that can be reached through what is there: of lists the first and the last entry.
func ways(m protoreflect.Message, above way, each func(way)) {
	fields := m.Descriptor().Fields()
	for i := range fields.Len() {
		f := fields.Get(i)
		whole := append(above[:len(above):len(above)], step{f, -1})
		each(whole)
		switch {
		case f.IsList():
			for _, k := range ends(m.Get(f).List().Len()) {
				entry := append(above[:len(above):len(above)], step{f, k})
				each(entry)
				if f.Message() != nil {
					ways(m.Get(f).List().Get(k).Message(), entry, each)
				}
			}
		case f.Message() != nil && m.Has(f):
			ways(m.Get(f).Message(), whole, each)
		}
	}
}

func ends(n int) []int {
	switch n {
	case 0:
		return nil
	case 1:
		return []int{0}
	}
	return []int{0, n - 1}
}

// absurdity is one way to spoil a field. What is wild can never be right, so that a refusal has to name it; what is not may be right by itself and clash with another
// field, which may be the one that is named.
type absurdity struct {
	name string
	wild bool
	do   func(m protoreflect.Message, s step)
}

const manyItems = 1_000_000

func set(name string, wild bool, v protoreflect.Value) absurdity {
	return absurdity{name, wild, func(m protoreflect.Message, s step) {
		if s.index >= 0 {
			m.Mutable(s.field).List().Set(s.index, v)
		} else {
			m.Set(s.field, v)
		}
	}}
}

// fill makes a list a million entries long, of noughts and missing messages, faster than one by one.
func fill(m protoreflect.Message, s step) {
	fields := reflect.ValueOf(m.Interface()).Elem()
	for i := range fields.NumField() {
		if tag := strings.Split(fields.Type().Field(i).Tag.Get("protobuf"), ","); len(tag) > 1 && tag[1] == fmt.Sprint(s.field.Number()) {
			fields.Field(i).Set(reflect.MakeSlice(fields.Field(i).Type(), manyItems, manyItems))
		}
	}
}

func absurdities(s step) []absurdity {
	if s.field.IsList() && s.index < 0 {
		return []absurdity{
			{"no entries", false, func(m protoreflect.Message, s step) { m.Clear(s.field) }},
			{"a million entries", true, fill},
			{"each entry twice", false, func(m protoreflect.Message, s step) {
				list := m.Mutable(s.field).List()
				for i := range list.Len() {
					list.Append(list.Get(i))
				}
			}},
			{"an empty entry more", false, func(m protoreflect.Message, s step) {
				list := m.Mutable(s.field).List()
				list.Append(list.NewElement())
			}},
		}
	}
	var out []absurdity
	switch s.field.Kind() {
	case protoreflect.DoubleKind:
		for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e308, -1e308, -1, 0, 1, 1e-300, 1e9} {
			out = append(out, set(fmt.Sprint(v), !(math.Abs(v) <= 1e9), protoreflect.ValueOfFloat64(v)))
		}
	case protoreflect.Int32Kind:
		for _, v := range []int32{math.MaxInt32, math.MinInt32, -1, 0, 7} {
			out = append(out, set(fmt.Sprint(v), v < 0 || v > 1e6, protoreflect.ValueOfInt32(v)))
		}
	case protoreflect.BoolKind:
		out = append(out, absurdity{"turned over", false, func(m protoreflect.Message, s step) {
			m.Set(s.field, protoreflect.ValueOfBool(!m.Get(s.field).Bool()))
		}})
	case protoreflect.EnumKind:
		for _, v := range []protoreflect.EnumNumber{99, -1, math.MaxInt32, 0, 1, 2, 3, 4, 5, 6} {
			out = append(out, set(fmt.Sprint(v), v < 0 || v > 9, protoreflect.ValueOfEnum(v)))
		}
	case protoreflect.StringKind:
		for _, v := range []string{strings.Repeat("x", 1<<20), "\xff\xfe", "", "\x00", "no such word", "../../x", strings.Repeat("ä", 150)} {
			out = append(out, set(fmt.Sprintf("%.20q", v), len(v) > 1000 || strings.HasPrefix(v, "\xff"), protoreflect.ValueOfString(v)))
		}
	case protoreflect.MessageKind:
		out = append(out, absurdity{"empty message", false, func(m protoreflect.Message, s step) {
			if s.index >= 0 {
				list := m.Mutable(s.field).List()
				list.Set(s.index, list.NewElement())
			} else {
				m.Set(s.field, m.NewField(s.field))
			}
		}})
		if s.index < 0 {
			out = append(out, absurdity{"no message", false, func(m protoreflect.Message, s step) { m.Clear(s.field) }})
		}
	default:
		panic("no absurd values of kind " + s.field.Kind().String())
	}
	return out
}

// tries is in how many requests each field is spoilt: LUGWRIGHT_TRIES, or one.
func tries() int {
	n, err := strconv.Atoi(os.Getenv("LUGWRIGHT_TRIES"))
	if err != nil {
		return 1
	}
	return n
}

// elsewhere says whether a field is tried in another call that goes the same way: brackets of batches in calls with one.
func elsewhere(path string) bool { return strings.HasPrefix(path, "items[].bracket.") }

// TestAbsurd spoils one field at a time of the demo jobs' requests, in the smallest of them that has it.
func TestAbsurd(t *testing.T) {
	times := tries()
	local := services()
	for _, m := range methods() {
		t.Run(string(m.Name()), func(t *testing.T) {
			seen, tried := map[string]int{}, 0
			for _, q := range valid(t, m) {
				here := map[string]bool{}
				ways(q.ProtoReflect(), nil, func(w way) {
					schema := w.path(true)
					if seen[schema] >= times || here[schema] || elsewhere(schema) {
						return
					}
					here[schema] = true
					seen[schema]++
					for _, a := range absurdities(w[len(w)-1]) {
						spoilt := proto.Clone(q)
						a.do(w.parent(spoilt.ProtoReflect()), w[len(w)-1])
						if proto.Equal(spoilt, q) {
							continue // as it was
						}
						tried++
						at := spot{path: w.path(false), also: w.named(q.ProtoReflect()), wild: a.wild}
						if bad := judged(local, m, spoilt, at); bad != "" {
							t.Errorf("%s = %s: %s", w.path(false), a.name, bad)
						}
					}
				})
			}
			t.Logf("%d spoilt requests, %d fields", tried, len(seen))
		})
	}
}

// judged says what is wrong with what comes of a spoilt request, "" if nothing.
func judged(local grpc.ClientConnInterface, m protoreflect.MethodDescriptor, q proto.Message, at spot) string {
	ctx, cancel := context.WithTimeout(context.Background(), time.Minute)
	defer cancel()
	answer := newMessage(m.Output())
	err := local.Invoke(ctx, fullMethod(m), q, answer)
	if err == nil {
		return judgedAnswer(q, answer, at)
	}
	s := status.Convert(err)
	switch s.Code() {
	case codes.InvalidArgument:
	case codes.ResourceExhausted:
		return ""
	default:
		return fmt.Sprintf("%s: %.300s", s.Code(), s.Message())
	}
	for _, d := range s.Details() {
		if bad, ok := d.(*errdetails.BadRequest); ok {
			var fields []string
			for _, v := range bad.FieldViolations {
				fields = append(fields, v.Field)
			}
			return misnamed(q, fields, at)
		}
	}
	return "INVALID_ARGUMENT without a field violation: " + s.Message()
}

// judgedAnswer looks at an answer: no number in it that is none, no fault in it, and refusals of single items name the field.
func judgedAnswer(q, answer proto.Message, at spot) string {
	if _, err := proto.Marshal(answer); err != nil {
		return "an answer that cannot be sent: " + err.Error()
	}
	if bad := wild(answer.ProtoReflect(), nil); bad != "" {
		return bad
	}
	bad := ""
	problems(answer.ProtoReflect(), func(p *partpb.Problem) {
		var fields []string
		for _, f := range p.Fields {
			fields = append(fields, f.Field)
		}
		if fields == nil {
			bad = fmt.Sprintf("an item refused without a field: %.300s", p.Message)
		} else if b := misnamed(q, fields, at); b != "" {
			bad = b
		}
	})
	return bad
}

// open are the fields that may be infinite by their comments.
var open = map[protoreflect.FullName]bool{
	"lugwright.strength.v1alpha1.Check.utilisation":                 true,
	"lugwright.strength.v1alpha1.Brief.utilisations":                true,
	"lugwright.strength.v1alpha1.CheckColumns.utilisations":         true,
	"lugwright.strength.v1alpha1.CheckColumns.each_utilisations":    true,
	"lugwright.strength.v1alpha1.EvaluateLimitResponse.utilisation": true,
	"lugwright.strength.v1alpha1.Given.min":                         true,
	"lugwright.strength.v1alpha1.Given.max":                         true,
}

// wild finds a number that is not finite.
func wild(m protoreflect.Message, above way) (found string) {
	m.Range(func(f protoreflect.FieldDescriptor, v protoreflect.Value) bool {
		look := func(i int, v protoreflect.Value) {
			w := append(above[:len(above):len(above)], step{f, i})
			switch {
			case f.Message() != nil:
				if bad := wild(v.Message(), w); bad != "" {
					found = bad
				}
			case f.Kind() == protoreflect.DoubleKind:
				if x := v.Float(); math.IsNaN(x) || math.IsInf(x, 0) && !(open[f.FullName()]) {
					found = fmt.Sprintf("the answer has %s = %g", w.path(false), x)
				}
			}
		}
		if !f.IsList() {
			look(-1, v)
			return found == ""
		}
		for i := range v.List().Len() {
			look(i, v.List().Get(i))
		}
		return found == ""
	})
	return found
}

// problems finds what says why an item of a batch was refused.
func problems(m protoreflect.Message, each func(*partpb.Problem)) {
	if p, ok := m.Interface().(*partpb.Problem); ok {
		each(p)
		return
	}
	m.Range(func(f protoreflect.FieldDescriptor, v protoreflect.Value) bool {
		switch {
		case f.Message() == nil:
		case f.IsList():
			for i := range v.List().Len() {
				problems(v.List().Get(i).Message(), each)
			}
		default:
			problems(v.Message(), each)
		}
		return true
	})
}

// within are what the paths of a refusal begin in: the request, or the one item or setup of a batch that they belong to.
var within = []string{"", "bracket.", "order.", "orders[0].", "items[0].", "items[0].bracket.", "setup.", "setups[0].", "request."}

// spot is where a request was spoilt: the path of the field, and the path with the name of an entry in place of its number.
type spot struct {
	path, also string
	wild       bool
}

// bare leaves out units that a job file does not have in the names of fields.
var bare = strings.NewReplacer("force_n", "force", "moment_n_mm", "moment")

// misnamed says what is wrong with the fields of a refusal: one is no field of the request; or, of a value that cannot be right, none is the spoilt field, what holds it
// or what is in it.
func misnamed(q proto.Message, fields []string, at spot) string {
	hit := !at.wild
	for _, f := range fields {
		known := false
		for _, above := range within {
			full := above + f
			known = known || resolves(q.ProtoReflect().Descriptor(), full)
			for _, path := range []string{at.path, at.also} {
				path, full := bare.Replace(path), bare.Replace(full)
				hit = hit || full == path || beneath(path, full) || beneath(full, path)
			}
		}
		if !known {
			return fmt.Sprintf("the refused field %q is no field of the request (of %q)", f, fields)
		}
	}
	if !hit {
		return fmt.Sprintf("refused are %q", fields)
	}
	return ""
}

// keys are the lists whose entries are named in paths, and the field with their name.
var keys = map[protoreflect.Name]protoreflect.Name{"parameters": "name", "givens": "symbol", "factors": "symbol"}

// named is the way with the names of entries that have one.
func (w way) named(m protoreflect.Message) string {
	var b strings.Builder
	for _, s := range w {
		if b.Len() > 0 {
			b.WriteByte('.')
		}
		b.WriteString(string(s.field.Name()))
		switch key := keys[s.field.Name()]; {
		case s.index < 0:
			if s.field.Message() != nil && !s.field.IsList() {
				m = m.Get(s.field).Message()
			}
		case s.field.Message() == nil:
			fmt.Fprintf(&b, "[%d]", s.index)
		default:
			m = m.Get(s.field).List().Get(s.index).Message()
			if key == "" {
				fmt.Fprintf(&b, "[%d]", s.index)
				continue
			}
			return b.String() + "." + m.Get(m.Descriptor().Fields().ByName(key)).String() // all of an entry is named by it
		}
	}
	return b.String()
}

// beneath says whether a path is part of what another names.
func beneath(path, above string) bool {
	rest, ok := strings.CutPrefix(path, above)
	return ok && (strings.HasPrefix(rest, ".") || strings.HasPrefix(rest, "["))
}

// resolves says whether a path names a field of a message, whose unit may be left out: a job file has "force" where the message has force_n.
func resolves(d protoreflect.MessageDescriptor, path string) bool {
	head, rest, more := strings.Cut(path, ".")
	name, _, indexed := strings.Cut(head, "[")
	f := d.Fields().ByName(protoreflect.Name(name))
	for _, unit := range []string{"_n", "_n_mm"} {
		if f == nil {
			f = d.Fields().ByName(protoreflect.Name(name + unit))
		}
	}
	switch {
	case f == nil || indexed && !f.IsList():
		return false
	case !more:
		return true
	case f.IsList() && !indexed:
		return keys[f.Name()] != ""
	}
	return f.Message() != nil && resolves(f.Message(), rest)
}

// valid gives requests of one method that are answered, the empty one where a method asks for nothing.
func valid(t testing.TB, m protoreflect.MethodDescriptor) []proto.Message {
	if m.Input().Fields().Len() == 0 {
		return []proto.Message{newMessage(m.Input())}
	}
	var list []proto.Message
	switch m.Name() {
	case "BuildBracket":
		for _, q := range requests(t, geometrypb.GeometryService_BuildBrackets_FullMethodName) {
			list = append(list, &geometrypb.BuildBracketRequest{Order: q.(*geometrypb.BuildBracketsRequest).Orders[0]})
		}
	case "CheckBracket":
		for _, q := range requests(t, strengthpb.StrengthService_CheckBrackets_FullMethodName) {
			q := q.(*strengthpb.CheckBracketsRequest)
			list = append(list, &strengthpb.CheckBracketRequest{Bracket: q.Items[0].Bracket, Setup: q.Setups[0]})
		}
	default:
		list = requests(t, fullMethod(m))
	}
	if len(list) == 0 {
		t.Fatal("no demo job asks for this")
	}
	// A field is looked for in the small ones first, which are soon answered.
	slices.SortStableFunc(list, func(a, b proto.Message) int { return proto.Size(a) - proto.Size(b) })
	return list
}
