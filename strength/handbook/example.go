package handbook

import (
	"math"

	"lugwright/strength"
)

// Example is a published example as its file holds it. Quantities are as printed, each with its unit ("1/2 in", "105 kip").
type Example struct {
	Source     string // document, edition, example, page
	Provenance string // Read, FromMemory or ByHand
	Basis      string // Card.Name
	Note       string // what the example differs in from the basis, if anything
	// Tolerance is relative ("0.5 %"), for an author who rounds on the way; empty: half a unit of the last printed digit.
	Tolerance string
	Why       string            // why the tolerance is not half a digit
	FactorSet string            // named values of the basis's settable factors, such as a national choice
	Factors   map[string]string // settable factors by symbol, over the set
	Givens    map[string]Values // common to the runs; a run takes those that its limit state knows
	Runs      []Run
}

// Where the printed values come from: the document was open, or was not, or there is none and somebody calculated by hand.
const (
	Read       = "read"
	FromMemory = "from memory"
	ByHand     = "by hand"
)

// Values are the texts of one given: one, or one for each value of a list. A single text may also list values with commas
// between, for a list, or name a choice.
type Values []string

// Run is one limit state under one method. A load that is left out is nought: the printed strengths do not depend on it.
type Run struct {
	Limit     string
	Method    strength.Method
	FactorSet string            // over the example's
	Factors   map[string]string // over the example's
	Givens    map[string]Values // over the example's
	// Expect is by symbol of a given or a line; further Demand, Capacity, Utilisation and Verdict.
	Expect map[string]string
	// Widened gives a line its own tolerance, with the reason.
	Widened map[string]Widening
}

// What may be expected beside the symbols of lines.
const (
	Demand      = "demand"
	Capacity    = "capacity"
	Utilisation = "utilisation"
	Verdict     = "verdict"
)

// Widening is the tolerance of one line, and why it is not the example's.
type Widening struct{ Tolerance, Why string }

// Row is one result, ours beside printed, in N, mm, MPa, rad.
type Row struct {
	Run    int // place of the run in the example
	Limit  string
	Method strength.Method
	Symbol string
	Text   string // as printed
	Unit   string // of the numbers
	Ours   float64
	Print  float64
	Allow  float64 // largest difference accepted
	Why    string  // why that is more than half a unit of the last printed digit
	// OurText is ours where the result is a word, as a verdict is; the numbers are 0 then.
	OurText string
}

// Agrees says whether ours is the printed value within what is allowed.
func (r Row) Agrees() bool {
	if r.OurText != "" {
		return r.OurText == r.Text
	}
	return math.Abs(r.Ours-r.Print) <= r.Allow+1e-9*math.Abs(r.Print)
}

// Difference is relative to the printed value; 0 for two equal values, infinite where only the printed one is 0.
func (r Row) Difference() float64 {
	switch {
	case r.Ours == r.Print:
		return 0
	case r.Print == 0:
		return math.Inf(1)
	}
	return (r.Ours - r.Print) / math.Abs(r.Print)
}
