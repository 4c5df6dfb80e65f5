package lapplate

// Load path from the flat at negative x through the laps to the other.

import "lugwright/part"

func (d *design) addPath(b *part.Bracket) {
	for _, h := range halves {
		b.Supports = append(b.Supports, part.Support{ID: h.flat, Kind: part.BodyFrame, ThicknessMM: d.t, Material: d.v.Word("member_material")})
	}
	b.LoadPoints = append(b.LoadPoints, part.LoadPoint{ID: "joint"})
	share := ""
	if len(d.laps) == 2 {
		share = "laps"
		b.Shares = append(b.Shares, part.Share{ID: share, Rule: part.Equal, Legs: 2, Source: "laps of one thickness on both faces"})
	}
	for _, c := range []part.Component{part.FxPlus, part.FxMinus} {
		path := part.Path{LoadPoint: "joint", Component: c}
		for i, l := range d.laps {
			path.Branches = append(path.Branches, part.Branch{Share: share, Leg: i, At: d.entry(l), Through: d.through(l)})
		}
		b.Paths = append(b.Paths, path)
	}
	d.addSweeps(b)
	d.addSplice(b)
}

// entry is where a lap takes its force: a single lap is bent by a force in the flats' middle plane, (t1 + t2)/2 off its own;
// of two, each is pulled along its own, as their offsets balance.
func (d *design) entry(l lap) part.Vec {
	if len(d.laps) == 1 {
		return part.Vec{}
	}
	return part.Vec{Z: d.level(l)}
}

func (d *design) fixing(l lap) string {
	if d.bolted {
		return "bolts-" + l.id
	}
	return "w-" + l.id
}

func (d *design) through(l lap) []string {
	f := d.fixing(l)
	return []string{f + "-b", l.id, f, halves[0].flat}
}

// addSweeps cuts each lap over the joint, from the first weld or bolts on one side to those on the other, and a bolted one from its end
// to its first row as well: past a row there is less force, and in a diamond less width.
func (d *design) addSweeps(b *part.Bracket) {
	reach := d.stop
	if d.bolted {
		reach = d.rows[0]
	}
	for _, l := range d.laps {
		b.Sweeps = append(b.Sweeps, part.Sweep{
			ID: l.id, Things: []string{l.id}, Name: "lap over the joint",
			From: part.Vec{X: -reach, Z: d.level(l)}, To: part.Vec{X: reach, Z: d.level(l)},
		})
		if d.bolted && len(d.rows) > 1 {
			b.Sweeps = append(b.Sweeps, part.Sweep{
				ID: l.id + ", end", Things: []string{l.id}, Name: "lap past its first row", Bolts: d.fixing(l),
				From: part.Vec{X: l.reach, Z: d.level(l)}, To: part.Vec{X: reach + d.bolting.HoleMM/2, Z: d.level(l)},
			})
		}
	}
}

func (d *design) addSplice(b *part.Bracket) {
	s := part.Splice{ID: "splice", Thing: halves[0].flat, GapMM: d.gap}
	for _, l := range d.laps {
		s.Laps = append(s.Laps, l.id)
		if !d.bolted {
			s.LapWelds = append(s.LapWelds, "w-"+l.id, "w-"+l.id+"-b")
		}
	}
	b.Splices = append(b.Splices, s)
}
