// Package subframelug is a lug that hangs from the side of a subframe's tube: the body's half of a mount. It never knows strength.
//
// Axes: the tube runs along x; its outer side is y = 0, its lower edge z = 0. The plate lies on that side, reaches up it by the lap, and hangs below
// with the pin's hole; the pin runs along y.
//
//	kind.go    the kind: sentence, parameters, order of work
//	design.go  sizes, what does not fit, plate, weld
package subframelug

import (
	"lugwright/geometry"
	"lugwright/geometry/fab"
	"lugwright/part"
)

// Kind describes the subframe lug.
func Kind() geometry.Kind {
	return geometry.Kind{
		Name:     "subframelug",
		Sentence: "a lug that laps the side of a subframe tube, welded round, with its pin below the tube",
		Params:   params(),
		Build:    build,
	}
}

func build(v geometry.Values) (*part.Bracket, error) {
	d := read(v)
	if err := d.check(); err != nil {
		return nil, err
	}
	b := &part.Bracket{Plates: []part.Plate{d.plate()}, Welds: []part.WeldGroup{d.lapWeld()}}
	b.Supports = []part.Support{{ID: "tube", Kind: part.BodyFrame, ThicknessMM: v.MM("tube_wall"), Material: v.Word("tube_material")}}
	at := d.pinAt()
	b.Sweeps = []part.Sweep{{ID: "lug", Things: []string{"lug"}, From: at, To: part.Vec{Y: d.t / 2, Z: d.tubeCorner}, Name: "lug", EntryMM: min(2*d.fork.PinMM, d.width), EntryFlat: true}}
	d.fork.Hold(b, "lug", v.Word("material"), d.t, v.MM("bush_length"), at)
	fab.LugPaths(b, at, "lug", "w-lug", "tube")
	b.Notes = append(b.Notes, "weld the top edge and both ends, none across the tube's lower edge; end each run short of its corner")
	if v.MM("finish_allowance") > 0 {
		b.Notes = append(b.Notes, "ream the pin hole after welding")
	}
	b.Unchecked = append(b.Unchecked,
		"the tube's side wall under the lug's pull and its bending, and the tube as a beam between its cross members",
		"the twist that a lug on one side gives the tube",
		"the fork on the pin: it is the other side's",
	)
	fab.MarkAll(b, v.Mark)
	return b, nil
}

func params() []geometry.Param {
	return append(fab.ForkParams(),
		fab.Length("pin_below", 15, 500, 60, "pin centre below the tube's lower edge"),
		fab.Length("lap", 15, 500, 80, "how far the lug reaches up the tube's side"),
		fab.Length("thickness", 4, 60, 16, "thickness of the lug"),
		fab.Length("width", 20, 600, 100, "width of the lug; its lower end is a half circle or wider"),
		fab.Length("end_distance", 8, 300, 50, "pin centre to the lower end"),
		fab.Named("material", "A572-50", "grade of the lug"),
		fab.Length("weld", 3, 25, 5, "leg of the fillet along the top edge and the ends"),
		fab.Named("electrode", "E70", "filler grade"),
		fab.Length("tube_height", 20, 500, 100, "height of the tube"),
		fab.Length("tube_wall", 1.5, 30, 5, "wall of the tube"),
		fab.Length("tube_corner", 0, 60, 10, "outside corner radius of the tube"),
		fab.Named("tube_material", "S355", "grade of the tube"),
	)
}
