package sheet

// This file says what rides on the vehicle in each state, where brackets take their loads from it.

import (
	"fmt"
	"math"
	"slices"

	"lugwright/client/paper"
	"lugwright/units"
	"lugwright/vehicle"
)

func (s *sheet) masses() {
	if s.Result.Vehicle == nil || len(s.Result.Vehicle.Report.Weights) == 0 {
		return
	}
	all := s.Result.Vehicle.Report.Weights
	s.heading(2, "Masses and states", "")
	s.add(s.massLines(all))
	t := &paper.Table{
		Caption: "Each state, all masses together",
		Heads:   heads("state", "of", "#mass", "#give or take", "#CG x", "#CG y", "#CG z"),
	}
	for i := range all {
		w := &all[i]
		for _, b := range w.Bodies {
			t.Rows = append(t.Rows, paper.Row{Cells: append([]string{w.State, b.Name}, s.massOf(&b.Mass)...)})
		}
		t.Rows = append(t.Rows, paper.Row{Cells: append([]string{w.State, "vehicle"}, s.massOf(&w.Vehicle)...)})
	}
	s.add(t)
}

// massLines has each mass once, with the state where it is not the same in all.
func (s *sheet) massLines(all []vehicle.Weights) *paper.Table {
	t := &paper.Table{
		Caption: "What rides where; x from the front axle, z from the ground",
		Heads:   heads("mass", "state", "#mass", "#give or take", "#x", "#y", "#z", "rides on", "known by"),
	}
	for i := range all {
		for _, line := range all[i].Lines {
			everywhere := !slices.ContainsFunc(all, func(w vehicle.Weights) bool { return !slices.Contains(w.Lines, line) })
			state := all[i].State
			switch {
			case everywhere && i > 0:
				continue
			case everywhere:
				state = "every"
			}
			t.Rows = append(t.Rows, paper.Row{Cells: []string{
				line.Name, state, s.mass(line.MassKG), s.mass(line.PlusMinusKG), s.length(line.At.X), s.length(line.At.Y), s.length(line.At.Z), line.RidesOn, string(line.Confidence),
			}})
		}
	}
	return t
}

func (s *sheet) massOf(m *vehicle.Mass) []string {
	// A centre is known to no better than a mm.
	return []string{
		s.mass(m.KG.Value), s.mass(max(m.KG.High-m.KG.Value, m.KG.Value-m.KG.Low)), s.length(math.Round(m.XMM.Value)), s.length(math.Round(m.YMM.Value)), s.length(math.Round(m.ZMM.Value)),
	}
}

func (s *sheet) mass(kg float64) string { return units.Format(kg, units.Mass, s.job.Units) }

// source says where a bracket's loads come from.
func (s *sheet) source(mount, tray string) string {
	switch {
	case mount != "":
		return fmt.Sprintf("Those of the vehicle's mount %s, found by the vehicle's statics from the masses and states above; those that the job gives stand among them.", mount)
	case tray != "":
		return fmt.Sprintf("Those of the vehicle's tray %s, from the masses above; those that the job gives stand among them.", tray)
	}
	return "As the job gives them."
}
