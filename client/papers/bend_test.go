package papers_test

// The bend card of shops that etch and that do not.

import (
	"strings"
	"testing"

	"lugwright/client/papers"
	"lugwright/geometry/shop"
)

// trayJob is a folded tray from a shop.
func trayJob(shop string) string {
	return `
job: folded
units: metric
basis: AISC 360-22
method: ASD
shop: ` + shop + `
cases:
  a: {level: service, source: builder's choice, words: small}
brackets:
  - name: tray
    kind: tray
    hand: left
    mark: TRAY
    loads:
      - {case: a, force: {x: 0 N, y: 0 N, z: -100 N}}
`
}

// Which way a fold goes is said by a face that the man at the brake can tell: the etched one only where one is etched.
func TestBendCardNamesAFace(t *testing.T) {
	words := func(in papers.Input) string {
		return strings.Join(strings.Fields(plain(t, of(t, in, "bend-card"))), " ")
	}
	for _, c := range []struct{ shop, has, not string }{
		{"laser", "up is to the face that the cut file shows, which is etched with the mark", ""},
		{"waterjet", "up is to the face that the cut file shows;", "is etched"},
	} {
		in := input(t, "job.yaml", []byte(trayJob(c.shop)))
		got := words(in)
		if !strings.Contains(got, c.has) || c.not != "" && strings.Contains(got, c.not) || !strings.Contains(got, "on its layer BEND") {
			t.Errorf("%s: %s", c.shop, got)
		}
		in.Result.Job.Shop.Files.Layers = shop.Layers{Cut: "CUT"}
		if got := words(in); strings.Contains(got, "its layer") || !strings.Contains(got, "has no lines of folds") {
			t.Errorf("%s without a layer: %s", c.shop, got)
		}
	}
}

// A shop that etches nothing is said once in the fit sequence; else those that have no room for a mark are named, of any kind.
func TestUnmarkedPlates(t *testing.T) {
	clevis := strings.NewReplacer("kind: tray", "kind: clevis", "mark: TRAY", "mark: A-LONG-ROOT\n    parameters: {outer_gusset_length: 22 mm, outer_gusset_height: 53 mm}", "name: tray", "name: clevis").Replace
	words := func(shop string) string {
		return strings.Join(strings.Fields(plain(t, of(t, input(t, "job.yaml", []byte(clevis(trayJob(shop)))), "fit-sequence"))), " ")
	}
	laser, waterjet := words("laser"), words("waterjet")
	if !strings.Contains(waterjet, "the shop marks no plate") || strings.Contains(waterjet, "too small") {
		t.Error(waterjet)
	}
	if strings.Contains(laser, "the shop marks no plate") || !strings.Contains(laser, "too small for an etched mark, so paint it on or tag them when they are picked up: A-LONG-ROOT-L") {
		t.Error(laser)
	}
}
