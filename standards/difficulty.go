package standards

import (
	"fmt"
	"math"
	"slices"

	"evenhand/standards/task"
)

// Difficulty is how hard an item is for a pupil of the grade, in thousandths of a
// logit: a pupil of ability 0 gets it right with probability 1/(1 + e^d),
// d = Difficulty/1000. Zero means five in ten.
type Difficulty int

// Logits is the difficulty in logits.
func (d Difficulty) Logits() float64 { return float64(d) / 1000 }

// String is the difficulty in logits with three decimals, as in CSV files.
func (d Difficulty) String() string { return fmt.Sprintf("%.3f", d.Logits()) }

// ShareRight is the expected share of right answers, from 0 to 1.
func (d Difficulty) ShareRight() float64 { return 1 / (1 + math.Exp(d.Logits())) }

// Percent is ShareRight in whole hundredths.
func (d Difficulty) Percent() int { return int(math.Round(100 * d.ShareRight())) }

// Tenths is ShareRight in whole tenths.
func (d Difficulty) Tenths() int { return int(math.Round(10 * d.ShareRight())) }

// Words is the difficulty as a teacher reads it, "about 7 in 10 get this right".
func (d Difficulty) Words() string {
	return fmt.Sprintf("about %d in 10 get this right", d.Tenths())
}

// DifficultyFor is the difficulty at which the share s (between 0 and 1) of
// pupils of ability 0 is right: −ln(s/(1−s)), rounded to a thousandth.
func DifficultyFor(share float64) Difficulty {
	return Difficulty(math.Round(-1000 * math.Log(share/(1-share))))
}

// Band is one of three words for a difficulty.
type Band string

// The bands.
const (
	WarmUp  Band = "warm-up" // 85 in 100 or more are expected right
	Core    Band = "core"
	Stretch Band = "stretch" // fewer than 65 in 100 are expected right
)

// Bands lists the bands from easy to hard.
func Bands() []Band { return []Band{WarmUp, Core, Stretch} }

// warmUpTo and stretchFrom bound the core band: −ln(.85/.15) and −ln(.65/.35) in
// thousandths (common practice: easy enough to start with, hard enough to be
// missed by every third child).
const (
	warmUpTo    Difficulty = -1735
	stretchFrom Difficulty = -619
)

// Band is the band of the difficulty.
func (d Difficulty) Band() Band {
	switch {
	case d <= warmUpTo:
		return WarmUp
	case d > stretchFrom:
		return Stretch
	}
	return Core
}

// Weight says what a feature of a task adds to its difficulty.
type Weight struct {
	Name   string // unique, as in calibration reports
	Logits float64
	Source string // published source, or "common practice"
	amount func(task.Traits) float64
}

const (
	subtractionStudy = "least squares on the Rasch difficulties of column subtractions by 294 pupils, de Chiusole & Stefanutti (2013)"
	commonPractice   = "common practice, no source"
	clockOrder       = "common practice for the size; the order is that of Boulton-Lewis, Wilss & Mutch (1997)"
	comparedOrder    = "common practice for the size; that a word pulling to the wrong operation makes it harder: Lewis & Mayer (1987)"
)

// weights is the one table of trait weights. A skill's Base is the difficulty of
// its easiest tasks; a weight is added once, or once a unit for "regroups".
var weights = []Weight{
	{"regroups", .444, subtractionStudy, units(task.Regroups)},
	{"zero_crossed", 1.489, subtractionStudy, when(task.ZeroCrossed, "true")},
	{"sum past 100", .20, commonPractice, sumPast100},
	{"three digits or more", .30, commonPractice, atLeast(task.Digits, 3)},
	{"doubles", -.40, commonPractice, when(task.Doubles, "true")},
	{"near_doubles", -.15, commonPractice, when(task.NearDoubles, "true")},
	{"makes_ten", -.20, commonPractice, when(task.MakesTen, "true")},
	{"fourth addend", .40, commonPractice, atLeast(task.Addends, 4)},
	{"unknown change", .50, commonPractice, when(task.Unknown, "change")},
	{"unknown start", .80, commonPractice, when(task.Unknown, "start")},
	{"half hour", .60, clockOrder, when(task.ClockStep, "half-hour")},
	{"quarter hour", 1.00, clockOrder, when(task.ClockStep, "quarter-hour")},
	{"five minutes", 1.50, clockOrder, when(task.ClockStep, "five-minute")},
	{"minutes", 2.10, clockOrder, when(task.ClockStep, "minute")},
	{"hands_overlap", .20, commonPractice, when(task.HandsOverlap, "true")},
	{"two compared", .30, commonPractice, whenOne(task.CompareDifference, task.CompareBigger, task.CompareSmaller)},
	{"said the other way", .80, comparedOrder, whenOne(task.CompareBiggerLess, task.CompareSmallerMore)},
}

func units(t task.Trait) func(task.Traits) float64 {
	return func(ts task.Traits) float64 { n, _ := ts.Number(t); return float64(n) }
}

func when(t task.Trait, value string) func(task.Traits) float64 {
	return func(ts task.Traits) float64 { return one(ts[t] == value) }
}

func whenOne(situations ...task.StorySituation) func(task.Traits) float64 {
	return func(ts task.Traits) float64 {
		return one(slices.Contains(situations, task.StorySituation(ts[task.Situation])))
	}
}

func atLeast(t task.Trait, least int) func(task.Traits) float64 {
	return func(ts task.Traits) float64 { n, ok := ts.Number(t); return one(ok && n >= least) }
}

// sumPast100 is about sums only: with subtractions of three digits and more, the
// pupils of the study showed no such step.
func sumPast100(ts task.Traits) float64 {
	return one(ts[task.Crosses100] == "true" && ts[task.Addends] != "")
}

func one(yes bool) float64 {
	if yes {
		return 1
	}
	return 0
}

// Weights is the table of default weights, in a fixed order.
func Weights() []Weight { return append([]Weight(nil), weights...) }

// Amount is how much of the weight's feature the traits hold: usually 0 or 1.
func (w Weight) Amount(ts task.Traits) float64 { return w.amount(ts) }

// Predict is the predicted difficulty of a task of the skill with the traits: the
// skill's Base plus every weight times its amount. An unknown skill has Base −1.
func Predict(skill SkillID, ts task.Traits) Difficulty {
	base := -1000
	if s, ok := catalogue.Skill(skill); ok {
		base = s.Base
	}
	logits := float64(base) / 1000
	for _, w := range weights {
		logits += w.Logits * w.amount(ts)
	}
	return Difficulty(math.Round(1000 * logits))
}
