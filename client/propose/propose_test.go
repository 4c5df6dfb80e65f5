package propose

import (
	"context"
	"errors"
	"fmt"
	"math"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"lugwright/client/job"
	"lugwright/client/run"
	"lugwright/client/run/runtest"
	"lugwright/client/sweep"
	"lugwright/geometry"
	"lugwright/part"
	"lugwright/services/dial"
	"lugwright/units"
)

const head = `job: first sizes
basis: AISC 360-22
method: ASD
cases:
  A1: {level: service, source: builder's choice}
brackets:
`

type desk struct {
	*sweep.Bench
	client *dial.Client
	kinds  []geometry.Kind
	spec   *job.Bracket
	kind   *geometry.Kind
}

func deskOf(t *testing.T, src string) *desk {
	t.Helper()
	c, known := runtest.Services(t)
	j, err := job.Read("x.yaml", []byte(src), known)
	if err != nil {
		t.Fatal(err)
	}
	densities, err := run.ReadDensities(t.Context(), c)
	if err != nil {
		t.Fatal(err)
	}
	d := &desk{&sweep.Bench{Client: c, Job: j, Densities: densities, Margin: 1}, c, known.Kinds, &j.Brackets[0], nil}
	if d.kind, err = geometry.Find(d.kinds, d.spec.Kind); err != nil {
		t.Fatal(err)
	}
	return d
}

// only varies these parameters and keeps all others.
func (d *desk) only(t *testing.T, varied ...string) Options {
	t.Helper()
	var o Options
	for i := range d.kind.Params {
		o.Keep = append(o.Keep, d.kind.Params[i].Name)
	}
	for _, text := range varied {
		name, values, _ := strings.Cut(text, "=")
		i := slices.Index(o.Keep, name)
		k := slices.IndexFunc(d.kind.Params, func(p geometry.Param) bool { return p.Name == name })
		a, err := sweep.ReadAxis(d.kind.Params[k], values)
		if err != nil {
			t.Fatal(err)
		}
		o.Vary, o.Keep = append(o.Vary, a), slices.Delete(o.Keep, i, i+1)
	}
	return o
}

func (d *desk) find(t *testing.T, o Options) *Answer {
	t.Helper()
	a, err := Find(t.Context(), d.Bench, d.spec, d.kind, o)
	if err != nil {
		t.Fatal(err)
	}
	return a
}

// everySide is a fork under loads to all sides, worn an eye whose pull comes and goes.
var everySide = func() string {
	s := head + "  - name: fork\n    kind: clevis\n    hand: left\n    parameters: {couple: cross member at this station}\n    loads:\n"
	for i := range 24 {
		a := float64(i) * math.Pi / 12
		s += fmt.Sprintf("      - {case: A1, state: %d, force: {x: %.0f N, y: %.0f N, z: %.0f N}}\n", i, 2000*math.Sin(3*a), 9000*math.Sin(a), 14000*math.Cos(2*a))
	}
	return s
}()

const (
	worn = head + `  - name: eye
    kind: lug
    hand: left
    loads:
      - {case: A1, state: up, force: {x: 0 N, y: 2 kN, z: 30 kN}}
      - {case: A1, state: down, force: {x: 0 N, y: 0 N, z: 2 kN}}
      - {case: A1, state: along, force: {x: 6 kN, y: 0 N, z: 5 kN}}
    spectrum: [{from: "A1, down", to: "A1, up", cycles: 5000000}]
`
	eye = head + `  - name: eye
    kind: lug
    hand: left
    loads: [{case: A1, force: {x: 4 kN, y: 3 kN, z: 30 kN}}]
`
	fork = head + `  - name: fork
    kind: clevis
    hand: left
    parameters: {couple: cross member at this station}
    loads: [{case: A1, force: {x: 2 kN, y: -9 kN, z: -12 kN}}]
`
	lap = head + `  - name: lap
    kind: lap-plate
    hand: left
    parameters: {fixing: bolted, member_thickness: 12 mm, overlap: 120 mm}
    loads: [{case: A1, force: {x: 15 kN, y: 0 N, z: 0 N}}]
`
)

