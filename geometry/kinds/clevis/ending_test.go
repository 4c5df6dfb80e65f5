package clevis

// The pin's ends, bosses and spacers, by hand from the default clevis: ears 8, gaps 2, lug 20, so that the ears' outer faces are 40 mm apart; pin
// 25 mm in 25.5, play 0.5.

import (
	"math"
	"strings"
	"testing"

	"lugwright/geometry/access"
	"lugwright/geometry/fab/fabtest"
	"lugwright/part"
)

func noted(b *part.Bracket, words string) bool {
	return strings.Contains(strings.Join(b.Notes, "\n"), words)
}

// Cross hole of an M6, 6.4 mm (ISO 273 fine), past ears 40, play 0.5 and a washer of 0.15 d = 3.75: its middle at 47.45; one and a half holes
// more, 57.05, up to 58.
func TestRetainingBolt(t *testing.T) {
	b := made(t, set{"pin_ends": "head and retaining bolt"})
	p := b.Pins[0]
	if p.LengthMM != 58 || p.Ends[0].Kind != part.EndRetainer || p.Ends[0].BearsOn != "ear-2" || p.Ends[1].Kind != part.EndHead {
		t.Errorf("pin %+v", p)
	}
	if !noted(b, "cross hole 6.4 mm, its middle 47.45 mm from under the head") || !noted(b, "drill 1.5 mm through the bolt's head") {
		t.Errorf("notes %q", b.Notes)
	}
	if bare := made(t, set{"pin_ends": "head and retaining bolt", "wire_hole": 0}); noted(bare, "wire it") {
		t.Error("lock wire without a hole for it")
	}
}

// A slot 4.5 deep less the pin's clearance and 0.5 holds 3.5 mm: the keeper's edge is 9 mm from the pin's middle, its screws 12.5 more. The slot
// begins at the ear's face, 42 mm from an end that stands 2 mm proud, and is 6.5 wide; 6.25 mm of land make 54.75, up to 55.
func TestKeeper(t *testing.T) {
	b := made(t, set{"pin_ends": "keeper"})
	if p := b.Pins[0]; p.LengthMM != 55 || p.Ends[0] != p.Ends[1] || p.Ends[0].Kind != part.EndKeeper || p.Ends[0].BearsOn != "ear-1" {
		t.Errorf("pin %+v", p)
	}
	if !noted(b, "4.5 mm deep, from 42 mm to 48.5 mm of the inboard end") {
		t.Errorf("notes %q", b.Notes)
	}
	keeper, ear := b.Plate("keeper"), b.Plate("ear-1")
	box := keeper.Outer.BBox()
	if low := keeper.Pose.At(0, box.Min.Y, 0); math.Abs(low.Z-99) > 1e-9 || math.Abs(keeper.Pose.Origin.Y-(43+20+3)) > 1e-9 {
		t.Errorf("keeper from %v, its middle plane at %v", low, keeper.Pose.Origin)
	}
	for i := range keeper.Holes {
		h, ok := ear.Hole([]string{"keeper-1", "keeper-2"}[i])
		if !ok || h.Thread != "M8" || h.Finish != part.Tapped {
			t.Fatalf("tapped hole %+v", h)
		}
		a, e := keeper.HoleAt(keeper.Holes[i]), ear.HoleAt(h)
		if math.Abs(a.X-e.X) > 1e-9 || math.Abs(a.Z-e.Z) > 1e-9 || math.Abs(a.Z-111.5) > 1e-9 || keeper.Holes[i].DiaMM != 9 {
			t.Errorf("screw %d: keeper at %v in %g, ear at %v", i, a, keeper.Holes[i].DiaMM, e)
		}
	}
	if _, there := b.Plate("ear-2").Hole("keeper-1"); there {
		t.Error("the inboard ear is tapped too")
	}
	over := made(t, set{"pin_ends": "keeper", "cheek_thickness": 5, "cheek_diameter": 80, "gussets": "none"})
	if _, there := over.Plate("cheek-1").Hole("keeper-1"); !there || over.Pins[0].Ends[0].BearsOn != "cheek-1" || over.Bolts[len(over.Bolts)-1].Plies[1].Thing != "cheek-1" {
		t.Error("a keeper over a cheek plate is not screwed into it")
	}
}

// Nothing of a keeper stands in the way of a torch, which comes before it, nor of the pin, which goes after it.
func TestKeeperAndSpacersBlockNothing(t *testing.T) {
	for _, s := range []set{{"gussets": "none"}, {"gussets": "none", "gap": 9, "clevis_offset": 50, "angle_out": 100}} {
		bare := len(access.Findings(made(t, s), access.Usual()))
		s["pin_ends"] = "keeper"
		if s["gap"] != nil {
			s["spacer_length"] = 8
		}
		if got := access.Findings(made(t, s), access.Usual()); len(got) != bare {
			t.Errorf("%v: %v", s, got)
		}
	}
}

