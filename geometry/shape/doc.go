// Package shape is the exact plane geometry of outlines made of straight lines and true circular arcs, in mm: area and
// moments, section cuts, distances, offsets, winding, hit tests and validity. It never replaces an arc by a polygon in a
// result (Loop.Polygon is there for those who must), and it knows no plates, kinds, formats or strength.
//
// Conventions. x runs to the right, y up, angles are in radians and counter-clockwise. An arc is written as a bulge, the
// tangent of a quarter of its sweep: 0 a line, +1 a half circle turning left, -1 a half circle turning right; it bellies
// to the right of its chord when positive. A Loop is closed and does not repeat its first vertex. Loops may be wound
// either way, but constructors give counter-clockwise ones; an Outline subtracts its holes whatever their winding.
//
// Nothing panics on bad numbers. Outline.Validate says whether an outline is one a shop can cut; measures of an outline
// that does not validate need not mean anything.
package shape

// Tolerances, in mm. They are about a thousandth of what a cutting machine resolves, or less.
const (
	// OnTolMM is the distance within which a point counts as on a boundary, and a vertex as on a cut line.
	OnTolMM = 1e-9
	// TouchMM is the distance within which edges of a loop, or two loops, count as touching.
	TouchMM = 1e-6
	// ZeroEdgeMM is the length below which Normalize drops an edge.
	ZeroEdgeMM = 1e-6
	// FlatMM is the sagitta below which Normalize turns an arc into a line.
	FlatMM = 1e-6
	// TinyEdgeMM is the shortest edge that Validate accepts.
	TinyEdgeMM = 1e-4
	// MaxSizeMM is the largest coordinate (either sign) that Validate accepts: 100 m.
	MaxSizeMM = 1e5
	// MaxRadiusMM is the largest radius of an arc that Validate accepts. The centre of a flatter one would be further away than
	// the 1e6 mm to which files are written.
	MaxRadiusMM = 5e5
)
