package wire

import (
	pb "lugwright/proto/gen/lugwright/strength/v1alpha1"
	"lugwright/strength/material"
)

// Materials is everything a shop builds with, each list in table order.
type Materials struct {
	Grades     []material.Grade
	BoltGrades []material.BoltGrade
	Electrodes []material.Electrode
	Bolts      []material.Bolt
}

// EncodeMaterials writes the lists.
func EncodeMaterials(l *Materials) *pb.ListMaterialsResponse {
	return &pb.ListMaterialsResponse{
		Grades: all(l.Grades, grade), BoltGrades: all(l.BoltGrades, boltGrade),
		Electrodes: all(l.Electrodes, electrode), BoltSizes: all(l.Bolts, boltSize),
	}
}

// DecodeMaterials reads the lists.
func DecodeMaterials(m *pb.ListMaterialsResponse) (*Materials, error) {
	var r reader
	l := &Materials{
		Grades:     many(&r, "grades", maxListed, m.GetGrades(), readGrade),
		BoltGrades: many(&r, "bolt_grades", maxListed, m.GetBoltGrades(), readBoltGrade),
		Electrodes: many(&r, "electrodes", maxListed, m.GetElectrodes(), readElectrode),
		Bolts:      many(&r, "bolt_sizes", maxListed, m.GetBoltSizes(), readBoltSize),
	}
	return l, r.err()
}

func grade(g *material.Grade) *pb.Grade {
	m := &pb.Grade{
		Name: g.Name, Aliases: g.Aliases, Form: g.Form, Family: string(g.Family), Source: g.Source, FromMemory: g.FromMemory,
		EMpa: g.EMPa, DensityKgPerM3: g.Density, DesignWall: g.DesignWall, Bands: all(g.Bands, band), WeldedFrom: g.WeldedFrom, ListedIn: g.ListedIn,
	}
	if g.Welded != nil {
		m.Welded = band(g.Welded)
	}
	return m
}

func readGrade(r *reader, m *pb.Grade) material.Grade {
	g := material.Grade{
		Name: r.text("name", m.Name), Aliases: r.texts("aliases", maxThings, m.Aliases), Form: r.text("form", m.Form),
		Family: material.Family(r.text("family", m.Family)), Source: r.words("source", m.Source), FromMemory: m.FromMemory,
		EMPa: r.number("e_mpa", m.EMpa), Density: r.number("density_kg_per_m3", m.DensityKgPerM3), DesignWall: r.number("design_wall", m.DesignWall),
		Bands:      many(r, "bands", maxThings, m.Bands, readBand),
		WeldedFrom: r.words("welded_from", m.WeldedFrom), ListedIn: r.texts("listed_in", maxThings, m.ListedIn),
	}
	if m.Welded != nil {
		welded := one(r, "welded", m.Welded, readBand)
		g.Welded = &welded
	}
	return g
}

func band(b *material.Band) *pb.StrengthBand {
	return &pb.StrengthBand{OverMm: b.OverMM, ToMm: b.ToMM, FyMpa: b.FyMPa, FuMpa: b.FuMPa}
}

// readBand lets an infinite thickness in: a table may be open upwards.
func readBand(r *reader, m *pb.StrengthBand) material.Band {
	return material.Band{
		OverMM: r.number("over_mm", m.OverMm), ToMM: m.ToMm,
		FyMPa: r.number("fy_mpa", m.FyMpa), FuMPa: r.number("fu_mpa", m.FuMpa),
	}
}

func boltGrade(g *material.BoltGrade) *pb.BoltGrade {
	return &pb.BoltGrade{
		Name: g.Name, Aliases: g.Aliases, Source: g.Source, FromMemory: g.FromMemory, Bands: all(g.Bands, boltBand),
		NominalFyMpa: g.NominalFyMPa, NominalFuMpa: g.NominalFuMPa, ListedIn: g.ListedIn,
	}
}

func readBoltGrade(r *reader, m *pb.BoltGrade) material.BoltGrade {
	return material.BoltGrade{
		Name: r.text("name", m.Name), Aliases: r.texts("aliases", maxThings, m.Aliases), Source: r.words("source", m.Source),
		FromMemory:   m.FromMemory,
		Bands:        many(r, "bands", maxThings, m.Bands, readBoltBand),
		NominalFyMPa: r.number("nominal_fy_mpa", m.NominalFyMpa), NominalFuMPa: r.number("nominal_fu_mpa", m.NominalFuMpa),
		ListedIn: r.texts("listed_in", maxThings, m.ListedIn),
	}
}

func boltBand(b *material.BoltBand) *pb.BoltBand {
	return &pb.BoltBand{
		OverMm: b.OverMM, ToMm: b.ToMM, ProofMpa: b.ProofMPa, YieldMpa: b.YieldMPa, TensileMpa: b.TensileMPa,
	}
}

// readBoltBand lets an infinite diameter in: a table may be open upwards.
func readBoltBand(r *reader, m *pb.BoltBand) material.BoltBand {
	return material.BoltBand{
		OverMM: r.number("over_mm", m.OverMm), ToMM: m.ToMm, ProofMPa: r.number("proof_mpa", m.ProofMpa),
		YieldMPa: r.number("yield_mpa", m.YieldMpa), TensileMPa: r.number("tensile_mpa", m.TensileMpa),
	}
}

func electrode(e *material.Electrode) *pb.Electrode {
	return &pb.Electrode{
		Name: e.Name, Aliases: e.Aliases, Source: e.Source, FromMemory: e.FromMemory,
		YieldMpa: e.YieldMPa, FexxMpa: e.FexxMPa, ListedIn: e.ListedIn,
	}
}

func readElectrode(r *reader, m *pb.Electrode) material.Electrode {
	return material.Electrode{
		Name: r.text("name", m.Name), Aliases: r.texts("aliases", maxThings, m.Aliases), Source: r.words("source", m.Source),
		FromMemory: m.FromMemory, YieldMPa: r.number("yield_mpa", m.YieldMpa), FexxMPa: r.number("fexx_mpa", m.FexxMpa),
		ListedIn: r.texts("listed_in", maxThings, m.ListedIn),
	}
}

func boltSize(b *material.Bolt) *pb.BoltSize {
	return &pb.BoltSize{
		Name: b.Name, Inch: b.Inch, DiameterMm: b.DiaMM, PitchMm: b.PitchMM, AcrossFlatsMm: b.AcrossFlats,
		HeavyFlatsMm: b.HeavyFlats, HeadMm: b.HeadMM, NutMm: b.NutMM, WasherOutsideMm: b.WasherOD, WasherThicknessMm: b.WasherT,
	}
}

func readBoltSize(r *reader, m *pb.BoltSize) material.Bolt {
	return material.Bolt{
		Name: r.text("name", m.Name), Inch: m.Inch, DiaMM: r.number("diameter_mm", m.DiameterMm),
		PitchMM: r.number("pitch_mm", m.PitchMm), AcrossFlats: r.number("across_flats_mm", m.AcrossFlatsMm),
		HeavyFlats: r.number("heavy_flats_mm", m.HeavyFlatsMm), HeadMM: r.number("head_mm", m.HeadMm),
		NutMM: r.number("nut_mm", m.NutMm), WasherOD: r.number("washer_outside_mm", m.WasherOutsideMm),
		WasherT: r.number("washer_thickness_mm", m.WasherThicknessMm),
	}
}
