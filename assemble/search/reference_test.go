package search_test

import (
	"context"
	"errors"
	"fmt"
	"math/rand/v2"
	"testing"
	"time"

	"evenhand/assemble/search"
	"evenhand/testdata/outside"
)

// instances gives the shapes that the outside solvers check: 20 to 2,000
// items, 1 to 4 forms, loose, tight and impossible.
func instances() []shape {
	var list []shape
	for i := range 72 {
		s := shape{
			items: []int{20, 40, 80, 150, 300, 600, 1200, 2000}[i%8], forms: 1 + i%4, rows: 2 + i%5, perRow: 2 + i%2, quotas: 1 + i%3,
			grouped: i%5 == 0, centre: []int{-1100, -1100, -2400, 300, -1500}[i%5], uses: []int{0, 3, 5}[i/3%3],
			clashes: []int{0, 10, 40}[i/2%3], overlap: []int{0, 20, 60}[i%3], squeeze: []int{0, 50, 80, 100}[i/4%4], shared: []int{0, 0, 0, 1, 2}[i%5],
		}
		if s.items <= 40 { // few items: short forms, or nothing would fit
			s.rows, s.perRow, s.forms = 2, 2, 1+s.forms%2
		}
		if s.items >= 1200 {
			s.forms = min(s.forms, 2)
		}
		switch i % 8 {
		case 2, 5:
			s.hurry = 36 + i%3*3 // seconds are scarce
		case 7:
			s.clashes = 1
		}
		s.rare = i%9 == 4
		if s.forms > 2 { // or no general solver finishes
			s.rows, s.perRow, s.squeeze, s.overlap = 2+i%2, 2, min(s.squeeze, 60), s.overlap/2
		}
		if s.forms == 4 {
			s.centre = -1100
		}
		list = append(list, s)
	}
	return append(list, beyond()...)
}

// beyond gives shapes whose target is out of reach for every form, with
// difficulties item by item, and some where seconds are very scarce.
func beyond() []shape {
	var list []shape
	for i := range 4 {
		list = append(list, shape{items: 80 + 20*i, forms: 3 + i%2, rows: 3, perRow: 2 + i/2, quotas: 1,
			centre: []int{-2400, 300}[i/2], uses: []int{0, 3}[i%2], overlap: []int{60, 0}[i%2], squeeze: 60})
	}
	for i := range 4 {
		list = append(list, shape{items: 600, forms: 2 + i%3, rows: 6, perRow: 3, quotas: 1 + i%2, centre: -1100, uses: 5, squeeze: 50, hurry: 34 + i})
	}
	return list
}

// mostOpen is how many of the 80 instances the search may leave unproved in its time, on a machine that
// does other things, too: eight of them are made to be beyond it. What it leaves open must still hold
// every solver's optimum.
const mostOpen = 16

// leastConfirmed is how many a general solver has to prove as well, in its time.
const leastConfirmed = 45

// bounds searches an instance: the least objective that is possible and the one found, equal where that
// is proved; −1 for both where no choice keeps the rules.
func bounds(t *testing.T, m *search.Model) (low, objective int) {
	t.Helper()
	s, err := search.Solve(context.Background(), m, search.Options{Seed: 1, Limit: 20 * time.Second})
	if impossible := (*search.Impossible)(nil); errors.As(err, &impossible) {
		return -1, -1
	}
	if err != nil {
		t.Fatal(err)
	}
	if err := search.Verify(m, s); err != nil {
		t.Fatal(err)
	}
	return s.Bound, s.Objective
}

// TestReferences is the full check against outside solvers.
func TestReferences(t *testing.T) {
	outside.Full(t, "optima beside glpsol, cbc and scipy", "glpsol", "cbc", "python3")
	list := solvers()
	confirmed, late, impossible, open := 0, map[string]int{}, 0, 0
	for i, s := range instances() {
		t.Run(fmt.Sprint(i), func(t *testing.T) {
			m := draw(s, rand.New(rand.NewPCG(uint64(i), 7)))
			start := time.Now()
			low, objective := bounds(t, m)
			took := time.Since(start)
			if objective < 0 {
				impossible++
			}
			if low < objective {
				open++
			}
			path, agreed := writeModel(t, m, t.TempDir()), false
			words := ""
			for _, o := range list {
				limit := 20 * time.Second
				if agreed { // one that needs longer than another says little more
					limit = 4 * time.Second
				}
				v, err := o.run(path, limit)
				switch {
				case err != nil:
					t.Errorf("%s: %v", o.name, err)
				case v.late:
					late[o.name]++
					words += fmt.Sprint(" ", o.name, " late")
				case low < objective && !v.impossible && v.objective > float64(low)-.5 && v.objective < float64(objective)+.5:
					agreed = true
					words += fmt.Sprint(" ", o.name, " ", v.objective) // within what the search leaves open
				case !v.agrees(objective):
					t.Errorf("%s says %+v, the search %d to %d", o.name, v, low, objective)
				default:
					agreed = true
					words += fmt.Sprint(" ", o.name, " ", v.took.Round(time.Millisecond))
				}
			}
			if agreed && low == objective {
				confirmed++
			}
			t.Logf("%d items, %d forms: %d in %v;%s", s.items, s.forms, objective, took.Round(time.Microsecond*100), words)
		})
	}
	t.Logf("%d of %d confirmed by at least one solver, %d of all impossible, %d left open by the search; late: %v",
		confirmed, len(instances()), impossible, open, late)
	if open > mostOpen {
		t.Errorf("the search leaves %d instances open; %d are known to be too hard for it", open, mostOpen)
	}
	if confirmed < leastConfirmed {
		t.Errorf("only %d instances were confirmed; %d are wanted", confirmed, leastConfirmed)
	}
}
