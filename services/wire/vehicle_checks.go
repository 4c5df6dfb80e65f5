package wire

import (
	pb "lugwright/proto/gen/lugwright/vehicle/v1alpha1"
	"lugwright/vehicle/clearance"
	"lugwright/vehicle/drill"
	"lugwright/vehicle/finding"
	"lugwright/vehicle/hung"
	"lugwright/vehicle/lift"
	"lugwright/vehicle/whole"
)

func findingOf(f *finding.Finding) *pb.Finding {
	return &pb.Finding{
		At: f.At, Rule: f.Rule, Source: f.Source, Sense: findingSenses.encode(f.Sense), Need: f.Need, Had: f.Had, Unit: f.Unit, Verdict: findingVerdicts.encode(f.Verdict), Words: f.Words,
	}
}

func readFinding(r *reader, m *pb.Finding) finding.Finding {
	return finding.Finding{
		At: r.sentence("at", m.At), Rule: r.sentence("rule", m.Rule), Source: r.sentence("source", m.Source), Sense: findingSenses.decodeOptional(r, "sense", m.Sense),
		Need: m.Need, Had: m.Had, Unit: r.text("unit", m.Unit), Verdict: findingVerdicts.decode(r, "verdict", m.Verdict), Words: r.sentence("words", m.Words),
	}
}

func readFindings(r *reader, name string, in []*pb.Finding) []finding.Finding {
	return many(r, name, maxRows, in, readFinding)
}

func drilling(d *whole.Drilling) *pb.Drilling {
	return &pb.Drilling{
		Rails: all(d.Rails, surveyedRail), Guides: d.Guides, OwnGuides: all(d.OwnGuides, drillGuide), SubframeFlangeMm: d.SubframeFlangeMM, RailFlangeMm: d.RailFlangeMM,
	}
}

func readDrilling(r *reader, m *pb.Drilling) whole.Drilling {
	return whole.Drilling{
		Rails: many(r, "rails", maxThings, m.Rails, readSurveyedRail), Guides: r.texts("guides", maxThings, m.Guides), OwnGuides: many(r, "own_guides", maxThings, m.OwnGuides, readDrillGuide),
		SubframeFlangeMM: r.number("subframe_flange_mm", m.SubframeFlangeMm), RailFlangeMM: r.number("rail_flange_mm", m.RailFlangeMm),
	}
}

func surveyedRail(d *drill.Rail) *pb.SurveyedRail {
	return &pb.SurveyedRail{
		Side: railSides.encode(d.Side), TopZMm: d.TopZMM, DepthMm: d.DepthMM, ThicknessMm: d.ThicknessMM, InsideRadiusMm: d.InsideRadiusMM, FromMm: d.FromMM, ToMm: d.ToMM,
		Holes: all(d.Holes, func(h *drill.Hole) *pb.RailHole {
			return &pb.RailHole{Name: h.Name, XMm: h.XMM, ZMm: h.ZMM, DiaMm: h.DiaMM}
		}),
		Zones: all(d.Zones, func(z *drill.Zone) *pb.RailZone {
			return &pb.RailZone{Name: z.Name, Kind: zoneKinds.encode(z.Kind), FromMm: z.FromMM, ToMm: z.ToMM, BottomMm: z.BottomMM, TopMm: z.TopMM}
		}),
		Brackets: all(d.Brackets, func(b *drill.Bracket) *pb.RailBracket {
			return &pb.RailBracket{Name: b.Name, FromMm: b.FromMM, ToMm: b.ToMM, BottomMm: b.BottomMM, TopMm: b.TopMM}
		}),
		New: all(d.New, func(h *drill.NewHole) *pb.NewRailHole {
			return &pb.NewRailHole{Name: h.Name, Face: railFaces.encode(h.Face), XMm: h.XMM, ZMm: h.ZMM, DiaMm: h.DiaMM, BoltMm: h.BoltMM, Bracket: h.Bracket}
		}),
	}
}

