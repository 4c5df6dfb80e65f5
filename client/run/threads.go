package run

// This file says which bolt grades come with which threads.

import (
	"fmt"
	"strings"

	"lugwright/part"
	"lugwright/strength/material"
)

// FitsThread says whether bolts of a grade come with the thread of a size. Property classes of ISO 898-1 are of metric threads, grades of SAE J429 and of ASTM of
// inch ones; stainless classes serve both, and of a grade that is not known it is said elsewhere.
func FitsThread(grade, size string) bool {
	g, err := material.LookupBoltGrade(grade)
	metric := strings.HasPrefix(size, "M")
	switch {
	case err != nil || strings.HasPrefix(g.Source, "ISO 3506"):
		return true
	case strings.HasPrefix(g.Source, "ISO"):
		return metric
	}
	return !metric
}

// strangeThreads tells of bolts whose grade does not come with their thread.
func strangeThreads(built *part.Bracket) []string {
	var out []string
	for i := range built.Bolts {
		if g := &built.Bolts[i]; g.SameAs == "" && !FitsThread(g.Grade, g.Size) {
			accept := "metric threads"
			if strings.HasPrefix(g.Size, "M") {
				accept = "inch threads"
			}
			out = append(out, fmt.Sprintf("mind: %s are %s of grade %s, which comes with %s alone", g.ID, g.Size, g.Grade, accept))
		}
	}
	return out
}
