package propose

import (
	"math"
	"slices"
	"strings"
	"testing"

	"lugwright/client/job"
	"lugwright/client/run"
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
	c, err := dial.InProcess()
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { c.Close() })
	known, err := run.Known(t.Context(), c)
	if err != nil {
		t.Fatal(err)
	}
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

const (
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

// Where every combination is tried, none that passes is lighter. Where that is not allowed, steps come to the same on these.
func TestStepsFindTheLightestOfTheGrid(t *testing.T) {
	for _, c := range []struct {
		src    string
		margin float64
		varied []string
	}{
		{eye, 1, []string{"thickness=8 mm, 10 mm, 12 mm, 15 mm, 20 mm", "weld=3 mm, 5 mm, 8 mm", "width=80 mm, 100 mm, 120 mm", "pin_diameter=20 mm, 25 mm, 30 mm"}},
		{eye, 1.5, []string{"thickness=8 mm, 10 mm, 12 mm, 15 mm, 20 mm", "weld=3 mm, 5 mm, 8 mm", "width=80 mm, 100 mm, 120 mm", "pin_diameter=20 mm, 25 mm, 30 mm"}},
		{fork, 1.1, []string{"ear_thickness=5 mm, 8 mm, 10 mm, 12 mm", "outer_gusset_thickness=5 mm, 8 mm", "ear_weld=3 mm, 5 mm, 6 mm, 8 mm", "gusset_weld=3 mm, 5 mm", "pin_diameter=20 mm, 25 mm, 30 mm"}},
		{lap, 1, []string{"lap_thickness=6 mm, 8 mm, 10 mm, 12 mm, 15 mm", "bolt_size=M8, M10, M12, M16", "bolt_rows=1..3", "lap_width=50 mm, 65 mm, 80 mm"}},
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
			t.Fatalf("%s: %d of %d tried, whole %v", d.spec.Name, all.Tried, n, all.Whole)
		}
		if len(all.Best) == 0 {
			t.Fatalf("%s: nothing passes: %+v", d.spec.Name, all.Nearest.Row)
		}
		lightest := math.Inf(1)
		for _, r := range all.Forms[0].Rows {
			if r.Outcome == sweep.Passes {
				lightest = min(lightest, r.Takes.KG)
			}
		}
		if all.Best[0].Row.Takes.KG != lightest {
			t.Errorf("%s: %g kg, the lightest of the grid is %g", d.spec.Name, all.Best[0].Row.Takes.KG, lightest)
		}
		o.Most = n - 1
		steps := d.find(t, o)
		if steps.Whole || len(steps.Best) == 0 || steps.Best[0].Row.Takes.KG != lightest {
			t.Errorf("%s by steps: %+v, the lightest of the grid is %g kg", d.spec.Name, steps.Best, lightest)
		}
		t.Logf("%s: %d combinations, %d tried by steps, %.3f kg", d.spec.Name, n, steps.Tried, lightest)
		for i := 1; i < len(all.Best); i++ {
			if all.Best[i].Row.Takes.Compare(&all.Best[i-1].Row.Takes) < 0 || all.Best[i].bought() == all.Best[i-1].bought() {
				t.Errorf("%s: runner-up %d: %+v", d.spec.Name, i, all.Best[i].Row)
			}
		}
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

func TestText(t *testing.T) {
	for in, want := range map[string]string{"angle": "angle", "head and nut": "head and nut", "10.9": `"10.9"`, "yes": `"yes"`, "C45+N": "C45+N", "A1, full": `"A1, full"`, "M12": "M12", "1/2-13": `"1/2-13"`, "a: b": `"a: b"`} {
		if got := text(in); got != want {
			t.Errorf("%s: %s, want %s", in, got, want)
		}
	}
}
