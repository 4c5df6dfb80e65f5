package wire

import (
	"fmt"
	"strings"

	"lugwright/geometry"
	"lugwright/part"
	geometrypb "lugwright/proto/gen/lugwright/geometry/v1alpha1"
	partpb "lugwright/proto/gen/lugwright/part/v1alpha1"
	strengthpb "lugwright/proto/gen/lugwright/strength/v1alpha1"
	"lugwright/strength"
)

// enum pairs the words of a domain type with their enum values.
type enum[P ~int32, D comparable] []word[P, D]

type word[P ~int32, D comparable] struct {
	wire   P
	domain D
}

// encode gives the enum value of a word; a word that is in no table becomes the unspecified value, which decoding refuses.
func (e enum[P, D]) encode(d D) P {
	for _, w := range e {
		if w.domain == d {
			return w.wire
		}
	}
	return 0
}

// decode reads an enum value that must be set.
func (e enum[P, D]) decode(r *reader, name string, p P) (d D) {
	for _, w := range e {
		if w.wire == p {
			return w.domain
		}
	}
	found := "not set"
	if p != 0 {
		found = fmt.Sprintf("unknown value %d", p)
	}
	r.refuse(name, found, "one of "+e.words())
	return d
}

// decodeOptional reads an enum value that may be left unspecified.
func (e enum[P, D]) decodeOptional(r *reader, name string, p P) (d D) {
	if p == 0 {
		return d
	}
	return e.decode(r, name, p)
}

func (e enum[P, D]) words() string {
	list := make([]string, len(e))
	for i, w := range e {
		list[i] = fmt.Sprint(w.domain)
	}
	return strings.Join(list, ", ")
}

func encodeEach[P ~int32, D comparable](e enum[P, D], in []D) []P {
	if len(in) == 0 {
		return nil
	}
	out := make([]P, len(in))
	for i, d := range in {
		out[i] = e.encode(d)
	}
	return out
}

func decodeEach[P ~int32, D comparable](r *reader, name string, most int, e enum[P, D], in []P) []D {
	if len(in) == 0 || !r.fits(name, len(in), most) {
		return nil
	}
	out := make([]D, len(in))
	for i, p := range in {
		out[i] = e.decode(r, name, p)
	}
	return out
}

var hands = enum[partpb.Hand, part.Hand]{
	{partpb.Hand_HAND_LEFT, part.LeftHand},
	{partpb.Hand_HAND_RIGHT, part.RightHand},
}

var purposes = enum[partpb.HolePurpose, part.Purpose]{
	{partpb.HolePurpose_HOLE_PURPOSE_PIN, part.ForPin},
	{partpb.HolePurpose_HOLE_PURPOSE_BOLT, part.ForBolt},
	{partpb.HolePurpose_HOLE_PURPOSE_ROD, part.ForRod},
	{partpb.HolePurpose_HOLE_PURPOSE_WELD_ACCESS, part.ForWeld},
	{partpb.HolePurpose_HOLE_PURPOSE_DRAIN, part.ForDrain},
	{partpb.HolePurpose_HOLE_PURPOSE_LIGHTENING, part.ForLightness},
}

var finishes = enum[partpb.HoleFinish, part.Finish]{
	{partpb.HoleFinish_HOLE_FINISH_AS_CUT, part.AsCut},
	{partpb.HoleFinish_HOLE_FINISH_DRILL, part.Drilled},
	{partpb.HoleFinish_HOLE_FINISH_REAM, part.Reamed},
	{partpb.HoleFinish_HOLE_FINISH_TAP, part.Tapped},
}

var profiles = enum[partpb.ProfileKind, part.ProfileKind]{
	{partpb.ProfileKind_PROFILE_KIND_ANGLE, part.Angle},
	{partpb.ProfileKind_PROFILE_KIND_ROUND_TUBE, part.RoundTube},
	{partpb.ProfileKind_PROFILE_KIND_RECT_TUBE, part.RectTube},
	{partpb.ProfileKind_PROFILE_KIND_ROUND_BAR, part.RoundBar},
	{partpb.ProfileKind_PROFILE_KIND_FLAT_BAR, part.FlatBar},
}

var faces = enum[partpb.MemberFace, part.Face]{
	{partpb.MemberFace_MEMBER_FACE_A, part.LegA},
	{partpb.MemberFace_MEMBER_FACE_B, part.LegB},
}

var pinEnds = enum[partpb.PinEndKind, part.EndKind]{
	{partpb.PinEndKind_PIN_END_KIND_HEAD, part.EndHead},
	{partpb.PinEndKind_PIN_END_KIND_NUT, part.EndNut},
	{partpb.PinEndKind_PIN_END_KIND_KEEPER, part.EndKeeper},
	{partpb.PinEndKind_PIN_END_KIND_RETAINING_BOLT, part.EndRetainer},
}

var welds = enum[partpb.WeldKind, part.WeldKind]{
	{partpb.WeldKind_WELD_KIND_FILLET, part.Fillet},
	{partpb.WeldKind_WELD_KIND_PARTIAL_PENETRATION, part.PJP},
	{partpb.WeldKind_WELD_KIND_COMPLETE_PENETRATION, part.CJP},
	{partpb.WeldKind_WELD_KIND_PLUG, part.Plug},
}

var lagRules = enum[partpb.LagRule, part.LagRule]{
	{partpb.LagRule_LAG_RULE_CANTILEVER, part.LagCantilever},
}

var supports = enum[partpb.SupportKind, part.SupportKind]{
	{partpb.SupportKind_SUPPORT_KIND_RAIL_WEB, part.RailWeb},
	{partpb.SupportKind_SUPPORT_KIND_RAIL_FLANGE, part.RailFlange},
	{partpb.SupportKind_SUPPORT_KIND_TUBE_WALL, part.TubeWall},
	{partpb.SupportKind_SUPPORT_KIND_CROSS_MEMBER, part.CrossMember},
	{partpb.SupportKind_SUPPORT_KIND_BODY_FRAME, part.BodyFrame},
}

