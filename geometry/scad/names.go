package scad

import (
	"strconv"
	"strings"
)

// names gives out names that are not taken.
type names map[string]bool

// taken are the names that the file uses itself, and words of the language.
func taken() names {
	n := names{}
	for _, s := range strings.Fields("part explode facets assembly place hole outline points arc bolt turned bend sign mirror abs sin cos tan module function if else for let " +
		"each true false undef use include cylinder circle square cube polygon difference union intersection translate multmatrix " +
		"color linear_extrude rotate import echo assert len") {
		n[s] = true
	}
	return n
}

func (n names) give(want string) string {
	name := want
	for i := 2; n[name]; i++ {
		name = want + "_" + strconv.Itoa(i)
	}
	n[name] = true
	return name
}

// word keeps letters, digits and the extra characters; everything else becomes an underscore.
func word(s, extra string) string {
	return strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || strings.ContainsRune(extra, r) {
			return r
		}
		return '_'
	}, s)
}

// identifier makes a name that may stand for a module or a variable.
func identifier(s string) string {
	s = word(s, "")
	if s == "" || s[0] <= '9' {
		return "p" + s
	}
	return s
}

// plain keeps a text on its comment line.
func plain(s string) string {
	return strings.Map(func(r rune) rune {
		if r < ' ' || r == 0x2028 || r == 0x2029 {
			return ' '
		}
		return r
	}, s)
}
