// Package keeperplate is a plate that keeps a pin in: its edge sits in a slot milled across the pin, or it lies over the pin's end; two bolts hold it to the
// outer face of an ear. It never knows strength.
//
// Axes: the origin is on the ear's outer face, in the pin's axis; y along the pin and out of the ear, x along the two bolts, z up. In a slot the plate is
// below the pin.
//
//	kind.go   the kind: sentence, parameters, order of work
//	design.go sizes, and what does not fit
//	path.go   plate, bolts, faces, load path, sections
package keeperplate

import (
	"fmt"

	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/part"
)

// Kind describes the keeper plate.
func Kind() geometry.Kind {
	return geometry.Kind{
		Name:     "keeper-plate",
		Sentence: "a plate in a slot of a pin or over its end, held to the ear by two bolts, that keeps the pin from moving along its axis",
		Params:   params(),
		Build:    build,
	}
}

func build(v geometry.Values) (*part.Bracket, error) {
	d := read(v)
	if err := d.check(); err != nil {
		return nil, err
	}
	b := &part.Bracket{}
	d.addPlate(b)
	d.addPaths(b)
	d.addSweeps(b)
	if d.slot > 0 {
		b.Notes = append(b.Notes, fmt.Sprintf("mill the pin's slot %.4g mm deep and wider than %.4g mm, so that the plate slides in and the pin's own load does not bear on it", d.slot, d.t))
		b.Unchecked = append(b.Unchecked, "the pin turning: its slot's flat presses on one end of the plate's edge, which pries at the bolts; no path is given for it")
	}
	b.Notes = append(b.Notes, "lock both bolts: lock wire, tab washers or locking nuts")
	b.Unchecked = append(b.Unchecked,
		"the pin at the plate: what the slot leaves of it, and its end",
		"the ear beyond bearing at the bolts, and its thread where the bolts are tapped into it",
		"force square to the pin: it is the pin's own, and the plate has no path for it",
	)
	fab.MarkAll(b, v.Mark)
	return b, nil
}

func params() []geometry.Param {
	return append([]geometry.Param{
		fab.Choice("form", "in a slot across the pin, or over the pin's end", "slot", "over"),
		fab.Length("pin_diameter", 8, 250, 30, "diameter of the pin"),
		fab.Length("slot_depth", 1, 80, 5, "how deep the plate's edge goes into the pin"),
		fab.Named("pin_material", "C45+N", "grade of the pin"),
		fab.Length("width", 20, 600, 65, "width of the plate along the bolts"),
		fab.Length("height", 10, 400, 30, "height of the plate"),
		fab.Length("thickness", 2, 40, 6, "plate thickness"),
		fab.Length("corner_radius", 0, 60, 4, "radius of the corners, 0 for sharp"),
		fab.Named("material", "S355", "grade of the plate"),
		fab.Length("bolt_pitch", 10, 500, 40, "distance between the two bolts"),
		fab.Length("bolt_drop", 3, 300, 16, "bolts under the edge that is in the slot"),
		fab.Length("ear_thickness", 3, 100, 12, "thickness of the ear"),
		fab.Named("ear_material", "S355", "grade of the ear"),
	}, fab.BoltParams("M8", "8.8")...)
}
