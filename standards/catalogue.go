package standards

import (
	"slices"

	"evenhand/standards/task"
	"evenhand/standards/words"
)

// CatalogueNumber grows by one whenever this program computes other values for an item than the
// one before: its skill, codes, traits, looks, seconds or predicted difficulty. A stored bank
// carries the number by which its items were computed.
//
//  1. as first kept
//  2. traits of what is asked; a hundred crossed and reached as taught; codes at their limits;
//     one scale of difficulty
const CatalogueNumber = 2

// clockLooks are the looks of a time on a clock.
var clockLooks = []task.Look{
	task.LookClockFace, task.LookBlankFace, task.LookSaidFace, task.LookSaidTime, task.LookChoice,
}

// catalogue is the skills in teaching order. A task belongs to the first row whose
// test it passes, so narrower skills stand before wider ones. Base difficulties and
// working times are common practice, no source; the order of the clock skills is
// that of Boulton-Lewis, Wilss & Mutch (1997), by the weights in weights.go.
var catalogue = SkillList{
	{"count-dots", 0, []task.Code{"K.CC.B.5"}, []task.Look{task.LookDots}, 20, -3000,
		"count up to 20 things in rows or in a circle, up to 10 scattered", "count 13",
		is[task.HowMany]},
	{"compare-groups", 0, []task.Code{"K.CC.C.6"}, []task.Look{task.LookGroups}, 15, -1900,
		"say which of two groups has more or fewer", "more: 5 or 8 dots",
		is[task.Groups]},
	{"write-to-20", 0, []task.Code{"K.CC.A.3", "1.NBT.A.1", "2.NBT.A.3"},
		[]task.Look{task.LookWords, task.LookChoice}, 15, -2200,
		"write numbers to 20 in digits", "write thirteen",
		writing(20)},
	{"number-pairs", 0, []task.Code{"K.OA.A.3"}, []task.Look{task.LookPairs}, 45, -2000,
		"find two pairs that make a number to 10", "pairs of 7",
		is[task.Pairs]},
	{"make-ten", 0, []task.Code{"K.OA.A.4", "1.OA.D.8"},
		[]task.Look{
			task.LookSentence, task.LookBond, task.LookNumberLine, task.LookHundredsChart, task.LookChoice,
		}, 20, -2600,
		"find the partner that makes 10", "6 + ? = 10",
		sentence(func(s task.Sentence) bool {
			return s.N == 2 && s.IsAddition() && s.Blank != 2 && s.Result() == 10 && min(s.Terms[0], s.Terms[1]) > 0
		})},
	{"subtract-tens", 1, []task.Code{"1.NBT.C.6", "1.OA.C.6", "2.OA.B.2", "K.OA.A.2"},
		[]task.Look{
			task.LookSentence, task.LookColumn, task.LookBond, task.LookNumberLine, task.LookHundredsChart,
		}, 25, -2400,
		"take tens from tens", "80 - 30 = ?",
		result2(func(s task.Sentence) bool { return s.IsTens() })},
	{"stories-within-10", 0, []task.Code{"K.OA.A.2", "K.OA.A.3", "1.OA.A.1", "2.OA.A.1"},
		[]task.Look{task.LookStory, task.LookChoice}, 60, -2100,
		"stories of the situations of kindergarten, within 10", "story add-to result-unknown: 5 + 3 = ?, shells, Mia",
		kindergartenStory},
	{"length-stories", 2, []task.Code{"2.MD.B.5", "2.OA.A.1", "1.OA.A.1"},
		[]task.Look{task.LookStory, task.LookChoice}, 80, -1800,
		"stories about lengths, within 100", "story take-from result-unknown: 62 - 25 = ?, rope, Omar",
		story(func(s task.Story) bool { return s.Measured() })},
	{"money-stories", 2, []task.Code{"2.MD.C.8", "2.OA.A.1", "1.OA.A.1"},
		[]task.Look{task.LookStory, task.LookChoice}, 80, -1800,
		"stories about cents, within a dollar", "story take-from result-unknown: 60 - 25 = ?, cents, Ana",
		story(func(s task.Story) bool { return s.Money() })},
	{"two-step-stories", 2, []task.Code{"2.OA.A.1", "1.OA.A.2"},
		[]task.Look{task.LookStory, task.LookChoice}, 100, -1100,
		"stories with two steps, within 100", "story two-step: 25 + 17 - 12 = ?, shells, Mia",
		story(func(s task.Story) bool { return s.Situation == task.TwoSteps })},
	{"stories-within-20", 1, []task.Code{"1.OA.A.1", "2.OA.A.1"},
		[]task.Look{task.LookStory, task.LookChoice}, 70, -2100,
		"stories of the situations of grade 1, within 20", "story add-to change-unknown: 5 + ? = 12, shells, Mia",
		story(func(s task.Story) bool {
			return s.Situation.Mastered() <= 1 && s.Sentence.Size() <= 20
		})},
	{"stories-within-100", 2, []task.Code{"2.OA.A.1", "1.OA.A.1"},
		[]task.Look{task.LookStory, task.LookChoice}, 80, -2000,
		"stories of all fourteen situations, within 100",
		"story compare smaller-unknown more: 62 - 25 = ?, books, Lin, Kofi",
		is[task.Story]},
	{"facts-within-20", 1, []task.Code{"K.OA.A.2", "K.OA.A.5", "1.OA.C.6", "2.OA.B.2", "K.NBT.A.1"},
		[]task.Look{
			task.LookSentence, task.LookBond, task.LookColumn, task.LookMakeTen, task.LookNumberLine,
			task.LookHundredsChart, task.LookChoice,
		}, 20, -2600,
		"add and subtract two numbers within 20", "7 + 8 = ?",
		result2(func(s task.Sentence) bool { return s.Size() <= 20 })},
	{"three-addends", 1, []task.Code{"1.OA.B.3", "1.OA.C.6"},
		[]task.Look{task.LookSentence, task.LookColumn, task.LookChoice}, 30, -2100,
		"add three numbers to 20", "9 + 4 + 6 = ?",
		sentence(func(s task.Sentence) bool {
			return s.N == 3 && s.Blank == 3 && s.IsAddition() && s.Size() <= 20
		})},
	{"missing-number", 1, []task.Code{"1.OA.D.8", "K.NBT.A.1"},
		[]task.Look{
			task.LookSentence, task.LookBond, task.LookNumberLine, task.LookHundredsChart, task.LookChoice,
		}, 30, -2600,
		"find the unknown number within 20", "8 + ? = 11",
		sentence(func(s task.Sentence) bool { return s.Blank != s.N && s.Size() <= 20 })},
	{"related-facts", 1, []task.Code{"1.OA.B.4"}, []task.Look{task.LookTwin}, 35, -2500,
		"take away by finding the unknown addend", "8 + ? = 11, 11 - 8 = ?",
		is[task.Related]},
	{"true-or-false", 1, []task.Code{"1.OA.D.7"}, []task.Look{task.LookTick}, 25, -2300,
		"say whether both sides of the equal sign are worth the same, within 20", "true or false: 7 = 8 - 1",
		func(t task.Task) bool {
			s, ok := t.(task.TrueFalse)
			return ok && s.Largest() <= 20
		}},
	{"turn-around", 1, []task.Code{"1.OA.B.3", "1.OA.D.7"},
		[]task.Look{task.LookSentence, task.LookChoice}, 30, -2900,
		"add in another order, or two of three addends first, within 20", "8 + 3 = 3 + ?",
		func(t task.Task) bool {
			s, ok := t.(task.Balance)
			return ok && s.SameAddends() && s.Largest() <= 20
		}},
	{"balance", 1, []task.Code{"1.OA.D.7"}, []task.Look{task.LookSentence, task.LookChoice}, 35, -1400,
		"make both sides of the equal sign worth the same, within 20", "4 + 6 = 7 + ?",
		func(t task.Task) bool {
			s, ok := t.(task.Balance)
			return ok && s.Largest() <= 20
		}},
	{"balance-larger", 2, []task.Code{"2.NBT.B.5", "2.NBT.B.7"},
		[]task.Look{task.LookSentence, task.LookTick, task.LookChoice}, 60, -1500,
		"equal sides past 20, to fill in or to judge", "40 + 30 = 50 + ?",
		func(t task.Task) bool { return is[task.Balance](t) || is[task.TrueFalse](t) }},
	{"missing-number-larger", 2, []task.Code{"2.NBT.B.5", "2.NBT.B.7"},
		[]task.Look{
			task.LookSentence, task.LookBond, task.LookNumberLine, task.LookHundredsChart, task.LookChoice,
		}, 45, -2600,
		"find the unknown number past 20", "47 + ? = 83",
		sentence(func(s task.Sentence) bool { return s.Blank != s.N && s.Size() <= 1000 })},
	{"add-ones", 1, []task.Code{"1.NBT.C.4"},
		[]task.Look{
			task.LookSentence, task.LookColumn, task.LookBond, task.LookMakeTen, task.LookNumberLine,
			task.LookHundredsChart, task.LookChoice,
		}, 30, -2400,
		"add ones to a two-digit number, within 100", "47 + 5 = ?",
		sum2(func(a, b, sum int) bool { return a < 100 && b < 10 && sum <= 100 })},
	{"add-tens", 1, []task.Code{"1.NBT.C.4"},
		[]task.Look{
			task.LookSentence, task.LookColumn, task.LookBond, task.LookNumberLine, task.LookHundredsChart,
			task.LookChoice,
		}, 30, -2300,
		"add tens to a two-digit number, within 100", "47 + 30 = ?",
		sum2(func(a, b, sum int) bool {
			return a < 100 && (a%10 == 0 || b%10 == 0) && sum <= 100
		})},
	{"add-two-digit", 2, []task.Code{"2.NBT.B.5"},
		[]task.Look{
			task.LookSentence, task.LookColumn, task.LookBond, task.LookBreakApart, task.LookNumberLine,
			task.LookHundredsChart, task.LookChoice,
		}, 45, -2100,
		"add two two-digit numbers, within 100", "47 + 36 = ?",
		sum2(func(a, _, sum int) bool { return a <= 100 && sum <= 100 })},
	{"add-past-100", 2, []task.Code{"2.NBT.B.7"},
		[]task.Look{
			task.LookSentence, task.LookColumn, task.LookBreakApart, task.LookHundredsChart, task.LookChoice,
		}, 50, -1900,
		"add numbers below 100 to a sum past 100", "63 + 45 = ?",
		sum2(func(a, _, _ int) bool { return a < 100 })},
	{"expanded-form", 2, []task.Code{"2.NBT.A.3", "1.NBT.B.2", "K.NBT.A.1"},
		[]task.Look{task.LookExpanded, task.LookSentence, task.LookFrame, task.LookBond, task.LookChoice}, 35, -1900,
		"write a number as hundreds, tens and ones added, and back", "142 = ? + ? + ?",
		func(t task.Task) bool {
			s, isSentence := t.(task.Sentence)
			_, isExpanded := t.(task.Expanded)
			return isExpanded || isSentence && s.IsExpanded()
		}},
	{"add-several", 2, []task.Code{"2.NBT.B.6"},
		[]task.Look{task.LookSentence, task.LookColumn, task.LookChoice}, 75, -2200,
		"add three or four numbers of up to two digits", "20 + 15 + 36 + 12 = ?",
		sentence(func(s task.Sentence) bool {
			return s.N > 2 && s.Blank == s.N && s.IsAddition() && slices.Max(s.Operands()) <= 99
		})},
	{"add-within-1000", 2, []task.Code{"2.NBT.B.7"},
		[]task.Look{task.LookSentence, task.LookColumn, task.LookHundredsChart, task.LookChoice}, 60, -2200,
		"add within 1000", "347 + 128 = ?",
		sentence(func(s task.Sentence) bool { return s.Blank == s.N && s.IsAddition() && s.Size() <= 1000 })},
	{"subtract-two-digit", 2, []task.Code{"2.NBT.B.5"},
		[]task.Look{
			task.LookSentence, task.LookColumn, task.LookBond, task.LookNumberLine, task.LookHundredsChart,
			task.LookChoice,
		}, 40, -2500,
		"subtract within 100 without regrouping", "87 - 34 = ?",
		result2(func(s task.Sentence) bool {
			return s.Size() <= 100 && task.SubtractionRegroups(s.Terms[0], s.Terms[1]) == 0
		})},
	{"subtract-regrouping", 2, []task.Code{"2.NBT.B.5"},
		[]task.Look{
			task.LookSentence, task.LookColumn, task.LookBond, task.LookNumberLine, task.LookHundredsChart,
			task.LookChoice,
		}, 50, -2500,
		"subtract within 100 with regrouping", "83 - 47 = ?",
		result2(func(s task.Sentence) bool { return s.Size() <= 100 })},
	{"subtract-within-1000", 2, []task.Code{"2.NBT.B.7"},
		[]task.Look{
			task.LookSentence, task.LookColumn, task.LookBond, task.LookHundredsChart, task.LookChoice,
		}, 65, -2600,
		"subtract within 1000", "402 - 178 = ?",
		result2(func(s task.Sentence) bool { return s.Size() <= 1000 })},
	{"add-and-subtract", 2, []task.Code{"1.OA.C.6", "2.NBT.B.5", "2.NBT.B.7", "2.OA.B.2"},
		[]task.Look{task.LookSentence, task.LookChoice}, 50, -1900,
		"add and take away in one sentence", "12 + 5 - 3 = ?",
		sentence(func(s task.Sentence) bool { return s.N > 2 && !s.IsAddition() && s.Size() <= 1000 })},
	{"tens-and-ones", 1, []task.Code{"1.NBT.B.2", "K.NBT.A.1"},
		[]task.Look{task.LookFrame, task.LookTensAndOnes, task.LookSentence, task.LookChoice}, 30, -2200,
		"tens and ones of a two-digit number, and back", "47 = ? tens ? ones",
		placeValue(2)},
	{"hundreds-tens-ones", 2, []task.Code{"2.NBT.A.1"},
		[]task.Look{task.LookFrame, task.LookTensAndOnes, task.LookSentence, task.LookChoice}, 35, -2000,
		"hundreds, tens and ones of a three-digit number, and back", "142 = ? hundreds ? tens ? ones",
		placeValue(3)},
	{"compare-within-10", 0, []task.Code{"K.CC.C.7"}, []task.Look{task.LookCompare}, 15, -2100,
		"compare numbers to 10", "4 ? 7",
		comparing(10)},
	{"compare-two-digit", 1, []task.Code{"1.NBT.B.3"}, []task.Look{task.LookCompare}, 20, -2000,
		"compare two-digit numbers", "47 ? 74",
		comparing(99)},
	{"compare-three-digit", 2, []task.Code{"2.NBT.A.4"}, []task.Look{task.LookCompare}, 25, -2100,
		"compare three-digit numbers", "347 ? 374",
		comparing(task.MaxNumber)},
	{"count-on", 1, []task.Code{"K.CC.A.2", "1.NBT.A.1", "K.CC.A.1"}, []task.Look{task.LookSequence}, 25, -2600,
		"count on and back by ones, to 120", "98, 99, ?, 101",
		func(t task.Task) bool {
			s, ok := t.(task.Sequence)
			return ok && (s.Step == 1 || s.Step == -1) && max(s.First, s.Number(s.N-1)) <= 120
		}},
	{"count-by-steps", 2, []task.Code{"K.CC.A.1", "2.NBT.A.2", "2.OA.C.3"}, []task.Look{task.LookSequence}, 30, -2100,
		"count by ones past 120, and by 2s, 5s, 10s and 100s, within 1000", "35, 40, ?, 50",
		is[task.Sequence]},
	{"write-to-120", 1, []task.Code{"1.NBT.A.1", "2.NBT.A.3"},
		[]task.Look{task.LookWords, task.LookChoice}, 20, -2000,
		"write numbers to 120 in digits", "write forty-two",
		writing(120)},
	{"write-to-1000", 2, []task.Code{"2.NBT.A.3"}, []task.Look{task.LookWords, task.LookChoice}, 25, -1900,
		"write numbers to 1000 in digits", "write three hundred forty-two",
		writing(words.MostNamed)},
	{"number-names", 2, []task.Code{"2.NBT.A.3"}, []task.Look{task.LookWords}, 50, -2000,
		"write numbers in words", "write 342 in words",
		is[task.WriteNumber]},
	{"odd-or-even", 2, []task.Code{"2.OA.C.3"}, []task.Look{task.LookTick}, 15, -2600,
		"say whether a number is odd or even", "odd or even: 14",
		func(t task.Task) bool { o, ok := t.(task.OddEven); return ok && !o.Dots }},
	{"small-arrays", 2, []task.Code{"2.OA.C.4"}, []task.Look{task.LookArray}, 30, -2300,
		"find how many in equal rows, up to 5 by 5", "array 3 by 4",
		is[task.Array]},
	{"ten-more-less", 1, []task.Code{"1.NBT.C.5"},
		[]task.Look{task.LookWords, task.LookHundredsChart, task.LookChoice}, 20, -2000,
		"ten more or ten less than a two-digit number", "10 more than 47 = ?",
		func(t task.Task) bool {
			m, ok := t.(task.MoreLess)
			return ok && m.Step == 10 && m.Number <= 99
		}},
	{"hundred-more-less", 2, []task.Code{"2.NBT.B.8"},
		[]task.Look{task.LookWords, task.LookHundredsChart, task.LookChoice}, 25, -2200,
		"ten or a hundred more or less, 100 to 900", "100 less than 340 = ?",
		is[task.MoreLess]},
	{"count-coins", 2, []task.Code{"2.MD.C.8"}, []task.Look{task.LookCoins}, 40, -2500,
		"find what coins are worth, up to a dollar", "coins 25, 10, 10, 5, 1",
		is[task.Coins]},
	{"read-number-line", 2, []task.Code{"2.MD.B.6"}, []task.Look{task.LookMarkedLine}, 25, -2200,
		"read the number at a mark on a number line, to 100", "marked line 0 to 100 by 10: 70",
		is[task.MarkedLine]},
	{"sort-things", 0, []task.Code{"K.MD.B.3"}, []task.Look{task.LookThings}, 40, -2300,
		"sort mixed shapes, count each kind and put the kinds in order",
		"things circles 4, squares 7, stars 2: how many squares",
		func(t task.Task) bool {
			d, ok := t.(task.Data)
			return ok && d.Form == task.Things
		}},
	{"read-data", 1, []task.Code{"1.MD.C.4", "2.MD.D.10"},
		[]task.Look{task.LookTallyChart, task.LookTable, task.LookPictureGraph, task.LookBarGraph}, 40, -2400,
		"read and make tally charts, tables and graphs of up to three kinds",
		"tally chart cats 4, dogs 7, birds 2: how many dogs",
		func(t task.Task) bool {
			d, ok := t.(task.Data)
			return ok && d.N <= 3
		}},
	{"read-graphs", 2, []task.Code{"2.MD.D.10"}, []task.Look{task.LookPictureGraph, task.LookBarGraph}, 45, -2600,
		"read and draw picture graphs and bar graphs of four kinds",
		"bar graph cats 4, dogs 7, birds 2, fish 5: how many more dogs than cats",
		is[task.Data]},
	{"compare-lengths", 0, []task.Code{"K.MD.A.2"}, []task.Look{task.LookTwoBars}, 15, -2000,
		"say which of two bars is longer, shorter or taller", "bars 5, 8: which is longer",
		lengths(task.WhichLonger, task.WhichShorter, task.WhichTaller)},
	{"order-lengths", 1, []task.Code{"1.MD.A.1"}, []task.Look{task.LookThreeBars}, 30, -1700,
		"put three bars in order by length", "bars 5, 8, 3: order from shortest",
		lengths(task.LengthOrder)},
	{"compare-by-third", 1, []task.Code{"1.MD.A.1"}, []task.Look{task.LookBarPairs}, 35, -1200,
		"compare two bars by a third", "bars 9, 6, 4: which is longer of a and c by b",
		lengths(task.LongerByAThird, task.ShorterByAThird)},
	{"measured-right", 1, []task.Code{"1.MD.A.2"}, []task.Look{task.LookBlockWays}, 30, -1500,
		"find where equal units are laid right, without gaps and overlaps",
		"blocks 6 gaps, even, overlaps: which is right",
		func(t task.Task) bool {
			b, ok := t.(task.Blocks)
			return ok && b.Pictures()
		}},
	{"two-units", 2, []task.Code{"2.MD.A.2"}, []task.Look{task.LookShortBlocks}, 45, -1500,
		"measure a bar with a long unit and a short one", "blocks 4 long, 2 short in each: how many short",
		func(t task.Task) bool {
			b, ok := t.(task.Blocks)
			return ok && b.Parts > 0
		}},
	{"measure-with-blocks", 1, []task.Code{"1.MD.A.2"}, []task.Look{task.LookBlocks}, 20, -2700,
		"measure a bar with equal units end to end", "blocks 6: how long",
		is[task.Blocks]},
	{"measuring-tools", 2, []task.Code{"2.MD.A.1"}, []task.Look{task.LookEstimate}, 20, -2200,
		"choose the tool to measure a length with", "tool for hallway: measuring tape",
		func(t task.Task) bool {
			e, ok := t.(task.Estimate)
			return ok && e.Tool
		}},
	{"estimate-lengths", 2, []task.Code{"2.MD.A.3"}, []task.Look{task.LookEstimate}, 25, -1200,
		"choose the length that fits, in inches, feet, centimeters and meters", "estimate bed: 6 feet",
		is[task.Estimate]},
	{"line-plots", 2, []task.Code{"2.MD.D.9"}, []task.Look{task.LookLinePlot}, 45, -2300,
		"read and draw line plots of lengths in whole units", "line plot cm 4: 2, 5: 3, 6: 1, 7: 1: how many 5",
		is[task.LinePlot]},
	{"measure-with-ruler", 2, []task.Code{"2.MD.A.1"}, []task.Look{task.LookCentimeters, task.LookInches}, 35, -2300,
		"measure a bar with a drawn ruler, in centimeters and inches, from 0 and not from 0",
		"ruler cm 0 to 7: how long",
		func(t task.Task) bool {
			r, ok := t.(task.Ruler)
			return ok && !r.Two()
		}},
	{"how-much-longer", 2, []task.Code{"2.MD.A.4"}, []task.Look{task.LookCentimeters, task.LookInches}, 45, -1900,
		"measure two bars and say how much longer one is", "ruler cm 0 to 9 and 0 to 4: how much longer",
		is[task.Ruler]},
	{"name-shapes", 0, []task.Code{"K.G.A.2"}, []task.Look{task.LookShape}, 15, -2400,
		"name circles, triangles, squares, rectangles and hexagons at any size and turn",
		"name shape: thin triangle at 45",
		naming(false)},
	{"name-solids", 0, []task.Code{"K.G.A.2"}, []task.Look{task.LookShape}, 15, -1900,
		"name cubes, cones, cylinders and spheres at any size and turn", "name shape: cylinder at 180",
		naming(true)},
	{"flat-or-solid", 0, []task.Code{"K.G.A.3"}, []task.Look{task.LookFlatSolid}, 12, -2400,
		"say whether a shape is flat or solid", "flat or solid: cone",
		is[task.FlatSolid]},
	{"sides-and-corners", 0, []task.Code{"K.G.B.4", "2.G.A.1"}, []task.Look{task.LookShapeParts}, 20, -2400,
		"count the sides and corners of flat shapes, and the faces of solids", "sides of: hexagon at 15",
		is[task.ShapeParts]},
	{"make-shapes", 0, []task.Code{"K.G.B.6", "1.G.A.2"}, []task.Look{task.LookMakeShape}, 35, -1500,
		"find how many pieces make a larger shape", "make shape: hexagon from triangle",
		is[task.MakeShape]},
	{"join-shapes", 0, []task.Code{"K.G.B.6", "1.G.A.2"}, []task.Look{task.LookJoinShapes}, 35, -1700,
		"find the shape that some pieces make", "join 2 half squares: hexagon, square, circle",
		is[task.JoinShapes]},
	{"find-shapes", 1, []task.Code{"1.G.A.1", "K.G.A.2", "K.G.A.3", "2.G.A.1"},
		[]task.Look{task.LookFindShapes}, 30, -2200,
		"find the shapes of a name among others, whatever their size and turn",
		"find every triangle: thin triangle at 45, open triangle, square, small triangle at 75, trapezoid",
		finding("circle", "triangle", "square", "rectangle", "flat", "solid")},
	{"find-by-corners", 2, []task.Code{"2.G.A.1"}, []task.Look{task.LookFindShapes}, 35, -2100,
		"find quadrilaterals, pentagons, hexagons and cubes, and shapes of so many corners",
		"find every 5 corners: pentagon, uneven hexagon, uneven pentagon at 45, hexagon, uneven quadrilateral",
		is[task.FindShapes]},
	{"draw-shapes", 1, []task.Code{"1.G.A.1", "K.G.B.5", "2.G.A.1"}, []task.Look{task.LookDrawShape}, 40, -1900,
		"draw shapes of a name or of so many corners", "draw shape: triangle",
		is[task.DrawShape]},
	{"equal-shares", 1, []task.Code{"1.G.A.3", "2.G.A.3"}, []task.Look{task.LookShares}, 15, -2100,
		"say whether a shape is cut into equal shares", "equal shares: circle uneven pie 2",
		sharing("equal shares")},
	{"name-shares", 1, []task.Code{"1.G.A.3", "2.G.A.3"}, []task.Look{task.LookShares}, 15, -2000,
		"name one share a half, a third or a fourth", "name share: square corners 4",
		sharing("name share")},
	{"shares-in-all", 1, []task.Code{"1.G.A.3", "2.G.A.3"}, []task.Look{task.LookShares}, 15, -2300,
		"say how many halves, thirds or fourths make the whole", "shares in all: rectangle down 3",
		is[task.Shares]},
	{"find-shares", 2, []task.Code{"2.G.A.3", "1.G.A.3"}, []task.Look{task.LookFindCuts}, 30, -2100,
		"find the shapes that are cut into halves, thirds or fourths, in whatever way",
		"find fourths: square crossed 4, square uneven down 4, square corners 4, square across 3",
		is[task.FindCuts]},
	{"compare-shares", 1, []task.Code{"1.G.A.3", "2.G.A.3"}, []task.Look{task.LookLargerShare}, 25, -1700,
		"say which of two shares of the same shape is larger, or that they are the same size",
		"larger share: circle pie 2 or circle pie 4",
		is[task.LargerShare]},
	{"cut-shapes", 1, []task.Code{"1.G.A.3", "2.G.A.3"}, []task.Look{task.LookCutShape}, 30, -1900,
		"cut circles and rectangles into halves, thirds and fourths", "cut: circle into 4",
		is[task.CutShape]},
	{"rows-of-squares", 2, []task.Code{"2.G.A.2"}, []task.Look{task.LookSquares}, 35, -2300,
		"find how many equal squares fill a rectangle in rows and columns, drawn or to draw", "squares 3 by 4",
		is[task.Squares]},
	{"where-shapes-are", 0, []task.Code{"K.G.A.1"}, []task.Look{task.LookWhere}, 15, -2100,
		"say where a shape is: above, below, beside, in front of, behind", "where: circle above square",
		is[task.Where]},
	{"count-out", 0, []task.Code{"K.CC.B.5"}, []task.Look{task.LookCountOut}, 30, -2500,
		"count out so many of up to 20 things", "count out 7 of 12",
		is[task.CountOut]},
	{"odd-or-even-groups", 2, []task.Code{"2.OA.C.3"}, []task.Look{task.LookParityDots}, 25, -2600,
		"say whether a group of up to 20 things is odd or even", "odd or even: 14 dots",
		is[task.OddEven]},
	{"equal-addends", 2, []task.Code{"2.OA.C.3"}, []task.Look{task.LookEqualAddends}, 25, -2700,
		"write an even number as a sum of two equal addends", "equal addends of 14",
		func(t task.Task) bool {
			e, ok := t.(task.EqualAddends)
			return ok && e.Number > 0
		}},
	{"array-sums", 2, []task.Code{"2.OA.C.4"}, []task.Look{task.LookEqualAddends}, 40, -2300,
		"write a sum of equal addends for the rows of an array", "equal addends of array 3 by 4",
		is[task.EqualAddends]},
	{"bills-and-coins", 2, []task.Code{"2.MD.C.8"}, []task.Look{task.LookBills}, 50, -2300,
		"find what bills and coins are worth, in dollars and cents", "money $5, $1, 25, 10, 10",
		is[task.Bills]},
	{"mark-number-line", 2, []task.Code{"2.MD.B.6"}, []task.Look{task.LookLineMark}, 25, -2100,
		"mark a number on a number line, to 100", "mark 70 on line 0 to 100 by 10",
		is[task.LineMark]},
	{"match-clocks", 1, []task.Code{"1.MD.B.3", "2.MD.C.7"}, []task.Look{task.LookMatch}, 60, -2200,
		"join clock faces with times", "match 4:00, 7:00, 11:00",
		is[task.Match]},
	{"clock-hour", 1, []task.Code{"1.MD.B.3"}, clockLooks, 25, -2300,
		"time to the hour", "read 4:00",
		onDial("hour")},
	{"clock-half-hour", 1, []task.Code{"1.MD.B.3"}, clockLooks, 30, -2300,
		"time to the half hour", "read 4:30",
		onDial("half-hour")},
	{"clock-quarter-hour", 2, []task.Code{"2.MD.C.7"}, clockLooks, 35, -2400,
		"time to the quarter hour", "read 4:15",
		onDial("quarter-hour")},
	{"clock-five-minutes", 2, []task.Code{"2.MD.C.7"}, clockLooks, 40, -2600,
		"time to five minutes", "read 4:35",
		onDial("five-minute")},
	{"clock-minute", 3, nil, clockLooks, 45, -2600,
		"time to the minute, beyond K-2", "read 4:37",
		onDial("minute")},
	{"add-larger", 3, nil, []task.Look{task.LookSentence, task.LookColumn, task.LookChoice}, 75, -3000,
		"add past 1000, beyond K-2", "742 + 638 = ?",
		sentence(func(s task.Sentence) bool { return s.IsAddition() })},
	{"subtract-larger", 3, nil,
		[]task.Look{task.LookSentence, task.LookColumn, task.LookBond, task.LookChoice}, 80, -3668,
		"subtract past 1000, beyond K-2", "2000 - 475 = ?",
		sentence(func(task.Sentence) bool { return true })},
}
