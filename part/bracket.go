package part

// Hand says which side of the vehicle a bracket is for.
type Hand string

const (
	LeftHand  Hand = "left"
	RightHand Hand = "right"
)

// Param is one parameter a bracket was built from: a number in the unit of its declaration, or a word.
type Param struct {
	Name   string
	Number float64
	Unit   string // "mm", "rad", "" for counts and words
	Text   string // set for words, else empty
}

// Bracket is the one thing that passes between the services.
type Bracket struct {
	Name       string
	Kind       string
	Hand       Hand
	Params     []Param
	Plates     []Plate
	Members    []Member
	Pins       []Pin
	Bolts      []BoltGroup
	Rods       []Rods
	Welds      []WeldGroup
	Contacts   []Contact
	Composites []Composite
	Splices    []Splice
	Supports   []Support
	LoadPoints []LoadPoint
	Shares     []Share
	Paths      []Path
	Sweeps     []Sweep
	Notes      []string // remarks for the maker, e.g. "ream the pin hole after welding"
	Unchecked  []string // limit states the kind knows to matter and that the model does not carry, in words
}

// Plate finds a plate by name; nil when there is none.
func (b *Bracket) Plate(id string) *Plate {
	return find(b.Plates, id, func(p *Plate) string { return p.ID })
}

// Member finds a member by name; nil when there is none.
func (b *Bracket) Member(id string) *Member {
	return find(b.Members, id, func(m *Member) string { return m.ID })
}

// Pin finds a pin by name; nil when there is none.
func (b *Bracket) Pin(id string) *Pin { return find(b.Pins, id, func(p *Pin) string { return p.ID }) }

// BoltGroup finds a bolt group by name; nil when there is none.
func (b *Bracket) BoltGroup(id string) *BoltGroup {
	return find(b.Bolts, id, func(g *BoltGroup) string { return g.ID })
}

// Weld finds a weld group by name; nil when there is none.
func (b *Bracket) Weld(id string) *WeldGroup {
	return find(b.Welds, id, func(w *WeldGroup) string { return w.ID })
}

// Support finds a support by name; nil when there is none.
func (b *Bracket) Support(id string) *Support {
	return find(b.Supports, id, func(s *Support) string { return s.ID })
}

// Share finds a share by name; nil when there is none.
func (b *Bracket) Share(id string) *Share {
	return find(b.Shares, id, func(s *Share) string { return s.ID })
}

// LoadPoint finds a load point by name, or the only one when the name is empty; nil when there is none.
func (b *Bracket) LoadPoint(id string) *LoadPoint {
	if id == "" && len(b.LoadPoints) == 1 {
		return &b.LoadPoints[0]
	}
	return find(b.LoadPoints, id, func(l *LoadPoint) string { return l.ID })
}

func find[T any](list []T, id string, name func(*T) string) *T {
	for i := range list {
		if name(&list[i]) == id {
			return &list[i]
		}
	}
	return nil
}
