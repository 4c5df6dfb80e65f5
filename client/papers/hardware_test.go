package papers

import (
	"math"
	"slices"
	"strings"
	"testing"

	"lugwright/geometry/shape"
	"lugwright/part"
	"lugwright/part/parttest"
	"lugwright/strength/material"
)

func group(size, grade string, gripMM, nearMM float64, threadsIn bool) (*part.Bracket, *part.BoltGroup) {
	b := parttest.Bracket()
	g := &b.Bolts[0]
	g.Size, g.Grade, g.GripMM, g.ThreadsIn = size, grade, gripMM, threadsIn
	g.Plies[0].ThicknessMM, g.Plies[1].ThicknessMM = nearMM, gripMM-nearMM
	return b, g
}

// By hand: a washer under head and nut, the nut, two threads. M12: 2 x 2.5 + 10.8 + 2 x 1.75 = 19.3 over the grip; M16: 6 + 14.8 + 4 = 24.8; M10: 4 + 8.4 + 3 = 15.4;
// 5/8-11: 0.272 + 0.547 + 0.182 = 1.001 in.
func TestBoltLengths(t *testing.T) {
	for _, c := range []struct {
		size, grade string
		grip, near  float64
		threadsIn   bool
		want        float64
		standard    string
	}{
		{"M12", "10.9", 18, 12, true, 40, "ISO 4017"}, // 37.3; ISO 4014 begins at 50
		{"M12", "10.9", 21, 16, true, 45, "ISO 4017"},
		{"M12", "10.9", 36, 16, true, 60, "ISO 4014"},
		{"M16", "10.9", 18, 12, true, 45, "ISO 4017"}, // 42.8; ISO 4014 begins at 65
		{"M16", "10.9", 28, 20, true, 55, "ISO 4017"},
		{"M10", "8.8", 11, 6, true, 30, "ISO 4017"},
		{"5/8-11", "SAE 8", 19.05, 12.7, true, 2 * 25.4, "ASME B18.2.1"},
		{"5/8-11", "SAE 8", 25.4, 19.05, true, 2.25 * 25.4, "ASME B18.2.1"},
		// Threads out. M12 x 50 has a shank of 50 - 30 - 8.75 = 11.25 mm: enough for 2.5 + 8 with the head on the far side. M20 x 80 has 80 - 46 - 12.5 = 21.5 mm,
		// less than 3 + 20; M20 x 90 has 31.5 mm.
		{"M12", "10.9", 26, 18, false, 50, "ISO 4014"},
		{"M20", "10.9", 40, 20, false, 90, "ISO 4014"},
	} {
		b, g := group(c.size, c.grade, c.grip, c.near, c.threadsIn)
		f, why := fit(b, g)
		if f == nil || math.Abs(f.LengthMM-c.want) > 1e-6 || !strings.HasPrefix(f.Standard, c.standard) {
			t.Errorf("%s, grip %g: %+v %s; want %g, %s", c.size, c.grip, f, why, c.want, c.standard)
		}
	}
}

// A bolt is asked for by the length that the counter has on its boxes, M12 x 45 and 5/8-11 x 2-1/4, in a job of either units.
func TestNominalLengths(t *testing.T) {
	for want, c := range map[string]struct {
		size string
		mm   float64
	}{"45": {"M12", 45}, "100": {"M10x1.25", 100}, "2-1/4": {"5/8-11", 57.15}, "5": {"3/4-10", 127}} {
		if got := nominal(c.size, c.mm); got != want {
			t.Errorf("%s of %g mm: %q, want %q", c.size, c.mm, got, want)
		}
	}
}

// RCSC's rule for structural bolts: grip and 1 in for 3/4 in, 5/32 in for each washer, up to the next quarter: 1.5 + 1 + 0.31 = 2.81 in. Thread 1-3/8 in (ASME B18.2.6).
func TestStructuralBolts(t *testing.T) {
	b, g := group("3/4-10", "A325", 1.5*25.4, 0.75*25.4, false)
	f, why := fit(b, g)
	if f == nil || math.Abs(f.LengthMM-3*25.4) > 1e-6 || f.Standard != "ASME B18.2.6" || f.Nut != "A563 DH" {
		t.Errorf("%+v %s", f, why)
	}
}

