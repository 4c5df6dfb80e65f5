// Package nest lays plates out on stock sheets so that little is left over. It never overlaps two plates: places come from rasters that cover more
// than the plates, and every result is checked by exact geometry. The same job gives the same sheets.
//
//	nest.go    parts, sheets, result; the search
//	lay.go     one layout: each part at the leftmost, lowest place that is free
//	raster.go  a part as columns of cells that cover it
//	column.go  a column of a sheet as bits
//	check.go   exact distances of a result
package nest
