package results

import (
	"maps"
	"math"
	"slices"
	"strings"

	"evenhand/bank/evidence"
	"evenhand/standards"
	"evenhand/standards/task"
)

// Learnt is what papers show about difficulty.
type Learnt struct {
	Items   []LearntItem
	Weights []LearntWeight // those that some item holds
	Papers  int
	Answers int
}

// LearntItem is an item with its difficulty. An item that was changed between two
// quizzes counts as two.
type LearntItem struct {
	Item
	Measured      standards.Difficulty
	StandardError standards.Difficulty
	Answers       int
}

// LearntWeight is what a skill or trait adds to difficulty, in logits.
type LearntWeight struct {
	Name    string
	Default float64 // of the table in package standards
	Learnt  evidence.Estimate
}

// Learn fits the difficulty model of package evidence to papers of the quizzes. It
// starts from the default table of weights; every class may have another mean
// ability each week.
func Learn(quizzes []Quiz, papers []Paper, progress evidence.Progress) (Learnt, error) {
	l := newLesson(quizzes)
	if err := l.count(papers); err != nil {
		return Learnt{}, err
	}
	if l.learnt.Answers == 0 {
		return Learnt{}, ErrNone
	}
	weights := l.weigh()
	fit, err := evidence.Difficulty(l.papers, weights.rows, evidence.Usual(weights.defaults), progress)
	if err != nil {
		return Learnt{}, err
	}
	for i, estimate := range fit.Items {
		item := &l.learnt.Items[i]
		item.Measured, item.StandardError, item.Answers = thousandths(estimate.Value), thousandths(estimate.SE), estimate.Answers
	}
	for k, name := range weights.names {
		l.learnt.Weights = append(l.learnt.Weights, LearntWeight{name, weights.defaults[k], fit.Weights[k]})
	}
	return l.learnt, nil
}

func thousandths(logits float64) standards.Difficulty {
	return standards.Difficulty(math.Round(1000 * logits))
}

// lesson gathers the papers as the model wants them.
type lesson struct {
	learnt  Learnt
	traits  []task.Traits // of the items
	numbers map[itemKey]int
	quizzes map[string]Quiz
	groups  map[[2]string]int // class, week
	papers  *evidence.Papers
}

type itemKey struct{ id, asks, key string }

func (it Item) identity() itemKey { return itemKey{it.ID, it.Asks, it.Key} }

func newLesson(quizzes []Quiz) *lesson {
	l := &lesson{numbers: map[itemKey]int{}, quizzes: map[string]Quiz{}, groups: map[[2]string]int{}}
	for _, quiz := range quizzes {
		l.quizzes[quiz.ID] = quiz
		for _, form := range quiz.Forms {
			for _, item := range form.Items {
				if _, known := l.numbers[item.identity()]; !known {
					l.numbers[item.identity()] = len(l.learnt.Items)
					l.learnt.Items = append(l.learnt.Items, LearntItem{Item: item})
					l.traits = append(l.traits, item.traits())
				}
			}
		}
	}
	l.papers = evidence.NewPapers(len(l.learnt.Items))
	return l
}

// count counts the papers of the quizzes.
func (l *lesson) count(papers []Paper) error {
	for _, p := range papers {
		quiz, known := l.quizzes[p.Quiz]
		form, ok := quiz.Form(p.Form)
		if !known || !ok {
			continue
		}
		group, seen := l.groups[[2]string{p.Class, quiz.Week}]
		if !seen {
			group = len(l.groups)
			l.groups[[2]string{p.Class, quiz.Week}] = group
		}
		paper := evidence.Paper{}
		for i, answer := range p.Answers {
			if answer.Counts() {
				paper.Items = append(paper.Items, l.numbers[form.Items[i].identity()])
				paper.Right = append(paper.Right, answer.State == Right)
			}
		}
		if len(paper.Items) == 0 {
			continue
		}
		l.learnt.Papers++
		l.learnt.Answers += len(paper.Items)
		if err := l.papers.Add(group, paper); err != nil {
			return err
		}
	}
	return nil
}

// weighing is the columns of the model: one for each skill and one for each weight
// that some item holds, with the items' rows.
type weighing struct {
	names    []string
	defaults []float64
	rows     [][]float64
}

func (l *lesson) weigh() weighing {
	var w weighing
	bases := map[standards.SkillID]bool{}
	for _, item := range l.learnt.Items {
		bases[item.Skill] = true
	}
	skills := slices.Sorted(maps.Keys(bases))
	for _, skill := range skills {
		w.names = append(w.names, strings.TrimSpace("skill "+string(skill)))
		w.defaults = append(w.defaults, standards.Predict(skill, task.Traits{}).Logits())
	}
	held := l.heldWeights()
	for _, weight := range held {
		w.names = append(w.names, weight.Name)
		w.defaults = append(w.defaults, weight.Logits)
	}
	for i, item := range l.learnt.Items {
		row := make([]float64, 0, len(w.names))
		for _, skill := range skills {
			row = append(row, amount(item.Skill == skill))
		}
		for _, weight := range held {
			row = append(row, weight.Amount(l.traits[i]))
		}
		w.rows = append(w.rows, row)
	}
	return w
}

// heldWeights are the weights that some item holds.
func (l *lesson) heldWeights() (held []standards.Weight) {
	for _, weight := range standards.Weights() {
		if slices.ContainsFunc(l.traits, func(ts task.Traits) bool { return weight.Amount(ts) != 0 }) {
			held = append(held, weight)
		}
	}
	return held
}

// traits are those of the item's task; an item by hand has none.
func (it Item) traits() (none task.Traits) {
	if asked, ok := it.Task(); ok {
		return asked.Traits()
	}
	return none
}

func amount(yes bool) float64 {
	if yes {
		return 1
	}
	return 0
}
