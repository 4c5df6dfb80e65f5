package papers

// This file gathers what is bought: bolts, nuts, washers, pins, rods, and what keeps them.

import (
	"fmt"
	"slices"
	"strings"

	"lugwright/client/run"
	"lugwright/part"
	"lugwright/strength/material"
)

// Bought is one row: everything but the count and the users says what it is.
type Bought struct {
	Item     string // "bolt", "screw into tapped holes", "nut", "washer", "pin", "threaded rod", ...
	Size     string
	Grade    string // or material
	GripMM   float64
	LengthMM float64 // 0: none, or no standard length fits
	Notes    string
	Fit      *Fit // of a bolt or screw
	Count    int
	Users    []string // "pair-left (6)"
}

// Shopping lists what the job's brackets need, in the order of the job, like things together.
func Shopping(r *run.Result) []*Bought {
	var all []*Bought
	for i := range r.Brackets {
		b := &r.Brackets[i]
		var own []*Bought
		for _, item := range itemsOf(r, b) {
			own = gathered(own, item)
		}
		for _, item := range own {
			item.Count *= b.Spec.Quantity
			item.Users = []string{b.Spec.Name}
			if item.Count > 0 {
				item.Users[0] += fmt.Sprintf(" (%d)", item.Count)
			}
			all = gathered(all, item)
		}
	}
	return all
}

func gathered(all []*Bought, item *Bought) []*Bought {
	at := slices.IndexFunc(all, func(x *Bought) bool {
		return x.Item == item.Item && x.Size == item.Size && x.Grade == item.Grade && x.GripMM == item.GripMM && x.LengthMM == item.LengthMM && x.Notes == item.Notes
	})
	if at < 0 {
		return append(all, item)
	}
	all[at].Count += item.Count
	all[at].Users = append(all[at].Users, item.Users...)
	return all
}

// threadsMay is said of bolts that ask for nothing.
const threadsMay = "threads may lie in the shear plane"

func itemsOf(r *run.Result, b *run.Bracket) []*Bought {
	var out []*Bought
	for i := range b.Part.Bolts {
		if g := &b.Part.Bolts[i]; g.SameAs == "" { // else bought once, for all their shear planes
			out = append(out, bolts(b.Part, g)...)
		}
	}
	for i := range b.Part.Pins {
		out = append(out, pinItems(r, b, &b.Part.Pins[i])...)
	}
	for i := range b.Part.Rods {
		out = append(out, rodItems(&b.Part.Rods[i])...)
	}
	return out
}

// bolts are a group's with their nuts and washers.
func bolts(b *part.Bracket, g *part.BoltGroup) []*Bought {
	n := len(g.Points)
	one := &Bought{Item: "bolt", Size: g.Size, Grade: g.Grade, GripMM: g.GripMM, Count: n, Notes: threadsMay}
	if tappedDepth(b, g) > 0 {
		one.Item, one.Notes = "screw", "into tapped holes: locking washer or wire"
	} else if !g.ThreadsIn {
		one.Notes = "threads must stay out of the shear plane"
	}
	f, why := fit(b, g)
	if f == nil {
		one.Notes += "; NO LENGTH: " + why
		return []*Bought{one}
	}
	one.LengthMM, one.Fit = f.LengthMM, f
	if f.Head != "" {
		one.Notes += ": " + f.Head
	}
	out := []*Bought{one}
	if f.Nut != "" {
		out = append(out, &Bought{Item: "nut", Size: g.Size, Grade: f.Nut, Count: n})
	}
	return append(out, &Bought{Item: "washer", Size: g.Size, Grade: washerFor(g.Grade), Count: n * f.Washers})
}

// washerFor is hardened under bolts that are tightened hard (common practice, no source).
func washerFor(grade string) string {
	for _, hard := range []string{"10.9", "12.9", "SAE 8", "A325", "A490", "F3125"} {
		if strings.HasPrefix(grade, hard) {
			return "hardened"
		}
	}
	return "plain"
}

