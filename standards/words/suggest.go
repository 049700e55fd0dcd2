package words

import "strings"

// Nearest is the name in the list that is closest to what was typed, by the
// number of letters to change, add or drop (Levenshtein's distance), or else the first
// that begins with it; ok is false when none is near enough to be meant.
func Nearest(typed string, names []string) (name string, ok bool) {
	best := max(2, len(typed)/3) + 1
	for _, candidate := range names {
		if max(len(typed), len(candidate))-min(len(typed), len(candidate)) >= best {
			continue // so many letters at least would have to change
		}
		if d := editDistance(typed, candidate); d < best {
			best, name, ok = d, candidate, true
		}
	}
	for i := 0; !ok && len(typed) > 2 && i < len(names); i++ {
		if strings.HasPrefix(names[i], typed) {
			name, ok = names[i], true
		}
	}
	return name, ok
}

// Suggest is `; did you mean "..."?` or nil.
func Suggest(typed string, names []string) *Told { return SuggestOr(typed, names, nil) }

// SuggestOr is what Suggest is, or else the other hint.
func SuggestOr(typed string, names []string, other *Told) *Told {
	if name, ok := Nearest(typed, names); ok {
		return Sayf("; did you mean %q?", name)
	}
	return other
}

func editDistance(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		diagonal := row[0]
		row[0] = i + 1
		for j := range len(b) {
			cost := 1
			if a[i] == b[j] {
				cost = 0
			}
			diagonal, row[j+1] = row[j+1], min(row[j+1]+1, row[j]+1, diagonal+cost)
		}
	}
	return row[len(b)]
}
