package evidence

import (
	"math"
	"slices"

	"gonum.org/v1/gonum/floats"
)

// model is the papers with everything about them that stays the same while the settings move.
type model struct {
	papers      *Papers
	traits      [][]float64 // with the level's column, if it is looked for
	belief      Belief      // with the level among the weights
	usual       []float64   // by group: ability usual for the grade, beside that of all pupils
	commonUsual float64     // of all pupils
	deviationSD float64
	lean        float64
	groupPupils []float64
	formPupils  []float64
	pupils      float64
	steps       int
}

func newModel(papers *Papers, traits [][]float64, belief Belief) *model {
	m := &model{
		papers: papers, traits: traits, belief: belief, deviationSD: belief.DeviationSD,
		groupPupils: make([]float64, papers.groups), formPupils: make([]float64, len(papers.forms)),
	}
	for _, line := range papers.patterns {
		count := float64(line.count)
		m.pupils += count
		m.groupPupils[line.group] += count
		for _, form := range line.forms {
			m.formPupils[form] += count
		}
	}
	m.setUsual()
	m.setLevel()
	return m
}

// setUsual parts what is usual for the groups' grades into that of all pupils, which goes to
// the level, and what is left for each.
func (m *model) setUsual() {
	m.usual = make([]float64, m.papers.groups)
	copy(m.usual, m.belief.ClassUsual)
	for g, pupils := range m.groupPupils {
		if pupils > 0 {
			m.commonUsual += m.usual[g] * pupils / m.pupils
		}
	}
	for g := range m.usual {
		m.usual[g] -= m.commonUsual
	}
}

// setLevel makes the level one more weight. Papers only show how far pupils are above items,
// so the mean ability over all pupils is held at 0 and every item lies the level lower: a
// trait of -1 that all items have. What is believed about the weights and about the level
// says which of the two has moved.
func (m *model) setLevel() {
	if !m.hasLevel() {
		return
	}
	level := Estimate{m.belief.Level.Value + m.commonUsual, m.belief.Level.SE}
	m.belief.Weights = append(slices.Clip(m.belief.Weights), level)
	rows := make([][]float64, len(m.traits))
	for i, row := range m.traits {
		rows[i] = append(slices.Clip(row), -1)
	}
	m.traits = rows
}

func (m *model) hasLevel() bool { return m.belief.Level.SE > 0 }

// level is where the mean pupil stands on the scale of the items.
func (m *model) level(s settings) float64 {
	if !m.hasLevel() {
		return 0
	}
	return s.weights[len(s.weights)-1]
}

// own is the item's traits without the level.
func (m *model) own(i int) []float64 {
	if !m.hasLevel() {
		return m.traits[i]
	}
	return m.traits[i][:len(m.traits[i])-1]
}

func (m *model) items() int { return len(m.papers.right) }

// start is the belief itself.
func (m *model) start() settings {
	s := settings{
		weights: make([]float64, len(m.belief.Weights)), deviations: make([]float64, m.items()),
		means: slices.Clone(m.usual), logSD: math.Log(math.Max(m.belief.AbilitySD, smallestSD)),
	}
	for k, w := range m.belief.Weights {
		s.weights[k] = w.Value
	}
	return s
}

func (m *model) difficulties(s settings) []float64 {
	difficulty := make([]float64, m.items())
	for i, row := range m.traits {
		difficulty[i] = s.deviations[i]
		for k, x := range row {
			difficulty[i] += s.weights[k] * x
		}
	}
	return difficulty
}

// precision is 1/sd²: 0 for an infinite sd, infinite for 0.
func precision(sd float64) float64 { return 1 / (sd * sd) }

// penalty is what the belief and the lean take off the log-likelihood at these settings.
func (m *model) penalty(s settings) float64 {
	sum := -2 * m.lean * s.logSD
	for k, w := range m.belief.Weights {
		sum += squareOver(s.weights[k]-w.Value, w.SE)
	}
	for _, u := range s.deviations {
		sum += squareOver(u, m.deviationSD)
	}
	for g, mean := range s.means {
		sum += squareOver(mean-m.usual[g], m.belief.ClassSD)
	}
	if !math.IsInf(m.belief.AbilityPupils, 1) {
		sum += m.belief.AbilityPupils * (2*s.logSD + squareOver(m.belief.AbilitySD, s.sd()))
	}
	return sum / 2
}

// squareOver is (x/sd)², and 0 for x = 0 even when sd is 0.
func squareOver(x, sd float64) float64 {
	if x == 0 {
		return 0
	}
	return x / sd * (x / sd)
}

// slope is the derivative of the log-likelihood less the penalty, at s.
func (m *model) slope(s settings, e *expectation) settings {
	g := settings{
		weights: make([]float64, len(s.weights)), deviations: make([]float64, len(s.deviations)),
		means: make([]float64, len(s.means)),
	}
	for i, row := range m.traits {
		floats.AddScaled(g.weights, e.itemSlope[i], row)
		if m.deviationSD > 0 {
			g.deviations[i] = e.itemSlope[i] - s.deviations[i]*precision(m.deviationSD)
		}
	}
	for k, w := range m.belief.Weights {
		g.weights[k] -= (s.weights[k] - w.Value) * precision(w.SE)
	}
	for k, mean := range s.means {
		g.means[k] = e.groupSlope[k] - (mean-m.usual[k])*precision(m.belief.ClassSD)
	}
	if !math.IsInf(m.belief.AbilityPupils, 1) {
		g.logSD = e.sdSlope + m.lean + m.belief.AbilityPupils*(squareOver(m.belief.AbilitySD, s.sd())-1)
	}
	return g
}
