package evidence_test

import (
	"encoding/csv"
	"math"
	"os/exec"
	"strconv"
	"strings"
	"testing"

	"evenhand/bank/evidence"
	"evenhand/testdata/outside"
)

// needLme4 skips unless a full check is asked for.
func needLme4(t testing.TB) {
	t.Helper()
	outside.Full(t, "difficulties beside R's lme4", "Rscript")
}

// inR runs a program in R and reads the table it writes.
func inR(t testing.TB, program string) [][]string {
	t.Helper()
	r := exec.Command("Rscript", "-")
	r.Stdin = strings.NewReader("suppressMessages(library(lme4)); data(VerbAgg)\n" + program)
	out, err := r.Output()
	if err != nil {
		t.Fatal(err)
	}
	rows, err := csv.NewReader(strings.NewReader(string(out))).ReadAll()
	if err != nil || len(rows) == 0 {
		t.Fatalf("R wrote %q: %v", out, err)
	}
	return rows
}

func decimal(t testing.TB, cell string) float64 {
	t.Helper()
	v, err := strconv.ParseFloat(cell, 64)
	if err != nil {
		t.Fatal(err)
	}
	return v
}

// verbAgg is the verbal aggression data of lme4 (De Boeck & Wilson 2004): 316 people by 24
// items. R's model speaks of how easily an item is agreed to, so traits enter with a minus.
type verbAgg struct {
	names  []string
	traits [][]float64
	people []evidence.Paper
}

var verbTraits = []string{"(Intercept)", "btypescold", "btypeshout", "situself", "modedo"}

func readVerbAgg(t testing.TB) (v verbAgg) {
	itemOf, personOf := map[string]int{}, map[string]int{}
	rows := inR(t, `with(VerbAgg, write.table(data.frame(id, item, btype, situ, mode, as.integer(r2 == "Y")),
		sep = ",", quote = FALSE, row.names = FALSE, col.names = FALSE))`)
	is := func(cell, level string) float64 {
		if cell == level {
			return -1
		}
		return 0
	}
	for _, r := range rows {
		if _, ok := itemOf[r[1]]; !ok {
			itemOf[r[1]] = len(v.names)
			v.names = append(v.names, r[1])
			v.traits = append(v.traits, []float64{-1, is(r[2], "scold"), is(r[2], "shout"), is(r[3], "self"), is(r[4], "do")})
		}
		if _, ok := personOf[r[0]]; !ok {
			personOf[r[0]] = len(v.people)
			v.people = append(v.people, evidence.Paper{})
		}
		p := &v.people[personOf[r[0]]]
		p.Items, p.Right = append(p.Items, itemOf[r[1]]), append(p.Right, r[5] == "1")
	}
	return v
}

func (v verbAgg) papers(t testing.TB) *evidence.Papers {
	papers := evidence.NewPapers(len(v.names))
	for _, p := range v.people {
		if err := papers.Add(0, p); err != nil {
			t.Fatal(err)
		}
	}
	return papers
}

// fit follows the traits exactly, or lets each item deviate.
func (v verbAgg) fit(t testing.TB, papers *evidence.Papers, deviate bool) *evidence.Fit {
	belief := evidence.NoBelief(len(verbTraits))
	if !deviate {
		belief.DeviationSD, belief.DeviationItems = 0, math.Inf(1)
	}
	fit, err := evidence.Difficulty(papers, v.traits, belief, nil)
	if err != nil {
		t.Fatal(err)
	}
	return fit
}

const (
	glmerTraits  = `f <- glmer(r2 ~ btype + situ + mode + (1|id), VerbAgg, family = binomial, nAGQ = 21);`
	glmerLaplace = `f <- glmer(r2 ~ btype + situ + mode + (1|id), VerbAgg, family = binomial);`
	glmerItems   = `f <- glmer(r2 ~ btype + situ + mode + (1|id) + (1|item), VerbAgg, family = binomial);`
)

