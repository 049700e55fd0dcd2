package standards

import (
	"math"
	"slices"
	"strings"

	"evenhand/standards/task"
)

// Weight says what a feature of a task adds to its difficulty.
type Weight struct {
	Name   string // unique, as in calibration reports
	Logits float64
	Source string // published source, or "common practice"
	amount func(features) float64
}

const (
	subtractionStudy = "least squares on the Rasch difficulties of column subtractions by 294 pupils, de Chiusole & Stefanutti (2013)"
	commonPractice   = "common practice, no source"
	countingModel    = "common practice for the size; the order is that of Groen & Parkman (1972), Psychological Review 79"
	doublesKnown     = "common practice for the size; that doubles are known, put together or taken apart: " +
		"Groen & Parkman (1972); Woods, Resnick & Groen (1975), from memory"
	fluency        = "common practice for the size; that facts within 10 come first: Common Core State Standards (2010), K.OA.A.2 and 1.OA.C.6"
	tensCounted    = "common practice for the size; that kindergarten counts by tens to 100: Common Core State Standards (2010), K.CC.A.1"
	takingAway     = "common practice for the size; that taking away is harder than adding: Fuson (1992), from memory"
	clockOrder     = "common practice for the size; the order is that of Boulton-Lewis, Wilss & Mutch (1997)"
	hourHand       = "common practice for the size; that the hour hand is the harder one: Earnest, Gonzales & Plant (2018)"
	situationOrder = "common practice for the size; the order is that of Riley, Greeno & Heller (1983), from memory"
	comparedOrder  = "common practice for the size; that a word pulling to the wrong operation makes it harder: Lewis & Mayer (1987)"
	equalSign      = "set so that about 1 in 10 are right on 8 + 4 = ? + 5, of whom Falkner, Levi & Carpenter (1999) found 1 in 20, from memory"
	equalSignOrder = "common practice for the size; the order is that of Behr, Erlwanger & Nichols (1980)"
	distance       = "common practice for the size; that numbers far apart are easier to compare: Moyer & Landauer (1967)"
	unitsAndTens   = "common practice for the size; that disagreeing ones make comparing harder: Nuerk, Weger & Willmes (2001), Cognition 82"
	emptyPlace     = "common practice for the size; that zeros are where writing numbers goes wrong: Byrge, Smith & Mix (2014)"
	readingData    = "common practice for the size; that comparing and putting together is harder than reading off: " +
		"Curcio (1987), Journal for Research in Mathematics Education 18, from memory"
	brokenRuler = "common practice for the size; that a ruler not begun at 0 is much harder: " +
		"Lehrer (2003), A Research Companion to Principles and Standards, from memory"
	unusualShape    = "common practice for the size; that shapes unlike the usual picture are harder: Clements & Sarama (2000), Teaching Children Mathematics 6"
	bodyUnits       = "common practice, no source: an inch and a centimeter can be shown between fingers, a foot and a meter can't"
	conservation    = "common practice for the size; that moved things are often thought to be more or fewer: Piaget (1952), from memory"
	countingObjects = "common practice for the size; that more things, and scattered ones, are harder to count: Gelman & Gallistel (1978), from memory"
)

