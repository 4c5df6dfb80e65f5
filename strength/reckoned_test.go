package strength_test

// The kinds with the sizes and grades by which the hand calculations of these tests were made: a better default of a kind does not touch them.

import (
	"slices"

	"lugwright/geometry"
	"lugwright/geometry/fab/fabtest"
	"lugwright/geometry/kinds"
)

func reckoned() []geometry.Kind {
	all := slices.Clone(kinds.All())
	for i, k := range all {
		given := fabtest.Given{
			"material": "A572-50", "lug_material": "A572-50", "ear_material": "A572-50", "gusset_material": "A572-50", "fork_material": "A572-50",
			"shelf_material": "A572-50", "member_material": "A572-50", "lap_material": "A572-50",
		}
		switch k.Name {
		case "clevis":
			given["foot_material"] = "A572-50"
			given["lug_thickness"], given["angle_out"], given["clevis_offset"] = 20, 80, 43
		case "gusset":
			given["thickness"] = 8
		case "lug":
			given["thickness"], given["width"], given["end_distance"], given["head_radius"], given["weld"] = 20, 100, 45, 40, 8
		case "subframelug":
			given["thickness"], given["end_distance"] = 16, 50
		case "tab":
			given["weld"] = 4
		case "tray":
			given = fabtest.Given{"thickness": 4}
		case "spreader-washer":
			given = fabtest.Given{"sheet_thickness": 3}
		case "saddle":
			given = fabtest.Given{"foot_width": 210}
		case "arch", "lap-plate": // the grades alone
		default:
			continue
		}
		all[i] = fabtest.Sized(k, given)
	}
	return all
}
