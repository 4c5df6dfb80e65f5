package command

// The verb loads on the demo jobs, against the numbers of our own scenarios (vehicle/testdata/scenarios.json: invented, solved there by two independent
// programs; a regression, not a published reference).

import (
	"encoding/json"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"
)

const jobs = "../../testdata/jobs/"

type scenarioDoc struct {
	Results map[string]struct {
		Front     float64 `json:"front_axle"`
		Rear      float64 `json:"rear_axle"`
		SSF       float64 `json:"static_stability_factor"`
		Body      float64 `json:"body_mass"`
		CG        [3]float64
		Reactions map[string]struct{ VF, VL, VR, TF, TP, XP float64 }
	}
}

func scenarioOf(t *testing.T, name string) scenarioDoc {
	t.Helper()
	src, err := os.ReadFile("../../vehicle/testdata/scenarios.json")
	if err != nil {
		t.Fatal(err)
	}
	var all struct{ Scenarios map[string]scenarioDoc }
	if err := json.Unmarshal(src, &all); err != nil {
		t.Fatal(err)
	}
	return all.Scenarios[name]
}

// edited is a job with some of its text replaced.
func edited(t *testing.T, job string, oldNew ...string) string {
	t.Helper()
	src, err := os.ReadFile(jobs + job)
	if err != nil {
		t.Fatal(err)
	}
	for i := 0; i < len(oldNew); i += 2 {
		if !strings.Contains(string(src), oldNew[i]) {
			t.Fatalf("%s has no %q", job, oldNew[i])
		}
	}
	path := filepath.Join(t.TempDir(), job)
	if err := os.WriteFile(path, []byte(strings.NewReplacer(oldNew...).Replace(string(src))), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// withoutBrackets is a job's vehicle alone.
func withoutBrackets(t *testing.T, job string) string {
	t.Helper()
	src, err := os.ReadFile(job)
	if err != nil {
		t.Fatal(err)
	}
	text, _, _ := strings.Cut(string(src), "\nbrackets:")
	path := filepath.Join(t.TempDir(), filepath.Base(job))
	if err := os.WriteFile(path, []byte(text+"\n"), 0o644); err != nil {
		t.Fatal(err)
	}
	return path
}

// forces reads the table of forces: by state and case, the columns' numbers, right and forward positive and up negative.
func forces(t *testing.T, out string) map[string]map[string][]float64 {
	t.Helper()
	all := map[string]map[string][]float64{}
	state := ""
	_, out, _ = strings.Cut(out, "Forces of the body on the mounts")
	for _, line := range strings.Split(out, "\n") {
		words := strings.Fields(line)
		switch {
		case strings.Contains(line, "What is left of equilibrium"):
			return all
		case len(words) > 1 && (words[0] == "empty" || words[0] == "full"):
			state = words[0]
			all[state] = map[string][]float64{}
		case state != "" && len(words) > 1 && words[0][0] == 'A':
			name := words[0]
			if words[1] == "left" || words[1] == "right" {
				name += " " + words[1]
				words = words[1:]
			}
			var row []float64
			for _, w := range words[1:] {
				switch strings.TrimSuffix(w, "*") {
				case "UP", "F":
				case "R", "L":
					last := len(row) - 1
					if strings.HasPrefix(w, "L") { // to the left
						row[last] = -row[last]
					}
				default:
					x, err := strconv.ParseFloat(strings.TrimSuffix(w, "*"), 64)
					if err != nil {
						t.Fatalf("%q in %q", w, line)
					}
					row = append(row, x)
				}
			}
			all[state][name] = row
		}
	}
	t.Fatal("the table of forces has no end")
	return nil
}

// caseID turns a scenario's name of a case into the load set's.
func caseID(name string) string {
	words := strings.Fields(name)
	last := words[len(words)-1]
	if last == "right" || last == "left" {
		return words[0] + " " + last
	}
	return words[0]
}

// Every force of every state and case: with fore and aft shared equally, as the scenarios have it, to the printed digit. Side force of the pair is that of
// both, for which of the two takes it does not matter there.
func TestLoadsReproduceTheScenarios(t *testing.T) {
	const half = "\n  shares:\n    - {direction: x, mounts: [pair-left, pair-right], parts: [50 %, 50 %]}\n\n  frame:"
	for _, c := range []struct {
		job, name     string
		unit, digit   float64
		columns       string // letters of the mounts in order: F single, L, R pair
		sideOfPairEnd bool   // its column comes after the single's
	}{
		{"fieldlab.yaml", "S1", 1000, 0.01, "FLR", true},
		{"hivecarrier.yaml", "S2", 1, 1, "LRF", false},
		{"forgeworkshop.yaml", "S3", 1000, 0.01, "FLR", true},
	} {
		r := lugwright(t, "loads", edited(t, c.job, "\n  frame:", half))
		got := forces(t, r.out)
		n := 0
		for state, s := range scenarioOf(t, c.name).Results {
			for name, want := range s.Reactions {
				row := got[state][caseID(name)]
				if len(row) != 6 {
					t.Errorf("%s, %s, %s: row %v", c.name, state, name, row)
					continue
				}
				n++
				vertical := map[byte]float64{'F': want.VF, 'L': want.VL, 'R': want.VR}
				side := []float64{want.TF, want.TP}
				if !c.sideOfPairEnd {
					side = []float64{want.TP, want.TF}
				}
				expect := []float64{vertical[c.columns[0]], vertical[c.columns[1]], vertical[c.columns[2]], side[0], side[1], math.Abs(want.XP)}
				for i, w := range expect {
					if !(math.Abs(row[i]-w/c.unit) <= 0.5*c.digit+0.1/c.unit) {
						t.Errorf("%s, %s, %s, column %d: got %g, want %g", c.name, state, name, i, row[i], w/c.unit)
					}
				}
			}
		}
		if n != 24 {
			t.Errorf("%s: %d rows", c.name, n)
		}
	}
}

func wantAll(t *testing.T, out string, parts ...string) {
	t.Helper()
	for _, part := range parts {
		if !strings.Contains(out, part) {
			t.Errorf("no %q", part)
		}
	}
	if t.Failed() {
		t.Log(out)
	}
}

// S1 as printed: axles, centres, stability, uplift on a slope, the rails at 1 g and 3 g against a spread body, the gap that is missing, the jacks.
func TestLoadsFieldLab(t *testing.T) {
	r := lugwright(t, "loads", jobs+"fieldlab.yaml").want(t, Failed, "lugwright: rail under subframe: gap up and down under twist, at least 74.94 mm, has 70 mm")
	wantAll(t, r.out,
		"full                  2531   3100       2919   5200   5450   7500",
		"empty                 2394   3100       2556   5200   4950   7500",
		"full   body     2400  2801  92 right  1542", "empty  body     1900  2811   55 left  1619",
		"0.71   35.5 deg left", "0.69  34.6 deg right",
		"A1            8.33       5.30        9.91", "A2           24.99      15.89       29.73", "-1.40 UP       16.60",
		"A2, full         100    107   103  1250          112", "A1, full          33     36    34  1250           37",
		"FAILS    rail under subframe", "at least 243.11 mm, has 260",
		"front left          539", "front right         482", "rear left           464", "rear right          415", "950   2000",
		"pair-left twists the left rail", "(A6 left, full, side all at\n    pair-left)", "rear takes it in bending",
		"pair-left: 6 holes in the left rail", "builder's choice",
	)
	if n := strings.Count(r.err, "\n"); n != 1 {
		t.Errorf("%d lines:\n%s", n, r.err)
	}
	for _, line := range strings.Split(r.out, "\n") {
		if width(line) > columns {
			t.Errorf("%d columns: %s", width(line), line)
		}
	}
	// The single mount moved towards mid-span bends the rails more: 149 and 186 MPa at 3 g, mean of both.
	swept := lugwright(t, "loads", jobs+"fieldlab.yaml", "--sweep-mount", "single", "--over", "1250 mm, 1800 mm, 2250 mm").want(t, Failed, "").out
	_, swept, _ = strings.Cut(swept, "Mount single moved along the vehicle")
	wantAll(t, swept, "1250         100    107   103     112  A2, full", "1800         144    153   149 ", "2250         180    192   186 ", "42.84")
}

// S2 as printed: the front axle over its rating with all aboard, which moving the tote cures; the rails in ksi.
func TestLoadsHiveCarrier(t *testing.T) {
	r := lugwright(t, "loads", jobs+"hivecarrier.yaml").want(t, Failed, "state full: front axle 6136 lb is over its rating of 6000 lb, by 136 lb")
	wantAll(t, r.out,
		"FAILS    state full: front axle 6136 lb is over its rating of 6000 lb, by 136",
		"full                  6136   6000       7216  10500  13352  14500  OVER",
		"full   body      6452  118.1  1.5 left  56.0", "empty  body      1820  102.8  5.3 left  48.0", "0.78",
		"full             5999  6136",
		"rail: S 7.361 in3", "A2, full        27.5   18.9  23.2", "A1, full         9.2    6.3   7.7",
		"the body pulls it up, 2291 lbf at worst (A6 left,", "the roll-up against a scale",
	)
	if strings.Contains(r.out, " mm") || strings.Contains(r.out, " kg") || strings.Contains(r.out, " kN") {
		for _, line := range strings.Split(r.out, "\n") {
			if strings.Contains(line, " mm") || strings.Contains(line, " kg") || strings.Contains(line, " kN") {
				t.Errorf("metric in an inch job: %s", line)
			}
		}
	}
	// The same move asked for on the line.
	moved := lugwright(t, "loads", edited(t, "hivecarrier.yaml", "  what_if:\n    tote: {x: 16 in}\n", ""), "--move", "tote: x 16 in").out
	wantAll(t, moved, "What if tote moves 16.0 in rearward", "full             5999  6136")
}

// S3 as printed: the left mount has more to hold when the body is empty.
func TestLoadsForgeWorkshop(t *testing.T) {
	r := lugwright(t, "loads", jobs+"forgeworkshop.yaml").want(t, Done, "")
	wantAll(t, r.out,
		"empty  body     1720  2505  90 left", "full   body     1960  2529  7 right",
		"empty                 1920", "full                  1967",
		"pair-left   down          22.66  A2        empty", "A2           17.33      19.70       20.62",
		"A6 left       5.28      17.05    -5.47 UP",
		"front axle      1955       1920         +35  within",
	)
}

// S4 as printed: even share and two diagonal rods at 3 g; washers and floors.
func TestLoadsTrays(t *testing.T) {
	r := lugwright(t, "loads", jobs+"watertrays.yaml").want(t, Done, "")
	wantAll(t, r.out, "A2         1545       3089", "side force bends its rods", "weights, axle loads and stability: no vehicle is stated", "ok       spreader on the beams: side", "tray-b   tray B     12")
	// Bending alone at 1 g to the side, at the thread's root (printed there as 1360, 676, 384, 148).
	for size, mpa := range map[string]string{"M8": "1358", "M10": "676", "M12": "384", "M16": "148"} {
		wantAll(t, lugwright(t, "loads", edited(t, "watertrays.yaml", "rod: M16\n", "rod: "+size+"\n", "rod_size: M16\n", "rod_size: "+size+"\n")).out, "A6 right "+mpa)
	}
	bare := edited(t, "watertrays.yaml", "thin_wall: yes, crush_sleeve: yes", "thin_wall: yes", "{rod: M12, side: 80 mm, thickness: 8 mm}", "{rod: M12, side: 25 mm, thickness: 2 mm}")
	lugwright(t, "loads", bare).want(t, Failed, "spreader on the beams: thin-walled tube; needs a crush sleeve inside")
}

// S4's trays take their masses and rods from the vehicle and pass. Mild rods without stops fail in bending to M12; stops hold them. A coupling nut half engaged
// fails, and aluminium bare on steel is told.
func TestCheckTrays(t *testing.T) {
	r := lugwright(t, "check", "--access", jobs+"watertrays.yaml").want(t, Done, "")
	wantAll(t, r.out, "pass  tray-a", "pass  tray-b", "pass  tray-c")
	if strings.Contains(r.out, "isolators") {
		t.Error("isolated aluminium is told of")
	}
	const rods = "rod_size: M16\n      rod_grade: \"8.8\""
	for _, size := range []string{"M8", "M10", "M12"} {
		mild := "rod_size: " + size + "\n      rod_grade: \"4.6\""
		lugwright(t, "check", edited(t, "watertrays.yaml", rods, mild, "      rod: M16\n", "      rod: "+size+"\n")).want(t, Failed, "tray-a fails: force along a rod with its bending, rods")
	}
	stopped := edited(t, "watertrays.yaml", rods, "rod_size: M12\n      stops: yes\n      rod_grade: \"4.6\"", "      rod: M16\n", "      rod: M12\n      stops: 860 mm\n")
	lugwright(t, "check", stopped).want(t, Done, "")
	lugwright(t, "check", edited(t, "watertrays.yaml", "rod_ends: both held", "rod_ends: both held\n      engagement: 8 mm")).want(t, Failed, "tray-a fails: engagement of a thread, rods, at 2.00 of capacity")
	told := lugwright(t, "check", edited(t, "watertrays.yaml", "isolate: yes", "isolate: no")).want(t, Done, "").out
	wantAll(t, strings.Join(strings.Fields(told), " "), "tray is of 5083-H116, aluminium, on beams of S355 with nothing between: it needs isolators")
	// What both state has to be the same; what is no tray, and a kind that is none, is refused.
	for _, c := range [][3]string{
		{rods, rods + "\n      rod_free: 200 mm", "brackets[tray-a].parameters.rod_free: 200 mm; 140 mm, as the vehicle's tray A has it"},
		{rods, rods + "\n      rods_per_side: 6", "brackets[tray-a].parameters.rods_per_side: 6; 2, as the vehicle's tray A has it"},
		{"      rod: M16\n", "      rod: M8\n", "brackets[tray-a].parameters.rod_size: M16; M8, as the vehicle's tray A has it"},
		{"front left: {x: 1400 mm, y: 270 mm}", "front left: {x: 1500 mm, y: 270 mm}", "brackets[tray-a].tray: A hangs on 4 rods that are not two like rows"},
		{rods, rods + "\n      stops: yes", "brackets[tray-a].parameters.stops"},
		{"tray: A\n", "tray: D\n", "brackets[tray-a].tray: no tray \"D\""},
		{"kind: tray\n    hand: left\n    tray: A", "kind: lug\n    hand: left\n    tray: A", "it goes with the kind tray"},
	} {
		lugwright(t, "check", edited(t, "watertrays.yaml", c[0], c[1])).want(t, Misused, c[2])
	}
}

// Brackets tied to mounts are checked against the mounts' loads, with their cases' sources.
func TestCheckTakesLoadsOfMounts(t *testing.T) {
	r := lugwright(t, "check", jobs+"fieldlab.yaml").want(t, Done, "")
	wantAll(t, r.out, "pass  pair-left", "side all at pair-left", "A7         service")
	bare := edited(t, "fieldlab.yaml", "gussets: between", "gussets: none", "      between_thickness: 10 mm\n", "", "      between_height: 58 mm\n", "")
	lugwright(t, "check", bare).want(t, Failed, "pair-left fails")
}

// Every mix of tanks and of what rides at times, whose names are long, on a page of 80 columns; the brackets are designed for all of them.
func TestLoadsOfManyStates(t *testing.T) {
	job := edited(t, "fieldlab.yaml", "  states:\n    empty: {}\n    full: {fills: {clean water: 100 %, waste water: 100 %}}\n", "  all_combinations: yes\n",
		"z: 1650 mm, known: data}", "z: 1650 mm, known: data, optional: yes}", "known: guess}", "known: guess, optional: yes}")
	r := lugwright(t, "loads", job).want(t, Failed, "")
	wantAll(t, r.out, "and 8 more states, lighter on every rating; --all lists them", "192 states and cases; --all lists the forces of each", "pair-left   pair-left     640")
	for _, line := range strings.Split(r.out, "\n") {
		if width(line) > columns {
			t.Errorf("%d columns: %s", width(line), line)
		}
	}
}

func TestLoadsJSON(t *testing.T) {
	r := lugwright(t, "loads", jobs+"fieldlab.yaml", "--json").want(t, Failed, "")
	var d struct {
		Passes   bool
		Warnings []struct{ Severity, Kind, Words string }
		Answer   struct {
			Report struct {
				Weights []struct {
					State string
					Front struct {
						KG       struct{ Value, Low, High float64 } `json:"kg"`
						RatingKG float64                            `json:"rating_kg"`
					}
				}
				Bodies []struct {
					Loads []struct {
						Mount string
						Loads []struct {
							Name  string
							Force struct{ X, Y, Z float64 }
						}
					}
				}
			}
			Frame struct {
				Rail struct {
					SMM3 float64 `json:"s_mm3"`
				}
			}
		}
		Brackets []struct {
			Name, Mount string
			Loads       []struct{ Case, State string }
		}
	}
	if err := json.Unmarshal([]byte(r.out), &d); err != nil {
		t.Fatal(err)
	}
	w := d.Answer.Report.Weights
	if d.Passes || len(w) != 2 || math.Abs(w[1].Front.KG.Value-2531.2) > 0.1 || w[1].Front.RatingKG != 3100 || math.Abs(d.Answer.Frame.Rail.SMM3-112284) > 1 {
		t.Errorf("%+v", d)
	}
	if len(d.Brackets) != 3 || d.Brackets[0].Mount != "pair-left" || len(d.Brackets[0].Loads) != len(d.Answer.Report.Bodies[0].Loads[1].Loads) {
		t.Errorf("brackets: %+v", d.Brackets)
	}
}

func TestSnakeNames(t *testing.T) {
	for name, want := range map[string]string{
		"XMM": "x_mm", "CGXMM": "cg_x_mm", "MassKG": "mass_kg", "KG": "kg", "DownN": "down_n", "MomentNMM": "moment_n_mm", "StressMPa": "stress_mpa", "SMM3": "s_mm3", "RX": "rx",
		"TipAngleRad": "tip_angle_rad", "HeldTwice": "held_twice", "AccelG": "accel_g", "OfYield": "of_yield", "ID": "id", "CG": "cg", "ResidualN": "residual_n", "ResidualNMM": "residual_n_mm",
	} {
		if got := snakeName(name); got != want {
			t.Errorf("%s: %s, want %s", name, got, want)
		}
	}
}

func TestLoadsUsage(t *testing.T) {
	job := jobs + "fieldlab.yaml"
	for _, c := range []struct {
		args []string
		want string
	}{
		{[]string{"--move", "clean water x 300 mm"}, "no colon"},
		{[]string{"--move", "clean watr: x 300 mm"}, `no mass or tank "clean watr"; nearest is "clean water"`},
		{[]string{"--move", "clean water: u 300 mm"}, "none of x, y, z"},
		{[]string{"--move", "clean water: x 300"}, "has no unit"},
		{[]string{"--move", "clean water: x 1000000 m"}, "further than 100 m"},
		{[]string{"--sweep-mount", "single"}, "go together"},
		{[]string{"--sweep-mount", "sngle", "--over", "1 m"}, `nearest is "single"`},
		{[]string{"--sweep-mount", "single", "--over", "1 m to 2 m"}, "--over"},
		{[]string{"--sweep-mount", "single", "--over", "1 m to 2 m by 0 m"}, "no places"},
	} {
		lugwright(t, append([]string{"loads", job}, c.args...)...).want(t, Misused, c.want)
	}
	lugwright(t, "loads", jobs+"forgefittings.yaml").want(t, Misused, "vehicle: missing")
}

// What is badly stated is told as a result with its reason, or refused with its field.
func TestLoadsOfBadVehicles(t *testing.T) {
	const mounts = "    single: {kind: single pivot, x: 1200 mm, z: 900 mm}\n    pair: {kind: clevis pair, x: 3100 mm, half_width: 430 mm, z: 900 mm}\n"
	for _, c := range []struct {
		name   string
		edit   []string
		status int
		err    string
		out    []string
	}{
		{"no mounts", []string{"  mounts:\n" + mounts, ""}, Misused, "vehicle.mounts: ", nil},
		{"mounts in line", []string{mounts, "    a: {kind: single pivot, x: 1200 mm, z: 900 mm}\n    b: {kind: rigid, x: 3100 mm, z: 900 mm}\n"}, Failed, "the body is not held in 24 of 24 states and cases",
			[]string{"nothing holds the body against turning about the line along x through a and b", "A1 IS NOT HELD"}},
		{"nothing fore and aft", []string{"kind: clevis pair, x", "kind: clevis pair, holds: {x: free}, x"}, Failed, "the body is not held in", []string{"A4 IS NOT HELD: nothing holds the body against", "sliding along x"}},
		{"over capacity", []string{"gross: 6000 kg", "gross: 4200 kg"}, Failed, "state full: gross weight 4310 kg is over its rating of 4200 kg, by 110 kg", []string{"OVER"}},
		{"centre outside the mounts", []string{"x: 3100 mm, half_width", "x: 2000 mm, half_width"}, Failed, "mount single: the body lifts off it under its own weight", []string{"the centre of gravity lies outside the mounts that bear it"}},
		{"no ratings", []string{"  ratings: {gross: 6000 kg, front: 2600 kg, rear: 4200 kg}\n", ""}, Done, "", []string{"unknown front axle: no rating is stated", "none"}},
		{"no tracks", []string{"  rear_track: 1560 mm\n", "", "{wheel_lift: 300 mm}", "{angle: 5 deg}"}, Done, "", []string{"unknown stability and side bias: a track"}},
		{"a full tank in a small box", []string{"  states:", "  tanks: {t: {capacity: 100 L, density: 1 kg/L, x: 0 mm, y: 0 mm, z: 1 m, box: {length: 400 mm, width: 400 mm, height: 400 mm}}}\n  states:"}, Misused, "vehicle.tanks.t.capacity: 100 L in a box of 64 L", nil},
	} {
		r := lugwright(t, "loads", withoutBrackets(t, edited(t, "forgeworkshop.yaml", c.edit...))).want(t, c.status, c.err)
		for _, part := range c.out {
			if !strings.Contains(strings.Join(strings.Fields(r.out), " "), part) {
				t.Errorf("%s: no %q in\n%s", c.name, part, r.out)
			}
		}
	}
	lugwright(t, "check", withoutBrackets(t, jobs+"forgeworkshop.yaml")).want(t, Misused, "brackets: missing")
}
