package wire

import (
	pb "lugwright/proto/gen/lugwright/vehicle/v1alpha1"
	"lugwright/vehicle"
)

func rangeOf(x vehicle.Range) *pb.Range { return &pb.Range{Value: x.Value, Low: x.Low, High: x.High} }

func readRange(_ *reader, m *pb.Range) vehicle.Range {
	return vehicle.Range{Value: m.Value, Low: m.Low, High: m.High}
}

func massCentre(x *vehicle.Mass) *pb.MassCentre {
	return &pb.MassCentre{MassKg: rangeOf(x.KG), XMm: rangeOf(x.XMM), YMm: rangeOf(x.YMM), ZMm: rangeOf(x.ZMM)}
}

func readMassCentre(r *reader, m *pb.MassCentre) vehicle.Mass {
	return vehicle.Mass{KG: one(r, "mass_kg", m.MassKg, readRange), XMM: one(r, "x_mm", m.XMm, readRange), YMM: one(r, "y_mm", m.YMm, readRange), ZMM: one(r, "z_mm", m.ZMm, readRange)}
}

func (b *book) weights(w *vehicle.Weights) *pb.Weights {
	s := &w.Stability
	return &pb.Weights{
		State: w.State, Lines: all(w.Lines, b.weightLine), Bodies: all(w.Bodies, bodyMass), Vehicle: massCentre(&w.Vehicle),
		Gross: ratedLoad(&w.Gross), Front: ratedLoad(&w.Front), Rear: ratedLoad(&w.Rear),
		Stability: &pb.Stability{
			Known: s.Known, TrackMm: s.TrackMM, LeftPercent: rangeOf(s.LeftPercent), FactorG: rangeOf(s.Factor), TipAngleRad: rangeOf(s.TipAngleRad), TipsFirstTo: s.TipsFirstTo,
		},
		Notes: w.Notes,
	}
}

func (b openBook) weights(r *reader, m *pb.Weights) vehicle.Weights {
	return vehicle.Weights{
		State: r.text("state", m.State), Lines: many(r, "lines", maxListed, m.Lines, b.weightLine),
		Bodies: many(r, "bodies", maxListed, m.Bodies, readBodyMass), Vehicle: one(r, "vehicle", m.Vehicle, readMassCentre),
		Gross: one(r, "gross", m.Gross, readRatedLoad), Front: one(r, "front", m.Front, readRatedLoad), Rear: one(r, "rear", m.Rear, readRatedLoad),
		Stability: one(r, "stability", m.Stability, readStability), Notes: r.sentences("notes", m.Notes),
	}
}

func (b *book) weightLine(l *vehicle.Line) *pb.WeightLine {
	return &pb.WeightLine{
		Name: b.text(l.Name), MassKg: l.MassKG, PlusMinusKg: l.PlusMinusKG, AtMm: vec(l.At), Confidence: confidences.encode(l.Confidence), RidesOn: b.text(l.RidesOn),
	}
}

func (b openBook) weightLine(r *reader, m *pb.WeightLine) vehicle.Line {
	return vehicle.Line{
		Name: b.text(r, "name", m.Name), MassKG: m.MassKg, PlusMinusKG: m.PlusMinusKg, At: one(r, "at_mm", m.AtMm, readVec),
		Confidence: confidences.decode(r, "confidence", m.Confidence), RidesOn: b.text(r, "rides_on", m.RidesOn),
	}
}

func bodyMass(x *vehicle.BodyMass) *pb.BodyMass {
	return &pb.BodyMass{Name: x.Name, Mass: massCentre(&x.Mass)}
}

func readBodyMass(r *reader, m *pb.BodyMass) vehicle.BodyMass {
	return vehicle.BodyMass{Name: r.text("name", m.Name), Mass: one(r, "mass", m.Mass, readMassCentre)}
}

func ratedLoad(x *vehicle.Rated) *pb.RatedLoad {
	return &pb.RatedLoad{LoadKg: rangeOf(x.KG), RatingKg: x.RatingKG, Standing: standings.encode(x.Standing)}
}

func readRatedLoad(r *reader, m *pb.RatedLoad) vehicle.Rated {
	return vehicle.Rated{KG: one(r, "load_kg", m.LoadKg, readRange), RatingKG: m.RatingKg, Standing: standings.decode(r, "standing", m.Standing)}
}

func readStability(r *reader, m *pb.Stability) vehicle.Stability {
	return vehicle.Stability{
		Known: m.Known, TrackMM: m.TrackMm, LeftPercent: one(r, "left_percent", m.LeftPercent, readRange), Factor: one(r, "factor_g", m.FactorG, readRange),
		TipAngleRad: one(r, "tip_angle_rad", m.TipAngleRad, readRange), TipsFirstTo: r.text("tips_first_to", m.TipsFirstTo),
	}
}

func asWeighed(a *vehicle.AsWeighed) *pb.AsWeighed {
	return &pb.AsWeighed{
		State: a.State, Front: readAgainst(&a.Front), Rear: readAgainst(&a.Rear), Total: readAgainst(&a.Total), CgXMm: a.CGXMM, RolledUpCgXMm: rangeOf(a.RolledUpCGXMM),
		RidingKg: a.RidingKG, RidingXMm: a.RidingXMM, RidingKnown: a.RidingKnown, RolledUpRiding: massCentre(&a.RolledUpRiding), Words: a.Words,
	}
}

func readAsWeighed(r *reader, m *pb.AsWeighed) vehicle.AsWeighed {
	return vehicle.AsWeighed{
		State: r.text("state", m.State), Front: one(r, "front", m.Front, readReadAgainst), Rear: one(r, "rear", m.Rear, readReadAgainst), Total: one(r, "total", m.Total, readReadAgainst),
		CGXMM: m.CgXMm, RolledUpCGXMM: one(r, "rolled_up_cg_x_mm", m.RolledUpCgXMm, readRange), RidingKG: m.RidingKg, RidingXMM: m.RidingXMm, RidingKnown: m.RidingKnown,
		RolledUpRiding: one(r, "rolled_up_riding", m.RolledUpRiding, readMassCentre), Words: r.sentences("words", m.Words),
	}
}

func readAgainst(c *vehicle.Compared) *pb.ReadAgainst {
	return &pb.ReadAgainst{RolledUpKg: rangeOf(c.RolledUpKG), ReadKg: c.ReadKG, DifferenceKg: c.DifferenceKG, Within: c.Within}
}

func readReadAgainst(r *reader, m *pb.ReadAgainst) vehicle.Compared {
	return vehicle.Compared{RolledUpKG: one(r, "rolled_up_kg", m.RolledUpKg, readRange), ReadKG: m.ReadKg, DifferenceKG: m.DifferenceKg, Within: m.Within}
}
