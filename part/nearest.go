package part

import "lugwright/internal/spelling"

// Nearest gives `; nearest is "x"` for the name in list closest to a mistyped one, or nothing when none is close.
func Nearest(name string, list []string) string {
	if name == "" {
		return ""
	}
	best, at := len(name)/2+1, -1
	for i, s := range list {
		if d := spelling.Distance(name, s); d < best {
			best, at = d, i
		}
	}
	if at < 0 {
		return ""
	}
	return `; nearest is "` + list[at] + `"`
}
