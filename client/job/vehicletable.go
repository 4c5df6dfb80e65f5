package job

// This file is the field table of a job's vehicle: what rides where, what it stands on, what shall be drilled and what must clear.

import (
	"lugwright/client/table"
	"lugwright/units"
	"lugwright/vehicle"
	"lugwright/vehicle/clearance"
	"lugwright/vehicle/drill"
	"lugwright/vehicle/frame"
	"lugwright/vehicle/hung"
)

// Sizes beyond these are typing errors.
const (
	mostMass   = 1e5 // kg
	mostPlace  = 1e5 // mm
	mostHeight = 1e4 // mm, up from the ground; nothing that rides lies below it
	mostSpan   = 2000
)

func vehicleRule() *table.Rule {
	return table.Mapping("The vehicle: what rides where, and what carries it. x is rearward from the front axle's centre, y to the left of the centreline, z up from the ground.",
		table.May("wheelbase", table.Quantity(units.Length, 500, 30000, "From the front axle to the rear axle, or to the middle of the rear bogie.")),
		table.May("front_track", table.Quantity(units.Length, 300, 10000, "Between the middles of the front wheels; for side bias and stability.")),
		table.May("rear_track", table.Quantity(units.Length, 300, 10000, "Between the middles of the rear wheels.")),
		table.May("ratings", table.Mapping("The maker's ratings; what is left out is not checked.",
			table.May("gross", mass("Of the whole vehicle.")),
			table.May("front", mass("Of the front axle.")),
			table.May("rear", mass("Of the rear axle or bogie.")),
		)),
		table.May("chassis_cab", table.Mapping("The vehicle without its body, as its axles were weighed: crew in, fuel full.",
			table.Must("front", mass("On the front axle.")),
			table.Must("rear", table.Quantity(units.Mass, 0, mostMass, "On the rear axle or bogie.")),
			table.May("left", table.Quantity(units.Length, -5000, 5000, "Centre of gravity to the left of the centreline; left out, on it.")),
			table.May("height", table.Quantity(units.Length, 1, 10000, "Centre of gravity above the ground; without it there is no stability.")),
			knownFrom(), doubt(),
		)),
		table.May("masses", table.Named("All that rides on the chassis-cab, each under its name.", massRule())),
		table.May("tanks", table.Named("Tanks, each under its name.", tankRule())),
		table.May("states", table.Named("States of tanks and of what rides at times; left out, two: empty, and full with everything aboard.", stateRule())),
		table.May("all_combinations", table.Choice("Take every mix of tanks full or empty and of what rides at times, in place of states.", "yes", "no")),
		table.May("load_sets", table.List("Shipped load sets by id. Without it and without own_loads, off-road, which is builder's choice.", table.Choice("Id of a load set.", setIDs()...))),
		table.May("own_loads", table.Named("Load sets of your own, each under its name.", ownSetRule())),
		table.May("mounts", table.Named("What the body stands on, each under its name.", mountRule())),
		table.May("shares", table.List("How mounts divide what they hold together, where that is known; left out, each is designed for 0 to 100 %.", shareRule())),
		table.May("frame", frameRule()),
		table.May("survey", table.Mapping("What is on the rails, left and right apart: they are not mirror images.",
			table.May("left", surveyRule()), table.May("right", surveyRule()))),
		table.May("new_holes", table.Named("Holes to be drilled in the rails besides those of the job's brackets.", newHoleRule())),
		table.May("guides", table.List("Drilling guides by id: the maker's own overrules them.", table.Choice("Id of a guide.", guideIDs()...))),
		table.May("subframe_flange", table.Quantity(units.Length, 1, mostSpan, "Width of the subframe's flange on the frame's, for guide c.")),
		table.May("twist", table.Mapping("How far one end of the frame is to turn against the other: an angle, or a wheel's lift.",
			table.May("angle", table.Quantity(units.Angle, 1e-4, clearance.MaxTwistRad, "The angle.")),
			table.May("wheel_lift", table.Quantity(units.Length, 1, 5000, "How far a wheel is raised, over the track.")),
			table.May("track", table.Quantity(units.Length, 200, 5000, "Over which the wheel is lifted; left out, the rear track.")),
			table.May("both_axles", yesNo("Diagonally opposite wheels are lifted, so that the axles roll against each other.")),
		)),
		table.May("clearances", table.Named("Places where two things must not touch, or where something must come out.", clearanceRule())),
		table.May("lift", table.Mapping("The body on jacks, tanks dry.",
			table.May("body", table.Text(80, "Which body; left out, the main one.")),
			table.Must("jacks", table.Named("Jacks or lifting points.", table.Mapping("A jack.",
				place("x", "Rearward."), place("y", "To the left."), table.May("rated", mass("Its rating.")),
			))),
		)),
		table.May("trays", table.Named("Trays that hang on rods.", trayRule())),
		table.May("washers", table.Named("Spreader washers.", washerRule())),
		table.May("poly_tanks", table.Named("Plastic tanks on a floor.", polyTankRule())),
		table.May("what_if", table.Named("Masses or tanks moved by so much, to see what it brings; each under the name of what moves.", shiftRule())),
		table.May("as_weighed", table.Mapping("What the scale showed after the build.",
			table.Must("state", table.Text(100, "In which state.")),
			table.Must("front", table.Quantity(units.Mass, 0, mostMass, "Under the front axle.")),
			table.Must("rear", table.Quantity(units.Mass, 0, mostMass, "Under the rear axle.")),
			table.May("give_or_take", table.Quantity(units.Mass, 0, mostMass, "Of each reading: the scale's own.")),
		)),
	)
}

