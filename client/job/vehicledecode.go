package job

// This file turns the section vehicle into a request of the strength service, and notes which field of it comes from where.

import (
	"fmt"
	"slices"

	"lugwright/client/table"
	"lugwright/part"
	"lugwright/vehicle"
	"lugwright/vehicle/clearance"
	"lugwright/vehicle/drill"
	"lugwright/vehicle/frame"
	"lugwright/vehicle/hung"
	"lugwright/vehicle/lift"
	"lugwright/vehicle/whole"
)

// decodeVehicle gives nil where the job has no vehicle. Parts that were refused are zero.
func decodeVehicle(title string, v *table.Value) *Vehicle {
	if v == nil {
		return nil
	}
	d := &vehicleDecoder{out: &Vehicle{paths: map[string]string{"": "vehicle"}}}
	if riding(v) {
		d.vehicle(title, v)
		d.states(v)
	}
	d.cases(v)
	d.mounts(v.Field("mounts"))
	d.shares(v.Field("shares"))
	d.frame(v)
	d.drilling(v)
	d.clearance(v)
	d.lift(v.Field("lift"))
	d.hung(v)
	d.whatIf(v)
	return d.out
}

// riding says whether a vehicle's weights are asked for, and not trays or holes alone.
func riding(v *table.Value) bool {
	for _, name := range []string{"wheelbase", "chassis_cab", "masses", "tanks", "mounts", "states", "all_combinations", "lift", "what_if", "as_weighed"} {
		if v.Field(name) != nil {
			return true
		}
	}
	return false
}

type vehicleDecoder struct{ out *Vehicle }

// note says that a field of the request comes from one of the file.
func (d *vehicleDecoder) note(request, file string, a ...any) {
	d.out.paths[request] = fmt.Sprintf(file, a...)
}

// ref is the number of a field, nil where it is left out.
func ref(v *table.Value) *float64 {
	if v == nil {
		return nil
	}
	n := v.Number()
	return &n
}

func yes(v *table.Value) bool { return v.Words() == "yes" }

func decodeDoubt(v *table.Value) vehicle.Doubt {
	return vehicle.Doubt{Confidence: vehicle.Confidence(v.Field("known").Words()), PlusMinusKG: v.Field("give_or_take").Number()}
}

func (d *vehicleDecoder) vehicle(title string, v *table.Value) {
	ratings, cab := v.Field("ratings"), v.Field("chassis_cab")
	out := &vehicle.Vehicle{
		Name: title, WheelbaseMM: v.Field("wheelbase").Number(), FrontTrackMM: v.Field("front_track").Number(), RearTrackMM: v.Field("rear_track").Number(),
		Cab: vehicle.ChassisCab{
			FrontKG: cab.Field("front").Number(), RearKG: cab.Field("rear").Number(), CGYMM: cab.Field("left").Number(), CGZMM: cab.Field("height").Number(), Doubt: decodeDoubt(cab),
		},
		Ratings: vehicle.Ratings{GrossKG: ratings.Field("gross").Number(), FrontKG: ratings.Field("front").Number(), RearKG: ratings.Field("rear").Number()},
	}
	d.note("vehicle", "vehicle")
	d.note("vehicle.cab", "vehicle.chassis_cab")
	masses := v.Field("masses")
	for _, name := range masses.Keys() {
		m := masses.Field(name)
		d.note(fmt.Sprintf("vehicle.items[%d]", len(out.Items)), "vehicle.masses.%s", name)
		out.Items = append(out.Items, vehicle.Item{
			Name: name, MassKG: m.Field("mass").Number(), At: decodeVec(m), Doubt: decodeDoubt(m), Optional: yes(m.Field("optional")), RidesOn: m.Field("rides_on").Words(),
		})
	}
	tanks := v.Field("tanks")
	for _, name := range tanks.Keys() {
		t := tanks.Field(name)
		box := t.Field("box")
		d.note(fmt.Sprintf("vehicle.tanks[%d]", len(out.Tanks)), "vehicle.tanks.%s", name)
		out.Tanks = append(out.Tanks, vehicle.Tank{
			Name: name, CapacityL: t.Field("capacity").Number(), Fluid: vehicle.Fluid{Name: t.Field("fluid").Words(), DensityKGPerL: t.Field("density").Number()},
			EmptyKG: t.Field("empty").Number(), At: decodeVec(t), Doubt: decodeDoubt(t), RidesOn: t.Field("rides_on").Words(),
			Box: vehicle.Box{LengthMM: box.Field("length").Number(), WidthMM: box.Field("width").Number(), HeightMM: box.Field("height").Number()},
		})
	}
	d.out.Request.Vehicle = out
}

