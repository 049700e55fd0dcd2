package evidence

import (
	"math"

	"gonum.org/v1/gonum/mat"
)

// Up to so many unknowns, and so many pairs of answers by one pupil, standard errors count
// every link between items that comes from pupils having answered both. Beyond, they leave
// these links out: what they add is the doubt about the pupils' common level, about
// AbilitySD/√pupils, which is small beside the doubt about an item that only some of many
// pupils saw.
const (
	mostLinked = 900
	mostPairs  = 500_000_000
)

// The precision given to what is held fixed, and to what nothing at all is known of.
const (
	pinned  = 1e9
	unknown = 1e-9
)

// report turns the settings into estimates with standard errors. Weights, deviations, class
// means and the ability's spread are in doubt together; only the deviation sd counts as known.
func (m *model) report(s settings, e *expectation) (*Fit, error) {
	curve, err := m.curvature(s, e)
	if err != nil {
		return nil, err
	}
	f := &Fit{AbilitySD: s.sd(), DeviationSD: m.deviationSD, LogLikelihood: e.logLikelihood, Steps: m.steps}
	level := m.level(s)
	for i := range m.items() {
		f.Items = append(f.Items, ItemEstimate{Estimate: Estimate{Value: e.difficulty[i] + level}, Answers: m.papers.answered[i]})
	}
	for k := range s.weights {
		f.Weights = append(f.Weights, Estimate{Value: s.weights[k]})
	}
	for g := range s.means {
		f.Classes = append(f.Classes, Estimate{Value: level + s.means[g]})
	}
	if len(s.weights)+m.items()+len(s.means) <= mostLinked && m.pairs() <= mostPairs {
		err = m.linkedErrors(f, s)
	} else {
		m.unlinkedErrors(f, curve)
	}
	for k := range f.Weights {
		f.Weights[k].SE = math.Sqrt(f.spread[k][k])
	}
	if m.hasLevel() {
		last := len(f.Weights) - 1
		f.Level = Estimate{f.Weights[last].Value - m.commonUsual, f.Weights[last].SE}
		f.Weights = f.Weights[:last]
	}
	return f, err
}

// pairs counts the pairs of answers that one pupil gave, over the patterns.
func (m *model) pairs() (sum int) {
	for _, line := range m.papers.patterns {
		answers := 0
		for _, form := range line.forms {
			answers += len(m.papers.forms[form])
		}
		sum += answers * answers
	}
	return sum
}

// unlinkedErrors inverts the arrow matrix.
func (m *model) unlinkedErrors(f *Fit, curve *curvature) {
	k := len(f.Weights)
	f.spread = make([][]float64, k)
	if k > 0 {
		var inverse mat.SymDense
		_ = curve.weights.InverseTo(&inverse) // its condition has been made sure of
		f.spread = block(&inverse, k)
	}
	for i := range m.traits {
		f.Items[i].SE = math.Sqrt(m.unlinkedVariance(i, curve, f.spread, 1))
		f.Items[i].Beside = math.Sqrt(m.unlinkedVariance(i, curve, f.spread, 0))
	}
	level := 0.0
	if m.hasLevel() {
		level = f.spread[k-1][k-1]
	}
	for g, known := range curve.means {
		f.Classes[g].SE = math.Sqrt(level + 1/math.Max(known, unknown))
	}
}

// unlinkedVariance is the doubt about an item's difficulty. Its papers say where it lies
// below the pupils, so as far as they hold it, it moves with the level; times is how often the
// level is added to that, once or not at all.
func (m *model) unlinkedVariance(i int, curve *curvature, spread [][]float64, times float64) float64 {
	own, held := 0.0, curve.held(i)
	if !math.IsInf(curve.prior, 1) {
		own = curve.variance(i)
	}
	row := make([]float64, len(m.traits[i]))
	for k, x := range m.own(i) {
		row[k] = held * x
	}
	if m.hasLevel() {
		row[len(row)-1] = times - held
	}
	return own + quadratic(spread, row)
}

