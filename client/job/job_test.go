package job

import (
	"bytes"
	"encoding/json"
	"flag"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"

	"github.com/goccy/go-yaml"
	"github.com/santhosh-tekuri/jsonschema/v6"

	"lugwright/geometry"
	"lugwright/part"
	"lugwright/strength"
	"lugwright/units"
)

var update = flag.Bool("update", false, "rewrite the .errors files")

// known stands in for the services: one kind with a parameter of every unit.
var known = Known{
	Kinds: []geometry.Kind{{Name: "fork", Sentence: "Two ears.", Params: []geometry.Param{
		{Name: "ear_thickness", Unit: geometry.MM, Min: 4, Max: 40, Default: 8, Sentence: "Thickness of an ear."},
		{Name: "tilt", Unit: geometry.Rad, Min: 0, Max: 1, Sentence: "Tilt of the ears."},
		{Name: "bolt", Unit: geometry.Size, Text: "M12", Sentence: "Bolts of the foot."},
		{Name: "stiffener_count", Unit: geometry.Count, Min: 0, Max: 4, Sentence: "Stiffeners."},
		{Name: "foot", Unit: geometry.Word, Choices: []string{"angle", "plate"}, Text: "angle", Sentence: "What it stands on."},
		{Name: "grade", Unit: geometry.Word, Choices: []string{"8.8", "10.9"}, Text: "8.8", Sentence: "Bolt grade."},
		{Name: "material", Unit: geometry.Word, Text: "S355", Sentence: "Plate grade."},
	}}},
	Bases: []strength.Card{
		{Name: "AISC 360-22", Methods: []strength.Method{strength.ASD, strength.LRFD}, ServiceFactor: map[strength.Method]float64{strength.ASD: 1, strength.LRFD: 1.6}},
		{Name: "AISC 360-16", Methods: []strength.Method{strength.ASD}, ReferenceOnly: true},
		{Name: "Euro", Methods: []strength.Method{strength.PartialFactors}, ServiceFactor: map[strength.Method]float64{strength.PartialFactors: 1.5}, Factors: []strength.Factor{
			{Symbol: "gamma_M0", Words: "partial factor", Default: 1, Min: 1, Max: 1.5, Sets: []strength.FactorSet{{Name: "Norway", Value: 1.05}}},
			{Symbol: "gamma_M2", Words: "partial factor", Default: 1.25, Min: 1, Max: 1.5, Sets: []strength.FactorSet{{Name: "Norway", Value: 1.25}}},
		}},
		{Name: "Lifting", Methods: []strength.Method{strength.Allowable}, ServiceFactor: map[strength.Method]float64{strength.Allowable: 1}, Factors: []strength.Factor{
			{Symbol: "N_d", Words: "design factor", Default: 3, Min: 2, Max: 10},
		}},
	},
}

func read(t *testing.T, path string) []byte {
	t.Helper()
	src, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	return src
}

func TestRead(t *testing.T) {
	j, err := Read("pair.yaml", read(t, "testdata/good/pair.yaml"), known)
	if err != nil {
		t.Fatal(err)
	}
	if j.Units != units.Inch || j.Method != strength.LRFD || j.LoadFactor != 1.6 || j.Revision != "2" || len(j.Cases) != 2 {
		t.Errorf("head: %+v", j)
	}
	b := &j.Brackets[0]
	if b.Quantity != 2 || j.Brackets[1].Quantity != 1 {
		t.Errorf("quantities %d and %d", b.Quantity, j.Brackets[1].Quantity)
	}
	// 5/16 in = 7.9375 mm, by the inch of 25.4 mm.
	if p := b.Params[0]; p.Name != "ear_thickness" || p.Number != 7.9375 {
		t.Errorf("first parameter %+v", p)
	}
	if j.PinJoint != "" || j.FactorSet != "" || j.Factors != nil {
		t.Errorf("factors nobody set: %+v", j)
	}
	loads := j.LoadCases(b)
	if l := loads[0]; l.Name != "A6 side right, full" || l.Level != part.Service || l.Force != (part.Vec{Y: -15210, Z: -23290}) {
		t.Errorf("first load %+v", l)
	}
	if l := loads[2]; l.Level != part.Factored || l.Name != "lift" {
		t.Errorf("third load %+v", l)
	}
	if missing := j.NotLoaded(&j.Brackets[1]); len(missing) != 1 || missing[0] != "A6 side right" {
		t.Errorf("not loaded: %q", missing)
	}
}

func TestReadFactors(t *testing.T) {
	j, err := Read("factors.yaml", read(t, "testdata/good/factors.yaml"), known)
	if err != nil {
		t.Fatal(err)
	}
	if j.Method != strength.PartialFactors || j.PinJoint != "Lifting" || j.FactorSet != "Norway" || len(j.Factors) != 2 || j.Factors["gamma_M2"] != 1.3 || j.Factors["N_d"] != 3.5 {
		t.Errorf("head: %+v", j)
	}
	if s := j.Brackets[0].Spectrum; len(s) != 1 || s[0].To != "lift" || s[0].Cycles != 1e5 {
		t.Errorf("spectrum: %+v", s)
	}
}

