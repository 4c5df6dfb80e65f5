package html

import (
	"bytes"
	"os"
	"testing"

	"lugwright/client/paper/papertest"
)

func TestTmp(t *testing.T) {
	var b bytes.Buffer
	p := papertest.Paper()
	p.Warning = "NOT PASSED: do not use this bracket."
	if err := Write(&b, p); err != nil {
		t.Fatal(err)
	}
	os.WriteFile("/tmp/p1.html", b.Bytes(), 0o644)
}
