package text

import (
	"strings"
	"testing"

	"lugwright/client/draw"
	"lugwright/client/paper"
)

func written(t *testing.T, p *paper.Paper) string {
	t.Helper()
	var out strings.Builder
	if err := Write(&out, p); err != nil {
		t.Fatal(err)
	}
	for _, l := range strings.Split(out.String(), "\n") {
		if width(l) > Columns || strings.HasSuffix(l, " ") {
			t.Errorf("%d columns, or a blank at the end: %q", width(l), l)
		}
	}
	return out.String()
}

func TestBlocks(t *testing.T) {
	long := strings.Repeat("word ", 40)
	got := written(t, &paper.Paper{
		Title: "Torque card", Job: "A job", Revision: "B", Hash: "0123456789abcdef0123", Tool: "tool 1", Warning: "NOT PASSED",
		Blocks: []paper.Block{
			&paper.Heading{Level: 2, Text: "Bolts"}, &paper.Words{Text: long}, &paper.List{Items: []string{"one", long}, Kind: paper.Ticks},
			&paper.List{Items: []string{"first"}, Kind: paper.Steps}, &paper.List{Items: []string{"dot"}},
			&paper.Facts{Items: []paper.Fact{{Name: "nut factor", Value: "0.2"}, {Name: long, Value: "x"}}},
			&paper.Table{Heads: []paper.Head{{Text: "size"}, {Text: "N m", Numbers: true}}, Rows: []paper.Row{{Cells: []string{"M12", "126"}}, {Cells: []string{"M8"}}}},
			&paper.Figure{Drawing: &draw.Drawing{Title: "the bracket"}}, &paper.Calculation{Lines: []string{"T = K*d*F"}}, &paper.Sign{Roles: []string{"welder", "engineer"}},
		},
	})
	for _, want := range []string{
		"NOT PASSED\n\nTORQUE CARD\nA job, revision B\ntool 1, job 0123456789abcdef\n", "Bolts\n-----\n", "[ ] one\n[ ] word", "\n    word", " 1. first\n", "- dot\n",
		"nut factor", "size  N m\n----  ---\nM12   126\nM8\n", "[picture: the bracket]", "  T = K*d*F\n", "welder    ____", "date ____",
	} {
		if !strings.Contains(got, want) {
			t.Errorf("no %q in:\n%s", want, got)
		}
	}
}

// A table that is too wide is wrapped in its columns; one with too many columns is written row by row. No word of it is lost.
func TestWideTables(t *testing.T) {
	words := strings.Fields("many words that do not fit beside each other in one line of a terminal and are wrapped inside their own column")
	wide := &paper.Table{Heads: []paper.Head{{Text: "joint"}, {Text: "note"}}, Rows: []paper.Row{{Cells: []string{"W1", strings.Join(words, " ")}}}}
	got := written(t, &paper.Paper{Blocks: []paper.Block{wide}})
	for _, w := range words {
		if !strings.Contains(got, w) {
			t.Errorf("no %q in:\n%s", w, got)
		}
	}
	var many paper.Table
	row := paper.Row{}
	for range 9 {
		many.Heads, row.Cells = append(many.Heads, paper.Head{Text: "a-head-of-some-length"}), append(row.Cells, "a-cell-of-some-length")
	}
	many.Rows = []paper.Row{row}
	if got := written(t, &paper.Paper{Blocks: []paper.Block{&many}}); strings.Count(got, "a-head-of-some-length a-cell-of-some-length") < 1 || strings.Count(got, "a-cell") != 9 {
		t.Errorf("%s", got)
	}
	written(t, &paper.Paper{Blocks: []paper.Block{&paper.Table{}, &paper.Table{Heads: many.Heads[:1], Rows: []paper.Row{{Cells: []string{strings.Repeat("x", 300)}}}}}})
}
