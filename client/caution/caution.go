// Package caution holds the standing cautions that every output ends with, the same words every time.
// It never decides which job needs which: it knows no job.
package caution

// Caution is one standing caution. Numbers stay the same from release to release.
type Caution struct {
	Number int
	Text   string
}

var all = []Caution{
	{1, "Screening arithmetic, not an approval. A qualified engineer, and the inspecting authority where the vehicle is registered, decide."},
	{2, "The chassis maker's body guide overrules every rule here. If it says do not drill or do not weld, then do not. (US: the frame rule of 49 CFR 393.201; other countries differ.)"},
	{3, "You may become the legal final-stage manufacturer or alterer, with duties for weight and lighting (US); elsewhere certification rules apply."},
	{4, "Only the load cases listed were checked. Crash, roll-over, recovery, trailer loads, the safety of an occupied cabin and fatigue life were not, unless the sheet says so. Seats and belts are outside this tool."},
	{5, "Factors marked \"builder's choice\" are not from a standard."},
	{6, "Masses marked \"guess\" make every result a guess. Weigh before the first drive, full and empty."},
	{7, "Material must be what was assumed. Unmarked bar, unmarked bolt: do not use."},
	{8, "Welds were assumed sound, made by a competent welder, size as drawn. Preheat and procedure are the welder's to set."},
	{9, "Before any welding on the truck: batteries and modules off, earth clamp beside the weld, never a current path through a bearing."},
	{10, "Galvanised or plated parts give off toxic fume when welded: remove the coating, ventilate. Sealed voids must be vented before hot-dip galvanising (from memory)."},
	{11, "Never work under a body held by jacks alone. Crib as it rises; tanks dry; no one under a hung body."},
	{12, "Do not drive with any pin without its keeper, wire or cotter. Re-torque after the first bedding-in. Look for cracks at the marked places."},
	{13, "Check print: measure the control dimension and one hole before cutting metal."},
	{14, "Part marks carry L or R for the hand. A mirrored part is a different part."},
	{15, "Hazardous liquids, gas bottles, fuel and batteries have mounting laws of their own. This sheet does not cover them."},
}

// All gives the fifteen cautions in order.
func All() []Caution { return append([]Caution(nil), all...) }

// Of gives the cautions with these numbers, in this order. An unknown number panics: it is the caller's own mistake.
func Of(numbers ...int) []Caution {
	out := make([]Caution, len(numbers))
	for i, n := range numbers {
		out[i] = all[n-1]
	}
	return out
}

// Checked are the cautions that belong beside results of checks; those under loads of a vehicle rest on masses.
func Checked(ofVehicle bool) []Caution {
	if ofVehicle {
		return Of(1, 2, 4, 5, 6, 7, 8)
	}
	return Of(1, 2, 4, 5, 7, 8)
}

// Vehicle are the cautions that belong beside a vehicle's weights and loads.
func Vehicle() []Caution { return Of(1, 2, 3, 4, 5, 6, 11, 15) }
