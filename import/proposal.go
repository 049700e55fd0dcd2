package intake

import (
	"regexp"
	"slices"
	"strconv"
	"strings"
	"sync"

	"evenhand/bank"
	"evenhand/standards"
	"evenhand/standards/words"
)

// An item by hand whose list names no skill stands as a draft, until somebody has looked
// at it. Where the two numbers of a story give its answer, a skill is proposed.

// proposed begins the note of an item whose skill nobody named.
const proposed = "skill proposed from its numbers"

// proposeSkill proposes a skill of stories by the two numbers in a question and its
// answer, and notes an answer that is neither their sum nor their difference, unless
// something else is asked of them: which is larger, or what stands between.
func (j *judge) proposeSkill(v *verdict, rec record, question string) {
	numbers := numbersIn(question)
	answer := numbersIn(v.item.Key)
	if v.item.Skill == "" {
		v.item.Standing = bank.Draft
	}
	if len(numbers) != 2 || len(answer) != 1 || len(j.choices(rec)) > 0 || len(letterWords.FindAllString(question, -1)) < 4 {
		return
	}
	sum, difference := numbers[0]+numbers[1], max(numbers[0], numbers[1])-min(numbers[0], numbers[1])
	switch largest := max(numbers[0], numbers[1], answer[0]); {
	case answer[0] != sum && answer[0] != difference && (slices.Contains(numbers, answer[0]) || asksElse.MatchString(question)):
	case answer[0] != sum && answer[0] != difference:
		v.note(rec.first, Answer, words.Sayf("%d is neither the sum nor the difference of %d and %d; is it right?",
			answer[0], numbers[0], numbers[1]))
	case v.item.Skill != "":
	default:
		for _, row := range storySkills {
			if largest <= row.upTo {
				hand := bank.NewHandItem(question, v.item.Key, row.skill, "en", v.item.Origin)
				v.item.Skill, v.item.Predicted, v.item.Seconds = hand.Skill, hand.Predicted, hand.Seconds
				if len(v.item.Codes) == 0 {
					v.item.Codes = hand.Codes
				}
				v.item.Notes = strings.TrimSuffix(proposed+"; "+v.item.Notes, "; ")
				return
			}
		}
	}
}

// asksElse finds questions about two numbers that neither add nor take away.
var asksElse = regexp.MustCompile(`(?i)\b(?:between|round|nearest|rows? of|groups? of|each|entre|redondea|filas? de|grupos? de|cada)\b`)

// storySkills are the skills of stories with one step, by their largest number.
var storySkills = []struct {
	upTo  int
	skill standards.SkillID
}{{10, "stories-within-10"}, {20, "stories-within-20"}, {100, "stories-within-100"}}

var numberOrWord = regexp.MustCompile(`\d+(?:[.,]\d+)*|\pL+(?:-\pL+)?`)

// numbersIn are the numbers of a text, in figures or in words from two to a hundred ("one"
// is mostly no number); nil when one of them is no whole number, or is said in hundreds.
func numbersIn(text string) (numbers []int) {
	for _, word := range numberOrWord.FindAllString(strings.ToLower(text), -1) {
		if n, ok := numberWords()[word]; ok {
			numbers = append(numbers, n)
			continue
		}
		if hundreds.MatchString(word) {
			return nil
		}
		if word[0] < '0' || word[0] > '9' {
			continue
		}
		n, err := strconv.Atoi(notDigit.ReplaceAllString(word, ""))
		if err != nil || !wholeNumber.MatchString(word) && !grouped.MatchString(word) {
			return nil
		}
		numbers = append(numbers, n)
	}
	return numbers
}

// hundreds are the words of numbers that go on behind them: "three hundred and five" is neither 3 nor 5.
var hundreds = regexp.MustCompile(`^(?:hundreds?|thousands?|cien(?:t[oa]s?)?|\pL+cient[oa]s|quinient[oa]s|mil(?:es)?)$`)

var numberWords = sync.OnceValue(func() map[string]int {
	said := map[string]int{}
	for n := 2; n <= 100; n++ {
		for _, lang := range []string{"en", "es"} {
			said[words.NumberName(n, lang)] = n
		}
	}
	return said
})
