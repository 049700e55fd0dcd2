package search_test

import (
	"context"
	"errors"
	"evenhand/assemble/search"
	"math/rand/v2"
	"testing"
	"time"

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
		shared: rapid.IntRange(0, 2).Draw(t, "shared"),
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
	s, err := search.Solve(context.Background(), m, search.Options{Seed: seed, Limit: 20 * time.Second})
	if impossible := (*search.Impossible)(nil); errors.As(err, &impossible) {
		return -1
	}
	if err != nil {
		t.Fatal(err)
	}
	if err := search.Verify(m, s); err != nil {
		t.Fatal(err)
	}
	if !s.Proved {
		t.Fatalf("not proved: objective %d, bound %d", s.Objective, s.Bound)
	}
	return s.Objective
}

func TestBruteForceAgrees(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := tiny(t)
		if got, want := answer(t, m, 1), brute(m); got != want {
			t.Fatalf("objective %d, brute force %d", got, want)
		}
	})
}
