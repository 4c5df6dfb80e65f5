// Package family gives the variants of a family one after the other, from a grid or from the rows of a CSV file. It never builds or checks one, and never
// holds more than one in memory.
//
//	family.go  Family: how many variants, names of their parameters, hash; combinations of a grid by index
//	header.go  the first line of a CSV file: which parameter, in which unit
//	rows.go    its rows, each a variant or the reason why it is none
//	marks.go   whether the file is still as it was
//	lines.go   lines of any file, none longer than a bound
package family
