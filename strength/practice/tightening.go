package practice

// A set of bolts and its preload, for any basis: proof, yield, tensile and allowable load side by side; separation; torque with its scatter.

import "lugwright/strength"

type setGivens struct {
	T  float64 `sym:"T" unit:"N" min:"0" max:"1e9" is:"tension of the worst bolt"`
	N  float64 `sym:"n" unit:"" min:"1" max:"1000" default:"1" step:"1" is:"bolts"`
	As float64 `sym:"A_s" unit:"mm^2" min:"0.1" max:"2e4" is:"stress area of one bolt"`
	Sp float64 `sym:"S_p" unit:"MPa" min:"0" max:"3000" is:"proof strength of the grade; 0 where its standard has none"`
	Sy float64 `sym:"S_y" unit:"MPa" min:"50" max:"3000" is:"yield strength of the grade"`
	Su float64 `sym:"S_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the grade"`
	T1 float64 `sym:"T_1" unit:"N" min:"0" max:"1e9" is:"tension that the basis allows one bolt, its check bolt-tension"`
}

// BoltSet shows the loads of a set that are easily taken for each other: at which bolts keep their length (proof), stretch for good (yield), break (tensile), and
// what a joint may count on (allowable), which is compared.
var BoltSet = strength.Define(strength.Identity{
	ID: "bolt-set-loads", Title: "proof, yield, tensile and allowable load of the bolts", Unruled: true,
	Clause: strength.Clause{Words: "strengths of the bolt grade; allowable load by this basis's bolt-tension"},
	Demand: "F", Capacity: "P_all", Unit: "N",
}, func(c *strength.Calc, g setGivens) {
	c.Let("P_proof", "n*A_s*S_p", "N", g.N*g.As*g.Sp)
	c.Let("P_yield", "n*A_s*S_y", "N", g.N*g.As*g.Sy)
	c.Let("P_tensile", "n*A_s*S_u", "N", g.N*g.As*g.Su)
	F := c.Let("F", "n*T", "N", g.N*g.T)
	c.Compare(F, c.Let("P_all", "n*T_1", "N", g.N*g.T1))
})

// BoltSetRules serve a basis whose rule for one bolt in tension compares forces, or stresses on the stress area.
func BoltSetRules(tension strength.Rule[strength.Bolt]) []strength.Rule[strength.BoltSet] {
	stress := tension.Of.Ident().Unit == "MPa"
	return []strength.Rule[strength.BoltSet]{{Of: BoltSet, Check: func(c *strength.Calc, f *strength.BoltSet) {
		f.Bolt.T = f.T
		tension.Check(c, &f.Bolt)
		one := c.Capacity
		if stress {
			one *= f.Bolt.As
		}
		BoltSet.Check(c, setGivens{T: f.T, N: f.N, As: f.Bolt.As, Sp: f.Fp, Sy: f.Fy, Su: f.Fu, T1: one})
	}}}
}

// Scatter of a preload by torque wrench, and what a metal joint loses by settling.
const (
	wrench  = 0.35
	settled = 0.05
)

type separationGivens struct {
	T    float64 `sym:"T" unit:"N" min:"0" max:"1e9" is:"tension of the worst bolt, service level"`
	As   float64 `sym:"A_s" unit:"mm^2" min:"0.1" max:"2e4" is:"stress area"`
	Sy   float64 `sym:"S_y" unit:"MPa" min:"50" max:"3000" is:"yield strength of the bolt"`
	Su   float64 `sym:"S_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the bolt"`
	K    float64 `sym:"k_P" unit:"" min:"0" max:"1" is:"preload as a part of S_u A_s"`
	G    float64 `sym:"G" unit:"" min:"0" max:"0.9" default:"0.35" is:"uncertainty of the preload: 0.35 by torque wrench (NASA-STD-5020, from memory)"`
	Loss float64 `sym:"k_loss" unit:"" min:"0" max:"0.9" default:"0.05" is:"part of the least preload lost by settling: 0.05 metal joints (common practice, no source)"`
}

