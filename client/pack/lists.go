package pack

// This file adds the cut list and the saw list. A job without plates gets no cut list.

import (
	"bytes"
	"context"
	"encoding/csv"
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"lugwright/geometry/shape"
	"lugwright/geometry/shop"
	"lugwright/part"
	"lugwright/units"
)

// list writes rows as CSV with the ending lines of RFC 4180, below the warning where there is one.
func (a *assembly) list(name string, rows [][]string) {
	var out bytes.Buffer
	w := csv.NewWriter(&out)
	w.UseCRLF = true
	if text := a.warning(); text != "" {
		w.Write([]string{text}) //nolint:errcheck // a buffer takes everything
	}
	w.WriteAll(rows) //nolint:errcheck // a buffer takes everything
	a.add(name, out.Bytes())
}

func (a *assembly) addCutList(context.Context) error {
	if len(a.pieces) == 0 {
		return nil
	}
	rows := [][]string{{
		"mark", "hand", "qty", "thickness_mm", "material", "width_mm", "height_mm", "mass_each_kg", "mass_total_kg",
		"cut_length_each_mm", "cut_length_total_mm", "pierces_each", "pierces_total", "holes", "forming", "control_dimension",
		"check_hole", "file", "warnings",
	}}
	var count, pierces int
	var mass, length int64
	for _, p := range a.pieces {
		n := int64(p.count)
		count, pierces, mass, length = count+p.count, pierces+p.count*p.pierces, mass+n*p.grams, length+n*p.tenths
		box := p.plate.Outer.BBox()
		rows = append(rows, []string{
			p.plate.Mark, string(p.hand), strconv.Itoa(p.count), mm(p.plate.ThicknessMM), p.plate.Material,
			hundredths(box.Width()), hundredths(box.Height()), kg(p.grams), kg(n * p.grams),
			tenthsMM(p.tenths), tenthsMM(n * p.tenths), strconv.Itoa(p.pierces), strconv.Itoa(p.count * p.pierces),
			holeNotes(p.plate), formingNotes(p.plate), a.control(box), checkHole(p.plate),
			a.marked(a.cutFile(p)), strings.Join(a.warnings(p.plate), "; "),
		})
	}
	total := make([]string, len(rows[0]))
	total[0], total[2], total[8], total[10], total[12] = "TOTAL", strconv.Itoa(count), kg(mass), tenthsMM(length), strconv.Itoa(pierces)
	a.list("cut-list.csv", append(rows, total))
	return nil
}

// warnings are what the shop's process does to a plate, and that it alone comes without its mark; of a shop that marks none README.txt says so once.
func (a *assembly) warnings(p *part.Plate) []string {
	out := a.Job.Shop.Warnings(p)
	if why := a.Job.Shop.Unmarked(p); why != "" && a.Job.Shop.Marks.Style != shop.NoMarks {
		out = append(out, why+": paint it on, or tag the plate")
	}
	return out
}

// addSawList lists members; a job without any gets no list.
func (a *assembly) addSawList(context.Context) error {
	if len(a.members) == 0 {
		return nil
	}
	rows := [][]string{{"mark", "hand", "qty", "section", "material", "length_mm", "mass_each_kg", "mass_total_kg", "holes_seen_on_the_outer_face_heel_down"}}
	var count int
	var mass int64
	for _, m := range a.members {
		n := int64(m.count)
		count, mass = count+m.count, mass+n*m.grams
		rows = append(rows, []string{
			m.member.Mark, string(m.hand), strconv.Itoa(m.count), profileWords(m.member.Profile), m.member.Material,
			hundredths(m.member.LengthMM), kg(m.grams), kg(n * m.grams), faceHoles(m.member),
		})
	}
	a.list("saw-list.csv", append(rows, []string{"TOTAL", "", strconv.Itoa(count), "", "", "", "", kg(mass), ""}))
	return nil
}

func hundredths(v float64) string { return units.FormatPlain(v, 2) }

// kg writes whole grams, tenthsMM whole tenths, without a float in between.
func kg(g int64) string          { return fmt.Sprintf("%d.%03d", g/1000, g%1000) }
func tenthsMM(n int64) string    { return fmt.Sprintf("%d.%d", n/10, n%10) }
func degrees(rad float64) string { return units.FormatPlain(rad*180/math.Pi, 1) }

// cutFile is the file of a piece in the shop's first form.
func (a *assembly) cutFile(p *piece) string {
	name := p.fileName
	if a.Job.Shop.Files.Grouping == shop.OneThickness {
		for _, g := range a.stocks {
			if slices.Contains(g.pieces, p) {
				name = g.fileName
			}
		}
	}
	return a.forms[0].cutFile(name)
}

