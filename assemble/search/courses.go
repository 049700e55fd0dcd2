package search

// course is how a chain begins.
type course int

const (
	amongFew course = iota // with any choice, among the few items that could lead near to the bound
	fromBest               // with the best choice, so warm that most of it stays
	afresh                 // with any choice
	courses
)

// chains anneals in one course after the other, from the first named on, and takes the best choice found. What a course
// finds, the later ones begin with.
func (c *climb) chains(first course, wide, narrow []int, steps int, seed uint64, stop func() bool) {
	own := c.p.withSeed(seed)
	for n := range courses {
		k := (first + n) % courses
		w, heat, point := own.newSwapper(), annealHot, mildThousandth
		if k == amongFew {
			w.fillPool(c.root, narrow)
		} else {
			w.fillPool(c.root, wide)
		}
		if k == fromBest && c.best.forms != nil {
			w.seatAll(c.best.forms)
			heat, point = annealWarm, thousandth
		} else if !w.seat(c.root) {
			continue
		}
		if len(w.seats) == 0 {
			return
		}
		chain := w.newAnnealing().newChain(dice(seed+uint64(k)), point)
		chain.anneal(steps/int(courses), c.bound, heat, stop)
		if chain.objective < c.best.objective {
			c.best.take(chain.choice(), chain.objective)
		}
	}
}