// weights is the one table of what features add. A skill's Base is the difficulty of its
// easiest tasks for pupils of its own grade; a weight is added once for every unit of its
// feature. Features that grow with numbers are scaled to be about 1 where the numbers are
// largest, so that all weights can be believed equally firmly when papers teach otherwise.
var weights = []Weight{
	{"regroups", .444, subtractionStudy, regroupings},
	{"zero_crossed", 1.489, subtractionStudy, zeroCrossed},
	{"zero crossed by counting", .30, commonPractice, func(f features) float64 { return one(f.is(task.ZeroCrossed, "true")) * f.counted() }},
	{"seen by counting", -.40, countingModel, func(f features) float64 { return one(f.large()) * f.counted() }},
	{"ten steps to count", 1.50, countingModel, stepsToCount},
	{"taking away", .40, takingAway, func(f features) float64 { return one(f.has(task.ZeroCrossed)) }},
	{"sum past 100", .20, commonPractice, sumPast100},
	{"three digits or more", .30, commonPractice, func(f features) float64 { return one(f.digits >= 3) }},
	{"within ten", -.80, fluency, func(f features) float64 {
		return one(f.has(task.Regroups) && f.has(task.CountSteps) && !f.has(task.Situation) && f.largest <= 10)
	}},
	{"doubles", -.60, doublesKnown, func(f features) float64 { return one(f.is(task.Doubles, "true") || f.halved()) }},
	{"near_doubles", -.15, commonPractice, when(task.NearDoubles, "true")},
	{"makes_ten", -.20, commonPractice, func(f features) float64 { return one(f.is(task.MakesTen, "true") || f.fromTen()) }},
	{"fourth addend", .40, commonPractice, func(f features) float64 { return one(f.addends >= 4 && f.has(task.Regroups)) }},
	{"size of a sum of three", .80, countingModel, func(f features) float64 {
		return float64(f.largest) / 20 * one(f.addends >= 3 && f.has(task.Regroups) && f.largest <= 20)
	}},
	{"small numbers of a chain", -1.00, countingModel, func(f features) float64 {
		return one(f.has(task.ZeroCrossed) && !f.has(task.CountSteps) && !f.has(task.Situation) && f.largest <= 20)
	}},
	{"numbers of a story past 20", 1.30, countingModel, func(f features) float64 { return one(f.has(task.Situation) && f.largest > 20) }},
	{"unknown change", .50, commonPractice, when(task.Unknown, "change")},
	{"unknown start", .80, commonPractice, when(task.Unknown, "start")},

	{"half hour", .60, clockOrder, when(task.ClockStep, "half-hour")},
	{"quarter hour", 1.00, clockOrder, when(task.ClockStep, "quarter-hour")},
	{"five minutes", 1.50, clockOrder, when(task.ClockStep, "five-minute")},
	{"minutes", 2.10, clockOrder, when(task.ClockStep, "minute")},
	{"past the half hour", .30, hourHand, when(task.PastHalf, "true")},
	{"hands drawn", .50, hourHand, when(task.Asks, "draw")},
	{"time in words", .30, commonPractice, when(task.Asks, "say")},
	{"clocks matched", -.30, commonPractice, when(task.Asks, "match")},
	{"clocks matched past the half hour", .80, clockOrder, func(f features) float64 {
		return one(f.asks("match") && (f.is(task.ClockStep, "quarter-hour") || f.is(task.ClockStep, "five-minute")))
	}},
	{"hands_overlap", .20, commonPractice, when(task.HandsOverlap, "true")},

	{"both parts unknown", .20, commonPractice, whenOne(task.TogetherBoth)},
	{"a part of a whole", .30, situationOrder, whenOne(task.TogetherAddend)},
	{"start of a story", .30, situationOrder, whenOne(task.AddToStart, task.TakeFromStart)},
	{"difference compared", 1.20, situationOrder, whenOne(task.CompareDifference)},
	{"two compared", .80, situationOrder, whenOne(task.CompareBigger, task.CompareSmaller)},
	{"said the other way", 1.60, comparedOrder, whenOne(task.CompareBiggerLess, task.CompareSmallerMore)},

	{"across the equal sign", 2.60, equalSign, whenAsked("equal sides")},
	{"addends turned around", .50, commonPractice, whenAsked("same addends")},
	{"result first", .80, equalSignOrder, whenAsked("result first")},
	{"no operation", 1.00, equalSignOrder, whenAsked("two numbers")},
	{"operations on both sides", 1.30, equalSignOrder, whenAsked("both sides")},
	{"size of equal sides", .60, commonPractice, func(f features) float64 {
		return float64(min(f.largest, 20)) / 20 * one(f.asks("equal sides", "same addends", "result last", "result first", "two numbers", "both sides"))
	}},

	{"things counted", 2.00, countingObjects, func(f features) float64 {
		return float64(f.largest) / 20 * one(f.asks("in rows", "scattered", "in a circle", "counted out", "dots numbered", "dots moved"))
	}},
	{"scattered", .50, countingObjects, whenAsked("scattered")},
	{"in a circle", .30, countingObjects, whenAsked("in a circle")},
	{"dots moved", 1.00, conservation, whenAsked("dots moved")},
	{"one more dot", .60, commonPractice, func(f features) float64 { return float64(f.largest) / 20 * one(f.asks("one more dot")) }},
	{"reason completed", .60, commonPractice, whenAsked("a reason")},
	{"picture drawn", .30, commonPractice, whenAsked("a picture to a sentence")},
	{"counted out", .30, countingObjects, whenAsked("counted out")},
	{"one covers the other", .50, commonPractice, whenAsked("where, one covered")},
	{"dots to pair", .80, countingModel, func(f features) float64 { return float64(f.largest) / 20 * one(f.asks("a group")) }},
	{"size of equal addends", 1.20, countingModel, func(f features) float64 { return float64(f.largest) / 25 * one(f.asks("equal addends")) }},
	{"bills and coins", 1.20, commonPractice, func(f features) float64 { return float64(f.addends) / 7 * one(f.asks("bills and coins")) }},
	{"size of bills and coins", .60, commonPractice, func(f features) float64 { return float64(f.largest) / 100 * one(f.asks("bills and coins")) }},
	{"step of a line", .30, commonPractice, func(f features) float64 { return one(f.asks("a mark", "a jump") && f.step > 1) }},
	{"length of a line", .40, commonPractice, func(f features) float64 { return float64(f.largest) / 100 * one(f.asks("a jump")) }},
	{"gap between numbers", -1.20, distance, func(f features) float64 { return float64(f.number(task.Apart)) / 10 * one(f.largest <= 10) }},
	{"size compared", .50, distance, func(f features) float64 { return float64(f.largest) / 10 * one(f.has(task.Apart) && f.largest <= 10) }},
	{"fewer", .30, commonPractice, whenAsked("fewer")},
	{"more digits", -.30, commonPractice, when(task.Decides, "more digits")},
	{"second digit decides", .25, commonPractice, func(f features) float64 {
		return one(f.is(task.Decides, "tens") || f.is(task.Decides, "ones") && f.digits >= 2)
	}},
	{"ones decide past 100", .15, commonPractice, func(f features) float64 { return one(f.is(task.Decides, "ones") && f.digits >= 3) }},
	{"equal numbers", .40, commonPractice, when(task.Decides, "none")},
	{"smaller place misleads", .40, unitsAndTens, func(f features) float64 { return one(f.is(task.Misleads, "true") && f.has(task.Decides)) }},

	{"counting down", .70, commonPractice, whenAsked("down")},
	{"less", .30, commonPractice, whenAsked("less")},
	{"counting in twos or fives", .15, commonPractice, func(f features) float64 { return one(f.counting() && (f.step == 2 || f.step == 5)) }},
	{"round steps", -.40, commonPractice, func(f features) float64 { return one(f.counting() && f.step >= 10 && f.largest%f.step == 0) }},
	{"tens to 100", -.80, tensCounted, func(f features) float64 {
		return one(f.counting() && f.step == 10 && f.largest <= 100 && f.largest%10 == 0)
	}},
	{"steps between round numbers", .30, commonPractice, func(f features) float64 { return one(f.counting() && f.step > 1 && f.largest%f.step != 0) }},
	{"counting past 20", .30, commonPractice, func(f features) float64 { return one(f.counting() && f.largest > 20) }},
	{"counting over 100", .40, commonPractice, func(f features) float64 {
		return one(f.counting() && (f.is(task.Crosses100, "true") || f.is(task.Reaches100, "true")))
	}},

	{"teen number", .40, commonPractice, func(f features) float64 { return one(f.names() && f.largest > 12 && f.largest < 20) }},
	{"empty place", .50, emptyPlace, func(f features) float64 { return one(f.names() && strings.Contains(f.text, "0") && !f.round()) }},
	{"round number", -.40, commonPractice, func(f features) float64 { return one(f.names() && f.largest > 9 && f.round()) }},
	{"two digits taken apart", -1.00, commonPractice, func(f features) float64 { return one(f.asks("parts", "number") && f.digits == 2) }},
	{"put together", .30, commonPractice, whenAsked("number")},
	{"length of the name", .90, commonPractice, func(f features) float64 { return float64(len(f.text)) / 3 * one(f.asks("words")) }},

	{"coins", 1.20, commonPractice, func(f features) float64 { return float64(f.addends) / 10 * one(f.asks("worth")) }},
	{"worth of coins", .80, commonPractice, func(f features) float64 { return float64(f.largest) / 100 * one(f.asks("worth")) }},
	{"coins of ten or more", .40, commonPractice, func(f features) float64 { return one(f.asks("worth") && f.digits >= 2) }},
	{"estimated in feet or meters", .30, bodyUnits, whenAsked("estimate in a large unit")},
	{"number of an estimate", .60, commonPractice, func(f features) float64 {
		return float64(min(f.largest, 100)) / 100 * one(f.asks("estimate in a small unit", "estimate in a large unit"))
	}},
	{"tool for what is long", .30, commonPractice, whenAsked("tool for what is long")},
	{"tool for what is round", .70, commonPractice, whenAsked("tool for what is round")},
	{"sorts compared", .90, readingData, whenAsked("how many more", "how many fewer")},
	{"sorts put together", .50, readingData, whenAsked("how many in all")},
	{"sorts in order", .80, readingData, whenAsked("order from fewest")},
	{"graph drawn", .60, commonPractice, whenAsked("draw the graph", "draw the chart")},
	{"size of data", .60, commonPractice, func(f features) float64 {
		return float64(min(f.largest, 20)) / 20 * one(f.asks("how many", "how many more", "how many fewer", "how many in all", "draw the graph", "draw the chart"))
	}},
	{"not measured from 0", 1.40, brokenRuler, whenAsked("length not from 0", "how much longer not from 0")},
	{"length measured", .50, commonPractice, func(f features) float64 {
		return float64(f.largest) / 15 * one(f.asks("length from 0", "length not from 0"))
	}},
	{"unusual shape", .70, unusualShape, func(f features) float64 { return one(f.is(task.Misleads, "true") && !f.has(task.Decides)) }},
	{"sides or corners counted", 1.20, commonPractice, func(f features) float64 {
		return float64(f.largest) / 8 * one(f.asks("sides", "corners", "faces", "a drawing"))
	}},
	{"faces at the back", .80, commonPractice, whenAsked("faces")},
	{"pieces counted", 1.20, commonPractice, func(f features) float64 {
		return float64(f.largest) / 6 * one(f.asks("pieces", "made pieces", "joined"))
	}},
	{"made of made pieces", .60, commonPractice, whenAsked("made pieces")},
	{"longer ones in a plot", .80, readingData, whenAsked("plot how many longer than")},
	{"all of a plot", .50, readingData, whenAsked("plot how many in all")},
	{"length that is most often", .60, readingData, whenAsked("plot which length is most often")},
	{"longest less shortest", 1.20, readingData, whenAsked("plot how much longer")},
	{"plot drawn", .80, commonPractice, whenAsked("plot draw")},
	{"size of a plot", .60, commonPractice, func(f features) float64 {
		return float64(min(f.largest, 20)) / 20 * one(strings.HasPrefix(f.traits[task.Asks], "plot "))
	}},
	{"blocks counted", .80, countingObjects, func(f features) float64 {
		return float64(f.largest) / 20 * one(f.asks("blocks end to end", "blocks three ways", "short and long blocks"))
	}},
	{"three short in a long", .30, commonPractice, func(f features) float64 { return one(f.asks("short and long blocks") && f.step == 3) }},
	{"shorter asked", .30, commonPractice, whenAsked("shorter", "shorter by a third")},
	{"shares", .80, commonPractice, func(f features) float64 {
		return float64(f.largest-2) / 2 * one(f.asks("equal shares", "name share", "shares in all", "which shares", "a cut", "larger share"))
	}},
	{"thirds of a shape", .40, commonPractice, func(f features) float64 { return one(f.asks("name share", "a cut") && f.largest == 3) }},
	{"squares in rows", 1.30, countingModel, func(f features) float64 { return float64(f.largest) / 25 * one(f.asks("squares", "squares to draw")) }},
	{"lines to draw", .50, commonPractice, whenAsked("squares to draw")},
	{"things in rows", 1.50, countingModel, func(f features) float64 { return float64(f.largest) / 25 * one(f.asks("in all")) }},
	{"number taken apart", 1.60, countingModel, func(f features) float64 { return float64(f.largest) / 20 * one(f.plainNumber()) }},
}

