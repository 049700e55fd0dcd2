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

// String is the part as it was counted, "23 of 24, could be 19 to 24": the second half is
// Range.
func (p Part) String() string {
	if p.Of == 0 {
		return "no answers"
	}
	low, high := p.Range()
	return fmt.Sprintf("%d of %d, could be %d to %d", p.Right, p.Of, low, high)
}

// RightIn is the part as it was counted and no more, "7 of 10 right", in a language ("en" or "es"; any other
// reads as "en").
func RightIn(lang string, p Part) string {
	if lang == "es" {
		return fmt.Sprintf("%d de %d correctas", p.Right, p.Of)
	}
	return fmt.Sprintf("%d of %d right", p.Right, p.Of)
}

// Range is how many of as many answers could be right by chance alone: the 95 % interval, its
// ends rounded outward.
func (p Part) Range() (low, high int) {
	s, of := p.Share(), float64(p.Of)
	return int(math.Floor(s.Low*of + tiny)), int(math.Ceil(s.High*of - tiny))
}

// Marked is the part in words, marked where there are few answers.
func (p Part) Marked() string {
	if p.Of > 0 && p.Few() {
		return p.String() + " (few)"
	}
	return p.String()
}

// tiny keeps an end that is a whole number from being rounded to the next.
const tiny = 1e-9

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
