// Package pack writes the cut pack: the folder with everything that shop and inspector need. It never decides a shape or
// a verdict: geometry and checks come from the services, and a cut file that does not equal the model is not released.
//
//	pack.go      Write, and what it is given
//	errors.go    what can go wrong, as types
//	together.go  the loop that uses every core
//	folder.go    a folder that is there whole or not at all
//	export.go    files of every bracket, from the geometry service
//	pieces.go    distinct plates and members of the whole job, counted
//	mass.go      masses and cut lengths
//	cut.go       cut files, re-read and compared with the model before release
//	nest.go      plates laid out on the job's stock sheets
//	drawings.go  pictures and solids
//	lists.go     cut list and saw list
//	holes.go     hole list
//	buy.go       bolts, pins and rods to buy
//	papers.go    papers, as pages and as PDF
//	shoppapers.go the shop's papers, and what a later pack is held against
//	readme.go    README.txt
//	manifest.go  manifest.json
//	warning.go   the words on every paper of a job that does not pass
package pack
