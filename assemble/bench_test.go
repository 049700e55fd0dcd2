package assemble_test

import (
	"context"
	"fmt"
	"os"
	"path/filepath"
	"strconv"
	"testing"

	"evenhand/assemble"
	"evenhand/assemble/plan"
	"evenhand/bank"
	"evenhand/bank/generate"
	"evenhand/standards"
)

// benchPlan is the shape of the project's benchmarks: two forms of 12 from six
// rows, with three quotas.
const benchPlan = `
title = "Benchmark"
minutes = 20
forms = 2
share_right = 75
rest = 4
[[row]]
skill = "add-several"
count = 2
[[row]]
skill = "subtract-within-1000"
count = 3
where = ["regroups >= 1"]
looks = ["column"]
[[row]]
skill = "subtract-within-1000"
count = 2
[[row]]
skill = "add-within-1000"
count = 2
where = ["largest <= 800"]
[[row]]
skill = "compare-three-digit"
count = 2
[[row]]
skill = "add-past-100"
count = 1
[bands]
stretch = [1, 4]
[[quota]]
where = ["regroups = 2"]
count = [1, 3]
[[quota]]
where = ["crosses_100 = true"]
count = [1, 4]
`

// benchBank makes a bank of n items of the plan's skills.
func benchBank(tb testing.TB, path string, n int) {
	tb.Helper()
	b, err := bank.Create(path)
	if err != nil {
		tb.Fatal(err)
	}
	defer b.Close()
	left := n
	for i, skill := range []standards.SkillID{"add-past-100", "compare-three-digit", "add-within-1000", "subtract-within-1000", "add-several"} {
		made, err := generate.Make(generate.Request{Skill: skill, Count: left / (5 - i), Seed: 1})
		if err != nil {
			tb.Fatal(err)
		}
		left -= len(made.Tasks)
		items := make([]bank.Item, len(made.Tasks))
		for k, task := range made.Tasks {
			items[k] = bank.NewItem(task, "", bank.Origin{Kind: "generated", Seed: 1})
		}
		if _, err := b.Add(items, "lin", noon); err != nil {
			tb.Fatal(err)
		}
	}
}

// BenchmarkAssemble opens the bank, reads it, solves and proves. Set
// EVENHAND_BENCH_ITEMS to a number for a larger bank beside the small ones.
func BenchmarkAssemble(b *testing.B) {
	sizes := []int{1_000, 10_000, 100_000}
	if n, err := strconv.Atoi(os.Getenv("EVENHAND_BENCH_ITEMS")); err == nil {
		sizes = append(sizes, n)
	}
	plan, err := plan.Parse([]byte(benchPlan), "plan.toml")
	if err != nil {
		b.Fatal(err)
	}
	for _, n := range sizes {
		path := filepath.Join(b.TempDir(), "team.bank")
		benchBank(b, path, n)
		b.Run(fmt.Sprintf("items=%d", n), func(b *testing.B) {
			b.ReportAllocs()
			for i := range b.N {
				open, err := bank.Open(path, bank.Options{ReadOnly: true})
				if err != nil {
					b.Fatal(err)
				}
				q, err := assemble.Assemble(context.Background(), open, plan, assemble.Options{Seed: uint64(i), Week: "2026-W48"})
				if err != nil {
					b.Fatal(err)
				}
				if !q.Proved {
					b.Fatal("the quiz is not proved")
				}
				open.Close()
			}
		})
	}
}
