package vehicle

import "lugwright/part"

// The load sets that come with the program. No public table of accelerations for bodies mounted on off-road vehicles was found, so that set is the
// builder's choice and says so; the cargo sets are about cargo and the tank sets about tanks, and no set covers a crash or a roll-over. The military
// transport tie-down factors (4 g fore and aft) are left out: they are for lashing a vehicle to a ship or a railway wagon.

// ShippedSets lists them, the one for off-road bodies first.
func ShippedSets() []LoadSet {
	return []LoadSet{offRoad(), cargoBreaking(), cargoWorking(), insurers(), ammonia(), cryogenic(true), cryogenic(false)}
}

// OffRoad is the id of the builder's-choice set.
const OffRoad = "off-road"

func service(id, name string, x, y, z float64) LoadLine {
	return LoadLine{ID: id, Name: name, AccelG: part.Vec{X: x, Y: y, Z: z}, Level: part.Service}
}

func offRoad() LoadSet {
	s := LoadSet{
		ID: OffRoad, Name: "off-road body, builder's choice", BuildersChoice: true, Source: "builder's choice",
		Says:   "nothing: no published table of accelerations for off-road body mounts was found; A4 and A5 have the accelerations of 49 CFR 393.102(a)(1)",
		Turned: "chosen as apparent accelerations; the actual ones at service level, with no load factor inside",
		Lines: []LoadLine{
			service("A1", "standing still", 0, 0, -1),
			service("A2", "bump, 3 g down", 0, 0, -3),
			service("A3", "rebound, 1 g net up", 0, 0, 1),
			service("A4", "brake 0.8 g", -0.8, 0, -1),
			service("A5", "corner or side slope, 0.5 g", 0, -0.5, -1),
			service("A6", "off-road side 1 g", 0, -1, -1),
			service("A7", "off-road front stop 2 g", -2, 0, -1),
			service("A8", "rearward 1 g", 1, 0, -1),
			service("A9", "2 g down, 1 g forward and 0.5 g side", -1, -0.5, -2),
		},
	}
	s.Lines[3].Source = "builder's choice; the acceleration of 49 CFR 393.102(a)(1)(i)"
	s.Lines[4].Source = "builder's choice; the acceleration of 49 CFR 393.102(a)(1)(iii)"
	return s
}

const cargoTurned = "a deceleration in the forward direction throws the cargo forward (-x), one at a time, each with gravity; the 20 % hold-down is taken as a " +
	"net pull up of 0.2 of the weight. Service level: they are accelerations that a vehicle reaches, and a design basis adds its load factors"

func cargoBreaking() LoadSet {
	return LoadSet{
		ID: "cargo-breaking", Name: "US cargo securement, against breaking strength", Source: "49 CFR 393.102(a)(1)",
		Says: "forces on securing devices do not exceed their breaking strength under, applied separately, 0.8 g deceleration in the forward direction, 0.5 g " +
			"acceleration in the rearward direction, 0.5 g acceleration in a lateral direction; (b) a downward force of at least 20 % of the weight if " +
			"the article is not fully contained",
		Turned: cargoTurned,
		Lines: []LoadLine{
			service("CB1", "forward 0.8 g", -0.8, 0, -1),
			service("CB2", "rearward 0.5 g", 0.5, 0, -1),
			service("CB3", "side 0.5 g", 0, -0.5, -1),
			holdDown("CB4"),
		},
	}
}

func cargoWorking() LoadSet {
	return LoadSet{
		ID: "cargo-working", Name: "US cargo securement, against working load limit", Source: "49 CFR 393.102(a)(2)",
		Says: "forces on securing devices do not exceed their working load limit under, applied separately, 0.435 g deceleration in the forward direction, " +
			"0.5 g acceleration in the rearward direction, 0.25 g acceleration in a lateral direction; (b) as in the breaking-strength set",
		Turned: cargoTurned,
		Lines: []LoadLine{
			service("CW1", "forward 0.435 g", -0.435, 0, -1),
			service("CW2", "rearward 0.5 g", 0.5, 0, -1),
			service("CW3", "side 0.25 g", 0, -0.25, -1),
			holdDown("CW4"),
		},
	}
}