// brute checks every combination under all loads, and gives the lightest that pass, no two with the same plates, pins and bolts.
func (d *desk) brute(t *testing.T, o Options, f *Form) (best []sweep.Row, nearest *sweep.Row) {
	t.Helper()
	g := sweep.Grid{Spec: d.spec}
	for _, s := range f.Sizes {
		g.Axes = append(g.Axes, s.Axis)
	}
	var variants [][]part.Param
	for i := range g.Count() {
		variants = append(variants, g.Values(i))
	}
	rows, err := d.Try(t.Context(), d.spec, variants)
	if err != nil {
		t.Fatal(err)
	}
	have := map[string]bool{}
	for _, r := range sweep.LightestFirst(rows) {
		if key := bought(f, r); !have[key] && len(best) < shown {
			have[key], best = true, append(best, *r)
		}
	}
	return best, sweep.Nearest(rows)
}

func sameRow(a, b *sweep.Row) bool {
	return slices.Equal(a.Values, b.Values) && a.Takes.KG == b.Takes.KG && a.Outcome == b.Outcome && *a.Governs == *b.Governs && a.NotChecked == b.NotChecked
}

// Where every combination is tried, the lightest and its runners-up are those of the whole grid checked under all loads. Where that is not allowed, steps come to
// the same lightest on these.
func TestTheLightestOfTheGrid(t *testing.T) {
	for name, c := range map[string]struct {
		src    string
		margin float64
		varied []string
	}{
		"eye":        {eye, 1, []string{"thickness=8 mm, 10 mm, 12 mm, 15 mm, 20 mm", "weld=3 mm, 5 mm, 8 mm", "width=80 mm, 100 mm, 120 mm", "pin_diameter=20 mm, 25 mm, 30 mm"}},
		"eye, 1.5":   {eye, 1.5, []string{"thickness=8 mm, 10 mm, 12 mm, 15 mm, 20 mm", "weld=3 mm, 5 mm, 8 mm", "width=80 mm, 100 mm, 120 mm", "pin_diameter=20 mm, 25 mm, 30 mm"}},
		"fork":       {fork, 1.1, []string{"ear_thickness=5 mm, 8 mm, 10 mm, 12 mm", "outer_gusset_thickness=5 mm, 8 mm", "ear_weld=3 mm, 5 mm, 6 mm, 8 mm", "gusset_weld=3 mm, 5 mm", "pin_diameter=20 mm, 25 mm, 30 mm"}},
		"lap":        {lap, 1, []string{"lap_thickness=6 mm, 8 mm, 10 mm, 12 mm, 15 mm", "bolt_size=M8, M10, M12, M16", "bolt_rows=1..3", "lap_width=50 mm, 65 mm, 80 mm"}},
		"every side": {everySide, 1, []string{"ear_thickness=8 mm, 10 mm, 12 mm, 15 mm", "outer_gusset_thickness=5 mm, 8 mm", "ear_weld=3 mm, 5 mm, 8 mm", "pin_diameter=20 mm, 25 mm, 30 mm"}},
		"worn":       {worn, 1, []string{"thickness=8 mm, 10 mm, 12 mm, 15 mm, 20 mm, 25 mm", "weld=5 mm, 8 mm, 10 mm", "width=80 mm, 100 mm, 120 mm, 150 mm"}},
	} {
		d := deskOf(t, c.src)
		d.Margin = c.margin
		o := d.only(t, c.varied...)
		n := 1
		for _, a := range o.Vary {
			n *= len(a.Values)
		}
		o.Most = n
		all := d.find(t, o)
		if !all.Whole || all.Tried != n || len(all.Forms) != 1 {
			t.Fatalf("%s: %d of %d tried, whole %v", name, all.Tried, n, all.Whole)
		}
		want, _ := d.brute(t, o, all.Forms[0])
		if len(want) == 0 || len(all.Best) != len(want) {
			t.Fatalf("%s: %d proposals, %d in the whole grid", name, len(all.Best), len(want))
		}
		for i := range want {
			if !sameRow(all.Best[i].Row, &want[i]) {
				t.Errorf("%s, proposal %d: %+v, in the whole grid %+v", name, i+1, all.Best[i].Row, want[i])
			}
		}
		o.Most = n - 1
		steps := d.find(t, o)
		if steps.Whole || len(steps.Best) == 0 || steps.Best[0].Row.Takes.KG != want[0].Takes.KG {
			t.Errorf("%s by steps: %+v, the lightest of the grid is %g kg", name, steps.Best, want[0].Takes.KG)
		}
		f := all.Forms[0]
		if name == "worn" && !slices.Contains(f.Deciding, "A1, down") {
			t.Errorf("%v decide, and what wears out is not among them", f.Deciding)
		}
		t.Logf("%s: %d combinations, %d checks, %d of them under all of %d loads and others under %v; by steps %d", name, n, f.Checked, f.Settled, len(d.spec.Loads), f.Deciding, steps.Tried)
	}
}

