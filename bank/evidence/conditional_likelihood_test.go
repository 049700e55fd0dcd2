package evidence

import (
	"errors"
	"math"
)

// errNotLinked is returned for items whose difficulties the rows can't compare.
var errNotLinked = errors.New("these items can't be compared: some were never right where others were wrong, or the other way round")

// Conditional finds difficulties by conditional maximum likelihood: it asks which items a
// pupil got right, given how many, and so needs to suppose nothing about abilities (Andersen
// 1972, J. Royal Stat. Soc. B 34). Traits and beliefs play no part. It is a check on
// Difficulty for items that many pupils answered; their difficulties sum to 0, and the
// log-likelihood is the conditional one. Items nobody answered come out as NaN.
//
// All items answered must hang together: from any one to any other there must be a chain of
// items, each right on some paper where the next is wrong. When they don't, it returns an error.
//
// The difficulties come closer step by step, each moved by the log of expected over observed
// right answers (Fischer 1974, Einführung in die Theorie psychologischer Tests).
func Conditional(rows []Row) (difficulties []float64, logLikelihood float64, err error) {
	stats := counts(rows)
	if !linked(rows, stats) {
		return nil, 0, errNotLinked
	}
	difficulties = make([]float64, len(stats))
	for step := 1.0; step > 1e-10; {
		var expected []float64
		expected, logLikelihood = conditionally(rows, difficulties)
		step = 0
		for i, s := range stats {
			if s.Answers > 0 {
				move := math.Log(expected[i] / float64(s.Right))
				difficulties[i] += move
				step = math.Max(step, math.Abs(move))
			}
		}
		centre(difficulties, stats)
	}
	for i, s := range stats {
		if s.Answers == 0 {
			difficulties[i] = math.NaN()
		}
	}
	return difficulties, logLikelihood, nil
}

// conditionally is the expected right answers by item, among pupils with as many right on the
// same items, and the log-likelihood of the rows.
func conditionally(rows []Row, difficulty []float64) (expected []float64, logLikelihood float64) {
	expected = make([]float64, len(difficulty))
	for _, row := range rows {
		items, ease, right := answeredEase(row.Marks, difficulty)
		all, pupils := symmetric(ease)[right], float64(row.Pupils)
		for k, i := range items {
			if right > 0 {
				others := append(append([]float64(nil), ease[:k]...), ease[k+1:]...)
				expected[i] += pupils * ease[k] * symmetric(others)[right-1] / all
			}
			logLikelihood -= pupils * row.Marks[i].point() * difficulty[i]
		}
		logLikelihood -= pupils * math.Log(all)
	}
	return expected, logLikelihood
}

// answeredEase lists the items answered, exp(-difficulty) of each, and the number right.
func answeredEase(marks []Mark, difficulty []float64) (items []int, ease []float64, right int) {
	for i, mark := range marks {
		if mark != Missing {
			items, ease = append(items, i), append(ease, math.Exp(-difficulty[i]))
		}
		if mark == Right {
			right++
		}
	}
	return items, ease, right
}

// symmetric returns the elementary symmetric functions of the values: at r, the sum over all
// choices of r of them of their product. It takes them in one by one.
func symmetric(values []float64) []float64 {
	sums := make([]float64, len(values)+1)
	sums[0] = 1
	for k, v := range values {
		for r := k + 1; r > 0; r-- {
			sums[r] += v * sums[r-1]
		}
	}
	return sums
}

// centre makes the difficulties of the answered items sum to 0.
func centre(difficulty []float64, stats []ItemStats) {
	mean, n := 0.0, 0.0
	for i, s := range stats {
		if s.Answers > 0 {
			mean += difficulty[i]
			n++
		}
	}
	for i := range difficulty {
		difficulty[i] -= mean / n
	}
}

// linked says whether a chain of right beside wrong leads from every answered item to every
// other (Fischer 1981, Psychometrika 46).
func linked(rows []Row, stats []ItemStats) bool {
	beats := make([][]bool, len(stats))
	for i := range beats {
		beats[i] = make([]bool, len(stats))
	}
	for _, row := range rows {
		for i, a := range row.Marks {
			for j, b := range row.Marks {
				beats[i][j] = beats[i][j] || a == Right && b == Wrong && row.Pupils > 0
			}
		}
	}
	for k := range beats {
		for i := range beats {
			for j := range beats {
				beats[i][j] = beats[i][j] || beats[i][k] && beats[k][j]
			}
		}
	}
	for i, a := range stats {
		for j, b := range stats {
			if i != j && a.Answers > 0 && b.Answers > 0 && !beats[i][j] {
				return false
			}
		}
	}
	return len(stats) > 0
}