func (d *vehicleDecoder) states(v *table.Value) {
	q := &d.out.Request
	states := v.Field("states")
	d.note("states", "vehicle.states")
	switch {
	case states != nil:
		for i, name := range states.Keys() {
			s := states.Field(name)
			d.note(fmt.Sprintf("states[%d]", i), "vehicle.states.%s", name)
			out := vehicle.State{Name: name}
			fills := s.Field("fills")
			for _, tank := range fills.Keys() {
				out.Fills = append(out.Fills, vehicle.Fill{Tank: tank, Level: fills.Field(tank).Number()})
			}
			for _, item := range s.Field("aboard").List() {
				out.Present = append(out.Present, item.Words())
			}
			q.States = append(q.States, out)
		}
	case yes(v.Field("all_combinations")):
		q.States, _ = q.Vehicle.Combinations() // too many are refused in agree
	default:
		q.States = []vehicle.State{q.Vehicle.Empty()}
		if full := q.Vehicle.Full(); len(full.Fills)+len(full.Present) > 0 {
			q.States = append(q.States, full)
		}
	}
}

func (d *vehicleDecoder) cases(v *table.Value) {
	shipped, own := v.Field("load_sets"), v.Field("own_loads")
	d.note("cases", "vehicle.load_sets")
	if shipped == nil && own == nil {
		set, _ := vehicle.ShippedSet(vehicle.OffRoad)
		d.out.Sets = append(d.out.Sets, set)
	}
	for _, id := range shipped.List() {
		if set, err := vehicle.ShippedSet(id.Words()); err == nil {
			d.out.Sets = append(d.out.Sets, set)
		}
	}
	for _, name := range own.Keys() {
		d.note(fmt.Sprintf("load_sets[%d]", len(d.out.Sets)), "vehicle.own_loads.%s", name)
		d.out.Sets = append(d.out.Sets, decodeSet(name, own.Field(name)))
	}
	for i := range d.out.Sets {
		d.out.Request.Cases = append(d.out.Request.Cases, d.out.Sets[i].Cases()...)
	}
}

func decodeSet(name string, v *table.Value) vehicle.LoadSet {
	set := vehicle.LoadSet{ID: name, Name: name, Source: v.Field("source").Words(), OnUltimate: v.Field("on_ultimate").Number()}
	set.BuildersChoice = set.Source == "builder's choice"
	lines := v.Field("lines")
	for _, id := range lines.Keys() {
		l := lines.Field(id)
		line := vehicle.LoadLine{ID: id, Name: l.Field("words").Words(), AccelG: decodeVec(l), Level: part.Level(l.Field("level").Words()), Source: l.Field("source").Words()}
		if line.Level == "" {
			line.Level = part.Level(v.Field("level").Words())
		}
		if line.Name == "" {
			line.Name = id
		}
		set.Lines = append(set.Lines, line)
	}
	return set
}

func (d *vehicleDecoder) mounts(v *table.Value) {
	d.note("bodies", "vehicle.mounts")
	for _, entry := range v.Keys() {
		m := v.Field(entry)
		body := d.body(m.Field("body").Words())
		for _, made := range makeMounts(entry, m) {
			b := &d.out.Request.Bodies[body]
			d.note(fmt.Sprintf("bodies[%d].mounts[%d]", body, len(b.Mounts)), "vehicle.mounts.%s", entry)
			d.out.mounts = append(d.out.mounts, mountAt{made.Name, entry, body, len(b.Mounts)})
			b.Mounts = append(b.Mounts, made)
			d.stand(entry, made.Name, b.Name, m)
		}
	}
}

