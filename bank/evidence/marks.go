package evidence

// Mark says what became of one item on one pupil's paper.
type Mark int8

// An item is missing when the pupil was absent for it or did not reach it: it says nothing
// about the pupil, nor the pupil about it.
const (
	Missing Mark = iota
	Wrong
	Right
)

// Row is a paper's marks, one for each item looked at, and how many pupils had just these.
// Items of other forms count as missing, so forms that share items can be looked at together.
type Row struct {
	Marks  []Mark
	Pupils int
}

// point is 1 for a right answer, 0 for a wrong one.
func (m Mark) point() float64 {
	if m == Right {
		return 1
	}
	return 0
}
