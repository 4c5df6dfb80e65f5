package wire

import (
	pb "lugwright/proto/gen/lugwright/strength/v1alpha1"
	"lugwright/strength"
)

// Basis is what a user sees of a design basis: its card and its limit states.
type Basis struct {
	strength.Card
	Limits []strength.Info
}

// DescribeBasis gives what a user sees of a basis.
func DescribeBasis(b *strength.Basis) Basis {
	info := Basis{Card: b.Card, Limits: make([]strength.Info, len(b.Limits))}
	for i, l := range b.Limits {
		info.Limits[i] = l.Info()
	}
	return info
}

// EncodeBases writes what a user sees of the bases.
func EncodeBases(bases []Basis) []*pb.Basis { return all(bases, basis) }

// DecodeBases reads bases.
func DecodeBases(in []*pb.Basis) ([]Basis, error) {
	var r reader
	bases := many(&r, "bases", maxListed, in, readBasis)
	return bases, r.err()
}

func basis(b *Basis) *pb.Basis {
	m := &pb.Basis{
		Name: b.Name, Document: b.Document, Edition: b.Edition, FactorSource: b.FactorSource, Listing: b.Listing,
		Limits: all(b.Limits, limit), Factors: all(b.Factors, factor), ReferenceOnly: b.ReferenceOnly, PinHolesOnly: b.PinHolesOnly,
	}
	for _, method := range b.Methods {
		f := &pb.MethodFactor{Method: methods.encode(method)}
		if k, ok := b.ServiceFactor[method]; ok {
			f.ServiceFactor = &k
		}
		m.Methods = append(m.Methods, f)
	}
	return m
}

func readBasis(r *reader, m *pb.Basis) Basis {
	b := Basis{
		Card: strength.Card{
			Name: r.text("name", m.Name), Document: r.words("document", m.Document), Edition: r.text("edition", m.Edition),
			FactorSource: r.words("factor_source", m.FactorSource), Listing: r.text("listing", m.Listing),
			Factors: many(r, "factors", maxThings, m.Factors, readFactor), ReferenceOnly: m.ReferenceOnly, PinHolesOnly: m.PinHolesOnly,
		},
		Limits: many(r, "limits", maxListed, m.Limits, readLimit),
	}
	many(r, "methods", maxThings, m.Methods, func(r *reader, f *pb.MethodFactor) (none struct{}) {
		method := methods.decode(r, "method", f.Method)
		b.Methods = append(b.Methods, method)
		if f.ServiceFactor != nil {
			if b.ServiceFactor == nil {
				b.ServiceFactor = map[strength.Method]float64{}
			}
			b.ServiceFactor[method] = r.number("service_factor", *f.ServiceFactor)
		}
		return none
	})
	return b
}

func limit(l *strength.Info) *pb.Limit {
	return &pb.Limit{
		Id: l.ID, Title: l.Title,
		Clause: &pb.Clause{
			Document: l.Clause.Document, Edition: l.Clause.Edition, Section: l.Clause.Section, Words: l.Clause.Words,
		},
		DemandSymbol: l.Demand, CapacitySymbol: l.Capacity, Unit: l.Unit, Detail: l.Detail, Fatigue: l.Fatigue, Unruled: l.Unruled, Givens: all(l.Givens, given),
	}
}

func readLimit(r *reader, m *pb.Limit) strength.Info {
	return strength.Info{
		Identity: strength.Identity{
			ID: r.text("id", m.Id), Title: r.text("title", m.Title),
			Clause: one(r, "clause", m.Clause, readClause),
			Demand: r.text("demand_symbol", m.DemandSymbol), Capacity: r.text("capacity_symbol", m.CapacitySymbol),
			Unit: r.text("unit", m.Unit), Detail: m.Detail, Fatigue: m.Fatigue, Unruled: m.Unruled,
		},
		Givens: many(r, "givens", maxThings, m.Givens, readGiven),
	}
}

func readClause(r *reader, m *pb.Clause) strength.Clause {
	return strength.Clause{
		Document: r.words("document", m.Document), Edition: r.text("edition", m.Edition),
		Section: r.words("section", m.Section), Words: r.words("words", m.Words),
	}
}

func given(g *strength.Given) *pb.Given {
	return &pb.Given{
		Symbol: g.Symbol, Unit: g.Unit, Words: g.Words, Min: g.Min, Max: g.Max, Optional: g.Optional, Default: g.Default,
		List: g.List, Choices: g.Choices, Step: g.Step,
	}
}

// readGiven lets infinite bounds in: a given may be open to one side.
func readGiven(r *reader, m *pb.Given) strength.Given {
	return strength.Given{
		Symbol: r.text("symbol", m.Symbol), Unit: r.text("unit", m.Unit), Words: r.words("words", m.Words),
		Min: m.Min, Max: m.Max, Optional: m.Optional, Default: m.Default,
		List: m.List, Choices: r.texts("choices", maxThings, m.Choices), Step: r.number("step", m.Step),
	}
}
