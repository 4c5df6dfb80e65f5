package papers_test

// Drill templates are drawn by another program and measured on its page.

import (
	"bytes"
	"fmt"
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"slices"
	"strconv"
	"strings"
	"testing"

	"lugwright/client/draw"
	"lugwright/client/paper"
	"lugwright/client/paper/pdf"
	"lugwright/client/papers"
	"lugwright/internal/peer"
	"lugwright/part"
)

var (
	stroked = regexp.MustCompile(`stroke-width:([0-9.]+);[^>]* d="([^"]+)"[^>]*transform="matrix\(([-0-9.]+),`)
	numbers = regexp.MustCompile(`-?[0-9.]+`)
)

// line is a stroke on the page, mm: the pen and the points that it names.
type line struct {
	pen    float64
	curved bool
	points [][2]float64
}

// lines are the strokes on a page of a PDF, as pdftocairo reads it.
func lines(t *testing.T, file string, page int) []line {
	t.Helper()
	n := strconv.Itoa(page)
	svg, err := exec.Command(peer.NeedCommand(t, "pdftocairo"), "-svg", "-noshrink", "-f", n, "-l", n, file, "-").Output()
	if err != nil {
		t.Fatal(err)
	}
	var out []line
	for _, m := range stroked.FindAllStringSubmatch(string(svg), -1) {
		mm := number(t, m[3]) * 25.4 / 72
		l := line{pen: number(t, m[1]) * mm, curved: strings.Contains(m[2], "C")}
		for _, p := range slices.Collect(slices.Chunk(numbers.FindAllString(m[2], -1), 2)) {
			l.points = append(l.points, [2]float64{number(t, p[0]) * mm, number(t, p[1]) * mm})
		}
		out = append(out, l)
	}
	return out
}