// TestBad reads every bad file and compares the messages with the file beside it; each is reviewed by eye when it changes.
func TestBad(t *testing.T) {
	files, _ := filepath.Glob("testdata/bad/*.yaml")
	if len(files) < 40 {
		t.Fatalf("only %d bad files", len(files))
	}
	for _, path := range files {
		t.Run(filepath.Base(path), func(t *testing.T) {
			_, err := Read(filepath.Base(path), read(t, path), known)
			if err == nil {
				t.Fatal("accepted")
			}
			got, golden := err.Error()+"\n", strings.TrimSuffix(path, ".yaml")+".errors"
			if *update {
				os.WriteFile(golden, []byte(got), 0o644)
			}
			if want := string(read(t, golden)); got != want {
				t.Errorf("got\n%swant\n%s", got, want)
			}
		})
	}
}

// meaning are the bad files whose fault is not one of structure, so that the schema cannot see it.
var meaning = map[string]bool{
	"absurd.yaml": true, "absurd-force.yaml": true, "negative.yaml": true, "zero.yaml": true, "range-inch.yaml": true,
	"zero-load.yaml": true, "unknown-case.yaml": true, "factor-asd.yaml": true, "factor-set.yaml": true, "names.yaml": true,
	"vehicle-empty.yaml": true, "vehicle-no-cab.yaml": true, "vehicle-bodies.yaml": true, "vehicle-same-case.yaml": true, "vehicle-rails.yaml": true, "vehicle-room.yaml": true,
	"vehicle-no-twist.yaml": true, "vehicle-tied-nowhere.yaml": true, "vehicle-wrong-hand.yaml": true,
	// what the editor's YAML reader takes and we do not
	"anchor.yaml": true, "tag.yaml": true, "two-documents.yaml": true,
}

func TestSchema(t *testing.T) {
	schema := compile(t, Schema(known))
	good, _ := filepath.Glob("testdata/good/*.yaml")
	for _, path := range good {
		if err := schema.Validate(plain(t, read(t, path))); err != nil {
			t.Errorf("%s: %v", path, err)
		}
	}
	bad, _ := filepath.Glob("testdata/bad/*.yaml")
	for _, path := range bad {
		if meaning[filepath.Base(path)] {
			continue
		}
		var doc any
		src := read(t, path)
		if yaml.Unmarshal(src, &doc) != nil {
			continue // not YAML: no schema needed
		}
		if err := schema.Validate(plain(t, src)); err == nil {
			t.Errorf("%s: the schema accepts it", path)
		}
	}
}

