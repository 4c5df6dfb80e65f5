package wire

import (
	pb "lugwright/proto/gen/lugwright/vehicle/v1alpha1"
	"lugwright/vehicle"
	"lugwright/vehicle/whole"
)

// EncodeVehicleAnswer writes the answer about a whole vehicle. What comes again and again, such as the names of states and cases, is written once.
func EncodeVehicleAnswer(a *whole.Answer) *pb.WholeAnswer {
	b := &book{}
	m := &pb.WholeAnswer{
		Weights: all(a.Report.Weights, b.weights), Bodies: all(a.Report.Bodies, b.bodyResult),
		Moved: present(a.Moved, func(r *vehicle.Report) *pb.WhatIf {
			return &pb.WhatIf{Weights: all(r.Weights, b.weights), Bodies: all(r.Bodies, b.bodyResult)}
		}),
		AsWeighed: present(a.AsWeighed, asWeighed), Frame: present(a.Frame, b.frame), Sweep: all(a.Sweep, b.sweepRow), Drilling: present(a.Drilling, drillReport),
		Subframe: all(a.Subframe, findingOf), Clearance: present(a.Clearance, roomReport), Lift: present(a.Lift, liftPlan), Trays: all(a.Trays, b.trayResult),
		Washers: all(a.Washers, findingOf), PlasticTanks: all(a.PlasticTanks, findingOf), Warnings: all(a.Warnings, warning), Unchecked: a.Unchecked,
	}
	m.Texts = b.Texts
	return m
}

// DecodeVehicleAnswer reads one.
func DecodeVehicleAnswer(m *pb.WholeAnswer) (*whole.Answer, error) {
	var r reader
	if m == nil {
		r.refuse("answer", "missing", "a value")
		return nil, r.err()
	}
	b := openBook{r.sentences("texts", m.Texts)}
	a := &whole.Answer{
		Report:    b.report(&r, m.Weights, m.Bodies),
		Moved:     maybe(&r, "moved", m.Moved, func(r *reader, m *pb.WhatIf) vehicle.Report { return b.report(r, m.Weights, m.Bodies) }),
		AsWeighed: maybe(&r, "as_weighed", m.AsWeighed, readAsWeighed), Frame: maybe(&r, "frame", m.Frame, b.frame), Sweep: many(&r, "sweep", maxThings, m.Sweep, b.sweepRow),
		Drilling: maybe(&r, "drilling", m.Drilling, readDrillReport), Subframe: readFindings(&r, "subframe", m.Subframe),
		Clearance: maybe(&r, "clearance", m.Clearance, readRoomReport), Lift: maybe(&r, "lift", m.Lift, readLiftPlan), Trays: many(&r, "trays", maxThings, m.Trays, b.trayResult),
		Washers: readFindings(&r, "washers", m.Washers), PlasticTanks: readFindings(&r, "plastic_tanks", m.PlasticTanks),
		Warnings: many(&r, "warnings", maxRows, m.Warnings, readWarning), Unchecked: r.sentences("unchecked", m.Unchecked),
	}
	if err := r.err(); err != nil {
		return nil, err
	}
	return a, nil
}

func (b openBook) report(r *reader, weights []*pb.Weights, bodies []*pb.BodyResult) vehicle.Report {
	return vehicle.Report{Weights: many(r, "weights", maxThings, weights, b.weights), Bodies: many(r, "bodies", maxThings, bodies, b.bodyResult)}
}

func (b *book) sweepRow(s *whole.SweepRow) *pb.SweepRow {
	return &pb.SweepRow{XMm: s.XMM, Mounts: all(s.Mounts, b.mountRange), Unheld: b.all(s.Unheld), Governing: all(s.Governing, governingPlace), Warnings: all(s.Warnings, frameWarning)}
}

func (b openBook) sweepRow(r *reader, m *pb.SweepRow) whole.SweepRow {
	return whole.SweepRow{
		XMM: m.XMm, Mounts: many(r, "mounts", maxThings, m.Mounts, b.mountRange), Unheld: b.all(r, "unheld", m.Unheld),
		Governing: many(r, "governing", maxThings, m.Governing, readGoverningPlace), Warnings: many(r, "warnings", maxRows, m.Warnings, readFrameWarning),
	}
}

func warning(w *whole.Warning) *pb.Warning {
	return &pb.Warning{Severity: severities.encode(w.Severity), Kind: w.Kind, At: w.At, Words: w.Words}
}

func readWarning(r *reader, m *pb.Warning) whole.Warning {
	return whole.Warning{Severity: severities.decode(r, "severity", m.Severity), Kind: r.text("kind", m.Kind), At: r.sentence("at", m.At), Words: r.sentence("words", m.Words)}
}