func holdDown(id string) LoadLine {
	l := service(id, "hold-down, 0.2 g net up", 0, 0, 0.2)
	l.Source = "49 CFR 393.102(b)"
	return l
}

func insurers() LoadSet {
	s := LoadSet{
		ID: "cargo-insurers", Name: "European insurers' road values", Source: "European transport insurers' load-securing handbook, load assumptions",
		Says: "0.8 g forward, 0.5 g rearward, 0.5 g sideways on the road with the vertical taken as 1.0 g; some states ask for 1.0 g forward",
		Turned: "each horizontal value on its own with gravity; forward throws the load forward (-x). Service level: accelerations that a vehicle " +
			"reaches",
		Lines: []LoadLine{
			service("E1", "forward 0.8 g", -0.8, 0, -1),
			service("E2", "forward 1 g, where a state asks for it", -1, 0, -1),
			service("E3", "rearward 0.5 g", 0.5, 0, -1),
			service("E4", "side 0.5 g", 0, -0.5, -1),
		},
	}
	return s
}

func ammonia() LoadSet {
	return LoadSet{
		ID: "tank-ammonia", Name: "tank attachment, US state ammonia rules", Source: "WAC 296-826-60005; Minn. R. 1513.0720", OnUltimate: 4,
		Says: "attachment of a container to the chassis is based on 2 g in either direction, with a factor of at least 4 on the strength of the material: for " +
			"load support three times the static weight, for bending, acceleration and torsion twice the static weight applied horizontally at " +
			"the road surface",
		Turned: "three times the weight down is (0, 0, -3), gravity in it; twice the weight horizontally acts at the centre of gravity, higher and worse for " +
			"the mounts than at the road, each way on its own, with gravity. Service level; the factor of 4 is not in it",
		Lines: []LoadLine{
			service("T1", "load support, 3 x weight", 0, 0, -3),
			service("T2", "forward 2 x weight", -2, 0, -1),
			service("T3", "rearward 2 x weight", 2, 0, -1),
			service("T4", "side 2 x weight", 0, -2, -1),
		},
	}
}

func cryogenic(vacuum bool) LoadSet {
	s := LoadSet{
		ID: "tank-insulated", Name: "insulated cargo tank supports", Source: "49 CFR 178.338-13(a)(2)", OnUltimate: 4,
		Says: "supports are designed with a factor of four on tensile strength for static loadings of the weight of the full tank multiplied by: 3 vertically " +
			"downward, 2 vertically upward, 2 longitudinally, 2 laterally; fatigue is considered too",
		Turned: "the factors multiply the weight, so that 3 downward is (0, 0, -3), gravity in it, and 2 upward a net pull up of twice the weight; the horizontal " +
			"ones act one at a time with gravity. Service level; the factor of four is not in it",
		Lines: []LoadLine{
			service("I1", "downward 3 x weight", 0, 0, -3),
			service("I2", "upward 2 x weight", 0, 0, 2),
			service("I3", "forward 2 x weight", -2, 0, -1),
			service("I4", "rearward 2 x weight", 2, 0, -1),
			service("I5", "side 2 x weight", 0, -2, -1),
		},
	}
	if vacuum {
		s.ID, s.Name, s.Source = "tank-vacuum", "vacuum-insulated cargo tank supports", "49 CFR 178.338-13(a)(1)"
		s.Says = "supports are designed with a factor of four on tensile strength for static loadings of the weight of the full tank multiplied by 2: vertically " +
			"downward, vertically upward, longitudinally, laterally; fatigue is considered too"
		s.Turned = "the factors multiply the weight, so that 2 downward is (0, 0, -2), gravity in it, and 2 upward a net pull up of twice the weight; the " +
			"horizontal ones act one at a time with gravity. Service level; the factor of four is not in it"
		s.Lines[0] = service("I1", "downward 2 x weight", 0, 0, -2)
		for i := range s.Lines {
			s.Lines[i].ID = "V" + s.Lines[i].ID[1:]
		}
	}
	return s
}
