package reference

// Stripping of threads, the engagement that prevents it, and coupling nuts.

import (
	"math"

	"lugwright/strength"
)

// threadStripping is the card of thread shear.
var threadStripping = bookCard("Thread stripping", "FED-STD-H28/2 and ASME B1.1", "various", shearAreas, strippingLoad, engagement, couplingNut)

func threadClause(section, words string) strength.Clause {
	return strength.Clause{Document: "FED-STD-H28/2; ASME B1.1 Appendix B", Edition: "as read in tables", Section: section, Words: words}
}

type shearAreaGivens struct {
	P    float64 `sym:"P" unit:"mm" min:"0.05" max:"20" is:"pitch; 1/n of n threads to the inch"`
	Le   float64 `sym:"L_e" unit:"mm" min:"0.1" max:"1000" is:"length of engagement"`
	Kn   float64 `sym:"D_1max" unit:"mm" min:"0.3" max:"200" is:"greatest minor diameter of the internal thread (K_n max)"`
	Es   float64 `sym:"d_2min" unit:"mm" min:"0.3" max:"200" is:"least pitch diameter of the external thread (E_s min)"`
	Ds   float64 `sym:"d_min" unit:"mm" min:"0.3" max:"200" is:"least major diameter of the external thread (D_s min)"`
	En   float64 `sym:"D_2max" unit:"mm" min:"0.3" max:"200" is:"greatest pitch diameter of the internal thread (E_n max)"`
	Need float64 `sym:"A_req" unit:"mm^2" min:"0" max:"1e6" default:"0" is:"shear area that is needed"`
}

// shearAreas are the areas at which the thread of the bolt and that of the nut shear off.
var shearAreas = strength.Define(strength.Identity{
	ID: "thread-shear-area", Title: "shear areas of engaged threads", Clause: threadClause("thread shear areas", ""),
	Demand: "A_req", Capacity: "A_min", Unit: "mm^2",
}, func(c *strength.Calc, g shearAreaGivens) {
	ext, in := areasOf(c, g.P, g.Le, g.Kn, g.Es, g.Ds, g.En)
	c.Compare(g.Need, c.Let("A_min", "min(A_ext, A_int)", "mm^2", min(ext, in)))
})

func areasOf(c *strength.Calc, p, le, kn, es, ds, en float64) (external, internal float64) {
	he := c.Let("h_e", "P/2 + 0.57735*(d_2min - D_1max)", "mm", p/2+0.57735*(es-kn))
	hi := c.Let("h_i", "P/2 + 0.57735*(d_min - D_2max)", "mm", p/2+0.57735*(ds-en))
	c.Need(he > 0, "h_e > 0*mm", "a bolt thread that engages")
	c.Need(hi > 0, "h_i > 0*mm", "a nut thread that engages")
	external = c.Let("A_ext", "pi/P*L_e*D_1max*h_e", "mm^2", math.Pi/p*le*kn*he)
	internal = c.Let("A_int", "pi/P*L_e*d_min*h_i", "mm^2", math.Pi/p*le*ds*hi)
	return external, internal
}

type strippingGivens struct {
	F   float64 `sym:"F" unit:"N" min:"0" max:"1e9" is:"tension"`
	P   float64 `sym:"P" unit:"mm" min:"0.05" max:"20" is:"pitch; 1/n of n threads to the inch"`
	Le  float64 `sym:"L_e" unit:"mm" min:"0.1" max:"1000" is:"length of engagement"`
	Kn  float64 `sym:"D_1max" unit:"mm" min:"0.3" max:"200" is:"greatest minor diameter of the internal thread (K_n max)"`
	Es  float64 `sym:"d_2min" unit:"mm" min:"0.3" max:"200" is:"least pitch diameter of the external thread (E_s min)"`
	Ds  float64 `sym:"d_min" unit:"mm" min:"0.3" max:"200" is:"least major diameter of the external thread (D_s min)"`
	En  float64 `sym:"D_2max" unit:"mm" min:"0.3" max:"200" is:"greatest pitch diameter of the internal thread (E_n max)"`
	Sue float64 `sym:"S_ue" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the bolt"`
	Sui float64 `sym:"S_ui" unit:"MPa" min:"20" max:"3000" is:"tensile strength of the nut or tapped part"`
	K   float64 `sym:"k_tau" unit:"" min:"0.4" max:"0.8" default:"0.577" is:"shear strength over tensile strength"`
	N   float64 `sym:"n_F" unit:"" min:"1" max:"10" default:"1" is:"factor on the strength"`
}

