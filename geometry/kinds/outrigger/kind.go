// Package outrigger carries a mount away from the rail's web on a pair of upright plates, welded to a base plate that is bolted to the web. A head plate on
// their upper edges carries the mount and ties them, or they are open and a pin through both holds the body's lug. It never knows strength.
//
// Axes while it is built: the origin is on the web's outer face, at the middle of the plates' roots; x away from the web, the rear plate at -y, z up. A
// quarter turn at the end brings x to the vehicle's y.
//
//	kind.go   the kind: sentence, parameters, order of work
//	design.go sizes, and what does not fit
//	parts.go  base plate, the two plates, head plate, end tie, pin, welds
//	path.go   bolts, supports, shares, load paths
//	frame.go  what the head plate brings to each plate
//	sweeps.go sections
package outrigger

import (
	"slices"

	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/part"
)

// Kind describes the outrigger.
func Kind() geometry.Kind {
	return geometry.Kind{
		Name:     "outrigger",
		Sentence: "a pair of plates that carries a mount away from the rail: upright on a base plate bolted to the web, under a head plate or open with a pin through both",
		Params:   params(),
		Build:    build,
	}
}

// What carries the mount.
const (
	onHead = "head plate"
	onPin  = "pin"
)

func build(v geometry.Values) (*part.Bracket, error) {
	d := read(v)
	if err := d.check(); err != nil {
		return nil, err
	}
	b := &part.Bracket{}
	d.addParts(b)
	d.addBolts(b)
	if d.pinned {
		d.addPin(b)
	} else {
		d.addHead(b)
		d.addEnd(b)
		d.addPaths(b)
	}
	d.addSweeps(b)
	d.addRemarks(b)
	fab.MarkAll(b, v.Mark)
	fab.QuarterTurn(b)
	return b, nil
}

func (d *design) addRemarks(b *part.Bracket) {
	b.Unchecked = append(b.Unchecked, "twist of the rail by the load's distance, and the cross member behind it")
	if d.pinned {
		b.Notes = append(b.Notes, "weld the plates with a dummy pin through both, alternate sides")
		if d.lug.AllowanceMM > 0 {
			b.Notes = append(b.Notes, "ream the pin hole after welding, both plates in one pass")
		}
		b.Unchecked = append(b.Unchecked, "the body's lug beyond the pin", "head, nut, keeper or retaining bolt of the pin")
		return
	}
	b.Notes = append(b.Notes, "weld the plates on the base plate first, then the head plate, alternate sides; the mount goes on before the outrigger is bolted on")
	b.Unchecked = append(b.Unchecked,
		"the mount's own weld or bolts on the head plate, and the head plate under its feet",
		"what the plates' twist takes of a load off their middle: counted as push and pull of the two alone",
		"fatigue of the head plate's ends and their welds, and twist of the plates, under loads up and down: the ends are taken as hinges, safe for strength alone; held, each has as much as F s/8, s from plate to plate",
	)
	if d.endT > 0 {
		b.Unchecked = append(b.Unchecked, "the end tie beyond what holds the plates against turning under a force along the rail")
	}
}

func params() []geometry.Param {
	pin := fab.BodyLugParams()
	for i := range pin {
		pin[i].Sentence = "pin: " + pin[i].Sentence
		if pin[i].Name == "lug_thickness" {
			pin[i].Default = 80 // an eye with a bush as long, so that a torch reaches down between the plates
		}
	}
	return slices.Concat(
		[]geometry.Param{
			fab.Choice("mount", "what carries the mount: a plate on the upper edges of both plates, which ties them, or a pin through both, which are open", onHead, onPin),
			fab.Length("load_out", 20, 1000, 170, "load, or the pin's middle, from the web face"),
			fab.Length("plate_thickness", 4, 60, 12, "thickness of each plate"),
			fab.Length("root_height", 30, 600, 150, "height of the plates at the base plate"),
			fab.Length("plate_weld", 3, 25, 6, "leg of the fillets on the base plate, both faces of each plate"),

			fab.Length("reach", 40, 1000, 230, "head plate: web face to the outer end"),
			fab.Length("tip_height", 20, 600, 90, "head plate: height of the plates at their outer end; upper edges are level, lower ones slant"),
			fab.Length("plate_gap", 15, 500, 120, "head plate: clear distance between the plates"),
			fab.Length("head_thickness", 4, 80, 16, "head plate: thickness"),
			fab.Length("head_length", 30, 800, 130, "head plate: its size away from the web, flush with the outer end"),
			fab.Length("head_width", 40, 800, 180, "head plate: its size along the rail, middled on the plates"),
			fab.Length("head_weld", 3, 25, 6, "head plate: leg of the fillets under it, both faces of each plate, and at the end tie"),
			fab.Length("end_thickness", 0, 40, 0, "head plate: thickness of an end tie, a plate across the outer ends of both plates, 0 for none"),
			fab.Length("mount_length", 10, 600, 90, "head plate: what the mount stands on, away from the web"),
			fab.Length("mount_width", 10, 600, 80, "head plate: what the mount stands on, along the rail"),
			fab.Length("load_height", 0, 600, 40, "head plate: load over its upper face"),
			fab.Length("load_offset", 0, 250, 5, "head plate: load off the middle between the plates, to either side"),
			fab.Ratio("hold_low", 0, 1, 0, "head plate: least part of a frame's hold that it and its welds give the plates' outer ends under a force along the rail; without any they are two cantilevers"),
			fab.Ratio("hold_high", 0, 1, 1, "head plate: greatest part of it"),

			fab.Length("end_distance", 8, 300, 55, "pin: its middle to the plates' outer end"),
			fab.Length("head_radius", 8, 300, 40, "pin: radius of the plates' outer end"),
		},
		pin,
		fab.TubePlateParams("base", "base plate", fab.TubePlate{ThicknessMM: 20, LengthMM: 320, HeightMM: 170, RadiusMM: 10, PitchMM: 260, GaugeMM: 110}),
		[]geometry.Param{
			fab.Named("electrode", "E70", "filler grade of all welds"),
			fab.Length("support_thickness", 1, 60, 6, "thickness of the rail's web"),
			fab.Named("support_material", "S355", "grade of the web"),
			fab.Length("web_clear_height", 30, 1500, 188, "clear height of the web between its flanges"),
			fab.Choice("couple", "what takes the couple that bends the web", string(part.CoupleByCrossMember), string(part.CoupleByWall)),
		},
	)
}