// Where nothing passes, the nearest of the whole grid is named.
func TestTheNearestOfTheGrid(t *testing.T) {
	d := deskOf(t, everySide)
	d.Margin = 3
	o := d.only(t, "ear_thickness=8 mm, 10 mm, 12 mm", "ear_weld=3 mm, 5 mm, 8 mm", "pin_diameter=20 mm, 25 mm")
	a := d.find(t, o)
	best, want := d.brute(t, o, a.Forms[0])
	if len(a.Best)+len(best) != 0 || a.Nearest == nil || !sameRow(a.Nearest.Row, want) || a.Nearest.Row.Excess != want.Excess {
		t.Errorf("%d proposals; nearest %+v, in the whole grid %+v", len(a.Best), a.Nearest, want)
	}
}

// The demo jobs' brackets under all their loads: over a small grid, what is proposed is what the whole grid gives.
func TestDemoBrackets(t *testing.T) {
	for _, c := range []struct{ file, bracket, varied string }{
		{"fieldlab", "pair-left", "ear_thickness=10 mm, 12 mm; stiffener_weld=4 mm, 5 mm, 7 mm; between_thickness=5 mm, 8 mm"},
		{"hivecarrier", "pair-left", "ear_thickness=3/8 in, 1/2 in; bolt_size=1/2-13, 5/8-11; gusset_weld=3/16 in, 1/4 in"},
	} {
		src, err := os.ReadFile(filepath.Join("..", "..", "testdata", "jobs", c.file+".yaml"))
		if err != nil {
			t.Fatal(err)
		}
		d := deskOf(t, string(src))
		if d.Job, _, err = run.Loaded(t.Context(), d.client, d.Job); err != nil {
			t.Fatal(err)
		}
		if d.spec, err = sweep.Named(d.Job, c.bracket); err != nil {
			t.Fatal(err)
		}
		if d.kind, err = geometry.Find(d.kinds, d.spec.Kind); err != nil {
			t.Fatal(err)
		}
		o := d.only(t, strings.Split(c.varied, "; ")...)
		a := d.find(t, o)
		want, _ := d.brute(t, o, a.Forms[0])
		if len(want) == 0 || len(a.Best) != len(want) {
			t.Fatalf("%s %s: %d proposals, %d in the whole grid", c.file, c.bracket, len(a.Best), len(want))
		}
		for i := range want {
			if !sameRow(a.Best[i].Row, &want[i]) {
				t.Errorf("%s %s, proposal %d: %+v, in the whole grid %+v", c.file, c.bracket, i+1, a.Best[i].Row, want[i])
			}
		}
		f := a.Forms[0]
		t.Logf("%s %s: %d checks, %d under all of %d loads, others under %d", c.file, c.bracket, f.Checked, f.Settled, len(d.spec.Loads), len(f.Deciding))
	}
}

