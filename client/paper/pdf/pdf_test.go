package pdf

import (
	"bytes"
	"flag"
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
	"lugwright/client/paper/papertest"
	"lugwright/internal/peer"
)

var update = flag.Bool("update", false, "rewrite the golden files")

const warned = "NOT PASSED: a check fails, is outside the rule or is missing; see the calc sheet. Do not use this bracket."

func written(t *testing.T, p *paper.Paper) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, p); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

// read runs one of poppler's programs on a PDF and gives what it prints.
func read(t *testing.T, data []byte, program string, options ...string) string {
	t.Helper()
	path := peer.NeedCommand(t, program)
	file := filepath.Join(t.TempDir(), "paper.pdf")
	if err := os.WriteFile(file, data, 0o644); err != nil {
		t.Fatal(err)
	}
	args := append(options, file)
	if program != "pdfinfo" {
		args = append(args, "-")
	}
	out, err := exec.Command(path, args...).Output()
	if err != nil {
		t.Fatalf("%s: %v", program, err)
	}
	return string(out)
}

func TestGolden(t *testing.T) {
	letter := papertest.Paper()
	letter.Letter, letter.Warning = true, warned
	for name, p := range map[string]*paper.Paper{"a4.pdf": papertest.Paper(), "letter.pdf": letter} {
		got := written(t, p)
		path := filepath.Join("testdata", name)
		if *update {
			if err := os.WriteFile(path, got, 0o644); err != nil {
				t.Fatal(err)
			}
		}
		want, err := os.ReadFile(path)
		if err != nil {
			t.Fatal(err)
		}
		if !bytes.Equal(want, got) {
			t.Errorf("%s differs; -update rewrites it", name)
		}
	}
}

// Several at a time are as one: what writes a font's letters into a file does not write into the font.
func TestSameBytesTogether(t *testing.T) {
	want := written(t, papertest.Paper())
	got := make(chan []byte)
	for range 4 {
		go func() {
			var b bytes.Buffer
			Write(&b, papertest.Paper()) //nolint:errcheck // its bytes are compared
			got <- b.Bytes()
		}()
	}
	for range 4 {
		if !bytes.Equal(<-got, want) {
			t.Error("two of one paper differ")
		}
	}
}

// Every page has its head, its number of how many, and the warning; a table has its heads again.
func TestEveryPage(t *testing.T) {
	p := papertest.Paper()
	p.Warning = warned
	pages := strings.Split(strings.TrimSuffix(read(t, written(t, p), "pdftotext", "-layout"), "\f"), "\f")
	if len(pages) < 3 {
		t.Fatalf("%d pages", len(pages))
	}
	for i, page := range pages {
		words := strings.Join(strings.Fields(page), " ")
		for _, want := range []string{p.Job + ", revision B", p.Title, p.Tool, p.Hash, warned, fmt.Sprintf("page %d of %d", i+1, len(pages))} {
			if !strings.Contains(words, want) {
				t.Errorf("page %d lacks %q", i+1, want)
			}
		}
		if rows, head := strings.Count(words, "net section"), strings.Contains(words, "place check used remark"); rows > 0 && !head {
			t.Errorf("page %d has %d rows and no heads", i+1, rows)
		}
	}
}

// bare is a text without the places where lines and pages break.
func bare(text string) string { return strings.Join(strings.Fields(text), "") }

// No word gets lost, however lines are broken: read back, every block's words are there.
func TestNoWordIsLost(t *testing.T) {
	p := papertest.Paper()
	long := strings.Repeat("abcdefghij", 40)
	p.Blocks = append(p.Blocks, &paper.NewPage{}, &paper.Words{Text: long}, &paper.Table{Heads: []paper.Head{{Text: "a"}, {Text: "b"}}, Rows: []paper.Row{{Cells: []string{"x", long}}}})
	got := bare(read(t, written(t, p), "pdftotext", "-raw"))
	for _, b := range p.Blocks {
		var all []string
		switch b := b.(type) {
		case *paper.Heading:
			all = []string{b.Text}
		case *paper.Words:
			all = []string{b.Text}
		case *paper.List:
			all = b.Items
		case *paper.Calculation:
			all = b.Lines
		case *paper.Facts:
			for _, f := range b.Items {
				all = append(all, f.Name, f.Value)
			}
		}
		for _, text := range all {
			want := bare(strings.NewReplacer("⌀", "Ø", "箱", "[U+7BB1]").Replace(text))
			if !strings.Contains(got, want) {
				t.Errorf("%q is not in the file", text)
			}
		}
	}
	if n := strings.Count(got, "netsection"); n != 70 {
		t.Errorf("%d rows of 70", n)
	}
}

