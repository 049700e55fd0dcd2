package evidence_test

import (
	"math"
	"path/filepath"
	"strings"
	"testing"

	"evenhand/bank/evidence"
	"evenhand/testdata/outside"
)

// From the pattern counts of Bock & Lieberman (1970), by full computation.
var (
	lsatConditional        = []float64{-1.2561, .4749, 1.2360, .1684, -.6232}
	lsatConditionalLogLike = -1091.570
)

func TestLSAT6Conditional(t *testing.T) {
	b, logLikelihood, err := evidence.Conditional(lsatRows(t))
	if err != nil {
		t.Fatal(err)
	}
	near(t, "conditional log-likelihood", logLikelihood, lsatConditionalLogLike, 0.0005)
	for i, want := range lsatConditional {
		near(t, "difficulty", b[i], want, 5e-5)
	}
}

// Splitting the test in two overlapping forms estimates the same difficulties, less exactly:
// the pupils who lose an item are taken at random, so only chance moves the values.
func TestConditionalWithFormsAgreesWithMarginal(t *testing.T) {
	w := newWorld(11, 12)
	var rows []evidence.Row
	papers := evidence.NewPapers(12)
	all := []int{0, 1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11}
	for n := range 4000 {
		p := w.sit(w.rng.NormFloat64(), all, nil)
		row := evidence.Row{Marks: make([]evidence.Mark, 12), Pupils: 1}
		for i := range all {
			if (n%2 == 0 && i < 8) || (n%2 == 1 && i >= 4) {
				row.Marks[i] = evidence.Wrong + evidence.Mark(map[bool]int{true: 1}[p.Right[i]])
			}
		}
		rows = append(rows, row)
		if err := papers.Add(0, evidence.PaperOf(all, row.Marks)); err != nil {
			t.Fatal(err)
		}
	}
	b, _, err := evidence.Conditional(rows)
	if err != nil {
		t.Fatal(err)
	}
	belief := evidence.NoBelief(0)
	belief.DeviationSD, belief.DeviationItems = math.Inf(1), math.Inf(1)
	f, err := evidence.Difficulty(papers, make([][]float64, 12), belief, nil)
	if err != nil {
		t.Fatal(err)
	}
	mean := 0.0
	for _, e := range f.Items {
		mean += e.Value / 12
	}
	for i, e := range f.Items {
		near(t, "difficulty", b[i], e.Value-mean, 0.02)
	}
}

func TestConditionalRefuses(t *testing.T) {
	const w, r, o = evidence.Wrong, evidence.Right, evidence.Missing
	for name, rows := range map[string][]evidence.Row{
		"no rows":        nil,
		"always right":   {{Marks: []evidence.Mark{r, r, w}, Pupils: 5}, {Marks: []evidence.Mark{r, w, r}, Pupils: 5}},
		"unlinked forms": {{Marks: []evidence.Mark{r, w, o, o}, Pupils: 5}, {Marks: []evidence.Mark{o, o, w, r}, Pupils: 5}},
	} {
		if b, _, err := evidence.Conditional(rows); err == nil || !strings.Contains(err.Error(), "can't be compared") {
			t.Errorf("%s: %v, %v; want an error", name, b, err)
		}
	}
}

func TestConditionalAgainstSurvival(t *testing.T) {
	outside.Full(t, "conditional estimates beside R's survival", "Rscript")
	table, err := filepath.Abs(filepath.Join("..", "..", "testdata", "published", "lsat6.csv"))
	if err != nil {
		t.Fatal(err)
	}
	rows := inR(t, `suppressMessages(library(survival))
		d <- read.csv("`+table+`", comment.char = "#"); d <- d[rep(seq_len(nrow(d)), d$count), 1:5]
		long <- data.frame(id = rep(seq_len(nrow(d)), 5), item = factor(rep(1:5, each = nrow(d))), right = unlist(d))
		b <- -c(0, coef(clogit(right ~ item + strata(id), long, method = "exact"))); cat(b - mean(b), sep = "\n")`)
	b, _, err := evidence.Conditional(lsatRows(t))
	if err != nil {
		t.Fatal(err)
	}
	for i, row := range rows {
		near(t, "difficulty", b[i], decimal(t, row[0]), 0.0005)
	}
}
