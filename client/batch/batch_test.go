package batch

import (
	"context"
	"encoding/csv"
	"encoding/json"
	"errors"
	"fmt"
	"maps"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"lugwright/client/family"
	"lugwright/client/job"
	"lugwright/client/run"
	"lugwright/client/shopfile"
	"lugwright/services/dial"
	"lugwright/strength"
)

const head = `family: %s
basis: AISC 360-22
method: ASD
cases:
  A: {level: service, source: own}
  B: {level: service, source: own}
kind: %s
hand: %s
loads:
  - {case: A, force: {x: %s, y: %s, z: %s}}
`

func services(t testing.TB) *dial.Client {
	t.Helper()
	c, err := dial.InProcess()
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { c.Close() })
	return c
}

// read opens a family written in place; rows are written beside it where they are not empty.
func read(t testing.TB, c *dial.Client, src, rows string) *family.Family {
	t.Helper()
	return readAt(t, c, src, rows, filepath.Join(t.TempDir(), "rows.csv"))
}

func readAt(t testing.TB, c *dial.Client, src, rows, path string) *family.Family {
	t.Helper()
	known, err := run.Known(t.Context(), c)
	if err != nil {
		t.Fatal(err)
	}
	f, err := job.ReadFamily("family.yaml", []byte(src), known, rows != "")
	if err != nil {
		t.Fatal(err)
	}
	if src, ok := shopfile.Shipped(f.ShopName); ok {
		s, err := shopfile.Read(f.ShopName, src)
		if err != nil {
			t.Fatal(err)
		}
		f.Shop = *s
	}
	if rows == "" {
		path = ""
	} else if err := os.WriteFile(path, []byte(rows), 0o600); err != nil {
		t.Fatal(err)
	}
	out, err := family.Open(f, path)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { out.Close() })
	return out
}

