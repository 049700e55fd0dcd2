package report

import (
	"fmt"
	"math"

	"evenhand/bank/evidence"
)

// Part is so many right of so many answers.
type Part struct{ Right, Of int }

// fewAnswers is the number below which a count is marked as small (common practice).
const fewAnswers = 10

// Few says that there are too few answers to make much of them.
func (p Part) Few() bool { return p.Of < fewAnswers }

// Share is the share right with Wilson's 95 % interval.
func (p Part) Share() evidence.Share { return evidence.ShareOf(p.Right, p.Of) }

// String is the part in words, "7 of 10, could be 5 to 8": the second half is the 95 %
// interval. More than ten answers are brought down to ten.
func (p Part) String() string {
	if p.Of == 0 {
		return "no answers"
	}
	share, unit := p.Share(), float64(min(p.Of, 10))
	of := func(x float64) int { return int(math.Round(x * unit)) }
	return fmt.Sprintf("%d of %d, could be %d to %d", of(share.Value), int(unit), of(share.Low), of(share.High))
}

// Counted is the part as it was counted, "17 of 24 answers", marked where these are few.
func (p Part) Counted() string {
	text := fmt.Sprintf("%d of %s", p.Right, plural(p.Of, "answer"))
	if p.Few() {
		text += " (few)"
	}
	return text
}

func (p *Part) add(right bool) {
	p.Of++
	if right {
		p.Right++
	}
}

func plural(n int, thing string) string {
	if n == 1 {
		return "1 " + thing
	}
	return fmt.Sprintf("%d %ss", n, thing)
}
