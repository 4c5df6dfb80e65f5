package shopfile

import (
	"errors"
	"strings"
	"testing"

	"lugwright/client/yamlfile"
	"lugwright/geometry/shop"
)

func TestShipped(t *testing.T) {
	names := Names()
	if strings.Join(names, " ") != "laser plasma waterjet" {
		t.Fatalf("shipped: %v", names)
	}
	for _, name := range names {
		src, _ := Shipped(name)
		s, err := Read(name+".yaml", src)
		if err != nil {
			t.Errorf("%v", err)
			continue
		}
		if s.Name != name || string(s.Process) != name || s.Words == "" || len(s.Files.Versions) != 2 || s.Files.Inch || s.Files.Grouping != shop.OnePart {
			t.Errorf("%s: %+v", name, s)
		}
	}
	if _, ok := Shipped("../doc"); ok {
		t.Error("a path is taken for a name")
	}
}

func TestRead(t *testing.T) {
	src, _ := Shipped("plasma")
	s, err := Read("p.yaml", []byte(strings.NewReplacer("units: mm", "units: inch", "less: 4 mm", `less: 1/8"`, "and: 5 mm", "and: 1/4 in").Replace(string(src))))
	if err != nil {
		t.Fatal(err)
	}
	if !s.Files.Inch || s.Holes[0].LessMM != 3.175 || s.SmallestWeb.MM != 6.35 || s.SmallestWeb.At(4) != 6.35 || s.SmallestWeb.At(10) != 10 {
		t.Errorf("%+v", s)
	}
}

// Each wrong file says where and what would be taken.
func TestRefusals(t *testing.T) {
	src, _ := Shipped("laser")
	for _, c := range []struct{ from, to, want string }{
		{"process: laser", "process: scissors", "p.yaml:6:10: process: \"scissors\"; one of laser, plasma, waterjet, oxy-fuel"},
		{"[R2000, R12]", "[R14]", "files.versions[0]: \"R14\"; one of R12, R2000, R2010"},
		{"cut: CUT", "cut: cut lines", "files.layers.cut: \"cut lines\"; 1 to 31 of A-Z 0-9 $ _ -"},
		{"etch: ETCH", "etch: CUT", "files.layers.etch: \"CUT\" is the cut layer too"},
		{"etch: ETCH, ", "", "marks.style: single line, and files.layers has no etch layer"},
		{"{mark}_", "", "files.naming: no {mark}"},
		{"  - {make: cut to size}\n", "", "holes: no last rule that fits every hole"},
		{"less: 1 mm", "less: 1", "holes[1].less: 1 has no unit"},
		{"less: 1 mm, ", "", "holes[1].less: missing"},
		{"of_thickness: 1.0, and: 1.5 mm}\nsmallest_web", "of_thickness: NaN}\nsmallest_web", "smallest_hole.of_thickness"},
		{"gap: 10 mm", "gap: -10 mm", "files.gap: \"-10 mm\""},
	} {
		text := strings.Replace(string(src), c.from, c.to, 1)
		if text == string(src) {
			t.Fatalf("%q is not in the file", c.from)
		}
		if _, err := Read("p.yaml", []byte(text)); err == nil || !strings.Contains(err.Error(), c.want) {
			t.Errorf("%q: %v, want %q", c.to, err, c.want)
		}
	}
}

// FuzzRead: no text makes reading panic; a refusal lists what is wrong, and what is read is sound.
func FuzzRead(f *testing.F) {
	for _, name := range Names() {
		src, _ := Shipped(name)
		f.Add(src)
	}
	f.Fuzz(func(t *testing.T, src []byte) {
		s, err := Read("x.yaml", src)
		var all yamlfile.Errors
		switch {
		case err != nil && !errors.As(err, &all):
			t.Fatalf("%T: %v", err, err)
		case err == nil && s.Validate() != nil:
			t.Fatalf("read as sound: %v", s.Validate())
		}
	})
}