// body gives the number of a body, made where it is new.
func (d *vehicleDecoder) body(name string) int {
	if name == "" {
		name = vehicle.MainBody
	}
	q := &d.out.Request
	if i := slices.IndexFunc(q.Bodies, func(b vehicle.Body) bool { return b.Name == name }); i >= 0 {
		return i
	}
	q.Bodies = append(q.Bodies, vehicle.Body{Name: name})
	return len(q.Bodies) - 1
}

func (d *vehicleDecoder) stand(entry, mount, body string, v *table.Value) {
	on, tube := v.Field("on").Words(), v.Field("tube").Words()
	rail := map[string]frame.Rail{"left rail": frame.Left, "right rail": frame.Right, "both rails": frame.Both}[on]
	if on == "" && tube == "" {
		return
	}
	if tube != "" && on == "" {
		rail = frame.Both
	}
	q := &d.out.Request
	d.note(fmt.Sprintf("stands[%d]", len(q.Stands)), "vehicle.mounts.%s", entry)
	q.Stands = append(q.Stands, whole.Stand{Body: body, Mount: mount, Rail: rail, Tube: tube})
}

// makeMounts are the mounts of an entry: those of its kind, with what it holds otherwise.
func makeMounts(entry string, v *table.Value) []vehicle.Mount {
	at, half := decodeVec(v), v.Field("half_width").Number()
	var out []vehicle.Mount
	switch v.Field("kind").Words() {
	case singlePivot:
		out = []vehicle.Mount{vehicle.SinglePivot(entry, at)}
	case rigid:
		out = []vehicle.Mount{vehicle.Rigid(entry, at)}
	case clevisPair:
		out = vehicle.ClevisPair(entry+"-left", entry+"-right", at, half)
	case diamond:
		out = vehicle.FourPointDiamond(decodeVec(v.Field("front")), decodeVec(v.Field("rear")), at, half)
		for i, end := range []string{"front", "rear", "left", "right"} {
			out[i].Name = entry + "-" + end
		}
	case longRail:
		var stations []float64
		for _, x := range v.Field("stations").List() {
			stations = append(stations, x.Number())
		}
		out = vehicle.SpringLoadedLongRail(stations, half, at.Z, v.Field("spring").Number())
		for i := range out {
			out[i].Name = fmt.Sprintf("%s-%d-%s", entry, i/2+1, []string{"left", "right"}[i%2])
		}
	default:
		out = []vehicle.Mount{{Name: entry, At: at}}
	}
	for i := range out {
		holdOtherwise(&out[i], v)
	}
	return out
}

func holdOtherwise(m *vehicle.Mount, v *table.Value) {
	holds, stiffness, play := v.Field("holds"), v.Field("stiffness"), v.Field("play")
	for name, r := range map[string]*vehicle.Restraint{"x": &m.X, "y": &m.Y, "z": &m.Z} {
		if w := holds.Field(name); w != nil {
			*r = vehicle.Restraint{Way: vehicle.Way(w.Words())}
		}
		if s := stiffness.Field(name); s != nil {
			r.StiffnessNPerMM = s.Number()
		}
		if p := play.Field(name); p != nil {
			r.GapMM = p.Number()
		}
	}
	if s := stiffness.Field("down"); s != nil {
		m.Z.MinusNPerMM = s.Number()
	}
	for name, t := range map[string]*vehicle.Turn{"about_x": &m.RX, "about_y": &m.RY, "about_z": &m.RZ} {
		if w := holds.Field(name); w != nil {
			t.Held = w.Words() == "held"
		}
	}
}

func (d *vehicleDecoder) shares(v *table.Value) {
	for i, s := range v.List() {
		out := vehicle.Share{Direction: s.Field("direction").Words()}
		for _, m := range s.Field("mounts").List() {
			out.Mounts = append(out.Mounts, m.Words())
		}
		for _, p := range s.Field("parts").List() {
			out.Fractions = append(out.Fractions, p.Number())
		}
		if len(out.Mounts) == 0 {
			continue
		}
		if m, body := d.out.Mount(out.Mounts[0]); m != nil {
			b := &d.out.Request.Bodies[body]
			d.note(fmt.Sprintf("bodies[%d].shares[%d]", body, len(b.Shares)), "vehicle.shares[%d]", i)
			b.Shares = append(b.Shares, out)
		}
	}
}

