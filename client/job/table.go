package job

// This file is the field table of a job file.

import (
	"lugwright/client/table"
	"lugwright/geometry"
	"lugwright/geometry/access"
	"lugwright/part"
	"lugwright/strength"
	"lugwright/units"
)

// Loads beyond these are typing errors: a thousand tonnes, and that on an arm of ten metres.
const (
	mostForce  = 1e7  // N
	mostMoment = 1e11 // N*mm
)

// jobRule is the rule of a whole job.
func jobRule(k Known) *table.Rule {
	r := table.Mapping("A lugwright job: brackets, the loads on them, and the design basis that checks them.",
		table.Must("job", table.Text(120, "What the job is, in a few words; printed on every paper.")),
		table.May("revision", table.Text(20, "Revision of the job; printed on every paper.")),
	)
	r.Add(basisFields(k)...)
	r.Add(factorFields(checking(k.Bases))...)
	r.Add(
		leaveOutField(),
		table.May("room", roomRule()),
		table.May("sheets", table.List("Stock sheets on which the plates are laid out; left out, they are not.", sheetRule())),
		table.May("rack", rackRule()),
		table.May("vehicle", vehicleRule()),
		table.May("cases", table.Named("The load cases of loads that the file gives, named once.", caseRule())),
		table.May("brackets", table.List("The brackets.", bracketRule(k.Kinds))),
	)
	r.Either("brackets", "vehicle")
	r.With("brackets", "basis", "method")
	return r
}

// basisFields say how brackets are checked and by whom they are cut.
func basisFields(k Known) []table.Field {
	return []table.Field{
		table.May("units", table.Choice("How results are printed; quantities in this file carry their own units.", "metric", "inch")),
		table.May("basis", table.Choice("The design basis.", basisNames(k.Bases)...)),
		table.May("method", table.Choice("How the basis compares demand with capacity.", methodNames(k.Bases)...)),
		table.May("shop", table.Text(200, "The shop that cuts: laser, plasma, waterjet, or a shop file beside this one; left out, holes are cut as the brackets have them.")),
		table.May("load_factor", table.Quantity(units.Ratio, 1, 10, "Factor on service cases under a method that wants factored loads; left out, the basis's own.")),
		table.May("pin_joint", table.Choice("The design basis whose rules serve pin holes; left out, the basis itself.", basisNames(k.Bases)...)),
	}
}

func leaveOutField() table.Field {
	return table.May("leave_out", table.List("Limit states that are not to be checked, by id: only such as no published rule states. Results list them as not checked.",
		table.Text(60, "Id of a limit state, as `lugwright limits` prints it.")))
}

// factorFields are the settable factors of all bases by symbol, and their sets; none where no basis has any.
func factorFields(cards []strength.Card) []table.Field {
	var sets []string
	each := table.Mapping("Settable factors of the basis by symbol, over the set; `lugwright limits` lists them.")
	for _, c := range cards {
		for _, f := range c.Factors {
			addFactor(each, f)
			for _, s := range f.Sets {
				if !has(sets, func(name string) bool { return name == s.Name }) {
					sets = append(sets, s.Name)
				}
			}
		}
	}
	var out []table.Field
	if sets != nil {
		out = append(out, table.May("factor_set", table.Choice("Named values of the basis's settable factors, such as a national choice; left out, its defaults.", sets...)))
	}
	if !each.Empty() {
		out = append(out, table.May("factors", each))
	}
	return out
}

// addFactor widens the range of a factor that an earlier basis has too; agree holds it against the job's own basis.
func addFactor(r *table.Rule, f strength.Factor) {
	scale, dim, err := units.Factor(f.Unit)
	if err != nil {
		return
	}
	if !r.Widen(f.Symbol, f.Min*scale, f.Max*scale) {
		r.Add(table.May(f.Symbol, table.Quantity(dim, f.Min*scale, f.Max*scale, f.Words)))
	}
}

