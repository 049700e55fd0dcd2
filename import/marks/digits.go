package marks

import (
	"slices"

	"evenhand/bank/results"
	"evenhand/standards/words"
)

// Digits says what 1 and 0 mean.
type Digits string

// The meanings of 1 and 0; EachRow where rows of a grid differ.
const (
	AreMarks   Digits = "marks"
	AreAnswers Digits = "answers"
	EachRow    Digits = "each row by itself"
)

// isOneForRight says that the cell is a 1 which, as a mark, says more than as an answer: where 1 is
// the right answer it doesn't show that ones mark what is right.
func isOneForRight(c cell) bool {
	return c.sign != nil && c.sign.family == digitFamily && c.plain[0] == '1' && (c.why != nil || c.answer.State != results.Right)
}

// settleDigits decides whether 1 and 0 of the row are marks or answers, or asks where both
// or neither can be.
func (r *rowCells) settleDigits() (Digits, []question) {
	var places []cell
	wrong := map[string]int{} // wrong answers among them
	impossible, implausible, others, right := 0, 0, 0, 0
	odd, crossed := false, false // a digit where the key is longer, beside a mark for wrong
	for _, c := range r.cells {
		switch {
		case c.sign == nil || c.sign.family != digitFamily:
			if c.sign == nil && c.why == nil {
				others++
				if c.answer.State == results.Right {
					right++
				}
			}
			crossed = crossed || c.sign != nil && r.meant(c) == results.Wrong
			continue
		case c.why != nil:
			impossible++
		case c.answer.State != results.Right:
			wrong[c.plain[:1]]++
			implausible++
			odd = odd || c.long
		}
		places = append(places, c)
	}
	if len(places) == 0 {
		return "", nil
	}
	// Ones are no marks beside another sign for right; noughts alone can be.
	ones := slices.ContainsFunc(places, func(c cell) bool { return c.plain[0] == '1' })
	asMarks := right == 0 && !(r.usesOf(digitFamily).otherRight && ones)
	asAnswers := impossible == 0
	most := max(wrong["0"], wrong["1"])
	switch {
	case asMarks && others == 0 && (implausible > 1 || odd && crossed),
		asMarks && most >= 3 && 2*most >= len(r.cells),
		!asMarks && most >= 4 && 2*most > len(r.cells):
		asAnswers = false
	}
	switch {
	case asMarks && !asAnswers:
		return AreMarks, nil
	case asAnswers && !asMarks:
		return AreAnswers, nil
	case r.sameEitherWay(places):
		return AreMarks, nil
	case r.digits != "":
		return r.digits, nil
	}
	return "", []question{{places[0].at, words.Sayf("1 and 0 of this row can be marks or what the child wrote; say " +
		"--digits marks or --digits answers, or tick what is right")}}
}

// sameEitherWay says that marks and answers come to the same.
func (r *rowCells) sameEitherWay(places []cell) bool {
	for _, c := range places {
		if state, _ := c.sign.plainly(); state != c.answer.State {
			return false
		}
	}
	return true
}
