package papers_test

// The demo jobs' papers against the model, the checks and the vehicle.

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"lugwright/client/job"
	"lugwright/client/paper"
	"lugwright/client/paper/text"
	"lugwright/client/papers"
	"lugwright/client/run"
	"lugwright/client/run/runtest"
	"lugwright/client/shopfile"
	"lugwright/part"
	"lugwright/strength"
	"lugwright/units"
)

// input is a job's, as the command makes it.
func input(t *testing.T, name string, src []byte) papers.Input {
	t.Helper()
	c, known := runtest.Services(t)
	j, err := job.Read(name, src, known)
	if err != nil {
		t.Fatal(err)
	}
	if shop, ok := shopfile.Shipped(j.ShopName); ok {
		s, err := shopfile.Read(j.ShopName, shop)
		if err != nil {
			t.Fatal(err)
		}
		j.Shop = *s
	}
	r, err := run.Job(t.Context(), c, j, run.Options{Trace: true, Access: true})
	if err != nil {
		t.Fatal(err)
	}
	in := papers.Input{Result: r, Version: "test"}
	if j.Vehicle != nil {
		if in.Vehicle, err = run.OfVehicle(t.Context(), c, j, run.VehicleOptions{}); err != nil {
			t.Fatal(err)
		}
	}
	return in
}

// demos are the demo jobs' inputs, each made once: no paper writes to them.
var demos = map[string]papers.Input{}

func demo(t *testing.T, name string) papers.Input {
	t.Helper()
	if in, ok := demos[name]; ok {
		return in
	}
	src, err := os.ReadFile("../../testdata/jobs/" + name)
	if err != nil {
		t.Fatal(err)
	}
	demos[name] = input(t, name, src)
	return demos[name]
}

func eachJob(t *testing.T, do func(t *testing.T, in papers.Input)) {
	files, err := filepath.Glob("../../testdata/jobs/*.yaml")
	if err != nil || len(files) == 0 {
		t.Fatal("no demo jobs")
	}
	for _, f := range files {
		t.Run(filepath.Base(f), func(t *testing.T) { do(t, demo(t, filepath.Base(f))) })
	}
}

func of(t *testing.T, in papers.Input, name string) *paper.Paper {
	t.Helper()
	k, ok := papers.Find(name)
	if !ok {
		t.Fatalf("no paper %s", name)
	}
	p, why := k.Of(in)
	if (p == nil) == (why == "") {
		t.Fatalf("%s: paper %v, reason %q", name, p != nil, why)
	}
	return p
}

// tables are a paper's with a head.
func tables(p *paper.Paper, head string) []*paper.Table {
	var out []*paper.Table
	for _, b := range p.Blocks {
		if tab, ok := b.(*paper.Table); ok && slices.ContainsFunc(tab.Heads, func(h paper.Head) bool { return h.Text == head }) {
			out = append(out, tab)
		}
	}
	return out
}

// cell is a row's under a head.
func cell(tab *paper.Table, r paper.Row, head string) string {
	i := slices.IndexFunc(tab.Heads, func(h paper.Head) bool { return h.Text == head })
	return r.Cells[i]
}

// mm reads a bare length of a paper back.
func mm(t *testing.T, in papers.Input, s string) float64 {
	t.Helper()
	unit := " mm"
	if in.Result.Job.Units == units.Inch {
		unit = " in"
	}
	v, err := units.Parse(s+unit, units.Length)
	if err != nil {
		t.Fatalf("%q: %v", s, err)
	}
	return v
}

// near is how a printed length may differ: half a hundredth of a mm, or half a thousandth of an inch.
func near(in papers.Input, a, b float64) bool {
	slack := 0.0051
	if in.Result.Job.Units == units.Inch {
		slack = 0.0128
	}
	return math.Abs(a-b) <= math.Max(slack, 5e-4*math.Abs(b))
}

func plain(t *testing.T, p *paper.Paper) string {
	t.Helper()
	var out bytes.Buffer
	if err := text.Write(&out, p); err != nil {
		t.Fatal(err)
	}
	return out.String()
}