// checking are the cards that brackets are checked on.
func checking(cards []strength.Card) []strength.Card {
	var out []strength.Card
	for _, c := range cards {
		if !c.ReferenceOnly {
			out = append(out, c)
		}
	}
	return out
}

func roomRule() *table.Rule {
	r := table.Mapping("Room that tools need; what is left out is common practice.")
	for _, m := range access.Measures() {
		dim := units.Length
		if m.Unit == "rad" {
			dim = units.Angle
		}
		r.Add(table.May(m.Name, table.Quantity(dim, m.Least, m.Most, m.Sentence)))
	}
	return r
}

// mostSheet is the longest side of a stock sheet, in mm.
const mostSheet = 2e4

func sheetRule() *table.Rule {
	side := func(says string) *table.Rule { return table.Quantity(units.Length, 10, mostSheet, says) }
	return table.Mapping("A stock size of plate.",
		table.Must("thickness", table.Quantity(units.Length, 0.3, 200, "Its thickness.")),
		table.Must("material", table.Text(60, "Its grade, as the brackets name it.")),
		table.Must("width", side("Along which it is filled, and along the grain.")),
		table.Must("height", side("Across.")),
		table.May("quantity", table.Whole(1, 100, "How many there are; left out, one.")),
		table.May("turns", table.Choice("How plates may be turned on it; left out, by any quarter.", string(AnyTurn), string(HalfTurns), string(NoTurn))),
	)
}

func rackRule() *table.Rule {
	length := func(says string, least, most float64) *table.Rule {
		return table.Quantity(units.Length, least, most, says)
	}
	return table.Mapping("Sizes that the shop has, for `lugwright sweep` and `lugwright propose`; what is left out is common stock.",
		table.May("plates", table.List("Thicknesses of plate, beside those of the stock sheets.", length("A thickness.", 0.3, 200))),
		table.May("pins", table.List("Diameters of round bar for pins.", length("A diameter.", 3, 300))),
		table.May("bolts", table.List("Sizes of bolts.", table.Thread("A size."))),
		table.May("welds", table.List("Legs of fillets that it welds.", length("A leg.", 1, 60))),
	)
}

func caseRule() *table.Rule {
	return table.Mapping("A load case: its level and where it comes from.",
		table.Must("level", table.Choice("Whether the loads already hold their load factors.", string(part.Service), string(part.Factored))),
		table.Must("source", table.Text(120, "The published rule it comes from, or: builder's choice.")),
		table.May("words", table.Text(200, "What it is, in a few words.")),
		table.May("motion", table.Choice("At rest for the load that acts while nothing moves, 1 g down: the wear of a bush is judged on it; left out, moving.", Moving, AtRest)),
	)
}

func bracketRule(kinds []geometry.Kind) *table.Rule {
	r := table.Mapping("A bracket: kind, parameters and loads.",
		table.Must("name", table.Word(40, "[A-Za-z0-9][A-Za-z0-9_-]*", "a name of at most 40 letters, digits, - and _, such as pair-left", "Name of the bracket, used in results and file names.")),
		table.Must("kind", table.Choice("The kind of bracket.", kindNames(kinds)...)),
		table.Must("hand", table.Choice("Side of the vehicle.", string(part.LeftHand), string(part.RightHand))),
		table.May("mark", table.Word(12, "[A-Z0-9][A-Z0-9-]*", "a mark of at most 12 capitals, digits and -, such as PAIR", "Root of the part marks etched on its plates; left out, the name in capitals.")),
		table.May("quantity", table.Whole(1, 1000, "Pieces to make; left out, one.")),
		table.May("mount", table.Text(100, "Name of the vehicle's mount whose loads it takes, of every state and case.")),
		table.May("tray", table.Text(100, "Of the kind tray: name of the vehicle's tray whose mass it carries, in every state and case; rods' places and heights come from there too.")),
		table.May("load_point", table.Text(60, "Name of the load point at which they act, where the bracket has several.")),
		table.May("side", table.Choice("Which side of the mount's joint it is; left out, the frame's.", "frame", "body")),
		table.May("loads", table.List("Forces on the bracket at its load point, one a load case and state; left out, those of its mount or tray alone.", loadRule())),
		table.May("spectrum", table.List("Changes of load that repeat, for fatigue; left out, fatigue is not checked.", cycleRule())),
	)
	r.Either("loads", "mount", "tray")
	for _, k := range kinds {
		r.Pick("kind", k.Name, "parameters", func() *table.Rule { return paramsRule(k) })
	}
	return r
}