func readSurveyedRail(r *reader, m *pb.SurveyedRail) drill.Rail {
	return drill.Rail{
		Side: railSides.decode(r, "side", m.Side), TopZMM: r.number("top_z_mm", m.TopZMm), DepthMM: r.number("depth_mm", m.DepthMm), ThicknessMM: r.number("thickness_mm", m.ThicknessMm),
		InsideRadiusMM: r.number("inside_radius_mm", m.InsideRadiusMm), FromMM: r.number("from_mm", m.FromMm), ToMM: r.number("to_mm", m.ToMm),
		Holes: many(r, "holes", maxThings, m.Holes, func(r *reader, m *pb.RailHole) drill.Hole {
			return drill.Hole{Name: r.text("name", m.Name), XMM: r.number("x_mm", m.XMm), ZMM: r.number("z_mm", m.ZMm), DiaMM: r.number("dia_mm", m.DiaMm)}
		}),
		Zones: many(r, "zones", maxThings, m.Zones, func(r *reader, m *pb.RailZone) drill.Zone {
			return drill.Zone{
				Name: r.text("name", m.Name), Kind: zoneKinds.decode(r, "kind", m.Kind), FromMM: r.number("from_mm", m.FromMm), ToMM: r.number("to_mm", m.ToMm),
				BottomMM: r.number("bottom_mm", m.BottomMm), TopMM: r.number("top_mm", m.TopMm),
			}
		}),
		Brackets: many(r, "brackets", maxThings, m.Brackets, func(r *reader, m *pb.RailBracket) drill.Bracket {
			return drill.Bracket{
				Name: r.text("name", m.Name), FromMM: r.number("from_mm", m.FromMm), ToMM: r.number("to_mm", m.ToMm), BottomMM: r.number("bottom_mm", m.BottomMm), TopMM: r.number("top_mm", m.TopMm),
			}
		}),
		New: many(r, "new", maxThings, m.New, func(r *reader, m *pb.NewRailHole) drill.NewHole {
			return drill.NewHole{
				Name: r.text("name", m.Name), Face: railFaces.decode(r, "face", m.Face), XMM: r.number("x_mm", m.XMm), ZMM: r.number("z_mm", m.ZMm), DiaMM: r.number("dia_mm", m.DiaMm),
				BoltMM: r.number("bolt_mm", m.BoltMm), Bracket: r.text("bracket", m.Bracket),
			}
		}),
	}
}

func drillGuide(g *drill.Guide) *pb.DrillGuide {
	return &pb.DrillGuide{
		Id: g.ID, Name: g.Name, Source: g.Source, SecondHand: g.SecondHand, Remarks: g.Remarks, WebOnly: g.WebOnly, ExistingFirst: g.ExistingFirst,
		LargestMm: g.LargestMM, FlangeMm: g.FlangeMM, FlangeUnclear: g.FlangeUnclear, EdgeMm: g.EdgeMM, EdgeSmallMm: g.EdgeSmallMM, EdgeTimes: g.EdgeTimes,
		PitchMm: g.PitchMM, InLine: int32(g.InLine), ReinforcementMm: g.ReinforcementMM, CrossMemberMm: g.CrossMemberMM, CornerMm: g.CornerMM, CornerUnclear: g.CornerUnclear,
		OffLoads: g.OffLoads, OffChanges: g.OffChanges, OverBoltMm: g.OverBoltMM, Brackets: g.Brackets,
	}
}

func readDrillGuide(r *reader, m *pb.DrillGuide) drill.Guide {
	return drill.Guide{
		ID: r.text("id", m.Id), Name: r.text("name", m.Name), Source: r.words("source", m.Source), SecondHand: m.SecondHand, Remarks: r.texts("remarks", maxThings, m.Remarks),
		WebOnly: m.WebOnly, ExistingFirst: m.ExistingFirst, LargestMM: r.number("largest_mm", m.LargestMm), FlangeMM: r.number("flange_mm", m.FlangeMm), FlangeUnclear: m.FlangeUnclear,
		EdgeMM: r.number("edge_mm", m.EdgeMm), EdgeSmallMM: r.number("edge_small_mm", m.EdgeSmallMm), EdgeTimes: r.number("edge_times", m.EdgeTimes),
		PitchMM: r.number("pitch_mm", m.PitchMm), InLine: r.count("in_line", m.InLine, maxThings), ReinforcementMM: r.number("reinforcement_mm", m.ReinforcementMm),
		CrossMemberMM: r.number("cross_member_mm", m.CrossMemberMm), CornerMM: r.number("corner_mm", m.CornerMm), CornerUnclear: m.CornerUnclear,
		OffLoads: m.OffLoads, OffChanges: m.OffChanges, OverBoltMM: r.number("over_bolt_mm", m.OverBoltMm), Brackets: m.Brackets,
	}
}

func drillReport(p *drill.Report) *pb.DrillReport {
	return &pb.DrillReport{Findings: all(p.Findings, findingOf), Silent: all(p.Silent, findingOf), Remarks: p.Remarks, Overrule: p.Overrule}
}

func readDrillReport(r *reader, m *pb.DrillReport) drill.Report {
	return drill.Report{
		Findings: readFindings(r, "findings", m.Findings), Silent: readFindings(r, "silent", m.Silent),
		Remarks: r.sentences("remarks", m.Remarks), Overrule: r.sentence("overrule", m.Overrule),
	}
}

func twistAllowance(t *clearance.Twist) *pb.Twist {
	return &pb.Twist{AngleRad: t.AngleRad, WheelLiftMm: t.WheelLiftMM, TrackMm: t.TrackMM, BothAxles: t.BothAxles}
}

