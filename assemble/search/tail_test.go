package search_test

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strconv"
	"testing"
	"time"

	"evenhand/assemble/search"
	"evenhand/testdata/outside"
)

// plausible draws a hard plan as a teacher might: 3 to 6 forms of 10 to 20
// items, a bank of 100 to 1,000 with a measured difficulty each, tight bands,
// quotas and minutes.
func plausible(seed uint64) *search.Model {
	r := rand.New(rand.NewPCG(seed, 2026))
	m := &search.Model{Forms: 3 + r.IntN(4), ShareRight: 65 + 5*r.IntN(4)}
	rows, size := 3+r.IntN(4), 10+r.IntN(11)
	left := size
	for i := range rows {
		n := max(1, left/(rows-i)+r.IntN(3)-1)
		if i == rows-1 {
			n = max(1, left)
		}
		m.Rows = append(m.Rows, search.Row{Name: fmt.Sprint("skill ", i+1), Count: n})
		left -= n
	}
	size = m.Size()
	items := max(100+r.IntN(900), 2*m.Forms*size)
	warm, stretch := size/5, size/6
	m.Quotas = []search.Quota{
		{Name: "warm-up", AtLeast: warm, AtMost: warm + 1 + r.IntN(2)}, {Name: "stretch", AtLeast: stretch, AtMost: stretch + 1},
		{Name: "regroups twice", AtLeast: size / 6, AtMost: size/6 + 1 + r.IntN(2)}, {Name: "crosses", AtLeast: size / 8, AtMost: size/8 + r.IntN(2)},
	}
	if r.IntN(2) == 0 {
		m.Same = []search.Same{{Name: "regroups"}}
	}
	uses, centre, seconds := r.IntN(6), -1300+r.IntN(500), 0
	for i := range items {
		row := r.IntN(rows)
		d := centre + 150*(row-rows/2) + int(r.NormFloat64()*800)
		it := search.Item{Name: fmt.Sprint(i), Points: points(d), Uses: r.IntN(uses + 1), Clashes: []int{row*1000 + r.IntN(40), 10_000 + r.IntN(items)}}
		it.Fits = []search.Fit{{Row: row, Seconds: 20 + 5*r.IntN(9)}}
		if r.IntN(8) == 0 {
			if other := r.IntN(rows); other != row {
				it.Fits = append(it.Fits, search.Fit{Row: other, Seconds: 20 + 5*r.IntN(9)})
			}
		}
		seconds += it.Fits[0].Seconds
		if d < -1735 {
			it.Quotas = append(it.Quotas, 0)
		}
		if d > -619 {
			it.Quotas = append(it.Quotas, 1)
		}
		if r.IntN(5) == 0 {
			it.Quotas = append(it.Quotas, 2)
			if len(m.Same) > 0 {
				it.Same = []int{0}
			}
		}
		if r.IntN(7) == 0 {
			it.Quotas = append(it.Quotas, 3)
		}
		m.Items = append(m.Items, it)
	}
	m.MaxSeconds = seconds / items * size * (85 + r.IntN(25)) / 100 / 60 * 60
	return m
}

// TestTail compares hard plans with a general solver, each in its time: what that proves in a minute is proved
// here in ten seconds, and no quiz is worse than the one it has by then. It wants a machine that does nothing else.
func TestTail(t *testing.T) {
	n, err := strconv.Atoi(outside.Named(t, "hard plans beside scipy's milp, a minute each at most", "EVENHAND_TAIL", "NUMBER"))
	if err != nil || n < 1 {
		t.Fatal("EVENHAND_TAIL is how many hard plans to compare, such as 20")
	}
	proved, worse, open := 0, 0, 0
	var ours, theirs []time.Duration
	for seed := range uint64(n) {
		t.Run(fmt.Sprint(seed), func(t *testing.T) {
			m := plausible(seed)
			start := time.Now()
			low, high := bounds(t, m, 1, 10*time.Second)
			took := time.Since(start)
			v, err := scipyMilp(writeModel(t, m, t.TempDir()), time.Minute)
			if err != nil {
				t.Fatal(err)
			}
			t.Logf("%d forms of %d from %d items: %d to %d in %v; HiGHS %+v", m.Forms, m.Size(), len(m.Items), low, high, took.Round(time.Millisecond), v)
			ours, theirs = append(ours, took), append(theirs, v.took)
			if low == high {
				proved++
			}
			switch known := !v.late || v.found; {
			case v.impossible != (high < 0) && !v.late:
				t.Errorf("HiGHS says %+v, the search %d to %d", v, low, high)
			case known && v.objective < float64(low)-.5:
				t.Errorf("HiGHS has %v; the search proves %d", v.objective, low)
			case known && v.objective < float64(high)-.5:
				worse++
				t.Errorf("HiGHS has a better quiz: %v instead of %d", v.objective, high)
			}
			if !v.late && low < high {
				open++
				t.Errorf("HiGHS proves in %v what is open here: %d to %d", v.took, low, high)
			}
		})
	}
	slices.Sort(ours)
	slices.Sort(theirs)
	t.Logf("%d of %d plans: %d proved, %d worse than HiGHS in a minute, %d proved by it alone; median %v, HiGHS %v",
		len(ours), n, proved, worse, open, ours[len(ours)/2], theirs[len(theirs)/2])
}
