// Package frame does the mechanics of a ladder frame under a body: rail sections from tape measurements, shear and bending along each
// rail from the mounts' forces against the same load spread over the body, twist of a rail by a mount beside its shear centre, bending of
// a cross tube. It never finds the mounts' forces, and it holds no maker's limit.
//
// Axes are the vehicle's: x rearward from the front axle, y left, z up, in mm. Forces are those on the frame, in N. Bending is positive
// where it sags the rail, pulling its lower flange. Everything is elementary beam theory; where it is more, the function says so.
//
//	section.go  rail and liners: area, inertia, moduli, shear centre, torsion constant
//	beam.go     a beam on two supports under points, couples and lines of load, exactly, piece by piece
//	spread.go   a load spread evenly or in a straight line, with a given total and centre
//	frame.go    what is given: frame and cases, and what is refused
//	bend.go     cases to diagrams of both rails, against the spread body
//	twist.go    twist at each mount, and the cross member that takes it
//	tube.go     a cross tube between the rails
//	warn.go     places and results that deserve a warning
//	sweep.go    one mount moved along the frame
package frame