// Every paper of every demo job fits 80 columns, ends with cautions in their one wording, has cells for every head, and is the same when made again.
func TestEveryPaper(t *testing.T) {
	eachJob(t, func(t *testing.T, in papers.Input) {
		made, missing := papers.All(in)
		again, _ := papers.All(in)
		if len(made)+len(missing) != len(papers.Kinds()) {
			t.Errorf("%d and %d of %d", len(made), len(missing), len(papers.Kinds()))
		}
		for _, m := range missing {
			if m.Why == "" {
				t.Errorf("%s is missing without a reason", m.Name)
			}
		}
		for i, p := range made {
			got := plain(t, p)
			if got != plain(t, again[i]) {
				t.Errorf("%s differs when it is made again", p.Name)
			}
			for _, l := range strings.Split(got, "\n") {
				if len([]rune(l)) > text.Columns {
					t.Errorf("%s: %q", p.Name, l)
				}
			}
			if !strings.Contains(got, "Mind\n----\n- ") || strings.Contains(got, "not finite") || strings.Contains(got, "NaN") {
				t.Errorf("%s:\n%s", p.Name, got)
			}
			for _, b := range p.Blocks {
				if tab, ok := b.(*paper.Table); ok {
					for _, r := range tab.Rows {
						if len(r.Cells) != len(tab.Heads) {
							t.Errorf("%s: %d cells under %d heads: %v", p.Name, len(r.Cells), len(tab.Heads), r.Cells)
						}
					}
				}
			}
		}
	})
}

// A drawing goes on a page of either size as large as it is drawn, so that its stated scale is true; one at full scale stands under no heading, which would be left alone.
func TestDrawingsFitTheirPage(t *testing.T) {
	figures := 0
	eachJob(t, func(t *testing.T, in papers.Input) {
		made, _ := papers.All(in)
		for _, p := range made {
			for i, b := range p.Blocks {
				f, ok := b.(*paper.Figure)
				if !ok {
					continue
				}
				figures++
				_, headed := p.Blocks[max(i-1, 0)].(*paper.Heading)
				if f.FullScale {
					if headed {
						t.Errorf("%s: %s at full scale stands under a heading", p.Name, f.Drawing.Title)
					}
					continue
				}
				for _, letter := range []bool{false, true} {
					wide, high := (&paper.Paper{Letter: letter}).Room()
					if headed {
						high -= 25 // title and heading
					}
					if f.Drawing.WidthMM > wide+0.01 || f.Drawing.HeightMM > high+0.01 {
						t.Errorf("%s: %s is %.1f x %.1f mm; the page has %.1f x %.1f", p.Name, f.Drawing.Title, f.Drawing.WidthMM, f.Drawing.HeightMM, wide, high)
					}
				}
			}
		}
	})
	if figures < 100 {
		t.Errorf("only %d drawings", figures)
	}
}

// Papers of a job in inches have no length in mm but beside inches.
func TestInches(t *testing.T) {
	made, _ := papers.All(demo(t, "hivecarrier.yaml"))
	bare := regexp.MustCompile(`[0-9] mm\b(?: \(| in)?`)
	for _, p := range made {
		words := strings.Join(strings.Fields(plain(t, p)), " ")
		for _, m := range bare.FindAllString(words, -1) {
			if !strings.HasSuffix(m, "(") {
				t.Errorf("%s: %q in %s", p.Name, m, words)
			}
		}
	}
}

// Lengths in the runs of a weld.
var (
	counted = regexp.MustCompile(`([0-9]+) x ([0-9/.-]+)`)
	about   = regexp.MustCompile(`about ([0-9/.-]+)`)
)

