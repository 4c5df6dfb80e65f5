package wire

import (
	"fmt"
	"math"
	"math/rand/v2"
	"reflect"
	"slices"
	"strings"
	"testing"

	"google.golang.org/protobuf/proto"
	"google.golang.org/protobuf/reflect/protoreflect"

	"lugwright/geometry"
	"lugwright/geometry/shape"
	"lugwright/part"
	"lugwright/part/parttest"
	geometrypb "lugwright/proto/gen/lugwright/geometry/v1alpha1"
	partpb "lugwright/proto/gen/lugwright/part/v1alpha1"
	strengthpb "lugwright/proto/gen/lugwright/strength/v1alpha1"
	"lugwright/strength"
)

// sent passes a message through its bytes.
func sent[M proto.Message](t *testing.T, m M) M {
	t.Helper()
	data, err := proto.Marshal(m)
	if err != nil {
		t.Fatal(err)
	}
	back := m.ProtoReflect().New().Interface().(M)
	if err := proto.Unmarshal(data, back); err != nil {
		t.Fatal(err)
	}
	return back
}

func same(t *testing.T, got, want any, err error) {
	t.Helper()
	if err != nil {
		t.Fatal(err)
	}
	if d := differs(reflect.ValueOf(got), reflect.ValueOf(want)); d != "" {
		t.Fatalf("%T came back different at %s", want, d)
	}
}

// differs gives the path of the first difference and both values. It tells 0 from -0, which DeepEqual does not.
func differs(a, b reflect.Value) string {
	switch b.Kind() {
	case reflect.Pointer:
		if a.IsNil() || b.IsNil() {
			return unless(a.IsNil() == b.IsNil(), a, b)
		}
		return differs(a.Elem(), b.Elem())
	case reflect.Struct:
		for i := range b.NumField() {
			if d := differs(a.Field(i), b.Field(i)); d != "" {
				return "." + b.Type().Field(i).Name + d
			}
		}
		return ""
	case reflect.Slice, reflect.Array:
		if a.Len() != b.Len() {
			return fmt.Sprintf(": %d entries, was %d", a.Len(), b.Len())
		}
		for i := range b.Len() {
			if d := differs(a.Index(i), b.Index(i)); d != "" {
				return fmt.Sprintf("[%d]%s", i, d)
			}
		}
		return ""
	case reflect.Float64:
		return unless(math.Float64bits(a.Float()) == math.Float64bits(b.Float()), a, b)
	}
	return unless(reflect.DeepEqual(a.Interface(), b.Interface()), a, b)
}

func unless(equal bool, a, b reflect.Value) string {
	if equal {
		return ""
	}
	return fmt.Sprintf(": %v, was %v", a, b)
}

func TestRoundTrip(t *testing.T) {
	for seed := range uint64(100) {
		r := rand.New(rand.NewPCG(seed, 1))

		b := random[part.Bracket](r)
		gotB, err := DecodeBracket(sent(t, EncodeBracket(b)))
		same(t, gotB, b, err)

		q := random[geometry.Request](r)
		gotQ, err := DecodeOrder(sent(t, EncodeOrder(*q)))
		same(t, gotQ, *q, err)

		kinds := *random[[]geometry.Kind](r)
		gotKinds, err := DecodeKinds(sent(t, &geometrypb.ListKindsResponse{Kinds: EncodeKinds(kinds)}).Kinds)
		same(t, gotKinds, kinds, err)

		files := *random[[][]File](r)
		gotFiles, err := DecodeExports(sent(t, &geometrypb.ExportBracketResponse{Exports: EncodeExports(files)}).Exports)
		same(t, gotFiles, files, err)

		sheet := *random[Sheet](r)
		sheet.Format, sheet.Style = DXFR12, CutStyle{Cut: "CUT", Etch: "E-1"}
		gotSheet, err := DecodeSheet(sent(t, EncodeSheet(sheet)))
		same(t, gotSheet, sheet, err)

		bases := *random[[]Basis](r)
		gotBases, err := DecodeBases(sent(t, &strengthpb.ListBasesResponse{Bases: EncodeBases(bases)}).Bases)
		for i := range bases { // a method twice in a random list has one factor
			for m := range bases[i].ServiceFactor {
				if !slices.Contains(bases[i].Methods, m) {
					delete(bases[i].ServiceFactor, m)
				}
			}
			if len(bases[i].ServiceFactor) == 0 {
				bases[i].ServiceFactor = nil
			}
		}
		same(t, gotBases, bases, err)

		materials := random[Materials](r)
		gotMaterials, err := DecodeMaterials(sent(t, EncodeMaterials(materials)))
		same(t, gotMaterials, materials, err)

		setup := random[Setup](r)
		gotSetup, err := DecodeSetup(sent(t, EncodeSetup(setup)))
		same(t, gotSetup, setup, err)

		report := random[strength.Report](r)
		report.Checks[0].Utilisation, report.Checks[0].Demand = math.Inf(1), math.Inf(-1)
		gotReport, err := DecodeReport(sent(t, EncodeReport(report)))
		same(t, gotReport, report, err)

		var briefing Briefing
		m := &strengthpb.CheckBracketsResponse{Results: []*strengthpb.CheckResult{
			{Outcome: &strengthpb.CheckResult_Brief{Brief: briefing.Encode(report)}},
		}}
		m.Texts = briefing.Texts
		m = sent(t, m)
		gotBrief, err := DecodeBrief(m.Results[0].GetBrief(), m.Texts)
		same(t, gotBrief, briefOf(report), err)

		e := random[EvaluateRequest](r)
		gotE, err := DecodeEvaluateRequest(sent(t, EncodeEvaluateRequest(e)))
		same(t, gotE, e, err)

		info, calc := random[strength.Info](r), random[strength.Calc](r)
		gotV, err := DecodeEvaluation(sent(t, EncodeEvaluation(*info, calc)))
		same(t, gotV, &Evaluation{*info, calc.Verdict, calc.Why, calc.Demand, calc.Capacity, calc.Utilisation(), calc.Lines}, err)
	}
}