var box = regexp.MustCompile(`<word xMin="([0-9.-]+)" yMin="([0-9.-]+)" xMax="([0-9.-]+)" yMax="([0-9.-]+)">(.*)</word>`)

// Nothing stands in the margins beside the blocks, on either sheet.
func TestNothingRunsOut(t *testing.T) {
	for _, letter := range []bool{false, true} {
		p := papertest.Paper()
		p.Letter = letter
		wide := &paper.Table{Rows: []paper.Row{{}}}
		for i := range 14 {
			wide.Heads = append(wide.Heads, paper.Head{Text: fmt.Sprintf("column-%d", i), Numbers: i%2 == 0})
			wide.Rows[0].Cells = append(wide.Rows[0].Cells, strings.Repeat("w", 20))
		}
		p.Blocks = append(p.Blocks, wide)
		width, height := p.Sheet()
		words := box.FindAllStringSubmatch(read(t, written(t, p), "pdftotext", "-bbox"), -1)
		if len(words) < 500 {
			t.Fatalf("%d words", len(words))
		}
		for _, w := range words {
			at := func(k int) float64 { return number64(w[k]) * pointMM }
			if at(1) < paper.MarginMM-0.1 || at(3) > width-paper.MarginMM+0.1 || at(2) < 5 || at(4) > height-5 {
				t.Errorf("letter %t: %q stands from %.1f, %.1f to %.1f, %.1f mm", letter, w[5], at(1), at(2), at(3), at(4))
			}
		}
	}
}

func number64(s string) float64 {
	v, err := strconv.ParseFloat(s, 64)
	if err != nil {
		panic(err)
	}
	return v
}

var (
	straight = regexp.MustCompile(`stroke-linecap:round[^>]* d="M ([0-9.]+) ([0-9.]+) L ([0-9.]+) ([0-9.]+) ?"[^>]*transform="matrix\(([-0-9., ]+)\)"`)
	sheet    = regexp.MustCompile(`Page size: +([0-9.]+) x ([0-9.]+) pts`)
)

// At full scale the bar of 100 mm is 100 mm long, by the reckoning of a program that draws the page; a drawing larger than a page is made smaller to
// fit, its bar with it.
func TestScale(t *testing.T) {
	large := papertest.Drawing()
	large.WidthMM = 240
	for _, letter := range []bool{false, true} {
		for _, c := range []struct {
			figure paper.Figure
			want   float64
		}{
			{paper.Figure{Drawing: papertest.Drawing(), FullScale: true}, 100},
			{paper.Figure{Drawing: papertest.Drawing()}, 100},
			{paper.Figure{Drawing: large}, map[bool]float64{false: 100 * 180.0 / 240, true: 100 * 185.9 / 240}[letter]},
		} {
			p := &paper.Paper{Title: "scale", Letter: letter, Blocks: []paper.Block{&c.figure}}
			longest := 0.0
			for _, m := range straight.FindAllStringSubmatch(read(t, written(t, p), "pdftocairo", "-svg", "-noshrink", "-f", "1", "-l", "1"), -1) {
				scale := number64(strings.TrimSpace(strings.Split(m[5], ",")[0]))
				longest = max(longest, math.Hypot(number64(m[3])-number64(m[1]), number64(m[4])-number64(m[2]))*scale*25.4/72)
			}
			if math.Abs(longest-c.want) > 0.01 {
				t.Errorf("letter %t, %g mm wide, full scale %t: the bar is %.3f mm; need %.3f", letter, c.figure.Drawing.WidthMM, c.figure.FullScale, longest, c.want)
			}
			m := sheet.FindStringSubmatch(read(t, written(t, p), "pdfinfo"))
			width, height := p.Sheet()
			if math.Abs(number64(m[1])*25.4/72-width) > 0.01 || math.Abs(number64(m[2])*25.4/72-height) > 0.01 {
				t.Errorf("letter %t: the page is %s x %s points", letter, m[1], m[2])
			}
		}
	}
}

func TestTooLargeAtFullScale(t *testing.T) {
	d := papertest.Drawing()
	d.WidthMM = 180.5
	p := &paper.Paper{Name: "drill-template", Title: "t", Blocks: []paper.Block{&paper.Figure{Drawing: d, FullScale: true}}}
	err := Write(&bytes.Buffer{}, p)
	if err == nil || !strings.Contains(err.Error(), `paper drill-template: the drawing "a bar and a plate" is 180.5 mm x 60.0 mm at full scale; a page has room for 180.0 mm x`) {
		t.Error(err)
	}
	d.WidthMM = 180
	if err := Write(&bytes.Buffer{}, p); err != nil {
		t.Error(err)
	}
}

