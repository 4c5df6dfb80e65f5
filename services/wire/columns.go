package wire

import (
	"strconv"

	"lugwright/part"
	pb "lugwright/proto/gen/lugwright/strength/v1alpha1"
	"lugwright/strength"
)

// Summary is what a family of many brackets asks of each.
type Summary struct {
	Verdict strength.Verdict
	// Limit, Place and Case govern; they are empty where nothing was checked.
	Limit, Place, Case string
	Utilisation        float64    // of the governing check; +Inf when there is no capacity
	Limits             []LimitUse // worst first, each limit state once where it is worst
	NotChecked         int        // how many limit states matter and are not checked
}

// LimitUse is a limit state at its worst place.
type LimitUse struct {
	Limit       string
	Verdict     strength.Verdict
	Utilisation float64
}

// Summarised is a summary, or why there is none.
type Summarised struct {
	Summary Summary
	Err     error
}

// Columns writes the summaries of one message.
type Columns struct {
	Briefing
	m    pb.CheckColumns
	seen map[string]struct{} // limit states of the report at hand
}

// Message gives what was added.
func (c *Columns) Message() *pb.CheckColumns { return &c.m }

// Add adds the summary of a report.
func (c *Columns) Add(p *strength.Report) {
	var limit, place, load string
	utilisation := 0.0
	if k := p.Governing(); k != nil {
		limit, place, load, utilisation = k.Limit, k.Place, k.Case, k.Utilisation
	}
	c.item(p.Verdict(), limit, place, load, utilisation, len(p.NotChecked))
	if c.seen == nil {
		c.seen = map[string]struct{}{}
	}
	clear(c.seen)
	for i := range p.Checks {
		k := &p.Checks[i]
		if _, again := c.seen[k.Limit]; again || k.Verdict == strength.NotApplied {
			continue
		}
		c.seen[k.Limit] = struct{}{}
		c.m.EachLimits = append(c.m.EachLimits, c.text(k.Limit))
		c.m.EachVerdicts = append(c.m.EachVerdicts, verdicts.encode(k.Verdict))
		c.m.EachUtilisations = append(c.m.EachUtilisations, k.Utilisation)
	}
	c.m.Counts = append(c.m.Counts, int32(len(c.seen)))
}

// Refuse adds an item that was not checked.
func (c *Columns) Refuse(err error) {
	c.m.Refused = append(c.m.Refused, int32(len(c.m.Verdicts)))
	c.m.Problems = append(c.m.Problems, EncodeProblem(err))
	c.item("", "", "", "", 0, 0)
	c.m.Counts = append(c.m.Counts, 0)
}

func (c *Columns) item(verdict strength.Verdict, limit, place, load string, utilisation float64, notChecked int) {
	c.m.Verdicts = append(c.m.Verdicts, verdicts.encode(verdict))
	c.m.Limits = append(c.m.Limits, c.text(limit))
	c.m.Places = append(c.m.Places, c.text(place))
	c.m.LoadCases = append(c.m.LoadCases, c.text(load))
	c.m.Utilisations = append(c.m.Utilisations, utilisation)
	c.m.NotChecked = append(c.m.NotChecked, int32(notChecked))
}

// DecodeColumns reads the summaries of a message with its texts.
func DecodeColumns(m *pb.CheckColumns, texts []string) ([]Summarised, error) {
	r := reader{steps: []step{{"columns", -1}}}
	if m == nil {
		r.refuse("", "missing", "a value")
		return nil, r.err()
	}
	out := readColumns(&r, m, texts)
	if err := r.err(); err != nil {
		return nil, err
	}
	return out, nil
}

func readColumns(r *reader, m *pb.CheckColumns, texts []string) []Summarised {
	n, each := len(m.Verdicts), len(m.EachLimits)
	if len(m.Limits) != n || len(m.Places) != n || len(m.LoadCases) != n || len(m.Utilisations) != n || len(m.NotChecked) != n || len(m.Counts) != n ||
		len(m.EachVerdicts) != each || len(m.EachUtilisations) != each || len(m.Refused) != len(m.Problems) {
		r.refuse("", "columns of different lengths", "those of one item each, of one limit state each, of one problem each")
		return nil
	}
	if !r.fits("verdicts", n, MaxBatch) || !r.fits("each_limits", each, maxListed) {
		return nil
	}
	t := table{r, texts}
	out := make([]Summarised, n)
	for i, at := range m.Refused {
		if at < 0 || int(at) >= n || m.Verdicts[at] != 0 {
			r.refuse("refused", strconv.Itoa(int(at)), "an item without a verdict")
			return nil
		}
		out[at].Err = DecodeProblem(m.Problems[i])
	}
	limits := make([]LimitUse, each)
	for i := range limits {
		limits[i] = LimitUse{t.text("each_limits", m.EachLimits[i]), verdicts.decode(r, "each_verdicts", m.EachVerdicts[i]), m.EachUtilisations[i]}
	}
	for i := range out {
		k := int(m.Counts[i])
		if k < 0 || k > len(limits) {
			r.refuse("counts", strconv.Itoa(k), "as many as each_limits has")
			return nil
		}
		if out[i].Err == nil {
			out[i].Summary = Summary{
				Verdict: verdicts.decode(r, "verdicts", m.Verdicts[i]), Limit: t.text("limits", m.Limits[i]), Place: t.text("places", m.Places[i]),
				Case: t.text("load_cases", m.LoadCases[i]), Utilisation: m.Utilisations[i], Limits: limits[:k:k],
				NotChecked: r.count("not_checked", m.NotChecked[i], maxListed),
			}
		}
		limits = limits[k:]
	}
	if len(limits) > 0 {
		r.refuse("counts", strconv.Itoa(len(limits))+" limit states of no item", "as many as each_limits has")
	}
	return out
}

// table is the texts of a message.
type table struct {
	r     *reader
	texts []string
}

func (t table) text(name string, i int32) string {
	if i < 0 || int(i) >= len(t.texts) {
		t.r.refuse(name, "index "+strconv.Itoa(int(i)), "the index of a text")
		return ""
	}
	return t.texts[i]
}

// Amounts writes how much material the brackets of one message take.
type Amounts struct{ Briefing }

// Encode gives the two columns of one bracket.
func (a *Amounts) Encode(volumes []part.Volume) (materials []int32, mm3 []float64) {
	for _, v := range volumes {
		materials, mm3 = append(materials, a.text(v.Material)), append(mm3, v.MM3)
	}
	return materials, mm3
}

// DecodeVolumes reads them.
func DecodeVolumes(materials []int32, mm3 []float64, texts []string) ([]part.Volume, error) {
	var r reader
	if len(materials) != len(mm3) {
		r.refuse("volumes_mm3", strconv.Itoa(len(mm3)), "as many as materials")
		return nil, r.err()
	}
	t := table{&r, texts}
	out := make([]part.Volume, len(mm3))
	for i := range out {
		out[i] = part.Volume{Material: t.text("materials", materials[i]), MM3: r.number("volumes_mm3", mm3[i])}
	}
	return out, r.err()
}
