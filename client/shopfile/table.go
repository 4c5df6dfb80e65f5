package shopfile

import (
	"lugwright/client/table"
	"lugwright/geometry/shop"
	"lugwright/part"
	"lugwright/units"
)

// mostMM bounds every length of a shop file.
const mostMM = 1000

// rule is the rule of a whole shop file.
func rule() *table.Rule {
	return table.Mapping("A cutting shop: what it can make and how it wants its files.",
		table.Must("shop", table.Text(60, "Name of the shop; printed on the cut list.")),
		table.May("words", table.Text(600, "What the numbers are taken from.")),
		table.Must("process", table.Choice("How plates are cut.", words(shop.Processes())...)),
		table.Must("files", filesRule()),
		table.Must("marks", table.Mapping("Part marks.",
			table.Must("style", table.Choice("How they are drawn.", words(shop.MarkStyles())...)),
			table.May("height", length(1, 50, "Height of the letters; smaller where a plate has no room.")),
		)),
		table.Must("smallest_hole", leastRule("Least diameter of a hole and least width of an opening that the shop cuts.")),
		table.Must("smallest_web", leastRule("Least steel that the shop leaves between two cuts.")),
		table.Must("holes", table.List("How holes are made: the first rule whose conditions all hold is taken; the last has none.", holeRule())),
	)
}

func filesRule() *table.Rule {
	layer := table.Word(31, "[A-Z0-9$_-]+", "1 to 31 of A-Z 0-9 $ _ -", "Name of the layer.")
	return table.Mapping("Cut files.",
		table.Must("versions", table.List("Versions of the drawing file.", table.Choice("A version.", words(shop.Versions())...))),
		table.Must("units", table.Choice("Unit of the numbers in the files.", "mm", "inch")),
		table.Must("grouping", table.Choice("What goes into one file.", words(shop.Groupings())...)),
		table.May("gap", length(1, mostMM, "Between the pieces of one file; left out, 10 mm.")),
		table.Must("naming", table.Text(120, "File names: words and {mark} {thickness} {material} {quantity} {units} {job} {revision}.")),
		table.Must("layers", table.Mapping("Names of the layers; what has none is left out of the files.",
			table.Must("cut", layer), table.May("etch", layer), table.May("bend", layer), table.May("centre", layer))),
	)
}

func leastRule(says string) *table.Rule {
	return table.Mapping(says,
		table.May("of_thickness", ratio("So many times the thickness.")),
		table.May("and", length(0, mostMM, "And no less than this.")),
	)
}

func holeRule() *table.Rule {
	return table.Mapping("A rule for some of the holes.",
		table.May("for", table.List("What the hole is for; left out, anything.", table.Choice("A purpose.", words(part.Purposes())...))),
		table.May("under_thickness", ratio("Finished diameter under so many times the thickness.")),
		table.May("under", length(0, mostMM, "Finished diameter under this.")),
		table.May("thicker_than", length(0, mostMM, "Plate thicker than this.")),
		table.Must("make", table.Choice("How the hole comes about.", words(shop.Makes())...)),
		table.May("less", length(0, mostMM, "Cut undersize: how much of the diameter is left to take off.")),
		table.May("pilot", length(0, mostMM, "Pilot: its diameter.")),
		table.May("then", table.Choice("How the hole reaches its size.", string(part.Drilled), string(part.Reamed))),
	)
}

func length(least, most float64, says string) *table.Rule {
	return table.Quantity(units.Length, least, most, says)
}

func ratio(says string) *table.Rule { return table.Quantity(units.Ratio, 0, 10, says) }

func words[T ~string](list []T) []string {
	out := make([]string, len(list))
	for i, w := range list {
		out[i] = string(w)
	}
	return out
}
