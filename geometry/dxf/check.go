package dxf

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"lugwright/geometry/shape"
)

// Rules that Check checks, besides those of shape.Outline.Validate, which it passes on under their own names.
const (
	RuleStructure = "structure"      // a file that Read reads, with the sections of its version in order
	RuleUnits     = "units"          // the unit is named, and named once
	RuleHandle    = "handle"         // handles are there, unique and below the seed
	RuleLayer     = "layer"          // every entity is on a declared layer
	RuleNumber    = "number"         // plain decimals: no exponent, no -0
	RuleForeign   = "foreign-entity" // only lines, arcs, circles and lightweight polylines, the last not in R12
	RuleOpen      = "open-contour"   // everything on the cut layer closes
	RuleZero      = "zero-length"    // no edge, stroke or radius is zero, no first vertex repeated
	RuleBulge     = "zero-bulge"     // a bulge of 0 is left out
	RuleTwice     = "duplicate"      // no entity is there twice
	RuleOrder     = "order"          // inner contours come before the outer
	RuleWinding   = "winding"        // outer counter-clockwise, others clockwise
	RuleOverlap   = "overlap"        // pieces keep clear of each other
	RuleEtch      = "etch-off-steel" // etch strokes lie on what is left of the plate
)

// Violation is one broken rule: its name, the place in the file and what was seen there.
type Violation struct{ Rule, Place, Message string }

func (v Violation) String() string { return fmt.Sprintf("%s: %s (%s)", v.Place, v.Message, v.Rule) }

// Check returns what is wrong with a cut file of so many pieces, none when it may leave the house.
func Check(data []byte, l Layers, pieces int) []Violation {
	_, found := ReadChecked(data, l, pieces)
	return found
}

// ReadChecked reads a cut file as Read does and says what is wrong with it as Check does.
func ReadChecked(data []byte, l Layers, pieces int) (File, []Violation) {
	r, err := read(data, l)
	c := checker{reading: r, layers: l.orOurs(), several: pieces}
	if err != nil {
		c.add(RuleStructure, "file", "%v", err)
		return r.File, c.found
	}
	c.structure()
	c.units()
	c.handles()
	c.entities()
	c.contours()
	return r.File, c.found
}

type checker struct {
	*reading
	layers  Layers
	several int // pieces that have to be there
	steel   []shape.Outline
	found   []Violation
}

func (c *checker) add(rule, place, format string, args ...any) {
	c.found = append(c.found, Violation{rule, place, fmt.Sprintf(format, args...)})
}

func line(n int) string { return "line " + strconv.Itoa(n) }

func (c *checker) structure() {
	want := []string{"HEADER", "CLASSES", "TABLES", "BLOCKS", "ENTITIES", "OBJECTS"}
	if c.Version == R12 {
		want = []string{"HEADER", "TABLES", "BLOCKS", "ENTITIES"}
	}
	var have []string
	for _, s := range c.sections {
		have = append(have, s.name)
	}
	if !slices.Equal(have, want) {
		c.add(RuleStructure, "file", "sections %s; need %s", strings.Join(have, ", "), strings.Join(want, ", "))
	}
	if len(c.Contours) == 0 {
		c.add(RuleStructure, "file", "nothing to cut")
	}
	for _, name := range []string{"$EXTMIN", "$EXTMAX"} {
		if c.variable(name, 10) == "" {
			c.add(RuleStructure, "header", "%s is missing", name)
		}
	}
}

func (c *checker) units() {
	if c.Version == R12 {
		named := 0
		for _, s := range c.comments {
			if s == unitComment(true) || s == unitComment(false) {
				named++
			}
		}
		if named != 1 {
			c.add(RuleUnits, "comments", "%d comments name a unit; need one", named)
		}
		return
	}
	insert, metric := c.variable("$INSUNITS", 70), c.variable("$MEASUREMENT", 70)
	if u := insert + "/" + metric; u != "4/1" && u != "1/0" {
		c.add(RuleUnits, "header", "$INSUNITS %q with $MEASUREMENT %q; need 4 with 1 for mm, 1 with 0 for inch", insert, metric)
	}
}

func (c *checker) handles() {
	seed, err := strconv.ParseUint(c.variable("$HANDSEED", 5), 16, 64)
	if err != nil {
		c.add(RuleHandle, "header", "$HANDSEED %q is no handle", c.variable("$HANDSEED", 5))
	}
	seen := map[uint64]int{}
	for _, s := range c.sections {
		if s.name == "HEADER" {
			continue
		}
		for _, t := range s.tags {
			if t.code != 5 && t.code != 105 {
				continue
			}
			h, err := strconv.ParseUint(t.value, 16, 64)
			if before, ok := seen[h]; ok {
				c.add(RuleHandle, line(t.line), "handle %s is also on line %d", t.value, before)
			} else if err != nil || h == 0 || h >= seed {
				c.add(RuleHandle, line(t.line), "handle %q; need one of 1 to below the seed", t.value)
			}
			seen[h] = t.line
		}
	}
}

