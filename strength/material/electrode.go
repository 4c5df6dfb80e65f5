package material

// Weld filler strengths.

// Electrode is a filler class.
type Electrode struct {
	Name       string // "E70", "EN 42"
	Aliases    []string
	Source     string
	FromMemory bool
	YieldMPa   float64 // minimum, 0 where the class does not state one here
	FexxMPa    float64 // minimum tensile strength of the deposit
	ListedIn   []string
}

// Listed reports whether a design standard's filler list has it.
func (e *Electrode) Listed(standard string) bool { return contains(e.ListedIn, standard) }

// LookupElectrode finds a filler by exact name or alias; otherwise the error is an *UnknownError.
func LookupElectrode(name string) (*Electrode, error) {
	for i := range electrodes {
		if electrodes[i].Name == name || contains(electrodes[i].Aliases, name) {
			return &electrodes[i], nil
		}
	}
	return nil, &UnknownError{"electrode", name, nearest(name, ElectrodeNames())}
}

// ElectrodeNames lists the names in table order.
func ElectrodeNames() []string {
	names := make([]string, len(electrodes))
	for i := range electrodes {
		names[i] = electrodes[i].Name
	}
	return names
}
