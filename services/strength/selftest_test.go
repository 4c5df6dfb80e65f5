package strength

import (
	"os"
	"reflect"
	"slices"
	"strings"
	"testing"

	"lugwright/client/casefile"
	"lugwright/strength"
	"lugwright/strength/basis"
	"lugwright/strength/handbook"
)

// The known answers are those of the case files, digit for digit.
func TestKnownAnswersArePublished(t *testing.T) {
	files := []string{"aisc360/d07-pin-connected-plate", "aisc360/iia27-fillet-line", "en1993/table-88-m20"}
	if len(files) != len(knownAnswers) {
		t.Fatal("a known answer has no case file here")
	}
	for i, e := range knownAnswers {
		name := "../../testdata/handbook/" + files[i] + ".yaml"
		src, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		f, err := casefile.Read(name, src)
		if err != nil {
			t.Fatal(err)
		}
		for _, r := range e.Runs {
			if !slices.ContainsFunc(f.Example.Runs, func(q handbook.Run) bool { return reflect.DeepEqual(plain(q), plain(r)) }) {
				t.Errorf("%s has no run %+v", name, r)
			}
		}
		e.Runs, e.Note, f.Example.Runs, f.Example.Note = nil, "", nil, ""
		if !reflect.DeepEqual(clean(e), clean(f.Example)) {
			t.Errorf("%s: %+v, here %+v", name, f.Example, e)
		}
	}
}

// plain is a run without the difference between an empty map and none.
func plain(r handbook.Run) handbook.Run {
	if len(r.Givens) == 0 {
		r.Givens = nil
	}
	if len(r.Factors) == 0 {
		r.Factors = nil
	}
	if len(r.Widened) == 0 {
		r.Widened = nil
	}
	return r
}

func clean(e handbook.Example) handbook.Example {
	if len(e.Factors) == 0 {
		e.Factors = nil
	}
	return e
}

func TestSelfTest(t *testing.T) {
	if err := New(basis.All()).SelfTest(t.Context()); err != nil {
		t.Error(err)
	}
	if err := New(nil).SelfTest(t.Context()); err != nil {
		t.Error(err)
	}
}

// A basis that calculates otherwise than its source is found out; so is one that nothing is known of.
func TestSelfTestFindsAWrongBasis(t *testing.T) {
	for _, b := range basis.All() {
		if b.Card.Name != "EN 1993-1-8:2005" {
			continue
		}
		wrong := *b
		wrong.Card.Factors = slices.Clone(wrong.Card.Factors)
		for i := range wrong.Card.Factors {
			wrong.Card.Factors[i].Default *= 1.1
		}
		if err := New([]*strength.Basis{&wrong}).SelfTest(t.Context()); err == nil || !strings.Contains(err.Error(), "printed") {
			t.Errorf("got %v", err)
		}
		wrong.Card.Name = "other"
		if err := New([]*strength.Basis{&wrong}).SelfTest(t.Context()); err == nil || !strings.Contains(err.Error(), "no published example") {
			t.Errorf("got %v", err)
		}
	}
}
