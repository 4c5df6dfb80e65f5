package papers

// This file finds the bolt for a stack: the shortest standard length that reaches through washers, plies and nut, with its thread where it must be and not
// where it must not.

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"lugwright/part"
	"lugwright/strength/material"
)

// Fit is a bolt or screw that fits its stack.
type Fit struct {
	LengthMM     float64 // under the head
	FullThread   bool
	Standard     string
	Nut          string  // class or grade; empty for a tapped ply
	Washers      int     // for each bolt
	PastMM       float64 // end past the nut, or past the tapped ply
	EngagementMM float64 // thread in the nut or the tapped ply
	Head         string  // which side the head goes on, where the thread's place asks for it
}

// isoLengths are the lengths of ISO 4014 and ISO 4017 (from memory).
var isoLengths = []float64{
	8, 10, 12, 16, 20, 25, 30, 35, 40, 45, 50, 55, 60, 65, 70, 80, 90, 100, 110, 120, 130, 140, 150, 160, 180, 200, 220, 240, 260, 280, 300, 320, 340, 360,
}

// isoRange is over which lengths a size is made with a shank (ISO 4014) and fully threaded (ISO 4017).
type isoRange struct{ dia, bolt, boltTo, screw, screwTo float64 }

// isoRanges are from memory, and agree with a public library's table of fasteners.
var isoRanges = []isoRange{
	{5, 25, 50, 8, 50}, {6, 30, 60, 12, 60}, {8, 40, 80, 16, 80}, {10, 45, 100, 20, 100}, {12, 50, 120, 25, 120}, {14, 60, 140, 25, 140},
	{16, 65, 160, 30, 150}, {18, 70, 180, 35, 200}, {20, 80, 200, 40, 160}, {22, 90, 220, 45, 200}, {24, 90, 240, 50, 180}, {27, 100, 260, 50, 100},
	{30, 110, 300, 60, 200}, {36, 140, 360, 70, 200},
}

// candidate is a bolt that may be bought.
type candidate struct {
	lengthMM float64
	threadMM float64 // length of its thread; all of it when it is fully threaded
	full     bool
	standard string
}

const (
	endThreads = 2 // threads that stand past the nut; one full thread at least is asked for by EN 1090-2, 8.2.2 (from memory)
	runOut     = 5 // pitches from the last full thread to the shank: l_g - l_s of ISO 4014 (from memory), Y of ASME B18.2.1-2010, 4.7
)

// metric lists what ISO makes of a size, shortest first, with a shank before fully threaded.
func metric(size material.Bolt) []candidate {
	i := slices.IndexFunc(isoRanges, func(r isoRange) bool { return r.dia == size.DiaMM })
	if i < 0 {
		return nil
	}
	r := isoRanges[i]
	fine := ""
	boltStandard, screwStandard := "ISO 4014", "ISO 4017"
	if strings.Contains(size.Name, "x") {
		boltStandard, screwStandard, fine = "ISO 8765", "ISO 8676", " (fine thread: ask for it)"
	}
	var out []candidate
	for _, l := range isoLengths {
		if l >= r.bolt && l <= r.boltTo {
			out = append(out, candidate{l, isoThread(size.DiaMM, l), false, boltStandard + fine})
		}
		if l >= r.screw && l <= r.screwTo {
			out = append(out, candidate{l, l, true, screwStandard + fine})
		}
	}
	return out
}

// isoThread is the thread's length, ISO 888 (from memory).
func isoThread(d, l float64) float64 {
	switch {
	case l <= 125:
		return 2*d + 6
	case l <= 200:
		return 2*d + 12
	}
	return 2*d + 25
}

// inchSteps lists hex cap screws: the standard fixes no lengths; a quarter of an inch to 5 in and half an inch beyond is what counters hold (common practice,
// no source). Thread lengths: ASME B18.2.1-2010, 4.7.
func inchSteps(size material.Bolt) []candidate {
	const in = 25.4
	var out []candidate
	for k := 2; k <= 44; k++ {
		l := float64(k) / 4
		if l > 5 && k%2 == 1 {
			continue
		}
		thread := 2*size.DiaMM + in/4
		if l > 6 {
			thread = 2*size.DiaMM + in/2
		}
		c := candidate{l * in, thread, false, "ASME B18.2.1"}
		if l*in <= thread+runOut*size.PitchMM {
			c.threadMM, c.full = l*in, true
		}
		out = append(out, c)
	}
	return out
}

// structural are heavy hex structural bolts, in inches: diameter, thread, and what their length has over the grip without washers. Threads of ASME B18.2.6, length
// over grip of the RCSC specification, Table C-2.2; both from memory.
var structural = []struct{ dia, thread, over float64 }{
	{1. / 2, 1, 11. / 16}, {5. / 8, 1.25, 7. / 8}, {3. / 4, 1.375, 1}, {7. / 8, 1.5, 1.125}, {1, 1.75, 1.25}, {1.125, 2, 1.5}, {1.25, 2, 1.625}, {1.375, 2.25, 1.75},
	{1.5, 2.25, 1.875},
}