// features are the traits of a task, its numbers read once.
type features struct {
	traits                         task.Traits
	text                           string // of the largest number
	largest, digits, addends, step int
}

func featuresOf(ts task.Traits) features {
	f := features{traits: ts, text: ts[task.Largest]}
	f.largest, f.digits = f.number(task.Largest), f.number(task.Digits)
	f.addends, f.step = f.number(task.Addends), f.number(task.Step)
	return f
}

func (f features) number(t task.Trait) int {
	n, _ := f.traits.Number(t)
	return n
}

func (f features) has(t task.Trait) bool              { return f.traits[t] != "" }
func (f features) is(t task.Trait, value string) bool { return f.traits[t] == value }
func (f features) asks(values ...string) bool         { return slices.Contains(values, f.traits[task.Asks]) }

// counting is going on by steps, as in 35, 40, ?, 50; more or less by one step is none.
func (f features) counting() bool { return f.asks("up", "down") }

// names is reading, writing or taking apart one number.
func (f features) names() bool { return f.asks("digits", "words", "parts", "number") }

// round is a number with one digit that is not zero.
func (f features) round() bool { return f.text != "" && strings.Trim(f.text[1:], "0") == "" }

// plainNumber is a task about nothing but one small number: its pairs, or whether it is odd.
func (f features) plainNumber() bool {
	return f.largest <= 20 && f.has(task.Digits) && f.traits.Only(task.Digits, task.Largest, task.Situation)
}