// Each weld has one row: its leg and its runs' lengths are the model's.
func TestWeldMap(t *testing.T) {
	eachJob(t, func(t *testing.T, in papers.Input) {
		p := of(t, in, "weld-map")
		welds := 0
		for i := range in.Result.Brackets {
			welds += len(in.Result.Brackets[i].Part.Welds)
		}
		if p == nil {
			if welds > 0 {
				t.Error("no weld map")
			}
			return
		}
		list, rows := tables(p, "joint"), 0
		k := 0
		for i := range in.Result.Brackets {
			b := in.Result.Brackets[i].Part
			if len(b.Welds) == 0 {
				continue
			}
			tab := list[k]
			k++
			for n, r := range tab.Rows {
				rows++
				number, id, _ := strings.Cut(cell(tab, r, "joint"), " ")
				w := b.Weld(id)
				if w == nil || number != fmt.Sprintf("W%d", slices.IndexFunc(b.Welds, func(x part.WeldGroup) bool { return x.ID == id })+1) || cell(tab, r, "order") != strconv.Itoa(n+1) {
					t.Fatalf("%s: row %v", b.Name, r.Cells)
				}
				size := strings.Fields(cell(tab, r, "size"))
				if w.Kind == part.Fillet && !near(in, mm(t, in, size[1]), w.LegMM) {
					t.Errorf("%s %s: %v, leg %g", b.Name, id, size, w.LegMM)
				}
				want, got := 0.0, 0.0
				for _, s := range w.Segments {
					want += s.B.Sub(s.A).Norm()
				}
				words := cell(tab, r, "runs")
				for _, m := range counted.FindAllStringSubmatch(words, -1) {
					count, _ := strconv.Atoi(m[1])
					got += float64(count) * mm(t, in, m[2])
				}
				for _, m := range about.FindAllStringSubmatch(words, -1) {
					got += mm(t, in, m[1])
				}
				least, most := want-0.06*float64(len(w.Segments))-0.01, want+0.06*float64(len(w.Segments))+0.01
				if in.Result.Job.Units == units.Inch { // up to the next sixteenth
					least, most = want-0.05, most+float64(len(w.Segments))*25.4/16
				}
				if strings.Contains(words, ".") && in.Result.Job.Units == units.Inch {
					t.Errorf("%s %s: %q is in decimals of an inch", b.Name, id, words)
				}
				if got < least || got > most {
					t.Errorf("%s %s: %q is %g, want %g", b.Name, id, words, got, want)
				}
			}
		}
		if rows != welds {
			t.Errorf("%d rows for %d welds", rows, welds)
		}
	})
}

// Each round hole of each distinct piece has one row with its place from the corner of the flat and its sizes.
func TestHoleSchedule(t *testing.T) {
	eachJob(t, func(t *testing.T, in papers.Input) {
		p := of(t, in, "hole-schedule")
		type hole struct{ x, y, dia, cut float64 }
		want := map[string][]hole{}
		var marks []string
		for i := range in.Result.Brackets {
			made := in.Result.Brackets[i].Part.AsMade()
			for k := range made.Plates {
				q := &made.Plates[k]
				if slices.Contains(marks, q.Mark) {
					continue
				}
				marks = append(marks, q.Mark)
				box := q.Outer.BBox()
				for _, h := range q.Holes {
					want[q.Mark] = append(want[q.Mark], hole{h.Center.X - box.Min.X, h.Center.Y - box.Min.Y, h.DiaMM, h.CutMM})
				}
			}
		}
		if p == nil {
			if len(want) > 0 {
				t.Error("no hole schedule")
			}
			return
		}
		for _, tab := range tables(p, "from left") {
			for _, r := range tab.Rows {
				mark := cell(tab, r, "mark")
				if len(want[mark]) == 0 { // a member's: see the test by hand
					continue
				}
				h := want[mark][0]
				want[mark] = want[mark][1:]
				if !near(in, mm(t, in, cell(tab, r, "from left")), h.x) || !near(in, mm(t, in, cell(tab, r, "from bottom")), h.y) || !near(in, mm(t, in, cell(tab, r, "finished")), h.dia) {
					t.Errorf("%s: %v, want %+v", mark, r.Cells, h)
				}
				if cut := cell(tab, r, "cut"); h.cut == 0 && cut != "mark" || h.cut > 0 && !near(in, mm(t, in, cut), h.cut) {
					t.Errorf("%s: %v, want %+v", mark, r.Cells, h)
				}
			}
		}
		for mark, left := range want {
			if len(left) > 0 {
				t.Errorf("%s: %d holes without a row", mark, len(left))
			}
		}
	})
}

