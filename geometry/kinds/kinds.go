// Package kinds is the index of bracket kinds: one line a kind. It never holds anything of a kind itself.
package kinds

import (
	"lugwright/geometry"
	"lugwright/geometry/kinds/arch"
	"lugwright/geometry/kinds/backingplate"
	"lugwright/geometry/kinds/bodybracket"
	"lugwright/geometry/kinds/clevis"
	"lugwright/geometry/kinds/crosstube"
	"lugwright/geometry/kinds/doubler"
	"lugwright/geometry/kinds/foot"
	"lugwright/geometry/kinds/gusset"
	"lugwright/geometry/kinds/keeperplate"
	"lugwright/geometry/kinds/lapplate"
	"lugwright/geometry/kinds/lug"
	"lugwright/geometry/kinds/outrigger"
	"lugwright/geometry/kinds/saddle"
	"lugwright/geometry/kinds/spreaderwasher"
	"lugwright/geometry/kinds/standoff"
	"lugwright/geometry/kinds/stiffener"
	"lugwright/geometry/kinds/subframelug"
	"lugwright/geometry/kinds/tab"
	"lugwright/geometry/kinds/tray"
)

// All lists every kind, in alphabetical order of their folders.
func All() []geometry.Kind {
	return []geometry.Kind{
		arch.Kind(),
		backingplate.Kind(),
		bodybracket.Kind(),
		clevis.Kind(),
		crosstube.Kind(),
		doubler.Kind(),
		foot.Kind(),
		gusset.Kind(),
		keeperplate.Kind(),
		lapplate.Kind(),
		lug.Kind(),
		outrigger.Kind(),
		saddle.Kind(),
		spreaderwasher.Kind(),
		standoff.Kind(),
		stiffener.Kind(),
		subframelug.Kind(),
		tab.Kind(),
		tray.Kind(),
	}
}
