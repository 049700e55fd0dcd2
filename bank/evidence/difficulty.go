package evidence

import (
	"errors"
	"fmt"
	"math"
)

// Estimate is a value with its standard error, both in logits.
type Estimate struct{ Value, SE float64 }

// Belief is what is held true before any paper is seen. It pulls on the estimates like
// papers do: with no papers the answer is the belief, with a few it is near it, with many
// it hardly matters.
type Belief struct {
	// Weights holds each trait's weight in logits and how sure of it we are, as a standard
	// error; an infinite standard error believes nothing.
	Weights []Estimate
	// AbilitySD is the spread of ability inside a class, believed as firmly as if this many
	// pupils had shown it; infinitely many hold it fixed.
	AbilitySD, AbilityPupils float64
	// DeviationSD is the spread of items about what their traits say, believed as firmly as
	// if this many items had shown it; infinitely many hold it fixed. 0 is always held: items
	// follow their traits exactly. So is infinity: each item is on its own.
	DeviationSD, DeviationItems float64
	// Level is how able the pupils of all papers together are, beside what is usual for their
	// grades: 0 for a school like the one the weights were made for. A wide belief lets a
	// stronger school be a stronger school, where a narrow one would make its items easier.
	// With a standard error of 0 there is no such number: ability 0 is the average pupil of
	// the papers.
	Level Estimate
	// ClassSD is how far classes may lie about that level; infinite leaves them free. It keeps
	// a class that got everything right at a finite ability.
	ClassSD float64
	// ClassUsual is the ability usual for the grade of each group; nil stands for all 0.
	ClassUsual []float64
}

// The spreads and doubts that Usual starts from, in logits: common practice for classroom
// tests, without a published source.
const (
	usualAbilitySD   = 1.2 // pupils inside a class
	usualDeviationSD = 0.4 // items about their traits
	usualWeightSE    = 0.5 // a weight of the default table
	usualLevelSE     = 3.0 // the school, about what is usual: next to nothing is believed
	usualClassSD     = 1.0 // classes about their school
)

// Usual is the belief we start from: the weights of a default table, each sure to half a
// logit, and next to nothing about how able the school is.
func Usual(weights []float64) Belief {
	b := Belief{
		AbilitySD: usualAbilitySD, AbilityPupils: 20, DeviationSD: usualDeviationSD, DeviationItems: 10,
		Level: Estimate{0, usualLevelSE}, ClassSD: usualClassSD,
	}
	for _, w := range weights {
		b.Weights = append(b.Weights, Estimate{w, usualWeightSE})
	}
	return b
}

// ItemEstimate is an item's difficulty: the ability at which half get it right. Answers says
// how many it rests on; with 0 the difficulty is what the traits predict.
type ItemEstimate struct {
	Estimate
	// Beside is the standard error of how far the difficulty lies from the mean pupil of the
	// papers: without the doubt about where all of these pupils and items stand together.
	Beside  float64
	Answers int
}

// Fit is what the papers show about difficulty.
type Fit struct {
	Weights       []Estimate     // by trait
	Items         []ItemEstimate // by item
	Level         Estimate       // of all pupils together, beside the usual of their grades
	Classes       []Estimate     // by group: mean ability, on the scale of the items
	AbilitySD     float64        // of pupils inside a class
	DeviationSD   float64        // of items about what their traits say
	LogLikelihood float64        // of the papers, at these difficulties
	Steps         int            // how often all papers were gone through
	spread        [][]float64    // covariance of the weights, the level's number among them
}

// Progress is told how often all papers have been gone through, and about how much
// log-likelihood is still to be gained; the fit is done when that is next to nothing.
type Progress func(steps int, toGain float64)

// Difficulty fits the difficulty model of the package comment to the papers. The trait rows
// are one for each item, all as long as belief.Weights; scale large traits to a size of about 1, since
// Usual believes all weights equally firmly. Progress may be nil.
//
// It returns an error when the rows don't fit the items, or when two traits can't be told
// apart and nothing is believed about them.
func Difficulty(papers *Papers, traits [][]float64, belief Belief, progress Progress) (*Fit, error) {
	if err := errors.Join(checkTraits(papers, traits, belief), belief.check(papers.groups)); err != nil {
		return nil, err
	}
	if progress == nil {
		progress = func(int, float64) {}
	}
	m := newModel(papers, traits, belief)
	s := m.start()
	e := m.expect(s, false)
	for {
		var err error
		if s, e, err = m.climb(s, e, progress); err != nil {
			return nil, err
		}
		if !m.refine(s, e) {
			break
		}
	}
	return m.report(s, e)
}

func checkTraits(papers *Papers, traits [][]float64, belief Belief) error {
	if len(traits) != len(papers.right) {
		return fmt.Errorf("%d rows of traits for %d items: give one row for each item", len(traits), len(papers.right))
	}
	for i, row := range traits {
		if len(row) != len(belief.Weights) {
			return fmt.Errorf("item %d has %d traits, but there are weights for %d", i, len(row), len(belief.Weights))
		}
		for _, v := range row {
			if math.IsNaN(v) || math.IsInf(v, 0) {
				return fmt.Errorf("item %d has a trait that is not a number", i)
			}
		}
	}
	return nil
}

func (b Belief) check(groups int) error {
	for k, w := range b.Weights {
		if !(w.SE > 0) || math.IsNaN(w.Value) || math.IsInf(w.Value, 0) {
			return fmt.Errorf("the belief about trait %d is %v with standard error %v: give a number and a standard error above 0", k, w.Value, w.SE)
		}
	}
	if !(b.AbilitySD > 0 && b.ClassSD > 0 && b.DeviationSD >= 0) || !(b.AbilityPupils >= 0 && b.DeviationItems >= 0) {
		return fmt.Errorf("a belief with ability sd %v, class sd %v, deviation sd %v: the first two must be above 0, nothing below it",
			b.AbilitySD, b.ClassSD, b.DeviationSD)
	}
	if !(b.Level.SE >= 0) || math.IsNaN(b.Level.Value) || math.IsInf(b.Level.Value, 0) {
		return fmt.Errorf("the belief about the level is %v with standard error %v: give a number and a standard error, or none", b.Level.Value, b.Level.SE)
	}
	if b.ClassUsual != nil && len(b.ClassUsual) != groups {
		return fmt.Errorf("%d usual abilities for %d groups: give one for each", len(b.ClassUsual), groups)
	}
	return nil
}

// quadratic is x'Sx; what x is too short for counts as 0.
func quadratic(s [][]float64, x []float64) (sum float64) {
	for k, v := range x {
		for l, w := range x {
			sum += v * s[k][l] * w
		}
	}
	return sum
}
