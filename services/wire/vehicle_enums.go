package wire

import (
	pb "lugwright/proto/gen/lugwright/vehicle/v1alpha1"
	"lugwright/vehicle"
	"lugwright/vehicle/clearance"
	"lugwright/vehicle/drill"
	"lugwright/vehicle/finding"
	"lugwright/vehicle/frame"
	"lugwright/vehicle/hung"
	"lugwright/vehicle/whole"
)

var confidences = enum[pb.Confidence, vehicle.Confidence]{
	{pb.Confidence_CONFIDENCE_WEIGHED, vehicle.Weighed},
	{pb.Confidence_CONFIDENCE_DATA, vehicle.Data},
	{pb.Confidence_CONFIDENCE_GUESS, vehicle.Guess},
}

var mountWays = enum[pb.Way, vehicle.Way]{
	{pb.Way_WAY_FREE, vehicle.Free},
	{pb.Way_WAY_BOTH, vehicle.Both},
	{pb.Way_WAY_PLUS, vehicle.PlusOnly},
	{pb.Way_WAY_MINUS, vehicle.MinusOnly},
}

var standings = enum[pb.Standing, vehicle.Standing]{
	{pb.Standing_STANDING_WITHIN, vehicle.Within},
	{pb.Standing_STANDING_MAY_EXCEED, vehicle.MayExceed},
	{pb.Standing_STANDING_OVER, vehicle.Over},
	{pb.Standing_STANDING_NOT_RATED, vehicle.NotRated},
}

var linerShapes = enum[pb.LinerShape, frame.LinerShape]{
	{pb.LinerShape_LINER_SHAPE_CHANNEL, frame.LinerChannel},
	{pb.LinerShape_LINER_SHAPE_ANGLE_TOP, frame.LinerAngleTop},
	{pb.LinerShape_LINER_SHAPE_ANGLE_BOTTOM, frame.LinerAngleBottom},
}

var frameRails = enum[pb.FrameRail, frame.Rail]{
	{pb.FrameRail_FRAME_RAIL_LEFT, frame.Left},
	{pb.FrameRail_FRAME_RAIL_RIGHT, frame.Right},
	{pb.FrameRail_FRAME_RAIL_BOTH, frame.Both},
}

var findingSenses = enum[pb.FindingSense, finding.Sense]{
	{pb.FindingSense_FINDING_SENSE_AT_LEAST, finding.AtLeast},
	{pb.FindingSense_FINDING_SENSE_AT_MOST, finding.AtMost},
}

var findingVerdicts = enum[pb.FindingVerdict, finding.Verdict]{
	{pb.FindingVerdict_FINDING_VERDICT_PASS, finding.Pass},
	{pb.FindingVerdict_FINDING_VERDICT_FAIL, finding.Fail},
	{pb.FindingVerdict_FINDING_VERDICT_NOT_COVERED, finding.NotCovered},
}

var railSides = enum[pb.RailSide, drill.Side]{
	{pb.RailSide_RAIL_SIDE_LEFT, drill.Left},
	{pb.RailSide_RAIL_SIDE_RIGHT, drill.Right},
}

var zoneKinds = enum[pb.ZoneKind, drill.Kind]{
	{pb.ZoneKind_ZONE_KIND_CROSS_MEMBER, drill.CrossMember},
	{pb.ZoneKind_ZONE_KIND_REINFORCEMENT, drill.Reinforcement},
	{pb.ZoneKind_ZONE_KIND_PROFILE_CHANGE, drill.ProfileChange},
	{pb.ZoneKind_ZONE_KIND_LOAD_POINT, drill.LoadPoint},
	{pb.ZoneKind_ZONE_KIND_KEEP_OUT, drill.KeepOut},
}

var railFaces = enum[pb.RailFace, drill.Face]{
	{pb.RailFace_RAIL_FACE_WEB, drill.Web},
	{pb.RailFace_RAIL_FACE_TOP_FLANGE, drill.TopFlange},
	{pb.RailFace_RAIL_FACE_BOTTOM_FLANGE, drill.BottomFlange},
}

var roomWays = enum[pb.RoomWay, clearance.Way]{
	{pb.RoomWay_ROOM_WAY_UP_DOWN, clearance.UpDown},
	{pb.RoomWay_ROOM_WAY_SIDEWAYS, clearance.Sideways},
	{pb.RoomWay_ROOM_WAY_FREE_LENGTH, clearance.Free},
}

var rodEnds = enum[pb.RodEnds, hung.Ends]{
	{pb.RodEnds_ROD_ENDS_BOTH_HELD, hung.BothHeld},
	{pb.RodEnds_ROD_ENDS_ONE_HELD, hung.OneHeld},
}

var severities = enum[pb.Severity, whole.Severity]{
	{pb.Severity_SEVERITY_FAILS, whole.Fails},
	{pb.Severity_SEVERITY_MIND, whole.Mind},
	{pb.Severity_SEVERITY_UNKNOWN, whole.Unknown},
}