// linkedErrors inverts the whole information matrix.
func (m *model) linkedErrors(f *Fit, s settings) error {
	l := m.layout()
	info := m.priorInformation(l, s)
	var half, data mat.Dense
	paper := m.information(s)
	half.Mul(paper, l.reach)
	data.Mul(l.reach.T(), &half)
	for a := range l.size {
		for b := range a + 1 {
			info.SetSym(a, b, info.At(a, b)+data.At(a, b))
		}
	}
	var factor mat.Cholesky
	if !factor.Factorize(info) {
		return errTraits
	}
	var inverse mat.SymDense
	if err := factor.InverseTo(&inverse); err != nil {
		return errTraits
	}
	f.spread = block(&inverse, len(f.Weights))
	for g := range f.Classes {
		variance := inverse.At(l.means+g, l.means+g)
		if m.hasLevel() {
			level := len(f.Weights) - 1
			variance += inverse.At(level, level) + 2*inverse.At(level, l.means+g)
		}
		f.Classes[g].SE = math.Sqrt(variance)
	}
	for i := range f.Items {
		f.Items[i].SE = m.itemError(i, m.own(i), l, &inverse, f)
		f.Items[i].Beside = m.itemError(i, m.traits[i], l, &inverse, f)
	}
	return nil
}

// layout says where each unknown stands in the information matrix, and how the difficulties,
// means and spread that the papers speak of depend on the unknowns.
type layout struct {
	deviation   []int // by item: where it stands, or -1 when it is not in doubt by itself
	means, size int
	reach       *mat.Dense
}

func (m *model) layout() layout {
	l := layout{deviation: make([]int, m.items())}
	next := len(m.belief.Weights)
	for i, answers := range m.papers.answered {
		l.deviation[i] = -1
		if m.deviationSD > 0 && answers > 0 {
			l.deviation[i] = next
			next++
		}
	}
	l.means, l.size = next, next+m.papers.groups+1
	l.reach = mat.NewDense(m.items()+m.papers.groups+1, l.size, nil)
	for i, row := range m.traits {
		for k, x := range row {
			l.reach.Set(i, k, x)
		}
		if at := l.deviation[i]; at >= 0 {
			l.reach.Set(i, at, 1)
		}
	}
	for g := range m.papers.groups + 1 {
		l.reach.Set(m.items()+g, l.means+g, 1)
	}
	return l
}

// priorInformation is what the belief knows about the unknowns, and that the mean ability
// over all pupils is 0.
func (m *model) priorInformation(l layout, s settings) *mat.SymDense {
	info := mat.NewSymDense(l.size, nil)
	for k, w := range m.belief.Weights {
		info.SetSym(k, k, math.Min(precision(w.SE), pinned))
	}
	for _, at := range l.deviation {
		if at >= 0 {
			info.SetSym(at, at, precision(m.deviationSD))
		}
	}
	for g, pupils := range m.groupPupils {
		for h, others := range m.groupPupils[:g+1] {
			info.SetSym(l.means+g, l.means+h, pinned*pupils/m.pupils*others/m.pupils)
		}
		own := math.Max(precision(m.belief.ClassSD), unknown) // a group without pupils may have nothing else
		info.SetSym(l.means+g, l.means+g, info.At(l.means+g, l.means+g)+own)
	}
	last := l.size - 1
	info.SetSym(last, last, pinned)
	if !math.IsInf(m.belief.AbilityPupils, 1) && m.pupils+m.belief.AbilityPupils > 0 {
		info.SetSym(last, last, 2*m.belief.AbilityPupils*squareOver(m.belief.AbilitySD, s.sd()))
	}
	return info
}

// information is the papers' information about the difficulties, class means and log ability
// sd, in this order: what it would be if abilities were known, less what is lost because
// they are not (Louis 1982, J. Royal Stat. Soc. B 44).
func (m *model) information(s settings) *mat.Dense {
	e := m.expect(s, true)
	size := m.items() + len(s.means) + 1
	info := mat.NewDense(size, size, nil)
	for i, known := range e.itemInfo {
		info.Set(i, i, known)
	}
	for j := range m.papers.patterns {
		m.addAbility(info, s, e, j)
		m.takeLost(info, s, e, j)
	}
	return info
}

