package job

import (
	"testing"

	"lugwright/part"
	"lugwright/units"
)

// An inch is 25.4 mm exactly (NIST SP 811): 9.525 mm is 3/8 in, 7.9375 mm is 5/16 in.
func TestInInches(t *testing.T) {
	for from, want := range map[string]string{
		"9.525 mm":                     "3/8 in",
		"at least 14 mm, or 7.938 mm":  "at least 0.551 in, or 5/16 in",
		"25.4 to 50.8 mm (width)":      "1 in to 2 in (width)",
		"12 N mm, M12, 250 N/mm":       "12 N mm, M12, 250 N/mm",
		"645.16 mm2 of 10 mm, had 5":   "1 in2 of 0.394 in, had 5",
		"needs 25.4 mm, had 50.8 mm":   "needs 1 in, had 2 in",
		"907.18474 kg, 8.8964432 kN":   "2000 lb, 2 kip",    // 907.18474 / 0.45359237, and the pound-force of 4.4482216 N
		"11.298483 N m, 6.8947573 MPa": "100 lbf in, 1 ksi", // 4.4482216 N x 0.0254 m = 0.11298483 N m
		"-25.4 mm; none":               "-1 in; none",
		"2.54e+03 mm":                  "100 in",
		"25.4 and 50.8 mm apart":       "1 in and 2 in apart",
		"a torch of 25.4 x 254 mm":     "a torch of 1 in x 10 in",
	} {
		if got := InInches(from); got != want {
			t.Errorf("%q: %q, want %q", from, got, want)
		}
	}
}

func TestLocateInches(t *testing.T) {
	j, err := Read("pair.yaml", read(t, "testdata/good/pair.yaml"), known)
	if err != nil {
		t.Fatal(err)
	}
	refused := part.FieldErrors{{Field: "parameters.ear_thickness", Found: "9.525 mm", Accept: "at least 25.4 mm"}}
	for system, want := range map[units.System]string{units.Metric: "9.525 mm; at least 25.4 mm", units.Inch: "3/8 in; at least 1 in"} {
		j.Units = system
		err := j.Locate(&j.Brackets[0], refused)
		if got := "pair.yaml:20:22: brackets[pair-left].parameters.ear_thickness: " + want; err.Error() != got {
			t.Errorf("%s\nwant %s", err, got)
		}
	}
}
