package wire

import (
	pb "lugwright/proto/gen/lugwright/vehicle/v1alpha1"
	"lugwright/vehicle/frame"
	"lugwright/vehicle/whole"
)

func frameOf(f *frame.Frame) *pb.Frame {
	return &pb.Frame{
		Rail:   &pb.RailChannel{DepthMm: f.Rail.DepthMM, FlangeMm: f.Rail.FlangeMM, ThicknessMm: f.Rail.ThicknessMM, InsideRadiusMm: f.Rail.InsideRadiusMM},
		Liners: all(f.Liners, liner), YieldMpa: f.YieldMPa, WebYMm: f.WebYMM, FlangesOut: f.FlangesOut, TopZMm: f.TopZMM,
		Axles: all(f.Axles, func(a *frame.Axle) *pb.FrameAxle {
			return &pb.FrameAxle{Name: a.Name, XMm: a.XMM, HangersMm: a.HangersMM}
		}),
		Own: all(f.Own, func(s *frame.Spread) *pb.SpreadMass {
			return &pb.SpreadMass{Name: s.Name, MassKg: s.MassKG, FromMm: s.FromMM, ToMm: s.ToMM, CgMm: s.CGMM}
		}),
		Body: &pb.Stretch{FromMm: f.BodyFromMM, ToMm: f.BodyToMM}, CabBackMm: f.CabBackMM,
		CrossMembers: all(f.CrossMembers, func(c *frame.CrossMember) *pb.CrossMember { return &pb.CrossMember{Name: c.Name, XMm: c.XMM} }),
		Tubes: all(f.Tubes, func(t *frame.CrossTube) *pb.CrossTube {
			return &pb.CrossTube{Name: t.Name, XMm: t.XMM, ZMm: t.ZMM, YMm: t.YMM, DiaMm: t.DiaMM, WallMm: t.WallMM}
		}),
	}
}

func readFrame(r *reader, m *pb.Frame) frame.Frame {
	body := one(r, "body", m.Body, func(r *reader, m *pb.Stretch) [2]float64 {
		return [2]float64{r.number("from_mm", m.FromMm), r.number("to_mm", m.ToMm)}
	})
	return frame.Frame{
		Rail: one(r, "rail", m.Rail, func(r *reader, m *pb.RailChannel) frame.Channel {
			return frame.Channel{
				DepthMM: r.number("depth_mm", m.DepthMm), FlangeMM: r.number("flange_mm", m.FlangeMm),
				ThicknessMM: r.number("thickness_mm", m.ThicknessMm), InsideRadiusMM: r.number("inside_radius_mm", m.InsideRadiusMm),
			}
		}),
		Liners: many(r, "liners", maxThings, m.Liners, readLiner), YieldMPa: r.number("yield_mpa", m.YieldMpa), WebYMM: r.number("web_y_mm", m.WebYMm),
		FlangesOut: m.FlangesOut, TopZMM: r.number("top_z_mm", m.TopZMm),
		Axles: many(r, "axles", maxThings, m.Axles, func(r *reader, m *pb.FrameAxle) frame.Axle {
			return frame.Axle{Name: r.text("name", m.Name), XMM: r.number("x_mm", m.XMm), HangersMM: r.numbers("hangers_mm", maxThings, m.HangersMm)}
		}),
		Own: many(r, "own", maxThings, m.Own, func(r *reader, m *pb.SpreadMass) frame.Spread {
			return frame.Spread{
				Name: r.text("name", m.Name), MassKG: r.number("mass_kg", m.MassKg), FromMM: r.number("from_mm", m.FromMm), ToMM: r.number("to_mm", m.ToMm), CGMM: r.number("cg_mm", m.CgMm),
			}
		}),
		BodyFromMM: body[0], BodyToMM: body[1], CabBackMM: r.optional("cab_back_mm", m.CabBackMm),
		CrossMembers: many(r, "cross_members", maxThings, m.CrossMembers, func(r *reader, m *pb.CrossMember) frame.CrossMember {
			return frame.CrossMember{Name: r.text("name", m.Name), XMM: r.number("x_mm", m.XMm)}
		}),
		Tubes: many(r, "tubes", maxThings, m.Tubes, func(r *reader, m *pb.CrossTube) frame.CrossTube {
			return frame.CrossTube{
				Name: r.text("name", m.Name), XMM: r.number("x_mm", m.XMm), ZMM: r.number("z_mm", m.ZMm), YMM: r.number("y_mm", m.YMm),
				DiaMM: r.number("dia_mm", m.DiaMm), WallMM: r.number("wall_mm", m.WallMm),
			}
		}),
	}
}

