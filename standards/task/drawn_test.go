package task_test

import (
	"slices"

	"evenhand/standards/task"
	"evenhand/standards/words"

	"pgregory.net/rapid"
)

// drawTask makes tasks of every kind: by their numbers, or as they stand in typed.
func drawTask(t *rapid.T) task.Task {
	n := func(low, high int, name string) int { return rapid.IntRange(low, high).Draw(t, name) }
	clock := words.Time{Hour: n(1, 12, "hour"), Minute: n(0, 59, "minute"), Half: rapid.SampledFrom([]words.Half{"", "am", "pm"}).Draw(t, "half")}
	kind := rapid.SampledFrom([]string{
		"sum", "difference", "place", "expanded", "compare", "sequence", "more", "clock",
		"truth", "balance", "related", "odd", "array", "coins", "count", "groups", "pairs", "write", "story", "match",
		"data", "ruler", "line plot", "blocks", "lengths", "estimate",
		"typed", "typed", "typed", "typed", "typed", "typed", "typed", "typed",
	}).Draw(t, "kind")
	switch kind {
	case "typed":
		rows := typedOf()[rapid.SampledFrom(task.Kinds()).Draw(t, "kind of text")]
		return task.MustParse(rows[n(0, len(rows)-1, "row")])
	case "sum":
		addends := rapid.SliceOfN(rapid.IntRange(0, 999), 2, 4).Draw(t, "addends")
		s, err := task.NewAddition(n(0, len(addends), "blank"), addends...)
		s.ResultFirst = rapid.Bool().Draw(t, "result first")
		return valid(t, s, err)
	case "difference":
		a := n(0, 9999, "a")
		s, err := task.NewSubtraction(n(0, 2, "blank"), a, n(0, a, "b"))
		return valid(t, s, err)
	case "place":
		if rapid.Bool().Draw(t, "hundreds") {
			return task.PlaceValue{Number: n(100, 999, "n"), Places: 3, Compose: rapid.Bool().Draw(t, "compose")}
		}
		return task.PlaceValue{Number: n(10, 99, "n"), Places: 2, Compose: rapid.Bool().Draw(t, "compose")}
	case "expanded":
		number := n(11, 999, "n")
		if number%10 == 0 && number < 100 || number%100 == 0 {
			number++
		}
		return task.Expanded{Number: number}
	case "compare":
		return task.Compare{A: n(0, 999, "a"), B: n(0, 999, "b")}
	case "sequence":
		places := n(4, 8, "places")
		return task.Sequence{
			First: n(200, 900, "first"), Step: rapid.SampledFrom([]int{1, -1, 2, 5, 10, -10}).Draw(t, "step"),
			N: places, Blanks: 1 << n(2, places-1, "blank"),
		}
	case "more":
		return task.MoreLess{Number: n(100, 900, "n"), Step: rapid.SampledFrom([]int{10, 100}).Draw(t, "step"), Less: rapid.Bool().Draw(t, "less")}
	}
	if asked := drawEarly(t, kind, n); asked != nil {
		return asked
	}
	return task.Clock{Verb: rapid.SampledFrom([]task.ClockVerb{task.Read, task.Draw, task.Say}).Draw(t, "verb"), Time: clock}
}

// drawEarly makes tasks of the kinds that begin in kindergarten and grade 1, and
// those about coins, arrays and number names.
func drawEarly(t *rapid.T, kind string, n func(low, high int, name string) int) task.Task {
	switch kind {
	case "truth":
		return task.TrueFalse{Left: drawSide(t, "left"), Right: drawSide(t, "right")}
	case "balance": // 20 to 40 on the left, so that a number from 0 up makes it true
		a, b, c := n(10, 20, "a"), n(10, 20, "b"), n(0, 20, "c")
		left := task.Side{Terms: [3]int{a, b}, N: 2}
		right := task.Side{Terms: [3]int{c, a + b - c}, N: 2}
		return task.Balance{Left: left, Right: right, Blank: n(0, 3, "blank")}
	case "related":
		whole := n(2, 20, "whole")
		return task.Related{Whole: whole, Part: n(1, whole-1, "part")}
	case "odd":
		return task.OddEven{Number: n(0, 999, "n")}
	case "array":
		return task.Array{Rows: n(1, 5, "rows"), Columns: n(1, 5, "columns")}
	case "coins":
		return task.Coins{Counts: [5]int{0, n(0, 2, "25"), n(1, 3, "10"), n(1, 2, "5"), n(0, 3, "1")}}
	case "count":
		return task.HowMany{Number: n(1, 10, "n"), Scattered: rapid.Bool().Draw(t, "scattered")}
	case "groups":
		return task.Groups{Left: n(1, 10, "left"), Right: n(1, 10, "right"), Fewer: rapid.Bool().Draw(t, "fewer")}
	case "pairs":
		return task.Pairs{Whole: n(2, 10, "whole")}
	case "write":
		return task.WriteNumber{Number: n(0, 1000, "n"), InWords: rapid.Bool().Draw(t, "in words")}
	case "match":
		m := task.Match{N: n(2, 6, "clocks")}
		hours := rapid.Permutation([]int{1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12}).Draw(t, "hours")
		for i := range m.N {
			m.Times[i] = words.Time{Hour: hours[i], Minute: n(0, 59, "minute")}
		}
		return m
	case "story":
		return drawStory(t, n)
	case "data":
		return drawData(t, n)
	case "line plot":
		p := task.LinePlot{Inches: rapid.Bool().Draw(t, "inches"), First: n(1, 12, "first"), N: n(4, 7, "lengths"), Length: 0, Ask: task.PlotHowMany}
		for i := range p.N {
			p.Counts[i] = n(1, 2, "count")
		}
		p.Length = p.First + n(0, p.N-1, "length")
		if other := rapid.SampledFrom([]task.PlotAsk{task.PlotHowMany, task.PlotInAll, task.PlotDistance, task.PlotDraw}).Draw(t, "ask"); other != p.Ask {
			p.Ask, p.Length = other, 0
		}
		return p
	case "blocks":
		b := task.Blocks{Count: n(4, 6, "blocks"), Parts: rapid.SampledFrom([]int{0, 2, 3}).Draw(t, "short")}
		if b.Parts == 0 && rapid.Bool().Draw(t, "pictures") {
			b.Ways = [3]task.BlockWay(rapid.Permutation([]task.BlockWay{task.Even, task.Gaps, task.Overlaps}).Draw(t, "ways"))
		}
		return b
	case "lengths":
		lengths := rapid.Permutation([]int{1, 2, 3, 4, 5, 6, 7, 8, 9, 10}).Draw(t, "lengths")
		if l := (task.Lengths{Bars: [3]int(lengths[:3]), N: 3, Ask: task.LengthOrder}); rapid.Bool().Draw(t, "three") {
			if slices.Sort(l.Bars[:]); rapid.Bool().Draw(t, "by a third") {
				l.Ask = task.LongerByAThird
			}
			return l
		}
		asks := []task.LengthAsk{task.WhichLonger, task.WhichShorter, task.WhichTaller}
		return task.Lengths{
			Bars: [3]int{lengths[0], lengths[1]}, N: 2, Ask: rapid.SampledFrom(asks).Draw(t, "ask"),
		}
	case "estimate":
		tool := rapid.Bool().Draw(t, "tool")
		return task.Estimate{Thing: rapid.SampledFrom(task.EstimatedThings(tool)).Draw(t, "thing"), Tool: tool}
	case "ruler":
		r := task.Ruler{Inches: rapid.Bool().Draw(t, "inches"), From: n(0, 3, "from"), To: n(4, 6, "to")}
		if rapid.Bool().Draw(t, "two") {
			if r.OtherTo = n(1, 5, "other"); r.OtherTo >= r.Length() {
				r.OtherTo++
			}
		}
		return r
	}
	return nil
}

