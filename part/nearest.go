package part

import "lugwright/internal/spelling"

// Nearest gives `; nearest is "x"` for the name in list closest to a mistyped one, or nothing when none is close.
func Nearest(name string, list []string) string {
	near := spelling.Nearest(name, list)
	if near == "" {
		return ""
	}
	return `; nearest is "` + near + `"`
}
