package papers

// This file is the torque card: T = K d F with its scatter where a bolt is tightened by torque, and what is done where torque is not the way.

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"lugwright/client/run"
	"lugwright/part"
	"lugwright/strength/material"
)

// The nut factors of bolt makers' charts, driest first, and how far a preload by torque wrench may be off either way (common practice, no source). The checks of
// a stated preload are reckoned with the dry one and the same scatter.
const (
	dryK    = 0.20
	zincK   = 0.17
	lubedK  = 0.15
	scatter = 0.35
	// usual is the part of its proof load to which a bolt is tightened where a job states no preload, as a farm-machine maker's table has it.
	usual = 0.75
)

// tightening is one size, grade and aim.
type tightening struct {
	size, grade string
	boltMM      float64
	aimN        float64
	stated      bool // by the job, as a part of the tensile strength
	proofN      float64
}

// wayOf is how a group is tightened: by torque when why is empty.
type wayOf struct {
	t   tightening
	why string
}

func torqueCard(p *page) string {
	if len(p.brackets()) == 0 {
		return noBrackets
	}
	var sorts []tightening
	ticks := table("", "bracket, bolts", "#qty", "size", "how", "tight", "line drawn", "read again")
	for i := range p.brackets() {
		b := &p.brackets()[i]
		for k := range b.Part.Bolts {
			g := &b.Part.Bolts[k]
			if g.SameAs != "" {
				continue
			}
			w := tighten(b.Part, g)
			how := w.why
			if how == "" {
				how = "torque as listed"
				if !slices.Contains(sorts, w.t) {
					sorts = append(sorts, w.t)
				}
				if tappedDepth(b.Part, g) > 0 {
					how += ", into the thread; lock it"
				}
				if s := b.Part.Support(g.Plies[1].Thing); s != nil && (s.Kind == part.CrossMember || s.Kind == part.TubeWall) {
					how += "; crush sleeve where the section is hollow"
				}
			}
			row(ticks, b.Spec.Name+", "+g.ID, strconv.Itoa(len(g.Points)*b.Spec.Quantity), g.Size+" "+g.Grade, p.words(how), tickBox, tickBox, blank)
		}
	}
	notTorque := p.notTorque()
	if len(ticks.Rows) == 0 && len(notTorque) == 0 {
		return "nothing is bolted, pinned or hung"
	}
	p.torques(sorts)
	if len(ticks.Rows) > 0 {
		p.head("Each set of bolts")
		p.add(ticks)
		p.bullets(append(p.locking(), "turn the nut, hold the head (truck maintenance manual)",
			"in two rounds, half and then whole, from the middle of the pattern outwards, crosswise (common practice, no source)",
			"paint under heads and nuts at most 0.05 mm (0.002 in): thick paint creeps and the preload goes (highway notes on bolting)",
			"a line over nut, washer and plate with a paint pen, then the box; again at the first service, for joints bed in")...)
	}
	if len(notTorque) > 0 {
		p.head("Where torque is not the way")
		p.bullets(notTorque...)
	}
	p.cautions(5, 7, 12)
	return ""
}

// torques is the table of sizes, and where its numbers come from.
func (p *page) torques(sorts []tightening) {
	if len(sorts) == 0 {
		return
	}
	p.head("Torque in " + p.wrenchUnit())
	t := table("", "size, grade", "aim", "preload", "least to most", "#K 0.20 plain, dry", "#K 0.17 zinc, dry", "#K 0.15 oiled, locker")
	stated, unstated, over := false, false, false
	for _, s := range sorts {
		aim := "75 % of proof *"
		if s.stated {
			aim = "as the job states"
		}
		stated, unstated = stated || s.stated, unstated || !s.stated
		over = over || s.proofN > 0 && (1+scatter)*s.aimN > s.proofN
		row(t, s.size+" "+s.grade, aim, p.force(s.aimN), p.force((1-scatter)*s.aimN)+" to "+p.force((1+scatter)*s.aimN),
			p.wrench(dryK*s.boltMM*s.aimN), p.wrench(zincK*s.boltMM*s.aimN), p.wrench(lubedK*s.boltMM*s.aimN))
	}
	p.add(t)
	remarks := []string{
		"T = K d F (bolt makers' charts; K from the same charts). A wrench scatters the preload by about 35 % either way (common practice, no source): the column least to most",
		"one column for one bolt: zinc or plain dry, or oiled; never the dry torque on an oiled thread. A liquid locker counts as oil",
		"a locking nut has a torque of its own: one maker gives M12 10.9 90 to 99 N m with one, 132 to 145 with a free nut. Ask the nut's maker",
	}
	if slices.ContainsFunc(sorts, func(s tightening) bool { return s.grade == "10.9" }) {
		remarks = append(remarks, "one farm-machine maker's table for 10.9, zinc, dry, 75 % of proof: M12 125 +/- 12, M16 310 +/- 30, M20 610 +/- 50 N m, less 25 % oiled or with a locker; others differ")
	}
	if unstated {
		remarks = append(remarks, "* "+chosen+": the job states no preload and the checks count on none. The aim is what keeps a bolted joint shut on a vehicle by common practice, no source; state bolt_preload in the job to have it checked")
	}
	if stated {
		remarks = append(remarks, "where the job states the preload, least and most are those of the checks (separation, torque): no wrench may break a bolt by its scatter")
	}
	if over {
		remarks = append(remarks, "the most that scatter may bring reaches the proof load: a bolt that has been drawn that far is not used again")
	}
	p.bullets(remarks...)
}