// Frame holes are as many as the bolts into supports, at the bolts' own places.
func TestFrameHoles(t *testing.T) {
	in := demo(t, "fieldlab.yaml")
	p := of(t, in, "hole-schedule")
	// The pair stands at x 3650, its bolts 100 apart on either side; the pin 135 and 205 above them.
	tab := tables(p, "rearward")[0]
	if got := fmt.Sprint(tab.Rows[0].Cells, tab.Rows[5].Cells); got != "[bolts 1 -100 -43 -135] [bolts 6 100 -43 -205]" {
		t.Error(got)
	}
	rail := tables(p, "x")
	if len(rail) != 2 || rail[0].Rows[0].Cells[1] != "3550" || rail[0].Rows[0].Cells[3] != "13" {
		t.Errorf("%+v", rail[0])
	}
}

// Rods of M16 go through the beams in holes as wide as the tray's own, 17.5 mm (ISO 273, normal fit).
func TestRodHoles(t *testing.T) {
	in := demo(t, "watertrays.yaml")
	tab := tables(of(t, in, "hole-schedule"), "behind it, and how")[0]
	if got := fmt.Sprint(tab.Rows[0].Cells[:6]); got != "[tray-a, rods body frame, 4 mm S355 4 M16 5 17.5]" {
		t.Error(got)
	}
}

// As many bolts are bought as the groups have, nuts and washers with them; every bolt of the demo jobs has a length. A pin that two halves share is bought once.
func TestBuyList(t *testing.T) {
	eachJob(t, func(t *testing.T, in papers.Input) {
		want := map[string]int{}
		pins := 0
		for i := range in.Result.Brackets {
			b := &in.Result.Brackets[i]
			for _, g := range b.Part.Bolts {
				if g.SameAs == "" {
					want[g.Size+" "+g.Grade] += len(g.Points) * b.Spec.Quantity
				}
			}
			pins += len(b.Part.Pins) * b.Spec.Quantity
		}
		bought, nuts, washers := 0, 0, 0
		for _, x := range papers.Shopping(in.Result) {
			switch x.Item {
			case "bolt", "screw":
				if x.Fit == nil || x.LengthMM < x.GripMM {
					t.Errorf("%+v", x)
				}
				want[x.Size+" "+x.Grade] -= x.Count
				bought += x.Count
			case "nut":
				nuts += x.Count
			case "washer":
				washers += x.Count
			case "pin":
				pins -= x.Count
			}
		}
		for size, left := range want {
			if left != 0 {
				t.Errorf("%s: %d short", size, left)
			}
		}
		shared := 0
		if in.Result.Job.Title == "Farrier's and forge workshop, from the whole vehicle" {
			shared = 2 // of the two lugs under the subframe, whose pins are the clevises'
		}
		if pins != shared {
			t.Errorf("%d pins short, want %d", pins, shared)
		}
		if p := of(t, in, "buy-list"); p != nil && bought > 0 && (nuts < bought || washers < 2*bought) {
			t.Errorf("%d nuts, %d washers for %d bolts", nuts, washers, bought)
		}
	})
}

// Every pin with a nut says in the buy list where its thread may begin: past the ears' outer faces, here from its seats.
func TestNutPinsSayWhereTheirThreadBegins(t *testing.T) {
	eachJob(t, func(t *testing.T, in papers.Input) {
		words := ""
		for i := range in.Result.Brackets {
			b := &in.Result.Brackets[i]
			for _, q := range b.Part.Pins {
				if !slices.ContainsFunc(q.Ends[:], func(e part.PinEnd) bool { return e.Kind == part.EndNut }) {
					continue
				}
				if words == "" {
					words = strings.Join(strings.Fields(plain(t, of(t, in, "buy-list"))), " ")
				}
				lo, hi := math.Inf(1), math.Inf(-1)
				for _, s := range q.Seats {
					lo, hi = min(lo, s.AtMM-s.ThicknessMM/2), max(hi, s.AtMM+s.ThicknessMM/2)
				}
				want := units.Words(fmt.Sprintf("no thread within %.4g mm of it", hi-lo), in.Result.Job.Units)
				if !strings.Contains(words, want) || !strings.Contains(words, b.Spec.Name) {
					t.Errorf("%s: the buy list does not say %q", b.Spec.Name, want)
				}
			}
		}
	})
}

