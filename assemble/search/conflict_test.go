package search_test

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"testing"
	"time"

	"evenhand/assemble/search"

	"pgregory.net/rapid"
)

// plan has three rows of four items each, all of them in quota 0.
func plan() *search.Model {
	m := &search.Model{Forms: 1,
		Rows:   []search.Row{{Name: "a", Count: 2}, {Name: "b", Count: 2}, {Name: "c", Count: 2}},
		Quotas: []search.Quota{{Name: "q", AtLeast: 0, AtMost: 12}, {Name: "r", AtLeast: 0, AtMost: 12}}}
	for i := range 12 {
		it := search.Item{Fits: []search.Fit{{Row: i / 4, Seconds: 60}}, Quotas: []int{0}}
		if i < 4 {
			it.Quotas = []int{0, 1}
		}
		m.Items = append(m.Items, it)
	}
	return m
}

func TestConflicts(t *testing.T) {
	for _, c := range []struct {
		name  string
		spoil func(m *search.Model)
		rules []search.Rule
		ways  []search.Way // of the first rule
	}{
		{"row asks for more than there is", func(m *search.Model) { m.Rows[1].Count = 5 },
			[]search.Rule{{Kind: search.RowCount, Index: 1}},
			[]search.Way{{Rule: search.Rule{Kind: search.RowCount, Index: 1}, From: 5, To: 4, Enough: true}}},
		{"too little time", func(m *search.Model) { m.MaxSeconds = 300 },
			[]search.Rule{{Kind: search.Minutes}, {Kind: search.RowCount, Index: 0}, {Kind: search.RowCount, Index: 1}, {Kind: search.RowCount, Index: 2}},
			[]search.Way{{Rule: search.Rule{Kind: search.Minutes}, From: 300, To: 360, Enough: true}}},
		{"quota that only one row can meet", func(m *search.Model) { m.Quotas[1].AtLeast = 3 },
			[]search.Rule{{Kind: search.AtLeast, Index: 1}, {Kind: search.RowCount, Index: 0}},
			[]search.Way{{Rule: search.Rule{Kind: search.AtLeast, Index: 1}, From: 3, To: 2, Enough: true}}},
		{"quota that one row breaks", func(m *search.Model) { m.Quotas[1].AtMost = 1 },
			[]search.Rule{{Kind: search.AtMost, Index: 1}, {Kind: search.RowCount, Index: 0}},
			[]search.Way{{Rule: search.Rule{Kind: search.AtMost, Index: 1}, From: 1, To: 2, Enough: true}}},
		{"more forms than items", func(m *search.Model) { m.Forms = 3 },
			[]search.Rule{{Kind: search.Once}, {Kind: search.RowCount, Index: 2}},
			[]search.Way{{Rule: search.Rule{Kind: search.Once}, From: 3, To: 2, Enough: true}}},
		{"all of a row clash", func(m *search.Model) {
			for i := range 4 {
				m.Items[i].Clashes = []int{9}
			}
		}, []search.Rule{{Kind: search.Clash}, {Kind: search.RowCount, Index: 0}},
			[]search.Way{{Rule: search.Rule{Kind: search.Clash}, From: 1, To: 0, Enough: true}}},
		{"fixed items clash", func(m *search.Model) {
			m.Items[0].Clashes, m.Items[5].Clashes = []int{9}, []int{9}
			m.Fixed = []search.Fixed{{Item: 0, Row: 0}, {Item: 5, Row: 1}}
		}, []search.Rule{{Kind: search.Clash}, {Kind: search.FixedItem, Index: 0}, {Kind: search.FixedItem, Index: 1}},
			[]search.Way{{Rule: search.Rule{Kind: search.Clash}, From: 1, To: 0, Enough: true}}},
		{"more shared than items", func(m *search.Model) { m.Forms, m.Shared = 2, 7 },
			[]search.Rule{{Kind: search.SharedCount}, {Kind: search.RowCount, Index: 0}, {Kind: search.RowCount, Index: 1}, {Kind: search.RowCount, Index: 2}},
			[]search.Way{{Rule: search.Rule{Kind: search.SharedCount}, From: 7, To: 6, Enough: true}}},
	} {
		t.Run(c.name, func(t *testing.T) {
			m := plan()
			c.spoil(m)
			rules, err := search.Conflict(context.Background(), m, search.Options{})
			if err != nil || !slices.Equal(rules, c.rules) {
				t.Fatalf("conflict %v, %v; want %v", rules, err, c.rules)
			}
			for _, want := range c.ways {
				if way, err := search.Loosen(context.Background(), m, want.Rule, nil); err != nil || way != want {
					t.Errorf("way %+v, %v; want %+v", way, err, want)
				}
			}
		})
	}
}

func TestTwoConflictsAtOnce(t *testing.T) {
	m := plan()
	m.Rows[0].Count, m.Rows[1].Count = 5, 6
	way, err := search.Loosen(context.Background(), m, search.Rule{Kind: search.RowCount, Index: 0}, nil)
	if err != nil || way.Enough {
		t.Errorf("loosening one of two rows should not be enough: %+v, %v", way, err)
	}
}

