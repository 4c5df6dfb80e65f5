package part

import "lugwright/geometry/shape"

// Component is a signed component of a load: a seat bears down and cap bolts hold up, so up and down are two.
type Component int

const (
	FxPlus Component = iota
	FxMinus
	FyPlus
	FyMinus
	FzPlus
	FzMinus
	MxPlus
	MxMinus
	MyPlus
	MyMinus
	MzPlus
	MzMinus
	componentCount
)

var componentNames = [componentCount]string{
	"Fx+", "Fx-", "Fy+", "Fy-", "Fz+", "Fz-", "Mx+", "Mx-", "My+", "My-", "Mz+", "Mz-",
}

func (c Component) String() string {
	if c < 0 || c >= componentCount {
		return "?"
	}
	return componentNames[c]
}

// Components lists all signed components in order.
func Components() []Component {
	all := make([]Component, componentCount)
	for i := range all {
		all[i] = Component(i)
	}
	return all
}

// Size is how much of a load (force N, moment N*mm) acts in this signed component; never negative.
func (c Component) Size(f, m Vec) float64 {
	v := [6]float64{f.X, f.Y, f.Z, m.X, m.Y, m.Z}[c/2]
	if c%2 == 1 {
		v = -v
	}
	return max(v, 0)
}

// Unit is the force and the moment of size one in this component.
func (c Component) Unit() (f, m Vec) {
	s := 1.0
	if c%2 == 1 {
		s = -1
	}
	switch c / 2 {
	case 0:
		f.X = s
	case 1:
		f.Y = s
	case 2:
		f.Z = s
	case 3:
		m.X = s
	case 4:
		m.Y = s
	case 5:
		m.Z = s
	}
	return f, m
}

// LoadPoint is where the body's load enters.
type LoadPoint struct {
	ID       string
	At       Vec
	Axis     Vec         // direction of the pin or tube, zero when there is none
	Released []Component // components that the joint lets go: a load case that holds one is refused
	Patch    *Patch
}

// Patch is a load spread over a rectangle, such as a tank on its tray.
type Patch struct {
	Pose Pose
	Box  shape.Box
}

// ShareRule names how a load divides where a path forks.
type ShareRule string

const (
	// Equal: every leg takes the same.
	Equal ShareRule = "equal"
	// Between: the first leg takes Lo to Hi of the whole, the second the rest; both ends are tried. Of more legs, an even number, each half is one
	// leg that its members share alike.
	Between ShareRule = "between"
	// ByPinSpan: the legs are a pin's supporting seats; statics of the span with the load at either end of its travel.
	ByPinSpan ShareRule = "statics of the pin"
	// ByBeamSpan: the legs are the two supports of a member that spans between them. Force across it and bending by statics of the span, with either end
	// anything from free to turn to held, in each plane of the member's section; twist and thrust anything from all at one end to all at the other.
	ByBeamSpan ShareRule = "statics of the beam"
)

// ShareRules lists every rule, in the order of the wire format.
func ShareRules() []ShareRule { return []ShareRule{Equal, Between, ByPinSpan, ByBeamSpan} }

// Share is a fork that several branches refer to.
type Share struct {
	ID     string
	Rule   ShareRule
	Legs   int // number of legs
	Lo, Hi float64
	Pin    string // for ByPinSpan
	Beam   string // for ByBeamSpan: the member
	Ends   [2]Vec // and where its legs are supported, on its axis; what lies beyond its own ends is rigid
	Source string // why this rule: a clause, "statics", "stated by the builder"
}

// Path carries one signed component of a load point to supports.
type Path struct {
	LoadPoint string
	Component Component
	Branches  []Branch
}

// Branch is one leg of a path: where its force acts, its fraction of the component, and what it passes through, in
// order. The last thing passed is a support.
type Branch struct {
	Share   string // empty: the whole component
	Leg     int    // which leg of the share, from 0
	Then    []Fork // where that leg forks again, in order
	At      Vec    // point at which the branch's force enters the first thing
	Through []string
	// Thrust and Couple are what the other legs of a frame do to this one at At, for each N or N*mm of the branch's own part. They are
	// the legs of an equal share, the last on their way, and balance among them.
	Thrust, Couple Vec
}

// Fork is one leg of a share.
type Fork struct {
	Share string
	Leg   int
}

// Forks are all the forks on the branch's way, in order.
func (b *Branch) Forks() []Fork {
	if b.Share == "" {
		return b.Then
	}
	return append([]Fork{{b.Share, b.Leg}}, b.Then...)
}

// forks is how many there are, fork the kth.
func (b *Branch) forks() int {
	if b.Share == "" {
		return len(b.Then)
	}
	return 1 + len(b.Then)
}

func (b *Branch) fork(k int) Fork {
	switch {
	case b.Share == "":
		return b.Then[k]
	case k == 0:
		return Fork{b.Share, b.Leg}
	}
	return b.Then[k-1]
}

// Sweep is a stretch along which sections are cut: from where load enters to the root.
type Sweep struct {
	ID        string
	Things    []string // plates or member legs ("base.a") cut by it; composites join others to them
	From, To  Vec      // cuts are square to From-To
	Ribs      bool     // webs that stand on a wide flange each take their part as a rib, by a rigid spread
	EntryMM   float64  // width over which load enters the first thing; its working width spreads at 30 degrees. 0: all works
	EntryFlat bool     // the spread holds for bending out of the plane alone
	EntryToMM float64  // how far from From the last of it enters; the spread starts there
	HeightMM  float64  // of a plate in a corner with a free edge across it: its height along the support; 0 for other plates
	ReachMM   float64  // and how far it reaches from the support
	Bolts     string   // bolt group whose bolts and contact act on the swept thing between From and To
	Name      string   // words for the place, e.g. "ear", "angle leg"
	Via       string   // loads that pass this thing as well are all that act; empty: all that pass the swept things
	Alone     bool     // only the piece that the line From-To passes is cut, one leg of a frame
	FreeMM    float64  // length that is free to buckle at every cut, where it is more than that from From
}

// Level says whether a load already holds its load factors.
type Level string

const (
	Service  Level = "service"
	Factored Level = "factored"
)

// Case is a load at a load point. Force and Moment act on the bracket.
type Case struct {
	Name      string
	LoadPoint string // may be empty when the bracket has one
	Level     Level
	Source    string // published rule, or "builder's choice"
	Force     Vec
	Moment    Vec
	AtRest    bool // what acts while nothing moves, 1 g down: the wear of a bush is judged on it
}