// addAbility adds what known abilities would say about class means and spread.
func (m *model) addAbility(info *mat.Dense, s settings, e *expectation, j int) {
	line := &m.papers.patterns[j]
	mean, variance := momentsOn(e.grid, e.shares[j])
	off, count, per := mean-s.means[line.group], float64(line.count), precision(s.sd())
	at, last := m.items()+line.group, m.items()+len(s.means)
	info.Set(at, at, info.At(at, at)+count*per)
	info.Set(at, last, info.At(at, last)+2*count*off*per)
	info.Set(last, at, info.At(at, last))
	info.Set(last, last, info.At(last, last)+2*count*per*(variance+off*off))
}

// takeLost takes away the covariance, over what is left open about the pupil's ability, of
// the slopes by every unknown the paper speaks of.
func (m *model) takeLost(info *mat.Dense, s settings, e *expectation, j int) {
	points, share := support(e.shares[j])
	at, slopes := m.slopes(s, e, j, points)
	for _, row := range slopes {
		mean := 0.0
		for q, v := range row {
			mean += share[q] * v
		}
		for q := range row {
			row[q] -= mean
		}
	}
	_, size := info.Dims()
	raw, count := info.RawMatrix().Data, float64(m.papers.patterns[j].count)
	weighted := make([]float64, len(share))
	for a, row := range slopes {
		for q, v := range row {
			weighted[q] = count * share[q] * v
		}
		for b, other := range slopes[:a+1] {
			lost := 0.0
			for q, v := range other {
				lost += weighted[q] * v
			}
			raw[at[a]*size+at[b]] -= lost
			if a != b {
				raw[at[b]*size+at[a]] -= lost
			}
		}
	}
}

// support picks the grid's points that a pupil's ability has any real share in.
func support(all []float64) (points []int, share []float64) {
	for q, w := range all {
		if w > 1e-10 {
			points, share = append(points, q), append(share, w)
		}
	}
	return points, share
}

// slopes are the derivatives of the log-likelihood of one pattern by its items'
// difficulties, its class mean and the log ability sd, at some points of the grid.
func (m *model) slopes(s settings, e *expectation, j int, points []int) (at []int, slopes [][]float64) {
	line, n := &m.papers.patterns[j], len(e.grid)
	for _, form := range line.forms {
		for _, item := range m.papers.forms[form] {
			at = append(at, int(item))
			row := make([]float64, len(points))
			for k, q := range points {
				row[k] = e.chance[int(item)*n+q]
			}
			slopes = append(slopes, row)
		}
	}
	byMean, bySD := make([]float64, len(points)), make([]float64, len(points))
	for k, q := range points {
		z := (e.grid[q] - s.means[line.group]) / s.sd()
		byMean[k], bySD[k] = z/s.sd(), z*z
	}
	at = append(at, m.items()+line.group, m.items()+len(s.means))
	return at, append(slopes, byMean, bySD)
}

// itemError is the standard error of an item's difficulty, the sum of a row of traits, with the
// level or without, and its deviation.
func (m *model) itemError(i int, row []float64, l layout, inverse *mat.SymDense, f *Fit) float64 {
	variance := quadratic(f.spread, row)
	at := l.deviation[i]
	if at < 0 {
		return math.Sqrt(variance + m.deviationSD*m.deviationSD)
	}
	for k, x := range row {
		variance += 2 * x * inverse.At(k, at)
	}
	return math.Sqrt(variance + inverse.At(at, at))
}

// block copies the first n rows and columns.
func block(from *mat.SymDense, n int) [][]float64 {
	rows := make([][]float64, n)
	for k := range rows {
		rows[k] = make([]float64, n)
		for l := range rows[k] {
			rows[k][l] = from.At(k, l)
		}
	}
	return rows
}