func readTwistAllowance(r *reader, m *pb.Twist) clearance.Twist {
	return clearance.Twist{
		AngleRad: r.number("angle_rad", m.AngleRad), WheelLiftMM: r.number("wheel_lift_mm", m.WheelLiftMm), TrackMM: r.number("track_mm", m.TrackMm), BothAxles: m.BothAxles,
	}
}

func roomPoint(p *clearance.Point) *pb.RoomPoint {
	return &pb.RoomPoint{Name: p.Name, Way: roomWays.encode(p.Way), ArmMm: p.ArmMM, ExtraMm: p.ExtraMM, HadMm: p.HadMM}
}

func readRoomPoint(r *reader, m *pb.RoomPoint) clearance.Point {
	return clearance.Point{
		Name: r.text("name", m.Name), Way: roomWays.decode(r, "way", m.Way), ArmMM: r.number("arm_mm", m.ArmMm), ExtraMM: r.number("extra_mm", m.ExtraMm), HadMM: r.optional("had_mm", m.HadMm),
	}
}

func roomReport(p *clearance.Report) *pb.RoomReport {
	return &pb.RoomReport{AngleRad: p.Allowance.AngleRad, Words: p.Allowance.Words, Findings: all(p.Findings, findingOf)}
}

func readRoomReport(r *reader, m *pb.RoomReport) clearance.Report {
	return clearance.Report{
		Allowance: clearance.Allowance{AngleRad: m.AngleRad, Words: r.sentences("words", m.Words)}, Findings: readFindings(r, "findings", m.Findings),
	}
}

func liftOrder(l *whole.Lift) *pb.LiftOrder {
	return &pb.LiftOrder{
		Body:  l.Body,
		Jacks: all(l.Jacks, func(j *lift.Jack) *pb.Jack { return &pb.Jack{Name: j.Name, XMm: j.XMM, YMm: j.YMM, RatedKg: j.RatedKG} }),
	}
}

func readLiftOrder(r *reader, m *pb.LiftOrder) whole.Lift {
	return whole.Lift{
		Body: r.text("body", m.Body),
		Jacks: many(r, "jacks", maxThings, m.Jacks, func(r *reader, m *pb.Jack) lift.Jack {
			return lift.Jack{Name: r.text("name", m.Name), XMM: r.number("x_mm", m.XMm), YMM: r.number("y_mm", m.YMm), RatedKG: r.number("rated_kg", m.RatedKg)}
		}),
	}
}

func liftPlan(p *whole.LiftPlan) *pb.LiftPlan {
	return &pb.LiftPlan{
		Body: p.Body, Mass: massCentre(&p.Mass), Rule: p.Rule, MarginMm: p.MarginMM, Tips: p.Tips, Cautions: p.Cautions,
		Shares: all(p.Shares, func(s *lift.Share) *pb.JackShare {
			return &pb.JackShare{Name: s.Name, EvenKg: s.EvenKG, WorstKg: s.WorstKG, PlanKg: s.PlanKG, RatedKg: s.RatedKG, OverRate: s.OverRate}
		}),
	}
}

func readLiftPlan(r *reader, m *pb.LiftPlan) whole.LiftPlan {
	return whole.LiftPlan{
		Body: r.text("body", m.Body), Mass: one(r, "mass", m.Mass, readMassCentre),
		Plan: lift.Plan{
			Shares: many(r, "shares", maxThings, m.Shares, func(r *reader, m *pb.JackShare) lift.Share {
				return lift.Share{Name: r.text("name", m.Name), EvenKG: m.EvenKg, WorstKG: m.WorstKg, PlanKG: m.PlanKg, RatedKG: m.RatedKg, OverRate: m.OverRate}
			}),
			Rule: r.sentence("rule", m.Rule), MarginMM: m.MarginMm, Tips: r.sentence("tips", m.Tips), Cautions: r.sentences("cautions", m.Cautions),
		},
	}
}

func tray(t *whole.Tray) *pb.Tray {
	return &pb.Tray{
		Name: t.Name, MassKg: t.MassKG, AtMm: vec(t.At), BeamZMm: t.BeamZMM, FreeMm: t.FreeMM, Ends: rodEnds.encode(t.Ends), StopZMm: t.StopZMM, Carries: t.Carries,
		Rods: all(t.Rods, func(d *hung.Rod) *pb.TrayRod { return &pb.TrayRod{Name: d.Name, XMm: d.XMM, YMm: d.YMM} }),
	}
}

