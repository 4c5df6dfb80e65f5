// Package tab is a small plate that stands on a face by its edge and takes one or two bolts through it: for a pump, a box, a hose rack. It never knows
// strength.
//
// Axes: the origin is on the face in the tab's middle plane; x along the tab, y along the bolts, z up. What is bolted on lies on the face at y = t/2.
//
//	kind.go  the kind: sentence, parameters, sizes, what does not fit
//	parts.go plate, weld, bolts, load path
package tab

import (
	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/geometry/shape"
	"lugwright/part"
)

// Kind describes the tab.
func Kind() geometry.Kind {
	return geometry.Kind{
		Name:     "tab",
		Sentence: "an equipment tab: a plate welded to a tube, rail or frame by its edge, with one or two bolts through it",
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
	d.join(b)
	b.Unchecked = append(b.Unchecked,
		"the face that the tab stands on, beyond its metal beside the weld",
		"what is bolted to the tab: its own wall is taken as it is stated",
	)
	fab.MarkAll(b, v.Mark)
	return b, nil
}

func params() []geometry.Param {
	return []geometry.Param{
		fab.Length("width", 15, 500, 60, "width of the tab along the face"),
		fab.Length("height", 15, 400, 60, "height of the tab over the face"),
		fab.Length("thickness", 3, 40, 6, "thickness"),
		fab.Length("corner_radius", 0, 100, 12, "radius of the two free corners, 0 for sharp"),
		fab.Named("material", "A572-50", "grade of the tab"),
		fab.Count("bolts", 1, 2, 1, "bolts, side by side along the face"),
		fab.Length("bolt_pitch", 10, 400, 30, "distance between two bolts"),
		fab.Length("bolt_height", 8, 390, 40, "bolts over the face"),
		fab.Thread("bolt_size", "M10", "bolt size"),
		fab.Named("bolt_grade", "8.8", "bolt grade"),
		fab.BoltFit(part.NormalFit),
		fab.Choice("threads", "threads in or out of the shear plane", "in", "out"),
		fab.Length("weld", 3, 20, 4, "leg of the fillets on both faces, full width"),
		fab.Named("electrode", "E70", "filler grade"),
		fab.Length("equipment_thickness", 1, 60, 5, "what is bolted on: its thickness at the bolts"),
		fab.Named("equipment_material", "S235", "its grade"),
		fab.Choice("support_kind", "what the tab stands on", string(part.BodyFrame), string(part.RailFlange), string(part.CrossMember), string(part.TubeWall)),
		fab.Length("support_thickness", 1.5, 60, 5, "its thickness"),
		fab.Named("support_material", "S355", "its grade"),
	}
}

type design struct {
	v                        geometry.Values
	width, height, t, radius float64
	bolt, hole, at           float64
	points                   []shape.Point
	leg                      float64
}

func read(v geometry.Values) *design {
	d := &design{
		v: v, width: v.MM("width"), height: v.MM("height"), t: v.MM("thickness"), radius: v.MM("corner_radius"), at: v.MM("bolt_height"), leg: v.MM("weld"),
	}
	d.bolt, d.hole = fab.ReadBolt(v)
	d.points = fab.Grid(fab.Spread(v.Count("bolts"), v.MM("bolt_pitch")), []float64{d.at})
	return d
}

func (d *design) check() error {
	var n fab.Needs
	if !n.ThatHole(d.hole, "bolt_size", d.v.Word("bolt_size")) {
		return n.Err()
	}
	n.That(d.width >= 4*d.leg, "width", fab.MM(d.width), "at least 4 weld legs, %.4g mm", 4*d.leg)
	n.That(d.radius <= min(d.width/2, d.height-d.leg), "corner_radius", fab.MM(d.radius), "at most %.4g mm", min(d.width/2, d.height-d.leg))
	room := fab.SocketRoom(d.bolt, d.leg)
	n.That(d.at >= room, "bolt_height", fab.MM(d.at), "at least %.4g mm, so that a socket passes the weld", room)
	pitch := d.v.MM("bolt_pitch")
	n.That(len(d.points) == 1 || pitch >= fab.BoltPitch(d.bolt), "bolt_pitch", fab.MM(pitch), "at least %.4g mm, 2 2/3 diameters", fab.BoltPitch(d.bolt))
	if n.Err() != nil {
		return n.Err()
	}
	outer, err := d.outline()
	if !n.That(err == nil, "corner_radius", fab.MM(d.radius), "a radius that both corners have room for") {
		return n.Err()
	}
	for _, p := range d.points {
		if edge := outer.DistTo(p); !n.That(outer.Contains(p) && edge >= fab.BoltEdge(d.bolt)-shape.TouchMM, "height", fab.MM(d.height)+" and this width leave "+fab.MM(edge)+" from a bolt to the edge",
			"more, so that %.4g mm are left, 1 1/4 diameters", fab.BoltEdge(d.bolt)) {
			break
		}
	}
	return n.Err()
}
