// Package mesh turns the parts of a bracket into closed shells of triangles. It never decides a shape and knows no file format: everything
// comes from the bracket.
//
// Facets. A corner of a facet lies on the true arc, and no facet is further than the facet error e from its arc. So the area of a flat piece is off by
// less than 2/3 e times the length of its arcs, a solid's volume by that times its thickness: a circular segment of height h over an arc of length s
// has less than 2/3 h s.
//
// Shells. Corners are shared by number, never by nearness, so that each edge is used exactly twice, once in each direction; Of checks that before it
// gives a shell away. Which triangles divide a face is settled in whole numbers of a nanometre, without rounding.
//
//	solids.go    the solids of a bracket
//	mesh.go      a shell, its volume, whether it is closed
//	sheet.go     plates: two faces and the walls between them
//	fold.go      bent plates
//	member.go    angles, tubes and bars
//	triangles.go triangles of a face with holes
//	exact.go     on which side of a line a point lies, exactly
package mesh