func rowsOf(t *testing.T, c *dial.Client, f *family.Family) []Row {
	t.Helper()
	var out []Row
	err := Run(t.Context(), Input{Client: c, Family: f, Take: func(rows []Row) error {
		for i := range rows {
			out = append(out, rows[i].kept())
		}
		return nil
	}})
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// A variant and a check of the same bracket agree in every number: the check goes another way, with whole reports, and has the brackets read and finished in
// the client.
func TestSameAsCheck(t *testing.T) {
	c := services(t)
	r := rand.New(rand.NewPCG(6, 1))
	for _, k := range []struct {
		kind, hand, shop string
		x, y, z          string
		rows             func() string
		header           string
	}{
		{"clevis", "right", "laser", "1 kN", "-3 kN", "-9 kN", func() string {
			return fmt.Sprintf("%.1f,%d,%s,%d", 5+10*r.Float64(), 80+r.IntN(60), []string{"both", "none", "outer"}[r.IntN(3)], 20+r.IntN(9))
		}, "ear_thickness [mm],ear_width [mm],gussets,pin_diameter [mm]"},
		{"lap-plate", "left", "", "70 kN", "0 N", "0 N", func() string {
			return fmt.Sprintf("%.3f,%s,%d", 4+8*r.Float64(), []string{"one", "two"}[r.IntN(2)], 3+r.IntN(5))
		}, "lap_thickness [mm],faces,weld [mm]"},
		{"keeper-plate", "left", "plasma", "0 N", "3 kN", "0 N", func() string {
			return fmt.Sprintf("%.4g,%d,%s", 0.15+0.3*r.Float64(), 55+r.IntN(30), []string{"slot", "over"}[r.IntN(2)])
		}, "thickness [in],width [mm],form"},
	} {
		src := fmt.Sprintf(head, "same", k.kind, k.hand, k.x, k.y, k.z)
		if k.shop != "" {
			src += "shop: " + k.shop + "\n"
		}
		rows := k.header + "\n"
		for range 20 {
			rows += k.rows() + "\n"
		}
		f := read(t, c, src, rows)
		checked := 0
		for _, row := range rowsOf(t, c, f) {
			v, err := f.At(row.ID)
			if err != nil {
				t.Fatal(err)
			}
			result, err := run.Job(t.Context(), c, f.Variant(row.ID, v.Params), run.Options{})
			if err != nil {
				if row.Verdict != Refused {
					t.Errorf("%s %d: %s, and check says %v", k.kind, row.ID, row.Verdict, err)
				}
				continue
			}
			checked++
			agrees(t, fmt.Sprint(k.kind, " ", row.ID), &row, result.Brackets[0].Report)
		}
		if checked < 4 {
			t.Errorf("%s: only %d of the rows could be checked", k.kind, checked)
		}
	}
}

func agrees(t *testing.T, what string, row *Row, report *strength.Report) {
	t.Helper()
	worst := map[string]float64{}
	for _, k := range report.Checks {
		if _, seen := worst[k.Limit]; !seen && k.Verdict != strength.NotApplied {
			worst[k.Limit] = k.Utilisation
		}
	}
	g := report.Governing()
	if row.Verdict != report.Verdict() || row.NotChecked != len(report.NotChecked) || len(row.Limits) != len(worst) ||
		row.Limit != g.Limit || row.Place != g.Place || row.Case != g.Case || row.Utilisation != g.Utilisation {
		t.Errorf("%s: %+v, and check says %s, %s at %s (%s) %v", what, row, report.Verdict(), g.Limit, g.Place, g.Case, g.Utilisation)
	}
	for _, u := range row.Limits {
		if u.Utilisation != worst[u.Limit] {
			t.Errorf("%s: %s is %v, and check says %v", what, u.Limit, u.Utilisation, worst[u.Limit])
		}
	}
}

// Two laps of 8 x 80 x (2*100 + 2) mm with square ends, of steel of 7850 kg/m3: 2 * 8 * 80 * 202 mm3 are 2.030 kg. (Densities: EN 1991-1-1, Table A.4.)
func TestMass(t *testing.T) {
	c := services(t)
	f := read(t, c, fmt.Sprintf(head, "laps", "lap-plate", "left", "1 kN", "0 N", "0 N")+"parameters: {faces: two, ends: rectangular, overlap: 100 mm, joint_gap: 2 mm}\n",
		"lap_thickness [mm],lap_width [mm]\n8,80\n")
	if row := rowsOf(t, c, f)[0]; row.Reason != "" || math.Abs(row.MassKG-2*8*80*202*7850e-9) > 0.0006 {
		t.Errorf("%v kg, %s", row.MassKG, row.Reason)
	}
}

const laps = `parameters: {faces: two}
grid:
  lap_thickness: [4 mm, 6 mm, 8 mm]
  lap_width: {from: 60 mm, to: 90 mm, step: 2 mm}
  weld: [3 mm, 4 mm, 5 mm]
`

func lapFamily(t testing.TB, c *dial.Client) *family.Family {
	return read(t, c, fmt.Sprintf(head, "laps", "lap-plate", "left", "60 kN", "0 N", "0 N")+laps, "")
}

// results runs a family into a folder, from where it was left.
func results(ctx context.Context, c *dial.Client, f *family.Family, dir string, take func(r *Results, rows []Row) error) (*Results, error) {
	r, err := Resume(dir, f, "test", 5)
	if err != nil {
		return nil, err
	}
	err = Run(ctx, Input{Client: c, Family: f, After: r.Done, Take: func(rows []Row) error { return take(r, rows) }})
	if err != nil {
		r.Close()
		return r, err
	}
	return r, r.Finish()
}

func all(r *Results, rows []Row) error { return r.Take(rows) }

func files(t *testing.T, dir string) map[string]string {
	t.Helper()
	out := map[string]string{}
	for _, name := range []string{FamilyFile, LinesFile, TableFile} {
		src, err := os.ReadFile(filepath.Join(dir, name))
		if err != nil {
			t.Fatal(err)
		}
		out[name] = string(src)
	}
	return out
}

// A run that was cut off anywhere ends with the bytes of one that was not, and with its summary.
func TestResume(t *testing.T) {
	c := services(t)
	f := lapFamily(t, c)
	whole := t.TempDir()
	first, err := results(t.Context(), c, f, whole, all)
	if err != nil {
		t.Fatal(err)
	}
	want := files(t, whole)
	r := rand.New(rand.NewPCG(6, 2))
	for i := range 12 {
		dir := t.TempDir()
		for name, text := range want {
			text = text[:r.IntN(len(text)+1)]
			switch {
			case i < 2:
				text = want[name]
			case name == FamilyFile:
				text = want[name]
			case i == 3:
				text += "\x00\x00\x00\x00" // what a file system may leave of a cut-off write
			case i == 4:
				text += strings.Split(want[name], "\n")[0] + "\n"
			case i == 5 && name == TableFile:
				text = ""
			}
			if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o600); err != nil {
				t.Fatal(err)
			}
		}
		again, err := results(t.Context(), c, f, dir, all)
		if err != nil {
			t.Fatal(err)
		}
		for name, text := range files(t, dir) {
			if text != want[name] {
				t.Errorf("try %d: %s has other bytes", i, name)
			}
		}
		if a, b := summed(first.Summary), summed(again.Summary); a != b {
			t.Errorf("try %d: the summaries differ:\n%s\n%s", i, a, b)
		}
	}
}

