package fab

// Load paths of brackets that carry a load one way.

import (
	"slices"

	"lugwright/part"
)

// Forces are the force components both ways.
func Forces() []part.Component {
	return []part.Component{part.FxPlus, part.FxMinus, part.FyPlus, part.FyMinus, part.FzPlus, part.FzMinus}
}

// Through brings each of the components from a load point through the same things, in order, to the support; it enters at a place.
func Through(b *part.Bracket, loadPoint string, at part.Vec, components []part.Component, things ...string) {
	for _, c := range components {
		b.Paths = append(b.Paths, part.Path{LoadPoint: loadPoint, Component: c, Branches: []part.Branch{{At: at, Through: slices.Clone(things)}}})
	}
}
