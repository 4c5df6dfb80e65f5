// Package whole takes a whole vehicle in one request: weights, reactions, what if, as weighed, frame, sweep of a mount, drilling, clearance, lift, trays,
// and puts what is wrong into words, worst first. It never computes what a package beside it computes: it feeds one's results to the next.
//
//	request.go   what is asked
//	answer.go    what comes of it
//	reckon.go    the order of work
//	paths.go     refused fields, named by their place in the request
//	weights.go   weights, reactions, what if, as weighed
//	frame.go     forces on the frame from the mounts' reactions; sweep.go one mount moved along it
//	checks.go    drilling, clearance, lift, trays, washers, tanks
//	warn.go      what to look at, worst first
//	unchecked.go what was not looked at
package whole
