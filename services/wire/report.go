package wire

// Numbers of an answer may be infinite (a utilisation without capacity), so they pass as they are.

import (
	pb "lugwright/proto/gen/lugwright/strength/v1alpha1"
	"lugwright/strength"
)

// EncodeReport writes a report.
func EncodeReport(p *strength.Report) *pb.Report {
	return &pb.Report{
		Bracket: p.Bracket, Basis: p.Basis, Edition: p.Edition, Method: methods.encode(p.Method), LoadFactor: p.LoadFactor,
		Verdict: verdicts.encode(p.Verdict()), Checks: all(p.Checks, check), NotChecked: all(p.NotChecked, notChecked),
		Notes: p.Notes, Factors: all(p.Factors, factorValue), PinJoint: p.PinJoint,
	}
}

// DecodeReport reads a report.
func DecodeReport(m *pb.Report) (*strength.Report, error) {
	var r reader
	p := one(&r, "report", m, readReport)
	if err := r.err(); err != nil {
		return nil, err
	}
	return p, nil
}

func readReport(r *reader, m *pb.Report) *strength.Report {
	return &strength.Report{
		Bracket: r.text("bracket", m.Bracket), Basis: r.text("basis", m.Basis), Edition: r.text("edition", m.Edition),
		Method: methods.decode(r, "method", m.Method), LoadFactor: m.LoadFactor,
		Checks:     many(r, "checks", maxListed, m.Checks, readCheck),
		NotChecked: many(r, "not_checked", maxListed, m.NotChecked, readNotChecked),
		Notes:      r.texts("notes", maxThings, m.Notes),
		Factors:    many(r, "factors", maxThings, m.Factors, readFactorValue),
		PinJoint:   r.text("pin_joint", m.PinJoint),
	}
}

func check(c *strength.Check) *pb.Check {
	return &pb.Check{
		Limit: c.Limit, Title: c.Title, Clause: c.Clause, Place: c.Place, Thing: c.Thing, AtMm: vec(c.At), LoadCase: c.Case,
		Sharing: c.Sharing, Demand: c.Demand, Capacity: c.Capacity,
		DemandSymbol: c.DemandSymbol, CapacitySymbol: c.CapacitySymbol, Unit: c.Unit,
		Utilisation: c.Utilisation, Verdict: verdicts.encode(c.Verdict), Detail: c.Detail, Fatigue: c.Fatigue, Why: c.Why, Notes: c.Notes,
		Lines: all(c.Lines, line),
	}
}

func readCheck(r *reader, m *pb.Check) strength.Check {
	return strength.Check{
		Limit: r.text("limit", m.Limit), Title: r.text("title", m.Title), Clause: r.words("clause", m.Clause),
		Place: r.words("place", m.Place), Thing: r.text("thing", m.Thing), At: one(r, "at_mm", m.AtMm, readVec),
		Case: r.text("load_case", m.LoadCase), Sharing: r.words("sharing", m.Sharing),
		Demand: m.Demand, Capacity: m.Capacity,
		DemandSymbol: r.text("demand_symbol", m.DemandSymbol), CapacitySymbol: r.text("capacity_symbol", m.CapacitySymbol),
		Unit: r.text("unit", m.Unit), Utilisation: m.Utilisation, Verdict: verdicts.decode(r, "verdict", m.Verdict),
		Detail: m.Detail, Fatigue: m.Fatigue, Why: r.words("why", m.Why), Notes: r.texts("notes", maxThings, m.Notes),
		Lines: many(r, "lines", maxListed, m.Lines, readLine),
	}
}

func line(l *strength.Line) *pb.Line {
	return &pb.Line{
		Kind: lineKinds.encode(l.Kind), Symbol: l.Symbol, Formula: l.Formula, Unit: l.Unit, Value: l.Value, Words: l.Words,
		Values: l.Values,
	}
}

func readLine(r *reader, m *pb.Line) strength.Line {
	return strength.Line{
		Kind: lineKinds.decode(r, "kind", m.Kind), Symbol: r.text("symbol", m.Symbol), Formula: r.words("formula", m.Formula),
		Unit: r.text("unit", m.Unit), Value: m.Value, Words: r.words("words", m.Words), Values: m.Values,
	}
}

func notChecked(n *strength.NotChecked) *pb.NotChecked {
	return &pb.NotChecked{What: n.What, Place: n.Place, Why: n.Why}
}

func readNotChecked(r *reader, m *pb.NotChecked) strength.NotChecked {
	return strength.NotChecked{What: r.words("what", m.What), Place: r.words("place", m.Place), Why: r.words("why", m.Why)}
}
