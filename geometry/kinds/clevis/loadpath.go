package clevis

// Load point, shares and paths. Along the pin the lug bears on one ear and the pin's ends pull the other along; square to the
// pin both ears share by the statics of the pin, with the lug at either end of its travel.

import (
	"slices"

	"lugwright/part"
)

func (d *design) addPaths(b *part.Bracket) {
	b.LoadPoints = append(b.LoadPoints, part.LoadPoint{
		ID: "pin", At: part.Vec{Y: d.middle, Z: d.height}, Axis: part.Vec{Y: 1},
		// A loose pin between gaps holds no couple; about its own axis it turns.
		Released: []part.Component{part.MxPlus, part.MxMinus, part.MyPlus, part.MyMinus, part.MzPlus, part.MzMinus},
	})
	b.Shares = append(b.Shares, part.Share{ID: "travel", Rule: part.ByPinSpan, Legs: 2, Pin: "pin", Source: "statics of the pin, lug at either end of its travel"})
	if d.tied() {
		b.Shares = append(b.Shares, part.Share{
			ID: "tie", Rule: part.Between, Legs: 2, Lo: 0, Hi: 0.5,
			Source: "head and nut pull the far ear along once the end play is used up; from nothing to an equal share, common practice, no source",
		})
	}
	for _, c := range []part.Component{part.FxPlus, part.FxMinus, part.FzPlus, part.FzMinus} {
		b.Paths = append(b.Paths, d.square(c))
	}
	b.Paths = append(b.Paths, d.along(part.FyPlus, ears[0], ears[1]), d.along(part.FyMinus, ears[1], ears[0]))
}

// seat is the middle of what the pin bears on in an ear, its cheek plate included: off the ear's middle plane, which bends it.
func (d *design) seat(e ear) part.Vec {
	return part.Vec{Y: d.face(e, d.inner+(d.earT+d.cheek.ThicknessMM)/2), Z: d.height}
}

// square is a path square to the pin; legs are the seats in order along the pin, inboard first.
func (d *design) square(c part.Component) part.Path {
	return part.Path{LoadPoint: "pin", Component: c, Branches: []part.Branch{
		{Share: "travel", Leg: 0, At: d.seat(ears[1]), Through: d.through(ears[1], "pin")},
		{Share: "travel", Leg: 1, At: d.seat(ears[0]), Through: d.through(ears[0], "pin")},
	}}
}

// along is a path along the pin: the lug bears on the near ear.
func (d *design) along(c part.Component, near, far ear) part.Path {
	bears := part.Branch{At: d.center(near), Through: d.through(near)}
	if !d.tied() {
		return part.Path{LoadPoint: "pin", Component: c, Branches: []part.Branch{bears}}
	}
	bears.Share, bears.Leg = "tie", 1
	pulled := part.Branch{Share: "tie", Leg: 0, At: d.center(far), Through: d.through(far, "pin")}
	return part.Path{LoadPoint: "pin", Component: c, Branches: []part.Branch{pulled, bears}}
}

func (d *design) through(e ear, before ...string) []string {
	return slices.Concat(before, []string{e.id, "w-" + e.id}, d.foot.chain())
}
