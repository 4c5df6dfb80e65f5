package wire

import (
	"lugwright/part"
	pb "lugwright/proto/gen/lugwright/part/v1alpha1"
)

func plate(p *part.Plate) *pb.Plate {
	return &pb.Plate{
		Id: p.ID, Name: p.Name, Mark: p.Mark, ThicknessMm: p.ThicknessMM, Material: p.Material,
		Outer: loop(&p.Outer), Holes: all(p.Holes, hole), Cutouts: all(p.Cutouts, loop),
		Etch: all(p.Etch, etch), Bends: all(p.Bends, bend), RolledMm: p.RolledMM, Pose: pose(p.Pose),
	}
}

func readPlate(r *reader, m *pb.Plate) part.Plate {
	return part.Plate{
		ID: r.text("id", m.Id), Name: r.text("name", m.Name), Mark: r.text("mark", m.Mark),
		ThicknessMM: r.number("thickness_mm", m.ThicknessMm),
		Material:    r.text("material", m.Material),
		Outer:       one(r, "outer", m.Outer, readLoop),
		Holes:       many(r, "holes", maxHoles, m.Holes, readHole),
		Cutouts:     many(r, "cutouts", maxThings, m.Cutouts, readLoop),
		Etch:        many(r, "etch", maxThings, m.Etch, readEtch),
		Bends:       many(r, "bends", maxThings, m.Bends, readBend),
		RolledMM:    r.number("rolled_mm", m.RolledMm),
		Pose:        one(r, "pose", m.Pose, readPose),
	}
}

func hole(h *part.Hole) *pb.Hole {
	return &pb.Hole{
		Id: h.ID, CenterMm: point(&h.Center), DiameterMm: h.DiaMM, CutDiameterMm: h.CutMM,
		Purpose: purposes.encode(h.Purpose), Finish: finishes.encode(h.Finish), Thread: h.Thread,
	}
}

func readHole(r *reader, m *pb.Hole) part.Hole {
	return part.Hole{
		ID:      r.text("id", m.Id),
		Center:  one(r, "center_mm", m.CenterMm, readPoint),
		DiaMM:   r.number("diameter_mm", m.DiameterMm),
		CutMM:   r.number("cut_diameter_mm", m.CutDiameterMm),
		Purpose: purposes.decode(r, "purpose", m.Purpose),
		Finish:  finishes.decode(r, "finish", m.Finish),
		Thread:  r.text("thread", m.Thread),
	}
}

func etch(e *part.Etch) *pb.Etch {
	return &pb.Etch{Text: e.Text, AtMm: point(&e.At), HeightMm: e.HeightMM, AngleRad: e.AngleRad}
}

func readEtch(r *reader, m *pb.Etch) part.Etch {
	return part.Etch{
		Text:     r.text("text", m.Text),
		At:       one(r, "at_mm", m.AtMm, readPoint),
		HeightMM: r.number("height_mm", m.HeightMm),
		AngleRad: r.number("angle_rad", m.AngleRad),
	}
}

func bend(b *part.Bend) *pb.Bend {
	return &pb.Bend{AMm: point(&b.A), BMm: point(&b.B), AngleRad: b.AngleRad, RadiusMm: b.RadiusMM, AllowanceMm: b.AllowanceMM}
}

func readBend(r *reader, m *pb.Bend) part.Bend {
	return part.Bend{
		A:           one(r, "a_mm", m.AMm, readPoint),
		B:           one(r, "b_mm", m.BMm, readPoint),
		AngleRad:    r.number("angle_rad", m.AngleRad),
		RadiusMM:    r.number("radius_mm", m.RadiusMm),
		AllowanceMM: r.number("allowance_mm", m.AllowanceMm),
	}
}
