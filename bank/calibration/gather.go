package calibration

import (
	"evenhand/bank/evidence"
	"evenhand/bank/results"
	"evenhand/standards"
)

// gathered is papers as the model wants them: the items that were answered, by number, and
// each pupil's papers of a term together.
type gathered struct {
	items   []results.Item
	groups  []group
	papers  *evidence.Papers
	pupils  int
	count   int // of papers
	answers int
}

// group is a class in a term. Its grade is that of the highest skill it was asked.
type group struct {
	class, term string
	grade       int
	pupils      int
}

// usual is the ability of a usual class of the grade.
func (g group) usual() float64 { return standards.Level(g.grade).Logits() }

func (l *gathered) usual() []float64 {
	list := make([]float64, len(l.groups))
	for g, group := range l.groups {
		list[g] = group.usual()
	}
	return list
}

type (
	itemKey  struct{ id, asks, key string }
	groupKey struct{ class, term string }
	pupilKey struct {
		group int
		pupil string
	}
)

func identity(it results.Item) itemKey { return itemKey{it.ID, it.Asks, it.Key} }

// gatherer finds the numbers of items and groups while papers come in.
type gatherer struct {
	gathered
	numbers map[itemKey]int
	groupOf map[groupKey]int
	order   []pupilKey // in the order of their first papers
	sat     map[pupilKey][]evidence.Paper
}

// gather counts the papers that belong to one of the quizzes. Without an answer it returns
// results.ErrNone.
func gather(quizzes []results.Quiz, papers []results.Paper) (*gathered, error) {
	g := &gatherer{numbers: map[itemKey]int{}, groupOf: map[groupKey]int{}, sat: map[pupilKey][]evidence.Paper{}}
	byID := map[string]results.Quiz{}
	for _, quiz := range quizzes {
		byID[quiz.ID] = quiz
	}
	for _, paper := range papers {
		quiz, known := byID[paper.Quiz]
		if form, ok := quiz.Form(paper.Form); known && ok {
			g.take(paper, quiz, form)
		}
	}
	if g.answers == 0 {
		return nil, results.ErrNone
	}
	g.pupils = len(g.order)
	g.papers = evidence.NewPapers(len(g.items))
	for _, pupil := range g.order {
		g.groups[pupil.group].pupils++
		if err := g.papers.Add(pupil.group, g.sat[pupil]...); err != nil {
			return nil, err
		}
	}
	return &g.gathered, nil
}

// take keeps a paper with its pupil's others.
func (g *gatherer) take(p results.Paper, quiz results.Quiz, form results.Form) {
	var paper evidence.Paper
	for i, answer := range p.Answers {
		if answer.Counts() {
			paper.Items = append(paper.Items, g.number(form.Items[i]))
			paper.Right = append(paper.Right, answer.State == results.Right)
		}
	}
	if len(paper.Items) == 0 {
		return
	}
	g.count++
	g.answers += len(paper.Items)
	pupil := pupilKey{g.group(groupKey{p.Class, Term(quiz.Week)}), p.Pupil}
	for _, item := range paper.Items {
		g.groups[pupil.group].grade = max(g.groups[pupil.group].grade, standards.GradeOf(g.items[item].Skill))
	}
	if g.sat[pupil] == nil {
		g.order = append(g.order, pupil)
	}
	g.sat[pupil] = append(g.sat[pupil], paper)
}

func (g *gatherer) number(item results.Item) int {
	key := identity(item)
	n, known := g.numbers[key]
	if !known {
		n = len(g.items)
		g.numbers[key], g.items = n, append(g.items, item)
	}
	return n
}

func (g *gatherer) group(key groupKey) int {
	n, known := g.groupOf[key]
	if !known {
		n = len(g.groups)
		g.groupOf[key], g.groups = n, append(g.groups, group{class: key.class, term: key.term})
	}
	return n
}
