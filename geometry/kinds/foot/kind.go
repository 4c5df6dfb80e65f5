// Package foot is an angle on a rail's web, rolled or bent of plate, whose other leg carries the body's subframe: under it, or over it to hold it down. It
// never knows strength.
//
// Axes: the web's outer face is y = 0, y outboard; x runs along the rail; z = 0 is the upper face of the leg that carries.
//
//	kind.go    the kind: sentence, parameters, order of work
//	design.go  sizes, and what does not fit
//	parts.go   what is on the subframe's leg, the lap under the bolted one
//	path.go    load path, notes, what is not checked
package foot

import (
	"slices"

	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/part"
)

// Kind describes the foot.
func Kind() geometry.Kind {
	return geometry.Kind{
		Name:     "foot",
		Sentence: "an angle or bent plate bolted to the rail's web, its other leg under the body's subframe or over it",
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
	d.angle.Add(b, d.seat)
	d.addLap(b)
	d.addSeat(b)
	d.addPath(b)
	d.addRemarks(b)
	fab.MarkAll(b, v.Mark)
	return b, nil
}

func params() []geometry.Param {
	return slices.Concat([]geometry.Param{
		fab.Choice("form", "how the foot is made", "angle", "bent plate"),
		fab.Choice("leg", "where the leg lies that carries the subframe", "under the subframe", "over the subframe"),
		fab.Length("heel_below", 0, 300, 0, "leg under the subframe: its upper face below the rail's upper face"),
		fab.Length("subframe_height", 10, 400, 80, "leg over the subframe: height of what stands on the rail and lies under the leg"),
		fab.Length("subframe_corner", 0, 60, 12, "leg over the subframe: outside radius of the edge that lies in the corner of the foot"),

		fab.Length("angle_out", 30, 400, 100, "leg that carries the subframe, over its back"),
		fab.Length("angle_down", 30, 600, 150, "leg that is bolted to the web, over its back"),
		fab.Length("angle_thickness", 3, 35, 10, "thickness of both legs"),
		fab.Length("angle_root_radius", 0, 30, 12, "root radius of a rolled angle, from the section table"),
		fab.Length("inside_radius", 0.5, 60, 12, "bent plate: inside radius of the fold"),
		fab.Ratio("k_factor", 0.3, 0.5, 0.44, "bent plate, K: how deep the neutral line lies in the fold, over the thickness; published shop tables give 0.38 to 0.55"),
		fab.Length("angle_length", 40, 1500, 240, "length along the rail"),
		fab.Named("foot_material", "S355", "grade of the angle or plate"),

		fab.Count("stiffener_count", 0, 6, 2, "plates in the corner of a leg under the subframe"),
		fab.Length("stiffener_spacing", 10, 600, 90, "distance between stiffeners, middle to middle"),
		fab.Length("stiffener_thickness", 3, 40, 10, "thickness of a stiffener"),
		fab.Length("stiffener_reach", 10, 380, 75, "stiffener's length along the leg that carries, from the inner corner"),
		fab.Length("stiffener_depth", 10, 580, 105, "stiffener's length down the bolted leg, from the inner corner"),
		fab.Length("stiffener_nose", 2, 100, 12, "blunt ends of a stiffener"),
		fab.Length("stiffener_weld", 3, 20, 5, "leg of the fillets along a stiffener, both faces"),
		fab.Length("snipe_clearance", 2, 15, 3, "snipe at a stiffener's inner corner beyond the radius that passes there"),
		fab.Named("gusset_material", "S355", "grade of stiffeners and lap plate"),

		fab.Choice("lap", "a plate welded over the lower end of an angle's bolted leg, that reaches down and bears on the side of the rail's lower flange", "none", "fitted"),
		fab.Length("lap_width", 20, 1500, 200, "its width along the rail"),
		fab.Length("lap_thickness", 3, 35, 10, "its thickness"),
		fab.Length("lap_overlap", 10, 300, 50, "how far it reaches up over the leg"),
		fab.Length("lap_weld", 3, 20, 6, "leg of the fillet along its top and its sides on the leg"),
		fab.Length("packer_height", leastPackerMM, 200, 30, "height of the packer, as thick as the leg, between lap and flange's side"),

		fab.Count("seat_bolts", 0, 6, 2, "bolts in a line along the rail that hold the subframe on its leg, 0 where it is welded on"),
		fab.Length("seat_pitch", 10, 800, 150, "distance between them"),
		fab.Length("seat_offset", 15, 380, 60, "web's face to the middle of the subframe's hold on the leg"),
		fab.Length("seat_length", 10, 1500, 100, "length of the hold along the rail where it is welded"),
		fab.Thread("seat_bolt_size", "M12", "size of these bolts"),
		fab.Length("load_height", 0, 600, 40, "from the leg's face to where the load acts, on the subframe's side"),
		fab.Length("subframe_thickness", 1, 60, 5, "wall of the subframe on the leg"),
		fab.Named("subframe_material", "S355", "its grade"),

		fab.Thread("bolt_size", "M12", "size of the bolts through the web"),
		fab.Named("bolt_grade", "10.9", "bolt grade"),
		fab.Choice("bolt_fit", "clearance of the holes", "close", "normal", "loose"),
		fab.Choice("threads", "threads in or out of the shear plane", "in", "out"),
		fab.Count("bolt_rows", 1, 6, 2, "rows of bolts down the web"),
		fab.Count("bolts_per_row", 1, 12, 3, "bolts in a row, along the rail"),
		fab.Length("bolt_pitch", 8, 500, 90, "distance between bolts of a row"),
		fab.Length("bolt_first", 10, 500, 60, "first row below the upper face of the leg that carries"),
		fab.Length("bolt_row_pitch", 8, 300, 60, "distance between rows"),

		fab.Named("electrode", "E70", "filler grade of all welds"),
		fab.Length("support_thickness", 1, 60, 6, "thickness of the rail's web"),
		fab.Named("support_material", "S355", "grade of the rail"),
		fab.Length("web_clear_height", 30, 1500, 188, "clear height of the web between flanges"),
		fab.Choice("couple", "what takes the couple that bends the web out of its plane", string(part.CoupleByCrossMember), string(part.CoupleByWall)),
	}, fab.TighteningParams(), fab.RailParams())
}
