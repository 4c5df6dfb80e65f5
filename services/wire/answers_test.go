package wire

import (
	"testing"
	"time"

	"google.golang.org/protobuf/proto"

	"lugwright/geometry"
	"lugwright/geometry/kinds"
	"lugwright/geometry/shop"
	"lugwright/part"
	pb "lugwright/proto/gen/lugwright/strength/v1alpha1"
	"lugwright/strength"
	bases "lugwright/strength/basis"
)

// BenchmarkAnswers takes the reports of 64 clevises from the strength service to its client in each form, written, sent, received and read: its time and bytes, as
// parts of those of whole reports.
func BenchmarkAnswers(b *testing.B) {
	bracket, err := geometry.Build(kinds.All(), geometry.Request{Kind: "clevis", Name: "pair", Hand: part.LeftHand})
	if err != nil {
		b.Fatal(err)
	}
	cases := []part.Case{{Name: "down", Level: part.Service, Source: "own", Force: part.Vec{Y: 1000, Z: -5000}}}
	report, err := strength.Run(bases.All()[0], bracket, cases, strength.Options{})
	if err != nil {
		b.Fatal(err)
	}
	const n = 64
	forms := []struct {
		name  string
		write func(m *pb.CheckBracketsResponse)
		read  func(m *pb.CheckBracketsResponse) error
	}{
		{"reports", func(m *pb.CheckBracketsResponse) {
			for range n {
				m.Results = append(m.Results, &pb.CheckResult{Outcome: &pb.CheckResult_Report{Report: EncodeReport(report)}})
			}
		}, func(m *pb.CheckBracketsResponse) error {
			for _, r := range m.Results {
				if _, err := DecodeReport(r.GetReport()); err != nil {
					return err
				}
			}
			return nil
		}},
		{"briefs", func(m *pb.CheckBracketsResponse) {
			var t Briefing
			for range n {
				m.Results = append(m.Results, &pb.CheckResult{Outcome: &pb.CheckResult_Brief{Brief: t.Encode(report)}})
			}
			m.Texts = t.Texts
		}, func(m *pb.CheckBracketsResponse) error {
			for _, r := range m.Results {
				if _, err := DecodeBrief(r.GetBrief(), m.Texts); err != nil {
					return err
				}
			}
			return nil
		}},
		{"columns", func(m *pb.CheckBracketsResponse) {
			var c Columns
			for range n {
				c.Add(report)
			}
			m.Columns, m.Texts = c.Message(), c.Texts
		}, func(m *pb.CheckBracketsResponse) error {
			_, err := DecodeColumns(m.Columns, m.Texts)
			return err
		}},
	}
	took, size := make([]time.Duration, len(forms)), make([]int, len(forms))
	for b.Loop() {
		for i, f := range forms {
			began := time.Now()
			sentMessage, got := &pb.CheckBracketsResponse{}, &pb.CheckBracketsResponse{}
			f.write(sentMessage)
			data, err := proto.Marshal(sentMessage)
			if err == nil {
				err = proto.Unmarshal(data, got)
			}
			if err == nil {
				err = f.read(got)
			}
			if err != nil {
				b.Fatal(err)
			}
			took[i] += time.Since(began)
			size[i] = len(data)
		}
	}
	for i, f := range forms {
		b.ReportMetric(float64(took[i])/float64(took[0]), f.name+"-time")
		b.ReportMetric(float64(size[i])/float64(size[0]), f.name+"-bytes")
	}
}

