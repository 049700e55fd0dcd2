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
//  3. thirds, and equal shares of other forms, in a skill of grade 2; what makes estimates and
//     tools hard
//  4. difficulties beside those of other skills: facts within 10, doubles taken apart, small
//     numbers in stories, what is seen by counting, taking away beside adding
//  5. items by hand as difficult as a usual task of their skill; a third number of two digits, and
//     two bars not measured from 0
const CatalogueNumber = 5

// clockLooks are the looks of a time on a clock.
var clockLooks = []task.Look{
	task.LookClockFace, task.LookBlankFace, task.LookSaidFace, task.LookSaidTime, task.LookChoice,
}

// catalogue is the skills in teaching order. A task belongs to the first row whose
// test it passes, so narrower skills stand before wider ones. Base difficulties and
// working times are common practice, no source; the order of the clock skills is
// that of Boulton-Lewis, Wilss & Mutch (1997), by the weights in weights.go.
var catalogue = slices.Concat(numberSkills, drawnSkills, lastSkills)

// numberSkills are the skills of numbers, sums and stories.
var numberSkills = SkillList{
	{"count-dots", 0, []task.Code{"K.CC.B.5", "K.CC.A.3", "1.NBT.A.1"}, []task.Look{task.LookDots}, 20, -3000,
		"count up to 20 things in rows or in a circle, up to 10 scattered, and none", "count 13",
		is[task.HowMany]},
	{"count-one-by-one", 0, []task.Code{"K.CC.B.4"}, []task.Look{task.LookOneByOne}, 30, -2700,
		"number dots one by one, say how many when they are moved, and when one more comes", "number 7 dots",
		is[task.OneByOne]},
	{"compare-groups", 0, []task.Code{"K.CC.C.6"}, []task.Look{task.LookGroups}, 15, -2200,
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
		}, 20, -1300,
		"find the partner that makes 10", "6 + ? = 10",
		sentence(func(s task.Sentence) bool {
			return s.N == 2 && s.IsAddition() && s.Blank != 2 && s.Result() == 10 && min(s.Terms[0], s.Terms[1]) > 0
		})},
	{"pictures-of-sums", 0, []task.Code{"K.OA.A.1"}, []task.Look{task.LookPictureSum, task.LookDrawSum}, 40, -1600,
		"write a number sentence for a picture of adding or taking away, or draw one, within 10",
		"picture of 5 + 3",
		is[task.PictureSum]},
	{"count-to-add", 1, []task.Code{"1.OA.C.5"}, []task.Look{task.LookCountOn}, 35, -2300,
		"count on to add and back to take away, up to 5 steps within 20", "count on 3 from 8",
		is[task.CountOn]},
	{"explain-tens", 1, []task.Code{"1.NBT.C.4", "1.NBT.C.5", "1.NBT.C.6", "2.NBT.B.9"}, []task.Look{task.LookReason}, 45, -1500,
		"complete the reason why tens are added to a number or taken away as they are", "why 47 + 30",
		func(t task.Task) bool {
			r, ok := t.(task.Reason)
			return ok && r.Step < 100
		}},
	{"explain-hundreds", 2, []task.Code{"2.NBT.B.7", "2.NBT.B.9"}, []task.Look{task.LookReason}, 50, -1500,
		"complete the reason why hundreds are added to a number or taken away as they are", "why 347 + 500",
		is[task.Reason]},
	{"subtract-tens", 1, []task.Code{"1.NBT.C.6", "1.OA.C.6", "2.OA.B.2", "K.OA.A.2"},
		[]task.Look{
			task.LookSentence, task.LookColumn, task.LookBond, task.LookNumberLine, task.LookHundredsChart,
		}, 25, -2400,
		"take tens from tens", "80 - 20 = ?",
		result2(func(s task.Sentence) bool { return s.IsTens() })},
	{"stories-within-10", 0, []task.Code{"K.OA.A.2", "K.OA.A.3", "1.OA.A.1", "2.OA.A.1"},
		[]task.Look{task.LookStory, task.LookChoice}, 60, -1900,
		"stories of the situations of kindergarten, within 10", "story add-to result-unknown: 5 + 3 = ?, shells, Mia",
		kindergartenStory},
	{"length-stories", 2, []task.Code{"2.MD.B.5", "2.OA.A.1", "1.OA.A.1"},
		[]task.Look{task.LookStory, task.LookChoice}, 80, -3100,
		"stories about lengths, within 100", "story take-from result-unknown: 62 - 25 = ?, rope, Omar",
		story(func(s task.Story) bool { return s.Measured() })},
	{"money-stories", 2, []task.Code{"2.MD.C.8", "2.OA.A.1", "1.OA.A.1"},
		[]task.Look{task.LookStory, task.LookChoice}, 80, -3100,
		"stories about cents, within a dollar", "story take-from result-unknown: 60 - 25 = ?, cents, Ana",
		story(func(s task.Story) bool { return s.Money() })},
	{"two-step-stories", 2, []task.Code{"2.OA.A.1", "1.OA.A.2"},
		[]task.Look{task.LookStory, task.LookChoice}, 100, -2400,
		"stories with two steps, within 100", "story two-step: 25 + 17 - 12 = ?, shells, Mia",
		story(func(s task.Story) bool { return s.Situation == task.TwoSteps })},
	{"three-addend-stories", 1, []task.Code{"1.OA.A.2", "2.OA.A.1"},
		[]task.Look{task.LookStory, task.LookChoice}, 70, -1900,
		"stories in one step with three numbers to add, within 20",
		"story put-together three-addends: 4 + 6 + 3 = ?, shells, Mia",
		story(func(s task.Story) bool { return s.Situation == task.ThreeAddends && s.Sentence.Size() <= 20 })},
	{"stories-within-20", 1, []task.Code{"1.OA.A.1", "2.OA.A.1"},
		[]task.Look{task.LookStory, task.LookChoice}, 70, -2100,
		"stories of the situations of grade 1, within 20", "story add-to change-unknown: 5 + ? = 12, shells, Mia",
		story(func(s task.Story) bool {
			return s.Situation.Mastered() <= 1 && s.Sentence.Size() <= 20
		})},
	{"stories-within-100", 2, []task.Code{"2.OA.A.1", "1.OA.A.1"},
		[]task.Look{task.LookStory, task.LookChoice}, 80, -3300,
		"stories of all fourteen situations, within 100",
		"story add-to change-unknown: 25 + ? = 62, books, Lin",
		is[task.Story]},
	{"facts-within-20", 1, []task.Code{"K.OA.A.2", "K.OA.A.5", "1.OA.C.6", "2.OA.B.2", "K.NBT.A.1"},
		[]task.Look{
			task.LookSentence, task.LookBond, task.LookColumn, task.LookMakeTen, task.LookNumberLine,
			task.LookHundredsChart, task.LookChoice,
		}, 20, -2600,
		"add and subtract two numbers within 20", "8 + 3 = ?",
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
		"say whether both sides of the equal sign are worth the same, within 20", "true or false: 13 = 8 + 5",
		func(t task.Task) bool {
			s, ok := t.(task.TrueFalse)
			return ok && s.Largest() <= 20
		}},
	{"turn-around", 1, []task.Code{"1.OA.B.3", "1.OA.D.7"},
		[]task.Look{task.LookSentence, task.LookChoice}, 30, -1400,
		"add in another order, or two of three addends first, within 20", "14 + 4 = 4 + ?",
		func(t task.Task) bool {
			s, ok := t.(task.Balance)
			return ok && s.SameAddends() && s.Largest() <= 20
		}},
	{"balance", 1, []task.Code{"1.OA.D.7"}, []task.Look{task.LookSentence, task.LookChoice}, 35, -1400,
		"make both sides of the equal sign worth the same, within 20", "13 + 6 = 14 + ?",
		func(t task.Task) bool {
			s, ok := t.(task.Balance)
			return ok && s.Largest() <= 20
		}},
	{"balance-larger", 2, []task.Code{"2.NBT.B.5", "2.NBT.B.7"},
		[]task.Look{task.LookSentence, task.LookTick, task.LookChoice}, 60, -2000,
		"equal sides past 20, to fill in or to judge", "40 + 30 = 50 + ?",
		func(t task.Task) bool { return is[task.Balance](t) || is[task.TrueFalse](t) }},
	{"missing-number-larger", 2, []task.Code{"2.NBT.B.5", "2.NBT.B.7"},
		[]task.Look{
			task.LookSentence, task.LookBond, task.LookNumberLine, task.LookHundredsChart, task.LookChoice,
		}, 45, -2600,
		"find the unknown number past 20", "83 - ? = 47",
		sentence(func(s task.Sentence) bool { return s.Blank != s.N && s.Size() <= 1000 })},
	{"add-ones", 1, []task.Code{"1.NBT.C.4"},
		[]task.Look{
			task.LookSentence, task.LookColumn, task.LookBond, task.LookMakeTen, task.LookNumberLine,
			task.LookHundredsChart, task.LookChoice,
		}, 30, -1600,
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
		}, 45, -2400,
		"add two two-digit numbers, within 100", "47 + 36 = ?",
		sum2(func(a, _, sum int) bool { return a <= 100 && sum <= 100 })},
	{"add-past-100", 2, []task.Code{"2.NBT.B.7"},
		[]task.Look{
			task.LookSentence, task.LookColumn, task.LookBreakApart, task.LookHundredsChart, task.LookChoice,
		}, 50, -2200,
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
		[]task.Look{task.LookSentence, task.LookColumn, task.LookChoice}, 75, -1600,
		"add three or four numbers of up to two digits", "28 + 15 + 36 + 42 = ?",
		sentence(func(s task.Sentence) bool {
			return s.N > 2 && s.Blank == s.N && s.IsAddition() && slices.Max(s.Operands()) <= 99
		})},
	{"add-within-1000", 2, []task.Code{"2.NBT.B.7"},
		[]task.Look{task.LookSentence, task.LookColumn, task.LookHundredsChart, task.LookChoice}, 60, -2400,
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
		"subtract within 1000", "475 - 128 = ?",
		result2(func(s task.Sentence) bool { return s.Size() <= 1000 })},
	{"add-and-subtract", 2, []task.Code{"1.OA.C.6", "2.NBT.B.5", "2.NBT.B.7", "2.OA.B.2"},
		[]task.Look{task.LookSentence, task.LookChoice}, 50, -1600,
		"add and take away in one sentence", "60 - 7 + 15 = ?",
		sentence(func(s task.Sentence) bool { return s.N > 2 && !s.IsAddition() && s.Size() <= 1000 })},
	{"tens-and-ones", 1, []task.Code{"1.NBT.B.2", "K.NBT.A.1"},
		[]task.Look{task.LookFrame, task.LookTensAndOnes, task.LookSentence, task.LookChoice}, 30, -1200,
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
		"compare three-digit numbers", "347 ? 562",
		comparing(task.MaxNumber)},
	{"count-on", 1, []task.Code{"K.CC.A.2", "1.NBT.A.1", "K.CC.A.1"}, []task.Look{task.LookSequence}, 25, -2600,
		"count on and back by ones, to 120", "98, 99, ?, 101",
		func(t task.Task) bool {
			s, ok := t.(task.Sequence)
			return ok && (s.Step == 1 || s.Step == -1) && max(s.First, s.Number(s.N-1)) <= 120
		}},
	{"count-by-steps", 2, []task.Code{"K.CC.A.1", "2.NBT.A.2", "2.OA.C.3"}, []task.Look{task.LookSequence}, 30, -2600,
		"count by ones past 120, and by 2s, 5s, 10s and 100s, within 1000", "45, 40, ?, 30",
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
}

