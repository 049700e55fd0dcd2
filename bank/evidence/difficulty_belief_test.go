package evidence_test

import (
	"math"
	"reflect"
	"runtime"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"evenhand/bank/evidence"
)

func fit(t *testing.T, w *world, papers *evidence.Papers, belief evidence.Belief) *evidence.Fit {
	t.Helper()
	f, err := evidence.Difficulty(papers, w.traits, belief, nil)
	if err != nil {
		t.Fatal(err)
	}
	return f
}

// Without papers the answer is the default table, as unsure as it was.
func TestNoPapersGiveTheDefaultTable(t *testing.T) {
	w := newWorld(1, 30)
	belief := evidence.Usual(defaults)
	f := fit(t, w, evidence.NewPapers(30), belief)
	for k, e := range f.Weights {
		near(t, "weight", e.Value, defaults[k], 1e-9)
		near(t, "standard error", e.SE, 0.5, 1e-9)
	}
	near(t, "deviation sd", f.DeviationSD, belief.DeviationSD, 1e-9)
	near(t, "ability sd", f.AbilitySD, belief.AbilitySD, 1e-9)
	for i, e := range f.Items {
		p := f.Predict(w.traits[i])
		near(t, "item, not predicted", e.Value, p.Value, 1e-9)
		near(t, "item's standard error", e.SE, p.SE, 1e-9)
		if e.Answers != 0 {
			t.Errorf("%d answers without papers", e.Answers)
		}
	}
}

// One class's quiz moves the table a little, many pupils' papers all the way.
func TestPapersOutweighTheDefaultTableBit(t *testing.T) {
	w := newWorld(2, 40)
	off := []float64{-2.4, -0.3, 0.2, -0.4} // all wrong for this world
	distance := func(f *evidence.Fit) (sum float64) {
		for k, e := range f.Weights[1:] {
			sum += math.Abs(e.Value - off[k+1])
		}
		return sum
	}
	few := distance(fit(t, w, w.school(t, 1, 3, 1, 5), evidence.Usual(off)))
	many := fit(t, w, w.school(t, 8, 100, 8, 10), evidence.Usual(off))
	if all := distance(many); few > all/2 || few == 0 {
		t.Errorf("three pupils moved the weights by %.3f, 800 by %.3f: want a little and a lot", few, all)
	}
	for k, e := range many.Weights {
		near(t, "weight after many papers", e.Value, w.weights[k], 4*e.SE)
	}
}

// A class that got everything right has a finite ability, and one that got nothing right too.
func TestClassThatGotEverythingRight(t *testing.T) {
	w := newWorld(3, 5)
	papers := evidence.NewPapers(5)
	all := []int{0, 1, 2, 3, 4}
	for range 20 {
		_ = papers.Add(0, evidence.Paper{Items: all, Right: []bool{true, true, true, true, true}})
		_ = papers.Add(1, evidence.Paper{Items: all, Right: make([]bool, 5)})
	}
	f := fit(t, w, papers, evidence.Usual(defaults))
	for c, e := range f.Classes {
		if math.IsNaN(e.Value) || math.Abs(e.Value) > 6 || !(e.SE > 0) {
			t.Errorf("class %d: %+v", c, e)
		}
	}
	if f.Classes[0].Value <= f.Classes[1].Value {
		t.Errorf("the class with all right stands at %v, with none at %v", f.Classes[0], f.Classes[1])
	}
}

// The same papers in another order, or the same pupils counted together, give the same fit.
func TestOrderAndCountingTogetherDoNotMatter(t *testing.T) {
	one, other := evidence.NewPapers(3), evidence.NewPapers(3)
	a := evidence.Paper{Items: []int{0, 1, 2}, Right: []bool{true, true, false}}
	b := evidence.Paper{Items: []int{2, 1}, Right: []bool{false, true}}
	for range 7 {
		_ = one.Add(0, a)
		_ = one.Add(1, b)
	}
	_ = other.AddAlike(7, 1, b)
	_ = other.AddAlike(7, 0, a)
	w := newWorld(4, 3)
	f, g := fit(t, w, one, evidence.Usual(defaults)), fit(t, w, other, evidence.Usual(defaults))
	for i := range f.Items {
		near(t, "difficulty", f.Items[i].Value, g.Items[i].Value, 1e-6)
		near(t, "standard error", f.Items[i].SE, g.Items[i].SE, 1e-6)
	}
}