func liner(l *frame.Liner) *pb.Liner {
	return &pb.Liner{
		Name: l.Name, Shape: linerShapes.encode(l.Shape), DepthMm: l.DepthMM, FlangeMm: l.FlangeMM, ThicknessMm: l.ThicknessMM, InsideRadiusMm: l.InsideRadiusMM,
		FromMm: l.FromMM, ToMm: l.ToMM,
	}
}

func readLiner(r *reader, m *pb.Liner) frame.Liner {
	return frame.Liner{
		Name: r.text("name", m.Name), Shape: linerShapes.decode(r, "shape", m.Shape), DepthMM: r.number("depth_mm", m.DepthMm), FlangeMM: r.number("flange_mm", m.FlangeMm),
		ThicknessMM: r.number("thickness_mm", m.ThicknessMm), InsideRadiusMM: r.number("inside_radius_mm", m.InsideRadiusMm),
		FromMM: r.number("from_mm", m.FromMm), ToMM: r.number("to_mm", m.ToMm),
	}
}

func stand(s *whole.Stand) *pb.Stand {
	return &pb.Stand{Body: s.Body, Mount: s.Mount, Rail: frameRails.encode(s.Rail), Tube: s.Tube}
}

func readStand(r *reader, m *pb.Stand) whole.Stand {
	return whole.Stand{Body: r.text("body", m.Body), Mount: r.text("mount", m.Mount), Rail: frameRails.decode(r, "rail", m.Rail), Tube: r.text("tube", m.Tube)}
}

func mountSweep(s *whole.Sweep) *pb.MountSweep {
	return &pb.MountSweep{Body: s.Body, Mount: s.Mount, XMm: s.XMM}
}

func readMountSweep(r *reader, m *pb.MountSweep) whole.Sweep {
	return whole.Sweep{Body: r.text("body", m.Body), Mount: r.text("mount", m.Mount), XMM: r.numbers("x_mm", maxThings, m.XMm)}
}

func (b *book) frame(f *whole.Frame) *pb.FrameResult {
	return &pb.FrameResult{
		Rail: railSection(&f.Rail),
		Lined: all(f.Lined, func(s *frame.Stretch) *pb.LinedStretch {
			return &pb.LinedStretch{FromMm: s.FromMM, ToMm: s.ToMM, Liners: s.Liners, Section: railSection(&s.Section)}
		}),
		Cases: all(f.Cases, b.frameCase), Governing: all(f.Governing, governingPlace), Warnings: all(f.Warnings, frameWarning), Unchecked: f.Unchecked,
		Stands: all(f.Stands, stand), ByPlace: f.ByPlace, NoForces: f.NoForces, WithoutStations: int32(f.WithoutStations),
	}
}

func (b openBook) frame(r *reader, m *pb.FrameResult) whole.Frame {
	return whole.Frame{
		Result: frame.Result{
			Rail: one(r, "rail", m.Rail, readRailSection),
			Lined: many(r, "lined", maxThings, m.Lined, func(r *reader, m *pb.LinedStretch) frame.Stretch {
				return frame.Stretch{FromMM: m.FromMm, ToMM: m.ToMm, Liners: r.texts("liners", maxThings, m.Liners), Section: one(r, "section", m.Section, readRailSection)}
			}),
			Cases: many(r, "cases", maxRows, m.Cases, b.frameCase), Governing: many(r, "governing", maxThings, m.Governing, readGoverningPlace),
			Warnings: many(r, "warnings", maxRows, m.Warnings, readFrameWarning), Unchecked: r.sentences("unchecked", m.Unchecked),
		},
		Stands: many(r, "stands", maxRows, m.Stands, readStand), ByPlace: r.sentences("by_place", m.ByPlace), NoForces: r.sentences("no_forces", m.NoForces),
		WithoutStations: r.count("without_stations", m.WithoutStations, maxRows),
	}
}