func (c *checker) entities() {
	seen := map[string]int{}
	var key []byte
	for _, g := range c.reading.entities {
		c.entity(g)
		key = g.fingerprint(key[:0])
		if before, ok := seen[string(key)]; ok {
			c.add(RuleTwice, line(g.line), "the same %s is on line %d", g.kind, before)
		} else {
			seen[string(key)] = g.line
		}
	}
	for _, n := range c.repeated {
		c.add(RuleZero, line(n), "the first vertex is repeated at the end")
	}
	for _, s := range append(c.Strokes, c.Open...) {
		for i := range len(s.Points) - 1 {
			if s.Layer != c.Cut && s.Points[i].Dist(s.Points[i+1]) < joinMM {
				c.add(RuleZero, "layer "+s.Layer, "a stroke at (%g, %g) has no length", s.Points[i].X, s.Points[i].Y)
			}
		}
	}
}

func (c *checker) entity(g group) {
	known := []string{"LINE", "ARC", "CIRCLE", "LWPOLYLINE"}
	if c.Version == R12 {
		known = known[:3]
	}
	if !slices.Contains(known, g.kind) {
		c.add(RuleForeign, line(g.line), "%s on layer %s; need one of %s", g.kind, g.text(8), strings.Join(known, ", "))
	}
	if !slices.Contains(c.Layers, g.text(8)) {
		c.add(RuleLayer, line(g.line), "layer %q is not declared", g.text(8))
	}
	if g.text(5) == "" {
		c.add(RuleHandle, line(g.line), "%s has no handle", g.kind)
	}
	for _, t := range g.tags {
		decimal := t.code >= 10 && t.code <= 59
		if decimal && (strings.ContainsAny(t.value, "eExXpP_") || strings.HasPrefix(t.value, "-") && strings.Trim(t.value, "-0.") == "") {
			c.add(RuleNumber, line(t.line), "number %q; need plain decimals and no -0", t.value)
		}
		if t.code != 40 && t.code != 42 {
			continue
		}
		switch v, _ := t.number(); {
		case t.code == 42 && v == 0:
			c.add(RuleBulge, line(t.line), "a bulge of 0 is written; leave it out")
		case t.code == 40 && !(v > 0):
			c.add(RuleZero, line(t.line), "radius %q", t.value)
		}
	}
}

// fingerprint adds what the entity draws, without its handle.
func (g group) fingerprint(to []byte) []byte {
	to = append(to, g.kind...)
	for _, t := range g.tags {
		if t.code == 8 || t.code >= 10 && t.code <= 70 {
			to = strconv.AppendInt(append(to, '|'), int64(t.code), 10)
			to = append(append(to, ' '), t.value...)
		}
	}
	return to
}

func (c *checker) contours() {
	for _, s := range c.Open {
		last := s.Points[len(s.Points)-1]
		c.add(RuleOpen, "layer "+c.Cut, "from (%g, %g) to (%g, %g), %.3g mm open",
			s.Points[0].X, s.Points[0].Y, last.X, last.Y, s.Points[0].Dist(last))
	}
	var pieces []pieceContours
	if c.several < 2 {
		pieces = c.onePiece()
	} else if pieces = c.pieces(); len(pieces) != c.several {
		c.add(RuleStructure, "file", "%d pieces; need %d", len(pieces), c.several)
	}
	for i, p := range pieces {
		c.piece(p)
		for _, q := range pieces[:i] {
			c.apart(p.outer, q.outer)
		}
	}
	c.etch()
}

// onePiece takes the contour of the greatest area as the outer one, wherever the others lie.
func (c *checker) onePiece() []pieceContours {
	g := pieceContours{outer: c.outer()}
	if g.outer < 0 {
		return nil
	}
	for i := range c.Contours {
		if i != g.outer {
			g.holes = append(g.holes, i)
		}
	}
	return []pieceContours{g}
}

func (c *checker) piece(p pieceContours) {
	o := shape.Outline{Outer: c.Contours[p.outer]}
	c.winding(p.outer, true)
	for _, i := range p.holes {
		if i > p.outer {
			c.add(RuleOrder, contour(p.outer), "the outer contour comes before the inner contour %d", i)
		}
		c.winding(i, false)
		o.Holes = append(o.Holes, c.Contours[i])
	}
	c.steel = append(c.steel, o)
	for _, v := range o.Validate() {
		c.add(v.Rule, v.Place, "%s", v.Message)
	}
}

func (c *checker) winding(i int, outer bool) {
	a := c.Contours[i].Area()
	if !c.unwound[i] && math.Abs(a) >= shape.TouchMM && a > 0 != outer {
		c.add(RuleWinding, contour(i), "area %+.6g mm2; need the outer contour positive and the others negative", a)
	}
}

// apart refuses pieces that touch or overlap. Neither lies in the other: it would be an opening.
func (c *checker) apart(i, k int) {
	a, b := c.Contours[i], c.Contours[k]
	if !a.BBox().Grow(shape.TouchMM).Overlaps(b.BBox()) {
		return
	}
	if d := shape.LoopDistance(a, b); d < shape.TouchMM {
		c.add(RuleOverlap, contour(i), "it meets contour %d", k)
	}
}

func (c *checker) etch() {
	for _, s := range c.Strokes {
		if s.Layer != c.layers.Etch {
			continue
		}
		at := slices.IndexFunc(s.Points, func(p shape.Point) bool {
			return !slices.ContainsFunc(c.steel, func(o shape.Outline) bool { return o.Contains(p) })
		})
		if at >= 0 {
			c.add(RuleEtch, "layer "+s.Layer, "the stroke at (%g, %g) is in a hole or off the plate", s.Points[at].X, s.Points[at].Y)
		}
	}
}

func contour(i int) string { return "contour " + strconv.Itoa(i) }
