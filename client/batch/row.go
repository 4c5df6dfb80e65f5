package batch

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"lugwright/client/family"
	"lugwright/geometry"
	"lugwright/part"
	"lugwright/services/dial"
	"lugwright/strength"
	"lugwright/units"
)

// Refused is the verdict on a variant that is none: its row cannot be read, it cannot be built, or it cannot be checked.
const Refused strength.Verdict = "refused"

// Row is the result of one variant.
type Row struct {
	ID          int64
	Own         []part.Param // one for each parameter in which variants differ; one that is left out has no name
	Verdict     strength.Verdict
	Limit       string // governs; empty where nothing was checked
	Place, Case string
	Utilisation float64         // +Inf where there is no capacity
	MassKG      float64         // of plates as cut, members and pins; NaN where it is not known
	Limits      []dial.LimitUse // worst first
	NotChecked  int
	Reason      string // why it is refused
	params      []part.Param
}

// begin makes a row of a variant, whose slices it copies.
func (r *Row) begin(v *family.Variant) {
	*r = Row{ID: v.ID, Own: append(r.Own[:0], v.Own...), params: append(r.params[:0], v.Params...), MassKG: math.NaN()}
	if v.Err != nil {
		r.refuse(v.Err, units.Metric)
	}
}

func (r *Row) finish(v *dial.Variant, kg float64, system units.System) {
	if v.Volumes != nil {
		r.MassKG = math.Round(kg*1000) / 1000 // here, so that a row read back is the same
	}
	if v.Err != nil {
		r.refuse(v.Err, system)
		return
	}
	s := &v.Summary
	r.Verdict, r.Limit, r.Place, r.Case, r.Utilisation, r.Limits, r.NotChecked = s.Verdict, s.Limit, s.Place, s.Case, s.Utilisation, s.Limits, s.NotChecked
}

// longestReason bounds the reason of one row.
const longestReason = 1000

func (r *Row) refuse(err error, system units.System) {
	words := units.Words(strings.ToValidUTF8(strings.Join(strings.Fields(err.Error()), " "), "?"), system)
	if len(words) > longestReason {
		cut := longestReason
		for !utf8.RuneStart(words[cut]) {
			cut--
		}
		words = words[:cut] + " ..."
	}
	r.Verdict, r.Reason = Refused, words
}

// form says how the rows of one family are written.
type form struct {
	params []geometry.Param // in which variants differ
	names  []string         // theirs, with their unit
	scales []float64
	limits []string // those with a column of their own
}

func formOf(f *family.Family) form {
	out := form{params: f.Names}
	for _, p := range f.Names {
		name, scale := p.Name, 1.0
		switch {
		case p.Unit == geometry.MM && f.Units == units.Inch:
			name, scale = p.Name+" [in]", 25.4
		case p.Unit == geometry.MM:
			name = p.Name + " [mm]"
		case p.Unit == geometry.Rad:
			name, scale = p.Name+" [deg]", math.Pi/180
		}
		out.names, out.scales = append(out.names, name), append(out.scales, scale)
	}
	return out
}

// value writes a parameter: a word as it is, a number to twelve figures.
func (f *form) value(i int, p *part.Param) string {
	if p.Text != "" {
		return p.Text
	}
	v, err := figures(p.Number/f.scales[i], 12)
	if err != nil {
		return ""
	}
	return strconv.FormatFloat(v, 'g', -1, 64)
}

// figures rounds a number to so many significant figures.
func figures(v float64, n int) (float64, error) {
	return strconv.ParseFloat(strconv.FormatFloat(v, 'g', n, 64), 64)
}

