package reference

// Thread areas, and what a set of bolts bears: proof, yield, tensile and allowable load side by side.

import (
	"math"

	"lugwright/strength"
	"lugwright/strength/material"
)

// boltSets is the card of bolt tables.
var boltSets = bookCard("Bolt sets", "bolt and thread standards", "SAE J429, ISO 898-1, ASME B1.1, ASTM", threadArea, boltSet)

type threadAreaGivens struct {
	D      float64 `sym:"d" unit:"mm" min:"0.5" max:"200" is:"nominal diameter"`
	P      float64 `sym:"P" unit:"mm" min:"0.05" max:"20" is:"pitch; 1/n of n threads to the inch"`
	Thread float64 `sym:"thread" choices:"metric|inch" default:"0" is:"series: which fits the stress area to the thread"`
	Need   float64 `sym:"A_req" unit:"mm^2" min:"0" max:"1e5" default:"0" is:"stress area that is needed"`
}

// threadArea is the tensile stress area: pi/4 (d - 0.9382 P)^2 of ISO 898-1, pi/4 (d - 0.9743/n)^2 of ASME B1.1. The root area is that of
// the tables, pi/4 (d - 1.3 P)^2; d_2 and d_3 are of the metric profile.
var threadArea = strength.Define(strength.Identity{
	ID: "thread-stress-area", Title: "areas of a thread",
	Clause: strength.Clause{Document: "ISO 898-1; ASME B1.1", Edition: "as read in tables", Section: "tensile stress area"},
	Demand: "A_req", Capacity: "A_s", Unit: "mm^2",
}, func(c *strength.Calc, g threadAreaGivens) {
	k := threadDepth(g.Thread)
	c.Need(g.D > 1.3*g.P, "d > 1.3*P", "a core within the thread")
	c.Let("d_2", "d - 0.6495*P", "mm", g.D-0.6495*g.P)
	c.Let("d_3", "d - 1.2269*P", "mm", g.D-1.2269*g.P)
	c.Let("A_r", "pi/4*pow(d - 1.3*P, 2)", "mm^2", math.Pi/4*sq(g.D-1.3*g.P))
	c.Compare(g.Need, c.Let("A_s", "pi/4*pow(d - when(thread > 0, 0.9743, 0.9382)*P, 2)", "mm^2", math.Pi/4*sq(g.D-k*g.P)))
})

func threadDepth(inch float64) float64 {
	if inch > 0 {
		return 0.9743
	}
	return 0.9382
}

// stressArea is the stress area, or one that is given (tables print it to three figures).
func stressArea(c *strength.Calc, d, p, inch, given float64) float64 {
	A := given
	if given == 0 {
		A = math.Pi / 4 * sq(d-threadDepth(inch)*p)
	}
	return c.Let("A_s", "when(A_given > 0*mm*mm, A_given, pi/4*pow(d - when(thread > 0, 0.9743, 0.9382)*P, 2))", "mm^2", A)
}

type boltSetGivens struct {
	F      float64 `sym:"F" unit:"N" min:"0" max:"1e9" is:"tension on the set"`
	N      float64 `sym:"n" unit:"" min:"1" max:"1000" default:"1" step:"1" is:"bolts that share it alike"`
	D      float64 `sym:"d" unit:"mm" min:"1" max:"200" is:"nominal diameter"`
	P      float64 `sym:"P" unit:"mm" min:"0" max:"20" default:"0" is:"pitch; 1/n of n threads to the inch; may be left out beside a stress area"`
	Thread float64 `sym:"thread" choices:"metric|inch" default:"0" is:"series"`
	As     float64 `sym:"A_given" unit:"mm^2" min:"0" max:"1e5" default:"0" is:"stress area of one bolt as a table prints it; 0 to calculate it"`
	Grade  float64 `sym:"grade" choices:"given|SAE 2|SAE 5|SAE 8|A307|A325|A325 (before 2015)|A490|4.6|5.6|5.8|8.8|10.9|12.9|A2-70|A4-70|A4-80" default:"0" is:"grade or class, from its table by diameter; or strengths that are given"`
	Sp     float64 `sym:"S_p0" unit:"MPa" min:"0" max:"3000" default:"0" is:"proof strength, for strengths that are given"`
	Sy     float64 `sym:"S_y0" unit:"MPa" min:"0" max:"3000" default:"0" is:"yield strength, likewise"`
	Su     float64 `sym:"S_u0" unit:"MPa" min:"0" max:"3000" default:"0" is:"tensile strength, likewise"`
	Ny     float64 `sym:"n_y" unit:"" min:"1" max:"20" default:"1.5" is:"factor on yield: 1.5, common practice, no source"`
	Nu     float64 `sym:"n_u" unit:"" min:"1" max:"20" default:"4" is:"factor on tensile strength: 4, 49 CFR 178.338-13(a)"`
}

// boltGrades are the grades of boltSet's choice, in its order; the first is none.
var boltGrades = []string{
	"", "SAE 2", "SAE 5", "SAE 8", "A307", "A325", "A325 (before 2015)", "A490", "4.6", "5.6", "5.8", "8.8", "10.9", "12.9", "A2-70", "A4-70", "A4-80",
}

// boltSet shows what is easily confused: the load at which bolts of a grade keep their length (proof), begin to stretch for good (yield), break
// (tensile), and the load that a joint may count on (allowable). The allowable is compared.
var boltSet = strength.Define(strength.Identity{
	ID: "bolt-set", Title: "proof, yield, tensile and allowable load of a set of bolts",
	Clause: strength.Clause{Document: "SAE J429; ISO 898-1; ISO 3506-1; ASTM", Edition: "as in the materials list", Section: "mechanical properties", Words: "allowable load by chosen factors"},
	Demand: "F", Capacity: "P_all", Unit: "N",
}, func(c *strength.Calc, g boltSetGivens) {
	sp, sy, su, known := strengths(&g)
	if !known {
		c.Verdict, c.Why = strength.Outside, "the grade's table does not reach this diameter"
		c.Compare(math.Inf(1), 0)
		return
	}
	c.Need(g.As > 0 || g.P > 0, "A_given/pow(d, 2) + P/d > 0", "a stress area, or a pitch for it")
	c.Need(g.D > 1.3*g.P, "d > 1.3*P", "a core within the thread")
	As := stressArea(c, g.D, g.P, g.Thread, g.As)
	Sp := c.Solved("S_p", "proof strength: given, or of the grade at this diameter; 0 where its standard has none", "MPa", sp)
	Sy := c.Solved("S_y", "yield strength: given, or of the grade at this diameter", "MPa", sy)
	Su := c.Solved("S_u", "tensile strength: given, or of the grade at this diameter", "MPa", su)
	c.Let("P_proof", "n*A_s*S_p", "N", g.N*As*Sp)
	Py := c.Let("P_yield", "n*A_s*S_y", "N", g.N*As*Sy)
	Pu := c.Let("P_tensile", "n*A_s*S_u", "N", g.N*As*Su)
	c.Compare(g.F, c.Let("P_all", "min(P_yield/n_y, P_tensile/n_u)", "N", min(Py/g.Ny, Pu/g.Nu)))
})

// strengths are those given, or the grade's at the diameter; false where its table does not reach.
func strengths(g *boltSetGivens) (proof, yield, tensile float64, known bool) {
	if g.Grade == 0 {
		return g.Sp, g.Sy, g.Su, true
	}
	grade, err := material.LookupBoltGrade(boltGrades[int(g.Grade)])
	if err != nil {
		return 0, 0, 0, false
	}
	proof, yield, tensile, err = grade.Strength(g.D)
	return proof, yield, tensile, err == nil
}
