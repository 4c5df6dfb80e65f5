package wire

import (
	pb "lugwright/proto/gen/lugwright/vehicle/v1alpha1"
	"lugwright/vehicle"
	"lugwright/vehicle/whole"
)

// EncodeVehicleRequest writes a request about a whole vehicle.
func EncodeVehicleRequest(q *whole.Request) *pb.WholeRequest {
	return &pb.WholeRequest{
		Vehicle: present(q.Vehicle, vehicleOf), Bodies: all(q.Bodies, vehicleBody), States: all(q.States, vehicleState), Cases: all(q.Cases, accelCase),
		Moves:   all(q.Moves, func(m *vehicle.Move) *pb.Move { return &pb.Move{Name: m.Name, ByMm: vec(m.By)} }),
		Reading: present(q.Reading, scaleReading), Frame: present(q.Frame, frameOf), Stands: all(q.Stands, stand), AllStations: q.AllStations,
		Sweep: present(q.Sweep, mountSweep), Drilling: present(q.Drilling, drilling), Twist: present(q.Twist, twistAllowance), Points: all(q.Points, roomPoint),
		Lift: present(q.Lift, liftOrder), Trays: all(q.Trays, tray), Washers: all(q.Washers, washer), PlasticTanks: all(q.PlasticTanks, plasticTank),
	}
}

// DecodeVehicleRequest reads one. Its field errors have the paths that those of whole.Reckon have.
func DecodeVehicleRequest(m *pb.WholeRequest) (*whole.Request, error) {
	var r reader
	if m == nil {
		r.refuse("request", "missing", "a value")
		return nil, r.err()
	}
	q := &whole.Request{
		Vehicle: maybe(&r, "vehicle", m.Vehicle, readVehicle), Bodies: many(&r, "bodies", maxThings, m.Bodies, readVehicleBody),
		States: many(&r, "states", maxThings, m.States, readVehicleState), Cases: many(&r, "cases", maxThings, m.Cases, readAccelCase),
		Moves: many(&r, "moves", maxThings, m.Moves, func(r *reader, m *pb.Move) vehicle.Move {
			return vehicle.Move{Name: r.text("name", m.Name), By: one(r, "by_mm", m.ByMm, readVec)}
		}),
		Reading: maybe(&r, "reading", m.Reading, readScaleReading), Frame: maybe(&r, "frame", m.Frame, readFrame),
		Stands: many(&r, "stands", maxThings, m.Stands, readStand), AllStations: m.AllStations,
		Sweep: maybe(&r, "sweep", m.Sweep, readMountSweep), Drilling: maybe(&r, "drilling", m.Drilling, readDrilling),
		Twist: maybe(&r, "twist", m.Twist, readTwistAllowance), Points: many(&r, "points", maxThings, m.Points, readRoomPoint),
		Lift: maybe(&r, "lift", m.Lift, readLiftOrder), Trays: many(&r, "trays", maxThings, m.Trays, readTray),
		Washers: many(&r, "washers", maxThings, m.Washers, readWasher), PlasticTanks: many(&r, "plastic_tanks", maxThings, m.PlasticTanks, readPlasticTank),
	}
	if err := r.err(); err != nil {
		return nil, err
	}
	return q, nil
}

func vehicleOf(v *vehicle.Vehicle) *pb.Vehicle {
	c := v.Cab
	return &pb.Vehicle{
		Name: v.Name, WheelbaseMm: v.WheelbaseMM, FrontTrackMm: v.FrontTrackMM, RearTrackMm: v.RearTrackMM,
		Cab: &pb.ChassisCab{
			FrontKg: c.FrontKG, RearKg: c.RearKG, CgYMm: c.CGYMM, CgZMm: c.CGZMM,
			Confidence: confidences.encode(c.Doubt.Confidence), PlusMinusPercent: c.Doubt.PlusMinusPercent, PlusMinusKg: c.Doubt.PlusMinusKG,
		},
		Ratings: &pb.Ratings{GrossKg: v.Ratings.GrossKG, FrontKg: v.Ratings.FrontKG, RearKg: v.Ratings.RearKG},
		Items:   all(v.Items, vehicleItem), Tanks: all(v.Tanks, vehicleTank),
	}
}