func TestDifficultyRefuses(t *testing.T) {
	papers := evidence.NewPapers(2)
	for name, c := range map[string]struct {
		err  error
		want string
	}{
		"an item beyond the bank": {papers.Add(0, evidence.Paper{Items: []int{2}, Right: []bool{true}}), "item number 2"},
		"marks missing":           {papers.Add(0, evidence.Paper{Items: []int{0, 1}, Right: []bool{true}}), "one mark for each"},
		"no pupils":               {papers.AddAlike(0, 0), "at least one pupil"},
		"rows missing":            {refused(papers, [][]float64{{1}}, evidence.Usual([]float64{0})), "one row for each item"},
		"a trait too many":        {refused(papers, [][]float64{{1}, {1, 2}}, evidence.Usual([]float64{0})), "item 1 has 2 traits"},
		"a trait no number":       {refused(papers, [][]float64{{1}, {math.NaN()}}, evidence.Usual([]float64{0})), "not a number"},
		"a belief beyond doubt":   {refused(papers, [][]float64{{1}, {2}}, evidence.Belief{Weights: make([]evidence.Estimate, 1)}), "standard error above 0"},
		"no spread of ability":    {refused(papers, make([][]float64, 2), evidence.Belief{ClassSD: 1}), "ability sd 0"},
		"a level that is nothing": {refused(papers, [][]float64{{1}, {2}}, levelAt(math.NaN())), "the level is NaN"},
		"usual abilities missing": {refused(answered(t), [][]float64{{1}, {2}}, usualOf(0, 1)), "2 usual abilities for 1 groups"},
		"traits that are the same": {refused(answered(t), [][]float64{{1, 1}, {1, 1}}, evidence.NoBelief(2)),
			"can't be told apart"},
	} {
		if c.err == nil || !strings.Contains(c.err.Error(), c.want) {
			t.Errorf("%s: got %v, want an error with %q", name, c.err, c.want)
		}
	}
}

func levelAt(value float64) evidence.Belief {
	b := evidence.Usual([]float64{0})
	b.Level.Value = value
	return b
}

func usualOf(abilities ...float64) evidence.Belief {
	b := evidence.Usual([]float64{0})
	b.ClassUsual = abilities
	return b
}

func refused(papers *evidence.Papers, traits [][]float64, belief evidence.Belief) error {
	_, err := evidence.Difficulty(papers, traits, belief, nil)
	return err
}

func answered(t *testing.T) *evidence.Papers {
	papers := evidence.NewPapers(2)
	for _, right := range [][]bool{{true, false}, {false, true}, {true, true}} {
		if err := papers.AddAlike(5, 0, evidence.Paper{Items: []int{0, 1}, Right: right}); err != nil {
			t.Fatal(err)
		}
	}
	return papers
}

// Two classes that share no item are linked by the traits: the stronger class is found to be
// stronger, not its items easier.
func TestClassesLinkedByTraitsAlone(t *testing.T) {
	w := newWorld(9, 160)
	papers := evidence.NewPapers(160)
	for class, mean := range []float64{-0.75, 0.75} {
		for range 60 {
			form := make([]int, 40)
			for k, i := range w.rng.Perm(80)[:40] {
				form[k] = 80*class + i
			}
			if err := papers.Add(class, w.sit(mean+w.abilitySD*w.rng.NormFloat64(), form, nil)); err != nil {
				t.Fatal(err)
			}
		}
	}
	belief := evidence.Usual(defaults)
	belief.Level = evidence.Estimate{} // beside each other, wherever both stand
	f := fit(t, w, papers, belief)
	near(t, "weaker class", f.Classes[0].Value, -0.75, 3*f.Classes[0].SE)
	if f.Classes[0].SE > 0.25 {
		t.Errorf("standard error %.3f of the weaker class: the traits tell more than that", f.Classes[0].SE)
	}
}

// The same papers give the same numbers to the last bit, on one core or more.
func TestSameBytesOnAnyNumberOfCores(t *testing.T) {
	w := newWorld(6, 1000)
	papers := w.district(t, 1)
	many := fit(t, w, papers, evidence.Usual(defaults))
	defer runtime.GOMAXPROCS(runtime.GOMAXPROCS(1))
	if one := fit(t, w, papers, evidence.Usual(defaults)); !reflect.DeepEqual(one, many) {
		t.Error("another number of cores, other numbers")
	}
}

// Whatever few papers there are, every number is finite and no doubt is 0.
func TestFewPapersOfAnyKind(t *testing.T) {
	w := newWorld(8, 6)
	rapid.Check(t, func(t *rapid.T) {
		papers := evidence.NewPapers(6)
		mark := rapid.SampledFrom([]evidence.Mark{evidence.Missing, evidence.Wrong, evidence.Right})
		for range rapid.IntRange(0, 5).Draw(t, "papers") {
			marks := rapid.SliceOfN(mark, 6, 6).Draw(t, "marks")
			group := rapid.IntRange(0, 3).Draw(t, "group")
			if err := papers.Add(group, evidence.PaperOf([]int{0, 1, 2, 3, 4, 5}, marks)); err != nil {
				t.Fatal(err)
			}
		}
		f, err := evidence.Difficulty(papers, w.traits, evidence.Usual(defaults), nil)
		if err != nil {
			t.Fatal(err)
		}
		all := append(append([]evidence.Estimate{f.Predict(w.traits[0])}, f.Weights...), f.Classes...)
		for _, item := range f.Items {
			all = append(all, item.Estimate)
		}
		for _, e := range all {
			if math.IsNaN(e.Value) || math.Abs(e.Value) > 20 || !(e.SE > 0 && e.SE < 5) {
				t.Fatalf("%+v among %+v", e, all)
			}
		}
	})
}