// A summary says what its report says, and nothing else: worst first, each limit state once.
func TestColumns(t *testing.T) {
	report := &strength.Report{
		NotChecked: []strength.NotChecked{{What: "x"}},
		Checks: []strength.Check{
			{Limit: "a", Place: "p", Case: "c", Verdict: strength.Fail, Utilisation: 1.5}, {Limit: "b", Verdict: strength.Pass, Utilisation: 0.5},
			{Limit: "a", Verdict: strength.Pass, Utilisation: 0.4}, {Limit: "d", Verdict: strength.NotApplied},
		},
	}
	var c Columns
	c.Add(report)
	c.Refuse(&part.FieldError{Field: "f", Found: "x", Accept: "y"})
	c.Add(&strength.Report{})
	m := sent(t, c.Message())
	got, err := DecodeColumns(m, c.Texts)
	if err != nil || len(got) != 3 {
		t.Fatal(got, err)
	}
	if s := got[0].Summary; s.Verdict != strength.Fail || s.Limit != "a" || s.Place != "p" || s.Case != "c" || s.Utilisation != 1.5 || s.NotChecked != 1 ||
		len(s.Limits) != 2 || s.Limits[0] != (LimitUse{"a", strength.Fail, 1.5}) || s.Limits[1] != (LimitUse{"b", strength.Pass, 0.5}) {
		t.Errorf("%+v", s)
	}
	if got[1].Err == nil || len(part.Fields(got[1].Err)) != 1 {
		t.Errorf("%v", got[1].Err)
	}
	if s := got[2].Summary; s.Verdict != strength.Outside || s.Limit != "" || len(s.Limits) != 0 {
		t.Errorf("nothing was checked: %+v", s)
	}
	for name, spoil := range map[string]func(m *pb.CheckColumns){
		"different lengths":       func(m *pb.CheckColumns) { m.Places = m.Places[1:] },
		"no text":                 func(m *pb.CheckColumns) { m.Limits[0] = 99 },
		"negative text":           func(m *pb.CheckColumns) { m.LoadCases[0] = -1 },
		"too many limit states":   func(m *pb.CheckColumns) { m.Counts[0] = 5 },
		"too few limit states":    func(m *pb.CheckColumns) { m.Counts[0] = 1 },
		"a problem of a verdict":  func(m *pb.CheckColumns) { m.Refused[0] = 0 },
		"a problem of no item":    func(m *pb.CheckColumns) { m.Refused[0] = 3 },
		"no verdict, no problem":  func(m *pb.CheckColumns) { m.Refused, m.Problems = nil, nil },
		"an unknown verdict":      func(m *pb.CheckColumns) { m.EachVerdicts[0] = 77 },
		"a count below nought":    func(m *pb.CheckColumns) { m.Counts[2] = -1 },
		"more items than allowed": func(m *pb.CheckColumns) { proto.Reset(m); proto.Merge(m, many300()) },
	} {
		m := sent(t, c.Message())
		spoil(m)
		if _, err := DecodeColumns(m, c.Texts); err == nil {
			t.Errorf("%s: let in", name)
		}
	}
	if _, err := DecodeColumns(nil, nil); err == nil {
		t.Error("no columns: let in")
	}
}

func many300() *pb.CheckColumns {
	var c Columns
	for range 300 {
		c.Add(&strength.Report{})
	}
	return c.Message()
}

// A shop comes back as it was, as far as brackets are concerned.
func TestShop(t *testing.T) {
	s := shop.Plain()
	s.Holes = append([]shop.HoleRule{{For: []part.Purpose{part.ForPin}, UnderPerThick: 1, UnderMM: 20, OverThickMM: 3, Make: shop.Undersize, LessMM: 1, Then: part.Reamed}}, s.Holes...)
	s.SmallestHole, s.SmallestWeb = shop.Least{PerThickness: 1, MM: 2}, shop.Least{PerThickness: 0.5, MM: 3}
	got, err := DecodeShop(sent(t, EncodeShop(&s)))
	want := shop.Profile{Name: s.Name, Process: s.Process, Marks: s.Marks, SmallestHole: s.SmallestHole, SmallestWeb: s.SmallestWeb, Holes: s.Holes}
	same(t, got, &want, err)
	s.Holes = s.Holes[:1]
	s.Process = "bite"
	if _, err := DecodeShop(EncodeShop(&s)); len(part.Fields(err)) != 2 {
		t.Errorf("got %v", err)
	}
	if got, err := DecodeShop(nil); got != nil || err != nil {
		t.Errorf("no shop: %v, %v", got, err)
	}
}
