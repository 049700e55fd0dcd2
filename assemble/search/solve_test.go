package search_test

import (
	"context"
	"errors"
	"math"
	"math/rand/v2"
	"reflect"
	"testing"
	"time"

	"evenhand/assemble/search"

	"pgregory.net/rapid"
)

// tiny draws a model that brute force can finish.
func tiny(t *rapid.T) *search.Model {
	s := shape{
		items: rapid.IntRange(0, 9).Draw(t, "items"), forms: rapid.IntRange(1, 2).Draw(t, "forms"),
		rows: rapid.IntRange(1, 3).Draw(t, "rows"), perRow: 1, quotas: rapid.IntRange(0, 2).Draw(t, "quotas"),
		grouped: rapid.Bool().Draw(t, "grouped"), centre: rapid.IntRange(-2500, 0).Draw(t, "centre"),
		uses: rapid.IntRange(0, 4).Draw(t, "uses"), clashes: rapid.SampledFrom([]int{0, 20, 60, 100}).Draw(t, "clashes"),
		overlap: rapid.SampledFrom([]int{0, 50, 100}).Draw(t, "overlap"), squeeze: rapid.IntRange(0, 100).Draw(t, "squeeze"),
		shared: rapid.IntRange(0, 2).Draw(t, "shared"), same: rapid.IntRange(0, 2).Draw(t, "same"), noMark: rapid.IntRange(0, 4).Draw(t, "mark") == 0,
	}
	r := rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "draw"), 1))
	m := draw(s, r)
	for i := range m.Rows {
		m.Rows[i].Count = rapid.IntRange(0, 2).Draw(t, "count")
	}
	if len(m.Items) > 0 && rapid.Bool().Draw(t, "fix") {
		i := r.IntN(len(m.Items))
		m.Fixed = []search.Fixed{{Item: i, Form: r.IntN(m.Forms+1) - 1, Row: m.Items[i].Fits[0].Row}}
	}
	return m
}

// answer solves, verifies and gives the objective, or -1 if impossible.
func answer(t rapid.TB, m *search.Model, seed uint64) int {
	low, objective := bounds(t, m, seed, 20*time.Second)
	if low != objective {
		t.Fatalf("not proved: objective %d, bound %d", objective, low)
	}
	return objective
}

// bounds searches for so long: the least objective that is possible and the one found, equal where that
// is proved; −1 for both where no choice keeps the rules, and beyond any where time ran out before either was known.
func bounds(t rapid.TB, m *search.Model, seed uint64, limit time.Duration) (low, objective int) {
	t.Helper()
	s, err := search.Solve(context.Background(), m, search.Options{Seed: seed, Limit: limit})
	if impossible := (*search.Impossible)(nil); errors.As(err, &impossible) {
		return -1, -1
	}
	if errors.Is(err, search.ErrNoTime) {
		return 0, math.MaxInt
	}
	if err != nil {
		t.Fatal(err)
	}
	if err := search.Verify(m, s); err != nil {
		t.Fatal(err)
	}
	return s.Bound, s.Objective
}

func TestBruteForceAgrees(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := tiny(t)
		if got, want := answer(t, m, 1), brute(m); got != want {
			t.Fatalf("objective %d, brute force %d", got, want)
		}
	})
}

// middling draws a model of a size that brute force can't do.
func middling(t *rapid.T) *search.Model {
	s := shape{
		items: rapid.IntRange(20, 120).Draw(t, "items"), forms: rapid.IntRange(1, 3).Draw(t, "forms"),
		rows: rapid.IntRange(2, 4).Draw(t, "rows"), perRow: 2, quotas: rapid.IntRange(0, 2).Draw(t, "quotas"),
		grouped: rapid.Bool().Draw(t, "grouped"), centre: rapid.SampledFrom([]int{-1100, -1100, -1600}).Draw(t, "centre"),
		uses: rapid.IntRange(0, 4).Draw(t, "uses"), clashes: rapid.SampledFrom([]int{0, 30}).Draw(t, "clashes"),
		overlap: rapid.SampledFrom([]int{0, 30}).Draw(t, "overlap"), squeeze: rapid.IntRange(0, 60).Draw(t, "squeeze"),
		shared: rapid.IntRange(0, 1).Draw(t, "shared"), same: rapid.IntRange(0, 1).Draw(t, "same"),
	}
	return draw(s, rand.New(rand.NewPCG(rapid.Uint64().Draw(t, "draw"), 2)))
}

// within searches for a short time: no choice has a smaller objective than low,
// and one has high. Both are beyond any where no choice keeps the rules; high is
// where none was found in time.
func within(t rapid.TB, m *search.Model, seed uint64) (low, high int) {
	if low, high = bounds(t, m, seed, 150*time.Millisecond); high < 0 {
		return math.MaxInt, math.MaxInt
	}
	return low, high
}

