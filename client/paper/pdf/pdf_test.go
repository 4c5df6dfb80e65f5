package pdf

import (
	"bytes"
	"os"
	"testing"

	"lugwright/client/paper/papertest"
)

func TestTmp(t *testing.T) {
	var b bytes.Buffer
	p := papertest.Paper()
	p.Warning = "NOT PASSED: a check fails, is outside the rule or is missing; see the calc sheet. Do not use this bracket."
	if err := Write(&b, p); err != nil {
		t.Fatal(err)
	}
	os.WriteFile("/tmp/p1.pdf", b.Bytes(), 0o644)
}