func number(t *testing.T, s string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func (l line) size() (cx, cy, w, h float64) {
	lo, hi := l.points[0], l.points[0]
	for _, p := range l.points {
		for k := range p {
			lo[k], hi[k] = min(lo[k], p[k]), max(hi[k], p[k])
		}
	}
	return (lo[0] + hi[0]) / 2, (lo[1] + hi[1]) / 2, hi[0] - lo[0], hi[1] - lo[1]
}

// On every tile the bars are 100.0 mm and 4 in long and the check diagonal is as stated; holes are as large and as far apart as in the model.
func TestDrillTemplateMeasured(t *testing.T) {
	for _, name := range []string{"fieldlab.yaml", "hivecarrier.yaml"} {
		in := demo(t, name)
		p := of(t, in, "drill-template")
		var data bytes.Buffer
		if err := pdf.Write(&data, p); err != nil {
			t.Fatal(err)
		}
		file := filepath.Join(t.TempDir(), "template.pdf")
		if err := os.WriteFile(file, data.Bytes(), 0o644); err != nil {
			t.Fatal(err)
		}
		pages := map[int]string{}
		for n := 1; ; n++ {
			text, err := exec.Command(peer.NeedCommand(t, "pdftotext"), "-layout", "-f", strconv.Itoa(n), "-l", strconv.Itoa(n), file, "-").Output()
			if err != nil || len(bytes.TrimSpace(text)) == 0 {
				break
			}
			if strings.Count(string(text), "check diagonal, between") == 1 {
				pages[n] = string(text)
			}
		}
		measured := map[string]int{}
		for n, text := range pages {
			bars, seen := []float64{}, []line{}
			diagonal := 0.0
			for _, l := range lines(t, file, n) {
				_, _, w, h := l.size()
				switch {
				case math.Abs(l.pen-0.4) < 0.01 && h < 0.01 && len(l.points) == 2 && w > 50 && w < 110:
					bars = append(bars, w)
				case math.Abs(l.pen-0.1) < 0.01 && len(l.points) == 2:
					diagonal = math.Hypot(w, h)
				case l.curved && math.Abs(l.pen-0.3) < 0.01 && len(l.points) > 5:
					seen = append(seen, l)
				}
			}
			if !slices.ContainsFunc(bars, measures(100)) || !slices.ContainsFunc(bars, measures(101.6)) {
				t.Errorf("%s, page %d: the bars measure %v", name, n, bars)
			}
			if stated := fmt.Sprintf("corner marks: %.1f mm", diagonal); !strings.Contains(text, stated) {
				t.Errorf("%s, page %d: the diagonal measures %.2f mm, and the sheet says otherwise\n%s", name, n, diagonal, text)
			}
			for i := range in.Result.Brackets {
				b := &in.Result.Brackets[i]
				if strings.Contains(text, " of "+b.Spec.Name+": into") {
					measured[b.Spec.Name] += asInModel(t, b.Part, seen)
				}
			}
		}
		for i := range in.Result.Brackets {
			if b := &in.Result.Brackets[i]; measured[b.Spec.Name] < 4 {
				t.Errorf("%s: %d measures of %s on %d pages", name, measured[b.Spec.Name], b.Spec.Name, len(pages))
			}
		}
	}
}

func measures(want float64) func(float64) bool {
	return func(v float64) bool { return math.Abs(v-want) < 0.03 }
}

// asInModel holds circles on a page against a bracket's bolts into what carries it, and counts what was measured.
func asInModel(t *testing.T, b *part.Bracket, seen []line) int {
	t.Helper()
	var places []part.Vec
	dia := 0.0
	for i := range b.Bolts {
		if g := &b.Bolts[i]; b.Support(g.Plies[1].Thing) != nil && g.SameAs == "" {
			dia = g.HoleMM
			for _, q := range g.Points {
				places = append(places, g.Pose.At(q.X, q.Y, 0))
			}
		}
	}
	n := 0
	for i := range seen {
		x, y, w, h := seen[i].size()
		if math.Abs(w-h) > 0.02 {
			continue // cut by the window
		}
		if math.Abs(w-dia) > 0.03 {
			t.Errorf("%s: a hole of %.2f mm on paper; the model's are %.2f mm", b.Name, w, dia)
		}
		n++
		for k := range i {
			u, v, kw, kh := seen[k].size()
			if math.Abs(kw-kh) > 0.02 {
				continue
			}
			d := math.Hypot(x-u, y-v)
			found := false
			for a := range places {
				for c := range a {
					found = found || measures(places[a].Sub(places[c]).Norm())(d)
				}
			}
			if !found {
				t.Errorf("%s: two holes %.2f mm apart on paper, and none so in the model", b.Name, d)
			}
			n++
		}
	}
	return n
}

// Cautions stand before the tiles, which are cut up.
func TestCautionsBeforeTiles(t *testing.T) {
	eachJob(t, func(t *testing.T, in papers.Input) {
		p := of(t, in, "drill-template")
		if p == nil {
			return
		}
		minded, tiles := false, 0
		for _, b := range p.Blocks {
			switch b := b.(type) {
			case *paper.Heading:
				minded = minded || b.Text == "Mind"
			case *paper.Figure:
				tiles++
				if !minded {
					t.Errorf("a tile before the cautions")
				}
			}
		}
		if tiles == 0 {
			t.Error("no tiles")
		}
	})
}

// Rods and a saddle's tube have no template, and the paper says how they are marked.
func TestWithoutTemplate(t *testing.T) {
	in := demo(t, "watertrays.yaml")
	k, _ := papers.Find("drill-template")
	// Rods of the tray A 600 x 540 mm apart: 807.2 mm across.
	if p, why := k.Of(in); p != nil || !strings.Contains(why, "tray-a, rods: mark the rods' holes through the bracket's own") || !strings.Contains(why, "807.22 mm") {
		t.Errorf("%v %s", p != nil, why)
	}
	if got := said(of(t, demo(t, "forgeworkshop.yaml"), "drill-template")); !strings.Contains(got, "front: the tube in the saddle has no hole") || !strings.Contains(got, "Before drilling: look behind the web") {
		t.Error(got)
	}
}

// The left template lies mirrored to the right one, each as its hand is seen from outside: forward to the left on the vehicle's left.
func TestDrillTemplateHands(t *testing.T) {
	p := of(t, demo(t, "fieldlab.yaml"), "drill-template")
	head := ""
	found := 0
	for _, b := range p.Blocks {
		switch b := b.(type) {
		case *paper.Heading:
			head = b.Text
		case *paper.Table:
			want := map[string]string{"pair-left": "rearward", "pair-right": "forward"}[strings.SplitN(head, ":", 2)[0]]
			if want == "" {
				continue
			}
			found++
			if b.Heads[1].Text != want || b.Heads[2].Text != "up" {
				t.Errorf("%s: to the right lies %s, up %s", head, b.Heads[1].Text, b.Heads[2].Text)
			}
		}
	}
	if found != 2 {
		t.Errorf("%d templates of the pair", found)
	}
}

// A template stands where the mount is: 135 mm under the pin, whose height is 1010 mm, and 85 mm under the top of a rail that reaches up to 960 mm.
func TestDrillTemplateDatum(t *testing.T) {
	p := of(t, demo(t, "fieldlab.yaml"), "drill-template")
	for _, b := range p.Blocks {
		if w, ok := b.(*paper.Words); ok && strings.Contains(w.Text, "looking right") {
			for _, want := range []string{"x 3650 mm behind the front axle", "135 mm down of the load point", "875 mm above the ground", "85 mm under the rail's top"} {
				if !strings.Contains(w.Text, want) {
					t.Errorf("%q lacks %q", w.Text, want)
				}
			}
			return
		}
	}
	t.Error("no template of the left rail")
}

// Guide A asks for 38.1 mm (1 1/2 in) between a hole's edge and the flange. The pair's pins stand at z 1010, their lower bolts 205 mm under them at 805; the rails
// are 200 deep with their tops at 960, 6 thick: 805 - 760 - 6 - 13/2 = 32.5 mm. Every paper that says where to drill says so.
func TestBrokenHoleRules(t *testing.T) {
	in := demo(t, "fieldlab.yaml")
	const fails = "distance from the flange 32.5 mm, at least 38.1 mm (guide A)"
	check := func(paper string, tab *paper.Table) {
		for i, r := range tab.Rows {
			if got := cell(tab, r, "verdict"); (got == "FAIL") != (i >= 3) || i < 3 && got != "pass" && !strings.HasPrefix(got, "open: ") {
				t.Errorf("%s: %v: verdict %q", paper, r.Cells, got)
			}
		}
	}
	schedule, template := of(t, in, "hole-schedule"), of(t, in, "drill-template")
	for _, side := range []string{"left", "right"} {
		if got := said(schedule); !strings.Contains(got, "pair-"+side+" 4, pair-"+side+" 5, pair-"+side+" 6 FAILS: "+fails) {
			t.Errorf("hole schedule of the %s rail:\n%s", side, got)
		}
	}
	if got := strings.Count(said(template), "bolts 4, bolts 5, bolts 6 FAILS: "+fails); got != 2 {
		t.Errorf("%d of 2 templates say what fails", got)
	}
	for _, tab := range tables(schedule, "x") {
		check("hole schedule", tab)
	}
	judged := tables(template, "verdict")
	for _, tab := range judged {
		check("drill template", tab)
	}
	marks := 0
	for _, b := range template.Blocks {
		if f, ok := b.(*paper.Figure); ok {
			for _, item := range f.Drawing.Items {
				if w, ok := item.(*draw.Text); ok && strings.HasPrefix(w.Words, "FAILS") {
					marks++
				}
			}
		}
	}
	if len(judged) != 2 || marks != 6 {
		t.Errorf("%d templates with verdicts, %d marks on tiles; want 2, 6", len(judged), marks)
	}
}

// Holes in a rail that nobody surveyed are not passed over: the papers say that nothing was held, and why.
func TestUnheldHoles(t *testing.T) {
	for name, why := range map[string]string{
		"crosstube.yaml":   "front-tube: its holes in the rail were held against no survey and no guide: the job has no vehicle",
		"hivecarrier.yaml": "pair-left: its holes in the rail were held against no survey and no guide: the left rail is not surveyed",
	} {
		for _, paper := range []string{"hole-schedule", "drill-template"} {
			if got := said(of(t, demo(t, name), paper)); !strings.Contains(got, why) {
				t.Errorf("%s, %s lacks %q", name, paper, why)
			}
		}
		for _, tab := range tables(of(t, demo(t, name), "drill-template"), "verdict") {
			for _, r := range tab.Rows {
				if got := cell(tab, r, "verdict"); got != "not checked" {
					t.Errorf("%s: %v: %q", name, r.Cells, got)
				}
			}
		}
	}
}

// A bracket between the rails has a template for each, which says the rail; no two templates of a job have one name, and no two tiles.
func TestTemplatesToldApart(t *testing.T) {
	eachJob(t, func(t *testing.T, in papers.Input) {
		p := of(t, in, "drill-template")
		if p == nil {
			return
		}
		seen := map[string]bool{}
		for _, b := range p.Blocks {
			name := ""
			switch b := b.(type) {
			case *paper.Heading:
				name = b.Text
			case *paper.Figure:
				name, _, _ = strings.Cut(b.Caption, " of ")
			default:
				continue
			}
			if seen[name] {
				t.Errorf("%q twice", name)
			}
			seen[name] = true
		}
		if in.Result.Job.Title != demo(t, "crosstube.yaml").Result.Job.Title {
			return
		}
		// Seen from between the rails: who looks left stands before the left rail.
		got := said(p)
		for _, want := range []string{"left rail web, S355, LEFT RAIL", "right rail web, S355, RIGHT RAIL"} {
			if !strings.Contains(got, want) {
				t.Errorf("no %q in\n%s", want, got)
			}
		}
		for _, b := range p.Blocks {
			if w, ok := b.(*paper.Words); ok && strings.Contains(w.Text, "tile") && strings.Contains(w.Text, "datum lines") {
				if left := strings.Contains(w.Text, "tiles A1 to"); left == strings.Contains(w.Text, "tiles B1 to") || !strings.Contains(w.Text, "looking") {
					t.Error(w.Text)
				}
			}
		}
	})
}