func briefOf(p *strength.Report) *Brief {
	b := &Brief{Verdict: p.Verdict(), NotChecked: len(p.NotChecked)}
	for _, c := range p.Checks {
		b.Rows = append(b.Rows, BriefRow{c.Limit, c.Place, c.Case, c.Verdict, c.Utilisation, c.Detail})
	}
	return b
}

func TestEveryEnumValueHasAWord(t *testing.T) {
	complete(t, hands)
	complete(t, purposes)
	complete(t, finishes)
	complete(t, profiles)
	complete(t, faces)
	complete(t, pinEnds)
	complete(t, welds)
	complete(t, lagRules)
	complete(t, supports)
	complete(t, couples)
	complete(t, components)
	complete(t, shareRules)
	complete(t, levels)
	complete(t, paramUnits)
	complete(t, formats)
	complete(t, methods)
	complete(t, verdicts)
	complete(t, lineKinds)
}

// complete compares a table with the values that the .proto file declares.
func complete[P interface {
	~int32
	protoreflect.Enum
}, D comparable](t *testing.T, e enum[P, D]) {
	t.Helper()
	declared := P(0).Descriptor().Values()
	if declared.Len() != len(e)+1 {
		t.Errorf("%s: %d words for %d values", P(0).Descriptor().FullName(), len(e), declared.Len()-1)
	}
	for i, w := range e {
		if declared.ByNumber(protoreflect.EnumNumber(w.wire)) == nil || w.wire != P(i+1) {
			t.Errorf("%s: value %d stands at place %d", P(0).Descriptor().FullName(), w.wire, i+1)
		}
	}
	if known, ok := words[reflect.TypeFor[D]()]; ok {
		known = slices.DeleteFunc(slices.Clone(known), func(w any) bool { return w == any(*new(D)) && fmt.Sprint(w) == "" })
		for i, w := range known {
			if i >= len(e) || e[i].domain != w {
				t.Errorf("%s: the domain lists %v at place %d", P(0).Descriptor().FullName(), w, i)
			}
		}
	}
}

