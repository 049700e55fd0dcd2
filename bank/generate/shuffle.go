package generate

import (
	"iter"
	"math/rand/v2"
)

// shuffled is the numbers from 0 to n−1 in random order, every order as likely as
// any other (Fisher and Yates), shuffled only as far as they are taken. n is below 2³².
func shuffled(n int, random *rand.Rand) iter.Seq[int] {
	return func(yield func(int) bool) {
		left := make([]uint32, n)
		for i := range left {
			left[i] = uint32(i)
		}
		for len(left) > 0 {
			last := len(left) - 1
			i := random.IntN(len(left))
			drawn := left[i]
			left[i], left = left[last], left[:last]
			if !yield(int(drawn)) {
				return
			}
		}
	}
}
