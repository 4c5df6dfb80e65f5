package vehicle

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"lugwright/part"
	"lugwright/vehicle/field"
)

// Sizes beyond which a number is taken as a slip of units or an attack.
const (
	maxMassKG    = 1e5
	maxPlaceMM   = 1e5
	maxAccelG    = 100
	maxItems     = 500
	maxTanks     = 100
	maxMounts    = 40
	maxCases     = 200
	maxStiffness = 1e8 // N/mm
	minStiffness = 0.1
	maxTurn      = 1e13 // N*mm/rad
	minTurn      = 1e4
	maxName      = 100
)

// checker gathers refused fields.
type checker struct{ field.Errors }

// optional wants nothing, 0, or lo <= x <= hi.
func (c *checker) optional(field string, x, lo, hi float64) {
	if x != 0 && !(x >= lo && x <= hi) {
		c.Refuse(field, fmt.Sprintf("%g", x), fmt.Sprintf("%g to %g, or nothing", lo, hi))
	}
}

func (c *checker) place(field string, at part.Vec) {
	for i, x := range []float64{at.X, at.Y, at.Z} {
		c.Between(field+"."+directions[i], x, -maxPlaceMM, maxPlaceMM)
	}
}

// name wants a name not in seen, and adds it.
func (c *checker) name(field, name string, seen map[string]bool) {
	switch {
	case name == "" || len(name) > maxName:
		c.Refuse(field, fmt.Sprintf("%.20q", name), fmt.Sprintf("a name of 1 to %d letters", maxName))
	case seen[name]:
		c.Refuse(field, fmt.Sprintf("the name %q is used twice", name), "another name")
	}
	seen[name] = true
}

func (c *checker) doubt(field string, d Doubt, kg float64) {
	if d.Confidence != "" && !slices.Contains(Confidences(), d.Confidence) {
		c.Refuse(field+".confidence", fmt.Sprintf("%.20q", string(d.Confidence)), "weighed, data or guess")
	}
	c.Between(field+".plus_minus_percent", d.PlusMinusPercent, 0, 100)
	if !(kg > 0) {
		kg = maxMassKG // refused as a mass
	}
	c.Between(field+".plus_minus_kg", d.PlusMinusKG, 0, kg)
	if d.PlusMinusPercent > 0 && d.PlusMinusKG > 0 {
		c.Refuse(field+".plus_minus_kg", "stated in kg and in percent", "one of the two")
	}
}

func (c *checker) vehicle(v *Vehicle) {
	const at = "vehicle."
	c.Between(at+"wheelbase_mm", v.WheelbaseMM, 500, 30000)
	c.optional(at+"front_track_mm", v.FrontTrackMM, 300, 10000)
	c.optional(at+"rear_track_mm", v.RearTrackMM, 300, 10000)
	c.Positive(at+"cab.front_kg", v.Cab.FrontKG, maxMassKG)
	c.Between(at+"cab.rear_kg", v.Cab.RearKG, 0, maxMassKG)
	c.Between(at+"cab.cg_y_mm", v.Cab.CGYMM, -5000, 5000)
	c.optional(at+"cab.cg_z_mm", v.Cab.CGZMM, 1, 10000)
	c.doubt(at+"cab", v.Cab.Doubt, v.Cab.FrontKG+v.Cab.RearKG)
	c.optional(at+"ratings.gross_kg", v.Ratings.GrossKG, 1, maxMassKG)
	c.optional(at+"ratings.front_kg", v.Ratings.FrontKG, 1, maxMassKG)
	c.optional(at+"ratings.rear_kg", v.Ratings.RearKG, 1, maxMassKG)
	if len(v.Items) > maxItems {
		c.Refuse(at+"items", fmt.Sprintf("%d items", len(v.Items)), fmt.Sprintf("at most %d", maxItems))
		return
	}
	if len(v.Tanks) > maxTanks {
		c.Refuse(at+"tanks", fmt.Sprintf("%d tanks", len(v.Tanks)), fmt.Sprintf("at most %d", maxTanks))
		return
	}
	seen := map[string]bool{}
	for i := range v.Items {
		m, f := &v.Items[i], fmt.Sprintf("%sitems[%d]", at, i)
		c.name(f+".name", m.Name, seen)
		c.Positive(f+".mass_kg", m.MassKG, maxMassKG)
		c.place(f+".at_mm", m.At)
		c.doubt(f, m.Doubt, m.MassKG)
		c.carrier(f+".rides_on", m.RidesOn)
	}
	for i := range v.Tanks {
		c.tank(fmt.Sprintf("%stanks[%d]", at, i), &v.Tanks[i], seen)
	}
}

func (c *checker) carrier(field, name string) {
	if len(name) > maxName {
		c.Refuse(field, fmt.Sprintf("%.20q", name), "the name of a body, or chassis")
	}
}

