package strength

import (
	"lugwright/services/wire"
	"lugwright/strength/material"
)

func (s *Service) describe(cardsOnly bool) []wire.Basis {
	list := make([]wire.Basis, len(s.bases))
	for i, b := range s.bases {
		if cardsOnly {
			list[i] = wire.Basis{Card: b.Card}
		} else {
			list[i] = wire.DescribeBasis(b)
		}
	}
	return list
}

// materials gathers the tables by their own names.
func materials() (*wire.Materials, error) {
	list := &wire.Materials{}
	var err error
	if list.Grades, err = gather(material.GradeNames(), material.LookupGrade); err != nil {
		return nil, err
	}
	if list.BoltGrades, err = gather(material.BoltGradeNames(), material.LookupBoltGrade); err != nil {
		return nil, err
	}
	if list.Electrodes, err = gather(material.ElectrodeNames(), material.LookupElectrode); err != nil {
		return nil, err
	}
	list.Bolts, err = gather(material.BoltNames(), func(name string) (*material.Bolt, error) {
		b, err := material.ParseBolt(name)
		return &b, err
	})
	return list, err
}

func gather[T any](names []string, find func(string) (*T, error)) ([]T, error) {
	list := make([]T, len(names))
	for i, name := range names {
		v, err := find(name)
		if err != nil {
			return nil, err
		}
		list[i] = *v
	}
	return list, nil
}