// Up to fewSteps an answer is seen by counting, however the columns stand: 100 - 1 and
// 300 - 299. From manySteps on it is worked in columns (common practice).
const (
	fewSteps  = 3
	manySteps = 8
)

// counted is how far the answer is seen by counting: 1 with few steps, 0 with many, less with
// each step between.
func (f features) counted() float64 {
	if !f.has(task.CountSteps) {
		return 0
	}
	steps := min(max(f.number(task.CountSteps), fewSteps), manySteps)
	return float64(manySteps-steps) / (manySteps - fewSteps)
}

// large is a number past 20, or tens.
func (f features) large() bool {
	return f.largest > 20 || f.has(task.Regroups) && f.largest%10 == 0 && f.is(task.Regroups, "0")
}

// takenAway is a subtraction of two numbers within 20.
func (f features) takenAway() bool {
	return f.has(task.ZeroCrossed) && f.has(task.CountSteps) && f.largest <= 20
}

// halved is a double taken apart, as 14 - 7.
func (f features) halved() bool {
	steps := f.number(task.CountSteps)
	return f.takenAway() && steps > 0 && steps < 10 && 2*steps == f.largest
}

// fromTen is ones taken from a ten, as 10 - 4.
func (f features) fromTen() bool {
	return f.takenAway() && f.largest%10 == 0 && !f.is(task.Regroups, "0")
}

