package caution

import (
	"strings"
	"testing"
)

func TestCautions(t *testing.T) {
	if len(All()) != 15 {
		t.Fatalf("%d cautions", len(All()))
	}
	for i, c := range All() {
		if c.Number != i+1 || !strings.HasSuffix(strings.TrimRight(c.Text, ")"), ".") && !strings.Contains(c.Text, ")") {
			t.Errorf("caution %d: %+v", i+1, c)
		}
	}
	if got := Checked(false); len(got) != 6 || got[2].Number != 4 {
		t.Errorf("%+v", got)
	}
	All()[0].Text = "changed"
	if All()[0].Text == "changed" {
		t.Error("the list can be written to from outside")
	}
}
