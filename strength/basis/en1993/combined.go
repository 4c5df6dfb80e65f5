package en1993

// Bending about both axes with axial force and shear, from the utilisations that other limit states give.

import "lugwright/strength"

type memberGivens struct {
	N     float64 `sym:"u_N" unit:"" min:"0" max:"100" default:"0" is:"axial force over its resistance, in compression that to buckling: N_Ed/N_Rd"`
	Sense float64 `sym:"sense" choices:"tension|compression" default:"1" is:"of the axial force"`
	My    float64 `sym:"u_y" unit:"" min:"0" max:"100" default:"0" is:"moment about the strong axis over its resistance, lateral buckling in it: M_y_Ed/M_y_Rd"`
	Mz    float64 `sym:"u_z" unit:"" min:"0" max:"100" default:"0" is:"moment about the weak axis over its resistance: M_z_Ed/M_z_Rd"`
	V     float64 `sym:"u_V" unit:"" min:"0" max:"100" default:"0" is:"shear over its resistance, less what torsion takes: V_Ed/V_Rd"`
	Cm    float64 `sym:"C_m" unit:"" min:"0.4" max:"1" default:"0.9" is:"shape of the moments, Table B.3; 0.9 for a member that sways"`
}

// memberInteraction adds the parts (6.2.1(7)), lowered by what shear above half its resistance takes (6.2.8, 6.2.10); in compression the
// moments grow by k of Annex B at its greatest for the axial force, both axes alike.
var memberInteraction = strength.Define(strength.Identity{
	ID: "member-interaction", Title: "tube or bar: bending about both axes with axial force and shear",
	Clause: member("6.2.1(7), Eq. 6.2; 6.2.8; 6.2.10; 6.3.3, Eq. 6.61 and 6.62 with Annex B", "k from memory, bounded"),
	Demand: "U", Capacity: "1", Unit: "",
}, func(c *strength.Calc, g memberGivens) {
	c.Need(g.V < 1, "u_V < 1", "a member that carries its shear alone")
	left := c.Let("left", "when(u_V <= 0.5, 1, 1 - pow(2*u_V - 1, 2))", "", 1-shearLoss(g.V, 1))
	m := c.Let("u_M", "u_y + u_z", "", g.My+g.Mz)
	k := 1.0
	if g.Sense > 0 {
		k = max(1, g.Cm*(1+0.8*min(g.N, 1)))
	}
	k = c.Let("k", "when(sense > 0, max(1, C_m*(1 + 0.8*min(u_N, 1))), 1)", "", k)
	c.Compare(c.Let("U", "(u_N + k*u_M)/left", "", (g.N+k*m)/left), 1)
})
