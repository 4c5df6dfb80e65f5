package sweep

import (
	"bytes"
	"context"
	"errors"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"lugwright/client/draw/svg"
	"lugwright/client/job"
	"lugwright/client/run"
	"lugwright/client/run/runtest"
	"lugwright/geometry"
	"lugwright/internal/peer"
	"lugwright/part"
	"lugwright/services/dial"
	"lugwright/units"
)

// eye is a lug in line with its pull. What no published rule states is left out, so that the lug's edges can be found by hand.
const eye = `job: an eye
basis: AISC 360-22
method: ASD
leave_out: [lug-dishing, pin-contact-pressure, pin-combined]
cases:
  up: {level: service, source: builder's choice}
brackets:
  - name: eye
    kind: lug
    hand: left
    parameters: {turns: "no"}
    loads: [{case: up, force: {x: 0 N, y: 0 N, z: 60 kN}}]
`

type desk struct {
	*Bench
	client *dial.Client
	kinds  []geometry.Kind
}

func deskOf(t *testing.T, src string) *desk {
	t.Helper()
	c, known := runtest.Services(t)
	j, err := job.Read("x.yaml", []byte(src), known)
	if err != nil {
		t.Fatal(err)
	}
	if j, _, err = run.Loaded(t.Context(), c, j); err != nil {
		t.Fatal(err)
	}
	densities, err := run.ReadDensities(t.Context(), c)
	if err != nil {
		t.Fatal(err)
	}
	return &desk{&Bench{Client: c, Job: j, Densities: densities, Margin: 1}, c, known.Kinds}
}

func (d *desk) plan(t *testing.T, names []string, varied ...string) *Plan {
	t.Helper()
	p, err := NewPlan(t.Context(), d.client, d.Job, d.kinds, names, varied)
	if err != nil {
		t.Fatal(err)
	}
	return p
}

func (d *desk) rows(t *testing.T, g *Grid) []Row {
	t.Helper()
	rows, err := d.Run(t.Context(), g, func(*Row) error { return nil })
	if err != nil {
		t.Fatal(err)
	}
	return rows
}

func number(r *Row) float64 { return r.Values[0].Number }

// The eye's thickness by hand, AISC 360-22, ASD. The pin, C45+N of 25 mm, has the lower yield, 305 MPa, so by J7(a) R_n/2.00 = 0.9 F_y d t = 0.9 x 305 x 25 t:
// 60 kN need 8.743 mm. By D5.2(b) a >= 1.33 b_e with b_e = 2 t + 0.63 in: the end distance of 70 mm leaves a = 70 - 25.5/2 = 57.25 mm, so t is at most
// (57.25/1.33 - 16.002)/2 = 13.521 mm: a thicker lug is outside the rule. With a margin of 1.25 on the pull: 10.929 mm, while what is a rule about dimensions
// stays where it is.
func TestEdgesByHand(t *testing.T) {
	d := deskOf(t, eye)
	for _, c := range []struct{ margin, low, high float64 }{{1, 8.743, 13.521}, {1.25, 10.929, 13.521}} {
		d.Margin = c.margin
		g := &d.plan(t, nil, "thickness=5 mm to 17 mm by 1.5 mm").Grids[0]
		e, err := d.Refine(t.Context(), g, d.rows(t, g))
		if err != nil || len(e.List) != 2 || !e.Finely {
			t.Fatalf("margin %g: %v, %+v", c.margin, err, e)
		}
		for i, want := range []float64{c.low, c.high} {
			below, above := number(e.List[i].Below), number(e.List[i].Above)
			if !(below <= want && want <= above) || above-below > 0.0101 {
				t.Errorf("margin %g: edge %d between %g and %g, by hand %g", c.margin, i, below, above, want)
			}
		}
		if low, high := e.List[0], e.List[1]; low.Below.Governs.Limit != "pin-bearing" || low.Above.Outcome != Passes || high.Above.Outcome != Outside || high.Above.Governs.Limit != "pin-plate-dimensions" {
			t.Errorf("margin %g: %+v, %+v", c.margin, low.Below, high.Above)
		}
	}
	d.Margin = 1
	g := &d.plan(t, nil, "thickness=5 mm..13 mm step 1 mm").Grids[0]
	rows := d.rows(t, g)
	s := Settle(g, rows)
	if number(s.Lightest) != 9 || len(s.Steps) != 1 || number(s.Steps[0].Row) != 8 || s.Steps[0].Row.Governs.Limit != "pin-bearing" {
		t.Errorf("%+v", s)
	}
	// One turn: halved, and said to be no more than that.
	if e, err := d.Refine(t.Context(), g, rows); err != nil || e.Finely || len(e.List) != 1 || e.Tried > 9+8 {
		t.Errorf("%v, %+v", err, e)
	}
}

