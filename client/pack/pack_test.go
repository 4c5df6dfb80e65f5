package pack

import (
	"archive/zip"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"encoding/xml"
	"fmt"
	"io"
	"log/slog"
	"maps"
	"os"
	"path/filepath"
	"slices"
	"strconv"
	"strings"
	"testing"

	"lugwright/client/draw"
	"lugwright/client/job"
	"lugwright/client/run"
	"lugwright/geometry/dxf"
	"lugwright/geometry/shape"
	"lugwright/part"
	"lugwright/services/both"
	"lugwright/services/dial"
	"lugwright/services/server"
	"lugwright/strength"
)

// The lists are compared byte for byte; papers, drawings and solids have golden files of their own where they are made.
func TestGolden(t *testing.T) {
	files := tinyPack(t)
	golden := map[string]string{"files.txt": strings.Join(sorted(files), "\n") + "\n"}
	for _, name := range []string{"README.txt", "cut-list.csv", "hole-list.csv", "saw-list.csv", "buy-list.csv"} {
		golden[name] = files[name]
	}
	for _, name := range sorted(golden) {
		path := filepath.Join("testdata", "golden", name)
		if *update {
			if err := os.WriteFile(path, []byte(golden[name]), 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if string(want) != golden[name] {
			t.Errorf("%s differs from its golden file; -update rewrites it", name)
		}
	}
}

func TestReadmeIsOneScreen(t *testing.T) {
	for _, v := range []strength.Verdict{strength.Pass, strength.Fail} {
		lines := strings.Split(packed(t, tiny(t, v))["README.txt"], "\n")
		if len(lines) > 36 {
			t.Errorf("%s: %d lines", v, len(lines))
		}
		for _, l := range lines {
			if len(l) > 80 {
				t.Errorf("%s: %d columns: %s", v, len(l), l)
			}
		}
	}
}

func TestSameJobSameBytes(t *testing.T) {
	a, b := tinyPack(t), packed(t, tiny(t, strength.Pass))
	if !maps.Equal(a, b) {
		t.Error("two packs of one job differ")
	}
}

// A real job, in this process and over TCP.
func TestRemoteGivesTheSameBytes(t *testing.T) {
	l, err := server.Listen("127.0.0.1:0")
	if err != nil {
		t.Fatal(err)
	}
	srv := server.New(server.Options{Log: slog.New(slog.DiscardHandler)}, both.Services()...)
	go srv.Serve(l)
	t.Cleanup(func() { srv.Stop(0) })
	remote, err := dial.Remote(l.Addr().String(), l.Addr().String(), dial.Options{})
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { remote.Close() })
	near, far := realPack(t, services(t)), realPack(t, remote)
	if len(near) < 10 {
		t.Errorf("only %d files: %v", len(near), sorted(near))
	}
	if !maps.Equal(near, far) {
		t.Error("the pack of remote services differs")
	}
}

func realPack(t *testing.T, c *dial.Client) map[string]string {
	t.Helper()
	j := clevisJob(t, c)
	r, err := run.Job(t.Context(), c, j, run.Options{Trace: true})
	if err != nil {
		t.Fatal(err)
	}
	return packed(t, Input{Job: j, Result: r, Client: c, Version: "test", Force: true})
}

// clevisJob is a job as it is read from a file.
func clevisJob(t *testing.T, c *dial.Client) *job.Job {
	t.Helper()
	known, err := run.Known(t.Context(), c)
	if err != nil {
		t.Fatal(err)
	}
	src, err := os.ReadFile("testdata/clevis.yaml")
	if err != nil {
		t.Fatal(err)
	}
	j, err := job.Read("clevis.yaml", src, known)
	if err != nil {
		t.Fatal(err)
	}
	return j
}

func TestManifest(t *testing.T) {
	files := tinyPack(t)
	var m manifest
	if err := json.Unmarshal([]byte(files["manifest.json"]), &m); err != nil {
		t.Fatal(err)
	}
	in := tiny(t, strength.Pass)
	if !m.Passed || !m.CutFiles || m.JobHash != in.Job.Hash("test") {
		t.Errorf("head: %+v", m)
	}
	var names []string
	for _, f := range m.Files {
		names = append(names, f.Name)
		sum := sha256.Sum256([]byte(files[f.Name]))
		if f.SHA256 != hex.EncodeToString(sum[:]) || f.Bytes != len(files[f.Name]) {
			t.Errorf("%s: hash or size is wrong", f.Name)
		}
	}
	want := slices.DeleteFunc(sorted(files), func(n string) bool { return n == "manifest.json" })
	if !slices.Equal(names, want) {
		t.Errorf("lists %v; the folder has %v", names, want)
	}
}

func TestTotalsAreSums(t *testing.T) {
	files := tinyPack(t)
	for name, columns := range map[string][]string{
		"cut-list.csv": {"qty", "mass_total_kg", "cut_length_total_mm", "pierces_total"},
		"saw-list.csv": {"qty", "mass_total_kg"}, "hole-list.csv": {"qty"},
	} {
		rows := rowsOf(t, files[name])
		total := rows[len(rows)-1]
		for _, c := range columns {
			sum := 0.0
			for _, r := range rows[:len(rows)-1] {
				sum += parse(t, r[c])
			}
			if got := parse(t, total[c]); fmt.Sprintf("%.6f", got) != fmt.Sprintf("%.6f", sum) || sum == 0 {
				t.Errorf("%s: %s is %v, the rows sum to %v", name, c, got, sum)
			}
		}
		for _, r := range rows[:len(rows)-1] {
			if name == "hole-list.csv" {
				continue // a row is one hole of each of its pieces
			}
			if each, n, all := parse(t, r["mass_each_kg"]), parse(t, r["qty"]), parse(t, r["mass_total_kg"]); fmt.Sprintf("%.6f", each*n) != fmt.Sprintf("%.6f", all) {
				t.Errorf("%s %s: %v x %v is not %v", name, r["mark"], n, each, all)
			}
		}
	}
}

func parse(t *testing.T, text string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(text, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// By hand, steel 7850 kg/m3:
// TB-L4, a ring 40 x 13.5, t 6: pi/4 (40^2 - 13.5^2) = 1113.50 mm2, 0.05245 kg; length pi (40 + 13.5) = 168.08 mm; 2 pierces;
// TB-L3, 150 x 60, corners R10, holes not cut, t 10: 9000 - (4 - pi) 100 = 8914.16 mm2, 0.69976 kg; length 2 (130 + 40) +
// 20 pi = 402.83 mm; 1 pierce.
func TestByHand(t *testing.T) {
	rows := rowsOf(t, tinyPack(t)["cut-list.csv"])
	want := []map[string]string{
		{"mark": "TB-L1", "qty": "4", "hand": "left", "holes": "1 x pin 25.30 ream, cut 23.00", "pierces_each": "3", "check_hole": "pin, 23.00 mm as cut"},
		{"mark": "TB-L2", "qty": "4", "width_mm": "45.00", "height_mm": "50.00", "control_dimension": "50.00 mm overall along y"},
		{"mark": "TB-L3", "qty": "2", "width_mm": "150.00", "height_mm": "60.00", "mass_each_kg": "0.700", "mass_total_kg": "1.400",
			"cut_length_each_mm": "402.8", "cut_length_total_mm": "805.6", "pierces_each": "1", "holes": "2 x bolt 13.50 drill, centre mark only",
			"forming": "bend 30.0 deg, inside radius 12.00", "control_dimension": "150.00 mm overall along x", "check_hole": ""},
		{"mark": "TB-L4", "qty": "2", "thickness_mm": "6", "material": "S235", "mass_each_kg": "0.052", "cut_length_each_mm": "168.1", "pierces_total": "4",
			"file": "dxf/r2000/TB-L4_6mm_S235_x2_units-mm.dxf"},
		{"mark": "TB-R1", "qty": "2", "hand": "right"},
	}
	for i, w := range want {
		for column, value := range w {
			if rows[i][column] != value {
				t.Errorf("%s %s is %q; by hand %q", w["mark"], column, rows[i][column], value)
			}
		}
	}
}

// Masses per metre, EN 10056-1 (angle, with its toe radii, which we leave out) and EN 10219-2 (tubes), from memory.
func TestSectionMasses(t *testing.T) {
	for _, s := range []struct {
		p    part.Profile
		want float64 // kg/m
		slip float64 // as a part of it
	}{
		{part.Profile{Kind: part.Angle, AMM: 100, BMM: 100, TMM: 10, RootMM: 12}, 15.0, 0.012},
		{part.Profile{Kind: part.Angle, AMM: 120, BMM: 80, TMM: 10, RootMM: 11}, 15.0, 0.012},
		{part.Profile{Kind: part.RoundTube, AMM: 88.9, TMM: 8}, 16.0, 0.004},
		{part.Profile{Kind: part.RectTube, AMM: 100, BMM: 60, TMM: 5, RootMM: 10}, 11.3, 0.005},
		{part.Profile{Kind: part.RoundBar, AMM: 25}, 3.85, 0.002}, // pi/4 0.025^2 7850
		{part.Profile{Kind: part.FlatBar, AMM: 100, TMM: 10}, 7.85, 1e-9},
	} {
		got := s.p.Section().Area() * 1000 * 7850e-9
		if d := got/s.want - 1; d > s.slip || d < -s.slip {
			t.Errorf("%v: %.3f kg/m; tables %.3g", s.p, got, s.want)
		}
	}
}

// By hand from the test bracket: an ear of 70 with its pin hole in the middle, a gusset of 45 x 50 with its hole at (12, 16), a backing plate of 150 x 60 about its
// middle, an angle of 160; two brackets on the left and one on the right, where plates are mirror images.
func TestHoleList(t *testing.T) {
	rows := rowsOf(t, tinyPack(t)["hole-list.csv"])
	for key, want := range map[string]string{
		"TB-L1 pin":    "left 4  0.00 70.00 35.00 70.00 25.30 23.00 ream cut to 23.00, ream to 25.30",
		"TB-L2 drain":  "left 4  -12.00 16.00 33.00 16.00 9.00 9.00 as cut cut to size",
		"TB-R2 drain":  "right 2  12.00 16.00 12.00 16.00 9.00 9.00 as cut cut to size",
		"TB-L3 bolt-1": "left 2  50.00 0.00 125.00 30.00 13.50 mark drill punch mark, drill to 13.50",
		"TB-R3 bolt-1": "right 1  -50.00 0.00 25.00 30.00 13.50 mark drill punch mark, drill to 13.50",
		"TB-L5 bolt-1": "left 2 leg b 130.00 60.00 130.00 60.00 13.50  drill mark out, drill to 13.50",
		"TB-R5 bolt-1": "right 1 leg b 30.00 60.00 30.00 60.00 13.50  drill mark out, drill to 13.50",
		"TOTAL ":       "27           ",
	} {
		found := false
		for _, r := range rows {
			if r["mark"]+" "+r["hole"] != key {
				continue
			}
			found = true
			var words []string
			for _, c := range []string{"hand", "qty", "face", "x_mm", "y_mm", "from_left_mm", "from_bottom_mm", "finished_mm", "cut_mm", "finish", "made"} {
				words = append(words, r[c])
			}
			if got := strings.Join(words, " "); strings.TrimSpace(got) != strings.TrimSpace(want) {
				t.Errorf("%s: %q, want %q", key, got, want)
			}
		}
		if !found {
			t.Errorf("no row %s", key)
		}
	}
	// The start of leg a is at its right when the heel is down.
	m := &part.Member{LengthMM: 160}
	h := &part.FaceHole{Face: part.LegA, Hole: part.Hole{Center: shape.Point{X: 30, Y: 60}}}
	if from := fromHeel(m, h); from != (shape.Point{X: 130, Y: 60}) {
		t.Errorf("leg a: %v", from)
	}
}

func TestSawAndBuyList(t *testing.T) {
	files := tinyPack(t)
	saw := rowsOf(t, files["saw-list.csv"])
	// 10 (100 + 100 - 10) + (1 - pi/4) 12^2 = 1930.9 mm2 x 160 - 2 x pi/4 13.5^2 x 10 = 306,082 mm3: 2.403 kg.
	if saw[0]["mark"] != "TB-L5" || saw[0]["qty"] != "2" || saw[0]["length_mm"] != "160.00" || saw[0]["mass_each_kg"] != "2.403" {
		t.Errorf("saw list: %v", saw[0])
	}
	left, right := saw[0]["holes_seen_on_the_outer_face_heel_down"], saw[1]["holes_seen_on_the_outer_face_heel_down"]
	if !strings.HasPrefix(left, "leg b (the one of 100): 130.00 from its left end, 60.00 from the heel, bolt 13.50 drill") || !strings.HasPrefix(right, "leg b (the one of 100): 30.00 from its left end") {
		t.Errorf("holes: %q and %q", left, right)
	}
	// M12 through 26 mm, of which 6 mm lie between the plies: 26 + 2 x 2.5 washers + 10.8 nut + 2 x 1.75 = 45.3 mm, and 2.5 + 16 mm clear of the thread: of
	// M12 x 55 the shank is 55 - 30 - 5 x 1.75 = 16.25 mm, of M12 x 60 it is 21.25 mm.
	bolt, nut, washer, pin := row(t, files, "bolt"), row(t, files, "nut"), row(t, files, "washer"), row(t, files, "pin")
	if bolt["qty"] != "6" || bolt["size"] != "M12" || bolt["grade_or_material"] != "8.8" || bolt["grip_mm"] != "26.00" || bolt["length_mm"] != "60.00" ||
		bolt["for"] != "tiny-left (4); tiny-right (2)" || !strings.Contains(bolt["notes"], "must stay out") {
		t.Errorf("bolts: %v", bolt)
	}
	if nut["qty"] != "6" || nut["grade_or_material"] != "class 8" || washer["qty"] != "12" {
		t.Errorf("%v, %v", nut, washer)
	}
	if pin["qty"] != "3" || pin["length_mm"] != "70.00" || pin["grade_or_material"] != "42CrMo4" {
		t.Errorf("pins: %v", pin)
	}
}

// row is the first of the buy list with an item.
func row(t *testing.T, files map[string]string, item string) map[string]string {
	t.Helper()
	for _, r := range rowsOf(t, files["buy-list.csv"]) {
		if r["item"] == item {
			return r
		}
	}
	t.Fatalf("no %s is bought", item)
	return nil
}

// A piece that two brackets need is one file, counted over both.
func TestOneMarkOnePiece(t *testing.T) {
	in := tiny(t, strength.Pass)
	in.Result.Brackets[1].Part = in.Result.Brackets[0].Part
	files := packed(t, in)
	if _, ok := files["dxf/r12/TB-L1_12mm_S355_x6_units-mm.dxf"]; !ok {
		t.Errorf("no file with all six ears: %v", sorted(files))
	}
	if n := len(rowsOf(t, files["cut-list.csv"])); n != 5 {
		t.Errorf("%d rows; need 4 pieces and the total", n)
	}
}

func TestRefusedJobHasNothingToCut(t *testing.T) {
	for _, v := range []strength.Verdict{strength.Fail, strength.Outside} {
		files := packed(t, tiny(t, v))
		if want := []string{"README.txt", "calc-sheet.html", "calc-sheet.pdf", "manifest.json"}; !slices.Equal(sorted(files), want) {
			t.Errorf("%s: %v", v, sorted(files))
		}
		if r := files["README.txt"]; !strings.Contains(r, "tiny-left") || !strings.Contains(r, "NO CUT FILES") {
			t.Errorf("%s: README does not say why:\n%s", v, r)
		}
	}
	in := tiny(t, strength.Pass)
	in.Result.Brackets[1].Report.Checks = nil
	if files := packed(t, in); len(files) != 4 || !strings.Contains(files["README.txt"], "nothing was checked") {
		t.Errorf("a bracket that nothing speaks of was released: %v", sorted(files))
	}
}

func TestForcedJobIsMarkedEverywhere(t *testing.T) {
	in := tiny(t, strength.Fail)
	in.Force = true
	files := packed(t, in)
	if len(files) != len(tinyPack(t)) {
		t.Errorf("%v", sorted(files))
	}
	for name, data := range files {
		first, _, _ := strings.Cut(data, "\n")
		if !strings.HasPrefix(filepath.Base(name), "NOT-PASSED-") {
			t.Errorf("%s: the name is not marked", name)
		}
		switch filepath.Ext(name) {
		case ".txt", ".md", ".csv", ".scad":
			if !strings.Contains(first, "NOT PASSED") {
				t.Errorf("%s begins with %q", name, first)
			}
		case ".3mf":
			if title := modelOf(t, data); !strings.Contains(title, "<metadata name=\"Title\">"+stampText) {
				t.Errorf("%s: %.400s", name, title)
			}
		case ".svg":
			if flat := strings.HasPrefix(name, "svg/"); flat && !strings.Contains(data, "  "+stampText+": ") || !flat && !strings.Contains(data, ">"+stampText+"</text>\n</svg>") {
				t.Errorf("%s has no stamp", name)
			}
			if err := wellFormed(data); err != nil {
				t.Errorf("%s: %v", name, err)
			}
		}
	}
	list := files["NOT-PASSED-cut-list.csv"]
	for _, r := range rowsOf(t, list[strings.Index(list, "\n")+1:]) {
		if _, ok := files[r["file"]]; !ok && r["mark"] != "TOTAL" {
			t.Errorf("%s: no file %s", r["mark"], r["file"])
		}
	}
	pass := tiny(t, strength.Pass)
	pass.Force = true
	if !maps.Equal(packed(t, pass), tinyPack(t)) {
		t.Error("force changes a job that passes")
	}
}

// The stamp stands above the drawing, whose paper has grown by it, within the paper.
func TestStamped(t *testing.T) {
	for _, width := range []float64{40, 180} {
		d := &draw.Drawing{WidthMM: width, HeightMM: 50, Title: "a drawing", Items: []draw.Item{&draw.Text{At: draw.Point{X: 3, Y: 3}, HeightMM: 2, Words: "kept"}}}
		s := stamped(d)
		if d.HeightMM != 50 || len(d.Items) != 1 || len(s.Items) != 2 {
			t.Fatalf("%+v", s)
		}
		for _, c := range s.Items[1].(*draw.Text).Corners() {
			if c.X < 0 || c.X > width || c.Y < 50 || c.Y > s.HeightMM {
				t.Errorf("width %g: a corner of the stamp at %v, the paper is %g high", width, c, s.HeightMM)
			}
		}
	}
}

// modelOf is the text of a 3MF file's model.
func modelOf(t *testing.T, data string) string {
	t.Helper()
	z, err := zip.NewReader(strings.NewReader(data), int64(len(data)))
	if err != nil {
		t.Fatal(err)
	}
	f, err := z.Open("3D/3dmodel.model")
	if err != nil {
		t.Fatal(err)
	}
	text, err := io.ReadAll(f)
	if err != nil {
		t.Fatal(err)
	}
	return string(text)
}

func wellFormed(text string) error {
	d := xml.NewDecoder(strings.NewReader(text))
	for {
		if _, err := d.Token(); err == io.EOF {
			return nil
		} else if err != nil {
			return err
		}
	}
}

// The cut files, read back, have the areas of the plates.
func TestCutFilesAreThePlates(t *testing.T) {
	in := tiny(t, strength.Pass)
	files := packed(t, in)
	for _, b := range in.Result.Brackets {
		made := b.Part.AsMade()
		for i := range made.Plates {
			p := &made.Plates[i]
			n := 0
			for name, data := range files {
				if filepath.Ext(name) != ".dxf" || !strings.Contains(name, p.Mark+"_") {
					continue
				}
				n++
				if err := sound([]dxf.Piece{{Plate: p}}, dxf.Options{Version: map[bool]dxf.Version{true: dxf.R12, false: dxf.R2000}[strings.HasPrefix(name, "dxf/r12/")]}, []byte(data)); err != nil {
					t.Errorf("%s: %v", name, err)
				}
			}
			if n != 2 {
				t.Errorf("%s has %d cut files; need one of each version", p.Mark, n)
			}
		}
	}
}
