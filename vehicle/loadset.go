package vehicle

import (
	"fmt"

	"lugwright/part"
)

// LoadLine is one line of a load set: the apparent acceleration on the mass, gravity included.
type LoadLine struct {
	ID     string
	Name   string
	AccelG part.Vec
	Level  part.Level
	Source string // empty: the set's
}

// LoadSet is a list of accelerations from one source.
type LoadSet struct {
	ID, Name       string
	Source         string // "builder's choice" where there is none
	Says           string // what the source says, in short
	Turned         string // how that became apparent accelerations
	BuildersChoice bool
	// OnUltimate is the factor that the source asks for on tensile strength; it is in no acceleration, and a basis has its own factors. 0: none.
	OnUltimate float64
	Lines      []LoadLine
}

// Case is one acceleration that reactions are found for.
type Case struct {
	ID, Name   string
	Set        string
	AccelG     part.Vec
	Level      part.Level
	Source     string
	OnUltimate float64
}

// Cases are the set's lines, each with a sideways acceleration to both sides: the mirror image is made where no line of the set has it.
func (s *LoadSet) Cases() []Case {
	var out []Case
	for i, l := range s.Lines {
		c := Case{l.ID, l.Name, s.ID, l.AccelG, l.Level, l.Source, s.OnUltimate}
		if c.Source == "" {
			c.Source = s.Source
		}
		if l.AccelG.Y == 0 || s.mirrored(i) {
			out = append(out, c)
			continue
		}
		for _, y := range []float64{l.AccelG.Y, -l.AccelG.Y} {
			side := c
			side.AccelG.Y = y
			way := "right"
			if y > 0 {
				way = "left"
			}
			side.ID, side.Name = l.ID+" "+way, l.Name+", to the "+way
			out = append(out, side)
		}
	}
	return out
}

// mirrored says whether another line of the set is line i's mirror image.
func (s *LoadSet) mirrored(i int) bool {
	a := s.Lines[i].AccelG
	a.Y = -a.Y
	for _, l := range s.Lines {
		if l.AccelG == a && l.Level == s.Lines[i].Level {
			return true
		}
	}
	return false
}

// Cases are those of several sets, in order. The sets are checked first.
func Cases(sets ...LoadSet) ([]Case, error) {
	c := &checker{}
	c.sets(sets)
	if err := c.Err(); err != nil {
		return nil, err
	}
	var out []Case
	for i := range sets {
		out = append(out, sets[i].Cases()...)
	}
	return out, nil
}

// ShippedSet is the set of an id.
func ShippedSet(id string) (LoadSet, error) {
	var ids []string
	for _, s := range ShippedSets() {
		if s.ID == id {
			return s, nil
		}
		ids = append(ids, s.ID)
	}
	return LoadSet{}, &part.FieldError{Field: "load_sets", Found: fmt.Sprintf("no load set %q", id), Accept: "one of " + list(ids)}
}