// A drawing as tall as the room that a page has stands on one page, with warning and caption; a heading stands on the page of what it heads.
func TestHeadingsStayWithTheirs(t *testing.T) {
	for rows := range 60 {
		p := &paper.Paper{Title: "t", Warning: warned}
		_, tall := p.Room()
		d := &draw.Drawing{WidthMM: 100, HeightMM: tall * 0.8, Title: "tall"}
		list := &paper.List{}
		for range rows {
			list.Items = append(list.Items, "item")
		}
		p.Blocks = []paper.Block{
			list, &paper.Heading{Level: 2, Text: "Outer"}, &paper.Heading{Level: 3, Text: "Inner"}, &paper.Words{Text: "First words."},
			&paper.Heading{Level: 2, Text: "Drawn"}, &paper.Figure{Drawing: d, Caption: "A tall drawing"},
		}
		doc := begin(p)
		doc.page()
		doc.title()
		on := map[string]int{}
		for i, b := range p.Blocks {
			doc.keepTogether(p.Blocks[i:])
			if err := doc.block(b); err != nil {
				t.Fatal(err)
			}
			on[fmt.Sprint(i)] = doc.f.PageNo()
			if doc.y > doc.bottom+gap+0.01 {
				t.Errorf("%d rows: block %d ends at %.1f mm, below %.1f", rows, i, doc.y, doc.bottom)
			}
		}
		if on["1"] != on["3"] || on["4"] != on["5"] {
			t.Errorf("%d rows: blocks end on pages %v", rows, on)
		}
	}
}

// laidOutAgain are the words of each page of a paper whose first layout, of so many pages, leaves little on the last one; nil of another.
func laidOutAgain(t *testing.T, p *paper.Paper) (pages []string, before int) {
	t.Helper()
	first, err := laidOut(p, nil)
	if err != nil {
		t.Fatal(err)
	}
	if len(first.sparse) == 0 {
		return nil, 0
	}
	return strings.Split(strings.TrimSuffix(read(t, written(t, p), "pdftotext", "-layout"), "\f"), "\f"), first.f.PageNo()
}

// However long a paper is, what it ends with does not stand on a last page alone, nor does what comes before a page that begins by force; no page is added for it.
func TestLastPageIsNotSparse(t *testing.T) {
	mind := []paper.Block{&paper.Heading{Level: 2, Text: "Mind"}, &paper.List{Items: []string{"one", "two", "three"}}}
	turned := 0
	for rows := 20; rows < 70; rows++ {
		tab := &paper.Table{Heads: []paper.Head{{Text: "n"}}}
		for k := range rows {
			tab.Rows = append(tab.Rows, paper.Row{Cells: []string{fmt.Sprint("row ", k)}})
		}
		for _, more := range [][]paper.Block{nil, {&paper.NewPage{}, &paper.Words{Text: "a tile"}}} {
			p := &paper.Paper{Name: "x", Title: "X", Blocks: append(append([]paper.Block{tab}, mind...), more...)}
			pages, before := laidOutAgain(t, p)
			if pages == nil {
				continue
			}
			turned++
			if len(pages) != before {
				t.Errorf("%d rows: %d pages, before %d", rows, len(pages), before)
			}
			i := slices.IndexFunc(pages, func(s string) bool { return strings.Contains(s, "three") })
			if i > 0 && !strings.Contains(pages[i], "row") {
				t.Errorf("%d rows: the list stands alone on page %d of %d", rows, i+1, len(pages))
			}
			for k := range rows { // none is lost or said twice
				if n := len(regexp.MustCompile(fmt.Sprintf(`row %d\b`, k)).FindAllString(strings.Join(pages, "\n"), -1)); n != 1 {
					t.Errorf("%d rows: row %d stands %d times", rows, k, n)
				}
			}
		}
	}
	if turned == 0 {
		t.Error("no paper had a last page with little on it")
	}
}

// A heading over a figure that nearly fills a page stands on that page, though the page is to leave room for the last one.
func TestNoHeadingIsLeftAlone(t *testing.T) {
	turned := 0
	for tall := 205.0; tall < 260; tall += 3 {
		for items := 1; items <= 3; items++ {
			list := &paper.List{Items: slices.Repeat([]string{"item"}, items)}
			p := &paper.Paper{Name: "x", Title: "X", Blocks: []paper.Block{
				&paper.Words{Text: "before"}, &paper.NewPage{}, &paper.Heading{Level: 2, Text: "Views"},
				&paper.Figure{Drawing: &draw.Drawing{WidthMM: 100, HeightMM: tall, Title: "tall"}, Caption: "A tall drawing"},
				&paper.Heading{Level: 2, Text: "Mind"}, list,
			}}
			pages, _ := laidOutAgain(t, p)
			if pages == nil {
				continue
			}
			turned++
			if i := slices.IndexFunc(pages, func(s string) bool { return strings.Contains(s, "Views") }); i < 0 || !strings.Contains(pages[i], "A tall drawing") {
				t.Errorf("figure of %g mm, %d items: the heading stands alone", tall, items)
			}
		}
	}
	if turned == 0 {
		t.Error("no paper had a last page with little on it")
	}
}

