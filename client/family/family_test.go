package family

import (
	"errors"
	"fmt"
	"io"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"lugwright/client/job"
	"lugwright/geometry"
	"lugwright/part"
	"lugwright/strength"
)

// known is a service with one kind and one basis.
func known() job.Known {
	return job.Known{
		Kinds: []geometry.Kind{{Name: "tab", Sentence: "a tab", Params: []geometry.Param{
			{Name: "thickness", Unit: geometry.MM, Min: 1, Max: 50, Default: 8},
			{Name: "width", Unit: geometry.MM, Min: 1, Max: 500, Default: 80},
			{Name: "lean", Unit: geometry.Rad, Min: 0, Max: 1},
			{Name: "holes", Unit: geometry.Count, Min: 1, Max: 4, Default: 1},
			{Name: "grade", Unit: geometry.Word, Text: "S355"},
			{Name: "bolt", Unit: geometry.Size, Text: "M12"},
		}}},
		Bases: []strength.Card{{Name: "house", Methods: []strength.Method{strength.ASD}, ServiceFactor: map[strength.Method]float64{strength.ASD: 1}}},
	}
}

const head = `family: tabs
basis: house
method: ASD
cases: {A: {level: service, source: own}}
kind: tab
hand: left
loads: [{case: A, force: {x: 1 kN, y: 0 N, z: 0 N}}]
`

func open(t *testing.T, more, rows string) (*Family, error) {
	t.Helper()
	f, err := job.ReadFamily("family.yaml", []byte(head+more), known(), rows != "")
	if err != nil {
		return nil, err
	}
	path := ""
	if rows != "" {
		path = filepath.Join(t.TempDir(), "rows.csv")
		if err := os.WriteFile(path, []byte(rows), 0o600); err != nil {
			t.Fatal(err)
		}
	}
	out, err := Open(f, path)
	if err == nil {
		t.Cleanup(func() { out.Close() })
	}
	return out, err
}

// told lists the variants after the first n, or why there are none.
func told(t *testing.T, f *Family, n int64) (out []string) {
	t.Helper()
	all, err := f.From(n)
	if err != nil {
		t.Fatal(err)
	}
	for {
		v, err := all.Next()
		if errors.Is(err, io.EOF) {
			return out
		}
		if err != nil {
			t.Fatal(err)
		}
		text := fmt.Sprint(v.ID)
		for _, p := range v.Params {
			text += " " + p.Name + "=" + value(p)
		}
		if v.Err != nil {
			text = fmt.Sprint(v.ID, " ", v.Err)
		}
		out = append(out, text)
	}
}

func value(p part.Param) string {
	if p.Text != "" {
		return p.Text
	}
	return fmt.Sprintf("%.6g", p.Number)
}

func want(t *testing.T, got []string, lines ...string) {
	t.Helper()
	for i := range max(len(got), len(lines)) {
		a, b := "", ""
		if i < len(got) {
			a = got[i]
		}
		if i < len(lines) {
			b = lines[i]
		}
		if a != b {
			t.Errorf("line %d:\n%s\nwant\n%s", i+1, a, b)
		}
	}
}

func TestGrid(t *testing.T) {
	f, err := open(t, "parameters: {holes: 2}\ngrid:\n  thickness: [6 mm, 1/4 in]\n  width: {from: 80 mm, to: 100 mm, step: 10 mm}\n  grade: [S355, S235]\n", "")
	if err != nil {
		t.Fatal(err)
	}
	all := told(t, f, 0)
	if f.Count != 12 || len(all) != 12 {
		t.Fatalf("%d variants, %d given", f.Count, len(all))
	}
	want(t, all[:3], "1 thickness=6 width=80 holes=2 grade=S355", "2 thickness=6 width=80 holes=2 grade=S235", "3 thickness=6 width=90 holes=2 grade=S355")
	want(t, told(t, f, 11), "12 thickness=6.35 width=100 holes=2 grade=S235")
	for i, text := range all {
		v, err := f.At(int64(i + 1))
		if err != nil || !strings.HasPrefix(text, fmt.Sprint(v.ID, " ")) || value(v.Own[0]) != map[bool]string{true: "6", false: "6.35"}[i < 6] {
			t.Errorf("variant %d by its id: %v, %v", i+1, v, err)
		}
	}
	if _, err := f.At(13); err == nil {
		t.Error("variant 13 of 12")
	}
}

