package strength_test

// A bent tab's foot, by elementary statics.

import (
	"testing"

	"lugwright/part"
	"lugwright/strength"
)

// 6 mm bent with an inside radius of 6, bolts 40 mm over the face; the upright's middle plane is y = 0, the foot's z = 3. 1 kN towards the foot bends the
// upright over the fold, at 12 mm, by 28 N m and the foot, which nothing holds before its bolts, by 37 N m, and by 40 at them, whose shear is 3 mm below
// its middle. Each of two bolts has half the shear.
func TestBentTabBolted(t *testing.T) {
	b := bracketOf(t, "tab", word("foot", "bent, bolted"), mm("support_clear", 100))
	r := run(t, b, strength.Options{}, service("push", part.Vec{Y: -1000}))
	within(t, "upright over the fold", find(t, r, "weak-axis-bending", "tab").Demand, 28000, 1e-4)
	within(t, "foot", find(t, r, "weak-axis-bending", "tab.1").Demand, 40000, 1e-9)
	within(t, "shear of a foot bolt", find(t, r, "bolt-shear", "foot bolts").Demand, 500, 1e-9)
	for _, limit := range []string{"bolt-bearing", "bolt-prying"} {
		if c := find(t, r, limit, "tab.1"); c.Verdict == strength.NotApplied || c.Verdict == strength.Outside {
			t.Errorf("%s: %s, %s", limit, c.Verdict, c.Why)
		}
	}
	if c := find(t, r, "wall-bending", "support"); c.Verdict == strength.NotApplied {
		t.Errorf("wall under the foot: %s", c.Why)
	}
}

// The welded foot: fillets from y = -9 to -49 on both sides, 60 mm along the tip. Their middle is at -(80 x 29 + 60 x 49)/140; 1 kN up at the
// equipment's face, y = 3, pulls the fillets' ends by the fold most.
func TestBentTabWelded(t *testing.T) {
	b := bracketOf(t, "tab", word("foot", "bent, welded"))
	r := run(t, b, strength.Options{}, service("up", part.Vec{Z: 1000}))
	middle := (80*29 + 60*49) / 140.0
	I := 2*(40*40*40/12.0+40*(29-middle)*(29-middle)) + 60*(49-middle)*(49-middle)
	within(t, "fillets of the foot", find(t, r, "fillet-strength", "w-tab").Demand, 1000/140.0+1000*(3+middle)*(middle-9)/I, 1e-9)
}
