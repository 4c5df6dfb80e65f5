// Package server runs services on a gRPC server with everything around them: health, reflection, recovery, limits, logs and
// an orderly stop. It never looks into a message.
//
//	server.go     Server: build, serve, stop
//	limits.go     the first of two doors: how much is taken at once
//	queue.go      the second: who is worked on, who waits, who is told to come again
//	listen.go     where it may listen, and for how many
//	calllog.go    one line for each call
//	recover.go    panics become Internal
//	batch.go      batches: one item's failure or panic stays its own
//	reflect.go    questions about the interface
//	local.go      the same handlers without a connection
//	config.go     flags and environment
//	run.go        a server as a program: self-test, serve, drain
//	probe.go       health for who cannot ask over TLS, and the question
//	profiles.go   Go's profiles, on an address of their own
//	daemon.go     the main of a service that runs alone
package server