func cycleRule() *table.Rule {
	return table.Mapping("A change of load that repeats, between two loads of this bracket.",
		table.Must("from", table.Text(160, "The load it goes from: its case, then a comma and its state where it has one.")),
		table.Must("to", table.Text(160, "The load it goes to.")),
		table.Must("cycles", table.Quantity(units.Ratio, 1, 1e10, "How many times in the vehicle's life.")),
	)
}

func loadRule() *table.Rule {
	return table.Mapping("A load: the force on the bracket in one case. Vehicle axes: x rearward, y left, z up.",
		table.Must("case", table.Text(80, "Name of a load case under cases.")),
		table.May("state", table.Text(80, "Which state of tanks and gaps it is.")),
		table.May("load_point", table.Text(60, "Name of the load point, where the bracket has several.")),
		table.Must("force", vector(units.Force, mostForce, "Force on the bracket.")),
		table.May("moment", vector(units.Moment, mostMoment, "Moment on the bracket at the load point.")),
	)
}

func vector(dim units.Dim, size float64, says string) *table.Rule {
	return table.Mapping(says,
		table.Must("x", table.Quantity(dim, -size, size, "Rearward.")),
		table.Must("y", table.Quantity(dim, -size, size, "To the left.")),
		table.Must("z", table.Quantity(dim, -size, size, "Up.")),
	)
}

func paramsRule(k geometry.Kind) *table.Rule {
	r := table.Mapping("Parameters of the kind " + k.Name + ": " + k.Sentence).ListedBy("lugwright kinds " + k.Name)
	for _, p := range k.Params {
		r.Add(table.May(p.Name, paramRule(p)))
	}
	return r
}

func paramRule(p geometry.Param) *table.Rule {
	switch p.Unit {
	case geometry.MM:
		return table.Quantity(units.Length, p.Min, p.Max, p.Sentence)
	case geometry.Ratio:
		return table.Quantity(units.Ratio, p.Min, p.Max, p.Sentence)
	case geometry.Rad:
		return table.Quantity(units.Angle, p.Min, p.Max, p.Sentence)
	case geometry.Count:
		return table.Whole(p.Min, p.Max, p.Sentence)
	case geometry.Size:
		return table.Thread(p.Sentence)
	}
	if len(p.Choices) > 0 {
		return table.Choice(p.Sentence, p.Choices...)
	}
	return table.Text(60, p.Sentence)
}

func kindNames(kinds []geometry.Kind) []string {
	out := make([]string, len(kinds))
	for i, k := range kinds {
		out[i] = k.Name
	}
	return out
}

func basisNames(cards []strength.Card) []string {
	var out []string
	for _, c := range checking(cards) {
		out = append(out, c.Name)
	}
	return out
}

func methodNames(cards []strength.Card) []string {
	var out []string
	for _, c := range checking(cards) {
		for _, m := range c.Methods {
			if !has(out, func(s string) bool { return s == string(m) }) {
				out = append(out, string(m))
			}
		}
	}
	return out
}

// Schema is the JSON Schema of a job file.
func Schema(k Known) []byte { return jobRule(k).Schema("lugwright job") }

// FamilySchema is the JSON Schema of a family file.
func FamilySchema(k Known) []byte { return familyRule(k).Schema("lugwright family") }