// tighten says how a group is tightened.
func tighten(b *part.Bracket, g *part.BoltGroup) wayOf {
	if gap := openGap(b, g); gap > 0 {
		return wayOf{why: fmt.Sprintf("NOT by torque: a gap of %s mm stays open; by feel on shims, locking nut", millimetre(gap))}
	}
	if soft := softPly(b, g); soft != "" {
		return wayOf{why: "NOT by torque alone: " + soft + " creeps; wide washers, locking nut, look again soon"}
	}
	grade, err := material.LookupBoltGrade(g.Grade)
	size, known := boltOf(g.Size)
	if err != nil || !known {
		return wayOf{why: "as the maker of the bolt says: its size or grade is in no table here"}
	}
	proof, _, tensile, err := grade.Strength(size.DiaMM)
	if err != nil {
		return wayOf{why: "as the maker of the bolt says: its grade has no strength at this size"}
	}
	area := size.StressArea()
	t := tightening{size: g.Size, grade: g.Grade, boltMM: size.DiaMM, proofN: proof * area}
	switch {
	case g.Preload > 0:
		t.aimN, t.stated = g.Preload*tensile*area, true
	case proof > 0:
		t.aimN = usual * t.proofN
	default:
		return wayOf{why: "as the maker of the bolt says: its grade has no proof load"}
	}
	return wayOf{t: t}
}

// openGap is how far two plates of the bracket that bolts draw together stay apart, such as a cap over its saddle; 0 where they lie on each other.
func openGap(b *part.Bracket, g *part.BoltGroup) float64 {
	if b.Plate(g.Plies[0].Thing) == nil || b.Plate(g.Plies[1].Thing) == nil || tappedDepth(b, g) > 0 {
		return 0
	}
	for i := range b.Bolts {
		if b.Bolts[i].SameAs == g.ID {
			return 0
		}
	}
	if gap := g.GripMM - g.Plies[0].ThicknessMM - g.Plies[1].ThicknessMM; gap > 0.5 {
		return gap
	}
	return 0
}

// softPly names a ply that is neither steel nor known.
func softPly(b *part.Bracket, g *part.BoltGroup) string {
	for _, ply := range g.Plies {
		if family(ply.Material) == material.Aluminium {
			return "aluminium (" + thing(b, ply.Thing) + ")"
		}
	}
	return ""
}

// locking is what the brackets' notes say of it.
func (p *page) locking() []string {
	var out []string
	for _, n := range p.notes("") {
		if _, words, _ := strings.Cut(n, ": "); strings.Contains(words, "lock") && !strings.Contains(words, "tighten") && !strings.Contains(words, "rod") {
			out = append(out, n)
		}
	}
	return out
}

// notTorque tells of pins and rods.
func (p *page) notTorque() []string {
	var out []string
	say := func(b *run.Bracket, words string) { out = append(out, b.Spec.Name+": "+words) }
	for i := range p.brackets() {
		b := &p.brackets()[i]
		for k := range b.Part.Pins {
			q := &b.Part.Pins[k]
			if !ownPin(b.Part, q) {
				continue
			}
			for _, e := range q.Ends {
				switch e.Kind {
				case part.EndNut:
					say(b, fmt.Sprintf("castle nut of the pin: run it up until %s of play is left, to the nearest slot on the loose side, cotter through, legs bent. Tightened, it draws the ears together", p.length(e.PlayMM)))
				case part.EndRetainer:
					say(b, "retaining bolt of the pin: snug, wired so that the wire pulls it tight; it holds the pin in and carries nothing else")
				case part.EndKeeper:
					continue
				}
			}
			if q.Ends[0].Kind == part.EndKeeper {
				say(b, "keeper of the pin: its screws snug and wired or on tab washers, with the pin's load off them")
			}
		}
		for k := range b.Part.Rods {
			say(b, fmt.Sprintf("rods %s %s: each nut snug against its neighbour over and under the sheet, locked; a torqued nut dishes the sheet", b.Part.Rods[k].Size, b.Part.Rods[k].Grade))
		}
		for _, n := range b.Part.Notes {
			if strings.Contains(n, "tighten") {
				say(b, p.words(n))
			}
		}
	}
	return out
}