func (d *vehicleDecoder) frame(v *table.Value) {
	f := v.Field("frame")
	if f == nil {
		return
	}
	const path = "vehicle.frame."
	d.note("frame", "vehicle.frame")
	out := &frame.Frame{
		Rail: decodeChannel(f.Field("rail")), YieldMPa: f.Field("rail").Field("yield").Number(), WebYMM: f.Field("web").Number(), TopZMM: f.Field("top").Number(),
		FlangesOut: f.Field("flanges").Words() == "outward", BodyFromMM: f.Field("body").Field("from").Number(), BodyToMM: f.Field("body").Field("to").Number(), CabBackMM: ref(f.Field("cab_back")),
		Axles: []frame.Axle{{Name: "front axle"}, {Name: "rear axle", XMM: v.Field("wheelbase").Number()}},
	}
	for i, name := range []string{"front_hangers", "rear_hangers"} {
		d.note(fmt.Sprintf("frame.axles[%d]", i), path+"%s", name)
		if h := f.Field(name); h != nil {
			out.Axles[i].HangersMM = []float64{h.Field("ahead").Number(), h.Field("behind").Number()}
		}
	}
	d.note("frame.axles[1].x_mm", "vehicle.wheelbase")
	liners := f.Field("liners")
	for _, name := range liners.Keys() {
		l := liners.Field(name)
		d.note(fmt.Sprintf("frame.liners[%d]", len(out.Liners)), path+"liners.%s", name)
		c := decodeChannel(l)
		out.Liners = append(out.Liners, frame.Liner{
			Name: name, Shape: frame.LinerShape(l.Field("shape").Words()), DepthMM: c.DepthMM, FlangeMM: c.FlangeMM, ThicknessMM: c.ThicknessMM, InsideRadiusMM: c.InsideRadiusMM,
			FromMM: l.Field("from").Number(), ToMM: l.Field("to").Number(),
		})
	}
	members := f.Field("cross_members")
	for _, name := range members.Keys() {
		d.note(fmt.Sprintf("frame.cross_members[%d]", len(out.CrossMembers)), path+"cross_members.%s", name)
		out.CrossMembers = append(out.CrossMembers, frame.CrossMember{Name: name, XMM: members.Field(name).Field("x").Number()})
	}
	tubes := f.Field("cross_tubes")
	for _, name := range tubes.Keys() {
		t := tubes.Field(name)
		d.note(fmt.Sprintf("frame.tubes[%d]", len(out.Tubes)), path+"cross_tubes.%s", name)
		one := frame.CrossTube{Name: name, XMM: t.Field("x").Number(), ZMM: t.Field("z").Number(), YMM: out.WebYMM, DiaMM: t.Field("diameter").Number(), WallMM: t.Field("wall").Number()}
		if y := t.Field("held_at"); y != nil {
			one.YMM = y.Number()
		}
		out.Tubes = append(out.Tubes, one)
	}
	own := f.Field("own_mass")
	for _, name := range own.Keys() {
		s := own.Field(name)
		d.note(fmt.Sprintf("frame.own[%d]", len(out.Own)), path+"own_mass.%s", name)
		out.Own = append(out.Own, frame.Spread{Name: name, MassKG: s.Field("mass").Number(), FromMM: s.Field("from").Number(), ToMM: s.Field("to").Number(), CGMM: s.Field("centre").Number()})
	}
	d.out.Request.Frame = out
}

func decodeChannel(v *table.Value) frame.Channel {
	return frame.Channel{
		DepthMM: v.Field("depth").Number(), FlangeMM: v.Field("flange").Number(), ThicknessMM: v.Field("thickness").Number(), InsideRadiusMM: v.Field("inside_radius").Number(),
	}
}

