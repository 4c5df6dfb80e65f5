package whole

import (
	"fmt"
	"strconv"
	"strings"
)

// renamed turns the first word of a path into another.
func renamed(from, to string) func(string) string {
	return func(path string) string {
		if rest, ok := strings.CutPrefix(path, from); ok {
			return to + rest
		}
		return path
	}
}

// drilled knows that shipped guides stand before one's own.
func (d *Drilling) path(path string) string {
	if rest, ok := strings.CutPrefix(path, "guides["); ok {
		if number, after, ok := strings.Cut(rest, "]"); ok {
			if i, err := strconv.Atoi(number); err == nil && i >= len(d.Guides) {
				return fmt.Sprintf("drilling.own_guides[%d]%s", i-len(d.Guides), after)
			}
			return "drilling.guides[" + number + "]" // what is within it is ours
		}
	}
	if path == "frame.flange_mm" {
		return "drilling.rail_flange_mm"
	}
	if path == "subframe.flange_mm" {
		return "drilling.subframe_flange_mm"
	}
	return "drilling." + path
}

// trayPath: a tray's package speaks of one tray, and of cases by their own words.
func trayPath(i int) func(string) string {
	return func(path string) string {
		if rest, ok := strings.CutPrefix(path, "cases["); ok {
			rest = strings.Replace(rest, "].name", "].id", 1)
			return "cases[" + strings.Replace(rest, "].g", "].accel_g", 1)
		}
		return renamed("tray.", fmt.Sprintf("trays[%d].", i))(path)
	}
}
