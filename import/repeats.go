package intake

import (
	"cmp"
	"fmt"
	"hash/maphash"
	"slices"
)

// repeats finds rows whose cells are those of an earlier row, so that each is judged and put
// into the bank once, however often the list has it.
type repeats struct {
	rows  []record
	first map[uint64]int // by the hash of its cells, the first row that has them
	next  int            // the row that is asked about next
	off   bool           // rows of the bank's own files say more than their question
}

var cellSeed = maphash.MakeSeed()

// find says whether the row, which comes after those asked about before, repeats one, and which.
func (r *repeats) find(rec record) (first int, known bool) {
	at := r.next
	r.next++
	if r.off || rec.problem != nil || rec.open {
		return 0, false
	}
	var hash maphash.Hash
	hash.SetSeed(cellSeed)
	for _, cell := range rec.cells {
		hash.WriteString(cell)
		hash.WriteByte(0)
	}
	sum := hash.Sum64()
	if first, known = r.first[sum]; !known {
		r.first[sum] = at
		return 0, false
	}
	before := r.rows[first]
	return first, slices.Equal(before.cells, rec.cells) && before.answer == rec.answer
}

// repeat gives a row the end of the earlier one that it repeats.
func repeat(out *Outcome, first Outcome) {
	out.Fate, out.ID = first.Fate, first.ID
	if first.Fate == Added {
		out.Fate = Here
	}
	if out.Fate == Here {
		out.Repeats = cmp.Or(first.Repeats, first.First)
	}
	if first.Problem != nil {
		problem := *first.Problem
		problem.Line += out.First - first.First
		out.Problem, out.Whole = &problem, first.Whole
	}
}

// AlreadyHere says which rows ask what the bank has, or an earlier row: "line 9 asks the
// same as line 2 (item 01J...)"; at most so many, and how many more there are.
func (r *Report) AlreadyHere(most int) (said []string, more int) {
	came := map[string]int{}
	for _, out := range r.Outcomes {
		switch {
		case out.Fate == Added:
			came[out.ID] = out.First
		case out.Fate == Here && (out.ID != "" || out.Repeats > 0) && len(said) == most:
			more++
		case out.Fate == Here && out.ID == "" && out.Repeats > 0: // in a dry run
			said = append(said, fmt.Sprintf("line %d asks the same as line %d", out.First, out.Repeats))
		case out.Fate == Here && out.ID != "":
			as := "item " + out.ID
			if line, ok := came[out.ID]; ok {
				as = fmt.Sprintf("line %d (%s)", line, as)
			}
			said = append(said, fmt.Sprintf("line %d asks the same as %s", out.First, as))
		}
	}
	return said, more
}