func readTray(r *reader, m *pb.Tray) whole.Tray {
	return whole.Tray{
		Tray: hung.Tray{
			Name: r.text("name", m.Name), MassKG: r.number("mass_kg", m.MassKg), At: one(r, "at_mm", m.AtMm, readVec),
			Rods: many(r, "rods", maxThings, m.Rods, func(r *reader, m *pb.TrayRod) hung.Rod {
				return hung.Rod{Name: r.text("name", m.Name), XMM: r.number("x_mm", m.XMm), YMM: r.number("y_mm", m.YMm)}
			}),
			BeamZMM: r.number("beam_z_mm", m.BeamZMm), FreeMM: r.number("free_mm", m.FreeMm), Ends: rodEnds.decode(r, "ends", m.Ends), StopZMM: r.optional("stop_z_mm", m.StopZMm),
		},
		Carries: r.texts("carries", maxThings, m.Carries),
	}
}

func (b *book) trayResult(t *whole.TrayLoads) *pb.TrayResult {
	return &pb.TrayResult{
		Tray: t.Tray, Cases: all(t.Cases, b.trayCase),
		States: all(t.States, func(s *whole.TrayMass) *pb.TrayMass {
			return &pb.TrayMass{State: b.text(s.State), MassKg: s.KG, AtMm: vec(s.At)}
		}),
	}
}

func (b openBook) trayResult(r *reader, m *pb.TrayResult) whole.TrayLoads {
	return whole.TrayLoads{
		Tray: r.text("tray", m.Tray),
		States: many(r, "states", maxThings, m.States, func(r *reader, m *pb.TrayMass) whole.TrayMass {
			return whole.TrayMass{State: b.text(r, "state", m.State), KG: m.MassKg, At: one(r, "at_mm", m.AtMm, readVec)}
		}),
		Cases: many(r, "cases", maxRows, m.Cases, b.trayCase),
	}
}

func (b *book) trayCase(c *hung.CaseLoads) *pb.TrayCase {
	n := len(c.Rods)
	columns := make([]float64, 4*n)
	m := &pb.TrayCase{
		State: b.text(c.State), Case: b.text(c.Case), Level: levels.encode(c.Level), DownN: c.DownN, EvenN: c.EvenN, DiagonalN: c.DiagonalN, CoupleN: c.CoupleN,
		Rods: make([]int32, n), TensionN: columns[:n:n], PushN: columns[n : 2*n : 2*n], SideN: columns[2*n : 3*n : 3*n], BendingNMm: columns[3*n:],
		StopN: c.StopN, Words: b.all(c.Words),
	}
	for i, d := range c.Rods {
		m.Rods[i], m.TensionN[i], m.PushN[i], m.SideN[i], m.BendingNMm[i] = b.text(d.Rod), d.TensionN, d.PushN, d.SideN, d.BendingNMM
	}
	return m
}

func (b openBook) trayCase(r *reader, m *pb.TrayCase) hung.CaseLoads {
	c := hung.CaseLoads{
		State: b.text(r, "state", m.State), Case: b.text(r, "case", m.Case), Level: levels.decode(r, "level", m.Level),
		DownN: m.DownN, EvenN: m.EvenN, DiagonalN: m.DiagonalN, CoupleN: m.CoupleN, StopN: m.StopN, Words: b.all(r, "words", m.Words),
	}
	if n := len(m.Rods); r.even(n, len(m.TensionN), len(m.PushN), len(m.SideN), len(m.BendingNMm)) && n > 0 {
		c.Rods = make([]hung.RodLoad, n)
		for i := range c.Rods {
			c.Rods[i] = hung.RodLoad{Rod: b.text(r, "rods", m.Rods[i]), TensionN: m.TensionN[i], PushN: m.PushN[i], SideN: m.SideN[i], BendingNMM: m.BendingNMm[i]}
		}
	}
	return c
}

func washer(w *hung.Washer) *pb.Washer {
	return &pb.Washer{Name: w.Name, RodMm: w.RodMM, SideMm: w.SideMM, ThicknessMm: w.ThicknessMM, ThinWall: w.ThinWall, CrushSleeve: w.CrushSleeve, BothWay: w.BothWay}
}

func readWasher(r *reader, m *pb.Washer) hung.Washer {
	return hung.Washer{
		Name: r.text("name", m.Name), RodMM: r.number("rod_mm", m.RodMm), SideMM: r.number("side_mm", m.SideMm), ThicknessMM: r.number("thickness_mm", m.ThicknessMm),
		ThinWall: m.ThinWall, CrushSleeve: m.CrushSleeve, BothWay: m.BothWay,
	}
}

func plasticTank(t *hung.Tank) *pb.PlasticTank {
	return &pb.PlasticTank{Name: t.Name, HeightMm: t.HeightMM, UnsupportedMm2: t.UnsupportedMM2, HeldDown: t.HeldDown}
}

func readPlasticTank(r *reader, m *pb.PlasticTank) hung.Tank {
	return hung.Tank{Name: r.text("name", m.Name), HeightMM: r.number("height_mm", m.HeightMm), UnsupportedMM2: r.number("unsupported_mm2", m.UnsupportedMm2), HeldDown: m.HeldDown}
}
