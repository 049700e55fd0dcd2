package bank_test

import (
	"errors"
	"testing"

	"evenhand/bank"
)

// Whoever wrote of a draft since it was ready last is refused, whatever the way; anybody else lets it in.
func TestDraftsAreLetInBySomebodyElse(t *testing.T) {
	draft := written("47 + 36")
	draft.Standing, draft.Origin.By = bank.Draft, "Ms. Reyes"
	to := func(s bank.Standing) func(*bank.Item) error {
		return func(it *bank.Item) error { it.Standing = s; return nil }
	}
	reword := func(it *bank.Item) error { it.Wording = map[string]string{"en": "How many?"}; return nil }
	note := func(it *bank.Item) error { it.Notes = "see the board"; return nil }
	both := func(it *bank.Item) error { it.Standing = bank.Ready; return reword(it) }
	type step struct {
		by     string
		change func(*bank.Item) error
	}
	for name, test := range map[string]struct {
		before []step
		last   step
		right  bool
	}{
		"who wrote it":                 {nil, step{"ms.  REYES", to(bank.Ready)}, false},
		"who brought it":               {nil, step{"MK", to(bank.Ready)}, false},
		"a colleague":                  {nil, step{"SV", to(bank.Ready)}, true},
		"who reworded it":              {[]step{{"SV", reword}}, step{"SV", to(bank.Ready)}, false},
		"another, after that":          {[]step{{"SV", reword}}, step{"JD", to(bank.Ready)}, true},
		"who only noted something":     {[]step{{"SV", note}}, step{"SV", to(bank.Ready)}, true},
		"who changes it on the way":    {nil, step{"SV", both}, false},
		"by way of retiring":           {[]step{{"MK", to(bank.Retired)}}, step{"MK", to(bank.Ready)}, false},
		"back after a colleague's yes": {[]step{{"SV", to(bank.Ready)}, {"MK", to(bank.Retired)}}, step{"MK", to(bank.Ready)}, true},
		"changed after that yes":       {[]step{{"SV", to(bank.Ready)}, {"MK", to(bank.Draft)}, {"MK", reword}}, step{"MK", to(bank.Ready)}, false},
	} {
		b := tempBank(t)
		added, err := b.Add([]bank.Item{draft}, "MK", monday)
		must(t, err)
		id := added[0].ID
		for _, s := range test.before {
			_, err := b.Revise(id, s.by, "why", monday, s.change)
			must(t, err)
		}
		_, err = b.Revise(id, test.last.by, "why", monday, test.last.change)
		if refused := errors.As(err, new(*bank.OwnDraftError)); refused == test.right || !refused && err != nil {
			t.Errorf("%s: %v", name, err)
		}
		if test.right {
			continue
		}
		must(t, b.SetReview(bank.Review{Anyone: true, By: "SV", At: monday}))
		if _, err := b.Revise(id, test.last.by, "why", monday, test.last.change); err != nil {
			t.Errorf("%s, where anyone may: %v", name, err)
		}
		mustBeWhole(t, b)
	}
}