// Thread lengths as printed: of metric bolts in a mechanical engineer's data handbook, 8.2.4 (its M36 is a misprint); of hex cap screws in ASME B18.2.1, with the
// transition of five pitches.
func TestThreadLengths(t *testing.T) {
	for d, want := range map[float64]float64{5: 16, 6: 18, 8: 22, 10: 26, 12: 30, 16: 38, 20: 46, 24: 54, 30: 66} {
		if got := isoThread(d, 60); got != want {
			t.Errorf("M%g: %g, want %g", d, got, want)
		}
	}
	for size, want := range map[string][3]float64{"1/4-20": {0.75, 1, 0.25}, "3/8-16": {1, 1.25, 0.312}, "1/2-13": {1.25, 1.5, 0.385}, "5/8-11": {1.5, 1.75, 0.455}, "3/4-10": {1.75, 2, 0.5}, "1-8": {2.25, 2.5, 0.625}} {
		s, _ := material.ParseBolt(size)
		for _, c := range inchSteps(s) {
			l := c.lengthMM / 25.4
			thread := want[0]
			if l > 6 {
				thread = want[1]
			}
			if !c.full && math.Abs(c.threadMM/25.4-thread) > 1e-6 {
				t.Errorf("%s x %g: thread %g, want %g", size, l, c.threadMM/25.4, thread)
			}
		}
		if math.Abs(runOut*s.PitchMM/25.4-want[2]) > 0.0006 {
			t.Errorf("%s: transition %g, want %g", size, runOut*s.PitchMM/25.4, want[2])
		}
	}
}

// Lengths of a data handbook's list of standard bolts, which has 75 besides; ranges of a public library's table of fasteners (ISO 4014, ISO 4017).
func TestStandardLengths(t *testing.T) {
	for _, l := range []float64{20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 80, 90, 100, 110, 120, 130, 140, 150} {
		if !slices.Contains(isoLengths, l) {
			t.Errorf("%g is missing", l)
		}
	}
	for d, want := range map[float64][4]float64{
		5: {25, 50, 8, 50}, 6: {30, 60, 12, 60}, 8: {40, 80, 16, 80}, 10: {45, 100, 20, 100}, 12: {50, 120, 25, 120}, 14: {60, 140, 25, 140}, 16: {65, 160, 30, 150}, 18: {70, 180, 35, 200},
		20: {80, 200, 40, 160}, 22: {90, 220, 45, 200}, 24: {90, 240, 50, 180}, 27: {100, 260, 50, 100}, 30: {110, 300, 60, 200}, 36: {140, 360, 70, 200},
	} {
		i := slices.IndexFunc(isoRanges, func(r isoRange) bool { return r.dia == d })
		if r := isoRanges[i]; [4]float64{r.bolt, r.boltTo, r.screw, r.screwTo} != want {
			t.Errorf("M%g: %+v, want %v", d, r, want)
		}
	}
}

// Whatever the size and the grip: the end stands at least two threads past the nut, the thread reaches into it, and a thread that must stay out does.
func TestEveryFitFits(t *testing.T) {
	for _, name := range material.BoltNames() {
		size, _ := material.ParseBolt(name)
		for grip := 4.0; grip < 120; grip += 3.7 {
			for _, threadsIn := range []bool{true, false} {
				b, g := group(name, "8.8", grip, grip/3, threadsIn)
				f, why := fit(b, g)
				if f == nil {
					if why == "" {
						t.Fatalf("%s, grip %g: no fit and no reason", name, grip)
					}
					continue
				}
				if f.PastMM < endThreads*size.PitchMM-1e-6 || f.PastMM > 60 {
					t.Errorf("%s, grip %g: %g past the nut", name, grip, f.PastMM)
				}
				if !threadsIn && f.FullThread {
					t.Errorf("%s, grip %g: full thread where it must stay out", name, grip)
				}
			}
		}
	}
}

// A screw reaches through all the thread that the strength of it counts on, and needs no nut.
func TestScrews(t *testing.T) {
	b, g := group("M8", "8.8", 6, 6, true)
	q := &b.Plates[0]
	g.Pose, g.Points = q.Pose, []shape.Point{{X: 10, Y: 10}}
	q.Holes = append(q.Holes, part.Hole{ID: "tapped", Center: shape.Point{X: 10, Y: 10}, DiaMM: 8, Finish: part.Tapped, Thread: "M8"})
	f, why := fit(b, g)
	// 1.6 + 6 + 12 of thread = 19.6: 20 mm.
	if f == nil || f.LengthMM != 20 || f.Nut != "" || f.Washers != 1 || f.EngagementMM != q.ThicknessMM {
		t.Errorf("%+v %s, in a plate of %g", f, why, q.ThicknessMM)
	}
	if got := bolts(b, g); got[0].Item != "screw" || len(got) != 2 || got[1].Item != "washer" {
		t.Errorf("%+v", got)
	}
	q.Holes[len(q.Holes)-1].Center.X = 30 // a thread elsewhere is not this one's
	if got := bolts(b, g); got[0].Item != "bolt" {
		t.Errorf("%+v", got[0])
	}
}

func TestNuts(t *testing.T) {
	for grade, want := range map[string]string{"8.8": "class 8", "10.9": "class 10", "12.9": "class 12", "SAE 5": "grade 5", "A325": "A563 DH", "A4-70": "A4-70"} {
		if got := nutFor(grade); got != want {
			t.Errorf("%s: %s, want %s", grade, got, want)
		}
	}
}
