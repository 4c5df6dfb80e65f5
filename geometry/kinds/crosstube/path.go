package crosstube

// Bolts, supports, load path, sections.

import "lugwright/part"

func (d *design) addBolts(b *part.Bracket) {
	for _, s := range sides {
		web := part.Support{
			ID: s.name + "-rail", Kind: part.RailWeb, ThicknessMM: d.v.MM("support_thickness"), Material: d.v.Word("support_material"),
			ClearMM: d.v.MM("web_clear_height"), Couple: part.CouplePath(d.v.Word("couple")),
		}
		b.Supports = append(b.Supports, web)
		b.Bolts = append(b.Bolts, d.end.Bolts("bolts-"+s.name, "end-"+s.name, web, d.upright(s, 0)))
	}
}

// addPaths sends every load both ways along the tube, and cuts the tube from the load to either end.
func (d *design) addPaths(b *part.Bracket) {
	at := part.Vec{Y: d.across, Z: d.up}
	b.LoadPoints = []part.LoadPoint{{ID: "mount", At: at}}
	share := part.Share{
		ID: "ends", Rule: part.ByBeamSpan, Legs: 2, Beam: "tube",
		Source: "statics of the span between the webs; how far bolted end plates hold the tube against turning is not known, so both bounds are taken",
	}
	for i, s := range sides {
		share.Ends[i] = d.upright(s, 0).Origin
		b.Sweeps = append(b.Sweeps, part.Sweep{
			ID: "tube-" + s.name, Things: []string{"tube"}, From: part.Vec{Y: d.across}, To: d.upright(s, d.end.ThicknessMM).Origin, Name: "tube towards the " + s.name + " rail",
		})
	}
	for i, s := range sides {
		b.Sweeps = append(b.Sweeps, d.end.Sweeps("end-"+s.name, "bolts-"+s.name, b.Plates[i].Pose)...)
	}
	b.Shares = []part.Share{share}
	for _, c := range part.Components() {
		p := part.Path{LoadPoint: "mount", Component: c}
		for i, s := range sides {
			p.Branches = append(p.Branches, part.Branch{
				Share: share.ID, Leg: i, At: at, Through: []string{"tube", "w-" + s.name, "end-" + s.name, "bolts-" + s.name, s.name + "-rail"},
			})
		}
		b.Paths = append(b.Paths, p)
	}
}