// asStructural gives inch bolts of a structural grade their own threads, and what they have over grip and washers.
func asStructural(size material.Bolt, grade string, all []candidate) ([]candidate, float64) {
	const in = 25.4
	if !size.Inch || !strings.Contains(grade, "A325") && !strings.Contains(grade, "A490") {
		return all, size.NutMM + endThreads*size.PitchMM
	}
	for _, s := range structural {
		if math.Abs(s.dia*in-size.DiaMM) < 1e-6 {
			for i := range all {
				full := all[i].lengthMM <= s.thread*in+runOut*size.PitchMM
				all[i].threadMM, all[i].full, all[i].standard = s.thread*in, full, "ASME B18.2.6"
				if full {
					all[i].threadMM = all[i].lengthMM
				}
			}
			return all, s.over * in
		}
	}
	return all, size.NutMM + endThreads*size.PitchMM
}

// fit finds the bolt of a group. Else it says why none fits.
func fit(b *part.Bracket, g *part.BoltGroup) (*Fit, string) {
	size, err := material.ParseBolt(g.Size)
	if err != nil {
		return nil, err.Error()
	}
	all := metric(size)
	if size.Inch {
		all = inchSteps(size)
	}
	if deep := tappedDepth(b, g); deep > 0 {
		return screwFit(g, size, all, deep)
	}
	return nutFit(b, g, size, all)
}

// nutFit is a bolt with a washer under head and nut.
func nutFit(b *part.Bracket, g *part.BoltGroup, size material.Bolt, all []candidate) (*Fit, string) {
	stack := g.GripMM + 2*size.WasherT
	all, over := asStructural(size, g.Grade, all)
	need := stack + over
	plane, head := shearPlane(b, g)
	for _, c := range all {
		shank := c.lengthMM - c.threadMM // to the last thread that a nut takes
		if c.lengthMM < need-1e-6 || shank > stack+1e-6 {
			continue
		}
		f := &Fit{
			LengthMM: c.lengthMM, FullThread: c.full, Standard: c.standard, Nut: nutFor(g.Grade), Washers: 2,
			PastMM: c.lengthMM - stack - size.NutMM, EngagementMM: size.NutMM,
		}
		if g.ThreadsIn {
			return f, ""
		}
		if !c.full && shank-runOut*size.PitchMM >= size.WasherT+plane-1e-6 {
			f.Head = head
			return f, ""
		}
	}
	if g.ThreadsIn {
		return nil, fmt.Sprintf("no standard %s is long enough for a grip of %.4g mm", size.Name, g.GripMM)
	}
	return nil, fmt.Sprintf("no standard %s keeps its thread out of the shear plane %.4g mm under its washer: have it made with a shank of that, or check it with threads in", size.Name, plane)
}

// screwFit is a screw through one washer into a tapped ply: all of the ply's thread is reckoned on, so that the screw comes through it.
func screwFit(g *part.BoltGroup, size material.Bolt, all []candidate, deep float64) (*Fit, string) {
	through := size.WasherT + g.Plies[0].ThicknessMM
	for _, c := range all {
		if shank := c.lengthMM - c.threadMM; c.lengthMM >= through+deep-1e-6 && shank <= through+1e-6 {
			return &Fit{LengthMM: c.lengthMM, FullThread: c.full, Standard: c.standard, Washers: 1, PastMM: c.lengthMM - through - deep, EngagementMM: deep}, ""
		}
	}
	return nil, fmt.Sprintf("no standard %s reaches through %.4g mm of thread", size.Name, deep)
}

// tappedDepth is how much thread a group's screws have in the plates of the bracket, 0 where they have nuts.
func tappedDepth(b *part.Bracket, g *part.BoltGroup) float64 {
	deep := 0.0
	for i := range b.Plates {
		q := &b.Plates[i]
		if slices.ContainsFunc(q.Holes, func(h part.Hole) bool { return h.Thread == g.Size && onAxis(g, q.HoleAt(h)) }) {
			deep += q.ThicknessMM
		}
	}
	return deep
}

// onAxis says whether a place lies on the axis of one of a group's bolts.
func onAxis(g *part.BoltGroup, at part.Vec) bool {
	u, v, _ := g.Pose.Local(at)
	for _, p := range g.Points {
		if math.Hypot(p.X-u, p.Y-v) < 0.01 {
			return true
		}
	}
	return false
}

// shearPlane is how far the farthest shear plane lies under the head's washer, with the head on the side where that is less.
func shearPlane(b *part.Bracket, g *part.BoltGroup) (mm float64, head string) {
	for i := range b.Bolts {
		if b.Bolts[i].SameAs == g.ID { // more planes than one: all but the outermost ply
			return g.GripMM - g.Plies[0].ThicknessMM, ""
		}
	}
	near, far := g.GripMM-g.Plies[1].ThicknessMM, g.GripMM-g.Plies[0].ThicknessMM
	if near <= far {
		return near, "head on the bracket's side"
	}
	return far, "head on the far side"
}

// nutFor is the nut that goes with a bolt's grade: ISO 898-2 (the class is the bolt's first number), SAE J995, ASTM A563, ISO 3506-2, all from memory.
func nutFor(grade string) string {
	if i := strings.IndexByte(grade, '.'); i > 0 && strings.Trim(grade, "0123456789.") == "" {
		return "class " + grade[:i]
	}
	switch {
	case strings.HasPrefix(grade, "SAE "):
		return "grade " + strings.TrimPrefix(grade, "SAE ")
	case strings.HasPrefix(grade, "A325"), strings.HasPrefix(grade, "A490"), strings.HasPrefix(grade, "F3125"):
		return "A563 DH"
	case strings.HasPrefix(grade, "A307"):
		return "A563 A"
	case strings.HasPrefix(grade, "A2-"), strings.HasPrefix(grade, "A4-"):
		return grade
	}
	return "of a class to match " + grade
}