// A boss of 50 x 15 on each ear: bore 25.5, wall 12.25, seated with its ear over 23 mm whose middle is 12 + 11.5 from the fork's.
func TestBoss(t *testing.T) {
	for _, s := range []set{{}, {"foot": "base plate"}, {"foot": "base plate", "pin_axis": "along"}} {
		s["cheek_form"], s["cheek_thickness"], s["cheek_diameter"], s["gussets"] = "boss", 15, 50, "none"
		b := made(t, s)
		m := b.Member("boss-1")
		if m == nil || m.Profile != (part.Profile{Kind: part.RoundTube, AMM: 50, TMM: 12.25}) || m.LengthMM != 15 || m.Mark != b.Member("boss-2").Mark {
			t.Fatalf("%v: boss %+v", s, m)
		}
		if seat := b.Pins[0].Seats[2]; seat.ThicknessMM != 23 || seat.AtMM != 23.5 || !m.OnPin(&b.Pins[0]) {
			t.Errorf("%v: seat %+v", s, seat)
		}
		if !noted(b, "50 mm over all, 15 mm long, bore 24.5 mm") {
			t.Errorf("notes %q", b.Notes)
		}
	}
}

// Spacers of 7 in gaps of 8 leave 1 mm of travel. They lie against the ears, from 18 to 11 mm off the fork's middle.
func TestSpacers(t *testing.T) {
	b := made(t, set{"gap": 8, "spacer_length": 7, "clevis_offset": 50, "angle_out": 100, "gussets": "none"})
	if b.Pins[0].TravelMM != 1 {
		t.Errorf("travel %g", b.Pins[0].TravelMM)
	}
	for id, want := range map[string][2]float64{"spacer-1": {68, 61}, "spacer-2": {32, 39}} {
		m := b.Member(id)
		if from, to := m.Pose.Origin.Y, m.Pose.At(m.LengthMM, 0, 0).Y; from != want[0] || to != want[1] || m.Profile.AMM != 35.5 || m.Profile.TMM != 5 {
			t.Errorf("%s from %g to %g, %+v", id, from, to, m.Profile)
		}
	}
	// The ear is pressed over the spacer, not over the lug.
	for _, s := range b.Sweeps {
		if s.Name == "ear" && s.EntryMM != 35.5 {
			t.Errorf("%s: entry %g", s.ID, s.EntryMM)
		}
	}
}

func TestEndingRefusals(t *testing.T) {
	bolt := func(s set) set { s["pin_ends"] = "head and retaining bolt"; return s }
	plate := func(s set) set { s["pin_ends"] = "keeper"; return s }
	for _, c := range []fabtest.Refusal{
		{Given: bolt(set{"retainer_size": "M10"}), Param: "retainer_size", Bound: "8.333 mm"},
		{Given: bolt(set{"retainer_size": "M3", "wire_hole": 0}), Param: "retainer_size", Bound: "4.167 mm"},
		{Given: bolt(set{"retainer_size": "M7"}), Param: "retainer_size", Bound: "clearance hole"},
		{Given: bolt(set{"wire_hole": 1.6}), Param: "wire_hole", Bound: "1.5 mm"},
		{Given: bolt(set{"wire_hole": 0.5}), Param: "wire_hole", Bound: "1 mm"},
		{Given: set{"retainer_size": "M10"}},
		{Given: plate(set{"slot_depth": 8.5}), Param: "slot_depth", Bound: "8.333 mm"},
		{Given: plate(set{"slot_depth": 2.9}), Param: "slot_depth", Bound: "3 mm"},
		{Given: plate(set{"keeper_length": 24}), Param: "keeper_length", Bound: "25 mm"},
		{Given: plate(set{"keeper_width": 19}), Param: "keeper_width", Bound: "20 mm"},
		{Given: plate(set{"keeper_pitch": 45}), Param: "keeper_pitch", Bound: "44 mm"},
		{Given: plate(set{"keeper_pitch": 32}), Param: "keeper_pitch", Bound: "33 mm"},
		{Given: plate(set{"keeper_screw": "M10", "keeper_width": 30, "keeper_length": 80}), Param: "keeper_screw", Bound: "8 mm"},
		{Given: plate(set{"keeper_length": 120, "keeper_pitch": 90}), Param: "keeper_pitch", Bound: "10 mm of ear"},
		{Given: plate(set{"cheek_thickness": 5, "cheek_diameter": 60, "gussets": "none"}), Param: "cheek_diameter", Bound: "78.73 mm"},
		{Given: plate(set{"cheek_thickness": 15, "cheek_diameter": 80, "cheek_form": "boss", "gussets": "none"}), Param: "pin_ends", Bound: "boss"},
		{Given: set{"spacer_length": 3}, Param: "spacer_length", Bound: "2 mm"},
		{Given: set{"spacer_length": 1}, Param: "spacer_length", Bound: "2 mm"},
		{Given: set{"spacer_length": 2, "spacer_wall": 20}, Param: "spacer_wall", Bound: "60 mm across"},
	} {
		if fault := c.Broken(sized()); fault != "" {
			t.Errorf("%v: %s", c.Given, fault)
		}
	}
}

// A draw whose outer gussets rose past the pin on either side of it, where a long keeper ran into them.
func TestKeeperClearsTheGussets(t *testing.T) {
	if _, fault := fabtest.Outcome(Kind(), fabtest.Draw(Kind(), 405+1<<40)); fault != "" {
		t.Error(fault)
	}
}