// One farm-machine maker's table, 10.9, zinc, dry, 75 % of proof: M12 125 +/- 12, M16 310 +/- 30 N m, less a quarter when it is oiled.
func TestTorques(t *testing.T) {
	in := demo(t, "forgeworkshop.yaml")
	p := of(t, in, "torque-card")
	tab := tables(p, "preload")[0]
	for _, r := range tab.Rows {
		want := map[string][2]float64{"M12 10.9": {125, 12}, "M16 10.9": {310, 30}}[r.Cells[0]]
		dry, _ := strconv.ParseFloat(cell(tab, r, "K 0.20 plain, dry"), 64)
		oiled, _ := strconv.ParseFloat(cell(tab, r, "K 0.15 oiled, locker"), 64)
		if math.Abs(dry-want[0]) > want[1] || math.Abs(oiled-0.75*dry) > 1 {
			t.Errorf("%v: %g and %g, want %v", r.Cells, dry, oiled, want)
		}
	}
	got := said(p)
	for _, want := range []string{"* builder's choice: the job states no preload", "NOT by torque: a gap of 4 mm stays open", "castle nut of the pin: run it up until 0.5 mm of play"} {
		if !strings.Contains(got, want) {
			t.Errorf("no %q in:\n%s", want, got)
		}
	}
}

// said is every cell and item of a paper, a line each.
func said(p *paper.Paper) string {
	var out []string
	for _, b := range p.Blocks {
		switch b := b.(type) {
		case *paper.Table:
			for _, r := range b.Rows {
				out = append(out, r.Cells...)
			}
		case *paper.List:
			out = append(out, b.Items...)
		case *paper.Words:
			out = append(out, b.Text)
		}
	}
	return strings.Join(out, "\n")
}

const preloaded = `job: a bolted clevis
basis: AISC 360-22
method: ASD
units: %s
cases:
  A1: {level: service, source: own}
brackets:
  - {name: c, kind: clevis, hand: left, parameters: {bolt_preload: 0.6, bolt_grade: "8.8"}, loads: [{case: A1, force: {x: 0 N, y: 0 N, z: -1 kN}}]}
`

// Where the job states a preload, the card has the numbers of the check of the torque and of separation.
func TestStatedPreload(t *testing.T) {
	in := input(t, "x.yaml", fmt.Appendf(nil, preloaded, "metric"))
	line := map[string]float64{}
	for _, k := range in.Result.Brackets[0].Report.Checks {
		if k.Limit == "bolt-torque" {
			for _, l := range k.Lines {
				line[l.Symbol] = l.Value
			}
		}
	}
	tab := tables(of(t, in, "torque-card"), "preload")[0]
	r := tab.Rows[0]
	number := func(head string) float64 { // N m or kN
		v, err := strconv.ParseFloat(strings.TrimSuffix(cell(tab, r, head), " kN"), 64)
		if err != nil {
			t.Fatal(err)
		}
		return v * 1000
	}
	if got := number("K 0.20 plain, dry"); math.Abs(got-line["T_0"]) > 500 {
		t.Errorf("%g, T_0 = %g", got, line["T_0"])
	}
	if got := number("K 0.15 oiled, locker"); math.Abs(got-line["T_lub"]) > 500 {
		t.Errorf("%g, T_lub = %g", got, line["T_lub"])
	}
	if got := number("preload"); math.Abs(got-line["P"]) > 5e-4*line["P"] || line["P"] == 0 {
		t.Errorf("%g, P = %g", got, line["P"])
	}
	least, most, _ := strings.Cut(cell(tab, r, "least to most"), " to ")
	for i, s := range []string{least, most} {
		v, err := units.Parse(s, units.Force)
		want := line[[]string{"P_min", "P_max"}[i]]
		if err != nil || math.Abs(v-want) > 1e-3*want {
			t.Errorf("%s, want %g", s, want)
		}
	}
	// In pounds: N m over 1.3558.
	inch := tables(of(t, input(t, "x.yaml", fmt.Appendf(nil, preloaded, "inch")), "torque-card"), "preload")[0]
	v, _ := strconv.ParseFloat(cell(inch, inch.Rows[0], "K 0.20 plain, dry"), 64)
	if math.Abs(v-line["T_0"]/1355.818) > 0.6 {
		t.Errorf("%g lbf ft, want %g", v, line["T_0"]/1355.818)
	}
}