func mass(says string) *table.Rule { return table.Quantity(units.Mass, 0.01, mostMass, says) }

func length(least float64, says string) *table.Rule {
	return table.Quantity(units.Length, least, mostSpan, says)
}

func position(says string) *table.Rule {
	return table.Quantity(units.Length, -mostPlace, mostPlace, says)
}

func place(name, says string) table.Field { return table.Must(name, position(says)) }

// at are the three coordinates of a thing.
func at() []table.Field {
	return []table.Field{place("x", "Rearward."), place("y", "To the left."), table.Must("z", table.Quantity(units.Length, 0, mostHeight, "Up from the ground."))}
}

func yesNo(says string) *table.Rule { return table.Choice(says, "yes", "no") }

func knownFrom() table.Field {
	return table.May("known", table.Choice("Where the mass comes from; left out, a guess. A mass is taken as sure to 1 % weighed, 5 % data, 20 % guess (common practice, no source).",
		string(vehicle.Weighed), string(vehicle.Data), string(vehicle.Guess)))
}

func doubt() table.Field {
	return table.May("give_or_take", table.Quantity(units.Mass, 0, mostMass, "How far the mass may be off, either way; left out, by where it comes from."))
}

func rides() table.Field {
	return table.May("rides_on", table.Text(100, "What carries it: the name of a body that mounts name, or chassis for what no mount carries; left out, the main body."))
}

func massRule() *table.Rule {
	r := table.Mapping("A mass with its centre of gravity.", table.Must("mass", mass("How heavy it is.")))
	r.Add(at()...)
	r.Add(knownFrom(), doubt(), rides(), table.May("optional", yesNo("It is aboard only in the states that name it: people, cargo.")))
	return r
}

func tankRule() *table.Rule {
	r := table.Mapping("A tank; its place is the middle of its inside.",
		table.Must("capacity", table.Quantity(units.Volume, 0.01, 1e5, "What it holds.")),
		table.Must("density", table.Quantity(units.Density, 0.01, 25, "Of what is in it: water 1 kg/L or 8.34 lb/US gal.")),
		table.May("fluid", table.Text(40, "What is in it.")),
		table.May("empty", table.Quantity(units.Mass, 0, mostMass, "Its own mass; left out, it is within another mass.")),
	)
	r.Add(at()...)
	r.Add(table.May("box", table.Mapping("Its inside, where it is a box: part full, its contents lie lower and shift sideways.",
		table.Must("length", length(1, "Fore and aft.")), table.Must("width", length(1, "Across.")), table.Must("height", length(1, "Up.")))),
		knownFrom(), doubt(), rides())
	return r
}

func stateRule() *table.Rule {
	return table.Mapping("A state. Tanks it does not name are empty; what rides at times and is not named is not aboard.",
		table.May("fills", table.Named("How full tanks are.", table.Quantity(units.Ratio, 0, 1, "0 for empty to 1 or 100 % for full."))),
		table.May("aboard", table.List("What rides at times and is aboard.", table.Text(100, "Name of an optional mass."))),
	)
}

