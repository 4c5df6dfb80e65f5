package papers

// This file is the buy list.

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"lugwright/part"
	"lugwright/strength/material"
	"lugwright/units"
)

func buyList(p *page) string {
	if len(p.brackets()) == 0 {
		return noBrackets
	}
	all := Shopping(p.in.Result)
	others := p.usedUp()
	if len(all) == 0 && len(others) == 0 {
		return "nothing is bolted, pinned or hung, and nothing is used up"
	}
	p.boltTable(all)
	p.itemTable("Nuts and washers", all, "nut", "washer", "coupling nut")
	p.pinTable(all)
	p.rodTable(all)
	if len(others) > 0 {
		p.head("Used up in the shop and on the truck")
		t := table("", "item", "why", "where from")
		for _, o := range others {
			row(t, o[:]...)
		}
		p.add(t)
	}
	p.head("At the counter")
	p.ticks(p.atTheCounter(all)...)
	p.cautions(7)
	return ""
}

// atTheCounter asks for what the job buys, and for nothing else.
func (p *page) atTheCounter(all []*Bought) []string {
	has := func(item string) bool {
		return slices.ContainsFunc(all, func(x *Bought) bool { return x.Item == item })
	}
	var out, once []string
	if has("bolt") || has("screw") || has("nut") {
		out = append(out, "grade marks seen on every bolt head and nut, and none mixed")
	}
	pins, wired := p.pinned(), false
	for i := range p.brackets() {
		for _, q := range p.brackets()[i].Part.Pins {
			wired = wired || lockWired(&q)
		}
	}
	if pins {
		out = append(out, "pins not zinc plated where they turn: zinc galls (common practice, no source)")
	}
	if has("cotter") {
		once = append(once, "cotters")
	}
	if has("nut") {
		once = append(once, "locking nuts")
	}
	if wired || has("screw") {
		once = append(once, "lock wire")
	}
	if once != nil {
		out = append(out, "spares of what is used once: "+strings.Join(once, ", "))
	}
	if pins {
		return append(out, "steel grade and thickness of bar and pins seen on the seller's paper")
	}
	return append(out, "steel grade and thickness of sheet, plate and bar seen on the seller's paper")
}

// lockWired says whether lock wire keeps what keeps a pin.
func lockWired(q *part.Pin) bool {
	return q.Ends[0].Kind == part.EndRetainer || q.Ends[1].Kind == part.EndRetainer || q.Ends[0].Kind == part.EndKeeper
}

func (p *page) boltTable(all []*Bought) {
	t := table("", "#qty", "size x length", "grade", "grip", "past nut", "standard", "for")
	var remarks []string
	for _, line := range p.sameBolts(all) {
		row(t, line.cells(p)...)
		for _, x := range line.of {
			if remark := fmt.Sprintf("%s, grip %s: %s", x.Size, p.length(x.GripMM), p.words(x.Notes)); x.Notes != threadsMay && !slices.Contains(remarks, remark) {
				remarks = append(remarks, remark)
			}
		}
	}
	if len(t.Rows) == 0 {
		return
	}
	p.head("Bolts and screws, grips " + p.inUnit())
	p.add(t)
	p.bullets(remarks...)
	p.say("Lengths are as the counter names them, in mm with metric threads and in inches with inch threads. Each is the shortest standard one that reaches through a washer under the head, the grip, a washer under the nut, an ordinary hexagon nut and two threads. " +
		"A locking nut is taller: take the next length where less stands past the nut than it is taller. Paint, shims and liners count in the grip. " +
		"Sizes of nuts and washers, and metric lengths: ISO 4032, 7089, 4014, 4017, from memory; inch lengths in steps of a quarter, common practice, no source.")
}

// boltLine is what is one thing at the counter, whatever its grips.
type boltLine struct{ of []*Bought }

