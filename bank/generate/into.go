package generate

import (
	"time"

	"evenhand/bank"
)

// For makes what is asked for beside what a bank has: what is there already, retired items too, is not made
// again. Nothing is added.
func For(b *bank.Bank, r Request) (Result, error) {
	var broken error
	r.Taken = func(fingerprint string) bool {
		_, taken, err := b.Has(fingerprint)
		if err != nil {
			broken = err
		}
		return taken
	}
	result, err := Make(r)
	if broken != nil {
		return result, broken
	}
	return result, err
}

// Into makes what is asked for beside what a bank has, and adds it in the given standing.
func Into(b *bank.Bank, r Request, standing bank.Standing, by string, at time.Time) (Result, error) {
	result, err := For(b, r)
	if err != nil {
		return result, err
	}
	items := make([]bank.Item, len(result.Tasks))
	for i, asked := range result.Tasks {
		items[i] = bank.NewItem(asked, "", bank.Origin{Kind: "generated", Seed: r.Seed, By: by})
		items[i].Standing = standing
	}
	_, err = b.Add(items, by, at)
	return result, err
}