func (c *checker) tank(f string, t *Tank, seen map[string]bool) {
	c.name(f+".name", t.Name, seen)
	c.Positive(f+".capacity_l", t.CapacityL, maxMassKG)
	c.Positive(f+".fluid.density_kg_per_l", t.Fluid.DensityKGPerL, 25)
	c.Between(f+".empty_kg", t.EmptyKG, 0, maxMassKG)
	c.place(f+".at_mm", t.At)
	c.doubt(f, t.Doubt, t.EmptyKG+t.CapacityL*t.Fluid.DensityKGPerL)
	c.carrier(f+".rides_on", t.RidesOn)
	if t.Box == (Box{}) {
		return
	}
	long := c.Positive(f+".box.length_mm", t.Box.LengthMM, maxPlaceMM)
	wide := c.Positive(f+".box.width_mm", t.Box.WidthMM, maxPlaceMM)
	high := c.Positive(f+".box.height_mm", t.Box.HeightMM, maxPlaceMM)
	if litres := t.Box.LengthMM * t.Box.WidthMM * t.Box.HeightMM / 1e6; long && wide && high && t.CapacityL > litres*1.001 {
		c.Refuse(f+".capacity_l", fmt.Sprintf("%g L in a box of %.4g L", t.CapacityL, litres), "a box that holds the capacity")
	}
}

func (c *checker) states(v *Vehicle, states []State) {
	if len(states) == 0 || len(states) > MaxStates {
		c.Refuse("states", fmt.Sprintf("%d states", len(states)), fmt.Sprintf("1 to %d", MaxStates))
		return
	}
	seen := map[string]bool{}
	for i := range states {
		s, f := &states[i], fmt.Sprintf("states[%d]", i)
		c.name(f+".name", s.Name, seen)
		tanks, items := map[string]bool{}, map[string]bool{}
		for k, fill := range s.Fills {
			field := fmt.Sprintf("%s.fills[%d]", f, k)
			if !slices.ContainsFunc(v.Tanks, func(t Tank) bool { return t.Name == fill.Tank }) {
				c.Refuse(field+".tank", fmt.Sprintf("no tank %.40q", fill.Tank), "the name of a tank")
			} else if tanks[fill.Tank] {
				c.Refuse(field+".tank", fmt.Sprintf("%q is filled twice", fill.Tank), "each tank once")
			}
			tanks[fill.Tank] = true
			if !(fill.Level >= 0 && fill.Level <= 1) {
				c.Refuse(field+".level", fmt.Sprintf("%g of the capacity", fill.Level), "0 (empty) to 1 (full)")
			}
		}
		for k, name := range s.Present {
			field := fmt.Sprintf("%s.present[%d]", f, k)
			n := slices.IndexFunc(v.Items, func(m Item) bool { return m.Name == name })
			switch {
			case n < 0:
				c.Refuse(field, fmt.Sprintf("no item %.40q", name), "the name of an optional item")
			case !v.Items[n].Optional:
				c.Refuse(field, fmt.Sprintf("%q is always on board", name), "the name of an optional item")
			case items[name]:
				c.Refuse(field, fmt.Sprintf("%q is on board twice", name), "each item once")
			}
			items[name] = true
		}
	}
}

func (c *checker) sets(sets []LoadSet) {
	ids, lines := map[string]bool{}, map[string]bool{}
	n := 0
	for i := range sets {
		s, f := &sets[i], fmt.Sprintf("load_sets[%d]", i)
		c.name(f+".id", s.ID, ids)
		c.optional(f+".on_ultimate", s.OnUltimate, 1, 100)
		if n += len(s.Lines); len(s.Lines) == 0 || n > maxCases {
			c.Refuse(f+".lines", fmt.Sprintf("%d lines", len(s.Lines)), fmt.Sprintf("1 to %d in all", maxCases))
			return
		}
		for k := range s.Lines {
			l, field := &s.Lines[k], fmt.Sprintf("%s.lines[%d]", f, k)
			c.name(field+".id", l.ID, lines)
			c.accel(field, l.AccelG, l.Level)
			if l.Source == "" && s.Source == "" {
				c.Refuse(field+".source", "nothing", "where the acceleration comes from: a published rule, or builder's choice")
			}
		}
	}
}

func (c *checker) accel(field string, a part.Vec, level part.Level) {
	for i, x := range []float64{a.X, a.Y, a.Z} {
		c.Between(field+".accel_g."+directions[i], x, -maxAccelG, maxAccelG)
	}
	if a == (part.Vec{}) {
		c.Refuse(field+".accel_g", "0 in every direction", "an apparent acceleration, gravity included: standing still is 0, 0, -1")
	}
	if level != part.Service && level != part.Factored {
		c.Refuse(field+".level", fmt.Sprintf("%.20q", string(level)), "service or factored")
	}
}

func (c *checker) cases(cases []Case) {
	if len(cases) == 0 || len(cases) > 2*maxCases {
		c.Refuse("cases", fmt.Sprintf("%d cases", len(cases)), fmt.Sprintf("1 to %d", 2*maxCases))
		return
	}
	seen := map[string]bool{}
	for i := range cases {
		field := fmt.Sprintf("cases[%d]", i)
		c.name(field+".id", cases[i].ID, seen)
		c.optional(field+".on_ultimate", cases[i].OnUltimate, 1, 100)
		c.accel(field, cases[i].AccelG, cases[i].Level)
	}
}