func readVehicle(r *reader, m *pb.Vehicle) vehicle.Vehicle {
	return vehicle.Vehicle{
		Name: r.text("name", m.Name), WheelbaseMM: r.number("wheelbase_mm", m.WheelbaseMm),
		FrontTrackMM: r.number("front_track_mm", m.FrontTrackMm), RearTrackMM: r.number("rear_track_mm", m.RearTrackMm),
		Cab: one(r, "cab", m.Cab, func(r *reader, m *pb.ChassisCab) vehicle.ChassisCab {
			return vehicle.ChassisCab{
				FrontKG: r.number("front_kg", m.FrontKg), RearKG: r.number("rear_kg", m.RearKg), CGYMM: r.number("cg_y_mm", m.CgYMm), CGZMM: r.number("cg_z_mm", m.CgZMm),
				Doubt: readDoubt(r, m.Confidence, m.PlusMinusPercent, m.PlusMinusKg),
			}
		}),
		Ratings: one(r, "ratings", m.Ratings, func(r *reader, m *pb.Ratings) vehicle.Ratings {
			return vehicle.Ratings{GrossKG: r.number("gross_kg", m.GrossKg), FrontKG: r.number("front_kg", m.FrontKg), RearKG: r.number("rear_kg", m.RearKg)}
		}),
		Items: many(r, "items", maxThings, m.Items, readVehicleItem), Tanks: many(r, "tanks", maxThings, m.Tanks, readVehicleTank),
	}
}

func readDoubt(r *reader, c pb.Confidence, percent, kg float64) vehicle.Doubt {
	return vehicle.Doubt{
		Confidence:       confidences.decodeOptional(r, "confidence", c),
		PlusMinusPercent: r.number("plus_minus_percent", percent), PlusMinusKG: r.number("plus_minus_kg", kg),
	}
}

func vehicleItem(i *vehicle.Item) *pb.Item {
	return &pb.Item{
		Name: i.Name, MassKg: i.MassKG, AtMm: vec(i.At), OnCall: i.Optional, RidesOn: i.RidesOn,
		Confidence: confidences.encode(i.Doubt.Confidence), PlusMinusPercent: i.Doubt.PlusMinusPercent, PlusMinusKg: i.Doubt.PlusMinusKG,
	}
}

func readVehicleItem(r *reader, m *pb.Item) vehicle.Item {
	return vehicle.Item{
		Name: r.text("name", m.Name), MassKG: r.number("mass_kg", m.MassKg), At: one(r, "at_mm", m.AtMm, readVec), Optional: m.OnCall,
		RidesOn: r.text("rides_on", m.RidesOn), Doubt: readDoubt(r, m.Confidence, m.PlusMinusPercent, m.PlusMinusKg),
	}
}

func vehicleTank(t *vehicle.Tank) *pb.Tank {
	m := &pb.Tank{
		Name: t.Name, CapacityL: t.CapacityL, Fluid: &pb.Fluid{Name: t.Fluid.Name, DensityKgPerL: t.Fluid.DensityKGPerL}, EmptyKg: t.EmptyKG, AtMm: vec(t.At), RidesOn: t.RidesOn,
		Confidence: confidences.encode(t.Doubt.Confidence), PlusMinusPercent: t.Doubt.PlusMinusPercent, PlusMinusKg: t.Doubt.PlusMinusKG,
	}
	if t.Box != (vehicle.Box{}) {
		m.Box = &pb.TankBox{LengthMm: t.Box.LengthMM, WidthMm: t.Box.WidthMM, HeightMm: t.Box.HeightMM}
	}
	return m
}

func readVehicleTank(r *reader, m *pb.Tank) vehicle.Tank {
	t := vehicle.Tank{
		Name: r.text("name", m.Name), CapacityL: r.number("capacity_l", m.CapacityL),
		Fluid: one(r, "fluid", m.Fluid, func(r *reader, m *pb.Fluid) vehicle.Fluid {
			return vehicle.Fluid{Name: r.text("name", m.Name), DensityKGPerL: r.number("density_kg_per_l", m.DensityKgPerL)}
		}),
		EmptyKG: r.number("empty_kg", m.EmptyKg), At: one(r, "at_mm", m.AtMm, readVec),
		Doubt: readDoubt(r, m.Confidence, m.PlusMinusPercent, m.PlusMinusKg), RidesOn: r.text("rides_on", m.RidesOn),
	}
	if m.Box != nil {
		t.Box = one(r, "box", m.Box, func(r *reader, m *pb.TankBox) vehicle.Box {
			return vehicle.Box{LengthMM: r.number("length_mm", m.LengthMm), WidthMM: r.number("width_mm", m.WidthMm), HeightMM: r.number("height_mm", m.HeightMm)}
		})
	}
	return t
}

func vehicleState(s *vehicle.State) *pb.State {
	return &pb.State{
		Name: s.Name, Present: s.Present,
		Fills: all(s.Fills, func(f *vehicle.Fill) *pb.Fill { return &pb.Fill{Tank: f.Tank, Level: f.Level} }),
	}
}

func readVehicleState(r *reader, m *pb.State) vehicle.State {
	return vehicle.State{
		Name: r.text("name", m.Name), Present: r.texts("present", maxThings, m.Present),
		Fills: many(r, "fills", maxThings, m.Fills, func(r *reader, m *pb.Fill) vehicle.Fill {
			return vehicle.Fill{Tank: r.text("tank", m.Tank), Level: r.number("level", m.Level)}
		}),
	}
}

