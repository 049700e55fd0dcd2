package evidence_test

import (
	"math"
	"math/rand/v2"
	"testing"

	"evenhand/bank/evidence"
)

// defaults is an invented default table: a common level, a count 0-2, a yes or no, a size.
var defaults = []float64{-1.2, 0.45, 0.8, 0.3}

// world is an invented bank and its pupils with everything known, to see whether the fit
// finds it again. Its weights are about half a logit from the default table, as
// evidence.Usual believes.
type world struct {
	rng                    *rand.Rand
	weights                []float64
	traits                 [][]float64
	difficulty             []float64
	abilitySD, deviationSD float64
	level                  float64 // of the school, about the usual
}

func newWorld(seed uint64, items int) *world {
	w := &world{rng: rand.New(rand.NewPCG(seed, 5)), abilitySD: 1.1, deviationSD: 0.35}
	for _, usual := range defaults {
		w.weights = append(w.weights, usual+0.5*w.rng.NormFloat64())
	}
	for range items {
		w.addItem()
	}
	return w
}

func (w *world) addItem() {
	row := []float64{1, float64(w.rng.IntN(3)), float64(w.rng.IntN(2)), w.rng.NormFloat64()}
	b := w.rng.NormFloat64() * w.deviationSD
	for k, x := range row {
		b += w.weights[k] * x
	}
	w.traits, w.difficulty = append(w.traits, row), append(w.difficulty, b)
}

// form draws items without repeats.
func (w *world) form(size int) []int {
	seen, form := map[int]bool{}, []int{}
	for len(form) < size {
		if i := w.rng.IntN(len(w.traits)); !seen[i] {
			seen[i], form = true, append(form, i)
		}
	}
	return form
}

// sit lets a pupil answer a form; the marks overwrite right.
func (w *world) sit(ability float64, form []int, right []bool) evidence.Paper {
	right = right[:0]
	for _, i := range form {
		right = append(right, w.rng.Float64() < 1/(1+math.Exp(w.difficulty[i]-ability)))
	}
	return evidence.Paper{Items: form, Right: right}
}

// school has classes of pupils who each sit so many of a class's forms; neighbours share forms.
func (w *world) school(t testing.TB, classes, pupils, forms, size int) *evidence.Papers {
	t.Helper()
	papers := evidence.NewPapers(len(w.traits))
	pool := make([][]int, forms*2)
	for f := range pool {
		pool[f] = w.form(size)
	}
	for class := range classes {
		mean := w.classMean(class, classes)
		for range pupils {
			ability := mean + w.rng.NormFloat64()*w.abilitySD
			var sat []evidence.Paper
			for f := range forms {
				sat = append(sat, w.sit(ability, pool[2*f+w.rng.IntN(2)], nil))
			}
			if err := papers.Add(class, sat...); err != nil {
				t.Fatal(err)
			}
		}
	}
	return papers
}

func (w *world) classMean(class, classes int) float64 {
	return w.level + 0.4*(float64(class)-float64(classes-1)/2)
}

// district is 100 schools of 40 classes of 25: every week each school has two forms of 10
// from one bank of 20,000, and each pupil gets either; 36 weeks, 36 million answers.
func (w *world) district(t testing.TB, schools int) *evidence.Papers {
	const classes, pupils, weeks, size = 40, 25, 36, 10
	papers := evidence.NewPapers(len(w.traits))
	sat, marks := make([]evidence.Paper, weeks), make([]bool, weeks*size)
	for school := range schools {
		var pool [weeks][2][]int
		for week := range weeks {
			pool[week] = [2][]int{w.form(size), w.form(size)}
		}
		for class := range classes {
			mean := 0.4 * w.rng.NormFloat64()
			for range pupils {
				ability := mean + w.abilitySD*w.rng.NormFloat64()
				for week := range weeks {
					sat[week] = w.sit(ability, pool[week][w.rng.IntN(2)], marks[week*size:week*size])
				}
				if err := papers.Add(school*classes+class, sat...); err != nil {
					t.Fatal(err)
				}
			}
		}
	}
	return papers
}
