package html

import (
	"bytes"
	"fmt"
	"html"
	"io"
	"os"
	"testing"

	"lugwright/client/draw"
	"lugwright/client/paper/papertest"
)

// picture is a small writer of drawings, enough for a page to have groups with names.
func picture(w io.Writer, d *draw.Drawing) error {
	fmt.Fprintf(w, `<svg xmlns="http://www.w3.org/2000/svg" width="%gmm" height="%gmm" viewBox="0 0 %[1]g %[2]g" role="img"><title>%s</title>`, d.WidthMM, d.HeightMM, html.EscapeString(d.Title))
	var items func([]draw.Item)
	items = func(list []draw.Item) {
		for _, item := range list {
			switch item := item.(type) {
			case *draw.Group:
				fmt.Fprintf(w, `<g id="%s">`, item.ID)
				items(item.Items)
				io.WriteString(w, "</g>")
			case *draw.Path:
				fmt.Fprintf(w, `<path fill="none" stroke="#000000" stroke-width="0.5" d="M%g %g`, item.Start.X, d.HeightMM-item.Start.Y)
				for _, s := range item.Segments {
					fmt.Fprintf(w, "L%g %g", s.To.X, d.HeightMM-s.To.Y)
				}
				io.WriteString(w, `"/>`)
			case *draw.Text:
				fmt.Fprintf(w, `<text x="%g" y="%g" font-size="%g">%s</text>`, item.At.X, d.HeightMM-item.At.Y, item.HeightMM*1.4, html.EscapeString(item.Words))
			}
		}
	}
	items(d.Items)
	_, err := io.WriteString(w, "</svg>\n")
	return err
}

func TestTmp(t *testing.T) {
	var b bytes.Buffer
	p := papertest.Paper()
	p.Warning = "NOT PASSED: do not use this bracket."
	if err := Write(&b, p, picture); err != nil {
		t.Fatal(err)
	}
	os.WriteFile("/tmp/p1.html", b.Bytes(), 0o644)
}
