package pack

// This file adds README.txt: one screen that says what is what.

import (
	"fmt"
	"strings"

	"lugwright/client/caution"
	"lugwright/geometry/shop"
	"lugwright/strength"
	"lugwright/units"
)

const columns = 78

func (a *assembly) addReadme() {
	var r readme
	if text := a.warning(); text != "" {
		r.wrapped("", text)
		r.line("")
	}
	title := a.Job.Title
	if a.Job.Revision != "" {
		title += ", revision " + a.Job.Revision
	}
	r.wrapped("", title)
	r.line("lugwright %s, job %s", a.Version, a.Job.Hash(a.Version)[:16])
	r.line("")
	if !a.Result.Passes() {
		a.whyNot(&r)
	}
	if words := a.vehicleFails(); words != "" {
		r.wrapped("", words)
		r.line("")
	}
	if a.cuts() {
		a.whatIsWhat(&r)
	} else {
		r.wrapped("", "NO CUT FILES are written while a check fails. calc-sheet.html and calc-sheet.pdf have every check.")
	}
	r.line("")
	for _, c := range caution.Of(1, 2, 7, 14) {
		r.wrapped("- ", c.Text)
	}
	a.add("README.txt", []byte(r.String()))
}

// vehicleFails says what of the vehicle fails; empty for nothing.
func (a *assembly) vehicleFails() string {
	if a.Vehicle == nil || len(a.Vehicle.Fails()) == 0 {
		return ""
	}
	return "THE VEHICLE " + a.Vehicle.Verdict(a.Job.Units) + ". The calc sheet has all that fails, as `lugwright loads` does; the pack is of the brackets alone."
}

// whyNot says why the job does not pass, bracket by bracket.
func (a *assembly) whyNot(r *readme) {
	for _, b := range a.Result.WorstFirst() {
		switch k := b.Report.Governing(); {
		case k == nil:
			r.wrapped("- ", b.Spec.Name+": no limit state speaks of it, so nothing was checked")
		case k.Verdict == strength.Fail:
			under := ""
			if k.Case != "" {
				under = " (" + k.Case + ")"
			}
			r.wrapped("- ", fmt.Sprintf("%s fails: %s, %s, at %s of capacity%s", b.Spec.Name, k.Title, k.Place, units.Utilisation(k.Utilisation), under))
		case k.Verdict == strength.Outside:
			r.wrapped("- ", fmt.Sprintf("%s is outside the rule: %s, %s: %s", b.Spec.Name, k.Title, k.Place, k.Why))
		}
	}
	r.line("")
}

func (a *assembly) whatIsWhat(r *readme) {
	entry := func(name, words string) { r.line("%-19s%s", name, words) }
	entry("calc-sheet.pdf", "every check, the deciding ones in full; what was not checked")
	entry("calc-sheet.html", "the same to look through on a screen")
	if len(a.pieces) > 0 {
		entry("cut-list.csv", "plates: quantity, stock, size, mass, cut length, hole finish")
	}
	if a.drilled() {
		entry("hole-list.csv", "each hole: place on the flat part, size, how it is made")
	}
	if len(a.members) > 0 {
		entry("saw-list.csv", "sections: length and holes")
	}
	if a.welded() {
		entry("placing-list.csv", "where each part stands, and its weld, in the order of welding")
	}
	entry("buy-list.csv", "bolts, pins and rods")
	for i, f := range a.forms {
		if len(a.pieces) == 0 {
			break
		}
		words := f.words
		if i == 0 {
			words += ": the ones to send"
		}
		entry(f.folder+"/", words)
	}
	if len(a.Job.Sheets) > 0 {
		entry("nest/", "plates laid out on the stock sheets, one cut file a sheet")
		entry("nest.csv", "what lies on each sheet, how full it is, what is left of it")
	}
	if len(a.pieces) > 0 {
		entry("drawings/plates/", "each plate with its dimensions, holes, radii and folds")
		entry("svg/", "each plate as it is finished, at full size")
	}
	entry("drawings/brackets/", "parts, views with dimensions, welds with symbols, loads")
	entry("scad/ 3mf/", "solids of each bracket: OpenSCAD source, 3MF to measure")
	if len(a.papers) > 0 {
		entry(papersFolder, "papers for the shop, one a file, to print")
	}
	entry("manifest.json", "SHA-256 and size of every file")
	if a.prefix() != "" {
		r.line("Every name here begins with %s.", NotPassedName)
	}
	r.line("")
	words := "UNITS ARE MM in every file. Contours are finished edges, not offset for the kerf. Masses and cut lengths are as cut."
	if len(a.pieces) > 0 {
		p := a.pieces[0].plate
		words += fmt.Sprintf(" Measure one control dimension before cutting: %s is %s. The cut list has one for each plate, and a hole to check.", p.Mark, a.control(p.Outer.BBox()))
	}
	inPapers := ""
	if a.Job.Units == units.Inch {
		inPapers = "; drawings, calc sheet and papers in inches"
	}
	every := "UNITS ARE MM in every file" + strings.Replace(inPapers, ";", " but", 1)
	if a.Job.Shop.Files.Inch {
		every = "CUT FILES ARE IN INCHES, every other file in mm" + inPapers
	}
	words = strings.Replace(words, "UNITS ARE MM in every file", every, 1)
	r.wrapped("", words)
	for _, b := range a.Result.Brackets {
		for _, f := range b.Access {
			r.wrapped("- ", "NO ACCESS on "+b.Spec.Name+", "+f.String())
		}
	}
	if words := a.withoutPapers(); words != "" {
		r.wrapped("", words)
	}
	if a.noRoom != "" {
		r.wrapped("", "NO ROOM on the stock sheets for "+a.noRoom+".")
	}
	if a.Job.ShopName != "" {
		r.wrapped("", "Cut files and holes as the shop "+a.Job.Shop.Name+" ("+string(a.Job.Shop.Process)+") has them.")
	}
	if len(a.pieces) > 0 && a.Job.Shop.Marks.Style == shop.NoMarks {
		r.wrapped("", "NO PLATE IS MARKED by this shop: paint each one's mark on, or tag it, when it is picked up.")
	}
}

// withoutPapers says which papers there are not, and why: those with one reason together.
func (a *assembly) withoutPapers() string {
	var why []string
	names := map[string][]string{}
	for _, m := range a.missing {
		if names[m.Why] == nil {
			why = append(why, m.Why)
		}
		names[m.Why] = append(names[m.Why], m.Name)
	}
	for i, w := range why {
		why[i] = "No " + strings.Join(names[w], ", ") + ": " + w + "."
	}
	return strings.Join(why, " ")
}

type readme struct{ strings.Builder }

func (r *readme) line(format string, args ...any) { fmt.Fprintf(r, format+"\n", args...) }

// wrapped writes words behind first, broken before the last column.
func (r *readme) wrapped(first, words string) {
	line, margin := first, strings.Repeat(" ", len(first))
	for _, word := range strings.Fields(words) {
		if len(line)+1+len(word) > columns {
			r.line("%s", strings.TrimRight(line, " "))
			line = margin
		}
		if line != first && line != margin {
			line += " "
		}
		line += word
	}
	r.line("%s", line)
}
