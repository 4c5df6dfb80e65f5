// Package finding is one line of a checklist: a rule, what it asks, what is there, and the verdict with its source. It never
// knows what the rule is about.
package finding

// Verdict is what a rule says. NotCovered means that the rule's source does not speak, or that a number it needs was not stated; it is never a pass.
type Verdict string

const (
	Pass       Verdict = "pass"
	Fail       Verdict = "fail"
	NotCovered Verdict = "not covered"
)

// Sense says on which side of the need a pass lies.
type Sense string

const (
	AtLeast Sense = "at least"
	AtMost  Sense = "at most"
)

// Finding is one rule at one place. Need and Had count only where Unit is not empty.
type Finding struct {
	At      string // the place, such as "right rail, hole b2"
	Rule    string
	Source  string
	Sense   Sense
	Need    float64
	Had     float64
	Unit    string // "mm", "mm2", "holes"; empty where the rule asks for no number
	Verdict Verdict
	Words   string // why, or what to mind; may be empty
}

// slack forgives rounding of what was typed, in any unit.
const slack = 1e-6

// Compare gives the verdict of a number against its need.
func Compare(had float64, sense Sense, need float64) Verdict {
	if sense == AtLeast && had >= need-slack || sense == AtMost && had <= need+slack {
		return Pass
	}
	return Fail
}

// Measured is a finding on a number.
func Measured(at, rule, source string, had float64, sense Sense, need float64, unit string) Finding {
	return Finding{At: at, Rule: rule, Source: source, Sense: sense, Need: need, Had: had, Unit: unit, Verdict: Compare(had, sense, need)}
}

// Silent is a rule on which nothing can be said, and why.
func Silent(at, rule, source, why string) Finding {
	return Finding{At: at, Rule: rule, Source: source, Verdict: NotCovered, Words: why}
}