func (d *vehicleDecoder) drilling(v *table.Value) {
	survey, holes, f := v.Field("survey"), v.Field("new_holes"), d.out.Request.Frame
	flange := v.Field("subframe_flange")
	if survey == nil && flange == nil || f == nil {
		return
	}
	out := &whole.Drilling{SubframeFlangeMM: flange.Number()}
	for _, g := range v.Field("guides").List() {
		out.Guides = append(out.Guides, g.Words())
	}
	d.note("drilling", "vehicle.survey")
	d.note("drilling.guides", "vehicle.guides")
	d.note("drilling.subframe_flange_mm", "vehicle.subframe_flange")
	for _, side := range []drill.Side{drill.Left, drill.Right} {
		s := survey.Field(string(side))
		if s == nil {
			continue
		}
		at := fmt.Sprintf("drilling.rails[%d]", len(out.Rails))
		d.note(at, "vehicle.survey.%s", side)
		r := drill.Rail{
			Side: side, TopZMM: f.TopZMM, DepthMM: f.Rail.DepthMM, ThicknessMM: f.Rail.ThicknessMM, InsideRadiusMM: f.Rail.InsideRadiusMM,
			FromMM: s.Field("from").Number(), ToMM: s.Field("to").Number(),
		}
		found := s.Field("holes")
		for _, name := range found.Keys() {
			h := found.Field(name)
			d.note(fmt.Sprintf("%s.holes[%d]", at, len(r.Holes)), "vehicle.survey.%s.holes.%s", side, name)
			r.Holes = append(r.Holes, drill.Hole{Name: name, XMM: h.Field("x").Number(), ZMM: f.TopZMM - h.Field("below_top").Number(), DiaMM: h.Field("diameter").Number()})
		}
		zones := s.Field("zones")
		for _, name := range zones.Keys() {
			z := zones.Field(name)
			d.note(fmt.Sprintf("%s.zones[%d]", at, len(r.Zones)), "vehicle.survey.%s.zones.%s", side, name)
			one := drill.Zone{Name: name, Kind: drill.Kind(z.Field("kind").Words()), FromMM: z.Field("from").Number(), ToMM: z.Field("to").Number()}
			if upper, lower := z.Field("upper"), z.Field("lower"); upper != nil || lower != nil {
				one.TopMM, one.BottomMM = f.TopZMM-upper.Number(), f.TopZMM-f.Rail.DepthMM
				if lower != nil {
					one.BottomMM = f.TopZMM - lower.Number()
				}
			}
			r.Zones = append(r.Zones, one)
		}
		for _, name := range holes.Keys() {
			h := holes.Field(name)
			if h.Field("rail").Words() != string(side) {
				continue
			}
			d.note(fmt.Sprintf("%s.new[%d]", at, len(r.New)), "vehicle.new_holes.%s", name)
			r.New = append(r.New, decodeNewHole(name, h, f))
		}
		out.Rails = append(out.Rails, r)
	}
	d.out.Request.Drilling = out
}

func decodeNewHole(name string, v *table.Value, f *frame.Frame) drill.NewHole {
	h := drill.NewHole{Name: name, Face: drill.Face(v.Field("face").Words()), XMM: v.Field("x").Number(), DiaMM: v.Field("diameter").Number()}
	switch h.Face {
	case "":
		h.Face = drill.Web
		fallthrough
	case drill.Web:
		h.ZMM = f.TopZMM - v.Field("below_top").Number()
	}
	if size := v.Field("bolt"); size != nil {
		h.BoltMM, _ = part.NominalDiaMM(size.Words())
	}
	return h
}

func (d *vehicleDecoder) clearance(v *table.Value) {
	q := &d.out.Request
	if t := v.Field("twist"); t != nil {
		d.note("twist", "vehicle.twist")
		q.Twist = &clearance.Twist{AngleRad: t.Field("angle").Number(), WheelLiftMM: t.Field("wheel_lift").Number(), TrackMM: t.Field("track").Number(), BothAxles: yes(t.Field("both_axles"))}
		if q.Twist.TrackMM == 0 {
			q.Twist.TrackMM = v.Field("rear_track").Number()
		}
	}
	points := v.Field("clearances")
	for _, name := range points.Keys() {
		p := points.Field(name)
		d.note(fmt.Sprintf("points[%d]", len(q.Points)), "vehicle.clearances.%s", name)
		q.Points = append(q.Points, clearance.Point{Name: name, Way: clearance.Way(p.Field("way").Words()), ArmMM: p.Field("arm").Number(), ExtraMM: p.Field("extra").Number(), HadMM: ref(p.Field("room"))})
	}
}

