// Package wire turns the domain's types into wire messages and back: it alone knows both. It never computes anything,
// opens no connection, and lets nothing into the domain that is not finite, bounded and of a known word.
//
// Encoding cannot fail. Decoding gives part.FieldErrors with the path of each refused field as the .proto files name it.
// What was encoded decodes to an equal value, but for empty lists, which come back nil.
//
//	reader.go    what is refused on the way in: missing messages, unknown words, wild numbers, endless lists
//	enums.go     the words of the domain and their enum values
//	space.go plate.go member.go joint.go load.go bracket.go   the bracket
//	items.go     how many brackets a request asks for
//	order.go     kinds and orders for brackets
//	files.go     export formats and files
//	basis.go material.go setup.go report.go brief.go evaluate.go   checks
//	vehicle*.go  a whole vehicle and what comes of it; vehicle_book.go the texts that an answer writes once
//	problem.go status.go short.go   errors, in band and as a call's status, which is short
//	version.go   the interface's version
package wire
