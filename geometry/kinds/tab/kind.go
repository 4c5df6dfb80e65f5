// Package tab is a small plate that stands up from a face and takes one or two bolts through it: for a pump, a box, a hose rack. It stands by its edge, or
// it is bent and lies on the face with a foot that is welded or bolted down. It never knows strength.
//
// Axes: the origin is on the face in the upright's middle plane; x along the tab, y along the bolts, z up. What is bolted on lies on the face at y = t/2;
// a bent tab's foot runs the other way, to negative y.
//
//	kind.go   the kind: sentence, parameters, order of work
//	design.go sizes, what does not fit
//	parts.go  plate, upright's bolts, supports, load path
//	foot.go   what the upright stands by: its edge, or a bent foot
package tab

import (
	"slices"

	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/part"
)

// Kind describes the tab.
func Kind() geometry.Kind {
	return geometry.Kind{
		Name:     "tab",
		Sentence: "an equipment tab: a plate that stands on a tube, rail or frame by its edge or by a bent foot, welded or bolted, with one or two bolts through it",
		Params:   params(),
		Build:    build,
	}
}

func build(v geometry.Values) (*part.Bracket, error) {
	d := read(v)
	if err := d.check(); err != nil {
		return nil, err
	}
	b := &part.Bracket{Plates: []part.Plate{d.plate()}}
	d.addBolts(b)
	d.addFoot(b)
	d.addPath(b)
	b.Unchecked = append(b.Unchecked, "what is bolted to the tab: its own wall is taken as it is stated")
	fab.MarkAll(b, v.Mark)
	return b, nil
}

func params() []geometry.Param {
	return slices.Concat(uprightParams(), fab.BoltParams("M10", "8.8"), footParams(), fab.FoldParams("bent foot: "), equipmentParams())
}

func uprightParams() []geometry.Param {
	return []geometry.Param{
		fab.Choice("foot", "how the tab is held: welded by its edge, or bent with a foot on the face", byEdge, bentWelded, bentBolted),
		fab.Length("width", 15, 500, 60, "width of the tab along the face"),
		fab.Length("height", 15, 400, 60, "height of the tab over the face"),
		fab.Length("thickness", 3, 40, 6, "thickness"),
		fab.Length("corner_radius", 0, 100, 12, "radius of the two free corners, 0 for sharp"),
		fab.Named("material", "S355", "grade of the tab"),
		fab.Count("bolts", 1, 2, 1, "bolts, side by side along the face"),
		fab.Length("bolt_pitch", 10, 400, 30, "distance between two bolts"),
		fab.Length("bolt_height", 8, 390, 40, "bolts over the face"),
		fab.Length("weld", 3, 20, 5, "leg of the fillets: on both faces of an edge, full width, or round three sides of a bent foot"),
		fab.Named("electrode", "E70", "filler grade"),
	}
}

func footParams() []geometry.Param {
	return []geometry.Param{
		fab.Length("foot_length", 12, 400, 52, "bent foot: from the upright's outer face to its tip"),
		fab.Count("foot_bolts", 2, 6, 2, "bolted foot: bolts in its one row, along the face"),
		fab.Length("foot_bolt_pitch", 10, 400, 30, "bolted foot: distance between its bolts"),
		fab.Length("foot_bolt_back", 10, 390, 34, "bolted foot: its bolts from the upright's outer face"),
		fab.Thread("foot_bolt_size", "M10", "bolted foot: size of its bolts; their grade and fit are those of the others"),
	}
}

func equipmentParams() []geometry.Param {
	return []geometry.Param{
		fab.Length("equipment_thickness", 1, 60, 5, "what is bolted on: its thickness at the bolts"),
		fab.Named("equipment_material", "S235", "its grade"),
		fab.Choice("support_kind", "what the tab stands on", string(part.BodyFrame), string(part.RailFlange), string(part.CrossMember), string(part.TubeWall)),
		fab.Length("support_thickness", 1.5, 60, 5, "its thickness"),
		fab.Length("support_clear", 0, 1500, 0, "bolted foot: clear width, square to the tab, of the wall under it between its stiff edges, 0 where it is not known"),
		fab.Named("support_material", "S355", "its grade"),
	}
}