// Numbers that nobody can draw are refused, naming the drawing.
func TestUnsound(t *testing.T) {
	line := func(x, bulge float64) []draw.Item {
		return []draw.Item{&draw.Group{ID: "a", Items: []draw.Item{&draw.Path{Segments: []draw.Segment{{To: draw.Point{X: x}, Bulge: bulge}}}}}}
	}
	for want, d := range map[string]*draw.Drawing{
		"size 0 x 10 mm":       {HeightMM: 10},
		"size NaN x 10 mm":     {WidthMM: math.NaN(), HeightMM: 10},
		"bulge 1.5; -1 to 1":   {WidthMM: 10, HeightMM: 10, Items: line(1, 1.5)},
		"bulge NaN; -1 to 1":   {WidthMM: 10, HeightMM: 10, Items: line(1, math.NaN())},
		"the number +Inf; les": {WidthMM: 10, HeightMM: 10, Items: line(math.Inf(1), 0)},
	} {
		d.Title = "ear"
		err := Write(&bytes.Buffer{}, &paper.Paper{Name: "n", Title: "t", Blocks: []paper.Block{&paper.Figure{Drawing: d}}})
		if err == nil || !strings.Contains(err.Error(), `paper n: the drawing "ear": `+want) {
			t.Errorf("%v; need %s", err, want)
		}
	}
}

// A warning and a column's head without end leave room for the rest.
func TestEndlessWords(t *testing.T) {
	long := strings.Repeat("words and ", 3000)
	p := &paper.Paper{Title: long, Job: long, Warning: long, Blocks: []paper.Block{&paper.Table{Heads: []paper.Head{{Text: long}, {}}, Rows: []paper.Row{{Cells: []string{long}}}}}}
	written(t, p)
}

// A drawing as large as a page under two headings stands on one page with them, smaller, and the paper says so.
func TestLargeDrawingUnderHeadings(t *testing.T) {
	for _, letter := range []bool{false, true} {
		p := &paper.Paper{Name: "n", Title: "t", Warning: warned, Letter: letter}
		_, tall := p.Room()
		d := papertest.Drawing()
		d.HeightMM = tall
		p.Blocks = []paper.Block{&paper.NewPage{}, &paper.Heading{Level: 2, Text: "Outer"}, &paper.Heading{Level: 3, Text: "Inner"}, &paper.Figure{Drawing: d, Caption: "Drawn."}}
		pages := strings.Split(strings.TrimSuffix(read(t, written(t, p), "pdftotext", "-layout"), "\f"), "\f")
		last := strings.Join(strings.Fields(pages[len(pages)-1]), " ")
		if len(pages) != 2 || !strings.Contains(last, "Outer Inner") || !strings.Contains(last, "turned") || !strings.Contains(last, "% of the drawing's size.)") {
			t.Errorf("letter %t: %d pages, the last %q", letter, len(pages), last)
		}
	}
}

// Words in any script, of any length, and numbers of any size give a file or an error, never a crash.
func FuzzWrite(f *testing.F) {
	f.Add("Ω ≤ 箱 \xff\x00\U0001F527", 12.5, 0.5)
	f.Add("", 0.0, -1.0)
	f.Fuzz(func(t *testing.T, text string, size, bulge float64) {
		d := &draw.Drawing{WidthMM: size, HeightMM: size, Title: text, Items: []draw.Item{
			&draw.Text{Words: text, HeightMM: size, TurnRad: bulge},
			&draw.Path{Pen: draw.Pen{WidthMM: 1}, Segments: []draw.Segment{{To: draw.Point{X: size}, Bulge: bulge}}},
		}}
		Write(&bytes.Buffer{}, &paper.Paper{Title: text, Job: text, Hash: text, Warning: text, Blocks: []paper.Block{ //nolint:errcheck // either will do
			&paper.Heading{Level: len(text), Text: text}, &paper.Words{Text: text}, &paper.Calculation{Lines: []string{text}}, &paper.Figure{Drawing: d, Caption: text},
			&paper.Facts{Items: []paper.Fact{{Name: text, Value: text}}}, &paper.Table{Heads: []paper.Head{{Text: text}, {}}, Rows: []paper.Row{{Cells: []string{text}}}},
			&paper.List{Items: []string{text}}, &paper.Sign{Roles: []string{text}},
		}})
	})
}