func (p *page) sameBolts(all []*Bought) []*boltLine {
	var out []*boltLine
	for _, x := range all {
		if x.Item != "bolt" && x.Item != "screw" && x.Item != "retaining bolt" {
			continue
		}
		i := slices.IndexFunc(out, func(l *boltLine) bool {
			y := l.of[0]
			return y.Size == x.Size && y.Grade == x.Grade && y.LengthMM == x.LengthMM && x.Fit != nil && y.Fit != nil && y.Fit.Standard == x.Fit.Standard && y.Fit.FullThread == x.Fit.FullThread
		})
		if i < 0 {
			i, out = len(out), append(out, &boltLine{})
		}
		out[i].of = append(out[i].of, x)
	}
	return out
}

func (l *boltLine) cells(p *page) []string {
	x := l.of[0]
	size, past, standard := x.Size+" x ?", "", "NONE FITS"
	if x.Fit != nil {
		size, standard = x.Size+" x "+nominal(x.Size, x.LengthMM), x.Fit.Standard
		past = p.span(l.of, func(y *Bought) float64 { return round(y.Fit.PastMM) })
		if x.Fit.FullThread {
			standard += ", full thread"
		}
	}
	count := 0
	var users []string
	for _, y := range l.of {
		count, users = count+y.Count, append(users, y.Users...)
	}
	return []string{strconv.Itoa(count), size, x.Grade, p.span(l.of, func(y *Bought) float64 { return y.GripMM }), past, standard, strings.Join(users, ", ")}
}

// nominal is a length as the counter names it: in mm with a metric thread, in inches with an inch one, whatever the job's units.
func nominal(size string, mm float64) string {
	if strings.HasPrefix(size, "M") {
		return strings.TrimSuffix(units.ShopLength(mm, units.Metric), " mm")
	}
	return strings.TrimSuffix(units.ShopLength(mm, units.Inch), " in")
}

// span writes the least and the greatest of some lengths.
func (p *page) span(list []*Bought, of func(*Bought) float64) string {
	lo, hi := of(list[0]), of(list[0])
	for _, x := range list {
		lo, hi = min(lo, of(x)), max(hi, of(x))
	}
	if p.bare(lo) == p.bare(hi) {
		return p.bare(lo)
	}
	return p.bare(lo) + " to " + p.bare(hi)
}

// round is to a tenth of a mm, for what is only looked at.
func round(mm float64) float64 { return math.Round(mm*10) / 10 }

func (p *page) itemTable(head string, all []*Bought, items ...string) {
	t := table("", "#qty", "item", "size", "grade", "for")
	// A nut is a nut whatever its length of bolt: like ones together.
	type key struct{ item, size, grade string }
	at := map[key]int{}
	var count []int
	var users [][]string
	for _, x := range all {
		if !slices.Contains(items, x.Item) {
			continue
		}
		k := key{x.Item, x.Size, x.Grade}
		i, ok := at[k]
		if !ok {
			i = len(t.Rows)
			at[k] = i
			row(t, "", x.Item, x.Size, x.Grade, "")
			count, users = append(count, 0), append(users, nil)
		}
		count[i] += x.Count
		for _, u := range x.Users {
			name, _, _ := strings.Cut(u, " (")
			if !slices.Contains(users[i], name) {
				users[i] = append(users[i], name)
			}
		}
	}
	for i := range t.Rows {
		t.Rows[i].Cells[0], t.Rows[i].Cells[4] = strconv.Itoa(count[i]), strings.Join(users[i], ", ")
	}
	if len(t.Rows) > 0 {
		p.head(head)
		p.add(t)
	}
}

func (p *page) pinTable(all []*Bought) {
	t := table("", "#qty", "item", "size", "material", "#length", "note", "for")
	for _, x := range all {
		length := ""
		if x.LengthMM > 0 {
			length = p.bare(x.LengthMM)
		}
		switch {
		case x.Item == "pin", x.Item == "castle nut", x.Item == "cotter", x.Item == "keeper", strings.HasPrefix(x.Item, "pin of "):
			count := strconv.Itoa(x.Count)
			if x.Count == 0 {
				count = "-"
			}
			row(t, count, x.Item, p.words(x.Size), x.Grade, length, p.words(x.Notes), strings.Join(x.Users, ", "))
		}
	}
	if len(t.Rows) == 0 {
		return
	}
	p.head("Pins and what keeps them, lengths " + p.inUnit())
	p.add(t)
	p.bullets(p.notes("pin: ")...)
}

