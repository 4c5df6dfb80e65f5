// Package server runs services on a gRPC server with everything around them: health, reflection, recovery, keepalive,
// limits and an orderly stop. It never looks into a message.
//
//	server.go     Server: build, serve, stop
//	listen.go     where it may listen
//	recover.go    panics become Internal
//	batch.go      batches: one item's failure or panic stays its own
//	daemon.go     the main of a service that runs alone
package server
