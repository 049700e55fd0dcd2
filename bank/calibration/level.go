package calibration

import (
	"fmt"
	"maps"
	"math"
	"slices"
	"strings"

	"evenhand/bank"
	"evenhand/bank/evidence"
	"evenhand/bank/results"
	"evenhand/standards"
)

// Level is where a class stands, in logits on the one scale of standards.Level.
type Level struct {
	Class   string
	Term    string // that of its latest papers
	Ability evidence.Estimate
	Usual   float64 // of its grade
	Spread  float64 // standard deviation of its pupils' abilities
	Pupils  int
	Answers int
}

// NoPapersError says that a class has no marked papers yet, and which have.
type NoPapersError struct {
	Class  string
	Others []string
}

func (e NoPapersError) Error() string {
	text := fmt.Sprintf("there are no marked papers of class %s yet", e.Class)
	if len(e.Others) > 0 {
		text += ", only of " + strings.Join(e.Others, ", ")
	}
	return text
}

// NoPapers is the error that the papers are of other classes, all of them named.
func NoPapers(class string, papers []results.Paper) NoPapersError {
	others := map[string]bool{}
	for _, paper := range papers {
		others[paper.Class] = true
	}
	delete(others, "")
	return NoPapersError{class, slices.Sorted(maps.Keys(others))}
}

// LevelOf says where a class stands from its papers of its latest term, by the difficulties
// that the bank has now for their items; an item that the bank doesn't have any more counts
// with the difficulty by which its quiz was assembled. A class without papers is a
// NoPapersError.
func LevelOf(class string, quizzes []results.Quiz, papers []results.Paper, b *bank.Bank) (Level, error) {
	g, err := gather(quizzes, latestTerm(class, quizzes, papers))
	if err != nil {
		return Level{}, NoPapers(class, papers)
	}
	rows := make([][]float64, len(g.items))
	for i, item := range g.items {
		d, err := difficultyNow(item, b)
		if err != nil {
			return Level{}, err
		}
		rows[i] = []float64{standards.OnScale(item.Skill, d).Logits()}
	}
	fit, err := evidence.Difficulty(g.papers, rows, g.knownItems(), nil)
	if err != nil {
		return Level{}, err
	}
	return Level{
		Class: class, Term: g.groups[0].term, Ability: fit.Classes[0], Usual: g.groups[0].usual(),
		Spread: fit.AbilitySD, Pupils: g.pupils, Answers: g.answers,
	}, nil
}

// knownItems is the belief that items are as difficult as the bank says, give or take what
// items differ from their traits.
func (l *gathered) knownItems() evidence.Belief {
	const sure = 1e-4 // the standard error of the factor 1: none that would matter
	belief := evidence.Usual([]float64{1})
	belief.Weights[0].SE = sure
	belief.DeviationItems = math.Inf(1)
	belief.ClassUsual = l.usual()
	return belief
}

func difficultyNow(item results.Item, b *bank.Bank) (standards.Difficulty, error) {
	here, ok, err := inBank(item, b)
	if err != nil || !ok {
		return item.Difficulty, err
	}
	return here.Difficulty(), nil
}

// latestTerm is the papers of the class in the term of its latest quiz.
func latestTerm(class string, quizzes []results.Quiz, papers []results.Paper) (list []results.Paper) {
	week := map[string]string{}
	for _, quiz := range quizzes {
		week[quiz.ID] = quiz.Week
	}
	latest := ""
	for _, p := range papers {
		if p.Class == class {
			latest = max(latest, week[p.Quiz])
		}
	}
	for _, p := range papers {
		if p.Class == class && Term(week[p.Quiz]) == Term(latest) {
			list = append(list, p)
		}
	}
	return list
}

// Aim is the ability to aim a quiz at, in thousandths of a logit on the one scale, so that the class as a whole
// gets so many in 100 right. It is a little below the class's own level where most is to be
// right: pupils differ, and the weak ones lose more than the strong ones can gain. The share
// lies between 1 and 99.
func (l Level) Aim(shareRight int) int {
	share := float64(shareRight) / 100
	typical := math.Log(share / (1 - share))
	// A pupil's logistic curve, averaged over a normal class, is nearly the curve flattened by
	// √(1 + (16√3/15π)² sd²) (Johnson, Kotz & Balakrishnan 1995, Continuous Univariate
	// Distributions 2, from memory; within .01).
	c := 16 * math.Sqrt(3) / (15 * math.Pi)
	flattened := math.Sqrt(1 + c*c*l.Spread*l.Spread)
	return int(math.Round(1000 * (l.Ability.Value - typical*(flattened-1))))
}

// Logits from which a class is a little off its grade's usual, off it, and far off it: common
// practice, no source. Half a logit turns 75 in 100 right into some 65 or 83.
const (
	littleOff = 0.25
	off       = 0.75
	farOff    = 1.5
)

// Words says where the class stands beside the usual of its grade, as a teacher would.
func (l Level) Words() string { return beside(l.Ability.Value - l.Usual) }

// WordsIn is Words in a language ("en" or "es"; any other reads as "en").
func (l Level) WordsIn(lang string) string {
	if lang == "es" {
		return besideSpanish[l.Words()]
	}
	return l.Words()
}

// Words says where the class stood beside the usual of its grade, as a teacher would.
func (c Class) Words() string { return beside(c.Level.Value - c.Usual) }

// besideSpanish is what beside says, in Spanish.
var besideSpanish = map[string]string{
	"about the grade's usual":          "más o menos como es usual en el grado",
	"a little above the grade's usual": "un poco arriba de lo usual en el grado",
	"above the grade's usual":          "arriba de lo usual en el grado",
	"well above the grade's usual":     "muy arriba de lo usual en el grado",
	"a little below the grade's usual": "un poco abajo de lo usual en el grado",
	"below the grade's usual":          "abajo de lo usual en el grado",
	"well below the grade's usual":     "muy abajo de lo usual en el grado",
}

func beside(by float64) string {
	side := "above"
	if by < 0 {
		side = "below"
	}
	switch size := math.Abs(by); {
	case size < littleOff:
		return "about the grade's usual"
	case size < off:
		return "a little " + side + " the grade's usual"
	case size < farOff:
		return side + " the grade's usual"
	}
	return "well " + side + " the grade's usual"
}
