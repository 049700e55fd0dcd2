package search

// course is how a chain begins.
type course int

const (
	afresh    course = iota // hot, with any choice
	fromBest                // with the best choice, so warm that a little of it changes, among few items
	furtherOn               // with the best choice, warmer
	fromDealt               // with a set of items that is good for all forms together, among few items
	courses
)

// chains anneals in one course after the other and gives the best choice found. What a course finds, the
// later ones begin with.
func (c *climb) chains(wide, narrow []int, steps int, seed uint64, stop func() bool) (forms [][]Place, objective int) {
	own := c.p.withSeed(seed)
	forms, objective = c.best.forms, c.best.objective
	for k := range courses {
		w, hot := own.newSwapper(), annealWarm
		if k == fromBest || k == fromDealt {
			w.fillPool(c.root, narrow)
		} else {
			w.fillPool(c.root, wide)
		}
		switch {
		case k == fromDealt && c.dealt != nil:
			if c.dealt(w); !w.level() {
				continue
			}
		case k == afresh || k == fromDealt || forms == nil:
			if hot = annealHot; !w.seat(c.root) {
				continue
			}
		default:
			w.seatAll(forms)
			if objective < weight {
				hot = annealTepid
			}
			if k == furtherOn {
				hot *= tepidToWarm
			}
		}
		if len(w.seats) == 0 {
			return nil, none
		}
		found, better := w.newAnnealing().run(steps/int(courses), c.bound, hot, seed+uint64(k), stop)
		if better < objective {
			forms, objective = found, better
		}
	}
	return forms, objective
}
