package outrigger

// Sections: plates from where the load comes in to their roots, what is under the head plate, the head plate between them, the end tie, the base plate.

import "lugwright/part"

func (d *design) addSweeps(b *part.Bracket) {
	for _, a := range arms {
		d.sweepPlate(b, a)
	}
	if !d.pinned {
		d.sweepHead(b)
	}
	b.Sweeps = append(b.Sweeps, d.base.Sweeps("base", "bolts", upright(d.foot()/2))...)
	b.Sweeps = append(b.Sweeps, part.Sweep{
		// As wide as the plates are at their roots: nothing but them loads it there.
		ID: "base, between", Things: []string{"base"}, Bolts: "bolts", Name: "base plate between the plates", EntryMM: d.root, EntryToMM: d.gap,
		From: part.Vec{X: d.foot() / 2, Y: d.gap / 2}, To: part.Vec{X: d.foot() / 2, Y: -d.gap / 2},
	})
}

// sweepPlate cuts a plate down to its root. Its free length for buckling is for a plate as high at its root as the cut is and at its load as it is there,
// which gives way no sooner than one that is as low all along; a load on the upper edge adds twice its distance from the middle. A narrow rectangle with a
// load a over its middle at its end turns sideways at 4.01/L sqrt(E I G J) (1 - a/L sqrt(E I/(G J))), Timoshenko and Gere, Theory of Elastic Stability,
// from memory: that is under the pi/L of an even moment from a = 0.27 L on, and over pi/(L + 2 a) up to 0.9 L.
func (d *design) sweepPlate(b *part.Bracket, a arm) {
	y := d.y(a)
	s := part.Sweep{
		ID: a.id, Name: "outrigger plate", Things: []string{a.id}, Via: a.weld(), From: part.Vec{X: d.end(), Y: y}, To: part.Vec{X: d.foot(), Y: y},
		FreeMM: (max(d.out, d.headMid()) - d.foot() + d.tip) * d.root / d.tip,
	}
	if d.pinned {
		s.From.X, s.FreeMM = d.out, (d.out-d.foot())*d.root/(2*d.ear.HeadRadius)
	}
	b.Sweeps = append(b.Sweeps, s)
	if d.pinned {
		return
	}
	// The edge that the head plate's weld bends, as deep as the plate is thick.
	b.Sweeps = append(b.Sweeps, part.Sweep{
		ID: a.id + " under the head", Name: "outrigger plate under the head plate", Things: []string{a.id}, EntryMM: d.end() - d.headIn(),
		From: part.Vec{X: d.headMid(), Y: y, Z: d.top()}, To: part.Vec{X: d.headMid(), Y: y, Z: d.top() - d.t},
	})
}

// sweepHead cuts the head plate from the middle to each plate, and the end tie from one to the other.
func (d *design) sweepHead(b *part.Bracket) {
	z := d.top() + d.headT/2
	for _, a := range arms {
		b.Sweeps = append(b.Sweeps, part.Sweep{
			ID: "head to " + a.id, Name: "head plate", Things: []string{"head"}, Via: a.headWeld(), EntryMM: d.mountL, EntryToMM: d.mountW / 2,
			From: part.Vec{X: d.out, Z: z}, To: part.Vec{X: d.out, Y: a.side * d.gap / 2, Z: z},
		})
	}
	if d.endT > 0 {
		x, z := d.reach-d.endT/2, d.top()-d.tip/2
		b.Sweeps = append(b.Sweeps, part.Sweep{
			ID: "end", Name: "end tie", Things: []string{"end"}, From: part.Vec{X: x, Y: d.gap / 2, Z: z}, To: part.Vec{X: x, Y: -d.gap / 2, Z: z},
		})
	}
}