// Wherever either file was cut, and whatever stands there instead, all whole rows before that are kept, and nothing else. But a whole row of the variant that says
// something else than the other file does is refused: a cut leaves none.
func TestCutAnywhere(t *testing.T) {
	c := services(t)
	f := read(t, c, fmt.Sprintf(head, "mixed", "clevis", "left", "0 N", "-2 kN", "-4 kN"),
		"gussets,ear_thickness,ear_width [in]\nboth,8 mm,4\nboth,8,4\n\"none\",1/4 in,4\n")
	dir := t.TempDir()
	if _, err := results(t.Context(), c, f, dir, all); err != nil {
		t.Fatal(err)
	}
	got := files(t, dir)
	lines, table := got[LinesFile], got[TableFile]
	// end is where a text's n-th line ends
	end := func(text string, n int) int64 {
		return int64(len(strings.Join(strings.SplitAfter(text, "\n")[:n], "")))
	}
	try := func(what, lines, table string, done int) {
		t.Helper()
		r := &Results{form: formOf(f), held: []Row{}, Summary: NewSummary(1)}
		ends, err := r.readBack(strings.NewReader(lines), strings.NewReader(table), math.MaxInt64)
		if changed := (*changedError)(nil); errors.As(err, &changed) && (done < 0 || strings.HasSuffix(what, `}\n"`) || strings.HasSuffix(what, `,,,\n"`)) && changed.line == int64(done)+2 {
			return // the debris made the line whole, or another first line
		}
		want := [2]int64{}
		if done > 0 {
			want = [2]int64{end(got[LinesFile], done), end(got[TableFile], done+1)}
		}
		if err != nil || ends != want || r.Done != int64(max(0, done)) || r.Summary.Variants != r.Done || (r.held == nil) != (done > 0) {
			t.Fatalf("%s: %d rows, ends at %v, want %d and %v (%v)", what, r.Done, ends, done, want, err)
		}
	}
	debris := []string{"\x00\x00\x00", strings.SplitAfter(lines, "\n")[0], strings.SplitAfter(table, "\n")[0], "2" + strings.SplitAfter(table, "\n")[1], strings.SplitAfter(table, "\n")[2], "\n", "}\n", ",,,\n"}
	head, rows, _ := strings.Cut(table, "\n")
	second := strings.SplitAfter(rows, "\n")[1]
	for line, saved := range map[int64][]string{
		1: {
			strings.ReplaceAll(table, "\n", "\r\n"), "\uFEFF" + table, strings.ReplaceAll(table, ",", ";"), strings.ReplaceAll(table, "\n", ",note\n"),
		},
		2: {head + "\n\"" + rows[:1] + "\"" + rows[1:], strings.Replace(table, "axial-force", strings.Repeat("\x00", 11), 1)},
		3: {strings.Replace(table, second, strings.Replace(second, ",", ",~", 1), 1)},
	} {
		for _, text := range saved {
			r := &Results{form: formOf(f), held: []Row{}, Summary: NewSummary(1)}
			_, err := r.readBack(strings.NewReader(lines), strings.NewReader(text), math.MaxInt64)
			if changed := (*changedError)(nil); !errors.As(err, &changed) || changed.line != line {
				t.Errorf("saved by another program: got %v, want line %d in\n%s", err, line, text)
			}
		}
	}
	for cut := range len(lines) + 1 {
		for _, tail := range []string{"", debris[cut%len(debris)]} {
			if tail == "" || !strings.HasPrefix(lines[cut:], tail) {
				try(fmt.Sprintf("lines cut at %d, then %q", cut, tail), lines[:cut]+tail, table, strings.Count(lines[:cut], "\n"))
			}
		}
	}
	for cut := range len(table) + 1 {
		for _, tail := range []string{"", debris[cut%len(debris)]} {
			if tail == "" || !strings.HasPrefix(table[cut:], tail) {
				try(fmt.Sprintf("table cut at %d, then %q", cut, tail), lines, table[:cut]+tail, strings.Count(table[:cut], "\n")-1)
			}
		}
	}
}

