package evidence

import (
	"cmp"
	"math"
	"slices"
)

// Given is one answered item of a pupil's paper, as missteps see it.
type Given struct {
	Item  string
	Right bool
	// Matches are the missteps that lead to just the answer given; several may.
	Matches []string
	// Chances are the missteps that could have shown: those that lead to some wrong answer here.
	Chances []string
}

// Finding is a misstep that stands out on a paper.
type Finding struct {
	// Missteps is the likely misstep. When several give the same answers on this paper and it
	// can't tell them apart, it holds them all, the likeliest first.
	Missteps []string
	// Items are those whose answer it explains; Chances counts those where it could have shown.
	// So a finding reads "likely writes both digits of a column: 3 of 4 chances".
	Items   []string
	Chances int
	// Probability that the pupil has it (one of them), given this paper.
	Probability float64
}

// How pupils with and without missteps answer. Common practice, without a published source;
// the simulation in the package comment shows what comes of it.
const (
	misstepPrior = 0.05 // of pupils have any one misstep
	accident     = 0.10 // of other wrong answers happen to be those of a given misstep
	standsOut    = 0.90 // probability from which a finding is reported
	fewestShown  = 2    // answers that a finding must explain
	worthNaming  = 0.05 // probability from which an alternative is named
)

// A pupil's care, the share right where no misstep is at work, and hold, the share of chances
// at which a misstep shows, are not known; all these are taken as equally likely.
var (
	cares = []float64{0.3, 0.5, 0.7, 0.85, 0.95}
	holds = []float64{0.5, 0.7, 0.9}
)

// Missteps weighs the evidence of a pupil's paper (or of several papers in a row) and returns
// what stands out, the likeliest first; mostly nothing.
//
// Every misstep that explains some answer, and every two of them together, is set against
// having none. Where a misstep of the supposed ones could show it does with probability hold,
// each of several in equal parts; otherwise, and everywhere else, the pupil is right with
// probability care, and a wrong answer falls on a given misstep's by accident. Bayes' rule
// turns the chances of the whole paper into probabilities.
func Missteps(paper []Given) []Finding {
	suspects := suspectsOf(paper)
	suppositions := suppose(suspects)
	probability := weigh(paper, suppositions)
	var findings []Finding
	for len(suspects) > 0 {
		slices.SortStableFunc(suspects, func(a, b string) int {
			return cmp.Compare(anyOf(suppositions, probability, []string{b}), anyOf(suppositions, probability, []string{a}))
		})
		group, p := gatherAlike(paper, suspects, suppositions, probability)
		if f := finding(paper, group, p); p >= standsOut && len(f.Items) >= fewestShown {
			findings = append(findings, f)
			suspects = slices.DeleteFunc(suspects, func(s string) bool { return slices.Contains(group, s) })
		} else {
			suspects = suspects[1:]
		}
	}
	return findings
}

// suspectsOf lists the missteps that explain at least one answer, in order of name.
func suspectsOf(paper []Given) (suspects []string) {
	for _, g := range paper {
		if !g.Right {
			suspects = append(suspects, g.Matches...)
		}
	}
	slices.Sort(suspects)
	return slices.Compact(suspects)
}

// suppose lists what the pupil may have: nothing, one misstep, or two.
func suppose(suspects []string) [][]string {
	all := [][]string{nil}
	for i, one := range suspects {
		all = append(all, []string{one})
		for _, other := range suspects[:i] {
			all = append(all, []string{other, one})
		}
	}
	return all
}

// weigh returns the probability of each supposition, given the paper.
func weigh(paper []Given, suppositions [][]string) []float64 {
	logs := make([]float64, len(suppositions))
	each := make([]float64, 0, len(cares)*len(holds))
	odds := math.Log(misstepPrior / (1 - misstepPrior))
	for k, held := range suppositions {
		each = each[:0]
		for _, care := range cares {
			for _, hold := range holds {
				each = append(each, logChance(paper, held, care, hold))
			}
		}
		logs[k] = float64(len(held))*odds + softmax(each)
	}
	softmax(logs)
	return logs
}

// logChance is the log of the chance of the paper's answers.
func logChance(paper []Given, held []string, care, hold float64) (sum float64) {
	for i := range paper {
		g := &paper[i]
		chance := otherwise(g, care)
		active, explaining := 0, 0
		for _, misstep := range held {
			if slices.Contains(g.Chances, misstep) {
				active++
				if !g.Right && slices.Contains(g.Matches, misstep) {
					explaining++
				}
			}
		}
		if active > 0 {
			chance = hold*float64(explaining)/float64(active) + (1-hold)*chance
		}
		sum += math.Log(chance)
	}
	return sum
}

// otherwise is the chance of the answer when no misstep is at work.
func otherwise(g *Given, care float64) float64 {
	switch {
	case g.Right:
		return care
	case len(g.Matches) > 0:
		return (1 - care) * accident
	}
	return (1 - care) * (1 - accident)
}

// anyOf is the probability that the pupil has at least one of the missteps.
func anyOf(suppositions [][]string, probability []float64, missteps []string) (sum float64) {
	for k, held := range suppositions {
		if slices.ContainsFunc(held, func(s string) bool { return slices.Contains(missteps, s) }) {
			sum += probability[k]
		}
	}
	return sum
}

// gatherAlike takes the first suspect and, as long as that is not clear by itself, those that
// explain some of the same answers and are worth naming.
func gatherAlike(paper []Given, suspects []string, suppositions [][]string, probability []float64) (group []string, p float64) {
	for _, s := range suspects {
		alike := len(group) == 0 || shareAnswer(paper, group[0], s) && anyOf(suppositions, probability, []string{s}) >= worthNaming
		if alike && p < standsOut {
			group = append(group, s)
			p = anyOf(suppositions, probability, group)
		}
	}
	return group, p
}

func shareAnswer(paper []Given, a, b string) bool {
	return slices.ContainsFunc(paper, func(g Given) bool {
		return !g.Right && slices.Contains(g.Matches, a) && slices.Contains(g.Matches, b)
	})
}

func finding(paper []Given, group []string, p float64) Finding {
	f := Finding{Missteps: group, Probability: p}
	among := func(s string) bool { return slices.Contains(group, s) }
	for _, g := range paper {
		if slices.ContainsFunc(g.Chances, among) {
			f.Chances++
		}
		if !g.Right && slices.ContainsFunc(g.Matches, among) {
			f.Items = append(f.Items, g.Item)
		}
	}
	return f
}