func (d *vehicleDecoder) lift(v *table.Value) {
	if v == nil {
		return
	}
	d.note("lift", "vehicle.lift")
	out := &whole.Lift{Body: v.Field("body").Words()}
	jacks := v.Field("jacks")
	for _, name := range jacks.Keys() {
		j := jacks.Field(name)
		d.note(fmt.Sprintf("lift.jacks[%d]", len(out.Jacks)), "vehicle.lift.jacks.%s", name)
		out.Jacks = append(out.Jacks, lift.Jack{Name: name, XMM: j.Field("x").Number(), YMM: j.Field("y").Number(), RatedKG: j.Field("rated").Number()})
	}
	d.out.Request.Lift = out
}

func (d *vehicleDecoder) hung(v *table.Value) {
	q := &d.out.Request
	trays := v.Field("trays")
	for _, name := range trays.Keys() {
		t := trays.Field(name)
		at := fmt.Sprintf("trays[%d]", len(q.Trays))
		d.note(at, "vehicle.trays.%s", name)
		one := whole.Tray{Tray: hung.Tray{
			Name: name, MassKG: t.Field("mass").Number(), At: decodeVec(t), BeamZMM: t.Field("beam").Number(), FreeMM: t.Field("free_length").Number(),
			Ends: hung.Ends(t.Field("ends").Words()), StopZMM: ref(t.Field("stops")),
		}}
		for _, c := range t.Field("carries").List() {
			one.Carries = append(one.Carries, c.Words())
		}
		rods := t.Field("rods")
		for _, rod := range rods.Keys() {
			r := rods.Field(rod)
			d.note(fmt.Sprintf("%s.rods[%d]", at, len(one.Rods)), "vehicle.trays.%s.rods.%s", name, rod)
			one.Rods = append(one.Rods, hung.Rod{Name: rod, XMM: r.Field("x").Number(), YMM: r.Field("y").Number()})
		}
		q.Trays = append(q.Trays, one)
		d.out.RodSizes = append(d.out.RodSizes, t.Field("rod").Words())
	}
	washers := v.Field("washers")
	for _, name := range washers.Keys() {
		w := washers.Field(name)
		d.note(fmt.Sprintf("washers[%d]", len(q.Washers)), "vehicle.washers.%s", name)
		rod, _ := part.NominalDiaMM(w.Field("rod").Words())
		q.Washers = append(q.Washers, hung.Washer{
			Name: name, RodMM: rod, SideMM: w.Field("side").Number(), ThicknessMM: w.Field("thickness").Number(),
			ThinWall: yes(w.Field("thin_wall")), CrushSleeve: yes(w.Field("crush_sleeve")), BothWay: yes(w.Field("both_sides")),
		})
	}
	tanks := v.Field("poly_tanks")
	for _, name := range tanks.Keys() {
		t := tanks.Field(name)
		d.note(fmt.Sprintf("plastic_tanks[%d]", len(q.PlasticTanks)), "vehicle.poly_tanks.%s", name)
		q.PlasticTanks = append(q.PlasticTanks, hung.Tank{Name: name, HeightMM: t.Field("height").Number(), UnsupportedMM2: t.Field("unsupported").Number(), HeldDown: yes(t.Field("held_down"))})
	}
}

func (d *vehicleDecoder) whatIf(v *table.Value) {
	q := &d.out.Request
	moves := v.Field("what_if")
	for _, name := range moves.Keys() {
		d.note(fmt.Sprintf("moves[%d]", len(q.Moves)), "vehicle.what_if.%s", name)
		q.Moves = append(q.Moves, vehicle.Move{Name: name, By: decodeVec(moves.Field(name))})
	}
	if r := v.Field("as_weighed"); r != nil {
		d.note("reading", "vehicle.as_weighed")
		q.Reading = &whole.Reading{State: r.Field("state").Words(), Reading: vehicle.Reading{
			FrontKG: r.Field("front").Number(), RearKG: r.Field("rear").Number(), PlusMinusKG: r.Field("give_or_take").Number(),
		}}
	}
}
