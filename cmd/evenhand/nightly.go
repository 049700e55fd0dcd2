package main

import (
	"context"
	"time"

	"evenhand/bank"
	"evenhand/bank/results"
)

// nightly keeps proved copies of a bank and its marks, one a day, while a desk serves it: each as soon as the
// day has none, until the context ends. What becomes of a try is told; one that fails is tried again an hour later.
func nightly(ctx context.Context, b *bank.Bank, copies results.Copies, told func(error)) {
	ticks := time.NewTicker(time.Hour)
	defer ticks.Stop()
	for {
		told(copies.Daily(b, time.Now()))
		select {
		case <-ctx.Done():
			return
		case <-ticks.C:
		}
	}
}