func compile(t *testing.T, src []byte) *jsonschema.Schema {
	t.Helper()
	doc, err := jsonschema.UnmarshalJSON(bytes.NewReader(src))
	if err != nil {
		t.Fatal(err)
	}
	c := jsonschema.NewCompiler()
	if err := c.AddResource("job.json", doc); err != nil {
		t.Fatal(err)
	}
	s, err := c.Compile("job.json")
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// plain reads YAML as an editor does, into the types of JSON. NaN and infinities have no JSON form and stand as null.
func plain(t *testing.T, src []byte) any {
	t.Helper()
	var doc any
	if err := yaml.Unmarshal(src, &doc); err != nil {
		t.Fatal(err)
	}
	text, err := json.Marshal(doc)
	if err != nil {
		return nil
	}
	out, err := jsonschema.UnmarshalJSON(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	return out
}

func TestHash(t *testing.T) {
	src := string(read(t, "testdata/good/pair.yaml"))
	hash := func(src, version string) string {
		j, err := Read("other.yaml", []byte(src), known)
		if err != nil {
			t.Fatal(err)
		}
		return j.Hash(version)
	}
	first := hash(src, "1")
	if again := hash("# a comment\n"+strings.ReplaceAll(src, "15.21 kN", "15210 N"), "1"); again != first {
		t.Error("layout and unit changed the hash")
	}
	for name, other := range map[string]string{
		"version": hash(src, "2"),
		"load":    hash(strings.ReplaceAll(src, "15.21 kN", "15.22 kN"), "1"),
		"name":    hash(strings.ReplaceAll(src, "pair-left", "pair-front"), "1"),
	} {
		if other == first {
			t.Errorf("another %s left the hash as it was", name)
		}
	}
}

func TestLocate(t *testing.T) {
	src := read(t, "testdata/good/pair.yaml")
	j, err := Read("pair.yaml", src, known)
	if err != nil {
		t.Fatal(err)
	}
	for _, c := range []struct{ field, found, want string }{
		{"parameters.ear_thickness", "too thin", "pair.yaml:20:22: brackets[pair-left].parameters.ear_thickness: too thin; thicker"},
		{"parameters.ear_width", "too narrow", "pair.yaml:19:5: brackets[pair-left].parameters.ear_width: too narrow; thicker"},
		{"plates[3].material", `unknown grade "S355"`, "pair.yaml:26:17: brackets[pair-left].parameters.material: unknown grade \"S355\"; thicker"},
		{"loads[1].moment", "not carried", "pair.yaml:33:17: brackets[pair-left].loads[1].moment: not carried; thicker"},
		{"cases[1].level", "factored", "pair.yaml:29:9: brackets[pair-left].loads[1].level: factored; thicker"},
		{"basis", "closed today", "pair.yaml:5:8: basis: closed today; thicker"},
		{"welds[0]", "too short", "pair.yaml:14:5: brackets[pair-left].welds[0]: too short; thicker"},
	} {
		err := j.Locate(&j.Brackets[0], part.FieldErrors{{Field: c.field, Found: c.found, Accept: "thicker"}})
		if err.Error() != c.want {
			t.Errorf("got  %s\nwant %s", err, c.want)
		}
	}
}

// One parameter that spoils several plates is one error.
func TestLocateOnce(t *testing.T) {
	j, err := Read("pair.yaml", read(t, "testdata/good/pair.yaml"), known)
	if err != nil {
		t.Fatal(err)
	}
	spoilt := part.FieldErrors{{Field: "plates[0].material", Found: `"S355"`}, {Field: "plates[1].material", Found: `"S355"`}}
	if got := j.Locate(&j.Brackets[0], spoilt); len(got.(Errors)) != 1 {
		t.Errorf("%v", got)
	}
}

// Files made to hurt are refused, with no more memory than their size asks for.
func TestHostile(t *testing.T) {
	for name, src := range map[string]string{
		"deep lists":   "job: " + strings.Repeat("[", 1_000_000),
		"deep dashes":  strings.Repeat("- ", 1_000_000),
		"deep indent":  staircase(2000),
		"many keys":    strings.Repeat("a: 1\n", 900_000),
		"large":        strings.Repeat("# 23456\n", 600_000),
		"laughs":       "a: &a [x, x]\nb: &b [*a, *a]\nc: [*b, *b]\n",
		"long word":    "job: " + strings.Repeat("x", 3_000_000),
		"long key":     strings.Repeat("x", 100_000) + ": 1",
		"not unicode":  "job: \xff\xfe",
		"byte order":   "\ufeff",
		"only a colon": ":",
		"only a dash":  "-",
		"odd brackets": "]}][",
	} {
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		if _, err := Read("x.yaml", []byte(src), known); err == nil {
			t.Errorf("%s: accepted", name)
		} else if len(err.Error()) > 10_000 {
			t.Errorf("%s: message of %d bytes", name, len(err.Error()))
		}
		runtime.ReadMemStats(&after)
		if took := after.TotalAlloc - before.TotalAlloc; took > 1000*uint64(len(src))+1<<20 {
			t.Errorf("%s: %d bytes took %d", name, len(src), took)
		}
	}
}

func staircase(n int) string {
	var b strings.Builder
	for i := range n {
		b.WriteString(strings.Repeat(" ", i) + "a:\n")
	}
	return b.String()
}

func FuzzRead(f *testing.F) {
	for _, pattern := range []string{"testdata/good/*.yaml", "testdata/bad/*.yaml"} {
		files, _ := filepath.Glob(pattern)
		for _, path := range files {
			if src, err := os.ReadFile(path); err == nil {
				f.Add(src)
			}
		}
	}
	f.Fuzz(func(t *testing.T, src []byte) {
		j, err := Read("x.yaml", src, known)
		if err == nil {
			for i := range j.Brackets {
				j.LoadCases(&j.Brackets[i])
			}
			j.Hash("test")
		} else if _, ok := err.(Errors); !ok {
			t.Fatalf("%T: %v", err, err)
		}
	})
}

// docs/job-file.md names every field there is.
func TestFieldsAreDocumented(t *testing.T) {
	doc := string(read(t, "../../docs/job-file.md"))
	var schema map[string]any
	if err := json.Unmarshal(Schema(known), &schema); err != nil {
		t.Fatal(err)
	}
	named := func(at map[string]any, keys ...string) map[string]any {
		for _, k := range keys {
			at = at[k].(map[string]any)
		}
		return at
	}
	root := named(schema, "properties")
	bracket := named(root, "brackets", "items", "properties")
	for _, fields := range []map[string]any{
		root, bracket, named(bracket, "loads", "items", "properties"), named(bracket, "spectrum", "items", "properties"),
		named(root, "sheets", "items", "properties"), named(root, "room", "properties"), named(root, "cases", "additionalProperties", "properties"),
	} {
		for name := range fields {
			if !strings.Contains(doc, "`"+name+"`") && !strings.Contains(doc, "`"+name+":") && !strings.Contains(doc, name+": ") {
				t.Errorf("%s is not in docs/job-file.md", name)
			}
		}
	}
}
