// Package tray is a folded sheet tray hung on rods, for a tank or a machine under a deck. It never knows strength.
//
// Axes: the origin is in the middle of the bottom, in its middle plane; x along the length, y across, z up the rods to the beams above.
// The sheet lies flat in that plane as it is cut, its four sides still to be folded up.
//
//	kind.go    the kind: sentence, parameters, order of work
//	design.go  sizes, and what does not fit
//	sheet.go   flat pattern, folds, holes
//	hang.go    rods, spreader washers, supports, load paths
package tray

import (
	"slices"

	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/part"
)

// Kind describes the tray.
func Kind() geometry.Kind {
	return geometry.Kind{
		Name:     "tray",
		Sentence: "a folded sheet tray hung on threaded rods under beams, with spreader washers under the sheet",
		Params:   params(),
		Build:    build,
	}
}

func build(v geometry.Values) (*part.Bracket, error) {
	d := read(v)
	if err := d.check(); err != nil {
		return nil, err
	}
	b := &part.Bracket{Plates: []part.Plate{d.sheet()}}
	for i := range d.rods {
		b.Plates = append(b.Plates, d.washer(i))
	}
	d.hang(b)
	d.remarks(b)
	fab.MarkAll(b, v.Mark)
	return b, nil
}

func (d *design) remarks(b *part.Bracket) {
	for i, f := range d.folds() {
		b.Notes = append(b.Notes, d.fold.Note(i+1, f.name))
	}
	b.Notes = append(b.Notes, "close the corners by welding after folding, and leave the drain open",
		"a nut over and under the sheet at each rod, the spreader washer under it, a crush sleeve in each hollow beam, lock nuts")
	if d.v.Word("isolate") == "yes" {
		b.Notes = append(b.Notes, "isolate aluminium from steel: primer on both faces, a layer of plastic with closed edges, sleeves on the rods")
	}
	b.Unchecked = append(b.Unchecked,
		"the tray's sides under the push of what stands in it, and the straps or capture angles that hold it down",
		"the rods' push on the bare sheet where the load lifts the tray",
		"the beams above: walls under the nuts, crush sleeves, bending",
		"fit of the folds: springback and the shop's own bend deduction overrule the flat pattern",
	)
}

func params() []geometry.Param {
	return slices.Concat([]geometry.Param{
		fab.Length("length", 80, 3000, 700, "outside length of the folded tray"),
		fab.Length("width", 80, 2000, 600, "outside width"),
		fab.Length("side_height", 10, 400, 60, "outside height of the sides"),
		fab.Length("thickness", 1, 12, 4, "thickness of the sheet"),
		fab.Named("material", "S355", "grade of the sheet"),
	}, fab.FoldParams(""), []geometry.Param{
		fab.Length("corner_relief", 0, 50, 6, "how far the corner notch reaches past the folds into the bottom"),
		fab.Count("rods_per_side", 2, 6, 2, "rods along each long side"),
		fab.Length("rod_spacing", 30, 3000, 560, "distance between the outermost rods of a side, along the length"),
		fab.Length("rod_gauge", 30, 2000, 480, "distance between the two lines of rods, across"),
		fab.Thread("rod_size", "M16", "size of the rods"),
		fab.Named("rod_grade", "8.8", "grade of the rods"),
		fab.Length("rod_free", 5, 2000, 140, "free length of a rod, from the sheet to the beam"),
		fab.Choice("rod_ends", "ends of the rods: nuts on both faces of stiff steel hold them upright; with both, the sheet takes their moment at its washers", "one held", "both held"),
		fab.Length("engagement", 0, 200, 0, "thread engaged in a coupling nut, 0 where nuts on plates hold the rods"),
		fab.Length("washer_side", 10, 300, 60, "side of the square spreader washers"),
		fab.Length("washer_thickness", 2, 30, 6, "their thickness"),
		fab.Named("washer_material", "S355", "their grade"),
		fab.Length("drain", 0, 200, 20, "diameter of the drain hole in the middle, 0 for none"),
		fab.Length("load_height", 0, 2000, 200, "mass centre over the bottom"),
		fab.Choice("stops", "whether stops hold the side and fore-aft force", "no", "yes"),
		fab.Length("stop_height", 0, 2000, 200, "height at which stops hold, over the bottom"),
		fab.Choice("isolate", "aluminium that touches steel", "no", "yes"),
		fab.Length("beam_thickness", 1, 30, 4, "wall of the beams above"),
		fab.Named("beam_material", "S355", "their grade"),
	})
}