// The outside leg that the brake measures is what the job asked for: the tray's sides 80, 140 and 100 mm high, the bent foot's leg 200 mm, the tab's foot 60 mm. It
// is how far the folded plate reaches, too.
func TestBends(t *testing.T) {
	for name, want := range map[string][]float64{"watertrays.yaml": {80, 80, 80, 80, 140, 140, 140, 140, 100, 100, 100, 100}, "deckfeet.yaml": {200}, "forgefittings.yaml": {60}} {
		in := demo(t, name)
		var got []float64
		for _, tab := range tables(of(t, in, "bend-card"), "outside leg") {
			for _, r := range tab.Rows {
				got = append(got, mm(t, in, cell(tab, r, "outside leg")))
			}
		}
		if !slices.Equal(got, want) {
			t.Errorf("%s: %v, want %v", name, got, want)
		}
	}
}

// Gaps of the twist card are the report's; what is left at full twist is the room less what the twist takes.
func TestTwist(t *testing.T) {
	in := demo(t, "fieldlab.yaml")
	tab := tables(of(t, in, "twist-test"), "left at full twist")[0]
	for i, r := range tab.Rows {
		f := in.Vehicle.Answer.Clearance.Findings[i]
		if got := mm(t, in, cell(tab, r, "needs")); math.Abs(got-f.Need) > 0.06 {
			t.Errorf("%v, needs %g", r.Cells, f.Need)
		}
	}
	// 425 tan 10 = 74.94 of 70; 1400 sin 10 = 243.1 of 260.
	if cell(tab, tab.Rows[0], "left at full twist") != "-4.9" || cell(tab, tab.Rows[0], "verdict") != "FAIL" || cell(tab, tab.Rows[1], "left at full twist") != "16.9" {
		t.Errorf("%v", tab.Rows)
	}
}

func TestLift(t *testing.T) {
	in := demo(t, "fieldlab.yaml")
	p := of(t, in, "lift-plan")
	tab := tables(p, "plan for")[0]
	sum := 0.0
	for i, r := range tab.Rows {
		s := in.Vehicle.Answer.Lift.Shares[i]
		even, err := units.Parse(cell(tab, r, "even share"), units.Mass)
		plan, err2 := units.Parse(cell(tab, r, "plan for"), units.Mass)
		if err != nil || err2 != nil || math.Abs(even-s.EvenKG) > 0.06 || math.Abs(plan-s.PlanKG) > 0.06 {
			t.Errorf("%v, want %+v", r.Cells, s)
		}
		sum += even
	}
	if math.Abs(sum-in.Vehicle.Answer.Lift.Mass.KG.Value) > 0.3 {
		t.Errorf("%g kg in all", sum)
	}
	if got := strings.Join(strings.Fields(plain(t, p)), " "); !strings.Contains(got, "lower on to single first, its pin in; then pair-left and pair-right together") {
		t.Error(got)
	}
}

// The places to look at are those with the highest use among the checks of strength; each use is that of a check.
func TestHotSpots(t *testing.T) {
	eachJob(t, func(t *testing.T, in papers.Input) {
		list := tables(of(t, in, "inspection-log"), "look at")
		for i, tab := range list {
			b := &in.Result.Brackets[i]
			var uses []string
			for _, k := range b.Report.Checks {
				uses = append(uses, units.Utilisation(k.Utilisation))
			}
			for _, r := range tab.Rows {
				if !slices.Contains(uses, cell(tab, r, "used")) {
					t.Errorf("%s: %v", b.Spec.Name, r.Cells)
				}
			}
			first := cell(tab, tab.Rows[0], "used")
			for _, k := range b.Report.Checks {
				if !k.Detail && !k.Fatigue && k.Verdict != strength.NotApplied && b.Part.Weld(k.Thing) != nil && units.Utilisation(k.Utilisation) > first && len(first) == 4 {
					t.Errorf("%s: %s is at %g, more than the first place, %s", b.Spec.Name, k.Place, k.Utilisation, first)
				}
			}
		}
	})
}

