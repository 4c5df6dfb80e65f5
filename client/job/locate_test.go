package job

import (
	"testing"

	"lugwright/part"
	"lugwright/units"
)

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
