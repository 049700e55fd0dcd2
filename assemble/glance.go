package assemble

import (
	"context"
	"errors"

	"evenhand/assemble/plan"
	"evenhand/assemble/search"
	"evenhand/bank"
)

// errLeftOut says that items may matter that a glance at the bank left out.
var errLeftOut = errors.New("items may matter that a glance left out")

// atAGlance finds the best choice, if it can among the items that a glance at a large bank gives. A choice among
// them with the objective 0 is as good as any of all items; it holds none that was ever used, so
// that none of them was unused for longer. Otherwise all are gone through.
func atAGlance(ctx context.Context, b *bank.Bank, asked plan.Plan, o Options) (
	p *problem, m *built, s *search.Solution, err error,
) {
	// What was kept may have been used before, and missteps are told apart by as many items as can be had.
	o.glance = len(o.Earlier.Spots)+len(o.sat)+len(asked.Diagnose) == 0
	p, err = newProblem(b, asked, o)
	if err != nil {
		return nil, nil, nil, err
	}
	p.options.glance = false // why there is no quiz is asked of the whole bank
	m, s, err = p.solve(ctx)
	if errors.Is(err, errLeftOut) {
		if p, err = newProblem(b, asked, p.options); err != nil {
			return nil, nil, nil, err
		}
		m, s, err = p.solve(ctx)
	}
	return p, m, s, err
}
