package generate

import (
	"time"

	"evenhand/bank"
)

// Into makes what is asked for and adds it to a bank in the given standing; what the bank has already,
// retired items too, is not made again.
func Into(b *bank.Bank, r Request, standing bank.Standing, by string, at time.Time) (Result, error) {
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