func TestRows(t *testing.T) {
	rows := "\ufeffthickness [mm], width (in) ,lean,holes,grade,bolt\r\n" +
		"8,4,10 deg,2,S355,M12\r\n\r\n" +
		"\"6\",\"3 1/2\",0 rad,,,\r\n" +
		"8,4 in,10 deg,2,S355,M12\n   \n" +
		"8,4,10,2,S355,M12\n" +
		"8,4,10 deg,2.5,S355,M12\n" +
		"8,4\n" +
		"8,4,\"10 deg,2,S355,M12\n" +
		"8,4\",10 deg,2,S355,M12\n" +
		"8,4,10 deg,2,\"S355, N\",1/2-13\n" +
		"8;,4,10 deg,2,S355,M12\n" +
		"8,x\x00,10 deg,2,S355,M12\n" +
		strings.Repeat("9", longestLine+5) + "\n" +
		"\"8\",,,,,"
	f, err := open(t, "parameters: {holes: 3}\n", rows)
	if err != nil {
		t.Fatal(err)
	}
	lines := []string{
		"1 thickness=8 width=101.6 lean=0.174533 holes=2 grade=S355 bolt=M12",
		"2 thickness=6 width=88.9 lean=0 holes=3",
		`3 rows.csv:5:3: width: "4 in", with a unit of its own; the number alone, for the first line says width [in]`,
		"4 rows.csv:7:5: lean: 10 has no unit; write an angle such as 10 deg or 0.2 rad, or name the column lean [deg]",
		"5 rows.csv:8:12: holes: 2.5 is not a whole number; write a count such as 4",
		"6 rows.csv:9:1: 2 cells; 6, as many as the first line names",
		"7 rows.csv:10:24: a cell in quotation marks that does not end with them, on this line; both marks, with those inside doubled",
		`8 rows.csv:11:4: a quotation mark inside a cell; a cell without them, or one in quotation marks with those inside doubled: "1 1/2"""`,
		"9 thickness=8 width=101.6 lean=0.174533 holes=2 grade=S355, N bolt=1/2-13",
		`10 rows.csv:13:1: thickness: "8;"; a cell without it: cells are separated by commas`,
		"11 rows.csv:14:1: bytes that are no text; text in UTF-8",
		fmt.Sprintf("12 rows.csv:15:1: a line of more than %d bytes; a row of parameters", longestLine),
		"13 thickness=8 holes=3",
	}
	if f.Count != int64(len(lines)) {
		t.Errorf("%d rows counted", f.Count)
	}
	want(t, told(t, f, 0), lines...)
	want(t, told(t, f, 8), lines[8:]...)
}

