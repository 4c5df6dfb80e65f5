// Package hung finds what a tank or tray that hangs on rods does to them, to its stops and to its washers. It gives loads and rules of the trade; whether a
// rod holds is the strength service's to say.
//
//	rods.go   loads of each rod by case: even share, a diagonal pair, the overturning couple, side force
//	rules.go  spreader washers, hold-down, a plastic tank's floor
package hung
