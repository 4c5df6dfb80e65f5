package papertest

import (
	"fmt"
	"strings"

	"lugwright/client/paper"
)

// Text is a paper as plain text, for golden files that are read in a diff.
func Text(p *paper.Paper) string {
	var b strings.Builder
	line := func(format string, args ...any) { fmt.Fprintf(&b, format+"\n", args...) }
	if p.Warning != "" {
		line("! %s", p.Warning)
	}
	line("# %s\n%s, revision %s, %s, %s, letter %t", p.Title, p.Job, p.Revision, p.Tool, p.Hash, p.Letter)
	for _, x := range p.Blocks {
		switch x := x.(type) {
		case *paper.Heading:
			line("\n%s %s {%s}", strings.Repeat("#", x.Level), x.Text, x.ID)
		case *paper.Words:
			line("%s%s", strong(x.Strong), x.Text)
		case *paper.List:
			for i, item := range x.Items {
				line("%s %s", [...]string{"-", fmt.Sprint(i+1) + ".", "[ ]"}[x.Kind], item)
			}
		case *paper.Facts:
			for _, f := range x.Items {
				line("%s: %s", f.Name, f.Value)
			}
		case *paper.Table:
			heads := make([]string, len(x.Heads))
			for i, h := range x.Heads {
				heads[i] = h.Text
			}
			line("[%s] sortable %t", x.Caption, x.Sortable)
			line("| %s |", strings.Join(heads, " | "))
			for _, r := range x.Rows {
				line("%s| %s | {%s}", strong(r.Strong), strings.Join(r.Cells, " | "), r.Ref)
			}
		case *paper.Figure:
			line("figure %q %.1f x %.1f, full scale %t: %s", x.Drawing.Title, x.Drawing.WidthMM, x.Drawing.HeightMM, x.FullScale, x.Caption)
		case *paper.Calculation:
			for _, l := range x.Lines {
				line("    %s", l)
			}
		case *paper.Sign:
			line("sign: %s", strings.Join(x.Roles, ", "))
		case *paper.NewPage:
			line("----")
		}
	}
	return b.String()
}

func strong(is bool) string {
	if is {
		return "* "
	}
	return ""
}

// Whole returns an error where a row has not as many cells as its table has heads, or a heading skips a level.
func Whole(p *paper.Paper) error {
	level := 1
	for _, x := range p.Blocks {
		switch x := x.(type) {
		case *paper.Heading:
			if x.Level < 2 || x.Level > 4 || x.Level > level+1 {
				return fmt.Errorf("heading %q of level %d comes after one of level %d", x.Text, x.Level, level)
			}
			level = x.Level
		case *paper.Table:
			for _, r := range x.Rows {
				if len(r.Cells) != len(x.Heads) {
					return fmt.Errorf("table %q: row %q has %d cells under %d heads", x.Caption, r.Cells, len(r.Cells), len(x.Heads))
				}
			}
		}
	}
	return nil
}