// line adds a row as one line of JSON.
func (f *form) line(b []byte, r *Row) []byte {
	b = append(b, `{"id":`...)
	b = strconv.AppendInt(b, r.ID, 10)
	b = append(b, `,"parameters":{`...)
	first := true
	for i := range r.Own {
		p := &r.Own[i]
		if p.Name == "" {
			continue
		}
		b = comma(b, &first)
		b = append(appendText(b, f.names[i]), ':')
		if p.Text != "" {
			b = appendText(b, p.Text)
		} else {
			b = append(b, f.value(i, p)...)
		}
	}
	b = append(b, `},"verdict":`...)
	b = appendText(b, string(r.Verdict))
	if !math.IsNaN(r.MassKG) {
		b = append(b, `,"mass_kg":`...)
		b = strconv.AppendFloat(b, r.MassKG, 'f', 3, 64)
	}
	if r.Reason != "" {
		b = append(b, `,"reason":`...)
		b = appendText(b, r.Reason)
		return append(b, "}\n"...)
	}
	for _, t := range [...]struct{ name, text string }{{"limit", r.Limit}, {"place", r.Place}, {"case", r.Case}} {
		b = append(append(append(b, `,"`...), t.name...), `":`...)
		b = appendText(b, t.text)
	}
	b = append(b, `,"utilisation":`...)
	b = appendNumber(b, r.Utilisation)
	b = append(b, `,"not_checked":`...)
	b = strconv.AppendInt(b, int64(r.NotChecked), 10)
	b = append(b, `,"limits":{`...)
	first = true
	outside := false
	for i := range r.Limits {
		u := &r.Limits[i]
		b = append(appendText(comma(b, &first), u.Limit), ':')
		b = appendNumber(b, u.Utilisation)
		outside = outside || u.Verdict == strength.Outside
	}
	b = append(b, '}')
	if outside {
		b, first = append(b, `,"outside":[`...), true
		for i := range r.Limits {
			if u := &r.Limits[i]; u.Verdict == strength.Outside {
				b = appendText(comma(b, &first), u.Limit)
			}
		}
		b = append(b, ']')
	}
	return append(b, "}\n"...)
}

func comma(b []byte, first *bool) []byte {
	if *first {
		*first = false
		return b
	}
	return append(b, ',')
}

// appendNumber writes what JSON has no number for as null: no capacity.
func appendNumber(b []byte, v float64) []byte {
	if math.IsInf(v, 0) || math.IsNaN(v) {
		return append(b, "null"...)
	}
	return strconv.AppendFloat(b, v, 'g', -1, 64)
}

func appendText(b []byte, s string) []byte {
	for i := range len(s) {
		if c := s[i]; c < ' ' || c > '~' || c == '"' || c == '\\' {
			quoted, err := json.Marshal(s)
			if err != nil {
				panic("batch: a text is always JSON: " + err.Error())
			}
			return append(b, quoted...)
		}
	}
	return append(append(append(b, '"'), s...), '"')
}

// Columns of a CSV file before and after those of parameters.
var (
	firstColumns = []string{"id"}
	lastColumns  = []string{"verdict", "limit", "place", "case", "utilisation", "mass [kg]", "not checked", "reason"}
)

// others is the last column: limit states that none of the first rows had.
const others = "other limit states"

func (f *form) header() []string {
	return slices.Concat(firstColumns, f.names, lastColumns, f.limits, []string{others})
}

// choose gives the limit states of some rows a column each, in the order of their names.
func (f *form) choose(rows []Row) {
	for i := range rows {
		for _, u := range rows[i].Limits {
			if !slices.Contains(f.limits, u.Limit) {
				f.limits = append(f.limits, u.Limit)
			}
		}
	}
	slices.Sort(f.limits)
}

// cells adds a row's cells.
func (f *form) cells(out []string, r *Row) []string {
	out = append(out, strconv.FormatInt(r.ID, 10))
	for i := range r.Own {
		text := ""
		if r.Own[i].Name != "" {
			text = f.value(i, &r.Own[i])
		}
		out = append(out, text)
	}
	mass, used, left := "", "", ""
	if !math.IsNaN(r.MassKG) {
		mass = strconv.FormatFloat(r.MassKG, 'f', 3, 64)
	}
	if r.Reason == "" {
		used, left = ratio(r.Utilisation), strconv.Itoa(r.NotChecked)
	}
	out = append(out, string(r.Verdict), r.Limit, r.Place, r.Case, used, mass, left, r.Reason)
	at := len(out)
	for range f.limits {
		out = append(out, "")
	}
	var rest []string
	for i := range r.Limits {
		u := &r.Limits[i]
		text := ratio(u.Utilisation)
		if u.Verdict == strength.Outside {
			text = "outside"
		}
		if k, ok := slices.BinarySearch(f.limits, u.Limit); ok {
			out[at+k] = text
		} else {
			rest = append(rest, fmt.Sprintf("%s %s", u.Limit, text))
		}
	}
	return append(out, strings.Join(rest, "; "))
}

func ratio(u float64) string {
	if math.IsInf(u, 0) {
		return "no capacity"
	}
	return strconv.FormatFloat(u, 'g', -1, 64)
}
