package assemble

import (
	"context"
	"slices"
	"strings"

	"evenhand/assemble/search"
	"evenhand/standards/task"
)

// tells says that a wrong answer to the task, shown so, can show one of the missteps, and that
// no such answer could come from another misstep as well.
func tells(asked task.Task, look task.Look, kinds []*task.MisstepKind) bool {
	shown := false
	for _, m := range task.MisstepsIn(asked, look) {
		if !slices.ContainsFunc(m.Kinds, func(kind *task.MisstepKind) bool { return slices.Contains(kinds, kind) }) {
			continue
		}
		if len(m.Kinds) > 1 {
			return false
		}
		shown = true
	}
	return shown
}

// diagnose exchanges items for such as tell the plan's missteps apart, as many in each
// form as can be had among the items read without a worse objective.
func (p *problem) diagnose(ctx context.Context, m *built, s *search.Solution) *search.Solution {
	model := m.Model
	quota := len(model.Quotas)
	model.Quotas = append(slices.Clone(model.Quotas), search.Quota{Name: tellName(p.plan.Diagnose), AtMost: p.plan.Size()})
	model.Items = slices.Clone(model.Items)
	for i := range model.Items {
		if m.items[i].tells {
			model.Items[i].Quotas = append(slices.Clone(model.Items[i].Quotas), quota)
		}
	}
	for low, high := 0, p.plan.Size(); low < high; {
		least := (low + high + 1) / 2
		model.Quotas[quota].AtLeast = least
		t, err := search.Solve(ctx, &model, search.Options{Seed: p.seed})
		if err != nil || t.Objective > s.Objective {
			high = least - 1
			continue
		}
		t.Bound = min(s.Bound, t.Objective)
		t.Proved = t.Bound == t.Objective
		s, low = t, least
	}
	return s
}

// tellName names the items that tell missteps apart.
func tellName(kinds []*task.MisstepKind) string {
	names := make([]string, len(kinds))
	for i, kind := range kinds {
		names[i] = kind.Name
	}
	return "items that show " + strings.Join(names, " or ") + " alone"
}
