package strength

// Run and the bookkeeping of the worst case at each place.

import (
	"cmp"
	"context"
	"fmt"
	"math"
	"slices"
	"strings"

	"lugwright/part"
)

// Options say how a bracket is checked.
type Options struct {
	Method Method
	// LoadFactor multiplies service cases where the method wants factored loads; 0 takes the basis's own.
	LoadFactor float64
	// Trace records every line of every governing check.
	Trace bool
	// FactorSet and Factors set the basis's factors; see Card.FactorValues.
	FactorSet string
	Factors   map[string]float64
	// Spectrum is what fatigue is reckoned on; empty: fatigue is not checked.
	Spectrum []StressCycle
	// LeaveOut are limit states, by id, that are not to be checked. Only what no published rule states may be left out; the report lists it
	// as not checked.
	LeaveOut []string
}

// maxWork bounds cases times load shares times places: some seconds of one core.
const maxWork = 5_000_000

// MaxCases bounds the load cases of one call.
const MaxCases = 5000

// Run checks a bracket against load cases on a basis. Forces and moments of the cases act on the bracket, N and N*mm in
// bracket axes. Every place and limit state is reported once, with the case and load share that govern it.
// Errors are part.FieldErrors: a bracket that is not whole, an unknown material, a case that the bracket has no path for.
func Run(basis *Basis, b *part.Bracket, cases []part.Case, o Options) (*Report, error) {
	return RunContext(context.Background(), basis, b, cases, o)
}

// RunContext is Run until the context ends, whose error is then returned.
func RunContext(ctx context.Context, basis *Basis, b *part.Bracket, cases []part.Case, o Options) (*Report, error) {
	return checked(newMeter(ctx, maxSpent), basis, b, cases, o)
}

func checked(work *meter, basis *Basis, b *part.Bracket, cases []part.Case, o Options) (_ *Report, err error) {
	if err := work.ctx.Err(); err != nil {
		return nil, err
	}
	if err := b.Validate(); err != nil {
		return nil, err
	}
	factor, err := loadFactor(basis, &o, cases)
	if err != nil {
		return nil, err
	}
	if basis.Card.ReferenceOnly {
		return nil, &part.FieldError{Field: "basis", Found: basis.Card.Name + " is for reference", Accept: "a basis that brackets are checked on"}
	}
	if basis.Card.PinHolesOnly {
		return nil, &part.FieldError{
			Field: "basis", Found: basis.Card.Name + " judges pin holes alone, and no section, weld or bolt",
			Accept: "a basis for whole brackets, and pin_joint: " + basis.Card.Name + " for their pin holes",
		}
	}
	factors, err := factorValues(basis, o)
	if err != nil {
		return nil, err
	}
	basis, err = basis.without(o.LeaveOut)
	if err != nil {
		return nil, err
	}
	memory := rooms.Get().(*room)
	defer memory.free()
	defer settleMeter(&err)
	m, err := compile(b, basis, memory, work)
	if err != nil {
		return nil, err
	}
	r := &run{model: m, basis: basis, cases: cases, cornerForces: make([][]force, len(m.corners))}
	r.calc.Method, r.calc.Factors, r.factorOf = o.Method, factors, factor
	for _, id := range o.LeaveOut {
		r.skip(basis.Limit(id).Ident().Title, b.Name, "left out by the job; "+basis.Limit(id).Ident().Clause.String())
	}
	if n := len(b.LoadPoints); n > 1 {
		r.skip("loads at several points at once", b.Name, fmt.Sprintf("each case loads one of the %d load points", n))
	}
	r.layOut()
	places := len(m.cuts) + len(m.rootSets) + r.blockWork() + 1
	if len(cases)*len(m.corners)*places > maxWork {
		return nil, &part.FieldError{Field: "cases", Found: fmt.Sprintf("%d cases at %d load shares on %d sections, welds and tens of blocks", len(cases), len(m.corners), places), Accept: fmt.Sprintf("at most %d places to work out; check in several calls", maxWork)}
	}
	r.on = "cases"
	for i := range cases {
		r.factor = factor(cases[i].Level)
		if err := r.oneCase(i, r.factor); err != nil {
			return nil, err
		}
	}
	r.on = "spectrum"
	if err := r.fatigue(o.Spectrum); err != nil {
		return nil, err
	}
	r.on = "bracket"
	return r.report(o, factor(part.Service)), nil
}