// pinItems are a pin with what keeps it in. A pin that passes the other half of a joint is that half's.
func pinItems(r *run.Result, b *run.Bracket, p *part.Pin) []*Bought {
	if other := otherHalf(r, b, p); other != "" {
		return []*Bought{{Item: "pin of " + other, Size: diameter(p), Grade: p.Material, Notes: "bought with " + other + ", whose length holds", Count: 0}}
	}
	one := &Bought{Item: "pin", Size: diameter(p), Grade: p.Material, LengthMM: p.LengthMM, Count: 1, Notes: fmt.Sprintf("ends: %s and %s", p.Ends[0].Kind, p.Ends[1].Kind)}
	if !ownPin(b.Part, p) {
		one.Notes += "; it passes the other half of the joint: buy it once, as long as that half asks"
	}
	out := []*Bought{one}
	for k, e := range p.Ends {
		switch e.Kind {
		case part.EndNut:
			out = append(out, &Bought{Item: "castle nut", Size: "for the pin's thread", Count: 1, Notes: "with its washer"},
				&Bought{Item: "cotter", Size: "for that nut", Count: 1, Notes: "new each time it is drawn"})
		case part.EndRetainer:
			if e.Size != "" {
				out = append(out, retainer(p, e.Size)...)
			}
		case part.EndKeeper:
			// A keeper of the bracket's own is among its plates, its screws among the bolts; of both ends it is one.
			if k == 0 && b.Part.Plate("keeper") == nil {
				out = append(out, &Bought{Item: "keeper", Size: "for a pin of " + diameter(p), Count: 1, Notes: "as the half that holds the pin has it"})
			}
		}
	}
	return out
}

// diameter is in mm, as everything inside; the paper writes it in the job's units.
func diameter(p *part.Pin) string { return millimetre(p.DiaMM) + " mm" }

// retainer is a bolt across the pin's end.
func retainer(p *part.Pin, size string) []*Bought {
	g := &part.BoltGroup{Size: size, GripMM: p.DiaMM, ThreadsIn: true, Grade: "8.8", Plies: [2]part.Ply{{ThicknessMM: p.DiaMM}}}
	one := &Bought{Item: "retaining bolt", Size: size, GripMM: p.DiaMM, Count: 1, Notes: "across the pin's end; drilled for lock wire"}
	if f, why := fit(&part.Bracket{}, g); f != nil {
		one.LengthMM, one.Fit = f.LengthMM, f
	} else {
		one.Notes += "; NO LENGTH: " + why
	}
	return []*Bought{one, {Item: "nut", Size: size, Grade: "for the retaining bolt", Count: 1}, {Item: "washer", Size: size, Grade: "plain", Count: 2}}
}

// ownPin says whether the bracket itself holds the pin on either side of what it carries.
func ownPin(b *part.Bracket, p *part.Pin) bool {
	return slices.ContainsFunc(p.Seats, func(s part.Seat) bool { return !s.Loads && b.Support(s.Thing) == nil })
}

// otherHalf names the bracket on the same mount that holds this bracket's pin.
func otherHalf(r *run.Result, b *run.Bracket, p *part.Pin) string {
	if ownPin(b.Part, p) || b.Spec.Mount == "" {
		return ""
	}
	for i := range r.Brackets {
		o := &r.Brackets[i]
		if o == b || o.Spec.Mount != b.Spec.Mount {
			continue
		}
		for k := range o.Part.Pins {
			if q := &o.Part.Pins[k]; q.DiaMM == p.DiaMM && ownPin(o.Part, q) {
				return o.Spec.Name
			}
		}
	}
	return ""
}

// rodItems are rods with their nuts and washers. What a rod passes at either end is the place's own.
func rodItems(r *part.Rods) []*Bought {
	n := len(r.Points)
	nuts := 4 * n
	notes := "free length; order it longer by what it passes at either end, and a nut and two threads at each"
	if r.EngagementMM > 0 {
		nuts, notes = 2*n, "free length; order it longer by the engagement in each coupling nut"
	}
	out := []*Bought{{Item: "threaded rod", Size: r.Size, Grade: r.Grade, LengthMM: r.FreeMM, Count: n, Notes: notes}}
	if r.EngagementMM > 0 {
		out = append(out, &Bought{Item: "coupling nut", Size: r.Size, Grade: nutFor(r.Grade), LengthMM: 3 * r.DiaMM, Count: 2 * n,
			Notes: fmt.Sprintf("3 d long (fastener seller's note); %s mm of thread in each side", millimetre(r.EngagementMM))})
	}
	return append(out, &Bought{Item: "nut", Size: r.Size, Grade: nutFor(r.Grade), Count: nuts, Notes: "over and under at each end"},
		&Bought{Item: "washer", Size: r.Size, Grade: "plain", Count: 2 * n, Notes: "at the beam; the spreader washers are among the plates"})
}

// millimetre writes a length in mm with up to three decimals.
func millimetre(v float64) string {
	return strings.TrimSuffix(strings.TrimRight(fmt.Sprintf("%.3f", v), "0"), ".")
}

// boltOf is a group's size; false where no table has it.
func boltOf(size string) (material.Bolt, bool) {
	b, err := material.ParseBolt(size)
	return b, err == nil
}