// The same eye by EN 1993-1-8, Table 3.10: a replaceable pin bears with F_b,Ed,ser <= 0.6 t d f_y/gamma_M6,ser, with the lower yield, 305 MPa of the pin, and
// gamma_M6,ser = 1: 30 kN need 30000/(0.6 x 25 x 305) = 6.557 mm.
func TestEdgeByHandEN(t *testing.T) {
	d := deskOf(t, strings.NewReplacer("AISC 360-22", "EN 1993-1-8:2005", "ASD", "partial factors", "level: service", "level: factored", "60 kN", "30 kN",
		"leave_out: [lug-dishing, pin-contact-pressure, pin-combined]", "leave_out: [lug-dishing]").Replace(eye))
	g := &d.plan(t, nil, "thickness=5 mm..12 mm step 1 mm").Grids[0]
	e, err := d.Refine(t.Context(), g, d.rows(t, g))
	if err != nil || len(e.List) == 0 {
		t.Fatalf("%v, %+v", err, e)
	}
	if x := e.List[0]; number(x.Below) > 6.557 || number(x.Above) < 6.557 || x.Below.Governs.Limit != "pin-bearing-service" {
		t.Errorf("%g to %g, %+v; by hand 6.557", number(x.Below), number(x.Above), x.Below.Governs)
	}
}

// A row is what check says of the same parameters: verdict, governing check and utilisation to the last bit.
func TestRowsAreWhatCheckSays(t *testing.T) {
	src, err := os.ReadFile(filepath.Join("..", "..", "testdata", "jobs", "sidelocker.yaml"))
	if err != nil {
		t.Fatal(err)
	}
	d := deskOf(t, strings.Replace(string(src), "revision: A", "revision: A\nshop: plasma", 1))
	g := &d.plan(t, nil, "plate_thickness=5 mm, 8 mm, 12 mm", "root_height=60 mm, 150 mm", "electrode=E70, E80").Grids[0]
	rows := d.rows(t, g)
	if len(rows) != 12 {
		t.Fatalf("%d rows", len(rows))
	}
	outcomes := map[Outcome]int{}
	for i := range rows {
		r := &rows[i]
		outcomes[r.Outcome]++
		alone := *d.Job
		alone.Brackets = []job.Bracket{With(g.Spec, g.Values(i))}
		full, err := run.Job(t.Context(), d.client, &alone, run.Options{})
		if (err != nil) != (r.Outcome == Refused) {
			t.Errorf("row %d: %s, and check says %v", i, r.Outcome, err)
		}
		if err != nil {
			continue
		}
		k := full.Brackets[0].Report.Governing()
		if k == nil || r.Governs == nil || *r.Governs != (Check{k.Limit, k.Place, k.Case, k.Verdict, k.Utilisation}) || (r.Outcome == Passes) != full.Passes() ||
			r.NotChecked != len(full.Brackets[0].Report.NotChecked) {
			t.Errorf("row %d: %s, %+v; check says %s, %+v", i, r.Outcome, r.Governs, full.Verdict(), k)
		}
	}
	if len(outcomes) < 2 {
		t.Errorf("outcomes %v", outcomes)
	}
}

// counting counts what is asked before the first row is out.
type counting struct {
	run.Trier
	built int
}

func (c *counting) Build(ctx context.Context, q []geometry.Request) ([]dial.Built, error) {
	c.built += len(q)
	return c.Trier.Build(ctx, q)
}

// The first row of 1000 variants is out before a tenth of them is built, and a stop leaves what is done.
func TestRowsComeAtOnce(t *testing.T) {
	d := deskOf(t, eye)
	g := &d.plan(t, nil, "thickness=8 mm..17.99 mm step 0.01 mm").Grids[0]
	if g.Count() != 1000 {
		t.Fatalf("%d variants", g.Count())
	}
	c := &counting{Trier: d.client}
	d.Client = c
	ctx, cancel := context.WithCancel(t.Context())
	defer cancel()
	first := 0
	rows, err := d.Run(ctx, g, func(r *Row) error {
		if first == 0 {
			first = c.built
		}
		if r.Index == 20 {
			cancel()
		}
		return nil
	})
	if first == 0 || first >= 100 {
		t.Errorf("%d variants were built before the first row", first)
	}
	if !errors.Is(err, context.Canceled) || len(rows) < 21 || len(rows) >= 1000 {
		t.Errorf("%d rows, %v", len(rows), err)
	}
}