// factorValues sets the factors of the basis and of its pin joint.
func factorValues(basis *Basis, o Options) ([]FactorValue, error) {
	if basis.pinJoint == nil {
		return basis.Card.FactorValues(o.FactorSet, o.Factors)
	}
	return FactorsOf(&basis.Card, &basis.pinJoint.Card, o.FactorSet, o.Factors)
}

func methodNames(methods []Method) string {
	names := make([]string, len(methods))
	for i, m := range methods {
		names[i] = string(m)
	}
	return strings.Join(names, ", ")
}

// loadFactor checks the method and the levels of the cases, and gives the factor for each level.
func loadFactor(basis *Basis, o *Options, cases []part.Case) (func(part.Level) float64, error) {
	if o.Method == "" {
		o.Method = basis.Card.Methods[0]
	}
	if !slices.Contains(basis.Card.Methods, o.Method) {
		return nil, &part.FieldError{Field: "method", Found: fmt.Sprintf("%q", o.Method), Accept: fmt.Sprintf("one of %s for %s", methodNames(basis.Card.Methods), basis.Card.Name)}
	}
	k := basis.Card.ServiceFactor[o.Method]
	if o.LoadFactor != 0 {
		if !(o.LoadFactor >= 1 && o.LoadFactor <= 10) {
			return nil, &part.FieldError{Field: "load_factor", Found: fmt.Sprint(o.LoadFactor), Accept: "1 to 10"}
		}
		if k == 1 {
			return nil, &part.FieldError{Field: "load_factor", Found: fmt.Sprintf("given with %s, which takes service loads as they are", o.Method), Accept: "leave it out; it is for methods with factored loads"}
		}
		k = o.LoadFactor
	}
	if len(cases) == 0 || len(cases) > MaxCases {
		return nil, &part.FieldError{Field: "cases", Found: fmt.Sprintf("%d load cases", len(cases)), Accept: fmt.Sprintf("1 to %d", MaxCases)}
	}
	for i, c := range cases {
		switch {
		case c.Level != part.Service && c.Level != part.Factored:
			return nil, &part.FieldError{Field: fmt.Sprintf("cases[%d].level", i), Found: fmt.Sprintf("%q", c.Level), Accept: "service or factored"}
		case c.Level == part.Factored && k == 1:
			return nil, &part.FieldError{Field: fmt.Sprintf("cases[%d].level", i), Found: "factored", Accept: fmt.Sprintf("service: %s takes loads without load factors", o.Method)}
		case !usable(c.Force):
			return nil, &part.FieldError{Field: fmt.Sprintf("cases[%d].force", i), Found: fmt.Sprintf("%v N", c.Force), Accept: "finite numbers up to 1e8 N"}
		case !usable(c.Moment.Scale(1e-3)):
			return nil, &part.FieldError{Field: fmt.Sprintf("cases[%d].moment", i), Found: fmt.Sprintf("%v N*mm", c.Moment), Accept: "finite numbers up to 1e11 N*mm"}
		}
	}
	return func(l part.Level) float64 {
		if l == part.Factored {
			return 1
		}
		return k
	}, nil
}

func usable(v part.Vec) bool {
	for _, x := range [3]float64{v.X, v.Y, v.Z} {
		if !(math.Abs(x) <= 1e8) {
			return false
		}
	}
	return true
}