func setIDs() []string {
	var out []string
	for _, s := range vehicle.ShippedSets() {
		out = append(out, s.ID)
	}
	return out
}

func level(says string) *table.Rule { return table.Choice(says, "service", "factored") }

func ownSetRule() *table.Rule {
	g := func(says string) *table.Rule { return table.Quantity(units.Acceleration, -100, 100, says) }
	return table.Mapping("A load set: apparent accelerations, gravity included: standing still is z: -1 g, braking throws things forward, x: -0.8 g.",
		table.Must("source", table.Text(200, "The published rule it comes from, or: builder's choice.")),
		table.Must("level", level("Whether the accelerations already hold load factors.")),
		table.May("on_ultimate", table.Quantity(units.Ratio, 1, 100, "Factor on tensile strength that the source asks for; it is not in the accelerations.")),
		table.Must("lines", table.Named("The lines, each under a short name. One with a side acceleration is taken to both sides.", table.Mapping("A line.",
			table.Must("x", g("Rearward.")), table.Must("y", g("To the left.")), table.Must("z", g("Up.")),
			table.May("words", table.Text(200, "What it is, in a few words.")),
			table.May("level", level("Its level, where it is not the set's.")),
			table.May("source", table.Text(200, "Its source, where it is not the set's.")),
		))),
	)
}

// The trade's names of mounts.
const (
	singlePivot = "single pivot"
	clevisPair  = "clevis pair"
	diamond     = "four-point diamond"
	longRail    = "spring-loaded long rail"
	rigid       = "rigid"
)

func mountRule() *table.Rule {
	way := func(says string) *table.Rule {
		return table.Choice(says, string(vehicle.Free), string(vehicle.Both), string(vehicle.PlusOnly), string(vehicle.MinusOnly))
	}
	turn := func(says string) *table.Rule { return table.Choice(says, "free", "held") }
	stiff := func(says string) *table.Rule { return table.Quantity(units.ForcePerLength, 0.1, 1e8, says) }
	play := func(says string) *table.Rule { return table.Quantity(units.Length, 0, 1000, says) }
	end := table.Mapping("An end of a diamond.", place("x", "Rearward."), table.May("y", position("To the left; left out, on the centreline.")), place("z", "Up."))
	return table.Mapping("A mount: by its kind, by what it holds, or a kind with what it holds otherwise.",
		table.May("kind", table.Choice("By trade name. A pair gives two mounts, NAME-left and NAME-right; a diamond also NAME-front and NAME-rear; a long rail NAME-1-left and so on.",
			singlePivot, clevisPair, diamond, longRail, rigid)),
		table.May("x", position("Rearward; of a diamond its middle pair.")),
		table.May("y", position("To the left; left out, on the centreline.")),
		place("z", "Up; of a diamond its middle pair."),
		table.May("half_width", table.Quantity(units.Length, 1, 5000, "Of a pair, a diamond's middle or a long rail: from the centreline to either side.")),
		table.May("front", end), table.May("rear", end),
		table.May("stations", table.List("Of a long rail: where along the vehicle its mounts are.", position("Rearward."))),
		table.May("spring", stiff("Of a long rail: stiffness of the springs that hold down all but the rearmost.")),
		table.May("holds", table.Mapping("Which way it holds the body. plus can only push it that way: a bearer under it is plus in z.",
			table.May("x", way("Fore and aft.")), table.May("y", way("Sideways.")), table.May("z", way("Up and down.")),
			table.May("about_x", turn("Turning about the line of travel.")), table.May("about_y", turn("Turning about a line across.")), table.May("about_z", turn("Turning about an upright.")),
		)),
		table.May("stiffness", table.Mapping("How stiff it is, where more hold than must; left out, all alike.",
			table.May("x", stiff("Fore and aft.")), table.May("y", stiff("Sideways.")), table.May("z", stiff("Up and down.")), table.May("down", stiff("In holding the body down, where that differs.")))),
		table.May("play", table.Mapping("Play on each side before it holds.", table.May("x", play("Fore and aft.")), table.May("y", play("Sideways.")), table.May("z", play("Up and down.")))),
		table.May("body", table.Text(80, "The body that it carries, where there are several.")),
		table.May("on", table.Choice("What of the frame it stands on; left out, the rail of its side, or both between them.", "left rail", "right rail", "both rails")),
		table.May("tube", table.Text(80, "Name of the cross tube that it sits on, under frame.")),
	)
}

