// Package dial is the client of both services in the domain's own types: the same whether they run in this process or
// elsewhere. It never builds or checks anything itself, and shows no wire type.
//
//	client.go       Client, InProcess, Remote
//	geometry.go     kinds, brackets, files
//	strength.go     bases, materials, checks, evaluations
//	peer.go         one service: its version, deadlines, errors
//	connection.go   addresses, retries, keepalive
//	names.go        names that stand for several addresses
//	batches.go      many items in messages of 64
//	variants.go     families: brackets pass from service to service unread
//	persist.go      asking again, and in halves, until an answer is there
//	replica.go      which replica answered, and its version
package dial
