package wire

import (
	"lugwright/part"
	pb "lugwright/proto/gen/lugwright/part/v1alpha1"
)

func member(m *part.Member) *pb.Member {
	return &pb.Member{
		Id: m.ID, Name: m.Name, Mark: m.Mark, Material: m.Material,
		Profile: &pb.Profile{
			Kind: profiles.encode(m.Profile.Kind),
			AMm:  m.Profile.AMM, BMm: m.Profile.BMM, TMm: m.Profile.TMM, RootMm: m.Profile.RootMM,
		},
		LengthMm: m.LengthMM, Holes: all(m.Holes, faceHole), Pose: pose(m.Pose),
	}
}

func readMember(r *reader, m *pb.Member) part.Member {
	return part.Member{
		ID: r.text("id", m.Id), Name: r.text("name", m.Name), Mark: r.text("mark", m.Mark),
		Material: r.text("material", m.Material),
		Profile:  one(r, "profile", m.Profile, readProfile),
		LengthMM: r.number("length_mm", m.LengthMm),
		Holes:    many(r, "holes", maxHoles, m.Holes, readFaceHole),
		Pose:     one(r, "pose", m.Pose, readPose),
	}
}

func readProfile(r *reader, m *pb.Profile) part.Profile {
	return part.Profile{
		Kind: profiles.decode(r, "kind", m.Kind),
		AMM:  r.number("a_mm", m.AMm), BMM: r.number("b_mm", m.BMm), TMM: r.number("t_mm", m.TMm),
		RootMM: r.number("root_mm", m.RootMm),
	}
}

func faceHole(h *part.FaceHole) *pb.FaceHole {
	return &pb.FaceHole{Face: faces.encode(h.Face), Hole: hole(&h.Hole)}
}

func readFaceHole(r *reader, m *pb.FaceHole) part.FaceHole {
	return part.FaceHole{Face: faces.decode(r, "face", m.Face), Hole: one(r, "hole", m.Hole, readHole)}
}