// run is one bracket under all its cases.
type run struct {
	*model
	basis *Basis
	cases []part.Case
	calc  Calc

	inCase, inCorner int       // where we are
	forces           []force   // of this case and corner
	taken            int       // how many forces were at hand before and with these
	cornerForces     [][]force // of this case, by corner
	places           []place
	scores           []score             // reused
	effects          [2]effect           // of the cut at hand, reused
	across           [][wayCount]float64 // by sweep: the worst at its root, going each way
	rooted           []bool              // sweeps that end in a weld with more than one way

	pinPlanes    []slots[PinPlane]
	pinSpans     []slots[PinSpan]
	bores        []slots[Bore]
	eyes         []slots[Bore]
	cutSlots     []slots[Cut]
	roots        []slots[WeldLine]
	ribRoots     []slots[WeldLine]
	flows        []slots[WeldFlow]
	sizes        []slots[WeldLine]
	bolts        []slots[Bolt]
	boltSets     []slots[BoltSet]
	preloads     []slots[BoltSet]
	slips        []slots[Bolt]
	threads      []slots[Thread]
	tapped       []tapped
	bearings     [][2]slots[BoltBearing]
	pryings      [][2]slots[Prying]
	blocks       []slots[Block]
	blockSet     []plyBlocks
	rodSlots     []slots[Rod]
	seatSlots    []slots[Seat]
	bottoms      []slots[Cut]
	sides        []slots[Cut]
	rims         []slots[Cut]
	washers      []slots[Cut]
	pulls        []slots[PullThrough]
	bushes       []slots[Bush]
	fatigues     []slots[Fatigue]
	cornerPlates []slots[CornerPlate]
	details      []detail // what each of fatigues is
	factor       float64  // load factor of the case at hand
	factorOf     func(part.Level) float64
	inPlace      int // which cut, weld set or bolt group is at hand
	wallSlots    []slots[Wall]
	outstands    []slots[Outstand]
}

// place is a slots of any feature, for the report.
type place interface {
	most() int // how many checks it reports, at most
	report(r *run, o Options, out *Report)
}

// slots keeps, for one feature at one place, the worst demand for each rule.
type slots[F any] struct {
	rules        []Rule[F]
	worst        []worst[F]
	place, thing string
	what         string // the feature in words, for "not checked"
	at           part.Vec
	notes        []string
	outside      string                                            // why no rule speaks here, whatever the load; empty when rules do
	idle         bool                                              // no load path passes here
	explain      func(r *run, index int, label string) explanation // how a demand came about; nil where nothing is to tell
	now          F                                                 // the feature at hand, kept here so that nothing escapes per case
}

type worst[F any] struct {
	f              F
	rank           int
	utilisation    float64
	inCase, corner int
	label          string
	index          int // which cut, weld set or bolt group
	seen           bool
}

// idle says whether no load path passes a place: then nothing there is checked.
func idle(passing []bool) bool { return !slices.Contains(passing, true) }

// Ranks of verdicts: what must be seen first is highest.
const (
	rankNotApplied = iota
	rankPass
	rankOutside
	rankFail
)

func rank(v Verdict) int {
	switch v {
	case Fail:
		return rankFail
	case Outside:
		return rankOutside
	case Pass:
		return rankPass
	}
	return rankNotApplied
}

func newSlots[F any](rules []Rule[F], place, thing, what string, at part.Vec, notes []string) slots[F] {
	return slots[F]{rules: rules, worst: make([]worst[F], len(rules)), place: place, thing: thing, what: what, at: at, notes: notes}
}

// score is how one rule came out for one feature.
type score struct {
	rank        int
	utilisation float64
}

// severity orders what one place suffers.
func (s score) severity() float64 {
	if s.rank == rankOutside {
		return math.Inf(1)
	}
	return s.utilisation
}

