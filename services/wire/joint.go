package wire

import (
	"lugwright/part"
	pb "lugwright/proto/gen/lugwright/part/v1alpha1"
)

func pin(p *part.Pin) *pb.Pin {
	return &pb.Pin{
		Id: p.ID, Mark: p.Mark, DiameterMm: p.DiaMM, Material: p.Material, LengthMm: p.LengthMM,
		Axis: vec(p.Axis), CenterMm: vec(p.Center), Seats: all(p.Seats, seat), Ends: all(p.Ends[:], pinEnd),
		TravelMm: p.TravelMM, Turns: p.Turns,
	}
}

func readPin(r *reader, m *pb.Pin) part.Pin {
	return part.Pin{
		ID: r.text("id", m.Id), Mark: r.text("mark", m.Mark),
		DiaMM:    r.number("diameter_mm", m.DiameterMm),
		Material: r.text("material", m.Material),
		LengthMM: r.number("length_mm", m.LengthMm),
		Axis:     one(r, "axis", m.Axis, readVec),
		Center:   one(r, "center_mm", m.CenterMm, readVec),
		Seats:    many(r, "seats", maxThings, m.Seats, readSeat),
		Ends:     pair(r, "ends", m.Ends, readPinEnd),
		TravelMM: r.number("travel_mm", m.TravelMm),
		Turns:    m.Turns,
	}
}

func seat(s *part.Seat) *pb.Seat {
	return &pb.Seat{
		Thing: s.Thing, Loads: s.Loads, AtMm: s.AtMM, ThicknessMm: s.ThicknessMM, HoleMm: s.HoleMM, BushMm: s.BushMM,
		Material: s.Material,
	}
}

func readSeat(r *reader, m *pb.Seat) part.Seat {
	return part.Seat{
		Thing: r.text("thing", m.Thing), Loads: m.Loads,
		AtMM:        r.number("at_mm", m.AtMm),
		ThicknessMM: r.number("thickness_mm", m.ThicknessMm),
		HoleMM:      r.number("hole_mm", m.HoleMm),
		BushMM:      r.number("bush_mm", m.BushMm),
		Material:    r.text("material", m.Material),
	}
}

func pinEnd(e *part.PinEnd) *pb.PinEnd {
	return &pb.PinEnd{Kind: pinEnds.encode(e.Kind), BearsOn: e.BearsOn, PlayMm: e.PlayMM, Size: e.Size}
}

func readPinEnd(r *reader, m *pb.PinEnd) part.PinEnd {
	return part.PinEnd{
		Kind:    pinEnds.decode(r, "kind", m.Kind),
		BearsOn: r.text("bears_on", m.BearsOn),
		PlayMM:  r.number("play_mm", m.PlayMm),
		Size:    r.text("size", m.Size),
	}
}

func boltGroup(g *part.BoltGroup) *pb.BoltGroup {
	return &pb.BoltGroup{
		Id: g.ID, Pose: pose(g.Pose), PointsMm: all(g.Points, point), Size: g.Size, DiameterMm: g.DiaMM, Grade: g.Grade,
		HoleMm: g.HoleMM, GripMm: g.GripMM, ThreadsIn: g.ThreadsIn, Plies: all(g.Plies[:], ply), Patch: box(g.Patch),
		Across: all(g.Across[:], pry), SameAs: g.SameAs, PreloadRatio: g.Preload, SlipCoefficient: g.SlipC,
	}
}

func readBoltGroup(r *reader, m *pb.BoltGroup) part.BoltGroup {
	return part.BoltGroup{
		ID:     r.text("id", m.Id),
		Pose:   one(r, "pose", m.Pose, readPose),
		Points: many(r, "points_mm", maxThings, m.PointsMm, readPoint),
		Size:   r.text("size", m.Size), DiaMM: r.number("diameter_mm", m.DiameterMm), Grade: r.text("grade", m.Grade),
		HoleMM: r.number("hole_mm", m.HoleMm), GripMM: r.number("grip_mm", m.GripMm),
		ThreadsIn: m.ThreadsIn,
		Plies:     pair(r, "plies", m.Plies, readPly),
		Patch:     one(r, "patch", m.Patch, readBox),
		Across:    pair(r, "across", m.Across, readPry),
		SameAs:    r.text("same_as", m.SameAs),
		Preload:   r.number("preload_ratio", m.PreloadRatio),
		SlipC:     r.number("slip_coefficient", m.SlipCoefficient),
	}
}

func ply(p *part.Ply) *pb.Ply {
	return &pb.Ply{Thing: p.Thing, ThicknessMm: p.ThicknessMM, Material: p.Material, EdgeMm: p.EdgeMM, PitchMm: p.PitchMM}
}

func readPly(r *reader, m *pb.Ply) part.Ply {
	return part.Ply{
		Thing: r.text("thing", m.Thing), ThicknessMM: r.number("thickness_mm", m.ThicknessMm),
		Material: r.text("material", m.Material),
		EdgeMM:   r.number("edge_mm", m.EdgeMm), PitchMM: r.number("pitch_mm", m.PitchMm),
	}
}

func pry(p *part.Pry) *pb.Pry { return &pb.Pry{BMm: p.BMM, AMm: p.AMM, PMm: p.PMM} }

func readPry(r *reader, m *pb.Pry) part.Pry {
	return part.Pry{BMM: r.number("b_mm", m.BMm), AMM: r.number("a_mm", m.AMm), PMM: r.number("p_mm", m.PMm)}
}

func rods(g *part.Rods) *pb.Rods {
	return &pb.Rods{
		Id: g.ID, Pose: pose(g.Pose), PointsMm: all(g.Points, point), DiameterMm: g.DiaMM, Grade: g.Grade, FreeMm: g.FreeMM,
		FixedTop: g.FixedTop, FixedFoot: g.FixedFoot, EngagementMm: g.EngagementMM, Size: g.Size, Stopped: g.Stopped, StopMm: g.StopMM,
	}
}

