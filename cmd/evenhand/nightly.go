package main

import (
	"context"
	"time"

	"evenhand/bank"
	"evenhand/bank/results"

	"github.com/urfave/cli/v2"
)

// nightly keeps proved copies of a bank and its marks, one a day, while a desk serves it: each as soon as the
// day has none, until the context ends. What fails is said and tried again an hour later.
func nightly(ctx context.Context, c *cli.Context, b *bank.Bank, copies results.Copies) {
	ticks := time.NewTicker(time.Hour)
	defer ticks.Stop()
	for {
		if err := copies.Daily(b, time.Now()); err != nil {
			say(c, "the backup of today failed, and is tried again in an hour: %v", err)
		}
		select {
		case <-ctx.Done():
			return
		case <-ticks.C:
		}
	}
}
