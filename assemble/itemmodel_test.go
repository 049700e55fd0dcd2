package assemble_test

import (
	"bytes"
	"encoding/json"
	"fmt"
	"maps"
	"math/rand/v2"
	"os/exec"
	"slices"
	"strings"
	"testing"

	"evenhand/assemble"
	"evenhand/assemble/plan"
	"evenhand/bank"
	"evenhand/bank/generate"
	"evenhand/standards"
	"evenhand/standards/task"
	"evenhand/testdata/outside"
)

// modelItem is an item as testdata/itemmodel.py reads it.
type modelItem struct {
	ID         string            `json:"id"`
	Skill      string            `json:"skill"`
	Task       string            `json:"task"`
	Key        string            `json:"key"`
	Difficulty int               `json:"difficulty"` // thousandths of a logit on the one scale
	Seconds    int               `json:"seconds"`
	Traits     map[string]string `json:"traits"`
	Uses       int               `json:"uses"`
	Last       int               `json:"last"` // week of the year 2026, 0 for none
}

// TestItemModel holds the program to a model of the definition written apart, item by item, on
// random banks and plans: from the bank's items and the plan to the objective.
func TestItemModel(t *testing.T) {
	outside.Full(t, "quizzes beside an item-by-item model for scipy's milp", "python3")
	python := "/usr/bin/python3" // it has the system's scipy
	possible, plans := 0, 9
	if outside.Longer() {
		plans = 24
	}
	for seed := range uint64(plans) {
		r := rand.New(rand.NewPCG(seed, 9))
		b := newBank(t)
		items := modelBank(t, b, r)
		plan, given := modelPlan(t, r)
		given["items"] = items
		text, err := json.Marshal(given)
		if err != nil {
			t.Fatal(err)
		}
		command := exec.Command(python, "testdata/itemmodel.py")
		command.Stdin = bytes.NewReader(text)
		out, err := command.Output()
		if err != nil {
			t.Fatal(err)
		}
		level := given["level"].(int)
		got, proved := objective(t, b, plan, assemble.Options{Seed: seed, Week: "2026-W48", Ability: &level})
		said := fmt.Sprint(got)
		if got < 0 {
			said = "impossible"
		} else {
			possible++
		}
		want := strings.TrimSpace(string(out))
		if !proved {
			t.Errorf("seed %d: not proved without a limit", seed)
		}
		if want != "late" && said != want {
			t.Errorf("seed %d: the program says %s, the model %s for %+v", seed, said, want, plan)
		}
		t.Logf("seed %d: %s, the model %s", seed, said, want)
	}
	if 3*possible < plans {
		t.Errorf("only %d plans were possible", possible)
	}
}

var modelSkills = []standards.SkillID{"add-two-digit", "subtract-regrouping", "compare-three-digit", "subtract-two-digit", "compare-two-digit"}

// modelBank makes some items of each skill, many of them measured or used.
func modelBank(t *testing.T, b *bank.Bank, r *rand.Rand) (list []modelItem) {
	var items []bank.Item
	used := map[string][]int{} // items by the week of their use
	for _, skill := range modelSkills {
		made, err := generate.Make(generate.Request{Skill: skill, Count: 12 + r.IntN(20), Seed: r.Uint64() % 100})
		if err != nil {
			t.Fatal(err)
		}
		for _, posed := range made.Tasks {
			it := bank.NewItem(posed, "", bank.Origin{Kind: "generated"})
			if r.IntN(2) == 0 {
				it.Measured = &bank.Measured{Difficulty: standards.Difficulty(r.IntN(3000) - 2500), StandardError: 200, Answers: 50}
			}
			m := modelItem{Skill: string(skill), Task: it.Task, Key: it.Key, Seconds: it.Seconds, Traits: map[string]string{}}
			m.Difficulty = int(standards.OnScale(skill, it.Difficulty()))
			for _, trait := range task.AllTraits() {
				if v := it.Traits.Get(trait); v != "" {
					m.Traits[trait.String()] = v
				}
			}
			for n := r.IntN(3); m.Uses < n; m.Uses++ {
				week := 40 + 2*r.IntN(4) + m.Uses
				m.Last = max(m.Last, week)
				name := fmt.Sprintf("2026-W%d", week)
				used[name] = append(used[name], len(list))
			}
			items, list = append(items, it), append(list, m)
		}
	}
	for i, id := range addItems(t, b, items...) {
		list[i].ID = id
	}
	for _, week := range slices.Sorted(maps.Keys(used)) {
		ids := make([]string, len(used[week]))
		for k, i := range used[week] {
			ids[k] = list[i].ID
		}
		use(t, b, week, ids...)
	}
	return list
}

// modelPlan draws a plan, for the program and for the model.
func modelPlan(t *testing.T, r *rand.Rand) (plan.Plan, map[string]any) {
	forms, share, rest, minutes := 1+r.IntN(3), 60+5*r.IntN(5), r.IntN(3), []int{0, 0, 5, 7}[r.IntN(4)]
	text := fmt.Sprintf("forms = %d\nshare_right = %d\nrest = %d\n", forms, share, rest)
	if minutes > 0 {
		text += fmt.Sprintf("minutes = %d\n", minutes)
	}
	rows, same, quotas := []any{}, []any{}, []any{}
	regroups := []any{"regroups", ">=", "1"}
	if r.IntN(2) == 0 {
		text += "same = ['regroups >= 1']\n"
		same = append(same, regroups)
	}
	for _, k := range r.Perm(len(modelSkills))[:2+r.IntN(2)] {
		count, where := 1+r.IntN(4), []any{}
		text += fmt.Sprintf("[[row]]\nskill = '%s'\ncount = %d\n", modelSkills[k], count)
		if modelSkills[k] == "add-two-digit" && r.IntN(2) == 0 {
			text += "where = ['regroups >= 1']\n"
			where = append(where, regroups)
		}
		rows = append(rows, map[string]any{"skill": modelSkills[k], "count": count, "where": where})
	}
	if r.IntN(3) == 0 {
		text += "[[quota]]\nwhere = ['regroups = 1']\ncount = [1, 3]\n"
		quotas = append(quotas, map[string]any{"where": []any{[]any{"regroups", "=", "1"}}, "count": []int{1, 3}})
	}
	plan := mustPlan(t, text)
	return plan, map[string]any{
		"week": 48, "level": 1800 + r.IntN(1500),
		"plan": map[string]any{"forms": forms, "share_right": share, "rest": rest, "minutes": minutes, "rows": rows, "same": same, "quotas": quotas},
	}
}