func shareRule() *table.Rule {
	return table.Mapping("A direction that mounts share as stated.",
		table.Must("direction", table.Choice("Fore and aft, sideways, or up and down.", "x", "y", "z")),
		table.Must("mounts", table.List("The mounts.", table.Text(100, "Name of a mount."))),
		table.May("parts", table.List("What each takes; together 1. Left out, 0 to 100 % each.", table.Quantity(units.Ratio, 0, 1, "Part of the whole."))),
	)
}

func frameRule() *table.Rule {
	hangers := table.Mapping("Where the springs hang on the rail.", place("ahead", "Hanger ahead of the axle."), place("behind", "Hanger behind it."))
	return table.Mapping("The ladder frame: two like channels.",
		table.Must("rail", table.Mapping("The channel as a tape measures it, outside sizes.",
			table.Must("depth", length(1, "Its height.")), table.Must("flange", length(1, "Width of a flange, over the web's thickness.")),
			table.Must("thickness", table.Quantity(units.Length, 0.5, 100, "Of web and flanges.")),
			table.May("inside_radius", table.Quantity(units.Length, 0, 200, "Of the bends; left out, square corners.")),
			table.May("yield", table.Quantity(units.Stress, 50, 3000, "Yield strength of its steel; left out, stresses stand alone.")),
		)),
		table.Must("web", length(1, "From the centreline to the middle of a web's thickness.")),
		table.May("flanges", table.Choice("Which way the channels open; left out, to each other.", "inward", "outward")),
		place("top", "Upper face of the rails, up from the ground."),
		table.Must("body", table.Mapping("The stretch over which the body's load would lie if it were spread.", place("from", "Its front end."), place("to", "Its rear end."))),
		table.May("cab_back", position("Back of the cab.")),
		table.May("front_hangers", hangers), table.May("rear_hangers", hangers),
		table.May("liners", table.Named("Reinforcements inside both rails.", table.Mapping("A liner.",
			table.Must("shape", table.Choice("What lies inside the rail.", string(frame.LinerChannel), string(frame.LinerAngleTop), string(frame.LinerAngleBottom))),
			table.Must("depth", length(1, "Along the web.")), table.Must("flange", length(1, "Width of its flange.")),
			table.Must("thickness", table.Quantity(units.Length, 0.5, 100, "Its thickness.")),
			table.May("inside_radius", table.Quantity(units.Length, 0, 200, "Of its bends; left out, square.")),
			place("from", "Its front end."), place("to", "Its rear end."),
		))),
		table.May("cross_members", table.Named("Cross members that hold the rails upright.", table.Mapping("A cross member.", place("x", "Its station.")))),
		table.May("cross_tubes", table.Named("Round tubes across the frame, held at both rails.", table.Mapping("A cross tube.",
			place("x", "Its axis, rearward."), place("z", "Its axis, up."), table.May("held_at", length(1, "How far from the centreline it is held, to both sides; left out, at the webs.")),
			table.Must("diameter", length(1, "Outside.")), table.Must("wall", table.Quantity(units.Length, 0.5, 100, "Its thickness.")),
		))),
		table.May("own_mass", table.Named("Mass that the rails carry besides the body, spread evenly: the chassis-cab's own, or parts of it.", table.Mapping("A spread mass.",
			table.Must("mass", mass("Of both rails together.")), place("from", "Its front end."), place("to", "Its rear end."), place("centre", "Its centre of gravity."),
		))),
	)
}

func belowTop(says string) *table.Rule { return table.Quantity(units.Length, 0, mostSpan, says) }

func surveyRule() *table.Rule {
	return table.Mapping("One rail as it was measured. Heights are measured down from the rail's top.",
		place("from", "Where the survey begins."), place("to", "Where it ends."),
		table.May("holes", table.Named("Holes that are there already, in the web.", table.Mapping("A hole.",
			place("x", "Its station."), table.Must("below_top", belowTop("Its middle, down from the rail's top.")), table.Must("diameter", length(0.5, "Its diameter."))))),
		table.May("zones", table.Named("Stretches that something takes.", table.Mapping("A zone.",
			table.Must("kind", table.Choice("What it is.", zoneKinds()...)),
			place("from", "Its front end."), place("to", "Its rear end."),
			table.May("upper", belowTop("Its upper edge, down from the rail's top; left out with lower, it takes the whole depth.")),
			table.May("lower", belowTop("Its lower edge, down from the rail's top.")),
		))),
	)
}

