package assemble_test

import (
	"strings"
	"testing"

	"evenhand/assemble"
	"evenhand/assemble/plan"
)

// By the misstep answers of Brown & Burton (1978): 52 - 27 gives 35 by both missteps, as the ones
// differ by five; 81 - 38 gives 57 by the one and 53 by the other. So of these items those in
// telling show the first misstep alone.
func TestDiagnosePrefersItemsThatTell(t *testing.T) {
	telling := []string{"81 - 38 = ?", "62 - 35 = ?", "73 - 46 = ?", "94 - 57 = ?"}
	mixed := []string{"52 - 27 = ?", "43 - 28 = ?", "61 - 16 = ?", "72 - 37 = ?", "84 - 59 = ?", "93 - 48 = ?"}
	b := newBank(t)
	addTasks(t, b, append(telling, mixed...)...)
	text := "forms = 2\nshare_right = 75\n"
	row := "[[row]]\nskill = 'subtract-regrouping'\ncount = 2\n"
	for seed := range uint64(4) {
		o := assemble.Options{Seed: seed}
		plain, err := assemble.Assemble(t.Context(), b, mustPlan(t, text+row), o)
		if err != nil {
			t.Fatal(err)
		}
		q, err := assemble.Assemble(t.Context(), b, mustPlan(t, text+"diagnose = ['smaller digit from larger']\n"+row), o)
		if err != nil {
			t.Fatal(err)
		}
		if q.Objective != plain.Objective || !q.Proved {
			t.Errorf("seed %d: objective %d (proved %v) with diagnose, %d without", seed, q.Objective, q.Proved, plain.Objective)
		}
		for _, form := range q.Forms {
			for _, placed := range form.Items {
				if !strings.Contains(strings.Join(telling, "|"), placed.Item.Task) {
					t.Errorf("seed %d: %s does not tell the misstep apart", seed, placed.Item.Task)
				}
			}
		}
		for _, line := range assemble.BalanceOf(q).Table() {
			if strings.HasPrefix(line[0], "items that show smaller digit from larger alone") && line[1] != "2" {
				t.Errorf("the balance counts %q", line)
			}
		}
	}
}

func TestDiagnoseNamesMissteps(t *testing.T) {
	_, err := plan.Parse([]byte("diagnose = ['ten droped']\n[[row]]\nskill = 'add-two-digit'\ncount = 1\n"), "plan.toml")
	if err == nil || !strings.Contains(err.Error(), `no misstep "ten droped"; did you mean "ten dropped"?`) {
		t.Errorf("got %v", err)
	}
}