// stopping cancels when so many brackets were asked to be checked.
type stopping struct {
	run.Trier
	left int
	stop context.CancelFunc
}

func (s *stopping) Brief(ctx context.Context, q []dial.CheckRequest) ([]dial.Briefed, error) {
	if s.left -= len(q); s.left < 0 {
		s.stop()
	}
	return s.Trier.Brief(ctx, q)
}

// Wherever it is stopped, nothing is told of a variant that was not checked under all loads.
func TestStopped(t *testing.T) {
	for _, after := range []int{0, 1, 2, 5, 20, 40} {
		d := deskOf(t, everySide)
		ctx, stop := context.WithCancel(t.Context())
		defer stop()
		d.Client = &stopping{d.client, after, stop}
		o := d.only(t, "ear_thickness=8 mm, 10 mm, 12 mm, 15 mm", "outer_gusset_thickness=5 mm, 8 mm", "ear_weld=3 mm, 5 mm, 8 mm", "pin_diameter=20 mm, 25 mm, 30 mm")
		o.Most = 60
		a, err := Find(ctx, d.Bench, d.spec, d.kind, o)
		if !errors.Is(err, context.Canceled) {
			continue
		}
		told := a.Best
		if a.Nearest != nil {
			told = append(told, *a.Nearest)
		}
		for _, p := range told {
			rows, err := (&sweep.Bench{Client: d.client, Job: d.Job, Densities: d.Densities, Margin: 1}).Try(t.Context(), d.spec, [][]part.Param{p.Row.Values})
			if err != nil || rows[0].Outcome != p.Row.Outcome || rows[0].Excess != p.Row.Excess {
				t.Errorf("stopped after %d: %+v, under all loads %+v, %v", after, p.Row, rows[0], err)
			}
		}
	}
}

// A load that no variant carries is told as the job's fault, and does not cost a check of each.
func TestLoadThatNothingCarries(t *testing.T) {
	d := deskOf(t, strings.Replace(lap, "y: 0 N", "y: 2 kN", 1))
	a := d.find(t, d.only(t, "lap_thickness=6 mm, 8 mm, 10 mm", "bolt_size=M10, M12"))
	if a.Fault == nil || !strings.Contains(a.Fault.Error(), "no load path") || len(a.Best) != 0 {
		t.Errorf("%v, %+v", a.Fault, a.Best)
	}
}

// What is proposed passes when it stands in the job as it is written, by the margin, with the same mass; in inches too.
func TestWrittenIsWhatWasFound(t *testing.T) {
	for _, head := range []string{"", "units: inch\nrack: {plates: [1/4 in, 3/8 in, 1/2 in, 3/4 in], pins: [3/4 in, 1 in], welds: [3/16 in, 1/4 in, 5/16 in], bolts: [1/2-13, 5/8-11]}\n"} {
		d := deskOf(t, strings.Replace(fork, "cases:", head+"cases:", 1))
		d.Margin = 1.2
		a := d.find(t, Options{Most: 200})
		if len(a.Best) == 0 || a.Tried > 200 {
			t.Fatalf("%d tried, %+v", a.Tried, a.Nearest.Row)
		}
		for _, best := range a.Best {
			spec := sweep.With(d.spec, Changed(best.Row, d.spec, d.kind))
			text := YAML(&spec, d.kind, d.Job.Units)
			again := deskOf(t, strings.Replace(fork[:strings.Index(fork, "  - name")], "cases:", head+"cases:", 1)+text)
			rows, err := (&sweep.Bench{Client: again.client, Job: again.Job, Densities: d.Densities, Margin: 1.2}).Try(t.Context(), again.spec, [][]part.Param{nil})
			if err != nil || rows[0].Outcome != sweep.Passes || math.Abs(rows[0].Takes.KG-best.Row.Takes.KG) > 1e-9 {
				t.Errorf("%v, %+v, want %+v\n%s", err, rows, best.Row, text)
			}
			for _, v := range best.Row.Values {
				if head != "" && v.Unit == "mm" && strings.Contains(text, v.Name+":") && !strings.Contains(text, v.Name+": "+units.Format(v.Number, units.Length, units.Inch)) {
					t.Errorf("%s is not in inches:\n%s", v.Name, text)
				}
			}
		}
	}
}

