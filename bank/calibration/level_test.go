package calibration_test

import (
	"errors"
	"fmt"
	"math"
	"math/rand/v2"
	"path/filepath"
	"testing"

	"evenhand/bank"
	"evenhand/bank/calibration"
	"evenhand/bank/results"
	"evenhand/standards"
	"evenhand/standards/task"
)

// bankOf is a bank of the tasks, and its items.
func bankOf(t *testing.T, tasks []string) (*bank.Bank, []bank.Item) {
	t.Helper()
	b, err := bank.Create(filepath.Join(t.TempDir(), "team.bank"))
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { b.Close() })
	var items []bank.Item
	for _, asked := range tasks {
		items = append(items, bank.NewItem(task.MustParse(asked), "", bank.Origin{Kind: "written"}))
	}
	added, err := b.Add(items, "MK", friday)
	if err != nil {
		t.Fatal(err)
	}
	for i, a := range added {
		if items[i], err = b.Get(a.ID); err != nil {
			t.Fatal(err)
		}
	}
	return b, items
}

func quizWith(week string, items ...bank.Item) results.Quiz {
	form := results.Form{Name: "A"}
	for _, it := range items {
		form.Items = append(form.Items, results.Item{ID: it.ID, Skill: it.Skill, Asks: it.Task, Key: it.Key, Difficulty: it.Difficulty()})
	}
	return results.NewQuiz("Friday check", week, []results.Form{form})
}

// answersOf lets pupils of these abilities sit the quiz; truth is how hard its items are.
func answersOf(quiz results.Quiz, class string, abilities, truth []float64, rng *rand.Rand) (papers []results.Paper) {
	for p, ability := range abilities {
		paper := results.Paper{Quiz: quiz.ID, Class: class, Pupil: fmt.Sprintf("P%02d", p+1), Form: "A"}
		for _, d := range truth {
			state := results.Wrong
			if rng.Float64() < 1/(1+math.Exp(d-ability)) {
				state = results.Right
			}
			paper.Answers = append(paper.Answers, results.Answer{State: state})
		}
		papers = append(papers, paper)
	}
	return papers
}

// classAt is pupils whose abilities are normal about the mean.
func classAt(mean float64, pupils int, rng *rand.Rand) (abilities []float64) {
	for range pupils {
		abilities = append(abilities, mean+1.2*rng.NormFloat64())
	}
	return abilities
}

func difficultiesOf(items []bank.Item) (list []float64) {
	for _, it := range items {
		list = append(list, standards.OnScale(it.Skill, it.Difficulty()).Logits())
	}
	return list
}

// sums are additions of two-digit numbers with a number of regroupings each.
func sums(n int) (tasks []string) {
	for a := 11; len(tasks) < n; a += 3 {
		for b := a + 1; b < 60 && len(tasks) < n; b += 7 {
			tasks = append(tasks, fmt.Sprintf("%d + %d = ?", a, b))
		}
	}
	return tasks
}

// grade2 is where a usual class of grade 2 stands.
var grade2 = standards.Level(2).Logits()

func TestLevelOfAClass(t *testing.T) {
	b, items := bankOf(t, sums(10))
	quiz, truth := quizWith("2026-W48", items...), difficultiesOf(items)
	held, runs := 0, 100
	for run := range runs {
		rng := rand.New(rand.NewPCG(uint64(run), 2))
		papers := answersOf(quiz, "2A", classAt(grade2-1.3, 24, rng), truth, rng)
		papers = append(papers, answersOf(quiz, "2B", classAt(grade2+1, 24, rng), truth, rng)...)
		level, err := calibration.LevelOf("2A", []results.Quiz{quiz}, papers, b)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(level.Ability.Value-grade2+1.3) <= 2*level.Ability.SE {
			held++
		}
		if level.Pupils != 24 || level.Answers != 240 || level.Class != "2A" || level.Term != "2026, weeks 32 to 53" {
			t.Fatalf("got %+v", level)
		}
	}
	if held < 92 {
		t.Errorf("the class is found within two standard errors in %d of %d runs", held, runs)
	}
}

func TestLevelIsThatOfTheLatestTerm(t *testing.T) {
	b, items := bankOf(t, sums(10))
	rng, truth := rand.New(rand.NewPCG(1, 2)), difficultiesOf(items)
	autumn, winter := quizWith("2026-W48", items...), quizWith("2027-W03", items...)
	papers := append(answersOf(winter, "2A", classAt(grade2+1.5, 40, rng), truth, rng), answersOf(autumn, "2A", classAt(grade2-1.5, 40, rng), truth, rng)...)
	level, err := calibration.LevelOf("2A", []results.Quiz{autumn, winter}, papers, b)
	if err != nil || level.Ability.Value < grade2+0.7 || level.Term != "2027, weeks 01 to 13" {
		t.Errorf("got %+v, %v; want the term in which the class is stronger", level, err)
	}
	var none calibration.NoPapersError
	if _, err := calibration.LevelOf("2C", []results.Quiz{autumn, winter}, papers, b); !errors.As(err, &none) || none.Class != "2C" {
		t.Errorf("a class without papers: %v", err)
	}
}

// The quiz at which the class is aimed is one that it gets so many in 100 right of, by
// numerical integration over its pupils.
func TestAimIsAtTheWholeClass(t *testing.T) {
	for _, share := range []int{10, 50, 65, 75, 85, 95} {
		for _, spread := range []float64{.1, .8, 1.2, 1.8} {
			level := calibration.Level{Spread: spread}
			level.Ability.Value = -1.3
			d := float64(level.Aim(share)+int(standards.DifficultyFor(float64(share)/100))) / 1000
			sum, all := 0.0, 0.0
			for z := -8.0; z <= 8; z += .01 {
				mass := math.Exp(-z * z / 2)
				sum += mass / (1 + math.Exp(d-level.Ability.Value-spread*z))
				all += mass
			}
			if got := 100 * sum / all; math.Abs(got-float64(share)) > 1.5 {
				t.Errorf("aimed at %d in 100 with a spread of %v, the class gets %.1f", share, spread, got)
			}
		}
	}
}

func TestLevelInWords(t *testing.T) {
	for by, want := range map[float64]string{
		0: "about the grade's usual", -.2: "about the grade's usual", .3: "a little above the grade's usual",
		-.6: "a little below the grade's usual", -1.3: "below the grade's usual", 1.8: "well above the grade's usual",
	} {
		level := calibration.Level{Usual: .4}
		level.Ability.Value = .4 + by
		if got := level.Words(); got != want {
			t.Errorf("%v logits off the usual is %q, want %q", by, got, want)
		}
	}
}

func TestTerms(t *testing.T) {
	for week, want := range map[string]string{
		"2026-W48": "2026, weeks 32 to 53", "2026-W53": "2026, weeks 32 to 53", "2026-W32": "2026, weeks 32 to 53",
		"2026-W31": "2026, weeks 14 to 31", "2026-W14": "2026, weeks 14 to 31", "2026-W13": "2026, weeks 01 to 13", "": "",
	} {
		if got := calibration.Term(week); got != want {
			t.Errorf("%q is in %q, want %q", week, got, want)
		}
	}
}