var couples = enum[partpb.CouplePath, part.CouplePath]{
	{partpb.CouplePath_COUPLE_PATH_CROSS_MEMBER, part.CoupleByCrossMember},
	{partpb.CouplePath_COUPLE_PATH_WALL, part.CoupleByWall},
	{partpb.CouplePath_COUPLE_PATH_TURNING, part.CoupleByTurning},
}

var components = enum[partpb.LoadComponent, part.Component]{
	{partpb.LoadComponent_LOAD_COMPONENT_FX_PLUS, part.FxPlus},
	{partpb.LoadComponent_LOAD_COMPONENT_FX_MINUS, part.FxMinus},
	{partpb.LoadComponent_LOAD_COMPONENT_FY_PLUS, part.FyPlus},
	{partpb.LoadComponent_LOAD_COMPONENT_FY_MINUS, part.FyMinus},
	{partpb.LoadComponent_LOAD_COMPONENT_FZ_PLUS, part.FzPlus},
	{partpb.LoadComponent_LOAD_COMPONENT_FZ_MINUS, part.FzMinus},
	{partpb.LoadComponent_LOAD_COMPONENT_MX_PLUS, part.MxPlus},
	{partpb.LoadComponent_LOAD_COMPONENT_MX_MINUS, part.MxMinus},
	{partpb.LoadComponent_LOAD_COMPONENT_MY_PLUS, part.MyPlus},
	{partpb.LoadComponent_LOAD_COMPONENT_MY_MINUS, part.MyMinus},
	{partpb.LoadComponent_LOAD_COMPONENT_MZ_PLUS, part.MzPlus},
	{partpb.LoadComponent_LOAD_COMPONENT_MZ_MINUS, part.MzMinus},
}

var shareRules = enum[partpb.ShareRule, part.ShareRule]{
	{partpb.ShareRule_SHARE_RULE_EQUAL, part.Equal},
	{partpb.ShareRule_SHARE_RULE_BETWEEN, part.Between},
	{partpb.ShareRule_SHARE_RULE_PIN_SPAN, part.ByPinSpan},
	{partpb.ShareRule_SHARE_RULE_BEAM_SPAN, part.ByBeamSpan},
}

var levels = enum[partpb.LoadLevel, part.Level]{
	{partpb.LoadLevel_LOAD_LEVEL_SERVICE, part.Service},
	{partpb.LoadLevel_LOAD_LEVEL_FACTORED, part.Factored},
}

var paramUnits = enum[geometrypb.ParameterUnit, geometry.Unit]{
	{geometrypb.ParameterUnit_PARAMETER_UNIT_MM, geometry.MM},
	{geometrypb.ParameterUnit_PARAMETER_UNIT_RAD, geometry.Rad},
	{geometrypb.ParameterUnit_PARAMETER_UNIT_COUNT, geometry.Count},
	{geometrypb.ParameterUnit_PARAMETER_UNIT_WORD, geometry.Word},
	{geometrypb.ParameterUnit_PARAMETER_UNIT_SIZE, geometry.Size},
	{geometrypb.ParameterUnit_PARAMETER_UNIT_RATIO, geometry.Ratio},
}

var formats = enum[geometrypb.FileFormat, Format]{
	{geometrypb.FileFormat_FILE_FORMAT_DXF_R2000, DXFR2000},
	{geometrypb.FileFormat_FILE_FORMAT_DXF_R2000_INCH, DXFR2000Inch},
	{geometrypb.FileFormat_FILE_FORMAT_DXF_R12, DXFR12},
	{geometrypb.FileFormat_FILE_FORMAT_DXF_R12_INCH, DXFR12Inch},
	{geometrypb.FileFormat_FILE_FORMAT_OPENSCAD, OpenSCAD},
	{geometrypb.FileFormat_FILE_FORMAT_SVG_PLATE, SVGPlate},
	{geometrypb.FileFormat_FILE_FORMAT_SVG_ASSEMBLY, SVGAssembly},
	{geometrypb.FileFormat_FILE_FORMAT_DXF_R2010, DXFR2010},
	{geometrypb.FileFormat_FILE_FORMAT_DXF_R2010_INCH, DXFR2010Inch},
	{geometrypb.FileFormat_FILE_FORMAT_3MF, ThreeMF},
}

var methods = enum[strengthpb.Method, strength.Method]{
	{strengthpb.Method_METHOD_ASD, strength.ASD},
	{strengthpb.Method_METHOD_LRFD, strength.LRFD},
	{strengthpb.Method_METHOD_PARTIAL_FACTORS, strength.PartialFactors},
	{strengthpb.Method_METHOD_ALLOWABLE, strength.Allowable},
}

var verdicts = enum[strengthpb.Verdict, strength.Verdict]{
	{strengthpb.Verdict_VERDICT_PASS, strength.Pass},
	{strengthpb.Verdict_VERDICT_FAIL, strength.Fail},
	{strengthpb.Verdict_VERDICT_OUTSIDE_THE_RULE, strength.Outside},
	{strengthpb.Verdict_VERDICT_DOES_NOT_APPLY, strength.NotApplied},
}

var lineKinds = enum[strengthpb.LineKind, strength.LineKind]{
	{strengthpb.LineKind_LINE_KIND_GIVEN, strength.GivenLine},
	{strengthpb.LineKind_LINE_KIND_NEED, strength.NeedLine},
	{strengthpb.LineKind_LINE_KIND_FORMULA, strength.FormulaLine},
}