func readRods(r *reader, m *pb.Rods) part.Rods {
	return part.Rods{
		ID:     r.text("id", m.Id),
		Pose:   one(r, "pose", m.Pose, readPose),
		Points: many(r, "points_mm", maxThings, m.PointsMm, readPoint),
		DiaMM:  r.number("diameter_mm", m.DiameterMm), Grade: r.text("grade", m.Grade),
		FreeMM:   r.number("free_mm", m.FreeMm),
		FixedTop: m.FixedTop, FixedFoot: m.FixedFoot,
		EngagementMM: r.number("engagement_mm", m.EngagementMm),
		Size:         r.text("size", m.Size), Stopped: m.Stopped, StopMM: r.number("stop_mm", m.StopMm),
	}
}

func weldGroup(w *part.WeldGroup) *pb.WeldGroup {
	return &pb.WeldGroup{
		Id: w.ID, Joins: []string{w.Joins[0], w.Joins[1]}, Kind: welds.encode(w.Kind), LegMm: w.LegMM, Electrode: w.Electrode,
		Segments: all(w.Segments, weldSegment), BothSides: w.BothSides, AlongEdge: w.AlongEdge, WidthMm: w.WidthMM,
	}
}

func readWeldGroup(r *reader, m *pb.WeldGroup) part.WeldGroup {
	return part.WeldGroup{
		ID:        r.text("id", m.Id),
		Joins:     r.twoTexts("joins", m.Joins),
		Kind:      welds.decode(r, "kind", m.Kind),
		LegMM:     r.number("leg_mm", m.LegMm),
		Electrode: r.text("electrode", m.Electrode),
		Segments:  many(r, "segments", maxThings, m.Segments, readWeldSegment),
		BothSides: m.BothSides, AlongEdge: m.AlongEdge, WidthMM: r.number("width_mm", m.WidthMm),
	}
}

func weldSegment(s *part.WeldSegment) *pb.WeldSegment {
	return &pb.WeldSegment{AMm: vec(s.A), BMm: vec(s.B)}
}

func readWeldSegment(r *reader, m *pb.WeldSegment) part.WeldSegment {
	return part.WeldSegment{A: one(r, "a_mm", m.AMm, readVec), B: one(r, "b_mm", m.BMm, readVec)}
}

func contact(c *part.Contact) *pb.Contact {
	return &pb.Contact{
		Id: c.ID, Things: []string{c.Things[0], c.Things[1]}, Pose: pose(c.Pose), Patch: box(c.Patch), GapMm: c.GapMM,
		PreloadN: c.PreloadN, WrapRad: c.WrapRad, FrictionCoefficient: c.FrictionC,
	}
}

func readContact(r *reader, m *pb.Contact) part.Contact {
	return part.Contact{
		ID:        r.text("id", m.Id),
		Things:    r.twoTexts("things", m.Things),
		Pose:      one(r, "pose", m.Pose, readPose),
		Patch:     one(r, "patch", m.Patch, readBox),
		GapMM:     r.number("gap_mm", m.GapMm),
		PreloadN:  r.number("preload_n", m.PreloadN),
		WrapRad:   r.number("wrap_rad", m.WrapRad),
		FrictionC: r.number("friction_coefficient", m.FrictionCoefficient),
	}
}

func composite(c *part.Composite) *pb.Composite {
	return &pb.Composite{
		Id: c.ID, Things: c.Things, FromMm: vec(c.From), ToMm: vec(c.To), Welds: c.Welds, Rule: lagRules.encode(c.Rule),
		SpanMm: c.SpanMM,
	}
}

func readComposite(r *reader, m *pb.Composite) part.Composite {
	return part.Composite{
		ID:     r.text("id", m.Id),
		Things: r.texts("things", maxThings, m.Things),
		From:   one(r, "from_mm", m.FromMm, readVec),
		To:     one(r, "to_mm", m.ToMm, readVec),
		Welds:  r.texts("welds", maxThings, m.Welds),
		Rule:   lagRules.decodeOptional(r, "rule", m.Rule),
		SpanMM: r.number("span_mm", m.SpanMm),
	}
}

func splice(s *part.Splice) *pb.Splice {
	return &pb.Splice{Id: s.ID, Thing: s.Thing, Butt: s.Butt, GapMm: s.GapMM, Laps: s.Laps, LapWelds: s.LapWelds}
}

func readSplice(r *reader, m *pb.Splice) part.Splice {
	return part.Splice{
		ID: r.text("id", m.Id), Thing: r.text("thing", m.Thing), Butt: r.text("butt", m.Butt),
		GapMM:    r.number("gap_mm", m.GapMm),
		Laps:     r.texts("laps", maxThings, m.Laps),
		LapWelds: r.texts("lap_welds", maxThings, m.LapWelds),
	}
}

func support(s *part.Support) *pb.Support {
	return &pb.Support{
		Id: s.ID, Kind: supports.encode(s.Kind), ThicknessMm: s.ThicknessMM, Material: s.Material, ClearMm: s.ClearMM,
		Couple: couples.encode(s.Couple),
	}
}

func readSupport(r *reader, m *pb.Support) part.Support {
	return part.Support{
		ID:          r.text("id", m.Id),
		Kind:        supports.decode(r, "kind", m.Kind),
		ThicknessMM: r.number("thickness_mm", m.ThicknessMm),
		Material:    r.text("material", m.Material),
		ClearMM:     r.number("clear_mm", m.ClearMm),
		Couple:      couples.decodeOptional(r, "couple", m.Couple),
	}
}
