package wire

import (
	"lugwright/part"
	pb "lugwright/proto/gen/lugwright/part/v1alpha1"
)

func loadPoint(l *part.LoadPoint) *pb.LoadPoint {
	m := &pb.LoadPoint{Id: l.ID, AtMm: vec(l.At), Axis: vec(l.Axis), Released: encodeEach(components, l.Released)}
	if l.Patch != nil {
		m.Patch = &pb.Patch{Pose: pose(l.Patch.Pose), Box: box(l.Patch.Box)}
	}
	return m
}

func readLoadPoint(r *reader, m *pb.LoadPoint) part.LoadPoint {
	l := part.LoadPoint{
		ID:       r.text("id", m.Id),
		At:       one(r, "at_mm", m.AtMm, readVec),
		Axis:     one(r, "axis", m.Axis, readVec),
		Released: decodeEach(r, "released", len(components), components, m.Released),
	}
	if m.Patch != nil {
		patch := one(r, "patch", m.Patch, readPatch)
		l.Patch = &patch
	}
	return l
}

func readPatch(r *reader, m *pb.Patch) part.Patch {
	return part.Patch{Pose: one(r, "pose", m.Pose, readPose), Box: one(r, "box", m.Box, readBox)}
}

func share(s *part.Share) *pb.Share {
	return &pb.Share{
		Id: s.ID, Rule: shareRules.encode(s.Rule), Legs: int32(s.Legs), Low: s.Lo, High: s.Hi, Pin: s.Pin, Source: s.Source,
		Beam: s.Beam, EndsMm: []*pb.Vec{vec(s.Ends[0]), vec(s.Ends[1])},
	}
}

func readShare(r *reader, m *pb.Share) part.Share {
	return part.Share{
		ID:   r.text("id", m.Id),
		Rule: shareRules.decode(r, "rule", m.Rule),
		Legs: r.count("legs", m.Legs, maxThings),
		Lo:   r.number("low", m.Low), Hi: r.number("high", m.High),
		Pin: r.text("pin", m.Pin), Source: r.words("source", m.Source),
		Beam: r.text("beam", m.Beam), Ends: pair(r, "ends_mm", m.EndsMm, readVec),
	}
}

func path(p *part.Path) *pb.Path {
	return &pb.Path{LoadPoint: p.LoadPoint, Component: components.encode(p.Component), Branches: all(p.Branches, branch)}
}

func readPath(r *reader, m *pb.Path) part.Path {
	return part.Path{
		LoadPoint: r.text("load_point", m.LoadPoint),
		Component: components.decode(r, "component", m.Component),
		Branches:  many(r, "branches", maxThings, m.Branches, readBranch),
	}
}

func branch(b *part.Branch) *pb.Branch {
	m := &pb.Branch{Share: b.Share, Leg: int32(b.Leg), Then: all(b.Then, fork), AtMm: vec(b.At), Through: b.Through}
	if b.Thrust != (part.Vec{}) {
		m.Thrust = vec(b.Thrust)
	}
	if b.Couple != (part.Vec{}) {
		m.Couple = vec(b.Couple)
	}
	return m
}

func readBranch(r *reader, m *pb.Branch) part.Branch {
	b := part.Branch{
		Share:   r.text("share", m.Share),
		Leg:     r.count("leg", m.Leg, maxThings),
		At:      one(r, "at_mm", m.AtMm, readVec),
		Then:    many(r, "then", maxThings, m.Then, readFork),
		Through: r.texts("through", maxThings, m.Through),
	}
	if m.Thrust != nil {
		b.Thrust = one(r, "thrust", m.Thrust, readVec)
	}
	if m.Couple != nil {
		b.Couple = one(r, "couple", m.Couple, readVec)
	}
	return b
}

func fork(f *part.Fork) *pb.Fork { return &pb.Fork{Share: f.Share, Leg: int32(f.Leg)} }

func readFork(r *reader, m *pb.Fork) part.Fork {
	return part.Fork{Share: r.text("share", m.Share), Leg: r.count("leg", m.Leg, maxThings)}
}

func sweep(s *part.Sweep) *pb.Sweep {
	return &pb.Sweep{
		Id: s.ID, Things: s.Things, FromMm: vec(s.From), ToMm: vec(s.To), Ribs: s.Ribs, EntryMm: s.EntryMM, EntryToMm: s.EntryToMM, EntryFlat: s.EntryFlat,
		HeightMm: s.HeightMM, ReachMm: s.ReachMM,
		Bolts: s.Bolts, Name: s.Name, Via: s.Via, Alone: s.Alone, FreeMm: s.FreeMM,
	}
}

func readSweep(r *reader, m *pb.Sweep) part.Sweep {
	return part.Sweep{
		ID:      r.text("id", m.Id),
		Things:  r.texts("things", maxThings, m.Things),
		From:    one(r, "from_mm", m.FromMm, readVec),
		To:      one(r, "to_mm", m.ToMm, readVec),
		Ribs:    m.Ribs,
		EntryMM: r.number("entry_mm", m.EntryMm), EntryToMM: r.number("entry_to_mm", m.EntryToMm), EntryFlat: m.EntryFlat,
		HeightMM: r.number("height_mm", m.HeightMm), ReachMM: r.number("reach_mm", m.ReachMm),
		Bolts: r.text("bolts", m.Bolts),
		Name:  r.text("name", m.Name),
		Via:   r.text("via", m.Via), Alone: m.Alone, FreeMM: r.number("free_mm", m.FreeMm),
	}
}

func loadCase(c *part.Case) *pb.LoadCase {
	return &pb.LoadCase{
		Name: c.Name, LoadPoint: c.LoadPoint, Level: levels.encode(c.Level), Source: c.Source,
		ForceN: vec(c.Force), MomentNMm: vec(c.Moment), AtRest: c.AtRest,
	}
}

func readLoadCase(r *reader, m *pb.LoadCase) part.Case {
	return part.Case{
		Name:      r.text("name", m.Name),
		LoadPoint: r.text("load_point", m.LoadPoint),
		Level:     levels.decode(r, "level", m.Level),
		Source:    r.words("source", m.Source),
		Force:     one(r, "force_n", m.ForceN, readVec),
		Moment:    one(r, "moment_n_mm", m.MomentNMm, readVec),
		AtRest:    m.AtRest,
	}
}
