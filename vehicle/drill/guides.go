package drill

import "slices"

const in = 25.4

// guides are the shipped rules. Numbers are in the source's own unit.
var guides = []Guide{
	{
		ID: "a", Name: "guide A", Source: "truck maker's layout book, 2022, quoted in an owners' forum (2nd hand)", SecondHand: true,
		WebOnly: true, ExistingFirst: true, LargestMM: 0.75 * in, FlangeMM: 1.5 * in, EdgeMM: 1.0 * in, EdgeSmallMM: 0.625 * in, EdgeTimes: 1.5,
		InLine: 3, ReinforcementMM: 0.5 * in,
		Remarks: []string{
			"fasteners and flat washers of high strength: grade 8, or 10.9 with nuts of class 10",
			"holes in frame cross members are not recommended",
			"it asks to avoid close vertical succession of fasteners, three at most; holes count as in one vertical line where their widths overlap (our reading)",
		},
	},
	{
		ID: "b", Name: "guide B", Source: "mounting guidelines of an off-road implement carrier, North America, August 2005, 10.7",
		WebOnly: true, LargestMM: 15, FlangeMM: 62, FlangeUnclear: true, PitchMM: 50, OffLoads: true, OffChanges: true,
		Remarks: []string{
			"deburr and ream after drilling; drillings of the maker in the flanges are not to be changed",
			"the distance of 62 mm is called \"a\" in a figure that was not seen: it is measured here from the hole's edge to the inside of the flange, which asks most",
			"it prints intervals \"less than\" 50 mm, plainly meant as not less; taken from centre to centre",
		},
	},
	{
		ID: "c", Name: "guide C", Source: "body mounting section of a medium truck's body builder manual",
		CrossMemberMM: 200, CornerMM: 50, CornerUnclear: true, ReinforcementMM: 200, Brackets: true,
		Remarks: []string{
			"it speaks of mounting brackets on the side rail, not of holes; its own drilling rules were not seen",
			"\"corner of the side rail\" may be the bend between web and flange or where the rail's height changes: both count",
			"subframe flange 70 to 100 % of the frame's flange in width; its opening faces inward; no bolts or welds from flange to flange",
		},
	},
	{
		ID: "au", Name: "Australian code of practice", Source: "Australian heavy-vehicle code of practice, section H, by a 2014 engineer's summary (2nd hand)", SecondHand: true,
		ExistingFirst: true, OverBoltMM: 1.0,
		Remarks: []string{
			"drilled, never flame cut, and not elongated",
			"the summary as seen breaks off before its rule on pitch",
		},
	},
	{
		ID: "us", Name: "US rule on frames", Source: "49 CFR 393.201(e)",
		WebOnly: true,
		Remarks: []string{"no holes in top or bottom rail flanges, except as the vehicle's maker specifies; flanges between the axles not bent, cut or notched"},
	},
}

// Guides lists the shipped guides, in a fixed order. They are copies.
func Guides() []Guide {
	out := slices.Clone(guides)
	for i := range out {
		out[i].Remarks = slices.Clone(out[i].Remarks)
	}
	return out
}

// GuideByID finds a shipped guide.
func GuideByID(id string) (Guide, bool) {
	for _, g := range Guides() {
		if g.ID == id {
			return g, true
		}
	}
	return Guide{}, false
}
