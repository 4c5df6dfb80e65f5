// Package shop says what a cutting shop can make and how it wants its files. It settles how every hole of a plate is made and names what
// breaks the shop's rules; it never reads or writes a file.
//
//	profile.go  a shop: process, files, marks, rules of holes
//	plain.go    the shop of a job that names none
//	sound.go    what is wrong with a profile
//	holes.go    how each hole is made
//	broken.go   holes and webs that the shop cannot cut
//	layout.go   several pieces in one file
//	warn.go     what a process does to the edge of a hole, and plates without a mark
package shop