func zoneKinds() []string {
	var out []string
	for _, k := range drill.Kinds() {
		out = append(out, string(k))
	}
	return out
}

func guideIDs() []string {
	var out []string
	for _, g := range drill.Guides() {
		out = append(out, g.ID)
	}
	return out
}

func newHoleRule() *table.Rule {
	return table.Mapping("A hole to be drilled.",
		table.Must("rail", table.Choice("Which rail.", string(drill.Left), string(drill.Right))),
		table.May("face", table.Choice("Where in the rail; left out, the web.", string(drill.Web), string(drill.TopFlange), string(drill.BottomFlange))),
		place("x", "Its station."),
		table.May("below_top", belowTop("Its middle, down from the rail's top.")),
		table.Must("diameter", length(0.5, "Its diameter.")),
		table.May("bolt", table.Thread("Size of its bolt.")),
	)
}

func clearanceRule() *table.Rule {
	return table.Mapping("A place, with the room that was measured.",
		table.Must("way", table.Choice("How twist takes room: up and down by half-width, sideways by height, or not at all.", string(clearance.UpDown), string(clearance.Sideways), string(clearance.Free))),
		table.May("arm", table.Quantity(units.Length, 0, mostPlace, "Half-width from the roll axis, or height above it; not of a free length.")),
		table.May("extra", table.Quantity(units.Length, 0, mostPlace, "Needed besides: spring travel, chains, a pin's length with the hand that pulls it.")),
		table.May("room", position("Room that was measured; left out, it is listed as not known.")),
	)
}

func trayRule() *table.Rule {
	r := table.Mapping("A tray on rods. Its own mass and place, and what of the vehicle's masses and tanks it carries besides.",
		table.Must("mass", mass("Its own, with all that is not named under carries.")))
	r.Add(at()...)
	r.Add(
		table.May("carries", table.List("Masses and tanks of the vehicle that ride on it.", table.Text(100, "Name of a mass or a tank."))),
		place("beam", "Underside of the beams that it hangs on, up from the ground."),
		table.Must("free_length", length(1, "Of a rod, from there to the tray.")),
		table.Must("ends", table.Choice("How the rods are held against turning: nuts on both faces of what is stiff, above and below, or at one end.", string(hung.BothHeld), string(hung.OneHeld))),
		table.May("rod", table.Thread("Size of the rods, for what the side force does at their threads' roots.")),
		table.May("stops", position("Level of stops that take the side force, up from the ground; left out, there are none.")),
		table.Must("rods", table.Named("The rods, in plan.", table.Mapping("A rod.", place("x", "Rearward."), place("y", "To the left.")))),
	)
	return r
}

func washerRule() *table.Rule {
	return table.Mapping("A spreader washer under sheet or on a thin wall.",
		table.Must("rod", table.Thread("Size of the rod or bolt.")),
		table.Must("side", length(1, "Its side, or diameter.")), table.Must("thickness", table.Quantity(units.Length, 0.5, 100, "Its thickness.")),
		table.May("thin_wall", yesNo("It sits on a tube's thin wall.")),
		table.May("crush_sleeve", yesNo("There is a sleeve inside the tube.")),
		table.May("both_sides", yesNo("There is one on each side.")),
	)
}

func polyTankRule() *table.Rule {
	return table.Mapping("A plastic tank on a floor.",
		table.Must("height", table.Quantity(units.Length, 1, 5000, "Its height.")),
		table.Must("unsupported", table.Quantity(units.Area, 0, 1e8, "Largest area of its floor that nothing carries.")),
		table.Must("held_down", yesNo("Stops or straps hold it down.")),
	)
}

func shiftRule() *table.Rule {
	return table.Mapping("By how much it moves; what is left out stays.",
		table.May("x", position("Rearward.")), table.May("y", position("To the left.")), table.May("z", position("Up.")))
}
