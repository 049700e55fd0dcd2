package assemble

import (
	"io"
	"math"

	"evenhand/assemble/plan"
	"evenhand/assemble/search"
	"evenhand/bank"
)

// WriteModel writes the very model that Assemble solves in LP format, so
// that anyone can check its answer with a general solver. Every item that could
// be of use stands in it, also those that Assemble would not need to read.
func WriteModel(w io.Writer, b *bank.Bank, plan plan.Plan, o Options) error {
	m, err := wholeModel(b, plan, o)
	if err != nil {
		return err
	}
	return search.WriteLP(w, &m.Model)
}

// wholeModel is the model of everything that could be of use.
func wholeModel(b *bank.Bank, plan plan.Plan, o Options) (*built, error) {
	p, err := newProblem(b, plan, o)
	if err != nil {
		return nil, err
	}
	if _, err := p.fillAll(math.MaxInt32); err != nil {
		return nil, err
	}
	return p.build(false), nil
}