// The kind's usual bolts are metric. In an inch shop they get inch threads, and with them a grade of inch bolts; a grade that the job states keeps its own threads.
func TestGradeGoesWithThreads(t *testing.T) {
	inch := func(parameters, rack string) *desk {
		return deskOf(t, strings.NewReplacer("parameters: {", "parameters: {"+parameters, "cases:", "units: inch\n"+rack+"cases:").Replace(fork))
	}
	grades := func(a *Answer) map[string]bool {
		out := map[string]bool{}
		for _, p := range a.Best {
			size, grade := "M12", "10.9"
			for _, v := range p.Spec.Params {
				switch v.Name {
				case "bolt_size":
					size = v.Text
				case "bolt_grade":
					grade = v.Text
				}
			}
			out[map[bool]string{true: "metric ", false: "inch "}[strings.HasPrefix(size, "M")]+grade] = true
		}
		return out
	}
	for _, c := range []struct{ parameters, rack, want string }{
		{"", "", "inch SAE 8"},
		{"bolt_grade: SAE 5, ", "", "inch SAE 5"},
		{"bolt_grade: A325, ", "rack: {bolts: [M12, M16, 1/2-13, 5/8-11]}\n", "inch A325"},
		{"bolt_grade: '8.8', ", "rack: {bolts: [M12, M16, 1/2-13, 5/8-11]}\n", "metric 8.8"},
		{"bolt_size: M12, ", "", "metric 10.9"},
	} {
		d := inch(c.parameters, c.rack)
		o := d.only(t)
		o.Keep = slices.DeleteFunc(o.Keep, func(n string) bool { return n == "bolt_size" || n == "bolt_grade" })
		a := d.find(t, o)
		if got := grades(a); len(a.Best) == 0 || len(got) != 1 || !got[c.want] {
			t.Errorf("%s %s: %v, want %s; nearest %+v", c.parameters, c.rack, got, c.want, a.Nearest)
		}
	}
	d := inch("bolt_grade: '10.9', ", "")
	if _, err := Find(t.Context(), d.Bench, d.spec, d.kind, Options{}); err == nil || !strings.Contains(err.Error(), "--keep bolt_size") {
		t.Errorf("%v", err)
	}
}

// Nothing passes: what stands in the way is named, and which sizes are at the end of the rack.
func TestNothingPasses(t *testing.T) {
	d := deskOf(t, strings.Replace(eye, "z: 30 kN", "z: 300 kN", 1))
	a := d.find(t, d.only(t, "thickness=8 mm, 10 mm", "weld=5 mm, 6 mm"))
	if len(a.Best) != 0 || a.Nearest == nil || a.Nearest.Row.Governs == nil || a.Nearest.Row.Governs.Utilisation <= 1 {
		t.Fatalf("%+v", a)
	}
	if got := a.Nearest.AtTheEnd(); !slices.Equal(got, []string{"thickness", "weld"}) {
		t.Errorf("%v", got)
	}
}