func summed(s *Summary) string {
	out := fmt.Sprint(s.Variants, s.Verdicts, s.Governing, s.Lightest.ID)
	for _, w := range append(s.Worst(), s.Refused()...) {
		out += fmt.Sprintf("\n%d %s %s %s %v %v %s", w.ID, w.Verdict, w.Limit, w.Place, w.Utilisation, w.MassKG, w.Reason)
	}
	return out
}

// A context that ends, or rows that are not taken, leave whole rows in order, and the run goes on from them.
func TestStopped(t *testing.T) {
	c := services(t)
	f := read(t, c, fmt.Sprintf(head, "laps", "lap-plate", "left", "60 kN", "0 N", "0 N")+strings.Replace(laps, "step: 2 mm", "step: 0.25 mm", 1), "")
	whole := t.TempDir()
	if _, err := results(t.Context(), c, f, whole, all); err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	ctx, cancel := context.WithCancel(t.Context())
	_, err := results(ctx, c, f, dir, func(r *Results, rows []Row) error {
		cancel()
		return r.Take(rows)
	})
	if !errors.Is(err, context.Canceled) {
		t.Errorf("got %v", err)
	}
	full := errors.New("disk full")
	_, err = results(t.Context(), c, f, dir, func(r *Results, rows []Row) error {
		if r.Done > f.Count-100 {
			return full
		}
		return r.Take(rows)
	})
	if !errors.Is(err, full) {
		t.Errorf("got %v", err)
	}
	if _, err := results(t.Context(), c, f, dir, all); err != nil {
		t.Fatal(err)
	}
	for name, text := range files(t, dir) {
		if text != files(t, whole)[name] {
			t.Errorf("%s has other bytes", name)
		}
	}
}

// Of a file that changed while its rows were read no row is kept but those that are as they were; with the old file the run goes on to the same bytes.
func TestChangedRows(t *testing.T) {
	c := services(t)
	rows := "lap_thickness [mm],weld\n"
	for i := range 300 {
		rows += fmt.Sprintf("%d.%03d,3 mm\n", 4+i%5, i)
	}
	f := read(t, c, fmt.Sprintf(head, "laps", "lap-plate", "left", "60 kN", "0 N", "0 N"), rows)
	whole := t.TempDir()
	if _, err := results(t.Context(), c, f, whole, all); err != nil {
		t.Fatal(err)
	}
	want := files(t, whole)
	for _, at := range []int{200, 30, 299} {
		lines := strings.SplitAfter(rows, "\n")
		lines[at] = strings.Replace(lines[at], "3 mm", "9 mm", 1)
		path := filepath.Join(t.TempDir(), "rows.csv")
		f := readAt(t, c, fmt.Sprintf(head, "laps", "lap-plate", "left", "60 kN", "0 N", "0 N"), rows, path)
		if err := os.WriteFile(path, []byte(strings.Join(lines, "")), 0o600); err != nil {
			t.Fatal(err)
		}
		dir := t.TempDir()
		r, err := Create(dir, f, "test", 5)
		if err != nil {
			t.Fatal(err)
		}
		err = Run(t.Context(), Input{Client: c, Family: f, Take: r.Take})
		var changed *family.ChangedError
		if !errors.As(err, &changed) {
			t.Fatalf("got %v", err)
		}
		most := r.Done
		if err := r.Leave(&family.ChangedError{File: path, Same: min(changed.Same, r.Done)}); err != nil {
			t.Fatal(err)
		}
		if changed.Same != int64(at-1) || r.Done > changed.Same || r.Done != r.Summary.Variants {
			t.Errorf("row %d changed: %d were taken and %d kept, %+v", at, most, r.Done, changed)
		}
		if err := os.WriteFile(path, []byte(rows), 0o600); err != nil {
			t.Fatal(err)
		}
		if _, err := results(t.Context(), c, f, dir, all); err != nil {
			t.Fatal(err)
		}
		if got := files(t, dir); !maps.Equal(got, want) {
			t.Errorf("row %d changed: other bytes in the end", at)
		}
	}
	// Rows that were taken too soon are dropped, but for those of runs before, which were of the file as it was.
	path := filepath.Join(t.TempDir(), "rows.csv")
	f = readAt(t, c, fmt.Sprintf(head, "laps", "lap-plate", "left", "60 kN", "0 N", "0 N"), rows, path)
	dir := t.TempDir()
	for _, step := range []struct{ taken, same, kept int64 }{{150, 10, 0}, {150, 100, 100}, {200, 120, 120}, {200, 10, 120}, {0, 0, 120}} {
		r, err := Resume(dir, f, "test", 5)
		if err != nil {
			t.Fatal(err)
		}
		enough := errors.New("enough")
		err = Run(t.Context(), Input{Client: c, Family: f, After: r.Done, Take: func(rows []Row) error {
			rows = rows[:max(0, min(int64(len(rows)), step.taken-r.Done))]
			if len(rows) == 0 {
				return enough
			}
			return r.Take(rows)
		}})
		if !errors.Is(err, enough) || r.Done < step.taken {
			t.Fatalf("%d taken of %d, %v", r.Done, step.taken, err)
		}
		if err := r.Leave(&family.ChangedError{Same: step.same}); err != nil || r.Done != step.kept || r.Summary.Variants != step.kept {
			t.Errorf("%+v: %d kept, %v", step, r.Done, err)
		}
	}
	// So too where the file changed before the first row was read again.
	if err := os.WriteFile(path, []byte(strings.ReplaceAll(rows, "3 mm", "9 mm")), 0o600); err != nil {
		t.Fatal(err)
	}
	r, err := Resume(dir, f, "test", 5)
	if err != nil {
		t.Fatal(err)
	}
	err = Run(t.Context(), Input{Client: c, Family: f, After: r.Done, Take: r.Take})
	var changed *family.ChangedError
	if !errors.As(err, &changed) || changed.Same >= 120 {
		t.Errorf("got %v, %+v", err, changed)
	}
	if err := r.Leave(err); err != nil || r.Done != 120 {
		t.Errorf("%d kept of 120, %v", r.Done, err)
	}
	if err := os.WriteFile(path, []byte(rows), 0o600); err != nil {
		t.Fatal(err)
	}
	if _, err := results(t.Context(), c, f, dir, all); err != nil || !maps.Equal(files(t, dir), want) {
		t.Errorf("other bytes in the end: %v", err)
	}
}

