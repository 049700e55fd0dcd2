package search

// Enough is how many members of a group, no two of which clash, make the rest
// of the group needless for a proved optimum.
func Enough(forms, size, clashesPerItem int) int {
	return forms * (size + clashesPerItem*(size-1))
}