// regroupings count half where the answer is seen by counting.
func regroupings(f features) float64 {
	return float64(f.number(task.Regroups)) * (1 - f.counted()/2)
}

// zeroCrossed counts where the answer isn't seen by counting, and half in a story, which can be
// worked without columns (common practice).
func zeroCrossed(f features) float64 {
	amount := one(f.is(task.ZeroCrossed, "true")) * (1 - f.counted())
	if f.has(task.Situation) {
		return amount / 2
	}
	return amount
}

// stepsToCount are in tens, and weigh less with larger numbers, where few still count.
func stepsToCount(f features) float64 {
	steps := float64(f.number(task.CountSteps)) / 10
	if f.large() {
		return .4 * steps
	}
	return steps
}

// sumPast100 is about sums only: with subtractions of three digits and more, the
// pupils of the study showed no such step.
func sumPast100(f features) float64 {
	return one(f.is(task.Crosses100, "true") && f.has(task.Addends))
}

func when(t task.Trait, value string) func(features) float64 {
	return func(f features) float64 { return one(f.is(t, value)) }
}

func whenAsked(values ...string) func(features) float64 {
	return func(f features) float64 { return one(f.asks(values...)) }
}

func whenOne(situations ...task.StorySituation) func(features) float64 {
	return func(f features) float64 {
		return one(slices.Contains(situations, task.StorySituation(f.traits[task.Situation])))
	}
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
func (w Weight) Amount(ts task.Traits) float64 { return w.amount(featuresOf(ts)) }

// Predict is the predicted difficulty of a task of the skill with the traits: the
// skill's Base plus every weight times its amount. An unknown skill has Base −1.
func Predict(skill SkillID, ts task.Traits) Difficulty {
	base := -1000
	if s, ok := catalogue.Skill(skill); ok {
		base = s.Base
	}
	logits := float64(base) / 1000
	f := featuresOf(ts)
	for _, w := range weights {
		logits += w.Logits * w.amount(f)
	}
	return Difficulty(math.Round(1000 * logits))
}
