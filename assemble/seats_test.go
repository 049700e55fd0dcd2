package assemble

import (
	"slices"
	"testing"

	"pgregory.net/rapid"
)

// Where a full seating exists, seats finds one: the fits are drawn around a hidden seating.
func TestSeatsFindsAFullSeating(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		counts := rapid.SliceOfN(rapid.IntRange(0, 4), 1, 5).Draw(t, "counts")
		var fits [][]int
		for row, count := range counts {
			for range count {
				others := rapid.SliceOfN(rapid.IntRange(0, len(counts)-1), 0, 3).Draw(t, "others")
				fits = append(fits, append(others, row))
			}
		}
		seat := seats(fits, counts)
		for row, count := range counts {
			if got := occupied(seat, row); got != count {
				t.Fatalf("fits %v, counts %v: row %d has %d of %d in %v", fits, counts, row, got, count, seat)
			}
		}
		for i, row := range seat {
			if !slices.Contains(fits[i], row) {
				t.Fatalf("item %d fits %v and sits in row %d", i, fits[i], row)
			}
		}
	})
}
