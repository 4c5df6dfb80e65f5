// Package fab holds what every shop-built bracket kind needs: snipes sized from the weld, gusset outlines, hole patterns,
// pin holes with a finish allowance, weld runs, places for part marks and the shop's rules of room. It never knows a kind
// and never judges strength.
//
//	needs.go     refusals gathered while a kind checks its parameters
//	rules.go     rules of room: edges, pitches, sockets, snipes, torch access
//	plates.go    gusset outlines and spreads
//	fold.go      folds of 90 degrees in sheet and plate
//	footplate.go plates bolted down under what stands on them
//	ear.go       plates with a pin hole under a round head
//	cheek.go     cheek plates and bosses round a pin hole, rings
//	bodylug.go   the body's lug between two ears of the bracket
//	fork.go      the other side of a lug's pin
//	holes.go     pin and bolt holes, bolt patterns
//	bolting.go   bolts of a pattern and their room
//	webangle.go  an angle beside a rail, rolled or bent of plate: legs, stiffeners, bolts, sweeps
//	frame.go     rules for holes in a frame rail
//	turn.go      a quarter turn of a whole bracket
//	put.go       pieces made apart and put where they belong
//	rods.go      hanger rods and their washers
//	marks.go     where a part mark fits on a plate
//	sheet.go     whether a text has steel all round it
//	params.go    declarations of parameters in one line each
//	paths.go     load paths that go one way
//	welds.go     weld runs at a plate's two faces
//	tube.go      a tube that stands on a plate, and the weld round it
//	tubeplate.go that plate, bolted down beside the tube
package fab