func railSection(s *frame.Section) *pb.RailSection {
	return &pb.RailSection{
		AreaMm2: s.AreaMM2, IMm4: s.IMM4, NeutralMm: s.NeutralMM, TopMm3: s.TopMM3, BottomMm3: s.BottomMM3, SMm3: s.SMM3,
		ShearCentreMm: s.ShearCentreMM, JMm4: s.JMM4, ThickestMm: s.ThickestMM,
	}
}

func readRailSection(_ *reader, m *pb.RailSection) frame.Section {
	return frame.Section{
		AreaMM2: m.AreaMm2, IMM4: m.IMm4, NeutralMM: m.NeutralMm, TopMM3: m.TopMm3, BottomMM3: m.BottomMm3, SMM3: m.SMm3,
		ShearCentreMM: m.ShearCentreMm, JMM4: m.JMm4, ThickestMM: m.ThickestMm,
	}
}

func (b *book) frameCase(c *frame.CaseResult) *pb.FrameCase {
	return &pb.FrameCase{
		State: b.text(c.State), Case: b.text(c.Case), Level: levels.encode(c.Level), Left: b.diagram(&c.Left), Right: b.diagram(&c.Right), Mean: b.diagram(&c.Mean),
		Spread: present(c.Spread, b.diagram), SpreadWhy: b.text(c.SpreadWhy), OverSpread: c.OverSpread, Twists: all(c.Twists, b.railTwist), Tubes: all(c.Tubes, b.tubeBending),
	}
}

func (b openBook) frameCase(r *reader, m *pb.FrameCase) frame.CaseResult {
	return frame.CaseResult{
		State: b.text(r, "state", m.State), Case: b.text(r, "case", m.Case), Level: levels.decode(r, "level", m.Level),
		Left: one(r, "left", m.Left, b.diagram), Right: one(r, "right", m.Right, b.diagram), Mean: one(r, "mean", m.Mean, b.diagram), Spread: maybe(r, "spread", m.Spread, b.diagram),
		SpreadWhy: b.text(r, "spread_why", m.SpreadWhy), OverSpread: m.OverSpread,
		Twists: many(r, "twists", maxThings, m.Twists, b.railTwist), Tubes: many(r, "tubes", maxThings, m.Tubes, b.tubeBending),
	}
}

func (b *book) diagram(d *frame.Diagram) *pb.Diagram {
	m := &pb.Diagram{Worst: peak(d.Worst), GreatestN: d.GreatestN, OfYield: d.OfYield, ResidualN: d.ResidualN, ResidualNMm: d.ResidualNMM, Share: b.text(d.Share)}
	if n := len(d.Stations); n > 0 {
		columns := make([]float64, 4*n)
		m.XMm, m.ShearN, m.MomentNMm, m.StressMpa = columns[:n:n], columns[n:2*n:2*n], columns[2*n:3*n:3*n], columns[3*n:]
		for i, s := range d.Stations {
			m.XMm[i], m.ShearN[i], m.MomentNMm[i], m.StressMpa[i] = s.XMM, s.ShearN, s.MomentNMM, s.StressMPa
		}
	}
	for _, s := range d.Supports {
		m.Supports, m.SupportXMm, m.SupportUpN = append(m.Supports, b.text(s.Name)), append(m.SupportXMm, s.XMM), append(m.SupportUpN, s.UpN)
	}
	return m
}

func (b openBook) diagram(r *reader, m *pb.Diagram) frame.Diagram {
	d := frame.Diagram{Worst: one(r, "worst", m.Worst, readPeak), GreatestN: m.GreatestN, OfYield: m.OfYield, ResidualN: m.ResidualN, ResidualNMM: m.ResidualNMm, Share: b.text(r, "share", m.Share)}
	if n := len(m.XMm); r.even(n, len(m.ShearN), len(m.MomentNMm), len(m.StressMpa)) && n > 0 {
		d.Stations = make([]frame.Station, n)
		for i := range d.Stations {
			d.Stations[i] = frame.Station{XMM: m.XMm[i], ShearN: m.ShearN[i], MomentNMM: m.MomentNMm[i], StressMPa: m.StressMpa[i]}
		}
	}
	if n := len(m.Supports); r.even(n, len(m.SupportXMm), len(m.SupportUpN)) && n > 0 {
		d.Supports = make([]frame.Reaction, n)
		for i := range d.Supports {
			d.Supports[i] = frame.Reaction{Name: b.text(r, "supports", m.Supports[i]), XMM: m.SupportXMm[i], UpN: m.SupportUpN[i]}
		}
	}
	return d
}