// strippingLoad is the tension that strips the weaker of both threads.
var strippingLoad = strength.Define(strength.Identity{
	ID: "thread-stripping", Title: "stripping of engaged threads", Clause: threadClause("thread shear areas", "shear strength as a part of tensile strength"),
	Demand: "F", Capacity: "F_c", Unit: "N",
}, func(c *strength.Calc, g strippingGivens) {
	ext, in := areasOf(c, g.P, g.Le, g.Kn, g.Es, g.Ds, g.En)
	Fe := c.Let("F_ext", "k_tau*S_ue*A_ext", "N", g.K*g.Sue*ext)
	Fi := c.Let("F_int", "k_tau*S_ui*A_int", "N", g.K*g.Sui*in)
	c.Compare(g.F, c.Let("F_c", "min(F_ext, F_int)/n_F", "N", min(Fe, Fi)/g.N))
})

type engagementGivens struct {
	D      float64 `sym:"d" unit:"mm" min:"0.5" max:"200" is:"nominal diameter"`
	P      float64 `sym:"P" unit:"mm" min:"0.05" max:"20" is:"pitch; 1/n of n threads to the inch"`
	Thread float64 `sym:"thread" choices:"metric|inch" default:"0" is:"series"`
	As     float64 `sym:"A_given" unit:"mm^2" min:"0" max:"1e5" default:"0" is:"stress area as a table prints it; 0 to calculate it"`
	Le     float64 `sym:"L_e" unit:"mm" min:"0.1" max:"1000" is:"length of engagement"`
	Kn     float64 `sym:"D_1max" unit:"mm" min:"0.3" max:"200" is:"greatest minor diameter of the internal thread (K_n max)"`
	Es     float64 `sym:"d_2min" unit:"mm" min:"0.3" max:"200" is:"least pitch diameter of the external thread (E_s min)"`
	Ds     float64 `sym:"d_min" unit:"mm" min:"0.3" max:"200" is:"least major diameter of the external thread (D_s min)"`
	En     float64 `sym:"D_2max" unit:"mm" min:"0.3" max:"200" is:"greatest pitch diameter of the internal thread (E_n max)"`
	Sue    float64 `sym:"S_ue" unit:"MPa" min:"50" max:"3000" default:"800" is:"tensile strength of the bolt"`
	Sui    float64 `sym:"S_ui" unit:"MPa" min:"20" max:"3000" default:"800" is:"tensile strength of the nut or tapped part"`
}

// engagement is the length at which the bolt breaks before its thread strips, longer by J where the nut's thread is the weaker.
var engagement = strength.Define(strength.Identity{
	ID: "thread-engagement", Title: "length of engagement that breaks the bolt first", Clause: threadClause("length of engagement", ""),
	Demand: "L_req", Capacity: "L_e", Unit: "mm",
}, func(c *strength.Calc, g engagementGivens) {
	c.Need(g.D > 1.3*g.P, "d > 1.3*P", "a core within the thread")
	At := stressArea(c, g.D, g.P, g.Thread, g.As)
	ext, in := areasOf(c, g.P, g.Le, g.Kn, g.Es, g.Ds, g.En)
	L := c.Let("L_eq", "2*A_s/(pi*D_1max*(1/2 + 0.57735/P*(d_2min - D_1max)))", "mm", 2*At/(math.Pi*g.Kn*(1.0/2+0.57735/g.P*(g.Es-g.Kn))))
	J := c.Let("J", "A_ext*S_ue/(A_int*S_ui)", "", ext*g.Sue/(in*g.Sui))
	c.Compare(c.Let("L_req", "L_eq*max(J, 1)", "mm", L*max(J, 1)), g.Le)
})

type couplingGivens struct {
	L   float64 `sym:"L_n" unit:"mm" min:"1" max:"1000" is:"length of the coupling nut"`
	Gap float64 `sym:"g" unit:"mm" min:"0" max:"1000" default:"0" is:"gap between the rods' ends, and threads that the ends' chamfers lose"`
	Off float64 `sym:"e" unit:"mm" min:"0" max:"1000" default:"0" is:"how far the rods' meeting is off the middle"`
	D   float64 `sym:"d" unit:"mm" min:"1" max:"200" is:"nominal diameter"`
	K   float64 `sym:"k_e" unit:"" min:"0.5" max:"3" default:"1" is:"engagement needed on each side in diameters: 1 to 1.5"`
}

// couplingNut gives the rod that enters less deep half of what the other rod leaves. A coupling nut is commonly 3 d long.
var couplingNut = strength.Define(strength.Identity{
	ID: "coupling-nut-engagement", Title: "engagement of each rod in a coupling nut",
	Clause: strength.Clause{Words: "common practice, no source"},
	Demand: "L_req", Capacity: "L_half", Unit: "mm",
}, func(c *strength.Calc, g couplingGivens) {
	half := c.Let("L_half", "(L_n - g)/2 - e", "mm", (g.L-g.Gap)/2-g.Off)
	c.Need(half > 0, "L_half > 0*mm", "both rods within the nut")
	c.Compare(c.Let("L_req", "k_e*d", "mm", g.K*g.D), half)
})