func TestReadAxis(t *testing.T) {
	mm := geometry.Param{Name: "t", Unit: geometry.MM, Min: 3, Max: 60}
	count := geometry.Param{Name: "n", Unit: geometry.Count, Min: 1, Max: 6}
	word := geometry.Param{Name: "w", Unit: geometry.Word, Choices: []string{"both", "none"}}
	size := geometry.Param{Name: "s", Unit: geometry.Size}
	said := func(a Axis, system units.System) string {
		var out []string
		for _, v := range a.Values {
			out = append(out, Say(v, system))
		}
		return strings.Join(out, " | ")
	}
	for _, c := range []struct {
		p      geometry.Param
		text   string
		want   string
		system units.System
		span   bool
	}{
		{mm, "6 mm..16 mm step 2 mm", "6 mm | 8 mm | 10 mm | 12 mm | 14 mm | 16 mm", units.Metric, true},
		{mm, "1/4 in to 3/4 in by 1/8 in", "1/4 in | 3/8 in | 1/2 in | 5/8 in | 3/4 in", units.Inch, true},
		{mm, "1/4 in..3/4 in by 1/8 in", "1/4 in | 3/8 in | 1/2 in | 5/8 in | 3/4 in", units.Inch, true},
		{mm, "12 mm, 6 mm", "6 mm | 12 mm", units.Metric, false},
		{mm, "3 mm, 8 mm..10 mm step 1 mm", "3 mm | 8 mm | 9 mm | 10 mm", units.Metric, false},
		{mm, "57.3 mm..60 mm step 0.1 mm", "57.3 mm | 57.4 mm | 57.5 mm | 57.6 mm | 57.7 mm | 57.8 mm | 57.9 mm | 58 mm | 58.1 mm | 58.2 mm | 58.3 mm | 58.4 mm | 58.5 mm | 58.6 mm | 58.7 mm | 58.8 mm | 58.9 mm | 59 mm | 59.1 mm | 59.2 mm | 59.3 mm | 59.4 mm | 59.5 mm | 59.6 mm | 59.7 mm | 59.8 mm | 59.9 mm | 60 mm", units.Metric, true},
		{count, "1..3", "1 | 2 | 3", units.Metric, false},
		{word, "all", "both | none", units.Metric, false},
		{word, "none,both", "none | both", units.Metric, false},
		{size, "M16, M12", "M12 | M16", units.Metric, false},
		{size, "3/4-10, 1/2-13", "1/2-13 | 3/4-10", units.Metric, false},
	} {
		a, err := ReadAxis(c.p, c.text)
		if got := said(a, c.system); err != nil || got != c.want || a.Range != c.span {
			t.Errorf("%q: %s, %v, range %v", c.text, got, err, a.Range)
		}
	}
	for _, c := range []struct {
		p    geometry.Param
		text string
		want string
	}{
		{mm, "6..16 mm step 2 mm", "has no unit"},
		{mm, "6 mm..16 mm", "a range without a step"},
		{mm, "12 mm, 6 mm, 1.2 cm", "1.2 cm stands there twice; each value once"},
		{word, "both, both", "both stands there twice"},
		{mm, "6 mm..16 mm step 0 mm", "above 0"},
		{mm, "6 mm..16 mm step -1 mm", "above 0"},
		{mm, "16 mm..6 mm step 1 mm", "the smaller one first"},
		{mm, "6 mm..16 mm step 0.0001 mm", "more than 10000 values"},
		{mm, "70 mm", "t takes 3 mm to 60 mm"},
		{mm, "3 in", "t takes 0.118 in to 2.362 in"},
		{mm, "", "is empty"},
		{mm, "6 mm..", "without its first or last value"},
		{mm, "..6 mm step 1 mm", "without its first or last value"},
		{mm, "6 mm..16 mm step 1 kg", "the step: 1 kg is a mass"},
		{mm, "6 mm; 8 mm", "separated by commas"},
		{mm, "rack, 7 mm", "stands alone"},
		{mm, "all", "write the values"},
		{word, "all, none", "stands alone"},
		{word, "", `""; one of both, none`},
		{count, "1.5", "is not a whole number"},
		{count, "7", "n takes 1 to 6"},
		{word, "bth", `one of both, none; nearest is "both"`},
		{size, "M12..M16", "sizes have no range"},
		{size, "big", "is no bolt size"},
	} {
		if a, err := ReadAxis(c.p, c.text); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q: %v, %v; want %q", c.text, a.Values, err, c.want)
		}
	}
}

