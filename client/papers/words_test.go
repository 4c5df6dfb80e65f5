package papers_test

import (
	"strings"
	"testing"
)

// What is looked at before parts are set on it is told by its form.
func TestFitSequenceByForm(t *testing.T) {
	got := strings.Join(strings.Fields(said(of(t, demo(t, "forgefittings.yaml"), "fit-sequence"))), " ")
	for _, want := range []string{
		"begin with bar (ARCH-L3): straight and flat; front-base (ARCH-L4), rear-base (ARCH-L4): straight, its legs square; bright metal where it is welded",
		"begin with base (RACK-L1), end (RACK-L2): flat; bright metal where it is welded", "begin with tube (STAY-L2): straight; bright metal",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("no %q in %s", want, got)
		}
	}
}

// Welds that close a tray's corners are in no check: the note on its aluminium sends nobody to the checks.
func TestFillerOfClosedCorners(t *testing.T) {
	got := strings.Join(strings.Fields(said(of(t, demo(t, "watertrays.yaml"), "filler-notes"))), " ")
	if !strings.Contains(got, "strength is lost beside the weld, which no check here has, these welds being in none") || strings.Contains(got, "as the checks have it") {
		t.Error(got)
	}
}
