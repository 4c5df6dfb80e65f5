package wire

import (
	"errors"
	"fmt"
	"runtime"
	"strings"
	"testing"
	"unicode/utf8"

	"google.golang.org/genproto/googleapis/rpc/errdetails"
	"google.golang.org/grpc/codes"
	"google.golang.org/grpc/status"

	"lugwright/part"
	pb "lugwright/proto/gen/lugwright/part/v1alpha1"
)

// manyFields are n refused fields with texts of about so many bytes.
func manyFields(n, bytes int, letter string) part.FieldErrors {
	out := make(part.FieldErrors, n)
	for i := range out {
		out[i] = &part.FieldError{Field: fmt.Sprintf("plates[%d].thickness_mm", i), Found: strings.Repeat(letter, bytes/len(letter)), Accept: "1 to 100 mm"}
	}
	return out
}

// What refuses a call fits into the 8 KiB of headers that clients take, however long it is; its first fields are whole, and it says how many follow.
func TestLongRefusals(t *testing.T) {
	for _, c := range []struct {
		name  string
		err   error
		whole bool // all fields are told
		more  string
	}{
		{"short", manyFields(3, 50, "x"), true, ""},
		{"ten", manyFields(10, 50, "x"), true, ""},
		{"thirty", manyFields(30, 50, "x"), false, "more fields are refused"},
		{"more than are kept", manyFields(400, 50, "x"), false, "and at least "},
		{"wrapped", fmt.Errorf("bracket cannot be exported: %w", manyFields(30, 50, "x")), false, "more fields are refused"},
		{"percent signs", manyFields(30, 50, "%"), false, "more fields are refused"},
		{"letters of three bytes", manyFields(30, 60, "≥"), false, "more fields are refused"},
		{"two long ones", manyFields(2, 1000, "x"), false, "and one more field is refused"},
		{"one that is too long", manyFields(1, 50_000, "≥"), false, ""},
		{"several too long", manyFields(5, 50_000, "ä"), false, "and 4 more fields are refused"},
		{"no UTF-8", manyFields(30, 60, "\xff"), false, ""},
		{"no field", errors.New(strings.Repeat("nothing holds ", 5000)), true, ""},
		{"no field, three bytes", errors.New("x" + strings.Repeat("≥", 50_000)), true, ""},
	} {
		all := part.Fields(c.err)
		sent := ToStatus(c.err)
		s, _ := status.FromError(sent)
		if n := toldBytes(s); n > mostTold {
			t.Errorf("%s: %d bytes", c.name, n)
		}
		back := FromStatus(sent)
		got := part.Fields(back)
		if len(got) < min(len(all), 1) && c.name != "no UTF-8" || (len(got) == len(all)) != (c.whole || len(all) == 1) {
			t.Errorf("%s: %d of %d fields", c.name, len(got), len(all))
		}
		for i := range max(len(got)-1, 0) {
			if *got[i] != *all[i] {
				t.Errorf("%s: field %d is %v", c.name, i, got[i])
			}
		}
		if !strings.Contains(back.Error(), c.more) || c.more != "" && !strings.Contains(got[len(got)-1].Accept, c.more) {
			t.Errorf("%s: %q does not say %q", c.name, back, c.more)
		}
		if c.name == "wrapped" && !strings.HasPrefix(back.Error(), "bracket cannot be exported: plates[0]") {
			t.Errorf("%s: %q", c.name, back)
		}
		if c.name != "no UTF-8" && !utf8.ValidString(s.Message()) {
			t.Errorf("%s: cut within a letter: %q", c.name, s.Message())
		}
		if bad, ok := first(s.Details()).(*errdetails.BadRequest); ok && len(bad.FieldViolations) != len(got) {
			t.Errorf("%s: %d violations beside %d fields", c.name, len(bad.FieldViolations), len(got))
		}
	}
}

// However many texts are too long, all of them are walked over a few times and not once for each field: what is allocated is held against what came.
func TestLongRefusalsAreCheap(t *testing.T) {
	for name, fields := range map[string]part.FieldErrors{
		"all too long":         manyFields(256, 50_000, "x"),
		"all but the first":    append(manyFields(1, 50, "x"), manyFields(255, 50_000, "x")...),
		"all but the first 40": append(manyFields(40, 50, "x"), manyFields(216, 50_000, "x")...),
	} {
		problem := &pb.Problem{Message: fields.Error(), Fields: encodeFields(fields)}
		before := allocated()
		s := refusal(codes.InvalidArgument, problem, reasonFieldsRefused)
		if grown := allocated() - before; grown > 4*uint64(len(problem.Message)) {
			t.Errorf("%s: %d kB for a refusal of %d kB", name, grown>>10, len(problem.Message)>>10)
		}
		if n := toldBytes(s); n > mostTold {
			t.Errorf("%s: %d bytes", name, n)
		}
	}
}

func allocated() uint64 {
	var m runtime.MemStats
	runtime.ReadMemStats(&m)
	return m.TotalAlloc
}

func BenchmarkLongRefusal(b *testing.B) {
	fields := manyFields(256, 50_000, "x")
	problem := &pb.Problem{Message: fields.Error(), Fields: encodeFields(fields)}
	for b.Loop() {
		refusal(codes.InvalidArgument, problem, reasonFieldsRefused)
	}
}

func first(details []any) any {
	if len(details) == 0 {
		return nil
	}
	return details[0]
}
