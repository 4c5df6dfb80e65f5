package wire

import (
	pb "lugwright/proto/gen/lugwright/vehicle/v1alpha1"
	"lugwright/vehicle"
	"lugwright/vehicle/whole"
)

// maxRows bounds lists that have a row for each state and case, or for each way of sharing in them.
const maxRows = 1 << 20

func (b *book) bodyResult(x *vehicle.Result) *pb.BodyResult {
	return &pb.BodyResult{Scheme: scheme(&x.Scheme), Cases: all(x.Cases, b.caseReactions), Loads: all(x.Loads, b.mountLoads), Unchecked: x.Unchecked}
}

func (b openBook) bodyResult(r *reader, m *pb.BodyResult) vehicle.Result {
	return vehicle.Result{
		Scheme: one(r, "scheme", m.Scheme, readScheme), Cases: many(r, "cases", maxRows, m.Cases, b.caseReactions),
		Loads: many(r, "loads", maxThings, m.Loads, b.mountLoads), Unchecked: r.sentences("unchecked", m.Unchecked),
	}
}

func scheme(s *vehicle.Scheme) *pb.Scheme {
	return &pb.Scheme{
		Body: s.Body, Determinate: s.Determinate, Surplus: int32(s.Surplus), Free: all(s.Free, freeMotion), HeldTwice: s.HeldTwice, Sharing: all(s.Sharing, sharing),
		SlackTried: s.SlackTried, Choices: int32(s.Choices), OneAtATime: s.OneAtATime, Words: s.Words,
	}
}

func readScheme(r *reader, m *pb.Scheme) vehicle.Scheme {
	return vehicle.Scheme{
		Body: r.text("body", m.Body), Determinate: m.Determinate, Surplus: r.count("surplus", m.Surplus, maxThings), Free: many(r, "free", maxThings, m.Free, readFreeMotion),
		HeldTwice: r.sentences("held_twice", m.HeldTwice), Sharing: many(r, "sharing", maxThings, m.Sharing, readSharing),
		SlackTried: m.SlackTried, Choices: r.count("choices", m.Choices, maxRows), OneAtATime: m.OneAtATime, Words: r.sentences("words", m.Words),
	}
}

func freeMotion(f *vehicle.FreeMotion) *pb.FreeMotion {
	return &pb.FreeMotion{Words: f.Words, ShiftMm: vec(f.ShiftMM), TurnRad: vec(f.TurnRad), IsTurn: f.IsTurn, PointMm: vec(f.Point), Axis: vec(f.Axis)}
}

func readFreeMotion(r *reader, m *pb.FreeMotion) vehicle.FreeMotion {
	return vehicle.FreeMotion{
		Words: r.sentence("words", m.Words), ShiftMM: one(r, "shift_mm", m.ShiftMm, readVec), TurnRad: one(r, "turn_rad", m.TurnRad, readVec), IsTurn: m.IsTurn,
		Point: one(r, "point_mm", m.PointMm, readVec), Axis: one(r, "axis", m.Axis, readVec),
	}
}

func sharing(s *vehicle.Sharing) *pb.Sharing {
	return &pb.Sharing{Direction: s.Direction, Mounts: s.Mounts, Words: s.Words}
}

func readSharing(r *reader, m *pb.Sharing) vehicle.Sharing {
	return vehicle.Sharing{Direction: r.text("direction", m.Direction), Mounts: r.texts("mounts", maxThings, m.Mounts), Words: r.sentence("words", m.Words)}
}

func (b *book) caseReactions(c *vehicle.CaseResult) *pb.CaseReactions {
	return &pb.CaseReactions{
		State: b.text(c.State), Case: b.text(c.Case), BodyKg: c.BodyKG, CgMm: vec(c.CG), Held: c.Held, Unheld: b.text(c.Unheld), Parts: b.all(c.Parts),
		Reactions: all(c.Reactions, b.mountReaction), ResidualN: c.ResidualN, ResidualNMm: c.ResidualNMM, Notes: b.all(c.Notes),
	}
}

func (b openBook) caseReactions(r *reader, m *pb.CaseReactions) vehicle.CaseResult {
	return vehicle.CaseResult{
		State: b.text(r, "state", m.State), Case: b.text(r, "case", m.Case), BodyKG: m.BodyKg, CG: one(r, "cg_mm", m.CgMm, readVec), Held: m.Held,
		Unheld: b.text(r, "unheld", m.Unheld), Parts: b.all(r, "parts", m.Parts), Reactions: many(r, "reactions", maxThings, m.Reactions, b.mountReaction),
		ResidualN: m.ResidualN, ResidualNMM: m.ResidualNMm, Notes: b.all(r, "notes", m.Notes),
	}
}

