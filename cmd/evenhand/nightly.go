package main

import (
	"context"
	"time"

	"evenhand/bank"
	"evenhand/bank/results"
)

// nightly keeps proved copies of a bank and its marks, one a day, while a desk serves it.
type nightly struct {
	use    func(func(*bank.Bank) error) error // the bank as it is open at the moment
	copies results.Copies
	say    func(format string, args ...any)
}

// run makes the copy of a day as soon as the day has none, until the context ends. What fails is said and
// tried again an hour later.
func (n nightly) run(ctx context.Context) {
	ticks := time.NewTicker(time.Hour)
	defer ticks.Stop()
	for {
		err := n.use(func(b *bank.Bank) error { return n.copies.Daily(b, time.Now()) })
		if err != nil {
			n.say("the backup of today failed, and is tried again in an hour: %v", err)
		}
		select {
		case <-ctx.Done():
			return
		case <-ticks.C:
		}
	}
}