// What a parameter is the size of, of three kinds that share no code for it.
func TestRoles(t *testing.T) {
	d := deskOf(t, eye)
	for _, c := range []struct {
		kind string
		with []part.Param
		want map[string]Role
	}{
		{"clevis", nil, map[string]Role{
			"pin_diameter": Bar, "ear_thickness": Plate, "outer_gusset_thickness": Plate, "between_thickness": Plate, "stiffener_thickness": Plate, "cheek_thickness": Plate,
			"ear_weld": Leg, "gusset_weld": Leg, "bolt_size": Bolt, "bolts_per_row": Many, "ear_width": Outline, "end_distance": Outline,
			"gussets": Form, "support_thickness": "", "lug_thickness": "", "pin_height": "", "gap": "", "angle_thickness": "", "snipe_clearance": "", "head": "", "pin_ends": "",
			"foot": "", "couple": "", "ear_material": "", "web_clear_height": "",
		}},
		{"lap-plate", []part.Param{{Name: "fixing", Unit: "word", Text: "bolted"}}, map[string]Role{"lap_thickness": Plate, "bolt_size": Bolt, "overlap": Outline, "bolt_rows": Many, "fixing": ""}},
		{"gusset", nil, map[string]Role{"thickness": Plate, "weld": Leg, "along": Outline, "shelf_thickness": "", "support_thickness": "", "load_distance": ""}},
	} {
		kind, err := geometry.Find(d.kinds, c.kind)
		if err != nil {
			t.Fatal(err)
		}
		got, err := AllRoles(t.Context(), d.client, &job.Bracket{Name: "b", Kind: c.kind, Hand: part.LeftHand, Params: c.with}, kind)
		if err != nil {
			t.Fatal(err)
		}
		for name, want := range c.want {
			if got[name] != want {
				t.Errorf("%s of %s: %q, want %q", name, c.kind, got[name], want)
			}
		}
	}
}

// Masses by hand: a lap of 80 x 322 x 6 mm without a hole, in steel of 7850 kg/m3, weighs 1.2133 kg; its outline is 804 mm; a fillet of 4 mm on both halves, along
// the end and twice the length beyond the stop, 2 x (80 + 2 x 150) = 760 mm, holds 760 x 8 mm3.
func TestMeasure(t *testing.T) {
	lap := strings.NewReplacer("kind: lug", "kind: lap-plate", `turns: "no"`, "ends: rectangular, weld: 4 mm, overlap: 160 mm, lap_thickness: 6 mm", "z: 60 kN", "z: 0 kN", "x: 0 N", "x: 10 kN").Replace(eye)
	d := deskOf(t, lap)
	g := &d.plan(t, nil, "lap_thickness=6 mm").Grids[0]
	r := d.rows(t, g)[0]
	for _, c := range []struct{ got, want float64 }{
		{r.Takes.BareKG, 80 * 322 * 6 * 7.85e-6}, {r.Takes.CutMM, 804}, {r.Takes.WeldMM3, 6080}, {r.Takes.KG - r.Takes.BareKG, 6080 * 7.85e-6},
	} {
		if math.Abs(c.got-c.want) > 1e-6*c.want {
			t.Errorf("%g, by hand %g", c.got, c.want)
		}
	}
	if len(r.Takes.Stock) != 1 || r.Takes.Stock[0] != (Stock{6, "S355"}) {
		t.Errorf("%v", r.Takes.Stock)
	}
}

// Of two brackets, one is lightest in 8 mm and one in 10 mm; both in 10 mm weigh 1 kg more, twice that for two pieces. One that cannot be in anything but
// 12 mm keeps its own.
func TestTogether(t *testing.T) {
	row := func(kg float64, mm ...float64) Row {
		r := Row{Outcome: Passes, Takes: Takes{KG: kg}}
		for _, m := range mm {
			r.Takes.add(Stock{m, "S355"})
		}
		return r
	}
	a := Candidate{Rows: []Row{row(7, 8), row(8, 10), row(9, 12)}, Quantity: 2}
	b := Candidate{Rows: []Row{{Outcome: Fails, Takes: Takes{KG: 1}}, row(5, 10), row(6, 12)}, Quantity: 1}
	got, err := Together([]Candidate{a, b})
	if err != nil || len(got) != 2 || got[0].KG != 21 || len(got[0].Stock) != 1 || got[0].Stock[0].ThicknessMM != 10 || got[1].KG != 19 || len(got[1].Stock) != 2 {
		t.Errorf("%+v, %v", got, err)
	}
	c := Candidate{Rows: []Row{row(3, 12)}, Quantity: 1}
	got, err = Together([]Candidate{a, b, c})
	if err != nil || len(got) != 3 || got[0].KG != 27 || got[1].KG != 23 || got[2].KG != 22 {
		t.Errorf("%+v, %v", got, err)
	}
	if got, err := Together([]Candidate{a, {Rows: []Row{{Outcome: Fails}}, Quantity: 1}}); err != nil || len(got) != 0 {
		t.Errorf("%+v, %v", got, err)
	}
}