// A way that may not be taken is passed over for the next nearest.
func TestWaysThatMayBe(t *testing.T) {
	m := plan()
	m.Rows[1].Count = 5
	rule := search.Rule{Kind: search.RowCount, Index: 1}
	odd := func(w search.Way, changed *search.Model) bool { return w.To%2 == 1 && changed.Rows[1].Count == w.To }
	way, err := search.Loosen(context.Background(), m, rule, odd)
	if want := (search.Way{Rule: rule, From: 5, To: 3, Enough: true}); err != nil || way != want {
		t.Errorf("way %+v, %v; want %+v", way, err, want)
	}
}

func TestNoConflict(t *testing.T) {
	if rules, err := search.Conflict(context.Background(), plan(), search.Options{}); !errors.Is(err, search.ErrPossible) {
		t.Errorf("a possible plan has the conflict %v, %v", rules, err)
	}
}

// TestWaysOut checks every way out of random conflicts: the loosened model is
// possible by brute force, and one step less is not; where none is said to be enough, none is.
func TestWaysOut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := tiny(t)
		if feasible(m) {
			t.Skip("possible")
		}
		o := search.Options{Limit: 20 * time.Second}
		rules, err := search.Conflict(context.Background(), m, o)
		if err != nil || len(rules) == 0 {
			t.Fatal(rules, err)
		}
		for _, rule := range rules {
			way, err := search.Loosen(context.Background(), m, rule, nil)
			if err != nil {
				t.Fatal(err)
			}
			if way.Enough && !feasible(with(m, way.Rule, way.To)) {
				t.Errorf("%+v is said to be enough", way)
			}
			step := 1
			if way.To < way.From {
				step = -1
			}
			if way.Enough && way.To-step != way.From && feasible(with(m, way.Rule, way.To-step)) {
				t.Errorf("%+v goes too far", way)
			}
			for _, n := range loosest(m, rule) {
				if !way.Enough && feasible(with(m, rule, n)) {
					t.Errorf("%+v is said not to be enough; %d is", way, n)
				}
			}
		}
	})
}

// loosest gives numbers of a rule one of which helps if any does.
func loosest(m *search.Model, rule search.Rule) []int {
	switch rule.Kind {
	case search.Minutes, search.AtMost:
		return []int{1_000_000}
	case search.Once:
		return []int{1}
	case search.RowCount, search.SharedCount:
		var all []int
		for n := range len(m.Items) + 1 {
			all = append(all, n)
		}
		return all
	}
	return []int{0}
}

// with sets the number of a rule, or takes the rule out where it has none.
func with(m *search.Model, rule search.Rule, number int) *search.Model {
	c := *m
	c.Rows, c.Quotas, c.Items, c.Fixed = slices.Clone(m.Rows), slices.Clone(m.Quotas), slices.Clone(m.Items), slices.Clone(m.Fixed)
	switch rule.Kind {
	case search.RowCount:
		c.Rows[rule.Index].Count = number
	case search.AtLeast:
		c.Quotas[rule.Index].AtLeast = number
	case search.AtMost:
		c.Quotas[rule.Index].AtMost = number
	case search.Minutes:
		c.MaxSeconds = number
	case search.Once:
		c.Forms = number
		c.Fixed = slices.DeleteFunc(c.Fixed, func(x search.Fixed) bool { return x.Form >= number })
	case search.SharedCount:
		c.Shared = number
	case search.Clash:
		for i := range c.Items {
			c.Items[i].Clashes = nil
		}
	case search.SameCount: // a set that no item belongs to asks nothing
		for i := range c.Items {
			c.Items[i].Same = slices.DeleteFunc(slices.Clone(c.Items[i].Same), func(s int) bool { return s == rule.Index })
		}
	case search.FixedItem:
		c.Fixed = slices.Delete(c.Fixed, rule.Index, rule.Index+1)
	default:
		panic(fmt.Sprintf("a rule of a kind that this test doesn't know: %+v", rule))
	}
	return &c
}

// TestSharedItemLeavesRoomForFixed holds a plan that once came out as possible
// with two items in a row of one: the shared item has to stand in the row that
// the fixed one leaves free.
func TestSharedItemLeavesRoomForFixed(t *testing.T) {
	m := &search.Model{Forms: 2, Shared: 1, MaxSeconds: 179, Rows: []search.Row{{Name: "a", Count: 1}, {Name: "b", Count: 1}},
		Quotas: []search.Quota{{Name: "q", AtLeast: 1, AtMost: 1}}, Fixed: []search.Fixed{{Item: 3, Form: 0, Row: 1}}}
	m.Items = []search.Item{
		{Fits: []search.Fit{{Row: 1, Seconds: 75}}}, {Fits: []search.Fit{{Row: 0, Seconds: 90}, {Row: 1, Seconds: 105}}},
		{Fits: []search.Fit{{Row: 1, Seconds: 45}}, Quotas: []int{0}}, {Fits: []search.Fit{{Row: 1, Seconds: 45}, {Row: 0, Seconds: 45}}},
		{Fits: []search.Fit{{Row: 0, Seconds: 30}, {Row: 1, Seconds: 75}}}, {Fits: []search.Fit{{Row: 0, Seconds: 105}}, Quotas: []int{0}},
	}
	if got := answer(t, m, 1); got != brute(m) || got != -1 {
		t.Errorf("objective %d, brute force %d", got, brute(m))
	}
	way, err := search.Loosen(context.Background(), m, search.Rule{Kind: search.Minutes}, nil)
	if err != nil || !way.Enough || way.To != 180 {
		t.Errorf("way %+v, %v; 180 seconds are enough", way, err)
	}
}
