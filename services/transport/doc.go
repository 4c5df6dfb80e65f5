// Package transport is what a connection to a service is secured by: TLS 1.3 with certificates from files, and a bearer token. It never
// listens, never dials, and writes no file.
//
//	place.go    which addresses stay on this machine
//	server.go   a server's certificate and the clients it lets in
//	client.go   how a client reaches a service
//	token.go    the bearer token, on both sides
//	kept.go     files that are read again when they change
package transport