func TestVerbAggTraitsAgainstLme4(t *testing.T) {
	needLme4(t)
	v := readVerbAgg(t)
	fit := v.fit(t, v.papers(t), false)
	// De Boeck et al. (2011), J. Stat. Software 39(12), the model refitted by lme4 with
	// 21-point quadrature; the situation "self" is a difference from "other" here.
	printed := []float64{1.743164, -1.054880, -2.041814, .715451 - 1.743164, -.671469}
	live := inR(t, glmerTraits+`write.table(cbind(coef(summary(f))[, 1:2], sqrt(unlist(VarCorr(f))), logLik(f)), sep = ",", quote = FALSE, col.names = FALSE)`)
	near(t, "ability sd, printed", fit.AbilitySD, 1.3456, 0.01)
	near(t, "log-likelihood, printed", fit.LogLikelihood, -4116.613, 0.01)
	for k, row := range live {
		near(t, verbTraits[k]+", printed", fit.Weights[k].Value, printed[k], 0.01)
		near(t, row[0]+", live", fit.Weights[k].Value, decimal(t, row[1]), 0.01)
		near(t, row[0]+", live standard error", fit.Weights[k].SE, decimal(t, row[2]), 0.01)
		near(t, "ability sd, live", fit.AbilitySD, decimal(t, row[3]), 0.01)
	}
}

func TestVerbAggItemsAgainstLme4(t *testing.T) {
	needLme4(t)
	v := readVerbAgg(t)
	fit := v.fit(t, v.papers(t), true)
	// The same source with a random item term, Laplace's approximation.
	printed := []float64{1.7759, -1.0595, -2.1033, -1.0540, -.7068}
	t.Logf("item sd %.4f, ability sd %.4f, weights %.4f", fit.DeviationSD, fit.AbilitySD, fit.Weights)
	near(t, "item sd, printed", fit.DeviationSD, .342, 0.05)
	near(t, "ability sd, printed", fit.AbilitySD, 1.372, 0.05)
	live := inR(t, glmerItems+`write.table(coef(summary(f))[, 1:2], sep = ",", quote = FALSE, col.names = FALSE)`)
	for k, row := range live {
		near(t, verbTraits[k]+", printed", fit.Weights[k].Value, printed[k], 0.05)
		near(t, row[0]+", live", fit.Weights[k].Value, decimal(t, row[1]), 0.05)
		near(t, row[0]+", live standard error", fit.Weights[k].SE, decimal(t, row[2]), 0.05)
	}
	ease := inR(t, glmerItems+`n <- unique(VerbAgg[c("item", "btype", "situ", "mode")]);
		write.table(data.frame(n$item, predict(f, n, re.form = ~(1|item))), sep = ",", quote = FALSE, row.names = FALSE, col.names = FALSE)`)
	for i, row := range ease {
		// glmer takes each person's likeliest ability, which lies too near 0, so its items lie
		// nearer together too; the next test shows that ours, which integrate, don't.
		near(t, row[0]+", difficulty", fit.Items[i].Value, -decimal(t, row[1]), 0.08)
	}
}

func TestVerbAggFreeItemsAgainstLme4(t *testing.T) {
	needLme4(t)
	v := readVerbAgg(t)
	belief := evidence.NoBelief(0)
	belief.DeviationSD, belief.DeviationItems = math.Inf(1), math.Inf(1)
	fit, err := evidence.Difficulty(v.papers(t), make([][]float64, len(v.names)), belief, nil)
	if err != nil {
		t.Fatal(err)
	}
	live := inR(t, `f <- glmer(r2 ~ 0 + item + (1|id), VerbAgg, family = binomial, nAGQ = 21,
		control = glmerControl(optimizer = "bobyqa", optCtrl = list(maxfun = 1e5)));
		write.table(coef(summary(f))[, 1:2], sep = ",", quote = FALSE, col.names = FALSE)`)
	for i, row := range live {
		near(t, row[0]+", difficulty", fit.Items[i].Value, -decimal(t, row[1]), 0.01)
		near(t, row[0]+", standard error", fit.Items[i].SE, decimal(t, row[2]), 0.01)
	}
}

// BenchmarkVerbAgg times both models beside glmer's own in the same run; R's start and the
// reading of the data are left out on both sides, counting the papers is left in. The traits
// model is set beside glmer with the same 21-point integration and beside its quicker default.
func BenchmarkVerbAgg(b *testing.B) {
	needLme4(b)
	v := readVerbAgg(b)
	for _, c := range []struct {
		name, program string
		deviate       bool
	}{{"traits", glmerTraits, false}, {"traits-laplace", glmerLaplace, false}, {"items", glmerItems, true}} {
		b.Run(c.name, func(b *testing.B) {
			for b.Loop() {
				v.fit(b, v.papers(b), c.deviate)
			}
			ours := b.Elapsed().Seconds() / float64(b.N)
			row := inR(b, c.program+`cat(system.time(for (k in 1:3) {`+c.program+`})[["elapsed"]] / 3)`)
			theirs := decimal(b, row[0][0])
			b.ReportMetric(theirs*1e3, "glmer-ms/op")
			b.ReportMetric(theirs/ours, "times-glmer")
		})
	}
}
