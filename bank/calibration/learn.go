package calibration

import (
	"math"

	"evenhand/bank/evidence"
	"evenhand/bank/results"
	"evenhand/standards"
)

// Learnt is what papers show about difficulty.
type Learnt struct {
	Items   []Item
	Levels  []Weight // of the skills that were answered, by name
	Weights []Weight // those that some answered item holds
	Classes []Class
	Papers  int
	Answers int
}

// Item is an item that was answered, with its difficulty for pupils of its own grade. An item that was changed between
// two quizzes counts as two.
type Item struct {
	results.Item
	Difficulty    standards.Difficulty
	StandardError standards.Difficulty // beside the pupils of the papers (evidence.ItemEstimate.Beside)
	Answers       int
}

// Weight is the level of a skill, which is the difficulty of its easiest tasks for pupils of its
// own grade, or what a trait adds to difficulty, in logits.
type Weight struct {
	Name    string
	Default float64 // of the table in package standards
	Learnt  evidence.Estimate
	Answers int // to items that have it
}

// Class is where a class stood in a term, in logits on the one scale of standards.Level.
type Class struct {
	Name, Term string
	Level      evidence.Estimate
	Usual      float64 // of its grade
	Pupils     int
}

// Learn fits the difficulty model of package evidence to papers of the quizzes. It starts
// from the default table, and every class has a level of its own each term.
func Learn(quizzes []results.Quiz, papers []results.Paper, progress evidence.Progress) (Learnt, error) {
	l, err := gather(quizzes, papers)
	if err != nil {
		return Learnt{}, err
	}
	c := columnsOf(l.items)
	belief := evidence.Usual(c.defaults())
	belief.ClassUsual = l.usual()
	fit, err := evidence.Difficulty(l.papers, c.rows, belief, progress)
	if err != nil {
		return Learnt{}, err
	}
	learnt := Learnt{Papers: l.count, Answers: l.answers}
	for i, estimate := range fit.Items {
		learnt.Items = append(learnt.Items, Item{
			l.items[i], thousandths(estimate.Value - usualOf(l.items[i].Skill)), thousandths(estimate.Beside), estimate.Answers,
		})
	}
	for k, skill := range c.skills {
		usual, level := usualOf(skill), fit.Weights[k]
		level.Value -= usual
		learnt.Levels = append(learnt.Levels, Weight{string(skill), levelOf(skill) - usual, level, c.answers(k, fit)})
	}
	for k, weight := range c.weights {
		at := len(c.skills) + k
		learnt.Weights = append(learnt.Weights, Weight{weight.Name, weight.Logits, fit.Weights[at], c.answers(at, fit)})
	}
	for g, level := range fit.Classes {
		learnt.Classes = append(learnt.Classes, Class{l.groups[g].class, l.groups[g].term, level, l.groups[g].usual(), l.groups[g].pupils})
	}
	return learnt, nil
}

func thousandths(logits float64) standards.Difficulty {
	return standards.Difficulty(math.Round(1000 * logits))
}
