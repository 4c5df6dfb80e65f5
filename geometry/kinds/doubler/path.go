package doubler

// Load path from the wall at negative x through the plate to the other half; what the plate does not take stays in the wall.

import "lugwright/part"

func (d *design) addPath(b *part.Bracket) {
	b.LoadPoints = []part.LoadPoint{{ID: "wall force"}}
	b.Shares = []part.Share{d.parts()}
	fixing, reach := "w-doubler", max(d.hole/2, d.t)
	if d.bolted {
		fixing, reach = "bolts", d.rows[0]
	} else if len(d.plugs) > 0 {
		reach = d.plugs[len(d.plugs)-1] + d.plug/2
	}
	z := b.Plates[0].Pose.Origin.Z
	at := part.Vec{Z: z}
	if d.bends {
		at.Z = 0 // the wall's middle plane, (t_1 + t_2)/2 off
	}
	for _, c := range []part.Component{part.FxPlus, part.FxMinus} {
		b.Paths = append(b.Paths, part.Path{LoadPoint: "wall force", Component: c, Branches: []part.Branch{
			{Share: "doubler", Leg: 0, At: at, Through: []string{fixing + "-b", "doubler", fixing, halves[0].wall}},
			{Share: "doubler", Leg: 1, Through: []string{halves[0].wall}},
		}})
	}
	b.Sweeps = []part.Sweep{{
		ID: "doubler", Things: []string{"doubler"}, From: part.Vec{X: -reach, Z: z}, To: part.Vec{X: reach, Z: z}, Name: "over the wall",
	}}
}

// parts is what the plate may take. Welded all round it strains with the wall, so that no statement brings it below its part by thickness: both are tried. Bolts
// slip and give, and leave the statement as it is.
func (d *design) parts() part.Share {
	s := part.Share{ID: "doubler", Rule: part.Between, Legs: 2, Lo: d.share, Hi: d.share, Source: "stated by the builder"}
	if !d.bolted && d.share != d.byThickness() {
		s.Lo, s.Hi = min(d.share, d.byThickness()), max(d.share, d.byThickness())
		s.Source = "stated by the builder, and by thickness: a plate welded all round strains with the wall"
	}
	return s
}

// byThickness is the plate's part of the force as it strains like the wall under it.
func (d *design) byThickness() float64 { return d.t / (d.t + d.wall) }
