package wire

import (
	pb "lugwright/proto/gen/lugwright/strength/v1alpha1"
	"lugwright/strength"
)

// Brief is a report without its words: what a sweep over thousands of variants reads.
type Brief struct {
	Verdict    strength.Verdict // on the whole bracket
	Rows       []BriefRow       // worst first
	NotChecked int              // how many limit states matter and are not checked
}

// BriefRow is one check.
type BriefRow struct {
	Limit, Place, Case string
	Verdict            strength.Verdict
	Utilisation        float64 // +Inf when there is no capacity
	Detail             bool    // a rule about dimensions, which no load changes
}

// Governing is the worst row, nil when nothing was checked: dimensions that hold say nothing of the load.
func (b *Brief) Governing() *BriefRow {
	if len(b.Rows) == 0 || b.Rows[0].Verdict == strength.NotApplied || b.Rows[0].Verdict == strength.Pass && b.Rows[0].Detail {
		return nil
	}
	return &b.Rows[0]
}

// Briefing writes the briefs of one message; they share its texts.
type Briefing struct {
	Texts []string
	index map[string]int32
}

func (t *Briefing) text(s string) int32 {
	i, ok := t.index[s]
	if !ok {
		if t.index == nil {
			t.index = map[string]int32{}
		}
		i = int32(len(t.Texts))
		t.index[s], t.Texts = i, append(t.Texts, s)
	}
	return i
}

// Encode writes the brief of a report.
func (t *Briefing) Encode(p *strength.Report) *pb.Brief {
	n := len(p.Checks)
	texts := make([]int32, 3*n)
	m := &pb.Brief{
		Verdict: verdicts.encode(p.Verdict()),
		Limits:  texts[:n:n], Places: texts[n : 2*n : 2*n], LoadCases: texts[2*n:],
		Verdicts: make([]pb.Verdict, n), Utilisations: make([]float64, n),
		Details: make([]bool, n), NotChecked: int32(len(p.NotChecked)),
	}
	for i := range p.Checks {
		c := &p.Checks[i]
		m.Limits[i], m.Places[i], m.LoadCases[i] = t.text(c.Limit), t.text(c.Place), t.text(c.Case)
		m.Verdicts[i], m.Utilisations[i], m.Details[i] = verdicts.encode(c.Verdict), c.Utilisation, c.Detail
	}
	return m
}

// DecodeBrief reads a brief with the texts of its message.
func DecodeBrief(m *pb.Brief, texts []string) (*Brief, error) {
	var r reader
	b := one(&r, "brief", m, func(r *reader, m *pb.Brief) *Brief { return readBrief(r, m, texts) })
	if err := r.err(); err != nil {
		return nil, err
	}
	return b, nil
}

func readBrief(r *reader, m *pb.Brief, texts []string) *Brief {
	n := len(m.Utilisations)
	if len(m.Limits) != n || len(m.Places) != n || len(m.LoadCases) != n || len(m.Verdicts) != n || len(m.Details) != n {
		r.refuse("", "columns of different lengths", "six of one length")
		return nil
	}
	b := &Brief{
		Verdict:    verdicts.decode(r, "verdict", m.Verdict),
		NotChecked: r.count("not_checked", m.NotChecked, maxListed),
	}
	if n == 0 || !r.fits("utilisations", n, maxListed) {
		return b
	}
	text := table{r, texts}.text
	b.Rows = make([]BriefRow, n)
	for i := range b.Rows {
		b.Rows[i] = BriefRow{
			Limit: text("limits", m.Limits[i]), Place: text("places", m.Places[i]), Case: text("load_cases", m.LoadCases[i]),
			Verdict: verdicts.decode(r, "verdicts", m.Verdicts[i]), Utilisation: m.Utilisations[i], Detail: m.Details[i],
		}
	}
	return b
}
