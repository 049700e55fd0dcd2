package calibration_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"

	"evenhand/bank/calibration"
	"evenhand/bank/results"
)

// What the papers of de Chiusole & Stefanutti (2013) say by the Rasch model: the difficulties
// of their eight subtractions, sum zero, in the order of the list above, and the spread of the
// pupils' abilities.
var (
	raschDifficulties = []float64{-1.1487, -.3028, -.2392, -.2392, -.0031, .2844, .2348, 1.4138}
	raschSpread       = 1.419
)

// perRegrouping is the least-squares slope of those difficulties, beside that of a zero crossed.
const perRegrouping = .444

// sit are the papers of 294 pupils like those of the study, but for their level.
func sit(quiz results.Quiz, level float64, rng *rand.Rand) (papers []results.Paper) {
	for p := range 294 {
		ability := level + raschSpread*rng.NormFloat64()
		paper := results.Paper{Quiz: quiz.ID, Class: "3B", Pupil: fmt.Sprintf("P%03d", p+1), Form: "A"}
		for _, d := range raschDifficulties {
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

// Wherever a class stands, its papers say of a regrouping what it weighs. The pupils of the
// study themselves stood some two logits above their subtractions.
func TestAStrongerClassDoesNotMakeRegroupingEasy(t *testing.T) {
	var tasks []string
	for _, s := range subtractions {
		tasks = append(tasks, s.task+" = ?")
	}
	quiz := quizOf("2026-W48", tasks)
	usual := 0.0
	for _, level := range []float64{0, -1.5, -1, 1, 1.5, 2.5} {
		held, sum, doubt := 0, 0.0, 0.0
		for run := range 100 {
			papers := sit(quiz, level, rand.New(rand.NewPCG(uint64(run), 294)))
			learnt, err := calibration.Learn([]results.Quiz{quiz}, papers, nil)
			if err != nil {
				t.Fatal(err)
			}
			for _, w := range learnt.Weights {
				if w.Name == "regroups" {
					sum, doubt = sum+w.Learnt.Value/100, doubt+w.Learnt.SE/100
					if math.Abs(w.Learnt.Value-perRegrouping) <= 2*w.Learnt.SE {
						held++
					}
				}
			}
		}
		t.Logf("level %+.1f: a regrouping weighs %.3f, give or take %.3f; %d of 100 within two standard errors", level, sum, doubt, held)
		if level == 0 {
			usual = sum
		}
		if math.Abs(sum-usual) > 0.05 {
			t.Errorf("level %+.1f: a regrouping weighs %.3f, but %.3f at the usual level", level, sum, usual)
		}
		if held < 95 {
			t.Errorf("level %+.1f: in %d of 100 runs a regrouping is found within two standard errors of %v, want 95", level, held, perRegrouping)
		}
	}
}