// control is the dimension that shows a wrong unit or scale at once: the larger overall size, in the unit of the cut files.
func (a *assembly) control(box shape.Box) string {
	size, axis := box.Width(), "x"
	if box.Height() > box.Width() {
		size, axis = box.Height(), "y"
	}
	if a.Job.Shop.Files.Inch {
		return inches(size) + " in overall along " + axis
	}
	return hundredths(size) + " mm overall along " + axis
}

// inches writes a length with up to four decimals of an inch.
func inches(mm float64) string {
	return strings.TrimSuffix(strings.TrimRight(units.FormatPlain(mm/25.4, 4), "0"), ".")
}

// checkHole is the first hole that is cut, for the gauge.
func checkHole(p *part.Plate) string {
	if i := slices.IndexFunc(p.Holes, func(h part.Hole) bool { return h.CutMM > 0 }); i >= 0 {
		return fmt.Sprintf("%s, %s mm as cut", p.Holes[i].Purpose, hundredths(p.Holes[i].CutMM))
	}
	if bores := p.Bores(); len(bores) > 0 {
		return fmt.Sprintf("bore, %s mm as cut", hundredths(bores[0].DiaMM))
	}
	return ""
}

// holeNotes counts like holes and round openings: "1 x pin 25.30 ream, cut 24.00; 4 x bolt 13.50 as cut; 1 x bore 89.40 as cut".
func holeNotes(p *part.Plate) string {
	var all []string
	for _, h := range p.RoundHoles() {
		all = append(all, holeNote(h))
	}
	var notes []string
	var count []int
	for _, note := range all {
		i := slices.Index(notes, note)
		if i < 0 {
			notes, count, i = append(notes, note), append(count, 0), len(notes)
		}
		count[i]++
	}
	for i := range notes {
		notes[i] = fmt.Sprintf("%d x %s", count[i], notes[i])
	}
	return strings.Join(notes, "; ")
}

func holeNote(h part.Hole) string {
	text := fmt.Sprintf("%s %s %s", h.Purpose, hundredths(h.DiaMM), h.Finish)
	if drill, err := part.TapDrillMM(h.Thread); h.Finish == part.Tapped && err == nil {
		text = fmt.Sprintf("%s tap %s, drill %s", h.Purpose, h.Thread, hundredths(drill))
	}
	switch {
	case h.CutMM == 0:
		return text + ", centre mark only"
	case h.CutMM < h.DiaMM:
		return text + ", cut " + hundredths(h.CutMM)
	}
	return text
}

func formingNotes(p *part.Plate) string {
	var notes []string
	for _, b := range p.Bends {
		note := fmt.Sprintf("bend %s deg, inside radius %s", degrees(b.AngleRad), hundredths(b.RadiusMM))
		if b.AllowanceMM > 0 {
			note += ", " + hundredths(b.AllowanceMM) + " of the flat allowed"
		}
		notes = append(notes, note)
	}
	if p.RolledMM > 0 {
		notes = append(notes, "roll to inside radius "+hundredths(p.RolledMM))
	}
	return strings.Join(notes, "; ")
}

func profileWords(p part.Profile) string {
	switch p.Kind {
	case part.RoundBar:
		return fmt.Sprintf("%s %s", p.Kind, mm(p.AMM))
	case part.RoundTube, part.FlatBar:
		return fmt.Sprintf("%s %s x %s", p.Kind, mm(p.AMM), mm(p.TMM))
	}
	return fmt.Sprintf("%s %s x %s x %s", p.Kind, mm(p.AMM), mm(p.BMM), mm(p.TMM))
}

// faceHoles places every hole of an angle. Seen on a leg's outer face with the heel down, the start of its length is at the
// right of leg a and at the left of leg b: one end of the bar.
func faceHoles(m *part.Member) string {
	notes := make([]string, len(m.Holes))
	for i, h := range m.Holes {
		end, wide := "right", m.Profile.AMM
		if h.Face == part.LegB {
			end, wide = "left", m.Profile.BMM
		}
		notes[i] = fmt.Sprintf("leg %s (the one of %s): %s from its %s end, %s from the heel, %s %s %s",
			h.Face, mm(wide), hundredths(h.Center.X), end, hundredths(h.Center.Y), h.Purpose, hundredths(h.DiaMM), h.Finish)
	}
	return strings.Join(notes, "; ")
}
