package pack

import (
	"encoding/csv"
	"strconv"
	"strings"
	"testing"

	"lugwright/client/job"
	"lugwright/geometry/dxf"
	"lugwright/strength"
)

// Sheets of 12 mm for the ears, the small gussets' own sheet too small for all, none for the others: files that hold what the list says, and what
// found no room is named.
func TestNest(t *testing.T) {
	in := tiny(t, strength.Pass)
	in.Job.Sheets = []job.Sheet{
		{ThicknessMM: 12, Material: "S355", WidthMM: 1000, HeightMM: 500, Quantity: 1, Turns: job.HalfTurns},
		{ThicknessMM: 8, Material: "S355", WidthMM: 60, HeightMM: 120, Quantity: 2, Turns: job.AnyTurn},
	}
	files := packed(t, in)
	rows, err := csv.NewReader(strings.NewReader(files["nest.csv"])).ReadAll()
	if err != nil {
		t.Fatal(err)
	}
	sheets := 0
	for _, row := range rows[1:] {
		if row[0] == "NO ROOM" {
			continue
		}
		sheets++
		f, err := dxf.Read([]byte(files[row[0]]), dxf.Layers{})
		if err != nil || strconv.Itoa(len(f.Outlines())) != row[5] {
			t.Errorf("%s: %d pieces, %v; the list says %s", row[0], len(f.Outlines()), err, row[5])
		}
	}
	if sheets != 3 {
		t.Errorf("%d sheets in\n%s", sheets, files["nest.csv"])
	}
	for _, words := range []string{"2 x TB-L3", "2 x TB-L4"} {
		if !strings.Contains(files["nest.csv"], "NO ROOM,,,,,,"+words) || !strings.Contains(files["README.txt"], words) {
			t.Errorf("%s is not named in\n%s", words, files["nest.csv"])
		}
	}
}
