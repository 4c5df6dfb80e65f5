// Package vehicle takes what rides where to the force at each mount: masses and states, axle loads, load sets, mounts, reactions and the loads that
// brackets are designed for. It never knows a bracket, a basis or a job file, and it judges no strength.
//
// Axes: x rearward from the front axle's centre, y left of the centreline, z up from the ground; mm, kg, N, N*mm, rad. A case is the apparent
// acceleration in g that acts on the mass, gravity included: standing still is (0, 0, -1), and a brake of 0.8 g throws the mass forward,
// (-0.8, 0, -1). A reaction is the force of a mount on the body; the force on its bracket is minus that.
//
//	masses.go    what rides where: items, tanks, chassis-cab, ratings
//	states.go    fills and present items; all combinations; what if something moves
//	spread.go    a range carried from the masses to sums and centres
//	rollup.go    total, centre of gravity, axles, side bias, stability
//	weighed.go   axle readings against the roll-up
//	slosh.go     where a part-full tank's contents go
//	loadset.go   load sets and their cases; shipped.go the sets that come with the program
//	mounts.go    mounts and their restraint maps; presets.go by trade name
//	scheme.go    what the mounts hold, do not hold and hold twice; who shares; slack.go what may rest; words.go the sentences
//	solve.go     reactions by state and case, with the range that equilibrium allows
//	loads.go     the loads on each bracket
//	shared.go    what all mounts take together under each choice of shares
//	validate.go  what is refused, by field
//
// Confidence. Each mass has a plus-minus: stated, or by its flag 1 % weighed, 5 % data, 20 % guess (common practice, no source). Ranges are the worst
// sum, every mass at the unfavourable end of its own range, not the root of the sum of squares: that would ask for errors that are
// independent and as often high as low, while one builder's guesses tend to err together, and low. Ranges of a centre of gravity are exact
// extremes of that quotient. Positions count as stated.
//
// Reactions. The body is rigid. Where equilibrium alone fixes the reactions they are exact and no stiffness enters. Where it does not:
//
//   - One set is solved by stiffness (mounts without one have the same, so that nearer mounts take more). Supports that push only may lift off.
//   - Each component has a range between the extremes that equilibrium, one-way supports and the following rules allow, by linear programming.
//     The rules are needed since two mounts that both pull could pull against each other without bound; they are common practice, no source.
//   - Share: mounts that hold the same direction and could each do it alone (all that hold x; those at one station that hold y) share it from 0 to
//     100 %, none against another: which one acts depends on which gap closes first.
//   - Slack: where a component still has no bound, as with four mounts that hold z both ways, as many mounts as are too many are slack in turn, those that
//     hold z and those that hold x or y each on their own account. What is left must hold the body firmly: three mounts nearly in line (about 150 mm
//     off on 3 m) are not counted on alone.
//   - Couples of mounts that hold turning, where equilibrium does not need them, are slack too: beside the stiffness solution nobody counts on them.
//   - The stiffness solution always lies in the range: where it breaks a rule (a pair working as a couple) the range is widened to it.
//   - What has no bound by these rules either is said to have none.
//
// A motion that nothing holds is named in words, and so is what is held twice. A case that no reactions balance is a result: it says which motion
// the load drives and which mounts part.
//
// Design loads. Each mount gets, for every state and case, the load of the stiffness solution and of every choice of who shares: for each sharing group
// each member takes all, times each way of slack. Groups with a, b, ... members and families with s, t ways of slack give a*b*...*s*t + 1 solutions, 5
// for a single and a pair, 9 for a diamond; beyond 64 the choices are made one at a time with the others by stiffness, a + b + ... + s + t + 1. Where a
// family has more than 64 ways of slack none is tried, and the scheme says so. A choice that does not change a mount's load is left out of its name, and
// equal loads at one level are given once.
package vehicle
