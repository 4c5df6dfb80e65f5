package papers_test

import (
	"fmt"
	"io/fs"
	"slices"
	"strings"
	"testing"

	"lugwright/client/papers"
)

// pack is a pack of three plates, a section, a weld and a bolt as its lists have them.
type pack map[string]string

func aPack() pack {
	return pack{
		"cut-list.csv": "mark,hand,qty,thickness_mm,material,width_mm,height_mm,mass_each_kg,cut_length_each_mm,pierces_each,holes,forming,file\r\n" +
			"A-L1,left,2,12,S355,100.00,50.00,0.471,300.0,1,,,dxf/a.dxf\r\nA-L2,left,1,8,S355,60.00,40.00,0.1,200.0,1,,,dxf/b.dxf\r\nA-L3,left,4,8,S355,30.00,40.00,0.1,140.0,1,,,dxf/c.dxf\r\nTOTAL,,7,,,,,,,,,,\r\n",
		"saw-list.csv":     "mark,hand,qty,section,material,length_mm\r\nA-L4,left,1,angle 100 x 150 x 12,S355,250.00\r\nTOTAL,,1,,,\r\n",
		"placing-list.csv": "bracket,qty,part,weld,kind,leg_mm\r\na,1,ear-1,w-ear-1,fillet,6.00\r\n",
		"buy-list.csv":     "item,size,grade_or_material,grip_mm,length_mm,qty,for,notes\r\nbolt,M12,10.9,18.00,40.00,6,a (6),\r\n",
		"dxf/a.dxf":        "aa", "dxf/b.dxf": "bb", "dxf/c.dxf": "cc",
	}
}

func (p pack) made(t *testing.T, revision string) *papers.Made {
	t.Helper()
	var files []string
	for name, data := range p {
		files = append(files, fmt.Sprintf(`{"name": %q, "bytes": 2, "sha256": "sum of %s"}`, name, strings.ReplaceAll(data[:min(9, len(data))], "\r\n", "")))
	}
	slices.Sort(files)
	manifest := fmt.Sprintf(`{"format": 1, "version": "1", "job": "a job", "revision": %q, "job_sha256": "hash of %s", "passed": true, "cut_files": true, "files": [%s]}`, revision, revision, strings.Join(files, ","))
	m, err := papers.MadeOf(func(name string) ([]byte, error) {
		if name == "manifest.json" {
			return []byte(manifest), nil
		}
		if data, ok := p[name]; ok {
			return []byte(data), nil
		}
		return nil, fs.ErrNotExist
	})
	if err != nil {
		t.Fatal(err)
	}
	return m
}

func TestRevision(t *testing.T) {
	old, now := aPack(), aPack()
	now["dxf/b.dxf"] = "changed" // A-L2 has another contour
	now["cut-list.csv"] = strings.ReplaceAll(now["cut-list.csv"], "A-L3,left,4,8", "A-L5,left,4,10")
	now["placing-list.csv"] = strings.Replace(now["placing-list.csv"], "6.00", "7.00", 1)
	now["buy-list.csv"] = strings.Replace(now["buy-list.csv"], "40.00,6", "45.00,6", 1)
	in := demo(t, "bodyfront.yaml")
	in.Before, in.Now = old.made(t, "A"), now.made(t, "B")
	p := of(t, in, "revision-sheet")
	rows := tables(p, "a part cut already")[0].Rows
	var got []string
	for _, r := range rows {
		got = append(got, r.Cells[0]+" "+r.Cells[4])
	}
	if want := []string{"A-L2 WRONG, cut anew", "A-L5 new", "A-L3 not used any more", "A-L1 stays right"}; !slices.Equal(got, want) {
		t.Errorf("%v, want %v", got, want)
	}
	text := said(p)
	for _, want := range []string{"leg mm 6.00", "leg mm 7.00", "bolt M12 10.9 18.00 45.00", "No change.", "1 plate is wrong, 0 to compare, 1 new, 1 not used any more, 1 that stay right."} {
		if !strings.Contains(text, want) {
			t.Errorf("no %q in:\n%s", want, text)
		}
	}
	// The same pack again: all stay right.
	in.Now = old.made(t, "A")
	if text := said(of(t, in, "revision-sheet")); strings.Contains(text, "WRONG") || !strings.Contains(text, "the same to the letter") {
		t.Errorf("%s", text)
	}
	// Another tool writes files in another way: what lists cannot tell apart is to be compared, not called right or wrong.
	in.Now = now.made(t, "B")
	in.Now.Version = "2"
	if text := said(of(t, in, "revision-sheet")); !strings.Contains(text, "COMPARE before use") {
		t.Errorf("%s", text)
	}
}

func TestNoRevision(t *testing.T) {
	in := demo(t, "bodyfront.yaml")
	k, _ := papers.Find("revision-sheet")
	if p, why := k.Of(in); p != nil || !strings.Contains(why, "--since") {
		t.Error(why)
	}
	in.Before = aPack().made(t, "A")
	if p, why := k.Of(in); p != nil || !strings.Contains(why, "while a check fails") {
		t.Error(why)
	}
	for _, manifest := range []string{"", "{", `{"format": 9}`} {
		if _, err := papers.MadeOf(func(string) ([]byte, error) { return []byte(manifest), nil }); err == nil {
			t.Errorf("%q is read as a manifest", manifest)
		}
	}
}