// The bar of an arch is welded last: its words, its weld map's order and its fit sequence agree.
func TestArchBarIsWeldedLast(t *testing.T) {
	in := demo(t, "hivecarrier.yaml")
	at := slices.IndexFunc(in.Result.Brackets, func(b run.Bracket) bool { return b.Spec.Kind == "arch" })
	b := in.Result.Brackets[at].Part
	if !slices.ContainsFunc(b.Notes, func(n string) bool { return strings.Contains(n, "the bar is welded last") }) {
		t.Error("the notes do not say so")
	}
	tab := tables(of(t, in, "weld-map"), "order")[at]
	n := len(tab.Rows)
	for i, r := range tab.Rows {
		if onBar := strings.Contains(cell(tab, r, "joins"), " on bar "); onBar != (i >= n-2) {
			t.Errorf("order %s: %s", cell(tab, r, "order"), cell(tab, r, "joins"))
		}
	}
	words := strings.Join(strings.Fields(plain(t, of(t, in, "fit-sequence"))), " ")
	for _, want := range []string{"weld W3, W4, W5, W6, W7, W8, W9, W10, alternate sides [", "weld W1, W2, alternate sides"} {
		if !strings.Contains(words, want) {
			t.Errorf("the fit sequence does not say %q", want)
		}
	}
	if n := strings.Count(words, "set and tack plate-1 (SINGLE"); n != 1 {
		t.Errorf("plate-1 is set %d times", n)
	}
}

// Where welds act together the one to look at is that of the check's place, not the one under whose name they stand.
func TestHotSpotOfWeldsActingTogether(t *testing.T) {
	in := demo(t, "hivecarrier.yaml")
	list, seen := tables(of(t, in, "inspection-log"), "look at"), 0
	for i, tab := range list {
		b := &in.Result.Brackets[i]
		for _, k := range b.Report.Checks {
			_, together, _ := strings.Cut(k.Place, " acting with it, at ")
			for _, r := range tab.Rows {
				words := cell(tab, r, "look at")
				if together == "" || k.Thing == together || !strings.Contains(words, "acting with") || cell(tab, r, "used") != units.Utilisation(k.Utilisation) {
					continue
				}
				seen++
				n := 1 + slices.IndexFunc(b.Part.Welds, func(w part.WeldGroup) bool { return w.ID == together })
				if want := fmt.Sprintf("W%d %s, ", n, together); !strings.HasPrefix(words, want) || !strings.HasSuffix(words, ", acting with W1 "+k.Thing) {
					t.Errorf("%s: %q for %s, need %s", b.Spec.Name, words, k.Place, want)
				}
			}
		}
	}
	if seen == 0 {
		t.Error("no row of welds acting together")
	}
}

// A job that fails has its warning on every paper.
func TestWarning(t *testing.T) {
	in := demo(t, "fieldlab-byfeel.yaml")
	in.Warning = "NOT PASSED: do not use"
	made, _ := papers.All(in)
	for _, p := range made {
		if !strings.HasPrefix(plain(t, p), "NOT PASSED") {
			t.Errorf("%s has no warning", p.Name)
		}
	}
}

// Rods are matched to holes by their place and to supports by the load paths: two sets of unlike rods in one bracket, under two beams, get each their own drill.
// What no path says is said, and not passed over.
func TestRodsOfSeveralSupports(t *testing.T) {
	in := demo(t, "watertrays.yaml")
	r := *in.Result
	in.Result = &r
	r.Brackets = r.Brackets[:1:1]
	r.Brackets = slices.Clone(r.Brackets)
	b := *r.Brackets[0].Part
	r.Brackets[0].Part = &b
	// The tray's first plate is its sheet; one more plate far beside it, for a set of thinner rods, stands first among the plates.
	other := part.Plate{ID: "shelf", Name: "shelf", Mark: "SHELF", ThicknessMM: 5, Material: "S355", Outer: b.Plates[0].Outer.Clone(), Pose: b.Plates[0].Pose,
		Holes: []part.Hole{{ID: "rod", DiaMM: 11, CutMM: 11, Purpose: part.ForRod, Finish: part.AsCut}}}
	other.Pose.Origin = other.Pose.Origin.Add(part.Vec{X: 5000})
	b.Plates = append([]part.Plate{other}, b.Plates...)
	more := b.Rods[0]
	more.ID, more.Size, more.DiaMM, more.Points = "thin", "M10", 10, b.Rods[0].Points[:1:1]
	more.Pose.Origin = other.Pose.Origin.Sub(more.Pose.U.Scale(more.Points[0].X)).Sub(more.Pose.V.Scale(more.Points[0].Y))
	b.Rods = append(slices.Clone(b.Rods), more)
	b.Supports = append(slices.Clone(b.Supports), part.Support{ID: "web", Kind: part.RailWeb, ThicknessMM: 7, Material: "S355"})
	rows := func() []paper.Row { return tables(of(t, in, "hole-schedule"), "behind it, and how")[0].Rows }
	if got := fmt.Sprint(rows()[0].Cells[:6], rows()[1].Cells[:6]); got != "[tray-a, rods body frame, 4 mm S355 4 M16 5 17.5] [tray-a, thin NOT KNOWN which support 1 M10 5 11]" {
		t.Error(got)
	}
	b.Paths = append(slices.Clone(b.Paths), part.Path{Branches: []part.Branch{{Through: []string{"shelf", "thin", "web"}}}})
	if got := fmt.Sprint(rows()[1].Cells); got != "[tray-a, thin rail web, 7 mm S355 1 M10 5 11 look behind the web: harness, brake and fuel pipe]" {
		t.Error(got)
	}
	b.Plates = b.Plates[1:]
	if got := rows()[1].Cells; got[5] != "?" || !strings.Contains(got[6], "no hole of the bracket lies on these rods") {
		t.Error(got)
	}
}