// BoltSeparation holds the least preload against the tension that opens the joint: the form of NASA-STD-5020, from memory, with the whole of the tension
// unloading the faces.
var BoltSeparation = strength.Define(strength.Identity{
	ID: "bolt-separation", Title: "separation of the preloaded joint", Unruled: true,
	Clause: strength.Clause{Words: "common practice, no source; form of NASA-STD-5020 (from memory)"},
	Demand: "T", Capacity: "P_min", Unit: "N",
}, func(c *strength.Calc, g separationGivens) {
	unyielding(c, g.K, g.Sy, g.Su)
	P := c.Let("P", "k_P*S_u*A_s", "N", g.K*g.Su*g.As)
	c.Compare(g.T, c.Let("P_min", "(1 - k_loss)*(1 - G)*P", "N", (1-g.Loss)*(1-g.G)*P))
})

type boltTorqueGivens struct {
	D  float64 `sym:"d" unit:"mm" min:"1" max:"200" is:"nominal diameter"`
	As float64 `sym:"A_s" unit:"mm^2" min:"0.1" max:"2e4" is:"stress area"`
	Sy float64 `sym:"S_y" unit:"MPa" min:"50" max:"3000" is:"yield strength of the bolt"`
	Su float64 `sym:"S_u" unit:"MPa" min:"50" max:"3000" is:"tensile strength of the bolt"`
	K  float64 `sym:"k_P" unit:"" min:"0" max:"1" is:"preload as a part of S_u A_s"`
	KD float64 `sym:"K" unit:"" min:"0.05" max:"0.5" default:"0.2" is:"nut factor: 0.15 lubricated, 0.17 zinc dry, 0.20 plain dry (makers' charts)"`
	G  float64 `sym:"G" unit:"" min:"0" max:"0.9" default:"0.35" is:"uncertainty of the preload: 0.35 by torque wrench"`
}

// BoltTorque is the torque for a preload, the least and the greatest preload that it brings, and what it would bring into a lubricated thread: no wrench
// may break a bolt by its scatter.
var BoltTorque = strength.Define(strength.Identity{
	ID: "bolt-torque", Title: "torque for the preload, and its scatter", Unruled: true, Detail: true,
	Clause: strength.Clause{Words: "T = K d F, bolt makers' charts; scatter common practice, no source"},
	Demand: "P_max", Capacity: "P_tensile", Unit: "N",
}, func(c *strength.Calc, g boltTorqueGivens) {
	unyielding(c, g.K, g.Sy, g.Su)
	P := c.Let("P", "k_P*S_u*A_s", "N", g.K*g.Su*g.As)
	c.Let("T_0", "K*d*P", "N*mm", g.KD*g.D*P)
	c.Let("T_lub", "0.15*d*P", "N*mm", 0.15*g.D*P)
	c.Let("P_min", "(1 - G)*P", "N", (1-g.G)*P)
	high := c.Let("P_max", "(1 + G)*P", "N", (1+g.G)*P)
	c.Compare(high, c.Let("P_tensile", "S_u*A_s", "N", g.Su*g.As))
})

// unyielding asks for a bolt that bears its preload: mild ones yield under 0.70 of their tensile strength.
func unyielding(c *strength.Calc, k, sy, su float64) {
	c.Need(k*su <= sy, "k_P*S_u <= S_y", "the bolt does not yield under its preload")
}

// PreloadRules serve groups with a stated preload on any basis.
var PreloadRules = []strength.Rule[strength.BoltSet]{
	{Of: BoltSeparation, Check: func(c *strength.Calc, f *strength.BoltSet) {
		BoltSeparation.Check(c, separationGivens{T: f.T / f.Service, As: f.Bolt.As, Sy: f.Fy, Su: f.Fu, K: f.Bolt.Preload, G: wrench, Loss: settled})
	}},
	{Of: BoltTorque, Check: func(c *strength.Calc, f *strength.BoltSet) {
		BoltTorque.Check(c, boltTorqueGivens{D: f.Bolt.D, As: f.Bolt.As, Sy: f.Fy, Su: f.Fu, K: f.Bolt.Preload, KD: 0.2, G: wrench})
	}},
}

// fullPreload is what codes ask of bolts in joints that must not slip: 0.70 of the tensile strength, AISC 360-22 J3.2 and EN 1993-1-8, 3.9.1.
const fullPreload = 0.70

// FullPreload puts slip of a bolt that is tightened less outside the rule.
func FullPreload(c *strength.Calc, f *strength.Bolt) {
	if f.Preload < fullPreload-1e-9 {
		c.RuleOut("the code speaks of bolts tightened to 0.70 of their tensile strength, and less is stated")
	}
}
