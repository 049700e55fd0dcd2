package assemble

import "slices"

// seats gives each item a row that it fits, so that as many as possible get one and no row gets
// more than its count (bipartite matching by augmenting paths: Kuhn 1955). fits lists the rows of
// each item; −1 is an item without a row.
func seats(fits [][]int, counts []int) []int {
	seat := slices.Repeat([]int{-1}, len(fits))
	for i := range fits {
		take(i, fits, counts, seat, make([]bool, len(counts)))
	}
	return seat
}

// take finds a row for item i, moving others on where need be; tried are the rows looked at.
func take(i int, fits [][]int, counts []int, seat []int, tried []bool) bool {
	for _, row := range fits[i] {
		if tried[row] {
			continue
		}
		tried[row] = true
		if occupied(seat, row) < counts[row] {
			seat[i] = row
			return true
		}
		for other, at := range seat {
			if at == row && take(other, fits, counts, seat, tried) {
				seat[i] = row
				return true
			}
		}
	}
	return false
}

func occupied(seat []int, row int) int {
	n := 0
	for _, at := range seat {
		if at == row {
			n++
		}
	}
	return n
}