func vehicleBody(b *vehicle.Body) *pb.Body {
	return &pb.Body{
		Name: b.Name, Mounts: all(b.Mounts, mountOf),
		Shares: all(b.Shares, func(s *vehicle.Share) *pb.StatedShare {
			return &pb.StatedShare{Direction: s.Direction, Mounts: s.Mounts, Fractions: s.Fractions}
		}),
	}
}

func readVehicleBody(r *reader, m *pb.Body) vehicle.Body {
	return vehicle.Body{
		Name: r.text("name", m.Name), Mounts: many(r, "mounts", maxThings, m.Mounts, readMount),
		Shares: many(r, "shares", maxThings, m.Shares, func(r *reader, m *pb.StatedShare) vehicle.Share {
			return vehicle.Share{Direction: r.text("direction", m.Direction), Mounts: r.texts("mounts", maxThings, m.Mounts), Fractions: r.numbers("fractions", maxThings, m.Fractions)}
		}),
	}
}

func mountOf(b *vehicle.Mount) *pb.Mount {
	return &pb.Mount{Name: b.Name, AtMm: vec(b.At), X: restraint(b.X), Y: restraint(b.Y), Z: restraint(b.Z), Rx: turn(b.RX), Ry: turn(b.RY), Rz: turn(b.RZ)}
}

func readMount(r *reader, m *pb.Mount) vehicle.Mount {
	return vehicle.Mount{
		Name: r.text("name", m.Name), At: one(r, "at_mm", m.AtMm, readVec),
		X: readRestraint(r, "x", m.X), Y: readRestraint(r, "y", m.Y), Z: readRestraint(r, "z", m.Z),
		RX: readTurn(r, "rx", m.Rx), RY: readTurn(r, "ry", m.Ry), RZ: readTurn(r, "rz", m.Rz),
	}
}

func restraint(t vehicle.Restraint) *pb.Restraint {
	return &pb.Restraint{Way: mountWays.encode(t.Way), StiffnessNPerMm: t.StiffnessNPerMM, MinusNPerMm: t.MinusNPerMM, GapMm: t.GapMM}
}

func readRestraint(r *reader, name string, m *pb.Restraint) vehicle.Restraint {
	if m == nil {
		return vehicle.Restraint{}
	}
	return one(r, name, m, func(r *reader, m *pb.Restraint) vehicle.Restraint {
		return vehicle.Restraint{
			Way: mountWays.decodeOptional(r, "way", m.Way), StiffnessNPerMM: r.number("stiffness_n_per_mm", m.StiffnessNPerMm),
			MinusNPerMM: r.number("minus_n_per_mm", m.MinusNPerMm), GapMM: r.number("gap_mm", m.GapMm),
		}
	})
}

func turn(t vehicle.Turn) *pb.Turn {
	return &pb.Turn{Held: t.Held, StiffnessNMmPerRad: t.StiffnessNMMPerRad}
}

func readTurn(r *reader, name string, m *pb.Turn) vehicle.Turn {
	if m == nil {
		return vehicle.Turn{}
	}
	return one(r, name, m, func(r *reader, m *pb.Turn) vehicle.Turn {
		return vehicle.Turn{Held: m.Held, StiffnessNMMPerRad: r.number("stiffness_n_mm_per_rad", m.StiffnessNMmPerRad)}
	})
}

func accelCase(c *vehicle.Case) *pb.AccelCase {
	return &pb.AccelCase{Id: c.ID, Name: c.Name, Set: c.Set, AccelG: vec(c.AccelG), Level: levels.encode(c.Level), Source: c.Source, OnUltimate: c.OnUltimate}
}

func readAccelCase(r *reader, m *pb.AccelCase) vehicle.Case {
	return vehicle.Case{
		ID: r.text("id", m.Id), Name: r.text("name", m.Name), Set: r.text("set", m.Set), AccelG: one(r, "accel_g", m.AccelG, readVec),
		Level: levels.decode(r, "level", m.Level), Source: r.words("source", m.Source), OnUltimate: r.number("on_ultimate", m.OnUltimate),
	}
}

func scaleReading(s *whole.Reading) *pb.Reading {
	return &pb.Reading{State: s.State, FrontKg: s.FrontKG, RearKg: s.RearKG, PlusMinusKg: s.PlusMinusKG}
}

func readScaleReading(r *reader, m *pb.Reading) whole.Reading {
	return whole.Reading{State: r.text("state", m.State), Reading: vehicle.Reading{
		FrontKG: r.number("front_kg", m.FrontKg), RearKG: r.number("rear_kg", m.RearKg), PlusMinusKG: r.number("plus_minus_kg", m.PlusMinusKg),
	}}
}