func (p *page) rodTable(all []*Bought) {
	t := table("", "#qty", "item", "size", "grade", "#free length", "note", "for")
	for _, x := range all {
		if x.Item == "threaded rod" {
			row(t, strconv.Itoa(x.Count), x.Item, x.Size, x.Grade, p.bare(x.LengthMM), x.Notes, strings.Join(x.Users, ", "))
		}
	}
	if len(t.Rows) > 0 {
		p.head("Rods, lengths " + p.inUnit())
		p.add(t)
	}
}

// usedUp is what no part list has: item, why, source.
func (p *page) usedUp() [][3]string {
	var out [][3]string
	say := func(item, why, source string) {
		if !slices.ContainsFunc(out, func(o [3]string) bool { return o[0] == item }) {
			out = append(out, [3]string{item, why, source})
		}
	}
	for i := range p.brackets() {
		b := &p.brackets()[i]
		for k := range b.Part.Pins {
			q := &b.Part.Pins[k]
			if ownPin(b.Part, q) && len(b.Part.Welds) > 0 {
				say("dummy pin, "+p.length(q.DiaMM)+" round bar", "through the ears while they are welded, drawn cold", common)
			}
			if q.Turns {
				say("chassis grease", "pins that turn", common)
			}
			if lockWired(q) {
				say("lock wire, 0.8 mm (0.032 in)", "retaining bolts, keeper screws; new each time", "army technical manual TM 1-1500-204-23-6 (second hand)")
			}
		}
		for k := range b.Part.Bolts {
			if tappedDepth(b.Part, &b.Part.Bolts[k]) == 0 {
				say("zinc primer", "bare steel of drilled holes and faying faces", common)
			}
		}
		p.fillers(b.Part, say)
		if q := closed(b.Part); q != nil {
			say("filler that matches "+q.Material, "corners of "+strings.Join(p.closedOf(q.Material), ", ")+" closed by welding; the weight of these welds is not known", "the welder's choice ("+common+")")
		}
		if aluminiumOnSteel(b.Part) {
			say("primer for aluminium and steel, two coats on each face", "aluminium beside steel", "army corrosion manuals, as quoted by the trade")
			say("insulating layer and sleeves, edges closed", "aluminium beside steel: tape past the edge, or sealant squeezed out", "trailer trade, recommended practice for corrosion")
		}
	}
	say("paint pen", "a line over each bolt once it is tight", common)
	return out
}

// closedOf are the brackets with corners closed by welding, of one material.
func (p *page) closedOf(material string) []string {
	var out []string
	for i := range p.brackets() {
		if q := closed(p.brackets()[i].Part); q != nil && q.Material == material {
			out = append(out, p.brackets()[i].Spec.Name)
		}
	}
	return out
}

// fillers names each filler with the weight of its weld metal.
func (p *page) fillers(b *part.Bracket, say func(item, why, source string)) {
	for i := range b.Welds {
		say("filler "+b.Welds[i].Electrode, p.mass(math.Ceil(100*p.weldMetalKG(b.Welds[i].Electrode))/100)+" of weld metal in the whole job, without caps and loss", "leg and length of every weld")
	}
}

// weldMetalKG is the steel of all welds of a filler.
func (p *page) weldMetalKG(filler string) float64 {
	const density = 7.85e-6 // kg/mm3
	kg := 0.0
	for i := range p.brackets() {
		b := &p.brackets()[i]
		for k := range b.Part.Welds {
			w := &b.Part.Welds[k]
			if w.Electrode != filler {
				continue
			}
			kg += density * w.VolumeMM3() * float64(b.Spec.Quantity)
		}
	}
	return kg
}

// aluminiumOnSteel says whether a bracket has aluminium plates on supports of another metal.
func aluminiumOnSteel(b *part.Bracket) bool {
	for i := range b.Plates {
		for k := range b.Supports {
			if family(b.Plates[i].Material) == material.Aluminium && b.Supports[k].Material != "" && family(b.Supports[k].Material) != material.Aluminium {
				return true
			}
		}
	}
	return false
}

func family(grade string) material.Family {
	g, err := material.LookupGrade(grade)
	if err != nil {
		return ""
	}
	return g.Family
}