// weigh evaluates every rule for the feature and appends the scores, and gives the worst of them; past enough the rest is left out.
func (s *slots[F]) weigh(r *run, f *F, dst []score, enough float64) (_ []score, worst float64) {
	r.spend(perRule * len(s.rules))
	c, known, n := &r.calc, s.known(r), len(dst)
	dst = slices.Grow(dst, len(s.rules))[:n+len(s.rules)]
	for i := range s.rules {
		sc, ok := s.rules[i].atCapacity(c, known, i, f)
		if !ok {
			sc = s.score(r, i, f)
		}
		dst[n+i] = sc
		if u := sc.severity(); u > worst {
			if worst = u; u > enough {
				return dst[:n+i+1], worst
			}
		}
	}
	return dst, worst
}

// known is what limit states have worked out at the place at hand, nil where nothing of it is to be used.
func (s *slots[F]) known(r *run) *kept {
	if s.outside != "" || keepNothing {
		return nil
	}
	return r.calc.kept
}

// score evaluates one rule.
func (s *slots[F]) score(r *run, i int, f *F) score {
	c, rule := &r.calc, &s.rules[i]
	rule.Check(c, f)
	if rule.Demand != nil && c.keeps(i) && (c.Verdict == Pass || c.Verdict == Fail) {
		_, sense := rule.Demand(c, f)
		c.kept.capacity[i][sense] = c.Capacity
	}
	c.RuleOut(s.outside)
	if c.Verdict == NotApplied {
		return score{rankNotApplied, 0}
	}
	return score{rank(c.Verdict), c.Utilisation()}
}

// atCapacity scores a rule, the i-th of its list, whose capacity is known at a place, as Calc.Compare would.
func (rule *Rule[F]) atCapacity(c *Calc, known *kept, i int, f *F) (_ score, ok bool) {
	if known == nil || rule.Demand == nil || i >= len(known.capacity) {
		return score{}, false
	}
	if c.Verdict != "" {
		c.Verdict, c.Why = "", ""
	}
	demand, sense := rule.Demand(c, f)
	capacity := known.capacity[i][sense]
	u := demand / capacity
	switch {
	case c.Verdict != "" || !(capacity > 0 && u >= 0 && u <= math.MaxFloat64):
		return score{}, false
	case fits(demand, capacity):
		return score{rankPass, u}, true
	}
	return score{rankFail, u}, true
}

// keep remembers the feature for every rule that it serves worse than all before, and gives the scores that are not its own.
func (s *slots[F]) keep(r *run, f *F, scores []score, label string) []score {
	for i := range s.worst {
		w, sc := &s.worst[i], scores[i]
		if !w.seen || sc.rank > w.rank || sc.rank == w.rank && sc.utilisation > w.utilisation {
			*w = worst[F]{f: *f, rank: sc.rank, utilisation: sc.utilisation, inCase: r.inCase, corner: r.inCorner, label: label, index: r.inPlace, seen: true}
		}
	}
	return scores[len(s.rules):]
}

// consider weighs a feature and keeps it where it is the worst.
func (s *slots[F]) consider(r *run, f F, label string) {
	s.now = f
	r.scores, _ = s.weigh(r, &s.now, r.scores[:0], math.Inf(1))
	s.keep(r, &s.now, r.scores, label)
}

func (s *slots[F]) most() int { return len(s.worst) }

// noRule is why a place is not checked where its list of rules is empty.
const noRule = "the basis has no rule for it, or it is left out"

func (s *slots[F]) report(r *run, o Options, out *Report) {
	if s.idle {
		out.NotChecked = append(out.NotChecked, NotChecked{s.what, s.place, "no load path passes it"})
		return
	}
	if len(s.rules) == 0 {
		out.NotChecked = append(out.NotChecked, NotChecked{s.what, s.place, noRule})
	}
	r.spend(perRule * len(s.worst))
	for i := range s.worst {
		w := &s.worst[i]
		if !w.seen {
			out.NotChecked = append(out.NotChecked, NotChecked{s.rules[i].Of.Ident().Title, s.place, "no load case brings load here"})
			continue
		}
		var e explanation
		if o.Trace && s.explain != nil && r.replay(w.inCase, w.corner) {
			e = s.explain(r, w.index, w.label)
		}
		r.calc.Trace, r.calc.Lines = o.Trace, nil
		s.rules[i].Check(&r.calc, &w.f)
		r.calc.RuleOut(s.outside)
		r.calc.Show()
		k := s.check(r, i)
		if e.lines != nil && k.Verdict != NotApplied {
			k.At, k.Lines = e.at, append(e.lines, k.Lines...)
		}
		out.Checks = append(out.Checks, k)
	}
}