// body checks a set of mounts, found at a path such as "body".
func (c *checker) body(path string, b *Body) {
	if len(b.Mounts) == 0 || len(b.Mounts) > maxMounts {
		c.Refuse(path+".mounts", fmt.Sprintf("%d mounts", len(b.Mounts)), fmt.Sprintf("1 to %d: where the body stands on the vehicle", maxMounts))
		return
	}
	if carrier(b.Name) == Chassis || len(b.Name) > maxName {
		c.Refuse(path+".name", fmt.Sprintf("%.20q", b.Name), "a body's name; what rides on the chassis has no mounts")
	}
	seen := map[string]bool{}
	held := false
	for i := range b.Mounts {
		m, f := &b.Mounts[i], fmt.Sprintf("%s.mounts[%d]", path, i)
		c.name(f+".name", m.Name, seen)
		c.place(f+".at_mm", m.At)
		for dir := range 3 {
			c.restraint(f+"."+directions[dir], m.restraint(dir))
			held = held || m.restraint(dir).Way != Free && m.restraint(dir).Way != ""
		}
		for dir := 3; dir < 6; dir++ {
			t := m.turn(dir)
			c.optional(f+"."+directions[dir]+".stiffness_n_mm_per_rad", t.StiffnessNMMPerRad, minTurn, maxTurn)
			held = held || t.Held
		}
	}
	if !held {
		c.Refuse(path+".mounts", "no mount holds anything", "for each mount the directions it holds")
	}
	used := map[string]bool{}
	for i := range b.Shares {
		c.share(fmt.Sprintf("%s.shares[%d]", path, i), b, &b.Shares[i], used)
	}
}

func (c *checker) restraint(f string, r Restraint) {
	if r.Way != "" && !slices.Contains(Ways(), r.Way) {
		c.Refuse(f+".way", fmt.Sprintf("%.20q", string(r.Way)), "free, both, plus or minus")
	}
	c.optional(f+".stiffness_n_per_mm", r.StiffnessNPerMM, minStiffness, maxStiffness)
	c.optional(f+".minus_n_per_mm", r.MinusNPerMM, minStiffness, maxStiffness)
	c.Between(f+".gap_mm", r.GapMM, 0, 1000)
	if r.MinusNPerMM > 0 && r.Way != Both {
		c.Refuse(f+".minus_n_per_mm", "a second stiffness of what does not act both ways", "stiffness_n_per_mm alone")
	}
}

func (c *checker) share(f string, b *Body, s *Share, used map[string]bool) {
	dir := slices.Index(directions[:3], s.Direction)
	if dir < 0 {
		c.Refuse(f+".direction", fmt.Sprintf("%.20q", s.Direction), "x, y or z")
		return
	}
	if len(s.Mounts) < 2 {
		c.Refuse(f+".mounts", fmt.Sprintf("%d mounts", len(s.Mounts)), "two or more that share")
		return
	}
	ways := map[Way]bool{}
	for k, name := range s.Mounts {
		field := fmt.Sprintf("%s.mounts[%d]", f, k)
		i := slices.IndexFunc(b.Mounts, func(m Mount) bool { return m.Name == name })
		key := s.Direction + " " + name
		switch {
		case i < 0:
			c.Refuse(field, fmt.Sprintf("no mount %.40q", name), "the name of a mount")
			continue
		case used[key]:
			c.Refuse(field, fmt.Sprintf("%q shares %s twice", name, s.Direction), "each mount in one share of a direction")
		}
		used[key] = true
		way := b.Mounts[i].restraint(dir).Way
		if way == Free || way == "" {
			c.Refuse(field, fmt.Sprintf("%q does not hold %s", name, s.Direction), "a mount that holds it")
		}
		ways[way] = true
	}
	if len(s.Fractions) == 0 {
		return
	}
	if len(s.Fractions) != len(s.Mounts) {
		c.Refuse(f+".fractions", fmt.Sprintf("%d fractions of %d mounts", len(s.Fractions), len(s.Mounts)), "one for each mount, or none")
		return
	}
	sum := 0.0
	for k, x := range s.Fractions {
		c.Between(fmt.Sprintf("%s.fractions[%d]", f, k), x, 0, 1)
		sum += x
	}
	if !(math.Abs(sum-1) < 1e-6) {
		c.Refuse(f+".fractions", fmt.Sprintf("a sum of %g", sum), "a sum of 1")
	}
	if ways[PlusOnly] && ways[MinusOnly] {
		c.Refuse(f+".mounts", "some push towards plus alone and some towards minus", "mounts that can act together")
	}
}

func list(names []string) string {
	if len(names) < 2 {
		return strings.Join(names, "")
	}
	return strings.Join(names[:len(names)-1], ", ") + " and " + names[len(names)-1]
}