// TestLaws holds models of a size that brute force can't do to what must be so
// whatever the optimum is: neither the order of the items nor the seed changes it,
// and a looser rule doesn't raise it. Where an optimum is not proved in a moment, what
// is proved of it has to go with the others.
func TestLaws(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := middling(t)
		low, high := within(t, m, 1)
		same := func(what string, m *search.Model, seed uint64) {
			if l, h := within(t, m, seed); l > high || low > h {
				t.Fatalf("optimum from %d to %d, %s from %d to %d", low, high, what, l, h)
			}
		}
		same("with another seed", m, rapid.Uint64().Draw(t, "seed"))
		m.Items = rapid.Permutation(m.Items).Draw(t, "order")
		same("in another order", m, 1)
		switch rapid.IntRange(0, 4).Draw(t, "rule") {
		case 0:
			m.MaxSeconds += rapid.IntRange(1, 300).Draw(t, "seconds")
		case 1:
			for q := range m.Quotas {
				m.Quotas[q].AtLeast -= rapid.IntRange(0, 2).Draw(t, "less")
			}
		case 2:
			for q := range m.Quotas {
				m.Quotas[q].AtMost += rapid.IntRange(0, 2).Draw(t, "more")
			}
		case 3:
			for i := range m.Items {
				m.Items[i].Clashes = nil
			}
		case 4:
			m.Items = append(m.Items, m.Items[rapid.IntRange(0, len(m.Items)-1).Draw(t, "copy")])
		}
		if l, _ := within(t, m, 1); l > high {
			t.Fatalf("a choice has objective %d; with a looser rule none is said to be below %d", high, l)
		}
	})
}

func TestSameSeedSameQuiz(t *testing.T) {
	m := draw(shape{items: 400, forms: 3, rows: 4, perRow: 3, quotas: 2, uses: 3, clashes: 20, overlap: 20, squeeze: 40}, rand.New(rand.NewPCG(5, 5)))
	var first *search.Solution
	others := 0
	for _, seed := range []uint64{1, 1, 2, 3} {
		s, err := search.Solve(context.Background(), m, search.Options{Seed: seed})
		if err != nil {
			t.Fatal(err)
		}
		if first == nil {
			first = s
		}
		same := reflect.DeepEqual(first, s)
		if seed == 1 && !same {
			t.Error("the same seed gave another quiz")
		}
		if !same {
			others++
		}
	}
	if others == 0 {
		t.Error("no seed gave another quiz among equals")
	}
}

// What is found when the limit runs out keeps the rules, and its bound is one. A machine that is too slow
// to find anything gets twice the time until it has.
func TestLimitGivesBound(t *testing.T) {
	m := draw(shape{
		items: 150, forms: 4, rows: 4, perRow: 3, quotas: 3, centre: -2400, uses: 3, clashes: 10, overlap: 60, squeeze: 80,
	}, rand.New(rand.NewPCG(43, 7)))
	for limit := 300 * time.Millisecond; limit < 20*time.Second; limit *= 2 {
		switch _, objective := bounds(t, m, 0, limit); objective {
		case math.MaxInt:
			t.Logf("no quiz in %v", limit)
		case -1:
			t.Fatal("said to be impossible")
		default:
			return
		}
	}
	t.Error("no quiz was found in 20 s")
}

func TestStoppedBeforeItBegan(t *testing.T) {
	m := draw(shape{items: 50, forms: 2, rows: 2, perRow: 2}, rand.New(rand.NewPCG(1, 1)))
	ctx, cancel := context.WithCancel(context.Background())
	cancel()
	if _, err := search.Solve(ctx, m, search.Options{}); !errors.Is(err, search.ErrNoTime) {
		t.Fatalf("error %v instead of ErrNoTime", err)
	}
}

// TestEvenForms asks for two forms where the best choice can be split evenly.
func TestEvenForms(t *testing.T) {
	m := &search.Model{Forms: 2, Rows: []search.Row{{Name: "all", Count: 6}}, Balances: []string{"regroups", "crosses"}}
	for i := range 12 {
		it := search.Item{Points: points(10 * i), Fits: []search.Fit{{Row: 0}}}
		for b := range 2 {
			if i%(b+2) == 0 {
				it.Balances = append(it.Balances, b)
			}
		}
		m.Items = append(m.Items, it)
	}
	for seed := range uint64(20) {
		s, err := search.Solve(context.Background(), m, search.Options{Seed: seed})
		if err != nil {
			t.Fatal(err)
		}
		var counts [2][2]int
		for f, places := range s.Forms {
			for _, p := range places {
				for _, b := range m.Items[p.Item].Balances {
					counts[f][b]++
				}
			}
		}
		if counts[0] != counts[1] { // 6 and 4 items belong to the two sets
			t.Errorf("seed %d: counts %v", seed, counts)
		}
	}
}

// A hard plan takes minutes to prove. At once the search gives what it soon finds, without being stopped, and claims no more.
func TestAtOnce(t *testing.T) {
	m := plausible(4)
	s, err := search.Solve(context.Background(), m, search.Options{Seed: 1, AtOnce: true})
	if err != nil {
		t.Fatal(err)
	}
	if err := search.Verify(m, s); err != nil {
		t.Error(err)
	}
	if s.Proved || s.Bound >= s.Objective {
		t.Errorf("%d to %d, proved %v", s.Bound, s.Objective, s.Proved)
	}
}
