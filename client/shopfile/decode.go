package shopfile

import (
	"lugwright/client/table"
	"lugwright/geometry/shop"
	"lugwright/part"
)

const (
	usualGapMM  = 10
	usualMarkMM = 8
)

func decode(v *table.Value) *shop.Profile {
	files, marks := v.Field("files"), v.Field("marks")
	s := &shop.Profile{
		Name: v.Field("shop").Words(), Words: v.Field("words").Words(), Process: shop.Process(v.Field("process").Words()),
		Files: shop.Files{
			Versions: list[shop.Version](files.Field("versions")), Inch: files.Field("units").Words() == "inch",
			Grouping: shop.Grouping(files.Field("grouping").Words()), GapMM: or(files.Field("gap"), usualGapMM), Naming: files.Field("naming").Words(),
			Layers: shop.Layers{
				Cut: files.Field("layers").Field("cut").Words(), Etch: files.Field("layers").Field("etch").Words(),
				Bend: files.Field("layers").Field("bend").Words(), Centre: files.Field("layers").Field("centre").Words(),
			},
		},
		Marks:        shop.Marks{Style: shop.MarkStyle(marks.Field("style").Words()), HeightMM: or(marks.Field("height"), usualMarkMM)},
		SmallestHole: least(v.Field("smallest_hole")), SmallestWeb: least(v.Field("smallest_web")),
	}
	for _, h := range v.Field("holes").List() {
		s.Holes = append(s.Holes, shop.HoleRule{
			For: list[part.Purpose](h.Field("for")), UnderPerThick: h.Field("under_thickness").Number(), UnderMM: h.Field("under").Number(),
			OverThickMM: h.Field("thicker_than").Number(), Make: shop.Make(h.Field("make").Words()), LessMM: h.Field("less").Number(),
			PilotMM: h.Field("pilot").Number(), Then: part.Finish(h.Field("then").Words()),
		})
	}
	return s
}

func least(v *table.Value) shop.Least {
	return shop.Least{PerThickness: v.Field("of_thickness").Number(), MM: v.Field("and").Number()}
}

func or(v *table.Value, usual float64) float64 {
	if v == nil {
		return usual
	}
	return v.Number()
}

func list[T ~string](v *table.Value) []T {
	var out []T
	for _, item := range v.List() {
		out = append(out, T(item.Words()))
	}
	return out
}
