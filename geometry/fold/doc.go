// Package fold takes a bent plate apart into flat faces and bends, and says where each point of its flat pattern comes to lie when it is folded. It never
// draws, and it never changes the flat pattern, which is what is cut.
//
// A bend is a part of a cylinder: the sheet keeps its thickness, the flat faces begin where the bend's allowance ends on either side of its line. The sheet's
// middle plane is longer than the allowance by angle x (0.5 - K) x thickness; so a folded solid is larger than the flat pattern times the thickness by
// that times thickness and length of each bend. A bend that states no allowance is taken to have K = 0.5. An inside radius of nought is drawn as a
// hundredth of the thickness.
//
//	pattern.go  the flat pattern cut at its bends
//	cut.go      one cut across a ring of corners
//	place.go    where points come to lie
package fold