func TestRefusedFamilies(t *testing.T) {
	for _, c := range []struct{ more, rows, want string }{
		{"", "", "family.yaml:1:1: grid: missing; grid, with the values that parameters take, or rows, a CSV file with a row for every variant"},
		{"grid: {width: [80 mm]}\n", "width [mm]\n8\n", "family.yaml:8:7: grid: a grid and rows; one of them says what the variants are"},
		{"grid: {width: 80 mm}\n", "", `family.yaml:8:15: grid.width: "80 mm"; a list is needed, [first, second], or fields: from, to, step`},
		{"grid: {width: [80]}\n", "", "family.yaml:8:16: grid.width[0]: 80 has no unit; write a length such as 12 mm or 1/2 in"},
		{"grid: {width: [80 mm, 80 mm]}\n", "", "family.yaml:8:23: grid.width: 80 mm stands there twice; each value once"},
		{"grid: {width: {from: 80 mm, to: 90 mm, step: 3 mm}}\n", "", "family.yaml:8:46: grid.width.step: 3 mm misses the end after 3.333 steps; a step that leads from 80 mm to 90 mm in whole numbers, at most 10000 of them"},
		{"grid: {width: {from: 90 mm, to: 80 mm, step: 5 mm}}\n", "", "family.yaml:8:22: grid.width.from: 90 mm to 80 mm; the smaller one first"},
		{"grid: {width: {from: 90 mm, to: 80 mm, step: 0 mm}}\n", "", `grid.width.step: "0 mm"; 0.001 mm to 499 mm is accepted`},
		{"grid: {width: {from: 80 mm, to: 90 mm}}\n", "", "grid.width.step: missing; 0.001 mm to 499 mm is accepted"},
		{"grid: {wide: [80 mm]}\n", "", "family.yaml:8:8: grid.wide: unknown field; known are thickness, width, lean, holes, grade, bolt"},
		{"parameters: {width: 80 mm}\ngrid: {width: [80 mm]}\n", "", "family.yaml:9:15: grid.width: stands under parameters too"},
		{"grid: {thickness: {from: 1 mm, to: 50 mm, step: 0.005 mm}, width: {from: 1 mm, to: 500 mm, step: 0.1 mm}, holes: [1, 2, 3, 4]}\n", "", "variants; at most 100000000"},
		{"grid: {width: [80 mm]}\nloads: []\n", "", "given twice"},
		{"", "width [mm],widht [mm]\n8,8\n", `rows.csv:1:12: header: "widht" is no parameter of tab; a parameter with its unit, such as thickness [mm]; nearest is "width"`},
		{"", "width [mm],width [in]\n8,8\n", "rows.csv:1:12: header: width stands there twice; each parameter once"},
		{"", "width [kg]\n8\n", `rows.csv:1:1: header: the unit "kg" for width; a unit of length, such as width [mm]`},
		{"", "grade [mm]\n8\n", `header: the unit "mm" for grade, which has none; grade`},
		{"", "width [mm],\n8\n", "rows.csv:1:12: header: an empty column name; the name of a parameter"},
		{"", "width;thickness\n8;8\n", "rows.csv:1:1: header: columns separated by semicolons; commas between them, and between the cells of a row"},
		{"", "width [mm];thickness [mm]\n8;8\n", "columns separated by semicolons"},
		{"", "width (in)\tthickness (in)\n8\t8\n", "columns separated by tabs"},
		{"", "\n\n", "rows.csv: the file is empty; a line of names such as thickness [mm], and a row for every variant"},
		{"", "width [mm]\n\n", "rows.csv: no rows; a row for every variant under the line of names"},
		{"", "\xff\xfew\x00i\x00\n", "text in UTF-16"},
		{"", "thickness [mm],holes\r6,2\r", "lines that end in a carriage return alone"},
		{"", "PK\x03\x04xx\n", "a spreadsheet's own file"},
		{"", "\"width [mm]\n8\n", "rows.csv:1:13: a cell in quotation marks that does not end with them, on this line"},
		{"", strings.Repeat("width,", longestLine) + "\n8\n", "a first line of more than"},
	} {
		_, err := open(t, c.more, c.rows)
		var fields job.Errors
		if !errors.As(err, &fields) || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%.60q %.60q:\n%v\nwant\n%s", c.more, c.rows, err, c.want)
		}
	}
}

// A file that changes after it was counted gives its old rows as long as they are there, and then says so.
func TestChanged(t *testing.T) {
	rows := func(n int, change func(i int) string) string {
		out := "width [mm],thickness [mm]\n"
		for i := 1; i <= n; i++ {
			out += change(i)
		}
		return out
	}
	as := func(i int) string { return fmt.Sprintf("%d,8\n", 10+i%400) }
	for _, n := range []int{3, mostMarks, 2*mostMarks + 700} {
		old := rows(n, as)
		for name, c := range map[string]struct {
			now      string
			same     int // rows that are as they were
			replaced bool
		}{
			"same bytes": {now: old, same: n},
			"replaced":   {now: "width [mm]\n7\n", same: n, replaced: true},
			"cut":        {now: old[:len(old)-3], same: n - 1},
			"half a row": {now: old[:len(old)/2], same: max(0, strings.Count(old[:len(old)/2], "\n")-1)},
			"empty":      {now: "", same: 0},
			"longer":     {now: old + "8,8\n", same: n},
			"one figure": {now: rows(n, func(i int) string {
				if i == n-1 {
					return strings.Replace(as(i), ",8", ",9", 1)
				}
				return as(i)
			}), same: n - 2},
		} {
			f, err := open(t, "", old)
			if err != nil {
				t.Fatal(err)
			}
			if c.replaced {
				err = errors.Join(os.WriteFile(f.rows.path+".new", []byte(c.now), 0o600), os.Rename(f.rows.path+".new", f.rows.path))
			} else {
				err = os.WriteFile(f.rows.path, []byte(c.now), 0o600)
			}
			if err != nil {
				t.Fatal(err)
			}
			given := 0
			all, err := f.From(0)
			for err == nil {
				if _, err = all.Next(); err == nil {
					given++
				}
			}
			var changed *ChangedError
			whole := c.replaced || c.now == old
			switch {
			case whole && (err != io.EOF || given != n):
				t.Errorf("%d rows, %s: %d given, %v", n, name, given, err)
			case !whole && (!errors.As(err, &changed) || changed.Same > int64(c.same) || changed.Same <= int64(c.same)-f.rows.marks.every):
				t.Errorf("%d rows, %s: %v after %d, %+v; %d are the same", n, name, err, given, changed, c.same)
			}
			for _, id := range []int64{1, int64(n)/2 + 1, int64(n)} {
				v, err := f.At(id)
				right := err == nil && value(v.Own[0]) == strings.Split(as(int(id)), ",")[0] && value(v.Own[1]) == "8"
				if err != nil && (whole || !errors.As(err, &changed)) || err == nil && !right {
					t.Errorf("%d rows, %s: variant %d: %v, %v", n, name, id, v, err)
				}
			}
		}
	}
}