func (b *book) mountReaction(x *vehicle.Reaction) *pb.MountReaction {
	n := len(x.Components)
	numbers, open := make([]float64, 4*n), make([]bool, 2*n)
	m := &pb.MountReaction{
		Mount: b.text(x.Mount), ForceN: vec(x.Force), MomentNMm: vec(x.Moment), LiftedOff: x.LiftedOff, HoldsDown: x.HoldsDown, MayHoldDown: x.MayHoldDown,
		Directions: make([]int32, n), Values: numbers[:n:n], Lows: numbers[n : 2*n : 2*n], Highs: numbers[2*n : 3*n : 3*n], PlusMinus: numbers[3*n:],
		LowsOpen: open[:n:n], HighsOpen: open[n:],
	}
	for i, c := range x.Components {
		m.Directions[i], m.Values[i], m.Lows[i], m.Highs[i], m.PlusMinus[i] = b.text(c.Direction), c.Value, c.Low, c.High, c.PlusMinus
		m.LowsOpen[i], m.HighsOpen[i] = c.LowOpen, c.HighOpen
	}
	return m
}

func (b openBook) mountReaction(r *reader, m *pb.MountReaction) vehicle.Reaction {
	x := vehicle.Reaction{
		Mount: b.text(r, "mount", m.Mount), Force: one(r, "force_n", m.ForceN, readVec), Moment: one(r, "moment_n_mm", m.MomentNMm, readVec),
		LiftedOff: m.LiftedOff, HoldsDown: m.HoldsDown, MayHoldDown: m.MayHoldDown,
	}
	n := len(m.Directions)
	if n == 0 || !r.even(n, len(m.Values), len(m.Lows), len(m.Highs), len(m.PlusMinus), len(m.LowsOpen), len(m.HighsOpen)) {
		return x
	}
	x.Components = make([]vehicle.Component, n)
	for i := range x.Components {
		x.Components[i] = vehicle.Component{
			Direction: b.text(r, "directions", m.Directions[i]), Value: m.Values[i], Low: m.Lows[i], High: m.Highs[i],
			LowOpen: m.LowsOpen[i], HighOpen: m.HighsOpen[i], PlusMinus: m.PlusMinus[i],
		}
	}
	return x
}

func (b *book) mountLoads(l *vehicle.MountLoads) *pb.MountLoads {
	return &pb.MountLoads{Mount: l.Mount, Loads: all(l.Loads, b.mountLoad), Missing: b.all(l.Missing)}
}

func (b openBook) mountLoads(r *reader, m *pb.MountLoads) vehicle.MountLoads {
	return vehicle.MountLoads{Mount: r.text("mount", m.Mount), Loads: many(r, "loads", maxRows, m.Loads, b.mountLoad), Missing: b.all(r, "missing", m.Missing)}
}

// loadName is what nearly every load is called; only another name travels.
func loadName(l *vehicle.Load) string {
	name := l.Case + ", " + l.State
	if l.Share != "" {
		name += ", " + l.Share
	}
	return name
}

func (b *book) mountLoad(l *vehicle.Load) *pb.MountLoad {
	m := &pb.MountLoad{
		Case: b.text(l.Case), State: b.text(l.State), Share: b.text(l.Share), Level: levels.encode(l.Level), Source: b.text(l.Source), OnUltimate: l.OnUltimate,
		ForceN: vec(l.Force), MomentNMm: vec(l.Moment), Uplift: l.Uplift, Same: b.all(l.Same),
	}
	if l.Name != loadName(l) {
		name := b.text(l.Name)
		m.Name = &name
	}
	return m
}

func (b openBook) mountLoad(r *reader, m *pb.MountLoad) vehicle.Load {
	l := vehicle.Load{
		Case: b.text(r, "case", m.Case), State: b.text(r, "state", m.State), Share: b.text(r, "share", m.Share), Level: levels.decode(r, "level", m.Level),
		Source: b.text(r, "source", m.Source), OnUltimate: m.OnUltimate, Force: one(r, "force_n", m.ForceN, readVec), Moment: one(r, "moment_n_mm", m.MomentNMm, readVec),
		Uplift: m.Uplift, Same: b.all(r, "same", m.Same),
	}
	if l.Name = loadName(&l); m.Name != nil {
		l.Name = b.text(r, "name", *m.Name)
	}
	return l
}

func (b *book) mountRange(x *whole.MountRange) *pb.MountRange {
	return &pb.MountRange{
		Mount: b.text(x.Mount), DownN: x.DownN, DownState: b.text(x.DownState), DownCase: b.text(x.DownCase), UpN: x.UpN, UpState: b.text(x.UpState), UpCase: b.text(x.UpCase),
		SideN: x.SideN, ForeAftN: x.ForeAftN,
	}
}

func (b openBook) mountRange(r *reader, m *pb.MountRange) whole.MountRange {
	return whole.MountRange{
		Mount: b.text(r, "mount", m.Mount), DownN: m.DownN, DownState: b.text(r, "down_state", m.DownState), DownCase: b.text(r, "down_case", m.DownCase),
		UpN: m.UpN, UpState: b.text(r, "up_state", m.UpState), UpCase: b.text(r, "up_case", m.UpCase), SideN: m.SideN, ForeAftN: m.ForeAftN,
	}
}
