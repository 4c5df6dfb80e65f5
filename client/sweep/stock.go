package sweep

// This file knows the sizes that a shop has: the job's, or what is common.

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"lugwright/client/job"
	"lugwright/client/run"
	"lugwright/geometry"
	"lugwright/part"
	"lugwright/units"
)

// Sizes that are commonly stocked: common practice, no source.
var (
	commonPlates = map[units.System][]float64{
		units.Metric: {3, 4, 5, 6, 8, 10, 12, 15, 20, 25, 30, 40},
		units.Inch:   inches(1.0/8, 3.0/16, 1.0/4, 5.0/16, 3.0/8, 1.0/2, 5.0/8, 3.0/4, 1, 5.0/4, 3.0/2),
	}
	commonPins = map[units.System][]float64{
		units.Metric: {8, 10, 12, 16, 20, 25, 30, 35, 40, 50, 60, 80},
		units.Inch:   inches(3.0/8, 1.0/2, 5.0/8, 3.0/4, 7.0/8, 1, 5.0/4, 3.0/2, 7.0/4, 2, 5.0/2, 3),
	}
	commonWelds = map[units.System][]float64{
		units.Metric: {3, 4, 5, 6, 8, 10, 12},
		units.Inch:   inches(1.0/8, 3.0/16, 1.0/4, 5.0/16, 3.0/8, 1.0/2),
	}
	commonBolts = map[units.System][]string{
		units.Metric: {"M8", "M10", "M12", "M16", "M20", "M24"},
		units.Inch:   {"5/16-18", "3/8-16", "1/2-13", "5/8-11", "3/4-10", "7/8-9", "1-8"},
	}
)

func inches(list ...float64) []float64 {
	for i := range list {
		list[i] *= 25.4
	}
	return list
}

// threads is the system that a thread size belongs to.
func threads(size string) units.System {
	if strings.HasPrefix(size, "M") {
		return units.Metric
	}
	return units.Inch
}

// gradePairs are bolt grades that are taken for each other, metric threads and inch ones: common practice, no source.
var gradePairs = [][2]string{{"5.8", "SAE 2"}, {"8.8", "SAE 5"}, {"10.9", "SAE 8"}}

// GradeFor gives the bolt grade that is taken for another with the threads of a size: itself where it comes with them, empty where there is none.
func GradeFor(grade, size string) string {
	if run.FitsThread(grade, size) {
		return grade
	}
	for _, p := range gradePairs {
		switch grade {
		case p[0]:
			return p[1]
		case p[1]:
			return p[0]
		}
	}
	return ""
}

// Stocked gives the sizes of the rack for a parameter of a role, and in words where they come from. None of it is outside the parameter's range.
func Stocked(j *job.Job, spec *job.Bracket, p geometry.Param, role Role) (values []part.Param, source string) {
	rack := job.Rack{}
	if j.Rack != nil {
		rack = *j.Rack
	}
	var own, common []float64
	what := ""
	switch role {
	case Plate:
		for _, s := range j.Sheets {
			own = append(own, s.ThicknessMM)
		}
		own, common, what = append(own, rack.PlatesMM...), commonPlates[j.Units], "plates"
	case Bar:
		own, common, what = rack.PinsMM, commonPins[j.Units], "pins"
	case Leg:
		own, common, what = rack.WeldsMM, commonWelds[j.Units], "welds"
	case Bolt:
		sizes, source := rack.Bolts, "bolts of the job's rack"
		if sizes == nil {
			system := j.Units // the kind's default says nothing of the shop's threads
			if i := slices.IndexFunc(spec.Params, func(v part.Param) bool { return v.Name == p.Name }); i >= 0 {
				system = threads(spec.Params[i].Text)
			}
			sizes, source = commonBolts[system], "bolts as commonly stocked"
		}
		for _, s := range sizes {
			values = append(values, part.Param{Name: p.Name, Unit: string(p.Unit), Text: s})
		}
		return Of(p, values...).Values, source
	default:
		return nil, ""
	}
	source = what + " of the job's rack"
	if len(own) == 0 {
		own, source = common, what+" as commonly stocked"
	}
	for _, mm := range own {
		if mm >= p.Min && mm <= p.Max {
			values = append(values, part.Param{Name: p.Name, Unit: string(p.Unit), Number: mm})
		}
	}
	return Of(p, values...).Values, source
}

// InStock says whether the job names the thickness of every one of these plates, as a sheet or on its rack.
func InStock(j *job.Job, list []Stock) bool {
	for _, s := range list {
		own := sheets(j, s.Material)
		if j.Rack != nil {
			own = append(own, j.Rack.PlatesMM...)
		}
		if !slices.ContainsFunc(own, func(mm float64) bool { return math.Abs(mm-s.ThicknessMM) < 1e-6 }) {
			return false
		}
	}
	return len(list) > 0
}

// sheets are the thicknesses of the job's stock sheets, of one material where any is of it.
func sheets(j *job.Job, material string) []float64 {
	var all, of []float64
	for _, s := range j.Sheets {
		all = append(all, s.ThicknessMM)
		if s.Material == material {
			of = append(of, s.ThicknessMM)
		}
	}
	if of != nil {
		return of
	}
	return all
}

// OnRack is the axis of a parameter over the rack.
func OnRack(j *job.Job, spec *job.Bracket, p geometry.Param, role Role) (Axis, string, error) {
	values, source := Stocked(j, spec, p, role)
	if len(values) == 0 {
		if slices.Contains([]Role{Plate, Bar, Leg, Bolt}, role) {
			return Axis{}, "", fmt.Errorf("the rack has no size from %s to %s", Say(part.Param{Unit: string(p.Unit), Number: p.Min}, j.Units), Say(part.Param{Unit: string(p.Unit), Number: p.Max}, j.Units))
		}
		return Axis{}, "", fmt.Errorf("it is no thickness of plate, pin, bolt or weld that this bracket has; write its values")
	}
	return Of(p, values...), source, nil
}

// StockKey tells one set of thicknesses from another.
func StockKey(list []Stock) string {
	var b strings.Builder
	for _, s := range list {
		fmt.Fprintf(&b, "%.6f %s\n", s.ThicknessMM, s.Material)
	}
	return b.String()
}
