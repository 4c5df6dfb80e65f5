package strength_test

// A lug on a tube's end and on a bolted plate, by elementary statics.

import (
	"math"
	"slices"
	"strings"
	"testing"

	"lugwright/geometry"
	"lugwright/geometry/kinds"
	"lugwright/part"
	"lugwright/strength"
)

func bracketOf(t *testing.T, kind string, ps ...part.Param) *part.Bracket {
	t.Helper()
	b, err := geometry.Build(kinds.All(), geometry.Request{Kind: kind, Name: kind, Hand: part.LeftHand, Params: ps})
	if err != nil {
		t.Fatal(err)
	}
	return b
}

// A lug in slots of 90 mm in a tube of 80 x 80, four fillets at x = +-40, the pin 60 mm over the tube's end. 10 kN up: 10000/360 N/mm. 10 kN along the lug:
// as much, and M = 10000 (60 + 45) about the fillets' middle, with I = 360 x 40^2 + 4 x 90^3/12 = 819000 mm^3: at their ends 45 and 40 mm away.
// The tube bends by F times the distance to the pin, most at its far end, 250 mm down.
func TestLugInSlottedTube(t *testing.T) {
	b := bracketOf(t, "lug", word("foot", "slotted tube"), mm("width", 130), mm("tube_width", 80), mm("tube_depth", 80))
	up := run(t, b, strength.Options{}, service("up", part.Vec{Z: 10000}))
	within(t, "pull on the fillets", find(t, up, "fillet-strength", "w-lug").Demand, 10000/360.0, 1e-9)
	along := run(t, b, strength.Options{}, service("along", part.Vec{X: 10000}))
	q, k := 10000/360.0, 10000*105/819000.0
	within(t, "couple on the fillets", find(t, along, "fillet-strength", "w-lug").Demand, math.Hypot(q+k*45, k*40), 1e-9)
	within(t, "bending of the tube", find(t, along, "edgewise-bending", "tube").Demand, 10000*310, 1e-5)
	for _, words := range []string{"net section at the end of its slots", "far end"} {
		if !slices.ContainsFunc(up.NotChecked, func(n strength.NotChecked) bool { return strings.Contains(n.What, words) }) {
			t.Errorf("nothing says that %q is not checked", words)
		}
	}
}

// Four bolts at +-85 and +-45 mm under a lug whose pin is 60 + 16 mm over their plane. 10 kN up pulls each by a quarter; 4 kN along the lug shears each
// by a quarter.
func TestLugOnBasePlate(t *testing.T) {
	b := bracketOf(t, "lug", word("foot", "base plate"), mm("support_clear", 200))
	up := run(t, b, strength.Options{}, service("up", part.Vec{Z: 10000}))
	within(t, "tension of a bolt", find(t, up, "bolt-tension", "bolts").Demand, 2500, 1e-9)
	along := run(t, b, strength.Options{}, service("along", part.Vec{X: 4000}))
	within(t, "shear of a bolt", find(t, along, "bolt-shear", "bolts").Demand, 1000, 1e-9)
	if c := find(t, up, "wall-bending", "support"); c.Verdict == strength.NotApplied {
		t.Errorf("wall under the base plate: %s", c.Why)
	}
	bare := run(t, bracketOf(t, "lug", word("foot", "base plate")), strength.Options{}, service("up", part.Vec{Z: 10000}))
	if !slices.ContainsFunc(bare.NotChecked, func(n strength.NotChecked) bool {
		return strings.Contains(n.Why, "clear distance between its stiff edges is not stated")
	}) {
		t.Error("a wall of no stated width is not said to be unchecked")
	}
}

// A lug hangs from a tube whose corner is 30 round: its welds begin 30 over the tube's lower edge, 100 over a pin 70 below that. 7 kN across the lug bends it there,
// where 344.7 MPa x 102 x 10^2/4/1.67 hold 526.4 N m; 7 kN along the tube turns it there in its plane by as much.
func TestSubframeLugIsBentWhereItsWeldsBegin(t *testing.T) {
	b := bracketOf(t, "subframelug", mm("tube_corner", 30), mm("tube_height", 250), mm("tube_wall", 10), mm("lap", 200), mm("pin_below", 70), mm("thickness", 10),
		mm("weld", 8), mm("end_distance", 62), mm("width", 102))
	across := find(t, run(t, b, strength.Options{Method: strength.ASD}, service("across", part.Vec{Y: 7000})), "weak-axis-bending", "lug")
	within(t, "bending across", across.Demand, 7000*100, 1e-4)
	within(t, "its strength", across.Capacity, 344.738*102*10*10/4/1.67, 1e-4)
	along := run(t, b, strength.Options{Method: strength.ASD}, service("along", part.Vec{X: 7000}))
	within(t, "bending along", find(t, along, "edgewise-bending", "lug").Demand, 7000*100, 1e-4)
}
