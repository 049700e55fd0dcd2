package assemble_test

import (
	"math"
	"os"
	"os/exec"
	"path/filepath"
	"regexp"
	"strconv"
	"testing"

	"evenhand/assemble"
	"evenhand/assemble/plan"
	"evenhand/bank"
	"evenhand/standards"

	"evenhand/testdata/outside"
)

// glpsol solves the model that WriteModel writes, with every item in it; −1
// means that it is impossible.
func glpsol(t *testing.T, b *bank.Bank, plan plan.Plan, o assemble.Options) int {
	t.Helper()
	model := filepath.Join(t.TempDir(), "model.lp")
	file, err := os.Create(model)
	if err != nil {
		t.Fatal(err)
	}
	if err := assemble.WriteModel(file, b, plan, o); err != nil {
		t.Fatal(err)
	}
	if err := file.Close(); err != nil {
		t.Fatal(err)
	}
	out, err := exec.Command("glpsol", "--lp", model, "--cuts", "--tmlim", "60", "-o", model+".sol").CombinedOutput()
	if err != nil {
		t.Fatalf("%v\n%s", err, out)
	}
	text, err := os.ReadFile(model + ".sol")
	if err != nil {
		t.Fatal(err)
	}
	if regexp.MustCompile(`(?m)^Status: +INTEGER (EMPTY|UNDEFINED)`).Match(text) {
		return -1
	}
	found := regexp.MustCompile(`(?m)^Status: +INTEGER OPTIMAL\nObjective: +cost = (\S+)`).FindSubmatch(text)
	if found == nil {
		t.Fatalf("glpsol did not finish:\n%.300s", text)
	}
	value, err := strconv.ParseFloat(string(found[1]), 64)
	if err != nil || math.Abs(value-math.Round(value)) > 1e-6 {
		t.Fatalf("objective %s", found[1])
	}
	return int(math.Round(value))
}

// Pools of hundreds of items, of which Assemble reads a few at first, with few
// keys, so that what it left unread may matter; all of them used, so that no
// quiz has objective 0. A general solver that sees every item must agree.
func TestReadingFewIsExact(t *testing.T) {
	outside.Installed(t, "reading few items beside a solver that reads all", "glpsol")
	b := newBank(t)
	for _, skill := range []standards.SkillID{"compare-two-digit", "count-on", "tens-and-ones"} {
		ids := addMade(t, b, skill, 150, 2)
		use(t, b, "2026-W10", ids...)
		use(t, b, "2026-W11", ids[:len(ids)*2/3]...)
		use(t, b, "2026-W12", ids[:len(ids)/3]...)
	}
	for _, c := range []string{
		"forms = 2\n[[row]]\nskill = 'compare-two-digit'\ncount = 3\n[[row]]\nskill = 'count-on'\ncount = 3\n",
		"forms = 2\nshare_right = 90\n[[row]]\nskill = 'compare-two-digit'\ncount = 2\nwhere = ['largest > 90']\n" +
			"[[row]]\nskill = 'tens-and-ones'\ncount = 4\n[[quota]]\nwhere = 'largest > 95'\ncount = [0, 1]\n",
		"forms = 3\nshared = 1\nshare_right = 80\n[[row]]\nskill = 'compare-two-digit'\ncount = 3\n",
		"[[row]]\nskill = 'compare-two-digit'\ncount = 4\n",
	} {
		plan := mustPlan(t, c)
		o := assemble.Options{Seed: 1, Week: "2026-W48"}
		got, _ := objective(t, b, plan, o)
		want := glpsol(t, b, plan, o)
		t.Logf("objective %d", got)
		if got != want {
			t.Errorf("objective %d, glpsol finds %d for\n%s", got, want, c)
		}
	}
}