// Kept is what Resume goes on with, however few were taken.
func TestKept(t *testing.T) {
	c := services(t)
	f := read(t, c, fmt.Sprintf(head, "laps", "lap-plate", "left", "60 kN", "0 N", "0 N")+strings.Replace(laps, "step: 2 mm", "step: 0.25 mm", 1), "")
	rows := make([]Row, 0, 100)
	_, err := results(t.Context(), c, f, t.TempDir(), func(r *Results, some []Row) error {
		for i := range some {
			if rows = append(rows, some[i].kept()); len(rows) == cap(rows) {
				return errors.New("enough")
			}
		}
		return nil
	})
	if len(rows) < cap(rows) {
		t.Fatal(err)
	}
	for taken, want := range map[int]int64{0: 0, 1: 0, 63: 0, 64: 64, 65: 65, 100: 100} {
		dir := t.TempDir()
		r, err := Create(dir, f, "test", 5)
		if err != nil {
			t.Fatal(err)
		}
		if err := errors.Join(r.Take(rows[:taken]), r.Leave(context.Canceled)); err != nil || r.Kept != want {
			t.Errorf("%d taken: %d kept, want %d, %v", taken, r.Kept, want, err)
		}
		again, err := Resume(dir, f, "test", 5)
		if err != nil {
			t.Fatal(err)
		}
		again.Close()
		if again.Done != want || again.Kept != want {
			t.Errorf("%d taken: resumed with %d, %d kept", taken, again.Done, again.Kept)
		}
	}
}

