package html

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"

	"lugwright/client/paper"
	"lugwright/client/paper/papertest"
	"lugwright/internal/browser"
	"lugwright/internal/peer"
)

var update = flag.Bool("update", false, "rewrite the golden files")

func TestMain(m *testing.M) { os.Exit(browser.Main(m)) }

func written(t *testing.T, p *paper.Paper) []byte {
	t.Helper()
	var b bytes.Buffer
	if err := Write(&b, p); err != nil {
		t.Fatal(err)
	}
	return b.Bytes()
}

func TestGolden(t *testing.T) {
	p := papertest.Paper()
	p.Letter, p.Warning = true, `NOT PASSED: "do not use" </style> this`
	got := written(t, p)
	path := filepath.Join("testdata", "every-block.html")
	if *update {
		if err := os.WriteFile(path, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(path)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(want, got) || !bytes.Equal(got, written(t, p)) {
		t.Error("the page differs; -update rewrites it")
	}
}

// What a person typed stands as words, whatever it looks like.
func TestTypedWordsAreWords(t *testing.T) {
	evil := `</style></script><script>alert(1)</script><img src=x onerror=alert(1)> {{.Title}} "'& javascript:x`
	p := papertest.Paper()
	p.Title, p.Job, p.Revision, p.Hash, p.Tool, p.Warning = evil, evil, evil, evil, evil, evil
	p.Blocks = append(p.Blocks, &paper.Heading{Level: 2, Text: evil, ID: evil}, &paper.Facts{Items: []paper.Fact{{Name: evil, Value: evil}}},
		&paper.Table{Caption: evil, Heads: []paper.Head{{Text: evil}}, Rows: []paper.Row{{Cells: []string{evil}, Ref: evil}}}, &paper.Calculation{Lines: []string{evil}})
	page := string(written(t, p))
	if strings.Contains(page, "<img") || strings.Count(page, "<script") != 1 || strings.Count(page, "</style") != 1 || strings.Contains(page, "ZgotmplZ") {
		t.Error("typed words became markup")
	}
}

func TestInTheBrowser(t *testing.T) {
	p := papertest.Paper()
	p.Warning = "NOT PASSED: do not use"
	b := browser.File(t, written(t, p), true)

	t.Run("drawings are drawn", func(t *testing.T) {
		if n := browser.Eval[int](b, `[...document.querySelectorAll("svg")].filter(s => s.getBoundingClientRect().width > 100 && s.querySelector("g").getBBox().width > 10 && s.querySelector("title").textContent).length`); n != 1 {
			t.Errorf("%d of 1", n)
		}
		// 120 mm are 453.5 px of CSS.
		if w := browser.Eval[float64](b, `document.querySelector("figure.full svg").getBoundingClientRect().width`); w < 453 || w > 454 {
			t.Errorf("the full-scale drawing is %g px wide", w)
		}
	})
	rows := `[...document.querySelectorAll("table.sortable tbody tr")]`
	t.Run("filter", func(t *testing.T) {
		b.Type(".filter input", "EAR-1 net")
		// Rows 1, 4, ... 67 of 70.
		if n := browser.Eval[int](b, rows+`.filter(r => r.offsetParent !== null).length`); n != 23 {
			t.Errorf("%d rows are seen", n)
		}
		if words := browser.Eval[string](b, `document.querySelector(".filter output").textContent`); words != "23 of 70" {
			t.Errorf("says %q", words)
		}
		b.Type(".filter input", strings.Repeat("\b", 9))
		if n := browser.Eval[int](b, rows+`.filter(r => r.offsetParent !== null).length`); n != 70 {
			t.Errorf("%d rows are seen after the filter is empty", n)
		}
	})
	t.Run("sort", func(t *testing.T) {
		column := func(k int) []string {
			return browser.Eval[[]string](b, fmt.Sprintf(rows+`.map(r => r.cells[%d].textContent)`, k))
		}
		b.Click("thead th.number button")
		if used := column(2); used[0] != "0.99" || used[69] != "0.00" {
			t.Errorf("from %s to %s", used[0], used[69])
		}
		b.Click("thead th.number button")
		if used := column(2); used[0] != "0.00" || used[69] != "0.99" {
			t.Errorf("again from %s to %s", used[0], used[69])
		}
		b.Click("thead th:first-child button")
		if places := column(0); places[0] != "ear-0" || places[69] != "ear-2" {
			t.Errorf("by place from %s to %s", places[0], places[69])
		}
	})
	lit := func(selector string) int {
		return browser.Eval[int](b, `document.querySelectorAll("`+selector+`").length`)
	}
	t.Run("a row lights up its part", func(t *testing.T) {
		b.Hover("tr[data-id]")
		// Its drawing stands in another section, and its own has none: so that one counts. A third of 70 rows, from the first, is about the part.
		if rows, groups := lit("tr.lit"), lit("g.lit"); rows != 24 || groups != 1 {
			t.Errorf("%d rows, %d groups", rows, groups)
		}
	})
	t.Run("nothing goes wrong, nothing is asked for", func(t *testing.T) {
		if len(b.Faults()) > 0 {
			t.Errorf("%q", b.Faults())
		}
		for _, url := range b.Asked() {
			if !strings.HasPrefix(url, "file:///") && !strings.HasPrefix(url, "data:") {
				t.Errorf("asks for %s", url)
			}
		}
	})
}

// oneSection has a drawing and a table of its part, and a second section with the same names.
func oneSection() *paper.Paper {
	p := &paper.Paper{Name: "p", Title: "Sections", Job: "job", Tool: "tool", Hash: "hash"}
	for _, name := range []string{"left", "right"} {
		p.Blocks = append(p.Blocks, &paper.Heading{Level: 2, Text: name}, &paper.Figure{Drawing: papertest.Drawing(), Caption: "drawn"},
			&paper.Table{Caption: "checks", Heads: []paper.Head{{Text: "mark"}, {Text: "check"}}, Sortable: true, Rows: []paper.Row{{Cells: []string{"ear", "tear-out"}, Ref: "ear"}, {Cells: []string{"pin", "shear"}, Ref: "pin"}}},
			&paper.Heading{Level: 3, Text: "The pin", ID: "pin"}, &paper.Heading{Level: 3, Text: "The pin again", ID: "pin"}, &paper.Heading{Level: 3, Text: "The ear", ID: "ear"})
	}
	return p
}

// A row under the mouse or in focus lights up its part on its section's drawing and on no other, and the part lights up the row.
func TestRowsAndParts(t *testing.T) {
	b := browser.File(t, written(t, oneSection()), true)
	state := func() string {
		return browser.Eval[string](b, `[...document.querySelectorAll(".lit")].map(e => e.closest("section").id + " " + e.tagName.toLowerCase()).join(", ")`)
	}
	want := func(what, want string) {
		t.Helper()
		if got := state(); got != want {
			t.Errorf("%s: %q; need %q", what, got, want)
		}
	}
	b.Hover("#s1 tr[data-id=ear] td:nth-child(2)")
	want("row", "s1 g, s1 tr")
	if c := browser.Eval[string](b, `getComputedStyle(document.querySelector("#s1 g.lit path")).stroke`); c == "rgb(0, 0, 0)" {
		t.Error("the part looks as before")
	}
	b.Hover("#s0 h2")
	want("nothing", "")
	b.Hover("#s0 g[data-id=ear] path")
	want("part", "s0 g, s0 tr")
	browser.Eval[any](b, `document.querySelector("#s1 tr[data-id=ear] a").focus()`)
	want("focus", "s1 g, s1 tr")
	// Without a group of that name a row goes to the heading.
	if to := browser.Eval[string](b, `document.querySelector(document.querySelector("#s1 tr[data-id=pin] a").getAttribute("href")).textContent`); to != "The pin" {
		t.Errorf("the row of the pin goes to %q", to)
	}
	if n := browser.Eval[int](b, `document.querySelectorAll("[id]").length - new Set([...document.querySelectorAll("[id]")].map(e => e.id)).size`); n != 0 {
		t.Errorf("%d names are given twice", n)
	}
	if len(b.Faults()) > 0 {
		t.Errorf("%q", b.Faults())
	}
}

// Without scripts every word is there and seen, and a row's link lights up its part all the same.
func TestWithoutScripts(t *testing.T) {
	b := browser.File(t, written(t, oneSection()), false)
	seen := b.Seen()
	for _, words := range []string{"Sections", "left", "tear-out", "The pin"} {
		if !strings.Contains(seen, words) {
			t.Errorf("%q is not seen", words)
		}
	}
	for _, words := range []string{"Filter", "sort"} {
		if strings.Contains(seen, words) {
			t.Errorf("%q is seen and does nothing", words)
		}
	}
}

// contrast lists words whose contrast with what is behind them is below 4.5 to 1 (WCAG 2.2, success criterion 1.4.3, level AA).
const contrast = `(() => {
  const parse = c => { const m = c.match(/[\d.]+/g).map(Number); return m.length > 3 && m[3] === 0 ? null : m };
  const lum = c => { const f = c.slice(0, 3).map(v => v / 255).map(v => v <= 0.04045 ? v / 12.92 : ((v + 0.055) / 1.055) ** 2.4); return 0.2126 * f[0] + 0.7152 * f[1] + 0.0722 * f[2] };
  const out = [];
  for (const e of document.querySelectorAll("body *")) {
    if (e.closest("svg, script") || ![...e.childNodes].some(n => n.nodeType === 3 && n.data.trim())) continue;
    let back = null;
    for (let p = e; p && !back; p = p.parentElement) back = parse(getComputedStyle(p).backgroundColor);
    const [a, b] = [lum(parse(getComputedStyle(e).color)), lum(back || [255, 255, 255])];
    if ((Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05) < 4.5) out.push(e.textContent);
  }
  return out;
})()`

func TestAccessible(t *testing.T) {
	p := papertest.Paper()
	p.Warning = "NOT PASSED"
	b := browser.File(t, written(t, p), true)
	if bad := browser.Eval[[]string](b, contrast); len(bad) > 0 {
		t.Errorf("too little contrast: %q", bad)
	}
	b.Hover("tr[data-id]")
	if bad := browser.Eval[[]string](b, contrast); len(bad) > 0 {
		t.Errorf("too little contrast when lit: %q", bad)
	}
	for what, expression := range map[string]string{
		"no language":                      `document.documentElement.lang !== "en"`,
		"not one heading of level 1":       `document.querySelectorAll("h1").length !== 1`,
		"a heading skips a level":          `[...document.querySelectorAll("h1,h2,h3,h4")].some((h, i, all) => i > 0 && h.tagName[1] > +all[i-1].tagName[1] + 1)`,
		"a head of a column has no scope":  `[...document.querySelectorAll("th")].some(h => !h.scope)`,
		"a drawing has no role or title":   `[...document.querySelectorAll("svg")].some(s => s.getAttribute("role") !== "img" || !s.querySelector("title").textContent)`,
		"a field has no name":              `[...document.querySelectorAll("input")].some(i => !i.labels.length || !i.labels[0].textContent.trim())`,
		"a button has no name":             `[...document.querySelectorAll("button")].some(i => !i.getAttribute("aria-label"))`,
		"a region that scrolls has no key": `[...document.querySelectorAll(".scroll")].some(s => s.tabIndex !== 0)`,
	} {
		if browser.Eval[bool](b, expression) {
			t.Error(what)
		}
	}
	// A narrow screen scrolls tables on their own, not the page.
	b.Narrow(360)
	if browser.Eval[bool](b, `document.documentElement.scrollWidth > innerWidth + 1`) {
		t.Error("the page is wider than a narrow screen")
	}
}

// Printed, the page has the sheet's size, its number on each page, the warning, and the heads of tables again.
func TestPrinted(t *testing.T) {
	for _, letter := range []bool{false, true} {
		p := papertest.Paper()
		p.Letter, p.Warning = letter, "NOT PASSED: do not use"
		b := browser.File(t, written(t, p), true)
		file := filepath.Join(t.TempDir(), "printed.pdf")
		if err := os.WriteFile(file, b.Print(), 0o644); err != nil {
			t.Fatal(err)
		}
		text, err := exec.Command(peer.NeedCommand(t, "pdftotext"), "-layout", file, "-").Output()
		if err != nil {
			t.Fatal(err)
		}
		pages := strings.Split(strings.TrimSuffix(string(text), "\f"), "\f")
		// Words, drawing and calculation on the first or two, the table of 70 rows on two, signatures on their own.
		if len(pages) < 4 || len(pages) > 5 {
			t.Errorf("letter %t: %d pages", letter, len(pages))
		}
		for i, page := range pages {
			words := strings.Join(strings.Fields(page), " ")
			for _, want := range []string{p.Warning, p.Job, p.Hash, fmt.Sprintf("page %d of %d", i+1, len(pages))} {
				if !strings.Contains(words, want) {
					t.Errorf("letter %t: page %d lacks %q", letter, i+1, want)
				}
			}
			if strings.Contains(words, "net section") && !strings.Contains(words, "place check used remark") {
				t.Errorf("letter %t: page %d has rows and no heads", letter, i+1)
			}
		}
		info, err := exec.Command(peer.NeedCommand(t, "pdfinfo"), file).Output()
		want := map[bool]string{false: "(A4)", true: "612 x 792 pts (letter)"}[letter]
		if err != nil || !strings.Contains(string(info), want) {
			t.Errorf("no %s in %s, %v", want, info, err)
		}
	}
}
