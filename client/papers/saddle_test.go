package papers_test

// A saddle's collars: bores that are cut out, and plates that stand on no part of the bracket.

import (
	"strings"
	"testing"
)

// Over a tube of 76.1 mm the collars' bores are 0.5 mm wider, by the kind's own rule.
func TestCollars(t *testing.T) {
	in := input(t, "job.yaml", []byte(strings.NewReplacer("kind: tray", "kind: saddle", "mark: TRAY", "mark: S\n    parameters: {tube_diameter: 76.1 mm, collar_gap: 1.5 mm}", "name: tray", "name: saddle").Replace(trayJob("laser"))))
	bores := 0
	for _, tab := range tables(of(t, in, "hole-schedule"), "from left") {
		for _, r := range tab.Rows {
			if cell(tab, r, "hole") == "bore" {
				bores++
				if cell(tab, r, "finished") != "76.6" || cell(tab, r, "cut") != "76.6" {
					t.Errorf("%v", r.Cells)
				}
			}
		}
	}
	if bores != 1 {
		t.Errorf("%d rows of bores, want the one of both collars", bores)
	}
	words := strings.Join(strings.Fields(plain(t, of(t, in, "fit-sequence"))), " ")
	for _, want := range []string{"collar-1 (S-L", "on tube, 1.5 mm from the face of side-1", "on tube, 1.5 mm from the face of side-2"} {
		if !strings.Contains(words, want) {
			t.Errorf("no %q in %s", want, words)
		}
	}
}