func (s *slots[F]) check(r *run, i int) Check {
	id, w, c := s.rules[i].Of.Ident(), &s.worst[i], &r.calc
	k := Check{
		Limit: id.ID, Title: id.Title, Clause: s.rules[i].Of.Cited(), Place: s.place, Thing: s.thing, At: s.at,
		Case: r.cases[w.inCase].Name, Sharing: r.corners[w.corner].words,
		Demand: c.Demand, Capacity: c.Capacity, DemandSymbol: id.Demand, CapacitySymbol: id.Capacity, Unit: id.Unit,
		Utilisation: c.Utilisation(), Verdict: c.Verdict, Detail: id.Detail, Fatigue: id.Fatigue, Why: c.Why, Notes: s.notes, Lines: c.Lines,
	}
	if w.label != "" {
		k.Place += ", " + w.label
	}
	if c.Verdict == NotApplied {
		k.Utilisation = 0
	}
	if c.Verdict == NotApplied || id.Detail || id.Fatigue {
		k.Case = ""
	}
	if c.Verdict == NotApplied || id.Detail {
		k.Sharing = ""
	}
	return k
}

// sortChecks puts the worst first. It orders places in a list, since checks are large to move, and then moves each check once.
func sortChecks(out *Report) {
	place, class := make([]int, len(out.Checks)), make([]int, len(out.Checks))
	for i := range place {
		place[i], class[i] = i, order(&out.Checks[i])-3*rank(out.Checks[i].Verdict)
	}
	slices.SortStableFunc(place, func(i, j int) int {
		if class[i] != class[j] {
			return class[i] - class[j]
		}
		a, b := &out.Checks[i], &out.Checks[j]
		if c := cmp.Compare(b.Utilisation, a.Utilisation); c != 0 {
			return c
		}
		return cmp.Or(cmp.Compare(a.Place, b.Place), cmp.Compare(a.Limit, b.Limit))
	})
	for k := range place {
		first := out.Checks[k]
		at := k
		for place[at] != k { // round the ring of those that take each other's places
			from := place[at]
			out.Checks[at], place[at] = out.Checks[from], at
			at = from
		}
		out.Checks[at], place[at] = first, at
	}
}

// order puts strengths first, then fatigue, then rules about dimensions.
func order(c *Check) int {
	switch {
	case c.Detail:
		return 2
	case c.Fatigue:
		return 1
	}
	return 0
}

func (r *run) report(o Options, factor float64) *Report {
	out := &Report{
		Bracket: r.b.Name, Basis: r.basis.Card.Name, Edition: r.basis.Card.Edition, Method: o.Method, LoadFactor: factor,
		Notes: r.notes, Factors: r.calc.Factors,
	}
	if r.basis.pinJoint != nil {
		out.PinJoint = r.basis.pinJoint.Card.Name
	}
	most := 0
	for _, p := range r.places {
		most += p.most()
	}
	out.Checks = make([]Check, 0, most)
	for _, p := range r.places {
		p.report(r, o, out)
	}
	sortChecks(out)
	for _, u := range r.b.Unchecked {
		out.NotChecked = append(out.NotChecked, NotChecked{What: u, Place: r.b.Name, Why: "not covered by the bracket's model"})
	}
	out.NotChecked = append(out.NotChecked, r.uncovered...)
	return out
}