// drawData makes a graph of sorts of different numbers.
func drawData(t *rapid.T, n func(low, high int, name string) int) task.Task {
	d := task.Data{N: n(2, 4, "sorts"), Form: rapid.SampledFrom([]task.DataForm{task.TallyChart, task.Table, task.PictureGraph, task.BarGraph}).Draw(t, "form")}
	group := rapid.SampledFrom(words.SortGroups).Draw(t, "group")
	counts := rapid.Permutation([]int{1, 2, 3, 4, 5, 6, 7, 8, 9, 10}).Draw(t, "counts")
	for i, at := range rapid.Permutation([]int{0, 1, 2, 3}).Draw(t, "order")[:d.N] {
		d.Sorts[i], d.Counts[i] = group.Sorts[at].Name, counts[i]
	}
	d.Ask = rapid.SampledFrom([]task.DataAsk{task.HowManyOf, task.HowManyMore, task.InAll, task.WhichMost, task.WhichFewest}).Draw(t, "ask")
	switch d.Ask {
	case task.HowManyOf:
		d.First = n(0, d.N-1, "first")
	case task.HowManyMore:
		if d.Second = 1; d.Counts[0] < d.Counts[1] {
			d.First, d.Second = 1, 0
		}
	}
	return d
}

// drawStory makes a story of any situation.
func drawStory(t *rapid.T, n func(low, high int, name string) int) task.Task {
	s := task.Story{Situation: rapid.SampledFrom(task.Situations()).Draw(t, "situation")}
	s.Thing = rapid.SampledFrom(task.StoryThings(s.Situation)).Draw(t, "thing")
	names := rapid.Permutation(task.StoryNames()).Draw(t, "names")
	if s.Name = names[0]; s.Situation.People() == 2 {
		s.Other = names[1]
	}
	s.Telling = n(0, task.StoryTellings, "telling")
	a, b := n(3, 40, "a"), n(2, 40, "b")
	switch example := s.Situation.Example().(task.Story).Sentence; {
	case s.Situation == task.TwoSteps:
		s.Sentence = task.Sentence{Terms: [4]int{a, b, 2}, Minus: [4]bool{2: rapid.Bool().Draw(t, "minus")}, N: 3, Blank: 3}
	case s.Situation == task.ThreeAddends:
		s.Sentence = task.Sentence{Terms: [4]int{a, b, n(2, 20, "c")}, N: 3, Blank: 3}
	case s.Situation == task.TogetherBoth:
		s.Sentence = task.Sentence{Terms: [4]int{a / 2, a - a/2}, N: 2, Blank: 2}
	case example.IsAddition():
		s.Sentence = task.Sentence{Terms: [4]int{a, b}, N: 2, Blank: example.Blank}
	default:
		s.Sentence = task.Sentence{Terms: [4]int{a + b, b}, Minus: [4]bool{1: true}, N: 2, Blank: example.Blank}
	}
	return s
}

// drawSide makes one side of an equal sign.
func drawSide(t *rapid.T, name string) task.Side {
	var side task.Side
	for _, n := range rapid.SliceOfN(rapid.IntRange(0, 999), 1, 3).Draw(t, name) {
		side.Minus[side.N] = rapid.Bool().Draw(t, name+" minus") && side.N > 0 && side.Value() >= n
		side.Terms[side.N] = n
		side.N++
	}
	return side
}

func valid(t *rapid.T, s task.Sentence, err error) task.Task {
	if err != nil {
		t.Fatal(err)
	}
	return s
}