// lastSkills are the last ones: clocks, and what comes after grade 2.
var lastSkills = SkillList{
	{"match-clocks", 1, []task.Code{"1.MD.B.3", "2.MD.C.7"}, []task.Look{task.LookMatch}, 60, -2200,
		"join clock faces with times", "match 4:05, 7:20, 11:40",
		is[task.Match]},
	{"clock-hour", 1, []task.Code{"1.MD.B.3"}, clockLooks, 25, -2300,
		"time to the hour", "read 4:00",
		onDial("hour")},
	{"clock-half-hour", 1, []task.Code{"1.MD.B.3"}, clockLooks, 30, -2300,
		"time to the half hour", "read 4:30",
		onDial("half-hour")},
	{"clock-quarter-hour", 2, []task.Code{"2.MD.C.7"}, clockLooks, 35, -2400,
		"time to the quarter hour", "read 4:45",
		onDial("quarter-hour")},
	{"clock-five-minutes", 2, []task.Code{"2.MD.C.7"}, clockLooks, 40, -2600,
		"time to five minutes", "read 4:35",
		onDial("five-minute")},
	{"clock-minute", 3, nil, clockLooks, 45, -2600,
		"time to the minute, beyond K-2", "read 4:37",
		onDial("minute")},
	{"add-larger", 3, nil, []task.Look{task.LookSentence, task.LookColumn, task.LookChoice}, 75, -3300,
		"add past 1000, beyond K-2", "742 + 638 = ?",
		sentence(func(s task.Sentence) bool { return s.IsAddition() })},
	{"subtract-larger", 3, nil,
		[]task.Look{task.LookSentence, task.LookColumn, task.LookBond, task.LookChoice}, 80, -3668,
		"subtract past 1000, beyond K-2", "2360 - 737 = ?",
		sentence(func(task.Sentence) bool { return true })},
}
