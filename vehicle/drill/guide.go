package drill

// Overrules goes with every result.
const Overrules = "the chassis maker's own guide for this very frame overrules every rule here"

// Guide is one source's rules. A number of 0 or a false means that the source does not speak of it.
type Guide struct {
	ID, Name, Source string
	SecondHand       bool     // quoted by another; the original was not seen
	Remarks          []string // what it says beside numbers, and how an unclear sentence is read

	WebOnly         bool    // no holes in the flanges
	ExistingFirst   bool    // existing holes are to be used before new ones are drilled
	LargestMM       float64 // largest hole
	FlangeMM        float64 // from the hole's edge to the inside of the nearer flange
	FlangeUnclear   bool    // where FlangeMM is measured is not known: the reading that asks most counts
	EdgeMM          float64 // from edge to edge of two holes up to EdgeSmallMM
	EdgeSmallMM     float64
	EdgeTimes       float64 // and of larger ones, this many times the larger of the two
	PitchMM         float64 // from centre to centre
	InLine          int     // holes one above the other
	ReinforcementMM float64 // from the edge of a reinforcement
	CrossMemberMM   float64 // from the edge of a cross member
	CornerMM        float64 // from the rail's corner
	CornerUnclear   bool    // whether that is the bend of the section or where the rail's height changes is not known: both count
	OffLoads        bool    // no holes where load enters, such as spring hangers
	OffChanges      bool    // no holes where the profile changes, at cross members and at reinforcements
	OverBoltMM      float64 // hole over bolt diameter, at most
	Brackets        bool    // distances to cross member, corner and reinforcement bind the bracket's outline, not the hole
}

// speaksOf says whether a rule of the guide is about holes beside a kind of zone.
func (g *Guide) speaksOf(k Kind) bool {
	switch k {
	case LoadPoint:
		return g.OffLoads
	case ProfileChange:
		return g.OffChanges
	case CrossMember:
		return g.OffChanges || g.CrossMemberMM > 0
	case Reinforcement:
		return g.OffChanges || g.ReinforcementMM > 0
	}
	return false
}
