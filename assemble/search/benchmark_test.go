package search_test

import (
	"context"
	"fmt"
	"math/rand/v2"
	"os"
	"runtime"
	"slices"
	"strings"
	"testing"
	"time"

	"evenhand/assemble/search"
	"evenhand/testdata/outside"
)

// weekly draws the model of the benchmarks: two forms of 12 items from six
// rows, three quotas, 15 minutes. Grouped items have predicted difficulties,
// alike for like items; measured ones have each their own.
func weekly(items int, measured bool) *search.Model {
	r := rand.New(rand.NewPCG(uint64(items), 12))
	m := &search.Model{Forms: 2, ShareRight: 75, MaxSeconds: 900}
	for i := range 6 {
		m.Rows = append(m.Rows, search.Row{Name: fmt.Sprint("skill ", i+1), Count: 2})
	}
	m.Quotas = []search.Quota{{Name: "warm-up", AtLeast: 2, AtMost: 4}, {Name: "stretch", AtLeast: 1, AtMost: 2}, {Name: "regroups twice", AtLeast: 2, AtMost: 3}}
	for i := range items {
		m.Items = append(m.Items, weeklyItem(i, measured, r))
	}
	return m
}

func weeklyItem(i int, measured bool, r *rand.Rand) search.Item {
	row, step := r.IntN(6), r.IntN(12)
	d := -2200 + 100*row + 150*step
	it := search.Item{Uses: 1 + r.IntN(4), Clashes: []int{row*1000 + r.IntN(150)}}
	if measured {
		d += r.IntN(299) - 149
	}
	it.Points = points(d)
	it.Fits = []search.Fit{{Row: row, Seconds: 45 + 15*(step%4)}}
	switch {
	case d < -1700:
		it.Quotas = []int{0}
	case d > -500:
		it.Quotas = []int{1}
	}
	if step%3 == 2 {
		it.Quotas = append(it.Quotas, 2)
	}
	return it
}

func BenchmarkSolve(b *testing.B) {
	for _, items := range []int{1_000, 5_000, 20_000, 100_000, 1_000_000} {
		for _, measured := range []bool{false, true} {
			b.Run(fmt.Sprintf("%d/%s", items, kind(measured)), func(b *testing.B) {
				m := weekly(items, measured)
				b.ReportAllocs()
				for b.Loop() {
					s, err := search.Solve(context.Background(), m, search.Options{Seed: 1})
					if err != nil || !s.Proved {
						b.Fatal(s, err)
					}
				}
			})
		}
	}
}

func kind(measured bool) string {
	if measured {
		return "measured"
	}
	return "grouped"
}

// TestBenchmarks writes the comparison with the general solvers.
func TestBenchmarks(t *testing.T) {
	path := outside.Named(t, "times beside glpsol, cbc and scipy's milp, up to half an hour", "EVENHAND_BENCHMARKS", "FILE.md")
	list := solvers()
	var out strings.Builder
	heading(&out, list)
	for _, items := range []int{1_000, 5_000, 20_000, 100_000, 1_000_000} {
		for _, measured := range []bool{false, true} {
			compare(t, &out, list, items, measured)
			if err := os.WriteFile(path, []byte(out.String()), 0o644); err != nil {
				t.Fatal(err)
			}
		}
	}
}

func heading(out *strings.Builder, list []solver) {
	fmt.Fprintf(out, "## Beside general solvers\n\nTwo forms of 12 items from six rows, three quotas, clashes and 15 minutes, from a bank of so many items:\n")
	fmt.Fprintf(out, "\"grouped\" have predicted difficulties (like items are alike), \"measured\" have each their own, in thousandths of a logit.\n")
	fmt.Fprintf(out, "The general solvers read the very same model as an LP file, reading included, and get a minute; ours starts from the model in memory.\n")
	fmt.Fprintf(out, "Each time is the time to a proved optimum; ours is the median of 5 runs. All objectives agree, or the test fails.\n")
	fmt.Fprintf(out, "Solvers ran one after another in one run, on a machine that may have had other work: treat gaps under a third as equal.\n")
	fmt.Fprintf(out, "General solvers are left out above 20,000 items, where most of them need minutes.\n\n")
	fmt.Fprintf(out, "Machine: %s, %d cores, %s, %s/%s", cpu(), runtime.NumCPU(), runtime.Version(), runtime.GOOS, runtime.GOARCH)
	for _, o := range list {
		fmt.Fprintf(out, "; %s (%s)", o.name, o.version)
	}
	fmt.Fprintf(out, ".\n\nMade by `EVENHAND_BENCHMARKS=beside.md go test ./assemble/search -run TestBenchmarks -timeout 2h -v`.\n\n"+
		"| items | difficulties | objective | evenhand |")
	for _, o := range list {
		fmt.Fprintf(out, " %s |", o.name)
	}
	fmt.Fprintf(out, " best of them / evenhand |\n| ---: | --- | ---: | ---: |%s ---: |\n", strings.Repeat(" ---: |", len(list)))
}

func cpu() string {
	text, _ := os.ReadFile("/proc/cpuinfo")
	for line := range strings.Lines(string(text)) {
		if name, ok := strings.CutPrefix(line, "model name\t: "); ok {
			return strings.TrimSpace(name)
		}
	}
	return "unknown processor"
}

func compare(t *testing.T, out *strings.Builder, list []solver, items int, measured bool) {
	m := weekly(items, measured)
	var times []time.Duration
	objective := 0
	for range 5 {
		start := time.Now()
		objective = answer(t, m, 1)
		times = append(times, time.Since(start))
	}
	slices.Sort(times)
	ours, best := times[2], time.Duration(0)
	fmt.Fprintf(out, "| %d | %s | %d | %s |", items, kind(measured), objective, short(ours))
	path := ""
	if items <= 20_000 {
		path = writeModel(t, m, t.TempDir())
	}
	for _, o := range list {
		if path == "" {
			fmt.Fprint(out, " not run |")
			continue
		}
		v, err := o.run(path, time.Minute)
		switch {
		case err != nil:
			t.Errorf("%s: %v", o.name, err)
		case v.late:
			fmt.Fprint(out, " over 60 s |")
			continue
		case !v.agrees(objective):
			t.Errorf("%d items: %s says %+v, the search %d", items, o.name, v, objective)
		}
		fmt.Fprintf(out, " %s |", short(v.took))
		if best == 0 || v.took < best {
			best = v.took
		}
	}
	ratio := "-"
	if best > 0 {
		ratio = fmt.Sprintf("%.0f", float64(best)/float64(ours))
	}
	fmt.Fprintf(out, " %s |\n", ratio)
	t.Logf("%d %s: %v, best of the others %v", items, kind(measured), ours, best)
}

func short(d time.Duration) string {
	if d < time.Second {
		return fmt.Sprintf("%.1f ms", float64(d.Microseconds())/1000)
	}
	return fmt.Sprintf("%.1f s", d.Seconds())
}