func TestRefused(t *testing.T) {
	whole := func() *partpb.Bracket {
		return EncodeBracket(random[part.Bracket](rand.New(rand.NewPCG(7, 7))))
	}
	for _, c := range []struct {
		name   string
		spoil  func(b *partpb.Bracket)
		field  string
		accept string
	}{
		{"not a number", func(b *partpb.Bracket) { b.Plates[0].ThicknessMm = math.NaN() }, "plates[0].thickness_mm", "a finite number"},
		{"infinite", func(b *partpb.Bracket) { b.Pins[0].Axis.Y = math.Inf(-1) }, "pins[0].axis.y", "a finite number"},
		{"in a column", func(b *partpb.Bracket) { b.Plates[0].Outer.Bulge[0] = math.Inf(1) }, "plates[0].outer.bulge", "a finite number"},
		{"uneven columns", func(b *partpb.Bracket) { b.Plates[0].Outer.YMm = nil }, "plates[0].outer", "three of one length"},
		{"unknown word", func(b *partpb.Bracket) { b.Plates[0].Holes[0].Purpose = 99 }, "plates[0].holes[0].purpose", "one of pin, bolt, rod"},
		{"no word", func(b *partpb.Bracket) { b.Hand = 0 }, "hand", "one of left, right"},
		{"unknown optional word", func(b *partpb.Bracket) { b.Supports[0].Couple = -1 }, "supports[0].couple", "one of cross member"},
		{"missing message", func(b *partpb.Bracket) { b.Bolts[0].Pose.U = nil }, "bolts[0].pose.u", "a value"},
		{"missing entry", func(b *partpb.Bracket) { b.Sweeps[0] = nil }, "sweeps[0]", "a value"},
		{"three ends", func(b *partpb.Bracket) { b.Pins[0].Ends = append(b.Pins[0].Ends, b.Pins[0].Ends[0]) }, "pins[0].ends", "exactly 2"},
		{"one plate joined", func(b *partpb.Bracket) { b.Welds[0].Joins = b.Welds[0].Joins[:1] }, "welds[0].joins", "exactly 2"},
		{"long name", func(b *partpb.Bracket) { b.Name = strings.Repeat("x", 201) }, "name", "at most 200 bytes"},
		{"long entry", func(b *partpb.Bracket) { b.Notes[0] = strings.Repeat("x", 2001) }, "notes[0]", "at most 2000 bytes"},
		{"too many plates", func(b *partpb.Bracket) { b.Plates = make([]*partpb.Plate, MaxPlates+1) }, "plates", "at most 500"},
		{"negative leg", func(b *partpb.Bracket) { b.Paths[0].Branches[0].Leg = -1 }, "paths[0].branches[0].leg", "0 to 1000"},
		{"component", func(b *partpb.Bracket) { b.Paths[0].Component = 13 }, "paths[0].component", "one of Fx+"},
	} {
		b := whole()
		c.spoil(b)
		_, err := DecodeBracket(b)
		fields := part.Fields(err)
		if len(fields) != 1 || fields[0].Field != c.field || !strings.HasPrefix(fields[0].Accept, c.accept) {
			t.Errorf("%s: refused as %v, want field %s, accepted %s...", c.name, err, c.field, c.accept)
		}
	}
}

func TestRefusedOutsideTheBracket(t *testing.T) {
	for _, c := range []struct {
		name  string
		err   func() error
		field string
	}{
		{"no bracket", func() error { _, err := DecodeBracket(EncodeBracket(nil)); return err }, "bracket"},
		{"no order", func() error { _, err := DecodeOrder(nil); return err }, "order"},
		{"no setup", func() error { _, err := DecodeSetup(nil); return err }, "setup"},
		{"no formats", func() error { _, err := DecodeFormats(nil); return err }, "formats"},
		{"format not set", func() error { _, err := DecodeFormats(make([]geometrypb.FileFormat, 1)); return err }, "formats[0]"},
		{"many formats", func() error { _, err := DecodeFormats(make([]geometrypb.FileFormat, 1000)); return err }, "formats"},
		{"batch", func() error { return BatchFits("orders", MaxBatch+1) }, "orders"},
		{"parameter by name", func() error {
			_, err := DecodeOrder(&geometrypb.BracketOrder{Hand: 1, Parameters: []*partpb.Parameter{{Name: "bore", Number: math.NaN()}}})
			return err
		}, "parameters.bore"},
		{"case", func() error {
			_, err := DecodeSetup(&strengthpb.CheckSetup{Cases: []*partpb.LoadCase{{Level: 1, ForceN: &partpb.Vec{X: math.NaN()}, MomentNMm: &partpb.Vec{}}}})
			return err
		}, "cases[0].force_n.x"},
		{"cases", func() error {
			_, err := DecodeSetup(&strengthpb.CheckSetup{Cases: make([]*partpb.LoadCase, strength.MaxCases+1)})
			return err
		}, "cases"},
		{"brief", func() error {
			_, err := DecodeBrief(&strengthpb.Brief{Verdict: 1, Limits: []int32{5}, Places: []int32{0}, LoadCases: []int32{0}, Verdicts: []strengthpb.Verdict{1}, Utilisations: []float64{1}, Details: []bool{false}}, []string{"a"})
			return err
		}, "brief.limits"},
	} {
		fields := part.Fields(c.err())
		if len(fields) != 1 || fields[0].Field != c.field {
			t.Errorf("%s: refused as %v, want field %s", c.name, fields, c.field)
		}
	}
}

func TestRefusalsAreBounded(t *testing.T) {
	b := &partpb.Bracket{Hand: 1, Plates: make([]*partpb.Plate, MaxPlates)}
	_, err := DecodeBracket(b)
	if n := len(part.Fields(err)); n != maxRefused {
		t.Errorf("%d field errors, want %d", n, maxRefused)
	}
}

