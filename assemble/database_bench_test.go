package assemble_test

import (
	"context"
	"testing"

	"evenhand/assemble"
	"evenhand/assemble/plan"
	"evenhand/bank"
	"evenhand/bank/store/storetest"
)

// BenchmarkAssembleInDatabase is the same from a million items in a database, opened anew each time.
//
//	EVENHAND_REFERENCES=1 go test ./assemble -run '^$' -bench InDatabase -benchtime 5x
func BenchmarkAssembleInDatabase(b *testing.B) {
	address := storetest.NewServer(b).Address("million")
	benchBank(b, address, 1_000_000)
	asked, err := plan.Parse([]byte(benchPlan), "plan.toml")
	if err != nil {
		b.Fatal(err)
	}
	seed := uint64(0)
	for b.Loop() {
		open, err := bank.Open(address, bank.Options{ReadOnly: true})
		if err != nil {
			b.Fatal(err)
		}
		seed++
		q, err := assemble.Assemble(context.Background(), open, asked, assemble.Options{Seed: seed, Week: "2026-W48"})
		if err != nil || !q.Proved {
			b.Fatal("the quiz is not proved", err)
		}
		open.Close()
	}
}