// Sizes of the job's rack and no others; what is kept stays.
func TestFromTheRack(t *testing.T) {
	d := deskOf(t, strings.Replace(fork, "cases:", "rack: {plates: [7 mm, 11 mm, 14 mm], welds: [5 mm, 7 mm], pins: [27 mm, 33 mm]}\ncases:", 1))
	a := d.find(t, Options{Most: 200, Keep: []string{"ear_width", "bolt_size"}})
	if len(a.Best) == 0 {
		t.Fatalf("%+v", a.Nearest.Row)
	}
	for _, best := range a.Best {
		for _, v := range best.Row.Values {
			switch {
			case v.Name == "ear_width" || v.Name == "bolt_size":
				t.Errorf("%s is chosen", v.Name)
			case v.Name == "pin_diameter" && v.Number != 27 && v.Number != 33, strings.HasSuffix(v.Name, "thickness") && !slices.Contains([]float64{0, 7, 11, 14}, v.Number):
				t.Errorf("%s %g is not on the rack", v.Name, v.Number)
			}
		}
		for _, s := range best.Row.Takes.Stock {
			if !slices.Contains([]float64{7, 11, 14}, s.ThicknessMM) {
				t.Errorf("plate of %g mm is not on the rack", s.ThicknessMM)
			}
		}
	}
}

// No count goes to none, or from none to some: that is another joint.
func TestCountsStayInTheirForm(t *testing.T) {
	d := geometry.Param{Name: "bolts", Unit: geometry.Count, Min: 0, Max: 4}
	for now, want := range map[float64]string{0: "[0]", 1: "[1 2 3]", 2: "[1 2 3 4]", 4: "[2 3 4]"} {
		var got []float64
		for _, v := range counts(d, part.Param{Name: "bolts", Unit: string(geometry.Count), Number: now}) {
			got = append(got, v.Number)
		}
		if fmt.Sprint(got) != want {
			t.Errorf("%g: %v, want %s", now, got, want)
		}
	}
}

// A foot that is welded to its leg has no seat bolts: their size makes no other proposal. One on bolts is never proposed welded, and nothing less checked in silence.
func TestFootKeepsItsJoint(t *testing.T) {
	foot := func(bolts int) (*desk, *Answer) {
		d := deskOf(t, head+fmt.Sprintf("  - name: foot\n    kind: foot\n    hand: left\n    parameters: {seat_bolts: %d}\n    loads: [{case: A1, force: {x: 500 N, y: 200 N, z: -4 kN}}]\n", bolts))
		return d, d.find(t, d.only(t, "seat_bolt_size=M8, M10, M12"))
	}
	if d, a := foot(0); len(a.Best) != 1 {
		t.Errorf("%d proposals of a %s without the bolts that are tried, want 1", len(a.Best), d.spec.Kind)
	}
	d, a := foot(2)
	if len(a.Best) != 3 {
		t.Fatalf("%d proposals on three sizes of bolts: %+v", len(a.Best), a.Nearest)
	}
	if n := a.Unchecked(&a.Best[0]); n != 0 {
		t.Errorf("%d more not checked", n)
	}
	fewer := *a.Best[0].Row
	fewer.NotChecked += 2
	if n := a.Unchecked(&Proposal{Row: &fewer}); n != 2 {
		t.Errorf("%d more not checked, want 2", n)
	}
	i := slices.IndexFunc(d.kind.Params, func(p geometry.Param) bool { return p.Name == "seat_bolts" })
	for _, v := range counts(d.kind.Params[i], sweep.Current(d.spec, &d.kind.Params[i])) {
		if v.Number == 0 {
			t.Error("none is among the counts")
		}
	}
}

func TestText(t *testing.T) {
	for in, want := range map[string]string{"angle": "angle", "head and nut": "head and nut", "10.9": `"10.9"`, "yes": `"yes"`, "C45+N": "C45+N", "A1, full": `"A1, full"`, "M12": "M12", "1/2-13": `"1/2-13"`, "a: b": `"a: b"`} {
		if got := text(in); got != want {
			t.Errorf("%s: %s, want %s", in, got, want)
		}
	}
}