// The two files say the same, and every line of one is JSON.
func TestFiles(t *testing.T) {
	c := services(t)
	f := read(t, c, fmt.Sprintf(head, "mixed", "clevis", "left", "0 N", "-2 kN", "-4 kN"),
		"gussets,ear_thickness,ear_width [in]\nboth,8 mm,4\n\"none\",1/4 in,4\nboth,8,4\nboth,8 mm\nboth,8 mm,400\nsome,8 mm,4\n,,\nboth,,4\n")
	dir := t.TempDir()
	r, err := results(t.Context(), c, f, dir, all)
	if err != nil {
		t.Fatal(err)
	}
	got := files(t, dir)
	table, err := csv.NewReader(strings.NewReader(got[TableFile])).ReadAll()
	if err != nil || len(table) != 9 {
		t.Fatalf("%d rows, %v", len(table), err)
	}
	column := func(name string) int { return slices.Index(table[0], name) }
	for i, line := range strings.Split(strings.TrimSpace(got[LinesFile]), "\n") {
		var d struct {
			ID          int
			Verdict     string
			Utilisation *float64
			Limits      map[string]*float64
			Reason      string
			Parameters  map[string]any
		}
		if err := json.Unmarshal([]byte(line), &d); err != nil {
			t.Fatal(err)
		}
		row := table[i+1]
		if d.ID != i+1 || row[column("verdict")] != d.Verdict || row[column("reason")] != d.Reason || (d.Verdict == "refused") != (d.Reason != "") {
			t.Errorf("row %d: %v\n%s", i+1, row, line)
		}
		for id, u := range d.Limits {
			if text := row[column(id)]; text != fmt.Sprint(*u) && text != "outside" {
				t.Errorf("row %d: %s is %v in one file and %q in the other", i+1, id, *u, text)
			}
		}
	}
	for row, want := range map[int]string{
		3: "rows.csv:4:6: ear_thickness: 8 has no unit; write a length such as 12 mm or 1/2 in, or name the column ear_thickness [mm]",
		4: "rows.csv:5:1: 2 cells; 3, as many as the first line names",
		5: "parameters.ear_width: ",
		6: `parameters.gussets: "some"; one of both, none, outer, between`,
		7: "rows.csv:8:1: every cell is empty",
	} {
		if reason := table[row][column("reason")]; !strings.HasPrefix(reason, want) {
			t.Errorf("row %d: %q, want %q", row, reason, want)
		}
	}
	if n := r.Summary.Verdicts[Refused]; n != 5 {
		t.Errorf("%d refused", n)
	}
	if width := table[2][column("ear_thickness [mm]")]; width != "6.35" {
		t.Errorf("1/4 in is %s mm", width)
	}
}

// Results of something else, or of a run that is still going, are left alone.
func TestOtherResults(t *testing.T) {
	c := services(t)
	f := lapFamily(t, c)
	dir := t.TempDir()
	if _, err := results(t.Context(), c, f, dir, all); err != nil {
		t.Fatal(err)
	}
	want := files(t, dir)
	other := read(t, c, fmt.Sprintf(head, "laps", "lap-plate", "left", "61 kN", "0 N", "0 N")+laps, "")
	renamed := read(t, c, fmt.Sprintf(head, "other laps", "lap-plate", "left", "61 kN", "0 N", "0 N")+laps, "")
	for name, try := range map[string]func() error{
		"as it was before its files changed": func() error { _, err := Resume(dir, other, "test", 1); return err },
		"another version, lugwright test":    func() error { _, err := Resume(dir, f, "newer", 1); return err },
		`another family, "laps"`:             func() error { _, err := Resume(dir, renamed, "test", 1); return err },
		"holds results already":              func() error { _, err := Create(dir, f, "test", 1); return err },
		"is being written by another run": func() error {
			r, err := Resume(dir, f, "test", 1)
			if err != nil {
				return err
			}
			defer r.Close()
			_, err = Resume(dir, f, "test", 1)
			return err
		},
	} {
		if err := try(); err == nil || !strings.Contains(err.Error(), name) {
			t.Errorf("got %v, want %q", err, name)
		}
	}
	for name, text := range files(t, dir) {
		if text != want[name] {
			t.Errorf("%s was touched", name)
		}
	}
	saved := strings.ReplaceAll(want[TableFile], "\n", "\r\n")
	if err := os.WriteFile(filepath.Join(dir, TableFile), []byte(saved), 0o666); err != nil {
		t.Fatal(err)
	}
	if _, err := Resume(dir, f, "test", 1); err == nil || !strings.Contains(err.Error(), "line 1 of results.csv is not what was written for it: another program saved it") {
		t.Errorf("a table that another program saved: got %v", err)
	}
	want[TableFile] = saved
	if got := files(t, dir); !maps.Equal(got, want) {
		t.Error("the files of a table that another program saved were touched")
	}
}

// The worst are the same, in the same order, as by sorting all.
func TestSummary(t *testing.T) {
	r := rand.New(rand.NewPCG(6, 3))
	s := NewSummary(7)
	var all []Row
	for i := range 500 {
		row := Row{ID: int64(i + 1), Verdict: ranks[r.IntN(3)], Limit: "x", Utilisation: float64(r.IntN(40)) / 20}
		all = append(all, row)
		s.Add(&row)
	}
	slices.SortStableFunc(all, func(a, b Row) int { return worse(&a, &b) })
	for i, w := range s.Worst() {
		if w.ID != all[i].ID {
			t.Errorf("place %d: variant %d, want %d", i, w.ID, all[i].ID)
		}
	}
	if len(s.Worst()) != 7 {
		t.Errorf("%d of the worst", len(s.Worst()))
	}
}
