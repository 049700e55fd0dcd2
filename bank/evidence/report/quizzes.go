package report

import (
	"fmt"
	"math"

	"evenhand/bank/evidence"
	"evenhand/bank/results"
)

// Quiz is a quiz in a few numbers.
type Quiz struct {
	results.Quiz
	Papers, Absent int  // absent: answered nothing at all
	Right          Part // of all answers
	// Chance is the standard error of measurement of a pupil's number right, in items; NaN
	// where the papers don't tell.
	Chance float64
}

func (b *book) summaries() (list []Quiz) {
	for i := range b.quizzes {
		q := Quiz{Quiz: b.quizzes[i], Chance: math.NaN()}
		rows := map[string][]evidence.Row{}
		for _, p := range b.papers {
			if p.quiz != &b.quizzes[i] {
				continue
			}
			right, of := p.Score()
			q.Right.Right, q.Right.Of = q.Right.Right+right, q.Right.Of+of
			if q.Papers++; of == 0 {
				q.Absent++
			}
			rows[p.form.Name] = append(rows[p.form.Name], evidence.Row{Marks: marksOf(p.Answers), Pupils: 1})
		}
		for _, form := range q.Forms {
			// The largest of the forms, as far as they tell.
			q.Chance = fmax(q.Chance, evidence.ReliabilityOf(rows[form.Name]).SEM)
		}
		list = append(list, q)
	}
	return list
}

// fmax is the larger of two numbers, and the other one where one is NaN.
func fmax(a, b float64) float64 {
	if math.IsNaN(a) || b > a {
		return b
	}
	return a
}

func marksOf(answers []results.Answer) []evidence.Mark {
	marks := make([]evidence.Mark, len(answers))
	for i, a := range answers {
		switch a.State {
		case results.Right:
			marks[i] = evidence.Right
		case results.Wrong:
			marks[i] = evidence.Wrong
		}
	}
	return marks
}

// String is the quiz in a line.
func (q Quiz) String() string {
	text := fmt.Sprintf("%s: %s", q.Name(), plural(q.Papers, "paper"))
	if q.Absent > 0 {
		text += fmt.Sprintf(", %d of them absent", q.Absent)
	}
	if q.Right.Of > 0 {
		text += fmt.Sprintf("; %d of %s right", q.Right.Right, plural(q.Right.Of, "answer"))
	}
	return text
}

// luck says how far one pupil's number right in the latest quiz can be trusted; empty
// where the papers don't tell.
func (r *Report) luck() string {
	if len(r.Quizzes) == 0 || !(r.Quizzes[len(r.Quizzes)-1].Chance > 0) {
		return ""
	}
	off := int(math.Ceil(ninetyFive * r.Quizzes[len(r.Quizzes)-1].Chance))
	return fmt.Sprintf("Luck alone can make a pupil's number right up to %s higher or lower (for 95 of 100 pupils).", plural(off, "item"))
}

// ninetyFive is how many standard errors hold 95 in 100 of a normal distribution.
const ninetyFive = 1.96