// What cannot be read twice is refused before anything waits for it.
func TestNoFile(t *testing.T) {
	base, err := job.ReadFamily("family.yaml", []byte(head), known(), true)
	if err != nil {
		t.Fatal(err)
	}
	for path, want := range map[string]string{os.DevNull: "a device or socket; a CSV file, which is read more than once", t.TempDir(): "a folder; a CSV file"} {
		if _, err := Open(base, path); err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%s: %v", path, err)
		}
	}
	if got := kindOfFile(os.ModeNamedPipe | 0o600); got != "a pipe" {
		t.Error(got)
	}
}

// The hash changes with all that results follow from, and with nothing else.
func TestHash(t *testing.T) {
	grid := "grid: {width: [80 mm, 90 mm]}\n"
	hash := func(more, rows, version string, spoil func(f *Family)) string {
		f, err := open(t, more, rows)
		if err != nil {
			t.Fatal(err)
		}
		spoil(f)
		return f.Hash(version)
	}
	as := func(*Family) {}
	seen := map[string]bool{}
	for _, h := range []string{
		hash(grid, "", "1", as), hash(grid, "", "2", as), hash("grid: {width: [90 mm, 80 mm]}\n", "", "1", as), hash("parameters: {holes: 2}\n"+grid, "", "1", as),
		hash(grid, "", "1", func(f *Family) { f.Shop.SmallestHole.MM = 3 }), hash("", "width [mm]\n80\n", "1", as), hash("", "width [mm]\n80 \n", "1", as),
	} {
		if seen[h] {
			t.Error("two families have one hash")
		}
		seen[h] = true
	}
	if hash(grid, "", "1", as) != hash("# a remark\ngrid:\n  width: [80 mm, 3.5433070866141736 in]\n", "", "1", as) {
		t.Error("the layout of a file changes its hash")
	}
}

// FuzzFile: no text makes reading a family panic, and what is counted can be asked for.
func FuzzFile(f *testing.F) {
	for _, more := range []string{
		"parameters: {holes: 2}\ngrid:\n  thickness: [6 mm, 1/4 in]\n  width: {from: 80 mm, to: 100 mm, step: 10 mm}\n", "rows: rows.csv\n", "grid: {width: {from: 1 mm, to: 1e300 mm, step: 1e-300 mm}}\n",
	} {
		f.Add(head + more)
	}
	f.Fuzz(func(t *testing.T, src string) {
		base, err := job.ReadFamily("family.yaml", []byte(src), known(), false)
		if err != nil {
			var all job.Errors
			if !errors.As(err, &all) {
				t.Fatalf("%T: %v", err, err)
			}
			return
		}
		fam, err := Open(base, "")
		if err != nil {
			return
		}
		for _, id := range []int64{0, 1, fam.Count, fam.Count + 1} {
			if v, err := fam.At(id); (err == nil) != (id >= 1 && id <= fam.Count) || err == nil && v.ID != id {
				t.Errorf("variant %d of %d: %v, %v", id, fam.Count, v, err)
			}
		}
	})
}

func FuzzRows(f *testing.F) {
	f.Add("width [mm],grade\n8,S355\n")
	f.Add("width,lean [deg]\n\"1/4 in\",10\n\n\"")
	f.Add("bolt,holes\nM12,2\n,\n")
	base, err := job.ReadFamily("family.yaml", []byte(head), known(), true)
	if err != nil {
		f.Fatal(err)
	}
	path := filepath.Join(f.TempDir(), "rows.csv")
	f.Fuzz(func(t *testing.T, rows string) {
		if os.WriteFile(path, []byte(rows), 0o600) != nil {
			t.Skip()
		}
		fam, err := Open(base, path)
		if err != nil {
			return
		}
		defer fam.Close()
		if n := len(told(t, fam, 0)); int64(n) != fam.Count {
			t.Errorf("%d rows counted, %d given", fam.Count, n)
		}
	})
}
