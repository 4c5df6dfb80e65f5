package run

import (
	"strings"
	"testing"

	"lugwright/part"
)

// ISO 898-1 is about bolts with metric threads, SAE J429 and ASTM F3125 about those with inch threads; stainless bolts come with either.
func TestStrangeThreads(t *testing.T) {
	for _, c := range []struct {
		grade, size string
		fits        bool
	}{
		{"10.9", "M12", true}, {"10.9", "1/2-13", false}, {"SAE 8", "M12", false}, {"SAE 8", "1/2-13", true}, {"A490", "3/4-10", true}, {"Group 150", "M20", false},
		{"A4-80", "M12", true}, {"A4-80", "1/2-13", true}, {"no such", "M12", true},
	} {
		said := strangeThreads(&part.Bracket{Bolts: []part.BoltGroup{{ID: "bolts", Size: c.size, Grade: c.grade}}})
		if FitsThread(c.grade, c.size) != c.fits || (said == nil) != c.fits {
			t.Errorf("%s of %s: %v", c.size, c.grade, said)
		}
		if said != nil && !strings.Contains(said[0], c.size+" of grade "+c.grade) {
			t.Error(said[0])
		}
	}
}