// The drawing is one that another program draws.
func TestPlot(t *testing.T) {
	p := &Plot{Title: "a & b", Across: "mass, kg", Margin: 1.1, Points: []Point{{10, 0.5, Passes, false, true}, {8, 0.8, Passes, true, false}, {7, 0.95, Short, false, false}, {6, math.Inf(1), Fails, false, false}, {9, 1.2, Outside, false, true}}}
	lines := p.Letters(80, 16)
	text := strings.Join(lines, "\n")
	for _, mark := range []string{"*", "o", "s", "x", "?", "0.91|---", "mass, kg"} {
		if !strings.Contains(text, mark) {
			t.Errorf("no %s in\n%s", mark, text)
		}
	}
	for _, l := range lines {
		if len(l) > 80 {
			t.Errorf("%d columns: %s", len(l), l)
		}
	}
	var out bytes.Buffer
	if err := svg.Write(&out, p.Chart().Drawing()); err != nil {
		t.Fatal(err)
	}
	if strings.Contains(out.String(), "NaN") || strings.Contains(out.String(), "Inf") || !strings.Contains(out.String(), "a &amp; b") {
		t.Error(out.String())
	}
	if (&Plot{Margin: 1}).Letters(80, 8) == nil {
		t.Error("no plot of nothing")
	}
	draw := exec.Command(peer.NeedCommand(t, "rsvg-convert"), "-o", filepath.Join(t.TempDir(), "x.png"))
	draw.Stdin = &out
	if said, err := draw.CombinedOutput(); err != nil {
		t.Errorf("%v: %s", err, said)
	}
}

func TestPlanRefuses(t *testing.T) {
	d := deskOf(t, eye)
	for _, c := range []struct {
		names, varied []string
		want          string
	}{
		{[]string{"ey"}, []string{"thickness=6 mm"}, `no bracket "ey" in x.yaml; it has eye; nearest is "eye"`},
		{nil, []string{"pin_heigth=60 mm"}, `no such parameter; nearest is "pin_height"`},
		{nil, []string{"thickness"}, "no values"},
		{nil, []string{"thickness=6 mm", "thickness=8 mm"}, "varied twice"},
		{nil, []string{"other.thickness=6 mm"}, `"other" is not among those that are varied: eye`},
		{nil, []string{".thickness=6 mm"}, `"" is not among those`},
		{nil, []string{"=6 mm"}, "no parameter before the equals sign"},
		{nil, []string{"pin_height=rack"}, "no thickness of plate, pin, bolt or weld"},
		{nil, nil, "nothing of eye is varied"},
		{nil, []string{"thickness=5 mm..50 mm step 0.01 mm", "width=100 mm..200 mm step 1 mm"}, "more than 100000 variants"},
	} {
		if _, err := NewPlan(t.Context(), d.client, d.Job, d.kinds, c.names, c.varied); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%v %v: %v; want %q", c.names, c.varied, err, c.want)
		}
	}
	// The rack: of the job's sheets where it has some.
	racked := deskOf(t, strings.Replace(eye, "cases:", "sheets: [{thickness: 9 mm, material: S355, width: 1 m, height: 1 m}]\nrack: {plates: [14 mm, 6 mm], welds: [5 mm]}\ncases:", 1))
	for text, want := range map[string]int{"thickness=rack": 3, "weld=rack": 1, "pin_diameter=rack": len(commonPins[units.Metric])} {
		if p := racked.plan(t, nil, text); len(p.Grids[0].Axes[0].Values) != want || len(p.Sources) != 1 {
			t.Errorf("%s: %v, %v", text, p.Grids[0].Axes[0].Values, p.Sources)
		}
	}
}

// A load that no variant carries is the job's fault, told with its place.
func TestFaultOfTheJob(t *testing.T) {
	d := deskOf(t, strings.NewReplacer("kind: lug", "kind: lap-plate", `parameters: {turns: "no"}`, "quantity: 1").Replace(eye))
	g := &d.plan(t, nil, "lap_thickness=6 mm, 8 mm").Grids[0]
	_, err := d.Run(t.Context(), g, func(*Row) error { t.Error("a row"); return nil })
	var fields job.Errors
	if !errors.As(err, &fields) || !strings.Contains(err.Error(), "x.yaml:12:") {
		t.Errorf("%v", err)
	}
}
