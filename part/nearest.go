package part

// Nearest gives `; nearest is "x"` for the name in list closest to a mistyped one, or nothing when none is close.
func Nearest(name string, list []string) string {
	if name == "" {
		return ""
	}
	best, at := len(name)/2+1, -1
	for i, s := range list {
		if d := editDistance(name, s); d < best {
			best, at = d, i
		}
	}
	if at < 0 {
		return ""
	}
	return `; nearest is "` + list[at] + `"`
}

// editDistance counts the letters to insert, delete or change.
func editDistance(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for j := range len(b) {
			cost := diagonal
			if a[i] != b[j] {
				cost++
			}
			diagonal = row[j+1]
			row[j+1] = min(cost, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(b)]
}
