package evidence

import (
	"math"

	"gonum.org/v1/gonum/floats"
)

// settings are the numbers the model looks for.
type settings struct {
	weights    []float64 // by trait
	deviations []float64 // by item
	means      []float64 // by group: mean ability
	logSD      float64   // log of the ability's standard deviation
}

// expectation is what the papers say when the settings are taken as true.
type expectation struct {
	logLikelihood float64
	grid          []float64
	difficulty    []float64   // by item
	chance        []float64   // items x grid: probability of a right answer
	itemSlope     []float64   // by item: derivative of the log-likelihood by difficulty
	itemInfo      []float64   // by item: information if abilities were known
	itemLost      []float64   // by item: of it, lost because they are not (averaged over a form)
	groupSlope    []float64   // by group: derivative by mean ability
	sdSlope       float64     // derivative by log ability sd
	shares        [][]float64 // by pattern: shares of the grid's points, when kept
}

func (s settings) sd() float64 { return math.Max(math.Exp(s.logSD), smallestSD) }

// tally is one shard's part of an expectation.
type tally struct {
	logLikelihood, sdSlope float64
	formMass               []float64 // forms x grid: expected pupils
	formSpread             []float64 // by form: pupils times the variance left in their ability
	groupSlope             []float64
}

// expect integrates over every pupil's ability. With keep it also returns each pattern's
// shares, for the standard errors.
func (m *model) expect(s settings, keep bool) *expectation {
	e := &expectation{grid: abilityGrid(s.means, s.sd(), m.papers.longest)}
	if keep {
		e.shares = make([][]float64, len(m.papers.patterns))
	}
	softplus := m.chances(s, e)
	formLog := m.formLogs(softplus, len(e.grid))
	prior := m.groupPriors(s, e.grid)
	parts := make([]tally, shards)
	used := inShards(len(m.papers.patterns), func(shard, from, to int) {
		parts[shard] = m.tallyPatterns(s, e, formLog, prior, from, to)
	})
	mass, spread := m.gather(e, parts[:used])
	m.itemSums(e, mass, spread)
	return e
}

// chances fills in the probability of a right answer by item and ability, and returns
// log(1 + odds) in the same shape.
func (m *model) chances(s settings, e *expectation) (softplus []float64) {
	n := len(e.grid)
	e.chance = make([]float64, m.items()*n)
	softplus = make([]float64, m.items()*n)
	oddsAt := make([]float64, n)
	for q, ability := range e.grid {
		oddsAt[q] = math.Exp(ability)
	}
	e.difficulty = m.difficulties(s)
	inShards(m.items(), func(_, from, to int) {
		for i := from; i < to; i++ {
			ease := math.Exp(-e.difficulty[i])
			for q, at := range oddsAt {
				odds := at * ease
				e.chance[i*n+q] = odds / (1 + odds)
				softplus[i*n+q] = math.Log1p(odds)
			}
		}
	})
	return softplus
}

// formLogs sums log(1 + odds) over each form's items.
func (m *model) formLogs(softplus []float64, n int) []float64 {
	logs := make([]float64, len(m.papers.forms)*n)
	inShards(len(m.papers.forms), func(_, from, to int) {
		for f := from; f < to; f++ {
			row := logs[f*n : f*n+n]
			for _, item := range m.papers.forms[f] {
				floats.Add(row, softplus[int(item)*n:int(item)*n+n])
			}
		}
	})
	return logs
}

func (m *model) groupPriors(s settings, grid []float64) []float64 {
	prior := make([]float64, len(s.means)*len(grid))
	for g, mean := range s.means {
		logNormalOn(grid, mean, s.sd(), prior[g*len(grid):(g+1)*len(grid)])
	}
	return prior
}

func (m *model) tallyPatterns(s settings, e *expectation, formLog, prior []float64, from, to int) tally {
	n := len(e.grid)
	t := tally{
		formMass: make([]float64, len(m.papers.forms)*n), formSpread: make([]float64, len(m.papers.forms)),
		groupSlope: make([]float64, len(s.means)),
	}
	share := make([]float64, n)
	for j := from; j < to; j++ {
		line := &m.papers.patterns[j]
		if e.shares != nil {
			share = make([]float64, n)
			e.shares[j] = share
		}
		patternLogs(line, e.grid, formLog, prior, share)
		count := float64(line.count)
		t.logLikelihood += count * softmax(share)
		mean, variance := momentsOn(e.grid, share)
		off, sd := mean-s.means[line.group], s.sd()
		t.groupSlope[line.group] += count * off / (sd * sd)
		t.sdSlope += count * ((variance+off*off)/(sd*sd) - 1)
		for _, form := range line.forms {
			t.formSpread[form] += count * variance
			floats.AddScaled(t.formMass[int(form)*n:int(form)*n+n], count, share)
		}
	}
	return t
}

// patternLogs writes the log of (chance of the pattern, given ability) x (share of ability)
// for the grid's points, but for the part that depends on difficulty alone.
func patternLogs(line *pattern, grid, formLog, prior, out []float64) {
	n := len(grid)
	copy(out, prior[line.group*n:line.group*n+n])
	floats.AddScaled(out, float64(line.right), grid)
	for _, form := range line.forms {
		floats.AddScaled(out, -1, formLog[int(form)*n:int(form)*n+n])
	}
}

func momentsOn(grid, share []float64) (mean, variance float64) {
	for q, w := range share {
		mean += w * grid[q]
	}
	for q, w := range share {
		variance += w * (grid[q] - mean) * (grid[q] - mean)
	}
	return mean, variance
}

// gather adds up the shards, in order.
func (m *model) gather(e *expectation, parts []tally) (mass, spread []float64) {
	mass, spread, e.groupSlope = parts[0].formMass, parts[0].formSpread, parts[0].groupSlope
	e.logLikelihood, e.sdSlope = parts[0].logLikelihood, parts[0].sdSlope
	for _, t := range parts[1:] {
		floats.Add(mass, t.formMass)
		floats.Add(spread, t.formSpread)
		floats.Add(e.groupSlope, t.groupSlope)
		e.logLikelihood += t.logLikelihood
		e.sdSlope += t.sdSlope
	}
	return mass, spread
}

// itemSums turns the expected pupils at each ability, by form, into sums by item.
func (m *model) itemSums(e *expectation, mass, spread []float64) {
	n := len(e.grid)
	e.itemSlope = make([]float64, m.items())
	e.itemInfo = make([]float64, m.items())
	e.itemLost = make([]float64, m.items())
	for f, form := range m.papers.forms {
		pupils := mass[f*n : f*n+n]
		left := spread[f] / m.formPupils[f]
		for _, item := range form {
			right, info, lost := itemMoments(e.chance[int(item)*n:int(item)*n+n], pupils)
			e.itemSlope[item] += right
			e.itemInfo[item] += info
			e.itemLost[item] += left * lost
		}
	}
	for i, right := range m.papers.right {
		e.itemSlope[i] -= float64(right)
		e.logLikelihood -= float64(right) * e.difficulty[i]
	}
}

func itemMoments(chance, pupils []float64) (right, info, lost float64) {
	for q, p := range chance {
		pq := p * (1 - p)
		right += pupils[q] * p
		info += pupils[q] * pq
		lost += pupils[q] * pq * pq
	}
	return right, info, lost
}
