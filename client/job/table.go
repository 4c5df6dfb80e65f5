package job

// This file is the field table of a job file.

import (
	"lugwright/geometry"
	"lugwright/part"
	"lugwright/strength"
	"lugwright/units"
)

const (
	must = true
	may  = false
)

// Loads beyond these are typing errors: a thousand tonnes, and that on an arm of ten metres.
const (
	mostForce  = 1e7  // N
	mostMoment = 1e11 // N*mm
)

// table is the rule of a whole job.
func table(k Known) *rule {
	r := mapping("A lugwright job: brackets, the loads on them, and the design basis that checks them.",
		field{"job", must, text(120, "What the job is, in a few words; printed on every paper.")},
		field{"revision", may, text(20, "Revision of the job; printed on every paper.")},
		field{"units", may, choice("How results are printed; quantities in this file carry their own units.", "metric", "inch")},
		field{"basis", must, choice("The design basis.", basisNames(k.Bases)...)},
		field{"method", must, choice("How the basis compares demand with capacity.", methodNames(k.Bases)...)},
		field{"load_factor", may, quantity(units.Ratio, 1, 10, "Factor on service cases under a method that wants factored loads; left out, the basis's own.")},
		field{"pin_joint", may, choice("The design basis whose rules serve pin holes; left out, the basis itself.", basisNames(k.Bases)...)},
	)
	r.fields = append(r.fields, factorFields(checking(k.Bases))...)
	r.fields = append(r.fields, field{"leave_out", may, list("Limit states that are not to be checked, by id: only such as no published rule states. Results list them as not checked.",
		text(60, "Id of a limit state, as `lugwright limits` prints it."))})
	r.fields = append(r.fields,
		field{"cases", must, named("The load cases, named once.", caseRule())},
		field{"brackets", must, list("The brackets.", bracketRule(k.Kinds))},
	)
	return r
}

// factorFields are the settable factors of all bases by symbol, and their sets; none where no basis has any.
func factorFields(cards []strength.Card) []field {
	var sets []string
	each := mapping("Settable factors of the basis by symbol, over the set; `lugwright limits` lists them.")
	for _, c := range cards {
		for _, f := range c.Factors {
			each.addFactor(f)
			for _, s := range f.Sets {
				if !has(sets, func(name string) bool { return name == s.Name }) {
					sets = append(sets, s.Name)
				}
			}
		}
	}
	var out []field
	if sets != nil {
		out = append(out, field{"factor_set", may, choice("Named values of the basis's settable factors, such as a national choice; left out, its defaults.", sets...)})
	}
	if each.fields != nil {
		out = append(out, field{"factors", may, each})
	}
	return out
}

// addFactor widens the range of a factor that an earlier basis has too; agree holds it against the job's own basis.
func (r *rule) addFactor(f strength.Factor) {
	scale, dim, err := units.Factor(f.Unit)
	if err != nil {
		return
	}
	if known := find(r.fields, f.Symbol); known != nil {
		known.is.least, known.is.most = min(known.is.least, f.Min*scale), max(known.is.most, f.Max*scale)
		return
	}
	r.fields = append(r.fields, field{f.Symbol, may, quantity(dim, f.Min*scale, f.Max*scale, f.Words)})
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

func caseRule() *rule {
	return mapping("A load case: its level and where it comes from.",
		field{"level", must, choice("Whether the loads already hold their load factors.", string(part.Service), string(part.Factored))},
		field{"source", must, text(120, "The published rule it comes from, or: builder's choice.")},
		field{"words", may, text(200, "What it is, in a few words.")},
	)
}

func bracketRule(kinds []geometry.Kind) *rule {
	r := mapping("A bracket: kind, parameters and loads.",
		field{"name", must, word(40, "[A-Za-z0-9][A-Za-z0-9_-]*", "a name of at most 40 letters, digits, - and _, such as pair-left", "Name of the bracket, used in results and file names.")},
		field{"kind", must, choice("The kind of bracket.", kindNames(kinds)...)},
		field{"hand", must, choice("Side of the vehicle.", string(part.LeftHand), string(part.RightHand))},
		field{"mark", may, word(12, "[A-Z0-9][A-Z0-9-]*", "a mark of at most 12 capitals, digits and -, such as PAIR", "Root of the part marks etched on its plates; left out, the name in capitals.")},
		field{"quantity", may, whole(1, 1000, "Pieces to make; left out, one.")},
		field{"loads", must, list("Forces on the bracket at its load point, one a load case and state.", loadRule())},
		field{"spectrum", may, list("Changes of load that repeat, for fatigue; left out, fatigue is not checked.", cycleRule())},
	)
	r.by, r.more = "kind", map[string]*field{}
	for _, k := range kinds {
		r.more[k.Name] = &field{"parameters", may, paramsRule(k)}
	}
	return r
}

func cycleRule() *rule {
	return mapping("A change of load that repeats, between two loads of this bracket.",
		field{"from", must, text(160, "The load it goes from: its case, then a comma and its state where it has one.")},
		field{"to", must, text(160, "The load it goes to.")},
		field{"cycles", must, quantity(units.Ratio, 1, 1e10, "How many times in the vehicle's life.")},
	)
}

func loadRule() *rule {
	return mapping("A load: the force on the bracket in one case. Vehicle axes: x rearward, y left, z up.",
		field{"case", must, text(80, "Name of a load case under cases.")},
		field{"state", may, text(80, "Which state of tanks and gaps it is.")},
		field{"load_point", may, text(60, "Name of the load point, where the bracket has several.")},
		field{"force", must, vector(units.Force, mostForce, "Force on the bracket.")},
		field{"moment", may, vector(units.Moment, mostMoment, "Moment on the bracket at the load point.")},
	)
}

func vector(dim units.Dim, size float64, says string) *rule {
	return mapping(says,
		field{"x", must, quantity(dim, -size, size, "Rearward.")},
		field{"y", must, quantity(dim, -size, size, "To the left.")},
		field{"z", must, quantity(dim, -size, size, "Up.")},
	)
}

func paramsRule(k geometry.Kind) *rule {
	r := mapping("Parameters of the kind " + k.Name + ": " + k.Sentence)
	for _, p := range k.Params {
		r.fields = append(r.fields, field{p.Name, may, paramRule(p)})
	}
	return r
}

func paramRule(p geometry.Param) *rule {
	switch p.Unit {
	case geometry.MM:
		return quantity(units.Length, p.Min, p.Max, p.Sentence)
	case geometry.Rad:
		return quantity(units.Angle, p.Min, p.Max, p.Sentence)
	case geometry.Count:
		return whole(p.Min, p.Max, p.Sentence)
	case geometry.Size:
		return &rule{says: p.Sentence, form: sizeForm}
	}
	if len(p.Choices) > 0 {
		return choice(p.Sentence, p.Choices...)
	}
	return text(60, p.Sentence)
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
