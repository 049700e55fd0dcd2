package generate

import (
	"fmt"

	"evenhand/standards"
	"evenhand/standards/task"
)

// spaces holds, for each skill, the tasks that are generated for it. What a space
// holds of another skill (95 + 6 among two-digit sums within 100) is passed over: the
// catalogue decides.
var spaces = map[standards.SkillID]space{
	"make-ten":               partners(10),
	"subtract-tens":          differencesOfTens(),
	"facts-within-20":        join(sums(2, 0, 20), differences(0, 20)),
	"three-addends":          sums(3, 1, 18),
	"missing-number":         unknowns(20),
	"missing-number-larger":  unknowns(1000),
	"add-ones":               sumsOfOnes(),
	"add-tens":               sums(2, 10, 90),
	"add-two-digit":          sums(2, 10, 90),
	"add-past-100":           sums(2, 1, 99),
	"add-several":            join(sums(3, 10, 99), sums(4, 10, 99)),
	"add-within-1000":        sums(2, 1, 999),
	"add-larger":             sums(2, 100, 999),
	"expanded-form":          join(takenApart(), putTogether()),
	"subtract-two-digit":     differences(1, 100),
	"subtract-regrouping":    differences(1, 100),
	"subtract-within-1000":   differences(1, 1000),
	"subtract-larger":        differencesPast1000(),
	"add-and-subtract":       join(plusMinus(1, 100), larger(100, plusMinus(50, 1000))),
	"tens-and-ones":          placeValues(2),
	"hundreds-tens-ones":     placeValues(3),
	"compare-within-10":      comparisons(1, 10),
	"compare-two-digit":      comparisons(10, 99),
	"compare-three-digit":    comparisons(100, 999),
	"count-on":               rows(1, 1, 120),
	"count-by-steps":         join(rows(1, 1, 1000), rows(2, 1, 20), rows(5, 5, 1000), rows(10, 1, 1000), rows(100, 1, 1000)),
	"ten-more-less":          moreOrLess(10, 99, 10),
	"hundred-more-less":      moreOrLess(100, 900, 10, 100),
	"match-clocks":           join(matches(3, "five-minute"), matches(4, "quarter-hour")),
	"clock-hour":             dials("hour", noHalf),
	"clock-half-hour":        dials("half-hour", noHalf),
	"clock-quarter-hour":     dials("quarter-hour", halves),
	"clock-five-minutes":     dials("five-minute", halves),
	"clock-minute":           dials("minute", noHalf),
	"count-dots":             dotsToCount(),
	"compare-groups":         groups(),
	"number-pairs":           pairs(3, 10),
	"write-to-20":            numbersToWrite(0, 20, false),
	"write-to-120":           numbersToWrite(21, 120, false),
	"write-to-1000":          numbersToWrite(121, 1000, false),
	"number-names":           numbersToWrite(11, 1000, true),
	"related-facts":          related(),
	"true-or-false":          truths(1),
	"turn-around":            join(balances(1, 20), regrouped()),
	"balance":                balances(1, 20),
	"balance-larger":         join(balances(5, 100), balances(100, 1000), truths(5)),
	"odd-or-even":            parities(20),
	"small-arrays":           arrays(),
	"count-coins":            coins(),
	"read-number-line":       markedLines(),
	"sort-things":            data(3, task.Things),
	"read-data":              data(3, task.TallyChart, task.Table, task.PictureGraph, task.BarGraph),
	"read-graphs":            data(4, task.PictureGraph, task.BarGraph),
	"measure-with-ruler":     measured(),
	"how-much-longer":        comparedBars(),
	"name-shapes":            flatNames(),
	"name-solids":            solidNames(),
	"sides-and-corners":      shapeParts(),
	"flat-or-solid":          flatOrSolid(),
	"find-shapes":            shapesToFind("circle", "triangle", "square", "rectangle", "flat", "solid"),
	"find-by-corners":        shapesToFind("triangle", "quadrilateral", "pentagon", "hexagon", "cube", "3 corners", "4 corners", "5 corners", "6 corners"),
	"draw-shapes":            shapesToDraw(),
	"thirds-and-other-forms": join(sharesAsked("equal shares"), sharesAsked("name share"), sharesAsked("shares in all"), sharesCompared(), shapesToCut()),
	"equal-shares":           sharesAsked("equal shares"),
	"name-shares":            sharesAsked("name share"),
	"shares-in-all":          sharesAsked("shares in all"),
	"find-shares":            cutsToFind(),
	"compare-shares":         sharesCompared(),
	"cut-shapes":             shapesToCut(),
	"rows-of-squares":        squares(),
	"where-shapes-are":       shapesApart(),
	"count-one-by-one":       countedOneByOne(),
	"pictures-of-sums":       picturesOfSums(),
	"explain-tens":           reasons(10),
	"explain-hundreds":       reasons(100),
	"count-to-add":           countedOn(),
	"three-addend-stories":   threeAddends(counted),
	"count-out":              countedOut(),
	"odd-or-even-groups":     parityGroups(),
	"equal-addends":          halvesTo20(),
	"array-sums":             arraySums(),
	"bills-and-coins":        billsAndCoins(),
	"jump-number-line":       jumpsOnLines(),
	"mark-number-line":       linesToMark(),
	"make-shapes":            shapesOfPieces(),
	"join-shapes":            shapesOfPieces(),
	"line-plots":             linePlots(),
	"compare-lengths":        bars(2, task.WhichLonger, task.WhichShorter, task.WhichTaller),
	"order-lengths":          bars(3, task.LengthOrder),
	"compare-by-third":       bars(3, task.LongerByAThird, task.ShorterByAThird),
	"measure-with-blocks":    blocksAlong(),
	"measured-right":         blockWays(),
	"two-units":              shortBlocks(),
	"estimate-lengths":       estimates(false),
	"measuring-tools":        estimates(true),
	"stories-within-10":      stories(10, 1, 4, counted, firstSituations...),
	"stories-within-20":      stories(20, 1, 4, counted, situations...),
	"stories-within-100":     stories(100, 1, 1, counted, situations...),
	"length-stories":         stories(100, 5, 1, lengths, situations...),
	"money-stories":          stories(100, 5, 1, money, situations...),
	"two-step-stories":       twoSteps(counted),
}

// spaceOf is the space of a skill.
func spaceOf(skill standards.SkillID) (space, error) {
	if s, ok := spaces[skill]; ok {
		return s, nil
	}
	if _, err := standards.ParseSkill(string(skill)); err != nil {
		return space{}, err
	}
	return space{}, fmt.Errorf("no items are generated for %s yet; write them by hand or import them", skill)
}
