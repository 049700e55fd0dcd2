package assemble

import (
	"context"
	"errors"
	"io"
	"math"
	"time"

	"evenhand/assemble/search"
	"evenhand/bank"
)

// WriteModel writes the very model that Assemble solves in CPLEX LP format, so
// that anyone can check its answer with a general solver. Every item that could
// be of use stands in it, also those that Assemble would not need to read.
func WriteModel(w io.Writer, b *bank.Bank, plan Plan, o Options) error {
	m, err := wholeModel(b, plan, o)
	if err != nil {
		return err
	}
	if plan.offersAnswers() {
		ctx, cancel := context.WithTimeout(context.Background(), modelLimit)
		defer cancel()
		var impossible *search.Impossible
		if _, err := search.Solve(ctx, &m.Model, search.Options{Seed: o.Seed}); errors.As(err, &impossible) {
			o.keysMayRepeat = true
			if m, err = wholeModel(b, plan, o); err != nil {
				return err
			}
		}
	}
	return search.WriteLP(w, &m.Model)
}

// modelLimit is how long WriteModel looks whether keys must be let repeat.
const modelLimit = 10 * time.Second

// wholeModel is the model of everything that could be of use.
func wholeModel(b *bank.Bank, plan Plan, o Options) (*built, error) {
	p, err := newProblem(b, plan, o)
	if err != nil {
		return nil, err
	}
	if _, err := p.fillAll(math.MaxInt32); err != nil {
		return nil, err
	}
	return p.build(false), nil
}
