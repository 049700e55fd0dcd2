package bank_test

import (
	"errors"
	"slices"
	"testing"
	"time"

	"evenhand/bank"
)

func TestPlansKeepTheirHistory(t *testing.T) {
	b := tempBank(t)
	if list, err := b.Plans(); err != nil || len(list) != 0 {
		t.Fatalf("a new bank has the plans %v, %v", list, err)
	}
	save := func(name, text, by string) bank.Plan {
		t.Helper()
		plan, err := b.SavePlan(bank.Plan{Name: name, Text: text, By: by, At: monday})
		must(t, err)
		return plan
	}
	save("Friday check", "items = 10", "MK")
	if again := save(" friday  CHECK ", "items = 10", "SV"); again.Revision != 1 || again.By != "MK" {
		t.Errorf("the same text makes revision %d by %s", again.Revision, again.By)
	}
	if changed := save("Friday check", "items = 12", "SV"); changed.Revision != 2 {
		t.Errorf("another text is revision %d", changed.Revision)
	}
	save("Friday", "items = 8", "MK") // its name begins another's, and is a plan of its own
	list, err := b.Plans()
	must(t, err)
	names := []string{}
	for _, plan := range list {
		names = append(names, plan.Name+" "+plan.Text)
	}
	if want := []string{"Friday items = 8", "Friday check items = 12"}; !slices.Equal(names, want) {
		t.Errorf("the plans are %q, want %q", names, want)
	}
	must(t, b.RemovePlan("friday check", "MK", monday.Add(time.Hour)))
	if _, err := b.Plan("Friday check"); err == nil {
		t.Error("a plan taken out is there")
	}
	if list, err := b.Plans(); err != nil || len(list) != 1 {
		t.Errorf("the plans are %v, %v", list, err)
	}
	history, err := b.PlanHistory("Friday check")
	must(t, err)
	if len(history) != 3 || history[0].Text != "items = 10" || history[1].By != "SV" || !history[2].Removed {
		t.Errorf("the history is %+v", history)
	}
	if back := save("Friday check", "items = 12", "MK"); back.Revision != 4 || back.Removed {
		t.Errorf("brought back it is %+v", back)
	}
	for _, plan := range []bank.Plan{{Name: " ", By: "MK"}, {Name: "x"}} {
		if _, err := b.SavePlan(plan); err == nil {
			t.Errorf("%+v is kept", plan)
		}
	}
}

// Of two people who change the same plan, the second one's is not kept over what that person hasn't seen.
func TestPlanSeenBefore(t *testing.T) {
	b := tempBank(t)
	plan := bank.Plan{Name: "Friday", Text: "items = 10", By: "MK", At: monday}
	after := func(seen int, text, by string, revision int) {
		t.Helper()
		plan.Text, plan.By = text, by
		kept, err := b.SavePlanAfter(seen, plan)
		overtaken := (*bank.PlanOvertakenError)(nil)
		switch {
		case errors.As(err, &overtaken):
			if revision > 0 || overtaken.Now.Text != "items = 11" {
				t.Errorf("%s by %s after %d is overtaken by %+v", text, by, seen, overtaken.Now)
			}
		case err != nil || kept.Revision != revision:
			t.Errorf("%s by %s after %d is revision %d, %v; want %d", text, by, seen, kept.Revision, err, revision)
		}
	}
	after(0, "items = 10", "MK", 1)
	after(1, "items = 11", "SV", 2)
	after(1, "items = 12", "MK", 0)
	after(0, "items = 12", "JK", 0)
	after(1, "items = 11", "MK", 2) // the very same text overtakes nothing
	after(2, "items = 12", "MK", 3)
	must(t, b.RemovePlan("Friday", "SV", monday))
	after(0, "items = 13", "JK", 5)
}
