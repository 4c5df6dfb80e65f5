// Package both is the two services with everything they serve, for a program that offers them together.
// It never listens and never dials.
package both

import (
	"lugwright/geometry/kinds"
	"lugwright/services/geometry"
	"lugwright/services/server"
	"lugwright/services/strength"
	"lugwright/services/wire"
	"lugwright/strength/basis"
)

// Services gives the geometry service with every kind and the strength service with every basis.
func Services() []server.Service {
	return []server.Service{geometry.New(kinds.All()), strength.New(basis.All())}
}

// Version is the version of this build.
func Version() string { return wire.ToolVersion() }