func peak(p frame.Peak) *pb.Peak {
	return &pb.Peak{XMm: p.XMM, MomentNMm: p.MomentNMM, StressMpa: p.StressMPa}
}

func readPeak(_ *reader, m *pb.Peak) frame.Peak {
	return frame.Peak{XMM: m.XMm, MomentNMM: m.MomentNMm, StressMPa: m.StressMpa}
}

func (b *book) railTwist(t *frame.Twist) *pb.RailTwist {
	return &pb.RailTwist{
		Mount: b.text(t.Mount), Rail: frameRails.encode(t.Rail), XMm: t.XMM, SideMm: t.SideMM, HeightMm: t.HeightMM, MomentNMm: t.MomentNMM,
		CrossMember: b.text(t.CrossMember), FarMm: t.FarMM, CoupleN: t.CoupleN, RailMpa: t.RailMPa, Words: b.text(t.Words), Share: b.text(t.Share),
	}
}

func (b openBook) railTwist(r *reader, m *pb.RailTwist) frame.Twist {
	return frame.Twist{
		Mount: b.text(r, "mount", m.Mount), Rail: frameRails.decode(r, "rail", m.Rail), XMM: m.XMm, SideMM: m.SideMm, HeightMM: m.HeightMm, MomentNMM: m.MomentNMm,
		CrossMember: b.text(r, "cross_member", m.CrossMember), FarMM: m.FarMm, CoupleN: m.CoupleN, RailMPa: m.RailMpa, Words: b.text(r, "words", m.Words),
		Share: b.text(r, "share", m.Share),
	}
}

func (b *book) tubeBending(t *frame.TubeBending) *pb.TubeBending {
	return &pb.TubeBending{
		Tube: b.text(t.Tube), Mount: b.text(t.Mount), SpanMm: t.SpanMM, LeftN: vec(t.LeftN), RightN: vec(t.RightN), VerticalNMm: t.VerticalNMM, ForeAftNMm: t.ForeAftNMM,
		MomentNMm: t.MomentNMM, TorqueNMm: t.TorqueNMM, StressMpa: t.StressMPa, HeldEndNMm: t.HeldEndNMM, AlongN: t.AlongN,
		Share: b.text(t.Share),
	}
}

func (b openBook) tubeBending(r *reader, m *pb.TubeBending) frame.TubeBending {
	return frame.TubeBending{
		Tube: b.text(r, "tube", m.Tube), Mount: b.text(r, "mount", m.Mount), SpanMM: m.SpanMm, LeftN: one(r, "left_n", m.LeftN, readVec), RightN: one(r, "right_n", m.RightN, readVec),
		VerticalNMM: m.VerticalNMm, ForeAftNMM: m.ForeAftNMm, MomentNMM: m.MomentNMm, TorqueNMM: m.TorqueNMm, StressMPa: m.StressMpa, HeldEndNMM: m.HeldEndNMm, AlongN: m.AlongN,
		Share: b.text(r, "share", m.Share),
	}
}

func governingPlace(g *frame.Governing) *pb.GoverningPlace {
	return &pb.GoverningPlace{Rail: g.Rail, State: g.State, Case: g.Case, Share: g.Share, Peak: peak(g.Peak)}
}

func readGoverningPlace(r *reader, m *pb.GoverningPlace) frame.Governing {
	return frame.Governing{Rail: r.text("rail", m.Rail), State: r.text("state", m.State), Case: r.text("case", m.Case), Share: r.sentence("share", m.Share), Peak: one(r, "peak", m.Peak, readPeak)}
}

func frameWarning(w *frame.Warning) *pb.FrameWarning {
	return &pb.FrameWarning{Kind: w.Kind, Mount: w.Mount, XMm: w.XMM, Words: w.Words}
}

func readFrameWarning(r *reader, m *pb.FrameWarning) frame.Warning {
	return frame.Warning{Kind: r.text("kind", m.Kind), Mount: r.text("mount", m.Mount), XMM: m.XMm, Words: r.sentence("words", m.Words)}
}