// Access that nobody looked for is not told as good.
func TestAccessNotLookedAt(t *testing.T) {
	in := demo(t, "fieldlab.yaml")
	access := func() map[string]int {
		found := map[string]int{}
		for _, tab := range tables(of(t, in, "weld-map"), "access") {
			for _, r := range tab.Rows {
				found[cell(tab, r, "access")]++
			}
		}
		return found
	}
	if got := access(); got["not looked at"] > 0 || got["yes"] == 0 {
		t.Error(got)
	}
	r := *in.Result
	in.Result, r.Brackets = &r, slices.Clone(r.Brackets)
	for i := range r.Brackets {
		r.Brackets[i].Looked, r.Brackets[i].Access = false, nil
	}
	if got := access(); len(got) != 1 || got["not looked at"] == 0 {
		t.Error(got)
	}
}

// The corners of a folded tray are welded after folding and before paint, with a filler that is bought and notes on it.
func TestClosedCorners(t *testing.T) {
	in := demo(t, "watertrays.yaml")
	got := said(of(t, in, "fit-sequence"))
	for _, name := range []string{"TRAYA", "TRAYB", "TRAYC"} {
		at := strings.Index(got, "weld the corners of tray ("+name)
		if at < 0 || !strings.Contains(got[at:], "then paint") || !strings.Contains(got[:at], "fold what is folded") || strings.Contains(got[:at], "deburr, paint") {
			t.Errorf("%s:\n%s", name, got)
		}
	}
	if got := said(of(t, in, "buy-list")); !strings.Contains(got, "filler that matches S355\ncorners of tray-a, tray-c closed by welding") || !strings.Contains(got, "filler that matches 5083-H116") {
		t.Error(got)
	}
	if got := said(of(t, in, "filler-notes")); !strings.Contains(got, "tray-b corners") || !strings.Contains(got, "are in no check") || strings.Contains(got, "dummy pin") {
		t.Error(got)
	}
}

// At the counter a job asks for nothing that it does not buy; the half of a body on each jack pair is a rule without a source.
func TestAskedForWhatIsBought(t *testing.T) {
	eachJob(t, func(t *testing.T, in papers.Input) {
		p := of(t, in, "buy-list")
		if p == nil {
			return
		}
		pins, cotters := 0, 0
		for i := range in.Result.Brackets {
			pins += len(in.Result.Brackets[i].Part.Pins)
		}
		for _, x := range papers.Shopping(in.Result) {
			if x.Item == "cotter" {
				cotters++
			}
		}
		got := said(p)
		if strings.Contains(got, "pins not zinc plated") != (pins > 0) || strings.Contains(got, "bar and pins") != (pins > 0) || strings.Contains(got, "once: cotters") != (cotters > 0) {
			t.Errorf("%d pins, %d cotters:\n%s", pins, cotters, got)
		}
	})
	if got := said(of(t, demo(t, "fieldlab.yaml"), "lift-plan")); !strings.Contains(got, "rocks on a diagonal pair (common practice, no source)") {
		t.Error(got)
	}
}
