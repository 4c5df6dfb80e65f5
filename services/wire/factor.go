package wire

// Settable factors: those that a card declares, those that a request sets, and those that a report used.

import (
	"cmp"
	"slices"

	pb "lugwright/proto/gen/lugwright/strength/v1alpha1"
	"lugwright/strength"
)

func factor(f *strength.Factor) *pb.Factor {
	return &pb.Factor{
		Symbol: f.Symbol, Unit: f.Unit, Words: f.Words, Default: f.Default, Min: f.Min, Max: f.Max,
		Sets: all(f.Sets, func(s *strength.FactorSet) *pb.FactorSet { return &pb.FactorSet{Name: s.Name, Value: s.Value} }),
	}
}

func readFactor(r *reader, m *pb.Factor) strength.Factor {
	return strength.Factor{
		Symbol: r.text("symbol", m.Symbol), Unit: r.text("unit", m.Unit), Words: r.words("words", m.Words),
		Default: r.number("default", m.Default), Min: r.number("min", m.Min), Max: r.number("max", m.Max),
		Sets: many(r, "sets", maxThings, m.Sets, func(r *reader, m *pb.FactorSet) strength.FactorSet {
			return strength.FactorSet{Name: r.text("name", m.Name), Value: r.number("value", m.Value)}
		}),
	}
}

func factorValue(f *strength.FactorValue) *pb.FactorValue {
	return &pb.FactorValue{Symbol: f.Symbol, Unit: f.Unit, Words: f.Words, Value: f.Value}
}

func readFactorValue(r *reader, m *pb.FactorValue) strength.FactorValue {
	return strength.FactorValue{
		Symbol: r.text("symbol", m.Symbol), Unit: r.text("unit", m.Unit), Words: r.words("words", m.Words), Value: r.number("value", m.Value),
	}
}

// ownFactors writes what a user sets, in the order of the symbols.
func ownFactors(own map[string]float64) []*pb.FactorValue {
	list := make([]*pb.FactorValue, 0, len(own))
	for symbol, v := range own {
		list = append(list, &pb.FactorValue{Symbol: symbol, Value: v})
	}
	slices.SortFunc(list, func(a, b *pb.FactorValue) int { return cmp.Compare(a.Symbol, b.Symbol) })
	return list
}

// readOwnFactors names a factor by its symbol in field errors: "factors.gamma_M2".
func readOwnFactors(r *reader, in []*pb.FactorValue) map[string]float64 {
	list := byName(r, "factors", "symbol", maxThings, in, (*pb.FactorValue).GetSymbol, func(r *reader, m *pb.FactorValue) strength.FactorValue {
		return strength.FactorValue{Symbol: m.Symbol, Value: r.number("", m.Value)}
	})
	if list == nil {
		return nil
	}
	own := make(map[string]float64, len(list))
	for _, f := range list {
		if _, twice := own[f.Symbol]; twice {
			r.refuse("factors."+f.Symbol, "given twice", "give it once")
		}
		own[f.Symbol] = f.Value
	}
	return own
}