func TestOrdered(t *testing.T) {
	limit := strength.Info{Identity: strength.Identity{ID: "x"}, Givens: []strength.Given{
		{Symbol: "V", Unit: "N", Max: 10, Words: "shear"}, {Symbol: "d", Unit: "mm", Min: 1, Max: 5, Words: "pin"}, {Symbol: "t", Unit: "mm", Optional: true},
	}}
	got, err := Ordered(limit, []GivenValue{{"d", []float64{2}, ""}, {"V", []float64{3}, "N"}})
	if err != nil || !slices.EqualFunc(got, [][]float64{{3}, {2}, {0}}, slices.Equal[[]float64]) {
		t.Errorf("got %v, %v", got, err)
	}
	_, err = Ordered(limit, []GivenValue{{"V", []float64{3}, "kN"}, {"q", []float64{1}, ""}, {"V", []float64{1}, "N"}})
	want := "givens.V: unit kN; a value in N\n" +
		"givens.q: limit state x has no such given; one of V, d, t\n" +
		"givens.V: given twice; give it once\n" +
		"givens.d: missing; 1 to 5 mm (pin)"
	if err == nil || err.Error() != want {
		t.Errorf("got\n%v\nwant\n%s", err, want)
	}
}

// FuzzDecodeBracket: no bytes make decoding panic, and what decodes encodes to the message it came from.
func FuzzDecodeBracket(f *testing.F) {
	seed := EncodeBracket(&part.Bracket{Name: "b", Hand: part.LeftHand, Plates: []part.Plate{parttest.Ear()}})
	data, err := proto.Marshal(seed)
	if err != nil {
		f.Fatal(err)
	}
	f.Add(data)
	data, _ = proto.Marshal(EncodeBracket(random[part.Bracket](rand.New(rand.NewPCG(1, 2)))))
	f.Add(data)
	f.Fuzz(func(t *testing.T, data []byte) {
		var m partpb.Bracket
		if proto.Unmarshal(data, &m) != nil {
			return
		}
		b, err := DecodeBracket(&m)
		if err != nil {
			if len(part.Fields(err)) == 0 {
				t.Fatalf("refused without a field: %v", err)
			}
			return
		}
		again, err := DecodeBracket(EncodeBracket(b))
		same(t, again, b, err)
	})
}

// FuzzDecodeMessages: no bytes make any other decoder panic.
func FuzzDecodeMessages(f *testing.F) {
	r := rand.New(rand.NewPCG(3, 4))
	for _, m := range []proto.Message{
		EncodeSetup(random[Setup](r)), EncodeReport(random[strength.Report](r)), EncodeMaterials(random[Materials](r)),
		EncodeOrder(*random[geometry.Request](r)), EncodeEvaluateRequest(random[EvaluateRequest](r)),
	} {
		data, err := proto.Marshal(m)
		if err != nil {
			f.Fatal(err)
		}
		f.Add(data)
	}
	f.Fuzz(func(t *testing.T, data []byte) {
		decoding(data, func(m *strengthpb.CheckSetup) { DecodeSetup(m) })
		decoding(data, func(m *strengthpb.Report) { DecodeReport(m) })
		decoding(data, func(m *strengthpb.ListMaterialsResponse) { DecodeMaterials(m) })
		decoding(data, func(m *strengthpb.ListBasesResponse) { DecodeBases(m.Bases) })
		decoding(data, func(m *strengthpb.CheckBracketsResponse) {
			for _, r := range m.Results {
				DecodeBrief(r.GetBrief(), m.Texts)
			}
		})
		decoding(data, func(m *strengthpb.EvaluateLimitRequest) { DecodeEvaluateRequest(m) })
		decoding(data, func(m *strengthpb.EvaluateLimitResponse) { DecodeEvaluation(m) })
		decoding(data, func(m *geometrypb.BracketOrder) { DecodeOrder(m) })
		decoding(data, func(m *geometrypb.ListKindsResponse) { DecodeKinds(m.Kinds) })
		decoding(data, func(m *geometrypb.ExportBracketResponse) { DecodeExports(m.Exports) })
		decoding(data, func(m *geometrypb.ExportBracketRequest) { DecodeStyle(m.Style) })
		decoding(data, func(m *geometrypb.ExportSheetRequest) { DecodeSheet(m) })
		decoding(data, func(m *partpb.Problem) {
			if DecodeProblem(m) == nil {
				t.Fatal("a problem that is no error")
			}
		})
	})
}

func decoding[M any, P interface {
	*M
	proto.Message
}](data []byte, decode func(P)) {
	m := P(new(M))
	if proto.Unmarshal(data, m) == nil {
		decode(m)
	}
}

func BenchmarkBracket(b *testing.B) {
	bracket := &part.Bracket{Name: "b", Hand: part.LeftHand}
	for range 8 {
		bracket.Plates = append(bracket.Plates, parttest.Ear(), part.Plate{Outer: shape.Rect(shape.Point{}, shape.Point{X: 100, Y: 50})})
	}
	for b.Loop() {
		if _, err := DecodeBracket(EncodeBracket(bracket)); err != nil {
			b.Fatal(err)
		}
	}
}
